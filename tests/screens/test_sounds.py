"""The bell and the spoken words: when, which, and what happens where they fail."""

import re
import sys

import pytest

from tests.screens.stage import DISC, begin, begin_text, on_stage, text
from tests.screens.terminal import Terminal
from tracker.screens.command import Command
from tracker.screens.cues import Cue
from tracker.screens.settings import Settings, SettingsError, read_settings
from tracker.session.hints import Markers
from tracker.session.place import Asking

COLOURED = f"""{DISC}
rounds = '''
Rnd 1: With A, 6 sc in ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: sc in next 3 sts, change to B, sc in next 5 sts, bobble in next st, sc in next 3 sts. (12)
Rnd 4: [sc in next 3 sts, sc2tog] twice, sc in next 2 sts. (10)
'''
"""


async def rung(folder, number, presses, bell):
    """After which presses of a round, counted from 1, the bell rings."""
    session = begin_text(folder, COLOURED)
    session.set_asking(Asking.NEVER)
    session.go_to_round(number)
    heard = []
    async with on_stage(session, settings=Settings(bell=frozenset(bell))) as (app, pilot):
        presses_made = 0
        app.screen._sounds._ring = lambda: heard.append(presses_made)
        while presses_made < presses:
            presses_made += 1
            await pilot.press("space")
    return heard


@pytest.mark.parametrize(
    ("number", "presses", "bell", "after"),
    [
        (3, 13, {Cue.ROUND}, [13]),
        (3, 13, {Cue.COLOUR}, [2]),
        (3, 13, {Cue.STITCH}, [9, 10]),
        (4, 10, {Cue.REPEAT}, [4, 8]),
        (4, 10, {Cue.LAST}, [4]),
        (4, 10, {Cue.STITCH}, [3, 4, 7, 8]),
        (3, 13, set(Cue), [2, 9, 10, 13]),
        (3, 13, set(), []),
    ],
)
async def test_the_bell_rings_where_the_maker_wants_it(tmp_path, number, presses, bell, after):
    assert await rung(tmp_path, number, presses, bell) == after


async def test_the_bell_is_silent_on_the_way_back(tmp_path):
    session = begin_text(tmp_path, COLOURED)
    session.go_to_round(3)
    session.go_to_stitch(4)
    heard = []
    async with on_stage(session, settings=Settings(bell=frozenset(Cue))) as (app, pilot):
        app.screen._sounds._ring = lambda: heard.append(1)
        await pilot.press("backspace", "backspace", "o", "o", "h")
    assert heard == []


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
@pytest.mark.parametrize(
    ("number", "made", "words"),
    [
        (3, 2, "its last yarn over in colour B"),
        (3, 3, "change to B"),
        (3, 8, "another stitch: bobble"),
        (4, 4, "repeat 1 is done; the last repeat"),
    ],
)
async def test_what_is_heard_is_seen_as_well(tmp_path, size, number, made, words):
    session = begin_text(tmp_path, COLOURED)
    session.go_to_round(number)
    session.go_to_stitch(made)
    async with on_stage(session, size, settings=Settings(bell=frozenset())) as (app, _):
        seen = " ".join(text(app).split())
        assert words[:24] in seen


@pytest.mark.parametrize(("made", "words"), [(1, "now 2 hdc to a place"), (3, "now 1 hdc to")])
async def test_one_stitch_after_two_of_the_kind_is_no_other_stitch(tmp_path, made, words):
    session = begin(tmp_path)
    session.go_to_round(3)
    session.go_to_stitch(made)
    async with on_stage(session, (100, 30)) as (app, _):
        seen = " ".join(text(app).split())
        assert words in seen
        assert "another stitch" not in seen


@pytest.mark.parametrize("size", [(40, 12), (80, 24), (100, 30), (200, 60)])
async def test_where_the_marker_goes_is_said_as_the_maker_wants_it(tmp_path, size):
    session = begin_text(tmp_path, COLOURED)
    session.go_to_round(4)
    settings = Settings(markers=Markers("last"))
    async with on_stage(session, size, settings=settings) as (app, pilot):
        assert "move the marker" not in text(app)
        session.go_to_stitch(9)
        await pilot.press("p")
        assert "last stitch: move the marker" in " ".join(text(app).split())


def test_a_bell_is_sent_to_the_terminal():
    with Terminal(40, 12) as terminal:
        terminal.until("must end on 8")
        for key, words in ((b"g", "_"), (b"7", "7_"), (b"\r", "must end on 56")):
            terminal.send(key)
            terminal.until(words)
        for words in ("by repeat", "by round"):
            terminal.send(b"p")
            terminal.until(words)
        bells = len(re.findall(rb"\x07", terminal.raw))
        terminal.send(b" ")
        terminal.until("56 made")
        terminal.read(0.3)
        assert len(re.findall(rb"\x07", terminal.raw)) == bells + 1


