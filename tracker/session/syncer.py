"""Makes what was written last through a loss of power, without holding up a key."""

from __future__ import annotations

import threading
from collections.abc import Callable

from tracker.lean import TYPE_CHECKING

if TYPE_CHECKING:
    from tracker.session.disk import Disk


class Syncer:
    """A thread that syncs the newest descriptor asked for; many requests become one.

    ``failed`` is called (on that thread) with the error when a sync fails. With
    ``background`` False every request is carried out at once, for tests that count
    operations.
    """

    def __init__(
        self, disk: Disk, failed: Callable[[OSError], None], *, background: bool = True
    ) -> None:
        self._disk = disk
        self._failed = failed
        self._background = background
        self._wanted: int | None = None
        self._closing: list[int] = []
        self._over = self._busy = False
        self._changed = threading.Condition()
        self._thread: threading.Thread | None = None

    def request(self, handle: int) -> None:
        """Sync this descriptor soon."""
        if not self._background:
            self._sync(handle)
            return
        with self._changed:
            self._wanted = handle
            self._start()
            self._changed.notify_all()

    def let_go(self, handle: int) -> None:
        """Close this descriptor, when no sync of it is under way."""
        if not self._background:
            self._close(handle)
            return
        with self._changed:
            if self._wanted == handle:
                self._wanted = None
            self._closing.append(handle)
            self._start()
            self._changed.notify_all()

    def wait(self) -> None:
        """Wait until all that was asked is carried out."""
        with self._changed:
            self._changed.wait_for(lambda: not (self._busy or self._asked()))

    def finish(self) -> None:
        """Carry out all that was asked, and end; what is asked later is done at once."""
        with self._changed:
            self._over = True
            self._changed.notify_all()
        if self._thread is not None:
            self._thread.join()
        self._background = False

    def _start(self) -> None:
        if self._thread is None:
            self._thread = threading.Thread(target=self._run, name="piece-sync", daemon=True)
            self._thread.start()

    def _run(self) -> None:
        while True:
            with self._changed:
                self._changed.wait_for(self._has_work)
                wanted, closing = self._wanted, self._closing
                self._wanted, self._closing = None, []
                if wanted is None and not closing:
                    return
                self._busy = True
            if wanted is not None:
                self._sync(wanted)
            for handle in closing:
                self._close(handle)
            with self._changed:
                self._busy = False
                self._changed.notify_all()

    def _has_work(self) -> bool:
        return self._over or self._asked()

    def _asked(self) -> bool:
        return self._wanted is not None or bool(self._closing)

    def _sync(self, handle: int) -> None:
        try:
            self._disk.fsync(handle)
        except OSError as error:
            self._failed(error)

    def _close(self, handle: int) -> None:
        try:
            self._disk.close(handle)
        except OSError as error:
            self._failed(error)
