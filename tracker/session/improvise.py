"""Improvising: the next round worked otherwise, added, worked once more or left out.

The piece keeps its own version of the pattern; the pattern itself is never touched.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from tracker.fabric.verdicts import Verdict
from tracker.lean import TYPE_CHECKING
from tracker.pattern.changes import Change
from tracker.pattern.own import Bench, OwnVersion, own_version, typed_line
from tracker.session import trial, worksheet
from tracker.session.events import Changing, Event
from tracker.session.naming import label
from tracker.session.presses import Press
from tracker.session.spacing import evenly
from tracker.session.state import Spot, State
from tracker.session.trial import Tried
from tracker.session.typed import kept

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tracker.fabric.steps import Walk
    from tracker.pattern.plan import Plan, PlannedPart

LONGEST = 1_000
"""Characters of a round that is typed."""


class Deed(StrEnum):
    """What is done with a round."""

    CHANGE = "change"
    ADD = "add"
    OMIT = "omit"
    RESTORE = "restore"


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that can be done from here.

    Attributes:
        deed: what.
        title: the same in words ("Rnd 9 otherwise").
        spot: the start of the round it is done to, or that an added one is to follow;
            None for one that comes before all.
        words: what the line begins with; nothing is typed where a round is left out or
            brought back.
    """

    deed: Deed
    title: str
    spot: Spot | None
    words: str = ""

    @property
    def typed(self) -> bool:
        """Whether words are typed for it."""
        return self.deed in (Deed.CHANGE, Deed.ADD)


