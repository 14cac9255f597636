"""Any work with rounds improvised in it: undone, redone, put down and taken up again."""

import shutil
import tempfile
from pathlib import Path

from faults import FaultyDisk
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from tests.session.test_improvise import RING
from tracker.pattern.load import load_text
from tracker.session.session import Session
from tracker.session.state import State
from tracker.session.surroundings import Surroundings
from tracker.session.worksheet import here

LINES = ("sc around", "*sc, inc; rep", "sc2tog x 3 (3)", "go wild all over (9)", "")
WORDS = st.sampled_from(LINES)


def around():
    return Surroundings(background=False, disk=FaultyDisk(), fold_at=900)


class Improvised(RuleBasedStateMachine):
    """The session against a list of the states that were."""

    def __init__(self):
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        pattern = load_text(RING.format(make=2))
        self.session = Session.start(pattern, "", self.folder, around=around())
        self.past: list[State] = []
        self.future: list[State] = []

    def act(self, action):
        before, undoable = self.session.state, self.session.can_undo
        action()
        if self.session.can_undo > undoable:
            self.past.append(before)
            self.future.clear()

    @rule(which=st.integers(0, 9), words=WORDS)
    def improvise(self, which, words):
        choices = self.session.improvising().choices
        chosen = choices[which % len(choices)]
        self.act(lambda: self.session.improvise(chosen, words or chosen.words))

    @rule(times=st.integers(1, 14))
    def next(self, times):
        for _ in range(times):
            self.act(self.session.next)

    @rule()
    def back(self):
        self.act(self.session.back)

    @rule(forward=st.booleans())
    def by_a_round(self, forward):
        self.act(self.session.next_round if forward else self.session.previous_round)

    @rule(copy=st.integers(0, 1))
    def go_to_copy(self, copy):
        self.act(lambda: self.session.go_to_part(0, copy))

    @rule(times=st.integers(1, 20))
    def undo(self, times):
        for _ in range(min(times, len(self.past))):
            self.future.append(self.session.state)
            self.session.undo()
            assert self.session.state == self.past.pop()

    @rule(times=st.integers(1, 20))
    def redo(self, times):
        for _ in range(min(times, len(self.future))):
            self.past.append(self.session.state)
            self.session.redo()
            assert self.session.state == self.future.pop()

    @rule()
    def a_pause(self):
        self.session.retry()
        self.session.retry()

    @rule()
    def put_down_and_take_up(self):
        before, plan = self.session.glance(), self.session.plan
        self.session.close()
        self.session = Session.open(self.session.path, around=around())
        assert self.session.notices == ()
        assert self.session.plan == plan
        after = self.session.glance()
        assert (after.place, after.instruction, after.made) == (
            before.place,
            before.instruction,
            before.made,
        )

    @invariant()
    def the_place_is_in_the_round_that_is_shown(self):
        seen, state = self.session.glance(), self.session.state
        assert here(self.session.plan, state) == state.spot
        place = seen.place
        rounds = self.session.plan.parts[0].of(place.copy).rounds
        assert seen.instruction in [planned.text for planned in rounds]
        assert 0 <= place.round < seen.rounds

    @invariant()
    def rounds_are_told_apart(self):
        for copy in (0, 1):
            labels = [planned.label for planned in self.session.plan.parts[0].of(copy).rounds]
            assert len(set(labels)) == len(labels)

    def teardown(self):
        while self.past:
            self.session.undo()
            assert self.session.state == self.past.pop()
        assert self.session.plan.parts[0].own == ()
        self.session.close()
        shutil.rmtree(self.folder)


TestImprovised = Improvised.TestCase
TestImprovised.settings = settings(max_examples=12, stateful_step_count=20, deadline=None)
