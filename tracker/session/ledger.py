"""The lines of a piece's file: those that are written, those still to be, all of them anew.

No press is lost and none waits: a line goes to the operating system before the action
returns, and to the disk a moment later on another thread. A file is only ever added to at
its end, or replaced as a whole.
"""

from __future__ import annotations

from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.access import reason
from tracker.session.entries import Entry, PutDown
from tracker.session.lines import stamp_of, write_line
from tracker.session.paper import Found, write_paper
from tracker.session.sheet import Outside, Sheet
from tracker.session.syncer import Syncer

if TYPE_CHECKING:
    from contextlib import AbstractContextManager

    from tracker.session.head import Head
    from tracker.session.history import History
    from tracker.session.surroundings import Surroundings


class Ledger:
    """One piece's file, and how far it is behind what was pressed.

    ``whole`` says that it is to be written anew, and not only added to; ``unsynced`` why the
    disk may not have what was written, "" where it has; ``put_down`` that the last line says
    that the piece was put down.
    """

    def __init__(self, path: Path, around: Surroundings) -> None:
        self.whole = True
        self.unsynced = ""
        self.put_down = False
        self._disk, self._clock = around.disk, around.clock
        self._syncer = Syncer(around.disk, self._sync_failed, background=around.background)
        self._sheet = Sheet(path, around.disk, self._syncer)
        self._folded = 0
        self._number = self._seal = 0
        self._pending = b""

    @property
    def path(self) -> Path:
        """The piece's file."""
        return self._sheet.path

    @property
    def sign(self) -> tuple[int, int]:
        """The length and the CRC-32 of the file as last written."""
        return self._sheet.size, self._sheet.check

    @property
    def behind(self) -> bool:
        """Whether the file may lack something."""
        return bool(self._pending or self.whole or self.unsynced)

    def grown(self, fold_at: int) -> bool:
        """Whether enough was added since the file was last folded: ``fold_at`` bytes at least."""
        return self._sheet.size - self._folded > max(fold_at, self._folded // 4)

    def take_up(self, data: bytes, found: Found) -> None:
        """Go on from a file that holds ``data``, in which this was found."""
        self._number, self._seal = found.number, found.seal
        self.put_down = found.put_down and not found.damage
        self.whole = bool(found.damage) or found.head_changed
        self._sheet.adopt(data)
        # About what it comes to when it is folded.
        self._folded = len(data) * found.history.many // max(1, found.number)
        if not data.endswith(b"\n"):
            # A last line without its line end must not run into the next.
            self._pending = b"\n"

    def enter(self, entry: Entry, took: int | None = None) -> None:
        """One more line, to be written by `bring_up`; ``took`` as in `Store.append`."""
        self._number += 1
        stamp = stamp_of(self._clock())
        line, self._seal = write_line(self._number, entry, stamp, self._seal, took)
        self._pending += line
        self.put_down = isinstance(entry, PutDown)

    def alone(self) -> AbstractContextManager[None]:
        """No other window writes to the file or takes it over meanwhile. May raise OSError."""
        return self._sheet.alone()

    def outside(self) -> Outside:
        """What happened to the file since we wrote last. May raise OSError."""
        found = self._sheet.outside(self._pending)
        self._pending = self._pending[self._sheet.there :]
        if found is Outside.GONE:
            self.whole = True
        return found

    def bring_up(self, head: Head, history: History, *, fold: bool) -> None:
        """Write all that the file lacks; with ``fold`` write it anew, folded. May raise OSError."""
        if self.whole or self.unsynced:
            self._write_whole(head, history)
            return
        while self._pending:
            self._pending = self._pending[self._sheet.add(self._pending) :]
        self._sheet.added()
        if fold:
            self._fold(head, history)

    def text(self, head: Head, history: History) -> bytes:
        """The whole file, folded."""
        return self._paper(head, history)[0]

    def leave_off(self) -> None:
        """Nothing more is to be written."""
        self._pending, self.whole, self.unsynced = b"", False, ""

    def move_to(self, path: Path) -> None:
        """Go on in another file, where there is nothing yet."""
        self._sheet.let_go()
        self._sheet = Sheet(path, self._disk, self._syncer)
        self.whole = True

    def lay_down(self) -> None:
        """Close the file, the disk having all that was written; who writes on opens it anew."""
        self._syncer.wait()
        self._sheet.let_go()
        self._syncer.wait()

    def renamed(self, path: Path) -> None:
        """The file that was laid down has another name now."""
        self._sheet.path = path

    def sync(self) -> None:
        """Wait until the disk has all that was written, or `unsynced` says why not."""
        self._syncer.finish()

    def let_go(self) -> None:
        """Close the file as it is."""
        self.sync()
        self._sheet.let_go()

    def _fold(self, head: Head, history: History) -> None:
        """Write the file anew. What is saved stays saved if that fails half way."""
        try:
            self._write_whole(head, history)
        except OSError:
            if self.whole:
                raise

    def _write_whole(self, head: Head, history: History) -> None:
        """Write the file anew, folded, and put it in the old one's place."""
        data, number, seal = self._paper(head, history)
        self.whole, self.unsynced = self.whole or bool(self.unsynced), ""
        self._sheet.replace(data)
        self._number, self._seal, self._pending = number, seal, b""
        self._folded = len(data)
        # Until the name lasts too, the new file is not sure to be there after a power cut.
        self.whole = True
        self._sheet.settle()
        self.whole = False

    def _paper(self, head: Head, history: History) -> tuple[bytes, int, int]:
        """The whole file, folded, and the number and the seal of its last line."""
        when = self._clock()
        data, number, seal = write_paper(head, history, when)
        if self.put_down:
            line, seal = write_line(number + 1, PutDown(), stamp_of(when), seal)
            data, number = data + line, number + 1
        return data, number, seal

    def _sync_failed(self, error: OSError) -> None:
        # After a failed sync the system may have dropped what it held; only a file written
        # anew is sure to be whole (Rebello et al., USENIX ATC 2020).
        self.unsynced = reason(error)
