"""A week of the year: its days, its levels and how they stand, and what can be done about either."""

import datetime as dt
from collections.abc import Sequence
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from warmup.english import date_words
from warmup.model import is_own
from warmup.session import year_changes
from warmup.session.words import SMALL_THINGS, has_small_things
from warmup.session.yearview import (
    DayMark,
    LevelState,
    PlannedLevel,
    WeekDay,
    WeekRow,
    levels_in,
    objects,
    year_view,
)
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import LOW, Page
from warmup.tui.workspace import Workspace

_OF_A_LEVEL = frozenset({"early", "hold_level", "move_level"})
_WORDS = {
    DayMark.PAST: "past",
    DayMark.TODAY: "today",
    DayMark.AHEAD: "to come",
    DayMark.OFF: "day off",
    DayMark.FREE: "today, no school",
}
Line = WeekDay | PlannedLevel


class YearWeekScreen(Page[None]):
    """The days above the levels, one line of them under the cursor."""

    CSS_PATH: ClassVar = ["page.tcss", "year_week.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.YEAR_WEEK,)
    FITS_ITS_ROOM = True
    FOOT: ClassVar = {
        **dict.fromkeys(("zoom", "early", "hold_level", "move_level"), ""),
        **dict.fromkeys(("hold_week", "free_week", "in_week", "undo"), ""),
        **{"leave": "back", "help": "", "quit": ""},
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, week: int, again: int = 0) -> None:
        super().__init__(work)
        self._week, self._again = week, again
        self._lines: tuple[Line, ...] = ()
        self._row = self._read()
        self._list = OptionList(id="list", markup=False, compact=True)

    def _read(self) -> WeekRow:
        view = year_view(self.work.context)
        return view.rows[view.place_of(self._week, self._again)]

    def heading(self) -> str:
        """The week in words."""
        return self._row.told()

    def body(self) -> ComposeResult:
        """The list, and what to have ready."""
        yield self._list
        yield More(self._list)
        yield Static("", id="objects", markup=False)

    def foot(self) -> dict[str, str]:
        """The keys of the line under the cursor, each as it is called there."""
        level, context = self.level, self.work.context
        labels = {"zoom": "open"}
        left_out = ["quit", "undo"] if self.app.size.height < LOW else []
        if not year_changes.can_free(context, self._week):
            left_out.append("free_week")
        if level:
            early = level.level in context.child.opened
            labels |= {"early": "not early"} if early else {}
            labels |= {"hold_level": "let it come"} if level.state is LevelState.HELD else {}
            left_out += ["zoom"] if early or level.state is not LevelState.OPEN else ["zoom", "early"]
        return {
            name: label or labels.get(name, "")
            for name, label in super().foot().items()
            if name not in left_out
        }

    def show(self) -> None:
        """The lines as they stand now."""
        super().show()
        if self not in self.app.screen_stack or not self._list.is_attached:
            return
        self._row = self._read()
        levels = levels_in(self.work.context, self._week)
        lines: tuple[Line, ...] = (*self._row.days, *levels)
        if lines != self._lines:
            at, self._lines = self._list.highlighted, lines
            self._list.clear_options()
            self._list.add_options([Option(_line(each), id=str(n)) for n, each in enumerate(lines)])
            at = _today(lines) if at is None else at
            self._list.highlighted = min(at, len(lines) - 1) if lines else None
        self.query_one("#heading", Static).update(self.heading())
        named = objects(levels)
        place = self.query_one("#objects", Static)
        warned = f"\n{SMALL_THINGS}" if has_small_things(named) else ""
        place.update(f"To have ready: {named}{warned}" if named else "")
        place.display = bool(named) and self.app.size.height >= LOW

    @property
    def line(self) -> Line | None:
        """What is under the cursor."""
        at = self._list.highlighted
        return self._lines[at] if at is not None and at < len(self._lines) else None

    @property
    def level(self) -> PlannedLevel | None:
        """The level under the cursor."""
        return self.line if isinstance(self.line, PlannedLevel) else None

    # -- what the keys do

    def belongs(self, action: str) -> bool:
        """Some keys do something to a level alone."""
        return super().belongs(action) and (action not in _OF_A_LEVEL or self.level is not None)

    def act(self, action: str) -> None:
        """Go up and down, open the line, change the week or the level, or leave."""
        context, level = self.work.context, self.level
        match action:
            case "zoom":
                self._open()
            case "hold_week":
                self.work.change(year_changes.hold_week(context, self._week))
            case "free_week":
                self.work.change(year_changes.free_week(context, self._week))
            case "in_week":
                self.work.change(year_changes.in_week(context, self._week))
            case "early" if level:
                self.work.change(year_changes.turn_early(context, level.level))
            case "hold_level" if level:
                self.work.change(year_changes.turn_held(context, level.level))
            case "move_level":
                self._open()
            case "undo":
                self.work.undo()
            case "return" | "leave":
                self.leave()

    def _open(self) -> None:
        match self.line:
            case WeekDay(date):
                self._open_day(date)
            case PlannedLevel(level) if is_own(level):
                self.work.change(year_changes.move_level(self.work.context, level, self._week))
            case PlannedLevel(level):
                from warmup.tui.move_level import MoveLevelScreen

                self.open(MoveLevelScreen(self.work, level))

    def _open_day(self, date: dt.date) -> None:
        from warmup.tui.year_day import YearDayScreen

        self.open(YearDayScreen(self.work, date))

    @on(OptionList.OptionHighlighted)
    def _other_line(self) -> None:
        super().show()

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        """A click on a day opens it; one on a level puts the cursor there, whose keys stand at the foot."""
        if self.level is None:
            self.do("zoom")


def _today(lines: Sequence[Line]) -> int:
    """The place of today's line, where the cursor is at first; in any other week the first line."""
    days = (DayMark.TODAY, DayMark.FREE)
    return next((n for n, each in enumerate(lines) if isinstance(each, WeekDay) and each.mark in days), 0)


def _line(line: Line) -> Text:
    match line:
        case WeekDay(date, mark):
            return Text(f"{mark.value} {date_words(date)}, {_WORDS[mark]}")
        case PlannedLevel():
            return Text(f"{line.state.value}: {line.named}")
