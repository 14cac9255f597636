"""What lies ahead of a piece: nothing before it is known, then within its interval.

The maker here is made up: what each stitch takes of yarn and time is known, and so is what
the rest of the piece will take. All numbers are invented.
"""

import datetime as dt
from fractions import Fraction
from random import Random

import pytest
from faults import FaultyDisk

from tracker.measure.estimate import Range
from tracker.pattern.load import load_text
from tracker.session.ahead_words import about_time, lines, yarn_line, yarn_words
from tracker.session.outlook import Outlook
from tracker.session.place import Asking, Pace
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings
from tracker.session.yarn_ahead import YarnAhead

KINDS = ("sc", "hdc", "dc")
ROUNDS = "\n".join(f"Rnd {n}: {KINDS[n % 3]} in each st around. (60)" for n in range(2, 41))
TUBE = f"""
title = "Trial tube"
[[yarn]]
letter = "A"
name = "cotton"
colour = "rust"
[[part]]
name = "Tube"
worked = "spiral"
rounds = '''
Rnd 1: 60 sc in magic ring. (60)
{ROUNDS}
'''
[[part]]
name = "Making up"
steps = ["Weave in the ends."]
"""


class Maker:
    """Works a piece round by round on a clock of their own; the yarn's weight goes down."""

    def __init__(self, folder, seed, text=TUBE):
        self.chance = Random(seed)
        self.now = dt.datetime(2026, 3, 2, 10, tzinfo=dt.UTC)
        around = Surroundings(
            disk=FaultyDisk(), clock=lambda: self.now, background=False, fold_at=10**9
        )
        self.session = Session.start(load_text(text), "", folder, around=around)
        self.session.set_pace(Pace.ROUND)
        self.session.set_asking(Asking.NEVER)
        self.left = 200.0
        wide, odd = {"sc": 1.0, "hdc": 1.4, "dc": 1.8}, self.chance.uniform
        self.loose, self.mood = 0.0, 1.0
        self.grams = {kind: 0.03 * size * odd(0.85, 1.15) for kind, size in wide.items()}
        self.seconds = {kind: 4 * size * odd(0.8, 1.2) for kind, size in wide.items()}

    def round(self, number):
        """What round ``number`` takes: grams and seconds."""
        kind = "sc" if number == 1 else KINDS[number % 3]
        # The hand loosens and tightens slowly; how quick a round is, is its own affair.
        self.loose = 0.9 * self.loose + self.chance.gauss(0, 0.025)
        slow = max(0.4, self.chance.gauss(1, 0.3))
        seconds = 60 * self.seconds[kind] * slow * self.mood
        return 60 * self.grams[kind] * (1 + self.loose), seconds

    def rest(self):
        """Lay it down for some hours; the next sitting is a quicker or a slower one."""
        self.now += dt.timedelta(hours=5)
        self.mood = self.chance.gauss(1, 0.12)

    def work(self, rounds):
        """So many rounds, from where the piece is."""
        for _ in range(rounds):
            grams, seconds = self.round(self.session.glance().round)
            self.left -= grams
            self.now += dt.timedelta(seconds=seconds)
            self.session.next()

    def weigh(self):
        """What the scale shows, to the gram."""
        self.session.weigh(f"{round(self.left)} g")


def test_nothing_is_said_before_there_is_anything_to_say(tmp_path):
    maker = Maker(tmp_path, 1)
    empty = maker.session.outlook()
    assert (empty.round, empty.part, empty.piece, empty.pace, empty.yarns) == (None,) * 3 + ((), ())
    assert list(lines(empty)) == []
    maker.weigh()
    (yarn,) = maker.session.outlook().yarns
    assert (yarn.needs, yarn.lasts, yarn.runs_out, yarn.each) == (None, None, "", ())
    assert "weigh it again" in yarn_line(yarn)


