"""The lines under a part's heading -> its rounds, its note, its steps."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field

from tracker.fabric.trees import unread_in, works
from tracker.notation.lexicon import Lexicon
from tracker.notation.lines import split_lines
from tracker.notation.reader import read_round
from tracker.notation.round_text import RoundText
from tracker.notation.tokens import Type, plain, tokenize
from tracker.notation.tree import Act, Chain, Note
from tracker.pattern.model import Part, Worked
from tracker.pattern.prose_facts import copies_of, facts_of_part
from tracker.pattern.prose_lines import LONGEST, Said, label_of
from tracker.pattern.tables import TEXT

#: What a line begins with that asks for no stitch, whatever stitches it speaks of.
_CRAFTS = re.compile(
    r"^(?:now |then )?(?:sew|stuff|insert|attach|weave|embroider|place|cut|leave|pin|fold|block|add"
    r"|thread|use|using|note|tip|start stuffing|begin stuffing|continue stuffing|optional"
    r"|(?:sl st|slip stitch|sc|dc|whip ?stitch|crochet) (?:the |both )?[a-z ]*"
    r"(?:ends|edges|sides|rows) together)\b"
)
#: A short line that may be a heading over the next rounds: "Petals", "Upper edge".
_TITLE = re.compile(r"[A-Z][a-z'’]+(?: [A-Za-z'’]+){0,2}:?")
_JOINS = re.compile(r"\b(?:join|sl ?st|ss|slip st(?:itch)?) (?:with|to|in|into)\b|\bjoin\b")
_NO_JOINS = re.compile(r"\b(?:do not|don't|without) join(?:ing)?\b")
_SENTENCE = re.compile(r"(?<=[.!?])[\"')\]]?\s+(?=[\"'(\[]?[A-Z])")
_NUMBERED = re.compile(r"^\(?(?:step\s+)?\d{1,3}[.):]\s+", re.IGNORECASE)


@dataclass(slots=True)
class Rounds:
    """What the lines of one part hold.

    ``lines``: where each of ``texts`` came from; ``facts``: what it says of itself, by key.
    """

    texts: list[str] = field(default_factory=list)
    lines: list[int] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    make: int = 0
    facts: dict[str, str] = field(default_factory=dict)


def rounds_of(lines: Iterable[Said], lexicon: Lexicon) -> Rounds:
    """Part the rounds from what is said between them; no word is lost."""
    found = Rounds()
    for said in lines:
        found.make = found.make or _copies(said.text)
        if said.rank:
            found.notes.append(f"{_after(found)}{said.text}")
        elif _is_round(said.text, lexicon, begun=bool(found.texts)):
            found.texts.append(said.text)
            found.lines.append(said.line)
        elif found.texts and _belongs(found.texts[-1], said.text, lexicon):
            found.texts[-1] += f" {said.text}"
        else:
            _note(found, said.text)
    return found


def _note(found: Rounds, words: str) -> None:
    """Keep words that are no round; before the first one they may be facts of the part."""
    if not found.texts:
        facts, words = facts_of_part(words)
        found.facts |= facts
    if words:
        found.notes.append(f"{_after(found)}{words}")


def has_work(lines: Iterable[Said], lexicon: Lexicon) -> bool:
    """Whether any line is labelled as a round, has a printed count, or is read as work."""
    for said in lines:
        label = label_of(said.text)
        read = read_round("".join(line.body for line in split_lines(said.text)), lexicon)
        if (label is not None and label.kind) or read.stated is not None or read.again is not None:
            return True
        if works(read.nodes) and not unread_in(read.nodes):
            return True
    return False


def _copies(text: str) -> int:
    return copies_of(text, heading=False) if label_of(text) is None and len(text) < 80 else 0


def _after(found: Rounds) -> str:
    """Where a note stands: "After Rnd 5: "."""
    label = label_of(found.texts[-1]) if found.texts else None
    return f"After {label.label}: " if label is not None else ""


def _is_round(text: str, lexicon: Lexicon, *, begun: bool) -> bool:
    """Whether a line is worked; a doubtful one is, so that it is not passed over in silence."""
    if label_of(text) is not None:
        return True
    read = read_round(text, lexicon)
    if read.again is not None or read.even or read.until or _lasting(read):
        return True
    if works(read.nodes) and not unread_in(read.nodes):
        return True
    if _CRAFTS.match(plain(text)):
        return False
    if read.stated is not None and works(read.nodes):
        return True
    return begun and (works(read.nodes) or _names_stitch(text, lexicon))


def _lasting(read: RoundText) -> bool:
    """Whether something is said of the beginning chains of all rounds."""
    return bool(read.chains) or any(isinstance(n, Chain) and n.lasting for n in read.nodes)


def _names_stitch(text: str, lexicon: Lexicon) -> bool:
    words = [token.text for token in tokenize(text) if token.type is Type.WORD]
    singles = {phrase[0] for phrase in lexicon.phrases if len(phrase) == 1}
    return any(word in singles for word in words)


def _belongs(before: str, text: str, lexicon: Lexicon) -> bool:
    """Whether words can stand behind the round they follow without being read as part of it.

    A line for several rounds gets none: they would be done in each.
    """
    if _TITLE.fullmatch(text) and _meaning_is_none(text, lexicon):
        return False
    label = label_of(before)
    if label is None or label.count != 1 or before[-1] not in ".)]}!":
        return False
    if len(before) + len(text) >= LONGEST:
        return False
    body = "".join(line.body for line in split_lines(before))
    alone, both = read_round(body, lexicon), read_round(f"{body} {text}", lexicon)
    return _meaning(alone) == _meaning(both)


def _meaning_is_none(text: str, lexicon: Lexicon) -> bool:
    """Whether words ask for nothing at all, not even to turn or to cut the yarn."""
    return all(isinstance(node, Note) for node in read_round(text, lexicon).nodes)


def _meaning(read: RoundText) -> tuple[object, ...]:
    """What of a reading could change a count."""
    nodes = tuple(node for node in read.nodes if not isinstance(node, Note | Act))
    return nodes, read.stated, read.again, read.until, read.even


def worked_of(texts: Iterable[str]) -> Worked:
    """How a part grows, by its labels and by whether its rounds are closed."""
    labels = [label for label in map(label_of, texts) if label is not None]
    kinds = {label.kind for label in labels if label.kind}
    if kinds == {"row"}:
        return Worked.ROWS
    words = [_NO_JOINS.sub("", plain(text)) for text in texts]
    return Worked.JOINED if any(map(_JOINS.search, words)) else Worked.SPIRAL


def steps_of(lines: Iterable[Said]) -> list[str]:
    """Making up as sentences to tick off."""
    return [step for said in lines for step in _sentences(_NUMBERED.sub("", said.text))]


def _sentences(text: str) -> Iterator[str]:
    for sentence in _SENTENCE.split(text):
        if sentence.strip():
            yield from textwrap.wrap(sentence.strip(), TEXT)


def note_of(notes: Sequence[str]) -> tuple[str, list[str]]:
    """``(note, rest)``: as many of the notes as a part's note has room for, and the others."""
    kept: list[str] = []
    for index, note in enumerate(notes):
        if len(" ".join([*kept, note])) > TEXT:
            return " ".join(kept), list(notes[index:])
        kept.append(note)
    return " ".join(kept), []


def made_part(name: str, found: Rounds, copies: int, hook: str) -> tuple[Part, list[str]]:
    """The part, and those of its notes that it has no room for."""
    note, rest = note_of(found.notes)
    facts = found.facts
    part = Part(
        name=name,
        make=copies or found.make or 1,
        worked=Worked(facts["worked"].lower()) if "worked" in facts else worked_of(found.texts),
        rounds="".join(f"{text}\n" for text in found.texts),
        choose=facts.get("choose", ""),
        below=tuple(map(int, re.findall(r"\d+", facts.get("below", "")))),
        note=note,
        hook=facts.get("hook", hook),
    )
    return part, rest