class Improvising:
    """What can be done at one place, tried out line by line as it is typed.

    ``printed`` is the plan as the pattern has it, ``plan`` with what was changed before.
    Not for making up: there ``choices`` is empty.
    """

    def __init__(self, printed: Plan, plan: Plan, state: State) -> None:
        self._printed = printed
        self._plan = plan
        self._state = state
        self._here = worksheet.here(plan, state)
        self._part: PlannedPart = worksheet.part_at(plan, self._here)
        self._bench = Bench(printed, self._part.part)
        self._version = state.version(*self._here.of)
        self.choices = () if self._part.making_up else tuple(self._choices())

    def tried(self, choice: Choice, words: str) -> Tried:
        """What comes of a choice with these words, before it is accepted."""
        if choice.typed and not words.strip():
            return Tried(below=trial.below(self._part, self._before(choice)), refused=trial.TYPE)
        if choice.deed is Deed.CHANGE and words.strip() == choice.words.strip():
            return replace(self._tried(choice, words), doubt="", refused=trial.SAME)
        return self._tried(choice, words)

    def _tried(self, choice: Choice, words: str) -> Tried:
        change = self._change(choice, words)
        version = self._own(change)
        tried = trial.tried(self._printed.parts[self._here.part], version, change)
        if change.words not in (None, "", words):
            spread = self._spread(choice, words)
            hint = tried.hint or ("" if spread == words else spread)
            return replace(tried, fault=(0, 0), hint=hint)
        return trial.with_remark(tried, self._bench.read(words), words) if choice.typed else tried

    def press(self, choice: Choice, words: str) -> Press:
        """Do it, unless `Tried.refused` says why not."""
        tried = self.tried(choice, words)
        if tried.refused:
            return Press(None, tried.refused)
        change = self._change(choice, words)
        if choice.typed:
            change = change._replace(words=kept(typed_line(change.words or "").body, LONGEST))
        changing = Changing(*self._here.of, change, self._spared(choice))
        spot = self._spot(choice, change) or self._settled(change)
        return Press(Event(spot=spot, changing=changing), self._said(choice, change))

    def _choices(self) -> Iterator[Choice]:
        here = self._here
        ended, start = worksheet.at_end(self._plan, here), worksheet.start_of(here)
        within = here != start and not ended
        if within:
            yield from self._to_round(start, rest=True)
        worked = start if within or ended else self._earlier(start)
        coming = self._following(start) if within or ended else start
        if coming is not None:
            yield from self._to_round(coming)
        yield from self._more_rounds(worked, coming)
        if coming is not None and len(self._part.rounds) > 1:
            yield Choice(Deed.OMIT, f"{self._label(coming)} left out", coming)
        for spot in self._left_out(coming):
            title = f"{self._printed_label(spot)} after all, as printed"
            yield Choice(Deed.RESTORE, title, spot)

    def _to_round(self, spot: Spot, *, rest: bool = False) -> Iterator[Choice]:
        planned, named = worksheet.round_at(self._plan, spot), self._label(spot)
        begun = ", of which you have begun" if rest else ""
        yield Choice(Deed.CHANGE, f"{named} otherwise{begun}", spot, self._words(spot))
        if planned.own == "changed":
            yield Choice(Deed.RESTORE, f"{named} as printed again", spot)

    def _more_rounds(self, worked: Spot | None, coming: Spot | None) -> Iterator[Choice]:
        if coming is not None:
            where = f"before {self._label(coming)}"
        else:
            assert worked is not None
            where = f"after {self._label(worked)}"
        yield Choice(Deed.ADD, f"a round of yours {where}", worked)
        if worked is not None:
            yield Choice(
                Deed.ADD, f"{self._label(worked)} once more {where}", worked, self._words(worked)
            )

    def _left_out(self, coming: Spot | None) -> Iterator[Spot]:
        """Rounds of the pattern that were left out just here."""
        at = self._part.place(coming.round) if coming else len(self._part.rounds)
        printed = len(self._printed.parts[self._here.part].rounds)
        for number, before in self._part.gone:
            if before == at and number < printed:
                yield Spot(*self._here.of, number)

    def _words(self, spot: Spot) -> str:
        """A round's words to begin from: in the size worked, without the count it ended on."""
        planned = worksheet.round_at(self._plan, spot)
        words = self._bench.for_size(planned.text)
        stated = self._bench.read(words).stated
        if stated is None or planned.verdict is Verdict.UNREAD:
            return words
        return f"{words[: stated.start].rstrip()} {words[stated.end :].lstrip()}".rstrip()

    def _change(self, choice: Choice, words: str) -> Change:
        number = -1 if choice.spot is None else choice.spot.round
        if choice.deed is Deed.OMIT:
            return Change(number, "")
        if choice.deed is Deed.RESTORE:
            return Change(number, None)
        words = self._spread(choice, self._resolved(words))
        if choice.deed is Deed.CHANGE:
            return Change(number, words)
        return Change(self._free_number(), words, number)

    def _free_number(self) -> int:
        """The next number of the part that no round has, in any copy."""
        part = self._here.part
        given = [
            change.round
            for (of, _), changes in self._state.changes.items()
            for change in changes
            if of == part
        ]
        return max([len(self._printed.parts[part].rounds) - 1, *given]) + 1

    def _resolved(self, words: str) -> str:
        """The words of the round that is asked for again, in place of "rep Rnd 8"."""
        again = self._bench.read(words).again
        if again is None or again.first != again.last or again.times not in (None, (1,)):
            return words
        at = self._part.place(self._here.round)
        for place, planned in enumerate(self._part.rounds):
            named = planned.label.endswith(f" {again.first}")
            if named or (again.first == 0 and place == at):
                return self._words(Spot(*self._here.of, self._part.number(place)))
        return words

    def _spread(self, choice: Choice, words: str) -> str:
        """The words of an evenly spaced round, in place of "evenly to 60"."""
        below = self._before(choice)
        if below is None:
            return words
        like = choice.spot if choice.deed is Deed.CHANGE and choice.spot else below
        planned = (worksheet.round_at(self._plan, spot) for spot in (like, below))
        alike, under = planned
        return evenly(words, self._plan.pattern, alike, under.ends_on)

    def _own(self, change: Change) -> OwnVersion:
        changes = (*self._version, change)
        return own_version(self._printed, self._here.part, changes, self._bench)

    def _spared(self, choice: Choice) -> tuple[int, ...]:
        """Later copies that have got past the round already."""
        at = -1 if choice.spot is None else self._part.place(choice.spot.round)
        last = (at + 1, -1) if choice.deed is Deed.ADD else (at, 0)
        part, copy = self._here.of
        begun = {of[1] for of in (*self._state.left, *self._state.finished) if of[0] == part}
        later = sorted(one for one in begun if one > copy)
        return tuple(one for one in later if self._reached(one) > last)

    def _reached(self, copy: int) -> tuple[int, int]:
        """How far a copy is: the place of its round in the part, and the step."""
        part = self._here.part
        planned = self._plan.parts[part].of(copy)
        if (part, copy) in self._state.finished:
            return len(planned.rounds), 0
        left = worksheet.settle(self._plan, self._state, self._state.left_at(part, copy))
        return planned.place(left.round), left.step

    def _spot(self, choice: Choice, change: Change) -> Spot | None:
        """Where the maker stands then; None where they stay."""
        here, start = self._here, worksheet.start_of(self._here)
        within = here != start and not worksheet.at_end(self._plan, here)
        if choice.deed is Deed.ADD:
            ready = here == start or here.of in self._state.finished
            return Spot(*here.of, change.round) if ready else None
        if choice.spot != start:
            before = choice.deed is Deed.RESTORE and here == start
            return choice.spot if before else None
        if choice.deed is Deed.OMIT:
            return self._after_omitting(start)
        if not within:
            return None
        part = self._own(change).part
        return self._as_far(part.rounds[part.place(change.round)].walk)

    def _after_omitting(self, start: Spot) -> Spot:
        following, earlier = self._following(start), self._earlier(start)
        if following is not None:
            return following
        return worksheet.end_of(self._plan, earlier) if earlier else start

    def _settled(self, change: Change) -> Spot | None:
        """Where the maker stands whose round is read otherwise for what follows it; else None.

        So it may be with a round of theirs on what is not known, such as the first of a part.
        """
        here, part = self._here, self._own(change).part
        if here.round not in part.numbers or here.of in self._state.finished:
            return None
        to = self._as_far(part.rounds[part.place(here.round)].walk)
        return to if to.step != here.step else None

    def _as_far(self, walk: Walk) -> Spot:
        """In a round already begun, worked so now: as many stitches made as there are."""
        here = self._here
        if worksheet.at_end(self._plan, here):
            return here._replace(step=len(walk), loop=0)
        made = worksheet.round_at(self._plan, here).walk.made_before(here.step)
        return here._replace(step=worksheet.step_with(walk, min(made, walk.makes)), loop=0)

    def _said(self, choice: Choice, change: Change) -> str:
        part = self._own(change).part
        named = part.rounds[min(part.place(change.round), len(part.rounds) - 1)].label
        words = {
            Deed.CHANGE: f"{named} otherwise: {change.words}",
            Deed.ADD: f"{named} added: {change.words}",
            Deed.OMIT: f"{choice.title}",
            Deed.RESTORE: f"{named} as printed",
        }[choice.deed]
        later = self._part.part.make - 1 > self._here.copy
        return f"in this copy and those to come, {words}" if later else words

    def _before(self, choice: Choice) -> Spot | None:
        """The round below the one that is done."""
        if choice.deed is Deed.ADD or choice.spot is None:
            return choice.spot
        return self._earlier(choice.spot)

    def _earlier(self, spot: Spot) -> Spot | None:
        return worksheet.earlier_round(self._plan, self._state, spot)

    def _following(self, spot: Spot) -> Spot | None:
        return worksheet.following_round(self._plan, self._state, spot)

    def _label(self, spot: Spot) -> str:
        return label(self._plan, spot)

    def _printed_label(self, spot: Spot) -> str:
        return self._printed.parts[spot.part].rounds[spot.round].label