def test_what_is_said_of_the_rest_holds_nine_times_in_ten(tmp_path):
    held, width = {"time": 0, "yarn": 0}, {"time": 0.0, "yarn": 0.0}
    pieces = 100
    for seed in range(pieces):
        maker = Maker(tmp_path, seed)
        for _ in range(3):
            maker.weigh()
            maker.work(5)
            maker.rest()
        maker.weigh()
        ahead, coming = maker.session.outlook(), []
        for number in range(16, 41):
            coming.append(maker.round(number))
            if number % 5 == 0:
                maker.rest()
        (yarn,) = ahead.yarns
        true = {"yarn": sum(one[0] for one in coming), "time": sum(one[1] for one in coming)}
        for what, said in (("yarn", yarn.needs), ("time", ahead.piece)):
            held[what] += said.low <= true[what] <= said.high
            width[what] += (said.high - said.low) / 2 / true[what] / pieces
        maker.session.close()
    assert 0.85 * pieces <= held["yarn"] <= 0.97 * pieces
    assert 0.85 * pieces <= held["time"] <= 0.97 * pieces
    assert width["yarn"] < 0.12
    assert width["time"] < 0.3


def test_the_round_in_which_the_yarn_runs_out_lies_where_it_is_said(tmp_path):
    right = 0
    for seed in range(30):
        maker = Maker(tmp_path, seed)
        maker.left = 70.0
        for _ in range(3):
            maker.weigh()
            maker.work(5)
        maker.weigh()
        (yarn,) = maker.session.outlook().yarns
        if not yarn.first:
            continue
        left, number = maker.left, 15
        while left > 0 and number < 40:
            number += 1
            left -= maker.round(number)[0]
        first, last = (int(words.split()[1]) for words in (yarn.first, yarn.last or "Rnd 41"))
        right += first <= number <= last
        maker.session.close()
    assert right >= 24


def test_a_yarn_that_is_plenty_lasts_and_one_that_is_short_does_not(tmp_path):
    maker = Maker(tmp_path, 3)
    maker.weigh()
    maker.work(6)
    maker.weigh()
    assert maker.session.outlook().yarns[0].lasts is True
    maker.left = 12.0
    maker.weigh()
    maker.work(2)
    maker.weigh()
    (yarn,) = maker.session.outlook().yarns
    assert yarn.lasts is False
    assert yarn.runs_out.startswith("Rnd ")
    assert "runs out in about Rnd" in yarn_line(yarn)


def test_a_yarn_that_is_needed_no_more_has_no_figures_to_it():
    nothing = Range(0.0, 0.0, 0.0)
    yarn = YarnAhead("A", "A, fern", 50.0, nothing, True, "", "", "", ())
    assert yarn_words(yarn) == "50 g left, no more needed"


def test_undoing_a_weighing_undoes_what_was_known_of_it(tmp_path):
    maker = Maker(tmp_path, 4)
    maker.weigh()
    maker.work(6)
    before = maker.session.outlook()
    maker.weigh()
    assert maker.session.outlook().yarns[0].needs is not None
    maker.session.undo()
    assert maker.session.outlook() == before


def test_a_second_weighing_at_the_same_place_corrects_the_first(tmp_path):
    outlooks = []
    for slip in ("999 g", "20 g"):
        maker = Maker(tmp_path, 5)
        maker.weigh()
        maker.work(6)
        maker.session.weigh(slip)
        maker.weigh()
        outlooks.append(maker.session.outlook().yarns)
        maker.session.close()
    assert outlooks[0][0].lasts is None or outlooks[0][0].needs is None
    assert outlooks[1][0].needs is not None


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("43 g", ("A", "43 g")),
        ("43,5", ("A", "43.5 g")),
        ("1 3/4 oz", ("A", "1 3/4 oz")),
        ("a 12 g", ("A", "12 g")),
    ],
)
def test_what_the_scale_shows_is_kept_as_it_was_typed(tmp_path, typed, kept):
    session = Maker(tmp_path, 6).session
    session.weigh(typed)
    assert session.state.weighed[-1][:2] == kept
    session.close()
    assert Session.open(session.path).state == session.state


NO_WEIGHTS = ("", "g", "B 12 g", "12 stone", "-3 g", "1/0 g", "x" * 999, '"3 g')


