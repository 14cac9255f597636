"""The words of the command line: what may be asked for, and the help."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import NoReturn

from tracker import __version__
from tracker.cli import BAD_INPUT
from tracker.notation.problems import visible

_ABOUT = "Keeps your place in a crochet pattern. Without a command: go on with the latest piece."
_EXAMPLES = """examples:
  hookside                              go on where you stopped
  hookside patterns                     see the demo patterns
  hookside work tea-cosy --size "4 cups"
  hookside work my-cowl.toml            begin a piece, or go on with it
  hookside check my-cowl.toml           count every round of a pattern
  hookside read my-cowl.pdf -o my-cowl.toml
  hookside write tea-cosy -o cosy.md    the instructions, to hand on
  hookside shelf                        all your pieces
  hookside where                        your place, as one line
  hookside where --card                 and how to find it on the work
  hookside size headband --for "44 cm"  how large it comes out, which size fits
  hookside spread 48 to 60              where the increases of a round go
"""
_WORK = """Begins a piece of a pattern, or goes on with the piece of it that you have."""
_WORK_EXAMPLES = """examples:
  hookside work headband --size adult   begin a demo pattern
  hookside work hedgerow-tea-cosy       go on with a piece, by its name
  hookside work headband --size "1 year" --new
  hookside work --plain                 line by line, for a screen reader
"""
_CHECK = """Counts every round of a pattern, in every size: how many stitches of the round
below it takes, how many it makes, and whether that is what the pattern prints.
Exit status: 0 all well, 1 a round differs or was not understood, 2 bad input."""
_CHECK_EXAMPLES = """examples:
  hookside check my-cowl.toml
  hookside check tea-cosy --size "4 cups"
  hookside check *.toml --json
"""
_READ = """Reads instructions written for people, a text, Markdown or PDF file, and drafts a
pattern file of them. A table of every round follows, with what the count says of it. What
was not understood is kept word for word. "-" reads what is piped in.
Exit status: 0 all well, 1 a round differs or was not understood, 2 bad input."""
_READ_EXAMPLES = """examples:
  hookside read my-cowl.pdf -o my-cowl.toml
  hookside read notes.md --terms UK     show the pattern file that would be written
  hookside read notes.md --json         the draft and its table, for scripts
"""
_SIZE = """How large a pattern comes out, part by part and size by size: by its own gauge, or
by a swatch of yours. How far across its crown is and whether it lies flat. With --for,
which size fits; with --hook, what the hook may be called. For a piece that is worked to a
length, how many rounds are left."""
_SIZE_EXAMPLES = """examples:
  hookside size tea-cosy
  hookside size headband --swatch "15 sts 12 rounds 10 cm"
  hookside size headband --for "44 cm"
  hookside size headband --for "6 months" --ease "-5 %"
  hookside size my-cowl.toml --unit in --json
"""
_MEASURE = """Keeps how long a piece is at the place where it stands. In a round that is worked to
a length, the rounds left go by it. A measure can be undone like any press; a second one at
the same place corrects it."""
_MEASURE_EXAMPLES = """examples:
  hookside measure 14.5 cm              the latest piece
  hookside measure tea-cosy 5 3/4 in
"""
_TABLES = """Hooks, yarn weights and heads, with what their sources differ in. With a word, what
that word means: a hook's name or diameter, a yarn's name or gauge, an age."""
_TABLES_EXAMPLES = """examples:
  hookside tables hooks
  hookside tables hooks H-8
  hookside tables yarns 14              classes with 14 sc in 10 cm
  hookside tables heads "6 months"
"""
_SPREAD = """Spreads increases or decreases evenly over a round, or over several that are set
off from one another, and counts the lines it writes. With --multiple, finds the count next
to a stitch multiple first."""
_SPREAD_EXAMPLES = """examples:
  hookside spread 48 to 60
  hookside spread 48 to 60 --rounds 3   12 more in all, shared among three rounds
  hookside spread 90 to 72 --rows --stitch hdc
  hookside spread 70 --multiple "6 + 2"
"""

_CHAPTERS = """Chapter marks for a recording of the work: when each round was begun, counted
from the moment the recording began, one plain line each. A time alone means the day on
which the piece was last worked. The recording ends when nothing was pressed for an hour."""
_CHAPTERS_EXAMPLES = """examples:
  hookside chapters --began 10:15                       of the latest piece
  hookside chapters my-cowl --began "2026-03-02 10:15:30" --ended 11:40
"""
_WRITE = """Writes a pattern, or a piece as it was really worked, as instructions that others can
follow: materials, gauge, abbreviations, special stitches, every part in all sizes, making up,
cautions, and how far its counts are proved. `hookside read` reads text and Markdown back."""
_WRITE_EXAMPLES = """examples:
  hookside write tea-cosy               as plain text, to the screen
  hookside write tea-cosy -o cosy.md    as Markdown
  hookside write my-cowl.toml --terms UK -o cowl.txt
  hookside write my-cowl.toml -o cowl.html      a page to print, with charts
  hookside write my-cowl                a piece as it was worked, with its notes
  hookside write lattice-mat --part Tile -o tile.svg
