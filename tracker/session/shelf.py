"""The folder where pieces are kept: their names, the latest, finding one.

A piece lies in the folder itself, or in a folder within it: in two of these it is set aside
or finished, the others are the maker's own.
"""

from __future__ import annotations

import os
import re
import stat
import unicodedata
from collections.abc import Iterator, Sequence
from enum import StrEnum
from pathlib import Path

from tracker.lean import NamedTuple
from tracker.session.files import ENDING

LONGEST = 60
"""Characters of a file's name before its ending."""


DEEPEST = 2
"""Folders within the folder that are looked into."""


class Standing(StrEnum):
    """Whether a piece is in work; the value is the folder that it lies in."""

    IN_WORK = ""
    SET_ASIDE = "set-aside"
    FINISHED = "finished"


class OnShelf(NamedTuple):
    """A piece in the folder: its file, its name (the file's, without the ending).

    ``touched`` is when it was last written, in nanoseconds since 1970.
    """

    path: Path
    name: str
    touched: int
    standing: Standing = Standing.IN_WORK


def pieces_folder() -> Path:
    """Where pieces are kept: ``HOOKSIDE_HOME`` if set, else the user's data folder."""
    home = os.environ.get("HOOKSIDE_HOME")
    if home:
        return Path(home) / "pieces"
    from platformdirs import user_data_dir

    return Path(user_data_dir("hookside", appauthor=False)) / "pieces"


def pieces(folder: Path) -> tuple[OnShelf, ...]:
    """The pieces in a folder, the one written last first. No folder: none.

    Links, pipes and devices are passed over, and so are folders whose name has a dot.
    """
    found = _pieces_in(os.fspath(folder), Standing.IN_WORK, DEEPEST)
    return tuple(sorted(found, key=lambda piece: (-piece.touched, piece.name)))


def latest(folder: Path) -> OnShelf | None:
    """The piece in work that was written last, or None.

    Where that is another version of a piece, as a synced folder leaves one: the piece itself.
    """
    in_work = [piece for piece in pieces(folder) if piece.standing is Standing.IN_WORK]
    return piece_of(in_work[0], in_work) if in_work else None


def piece_of(piece: OnShelf, every: Sequence[OnShelf]) -> OnShelf:
    """The piece of which a file is another version, if that lies beside it; else the file's own."""
    shorter = [
        one
        for one in every
        if piece.name.startswith(one.name)
        and one.name != piece.name
        and one.path.parent == piece.path.parent
    ]
    if not shorter:
        return piece
    from tracker.session.beside import same_piece  # hardly ever

    same = [one for one in shorter if same_piece(one.path, piece.path)]
    return min(same, key=lambda one: len(one.name), default=piece)


def find(folder: Path, name: str) -> OnShelf | None:
    """The piece of that name, or the only one whose name begins so; else None.

    Capitals and the file's ending make no difference; other versions of a piece do not count.
    """
    wanted = _slug(name.removesuffix(ENDING))
    all_pieces = pieces(folder)
    exact = [piece for piece in all_pieces if piece.name.lower() == wanted]
    begun = [piece for piece in all_pieces if wanted and piece.name.lower().startswith(wanted)]
    if exact:
        return exact[0]
    meant = {piece_of(piece, begun) for piece in begun}
    return meant.pop() if len(meant) == 1 else None


def new_path(folder: Path, title: str) -> Path:
    """A path for a new piece, named after its title, at which there is nothing yet."""
    slug = _slug(title) or "piece"
    path, number = folder / f"{slug}{ENDING}", 2
    while os.path.lexists(path):
        path, number = folder / f"{slug}-{number}{ENDING}", number + 1
    return path


def _pieces_in(folder: str, standing: Standing, deeper: int) -> Iterator[OnShelf]:
    try:
        with os.scandir(folder) as entries:
            every = list(entries)
    except OSError:
        return
    for entry in every:
        if deeper and "." not in entry.name and entry.is_dir(follow_symlinks=False):
            within = Standing(entry.name) if entry.name in _STANDINGS else standing
            yield from _pieces_in(entry.path, within, deeper - 1)
        elif piece := _on_shelf(entry, standing):
            yield piece


_STANDINGS = frozenset(standing.value for standing in Standing)


def _on_shelf(entry: os.DirEntry[str], standing: Standing) -> OnShelf | None:
    if not entry.name.endswith(ENDING) or entry.name.startswith("."):
        return None
    try:
        about = entry.stat(follow_symlinks=False)
    except OSError:
        return None
    if not stat.S_ISREG(about.st_mode):
        return None
    name = entry.name.removesuffix(ENDING)
    return OnShelf(Path(entry.path), name, about.st_mtime_ns, standing)


def _slug(title: str) -> str:
    """A title as a file's name: small letters and figures of any script, and hyphens."""
    text = unicodedata.normalize("NFC", title).lower()
    return re.sub(r"[\W_]+", "-", text).strip("-")[:LONGEST].strip("-")
