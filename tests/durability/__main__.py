"""``python -m tests.durability [NAME…]``: the long versions, and what they tried.

Some twenty minutes in all; without names all of them, one after the other.
"""

import sys
import tempfile
import time
from pathlib import Path

from tests.durability.choosing import choose_at_length
from tests.durability.crashes import crash_everywhere
from tests.durability.damage import damage_all
from tests.durability.failing import fail_at_every
from tests.durability.kills import kill_in_storms
from tests.durability.takeovers import take_over_in_storms

LONG = {
    "kills": lambda folder: kill_in_storms(folder, 2000),
    "takeovers": lambda folder: take_over_in_storms(folder, 300),
    "faults": lambda folder: fail_at_every(folder, presses=40),
    "crashes": lambda folder: crash_everywhere(folder, presses=300, every=4, real_every=41),
    "choosing": choose_at_length,
    "damage": lambda folder: damage_all(folder, presses=25, every=1, values=255),
}


def main(names):
    """Run and report."""
    for name in names or LONG:
        begun = time.monotonic()
        with tempfile.TemporaryDirectory() as folder:
            counts = LONG[name](Path(folder) / "pieces")
        print(f"{name} ({time.monotonic() - begun:.0f} s)")
        for what, count in counts.items():
            print(f"  {what:32} {count:>10,}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
