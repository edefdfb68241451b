"""The first run: one small form, all filled in. Enter accepts it as it stands."""

from dataclasses import replace
from typing import ClassVar

from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal, Vertical
from textual.screen import Screen
from textual.widgets import Button, Input, SelectionList, Static

from warmup.config.family import Family
from warmup.config.holidays import Holiday
from warmup.english import date_words
from warmup.session.first_form import (
    Form,
    Unclear,
    family_of,
    filled_in,
    holidays,
    known_by,
    outcome,
    week_of,
    weekday_of,
)
from warmup.session.words import HELLO, PRIVACY
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.ticks import Ticks
from warmup.tui.workspace import Workspace

_LEAST, _LOW, _NARROW = 14, 22, 56
"""Under so many rows the list has what the other lines leave it, under so many more the form goes without
air, and under so many columns with fewer words."""
_OTHER_ROWS, _WITHOUT_AIR = 14, 10
"""The rows of the form beside its list."""
_LEAVE, _WAYS = "Ctrl+Q leave", "Tab next   Space check   Ctrl+Q leave"
_SHORT_HELLO = "Spoken math at breakfast."


class HolidayTicks(Ticks[Holiday]):
    """The days off that are offered, each with a tick."""

    offered: tuple[Holiday, ...] = ()

    def offer(self, found: tuple[Holiday, ...]) -> None:
        """Show these; one that was there keeps its tick or its lack of one, a new one has one."""
        taken = {*self.selected, *found} - ({*self.offered} - {*self.selected})
        self.offered = found
        at = self.highlighted
        with self.prevent(SelectionList.SelectedChanged):
            self.clear_options()
            self.add_options([(_label(each), each, each in taken) for each in found])
        self.highlighted = min(at or 0, len(found) - 1) if found else None


def _label(holiday: Holiday) -> str:
    return f"{date_words(holiday.first, short=True):<10}  {holiday.name}"


