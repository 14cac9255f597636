"""A program on a pseudo-terminal, and when what it wrote arrived."""

import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from pathlib import Path

import pyte

ROOT = Path(__file__).parents[2]
COLUMNS, LINES = 100, 30
PATIENCE = 60
QUIET = 0.02
"""Seconds without a byte after which a frame is whole."""

FLOOR = (sys.executable, "-m", "tests.benchmarks.floor")


def hookside(*words):
    """The command line of Hookside."""
    return (sys.executable, "-m", "tracker", *map(str, words))


def environ(home):
    """The same surroundings for every program that is measured."""
    kept = {name: os.environ[name] for name in ("PATH", "LANG") if name in os.environ}
    return {
        **kept,
        "TERM": "xterm-256color",
        "COLORTERM": "truecolor",
        "HOOKSIDE_HOME": str(home),
        "PYTHONPATH": str(ROOT),
    }


class Watched:
    """A running program, what is on its screen, and the times of what it wrote."""

    def __init__(self, command, home):
        self.outer, inner = pty.openpty()
        fcntl.ioctl(inner, termios.TIOCSWINSZ, struct.pack("HHHH", LINES, COLUMNS, 0, 0))
        self.page = pyte.Screen(COLUMNS, LINES)
        self.stream = pyte.ByteStream(self.page)
        self.begun = time.perf_counter()
        self.process = subprocess.Popen(
            command,
            stdin=inner,
            stdout=inner,
            stderr=inner,
            env=environ(home),
            cwd=ROOT,
            start_new_session=True,
        )
        os.close(inner)

    def first_paint(self, words):
        """Seconds from the start to the words on the screen."""
        end = time.monotonic() + PATIENCE
        while words not in self.text():
            if time.monotonic() > end:
                raise TimeoutError(f"{words!r} never came:\n{self.text()}")
            chunk = self._chunk(PATIENCE)
            if chunk is None:
                raise EOFError(f"{words!r} never came:\n{self.text()}")
            at, data = chunk
            self.stream.feed(data)
        return at - self.begun

    def press(self, key=b" "):
        """Seconds from a key to the first changed cell."""
        before = self.text()
        begun = time.perf_counter()
        os.write(self.outer, key)
        first = self._chunk(PATIENCE)
        if first is None:
            raise EOFError(f"a key changed nothing:\n{self.text()}")
        chunks = [first]
        while (chunk := self._chunk(QUIET)) is not None:
            chunks.append(chunk)
        changed = None
        for at, data in chunks:
            self.stream.feed(data)
            if changed is None and self.text() != before:
                changed = at - begun
        return changed

    def settle(self, seconds=0.3):
        """Take in what is written until nothing is for so long; how many bytes."""
        count = 0
        while (chunk := self._chunk(seconds)) is not None:
            count += len(chunk[1])
            self.stream.feed(chunk[1])
        return count

    def cpu(self):
        """Seconds of processor time so far."""
        fields = Path(f"/proc/{self.process.pid}/stat").read_text().rpartition(")")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def peak(self):
        """Most memory held so far, in MiB."""
        status = Path(f"/proc/{self.process.pid}/status").read_text()
        return int(status.split("VmHWM:")[1].split()[0]) / 1024

    def text(self):
        """The screen as text."""
        return "\n".join(self.page.display)

    def leave(self):
        """Ask it to quit, and wait; its exit status."""
        os.write(self.outer, b"q")
        end = time.monotonic() + PATIENCE
        while self.process.poll() is None and time.monotonic() < end:
            self._chunk(0.05)
        return self.process.wait(timeout=1)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGKILL)
            self.process.wait()
        os.close(self.outer)

    def _chunk(self, seconds):
        """What comes next and when it came; None if nothing comes for so long."""
        if not select.select([self.outer], [], [], seconds)[0]:
            return None
        try:
            data = os.read(self.outer, 1 << 16)
        except OSError:
            return None
        return (time.perf_counter(), data) if data else None
