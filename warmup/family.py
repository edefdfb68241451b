"""Who the children are and when school is on: ``family.toml``, read with care, checked, and written."""

import calendar
import copy
import datetime as dt
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

from dateutil import rrule

from warmup.documents import (
    Document,
    FileProblem,
    Missing,
    clean,
    did_you_mean,
    read,
    shown,
    visible,
    write_atomic,
)
from warmup.morning import Countdown
from warmup.schoolyear import WEEKS
from warmup.words import MONTHS, WEEKDAYS, date_words

FORMAT = 1
LONGEST_BREAK = 366
"""The longest stretch of days off in one line, in days: a longer one is a slip in the year."""
PLACEHOLDER = "Sunshine"
"""The nickname a child has until the family gives one."""
_MOST_TAUGHT = 1000
_ORDINALS = {"first": 1, "second": 2, "third": 3, "fourth": 4, "last": -1}
_YEARLY = 'a day like "December 25", "fourth Thursday of November" or "last Monday of May"'


@dataclass(frozen=True, slots=True)
class Child:
    """One child: a nickname, and the levels (``skill:level``) held back or opened early.

    ``record`` is the name its marks are kept under: the first nickname, so that a new one loses nothing.
    ``taught`` holds items (``skill/name``), each once, with the date the adult said they were taught again.
    Up to and on ``paused`` no level opens that has not begun.
    """

    nickname: str
    held: tuple[str, ...] = ()
    opened: tuple[str, ...] = ()
    record: str = ""
    taught: tuple[tuple[str, dt.date], ...] = ()
    paused: dt.date | None = None

    def __post_init__(self) -> None:
        if not self.record:
            object.__setattr__(self, "record", self.nickname)


class CountdownRule(NamedTuple):
    """A day that matters: its name, and either its date or, when it comes every year, how it is found."""

    name: str
    date: dt.date | None = None
    yearly: str = ""


class Family(NamedTuple):
    """What family.toml says.

    ``weekdays`` are the school weekdays in order (0 is Monday). ``began`` is the day the program was first
    used, ``settled`` the day up to which each planned morning is known to be school or off. ``off`` holds
    stretches of days off, both ends included; ``extra`` the mornings held beside the plan. ``theme`` is
    "dark" or "light"; ``adult`` is who marks, empty when it does not matter; ``animal`` what the stuffed
    animal of some prompts is called.
    """

    first_day: dt.date
    began: dt.date
    children: tuple[Child, ...]
    first_week: int = 1
    weekdays: tuple[int, ...] = (0, 1, 2, 3)
    settled: dt.date | None = None
    off: tuple[tuple[dt.date, dt.date], ...] = ()
    extra: tuple[dt.date, ...] = ()
    countdowns: tuple[CountdownRule, ...] = ()
    theme: str = "dark"
    answers_shown: bool = True
    pennies: bool = True
    adult: str = ""
    animal: str = "Bear"


def default(today: dt.date) -> Family:
    """A family that has told nothing yet: four mornings a week from the last Monday of August.

    From July on that is this year's August, before that last year's (common practice, no source).
    """
    year = today.year if today.month >= 7 else today.year - 1
    last = dt.date(year, 8, 31)
    return Family(
        first_day=last - dt.timedelta(last.weekday()), began=today, children=(Child(nickname=PLACEHOLDER),)
    )


def load(path: Path) -> Family:
    """The family in this file: ``Missing`` when there is none, ``FileProblem`` when a value is wrong."""
    return parse(read(path))


def parse(file: Document) -> Family:
    """The family a document describes, or a ``FileProblem`` that names the line."""
    if file.has("format") and file.data["format"] != FORMAT:
        file.refuse(("format",), f"format = {FORMAT} (this file may be from a newer version)")
    first_day = file.date("school", "first_day")
    return Family(
        first_day=first_day,
        began=file.date("school", "began", default=first_day),
        children=_children(file),
        first_week=file.whole("school", "first_week", least=1, most=WEEKS, default=1),
        weekdays=_weekdays(file),
        settled=file.date("school", "settled") if file.has("school", "settled") else None,
        off=tuple(_stretch(file, n) for n in range(file.length("school", "days_off"))),
        extra=tuple(file.date("school", "extra", n) for n in range(file.length("school", "extra"))),
        countdowns=tuple(_rule(file, n) for n in range(file.length("countdown", most=100))),
        theme=file.choice("preferences", "theme", among=("dark", "light"), default="dark"),
        answers_shown=file.choice("preferences", "answers", among=("shown", "covered"), default="shown")
        == "shown",
        pennies=file.flag("preferences", "pennies", default=True),
        adult=file.name("preferences", "adult", default=""),
        animal=file.name("preferences", "animal", default="Bear"),
    )


