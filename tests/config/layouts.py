"""family.toml laid out in many ways, and every change the program makes to one."""

import datetime as dt
import os
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from tests.config.families import EXAMPLE
from warmup.config.family import Child, CountdownRule, Family, YearlyOff
from warmup.model import ItemId

day = dt.date

LAYOUTS = {
    "plain": EXAMPLE,
    "with remarks": """# Our family
format = 1   # leave this

[school]  # Monday to Thursday
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday"]  # no Fridays
first_day = 2026-08-31
  days_off = [
    2026-11-26,  # the feast
    # the long one
    {from = 2026-12-21, to = 2027-01-01, why = "winter"},  # with the trip

  ] # and no more
bus = "yellow"
began = 2026-11-25 # in November

# The child of the house
[[child]]
shoes = 9
nickname = "Bean" # not a real name
held = ["coins:worth"] # not yet
# what was taught again

[child.taught] # by us
"make-ten/seven-three" = 2026-12-03 # with eggs

# how it looks
[preferences]
font = "huge" # for the couch
theme = "dark"
# the end
""",
    "dotted": """
school.first_day = 2026-08-31 # first
school.weekdays = ["Monday"]
preferences.theme = "dark"
preferences.font = "huge"
child = [{nickname = "Bean", held = ["coins:worth"], shoes = 9}]
countdown = [{name = "the lake", date = 2027-06-04}] # soon
""",
    "in one line": """
school = {first_day = 2026-08-31, days_off = [2026-11-26], bus = "yellow"}
preferences = {theme = "dark"} # the look
[[child]]
nickname = "Bean"
taught = {"make-ten/seven-three" = 2026-12-03} # with eggs
[later]
x = 1""",
    "tables of days": """
[[child]]
nickname = "Bean" # she
[[child]]
nickname = "Pip" # he
record = "Pipkin"
taught.one = 2026-12-03
[school]
first_day = "2026-08-31"
# the feast
[[school.days_off]] # one day
from = 2026-11-26
to = 2026-11-26
why = "feast"
[[school.days_off]] # two days
yearly = "FOURTH thursday of November"
days = 2
# the end of it
[preferences]
answers = "Covered"
""",
    "days that come every year": """
[school]
first_day = 2026-08-31
days_off = [
    "last Monday in May", # the picnic
    2026-10-12, # the fair
    {yearly = "december 24", days = 3}, # the snow
    "2026-11-11",
]
[[child]]
nickname = "Bean"
""",
    "of windows": "\ufeff[school]\r\nfirst_day = 2026-08-31 # first\r\n"
    '\r\n# her\r\n[[child]]\r\nnickname = "Bean"\r\n',
}
KNOT = ItemId("knots/one")
TODAY = day(2027, 3, 3)


def _child(family: Family, **changes: Any) -> Family:
    return family._replace(children=(replace(family.children[0], **changes), *family.children[1:]))


CHANGES: dict[str, Callable[[Family], Family]] = {
    "light": lambda f: f._replace(theme="light"),
    "covered": lambda f: f._replace(answers_shown=not f.answers_shown),
    "an adult": lambda f: f._replace(adult="Dad", animal="Moose", pennies=False),
    "settled": lambda f: f._replace(known_until=TODAY),
    "off": lambda f: f._replace(off=(*f.off, (TODAY, TODAY), (TODAY, TODAY + dt.timedelta(3)))),
    "not off": lambda f: f._replace(off=()),
    "off every year": lambda f: f._replace(
        yearly_off=(*f.yearly_off, YearlyOff("May 5"), YearlyOff("first Monday in March", 3))
    ),
    "not every year": lambda f: f._replace(yearly_off=f.yearly_off[1:]),
    "extra": lambda f: f._replace(extra=(*f.extra, TODAY)),
    "held": lambda f: _child(f, held=(*f.children[0].held, "count:to-20")),
    "not held": lambda f: _child(f, held=()),
    "opened": lambda f: _child(f, opened=("count:to-20",)),
    "taught": lambda f: _child(f, taught=(*f.children[0].taught, ("count/one", TODAY))),
    "not taught": lambda f: _child(f, taught=()),
    "paused": lambda f: _child(f, paused=TODAY),
    "reads": lambda f: _child(f, reads=not f.children[0].reads),
    "renamed": lambda f: _child(f, nickname="Beanie"),
    "another child": lambda f: f._replace(children=(*f.children, Child("Lark", taught=((KNOT, TODAY),)))),
    "a countdown": lambda f: f._replace(countdowns=(*f.countdowns, CountdownRule("the hill", date=TODAY))),
    "another week": lambda f: f._replace(first_week=7, weekdays=(1, 4)),
}


def by_hand(path: Path, text: str) -> None:
    """Write the file as an editor does, a while after the program did."""
    path.write_text(text, "utf-8")
    os.utime(path, (path.stat().st_atime, path.stat().st_mtime + 5))


def alike(family: Family) -> tuple[Any, ...]:
    """The family without the order of what has none."""
    children = [
        (c.journal_name, c.nickname, {*c.held}, {*c.opened}, dict(c.taught), c.paused, c.reads)
        for c in sorted(family.children, key=lambda child: child.journal_name)
    ]
    names = ("off", "yearly_off", "extra", "countdowns", "without", "printed")
    loose = {name: {*getattr(family, name)} for name in names}
    bare = family._replace(
        children=(), off=(), yearly_off=(), extra=(), countdowns=(), without=(), printed=()
    )
    return (children, *bare, loose)


def remarks(text: str) -> list[str]:
    """Every comment of a text, in its order; no value in these files holds a #."""
    return [line.partition("#")[2].strip() for line in text.splitlines() if "#" in line]
