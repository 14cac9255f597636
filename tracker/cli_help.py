"""The longer words of ``--help``: what each command does, and examples."""

from __future__ import annotations

ABOUT = "Keeps your place in a crochet pattern. Without a command: go on with the latest piece."
EXAMPLES = """examples:
  hookside                              go on where you stopped
  hookside patterns                     see the demo patterns
  hookside work tea-cosy --size "4 cups"
  hookside work my-cowl.toml            begin a piece, or go on with it
  hookside check my-cowl.toml           count every round of a pattern
  hookside read my-cowl.pdf -o my-cowl.toml
  hookside write tea-cosy -o cosy.md    the instructions, to hand on
  hookside weigh 43 g                   what is left of the yarn in hand
  hookside ahead                        how long it takes, whether the yarn lasts
  hookside log --plot                   every round you worked
  hookside shelf                        all your pieces
  hookside where                        your place, as one line
  hookside where --card                 and how to find it on the work
  hookside size headband --for "44 cm"  how large it comes out, which size fits
  hookside spread 48 to 60              where the increases of a round go
"""
WORK = """Begins a piece of a pattern, or goes on with the piece of it that you have."""
WORK_EXAMPLES = """examples:
  hookside work headband --size adult   begin a demo pattern
  hookside work hedgerow-tea-cosy       go on with a piece, by its name
  hookside work headband --size "1 year" --new
  hookside work --plain                 line by line, for a screen reader
"""
CHECK = """Counts every round of a pattern, in every size: how many stitches of the round
below it takes, how many it makes, and whether that is what the pattern prints.
Exit status: 0 all well, 1 a round differs or was not understood, 2 bad input."""
CHECK_EXAMPLES = """examples:
  hookside check my-cowl.toml
  hookside check tea-cosy --size "4 cups"
  hookside check *.toml --json
"""
READ = """Reads instructions written for people, a text, Markdown or PDF file, and drafts a
pattern file of them. A table of every round follows, with what the count says of it. What
was not understood is kept word for word. "-" reads what is piped in.
Exit status: 0 all well, 1 a round differs or was not understood, 2 bad input."""
READ_EXAMPLES = """examples:
  hookside read my-cowl.pdf -o my-cowl.toml
  hookside read notes.md --terms UK     show the pattern file that would be written
  hookside read notes.md --json         the draft and its table, for scripts
"""
SIZE = """How large a pattern comes out, part by part and size by size: by its own gauge, or
by a swatch of yours. How far across its crown is and whether it lies flat. With --for,
which size fits; with --hook, what the hook may be called. For a piece that is worked to a
length, how many rounds are left."""
SIZE_EXAMPLES = """examples:
  hookside size tea-cosy
  hookside size headband --swatch "15 sts 12 rounds 10 cm"
  hookside size headband --for "44 cm"
  hookside size headband --for "6 months" --ease "-5 %"
  hookside size my-cowl.toml --unit in --json
"""
MEASURE = """Keeps how long a piece is at the place where it stands. In a round that is worked to
a length, the rounds left go by it. A measure can be undone like any press; a second one at
the same place corrects it."""
MEASURE_EXAMPLES = """examples:
  hookside measure 14.5 cm              the latest piece
  hookside measure tea-cosy 5 3/4 in
"""
TABLES = """Hooks, yarn weights and heads, with what their sources differ in. With a word, what
that word means: a hook's name or diameter, a yarn's name or gauge, an age."""
TABLES_EXAMPLES = """examples:
  hookside tables hooks
  hookside tables hooks H-8
  hookside tables yarns 14              classes with 14 sc in 10 cm
  hookside tables heads "6 months"
"""
SPREAD = """Spreads increases or decreases evenly over a round, or over several that are set
off from one another, and counts the lines it writes. With --multiple, finds the count next
to a stitch multiple first."""
SPREAD_EXAMPLES = """examples:
  hookside spread 48 to 60
  hookside spread 48 to 60 --rounds 3   12 more in all, shared among three rounds
  hookside spread 90 to 72 --rows --stitch hdc
  hookside spread 70 --multiple "6 + 2"
"""

CHAPTERS = """Chapter marks for a recording of the work: when each round was begun, counted
from the moment the recording began, one plain line each. A time alone means the day on
which the piece was last worked. The recording ends when nothing was pressed for an hour."""
CHAPTERS_EXAMPLES = """examples:
  hookside chapters --began 10:15                       of the latest piece
  hookside chapters my-cowl --began "2026-03-02 10:15:30" --ended 11:40
"""
WRITE = """Writes a pattern, or a piece as it was really worked, as instructions that others can
follow: materials, gauge, abbreviations, special stitches, every part in all sizes, making up,
cautions, and how far its counts are proved. `hookside read` reads text and Markdown back."""
WRITE_EXAMPLES = """examples:
  hookside write tea-cosy               as plain text, to the screen
  hookside write tea-cosy -o cosy.md    as Markdown
  hookside write my-cowl.toml --terms UK -o cowl.txt
  hookside write my-cowl.toml -o cowl.html      a page to print, with charts
  hookside write my-cowl                a piece as it was worked, with its notes
  hookside write lattice-mat --part Tile -o tile.svg
"""
WEIGH = """Keeps with a piece what is left of a yarn, all balls of it together, as the scale shows
it. From two weighings on it is known what a stitch takes, and whether the yarn lasts. A
weighing can be undone like any press; a second one at the same place corrects it."""
WEIGH_EXAMPLES = """examples:
  hookside weigh 43 g                   the latest piece, the yarn in hand
  hookside weigh tea-cosy 43.5 g --yarn B
  hookside weigh 1.5 oz
"""
