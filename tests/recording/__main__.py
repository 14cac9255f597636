"""Writes the recording: ``python -m tests.recording FILE``."""

import os
import sys
import tempfile
from pathlib import Path

from tests.recording.hour import film


def main() -> int:
    """Film the hour in a home of its own; the exit code."""
    if len(sys.argv) != 2:
        print("say where to: python -m tests.recording FILE", file=sys.stderr)
        return 2
    with tempfile.TemporaryDirectory() as home:
        os.environ["HOOKSIDE_HOME"] = home
        frames = film().frames.values()
    Path(sys.argv[1]).write_text("\n".join(map(str, frames)), encoding="utf-8")
    print(f"{len(frames)} frames in {sys.argv[1]}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
