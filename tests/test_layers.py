"""The layers of the house: what may import what, read from the source and seen at run time."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

from tracker.pattern.library import demo_patterns
from tracker.pattern.load import load_pattern
from tracker.session.session import Session

ROOT = Path(__file__).parent.parent
PACKAGE = ROOT / "tracker"

#: Layer of each first word below ``tracker``; a module may import its own layer and lower ones.
LAYERS = {
    "lean": -1,
    "notation": 0,
    "fabric": 1,
    "pattern": 2,
    "session": 3,
    "writing": 4,
    "screens": 5,
    "cli": 6,
    "cli_ahead": 6,
    "cli_chapters": 6,
    "cli_check": 6,
    "cli_files": 6,
    "cli_log": 6,
    "cli_help": 6,
    "cli_measure": 6,
    "cli_parser": 6,
    "cli_piece": 6,
    "cli_pattern": 6,
    "cli_read": 6,
    "cli_report": 6,
    "cli_shelf": 6,
    "cli_size": 6,
    "cli_size_report": 6,
    "cli_size_told": 6,
    "cli_spread": 6,
    "cli_tables": 6,
    "cli_where": 6,
    "cli_work": 6,
    "cli_write": 6,
    "__main__": 7,
}
INTERFACE = {"textual", "rich"}


def modules():
    for path in sorted(PACKAGE.rglob("*.py")):
        yield ".".join(path.relative_to(ROOT).with_suffix("").parts), path


def imports(path):
    """Every module named in an import, wherever in the file it stands."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: imports are written in full"
            yield node.module
            yield from (f"{node.module}.{name.name}" for name in node.names)


def layer(module):
    """The layer's name of a module of ours: the word after ``tracker``; "" for none."""
    words = module.split(".")
    return words[1] if words[0] == "tracker" and len(words) > 1 else ""


CASES = [pytest.param(name, path, id=name) for name, path in modules()]


@pytest.mark.parametrize(("name", "path"), CASES)
def test_imports_point_downward_only(name, path):
    own = layer(name)
    if own in ("", "__init__"):
        return
    for used in map(layer, imports(path)):
        if own == "measure":
            assert used in ("", "measure"), f"{name}: measure stands alone"
        elif used in LAYERS:
            assert LAYERS[used] <= LAYERS[own], f"{name} imports {used}"


@pytest.mark.parametrize(("name", "path"), CASES)
def test_only_screens_import_the_interface(name, path):
    if layer(name) != "screens":
        assert not INTERFACE & {used.split(".")[0] for used in imports(path)}


def loaded(code):
    """The modules that a fresh interpreter has after running ``code``."""
    script = f"{code}\nimport sys\nprint('\\n--', *sys.modules, sep='\\n')"
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=True
    )
    return set(done.stdout.rpartition("\n--\n")[2].split())


MAIN = "from tracker.cli import main; main({})"


@pytest.mark.parametrize(
    "code",
    [
        "import tracker",
        "from tracker import check_text; check_text('Rnd 1: 6 sc in ring. (6)')",
        "import tracker.notation.reader",
        "import tracker.session.session",
        MAIN.format(["check", "tea-cosy"]),
        MAIN.format(["check", "--json", "tea-cosy"]),
        MAIN.format(["patterns"]),
        MAIN.format(["size", "headband", "--for", "44 cm"]),
        MAIN.format(["spread", "48", "to", "60"]),
        MAIN.format(["where"]),
    ],
)
def test_nothing_but_a_screen_loads_the_interface(code):
    found = loaded(code)
    assert "tracker" in found
    assert not INTERFACE & found


def test_importing_the_package_loads_next_to_nothing():
    new = loaded("import tracker") - loaded("")
    assert {name for name in new if name.startswith("tracker")} == {"tracker"}
    assert len(new) < 10


def test_the_counting_needs_no_command_line_and_no_session():
    found = loaded("from tracker import check_text; check_text('Rnd 1: 6 sc in ring. (6)')")
    assert "argparse" not in found
    assert not any(name.startswith("tracker.session") for name in found)


SLOW = {"typing", "pathlib", "tomllib", "dataclasses", "argparse", "inspect"}
"""Modules of the library that take long to import: where a place is told, none is needed."""


def test_a_piece_changed_by_hand_is_told_by_what_that_needs(tmp_path, monkeypatch):
    monkeypatch.setenv("HOOKSIDE_HOME", str(tmp_path))
    session = Session.start(load_pattern(demo_patterns()["tea-cosy"]), "4 cups", tmp_path)
    session.next()
    session.close()
    where = MAIN.format(["where", str(session.path)])
    for _ in range(2):
        # The first time the head is read too, and kept.
        with session.path.open("a") as file:
            file.write("\n")
        found = loaded(where) - loaded("")
    assert "tracker.session.glance" in found
    assert not SLOW & found
    assert not {name for name in found if name.startswith(("tracker.notation.re", "tracker.cli_p"))}