def listener(folder, by_input=False, slow=0):
    """A command that writes what it is told to a file of its own, and that file."""
    heard = folder / "heard.txt"
    program = folder / "listen.py"
    told = "sys.stdin.read()" if by_input else "sys.argv[-1]"
    program.write_text(
        f"import sys, time\ntold = {told}\ntime.sleep({slow})\n"
        f"open({str(heard)!r}, 'a').write(told + chr(10))\n"
    )
    return Command((sys.executable, str(program)), by_input), heard


async def until(pilot, done):
    """Wait for something that another process does."""
    for _ in range(200):
        if done():
            return
        await pilot.pause(0.05)
    raise AssertionError("it never came")


@pytest.mark.parametrize("by_input", [False, True])
async def test_the_step_is_spoken_by_the_makers_own_command(tmp_path, by_input):
    command, heard = listener(tmp_path, by_input)
    session = begin_text(tmp_path / "pieces", COLOURED)
    session.go_to_round(3)
    session.go_to_stitch(7)
    async with on_stage(session, settings=Settings(speech=command)) as (_, pilot):
        await pilot.press("space")
        await until(pilot, lambda: heard.exists() and heard.read_text().endswith("\n"))
    assert heard.read_text() == "8 made. another stitch: bobble. bobble in the next st\n"


async def test_stale_words_are_dropped_and_no_press_waits(tmp_path):
    command, heard = listener(tmp_path, slow=1)
    session = begin(tmp_path / "pieces")
    session.go_to_round(7)
    async with on_stage(session, settings=Settings(speech=command)) as (_, pilot):
        await pilot.press(*["space"] * 10)
        assert session.glance().place.step == 10
        await until(pilot, lambda: heard.exists() and heard.read_text().endswith("\n"))
        told = heard.read_text().splitlines()
        assert told[-1].startswith("9 made")
        assert len(told) <= 2


SHELL = "$(touch made-by-a-shell); `id` | cat > made-by-a-shell"


async def test_no_shell_reads_the_words(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    command, heard = listener(tmp_path)
    session = begin(tmp_path / "pieces")
    async with on_stage(session, settings=Settings(speech=command)) as (app, pilot):
        app.screen._sounds._speaker.say(SHELL)
        await until(pilot, lambda: heard.exists() and heard.read_text().endswith("\n"))
    assert heard.read_text() == SHELL + "\n"
    assert not (tmp_path / "made-by-a-shell").exists()


@pytest.mark.parametrize(
    ("words", "why"),
    [
        (("/no/such/speaker",), "No such file"),
        ((sys.executable, "-c", "import sys; sys.exit('out of breath')"), "out of breath"),
        ((sys.executable, "-c", "raise SystemExit(3)"), "it ended with 3"),
    ],
)
async def test_why_nothing_is_spoken_is_said_once_for_a_while_and_takes_no_press(
    tmp_path, words, why
):
    session = begin(tmp_path)
    async with on_stage(session, settings=Settings(speech=Command(words))) as (app, pilot):
        await pilot.press("space")
        await until(pilot, lambda: "Nothing was spoken by" in text(app))
        await pilot.press(*["space"] * 5)
        assert session.glance().place.step == 6
        await pilot.press("i")
        assert why in " ".join(text(app).split())
        await pilot.press("escape", *["space"] * 5)
        await pilot.pause(0.5)
        assert session.glance().place.step == 11
        assert "Nothing was spoken by" not in text(app)


def test_the_sounds_are_read_from_the_settings(tmp_path):
    path = tmp_path / "settings.toml"
    path.write_text(
        "[bell]\nrepeat = true\nround = false\n[speech]\n"
        'command = ["say-it", "-q"]\nwords = "input"\n'
    )
    settings = read_settings(path)
    assert settings.bell == {Cue.REPEAT, Cue.COLOUR, Cue.LAST}
    assert settings.speech == Command(("say-it", "-q"), by_input=True)


@pytest.mark.parametrize(
    ("source", "said"),
    [
        ("bell = 3", "bell is a table"),
        ("[bell]\nrepeats = true", '"repeats" is no occasion'),
        ("[bell]\nrepeat = 1", "[bell] repeat is true or false"),
        ('speech = "say"', "speech is a table"),
        ('[speech]\ncommand = "say it"', "[speech] command is a list"),
        ("[speech]\ncommand = []", "[speech] command is a list"),
        ('[speech]\ncommand = ["a\\u0000b"]', "[speech] command is a list"),
        ('[speech]\ncommand = ["say"]\nwords = "x"', "[speech] words is"),
        ('held = "twice"', "held is"),
        ("one-switch = 1", "one-switch is true or false"),
        ("marker = 3", "marker is a table"),
        ('[marker]\nround = "middle"', "[marker] round is"),
        ("[marker]\nevery = true", "[marker] every is a number"),
    ],
)
def test_sounds_that_cannot_be_used_are_said_in_plain_words(tmp_path, source, said):
    path = tmp_path / "settings.toml"
    path.write_text(source + "\n")
    with pytest.raises(SettingsError, match=re.escape(said)):
        read_settings(path)
