"""A small piece made by hand: two parts of rounds, a choice of trims, a making-up.

Its numbers are invented. Body: a ring of 6, an increase round worked over a repeat, a round
of open length, a round of a special stitch with loops. Ears: two copies. Two trims.
"""

from faults import FaultyDisk

from tracker.fabric.steps import Kind, Pass, Run, Walk
from tracker.fabric.verdicts import Verdict
from tracker.notation.stitches import Stitch, Variant
from tracker.pattern.model import Gauge, Part, Pattern, Yarn
from tracker.pattern.plan import Plan, PlannedPart, PlannedRound
from tracker.session.session import Session
from tracker.session.surroundings import Surroundings

TUCK = Stitch(
    abbr="tuck",
    name="tuck stitch",
    takes=2,
    makes=1,
    how="Draw up loops over two stitches.",
    loops=("up through the first", "up through the second", "draw through all"),
    first=Variant(how="Begin in the join.", loops=("up through the join", "draw through all")),
)

SC = Stitch(abbr="sc", name="single crochet", how="Insert, draw up, draw through two.")


def run(text, count=1, *, kind=Kind.STITCH, inside=-1, start=0, variant="", per_place=1):
    """A run of stitches, or of an action where ``kind`` says so."""
    stitch = text if kind is Kind.STITCH else ""
    return Run(
        kind=kind,
        stitch=stitch,
        name=text,
        text=text,
        where="in the next st" if stitch else "",
        start=start,
        end=start + len(text),
        count=count,
        per_place=per_place,
        takes=1 if stitch else 0,
        makes=1 if stitch else 0,
        inside=inside,
        colour="A",
        variant=variant,
    )


def repeated(times):
    """Chain up, then ``times`` passes of one single and two in one place, then join."""
    runs = [run("ch 1", kind=Kind.CHAIN)]
    passes = []
    for k in range(times):
        passes.append(Pass(repeat=0, k=k + 1, outer=-1))
        runs.append(run("sc", inside=k, start=6))
        runs.append(run("sc", 2, inside=k, start=10, per_place=2))
    runs.append(run("join", kind=Kind.JOIN, start=30))
    return Walk(tuple(runs), tuple(passes), (times,), ((6, 28),))


def planned(label, walk, below, *, until=""):
    """A round that ends on what its steps make, unless said otherwise."""
    return PlannedRound(
        label=label,
        text=f"the words of {label}, as a maker would read them",
        line=1,
        verdict=Verdict.AGREES,
        below=below,
        ends_on=walk.makes,
        until=until,
        walk=walk,
    )


def body():
    """Six rounds; the third is of open length, the fourth has loops."""
    tucks = (run("tuck", variant="first"), run("tuck", 4), run("tuck", variant="last"))
    return (
        planned("Rnd 1", Walk((run("sc", 6), run("join", kind=Kind.JOIN))), None),
        planned("Rnd 2", repeated(4), 6),
        planned("Rnd 3", Walk((run("sc", 12),)), 12, until="until piece measures 9 cm"),
        planned("Rnd 4", Walk(tucks), 12),
        planned("Rnd 5", Walk((run("sc", 12, per_place=2),)), 6),
        planned("Rnd 6", Walk((run("sc", 12),)), 12),
    )


def sentences(*texts):
    """Making-up: one round of one step a sentence."""
    step = run("tick", kind=Kind.SENTENCE)
    return tuple(
        planned(f"{n + 1}", Walk((step,)), None)._replace(ends_on=None, text=text)
        for n, text in enumerate(texts)
    )


def pattern():
    """The pattern of the piece; its text is only carried along."""
    return Pattern(
        title="Pot hat [trial]",
        terms="US",
        parts=(
            Part("Body"),
            Part("Ear", make=2),
            Part("Scalloped trim", choose="trim", hook="4 mm"),
            Part("Plain trim", choose="trim"),
            Part("Making up", steps=("Sew on the ears.", "Weave in all ends.")),
        ),
        gauge=Gauge("sc", 18, 20, "10 cm", "5 mm"),
        yarns=(Yarn("A", "main yarn", "moss"),),
        stitches=(TUCK, SC),
        source="title = \"Pot hat [trial]\"\nnote = '''\nsealed = \"00000000\"\n\n[log]\n'''\n",
    )


def plan():
    """The piece in its only size."""
    ear = (
        planned("Row 1", Walk((run("sc", 3),)), None),
        planned("Row 2", Walk((run("sc", 3),)), 3),
    )
    trim = (planned("Rnd 1", repeated(2), 6),)
    made = pattern()
    rounds = (body(), ear, trim, trim, sentences("Sew on the ears.", "Weave in all ends."))
    parts = tuple(PlannedPart(part, rs) for part, rs in zip(made.parts, rounds, strict=True))
    return Plan(made, "", parts)


def read(source):
    """The pattern, if its text is what was carried along."""
    if source != pattern().source:
        raise ValueError("not the text of this pattern")
    return pattern()


def reading(source, _):
    """The plan, if the text is what was carried along."""
    read(source)
    return plan()


def start(folder, **around):
    """A new piece; nothing is synced, and in the foreground, unless asked otherwise."""
    surroundings = Surroundings(**{"background": False, "disk": FaultyDisk(), **around})
    return Session.start(pattern(), "", folder, around=surroundings, reading=reading)


def reopen(path, *, take_over=False, **around):
    """The piece at a path, opened."""
    surroundings = Surroundings(**{"background": False, "disk": FaultyDisk(), **around})
    return Session.open(path, take_over=take_over, around=surroundings, reading=reading)


def press(session, times):
    """So many presses on."""
    for _ in range(times):
        session.next()