"""
_WEIGH = """Keeps with a piece what is left of a yarn, all balls of it together, as the scale shows
it. From two weighings on it is known what a stitch takes, and whether the yarn lasts. A
weighing can be undone like any press; a second one at the same place corrects it."""
_WEIGH_EXAMPLES = """examples:
  hookside weigh 43 g                   the latest piece, the yarn in hand
  hookside weigh tea-cosy 43.5 g --yarn B
  hookside weigh 1.5 oz
"""


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
    parser = _command(_Parser, "hookside", _ABOUT, _EXAMPLES)
    parser.add_argument("--version", action="version", version=f"hookside {__version__}")
    commands = parser.add_subparsers(dest="command", metavar="COMMAND", title="commands")
    _add_ahead(commands)
    _add_log(commands)
    _add_measure(commands)
    _add_weigh(commands)
    _add_work(commands)
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
    measure = commands.add_parser(
        "measure",
        help="keep how long a piece is",
        description=_MEASURE,
        epilog=_MEASURE_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    measure.add_argument(
        "words", nargs="+", metavar="[PIECE] LENGTH", help="what the tape shows: 14.5 cm, 5 3/4 in"
    )
    measure.add_argument("--json", action="store_true", help="what is left, as JSON")


def _add_weigh(commands: argparse._SubParsersAction[_Parser]) -> None:
    weigh = commands.add_parser(
        "weigh",
        help="keep what is left of a yarn",
        description=_WEIGH,
        epilog=_WEIGH_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    weigh.add_argument(
        "words", nargs="+", metavar="[PIECE] WEIGHT", help="what the scale shows: 43 g, 1.5 oz"
    )
    weigh.add_argument("--yarn", metavar="LETTER", help="default: the yarn in hand")
    weigh.add_argument("--json", action="store_true", help="what lies ahead, as JSON")


def _add_check(commands: argparse._SubParsersAction[_Parser]) -> None:
    check = commands.add_parser(
        "check",
        help="count every round of a pattern",
        description=_CHECK,
        epilog=_CHECK_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    check.add_argument(
        "files", nargs="+", metavar="FILE", help="a pattern, text or PDF file, or a demo's name"
    )
    check.add_argument("--size", help="show the figures of one size only")
    check.add_argument("--json", action="store_true", help="the findings as JSON")


def _add_read(commands: argparse._SubParsersAction[_Parser]) -> None:
    read = commands.add_parser(
        "read",
        help="draft a pattern file from a text or PDF",
        description=_READ,
        epilog=_READ_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    read.add_argument("file", metavar="FILE", help='a text, Markdown or PDF file, or "-"')
    read.add_argument("-o", "--output", metavar="FILE", help="write the pattern file here")
    read.add_argument("--force", action="store_true", help="write over a file that is there")
    read.add_argument("--terms", choices=("US", "UK"), help="the terms, where the text is silent")
    read.add_argument("--json", action="store_true", help="the draft and its table as JSON")


def _add_spread(commands: argparse._SubParsersAction[_Parser]) -> None:
    spread = commands.add_parser(
        "spread",
        help="spread increases or decreases evenly",
        description=_SPREAD,
        epilog=_SPREAD_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
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
    write = commands.add_parser(
        "write",
        help="the instructions, to hand on",
        description=_WRITE,
        epilog=_WRITE_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
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
    write.add_argument("--part", help="the part a chart shows; the first if left out")
    write.add_argument("--force", action="store_true", help="write over a file that is there")


def _add_size(commands: argparse._SubParsersAction[_Parser]) -> None:
    size = commands.add_parser(
        "size",
        help="how large it comes out, which size fits",
        description=_SIZE,
        epilog=_SIZE_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
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
    tables = commands.add_parser(
        "tables",
        help="hooks, yarn weights, heads",
        description=_TABLES,
        epilog=_TABLES_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    tables.add_argument("table", choices=("hooks", "yarns", "heads"))
    tables.add_argument("word", nargs="?", metavar="WORD", help="one hook, yarn or age")
    tables.add_argument("--unit", choices=("cm", "in"), default="cm", help="for heads")
    tables.add_argument("--json", action="store_true", help="the table as JSON")


def _add_chapters(commands: argparse._SubParsersAction[_Parser]) -> None:
    chapters = commands.add_parser(
        "chapters",
        help="chapter marks for a recording",
        description=_CHAPTERS,
        epilog=_CHAPTERS_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    chapters.add_argument("piece", nargs="?", metavar="PIECE", help="default: the latest piece")
    chapters.add_argument("--began", required=True, metavar="WHEN", help="when it began")
    chapters.add_argument("--ended", metavar="WHEN", help="when it ended, if said")
