"""Coming back to a piece: what a maker must know who put it down some time ago."""

from __future__ import annotations

from datetime import datetime, timedelta

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.notation.problems import visible
from tracker.session import worksheet
from tracker.session.current import step_words
from tracker.session.glance import glance, line, numbered
from tracker.session.naming import label

if TYPE_CHECKING:
    from tracker.pattern.plan import Plan
    from tracker.session.state import Spot, State

A_WHILE = timedelta(hours=1)
"""Put down for longer than this, a piece is looked at anew before it is gone on with.

Our own choice, no source.
"""

ADVICE = "Take out the last stitch if your tension has changed since (common practice)."
"""One maker always does so after a pause within a round:
https://prayersncrafts.blogspot.com/2010/11/crochet-stopping-in-middle-of-rowround.html
"""

HOLD = "Put a marker through the loop on the hook, so that it cannot run (common practice)."
"""http://manycreativegifts.blogspot.com/2020/03/tip-stitch-markers.html"""

Fact = tuple[str, str]
"""A short label, and the words that belong to it."""


class Card(NamedTuple):
    """What is shown before the work goes on; all texts are plain text.

    Attributes:
        piece: the pattern's title and the size.
        ago: how long the piece lay ("4 days ago"); "" where that is not known.
        when: when it was put down, as the clock said then ("2026-03-02 10:15"), or "".
        where: round, part and copy.
        facts: what was done last, what comes next, with what; the notes.
        find: how the place is found again by counting the work itself.
        advice: a sentence, "" where there is none to give.
    """

    piece: str
    ago: str
    when: str
    where: str
    facts: tuple[Fact, ...]
    find: tuple[Fact, ...]
    advice: str

    @property
    def lines(self) -> tuple[str, ...]:
        """The card as plain lines, control characters made visible."""
        put_down = f"put down {self.ago}, {self.when}" if self.ago else "put down just now"
        rows = [f"{name}: {words}" for name, words in (*self.facts, *self.find)]
        advice = [self.advice] if self.advice else []
        head = (self.piece, put_down, self.where)
        return tuple(visible(line) for line in (*head, *rows, *advice))


def card(plan: Plan, state: State, when: str, now: datetime) -> Card:
    """The card of a piece that was last written to at ``when`` (as its file has it)."""
    seen = glance(plan, state)
    spot = worksheet.here(plan, state)
    copy = f", copy {seen.copy} of {seen.copies}" if seen.copies > 1 else ""
    return Card(
        piece=", ".join(word for word in (seen.title, seen.size) if word),
        ago=ago(when, now),
        when=when[:16].replace("T", " "),
        where=" · ".join(w for w in (numbered(seen), seen.own, seen.part + copy) if w),
        facts=_facts(plan, state, spot),
        find=() if seen.making_up else _find(plan, spot, seen.place.round),
        advice=ADVICE if spot.step and not seen.at_end and not seen.making_up else "",
    )


def parting(plan: Plan, state: State) -> tuple[str, ...]:
    """What is said when a piece is put down: the place, and to hold the loop."""
    seen = glance(plan, state)
    live = seen.place.round or seen.place.step
    over = seen.making_up or seen.part_done or seen.piece_done
    return (line(seen), *([HOLD] if live and not over else []))


def lay_a_while(when: str, now: datetime) -> bool:
    """Whether a piece last written to at ``when`` was put down more than a while ago."""
    gap = _gap(when, now)
    return gap is not None and gap > A_WHILE


def ago(when: str, now: datetime) -> str:
    """How long ago in words; "" where ``when`` is no time of the past."""
    gap = _gap(when, now)
    if gap is None:
        return ""
    minutes = gap // timedelta(minutes=1)
    if minutes < 60:
        return _many(minutes, "minute") if minutes else "just now"
    return _many(minutes // 60, "hour") if minutes < 48 * 60 else _many(gap.days, "day")


def _many(number: int, unit: str) -> str:
    return f"{number} {unit}{'' if number == 1 else 's'} ago"


def _gap(when: str, now: datetime) -> timedelta | None:
    try:
        then = datetime.fromisoformat(when)
    except ValueError:
        return None
    gap = now - (then if then.tzinfo else then.replace(tzinfo=now.tzinfo))
    return gap if gap >= timedelta(0) else None


def _facts(plan: Plan, state: State, spot: Spot) -> tuple[Fact, ...]:
    seen = glance(plan, state)
    link = ": " if seen.at_end else " "
    hook = f"hook {seen.hook}" if seen.hook else ""
    facts = (
        ("last", _done_last(plan, state, spot)),
        ("next", link.join(word for word in (seen.step_text, seen.step_where) if word)),
        ("with", " · ".join(word for word in (hook, seen.colour) if word)),
        ("kept here", seen.memo),
        ("note", worksheet.part_at(plan, spot).part.note),
    )
    return tuple((name, words) for name, words in facts if words)


def _done_last(plan: Plan, state: State, spot: Spot) -> str:
    """The step before this one, or that a round or nothing was done."""
    if spot.step:
        return step_words(worksheet.round_at(plan, spot).walk[spot.step - 1])
    earlier = worksheet.earlier_round(plan, state, spot)
    return f"{label(plan, earlier)} was finished" if earlier else "nothing of this part yet"


def _find(plan: Plan, spot: Spot, before: int) -> tuple[Fact, ...]:
    """What to count on the work: rounds, then stitches, then loops.

    A maker counts from the marked stitch and leaves the loop on the hook out:
    https://nicecrochet.com/how-do-you-put-on-a-stitch-marker/
    """
    part = worksheet.part_at(plan, spot)
    rows = part.part.worked.value == "rows"
    made = worksheet.round_at(plan, spot).walk.made_before(spot.step)
    earlier = part.rounds[: part.place(spot.round)]
    whole = before - sum(not (one.own or one.label[-1:].isdigit()) for one in earlier)
    return (
        ("rows" if rows else "rounds", f"{whole} whole, {_begun(plan, spot)}"),
        ("stitches", f"{made} since the {'turn' if rows else 'marker'}"),
        ("on the hook", _loops(spot)),
    )


def _begun(plan: Plan, spot: Spot) -> str:
    if spot.step == 0 and spot.loop == 0:
        return f"{label(plan, spot)} not begun"
    done = "worked to its end" if worksheet.at_end(plan, spot) else "begun"
    return f"{label(plan, spot)} {done}"


def _loops(spot: Spot) -> str:
    if spot.loop:
        return f"a stitch half made: {spot.loop} of its loops done"
    return "1 loop, not a stitch"
