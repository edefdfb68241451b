"""The first run: one small form, all filled in. Enter accepts it as it stands."""

import datetime as dt
from dataclasses import replace
from typing import NamedTuple

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.screen import Screen
from textual.widgets import Input, Static

from warmup.desk import year_of
from warmup.documents import clean
from warmup.family import PLACEHOLDER, Child, Family, default
from warmup.schoolyear import WEEKS
from warmup.words import WEEKDAYS

_LONGEST = 40


class Unclear(Exception):
    """Something in the form can't be taken: a sentence that says what is expected."""


class Form(NamedTuple):
    """The form as it is filled in, all text."""

    nickname: str
    first_day: str
    weekdays: str
    week: str


def filled_in(today: dt.date, known: Family | None = None) -> Form:
    """The form for a family that starts today: a year from late August, Monday to Thursday.

    ``known`` is that family where its children are known, from a journal that outlived family.toml.
    """
    family = known or default(today)
    week = year_of(family).morning(today).week
    days = " ".join(WEEKDAYS[day][:3] for day in family.weekdays)
    return Form(family.children[0].nickname, family.first_day.isoformat(), days, str(week))


def family_of(form: Form, today: dt.date, known: Family | None = None) -> Family:
    """The family a form describes. Raises Unclear.

    Of a ``known`` family the first child has the nickname, and keeps the record its marks stand under.

    When the week is not the one that the first day gives (weeks off are not known here), the family
    begins in the week it says, on its first school day of this week.
    """
    nickname = clean(form.nickname)[:_LONGEST].strip()
    if not nickname:
        raise Unclear("A nickname, please: any word the child likes.")
    children = known.children if known and known.children[0].record != PLACEHOLDER else ()
    first = replace(children[0], nickname=nickname) if children else Child(nickname)
    if any(nickname.casefold() == other.nickname.casefold() for other in children[1:]):
        raise Unclear(f"There is another {nickname}; a nickname of its own, please.")
    family = default(today)._replace(
        children=(first, *children[1:]),
        first_day=_date(form.first_day),
        weekdays=_weekdays(form.weekdays),
    )
    week = _week(form.week)
    if year_of(family).morning(today).week == week:
        return family
    monday = today - dt.timedelta(today.weekday())
    return family._replace(first_day=monday, first_week=week)


def _date(text: str) -> dt.date:
    try:
        day = dt.date.fromisoformat(text.strip())
    except ValueError:
        raise Unclear("The first school day as year-month-day, such as 2026-08-31.") from None
    if not 1900 <= day.year <= 2200:
        raise Unclear("The first school day in a year from 1900 to 2200.")
    return day


def _weekdays(text: str) -> tuple[int, ...]:
    found = set()
    for word in text.replace(",", " ").split():
        days = [
            n
            for n, name in enumerate(WEEKDAYS)
            if len(word) > 1 and name.casefold().startswith(word.casefold())
        ]
        if len(days) != 1:
            raise Unclear(f"School weekdays such as Mon Tue Wed Thu; not “{word[:12]}”.")
        found.add(days[0])
    if not found:
        raise Unclear("At least one school weekday, such as Mon.")
    return tuple(sorted(found))


def _week(text: str) -> int:
    if not text.strip().isascii() or not text.strip().isdigit() or not 1 <= int(text.strip()[:4]) <= WEEKS:
        raise Unclear(f"The week as a number from 1 to {WEEKS}.")
    return int(text.strip())


class WelcomeScreen(Screen[Family]):
    """The form. Its result is the family."""

    CSS_PATH = "welcome.tcss"
    AUTO_FOCUS = "#nickname"

    def __init__(self, today: dt.date, known: Family | None = None) -> None:
        super().__init__()
        self.today, self.known = today, known
        self._form = filled_in(today, known)

    def compose(self) -> ComposeResult:
        """Four lines to fill in, filled in."""
        with Vertical(id="form"):
            yield Static("Welcome. Enter takes this as it stands.", id="hello", markup=False)
            for name, label, value in (
                ("nickname", "A nickname for the child", self._form.nickname),
                ("first_day", "The first school day of this year", self._form.first_day),
                ("weekdays", "School weekdays", self._form.weekdays),
                ("week", f"The week you are in, 1 to {WEEKS}", self._form.week),
            ):
                yield Static(label, classes="ask", markup=False)
                yield Input(value, id=name, select_on_focus=True)
            yield Static("", id="trouble", markup=False)
            yield Static(
                "Everything stays on this machine. A nickname is enough: no name, no birthday.",
                id="privacy",
                markup=False,
            )
            yield Static("Tab goes to the next line, Ctrl+Q leaves.", id="ways", markup=False)

    def on_input_submitted(self) -> None:
        """Enter, in any line: take the form, or say what is not clear."""
        values = [
            self.query_one(f"#{name}", Input).value for name in ("nickname", "first_day", "weekdays", "week")
        ]
        try:
            family = family_of(Form(*values), self.today, self.known)
        except Unclear as unclear:
            self.query_one("#trouble", Static).update(str(unclear))
            return
        self.dismiss(family)

    def do(self, action: str) -> None:
        """Only leaving makes sense here."""
        if action == "quit":
            self.app.exit()
