"""Names of keys: which there are, how they are shown, and the maker's own table of them."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from difflib import get_close_matches

from textual._keyboard_protocol import FUNCTIONAL_KEYS
from textual.keys import KEY_NAME_REPLACEMENTS, Keys, format_key, key_to_character

from tracker.notation.problems import visible
from tracker.screens.actions import ACTIONS, BY_NAME, DEFAULT_KEYS
from tracker.screens.actions import Keys as KeyTable

MODIFIERS = frozenset(("ctrl", "shift", "alt", "super", "hyper", "meta"))

SHORT = {
    "space": "space",
    "backspace": "bksp",
    "pagedown": "pgdn",
    "pageup": "pgup",
    "question_mark": "?",
    "slash": "/",
}

_NAMED = frozenset(
    (*(str(key.value) for key in Keys), *FUNCTIONAL_KEYS.values(), *KEY_NAME_REPLACEMENTS.values())
)


class KeysError(ValueError):
    """A table of keys that cannot be used; the text has one sentence a fault."""


def shown(key: str) -> str:
    """A key as it is shown: "space", "←", "?"."""
    return SHORT.get(key) or format_key(key)


def key_named(word: str) -> str | None:
    """The key that a word or a single character means; None where there is none."""
    if len(word) == 1:
        return _of_character(word)
    *before, base = word.split("+")
    if not set(before) <= MODIFIERS:
        return None
    known = base in _NAMED or (len(base) == 1 and base.isalnum())
    return word if known or (key_to_character(base) or "\x1b").isprintable() else None


def _of_character(char: str) -> str | None:
    if char.isalnum():
        return char
    name = unicodedata.name(char, "").lower().replace("-", "_").replace(" ", "_")
    return KEY_NAME_REPLACEMENTS.get(name, name) or None


def learn(table: Mapping[str, object]) -> KeyTable:
    """All keys, with those of the maker's table in place of the usual ones.

    Raises `KeysError` for a name that is no action, a word that is no key, or two actions
    on one key.
    """
    faults: list[str] = []
    keys = dict(DEFAULT_KEYS)
    for name, value in table.items():
        if name not in BY_NAME:
            faults.append(_no_action(name))
            continue
        keys[name] = tuple(_keys_of(name, value, faults))
    faults.extend(_clashes(keys))
    if faults:
        raise KeysError("\n".join(faults))
    return keys


def _no_action(name: str) -> str:
    near = get_close_matches(name, BY_NAME, n=1)
    hint = f'; did you mean "{near[0]}"?' if near else ""
    return visible(f'[keys] "{name}" is nothing that can be done{hint}')


def _keys_of(name: str, value: object, faults: list[str]) -> list[str]:
    words = [value] if isinstance(value, str) else value
    if not isinstance(words, list) or not words:
        faults.append(f'[keys] {name}: write a list of keys, such as ["space", "f13"]')
        return []
    found = []
    for word in words:
        key = key_named(word) if isinstance(word, str) else None
        if key is None:
            faults.append(visible(f'[keys] {name}: "{word}" is not the name of a key'))
        else:
            found.append(key)
    return found


def _clashes(keys: KeyTable) -> list[str]:
    """One sentence for each key on which two actions lie."""
    taken: dict[str, str] = {}
    faults = []
    for action in ACTIONS:
        for key in keys[action.name]:
            other = taken.setdefault(key, action.name)
            if other != action.name:
                faults.append(
                    f"[keys] {shown(key)} is wanted for both {other} and {action.name}; "
                    f"give one of them another key"
                )
    return faults


def arrived(key: str) -> str:
    """What a key is called and, where only one is known, the code that terminals send for it."""
    codes = [code for code, name in FUNCTIONAL_KEYS.items() if name == key]
    char = key_to_character(key)
    if char is not None and char.isprintable():
        return f"{shown(key)} (the character {char!r}, U+{ord(char):04X})"
    named = f"{key} ({shown(key)})" if shown(key) != key else key
    return f"{named}, sent as {' or '.join(f'ESC [ {code}' for code in codes)}" if codes else named


def doing(key: str, keys: KeyTable) -> str:
    """What a key does now, in a sentence."""
    other = _with(key, keys)
    if other is None:
        return "So far it does nothing."
    title = BY_NAME[other].title
    return f'It now does "{title}"; given to another, it no longer does that.'


def with_key(keys: KeyTable, name: str, key: str) -> tuple[KeyTable, str]:
    """The table with one more key for an action, taken from where it lay; and what was done.

    The same table where the key is the last one of another action.
    """
    title, other = BY_NAME[name].title, _with(key, keys)
    if other == name:
        return keys, f'{shown(key)} does "{title}" already.'
    if other is not None and len(keys[other]) == 1:
        return keys, (
            f'Not done: {shown(key)} is the only key for "{BY_NAME[other].title}"; '
            f"give that another one first."
        )
    changed = {**keys, name: (*keys[name], key)}
    if other is None:
        return changed, f'{shown(key)} now does "{title}".'
    changed[other] = tuple(one for one in keys[other] if one != key)
    return changed, f'{shown(key)} now does "{title}", no longer "{BY_NAME[other].title}".'


def _with(key: str, keys: KeyTable) -> str | None:
    return next((name for name, of in keys.items() if key in of), None)
