"""The real command, fed with the bytes that pedals, presenters and held keys send."""

import time

import pytest

from tests.screens.terminal import Terminal

VT220 = {
    f"f{number}": b"\x1b[%d~" % code
    for number, code in zip(range(13, 21), (25, 26, 28, 29, 31, 32, 33, 34), strict=True)
}
"""DEC VT220 programmer reference manual, table 3-4."""

KITTY = {f"f{number}": b"\x1b[%du" % (57363 + number) for number in range(13, 25)}
MEDIA = {
    "media_play": b"\x1b[57428u",
    "media_pause": b"\x1b[57429u",
    "media_play_pause": b"\x1b[57430u",
    "media_stop": b"\x1b[57432u",
    "media_track_next": b"\x1b[57435u",
    "media_track_previous": b"\x1b[57436u",
    "lower_volume": b"\x1b[57438u",
    "raise_volume": b"\x1b[57439u",
    "mute_volume": b"\x1b[57440u",
}
"""https://sw.kovidgoyal.net/kitty/keyboard-protocol/#functional-key-definitions"""

SHIFTED = {"shift+f1": b"\x1b[1;2P", "shift+f4": b"\x1b[1;2S", "shift+f5": b"\x1b[15;2~"}
"""How xterm sends F13, F16 and F17: https://invisible-island.net/xterm/ctlseqs/ctlseqs.html"""


def opened(terminal):
    """Go to where 17 stitches of round 7 are made."""
    terminal.until("must end on 8")
    for keys in (b"g", b"7", b"\r", b"s", b"1", b"7", b"\r"):
        terminal.send(keys)
        terminal.read(0.02)
    terminal.until("17 made · must end on 56")


def settled(terminal):
    """Let everything sent so far take effect."""
    terminal.read(0.4)
    return "\n".join(terminal.page.display)


def test_every_pedal_and_media_key_is_read_by_its_name(own_home):
    every = [*VT220.items(), *KITTY.items(), *MEDIA.items(), *SHIFTED.items()]
    own_home.mkdir()
    names = sorted({name for name, _ in every})
    (own_home / "settings.toml").write_text(f"[keys]\nnext = {['enter', *names]!r}\n")
    with Terminal(40, 12) as terminal:
        opened(terminal)
        for made, (_, code) in enumerate(every, start=18):
            terminal.send(code)
            terminal.until(f"{made} made · must end on 56")


def test_keys_that_come_in_one_go_are_taken_in_their_order():
    with Terminal(40, 12) as terminal:
        terminal.until("must end on 8")
        terminal.send(b"g7\rs17\r")
        terminal.until("17 made · must end on 56")


def test_a_key_held_down_counts_once():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        terminal.until("18 made")
        time.sleep(0.45)
        for _ in range(40):
            terminal.send(b" ")
            terminal.read(0.033)
        terminal.send(b"  ")
        assert "18 made" in settled(terminal)
        terminal.send(b"\x1b[D")
        terminal.until("17 made")


def test_a_key_let_go_after_its_first_repeat_counts_once_and_that_is_said():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        time.sleep(0.5)
        terminal.send(b" ")
        terminal.until("a key held down: it counts once")
        terminal.send(b"\x1b[D")
        terminal.until("17 made")


def test_what_counted_before_it_was_clear_that_a_key_is_held_is_taken_back():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        terminal.until("18 made")
        time.sleep(0.6)
        terminal.send(b" ")
        terminal.until("19 made")
        for _ in range(3):
            time.sleep(0.2)
            terminal.send(b" " * 6)
        terminal.until("18 made")
        assert "18 made" in settled(terminal)


def test_a_figure_may_come_twice_at_any_pace():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b"s1")
        time.sleep(0.5)
        terminal.send(b"1\r")
        terminal.until("11 made")


def test_presses_that_come_in_one_burst_all_count():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        terminal.until("18 made")
        time.sleep(0.5)
        terminal.send(b"   ")
        terminal.until("21 made")
        terminal.send(b"\x1b[D" * 20)
        terminal.until("1 made")


def test_a_key_held_down_counts_once_over_a_slow_line():
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        terminal.until("18 made")
        time.sleep(0.4)
        for _ in range(6):
            terminal.send(b" " * 9)
            time.sleep(0.3)
        assert "18 made" in settled(terminal)


@pytest.mark.parametrize("apart", [0.13, 0.25, 0.5])
def test_quick_taps_all_count(apart):
    with Terminal(40, 12) as terminal:
        opened(terminal)
        for _ in range(6):
            terminal.send(b" ")
            time.sleep(apart)
        terminal.until("23 made")


def test_a_held_key_counts_each_time_where_the_maker_says_so(own_home):
    own_home.mkdir()
    (own_home / "settings.toml").write_text('held = "each"\n')
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(b" ")
        terminal.until("18 made")
        time.sleep(0.4)
        terminal.send(b"  ")
        terminal.until("20 made")


def test_a_pedal_is_learned_and_works_in_the_next_run(own_home):
    with Terminal(60, 30) as terminal:
        terminal.until("must end on 8")
        terminal.send(b"l")
        terminal.until("Press the key")
        terminal.send(VT220["f18"])
        terminal.until("So far it does nothing.")
        terminal.send(b"\r")
        terminal.until('f18 now does "Next"')
        terminal.send(b"\x1b")
        terminal.until("must end on 8")
        terminal.send(b"q")
        assert terminal.left() == 0
    assert "f18" in (own_home / "settings.toml").read_text()
    with Terminal(40, 12) as terminal:
        opened(terminal)
        terminal.send(VT220["f18"])
        terminal.until("18 made")
