"""The real command on a real pseudo-terminal."""

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

import pyte

COMMAND = (sys.executable, "-m", "tracker", "work", "tea-cosy", "--size", "4 cups")
PATIENCE = 20
BEFORE = "Before you begin"


class Terminal:
    """A child process on a terminal of its own; ``raw`` is all that it wrote."""

    def __init__(self, columns=80, rows=24, command=COMMAND, **environ):
        self.outer, inner = pty.openpty()
        fcntl.ioctl(inner, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.before = termios.tcgetattr(inner)
        self.inner = inner
        self.raw = b""
        self._closed = False
        self.page = pyte.Screen(columns, rows)
        self.stream = pyte.ByteStream(self.page)
        environ = {"TERM": "xterm-256color", "COLORTERM": "truecolor", **environ}
        kept = {
            name: os.environ[name]
            for name in ("PATH", "HOOKSIDE_HOME", "PYTHONPATH")
            if name in os.environ
        }
        self.process = subprocess.Popen(
            command,
            stdin=inner,
            stdout=inner,
            stderr=inner,
            env={**kept, **environ},
            start_new_session=True,
        )

    def send(self, data):
        """Press keys."""
        os.write(self.outer, data)

    def resize(self, columns, rows):
        """Give the window another size, and say so, as a terminal does."""
        fcntl.ioctl(self.inner, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.process.send_signal(signal.SIGWINCH)

    def read(self, seconds=0.05):
        """Take in what was written."""
        while select.select([self.outer], [], [], seconds)[0]:
            try:
                data = os.read(self.outer, 65536)
            except OSError:
                return
            if not data:
                return
            self.raw += data
            self.stream.feed(data)

    def until(self, words):
        """Wait until the words are on the screen; closes the page before a new piece."""
        end = time.monotonic() + PATIENCE
        while words not in "\n".join(self.page.display):
            if time.monotonic() > end:
                raise AssertionError(f"{words!r} never came:\n" + "\n".join(self.page.display))
            self.read()
            if self.page.display[0].strip().startswith(BEFORE) and words != BEFORE:
                self._close_once()

    def _close_once(self):
        if not self._closed:
            self._closed = True
            self.send(b"q")

    def left(self):
        """Wait until the process has ended; its exit code."""
        end = time.monotonic() + PATIENCE
        while self.process.poll() is None and time.monotonic() < end:
            self.read()
        return self.process.wait(timeout=1)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        for handle in (self.outer, self.inner):
            try:
                os.close(handle)
            except OSError:
                continue
