"""The screens that open from the work screen, and what comes back from them.

What is not needed for the first picture is imported when it is wanted.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from tracker.screens.entry import Asked, Entry
from tracker.session.worksheet import here

if TYPE_CHECKING:
    from textual.screen import Screen

    from tracker.screens.work import WorkScreen


class Doors:
    """Opens them; where they may have changed something, the place is shown anew."""

    def __init__(self, work: WorkScreen) -> None:
        self._work = work
        self._session = work.session
        self._inks = work.inks
        self._told = 0

    @property
    def news(self) -> Sequence[str]:
        """What must be known of the file and was not told yet."""
        return self._session.notices[self._told :]

    def tell(self) -> None:
        """The news, on a page of their own, once."""
        news = self.news
        if news:
            from tracker.screens.pages import Pages
            from tracker.screens.versions import ask_which, ways_on

            self._told += len(news)
            offered = ways_on(self._session)
            if offered:
                ask_which(self._work.app, offered, news, self._inks, self._work.show)
            else:
                self._look(Pages("Your piece", news, self._inks))

    def first(self) -> None:
        """A changed pattern file first; then the card, or what to know before the first stitch."""
        changed = self._session.changed_file()
        if changed is not None:
            from tracker.screens.changed import ask_whether

            ask_whether(self._work.app, self._session, changed, self._inks, self._welcome)
            self._work.show()
        else:
            self._welcome()

    def _welcome(self) -> None:
        if self._session.came_back:
            self.card()
        elif self._session.begun:
            self.before()
        self._work.show()

    def help(self) -> None:
        """The keys."""
        from tracker.screens.help import help_pages

        self._look(help_pages(self._work.keys, self._inks))

    def before(self) -> None:
        """What the pattern says of itself."""
        from tracker.screens.before import before_pages

        work = self._work
        self._look(before_pages(self._session, work.keys, self._inks, work.why_untold))

    def ahead(self) -> None:
        """Time and yarn."""
        from tracker.screens.ahead import ahead_pages

        self._look(ahead_pages(self._session, self._inks))

    def card(self) -> None:
        """What to look at on coming back."""
        from tracker.screens.card import CardScreen

        self._change(CardScreen(self._session, self._inks, self._work.keys))

    def learn(self) -> None:
        """Learning a key."""
        from tracker.screens.learn import Learn

        self._change(Learn(self._work.keys, self._inks))

    def find(self) -> None:
        """Finding an action, which is then done."""
        from tracker.screens.find import Find

        def found(name: str | None) -> None:
            if name is not None:
                self._work.action_act(name)

        self._work.app.push_screen(Find(self._work.keys, self._inks), found)

    def count(self) -> None:
        """A count of the round just worked."""
        self._work.ask(Entry(Asked.COUNT) if self._session.may_count() else None)

    def wrong(self) -> None:
        """Ways to put a wrong count right; where none is, the count is asked for."""
        found = self._session.wrong()
        if found is None:
            self.count()
            return
        from tracker.screens.wrong import choose_remedy

        choose_remedy(self._work.app, self._session, found, self._inks, self._work.ask)

    def note(self) -> None:
        """A note at this place."""
        from tracker.session.memos import LONGEST

        self._write("Note at", "", self._session.note_here(), LONGEST, self._session.note)

    def measure(self) -> None:
        """How long the piece is."""
        from tracker.session.lengths import LONGEST, unit_at

        plan = self._session.plan
        told = f"such as 14.5 {unit_at(plan, here(plan, self._session.state))}; "
        kept = self._session.measured_here()
        self._write("Length at", told, kept, LONGEST, self._session.measure)

    def weigh(self) -> None:
        """What is left of the yarn."""
        from tracker.screens.ahead import weigh

        weigh(self._work.app, self._session, self._inks, self._work.look_aside)

    def improvise(self) -> None:
        """A round worked otherwise than as printed."""
        from tracker.screens.improvise import improvise

        improvise(self._work.app, self._session, self._inks, self._work.show)

    def parts(self) -> None:
        """The parts, one of them to go to."""
        from tracker.screens.parts import choose_part

        def go(part: int, copy: int) -> None:
            self._session.go_to_part(part, copy)
            self._work.show()

        choose_part(self._work.app, self._work.seen, self._inks, go)

    def _look(self, screen: Screen[None]) -> None:
        self._work.app.push_screen(screen)

    def _change(self, screen: Screen[None]) -> None:
        self._work.app.push_screen(screen, lambda _: self._work.show())

    def _write(
        self, title: str, told: str, words: str, most: int, keep: Callable[[str], None]
    ) -> None:
        """Ask for words on this place; ``keep`` is given them."""
        from tracker.screens.written import KEYS, Written

        def written(words: str | None) -> None:
            if words is not None:
                keep(words)
            self._work.show()

        seen = self._work.seen
        head = f"{title} {seen.round_label}, {seen.made} made"
        self._work.app.push_screen(Written(head, told + KEYS, words, most, self._inks), written)