def _children(file: Document) -> tuple[Child, ...]:
    children: list[Child] = []
    for n in range(file.length("child", most=30)):
        nickname = file.name("child", n, "nickname")
        if any(nickname.casefold() == child.nickname.casefold() for child in children):
            file.refuse(("child", n, "nickname"), "a nickname no other child has")
        held, opened = file.names("child", n, "held"), file.names("child", n, "opened")
        record = file.name("child", n, "record", default=nickname)
        if any(record == child.record for child in children):
            file.refuse(("child", n, "record"), "a record no other child has")
        paused = file.date("child", n, "paused") if file.has("child", n, "paused") else None
        children.append(Child(nickname, held, opened, record, _taught(file, n), paused))
    if not children:
        raise file.problem(("child",), "at least one [[child]] with a nickname", "none")
    return tuple(children)


def _taught(file: Document, n: int) -> tuple[tuple[str, dt.date], ...]:
    keys = ("child", n, "taught")
    items = file.keys_of(*keys)
    if len(items) > _MOST_TAUGHT:
        raise file.problem(keys, f"a table of at most {_MOST_TAUGHT}", f"{len(items)}")
    for item in items:
        # A key is not mended as other words are: two might become one.
        if item != clean(item) or not visible(item) or len(item) > 80:
            raise file.problem((*keys, item), "an item like make-ten/seven-three", shown(item))
    return tuple((item, file.date(*keys, item)) for item in items)


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
    yearly = file.name("countdown", n, "yearly", most=80)
    if _yearly(yearly) is None:
        file.refuse(("countdown", n, "yearly"), _YEARLY)
    return CountdownRule(name, yearly=yearly)


def _named(word: str, among: Sequence[str]) -> int | None:
    return next((n for n, name in enumerate(among) if name.lower() == word.lower()), None)


def _yearly(words: str) -> dict[str, Any] | None:
    """The terms of a yearly recurrence for ``rrule``; None when the words are not understood."""
    if (match := re.fullmatch(r"(\w+) ([0-9]{1,2})", words)) and (
        month := _named(match[1], MONTHS)
    ) is not None:
        day = int(match[2])
        # 2000 was a leap year: February 29 is a day some years have.
        return (
            {"bymonth": month + 1, "bymonthday": day}
            if 1 <= day <= calendar.monthrange(2000, month + 1)[1]
            else None
        )
    if match := re.fullmatch(r"(\w+) (\w+) (?:of|in) (\w+)", words):
        ordinal, weekday, month = (
            _ORDINALS.get(match[1].lower()),
            _named(match[2], WEEKDAYS),
            _named(match[3], MONTHS),
        )
        if ordinal and weekday is not None and month is not None:
            return {"bymonth": month + 1, "byweekday": rrule.weekday(weekday, ordinal)}
    return None


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
    terms = _yearly(yearly)
    if terms is None:
        return []
    midnight = dt.time()
    start, until = dt.datetime.combine(first, midnight), dt.datetime.combine(last, midnight)
    return [day.date() for day in rrule.rrule(rrule.YEARLY, dtstart=start, until=until, **terms)]


def warnings(family: Family) -> tuple[str, ...]:
    """What is odd but does no harm, a sentence each: levels or items no skill has, a first day off."""
    from warmup.skills import item_names, levels

    known, items = levels(), item_names()
    found = [
        f"{child.nickname} has {shown(level)} {how}, and there is no such level{did_you_mean(level, known)}."
        for child in family.children
        for how, names in (("held back", child.held), ("opened early", child.opened))
        for level in names
        if level not in known
    ]
    found += [
        f"{child.nickname} has {shown(item)} taught again, and there is no such item"
        f"{did_you_mean(item, items)}."
        for child in family.children
        for item, _ in child.taught
        if item not in items
    ]
    if family.first_day.weekday() not in family.weekdays:
        day = WEEKDAYS[family.first_day.weekday()]
        first = date_words(family.first_day, weekday=False, year=True)
        found.append(f"The first day, {first}, is a {day}, and {day} is no school day of the week.")
    return tuple(found)


