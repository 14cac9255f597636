"""``hookside shelf``: every piece, on a screen or as plain lines."""

from __future__ import annotations

import sys

from tracker.notation.problems import visible
from tracker.session.shelf import pieces_folder


def shelf(*, plain: bool) -> int:
    """Show the shelf; as plain lines where asked for, or where there is no terminal."""
    if plain or not (sys.stdin.isatty() and sys.stdout.isatty()):
        return _listed()
    from tracker.screens.app import shelf

    return shelf(pieces_folder())


def _listed() -> int:
    from tracker.session.about import all_about, line
    from tracker.session.surroundings import now

    found = all_about(pieces_folder(), now())
    for one in found:
        print(visible(line(one)))
    if not found:
        print("nothing on the shelf yet: hookside patterns lists what you can begin")
    return 0