class WelcomeScreen(Screen[Family | None]):
    """The form. Its result is the family. That of a new school year says and takes other things by the same
    lines (``warmup.tui.new_year``).
    """

    HELLO, SHORT_HELLO = HELLO, _SHORT_HELLO
    WEEK, FOOT = "  Not right?", PRIVACY
    WAYS, FEW_WAYS = _WAYS, _LEAVE
    STATE = State.FORM
    ASKS_NAME = True
    CSS_PATH = "welcome.tcss"
    AUTO_FOCUS = "#nickname"
    BINDINGS: ClassVar[list[BindingType]] = [
        # A list has its own up and down, and a line no Enter.
        replace(binding, priority=binding.id == "begin")
        for binding in bindings(State.FORM)
    ]

    def __init__(self, work: Workspace) -> None:
        """Its children are known where a journal has outlived family.toml."""
        super().__init__()
        self.work, self.today, self.known = work, work.context.today, known_by(work.context)
        self._filled = filled_in(self.today, self.known)
        self._ticks = HolidayTicks(id="off", compact=True)

    def compose(self) -> ComposeResult:
        """What to fill in, filled in; what comes of it; how to go on."""
        with Vertical(id="form"):
            yield Static(self.HELLO, id="hello", markup=False)
            yield from self._line("nickname", "Nickname", self._filled.nickname)
            yield from self._line("first_day", "First school day", self._filled.first_day)
            yield from self._line("weekdays", "School weekdays", self._filled.weekdays)
            with Horizontal(classes="row"):
                yield Static("Days off", classes="ask", markup=False)
                yield More(self._ticks, classes="beside")
            yield self._ticks
            yield Static("", id="outcome", markup=False)
            yield from self._line("week", self.WEEK, "")
            with Horizontal(classes="row"):
                yield Button("Begin  Enter", id="begin", compact=True, tooltip="Take the form as it stands")
                yield Static(self.WAYS, id="ways", classes="beside", markup=False)
            yield Static(self.FOOT, id="privacy", markup=False)

    def _line(self, name: str, label: str, value: str) -> ComposeResult:
        with Horizontal(classes="row"):
            yield Static(label, classes="ask", markup=False)
            yield Input(value, id=name, select_on_focus=True, compact=True)
            yield Static("", id=f"{name}_beside", classes="beside", markup=False)

    def on_mount(self) -> None:
        """Work out what comes of the form."""
        name = self.query_one("#nickname", Input).parent
        assert isinstance(name, Horizontal)
        name.display = self.ASKS_NAME
        self._work_out()

    def on_resize(self, event: events.Resize) -> None:
        """Give the list what room there is."""
        low, narrow = event.size.height < _LOW, event.size.width < _NARROW
        self.set_class(low, "low")
        self.set_class(event.size.height < _LEAST, "least")
        self._ticks.styles.max_height = max(2, event.size.height - (_WITHOUT_AIR if low else _OTHER_ROWS))
        self.query_one("#ways", Static).update(self.FEW_WAYS if narrow else self.WAYS)
        self.query_one("#hello", Static).update(self.SHORT_HELLO if narrow else self.HELLO)

    def form(self) -> Form:
        """The form as it stands. A week that is only the one worked out here is not said."""
        nickname, first_day, weekdays, week = (
            self.query_one(f"#{name}", Input).value for name in ("nickname", "first_day", "weekdays", "week")
        )
        said = week if self.has_class("touched") else ""
        return Form(nickname, first_day, weekdays, said, tuple(self._ticks.selected))

    # -- what is made of it

    def offer(self, form: Form) -> tuple[Holiday, ...]:
        """The days off that are offered for the year that is typed. Raises Unclear."""
        return holidays(form, self.today)

    def place(self, form: Form) -> str:
        """The week, where it is not typed. Raises Unclear."""
        return week_of(form, self.today)

    def say(self, form: Form) -> str:
        """What comes of the form. Raises Unclear."""
        return outcome(form, self.today)

    def take(self, form: Form) -> Family:
        """The family that it describes. Raises Unclear."""
        return family_of(form, self.today, self.known)

    # -- what is typed

    @on(Input.Changed, "#week")
    def _touch_week(self, event: Input.Changed) -> None:
        """What is typed there holds; an empty line is worked out again."""
        self.set_class(bool(event.value.strip()), "touched")

    @on(Input.Changed)
    @on(Input.Blurred)
    @on(SelectionList.SelectedChanged)
    def _work_out(self) -> None:
        """Offer the days off of the year that is typed, work out the week, and show what comes of it."""
        week = self.query_one("#week", Input)
        form = self.form()
        beside = self.query_one("#first_day_beside", Static)
        beside.update(weekday_of(form.first_day, form.weekdays))
        try:
            found = self.offer(form)
            if found != self._ticks.offered:
                self._ticks.offer(found)
                form = self.form()
            if not form.week and not week.has_focus:
                with self.prevent(Input.Changed):
                    week.value = self.place(form)
            said = f"→ {self.say(form)}"
        except Unclear as unclear:
            said = str(unclear)
        self.query_one("#outcome", Static).update(said)

    @on(Button.Pressed)
    def begin(self) -> None:
        """Take the form, or say what is not clear."""
        try:
            family = self.take(self.form())
        except Unclear as unclear:
            self.query_one("#outcome", Static).update(str(unclear))
            self.add_class("trouble")
            return
        self.dismiss(family)

    def action_do(self, action: str) -> None:
        """What a binding calls."""
        self.do(action)

    def do(self, action: str) -> None:
        """Begin, go to another line, check a day off, or tell of the keys."""
        match action:
            case "begin" if self.focused is not None:
                # Letters typed just before still wait to be taken in by the line.
                self.focused.call_later(self.begin)
            case "begin":
                self.begin()
            case "field_down":
                self.focus_next()
            case "field_up":
                self.focus_previous()
            case "form_tick" if self._ticks.has_focus:
                self._ticks.action_select()
            case "form_help":
                from warmup.tui.help import HelpScreen

                self.app.push_screen(HelpScreen(self.work, (self.STATE,)))
            case "form_leave":
                self.dismiss(None)
