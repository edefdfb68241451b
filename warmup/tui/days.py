"""Missed mornings: were they school, or off? Up to four by day; of five or more one question first."""

import datetime as dt
from collections.abc import Callable
from typing import ClassVar, NamedTuple

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import Screen

from warmup.english import WEEKDAYS, date_words
from warmup.session import missed
from warmup.session.missed import Missed, Talk
from warmup.tui.lists import cut_off, window
from warmup.tui.panes import ScriptPane
from warmup.tui.script import Keep, Line, Script, Span, Tone

_CELL = 12
"""The cells a day takes in the row of its week."""
_AIRY = 18
"""From so many rows on there is air under the question."""
_TELLS = "School: it counts. Off: the rest of the year moves on by itself. Nothing is marked either way."
_STEPS = {
    "fluent": "up",
    "hesitated": "down",
    "back": "left",
    "next": "right",
    "cue": "change",
    "leave": "question",
}
"""What the keys of the morning mean here."""


class Layout(NamedTuple):
    """Which days stand in each row, by their places; a calendar week to a row, or a day."""

    rows: tuple[tuple[int, ...], ...]
    by_week: bool


def layout(days: Missed, width: int) -> Layout:
    """A calendar week to a row where that has room in ``width`` cells, else a day."""
    if len(_weekdays(days)) * _CELL + len(_week(days.days[0])) + 4 <= width:
        return Layout(days.by_week(), by_week=True)
    return Layout(tuple((at,) for at in range(len(days.days))), by_week=False)


def _weekdays(days: Missed) -> tuple[int, ...]:
    return tuple(sorted({day.weekday() for day in days.days}))


def _week(day: dt.date) -> str:
    monday = day - dt.timedelta(day.weekday())
    return f"week of {date_words(monday, weekday=False, short=True):<6}"


def question_page(talk: Talk, said: str, width: int) -> Script:
    """Of many missed mornings, one question."""
    page, weeks = Script(width), talk.missed.weeks()
    page.text(f"{len(talk.answers)} mornings have no warm-up.", Tone.PLAIN, Keep.HEAD)
    page.air()
    page.text("Where are your lessons now?", Tone.SAY, Keep.ALWAYS)
    page.air()
    less = Span("‹ " if talk.week > weeks[0] else "  ", Tone.KEY, "back")
    more = Span(" ›" if talk.week < weeks[-1] else "  ", Tone.KEY, "next")
    place = talk.missed.place(talk.off).partition(",")[0]
    page.line((less, Span(f"week {talk.week}", Tone.HERE), more, Span(f"  {place}", Tone.PLAIN)), Keep.ALWAYS)
    page.text(said, Tone.CUE, Keep.NOTICE, bottom=True)
    keys = (
        ("← →", " week", "next"),
        ("Enter", " go on from here", "accept"),
        ("d", " say it day by day", "by_day"),
    )
    _keys(page, *keys, ("u", " undo", "undo"), ("q", " quit", "quit"))
    return page


def days_page(talk: Talk, rows: Layout, said: str, width: int, height: int) -> Script:
    """The missed mornings, each with what was said of it, and what that makes of today."""
    page, foot = Script(width), Script(width)
    page.text("No warm-up on these mornings: school, or off?", Tone.SAY, Keep.HEAD)
    if height >= _AIRY:
        page.air()
    foot.text(said, Tone.CUE, Keep.NOTICE, bottom=True)
    foot.text(f"Today: {talk.missed.place(talk.off)}.", Tone.PLAIN, Keep.ALWAYS, bottom=True)
    take = "go on" if not talk.open_still else "when all are answered"
    _keys(
        foot,
        *(("a", " all off", "all_off"), ("s", " all school", "all_school"), ("↑ ↓ ← →", " choose", "next")),
        *(("Space", " change", "cue"), ("Enter", f" {take}", "accept"), ("u", " undo", "undo")),
        *((("Esc", " one question", "question"),) if len(talk.answers) >= missed.MANY else ()),
        ("q", " quit", "quit"),
    )
    here = next(n for n, places in enumerate(rows.rows) if talk.cursor in places)
    room = height - sum(len(block.lines) for block in (*page.blocks, *foot.blocks))
    shown = window(len(rows.rows), here, max(2, room))
    for n in shown:
        page.line(_row(talk, rows.rows[n], by_week=rows.by_week), Keep.ALWAYS)
    page.text(cut_off(len(rows.rows), shown.start, len(shown)), Tone.QUIET, Keep.ALWAYS)
    page.blocks += foot.blocks
    return page


