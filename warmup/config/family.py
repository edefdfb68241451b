"""Who the children are and when school is on: ``family.toml``, read with care, checked, and written."""

import datetime as dt
import re
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

from warmup import renames
from warmup.config.family_values import Child, CountdownRule, Family, YearlyOff
from warmup.config.places import there
from warmup.config.toml_file import LONGEST_NAME, Document, FileProblem, read
from warmup.english import WEEKDAYS, date_words
from warmup.model import FEWEST_PROMPTS, MOST_PROMPTS, Countdown, ItemId, LevelId, is_own
from warmup.schoolyear import HORIZON, WEEKS, SchoolYear, school_year
from warmup.text import clean, did_you_mean, shown, visible

FORMAT = 1
LONGEST_BREAK = 366
"""The longest stretch of days off in one line, in days: a longer one is a slip in the year."""
PLACEHOLDER = "Sunshine"
"""The nickname a child has until the family gives one."""
LONGEST_FOLDER = 400
"""The longest way to a folder, in characters."""
_MOST_TAUGHT = 1000
MOST_CHILDREN = 30
MOST_HELD = 100
"""The longest list of weeks held or skipped."""


def default(today: dt.date, journal_names: Sequence[str] = ()) -> Family:
    """A family that has told nothing yet: four mornings a week from the last Monday of August.

    From July on that is this year's August, before that last year's (common practice, no source). Its
    children are those whose marks are kept, by ``journal_names``; where there are none, one to be named.
    """
    year = today.year if today.month >= 7 else today.year - 1
    last = dt.date(year, 8, 31)
    return Family(
        first_day=last - dt.timedelta(last.weekday()), began=today, children=_known_children(journal_names)
    )


def _known_children(journal_names: Sequence[str]) -> tuple[Child, ...]:
    """A child for each name in a journal that a nickname may be."""
    found: dict[str, Child] = {}
    for name in journal_names:
        if name == clean(name) and visible(name) and len(name) <= LONGEST_NAME:
            found.setdefault(name.casefold(), Child(name))
    return tuple(found.values())[:MOST_CHILDREN] or (Child(PLACEHOLDER),)


def load(path: Path) -> Family:
    """The family in this file: ``Missing`` when there is none, ``FileProblem`` when a value is wrong."""
    return parse(read(path, advice(path)))


def advice(path: Path) -> str:
    """What to do about a family file that can't be used: first of all, take the version before."""
    backup = path.with_name(f"{path.name}.bak")
    if there(backup):
        return f"Fix that line, or copy {backup.name}, the version before it, over the file."
    return "Fix that line, or move the file away and start again: the form finds the marks of your child."


def parse(file: Document) -> Family:
    """The family a document describes, or a ``FileProblem`` that names the line."""
    file.check_format(FORMAT)
    first_day = file.date("school", "first_day")
    off, yearly_off = _days_off(file)
    return Family(
        first_day=first_day,
        began=file.date("school", "began", default=first_day),
        children=_children(file),
        first_week=file.whole("school", "first_week", least=1, most=WEEKS, default=1),
        held_weeks=_weeks(file, "school", "held_weeks"),
        skipped_weeks=_weeks(file, "school", "skipped_weeks"),
        last_day=_last_day(file, first_day),
        weekdays=_weekdays(file),
        known_until=file.maybe(file.date, "school", "settled"),
        off=off,
        extra=tuple(file.date("school", "extra", n) for n in range(file.length("school", "extra"))),
        countdowns=tuple(_rule(file, n) for n in range(file.length("countdown", most=100))),
        theme=file.choice("preferences", "theme", among=("dark", "light", "contrast"), default="dark"),
        answers_shown=file.choice("preferences", "answers", among=("shown", "covered"), default="shown")
        == "shown",
        pennies=file.flag("preferences", "pennies", default=True),
        adult=file.name("preferences", "adult", default=""),
        animal=file.name("preferences", "animal", default="Bear"),
        prompts=_prompts(file, "preferences"),
        yearly_off=yearly_off,
        toddler=file.flag("household", "toddler", default=False),
        without=_without(file),
        printed=file.names("household", "printed"),
        keys=_keys(file),
        together=file.flag("preferences", "together", default=False),
        pixels=file.flag("preferences", "pixels", default=True),
        copies=file.name("keeping", "copies", default="", most=LONGEST_FOLDER),
        forgotten=tuple(sorted(set(file.names("keeping", "forgotten")))),
    )


