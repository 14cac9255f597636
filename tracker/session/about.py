"""What the shelf tells of a piece: how far it is, how long it took, what comes next."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session import worksheet
from tracker.session.access import StoreError
from tracker.session.contents import read_piece
from tracker.session.files import RealDisk
from tracker.session.glance import Glance, glance, numbered
from tracker.session.looking import look, plan_at
from tracker.session.places import strays
from tracker.session.returning import ago
from tracker.session.shelf import OnShelf, Standing, piece_of, pieces
from tracker.session.worked import worked

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import State


@dataclass(frozen=True, slots=True)
class About:
    """A piece as the shelf tells of it; all texts are plain text.

    Attributes:
        piece: its file, name and standing.
        title, size: the pattern's, ``size`` "" in one size.
        where: part, copy and round.
        share: stitches done, in hundredths of all, rounded down.
        done: all of it is done, making up too.
        worked: seconds it was worked on.
        touched: how long ago it was put down, "" where that is not known.
        step: what comes next.
        trouble: why it cannot be read, "" if it can; the rest is then empty.
    """

    piece: OnShelf
    title: str = ""
    size: str = ""
    where: str = ""
    share: int = 0
    done: bool = False
    worked: int = 0
    touched: str = ""
    step: str = ""
    trouble: str = ""


def about(piece: OnShelf, now: datetime) -> About:
    """What the shelf tells of a piece, which may be open elsewhere."""
    try:
        _, found = read_piece(piece.path, RealDisk())
        plan = plan_at(piece.path, found)
    except StoreError as error:
        return About(piece, trouble=str(error))
    state = found.history.state
    seen = glance(plan, state)
    return About(
        piece=piece,
        title=seen.title,
        size=seen.size,
        where=_where(seen),
        share=share(plan, state),
        done=seen.piece_done,
        worked=worked(found.history),
        touched=ago(found.when, now),
        step=(": " if seen.at_end else " ").join(w for w in (seen.step_text, seen.step_where) if w),
    )


LOST = "not found where it was, {path}: hookside work PATH, with where it is now, brings it back"


def all_about(folder: Path, now: datetime) -> list[About]:
    """What the shelf tells of all pieces, those that lie elsewhere last."""
    mine = [about(piece, now) for piece in pieces(folder)]
    return [*mine, *(about(one, now) if one.touched else lost(one) for one in strays(folder))]


def lost(piece: OnShelf) -> About:
    """What the shelf tells of a piece whose file is not where it was."""
    return About(piece, trouble=LOST.format(path=piece.path))


def titled(folder: Path, title: str) -> OnShelf | None:
    """The piece written last that was begun under this title, whatever its name is now."""
    every = pieces(folder)
    found = next((piece for piece in every if _title(piece) == title), None)
    return found and piece_of(found, every)


def _title(piece: OnShelf) -> str:
    try:
        return look(piece.path).head.title
    except StoreError:
        return ""


def share(plan: Plan, state: State) -> int:
    """Stitches done, in hundredths of all that the piece has so far, rounded down."""
    every = done = 0
    for part, copy in worksheet.needed(plan, state):
        whole = _stitches(plan, state, part, copy)
        every += whole
        done += whole if (part, copy) in state.finished else _done(plan, state, part, copy)
    return done * 100 // every if every else 0


def _stitches(plan: Plan, state: State, part: int, copy: int, before: int | None = None) -> int:
    """Stitches of a part's rounds as often as they were worked, up to a line if given."""
    planned = plan.parts[part].of(copy)
    return sum(
        one.walk.makes * state.times(part, copy, planned.number(at))
        for at, one in enumerate(planned.rounds[:before])
    )


def _done(plan: Plan, state: State, part: int, copy: int) -> int:
    spot = worksheet.settle(plan, state, state.left_at(part, copy))
    walk = worksheet.round_at(plan, spot).walk
    before = _stitches(plan, state, part, copy, plan.parts[part].of(copy).place(spot.round))
    return before + spot.nth * walk.makes + walk.made_before(spot.step)


def _where(seen: Glance) -> str:
    copy = f", copy {seen.copy} of {seen.copies}" if seen.copies > 1 else ""
    return f"{seen.part}{copy} · {numbered(seen)}"


def spoken_time(seconds: int) -> str:
    """A time worked: "3 h 10 min"; minutes are rounded down."""
    hours, minutes = divmod(seconds // 60, 60)
    return f"{hours} h {minutes} min" if hours else f"{minutes} min"


STANDING = {Standing.IN_WORK: "", Standing.SET_ASIDE: "set aside", Standing.FINISHED: "finished"}


def line(one: About) -> str:
    """A piece of the shelf as one line."""
    if one.trouble:
        return f"{one.piece.name} · {one.trouble}"
    words = (
        one.piece.name,
        one.size,
        STANDING[one.piece.standing],
        one.where,
        f"{one.share} % done",
        one.touched and f"put down {one.touched}",
        spoken_time(one.worked) + " worked" if one.worked >= 60 else "",
        "the piece is done" if one.done else f"next: {one.step}",
    )
    return " · ".join(word for word in words if word)
