"""Past mornings, the latest first, to look at one; those of the years before once they are asked for."""

from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList

from warmup.english import date_words, number_word, plural
from warmup.session.past import Kept, earlier_years, kept_mornings
from warmup.session.words import BEADS
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.workspace import Workspace

_WEEK, _DATE, _AIRY_DATE = 8, 11, 25
"""The cells of a week, of a date in short, and of one whole."""
_AIRY = 76
"""From so many columns on dates are whole."""
_MOST_BEADS = 10
EARLIER = "the years before"


class MorningsScreen(Page[object]):
    """A row a session: the week where it begins, the date, the beads, the notes."""

    CSS_PATH: ClassVar = ["page.tcss", "mornings.tcss"]
    AUTO_FOCUS = "#list"
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.MORNINGS,)
    FOOT: ClassVar = {"choose": "open", "leave": "back", "help": "", "quit": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self._years = False
        self._mornings = kept_mornings(work.context, work.journal, years=False)
        self._more = earlier_years(work.context, work.journal)
        self._list = OptionList(id="list", markup=False, compact=True)
        self._laid_out: tuple[object, ...] = ()

    def heading(self) -> str:
        """What the page is."""
        whose = f" of {self.work.context.child.nickname}" if self.work.several else ""
        return f"Past mornings{whose}"

    def body(self) -> ComposeResult:
        """The rows."""
        yield self._list
        yield More(self._list)

    def show(self) -> None:
        """The rows as they stand, in this width."""
        super().show()
        airy = self.app.size.width >= _AIRY
        if not self._list.is_attached or self._laid_out == (self._mornings, self._years, airy):
            return
        at = self._list.highlighted or 0
        self._laid_out = self._mornings, self._years, airy
        weeks = [_week(each) for each in self._mornings]
        self._list.clear_options()
        self._list.add_options(
            [
                _row(each, week if week != before else "", airy=airy)
                for each, week, before in zip(self._mornings, weeks, ["", *weeks], strict=False)
            ]
        )
        if self._more and not self._years:
            self._list.add_option(EARLIER)
        self._list.highlighted = at

    def act(self, action: str) -> None:
        """Go up and down, open one, or leave."""
        match action:
            case "choose":
                self._list.action_select()
            case _:
                self.leave()

    @on(OptionList.OptionSelected)
    def _open(self, event: OptionList.OptionSelected) -> None:
        from warmup.tui.past_morning import PastMorningScreen

        if event.option_index == len(self._mornings):
            self._years = True
            self._read_again()
            return
        kept = self._mornings[event.option_index]
        self.open(PastMorningScreen(self.work, kept.date, kept.session), lambda _: self._read_again())

    def _read_again(self) -> None:
        """What was corrected or written there stands here as well."""
        self._mornings = kept_mornings(self.work.context, self.work.journal, years=self._years)
        self.show()


def _week(kept: Kept) -> str:
    """The school week; outside the family's year only which year it was."""
    return f"week {kept.week}" if kept.week else f"{kept.date.year}"


def _row(kept: Kept, week: str, *, airy: bool) -> Text:
    date = date_words(kept.date, short=not airy)
    beads = "".join(BEADS[mark] for mark in kept.marks[:_MOST_BEADS])
    notes = f"{number_word(kept.notes)} {plural(kept.notes, 'note')}" if airy else "note"
    more = ", ".join([*["again"] * (kept.before > 0), *[notes] * (kept.notes > 0)])
    room = _AIRY_DATE if airy else _DATE
    return Text(f"{week:<{_WEEK}}{date:<{room}}{beads:<{_MOST_BEADS}} {more}".rstrip())
