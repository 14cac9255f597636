"""An open piece whose files something else changed: its pattern's, or its own in two versions."""

from __future__ import annotations

from pathlib import Path

from tracker.lean import TYPE_CHECKING
from tracker.session.access import StoreError, reason
from tracker.session.naming import spot_words
from tracker.session.opened import ONLY_LOOKS, Opened, plan_of
from tracker.session.own import OwnPlan
from tracker.session.store import Store

if TYPE_CHECKING:
    from tracker.session.carrying import ChangedFile
    from tracker.session.versions import Version, Which


class Reconciled(Opened):
    """What is noticed of such a change, and the ways to go on from it."""

    def follow(self, file: Path) -> None:
        """From now on notice changes of the pattern in this file."""
        head = self._store.head._replace(file=str(file.absolute()))
        if head != self._store.head:
            self._store.rehead(head)

    def changed_file(self) -> ChangedFile | None:
        """What has changed in the pattern's file since the piece took it up; None for nothing."""
        from tracker.session.carrying import changed_file

        return changed_file(self._store.head, self.printed, self._store.history)

    def carry_over(self, changed: ChangedFile) -> None:
        """Go on with the changed pattern, the place carried over by part and round."""
        if self._store.taken:
            self._last_press = ONLY_LOOKS
            return
        head = self._store.head._replace(pattern=changed.plan.pattern.source, over="")
        try:
            self._store.carry_over(head, changed.history)
        except OSError as error:
            self._last_press = f"not carried over: {reason(error)}"
            return
        self._own, self._looker = OwnPlan(changed.plan), None
        self._last_press = f"carried over to {changed.place}"

    def pass_over(self, changed: ChangedFile) -> None:
        """Stay with the pattern as it was begun, until its file changes once more."""
        if not self._store.taken:
            self._store.rehead(self._store.head._replace(over=changed.seal))
        self._last_press = "the pattern stays as it was begun"

    def look_beside(self) -> None:
        """Notice another version of the piece in its folder, as a synced folder leaves one."""
        if self._store.theirs is None and not self._store.taken:
            from tracker.session import beside  # after the first picture

            path = self._store.path
            other = beside.version_beside(path)
            if other is not None:
                self._store.found_beside(other, at_home=beside.bears_the_name(path, other))

    def versions(self) -> tuple[Version, ...]:
        """Ours and theirs, where something else changed the file while it was open.

        Empty where there is nothing to choose.
        """
        if self._store.theirs is None:
            return ()
        from tracker.session.versions import versions_of  # hardly ever

        ours = spot_words(self.plan, self.state, self.state.spot)
        return versions_of(self._store.path, ours, self._store.theirs, self._reading)

    def keep(self, which: Which) -> None:
        """Go on with one of the two versions, in the piece's own file.

        The other is kept aside under a name that tells so. Where that cannot be done, all
        stays as it is, and ``Glance.last_press`` says why.
        """
        try:
            if self._store.taken:
                self._last_press = ONLY_LOOKS
            elif self._store.theirs is None:
                self._last_press = "there is only one version"
            elif which == "ours":
                self._store.keep_ours()
                self._last_press = "this version kept"
            else:
                self._go_over(self._store.theirs)
        except OSError as error:
            self._last_press = f"cannot be done: {reason(error)}"
        except StoreError as error:
            self._last_press = f"cannot be done: {error}"

    def _go_over(self, theirs: Path) -> None:
        """Take up the version that was changed, and put ours aside."""
        store = Store.open(theirs, self._store.around)
        try:
            plan = plan_of(store, self._reading)
            self._store.give_way(store)
        except (OSError, StoreError):
            store.abandon()
            raise
        self._own, self._store, self._looker = OwnPlan(plan), store, None
        self._last_press = "the changed version kept"
        self._say_if_astray()
