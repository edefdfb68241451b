"""Missed mornings: were they school, or off? Up to four by day; of five or more one question first."""

import datetime as dt
from functools import partial
from typing import ClassVar, NamedTuple

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal
from textual.coordinate import Coordinate
from textual.widgets import Button, DataTable, Static

from warmup.english import WEEKDAYS, date_words
from warmup.session import missed
from warmup.session.missed import Missed, Talk
from warmup.tui.actions import BY_ID, State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, show_cursor
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_WEEK, _LONG_WEEK, _DAY, _LONG_DAY = 8, 16, 7, 12
"""The cells of the first column with the Monday of a week and of an answer, each short and long."""
_STEPS = {
    "week_less": "left",
    "week_more": "right",
    "day_up": "up",
    "day_down": "down",
    "day_left": "left",
    "day_right": "right",
}
"""The steps of the talk that are called otherwise than their actions."""


class Layout(NamedTuple):
    """Which days stand in each row, by their places: a calendar week to a row, or a day; and the weekdays."""

    rows: tuple[tuple[int, ...], ...]
    weekdays: tuple[int, ...]
    by_week: bool


def layout(days: Missed, width: int) -> Layout:
    """A calendar week to a row where that has room in ``width`` cells, else a day."""
    weekdays = tuple(sorted({day.weekday() for day in days.days}))
    if len(weekdays) * _DAY + _WEEK <= width:
        return Layout(days.by_week(), weekdays, by_week=True)
    return Layout(tuple((at,) for at in range(len(days.days))), weekdays, by_week=False)


