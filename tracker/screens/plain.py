"""The work line by line, for screen readers and slow lines: a press in, a line out.

The same keys and words as on the work screen; no colour, no cursor movement, nothing drawn.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tracker.pattern.foreword import foreword
from tracker.screens.actions import ACTIONS, BY_NAME, Keys
from tracker.screens.aside import Aside
from tracker.screens.entry import Asked
from tracker.screens.guard import Guard
from tracker.screens.keys import shown
from tracker.screens.plain_numbers import PlainNumbers
from tracker.screens.plain_words import told
from tracker.screens.wrong import looks, remedies
from tracker.session.glance import line
from tracker.session.hints import NO_MARKERS, Markers, hint
from tracker.session.session import Session
from tracker.session.worksheet import here, part_at, round_at

TYPE_CHECKING = False
if TYPE_CHECKING:
    from tracker.screens.caption import Caption
    from tracker.screens.plain_improvise import PlainImprovise
    from tracker.screens.plain_note import PlainNote

SIGNS = {"question_mark": "?", "slash": "/"}
"""Keys that are better told by their sign; the others are spelt out, to be read aloud."""


class PlainWork:
    """Turns each key into the lines that answer it. ``over`` once the piece is put down."""

    def __init__(
        self,
        session: Session,
        keys: Keys,
        *,
        rest: int = 0,
        markers: Markers = NO_MARKERS,
        caption: Caption | None = None,
    ) -> None:
        self.over = False
        self._caption = caption
        self._aside = Aside(session, rest)
        self._said: tuple[str, ...] = ()
        self._notices = 0
        self._session = session
        self._keys = keys
        self._actions = {key: name for name, learnt in keys.items() for key in learnt}
        self._numbers = PlainNumbers(session, keys, self._told)
        self._typing: PlainImprovise | PlainNote | None = None
        self._guard = Guard()
        self._markers = markers
        self._moves = 0
        self._fresh = session.came_back
        self._seen = session.glance()
        self._own: Mapping[str, Callable[[], Iterable[str]]] = {
            "go-round": lambda: self._numbers.ask(Asked.ROUND),
            "go-stitch": lambda: self._numbers.ask(Asked.STITCH),
            "count": self._count,
            "measure": lambda: self._numbers.ask(Asked.LENGTH),
            "ask": self._turn_asking,
            "loops": self._turn_loops,
            "how": lambda: [self._seen.how_to or "nothing is written on how this is made"],
            "before": self._before,
            "weigh": lambda: self._numbers.ask(Asked.GRAMS),
            "ahead": self._ahead,
            "rest": self._turn_rest,
            "parts": lambda: self._numbers.choose_part(self._seen.parts),
            "wrong": self._list_remedies,
            "improvise": self._improvise,
            "note": self._note,
            "guard": lambda: [self._guard.words(self._keys) or "the guard is off"],
            "help": self._help,
            "quit": self._quit,
        }

    def greeting(self) -> Iterable[str]:
        """What is said at first: news of the file, the card after a while, the place."""
        if self._caption is not None:
            self._caption.show(self._seen)
        self._session.look_beside()
        yield from self._of_the_file()
        if self._fresh:
            yield from self._session.card().lines
            yield "Type the stitch you are at if that is not so."
        if self._session.begun:
            yield from self._before()
        yield line(self._seen)
        yield f"{shown(self._keys['help'][0])} lists the keys."
        yield from self._changed_file()

    def _changed_file(self) -> Iterable[str]:
        """A changed pattern file, and a number to type for what to do about it."""
        changed = self._session.changed_file()
        if changed is None:
            return
        from tracker.screens.changed import TITLE, ways_on

        yield f"{TITLE}: {changed.words}"
        yield from self._numbers.choose(ways_on(self._session, changed))

    def press(self, key: str, character: str = "") -> Iterable[str]:
        """The lines that answer a key; none for a key that does nothing."""
        if self._typing is not None:
            return self._type_line(self._typing, key, character)
        name = self._actions.get(key, "")
        if not name:
            return [] if self._guard.on else self._typed(key)
        if not self._guard.lets(name):
            return []
        self._fresh = False
        moves, self._moves = self._moves, 0
        if self._numbers.asking and name in ("next", "back"):
            return self._numbers.type_on(name)
        self._numbers.drop()
        if method := BY_NAME[name].method:
            before = self._session.can_undo
            getattr(self._session, method)()
            self._moves = moves + 1 if self._session.can_undo > before else 0
            return [self._told()]
        deed = self._own.get(name)
        return deed() if deed else [f"{BY_NAME[name].title}: not line by line"]

    def may_repeat(self, key: str) -> bool:
        """Whether a key may come twice in a row: in words, and as a figure of a number."""
        return self._typing is not None or (key.isdecimal() and key not in self._actions)

    def is_next(self, key: str) -> bool:
        """Whether a key is one for next."""
        return self._typing is None and self._actions.get(key) == "next"

    def take_back(self, presses: int) -> Iterable[str]:
        """Take back so many of the last presses, which were a held key's."""
        many = min(presses, self._moves)
        for _ in range(many):
            self._session.undo()
        return [self._told()] if many else []

    def back_instead(self) -> Iterable[str]:
        """The second of two quick presses of next: one back from where the first one began."""
        name = "back" if self._moves else "next"
        if self._moves:
            self._session.undo()
        return self.press(self._keys[name][0])

    def retry(self) -> Iterable[str]:
        """Try again to save what is not saved; says when that is done."""
        before = self._seen.trouble
        self._session.retry()
        self._seen = self._session.glance()
        saved = ["saved now"] if before and not self._seen.trouble else []
        return [*saved, *self._of_the_file(), *self._news()]

    def _of_the_file(self) -> Iterable[str]:
        """What is new of the file; where there are two versions, a number to type for one."""
        news = self._session.notices[self._notices :]
        self._notices += len(news)
        yield from news
        if news and self._session.versions():
            from tracker.screens.versions import TITLE, TOLD, ways_on

            yield f"{TITLE}."
            yield TOLD
            yield from self._numbers.choose(ways_on(self._session))

    def _news(self) -> Iterable[str]:
        """What is told in passing, where it was not told just before."""
        self._aside.look()
        before, self._said = self._said, self._told_aside()
        return [words for words in self._said if words and words not in before]

    def _told_aside(self) -> tuple[str, ...]:
        return (self._aside.care(self._seen, self._keys), *self._aside.words(self._keys))

    def _ahead(self) -> Iterable[str]:
        from tracker.session.ahead_words import NOTHING, lines

        return tuple(lines(self._session.outlook())) or (NOTHING,)

    def _turn_rest(self) -> Iterable[str]:
        said = self._aside.turn_rest()
        self._said = self._told_aside()
        return [said]

    def _typed(self, key: str) -> Iterable[str]:
        """Figures of a number; on coming back it is the place, at the end of a round the count."""
        unasked = Asked.COUNT if self._seen.asking else None
        return self._numbers.typed(key, Asked.STITCH if self._fresh else unasked)

    def _before(self) -> Iterable[str]:
        plan = self._session.plan
        part = part_at(plan, here(plan, self._session.state)).part
        return foreword(plan, part)

    def _turn_asking(self) -> Iterable[str]:
        self._session.set_asking(self._seen.count_asking.after)
        return [self._told()]

    def _turn_loops(self) -> Iterable[str]:
        self._session.show_loops(not self._seen.loops_shown)
        return [self._told()]

    def _count(self) -> Iterable[str]:
        return self._numbers.ask(Asked.COUNT) if self._session.may_count() else [self._told()]

    def _list_remedies(self) -> Iterable[str]:
        found = self._session.wrong()
        if found is None:
            yield from self._count()
            return
        yield " ".join(word for word in (f"{found.words}.", looks(found)) if word)
        yield from self._numbers.choose(remedies(self._session, found))

    def _improvise(self) -> Iterable[str]:
        from tracker.screens.plain_improvise import PlainImprovise

        self._typing = PlainImprovise(self._session)
        return self._typing.greeting()

    def _note(self) -> Iterable[str]:
        from tracker.screens.plain_note import PlainNote

        self._typing = PlainNote(self._session)
        return self._typing.greeting()

    def _type_line(
        self, typing: PlainImprovise | PlainNote, key: str, character: str
    ) -> Iterable[str]:
        yield from typing.press(key, character)
        if typing.over:
            self._typing = None
            yield self._told() if typing.accepted else "left as it was"

    def _help(self) -> Iterable[str]:
        for action in ACTIONS:
            if action.method or action.name in self._own:
                keys = ", ".join(SIGNS.get(key, key) for key in self._keys[action.name])
                yield f"{keys}: {action.title}. {action.help}"

    def _quit(self) -> Iterable[str]:
        self.over = True
        return ["put down", *self._session.parting()]

    def _told(self) -> str:
        """The place after a press, what matters first."""
        before, self._seen = self._seen, self._session.glance()
        if self._caption is not None:
            self._caption.show(self._seen)
        return " · ".join(filter(None, (told(self._seen, before, self._keys), self._hint())))

    def _hint(self) -> str:
        plan, seen = self._session.plan, self._seen
        if seen.making_up:
            return ""
        walk = round_at(plan, here(plan, self._session.state)).walk
        worked = plan.parts[seen.place.part].part.worked
        return hint(walk, seen.place.step, worked, self._markers)
