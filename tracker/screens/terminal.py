"""Leaving in good order: signals, and a terminal that is no longer there."""

from __future__ import annotations

import asyncio
import signal
import sys
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from textual.app import App

EVERY = 0.5
"""Seconds between two looks at whether the terminal is still there."""


def watch_terminal(app: App[Any]) -> None:
    """Leave on SIGTERM and SIGHUP, and when the terminal is lost.

    Textual 8.2.8 handles neither signal, and where SIGHUP is ignored and the terminal goes
    away, it spins for ever.
    """
    loop = asyncio.get_running_loop()
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and sys.platform != "win32":
            loop.add_signal_handler(number, app.exit)
    if _present():
        app.set_interval(EVERY, lambda: None if _present() else app.exit())


def _present() -> bool:
    """Whether standard input is a terminal that answers."""
    try:
        import termios
    except ImportError:
        return False
    try:
        termios.tcgetattr(0)
    except (termios.error, OSError, ValueError):
        return False
    return True
