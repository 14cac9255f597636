"""The file of one piece: what is written to it, when, and what if it cannot be.

No press is lost and none waits: a line goes to the operating system before the action
returns, and to the disk a moment later on another thread. A file is only ever added to at
its end, or replaced as a whole; what is found damaged or changed from outside is kept.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from tracker.lean import TYPE_CHECKING, NamedTuple
from tracker.session import notices
from tracker.session.access import InUse, StoreError, itself, read_bytes, reason
from tracker.session.contents import found_in
from tracker.session.entries import Entry, PutDown
from tracker.session.files import RealDisk, free_path, write_whole
from tracker.session.head import Head
from tracker.session.history import History
from tracker.session.hold import Hold, alone
from tracker.session.lines import stamp_of, write_line
from tracker.session.midway import Midway, keep_midway
from tracker.session.paper import Found, write_paper
from tracker.session.sheet import Outside, Sheet
from tracker.session.state import Spot
from tracker.session.syncer import Syncer

if TYPE_CHECKING:
    from tracker.session.disk import Disk

__all__ = ["InUse", "Store", "StoreError", "Surroundings"]

FOLD_AT = 64 * 1024
"""Bytes: some six hundred presses."""

Clock = Callable[[], datetime]


def now() -> datetime:
    """The present time, with the offset of this place."""
    return datetime.now().astimezone()


class Surroundings(NamedTuple):
    """What a piece needs from outside.

    Attributes:
        disk: the file operations.
        clock: the present time, with its offset.
        background: sync on a thread of its own; False only for tests that count operations.
        fold_at: bytes added since a file was last rewritten from which on it is folded.
    """

    disk: Disk = RealDisk()
    clock: Clock = now
    background: bool = True
    fold_at: int = FOLD_AT


class Store:
    """One open piece file, and the history that it holds.

    `History` is the truth while the piece is open; the file follows it. Nothing here raises
    once the piece is open: ``trouble`` says why the file is behind, "" when it is not.
    ``notices`` tell what the maker should know of the file; ``when`` is the time of the
    last entry it was opened with, as written, or ""; ``later`` where the maker stood by the
    last readable entry after the damage in it.

    ``taken`` says that another window has taken the piece over: then nothing more is to be
    appended. ``theirs`` is the file that something else changed, left as it is, while our
    own work goes on at ``path``; None where there is no such file. ``at_home`` says that it
    is a version found beside the piece instead, which is at its own path.
    """

    def __init__(self, path: Path, head: Head, history: History, around: Surroundings) -> None:
        self.head = head
        self.history = history
        self.notices: tuple[str, ...] = ()
        self.when = ""
        self.later: Spot | None = None
        self.taken = False
        self.theirs: Path | None = None
        self.at_home = False
        self.around = around
        self._disk = around.disk
        self._syncer = Syncer(around.disk, self._sync_failed, background=around.background)
        self._hold = Hold.none(path)
        self._sheet = Sheet(path, self._disk, self._syncer)
        self._folded = 0
        self._number = self._seal = 0
        self._pending = b""
        self._whole = True
        self._damage = b""
        self._put_down = False
        self._quiet = False
        self._midway: Midway | None = None
        self._trouble = self._unsynced = ""

    @classmethod
    def create(cls, path: Path, head: Head, around: Surroundings) -> Store:
        """A new piece at a path where nothing is yet. Raises `InUse`."""
        store = cls(path, head, History(), around)
        store._hold = Hold.take(path)
        store._save()
        return store

    @classmethod
    def open(cls, path: Path, around: Surroundings, *, take_over: bool = False) -> Store:
        """An existing piece, read but not yet written to: see `make_good`.

        With ``take_over`` it is taken from a window that has it open. Raises `StoreError`
        or `InUse`.
        """
        path = itself(path)
        hold = Hold.none(path)
        try:
            with alone(around.disk, path):
                hold = _taken(path, take_over=take_over)
                data = read_bytes(path, around.disk)
            found = found_in(path, data)
        except StoreError:
            hold.release()
            raise
        store = cls(path, found.head, found.history, around)
        store._hold = hold
        store._begin(data, found)
        return store

    def make_good(self) -> None:
        """Make a file that was found damaged whole, keeping the damaged bytes beside it."""
        if self._whole:
            self._save()

    def abandon(self) -> None:
        """Let go of the file as it is."""
        self._syncer.finish()
        self._sheet.let_go()
        self._hold.release()

    @property
    def path(self) -> Path:
        """The piece's file."""
        return self._sheet.path

    @property
    def sign(self) -> tuple[int, int]:
        """The length and the CRC-32 of the file as last written."""
        return self._sheet.size, self._sheet.check

    @property
    def trouble(self) -> str:
        """Why the last change is not safely saved, in one sentence; "" if it is."""
        why = self._trouble or self._unsynced
        return f"Not saved: {why}. Go on; it is saved as soon as that is over." if why else ""

    def append(self, entry: Entry, took: int | None = None) -> None:
        """Write what one action did, already in the history.

        ``took``: the seconds it took, where the times of the lines do not tell that.
        """
        self._number += 1
        line, self._seal = write_line(
            self._number, entry, stamp_of(self.around.clock()), self._seal, took
        )
        self._pending += line
        self._put_down = isinstance(entry, PutDown)
        self._quiet = False
        self._save()

    def retry(self) -> None:
        """What is to be done now and then, between presses.

        Tries again to save what is not saved, notices that the piece was taken over, and
        folds a file that has grown, if nothing was appended since the last time.
        """
        grown = self._sheet.size - self._folded > max(self.around.fold_at, self._folded // 4)
        fold = grown and self._quiet and not self.taken
        if self.trouble or fold or (not self.taken and self._hold.lost()):
            self._save(fold=fold)
        self._quiet = True

    def keep_midway(self) -> None:
        """Keep what will spare the next one who opens the file its beginning."""
        if self._midway is not None:
            keep_midway(self.path, self._midway)
            self._midway = None

    def close(self) -> None:
        """Say that the piece is put down, make all durable, let go of the file."""
        if not self._put_down and not self.taken:
            self.append(PutDown())
        self._syncer.finish()
        self._quiet = True
        self.retry()
        self.abandon()

    def carry_over(self, head: Head, history: History) -> None:
        """Go on with a changed pattern; the file as it was is kept beside. Raises OSError."""
        kept = self._write_beside(f"{self.path.name}.before-", "", self._disk.read(self.path))
        self.rehead(head, history)
        self.notices += (notices.carried_over(kept.name),)

    def rehead(self, head: Head, history: History | None = None) -> None:
        """Write the file anew with another head, and another history if given."""
        self.head, self.history, self._whole = head, history or self.history, True
        self._save()

    def found_beside(self, theirs: Path) -> None:
        """Another version of the piece lies in its folder: both are left as they are."""
        self.theirs, self.at_home = theirs, True
        self.notices += (notices.lies_beside(theirs.name, self.path.name),)

    def keep_ours(self) -> None:
        """Put our version in the place of the one that was changed; that one is kept aside.

        Raises OSError or `InUse`.
        """
        assert self.theirs is not None
        was, ours = self.theirs, self.path
        hold = Hold.take(was)
        aside = free_path(self._disk, was.parent, f"{self._name(was)}.aside-")
        self._disk.replace(was, aside)
        if self.at_home:
            hold.release()
            self.theirs, self.at_home = None, False
            self.notices += (notices.kept_aside(aside.name),)
            return
        self._move_to(was, hold)
        self.notices += (notices.kept_aside(aside.name),)
        self._save()
        if not self.trouble:
            self._disk.remove(ours)

    def put_aside(self) -> None:
        """Close, and keep our version aside of the one that was changed. Raises OSError."""
        assert self.theirs is not None
        self.close()
        aside = free_path(self._disk, self.path.parent, f"{self._name(self.theirs)}.aside-")
        self._disk.replace(self.path, aside)
        if self.at_home:
            self._disk.replace(self.theirs, self.path)
        self.notices += (notices.kept_aside(aside.name),)

    def _name(self, theirs: Path) -> str:
        """The name that the piece has by rights."""
        return (self.path if self.at_home else theirs).name

    def _begin(self, data: bytes, found: Found) -> None:
        """Take up what was found."""
        self._number, self._seal = found.number, found.seal
        self._damage = data if found.head_changed else found.damage
        self.when, self.later = found.when, found.later
        self._put_down = found.put_down and not found.damage
        self.notices = notices.on_opening(self.path.name, found, seized=self._hold.seized)
        self._whole = bool(found.damage) or found.head_changed
        self._midway = None if self._whole else found.midway
        self._sheet.adopt(data)
        # About what it comes to when it is folded.
        self._folded = len(data) * found.history.many // max(1, found.number)
        if not data.endswith(b"\n"):
            # A last line without its line end must not run into the next.
            self._pending = b"\n"

    def _save(self, *, fold: bool = False) -> None:
        """Bring the file up to the history, if the disk lets us."""
        try:
            with self._sheet.alone():
                if self.taken or self._hold.lost():
                    self._hand_over()
                else:
                    self._look_outside()
                    self._keep_damage()
                    self._bring_up(fold=fold)
            self._trouble = ""
        except OSError as error:
            self._trouble = reason(error)

    def _bring_up(self, *, fold: bool) -> None:
        if self._whole or self._unsynced:
            self._write_whole()
            return
        while self._pending:
            self._pending = self._pending[self._sheet.add(self._pending) :]
        self._sheet.added()
        if fold:
            self._fold()

    def _fold(self) -> None:
        """Write the file anew. What is saved stays saved if that fails half way."""
        try:
            self._write_whole()
        except OSError:
            if self._whole:
                raise

    def _write_whole(self) -> None:
        """Write the file anew, folded, and put it in the old one's place."""
        data, number, seal = self._folded_paper()
        self._whole, self._unsynced = self._whole or bool(self._unsynced), ""
        self._sheet.replace(data)
        self._number, self._seal, self._pending = number, seal, b""
        self._folded = len(data)
        # Until the name lasts too, the new file is not sure to be there after a power cut.
        self._whole = True
        self._sheet.settle()
        self._whole = False

    def _folded_paper(self) -> tuple[bytes, int, int]:
        when = self.around.clock()
        data, number, seal = write_paper(self.head, self.history, when)
        if self._put_down:
            line, seal = write_line(number + 1, PutDown(), stamp_of(when), seal)
            data, number = data + line, number + 1
        return data, number, seal

    def _sync_failed(self, error: OSError) -> None:
        # After a failed sync the system may have dropped what it held; only a file written
        # anew is sure to be whole (Rebello et al., USENIX ATC 2020).
        self._unsynced = reason(error)

    def _keep_damage(self) -> None:
        if self._damage:
            kept = self._write_beside(f"{self.path.name}.damaged-", "", self._damage)
            self._damage = b""
            self.notices += (notices.damage_kept(kept.name),)

    def _hand_over(self) -> None:
        """Another window has the piece now: keep beside what it cannot have read."""
        if not self.taken:
            self.taken = True
            self.notices += (notices.taken_over(self.path.name),)
        if self._pending or self._whole or self._unsynced:
            kept = self._write_beside(*_ours(self.path), self._folded_paper()[0])
            self._pending, self._whole, self._unsynced = b"", False, ""
            self.notices += (notices.unsaved_kept(kept.name),)

    def _write_beside(self, before: str, after: str, data: bytes) -> Path:
        kept = free_path(self._disk, self.path.parent, before, after)
        self._disk.close(write_whole(self._disk, kept, data))
        self._disk.fsync_folder(self.path.parent)
        return kept

    def _look_outside(self) -> None:
        """Notice a file that something else has changed since we wrote it."""
        found = self._sheet.outside(self._pending)
        self._pending = self._pending[self._sheet.there :]
        if found is Outside.GONE:
            self._whole = True
            self.notices += (notices.removed(self.path.name),)
        elif found is Outside.CHANGED:
            self._step_aside()

    def _step_aside(self) -> None:
        """Leave the file that was changed as it is, and go on in one of our own."""
        was = self.path
        path = free_path(self._disk, was.parent, *_ours(was))
        try:
            hold = Hold.take(path)
        except StoreError as error:
            raise OSError(str(error)) from None
        self._move_to(path, hold)
        self.theirs = was
        self.notices += (notices.changed_outside(was.name, path.name),)

    def _move_to(self, path: Path, hold: Hold) -> None:
        """Go on in another file, where there is nothing yet."""
        self._hold.release()
        self._sheet.let_go()
        self._sheet = Sheet(path, self._disk, self._syncer)
        self._hold, self.theirs, self._whole = hold, None, True


def _taken(path: Path, *, take_over: bool) -> Hold:
    try:
        return Hold.take(path)
    except InUse:
        if not take_over:
            raise
        return Hold.seize(path)


def _ours(path: Path) -> tuple[str, str]:
    """What stands before and after the number in the name of a version of our own."""
    name, _, ending = path.name.partition(".")
    return f"{name}.ours-", f".{ending}"
