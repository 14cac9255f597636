"""All that one look at the work must tell, worked out from the place and the pattern."""

from __future__ import annotations

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.notation.problems import visible
from tracker.session import mending, worksheet
from tracker.session.current import at_end, at_step, step_words
from tracker.session.lookup import HowTo
from tracker.session.naming import spot_words

if TYPE_CHECKING:
    from tracker.fabric.steps import InRepeat, Walk
    from tracker.fabric.verdicts import Verdict
    from tracker.pattern.plan import Plan
    from tracker.session.place import Asking, Pace, Place
    from tracker.session.state import Spot, State

COMING = 8
"""Rounds to come that a glance lists."""


class Coming(NamedTuple):
    """A round still to come, or one of the making-up sentences: label and text."""

    label: str
    text: str
    ends_on: int | None


class PartLine(NamedTuple):
    """One part in the list of parts.

    ``copies`` has, for each copy, (rounds done, rounds in all, done or not).
    ``choose`` names the group it is one choice of; ``chosen`` is False for a trim that
    was set aside for another.
    """

    name: str
    copies: tuple[tuple[int, int, bool], ...]
    choose: str
    chosen: bool
    here: bool


class Glance(NamedTuple):
    """Everything the work screen shows. All texts are plain text, never markup.

    Attributes:
        title, size: the piece's pattern and size ("" in one size).
        note: the part's note while its first round is worked; "" later or if it has none.
        part, copy, copies: part name, which copy (from 1) of how many.
        round_label, round, rounds: "Rnd 7", its number (from 1) in the part, of how many.
        colour: yarn in hand as a maker says it ("A, moss"), "" if the pattern names none.
        hook: hook size as written, "" if not given.
        step_text, step_where: the next step and where it goes ("hdc", "in the same st");
            at a round's end what is asked of the maker.
        variant: "first" or "last" where the special stitch is worked differently there.
        loops: the loops of the stitch, one sentence each; ``loop`` of them are done.
        how: how the current stitch is made; see `how_to`.
        made, ends_on: stitches made so far in this round; what it must end on, or None.
        after: what comes after the next step ("then sc2tog"), "" at the end.
        repeats: the repeats the step stands in, outermost first.
        instruction: the words of the round as written.
        now: offsets (start, end) of the current words in ``instruction``.
        done: offset up to which the words are done.
        verdict, warning: what the check says of the round; one sentence, "" if all well.
        until: for a round of open length, the words that end it; "" otherwise.
        asking: the count of the finished round is asked for now.
        at_end: the maker stands at the round's end; ``part_done``, ``piece_done`` likewise.
        last_press: what the last press did, in words ("next stitch", "back to stitch 4").
        coming: the next rounds, at most eight.
        pace, count_asking: the maker's choices.
        mark: label of the marked place, "" if none.
        trouble: why the last change is not yet saved, "" if all is saved.
        parts: all parts.
        off: that the count of the round just worked is wrong, in one sentence; "" if not.
        right: how this round comes right after a wrong count below it; "" where it need not.
        memo: the notes of the round, and in a further copy what the first one tells.
        left: for a round of open length, how many are left to it; "" where nothing tells.
        own: "changed" or "added" where the round is the maker's own; "" where it is printed.
    """

    title: str
    size: str
    place: Place
    note: str
    part: str
    copy: int
    copies: int
    round_label: str
    round: int
    rounds: int
    colour: str
    hook: str
    step_text: str
    step_where: str
    variant: str
    loops: tuple[str, ...]
    loop: int
    how: HowTo
    made: int
    ends_on: int | None
    after: str
    repeats: tuple[InRepeat, ...]
    instruction: str
    now: tuple[int, int]
    done: int
    verdict: Verdict
    warning: str
    until: str
    asking: bool
    at_end: bool
    part_done: bool
    piece_done: bool
    making_up: bool
    last_press: str
    coming: tuple[Coming, ...]
    pace: Pace
    count_asking: Asking
    loops_shown: bool
    mark: str
    trouble: str
    parts: tuple[PartLine, ...]
    off: str
    right: str
    memo: str
    left: str
    own: str

    @property
    def how_to(self) -> str:
        """A short how-to of the current stitch, "" where there is none."""
        return self.how.words


