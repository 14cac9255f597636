"""The page: it needs nothing else, shows everything, and prints."""

import re
import shutil
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import pytest
from pypdf import PdfReader

from tracker.pattern import library
from tracker.pattern.check import check_pattern
from tracker.pattern.load import load_pattern
from tracker.pattern.model import Part, Pattern
from tracker.writing.charts import drawings
from tracker.writing.compose import compose
from tracker.writing.page import page

ROOT = Path(__file__).parents[2]
BROWSER = shutil.which("chromium") or shutil.which("chromium-browser")
DEMOS = list(library.demo_patterns())


def made(pattern, size=""):
    checked = check_pattern(pattern)
    return page(compose(pattern, checked, drawings(pattern, checked, size)))


class Seen(HTMLParser):
    """What a page holds: its tags with what they say, and the words outside of drawings."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.words, self.inside = [], [], []
        self.feed(text)

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in ("meta", "circle", "rect"):
            self.inside.append(tag)

    def handle_endtag(self, tag):
        while self.inside and self.inside.pop() != tag:
            pass

    def handle_data(self, data):
        if not {"svg", "style", "title"} & set(self.inside):
            self.words.append(data)


@pytest.mark.parametrize("name", DEMOS)
def test_the_page_holds_every_round_and_sentence(name):
    pattern = load_pattern(library.find(name))
    seen = Seen(made(pattern))
    words = " ".join(" ".join(seen.words).split())
    for part in pattern.parts:
        assert part.name in words
        for step in part.steps:
            assert step in words
        for line in part.rounds.splitlines():
            label, _, body = line.partition(": ")
            assert label in words
            assert body in words
    drawn = sum(tag == "svg" for tag, _ in seen.tags)
    assert drawn == sum(bool(part.rounds) for part in pattern.parts)


@pytest.mark.parametrize("name", DEMOS)
def test_the_page_asks_for_nothing_outside_itself(name):
    text = made(load_pattern(library.find(name)))
    for tag, attributes in Seen(text).tags:
        assert tag not in ("script", "link", "img", "iframe", "object", "use", "image")
        assert not {"src", "href", "xlink:href", "onload"} & attributes.keys()
    assert "url(" not in text
    assert "@import" not in text
    assert "default-src 'none'" in text


def test_what_a_pattern_says_is_text_on_the_page():
    evil = "<script>alert('&')</script>"
    part = Part(evil, rounds=f"Rnd 1: 6 sc in ring {evil}. (6)\n", note=evil)
    steps = Part("Making up", steps=(evil,))
    pattern = Pattern(f"{evil} ' \\ }} @import", "US", (part, steps), about=evil)
    text = made(pattern)
    seen = Seen(text)
    assert "script" not in {tag for tag, _ in seen.tags}
    assert " ".join(seen.words).count(evil) >= 5
    assert "@import" not in re.search(r"<style>.*?</style>", text, re.DOTALL)[0]


def test_a_proved_round_is_ticked_and_one_that_differs_is_not():
    rounds = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (13)\n"
    text = made(Pattern("Mat", "US", (Part("Mat", rounds=rounds),)))
    first, second = re.findall(r"<tr>.*?</tr>", text)
    assert "✓" in first
    assert "✓" not in second
    assert "1 NOT as printed" in text


def test_what_has_no_chart_is_said_on_the_page():
    part = "Rnd 1: 900 sc in ring. (900)\n" + "".join(
        f"Rnd {n}: sc in each st around. (900)\n" for n in range(2, 5)
    )
    names = [f"Panel {n}" for n in range(1, 7)]
    parts = [Part(name, rounds=part) for name in names]
    parts.append(Part("Odd", rounds="Rnd 1: frumple 6 in ring. (6)\n"))
    text = made(Pattern("Much", "US", tuple(parts)))
    assert text.count("<svg") == 4
    for name in names[4:]:
        assert f"Without a chart: {name}: too much for one page" in text
    assert "Without a chart: Odd. Not drawn from Rnd 1 on: it was not understood." in text


if BROWSER:  # only where one is: .ci/run installs it

    def printed(path, folder):
        """The PDF that a browser prints of a page."""
        pdf = folder / "page.pdf"
        quiet = ["--disable-quic", "--no-first-run", "--disable-background-networking"]
        quiet += ["--disable-component-update", "--disable-sync", "--no-pdf-header-footer"]
        subprocess.run(
            [
                *(BROWSER, "--headless", "--no-sandbox", "--disable-gpu", *quiet),
                *(f"--user-data-dir={folder / 'profile'}", f"--print-to-pdf={pdf}"),
                path.as_uri(),
            ],
            capture_output=True,
            timeout=120,
            check=True,
        )
        return PdfReader(pdf)

    def test_a_browser_prints_it_whole(tmp_path):
        path = tmp_path / "cosy.html"
        words = ["write", "tea-cosy", "--size", "4 cups", "-o", path]
        subprocess.run([sys.executable, "-m", "tracker", *words], cwd=ROOT, check=True)
        pdf = printed(path, tmp_path)
        pages = [" ".join(one.extract_text().split()) for one in pdf.pages]
        assert 4 <= len(pages) <= 9
        for number, text in enumerate(pages, start=1):
            assert f"{number} / {len(pages)}" in text
            assert "Hedgerow tea cosy" in text
        whole = " ".join(pages)
        pattern = load_pattern(library.find("tea-cosy"))
        for part in pattern.parts:
            assert part.name in whole
            for step in part.steps:
                assert step in whole
        for label in ("Rnd 1 ", "Rnds 11-14", "Rnd 19", "thicket stitch", "half double crochet"):
            assert label in whole
        assert "Size 4 cups." in whole
