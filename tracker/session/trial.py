"""What comes of a round as it is typed: what it takes and makes, and what follows gets."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tracker.fabric.trees import every
from tracker.fabric.verdicts import Verdict
from tracker.lean import TYPE_CHECKING
from tracker.notation.tree import Note
from tracker.pattern.own import ONE_AT_A_TIME, typed_line

if TYPE_CHECKING:
    from tracker.notation.round_text import RoundText
    from tracker.pattern.changes import Change
    from tracker.pattern.checked import CheckedRound
    from tracker.pattern.own import OwnVersion
    from tracker.pattern.plan import PlannedPart
    from tracker.session.state import Spot

TYPE = "Type the round, such as: *sc 4, inc; rep, or: evenly to 60"
SAME = "So it is worked now: type over it to work it otherwise."
COUNT = "To keep it all the same, write the count it ends on at its end, such as (36)."
UNREAD = "Enter once more keeps it: it is worked by its text."
REMARK = "Words are taken for a remark; enter once more keeps it so."
TAKEN = "The words are taken otherwise than by habit; enter once more keeps it so."
UNEVEN = "It does not come out even; enter once more keeps it all the same."


@dataclass(frozen=True, slots=True)
class Tried:
    """All texts are plain text, one sentence or two each.

    Attributes:
        below: what the round below leaves.
        says: what the round takes and makes, or what is wrong with it.
        hint: what may be meant, or "".
        fault: offsets (start, end) of the words at fault in what was typed; equal for none.
        follows: what the next round gets, and whether it still comes out; "" where the
            round cannot be accepted.
        well: nothing is wrong with the round itself.
        doubt: why it takes a second yes to accept it; "" where one is enough.
        refused: why it cannot be accepted as it is; "" where it can.
    """

    below: str = ""
    says: str = ""
    hint: str = ""
    fault: tuple[int, int] = (0, 0)
    follows: str = ""
    well: bool = False
    doubt: str = ""
    refused: str = ""


def below(part: PlannedPart, spot: Spot | None) -> str:
    """What the round at ``spot`` leaves for the one that is typed."""
    if spot is None:
        return "Nothing is below."
    planned = part.rounds[part.place(spot.round)]
    leaves = "?" if planned.ends_on is None else str(planned.ends_on)
    return f"{planned.label} below leaves {_sts(leaves)}."


def tried(printed: PlannedPart, version: OwnVersion, change: Change) -> Tried:
    """What comes of a change, by the version of the part that has it."""
    at = version.part.place(change.round)
    if change.words == "":
        found = Tried(says="Left out.", well=True)
        return replace(found, below=_under(version, at), follows=_follows(printed, version, at))
    found = _round(version, change.round)
    follows = "" if found.refused else _follows(printed, version, at + 1)
    return replace(found, below=_under(version, at), follows=follows)


def _under(version: OwnVersion, at: int) -> str:
    if at == 0:
        return "Nothing is below."
    earlier = version.part.rounds[at - 1]
    known = version.checked.get(version.part.number(at)) if at < len(version.part.rounds) else None
    count = known.below[0] if known is not None and known.below else earlier.ends_on
    return f"{earlier.label} below leaves {_sts('?' if count is None else count)}."


def _round(version: OwnVersion, number: int) -> Tried:
    checked = version.checked[number]
    wrong = next((m for m in checked.messages if m.serious), None)
    note = next((m.text for m in checked.messages if not m.serious), "")
    if wrong is None:
        proved = checked.verdict is Verdict.AGREES
        doubt = TAKEN if note and not proved else ""
        return Tried(says=_even(checked), hint=note and _sentence(note), well=True, doubt=doubt)
    start = wrong.column - 1
    found = Tried(
        says=_sentence(wrong.text),
        hint=wrong.hint and _sentence(wrong.hint),
        fault=(start, start + wrong.length),
    )
    if wrong.text == ONE_AT_A_TIME:
        return replace(found, refused="Type one round at a time.")
    if checked.verdict is not Verdict.UNREAD:
        return replace(found, doubt=UNEVEN)
    return replace(found, doubt=UNREAD) if checked.stated else replace(found, refused=COUNT)


def _even(checked: CheckedRound) -> str:
    takes, makes = checked.takes, checked.makes
    made = f"makes {makes[0]}" if makes else ""
    agrees = ", as counted" if checked.verdict is Verdict.AGREES else ""
    took = f"takes {takes[0]}, " if takes and checked.below else ""
    even = ": comes out even" if checked.below else ""
    open_ = f"; worked {checked.until}" if checked.until else ""
    return _sentence(f"{took}{made}{agrees}{even}{open_}")


def _follows(printed: PlannedPart, version: OwnVersion, at: int) -> str:
    """What the round at a place of the version gets from the one that is tried."""
    if at >= len(version.part.rounds):
        return "Nothing follows in this part."
    number = version.part.number(at)
    checked = version.checked[number]
    count = checked.below[0] if checked.below else None
    was = printed.rounds[number].below if number < len(printed.rounds) else None
    other = f" instead of {was}" if was is not None and was != count else ""
    gets = f"Then {checked.label} gets {_sts('?' if count is None else count)}{other}"
    wrong = next((m.text for m in checked.messages if m.serious), "")
    if wrong:
        return f"{gets} and does not come out: {wrong}."
    as_printed = " as printed" if checked.verdict is Verdict.AGREES else ""
    return f"{gets} and makes {checked.makes[0]}{as_printed}." if checked.makes else f"{gets}."


def with_remark(found: Tried, read: RoundText, words: str) -> Tried:
    """The same, with the words that were taken for a remark, where nothing worse is to be said."""
    notes = [node for node in every(read.nodes) if isinstance(node, Note)]
    notes = [node for node in notes if any(map(str.isalpha, read.text[node.start : node.end]))]
    if not notes or not found.well:
        return found
    said = read.text[notes[0].start : notes[0].end]
    start = typed_line(words).where(notes[0].start)[1] - 1
    hint = f"Taken for a remark: “{said.strip()}”. {found.hint}".rstrip()
    return replace(found, hint=hint, fault=(start, start + len(said)), doubt=REMARK)


def _sts(count: int | str) -> str:
    return f"{count} stitch" if count == 1 else f"{count} stitches"


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] + "."