def _last_day(file: Document, first_day: dt.date) -> dt.date | None:
    """The day the family's year ends on, where it ends before its last week is done."""
    day = file.maybe(file.date, "school", "last_day")
    if day is not None and day < first_day:
        raise file.problem(("school", "last_day"), f"a date not before {first_day}", str(day))
    return day


def _without(file: Document) -> tuple[str, ...]:
    """The things that the house does not have, each once and by its name in the registry."""
    keys = ("household", "without")
    names = file.names(*keys)
    if not names:
        return ()
    from warmup.engine.things import NAMES, named

    found: list[str] = []
    for n, name in enumerate(names):
        thing = named(name)
        if thing is None:
            guess = did_you_mean(name, NAMES)
            raise file.problem((*keys, n), "a thing that prompts ask for", shown(name) + guess)
        if thing.name in found:
            raise file.problem((*keys, n), "each thing once", f"{shown(name)} twice")
        found.append(thing.name)
    return tuple(found)


def _keys(file: Document) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What stands under [keys]: whoever knows the actions checks it, and a slip there stops no morning."""
    table = file.value("keys")
    if table is None:
        return ()
    if not isinstance(table, dict):
        return (("", ()),)
    return tuple((action, _as_keys(file.value("keys", action))) for action in table)


def _as_keys(value: object) -> tuple[str, ...]:
    """A key or a list of keys; nothing where it is neither."""
    keys: list[Any] = value if isinstance(value, list) else [value]
    return tuple(keys) if all(isinstance(key, str) for key in keys) else ()


def _children(file: Document) -> tuple[Child, ...]:
    children: list[Child] = []
    for n in range(file.length("child", most=MOST_CHILDREN)):
        nickname = file.name("child", n, "nickname")
        if any(nickname.casefold() == child.nickname.casefold() for child in children):
            file.refuse(("child", n, "nickname"), "a nickname no other child has")
        held, opened = _levels(file, n, "held"), _levels(file, n, "opened")
        journal_name = file.name("child", n, "record", default=nickname)
        if any(journal_name == child.journal_name for child in children):
            file.refuse(("child", n, "record"), "a record no other child has")
        child = Child(nickname, held, opened, journal_name, _taught(file, n))
        children.append(_in_own_weeks(file, n, child))
    if not children:
        raise file.problem(("child",), "at least one [[child]] with a nickname", "none")
    return tuple(children)


def _in_own_weeks(file: Document, n: int, child: Child) -> Child:
    """The child with what the file says of its own year and mornings."""
    first_day = file.maybe(file.date, "child", n, "first_day")
    for key in ("first_week", "held_weeks", "skipped_weeks"):
        if file.has("child", n, key) and first_day is None:
            file.refuse(("child", n, key), "a first_day of this child beside it, or the key under [school]")
    return replace(
        child,
        paused=file.maybe(file.date, "child", n, "paused"),
        reads=file.maybe(file.flag, "child", n, "reads"),
        first_day=first_day,
        first_week=file.whole("child", n, "first_week", least=1, most=WEEKS, default=1),
        held_weeks=_weeks(file, "child", n, "held_weeks"),
        skipped_weeks=_weeks(file, "child", n, "skipped_weeks"),
        prompts=_prompts(file, "child", n),
        resting=file.flag("child", n, "resting", default=False),
        began=file.maybe(file.date, "child", n, "began"),
    )


def _prompts(file: Document, *way: str | int) -> int | None:
    return file.maybe(file.whole, *way, "prompts", least=FEWEST_PROMPTS, most=MOST_PROMPTS)


def _weeks(file: Document, *way: str | int) -> tuple[int, ...]:
    """A list of weeks in their order; one may be named more than once."""
    return tuple(
        sorted(file.whole(*way, n, least=1, most=WEEKS) for n in range(file.length(*way, most=MOST_HELD)))
    )


def _levels(file: Document, n: int, key: str) -> tuple[LevelId, ...]:
    """Levels by their names today, each once; one that is asked no more stays as it is written."""
    names = (name for old in file.names("child", n, key) for name in renames.levels(old))
    return tuple(dict.fromkeys(map(LevelId, names)))


def _taught(file: Document, n: int) -> tuple[tuple[ItemId, dt.date], ...]:
    keys = ("child", n, "taught")
    items = file.keys_of(*keys)
    if len(items) > _MOST_TAUGHT:
        raise file.problem(keys, f"a table of at most {_MOST_TAUGHT}", f"{len(items)}")
    for item in items:
        # A key is not mended as other words are: two might become one.
        if item != clean(item) or not visible(item) or len(item) > 80:
            raise file.problem((*keys, item), "an item like make-ten/seven-three", shown(item))
    taught: dict[ItemId, dt.date] = {}
    for item in items:
        name, day = ItemId(renames.item(item)), file.date(*keys, item)
        taught[name] = max(day, taught.get(name, day))
    return tuple(taught.items())


def _weekdays(file: Document) -> tuple[int, ...]:
    keys = ("school", "weekdays")
    if not file.has(*keys):
        return (0, 1, 2, 3)
    numbers = []
    names = {name.lower(): number for number, name in enumerate(WEEKDAYS)}
    for n in range(file.length(*keys)):
        name = file.name(*keys, n)
        if name.lower() not in names:
            found = shown(name) + did_you_mean(name.capitalize(), WEEKDAYS)
            raise file.problem((*keys, n), "a day of the week", found)
        if names[name.lower()] in numbers:
            raise file.problem((*keys, n), "each day once", f"{name} twice")
        numbers.append(names[name.lower()])
    if not numbers:
        file.refuse(keys, "at least one day of the week")
    return tuple(sorted(numbers))


def comes_yearly(day_off: object) -> bool:
    """Whether an element of ``days_off``, as TOML has it, comes every year: words that are no date."""
    if isinstance(day_off, dict):
        return "yearly" in day_off
    return isinstance(day_off, str) and not re.fullmatch(r"[0-9-]*", day_off)


def _days_off(file: Document) -> tuple[tuple[tuple[dt.date, dt.date], ...], tuple[YearlyOff, ...]]:
    """The stretches of days off with their dates, and those that come every year."""
    stretches: list[tuple[dt.date, dt.date]] = []
    yearly: list[YearlyOff] = []
    for n in range(file.length("school", "days_off")):
        if comes_yearly(file.data["school"]["days_off"][n]):
            yearly.append(_yearly_stretch(file, n))
        else:
            stretches.append(_stretch(file, n))
    return tuple(stretches), tuple(yearly)


def _yearly_stretch(file: Document, n: int) -> YearlyOff:
    from warmup.config.yearly import LONGEST

    keys = ("school", "days_off", n)
    if isinstance(file.data["school"]["days_off"][n], str):
        return YearlyOff(_every_year(file, *keys, besides="a date like 2026-08-31, or "))
    if file.has(*keys, "from") or file.has(*keys, "to"):
        raise file.problem((*keys, "yearly"), "either from and to, or yearly", "both")
    words = _every_year(file, *keys, "yearly")
    return YearlyOff(words, file.whole(*keys, "days", least=1, most=LONGEST, default=1))


def _stretch(file: Document, n: int) -> tuple[dt.date, dt.date]:
    keys = ("school", "days_off", n)
    if not isinstance(file.data["school"]["days_off"][n], dict):
        day = file.date(*keys)
        return day, day
    first, last = file.date(*keys, "from"), file.date(*keys, "to")
    if last < first:
        raise file.problem((*keys, "to"), f"a date not before {first}", str(last))
    if (last - first).days >= LONGEST_BREAK:
        raise file.problem((*keys, "to"), f"at most {LONGEST_BREAK} days off in a row", f"{first} to {last}")
    return first, last


def _rule(file: Document, n: int) -> CountdownRule:
    name = file.name("countdown", n, "name")
    if not file.has("countdown", n, "yearly"):
        return CountdownRule(name, date=file.date("countdown", n, "date"))
    if file.has("countdown", n, "date"):
        raise file.problem(("countdown", n, "yearly"), "either date or yearly", "both")
    return CountdownRule(name, yearly=_every_year(file, "countdown", n, "yearly"))


def _every_year(file: Document, *keys: str | int, besides: str = "") -> str:
    """The words of a day that comes every year, as they are written; ``besides`` is what else would do."""
    from warmup.config.yearly import EVERY_YEAR, understood

    words = file.name(*keys, most=80)
    if not understood(words):
        file.refuse(keys, besides + EVERY_YEAR)
    return words


def year_of(family: Family, child: Child | None = None) -> SchoolYear:
    """The family's school year, or that of a child with weeks of its own."""
    mine = family if child is None or child.first_day is None else child
    first_day = mine.first_day or family.first_day
    return school_year(
        first_day,
        family.weekdays,
        (*family.off, *_yearly_off(family, first_day)) if family.yearly_off else family.off,
        family.extra,
        mine.first_week,
        mine.held_weeks,
        mine.skipped_weeks,
        family.last_day,
    )


