"""What the maker has set: the theme and the keys, from ``settings.toml``."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from tracker.notation.problems import visible
from tracker.screens.actions import DEFAULT_KEYS, Keys
from tracker.screens.keys import KeysError, learn
from tracker.session.files import RealDisk
from tracker.session.shelf import pieces_folder

THEMES = ("dark", "light")


class SettingsError(ValueError):
    """Settings that cannot be used; the text says what is wrong, one sentence a line."""


@dataclass(frozen=True, slots=True)
class Settings:
    """``theme`` is "dark", "light" or "" (found out from the terminal)."""

    theme: str = ""
    keys: Keys = field(default_factory=lambda: DEFAULT_KEYS)


def settings_path() -> Path:
    """Where the settings are: beside the folder of pieces."""
    return pieces_folder().parent / "settings.toml"


def read_settings(path: Path) -> Settings:
    """The settings in a file; the usual ones where there is none. Raises `SettingsError`."""
    try:
        text = RealDisk().read(path).decode()
    except FileNotFoundError:
        return Settings()
    except (OSError, UnicodeDecodeError) as error:
        raise SettingsError(f"{path.name} cannot be read: {error}") from None
    try:
        return _settings(tomllib.loads(text))
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise SettingsError(visible(f"{path.name} is not TOML: {error}")) from None


def _settings(table: Mapping[str, object]) -> Settings:
    unknown = sorted(table.keys() - {"theme", "keys"})
    if unknown:
        raise SettingsError(visible(f'"{unknown[0]}" is no setting; there are theme and [keys]'))
    theme, keys = table.get("theme", ""), table.get("keys", {})
    if theme not in ("", *THEMES):
        raise SettingsError('theme is "dark" or "light"')
    if not isinstance(keys, dict):
        raise SettingsError("keys is a table: [keys], then a line for each action")
    try:
        return Settings(str(theme), learn(keys))
    except KeysError as error:
        raise SettingsError(str(error)) from None
