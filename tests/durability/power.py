"""A disk that remembers what would outlast a loss of power, and every state it might leave.

After the published work on crash consistency (Pillai et al., "All File Systems Are Not
Created Equal", OSDI 2014): what was written but not synced may be lost, torn, or come to the
disk in another order; so may the names in a folder that was not synced.
"""

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tracker.session.files import RealDisk

ORDERS = 3
"""At most so many unsynced operations of a kind are tried in every combination."""


@dataclass
class Inode:
    """A file's lasting bytes, and the writes since; each at the place where it was made."""

    lasting: bytes = b""
    writes: list[bytes] = field(default_factory=list)
    covers: int = -1

    def contents(self, every: int) -> Iterator[bytes]:
        """What may be found in it, tearing a write at every ``every``-th byte."""
        yield self.lasting
        for number, write in enumerate(self.writes):
            before = self.lasting + b"".join(self.writes[:number])
            for cut in range(every, len(write), every):
                yield before + write[:cut]
            yield before + write
        yield from self._out_of_order()

    def _out_of_order(self) -> Iterator[bytes]:
        """Later writes are there, an earlier one is not: its place is filled with zeros."""
        last = self.writes[-ORDERS:]
        before = self.lasting + b"".join(self.writes[: len(self.writes) - len(last)])
        for there in itertools.product((True, False), repeat=len(last)):
            if not all(there) and there[-1:] == (True,):
                yield before + b"".join(
                    write if is_there else bytes(len(write))
                    for write, is_there in zip(last, there, strict=True)
                )


class PowerDisk:
    """The real disk, which also keeps the books; `after` is called after each operation.

    ``covered`` is set by the test to the number of the action that is being carried out.
    With ``lag`` only every so many syncs of what was added are carried out at all.
    """

    def __init__(self, after, lag=1):
        self.real = RealDisk()
        self.after = after
        self.lag = lag
        self.covered = 0
        self.syncs = 0
        self.operations = 0
        self.names: dict[Path, Inode] = {}
        self.lasting_names: dict[Path, Inode] = {}
        self.changes: list[dict[Path, Inode | None]] = []
        self.open: dict[int, Inode] = {}
        self.whole: set[int] = set()

    def adopt(self, path):
        """A file that is there already and lasts."""
        inode = Inode(path.read_bytes())
        self.names[path] = self.lasting_names[path] = inode

    def states(self, every) -> Iterator[dict[Path, bytes]]:
        """Every folder that may be found after a loss of power at this moment."""
        for names in self._foldersful():
            for path in names:
                others = {other: names[other].lasting for other in names if other != path}
                for content in names[path].contents(every):
                    yield {**others, path: content}

    def sure(self, path):
        """The action up to which the file that lasts at ``path`` was synced."""
        return self.lasting_names[path].covers

    def _foldersful(self):
        """The names as they last, and with any of the latest changes of names."""
        kept = len(self.changes) - ORDERS
        for there in itertools.product((True, False), repeat=min(ORDERS, len(self.changes))):
            names = dict(self.lasting_names)
            for number, change in enumerate(self.changes):
                if number < kept or there[number - max(kept, 0)]:
                    names.update(change)
            yield {path: inode for path, inode in names.items() if inode is not None}

    def _change(self, change):
        self.changes.append(change)
        for path, inode in change.items():
            if inode is None:
                self.names.pop(path, None)
            else:
                self.names[path] = inode

    def _done(self):
        self.operations += 1
        self.after()

    def open_append(self, path):
        handle = self.real.open_append(path)
        self.open[handle] = self.names[path]
        self.whole.discard(handle)
        return handle

    def open_new(self, path):
        handle = self.real.open_new(path)
        self.open[handle] = Inode()
        self.whole.add(handle)
        self._change({path: self.open[handle]})
        self._done()
        return handle

    def write(self, handle, data):
        self.real.write(handle, data)
        self.open[handle].writes.append(data)
        self._done()
        return len(data)

    def fsync(self, handle):
        inode = self.open[handle]
        self.syncs += 1
        if handle in self.whole or self.syncs % self.lag == 0:
            inode.lasting += b"".join(inode.writes)
            inode.writes.clear()
            inode.covers = self.covered
            self._done()

    def replace(self, source, target):
        self.real.replace(source, target)
        self.whole.clear()
        self._change({target: self.names[source], source: None})
        self._done()

    def fsync_folder(self, _folder):
        self.lasting_names = dict(self.names)
        self.changes.clear()
        self._done()

    def remove(self, path):
        self.real.remove(path)
        if path in self.names:
            self._change({path: None})
            self._done()

    def __getattr__(self, name):
        return getattr(self.real, name)
