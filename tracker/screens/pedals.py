"""Names for the keys F13 to F20, which many foot pedals send.

Textual 8.2.8 reads their VT220 form (``CSI 25~`` to ``CSI 34~``) as character codes, so that
an F18 pedal looks like the space bar: its table of function keys lacks these numbers. The
numbers: DEC VT220 programmer reference manual, table 3-4 (F13 to F20).
"""

from textual._keyboard_protocol import FUNCTIONAL_KEYS

VT220 = {
    "25~": "f13",
    "26~": "f14",
    "28~": "f15",
    "29~": "f16",
    "31~": "f17",
    "32~": "f18",
    "33~": "f19",
    "34~": "f20",
}


def name_pedals() -> None:
    """Add the eight names; to be called before the app starts."""
    for code, name in VT220.items():
        FUNCTIONAL_KEYS.setdefault(code, name)
