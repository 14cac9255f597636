"""A disk on which one operation, or every operation from one on, goes wrong."""

import errno
import os

from tracker.session.files import RealDisk

SYNCS = ("fsync", "fsync_folder")


class FaultyDisk:
    """The real disk, but operation ``nth`` (from 1) fails with ``code``.

    With ``lasting`` every later one fails too, until `heal`. With ``short`` a failing write
    still writes its first few bytes. Only operations of the kinds in ``kinds`` are counted,
    all if it is empty. ``names`` lists the operations in order. Syncs that succeed do
    nothing: no test cuts the power.
    """

    def __init__(self, nth=0, code=errno.ENOSPC, *, lasting=False, short=False, kinds=()):
        self.real = RealDisk()
        self.nth, self.code, self.lasting, self.short = nth, code, lasting, short
        self.kinds = kinds
        self.count = 0
        self.failures = 0
        self.names = []

    def break_next(self, code, *, lasting=False, kinds=()):
        """The next operation (of these kinds) fails."""
        self.kinds, self.code, self.lasting = kinds, code, lasting
        self.nth = self.count + 1

    def heal(self):
        """From now on all goes well."""
        self.nth = 0

    def __getattr__(self, name):
        return lambda *args: self._run(name, args)

    def _run(self, name, args):
        counted = not self.kinds or name in self.kinds
        self.count += counted
        self.names.append(name)
        due = self.count >= self.nth if self.lasting else self.count == self.nth
        if self.nth and counted and due:
            self._fail(name, args)
        return None if name in SYNCS else getattr(self.real, name)(*args)

    def _fail(self, name, args):
        self.failures += 1
        if self.short and name == "write":
            self.real.write(args[0], args[1][:7])
        if name == "close":
            # Linux lets go of the descriptor even where close fails (close(2), NOTES).
            self.real.close(args[0])
        raise OSError(self.code, os.strerror(self.code))