def _row(talk: Talk, places: tuple[int, ...], *, by_week: bool) -> Line:
    here = Span("› " if talk.cursor in places else "  ", Tone.KEY)
    days = talk.missed.days
    if not by_week:
        (at,) = places
        return (
            here,
            Span(f"{date_words(days[at], short=True):<12}", Tone.PLAIN, f"day:{at}"),
            _answer(talk, at),
        )
    spans = [here, Span(f"{_week(days[places[0]])}  ", Tone.PLAIN)]
    at_weekday = {days[at].weekday(): at for at in places}
    for weekday in _weekdays(talk.missed):
        if weekday in at_weekday:
            at = at_weekday[weekday]
            spans += [Span(f"{WEEKDAYS[weekday][:3]} ", Tone.PLAIN, f"day:{at}"), _answer(talk, at)]
        else:
            spans.append(Span(" " * _CELL))
    return tuple(spans)


def _answer(talk: Talk, at: int) -> Span:
    answer = talk.answers[at]
    word = "?" if answer is None else "off" if answer else "school"
    shown = f"[{word}]" if at == talk.cursor else f" {word} "
    return Span(shown.ljust(_CELL - 4), Tone.HERE if at == talk.cursor else Tone.PLAIN, f"day:{at}")


def _keys(page: Script, *keys: tuple[str, str, str]) -> None:
    page.keys(
        [s for key, label, do in keys for s in (Span(key, Tone.KEY, do), Span(label, Tone.PLAIN, do))],
        Keep.ALWAYS,
    )


class DaysScreen(Screen[tuple[dt.date, ...]]):
    """Asks of the mornings that were missed. Its result is those that were off."""

    AUTO_FOCUS = None
    CSS = "DaysScreen > ScriptPane { width: 100%; height: 100%; }"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("a", "do('all_off')", "all off", show=False, tooltip="All of them were off"),
        Binding("s", "do('all_school')", "all school", show=False, tooltip="All of them were school"),
        Binding("d", "do('by_day')", "day by day", show=False, tooltip="Say it of each day"),
        Binding("escape", "do('question')", "one question", show=False, tooltip="Back to the one question"),
    ]

    def __init__(self, days: Missed, turn_theme: Callable[[], None] = lambda: None) -> None:
        super().__init__()
        self.turn_theme = turn_theme
        self.talk = missed.begin(days)
        self.said = ""
        self._before: list[Talk] = []
        self._layout = Layout((), by_week=False)
        self.script = ScriptPane(self.page)

    def compose(self) -> ComposeResult:
        """One pane: these are words for the adult alone."""
        yield self.script

    def page(self, width: int, height: int) -> Script:
        """The question, or the days."""
        if self.talk.asking:
            return question_page(self.talk, self.said, width)
        self._layout = layout(self.talk.missed, width)
        return days_page(self.talk, self._layout, self.said, width, height)

    def action_do(self, name: str) -> None:
        """One of the keys that are this screen's own."""
        self.do(name)

    def do(self, action: str) -> None:
        """Do one action, of this screen or of the morning's table."""
        self.said = ""
        match action:
            case "quit":
                self.app.exit()
            case "theme":
                self.turn_theme()
            case "help":
                self.said = _TELLS
            case "undo":
                self._undo()
            case "accept":
                self._take()
            case _:
                self._step(action)
        self.script.show()

    def _step(self, action: str) -> None:
        if action.startswith("day:"):
            self.talk, action = self.talk._replace(cursor=int(action.removeprefix("day:"))), "change"
        what = _STEPS.get(action, action)
        if what == "by_day" and not self.talk.asking:
            what = "right"
        after = self.talk.step(what, self._layout.rows)
        if (after.answers, after.week, after.asking) != (self.talk.answers, self.talk.week, self.talk.asking):
            self._before.append(self.talk)
        self.talk = after

    def _undo(self) -> None:
        if self._before:
            self.talk = self._before.pop()
        else:
            self.said = "Nothing to undo."

    def _take(self) -> None:
        if left := self.talk.open_still:
            self.said = f"{left} not answered yet. s: all school. a: all off."
            self.talk = self.talk.step("first_open", ())
        else:
            self.dismiss(self.talk.off)
