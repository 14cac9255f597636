"""The words of a text, Markdown or PDF file that somebody wrote for people, not for us."""

from __future__ import annotations

import logging
import re
from collections import Counter
from io import BytesIO
from typing import TYPE_CHECKING

from tracker.notation.problems import Message
from tracker.pattern.prose_lines import label_of
from tracker.pattern.source import LARGEST, PatternError, decode, read_bytes, too_large

if TYPE_CHECKING:
    from pypdf import PdfReader

LARGEST_PDF = 20 * 1024 * 1024
"""Bytes of a PDF file."""

MOST_PAGES = 200

#: How files begin that hold words but are not text: what they are.
_OTHER_KINDS = (
    (b"PK\x03\x04", "a zip or word processor file"),
    (b"\xd0\xcf\x11\xe0", "a word processor file"),
    (b"{\\rtf", "a word processor file"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
)
_EDGE = 2  #: lines at the top, and at the foot, of a page
_LEAST = 3  #: on so many pages at least
_NUMBER = re.compile(r"^(?:page )?\d+\b|\b(?:page )?\d+(?: ?(?:/|of) ?\d+)?$", re.IGNORECASE)
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def read_words(file: str) -> str:
    """The words of a text, Markdown or PDF file.

    Raises `PatternError`: no plain file, too large, no text in UTF-8, or a PDF that cannot
    be read.
    """
    return words_of(file, read_bytes(file, LARGEST_PDF))


def words_of(file: str, data: bytes) -> str:
    """The words in the bytes of a file; ``file`` is the name that messages go by.

    Raises `PatternError`.
    """
    if b"%PDF-" in data[:1024]:
        return _pdf_words(file, data)
    if len(data) > LARGEST:
        raise too_large(file)
    if data[:2] in _UTF_16:
        raise _refused(file, "text in UTF-16", "Save the file as UTF-8.")
    for begins, kind in _OTHER_KINDS:
        if data.startswith(begins):
            raise _refused(file, f"{kind}, not text", "Save its words as plain text (.txt).")
    if b"\0" in data:
        raise _refused(file, "not text", "Give a text, Markdown or PDF file.")
    return decode(file, data)


def _refused(file: str, text: str, hint: str) -> PatternError:
    return PatternError(file, [Message(0, 0, 0, text, hint=hint)])


def _pdf_words(file: str, data: bytes) -> str:
    """The words of a PDF, page after page."""
    if len(data) > LARGEST_PDF:
        raise too_large(file, LARGEST_PDF)
    try:
        import pypdf
    except ImportError:
        hint = 'Install it with: pip install "hookside[pdf]"'
        raise _refused(
            file, "a PDF, and pypdf, which reads those, is not installed", hint
        ) from None
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)
    try:
        text = _pages(file, pypdf.PdfReader(BytesIO(data)))
    except PatternError:
        raise
    except Exception:  # noqa: BLE001 - there is no end to the ways in which a PDF can be broken
        hint = "Open it in a viewer and copy its words to a .txt file."
        raise _refused(file, "a damaged PDF, or of a kind that cannot be read", hint) from None
    if not text.strip():
        hint = "Its pages may be pictures: type the rounds into a .txt file."
        raise _refused(file, "a PDF without any words", hint)
    return text


def _pages(file: str, reader: PdfReader) -> str:
    """The text of all pages. Raises `PatternError` for a locked PDF, or one too long."""
    if reader.is_encrypted and not reader.decrypt(""):
        hint = "Save a copy without a password, or copy its words to a .txt file."
        raise _refused(file, "a PDF locked with a password", hint)
    if len(reader.pages) > MOST_PAGES:
        hint = f"The most is {MOST_PAGES}."
        raise _refused(file, f"a PDF of {len(reader.pages):,} pages", hint)
    found: list[str] = []
    size = 0
    for page in reader.pages:
        found.append(page.extract_text().strip("\n"))
        size += len(found[-1])
        if size > LARGEST:
            raise too_large(file)
    return "\n\n".join(_without_heads(found))


def _without_heads(pages: list[str]) -> list[str]:
    """The pages without what stands at the top or foot of most of them, such as the title.

    What stands at the top of the first page stays.
    """
    edges = Counter(line for page in pages for line in set(_edges(page)))
    heads = {line for line, often in edges.items() if often >= _LEAST and often * 2 > len(pages)}
    found = []
    for number, page in enumerate(pages):
        lines = page.split("\n")
        top = range(_EDGE if number else 0)
        foot = range(len(lines) - _EDGE, len(lines))
        kept = (s for i, s in enumerate(lines) if i not in (*top, *foot) or _head(s) not in heads)
        found.append("\n".join(kept))
    return found


def _edges(page: str) -> list[str]:
    """The first and last lines of a page that others may share: no rounds, no sentences."""
    lines = page.split("\n")
    heads = [_head(line) for line in (*lines[:_EDGE], *lines[-_EDGE:])]
    return [head for head in heads if head and head[-1] != "." and label_of(head) is None]


def _head(line: str) -> str:
    """A line at the edge of a page without the page's number."""
    return _NUMBER.sub("", line.strip()).strip(" -|·•")
