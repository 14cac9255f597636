"""``hookside where``: the place as one plain line, or as a card.

Asked again and again, so what it needs is little: no ``pathlib``, whose import takes a third
of what ``python -c pass`` takes, and no shelf where a file is named.
"""

from __future__ import annotations

import os
import sys

from tracker.cli import Complaint, say
from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError
from tracker.session.files import ENDING
from tracker.session.told import told

if TYPE_CHECKING:
    from pathlib import Path

    from tracker.session.files import StrPath

CHOOSE = "As you take the piece up, you choose which to go on with."


def where(word: str | None) -> int:
    """Print the place in a piece as one plain line. Raises `Complaint`."""
    try:
        print(told(_named_file(word) or _meant(word)))
    except StoreError as error:
        raise Complaint(str(error)) from None
    return 0


def where_card(word: str | None) -> int:
    """Print what to look at before going on with a piece. Raises `Complaint`."""
    from tracker.cli_piece import opened
    from tracker.session.looking import card_at

    path = _meant(word)
    print("\n".join(opened(lambda: card_at(path)).lines))
    return 0


def _named_file(word: str | None) -> StrPath | None:
    """The file that a word names; None where it is a name, or there is no word."""
    return word if word and word.endswith(ENDING) and os.path.lexists(word) else None


def _meant(word: str | None) -> Path:
    """The piece that a word means, without one the latest; another version of it is told."""
    from tracker.cli_piece import meant
    from tracker.session.beside import version_beside

    path = meant(word)
    other = version_beside(path)
    if other is not None:
        from tracker.session.notices import lies_beside

        say(f"{lies_beside(other.name, path.name)} {CHOOSE}", sys.stderr)
    return path
