"""The command palette: the same actions, found by typing a part of their names."""

from __future__ import annotations

from functools import partial

from textual.command import DiscoveryHit, Hit, Hits, Provider
from textual.content import Content

from tracker.screens.actions import ACTIONS, Action
from tracker.screens.work import WorkScreen


class Actions(Provider):
    """Offers every action while the work screen is beneath."""

    async def discover(self) -> Hits:
        """All of them, before anything is typed."""
        for action in self._offered():
            title = Content(action.title)
            yield DiscoveryHit(title, self._doing(action), text=action.title, help=action.help)

    async def search(self, query: str) -> Hits:
        """Those whose title fits."""
        matcher = self.matcher(query)
        for action in self._offered():
            score = matcher.match(action.title)
            if score > 0:
                shown = matcher.highlight(action.title)
                yield Hit(score, shown, self._doing(action), text=action.title, help=action.help)

    def _offered(self) -> list[Action]:
        if not isinstance(self.screen, WorkScreen):
            return []
        return [action for action in ACTIONS if action.name != "palette"]

    def _doing(self, action: Action) -> partial[None]:
        assert isinstance(self.screen, WorkScreen)
        return partial(self.screen.action_act, action.name)
