"""What is kept of a long file's beginning: it tells what the file tells, or is not used."""

import scene
from hypothesis import HealthCheck, settings
from test_machine import Work

from tracker.session import midway, paper
from tracker.session.lines import write_line
from tracker.session.midway import keep_midway, kept_midway
from tracker.session.paper import read_paper
from tracker.session.place import Asking
from tracker.session.worked import worked

FEW = 300


class FewReadAnew(Work):
    """Random work, where all but the last few lines of a file are kept and not read."""

    def __init__(self):
        self.before = paper.READ_ANEW, paper.GROWN
        paper.READ_ANEW, paper.GROWN = FEW, FEW
        super().__init__()

    def teardown(self):
        super().teardown()
        paper.READ_ANEW, paper.GROWN = self.before


TestFewReadAnew = FewReadAnew.TestCase
TestFewReadAnew.settings = settings(
    max_examples=25,
    stateful_step_count=40,
    deadline=None,
    suppress_health_check=list(HealthCheck),
)


def worked_piece(tmp_path):
    """A file with counts, a note, a part left, presses taken back; and what was kept of it."""
    session = scene.start(tmp_path)
    session.set_asking(Asking.EVERY)
    scene.press(session, 40)
    session.note("tight here")
    session.go_to_part(1, 0)
    scene.press(session, 9)
    for _ in range(3):
        session.undo()
    scene.press(session, 60)
    session.close()
    return session.path


def facts(found):
    """All that matters of what was found."""
    history = found.history
    return (
        (found.head, found.number, found.seal, found.sound, found.damage, found.later),
        (found.by_hand, found.put_down, found.when, found.watch.when, found.watch.at),
        (history.state, history.done, history.undone, worked(history)),
    )


def presses(items):
    """What each press came to, from the first."""
    return [item.event(number + 1) for item in items for number in range(item.presses)]


def test_read_on_from_anywhere_it_is_as_if_read_from_the_first(tmp_path, monkeypatch):
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    monkeypatch.setattr(paper, "GROWN", FEW)
    data = worked_piece(tmp_path).read_bytes()
    whole, tried = read_paper(data), 0
    for end in [at + 1 for at, byte in enumerate(data) if byte == 10]:
        try:
            kept = read_paper(data[:end]).midway
        except ValueError:
            continue  # the head is not whole yet
        if kept is None:
            continue
        tried += 1
        again = read_paper(data, kept)
        assert facts(again) == facts(whole)
        assert presses(again.history.latest) == presses(whole.history.latest)
        assert presses(again.history.items) == presses(whole.history.items)
        assert facts(again) == facts(whole)
    assert tried > 20


def test_what_was_kept_comes_back_as_it_was(tmp_path, monkeypatch):
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    path = worked_piece(tmp_path)
    found = read_paper(path.read_bytes()).midway
    assert found is not None
    assert found.state.counts.blocks
    assert found.state.notes
    keep_midway(path, found)
    assert kept_midway(path) == found


def test_a_changed_beginning_is_read_and_what_was_kept_is_not_used(tmp_path, monkeypatch):
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    data = worked_piece(tmp_path).read_bytes()
    kept = read_paper(data).midway
    for at in range(0, len(data), 7):
        changed = data[:at] + bytes([data[at] ^ 1]) + data[at + 1 :]
        assert kept.begins(changed) == (at >= kept.size)
        for cut in (changed, data[:at]):
            try:
                whole = facts(read_paper(cut))
            except ValueError:
                continue
            assert facts(read_paper(cut, kept)) == whole


def test_a_line_by_hand_behind_it_is_still_told(tmp_path, monkeypatch):
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    path = worked_piece(tmp_path)
    data = path.read_bytes()
    kept, number = read_paper(data).midway, read_paper(data).number
    by_hand = b'%d = { round = [1, 1, 2, 1], steps = "3" }\n' % (number + 1)
    again = read_paper(data + by_hand, kept)
    assert again.by_hand == 1
    assert facts(again) == facts(read_paper(data + by_hand))


def test_the_second_time_a_long_piece_opens_its_beginning_is_not_read(tmp_path, monkeypatch):
    path = worked_piece(tmp_path)
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    for kept in (tmp_path / "home" / "cache").glob("*.midway.kept"):
        kept.unlink()
    scene.reopen(path).close()
    read, real = [], paper.read_run
    monkeypatch.setattr(
        paper, "read_run", lambda data, at, *rest: read.append(at) or real(data, at, *rest)
    )
    session = scene.reopen(path)
    assert min(read) >= path.stat().st_size - 4 * FEW
    first = min(read)
    for _ in range(session.can_undo):
        session.undo()
    assert min(read) < first
    assert session.state.spot == scene.start(tmp_path / "other").state.spot
    session.close()


def test_a_sealed_line_of_another_file_does_not_fit_behind_it(tmp_path, monkeypatch):
    monkeypatch.setattr(paper, "READ_ANEW", FEW)
    data = worked_piece(tmp_path).read_bytes()
    kept, whole = read_paper(data).midway, read_paper(data)
    entry = whole.history.items[-1]
    line = write_line(whole.number + 1, entry, "2026-03-02T10:15:04+00:00", whole.seal ^ 1)[0]
    assert read_paper(data + line, kept).damage == line
    assert midway.READ_ANEW > FEW
