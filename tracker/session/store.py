"""The file of one piece: who may write to it, when it is written, and what if it cannot be.

What is found damaged or changed from outside is kept.
"""

from __future__ import annotations

from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session import notices
from tracker.session.access import InUse, StoreError, itself, read_bytes, reason
from tracker.session.contents import found_in
from tracker.session.entries import Entry, PutDown
from tracker.session.exchange import exchange
from tracker.session.files import free_path, write_whole
from tracker.session.head import Head
from tracker.session.history import History
from tracker.session.hold import Hold, alone
from tracker.session.ledger import Ledger
from tracker.session.midway import Midway, keep_midway
from tracker.session.sheet import Outside

if TYPE_CHECKING:
    from tracker.session.paper import Found
    from tracker.session.state import Spot
    from tracker.session.surroundings import Surroundings

__all__ = ["InUse", "Store", "StoreError"]


class Store:
    """One open piece file, and the history that it holds.

    `History` is the truth while the piece is open; the file follows it. Nothing here raises
    once the piece is open: ``trouble`` says why the file is behind, "" when it is not.
    ``notices`` tell what the maker should know of the file; ``when`` is the time of the
    last entry it was opened with, as written, or ""; ``later`` where the maker stood by the
    last readable entry after the damage in it.

    ``taken`` says that another window has taken the piece over: then nothing more is to be
    appended. ``theirs`` is the file that something else changed, left as it is, while our
    own work goes on at ``path``; None where there is no such file. ``at_home`` says that ours
    has the piece's name all the same, and theirs was found beside it.
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
        self._hold = Hold.none(path)
        self._ledger = Ledger(path, around)
        self._damage = b""
        self._quiet = False
        self._midway: Midway | None = None
        self._trouble = ""

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
        if self._ledger.whole:
            self._save()

    def abandon(self) -> None:
        """Let go of the file as it is."""
        self._ledger.let_go()
        self._hold.release()

    @property
    def path(self) -> Path:
        """The piece's file."""
        return self._ledger.path

    @property
    def sign(self) -> tuple[int, int]:
        """The length and the CRC-32 of the file as last written."""
        return self._ledger.sign

    @property
    def trouble(self) -> str:
        """Why the last change is not safely saved, in one sentence; "" if it is."""
        why = self._why
        return f"Not saved: {why}. Go on; it is saved as soon as that is over." if why else ""

    @property
    def _why(self) -> str:
        return self._trouble or self._ledger.unsynced

    def append(self, entry: Entry, took: int | None = None) -> None:
        """Write what one action did, already in the history.

        ``took``: the seconds it took, where the times of the lines do not tell that.
        """
        self._ledger.enter(entry, took)
        self._quiet = False
        self._save()

    def retry(self) -> None:
        """What is to be done now and then, between presses.

        Tries again to save what is not saved, notices that the piece was taken over, and
        folds a file that has grown, if nothing was appended since the last time.
        """
        fold = self._quiet and not self.taken and self._ledger.grown(self.around.fold_at)
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
        self._put_down()
        self._ledger.sync()
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
        self.head, self.history, self._ledger.whole = head, history or self.history, True
        self._save()

    def found_beside(self, theirs: Path, *, at_home: bool) -> None:
        """Another version of the piece lies in its folder: both are left as they are."""
        self.theirs, self.at_home = theirs, at_home
        other, named = (theirs, self.path) if at_home else (self.path, theirs)
        self.notices += (notices.lies_beside(other.name, named.name),)

    def keep_ours(self) -> None:
        """Go on with our version, under the name that the piece has by rights.

        The other is kept aside. Raises OSError or `InUse`; then all stays as it is.
        """
        assert self.theirs is not None
        was, home = self.theirs, self.at_home
        hold = Hold.take(was)
        self._ledger.lay_down()
        try:
            if home:
                kept = exchange(self._disk, was, None, self.path)
            else:
                kept = exchange(self._disk, was, self.path, was)
                self._ledger.renamed(was)
                self._hold, hold = hold, self._hold
        finally:
            hold.release()
        self.theirs, self.at_home = None, False
        self._tell_kept(kept)

    def give_way(self, other: Store) -> None:
        """Close, our version put aside of the other, which gets the piece's name by rights.

        Raises OSError or `StoreError`; then all stays as it is.
        """
        self._put_down()
        if self.trouble:
            self._save()
        if self.trouble or self.theirs != other.path:
            raise StoreError(notices.unsaved(self._why or "it was changed just now"))
        for ledger in (self._ledger, other._ledger):
            ledger.lay_down()
        if self.at_home:
            kept = exchange(self._disk, self.path, other.path, self.path)
            other._ledger.renamed(self.path)
            self._hold, other._hold = other._hold, self._hold
        else:
            kept = exchange(self._disk, self.path, None, other.path)
        self.abandon()
        self._tell_kept(kept)
        other.notices = (*self.notices, *other.notices)

    def _tell_kept(self, kept: str) -> None:
        if kept:
            self.notices += (notices.kept_aside(kept),)

    def _put_down(self) -> None:
        if not self._ledger.put_down and not self.taken:
            self.append(PutDown())

    def _begin(self, data: bytes, found: Found) -> None:
        """Take up what was found."""
        self._damage = data if found.head_changed else found.damage
        self.when, self.later = found.when, found.later
        self.notices = notices.on_opening(self.path.name, found, seized=self._hold.seized)
        self._ledger.take_up(data, found)
        self._midway = None if self._ledger.whole else found.midway

    def _save(self, *, fold: bool = False) -> None:
        """Bring the file up to the history, if the disk lets us."""
        try:
            with self._ledger.alone():
                if self.taken or self._hold.lost():
                    self._hand_over()
                else:
                    self._look_outside()
                    self._keep_damage()
                    self._ledger.bring_up(self.head, self.history, fold=fold)
            self._trouble = ""
        except OSError as error:
            self._trouble = reason(error)

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
        if self._ledger.behind:
            kept = self._write_beside(*_ours(self.path), self._ledger.text(self.head, self.history))
            self._ledger.leave_off()
            self.notices += (notices.unsaved_kept(kept.name),)

    def _write_beside(self, before: str, after: str, data: bytes) -> Path:
        kept = free_path(self._disk, self.path.parent, before, after)
        self._disk.close(write_whole(self._disk, kept, data))
        self._disk.fsync_folder(self.path.parent)
        return kept

    def _look_outside(self) -> None:
        """Notice a file that something else has changed since we wrote it."""
        found = self._ledger.outside()
        if found is Outside.GONE:
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
        self.theirs, self.at_home = was, False
        self.notices += (notices.changed_outside(was.name, path.name),)

    def _move_to(self, path: Path, hold: Hold) -> None:
        """Go on in another file, where there is nothing yet."""
        self._hold.release()
        self._ledger.move_to(path)
        self._hold, self.theirs = hold, None


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
