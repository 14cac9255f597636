"""The command that makes the pictures goes with the code it takes pictures of."""

import runpy
from pathlib import Path

MAKE = Path(__file__).parents[2] / "screenshots" / "make.py"


def test_what_makes_the_pictures_finds_the_screens_it_shows():
    found = runpy.run_path(str(MAKE), run_name="pictures")
    assert {"HooksideApp", "ShelfApp", "ShelfScreen"} <= found.keys()
