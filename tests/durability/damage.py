"""Every truncation and every changed byte: never a traceback, never a silently wrong place."""

import random
from pathlib import Path

from tests.durability import piece
from tracker.session.access import StoreError
from tracker.session.head import PaperError
from tracker.session.notices import on_opening
from tracker.session.paper import read_paper


class Worked:
    """A real file, and every state that the piece ever had."""

    def __init__(self, folder: Path, presses: int) -> None:
        session = piece.start(folder, fold_at=10**9)
        self.states = [session.state]
        ways = piece.actions(session, random.Random(7))
        for _ in range(presses):
            next(ways)()
            self.states.append(session.state)
        session.close()
        self.path = session.path
        self.data = self.path.read_bytes()
        self.whole = read_paper(self.data)

    def judge(self, data: bytes) -> str:
        """What becomes of these bytes: "refused", "told", or "same"."""
        try:
            found = read_paper(data)
        except PaperError:
            return "refused"
        assert found.history.state in self.states
        if on_opening("it", found):
            return "told"
        assert (found.head, found.history.state) == (self.whole.head, self.whole.history.state)
        return "same"

    def open_for_real(self, data: bytes) -> None:
        """The same through the whole session: open, press, close, open again."""
        self.path.write_bytes(data)
        try:
            session = piece.reopen(self.path)
        except StoreError:
            assert self.path.read_bytes() == data
            return
        assert session.state in self.states
        session.next()
        after = piece.standing(session)
        session.close()
        again = piece.reopen(self.path)
        assert (piece.standing(again), again.notices) == (after, ())
        again.close()
        for beside in self.path.parent.glob("*.damaged-*"):
            beside.unlink()


def damage_all(folder: Path, *, presses: int, every: int, values: int) -> dict[str, int]:
    """Try truncations and changes at every ``every``-th byte, ``values`` new ones at each."""
    worked, rng = Worked(folder, presses), random.Random(3)
    counts = dict.fromkeys(("truncations", "byte changes", "opened for real"), 0)
    seen = dict.fromkeys(("refused", "told", "same"), 0)
    for at in range(0, len(worked.data), every):
        cut = worked.data[:at]
        seen[worked.judge(cut)] += 1
        counts["truncations"] += 1
        others = [byte for byte in range(256) if byte != worked.data[at]]
        for byte in others if values >= len(others) else rng.sample(others, values):
            changed = worked.data[:at] + bytes([byte]) + worked.data[at + 1 :]
            seen[worked.judge(changed)] += 1
            counts["byte changes"] += 1
            if counts["byte changes"] % 397 == 1:
                worked.open_for_real(changed)
                counts["opened for real"] += 1
        if at % (11 * every) == 0:
            worked.open_for_real(cut)
            counts["opened for real"] += 1
    names = {"refused": "refused in one sentence", "told": "opened and told", "same": "no effect"}
    sizes = {"bytes of the file": len(worked.data)}
    return {**sizes, **counts, **{names[k]: v for k, v in seen.items()}, "silently wrong": 0}