@pytest.mark.parametrize("typed", NO_WEIGHTS)
def test_what_is_no_weight_is_said_and_nothing_is_kept(tmp_path, typed):
    session = Maker(tmp_path, 7).session
    before = session.state
    session.weigh(typed)
    assert session.state == before
    assert session.glance().last_press


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(20, "1 min"), (260, "4 min"), (3600, "1 h"), (5000, "1 h 25 min"), (41_000, "11 h")],
)
def test_times_are_told_no_finer_than_they_are_known(seconds, words):
    assert about_time(seconds) == words


def test_the_step_of_the_scale_is_the_last_figures():
    from tracker.measure.yarn import read_scale

    assert read_scale("43 g") == (43, 1)
    assert read_scale("43.50 g") == (Fraction(87, 2), Fraction(1, 100))
    assert read_scale("1 3/4 oz")[1] * 16 == Fraction("453.59237") / 4


def test_a_made_up_outlook_has_no_lines():
    assert list(lines(Outlook())) == []


BAD_LINES = (
    '{ yarn = "A", left = "-3 g" }',
    '{ yarn = "A", left = "3 lb" }',
    '{ yarn = "A" }',
    '{ left = "3 g" }',
    "{ yarn = 1, left = 2 }",
    '{ yarn = "A", left = "1/0 g" }',
)


@pytest.mark.parametrize("line", BAD_LINES)
def test_a_line_that_is_no_weighing_is_damage(tmp_path, line):
    session = Maker(tmp_path, 8).session
    session.close()
    with session.path.open("a", encoding="utf-8") as file:
        file.write(f"99 = {line}\n")
    again = Session.open(session.path)
    assert any("damaged" in words for words in again.notices)
    assert again.state.weighed == ()
    again.outlook()
    again.close()


@pytest.mark.parametrize("left", ["0 g", "999999 g", "0.000001 g", "1/9999 oz"])
def test_no_weight_is_too_odd_to_be_reckoned_with(tmp_path, left):
    maker = Maker(tmp_path, 9)
    for first, second in ((left, "5 g"), ("7 g", left)):
        maker.session.weigh(first)
        maker.work(3)
        maker.session.weigh(second)
    for yarn in maker.session.outlook().yarns:
        assert yarn_line(yarn)
    assert list(lines(maker.session.outlook()))


def test_a_weighing_at_a_place_that_the_pattern_has_not_is_reckoned_with(tmp_path):
    """A piece moved to a part far beyond its pattern by hand."""
    session = Maker(tmp_path, 10).session
    session.close()
    number = session.path.read_text(encoding="utf-8").rstrip().rpartition("\n")[2].split()[0]
    with session.path.open("a", encoding="utf-8") as file:
        file.write(f'{int(number) + 1} = {{ round = [9, 3, 99, 1], steps = "7" }}\n')
        file.write(f'{int(number) + 2} = {{ yarn = "A", left = "9 g" }}\n')
        file.write(f'{int(number) + 3} = {{ round = [1, 1, 5, 1], steps = "7" }}\n')
        file.write(f'{int(number) + 4} = {{ yarn = "A", left = "7 g" }}\n')
    again = Session.open(session.path)
    assert len(again.state.weighed) == 2
    assert len(again.outlook().yarns) == 1
    again.log()
    again.close()


LONG = """
title = "Trial stocking"
[gauge]
stitch = "sc"
stitches = 20
rounds = 20
over = "10 cm"
hook = "4 mm"
[[part]]
name = "Leg"
make = 2
worked = "spiral"
below = 30
rounds = '''
Rnd 1: sc in each st around. (30)
Rnd 2: sc in each st around until piece measures LENGTH. (30)
Rnd 3: sc in each st around. (30)
'''
"""


def stretch(folder, length):
    maker = Maker(folder, 11, LONG.replace("LENGTH", length))
    for _ in range(4):
        maker.now += dt.timedelta(seconds=300)
        maker.session.next()
    ahead = maker.session.outlook()
    maker.session.close()
    return ahead


def test_rounds_worked_to_a_length_count_as_often_as_the_length_asks(tmp_path):
    short, long = stretch(tmp_path, "5 cm"), stretch(tmp_path, "10 cm")
    assert not short.lengths
    assert long.part.likely > 2 * short.part.likely
    assert long.piece.likely > long.part.likely


def test_no_length_is_too_long(tmp_path):
    assert stretch(tmp_path, "90000 cm").piece.likely > 0
