"""The lines of a piece's file one by one, each with its time."""

from __future__ import annotations

from collections.abc import Iterator

from tracker.lean import NamedTuple
from tracker.session.entries import Entry
from tracker.session.fields import EntryError
from tracker.session.head import head_end
from tracker.session.lines import read_line, read_run, seal_after
from tracker.session.paper import is_remark
from tracker.session.worked import seconds_of


class Moment(NamedTuple):
    """One line: what was pressed, and when, in seconds since 1970 (0: not known).

    ``when`` is the time of its last press. ``took`` is what its presses took, where the
    line stands for several; 0 otherwise.
    """

    entry: Entry
    when: int
    took: int = 0


def moments(data: bytes) -> Iterator[Moment]:
    """Every line of a file's log, up to the first that does not fit."""
    at, seal, number = head_end(data)[0], 0, 0
    while at < len(data):
        run = read_run(data, at, number, seal, len(data))
        for entry, (stamp, took) in zip(run.entries, run.times, strict=True):
            yield Moment(entry, seconds_of(stamp.decode()), int(took or 0))
        if run.entries:
            at, seal, number = run.end, run.seal, number + len(run.entries)
            continue
        stop = data.find(b"\n", at)
        stop = len(data) if stop < 0 else stop
        raw = data[at:stop]
        at = stop + 1
        if is_remark(raw):
            continue
        try:
            line = read_line(raw, seal)
        except EntryError:
            return
        yield Moment(line.entry, seconds_of(line.when), line.took or 0)
        seal = seal_after(raw, seal) if line.seal is None else line.seal
        number = line.number