class DaysScreen(Page[tuple[dt.date, ...]]):
    """Asks of the mornings that were missed. Its result is those that were off."""

    CSS_PATH: ClassVar = ["page.tcss", "days.tcss"]
    AUTO_FOCUS = "#days"
    STATES = (State.WEEK, State.DAYS)
    FOOT: ClassVar = {
        **dict.fromkeys(("week_less", "week_more", "here", "by_day"), ""),
        **dict.fromkeys(("change", "all_off", "all_school", "answered", "question"), ""),
        **dict.fromkeys(("undo", "help", "quit"), ""),
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]
    ASKS_AT_MIDNIGHT = False

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        context = work.context
        self.talk = missed.begin(
            Missed(context.family, context.child, context.today, context.unconfirmed_days())
        )
        self._before: list[Talk] = []
        self._layout = Layout((), (), by_week=False)
        self._shown: dict[Coordinate, str] = {}
        self._table: DataTable[Text] = DataTable(id="days", cursor_type="cell", cell_padding=0)

    @property
    def state(self) -> State:
        """The one question, or each day."""
        return State.WEEK if self.talk.asking else State.DAYS

    def heading(self) -> str:
        """What is asked."""
        return self.talk.question

    def body(self) -> ComposeResult:
        """The question with its week, or the days; one of them shows."""
        yield Static(missed.WHERE_NOW, id="question", markup=False)
        with Horizontal(id="week"):
            yield _arrow("‹", "week_less")
            yield Static("", id="in_week", markup=False)
            yield _arrow("›", "week_more")
            yield Static("", id="place", markup=False)
        yield self._table
        yield More(self._table, fixed=1, show_cursor=partial(show_cursor, self._table))
        yield Static("", id="today", markup=False)

    def on_resize(self, event: events.Resize) -> None:
        """Lay the days out for this width."""
        super().on_resize(event)
        self._lay_out(self.room)
        self.show()

    def _lay_out(self, width: int) -> None:
        days = self.talk.missed
        self._layout, self._shown = layout(days, width), {}
        rows, weekdays, by_week = self._layout
        airy = _LONG_WEEK + len(weekdays) * _LONG_DAY <= width
        table = self._table.clear(columns=True)
        if by_week:
            table.add_column("week of", width=_LONG_WEEK if airy else _WEEK)
            for weekday in weekdays:
                table.add_column(
                    f" {WEEKDAYS[weekday][: None if airy else 3]}", width=_LONG_DAY if airy else _DAY
                )
        else:
            table.add_column("morning", width=_LONG_DAY)
            table.add_column("", width=_LONG_DAY)
        for places in rows:
            first = days.days[places[0]]
            monday = first - dt.timedelta(first.weekday())
            named = (
                date_words(monday, weekday=False, short=not airy)
                if by_week
                else date_words(first, short=True)
            )
            table.add_row(Text(named), *[Text()] * (len(table.columns) - 1))

    def show(self) -> None:
        """What was said of each morning, and what that makes of today."""
        super().show()
        if not self._layout.rows:
            return  # Nothing is laid out before the screen has its size.
        talk = self.talk
        self.set_class(talk.asking, "asking")
        self.query_one("#heading", Static).update(self.heading())
        place = talk.missed.today_words(talk.off)
        self.query_one("#in_week", Static).update(f"week {talk.week}")
        self.query_one("#place", Static).update(place.partition(",")[0])
        self.query_one("#today", Static).update(f"Today: {place}.")
        for at in range(len(talk.answers)):
            cell, words = self._cell(at), _answer(talk, at)
            if self._shown.get(cell) != words:
                self._shown[cell] = words
                self._table.update_cell_at(cell, Text(words))
        self._table.cursor_coordinate = self._cell(talk.cursor)
        self.set_focus(None if talk.asking else self._table)
        self.refresh_bindings()

    def _cell(self, at: int) -> Coordinate:
        """Where a day stands in the table."""
        row = next(n for n, places in enumerate(self._layout.rows) if at in places)
        if not self._layout.by_week:
            return Coordinate(row, 1)
        return Coordinate(row, 1 + self._layout.weekdays.index(self.talk.missed.days[at].weekday()))

    # -- what the keys do

    def belongs(self, action: str) -> bool:
        """Few mornings are never one question."""
        return super().belongs(action) and (action != "question" or len(self.talk.answers) >= missed.MANY)

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """The keys of the other state are none here."""
        return action != "do" or self.belongs(str(parameters[0]))

    def open_help(self) -> None:
        """What the two answers mean, in a line."""
        self.work.said = missed.TELLS

    def act(self, action: str) -> None:
        """One step, or the end of it."""
        match action:
            case "undo":
                self._undo()
            case "here" | "answered":
                self._take()
            case _:
                self._step(_STEPS.get(action, action))

    def _step(self, what: str) -> None:
        after = self.talk.step(what, self._layout.rows)
        if (after.answers, after.week, after.asking) != (self.talk.answers, self.talk.week, self.talk.asking):
            self._before.append(self.talk)
        self.talk = after

    def _undo(self) -> None:
        if self._before:
            self.talk = self._before.pop()
        else:
            self.work.said = "Nothing to undo."

    def _take(self) -> None:
        if left := self.talk.open_still:
            self.work.said = f"{left} not answered yet. {_named('all_school')} {_named('all_off')}"
            self.talk = self.talk.step("first_open", ())
        else:
            self.leave(self.talk.off)

    @on(DataTable.CellHighlighted)
    @on(DataTable.CellSelected)
    def _click(self, event: DataTable.CellHighlighted | DataTable.CellSelected) -> None:
        """A click on a day changes it; keys have moved the cursor of the talk before that of the table."""
        there = self._table.cursor_coordinate
        if isinstance(event, DataTable.CellHighlighted) and there == self._cell(self.talk.cursor):
            return
        for at in range(len(self.talk.answers)):
            if self._cell(at) == there:
                self.talk = self.talk._replace(cursor=at)
                self.do("change")
                return
        self.show()

    @on(Button.Pressed)
    def _turn_week(self, event: Button.Pressed) -> None:
        self.do(event.button.id or "")


def _arrow(glyph: str, action: str) -> Button:
    arrow = Button(glyph, id=action, compact=True, tooltip=BY_ID[action].help)
    arrow.can_focus = False
    return arrow


def _named(action: str) -> str:
    return f"‹{action}›: {BY_ID[action].label}."


def _answer(talk: Talk, at: int) -> str:
    answer = talk.answers[at]
    word = "?" if answer is None else "off" if answer else "school"
    return f"›{word}" if at == talk.cursor else f" {word}"
