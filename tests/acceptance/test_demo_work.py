"""Every demo pattern can be worked from its first step to its last, and the count is right."""

import pytest

from tests.screens.stage import on_stage, text
from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern
from tracker.session.place import Pace
from tracker.session.session import Session

DEMOS = {name: load_pattern(path) for name, path in library.demo_patterns().items()}
EVERY_SIZE = [(name, size) for name, pattern in DEMOS.items() for size in pattern.sizes or ("",)]
MANY, MANY_KEYS = 4_000, 600
"""More presses than any demo pattern takes: by stitch, and at the paces below."""

PAPER = (40, 12)
"""The size of screen on which the counter stands in plain figures."""


def figures(pattern, size):
    """The count check's figure for every round: (part, round as printed) -> stitches."""
    index = pattern.sizes.index(size) if size else 0
    return {
        (number, line): found.makes[index]
        for number, part in enumerate(check_pattern(pattern).parts)
        for line, found in enumerate(part.rounds)
    }


def to_be_worked(session):
    """Every round of every copy that must be worked: (part, copy, round as printed)."""
    seen = session.glance()
    return {
        (number, copy, line)
        for number, part in enumerate(session.plan.parts)
        if seen.parts[number].chosen and not part.making_up
        for copy in range(part.part.make)
        for line in range(len(part.rounds))
    }


@pytest.mark.parametrize(("name", "size"), EVERY_SIZE)
def test_stitch_by_stitch_to_the_end_in_every_size(tmp_path, name, size):
    expected = figures(DEMOS[name], size)
    session = Session.start(DEMOS[name], size, tmp_path)
    ended = set()
    for _ in range(MANY):
        seen, spot = session.glance(), session.state.spot
        if seen.piece_done:
            break
        if seen.at_end and not seen.making_up:
            assert seen.made == seen.ends_on == expected[spot.part, spot.round], seen.round_label
            ended.add((spot.part, spot.copy, spot.round))
        if seen.at_end and seen.until:
            session.length_reached()
        else:
            session.next()
    assert session.glance().piece_done
    assert ended == to_be_worked(session)
    session.close()


def pace_for(seen):
    """By stitch in the very first round, by repeat in the third of a part, else by round."""
    if seen.copy > 1:
        return Pace.ROUND
    if seen.round == 1:
        return Pace.STITCH if seen.place.part == 0 else Pace.ROUND
    return Pace.REPEAT if seen.round == 3 else Pace.ROUND


async def press_on(session, pilot):
    """The keys that a maker presses next."""
    seen = session.glance()
    if seen.at_end and seen.until:
        await pilot.press("e")
        return
    while not seen.at_end and session.glance().pace is not pace_for(seen):
        await pilot.press("p")
    await pilot.press("space")


@pytest.mark.parametrize("name", DEMOS)
async def test_by_keys_alone_from_the_first_press_to_the_last(tmp_path, name):
    size = next(iter(DEMOS[name].sizes), "")
    expected = figures(DEMOS[name], size)
    session = Session.start(DEMOS[name], size, tmp_path)
    ended = set()
    async with on_stage(session, PAPER) as (app, pilot):
        for _ in range(MANY_KEYS):
            seen, spot = session.glance(), session.state.spot
            if seen.piece_done:
                break
            if seen.at_end and not seen.making_up:
                count = expected[spot.part, spot.round]
                assert f"{count} made · must end on {count}" in text(app), seen.round_label
                ended.add((spot.part, spot.copy, spot.round))
            await press_on(session, pilot)
        assert "The piece is done." in text(app)
        assert ended == to_be_worked(session)
