"""The commands. Screens are imported only when one is opened."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Sequence
from contextlib import suppress
from typing import NoReturn, TextIO

from tracker import __version__
from tracker.notation.problems import visible

BAD_INPUT = 2
INTERRUPTED = 130

_ABOUT = "Keeps your place in a crochet pattern. Without a command: go on with the latest piece."
_EXAMPLES = """examples:
  hookside                              go on where you stopped
  hookside patterns                     see the demo patterns
  hookside work tea-cosy --size "4 cups"
  hookside work my-cowl.toml            begin a piece, or go on with it
  hookside check my-cowl.toml           count every round of a pattern
  hookside where                        your place, as one line
"""
_WORK = """Begins a piece of a pattern, or goes on with the piece of it that you have."""
_WORK_EXAMPLES = """examples:
  hookside work headband --size adult   begin a demo pattern
  hookside work hedgerow-tea-cosy       go on with a piece, by its name
  hookside work headband --size "1 year" --new
"""
_CHECK = """Counts every round of a pattern, in every size: how many stitches of the round
below it takes, how many it makes, and whether that is what the pattern prints.
Exit status: 0 all well, 1 a round differs or was not understood, 2 bad input."""
_CHECK_EXAMPLES = """examples:
  hookside check my-cowl.toml
  hookside check tea-cosy --size "4 cups"
  hookside check *.toml --json
"""


class Complaint(Exception):
    """Something the maker asked for that cannot be done; the text says what and why."""

    def __init__(self, text: str, status: int = BAD_INPUT) -> None:
        super().__init__(text)
        self.status = status


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        """One plain sentence, without control characters."""
        self.exit(BAD_INPUT, f"hookside: {visible(message)} (try {self.prog} --help)\n")


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; the exit status."""
    for stream in (sys.stdout, sys.stderr):
        with suppress(AttributeError):
            stream.reconfigure(errors="replace")  # type: ignore[union-attr]
    arguments = _parser().parse_args(argv)
    try:
        status = _run(arguments)
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


def _run(arguments: argparse.Namespace) -> int:
    """Import the command asked for, and nothing else."""
    if arguments.command == "check":
        from tracker import cli_check

        return cli_check.check(arguments.files, arguments.size, as_json=arguments.json)
    from tracker import cli_work

    if arguments.command == "work":
        return cli_work.work(arguments.name, arguments.size, new=arguments.new)
    if arguments.command == "where":
        return cli_work.where(arguments.piece)
    if arguments.command == "patterns":
        return cli_work.patterns()
    return cli_work.resume()


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
    for line in text.split("\n"):
        lead = "" if line.startswith(" ") else "hookside: "
        stream.write(f"{lead}{visible(line)}\n")


def _parser() -> argparse.ArgumentParser:
    parser = _command(_Parser, "hookside", _ABOUT, _EXAMPLES)
    parser.add_argument("--version", action="version", version=f"hookside {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    _add_work(commands)
    _add_check(commands)
    where = commands.add_parser("where", help="the place, as one plain line")
    where.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    commands.add_parser("patterns", help="list the demo patterns")
    return parser


def _command(make: type[_Parser], name: str, about: str, examples: str) -> _Parser:
    return make(
        prog=name,
        description=about,
        epilog=examples,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )


def _add_work(commands: argparse._SubParsersAction[_Parser]) -> None:
    work = commands.add_parser(
        "work",
        help="begin a piece, or go on with one",
        description=_WORK,
        epilog=_WORK_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    work.add_argument("name", metavar="PATTERN|PIECE", help="a pattern file or a name")
    work.add_argument("--size", help="the size to work, as the pattern names it")
    work.add_argument("--new", action="store_true", help="begin another piece of the pattern")


def _add_check(commands: argparse._SubParsersAction[_Parser]) -> None:
    check = commands.add_parser(
        "check",
        help="count every round of a pattern",
        description=_CHECK,
        epilog=_CHECK_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    check.add_argument("files", nargs="+", metavar="FILE", help="a pattern file or a demo's name")
    check.add_argument("--size", help="show the figures of one size only")
    check.add_argument("--json", action="store_true", help="the findings as JSON")
