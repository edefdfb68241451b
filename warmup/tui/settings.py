"""The settings: one page of what a family changes. Nothing is changed before it is saved as a whole."""

from collections.abc import Iterator, Sequence
from typing import ClassVar

from textual import events, on
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.widget import Widget
from textual.widgets import Checkbox, Input, Select, SelectionList, Static

from warmup.config.family import Family
from warmup.model import FEWEST_PROMPTS, MOST_PROMPTS
from warmup.session.first_form import Unclear
from warmup.session.settings_form import (
    SettingsForm,
    as_it_is,
    family_of,
    nickname_field,
    outcome,
    things_asked,
    wrong,
)
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.paint import Look
from warmup.tui.ticks import Tick, Ticks
from warmup.tui.workspace import Workspace

NOTHING_CHANGED = "Nothing was changed."
NOT_YET = "Not saved yet: see the line in bold."
NO_GUARANTEE = "No guarantee: small things need an adult’s eyes."
_AS_PLANNED, _UNSAID = 0, "unsaid"
_READS = {_UNSAID: None, "yes": True, "no": False}
_LIST_ROWS, _OTHER_ROWS = 6, 22
"""The fewest rows of the list of things, and the rows of the page beside it."""


class SettingsScreen(Page[Family]):
    """Its result is the family as it is to be; none where nothing is to change."""

    CSS_PATH: ClassVar = ["page.tcss", "settings.tcss"]
    AUTO_FOCUS = "#nickname-0"
    STATES = (State.SETTINGS,)
    FOOT: ClassVar = {"save": "", "drop": "", "field_down": "", "form_help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self.family, self.child = work.context.family, work.context.child
        self._filled = as_it_is(self.family, self.child)
        self._things = Ticks[str](
            *(
                (thing, thing, thing not in self._filled.without)
                for thing in things_asked(self.family)
            ),
            id="things",
            compact=True,
        )  # fmt: skip

    def heading(self) -> str:
        """What the page is, and that there is a choice."""
        return "Settings: Space changes a line"

    def body(self) -> ComposeResult:
        """A line a setting, each with room beside it for what is wrong; then what comes of them."""
        filled = self._filled
        scroll = VerticalScroll(can_focus=False, id="scroll")
        with scroll:
            for number, nickname in enumerate(filled.nicknames):
                yield from _line(nickname_field(number), "Nickname", _typed(nickname, nickname_field(number)))
            yield from _line("first_day", "First school day", _typed(filled.first_day, "first_day"))
            yield from _line("weekdays", "School weekdays", _typed(filled.weekdays, "weekdays"))
            yield from _line(
                "prompts", "Prompts a morning", _picked("prompts", _prompts(), filled.prompts or 0)
            )
            yield from _line("covered", "Answers", _tick("covered", "start covered", filled.covered))
            reads = next(name for name, value in _READS.items() if value is filled.reads)
            yield from _line(
                "reads",
                "Reads words",
                _picked("reads", [("not said yet", _UNSAID), ("yes", "yes"), ("not yet", "no")], reads),
            )
            yield from _line("pennies", "Pennies", _tick("pennies", "may be asked about", filled.pennies))
            looks = [(look.value, look.value) for look in Look]
            yield from _line("theme", "Look", _picked("theme", looks, filled.theme))
            yield from _line("animal", "Stuffed animal", _typed(filled.animal, "animal"))
            yield from _line("adult", "Who marks", _typed(filled.adult, "adult"))
            yield from _line("toddler", "A toddler, too", _tick("toddler", "no small things", filled.toddler))
            with Horizontal(classes="row"):
                yield Static("In the house", classes="ask", markup=False)
                yield Static("Space unchecks what you do not have.", classes="beside", markup=False)
            yield self._things
            yield More(self._things, classes="more of-things")
        yield More(scroll)
        yield Static("", id="outcome", markup=False)

    def on_mount(self) -> None:
        """Say what comes of the page as it is."""
        super().on_mount()
        self._work_out()

    def on_resize(self, event: events.Resize) -> None:
        """The list of things has what room is left, and at least a few rows."""
        super().on_resize(event)
        self._things.styles.max_height = max(_LIST_ROWS, event.size.height - _OTHER_ROWS)

    def form(self) -> SettingsForm:
        """The page as it is filled in."""
        has = {*self._things.selected}
        known = self._filled.without
        lacking = [thing for thing in things_asked(self.family) if thing not in has]
        reads = self._value("reads")
        prompts = self._value("prompts")
        return SettingsForm(
            nicknames=tuple(self._text(nickname_field(n)) for n in range(len(self._filled.nicknames))),
            first_day=self._text("first_day"),
            weekdays=self._text("weekdays"),
            prompts=prompts if isinstance(prompts, int) and prompts else None,
            covered=self._ticked("covered"),
            reads=_READS.get(str(reads)),
            pennies=self._ticked("pennies"),
            theme=str(self._value("theme")),
            animal=self._text("animal"),
            adult=self._text("adult"),
            toddler=self._ticked("toddler"),
            without=tuple(
                sorted(lacking, key=lambda each: known.index(each) if each in known else len(known))
            ),
        )

    def _text(self, field: str) -> str:
        return self.query_one(f"#{field}", Input).value

    def _ticked(self, field: str) -> bool:
        return self.query_one(f"#{field}", Checkbox).value

    def _value(self, field: str) -> object:
        return self.query_one(f"#{field}", Select).value

    @on(Input.Changed)
    @on(Select.Changed)
    @on(Checkbox.Changed)
    @on(SelectionList.SelectedChanged)
    def _work_out(self) -> None:
        """What is wrong, beside its field; and what the year would be like."""
        form = self.form()
        sentences = wrong(form, self.family)
        for place in self.query(".beside.of-a-field").results(Static):
            field = (place.id or "").removeprefix("beside-")
            sentence = sentences.get(field, "")
            place.set_class(bool(sentence), "wrong")
            place.update(sentence or (NO_GUARANTEE if field == "toddler" and form.toddler else ""))
        said = outcome(form, self.family, self.child, self.work.context.today)
        self.query_one("#outcome", Static).update(f"→ {said}" if said else "")

    # -- keys

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """An open choice has its own keys, and the list of things its own up and down."""
        if action != "do":
            return True
        if any(choice.expanded for choice in self.query(Select)):
            return False
        return self.focused is not self._things or parameters[-1] not in ("down", "up")

    def act(self, action: str) -> None:
        """Save all or nothing, or go to another line."""
        match action:
            case "save":
                self._save()
            case "drop":
                self.leave()
                self.work.said = NOTHING_CHANGED
            case "field_down":
                self.focus_next()
            case "field_up":
                self.focus_previous()
            case "form_help":
                self.open_help()

    def _save(self) -> None:
        form = self.form()
        try:
            after = family_of(form, self.family, self.child)
        except Unclear:
            self.work.said = NOT_YET
            self.query_one(f"#{next(iter(wrong(form, self.family)))}").focus()
            return
        if after == self.family:
            self.work.said = NOTHING_CHANGED
            self.leave()
        else:
            self.leave(after)


def _line(field: str, label: str, widget: Widget) -> Iterator[Widget]:
    row = Horizontal(
        Static(label, classes="ask", markup=False),
        widget,
        Static("", id=f"beside-{field}", classes="beside of-a-field", markup=False),
        classes="row",
    )
    yield row


def _typed(value: str, field: str) -> Input:
    return Input(value, id=field, select_on_focus=True, compact=True)


def _tick(field: str, label: str, value: bool) -> Checkbox:
    return Tick(label, value, id=field)


def _picked(field: str, options: Sequence[tuple[str, object]], value: object) -> Select[object]:
    return Select(options, value=value, allow_blank=False, id=field, compact=True)


def _prompts() -> Sequence[tuple[str, object]]:
    return [("as planned", _AS_PLANNED), *((str(n), n) for n in range(FEWEST_PROMPTS, MOST_PROMPTS + 1))]