def _yearly_off(family: Family, first_day: dt.date) -> tuple[tuple[dt.date, dt.date], ...]:
    """The days off that come every year, in every year that a school year from this day may reach into."""
    from warmup.config.yearly import stretches

    return stretches(family.yearly_off, first_day, first_day + dt.timedelta(HORIZON))


def countdowns(family: Family, today: dt.date, ahead: int = 60) -> tuple[Countdown, ...]:
    """The days that matter after ``today`` and at most ``ahead`` days from it, nearest first."""
    last = today + dt.timedelta(min(ahead, (dt.date.max - today).days))
    found = [
        Countdown(rule.name, day)
        for rule in family.countdowns
        for day in ([rule.date] if rule.date else _days(rule.yearly, today, last))
        if today < day <= last
    ]
    return tuple(sorted(found, key=lambda countdown: countdown.day))


def _days(yearly: str, first: dt.date, last: dt.date) -> list[dt.date]:
    from warmup.config.yearly import days  # few families have a day that comes every year

    return days(yearly, first, last)


def warnings(family: Family) -> tuple[str, ...]:
    """What is odd but does no harm, a sentence each: levels or items no skill has, a first day off.

    What the family wrote itself may have been taken out of its file again.
    """
    from warmup.skills import item_names, levels

    known, items = levels(), item_names()
    found = [
        f"{child.nickname} has {shown(level)} {how}, and there is no such level{did_you_mean(level, known)}."
        for child in family.children
        for how, names in (("held back", child.held), ("opened early", child.opened))
        for level in names
        if level not in known and not renames.dropped(level) and not is_own(level)
    ]
    found += [
        f"{child.nickname} has {shown(item)} taught again, and there is no such item"
        f"{did_you_mean(item, items)}."
        for child in family.children
        for item, _ in child.taught
        if item not in items and not renames.dropped(item) and not is_own(item)
    ]
    if family.first_day.weekday() not in family.weekdays:
        day = WEEKDAYS[family.first_day.weekday()]
        first = date_words(family.first_day, weekday=False, year=True)
        found.append(f"The first day, {first}, is a {day}, and {day} is no school day of the week.")
    return tuple(found)


def save(path: Path, family: Family, before: Family | None = None) -> Family:
    """Write what changed since ``before``; see :func:`warmup.config.saving.save`, which only a save loads."""
    from warmup.config import saving

    return saving.save(path, family, before)


__all__ = [
    "Child",
    "CountdownRule",
    "Family",
    "FileProblem",
    "YearlyOff",
    "comes_yearly",
    "countdowns",
    "default",
    "load",
    "parse",
    "save",
    "warnings",
    "year_of",
]
