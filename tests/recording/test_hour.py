"""The hour at the table, looked at frame by frame."""

import pytest

from tests.recording.hour import film


@pytest.fixture(scope="module")
def frames(tmp_path_factory):
    """All frames by name, of one run."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("HOOKSIDE_HOME", str(tmp_path_factory.mktemp("home")))
        yield film().frames


def place(frame):
    """The head, the step and the count: what must not move."""
    return [line for line in frame.lines[:6] if line.strip()]


def test_what_to_know_comes_before_the_first_stitch(frames):
    assert "Put no button, bead, plastic eye" in frames["before"].text
    assert "take yarn A then sc in the ring 0 made · must end on 6" in frames["begun"].text


def test_each_pedal_press_is_one_stitch_and_the_count_is_asked(frames):
    assert "3 made · must end on 6" in frames["pedals"].text
    assert "space: it is 6, or type your count" in frames["counted"].text
    assert "Rnd 2 of 26 · Body" in frames["second"].text
    assert "4 made · must end on 12" in frames["second"].text


def test_a_key_held_for_two_seconds_counts_once(frames):
    assert "6 made · must end on 12" in frames["held"].text


def test_an_interruption_with_a_cat_leaves_the_place(frames):
    assert "guard on: x x ends it" in frames["guarded"].text
    assert place(frames["guarded"]) == place(frames["cat"]) == place(frames["back"])
    assert "6 made" in frames["back"].text
    assert "guard on" not in frames["back"].text


def test_a_wrong_count_is_told_explained_and_mended(frames):
    assert "29 in Rnd 5, not 30: 1 too few" in frames["miscounted"].text
    assert "You missed the increase in one of the 6 repeats." in frames["why"].text
    assert "Go on, and come right in the next round." in frames["why"].text
    assert "work stitch 16 into the same st as the one before" in frames["mended"].text
    assert "sc in the same st once more" in frames["same"].text
    assert "15 made · must end on 30" in frames["same"].text


def test_an_improvised_round_is_checked_as_it_is_typed_and_then_worked(frames):
    slip = frames["slip"].lines
    caret = next(line for line in slip if "^" in line)
    typed = slip[slip.index(caret) - 1]
    assert typed[caret.index("^") : caret.rindex("^") + 1] == "icn"
    assert "'icn' is not understood." in frames["slip"].text
    assert "Takes 30, makes 36: comes out even." in frames["typed"].text
    assert "Then Rnd 8 gets 36 stitches instead of 30" in frames["typed"].text
    assert "Rnd 7 of 26 · changed · Body" in frames["improvised"].text
    assert "0 made · must end on 36" in frames["improvised"].text


def test_after_four_days_the_card_and_the_very_stitch(frames):
    (where,) = frames["where"].lines
    assert "Rnd 7 of 26, changed · 8 of 36 stitches made, repeat 2 of 6" in where
    assert "Put down 4 days ago" in frames["card"].text
    assert "stitches 8 since the marker" in frames["card"].text
    assert place(frames["resumed"]) == place(frames["late"])
    assert "9 made" in frames["on"].text


def test_the_frames_are_in_the_order_of_the_hour(frames):
    minutes = [frame.minute for frame in frames.values()]
    assert minutes == sorted(minutes)
    assert str(frames["on"]).startswith("96:00  And on.\n  | Rnd 7 of 26")
