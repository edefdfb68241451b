"""A day of the year in its month: what it is, and days off, extra mornings and days to look forward to."""

import calendar
import datetime as dt
from functools import partial
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.coordinate import Coordinate
from textual.widgets import DataTable, Static

from warmup.english import MONTHS, WEEKDAYS, date_words
from warmup.session import year_changes
from warmup.session.yearview import (
    DayMark,
    asked_by_day,
    countdown_days,
    day_mark,
    day_view,
    rules_on,
)
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, show_cursor
from warmup.tui.page import LOW, Page
from warmup.tui.paint import look_of, palette
from warmup.tui.script import Tone
from warmup.tui.workspace import Workspace

_STEPS = {"day_before": -1, "day_after": 1, "days_back": -7, "days_on": 7}
"""How many days each of these goes on."""
_MARGIN = dt.timedelta(62)
"""So far before and after the year there are days to look at."""
_CELL = 5
_DAY = dt.timedelta(1)
_COUNTED = "*"
"""Stands behind a day to look forward to."""
LEGEND = (
    f"{DayMark.PAST.value} school  {DayMark.TODAY.value} today  {DayMark.AHEAD.value} to come  "
    f"{DayMark.OFF.value} off  {_COUNTED} look forward"
)


class YearDayScreen(Page[None]):
    """The month with one day of it under the cursor, and what that is. Weeks begin on Sunday."""

    CSS_PATH: ClassVar = ["page.tcss", "year_day.tcss"]
    AUTO_FOCUS = "#month"
    STATES = (State.YEAR_DAY,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {
        **dict.fromkeys(("turn_days", "from_day", "countdown", "day_before", "day_after"), ""),
        **{"undo": "", "leave": "back", "help": "", "quit": ""},
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, date: dt.date) -> None:
        super().__init__(work)
        self._date = date
        self._from: dt.date | None = None
        self._asked = asked_by_day(work.context)
        self._month: tuple[int, int] = (0, 0)
        self._table: DataTable[Text] = DataTable(id="month", cursor_type="cell", cell_padding=0)

    def heading(self) -> str:
        """The date."""
        return day_view(self.work.context, self._date, self._asked).heading

    def body(self) -> ComposeResult:
        """The month; what the day is; the days that are chosen."""
        yield Static("", id="named", markup=False)
        yield self._table
        yield More(self._table, fixed=1, show_cursor=partial(show_cursor, self._table))
        yield Static("", id="about", markup=False)
        yield Static("", id="chosen", markup=False)
        yield Static(LEGEND, id="legend", markup=False)

    def on_mount(self) -> None:
        """The columns stay: a weekday each."""
        for weekday in (6, *range(6)):
            self._table.add_column(f" {WEEKDAYS[weekday][:3]}", width=_CELL)
        super().on_mount()

    # -- what is on screen

    @property
    def _ends(self) -> tuple[dt.date, dt.date]:
        """The days that are chosen, in order."""
        start = self._from or self._date
        return min(start, self._date), max(start, self._date)

    def foot(self) -> dict[str, str]:
        """Each key as it is called on this day."""
        named = bool(rules_on(self.work.context.family, self._date))
        labels = {
            "turn_days": year_changes.does_to(self.work.context, *self._ends),
            "from_day": "just one day" if self._from else "from this day",
            "countdown": "its name" if named else "look forward",
        }
        low = self.app.size.height < LOW
        left_out = ("quit", "undo", "day_before", "day_after") if low else ()
        return {
            name: label or labels.get(name, "")
            for name, label in super().foot().items()
            if name not in left_out and labels.get(name) != ""
        }

    def show(self) -> None:
        """The month and the day as they stand now."""
        super().show()
        if self not in self.app.screen_stack or not self._table.columns:
            return
        view = day_view(self.work.context, self._date, self._asked)
        first, last = self._ends
        self.query_one("#heading", Static).update(view.heading)
        self.query_one("#named", Static).update(f"{MONTHS[self._date.month - 1]} {self._date.year}")
        self.query_one("#about", Static).update("\n".join(view.lines()))
        chosen = " to ".join(date_words(day, weekday=False) for day in (first, last))
        place = self.query_one("#chosen", Static)
        place.update(f"Chosen: {chosen}.")
        place.display = self._from is not None
        self._fill()
        self._table.cursor_coordinate = self._place(self._date)

    def _weeks(self) -> list[list[dt.date]]:
        return calendar.Calendar(firstweekday=6).monthdatescalendar(self._date.year, self._date.month)

    def _fill(self) -> None:
        weeks, month = self._weeks(), (self._date.year, self._date.month)
        if month != self._month:
            self._month = month
            self._table.clear()
            for _ in weeks:
                self._table.add_row(*[Text()] * 7)
        counted = countdown_days(self.work.context.family, weeks[0][0], weeks[-1][-1])
        for row, days in enumerate(weeks):
            for column, day in enumerate(days):
                self._table.update_cell_at(Coordinate(row, column), self._cell(day, counted=day in counted))

    def _cell(self, day: dt.date, *, counted: bool) -> Text:
        if day.month != self._date.month:
            return Text()
        context = self.work.context
        first, last = self._ends
        tones = palette(look_of(self.app.theme)).tones
        chosen = self._from is not None and first <= day <= last
        before = "›" if day == self._date else "·" if chosen else " "
        tone = Tone.HERE if day == context.today else Tone.STRONG if chosen else Tone.PLAIN
        behind = f"{_mark(self.work, day)}{_COUNTED * counted}"
        return Text(f"{before}{day.day:>2}{behind}", tones[tone], no_wrap=True)

    def _place(self, day: dt.date) -> Coordinate:
        return next(Coordinate(row, days.index(day)) for row, days in enumerate(self._weeks()) if day in days)

    # -- what the keys do

    def act(self, action: str) -> None:
        """Go to another day, change this one or those that are chosen, or leave."""
        context = self.work.context
        match action:
            case "day_before" | "day_after" | "days_back" | "days_on":
                self._go(self._date + _STEPS[action] * _DAY)
            case "from_day":
                self._from = None if self._from else self._date
            case "turn_days":
                self.work.change(year_changes.turn_days(context, *self._ends))
                self._from = None
            case "countdown":
                from warmup.tui.countdown import CountdownScreen

                self.open(CountdownScreen(self.work, self._date), self._named)
            case "undo":
                self.work.undo()
            case "leave" if self._from:
                self._from = None
            case "leave":
                self.leave()

    def _named(self, name: str | None) -> None:
        if name is not None:
            self.attempt(lambda: self.work.change(year_changes.name_day(self.work.context, self._date, name)))

    def _go(self, date: dt.date) -> None:
        mornings = self.work.context.year.mornings or (self._date,)
        self._date = max(mornings[0] - _MARGIN, min(mornings[-1] + _MARGIN, date))

    @on(DataTable.CellHighlighted)
    def _click(self) -> None:
        """A click on a day goes there; keys have moved the day before the cursor of the table."""
        there = self._table.cursor_coordinate
        day = self._weeks()[there.row][there.column]
        if day != self._date and day.month == self._date.month:
            self._date = day
            self.guarded(lambda: None)
        else:
            self._table.cursor_coordinate = self._place(self._date)


def _mark(work: Workspace, day: dt.date) -> str:
    """The mark of a school weekday in the year, or of a morning besides; nothing for other days."""
    year, today = work.context.year, work.context.today
    if not year.mornings or not year.mornings[0] <= day <= year.mornings[-1]:
        return " "
    school = day in year.between(day, day + _DAY)
    if not school and day.weekday() not in year.weekdays and day != today:
        return " "
    return day_mark(day, today, school=school).value
