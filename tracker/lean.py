"""Named tuples, written as those of ``typing`` and the same to use, but made sooner.

Some dozens of these classes are made before a place is told or a screen is painted.
``typing`` takes more than twice the time for each, and its own import a fifth of what
``python -c pass`` takes. Checkers see what they know from there.
"""

from __future__ import annotations

from collections import namedtuple

__all__ = ["TYPE_CHECKING", "NamedTuple"]

TYPE_CHECKING = False
"""Checkers take it for true; modules import by it what only they need."""

if TYPE_CHECKING:
    from typing import NamedTuple
else:

    class _Making(type):
        """Turns the body of a class into a named tuple with the same fields and methods."""

        def __new__(
            cls, name: str, bases: tuple[type, ...], body: dict[str, object]
        ) -> type[tuple[object, ...]]:
            if not bases:
                return super().__new__(cls, name, bases, body)
            fields = body.get("__annotations__", {})
            defaults = [body.pop(field) for field in fields if field in body]
            made = namedtuple(name, fields, defaults=defaults, module=body["__module__"])
            for word, value in body.items():
                if word not in ("__module__", "__qualname__"):
                    setattr(made, word, value)
            return made

    class NamedTuple(metaclass=_Making):
        """A class of it has the fields that its body annotates, with their defaults."""
