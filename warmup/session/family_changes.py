"""What one action changed in the family, as plain values for the log, and how it is taken back.

A list is taken back by what was added to it and taken from it, so that what came later stays.
"""

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from typing import Any, NamedTuple

from warmup.config.family import CountdownRule, Family
from warmup.config.toml_file import LONGEST_NAME
from warmup.text import clean, visible

_OF_FAMILY = (
    "first_day", "first_week", "held_weeks", "skipped_weeks", "last_day", "settled", "off", "extra",
    "countdowns", "weekdays", "theme", "answers_shown", "pennies", "adult", "animal", "prompts", "toddler",
    "without", "printed",
)  # fmt: skip
_OF_CHILD = (
    "nickname", "held", "opened", "taught", "paused", "reads", "first_day", "first_week", "held_weeks",
    "skipped_weeks", "prompts", "resting", "began",
)  # fmt: skip
"""The fields by the names they have in the log of actions."""
_ATTRIBUTES = {"settled": "known_until"}
"""Those that have another name in :class:`Family`."""
_LISTS = ("off", "extra", "held", "opened", "taught", "countdowns", "without", "printed")
_CAME = "child"
"""The field of a change that is a child itself, who was not there before."""


class FamilyChange(NamedTuple):
    """One field before and after, dates as ISO texts.

    ``child`` is the child's name in the journal, empty for a field of the family itself; ``field`` is the
    name it has in the log.
    """

    child: str
    field: str
    was: Any
    now: Any


def changes_between(before: Family, after: Family) -> tuple[FamilyChange, ...]:
    """The fields an action may change that differ."""
    pairs: list[tuple[str, object, object, Sequence[str]]] = [("", before, after, _OF_FAMILY)]
    was_children = {child.journal_name: child for child in before.children}
    pairs += [
        (child.journal_name, was_children[child.journal_name], child, _OF_CHILD)
        for child in after.children
        if child.journal_name in was_children
    ]
    changed = [
        FamilyChange(child, field, _plain(_get(was, field)), _plain(_get(now, field)))
        for child, was, now, fields in pairs
        for field in fields
        if _get(was, field) != _get(now, field)
    ]
    came = [child.journal_name for child in after.children if child.journal_name not in was_children]
    return (*changed, *(FamilyChange(name, _CAME, False, True) for name in came))


def read_changes(data: Any) -> tuple[FamilyChange, ...]:
    """The changes from their JSON values. ValueError or TypeError for anything else."""
    changes = tuple(FamilyChange(*entry) for entry in data)
    for change in changes:
        if change.child and change.field == _CAME:
            continue
        if change.field not in (_OF_CHILD if change.child else _OF_FAMILY):
            raise ValueError(f"no field that an action changes: {change.field!r}")
        _value(change.field, change.was), _value(change.field, change.now)
    return changes


def taken_back(family: Family, changes: Sequence[FamilyChange]) -> Family:
    """The family without these changes; a field that something else changed since stays as it is.

    ValueError where it can't be had: two children would share a nickname, or none would be left.
    """
    for change in changes:
        if change.field == _CAME:
            stay = tuple(each for each in family.children if each.journal_name != change.child)
            family = family._replace(children=stay)
            continue
        if not change.child:
            restored = _back(change, _get(family, change.field))
            family = family._replace(**{_ATTRIBUTES.get(change.field, change.field): restored})
            continue
        children = tuple(
            replace(child, **{change.field: _back(change, _get(child, change.field))})
            if child.journal_name == change.child
            else child
            for child in family.children
        )
        family = family._replace(children=children)
    if len({child.nickname.casefold() for child in family.children}) != max(1, len(family.children)):
        raise ValueError("no family: a nickname twice, or no child")
    return family


def _get(owner: object, field: str) -> Any:
    """The value of a field of the log in a Family or a Child."""
    return getattr(owner, _ATTRIBUTES.get(field, field))


def _back(change: FamilyChange, current: Any) -> Any:
    was, now = _value(change.field, change.was), _value(change.field, change.now)
    if change.field not in _LISTS:
        return was if current == now else current
    kept = [each for each in current if each in was or each not in now]
    back = [each for each in was if each not in now and each not in kept]
    # Days to look forward to stand in the order in which they were written.
    return tuple([*kept, *back] if change.field == "countdowns" else sorted([*kept, *back]))


def _plain(value: object) -> Any:
    if isinstance(value, dt.date):
        return value.isoformat()
    return [_plain(each) for each in value] if isinstance(value, tuple) else value


def _value(field: str, plain: Any) -> Any:
    match field:
        case "answers_shown" | "pennies" | "toddler":
            if not isinstance(plain, bool):
                raise TypeError(f"neither yes nor no: {plain!r}")
            return plain
        case "nickname" | "adult" | "animal":
            return _name(field, plain)
        case "theme":
            if plain not in ("dark", "light", "contrast"):
                raise ValueError(f"no theme: {plain!r}")
            return plain
        case "weekdays":
            return _weekdays(plain)
        case "reads" | "resting":
            if not isinstance(plain, bool | None):
                raise TypeError(f"neither yes nor no: {plain!r}")
            return plain
        case "first_week":
            return _number(plain)
        case "prompts":
            return plain if plain is None else _number(plain)
        case "held_weeks" | "skipped_weeks":
            return tuple(map(_number, plain))
        case "first_day" | "settled" | "last_day" | "paused" | "began":
            return None if plain is None else dt.date.fromisoformat(plain)
        case "off":
            return tuple((dt.date.fromisoformat(a), dt.date.fromisoformat(b)) for a, b in plain)
        case "countdowns":
            return tuple(_rule(*each) for each in plain)
        case "extra":
            return tuple(map(dt.date.fromisoformat, plain))
        case "taught":
            return tuple((str(item), dt.date.fromisoformat(day)) for item, day in plain)
        case _:
            return tuple(map(str, plain))


def _name(field: str, plain: Any) -> str:
    """A name as a file may hold it; nobody marks where ``adult`` is empty."""
    if not isinstance(plain, str) or plain != clean(plain) or len(plain) > LONGEST_NAME:
        raise TypeError(f"no name: {plain!r}")
    if not visible(plain) and not (field == "adult" and plain == ""):
        raise TypeError(f"no name: {plain!r}")
    return plain


def _weekdays(plain: Any) -> tuple[int, ...]:
    days = tuple(map(_number, plain))
    if not days or list(days) != sorted({*days}) or not 0 <= days[0] <= days[-1] <= 6:
        raise ValueError(f"no school weekdays: {plain!r}")
    return days


def _rule(name: Any, date: Any, yearly: Any) -> CountdownRule:
    return CountdownRule(str(name), None if date is None else dt.date.fromisoformat(date), str(yearly))


def _number(plain: Any) -> int:
    if type(plain) is not int:
        raise TypeError(f"no number: {plain!r}")
    return plain
