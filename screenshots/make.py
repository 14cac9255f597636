"""Makes every picture in this folder from the real app: ``python screenshots/make.py``.

Writes SVG; PNG too, in the SVG's place, where ``rsvg-convert`` is installed. The page is
made only where Chromium is.
"""

from __future__ import annotations

import asyncio
import os
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from html import escape, unescape
from pathlib import Path
from random import Random

HERE = Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent))

from tracker.pattern.check import check_pattern  # noqa: E402
from tracker.pattern.load import load_pattern  # noqa: E402
from tracker.screens.app import HooksideApp  # noqa: E402
from tracker.screens.inks import PALETTES  # noqa: E402
from tracker.screens.settings import Settings  # noqa: E402
from tracker.screens.shelf import ShelfScreen  # noqa: E402
from tracker.screens.shelf_app import ShelfApp  # noqa: E402
from tracker.session.session import Session  # noqa: E402
from tracker.session.surroundings import Surroundings  # noqa: E402
from tracker.writing.chart.draw import Chart  # noqa: E402
from tracker.writing.charts import charts, drawings  # noqa: E402
from tracker.writing.compose import compose  # noqa: E402
from tracker.writing.page import page  # noqa: E402
from tracker.writing.log_svg import log_picture  # noqa: E402


@dataclass(frozen=True)
class Scene:
    """One picture: a piece, where in it, which keys are pressed, how large, which theme."""

    name: str
    columns: int
    rows: int
    pattern: str = "tea-cosy"
    size: str = "4 cups"
    part: int = 0
    round: int = 7
    made: int = 17
    keys: tuple[str, ...] = ()
    edit: tuple[str, str] = ("", "")
    theme: str = "dark"
    worked: int = 0
    """Presses made on a clock of its own, the yarn weighed now and then."""
    days: int = 0
    """Days that it then lay."""


SPELT = {" ": "space", "*": "asterisk", ",": "comma", ";": "semicolon"}
TYPED = tuple(SPELT.get(letter, letter) for letter in "*hdc 7, inc; rep")
SLIP = tuple(SPELT.get(letter, letter) for letter in "*hdc 7, icn; rep")

SLIPS = range(160, 195)
"""Presses in which a round ends on one stitch too few."""

ON_SHELF = (("headband", "adult"), ("dusk-moth", ""), ("tea-cosy", "4 cups"))

SCENES = (
    Scene("work-100x30", 100, 30),
    Scene("work-100x30-light", 100, 30, theme="light"),
    Scene("work-80x24", 80, 24),
    Scene("work-40x12", 40, 12),
    Scene("work-200x60", 200, 60, round=9, made=8, keys=("o",)),
    Scene("no-colour", 80, 24, theme="none"),
    Scene("picture-corners", 100, 30, pattern="lattice-mat", size="", round=5, made=19),
    Scene("picture-decreases", 200, 60, pattern="dusk-moth", size="", round=24, made=7),
    Scene("picture-light", 200, 60, round=7, made=17, theme="light"),
    Scene("guard", 80, 24, keys=("x",)),
    Scene("learn-a-key", 80, 24, keys=("l", "f18")),
    Scene("loops", 100, 30, round=9, made=0, keys=("o", "space", "space", "space")),
    Scene("count-asked", 80, 24, made=56, keys=("5", "5")),
    Scene("rounds-left", 80, 24, round=17, made=64, keys=("d", "1", "7", "enter")),
    Scene("wrong-count", 80, 24, made=56, keys=("5", "5", "space", "w")),
    Scene("improvise", 80, 24, made=0, keys=("v", *TYPED)),
    Scene("improvise-40x12", 40, 12, made=0, keys=("v", *SLIP)),
    Scene("improvised", 100, 30, made=0, keys=("v", *TYPED, "enter"), theme="light"),
    Scene("pattern-changed", 80, 24, edit=("hdc in next 5 sts", "hdc in next 4 sts, sc in next st")),
    Scene("yarn-and-time", 100, 30, worked=556),
    Scene("before", 80, 24, keys=("i",)),
    Scene("parts", 80, 24, pattern="lattice-mat", size="", round=3, made=9, keys=("t",)),
    Scene("choose", 80, 24, pattern=""),
    Scene("card", 80, 24, days=4),
    Scene("card-40x12", 40, 12, days=4),
    Scene("note", 80, 24, keys=("n", *"pin", "space", *"on", "space", *"the", "space", *"left")),
    Scene("find", 80, 24, keys=("slash", *"ro")),
    Scene("making-up", 80, 24, part=3, round=3, made=0),
    Scene("help", 80, 24, keys=("question_mark",)),
)


