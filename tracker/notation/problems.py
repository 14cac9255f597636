"""Messages a maker or designer can act on: where, what is wrong, the likeliest cause."""

from __future__ import annotations

from tracker.lean import NamedTuple


class Message(NamedTuple):
    """One finding about the text, with the words it is about.

    Attributes:
        line: line of the text, counted from 1.
        column: column of the first character at fault, counted from 1.
        length: how many characters are at fault (0 for a place between two).
        text: one plain sentence.
        source: the whole source line, for the caret line below it.
        hint: the likeliest cause or what to do; may be empty.
        serious: False for something worth knowing that changes no verdict.
    """

    line: int
    column: int
    length: int
    text: str
    source: str = ""
    hint: str = ""
    serious: bool = True

    def __str__(self) -> str:
        """The message with its source line and carets, in plain text."""
        head = f"line {self.line}, column {self.column}: {self.text}"
        parts = [head]
        if self.source:
            parts.append("    " + visible(self.source))
            parts.append("    " + " " * (self.column - 1) + "^" * max(1, self.length))
        if self.hint:
            parts.append("    " + self.hint)
        return "\n".join(parts)


def visible(text: str) -> str:
    """Text with every control character shown as one visible character.

    Keeps the length, so that columns and carets still fit: C0 controls become their
    Unicode control pictures, any other unprintable character becomes U+FFFD. A tab
    becomes one blank.
    """
    if text.isprintable():
        return text
    return "".join(_show(char) for char in text)


def _show(char: str) -> str:
    if char == "\t":
        return " "
    code = ord(char)
    if code < 0x20:
        return chr(0x2400 + code)
    if code == 0x7F:
        return "\u2421"
    return char if char.isprintable() else "\ufffd"
