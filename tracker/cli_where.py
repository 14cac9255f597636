"""``hookside where``: the place as one plain line, or as a card.

Asked again and again, so what it needs is little: no ``pathlib``, whose import takes a third
of what ``python -c pass`` takes, and no shelf where a file is named.
"""

from __future__ import annotations

import os

from tracker.cli import Complaint
from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError
from tracker.session.files import ENDING
from tracker.session.told import told

if TYPE_CHECKING:
    from tracker.session.files import StrPath


def where(word: str | None) -> int:
    """Print the place in a piece as one plain line. Raises `Complaint`."""
    try:
        print(told(_file(word)))
    except StoreError as error:
        raise Complaint(str(error)) from None
    return 0


def where_card(word: str | None) -> int:
    """Print what to look at before going on with a piece. Raises `Complaint`."""
    from tracker.cli_piece import meant, opened
    from tracker.session.looking import card_at

    path = meant(word)
    print("\n".join(opened(lambda: card_at(path)).lines))
    return 0


def _file(word: str | None) -> StrPath:
    """The file of the piece that a word means; without one of the latest."""
    if word and word.endswith(ENDING) and os.path.lexists(word):
        return word
    from tracker.cli_piece import meant

    return meant(word)
