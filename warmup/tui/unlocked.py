"""What may be asked: what is to be taught again, what this quarter has unlocked, and what is held back."""

from typing import ClassVar, NamedTuple

from rich.text import Text
from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList, Static

from warmup import skills
from warmup.english import date_words
from warmup.model import ItemId
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.pausing import paused, until_words
from warmup.session.unlocked import Unlocked, unlocked_levels
from warmup.tui.actions import BY_ID, State, keys_of
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More, step
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

NOT_ASKED = "open, not asked yet"
_WIDE = 76
"""From so many columns on each level says it; of the one under the cursor it stands below the list."""


class TeachAgain(NamedTuple):
    """One item in that list which rests until it is taught again, or was taught today."""

    item: ItemId
    named: str
    taught: bool

    def words(self, *, wide: bool) -> str:
        """The row as it stands in the list."""
        return f"{'taught again' if self.taught else 'teach again'}: {self.named}"

    def turned(self) -> str:
        """What the key does to it."""
        return "take that back" if self.taught else "it was taught again"


class LevelRow(NamedTuple):
    """One level in the list of what may be asked."""

    at: Unlocked

    def words(self, *, wide: bool) -> str:
        """The row as it stands in the list; only a ``wide`` one has room to say that it was not asked yet."""
        held, fresh = "held back: " * self.at.held, f" · {NOT_ASKED}" * (self.at.fresh and wide)
        return f"week {self.at.week:>2}  {held}{self.named()}{fresh}"

    def named(self) -> str:
        """What the level is called."""
        return f"{self.at.title}: {self.at.label}"

    def turned(self) -> str:
        """What the key does to it."""
        return "let it come" if self.at.held else "hold it back"


Row = LevelRow | TeachAgain


def rows_of(context: Context) -> list[Row]:
    """The rows in order: what is to be taught again, then the levels, the newest first."""
    rows = sorted(unlocked_levels(context, context.morning()), key=lambda row: (-row.week, row.title))
    return [*_teach_again(context), *map(LevelRow, rows)]


def _teach_again(context: Context) -> list[TeachAgain]:
    resting, taught = context.to_teach(), dict(context.child.taught)
    return [
        TeachAgain(item, skills.locate(item).words(), item not in resting)
        for item in context.missed()
        if item in resting or taught.get(item) == context.today
    ]


class UnlockedScreen(Page[None]):
    """The list, one line of it under the cursor."""

    CSS_PATH: ClassVar = ["page.tcss", "unlocked.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.UNLOCKED,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES, undo="", leave="back", help="", quit="")]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        work.context.forget()
        self._rows: list[Row] = []
        self._wide = False
        self._list = OptionList(id="list", markup=False, compact=True)

    def heading(self) -> str:
        """What the list holds."""
        return f"Quarter {self.work.context.morning().quarter}: what may be asked so far"

    def body(self) -> ComposeResult:
        """The list; what its key does to the line under the cursor."""
        yield Static("", id="paused", markup=False)
        yield self._list
        yield More(self._list)
        yield Static("", id="turn")

    def on_resize(self, event: events.Resize) -> None:
        """Say what was not asked yet where there is room for it."""
        super().on_resize(event)
        wide = event.size.width >= _WIDE
        if wide is not self._wide:
            self._wide, self._rows = wide, []
            self.show()

    def show(self) -> None:
        """The rows as they stand now."""
        super().show()
        if not self._list.is_attached:
            return
        until = paused(self.work.context)
        line = self.query_one("#paused", Static)
        line.update(until_words(until) if until else "")
        line.display = until is not None
        rows = rows_of(self.work.context)
        if rows != self._rows:
            at, self._rows = self._list.highlighted or 0, rows
            self._list.clear_options()
            self._list.add_options([_option(row, wide=self._wide) for row in rows])
            self._list.highlighted = min(at, len(rows) - 1) if rows else None
        self._say_what_it_does()

    @on(OptionList.OptionHighlighted)
    def _say_what_it_does(self) -> None:
        at = self._list.highlighted
        key = f"[@click=screen.do('turn')][b $key]{keys_of(BY_ID['turn'], '/')}[/] "
        row = self._rows[at] if at is not None and at < len(self._rows) else None
        does = row.turned() if row else ""
        if isinstance(row, LevelRow) and row.at.fresh:
            does += f" · {NOT_ASKED}"
        self.query_one("#turn", Static).update(f"{key}{does}[/]" if does else "")

    @on(OptionList.OptionSelected)
    def _clicked(self) -> None:
        self.do("turn")

    def act(self, action: str) -> None:
        """Go up and down, turn the line under the cursor, undo, or leave."""
        match action:
            case "line_up":
                step(self._list, -1)
            case "line_down":
                step(self._list, 1)
            case "turn" if self._list.highlighted is not None:
                self.work.said = self._turn(self._rows[self._list.highlighted])
            case "undo":
                self.work.undo()
            case "done" | "return" | "leave" | "unlocked":
                self.leave()

    def _turn(self, row: Row) -> str:
        """Hold a level back or let it come, or say that an item was taught; a line about it."""
        keep, context, editor = self.work.keep, self.work.context, self.work.context.editor
        match row:
            case LevelRow(at) if not at.held:
                keep(undoing.HOLD, lambda: editor.hold(at.level, back=True), level=at.level)
                return f"Held back: {row.named()}."
            case LevelRow(at):
                keep(undoing.COME, lambda: editor.hold(at.level, back=False), level=at.level)
                return f"It may come again: {row.named()}."
            case TeachAgain(taught=False):
                keep(undoing.TAUGHT, lambda: editor.taught(row.item, context.today), item=row.item)
                return f"Taught again on {date_words(context.today)}; it may come back."
            case TeachAgain():
                keep(
                    undoing.REST,
                    lambda: editor.taught(row.item, context.today, again=False),
                    item=row.item,
                )
                return "It rests until you say it was taught."


def _option(row: Row, *, wide: bool) -> Text:
    return Text(row.words(wide=wide), "bold" if isinstance(row, TeachAgain) else "")
