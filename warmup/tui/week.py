"""A week: its mornings with what opens on each, what to gather, and a tick for each level's own lesson."""

import textwrap
from collections.abc import Iterator
from typing import ClassVar, NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.content import Content
from textual.widgets import OptionList, Static

from warmup.model import LevelId
from warmup.schoolyear import WEEKS
from warmup.session.lessons import turn_tick, would_say
from warmup.session.pausing import paused, until_words
from warmup.session.week import MAY_CHANGE, Day, Group, New, WeekPage, Weeks, When
from warmup.session.words import SMALL_THINGS
from warmup.tui.actions import BY_ID, State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import LOW, Page
from warmup.tui.script import cut
from warmup.tui.workspace import Workspace

_INDENT = "   "
_TALL = 30
"""From so many rows on the list has air above what is to be had ready."""


class Row(NamedTuple):
    """A line of the list, or a few that stay together; ``new`` is the level whose tick it has."""

    words: Content
    new: New | None = None


class WeekScreen(Page[None]):
    """The page of a week, this one at first; the weeks before and after by a key."""

    CSS_PATH: ClassVar = ["page.tcss", "week.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.SCHOOL_WEEK,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {
        "week_before": "",
        "week_after": "",
        "undo": "",
        "leave": "back",
        "help": "",
        "quit": "",
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.context.forget()
        self._weeks = Weeks(work.context)
        self._page = self._weeks.page(self._weeks.this_week)
        self._rows: list[Row] = []
        self._list = OptionList(id="list", markup=False, compact=True)

    def heading(self) -> str:
        """Which week it is."""
        return " · ".join(self._page.parts())

    def body(self) -> ComposeResult:
        """What is not settled yet; the list; what its key does to the line under the cursor."""
        yield Static("", id="aside", markup=False)
        yield self._list
        yield More(self._list)
        yield Static("", id="tick")

    def show(self) -> None:
        """The week as it stands now."""
        super().show()
        if not self._list.is_attached:
            return
        self.query_one("#heading", Static).update(self.heading())
        self._show_aside()
        rows = list(_rows(self._page, self.room, airy=self.size.height >= _TALL))
        if rows != self._rows:
            before, self._rows = self._under_cursor(), rows
            self._list.clear_options()
            self._list.add_options([row.words for row in rows])
            self._list.highlighted = _cursor(rows, before)
        self._say_what_it_does()

    def _show_aside(self) -> None:
        """That nothing new comes, or where there are rows for it that what is to come may change."""
        until = paused(self.work.context)
        said = until_words(until) if until else MAY_CHANGE if self.size.height >= LOW else ""
        aside = self.query_one("#aside", Static)
        aside.update(said)
        aside.display = bool(said) and self._page.distance >= 0

    @on(OptionList.OptionHighlighted)
    def _say_what_it_does(self) -> None:
        row = self._under_cursor()
        key = f"[@click=screen.do('lesson')][b $key]{BY_ID['lesson'].key(self.work.hand)}[/] "
        self.query_one("#tick", Static).update(f"{key}{would_say(row.lesson)}[/]" if row else "")

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.do("lesson")

    def _under_cursor(self) -> New | None:
        at = self._list.highlighted
        return self._rows[at].new if at is not None and at < len(self._rows) else None

    def act(self, action: str) -> None:
        """Go up and down and from week to week, turn a tick, undo, or leave."""
        match action:
            case "week_before":
                self._turn_to(max(1, self._page.week - 1))
            case "week_after":
                self._turn_to(min(WEEKS, self._page.week + 1))
            case "lesson" if row := self._under_cursor():
                turned = turn_tick(row, self.work.context)
                self.work.keep(turned.what, turned.work, **turned.about)
                self.work.said = turned.said
                self._look_again()
            case "undo":
                self.work.undo()
                self._look_again()
            case "leave":
                self.leave()

    def _turn_to(self, week: int) -> None:
        if week != self._page.week:
            self._page = self._weeks.page(week)
            self._list.highlighted = None

    def _look_again(self) -> None:
        """The same week after something has changed; what stood on its page stays there for now."""
        stood: list[LevelId] = [row.level for row in self._page.new]
        self.work.context.forget()
        self._weeks = Weeks(self.work.context)
        self._page = self._weeks.page(self._page.week, stood)


def _cursor(rows: list[Row], before: New | None) -> int:
    """Where the cursor stands: on the level it stood on, else on the first there is."""
    levels = [(at, row.new.level) for at, row in enumerate(rows) if row.new]
    same = (at for at, level in levels if before and level == before.level)
    return next(same, levels[0][0] if levels else 0)


def _rows(page: WeekPage, room: int, *, airy: bool) -> Iterator[Row]:
    """The list in ``room`` columns: each day with what is new on it, then what to have ready."""
    for group in page.groups():
        yield Row(_heading(group))
        indent = f"{_INDENT}New: " if group.day else _INDENT
        for new in group.new:
            behind = new.words()[len(new.named()) :]
            name = cut(new.named(), room - len(indent) - len(behind))
            yield Row(Content.assemble(indent, name, (behind, "bold")), new)
        if group.day and group.day.reviewed:
            yield Row(Content(_wrapped(f"Review: {group.day.review_words()}", room)))
    wanted, handy = page.things
    for label, things in (("To have ready", wanted), (f"If at hand{', too' * bool(wanted)}", handy)):
        if things:
            yield Row(Content.styled("\n" * airy + label, "bold"))
        for day, names in page.by_day(things):
            yield Row(Content(_wrapped(f"{day[0].upper()}{day[1:]}: {names}", room)))
    if page.small_things:
        yield Row(Content.styled("\n" * airy + textwrap.fill(SMALL_THINGS, room), "bold"))


def _heading(group: Group) -> Content:
    match group.day:
        case Day(when=When.PAST | When.OFF as when):
            return Content.styled(f"{group.heading} · {when.value}", "$quiet")
        case Day(when=When.TODAY as when):
            return Content.styled(f"{group.heading} · {when.value}", "bold $here")
        case Day(when=when):
            return Content.styled(f"{group.heading} · {when.value}", "bold")
        case None:
            return Content.styled(group.heading, "bold")


def _wrapped(text: str, room: int) -> str:
    return textwrap.fill(
        text, room, initial_indent=_INDENT, subsequent_indent=_INDENT, break_on_hyphens=False
    )
