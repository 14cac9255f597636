"""What an installed copy has: the program, its data files, the demo patterns."""

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from hatchling import build

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """The wheel built from this checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(ROOT)  # a build backend builds the folder it stands in (PEP 517)
        return folder / build.build_wheel(str(folder))


@pytest.fixture(scope="module")
def names(wheel):
    """The files in the wheel."""
    with zipfile.ZipFile(wheel) as archive:
        return set(archive.namelist())


def test_every_demo_pattern_is_in_the_wheel(names):
    demos = {f"tracker/demo/{path.name}" for path in (ROOT / "patterns").glob("*.toml")}
    assert len(demos) >= 4
    assert demos <= names


def test_every_module_and_data_file_is_in_the_wheel(names):
    package = {
        path.relative_to(ROOT).as_posix()
        for path in (ROOT / "tracker").rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }
    assert {"tracker/pattern/cautions.toml", "tracker/py.typed"} <= package
    assert package <= names


def test_nothing_else_is_in_the_wheel(names):
    tops = {name.split("/")[0] for name in names}
    assert {top for top in tops if not top.endswith(".dist-info")} == {"tracker"}


def test_the_demo_patterns_are_found_away_from_the_checkout(wheel, tmp_path):
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(tmp_path)
    done = subprocess.run(
        [sys.executable, "-m", "tracker", "check", "tea-cosy"],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("Hedgerow tea cosy")
