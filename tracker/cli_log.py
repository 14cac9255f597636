"""``hookside log``: what became of every round of a piece, as lines, bars, a picture or JSON."""

from __future__ import annotations

import json
import shutil
from dataclasses import asdict
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from tracker.cli_piece import meant, opened
from tracker.notation.problems import visible

if TYPE_CHECKING:
    from tracker.session.log import Logged, LoggedPart


def log(word: str | None, svg: str | None, *, plot: bool, as_json: bool, force: bool) -> int:
    """Print the log of a piece, or write it as a picture."""
    if svg is not None:
        from tracker.cli_files import refuse

        refuse(Path(svg), force=force)
    path = meant(word)
    title, parts = opened(lambda: _log(path))
    if as_json:
        print(json.dumps(as_data(title, parts), indent=2))
    elif svg is not None:
        from tracker.cli_files import write_file
        from tracker.writing.log_svg import log_picture

        write_file(Path(svg), log_picture(title, parts), force=force)
    else:
        _print(title, parts, plot=plot)
    return 0


def as_data(title: str, parts: tuple[LoggedPart, ...]) -> dict[str, Any]:
    """The log as JSON has it: seconds, grams, times with their offset; null for not known."""
    return {
        "title": title,
        "parts": [
            {
                "name": part.name,
                "making up": part.making_up,
                "rounds": [_round_data(one) for one in part.rounds],
                "left out": part.left_out,
            }
            for part in parts
        ],
    }


def _round_data(one: Logged) -> dict[str, Any]:
    told = {key.replace("_", " "): value for key, value in asdict(one).items()}
    when = datetime.fromtimestamp(one.when, UTC).astimezone().isoformat() if one.when else None
    yarn = {name: None if grams is None else round(grams, 3) for name, grams in one.yarn}
    return {**told, "when": when, "yarn": yarn}


def _print(title: str, parts: tuple[LoggedPart, ...], *, plot: bool) -> None:
    from tracker.writing.log_text import bars, log_lines

    print(visible(title))
    print()
    if not parts:
        print("nothing is worked yet")
        return
    for words in bars(parts, shutil.get_terminal_size().columns) if plot else log_lines(parts):
        print(visible(words))


def _log(path: Path) -> tuple[str, tuple[LoggedPart, ...]]:
    from tracker.session.log import log as logged
    from tracker.session.looking import look, plan_at

    found = look(path)
    plan = plan_at(path, found)
    title = " · ".join(word for word in (found.head.title, plan.size) if word)
    return title, logged(plan, found.history.state, found.history.items)
