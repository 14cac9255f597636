"""Renaming a piece, setting it aside, finishing it, and the bin. Nothing is ever unlinked."""

from __future__ import annotations

from pathlib import Path

from tracker.session import shelf
from tracker.session.access import StoreError, reason
from tracker.session.hold import Hold
from tracker.session.shelf import OnShelf, Standing

BIN = "bin"
"""The folder of what was thrown away, beside that of the pieces."""


def rename(piece: OnShelf, name: str) -> Path:
    """Give a piece another name. Returns its new path. Raises `StoreError`."""
    if not any(character.isalnum() for character in name):
        raise StoreError("A name has at least one letter or figure.")
    return _moved(piece.path, shelf.new_path(piece.path.parent, name))


def stand(piece: OnShelf, standing: Standing, folder: Path) -> Path:
    """Put a piece to those in work, set aside or finished. Returns its new path.

    Raises `StoreError`.
    """
    return _moved(piece.path, shelf.new_path(folder / standing.value, piece.name))


def throw_away(piece: OnShelf, folder: Path) -> Path:
    """Put a piece into the bin, from where it can be moved back. Returns its new path.

    Raises `StoreError`.
    """
    return _moved(piece.path, shelf.new_path(folder.parent / BIN, piece.name))


def taken_up(path: Path, folder: Path) -> Path:
    """Where a piece is that is to be gone on with: back among those in work.

    Raises `StoreError`.
    """
    for piece in shelf.pieces(folder):
        if piece.path == path and piece.standing is not Standing.IN_WORK:
            return stand(piece, Standing.IN_WORK, folder)
    return path


def _moved(old: Path, new: Path) -> Path:
    """Move a piece that no window has open."""
    hold = Hold.take(old)
    try:
        new.parent.mkdir(parents=True, exist_ok=True)
        old.rename(new)
    except OSError as error:
        raise StoreError(f"{old.name} cannot be moved: {reason(error)}.") from None
    finally:
        hold.release()
    return new
