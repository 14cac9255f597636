"""The head of a piece's file: what the piece was started from, sealed as a whole."""

from __future__ import annotations

import re
from datetime import datetime
from zlib import crc32

from tracker.lean import NamedTuple

GREETING = """\
# A piece in progress, kept by Hookside. Each press is one line at the end.
# To mend it by hand: close Hookside, delete lines from the end up to where things went
# wrong, and write lines of your own without a seal, with the next number, such as
#     12 = { round = [1, 1, 7, 1], steps = "13" }
# which stands in part 1, copy 1, round 7 of the part as printed, worked the 1st time
# (only rounds of open length are worked again), with 13 steps done. Or such as
#     13 = { change = [1, 1, 9], words = "*sc 4, inc; rep" }
# which works round 9 of part 1 otherwise, from copy 1 on.
"""

MOST_DOTS = 500
"""In one line of a head; reading a dotted name costs by the square of its dots."""


class PaperError(ValueError):
    """The head of a file cannot be read; the text says why, in one sentence."""


class Head(NamedTuple):
    """What a piece was started from, and when. ``pattern`` is the pattern's TOML text.

    ``file`` is where that pattern stood, "" where that is not known; ``over`` the seal of a
    changed text of it that the maker passed over, or "".
    """

    title: str
    size: str
    started: datetime
    pattern: str
    file: str = ""
    over: str = ""


_LOG = rb'\nsealed = "([0-9a-f]{8})"\r?\n\r?\n\[log\]\r?\n'


def write_head(head: Head) -> bytes:
    """The head as text, up to where the log begins."""
    import tomli_w

    fields = {
        "title": head.title,
        "size": head.size,
        "started": head.started,
        **({"file": head.file} if head.file else {}),
        **({"over": head.over} if head.over else {}),
        "pattern": head.pattern.replace("\r\n", "\n"),
    }
    table = tomli_w.dumps({"piece": fields}, multiline_strings=True)
    text = f"{GREETING}\n{table.rstrip()}".encode()
    return text + b'\nsealed = "%08x"\n\n[log]\n' % crc32(text)


def head_end(data: bytes) -> tuple[int, bool]:
    """Where the log begins, and whether the head was changed.

    A pattern may itself contain such lines: so the place where the seal fits counts.
    """
    matches = list(re.finditer(_LOG, data))
    for match in matches:
        if crc32(data[: match.start()]) == int(match[1], 16):
            return match.end(), False
    if matches:
        return matches[-1].end(), True
    line = re.search(rb"^1 = \{ .*\}\r?$", data, re.MULTILINE)
    return (line.start() if line else len(data)), True


def read_head(raw: bytes) -> Head:
    """The head that a text is. Raises `PaperError` where it is none."""
    # Imported here: a head that was read before is not read again.
    import tomllib

    from tracker.notation.problems import visible

    if any(line.count(b".") > MOST_DOTS for line in raw.split(b"\n")):
        raise PaperError("its head cannot be read (a line has too many dots)")
    try:
        piece = tomllib.loads(raw.decode("utf-8"))["piece"]
        title, size, pattern = piece["title"], piece["size"], piece["pattern"]
        started = piece["started"]
        file, over = str(piece.get("file", "")), str(piece.get("over", ""))
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        raise PaperError(f"its head cannot be read ({visible(str(error))})") from None
    texts = isinstance(title, str) and isinstance(size, str) and isinstance(pattern, str)
    if not texts or not isinstance(started, datetime):
        raise PaperError("its head cannot be read (a value is of the wrong kind)")
    return Head(title, size, started, pattern, file, over)
