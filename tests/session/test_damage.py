"""Files that were cut off, changed in one byte, edited by hand: never a silently wrong place."""

import random
import re
import tomllib

import pytest
import scene

from tracker.session.access import StoreError
from tracker.session.head import PaperError
from tracker.session.paper import read_paper
from tracker.session.place import Pace
from tracker.session.state import State

CHECK = "Check it against the work."


def some_work(session):
    """A little of everything; yields after each action."""
    for action in (
        lambda: session.show_loops(True),
        *[session.next] * 7,
        lambda: session.enter_count(5),
        session.mark,
        lambda: session.set_pace(Pace.REPEAT),
        *[session.next] * 3,
        session.undo,
        session.undo,
        session.redo,
        lambda: session.choose(3),
        lambda: session.go_to_round(4),
        lambda: session.set_pace(Pace.STITCH),
        *[session.next] * 4,
    ):
        action()
        yield


@pytest.fixture
def worked(tmp_path):
    """A piece that was put down: its path, and every state it ever had."""
    session = scene.start(tmp_path)
    states = [State()]
    states.extend(session.state for _ in some_work(session))
    session.close()
    return session.path, states


def line_ends(data):
    return {at + 1 for at in range(len(data)) if data[at : at + 1] == b"\n"}


def test_cut_off_anywhere_it_opens_at_an_earlier_state_and_says_so(worked):
    path, states = worked
    data = path.read_bytes()
    log = data.index(b"\n1 = ") + 1
    for cut in range(log, len(data) - 1):
        found = read_paper(data[:cut])
        assert found.history.state in states
        assert found.damage or not found.put_down
        if cut % 9 == 0:
            path.write_bytes(data[:cut])
            session = scene.reopen(path)
            assert session.state == found.history.state
            assert session.notices
            session.close()


def test_without_its_last_line_end_it_is_still_whole_and_goes_on_well(worked):
    path, states = worked
    path.write_bytes(path.read_bytes()[:-1])
    session = scene.reopen(path)
    assert (session.state, session.notices) == (states[-1], ())
    session.next()
    session.close()
    again = scene.reopen(path)
    assert (again.state, again.notices) == (session.state, ())
    again.close()


def test_cut_off_in_its_head_it_is_refused_in_one_sentence(worked):
    path, _ = worked
    data = path.read_bytes()
    for cut in range(data.rindex(b"\nsealed = ") - 2):
        path.write_bytes(data[:cut])
        with pytest.raises(StoreError, match=r"^[^\n]+ cannot be (opened|read): [^\n]+$"):
            scene.reopen(path)
        assert path.read_bytes() == data[:cut]


def changes(byte, rng):
    """Some of the bytes one may become: single bits changed, signs of the language."""
    signs = set(b'\n\r "#=,.-[]{}0179a\x00\xff') - {byte}
    return rng.sample([byte ^ (1 << bit) for bit in range(8)], 1) + rng.sample(sorted(signs), 1)


def test_any_byte_changed_never_gives_a_silently_different_place(worked):
    path, states = worked
    data = path.read_bytes()
    whole = read_paper(data)
    refused, rng = 0, random.Random(3)
    for at in range(len(data)):
        for byte in changes(data[at], rng):
            try:
                found = read_paper(data[:at] + bytes([byte]) + data[at + 1 :])
            except PaperError:
                refused += 1
                continue
            assert found.history.state in states
            told = found.damage or found.head_changed or found.by_hand or not found.put_down
            same = (found.head, found.history.state) == (whole.head, whole.history.state)
            assert told or same
    assert refused < len(data)


def test_two_lines_doubled_swapped_or_lost_are_noticed(worked):
    path, states = worked
    lines = path.read_bytes().splitlines(keepends=True)
    rng = random.Random(5)
    for _ in range(60):
        at = rng.randrange(len(lines) - 20, len(lines) - 1)
        for mixed in (
            [*lines[:at], lines[at], *lines[at:]],
            [*lines[:at], *lines[at + 1 :]],
            [*lines[:at], lines[at + 1], lines[at], *lines[at + 2 :]],
        ):
            found = read_paper(b"".join(mixed))
            assert found.damage
            assert found.history.state in states


def test_the_damaged_bytes_are_kept_beside_and_the_later_place_is_told(worked):
    path, _ = worked
    data = path.read_bytes()
    at = data.index(b"\n5 = ") + 20
    path.write_bytes(data[:at] + b"?" + data[at + 1 :])
    session = scene.reopen(path)
    name = path.name
    assert session.notices == (
        f"{name} is damaged after entry 4: you stand where that left you. " + CHECK,
        f"What was damaged or changed is kept in {name}.damaged-1.",
        "A later entry that can still be read says: Body, Rnd 4, 1 stitch made.",
    )
    assert session.can_undo == 4
    kept = path.with_name(f"{name}.damaged-1").read_bytes()
    assert data.endswith(kept[30:])
    session.close()
    again = scene.reopen(path)
    assert again.notices == ()
    again.close()


def test_damage_is_never_kept_over_older_damage(worked):
    path, _ = worked
    data = path.read_bytes()
    for number in (1, 2):
        path.write_bytes(data[:-40])
        scene.reopen(path).close()
        assert path.with_name(f"{path.name}.damaged-{number}").exists()


