"""What the maker is told of a piece's file: one sentence each."""

from __future__ import annotations

from tracker.session.paper import Found


def on_opening(name: str, found: Found, *, seized: bool = False) -> tuple[str, ...]:
    """What a maker must know of the file as it was found.

    One that was seized from another window has no end yet, and needs none.
    """
    said = []
    if found.head_changed:
        said.append(f"The pattern, title or size in {name} was changed since it was written.")
    if found.damage:
        said.append(
            f"{name} is damaged after entry {found.number}: you stand where that left you. "
            "Check it against the work."
        )
    elif found.by_hand:
        lines = "1 line" if found.by_hand == 1 else f"{found.by_hand} lines"
        said.append(f"{name} was changed by hand: {lines} at the end, taken as written.")
    elif not found.put_down and not seized:
        said.append(
            f"{name} ends in the middle: Hookside was stopped, or the file was cut off. "
            "Check your place against the work."
        )
    return tuple(said)


def damage_kept(beside: str) -> str:
    """The damaged bytes are in a file of their own."""
    return f"What was damaged or changed is kept in {beside}."


def removed(name: str) -> str:
    """The file was removed while it was open."""
    return f"{name} was removed meanwhile; it is written again."


def changed_outside(theirs: str, ours: str) -> str:
    """The file was changed while it was open."""
    return (
        f"{theirs} was changed by something else meanwhile: it is left as it is. "
        f"Your own work goes on in {ours}."
    )


def lies_beside(theirs: str, path: str) -> str:
    """Another version of the piece was found in its folder."""
    return f"{theirs} is another version of {path}, as a synced folder leaves one."


def taken_over(name: str) -> str:
    """Another window has the piece now."""
    return f"{name} was taken over in another window: this one only looks on now."


def unsaved_kept(beside: str) -> str:
    """What the other window could not have read is in a file of its own."""
    return f"What it had not saved is kept in {beside}."


def carried_over(beside: str) -> str:
    """The piece goes on with the changed pattern; as it was, it is in a file of its own."""
    return f"The piece as it was before is kept in {beside}."


def kept_aside(beside: str) -> str:
    """The version that was not chosen is in a file of its own."""
    return f"The other version is kept in {beside}."


def unsaved(why: str) -> str:
    """What was worked in this window must be saved before another version is gone on with."""
    return f"what was worked here is not saved yet ({why})"
