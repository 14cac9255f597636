"""The demo patterns that come with the program, by their short names."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def folder() -> Path:
    """Where the demo patterns are: in the package, or beside it in a checkout."""
    installed = _PACKAGE / "demo"
    return installed if installed.is_dir() else _PACKAGE.parent / "patterns"


def demo_patterns() -> Mapping[str, Path]:
    """Every demo pattern's file by its short name, which is the file's, without ending."""
    return {path.stem: path for path in sorted(folder().glob("*.toml"))}


def find(name: str) -> Path | None:
    """The demo pattern of that short name; None where there is none."""
    return demo_patterns().get(name.lower())
