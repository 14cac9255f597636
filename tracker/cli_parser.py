"""The words of the command line: what may be asked for, and the help."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import NoReturn

from tracker import __version__, cli_help
from tracker.cli import BAD_INPUT
from tracker.notation.problems import visible

_AS_WRITTEN = argparse.RawDescriptionHelpFormatter


class _Parser(argparse.ArgumentParser):
    def error(self, message: str) -> NoReturn:
        """One plain sentence, without control characters."""
        self.exit(BAD_INPUT, f"hookside: {visible(message)} (try {self.prog} --help)\n")


def whole(words: Sequence[str]) -> list[str]:
    """The words with those joined that argparse would part: an ease below 0 is no option."""
    found: list[str] = []
    for word in words:
        if found and found[-1] == "--ease" and word.startswith(("-", "−")):
            found[-1] = f"--ease={word}"
        else:
            found.append(word)
    return found


def make_parser() -> argparse.ArgumentParser:
    """The parser of the whole command line."""
    parser = _Parser(
        prog="hookside",
        description=cli_help.ABOUT,
        epilog=cli_help.EXAMPLES,
        formatter_class=_AS_WRITTEN,
    )
    parser.add_argument("--version", action="version", version=f"hookside {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    _add_work(commands)
    _add_weigh(commands)
    _add_measure(commands)
    _add_ahead(commands)
    _add_log(commands)
    _add_check(commands)
    _add_read(commands)
    _add_spread(commands)
    _add_size(commands)
    _add_tables(commands)
    _add_write(commands)
    _add_chapters(commands)
    where = commands.add_parser("where", help="the place, as one plain line")
    where.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    where.add_argument("--card", action="store_true", help="more: how to find it on the work")
    shelf = commands.add_parser("shelf", help="all pieces: open, rename, set aside, finish")
    shelf.add_argument("--plain", action="store_true", help="as plain lines")
    commands.add_parser("patterns", help="list the demo patterns")
    return parser


def _command(
    commands: argparse._SubParsersAction[_Parser],
    name: str,
    short: str,
    about: str,
    examples: str,
) -> _Parser:
    """A command that is explained in its own help, its lines kept as they are."""
    return commands.add_parser(
        name, help=short, description=about, epilog=examples, formatter_class=_AS_WRITTEN
    )


def _add_work(commands: argparse._SubParsersAction[_Parser]) -> None:
    work = _command(
        commands, "work", "begin a piece, or go on with one", cli_help.WORK, cli_help.WORK_EXAMPLES
    )
    work.add_argument(
        "name",
        nargs="?",
        metavar="PATTERN|PIECE",
        help="a pattern file or a name; default: the latest piece",
    )
    work.add_argument("--size", help="the size to work, as the pattern names it")
    work.add_argument("--new", action="store_true", help="begin another piece of the pattern")
    work.add_argument(
        "--plain", action="store_true", help="line by line: for screen readers and slow lines"
    )
    work.add_argument(
        "--take-over", action="store_true", help="take a piece from the window it is open in"
    )
    work.add_argument(
        "--caption", metavar="FILE", help="keep the place in a small file, for a stream to show"
    )


def _add_ahead(commands: argparse._SubParsersAction[_Parser]) -> None:
    ahead = commands.add_parser(
        "ahead", help="how long a piece takes from here, and whether its yarn lasts"
    )
    ahead.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    ahead.add_argument("--json", action="store_true", help="in seconds and grams, as JSON")


def _add_log(commands: argparse._SubParsersAction[_Parser]) -> None:
    log = commands.add_parser("log", help="every round of a piece: count, time, changes, yarn")
    log.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    log.add_argument("--plot", action="store_true", help="stitches and time as bars")
    log.add_argument("--svg", metavar="FILE", help="write a picture of it")
    log.add_argument("--json", action="store_true", help="all of it as JSON")
    log.add_argument("--force", action="store_true", help="write over a file that is there")


def _add_measure(commands: argparse._SubParsersAction[_Parser]) -> None:
    measure = _command(
        commands, "measure", "keep how long a piece is", cli_help.MEASURE, cli_help.MEASURE_EXAMPLES
    )
    measure.add_argument(
        "words", nargs="+", metavar="[PIECE] LENGTH", help="what the tape shows: 14.5 cm, 5 3/4 in"
    )
    measure.add_argument("--json", action="store_true", help="what is left, as JSON")


def _add_weigh(commands: argparse._SubParsersAction[_Parser]) -> None:
    weigh = _command(
        commands, "weigh", "keep what is left of a yarn", cli_help.WEIGH, cli_help.WEIGH_EXAMPLES
    )
    weigh.add_argument(
        "words", nargs="+", metavar="[PIECE] WEIGHT", help="what the scale shows: 43 g, 1.5 oz"
    )
    weigh.add_argument("--yarn", metavar="LETTER", help="default: the yarn in hand")
    weigh.add_argument("--json", action="store_true", help="what lies ahead, as JSON")


def _add_check(commands: argparse._SubParsersAction[_Parser]) -> None:
    check = _command(
        commands, "check", "count every round of a pattern", cli_help.CHECK, cli_help.CHECK_EXAMPLES
    )
    check.add_argument(
        "files", nargs="+", metavar="FILE", help="a pattern, text or PDF file, or a demo's name"
    )
    check.add_argument("--size", help="show the figures of one size only")
    check.add_argument("--json", action="store_true", help="the findings as JSON")


def _add_read(commands: argparse._SubParsersAction[_Parser]) -> None:
    read = _command(
        commands,
        "read",
        "draft a pattern file from a text or PDF",
        cli_help.READ,
        cli_help.READ_EXAMPLES,
    )
    read.add_argument("file", metavar="FILE", help='a text, Markdown or PDF file, or "-"')
    read.add_argument("-o", "--output", metavar="FILE", help="write the pattern file here")
    read.add_argument("--force", action="store_true", help="write over a file that is there")
    read.add_argument("--terms", choices=("US", "UK"), help="the terms, where the text is silent")
    read.add_argument("--json", action="store_true", help="the draft and its table as JSON")


def _add_spread(commands: argparse._SubParsersAction[_Parser]) -> None:
    spread = _command(
        commands,
        "spread",
        "spread increases or decreases evenly",
        cli_help.SPREAD,
        cli_help.SPREAD_EXAMPLES,
    )
    spread.add_argument(
        "counts", nargs="+", metavar="COUNT", help='stitches there are and are wanted: "48 to 60"'
    )
    spread.add_argument(
        "--rounds", type=int, default=1, metavar="N", help="how many rounds share the change"
    )
    spread.add_argument("--rows", action="store_true", help="turned rows, no change at an edge")
    spread.add_argument("--multiple", metavar="RULE", help='a stitch multiple, such as "6 + 2"')
    spread.add_argument("--stitch", help="the stitch worked; single crochet if left out")
    spread.add_argument("--terms", choices=("US", "UK"), default="US", help="default: US")
    spread.add_argument("--json", action="store_true", help="the rounds as JSON")


def _add_write(commands: argparse._SubParsersAction[_Parser]) -> None:
    write = _command(
        commands, "write", "the instructions, to hand on", cli_help.WRITE, cli_help.WRITE_EXAMPLES
    )
    write.add_argument(
        "name", metavar="PATTERN|PIECE", help="a pattern file, a demo pattern or a piece"
    )
    write.add_argument("-o", "--output", metavar="FILE", help="write here; its ending says how")
    write.add_argument(
        "--as",
        dest="form",
        choices=("text", "markdown", "page", "chart"),
        help="the form, whatever the name",
    )
    write.add_argument(
        "--terms", choices=("US", "UK"), help="in these terms, not the pattern's own"
    )
    write.add_argument("--size", help="the size a chart is drawn in; the first if left out")
    write.add_argument(
        "--designed", action="store_true", help="of a piece: as the pattern has it, in all sizes"
    )
    write.add_argument("--left-handed", action="store_true", help="charts for a left-handed maker")
    write.add_argument("--part", help="the part a chart shows; the first if left out")
    write.add_argument("--force", action="store_true", help="write over a file that is there")


def _add_size(commands: argparse._SubParsersAction[_Parser]) -> None:
    size = _command(
        commands,
        "size",
        "how large it comes out, which size fits",
        cli_help.SIZE,
        cli_help.SIZE_EXAMPLES,
    )
    size.add_argument("name", metavar="PATTERN|PIECE", help="a pattern file or a name")
    size.add_argument("--swatch", metavar="SWATCH", help='such as "16 sts 18 rounds 10 cm"')
    size.add_argument("--size", help="this size only")
    size.add_argument(
        "--for", dest="body", metavar="WHAT", help='what it goes round: "44 cm", or an age'
    )
    size.add_argument("--ease", help='what it shall be larger by: "-2 cm" or "-5 %%"')
    size.add_argument("--hook", help='a hook, by mm or name: "5 mm", H-8')
    size.add_argument("--unit", choices=("cm", "in"), help="what lengths are shown in")
    size.add_argument("--json", action="store_true", help="all of it as JSON, in cm")


def _add_tables(commands: argparse._SubParsersAction[_Parser]) -> None:
    tables = _command(
        commands, "tables", "hooks, yarn weights, heads", cli_help.TABLES, cli_help.TABLES_EXAMPLES
    )
    tables.add_argument("table", choices=("hooks", "yarns", "heads"))
    tables.add_argument("word", nargs="?", metavar="WORD", help="one hook, yarn or age")
    tables.add_argument("--unit", choices=("cm", "in"), default="cm", help="for heads")
    tables.add_argument("--json", action="store_true", help="the table as JSON")


def _add_chapters(commands: argparse._SubParsersAction[_Parser]) -> None:
    chapters = _command(
        commands,
        "chapters",
        "chapter marks for a recording",
        cli_help.CHAPTERS,
        cli_help.CHAPTERS_EXAMPLES,
    )
    chapters.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    chapters.add_argument("--began", required=True, metavar="WHEN", help="when it began")
    chapters.add_argument("--ended", metavar="WHEN", help="when it ended, if said")
    chapters.add_argument("--json", action="store_true", help="the marks as JSON")