def glance(plan: Plan, state: State, *, last_press: str = "", trouble: str = "") -> Glance:
    """All that the screen shows, from the place and the pattern alone."""
    spot = worksheet.here(plan, state)
    part, planned = worksheet.part_at(plan, spot), worksheet.round_at(plan, spot)
    ended = worksheet.at_end(plan, spot)
    off = mending.off_below(plan, state, spot)
    place = worksheet.place(plan, state, spot)
    left = _left(plan, state) if planned.until else ""
    return Glance(
        title=plan.pattern.title,
        size=plan.size,
        place=place,
        note="" if place.round else " ".join(part.part.note.split()),
        part=part.name,
        copy=spot.copy + 1,
        copies=part.part.make,
        round_label=planned.label,
        round=place.round + 1,
        rounds=worksheet.rounds_in(plan, state, *spot.of),
        hook=part.part.hook or (plan.pattern.gauge.hook if plan.pattern.gauge else ""),
        made=planned.walk.made_before(spot.step),
        ends_on=planned.ends_on,
        after=_after(planned.walk, spot),
        instruction=planned.text,
        verdict=planned.verdict,
        warning=planned.warning,
        until=planned.until,
        asking=worksheet.asking(plan, state),
        at_end=ended,
        part_done=spot.of in state.finished,
        piece_done=worksheet.piece_done(plan, state),
        making_up=part.making_up,
        last_press=last_press,
        coming=_coming(plan, state, spot),
        pace=state.pace,
        count_asking=state.asking,
        loops_shown=state.loops_shown,
        mark=spot_words(plan, state, state.mark) if state.mark else "",
        trouble=trouble,
        parts=_part_lines(plan, state, spot),
        off=_off(plan, state),
        right=mending.words(planned.walk, off) if off else "",
        memo=_memo(plan, state),
        left=left,
        own=planned.own,
        **(at_end(plan, state, spot, left) if ended else at_step(plan, spot, off)),
    )


def _memo(plan: Plan, state: State) -> str:
    # Imported here, since most rounds have nothing to remember.
    if not state.notes and not state.spot.copy:
        return ""
    from tracker.session.memos import memo

    return memo(plan, state)


def _left(plan: Plan, state: State) -> str:
    if not plan.pattern.gauge and not state.measured:
        return ""
    # Imported here, since most rounds are counted and not measured.
    from tracker.session.lengths import left_words

    return left_words(plan, state)


def _off(plan: Plan, state: State) -> str:
    if mending.miscount(plan, state) is None:
        return ""
    # Imported here, since a place is told far more often than a count is wrong.
    from tracker.session.wrong import wrong

    found = wrong(plan, state)
    return found.words if found else ""


def _after(walk: Walk, spot: Spot) -> str:
    if spot.step + 1 >= len(walk):
        return ""
    step = walk[spot.step + 1]
    return f"then {step_words(step)}"


def _coming(plan: Plan, state: State, spot: Spot) -> tuple[Coming, ...]:
    found: list[Coming] = []
    following = worksheet.following_round(plan, state, spot)
    while following is not None and len(found) < COMING:
        planned = worksheet.round_at(plan, following)
        found.append(Coming(planned.label, planned.text, planned.ends_on))
        following = worksheet.following_round(plan, state, following)
    return tuple(found)


def _part_lines(plan: Plan, state: State, spot: Spot) -> tuple[PartLine, ...]:
    chosen = worksheet.chosen_parts(plan, state)
    return tuple(
        PartLine(
            name=planned.name,
            copies=tuple(_copy(plan, state, index, copy) for copy in range(planned.part.make)),
            choose=planned.part.choose,
            chosen=chosen[index],
            here=index == spot.part,
        )
        for index, planned in enumerate(plan.parts)
    )


def _copy(plan: Plan, state: State, part: int, copy: int) -> tuple[int, int, bool]:
    """Rounds done, rounds in all, done or not."""
    rounds = worksheet.rounds_in(plan, state, part, copy)
    if (part, copy) in state.finished:
        return rounds, rounds, True
    spot = worksheet.settle(plan, state, state.left_at(part, copy))
    done = worksheet.place(plan, state, spot).round + worksheet.at_end(plan, spot)
    return done, rounds, False


def line(seen: Glance) -> str:
    """The place as one plain line, control characters made visible."""
    title = ", ".join(word for word in (seen.title, seen.size) if word)
    copy = f", copy {seen.copy} of {seen.copies}" if seen.copies > 1 else ""
    if seen.piece_done:
        return visible(f"{title} · the piece is done")
    words = [title, seen.part + copy, *_round_words(seen), _next_words(seen)]
    return visible(" · ".join(words))


def _round_words(seen: Glance) -> list[str]:
    if seen.making_up:
        return [numbered(seen)]
    round_ = ", ".join(word for word in (numbered(seen), seen.own) if word)
    of = f" of {seen.ends_on}" if seen.ends_on is not None else ""
    stitches = f"{seen.made}{of} stitches made"
    repeats = "".join(f", repeat {r.k}" + (f" of {r.of}" if r.of else "") for r in seen.repeats)
    return [round_, stitches + repeats]


def numbered(seen: Glance) -> str:
    """The round's label with how many there are: "Rnd 7 of 24", "Row 3 (round 5 of 9)"."""
    if seen.making_up:
        return f"{seen.round} of {seen.rounds}"
    if seen.round_label.endswith(f" {seen.round}"):
        return f"{seen.round_label} of {seen.rounds}"
    return f"{seen.round_label} (round {seen.round} of {seen.rounds})"


def _next_words(seen: Glance) -> str:
    step = f"{seen.step_text} {seen.step_where}".rstrip()
    if seen.at_end:
        return ": ".join(word for word in (seen.step_text, seen.step_where) if word)
    return f"next: {step}"