def dump(family: Family, over: Mapping[str, Any]) -> dict[str, Any]:
    """The family as it is written, laid over ``over``, whose keys unknown here stay as they are."""
    data: dict[str, Any] = {"format": FORMAT, **copy.deepcopy(dict(over))}
    school = _table(data, "school")
    school |= {
        "first_day": family.first_day,
        "first_week": family.first_week,
        "weekdays": [WEEKDAYS[day] for day in family.weekdays],
        "began": family.began,
    }
    _put(school, "settled", family.settled)
    _put(school, "days_off", _over([_off(*ends) for ends in family.off], school.get("days_off"), _ends))
    _put(school, "extra", list(family.extra))
    children = [
        {
            "nickname": child.nickname,
            "record": child.record,
            "held": list(child.held),
            "opened": list(child.opened),
            "paused": child.paused,
            "taught": dict(child.taught),
        }
        for child in family.children
    ]
    _put(data, "child", _over(children, data.get("child"), lambda child: child.get("nickname")))
    rules = [{"name": r.name, "date": r.date, "yearly": r.yearly} for r in family.countdowns]
    _put(data, "countdown", _over(rules, data.get("countdown"), lambda rule: rule.get("name")))
    answers = "shown" if family.answers_shown else "covered"
    preferences = _table(data, "preferences")
    preferences |= {"theme": family.theme, "answers": answers, "pennies": family.pennies}
    _put(preferences, "animal", family.animal if family.animal != "Bear" else "")
    _put(preferences, "adult", family.adult)
    return data


def _table(data: dict[str, Any], key: str) -> dict[str, Any]:
    table: dict[str, Any] = data.setdefault(key, {})
    return table


def _put(table: dict[str, Any], key: str, value: Any) -> None:
    """Set the key, or take it away when there is nothing to say."""
    if value:
        table[key] = value
    else:
        table.pop(key, None)


def _off(first: dt.date, last: dt.date) -> Any:
    return first if first == last else {"from": first, "to": last}


def _ends(stretch: Any) -> Any:
    return (stretch.get("from"), stretch.get("to")) if isinstance(stretch, dict) else stretch


def _over(new: list[Any], old: Any, same: Callable[[Any], Any]) -> list[Any]:
    """Each new table laid over the old one of the same name, or else the unclaimed one in its place."""
    olds: list[Any] = old if isinstance(old, list) else []
    claimed = {
        id(table) for table in olds if isinstance(table, dict) and any(_same(table, n, same) for n in new)
    }
    merged = []
    for index, table in enumerate(new):
        if not isinstance(table, dict):
            merged.append(table)
            continue
        under = next((o for o in olds if isinstance(o, dict) and _same(o, table, same)), None)
        if (
            under is None
            and index < len(olds)
            and isinstance(olds[index], dict)
            and id(olds[index]) not in claimed
        ):
            under = olds[index]
        laid = dict(under or {})
        for key, value in table.items():
            _put(laid, key, value)
        merged.append(laid)
    return merged


def _same(one: Any, other: Any, same: Callable[[Any], Any]) -> bool:
    return isinstance(other, dict) and bool(same(one) == same(other))


def save(path: Path, family: Family) -> None:
    """Write the family, keeping every key of the file this version does not know.

    Raises ``FileProblem`` and changes nothing when the file there can't be read, when the family would
    not load again (a nickname too long), or when the disk refuses. Comments are kept in the ``.bak`` only.
    """
    try:
        file = read(path)
        parse(file)
        over = file.data
    except Missing:
        over = {}
    data = dump(family, over)
    parse(Document(path, data, "", advice="Nothing was changed."))
    write_atomic(path, data)


__all__ = [
    "Child",
    "CountdownRule",
    "Family",
    "FileProblem",
    "countdowns",
    "default",
    "dump",
    "load",
    "parse",
    "save",
    "warnings",
]
