"""What is printed as it is typed, without a new line."""


class Letters(str):
    """A part of a line."""

    __slots__ = ()
