"""``python -m tracker``: the same as ``hookside``."""

import sys

from tracker.cli import main

if __name__ == "__main__":
    sys.exit(main())