def work(scene: Scene, folder: Path) -> Session:
    """A piece on which so many presses were made; its yarn does not last."""
    now, chance = datetime(2026, 3, 2, 10, tzinfo=UTC), Random(3)
    pattern = load_pattern(HERE.parent / "patterns" / f"{scene.pattern}.toml")
    around = Surroundings(clock=lambda: now)
    session = Session.start(pattern, scene.size, folder, around=around)
    grams = 38
    for press in range(scene.worked):
        if press % (scene.worked // 3) == 0:
            session.weigh(f"{grams} g")
            grams -= 9
        if session.glance().asking and press in SLIPS:
            session.enter_count((session.glance().ends_on or 1) - 1)
            session.come_right()
        if press == 300:
            session.note("marker moved to the front")
        now += timedelta(seconds=chance.uniform(3, 8), hours=20 * (press == 240))
        session.next()
    return session


def begin(scene: Scene, folder: Path) -> Session:
    """The piece of a scene, moved to its place."""
    if scene.worked:
        return work(scene, folder)
    pattern = load_pattern(HERE.parent / "patterns" / f"{scene.pattern}.toml")
    file = folder / "pattern.toml"
    session = Session.start(pattern, scene.size, folder, file=file, around=at(0))
    if scene.edit[0]:
        file.write_text(pattern.source.replace(*scene.edit), encoding="utf-8")
    session.go_to_part(scene.part, 0)
    session.go_to_round(scene.round)
    session.go_to_stitch(scene.made)
    if scene.made:
        session.next()
    if scene.days:
        session.note("pin on the left")
        session.close()
        session = Session.open(session.path, around=at(scene.days))
    return session


def at(days: int) -> Surroundings:
    """A clock that stands still, so many days after the beginning."""
    return Surroundings(clock=lambda: datetime(2026, 3, 2, 10, 15, tzinfo=UTC) + timedelta(days))


TEXT = re.compile(r'<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)"[^>]*>([^<]*)</text>')
CELL, ROW, RISE = 12.2, 24.4, 18.5
"""Width and height of a character in Textual's SVG; its top above the base line."""

RUNS = re.compile("([█▀▄])\\1*")
BLOCKS = {"█": (0, 1), "▀": (0, 0.5), "▄": (0.5, 1)}
STROKES = {
    "│": ((0.5, 0, 0.5, 1, 1.6),),
    "┃": ((0.5, 0, 0.5, 1, 3.6),),
    "─": ((0, 0.5, 1, 0.5, 1.6),),
    "━": ((0, 0.5, 1, 0.5, 3.6),),
    "┴": ((0, 0.5, 1, 0.5, 1.6), (0.5, 0, 0.5, 0.5, 1.6)),
    "┻": ((0, 0.5, 1, 0.5, 3.6), (0.5, 0, 0.5, 0.5, 3.6)),
    "╲": ((0, 0, 1, 1, 1.8),),
    "╱": ((1, 0, 0, 1, 1.8),),
}
"""Lines of the picture: from where to where in a cell, and how wide."""


def mended(svg: str) -> str:
    """The picture with block characters as plain areas, so that they join as in a terminal."""
    svg = TEXT.sub(_as_areas, svg)
    svg = re.sub(
        r"(\.terminal-\d+-r\d+) \{ fill: (#[0-9a-fA-F]+)", r"\1-line { stroke: \2 } \g<0>", svg
    )
    return svg.replace("<text ", '<text xml:space="preserve" ')


def _as_areas(match: re.Match[str]) -> str:
    ink, left, base, words = match[1], float(match[2]), float(match[3]), unescape(match[4])
    areas = [
        f'<rect class="{ink}" shape-rendering="crispEdges" x="{left + CELL * run.start():.1f}" '
        f'width="{CELL * len(run[0]):.1f}" y="{base - RISE + ROW * BLOCKS[run[1]][0]:.1f}" '
        f'height="{ROW * (BLOCKS[run[1]][1] - BLOCKS[run[1]][0]) + 0.2:.1f}"/>'
        for run in RUNS.finditer(words)
    ]
    return "".join(areas) if areas else _with_lines(match, ink, left, base)


def _with_lines(match: re.Match[str], ink: str, left: float, base: float) -> str:
    """Lines as strokes that meet those of the next cell; all other characters as they are."""
    words = unescape(match[4])
    if not set(words) & STROKES.keys():
        return match[0]
    strokes = [
        f'<line class="{ink}-line" x1="{left + CELL * (at + x1):.1f}" '
        f'x2="{left + CELL * (at + x2):.1f}" y1="{base - RISE + ROW * y1:.1f}" '
        f'y2="{base - RISE + ROW * y2:.1f}" stroke-width="{wide}"/>'
        for at, char in enumerate(words)
        for x1, y1, x2, y2, wide in STROKES.get(char, ())
    ]
    rest = "".join(" " if char in STROKES else char for char in words)
    kept = match[0].replace(match[4], escape(rest)) if rest.strip() else ""
    return kept + "".join(strokes)


async def draw(scene: Scene, folder: Path, target: Path) -> None:
    """Write the picture of one scene as SVG."""
    session = begin(scene, folder) if scene.pattern else None
    app = HooksideApp(session, folder, Settings(), PALETTES.get(scene.theme))
    async with app.run_test(size=(scene.columns, scene.rows)) as pilot:
        await pilot.press(*scene.keys)
        # What is told in passing comes when nothing has been pressed for a moment.
        await pilot.pause(5 if scene.worked else 0)
        target.write_text(mended(app.export_screenshot(title="hookside")))
    if session:
        session.close()


class Shelf(ShelfApp):
    """The shelf four days later."""

    def ask(self) -> None:
        """Show it with that clock."""
        self.push_screen(ShelfScreen(self._folder, self._inks, at(4).clock, self.work_on))


async def draw_shelf(folder: Path, target: Path) -> None:
    """Write the shelf with three pieces on it as SVG."""
    pieces = Path(os.environ["HOOKSIDE_HOME"]) / "pieces"
    pieces.mkdir()
    for number, (pattern, size) in enumerate(ON_SHELF):
        begin(Scene("", 0, 0, pattern=pattern, size=size, round=2 + number), pieces).close()
    app = Shelf(None, pieces, Settings(), PALETTES["dark"])
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("down", "s", "up")
        await pilot.pause()
        target.write_text(mended(app.export_screenshot(title="hookside")))


def draw_log(folder: Path, target: Path) -> None:
    """Write the log of a piece as a picture."""
    session = work(Scene("log", 0, 0, pattern="dusk-moth", size="", worked=640), folder)
    target.write_text(log_picture(session.plan.pattern.title, session.log()))
    session.close()


def draw_chart(name: str, part: int, size: str, target: Path) -> None:
    """Write the chart of a part."""
    pattern = load_pattern(HERE.parent / "patterns" / f"{name}.toml")
    charted = [one for _, one in charts(pattern, check_pattern(pattern), size)][part]
    assert isinstance(charted, Chart), charted
    target.write_text(charted.svg)


def make_page(folder: Path) -> None:
    """Make the picture of the first screen of a page that was written."""
    browser = shutil.which("chromium")
    if browser is None:
        return
    pattern = load_pattern(HERE.parent / "patterns" / "lattice-mat.toml")
    checked = check_pattern(pattern)
    html = folder / "page.html"
    html.write_text(page(compose(pattern, checked, drawings(pattern, checked))))
    quiet = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run"]
    quiet += ["--disable-background-networking", "--disable-component-update", "--disable-sync"]
    shot = [f"--screenshot={HERE / 'page.png'}", "--window-size=860,1100", "--hide-scrollbars"]
    where = f"--user-data-dir={folder / 'profile'}"
    subprocess.run([browser, *quiet, where, *shot, html.as_uri()], check=True, capture_output=True)
    print("page")


CHARTS = {"chart-tile": ("lattice-mat", 0, ""), "chart-cosy": ("tea-cosy", 0, "4 cups")}


def main() -> None:
    """Make all pictures, or those named on the command line."""
    wanted = set(sys.argv[1:])
    for scene in SCENES:
        if not wanted or scene.name in wanted:
            _make(scene.name, lambda folder, svg, of=scene: asyncio.run(draw(of, folder, svg)))
    if not wanted or "shelf" in wanted:
        _make("shelf", lambda folder, svg: asyncio.run(draw_shelf(folder, svg)))
    if not wanted or "log" in wanted:
        _make("log", draw_log)
    for name, of in CHARTS.items():
        if not wanted or name in wanted:
            _make(name, lambda _, svg, of=of: draw_chart(*of, svg), zoom=1.4)
    if not wanted or "page" in wanted:
        with tempfile.TemporaryDirectory() as folder:
            make_page(Path(folder))


def _make(name: str, drawn: Callable[[Path, Path], None], zoom: float = 0.75) -> None:
    """One picture, as PNG where that can be."""
    svg = HERE / f"{name}.svg"
    with tempfile.TemporaryDirectory() as folder:
        os.environ["HOOKSIDE_HOME"] = folder
        drawn(Path(folder), svg)
    convert = shutil.which("rsvg-convert")
    if convert:
        png = svg.with_suffix(".png")
        subprocess.run([convert, f"--zoom={zoom}", str(svg), "-o", str(png)], check=True)
        svg.unlink()
    print(name)


if __name__ == "__main__":
    main()
