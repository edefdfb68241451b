"""The year: its weeks by quarter, where today stands, and what each of them is."""

from functools import partial
from typing import ClassVar

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.coordinate import Coordinate
from textual.widgets import DataTable, Static

from warmup.english import date_words
from warmup.schoolyear import WEEKS_A_QUARTER
from warmup.session import year_changes
from warmup.session.yearview import DayMark, WeekRow, WeekState, YearView, year_view
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, center, show_cursor
from warmup.tui.page import LOW, NARROW, Page
from warmup.tui.paint import look_of, palette
from warmup.tui.script import Tone
from warmup.tui.workspace import Workspace

LEGEND = "  ".join(
    f"{mark.value} {words}"
    for mark, words in (
        (DayMark.PAST, "past"),
        (DayMark.TODAY, "today"),
        (DayMark.AHEAD, "to come"),
        (DayMark.OFF, "off"),
        (DayMark.FREE, "today, off"),
    )
)
GRID_LEGEND = f"{LEGEND}  +3 new  R review  = again"
_QUARTERS = 4
_SHORT_DATE, _DATE, _GAP = 5, 6, 2
"""The cells of "12/28", of "Dec 28", and between two columns that have room."""


class YearScreen(Page[None]):
    """A quarter to a column where that has room, else a list; one week under the cursor."""

    CSS_PATH: ClassVar = ["page.tcss", "year.tcss"]
    AUTO_FOCUS = "#weeks"
    STATES = (State.YEAR,)
    FOOT: ClassVar = {
        **dict.fromkeys(("zoom", "hold_week", "free_week", "in_week", "undo"), ""),
        **{"leave": "back", "help": "", "quit": ""},
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.context.forget()
        self._see(year_view(work.context))
        self._at = self._view.now
        self._width = 0
        self._laid_out: tuple[object, ...] = ()
        self._shown: dict[Coordinate, Text] = {}
        self._table: DataTable[Text] = DataTable(id="weeks", cursor_type="cell", cell_padding=0)

    def heading(self) -> str:
        """The last day of the year."""
        last = self._view.last
        named = f": last day {date_words(last, weekday=False, year=True)}" if last else ""
        return f"The year{named}"

    def body(self) -> ComposeResult:
        """The weeks; the one under the cursor in words; what the marks are."""
        yield self._table
        yield More(self._table, fixed=1, show_cursor=partial(show_cursor, self._table))
        yield Static("", id="about", markup=False)
        yield Static("", id="legend", markup=False)

    def foot(self) -> dict[str, str]:
        """At low sizes the help has the rest."""
        left_out = ["quit", "undo"] if self.app.size.height < LOW else []
        if not year_changes.can_free(self.work.context, self.week.week):
            left_out.append("free_week")
        return {name: label for name, label in super().foot().items() if name not in left_out}

    def on_resize(self, event: events.Resize) -> None:
        """Lay the weeks out for this width."""
        super().on_resize(event)
        self._width = self.room
        self.show()

    # -- what is on screen

    @property
    def week(self) -> WeekRow:
        """The week under the cursor."""
        return self._view.rows[self._at]

    def show(self) -> None:
        """The weeks as they stand now."""
        super().show()
        if not self._width or self not in self.app.screen_stack:
            return
        week = self.week
        self._see(year_view(self.work.context))
        self._at = self._view.place_of(week.week, week.again)
        self._lay_out()
        for at, row in enumerate(self._view.rows):
            place, cell = self._place(at), self._cell(at, row)
            if self._shown.get(place) != cell:
                self._shown[place] = cell
                self._table.update_cell_at(place, cell)
        self._table.cursor_coordinate = self._place(self._at)
        self.query_one("#heading", Static).update(self.heading())
        self.query_one("#about", Static).update(self.week.told())
        self.query_one("#legend", Static).update(GRID_LEGEND if self._grid else LEGEND)

    def _quarters(self) -> list[list[int]]:
        """The places of the weeks, a quarter of the lessons together."""
        columns: list[list[int]] = [[] for _ in range(_QUARTERS)]
        for at, row in enumerate(self._view.rows):
            columns[(row.week - 1) // WEEKS_A_QUARTER].append(at)
        return columns

    def _see(self, view: YearView) -> None:
        """Hold the year as it is now, and the cells of its longest row of marks: every cell asks for them."""
        self._view = view
        self._marks = max(len(row.marks()) for row in view.rows)

    def _needs(self, date: int) -> int:
        """The cells of a week in a column: "›19=■■▣□– 12/28 +3"."""
        return 4 + date + 1 + self._marks + 1 + 2

    @property
    def _grid(self) -> bool:
        return self._width // _QUARTERS >= self._needs(_SHORT_DATE)

    def _lay_out(self) -> None:
        columns = self._quarters() if self._grid else [[*range(len(self._view.rows))]]
        now = tuple(map(tuple, columns)), self._width
        if now == self._laid_out:
            return
        self._laid_out, self._shown = now, {}
        table = self._table.clear(columns=True)
        table.show_header = self._grid
        if self._grid:
            for number in range(1, _QUARTERS + 1):
                table.add_column(f" Quarter {number}", width=self._width // _QUARTERS)
        else:
            table.add_column(" week", width=self._width)
        for _ in range(max(map(len, columns))):
            table.add_row(*[Text()] * len(columns))
        center(table, self._place(self._at).row)

    def _place(self, at: int) -> Coordinate:
        """Where a week stands in the table."""
        if not self._grid:
            return Coordinate(at, 0)
        quarter = (self._view.rows[at].week - 1) // WEEKS_A_QUARTER
        return Coordinate(self._quarters()[quarter].index(at), quarter)

    def _cell(self, at: int, row: WeekRow) -> Text:
        tones = palette(look_of(self.app.theme)).tones
        tone = Tone.PLAIN
        if row.state is WeekState.NOW:
            tone = Tone.HERE
        elif row.state is not WeekState.AHEAD:
            tone = Tone.QUIET
        cursor = "›" if at == self._at else " "
        said = self._in_grid(row) if self._grid else self._in_list(row)
        return Text(f"{cursor}{said}", tones[tone], no_wrap=True)

    def _in_grid(self, row: WeekRow) -> str:
        new = " R" if row.review else f"+{row.opens}" if row.opens else ""
        number = f"{row.week:>2}{'=' if row.again else ' '}"
        if not row.mornings:
            return f"{number}{'skipped' if row.state is WeekState.SKIPPED else 'before'}"
        first = row.mornings[0]
        airy = self._width // _QUARTERS >= self._needs(_DATE) + _GAP
        date = date_words(first, weekday=False, short=True) if airy else f"{first.month}/{first.day}"
        return f"{number}{row.marks():<{self._marks}} {date:<{_DATE if airy else _SHORT_DATE}} {new}"

    def _in_list(self, row: WeekRow) -> str:
        wide = self._width >= NARROW
        name = f"{row.name:<14}" if wide else f"{row.week:>2}{'=' if row.again else ' '}"
        off = f"{row.off} off" if row.off and wide else ""
        quarter = (row.week - 1) // WEEKS_A_QUARTER + 1 if row.week % WEEKS_A_QUARTER == 1 else 0
        begins = (f"quarter {quarter}" if wide else f"Q{quarter}") if quarter and not row.again else ""
        said = f"{name}{row.marks():<{self._marks}} {row.dates():<16}  {row.new():<6}"
        return f"{said} {begins or off}".rstrip()

    # -- what the keys do

    def act(self, action: str) -> None:
        """Go about, open a week, or change one."""
        context, week = self.work.context, self.week.week
        match action:
            case "line_up" | "line_down":
                self._go(self._at + (1 if action == "line_down" else -1))
            case "column_left" | "column_right":
                self._turn(1 if action == "column_right" else -1)
            case "zoom":
                from warmup.tui.year_week import YearWeekScreen

                self.open(YearWeekScreen(self.work, self.week.week, self.week.again))
            case "hold_week":
                self.work.change(year_changes.hold_week(context, week))
            case "free_week":
                self.work.change(year_changes.free_week(context, week))
            case "in_week":
                self.work.change(year_changes.in_week(context, week))
            case "undo":
                self.work.undo()
            case "leave":
                self.leave()

    def _go(self, at: int) -> None:
        self._at = max(0, min(len(self._view.rows) - 1, at))

    def _turn(self, by: int) -> None:
        """To the same place in another quarter."""
        columns = self._quarters()
        quarter = next(n for n, places in enumerate(columns) if self._at in places)
        if 0 <= quarter + by < _QUARTERS:
            row, there = columns[quarter].index(self._at), columns[quarter + by]
            self._at = there[min(row, len(there) - 1)]

    @on(DataTable.CellHighlighted)
    @on(DataTable.CellSelected)
    def _click(self, event: DataTable.CellHighlighted | DataTable.CellSelected) -> None:
        """A click on a week opens it; keys have moved the cursor of the page before that of the table."""
        there = self._table.cursor_coordinate
        if isinstance(event, DataTable.CellHighlighted) and there == self._place(self._at):
            return
        for at in range(len(self._view.rows)):
            if self._place(at) == there:
                self._at = at
                self.do("zoom")
                return
        self.show()
