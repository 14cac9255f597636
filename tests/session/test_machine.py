"""Random work, put down and taken up again at any moment, with its whole undo and redo."""

import datetime as dt
import shutil
import tempfile
from pathlib import Path

import scene
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from tracker.session.looking import look
from tracker.session.place import Asking, Pace
from tracker.session.state import State

SMALL = 900


class Clock:
    """Goes on by some seconds whenever it is looked at."""

    def __init__(self):
        self.now = dt.datetime(2026, 3, 2, 10, tzinfo=dt.UTC)

    def __call__(self):
        self.now += dt.timedelta(seconds=4)
        return self.now


class Work(RuleBasedStateMachine):
    """The session against the plainest of models: a list of the states that were."""

    def __init__(self):
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.clock = Clock()
        self.session = scene.start(self.folder, fold_at=SMALL, clock=self.clock)
        self.past: list[State] = []
        self.future: list[State] = []

    def act(self, action):
        before, undoable = self.session.state, self.session.can_undo
        action()
        if self.session.can_undo > undoable:
            self.past.append(before)
            self.future.clear()

    @rule(times=st.integers(1, 9))
    def next(self, times):
        for _ in range(times):
            self.act(self.session.next)

    @rule()
    def back(self):
        self.act(self.session.back)

    @rule(number=st.integers(0, 9))
    def go_to_round(self, number):
        self.act(lambda: self.session.go_to_round(number))

    @rule(made=st.integers(0, 13))
    def go_to_stitch(self, made):
        self.act(lambda: self.session.go_to_stitch(made))

    @rule(forward=st.booleans())
    def by_a_round(self, forward):
        self.act(self.session.next_round if forward else self.session.previous_round)

    @rule(part=st.integers(0, 5), copy=st.integers(0, 2))
    def go_to_part(self, part, copy):
        self.act(lambda: self.session.go_to_part(part, copy))

    @rule(part=st.integers(1, 4))
    def choose(self, part):
        self.act(lambda: self.session.choose(part))

    @rule(pace=st.sampled_from(Pace), asking=st.sampled_from(Asking), shown=st.booleans())
    def set_all(self, pace, asking, shown):
        self.act(lambda: self.session.set_pace(pace))
        self.act(lambda: self.session.set_asking(asking))
        self.act(lambda: self.session.show_loops(shown))

    @rule(back=st.booleans())
    def mark(self, back):
        self.act(self.session.return_to_mark if back else self.session.mark)

    @rule(count=st.integers(0, 20))
    def enter_count(self, count):
        self.act(lambda: self.session.enter_count(count))

    @rule(grams=st.integers(0, 200))
    def weigh(self, grams):
        self.act(lambda: self.session.weigh(f"{grams} g"))

    @rule(words=st.sampled_from(["", "4", "2 1/2 in", "35 mm", "x"]))
    def measure(self, words):
        self.act(lambda: self.session.measure(words))

    @rule()
    def length_reached(self):
        self.act(self.session.length_reached)

    @rule(times=st.integers(1, 30))
    def undo(self, times):
        for _ in range(min(times, len(self.past))):
            self.future.append(self.session.state)
            self.session.undo()
            assert self.session.state == self.past.pop()

    @rule(times=st.integers(1, 30))
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
        self.session.close()
        self.session = scene.reopen(self.session.path, fold_at=SMALL, clock=self.clock)
        assert self.session.notices == ()

    @invariant()
    def a_copy_of_the_file_holds_the_same(self):
        path = self.folder / "copy.piece.toml"
        shutil.copy(self.session.path, path)
        copy = scene.reopen(path)
        assert copy.state == self.session.state
        assert copy.can_undo == len(self.past)
        assert look(path).history.undone == len(self.future)
        copy.close()

    @invariant()
    def what_was_and_what_comes_can_be_told(self):
        ahead = self.session.outlook()
        for left in (ahead.round, ahead.part, ahead.piece):
            assert left is None or 0 <= left.low <= left.likely <= left.high
        for yarn in ahead.yarns:
            assert yarn.left >= 0
            assert yarn.needs is None or yarn.needs.low <= yarn.needs.likely <= yarn.needs.high
        for part in self.session.log():
            assert all(one.seconds >= 0 and one.again >= 0 for one in part.rounds)

    @invariant()
    def all_is_saved(self):
        seen = self.session.glance()
        assert seen.trouble == ""
        assert 0 <= seen.made <= (seen.ends_on or 0)

    def teardown(self):
        session = self.session
        while self.future:
            session.redo()
            self.past.append(self.future.pop())
            assert session.state == self.past[-1]
        for _ in range(session.can_undo):
            session.undo()
        assert session.state == State()
        session.close()
        shutil.rmtree(self.folder)


TestWork = Work.TestCase
TestWork.settings = settings(
    max_examples=40,
    stateful_step_count=40,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)
