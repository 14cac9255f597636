"""Loss of power after every operation: what is found opens at a place that once was."""

import random
from pathlib import Path

from tests.durability import piece
from tests.durability.power import PowerDisk
from tracker.session.notices import on_opening
from tracker.session.paper import read_paper


class Crashes:
    """One run of work on a disk whose power may fail; every state found is judged."""

    def __init__(self, folder: Path, *, lag: int, every: int, real_every: int) -> None:
        self.folder, self.every, self.real_every = folder, every, real_every
        self.again = folder.with_name(f"{folder.name}-again")
        self.counts = {"operations": 0, "crash states": 0, "opened for real": 0, "crashed twice": 0}
        self.disk = PowerDisk(self.crash, lag)
        self.states = []
        self.session = None
        self.seen = set()

    def run(self, presses: int) -> dict[str, int]:
        """Work, be judged after each operation, and close."""
        self.session = session = piece.start(self.folder, disk=self.disk, background=False)
        self.states.append(session.state)
        ways = piece.actions(session, random.Random(9))
        for number in range(1, presses + 1):
            self.disk.covered = number
            next(ways)()
            self.states.append(session.state)
        session.close()
        self.counts["operations"] = self.disk.operations
        return {**self.counts, "wrong places": 0}

    def crash(self) -> None:
        """Judge every state that the disk may be left in at this moment."""
        if self.session is None:
            return
        path = self.session.path
        sure = self.disk.sure(path)
        for files in self.disk.states(self.every):
            self.counts["crash states"] += 1
            if (sure, files[path]) not in self.seen:
                self.seen.add((sure, files[path]))
                self.judge(files[path], sure)
                if len(self.seen) % self.real_every == 0:
                    self.for_real(path, files)

    def judge(self, data: bytes, sure: int) -> None:
        """Found is a state from the one on that is sure to last, or that being written."""
        found = read_paper(data)
        assert found.history.state in [*self.states[max(0, sure) :], self.session.state]
        if found.history.state != self.session.state:
            assert on_opening("it", found)

    def for_real(self, path: Path, files: dict[Path, bytes]) -> None:
        """Open it through the whole session, with a second loss of power while that is done."""
        self.again.mkdir(exist_ok=True)
        for old in self.again.iterdir():
            old.unlink()
        mine, found = self.again / path.name, []
        disk = PowerDisk(lambda: found.extend(disk.states(every=40)))
        for other, data in files.items():
            (self.again / other.name).write_bytes(data)
            disk.adopt(self.again / other.name)
        session = piece.reopen(mine, disk=disk, background=False)
        session.next()
        after = piece.standing(session)
        session.close()
        again = piece.reopen(mine)
        assert (piece.standing(again), again.notices) == (after, ())
        again.close()
        self.counts["opened for real"] += 1
        self.counts["crashed twice"] += len(found)
        judge_twice(files[path], after[0], mine, found)


def judge_twice(data, after, path, found):
    """After a second crash: the place before or after the press, and no byte of damage lost."""
    first = read_paper(data)
    for files in found:
        again = read_paper(files[path])
        assert again.history.state in (first.history.state, after)
        if first.damage and not files[path].startswith(data):
            assert first.damage in files.values()


def crash_everywhere(folder: Path, *, presses: int, every: int, real_every: int) -> dict[str, int]:
    """Runs with every sync carried out, and with only every fourth; the counts of both."""
    total: dict[str, int] = {}
    for lag in (1, 4):
        crashes = Crashes(folder / f"lag-{lag}", lag=lag, every=every, real_every=real_every)
        for name, count in crashes.run(presses).items():
            total[name] = total.get(name, 0) + count
    return total
