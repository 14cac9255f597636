"""What the maker has set: the theme, the keys, the sounds; from ``settings.toml``."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from tracker.lean import NamedTuple
from tracker.notation.problems import visible
from tracker.screens.actions import DEFAULT_KEYS, Keys
from tracker.screens.command import Command
from tracker.screens.cues import Cue
from tracker.screens.keys import KeysError, learn
from tracker.session.access import reason
from tracker.session.files import RealDisk, write_whole
from tracker.session.hints import FIRST, ROUND, Markers
from tracker.session.shelf import pieces_folder

THEMES = ("dark", "light")
HELD = ("once", "each")
BY = ("argument", "input")
TABLE = frozenset(("theme", "held", "one-switch", "keys", "bell", "speech", "rest", "marker"))
USUAL_REST, LONGEST_REST = 30, 600
"""Minutes. Hands want rest often (see the caution "hand-strain"); how often is our own choice,
no source says."""
USUAL_BELLS = frozenset((Cue.ROUND, Cue.COLOUR, Cue.LAST))


class SettingsError(ValueError):
    """Settings that cannot be used; the text says what is wrong, one sentence a line."""


class Settings(NamedTuple):
    """What stands in the file, or what is usual.

    Attributes:
        theme: "dark", "light" or "" (found out from the terminal).
        keys: which keys do what.
        held: "once": a key held down counts once; "each": all that the terminal sends counts.
        one_switch: two quick presses of next mean back.
        bell: the occasions on which a bell rings.
        speech: the command that speaks; None where all stays silent.
        rest: minutes at a stretch after which a rest is called to mind; 0 for never.
        markers: where the maker puts markers.
    """

    theme: str = ""
    keys: Keys = DEFAULT_KEYS
    held: str = "once"
    one_switch: bool = False
    bell: frozenset[Cue] = USUAL_BELLS
    speech: Command | None = None
    rest: int = USUAL_REST
    markers: Markers = Markers()


def settings_path() -> Path:
    """Where the settings are: beside the folder of pieces."""
    return pieces_folder().parent / "settings.toml"


def read_settings(path: Path) -> Settings:
    """The settings in a file; the usual ones where there is none. Raises `SettingsError`."""
    if path.is_symlink():
        raise SettingsError(_link(path))
    try:
        text = RealDisk().read(path).decode()
    except FileNotFoundError:
        return Settings()
    except OSError as error:
        raise SettingsError(f"{path.name} cannot be read: {reason(error)}") from None
    except UnicodeDecodeError:
        raise SettingsError(f"{path.name} is no text in UTF-8: save it as such") from None
    # Imported here, since most makers have no such file.
    import tomllib

    try:
        return _settings(tomllib.loads(text))
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise SettingsError(visible(f"{path.name} is not TOML: {error}")) from None
    except SettingsError as error:
        raise SettingsError(f"{path.name}: {error}") from None


def _link(path: Path) -> str:
    real = visible(os.path.realpath(path))
    return f"{path.name} is a link to {real}: put that file itself in its place"


def keep_keys(path: Path, changed: Keys) -> None:
    """Put the keys of these actions in the file; all else in it stays. Raises `SettingsError`."""
    from tracker.screens.keeping import with_keys  # only when a key is learned

    read_settings(path)
    disk = RealDisk()
    try:
        text = disk.read(path).decode() if path.exists() else ""
        disk.close(write_whole(disk, path, with_keys(text, changed).encode()))
        disk.fsync_folder(path.parent)
    except OSError as error:
        raise SettingsError(f"{path.name} cannot be written: {reason(error)}") from None
    except ValueError:
        wanted = "; ".join(f"{name} = {[*of]}" for name, of in changed.items())
        raise SettingsError(
            f"the keys in {path.name} do not stand each in a line under [keys]; "
            f"put this there yourself: {wanted}"
        ) from None


def _settings(table: Mapping[str, object]) -> Settings:
    unknown = sorted(table.keys() - TABLE)
    if unknown:
        raise SettingsError(visible(f'"{unknown[0]}" is no setting; there are {_listed()}'))
    theme, keys = table.get("theme", ""), table.get("keys", {})
    held, one_switch = table.get("held", "once"), table.get("one-switch", False)
    if theme not in ("", *THEMES):
        raise SettingsError('theme is "dark" or "light"')
    if held not in HELD:
        raise SettingsError('held is "once" or "each"')
    if not isinstance(one_switch, bool):
        raise SettingsError("one-switch is true or false")
    if not isinstance(keys, dict):
        raise SettingsError("keys is a table: [keys], then a line for each action")
    bell, speech = _bell(table.get("bell", {})), _speech(table.get("speech"))
    rest, markers = _rest(table.get("rest", USUAL_REST)), _markers(table.get("marker", {}))
    try:
        known = learn(keys)
    except KeysError as error:
        raise SettingsError(str(error)) from None
    return Settings(str(theme), known, str(held), one_switch, bell, speech, rest, markers)


def _markers(table: object) -> Markers:
    if not isinstance(table, dict) or table.keys() - set(Markers._fields):
        raise SettingsError("marker is a table of round and every: [marker], then any of them")
    stitch, every = table.get("round", FIRST), table.get("every", 0)
    if stitch not in ROUND:
        raise SettingsError('[marker] round is "first", "last" or "none"')
    if isinstance(every, bool) or not isinstance(every, int) or every < 0:
        raise SettingsError("[marker] every is a number of stitches, such as 20; 0 for none")
    return Markers(str(stitch), every)


def _rest(minutes: object) -> int:
    if minutes is False:
        return 0
    if isinstance(minutes, bool) or not isinstance(minutes, int) or minutes < 0:
        raise SettingsError("rest is a number of minutes, such as 30; 0 or false for never")
    return min(minutes, LONGEST_REST)


def _bell(table: object) -> frozenset[Cue]:
    names = ", ".join(Cue)
    if not isinstance(table, dict):
        raise SettingsError(f"bell is a table: [bell], then true or false for any of {names}")
    unknown = sorted(table.keys() - set(Cue))
    if unknown:
        raise SettingsError(visible(f'[bell] "{unknown[0]}" is no occasion; there are {names}'))
    for name, wanted in table.items():
        if not isinstance(wanted, bool):
            raise SettingsError(f"[bell] {name} is true or false")
    return frozenset(cue for cue in Cue if table.get(cue.value, cue in USUAL_BELLS))


def _speech(table: object) -> Command | None:
    if table is None:
        return None
    if not isinstance(table, dict) or table.keys() - {"command", "words"}:
        raise SettingsError("speech is a table of command and words: [speech], then both")
    command, by = table.get("command"), table.get("words", BY[0])
    if not isinstance(command, list) or not command or not all(map(_is_word, command)):
        raise SettingsError("[speech] command is a list: the program, then its arguments")
    if by not in BY:
        raise SettingsError('[speech] words is "argument" (they come last) or "input"')
    return Command(tuple(command), by == BY[1])


def _is_word(word: object) -> bool:
    return isinstance(word, str) and bool(word) and "\0" not in word


def _listed() -> str:
    return ", ".join(sorted(TABLE))
