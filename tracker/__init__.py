"""Keeps a crocheter's place: reading, counting and following written patterns.

`check_text` reads and counts instructions. Names are looked up when they are first used,
so that importing the package costs next to nothing.
"""

# Importing the name from typing would cost more than all the rest; checkers know it anyway.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from tracker.pattern.check import check_text as check_text

__version__ = "0.1.0"
__all__ = ["__version__", "check_text"]


def __getattr__(name: str) -> object:
    if name == "check_text":
        from tracker.pattern.check import check_text

        return check_text
    raise AttributeError(f"module 'tracker' has no attribute {name!r}")
