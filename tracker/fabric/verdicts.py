"""The five things a check can say of a round."""

from enum import StrEnum


class Verdict(StrEnum):
    """How the count of a round stands to what the pattern prints.

    ``OPEN``: its length is measured, not counted. ``UNREAD``: some words were not
    understood, so nothing was proved; the round can still be worked by its text.
    """

    AGREES = "agrees"
    DIFFERS = "differs"
    UNSTATED = "unstated"
    OPEN = "open"
    UNREAD = "unread"
