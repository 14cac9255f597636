"""Everything the maker can do on the work screen, each thing declared once.

From this table come the key bindings, the footer, the help, the list to find one in, and the
names under which keys are learned anew in the settings.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from textual.binding import Binding, BindingType

from tracker.lean import NamedTuple


class Action(NamedTuple):
    """One thing to do.

    Attributes:
        name: its name in settings, and its binding's id.
        keys: the keys that do it unless the settings say otherwise.
        title: what it is called in lists and the help.
        help: one sentence.
        word: a short word for the footer; "" keeps it out.
        method: the method of `Session` that does it; "" where the screen has more to do.
    """

    name: str
    keys: tuple[str, ...]
    title: str
    help: str
    word: str = ""
    method: str = ""


ACTIONS = (
    Action(
        "next",
        ("space", "enter", "right", "pagedown"),
        "Next",
        "One press on: a loop, a stitch, a repeat or a round, and yes to the count asked.",
        "next",
        "next",
    ),
    Action(
        "back",
        ("backspace", "left", "pageup"),
        "Back",
        "One press back by the same pace.",
        "back",
        "back",
    ),
    Action("undo", ("u",), "Undo", "Take back the last press of any kind.", "undo", "undo"),
    Action("redo", ("r",), "Redo", "Do again what was taken back.", method="redo"),
    Action(
        "pace",
        ("p",),
        "Change the pace",
        "What one press counts: a stitch, a repeat, a round. The place stays.",
        "pace",
        "turn_pace",
    ),
    Action("go-round", ("g",), "Go to a round", "Type the round's number, then next.", "go to"),
    Action(
        "go-stitch",
        ("s",),
        "Go to a stitch",
        "Type how many stitches of this round are made, then next.",
    ),
    Action(
        "next-round",
        ("down",),
        "Next round",
        "To the start of the next round.",
        method="next_round",
    ),
    Action(
        "previous-round",
        ("up",),
        "Previous round",
        "To the start of this round, or of the one before.",
        method="previous_round",
    ),
    Action(
        "parts",
        ("t",),
        "Parts, trims, making up",
        "See all parts and how far they are; go to one, or choose a trim.",
        "parts",
    ),
    Action("how", ("h",), "How to", "How the present stitch is made.", "how to"),
    Action(
        "before",
        ("i",),
        "Before you begin",
        "What the pattern says of itself, gauge and hook, the part's note, the cautions.",
    ),
    Action("mark", ("m",), "Mark this place", "Put the marker at this place.", "mark", "mark"),
    Action(
        "to-mark",
        ("j",),
        "To the mark",
        "Go to the marked place.",
        method="return_to_mark",
    ),
    Action(
        "loops",
        ("o",),
        "Loop by loop",
        "Go through special stitches loop by loop, or stitch by stitch.",
        "loops",
    ),
    Action(
        "count",
        ("c",),
        "Enter a count",
        "Type what you counted at the end of the round, then next.",
    ),
    Action(
        "note",
        ("n",),
        "Write a note",
        "A note kept with this place; it is shown in every copy when the place is reached.",
    ),
    Action(
        "measure",
        ("d",),
        "Measure the piece",
        "Type how long it is at this place; the rounds left to a length go by it.",
    ),
    Action(
        "weigh",
        ("y",),
        "Weigh the yarn",
        "Type what is left of the yarn, all balls of it together; in time it is known whether "
        "it lasts.",
    ),
    Action(
        "ahead",
        ("f",),
        "What lies ahead",
        "The time left for the round, the part and the piece; whether the yarn lasts.",
    ),
    Action(
        "rest",
        ("k",),
        "Reminder to rest",
        "Off for now, or on again.",
    ),
    Action(
        "wrong",
        ("w",),
        "A wrong count",
        "What may have gone wrong in the round just counted, and ways to put it right.",
    ),
    Action(
        "improvise",
        ("v",),
        "Improvise a round",
        "Work the next round otherwise, add one, work one once more or leave it out.",
        "improvise",
    ),
    Action(
        "ask",
        ("a",),
        "When to ask for the count",
        "After every round, after increase rounds, or never.",
    ),
    Action(
        "long-enough",
        ("e",),
        "Long enough",
        "A round worked to a length is long enough: go on with what follows.",
        method="length_reached",
    ),
    Action(
        "find",
        ("slash", "ctrl+p"),
        "Find an action",
        "Find anything on this list by typing a part of its name.",
    ),
    Action(
        "guard",
        ("x",),
        "Guard the place",
        "From now on only next and back do anything; the same key twice ends it.",
        "guard",
    ),
    Action(
        "learn",
        ("l",),
        "Learn a key",
        "Press any key, pedal or presenter's button, then say what it shall do.",
    ),
    Action("suspend", ("ctrl+z",), "To the shell", "Step out to the shell; fg comes back."),
    Action(
        "quit", ("q", "ctrl+q", "ctrl+c"), "Put down", "Close. The place is saved already.", "quit"
    ),
    Action("help", ("question_mark",), "Help", "These pages.", "help"),
)

BY_NAME: Mapping[str, Action] = {action.name: action for action in ACTIONS}

Keys = Mapping[str, tuple[str, ...]]
"""Which keys do each action, by its name."""

DEFAULT_KEYS: Keys = {action.name: action.keys for action in ACTIONS}


def bindings(names: Iterable[str]) -> list[BindingType]:
    """One binding a key, with the action's name as its id."""
    return [
        Binding(key, f"act('{name}')", BY_NAME[name].title, show=False, id=name)
        for name in names
        for key in BY_NAME[name].keys
    ]