def by_hand(path, text):
    path.write_bytes(path.read_bytes() + text.encode())


def next_number(path):
    return 1 + len(re.findall(rb"^\d+ = \{ ", path.read_bytes(), re.MULTILINE))


def test_lines_written_by_hand_are_taken_and_told_of_once(worked):
    path, _ = worked
    number = next_number(path)
    by_hand(path, f'\n# where I really am\n{number} = {{ round = [1, 1, 2, 1], steps = "5" }}\n')
    session = scene.reopen(path)
    assert session.notices == (
        f"{path.name} was changed by hand: 1 line at the end, taken as written.",
    )
    seen = session.glance()
    assert (seen.place.round, seen.place.step) == (1, 5)
    session.close()
    again = scene.reopen(path)
    assert (again.state, again.notices) == (session.state, ())
    again.close()


@pytest.mark.parametrize(
    "fields",
    [
        'round = [1, 1, 0, 1], steps = "5"',
        'round = [1, 1, 2], steps = "5"',
        'round = [1, 1, 2, 1], steps = "five"',
        'round = [1, 1, 2, 1], steps = "9-4"',
        'round = [1, 1, 2, 1], steps = "99999999999"',
        'round = [1, 1, 2, 1], steps = "5", steps = "6"',
        "round = [1, 1, 2, 1]",
        'pace = "row"',
        "undo = 0",
        "undo = true",
        "loops = 1",
        'finished = "yes"',
        "count = [1, 1, 2, 1]",
        "choose = [1]",
        "spot = 3",
        "",
    ],
)
def test_lines_by_hand_that_say_nothing_sound_are_damage(worked, fields):
    path, states = worked
    by_hand(path, f"{next_number(path)} = {{ {fields} }}\n")
    session = scene.reopen(path)
    assert session.state == states[-1]
    assert "is damaged after entry" in session.notices[0]
    session.close()


@pytest.mark.parametrize("off", [-1, 1])
def test_a_line_by_hand_with_the_wrong_number_is_damage(worked, off):
    path, states = worked
    by_hand(path, f'{next_number(path) + off} = {{ round = [1, 1, 2, 1], steps = "5" }}\n')
    session = scene.reopen(path)
    assert session.state == states[-1]
    assert "is damaged after entry" in session.notices[0]
    session.close()


@pytest.mark.parametrize(
    "fields",
    [
        'round = [1000000000, 1, 1, 1], steps = "5"',
        'round = [1, 1000000000, 1, 1], steps = "5"',
        'round = [1, 1, 1000000000, 1], steps = "5"',
        'round = [1, 1, 1, 1000000000], steps = "5"',
        'round = [1, 1, 1, 1], steps = "1000000000"',
        'round = [1, 1, 1, 1], steps = "1000000000.1000000000"',
        'round = [1, 1, 1, 1], steps = "0-1000000000"',
    ],
)
def test_a_place_outside_the_pattern_becomes_the_nearest_and_is_told(worked, fields):
    path, _ = worked
    by_hand(path, f"{next_number(path)} = {{ {fields} }}\n")
    session = scene.reopen(path)
    assert "The place in the file is not in the pattern" in session.notices[-1]
    for action in (session.glance, session.next, session.back, session.mark, session.undo):
        action()
    session.close()


def test_a_choice_or_length_outside_the_pattern_is_borne(worked):
    path, _ = worked
    number = next_number(path)
    by_hand(path, f"{number} = {{ choose = 1000000000, times = [1, 1, 3, 1000000000] }}\n")
    session = scene.reopen(path)
    assert session.glance().rounds == 6 + 999_999_999
    session.go_to_round(999_999_999)
    session.back()
    session.length_reached()
    session.close()


def test_a_changed_head_is_told_and_the_piece_goes_on(worked):
    path, states = worked
    path.write_bytes(path.read_bytes().replace(b'title = "Pot hat', b'title = "Tea hat', 1))
    session = scene.reopen(path)
    assert session.notices == (
        f"The pattern, title or size in {path.name} was changed since it was written.",
        f"What was damaged or changed is kept in {path.name}.damaged-1.",
    )
    assert session.state == states[-1]
    session.close()
    again = scene.reopen(path)
    assert again.notices == ()
    again.close()


def test_the_file_is_toml_after_every_action_and_after_folding(tmp_path):
    session = scene.start(tmp_path, fold_at=300)
    for number, _ in enumerate(some_work(session)):
        if number % 7 == 6:
            session.retry()
            session.retry()
        table = tomllib.loads(session.path.read_text())
        assert table["piece"]["title"] == "Pot hat [trial]"
        numbers = [int(number) for number in table["log"]]
        assert numbers == list(range(1, len(numbers) + 1))
    session.close()


def test_a_pattern_that_looks_like_a_log_does_not_lead_astray(tmp_path):
    session = scene.start(tmp_path)
    scene.press(session, 3)
    session.close()
    text = tomllib.loads(session.path.read_text())["piece"]["pattern"]
    assert text == scene.pattern().source
    again = scene.reopen(session.path)
    assert (again.can_undo, again.notices) == (3, ())
    again.close()
