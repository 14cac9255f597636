"""The commands. Screens are imported only when one is opened."""

from __future__ import annotations

import os
import sys
from contextlib import suppress

from tracker.lean import TYPE_CHECKING

if TYPE_CHECKING:
    from argparse import Namespace
    from collections.abc import Sequence
    from typing import TextIO

BAD_INPUT = 2
INTERRUPTED = 130


class Complaint(Exception):
    """Something the maker asked for that cannot be done; the text says what and why."""

    def __init__(self, text: str, status: int = BAD_INPUT) -> None:
        super().__init__(text)
        self.status = status


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit status."""
    for stream in (sys.stdout, sys.stderr):
        with suppress(AttributeError):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]
    words = sys.argv[1:] if argv is None else list(argv)
    try:
        status = _run(words)
        sys.stdout.flush()
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        return 0
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:
        if os.environ.get("HOOKSIDE_DEBUG") == "1":
            raise
        return _failed(error)
    return status


def _run(words: Sequence[str]) -> int:
    """Import the command asked for, and nothing else."""
    if words[:1] in _AT_ONCE and len(words) <= 2 and not "".join(words[1:]).startswith("-"):
        return _at_once(*words)
    from tracker.cli_parser import make_parser, whole

    return _carry_out(make_parser().parse_args(whole(words)))


_AT_ONCE: tuple[list[str], ...] = ([], ["where"], ["work"])
"""Commands for a piece, asked for again and again: these go without any parser."""


def _at_once(command: str = "", piece: str | None = None) -> int:
    if command == "where":
        from tracker.cli_where import where

        return where(piece)
    from tracker import cli_work

    return cli_work.work(piece) if command else cli_work.resume()


def _carry_out(arguments: Namespace) -> int:
    return _COMMANDS.get(arguments.command, _resume)(arguments)


def _ahead(arguments: Namespace) -> int:
    from tracker import cli_ahead

    return cli_ahead.ahead(arguments.piece, as_json=arguments.json)


def _log(arguments: Namespace) -> int:
    from tracker import cli_log

    return cli_log.log(
        arguments.piece,
        arguments.svg,
        plot=arguments.plot,
        as_json=arguments.json,
        force=arguments.force,
    )


def _weigh(arguments: Namespace) -> int:
    from tracker import cli_ahead

    return cli_ahead.weigh(arguments.words, arguments.yarn, as_json=arguments.json)


def _measure(arguments: Namespace) -> int:
    from tracker import cli_measure

    return cli_measure.measure(arguments.words, as_json=arguments.json)


def _check(arguments: Namespace) -> int:
    from tracker import cli_check

    return cli_check.check(arguments.files, arguments.size, as_json=arguments.json)


def _shelf(arguments: Namespace) -> int:
    from tracker import cli_shelf

    return cli_shelf.shelf(plain=arguments.plain)


def _where(arguments: Namespace) -> int:
    from tracker import cli_where

    told = cli_where.where_card if arguments.card else cli_where.where
    return told(arguments.piece)


def _read(arguments: Namespace) -> int:
    from tracker import cli_read

    return cli_read.read(
        arguments.file,
        arguments.output,
        arguments.terms,
        force=arguments.force,
        as_json=arguments.json,
    )


def _size(arguments: Namespace) -> int:
    from tracker import cli_size

    return cli_size.size(arguments)


def _tables(arguments: Namespace) -> int:
    from tracker import cli_tables

    return cli_tables.tables(
        arguments.table, arguments.word, arguments.unit, as_json=arguments.json
    )


def _spread(arguments: Namespace) -> int:
    from tracker import cli_spread

    return cli_spread.spread(
        arguments.counts,
        arguments.rounds,
        arguments.multiple,
        arguments.stitch,
        arguments.terms,
        rows=arguments.rows,
        as_json=arguments.json,
    )


def _write(arguments: Namespace) -> int:
    from tracker.cli_write import Wanted, write

    wanted = Wanted(
        arguments.form,
        arguments.output,
        arguments.terms,
        arguments.size,
        arguments.part,
        arguments.designed,
        arguments.left_handed,
        arguments.force,
    )
    return write(arguments.name, wanted)


def _chapters(arguments: Namespace) -> int:
    from tracker import cli_chapters

    return cli_chapters.chapters(
        arguments.piece, arguments.began, arguments.ended, as_json=arguments.json
    )


def _work(arguments: Namespace) -> int:
    from tracker import cli_work

    return cli_work.work(
        arguments.name,
        arguments.size,
        new=arguments.new,
        plain=arguments.plain,
        caption=arguments.caption,
        take_over=arguments.take_over,
    )


def _patterns(_arguments: Namespace) -> int:
    from tracker import cli_work

    return cli_work.patterns()


def _resume(_arguments: Namespace) -> int:
    from tracker import cli_work

    return cli_work.resume()


_COMMANDS = {
    "ahead": _ahead,
    "chapters": _chapters,
    "check": _check,
    "log": _log,
    "measure": _measure,
    "patterns": _patterns,
    "read": _read,
    "shelf": _shelf,
    "size": _size,
    "spread": _spread,
    "tables": _tables,
    "weigh": _weigh,
    "where": _where,
    "work": _work,
    "write": _write,
}


def _failed(error: Exception) -> int:
    if isinstance(error, Complaint):
        say(str(error), sys.stderr)
        return error.status
    kind = f"{type(error).__name__}: {error}".split("\n", 1)[0]
    say(
        f"something went wrong inside ({kind}). All presses made are kept. "
        "HOOKSIDE_DEBUG=1 shows where it happened.",
        sys.stderr,
    )
    return BAD_INPUT


def say(text: str, stream: TextIO) -> None:
    """Write lines led by the program's name; control characters are made visible."""
    from tracker.notation.problems import visible

    for line in text.split("\n"):
        lead = "" if line.startswith(" ") else "hookside: "
        stream.write(f"{lead}{visible(line)}\n")
