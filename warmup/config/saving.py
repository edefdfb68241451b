"""family.toml written: what changed, and only that, laid into what stands on the disk now.

The file belongs to the family, who may have it open in an editor while one window or two are open as well.
So a save reads it again and lays only the difference of two values into it: the family as this window knew
it, and as it is to be (:func:`merged`). Of lists these are the elements that came and went; children are told
apart by their names in the journal. ``tomlkit`` edits the text, so that comments, order and keys of a newer
version stay; only a save loads it. The window goes on with what the file then says. A file that does not load
any more, or is gone, is left as it is, and the screen says that nothing is saved. The ``.bak`` is the version
before; a second save within the hour does not push it out (:func:`warmup.config.writing.write_atomic`).
"""

import datetime as dt
import tomllib
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

import tomlkit
from tomlkit.items import InlineTable, Null, Table

from warmup import renames
from warmup.config.family import (
    FORMAT,
    Child,
    CountdownRule,
    Family,
    YearlyOff,
    advice,
    comes_yearly,
    parse,
)
from warmup.config.toml_edit import (
    UNUSUAL,
    add_key,
    change_rows,
    last_table,
    set_elements,
    set_keys,
    to_edit,
    too_unusual,
)
from warmup.config.toml_file import Document, Missing, read
from warmup.config.writing import NO_CHANGE, read_again, write_atomic
from warmup.english import WEEKDAYS

_HEAD = "What may stand here, with examples: warmup check --settings"
_WEEKS_OF_ITS_OWN = ("first_day", "first_week", "held_weeks", "skipped_weeks")
_VALUES = ("paused", "reads", *_WEEKS_OF_ITS_OWN, "prompts", "resting", "began")
"""The fields of a child that are one value each."""
T = TypeVar("T")
DaysOff = tuple[dt.date, dt.date] | YearlyOff


def save(path: Path, family: Family, before: Family | None = None) -> Family:
    """Lay what changed from ``before`` to ``family`` into the file; gives the family the file now describes.

    Without ``before`` the file is made, or made to say ``family``. Raises ``FileProblem`` and changes nothing
    when the file can't be read or is gone, when it would not load again, or when the disk refuses.
    """
    return read_again(path, lambda: _save(path, family, before))


def _save(path: Path, family: Family, before: Family | None) -> Family:
    try:
        file = read(path, advice(path))
    except Missing:
        if before is not None:
            gone = "no such file any more"
            raise Missing(path, None, "", "the file that was there", gone, NO_CHANGE) from None
        text = _new(family)
        written = _parsed(path, text)
        write_atomic(path, text)
        return written
    disk = parse(file)
    wanted = merged(before or disk, family, disk)
    if wanted == disk:
        return disk
    # What the new family would not load with is told before the file's own layout is looked at.
    _parsed(path, _new(wanted))
    text = _edited(file, disk, wanted)
    if _parsed(path, text) != wanted:
        raise too_unusual(path)
    write_atomic(path, text, over=file.text)
    return wanted


def _parsed(path: Path, text: str) -> Family:
    try:
        return parse(Document(path, tomllib.loads(text), "", NO_CHANGE))
    except ValueError:
        raise too_unusual(path) from None


# -- what is wanted


def merged(before: Family, after: Family, disk: Family) -> Family:
    """What stands on the disk, with what changed from ``before`` to ``after``."""
    changed: dict[str, Any] = {}
    for name in Family._fields:
        old, new, now = (getattr(each, name) for each in (before, after, disk))
        if old == new:
            continue
        match name:
            case "children":
                changed[name] = _merged_children(old, new, now)
            case "keys":
                continue  # Edited by hand alone.
            case "off" | "yearly_off" | "extra" | "countdowns" | "without" | "printed":
                changed[name] = _patched(old, new, now)
            case "forgotten":
                changed[name] = tuple(sorted(_patched(old, new, now)))
            case _:
                changed[name] = new
    return disk._replace(**changed)


def _patched(old: Sequence[T], new: Sequence[T], disk: Sequence[T]) -> tuple[T, ...]:
    """The elements on the disk less those that went, with those that came at the end."""
    stay = [each for each in disk if each in new or each not in old]
    come = [each for each in new if each not in old and each not in disk]
    return (*stay, *dict.fromkeys(come))


def _merged_children(old: Sequence[Child], new: Sequence[Child], disk: Sequence[Child]) -> tuple[Child, ...]:
    """Children are told apart by their names in the journal."""
    olds, news = ({child.journal_name: child for child in each} for each in (old, new))
    here = {child.journal_name for child in disk}
    stay = [
        _merged_child(olds[child.journal_name], news[child.journal_name], child)
        if child.journal_name in olds and child.journal_name in news
        else child
        for child in disk
        if child.journal_name in news or child.journal_name not in olds
    ]
    come = [child for child in new if child.journal_name not in olds and child.journal_name not in here]
    return (*stay, *come)


def _merged_child(old: Child, new: Child, disk: Child) -> Child:
    taught, taught_before = dict(disk.taught), dict(old.taught)
    for item in taught_before.keys() - dict(new.taught).keys():
        taught.pop(item, None)
    taught |= {item: day for item, day in new.taught if taught_before.get(item) != day}
    return replace(
        disk,
        nickname=new.nickname if new.nickname != old.nickname else disk.nickname,
        **{
            name: getattr(new if getattr(new, name) != getattr(old, name) else disk, name) for name in _VALUES
        },
        held=_patched(old.held, new.held, disk.held),
        opened=_patched(old.opened, new.opened, disk.opened),
        taught=tuple(taught.items()),
    )


# -- the text


def _new(family: Family) -> str:
    document = tomlkit.document()
    document.add(tomlkit.comment(_HEAD))
    document.add("format", FORMAT)
    document.add("school", tomlkit.table())
    _lay(document, None, family)
    return tomlkit.dumps(document)


def _edited(file: Document, disk: Family, wanted: Family) -> str:
    """The text of the file with ``wanted`` in the place of ``disk``."""
    try:
        document = to_edit(file)
        _lay(document, disk, wanted)
        return tomlkit.dumps(document)
    except UNUSUAL:
        raise too_unusual(file.path) from None


def _lay(document: Any, old: Family | None, new: Family) -> None:
    school = document["school"]
    set_keys(school, _school(old), _school(new))
    was_off: Sequence[DaysOff] = _days_off(school.get("days_off", ()), old) if old else ()
    now_off: Sequence[DaysOff] = (*new.off, *new.yearly_off)
    set_elements(school, "days_off", was_off, now_off, _day_off)
    set_elements(school, "extra", old.extra if old else (), new.extra, lambda day, _: day)
    _children(document, old.children if old else (), new.children)
    set_elements(document, "countdown", old.countdowns if old else (), new.countdowns, _rule, tables=True)
    for heading, said in (("preferences", _preferences), ("keeping", _keeping)):
        was, now = said(old), said(new)
        if was != now:
            if heading not in document:
                document.add(heading, tomlkit.table())
            set_keys(document[heading], was, now)
    _household(document, old, new)
    if old is None and new.keys:
        document.add("keys", {action: list(keys) for action, keys in new.keys})


def _household(document: Any, old: Family | None, new: Family) -> None:
    was = (old.toddler, old.without, old.printed) if old else (False, (), ())
    if was == (new.toddler, new.without, new.printed):
        return
    if "household" not in document:
        document.add("household", tomlkit.table())
    table = document["household"]
    set_keys(table, {"toddler": was[0]}, {"toddler": new.toddler})
    set_elements(table, "without", was[1], new.without, lambda name, _: name)
    set_elements(table, "printed", was[2], new.printed, lambda name, _: name)


def _school(family: Family | None) -> dict[str, Any]:
    if family is None:
        return {}
    return {
        "first_day": family.first_day,
        "first_week": family.first_week,
        "held_weeks": list(family.held_weeks),
        "skipped_weeks": list(family.skipped_weeks),
        "last_day": family.last_day,
        "weekdays": [WEEKDAYS[day] for day in family.weekdays],
        "began": family.began,
        "settled": family.known_until,
    }


def _preferences(family: Family | None) -> dict[str, Any]:
    if family is None:
        return {"animal": "Bear"}
    return {
        "theme": family.theme,
        "answers": "shown" if family.answers_shown else "covered",
        "pennies": family.pennies,
        "animal": family.animal,
        "adult": family.adult,
        "prompts": family.prompts,
        "together": family.together or None,
        "pixels": None if family.pixels else False,
    }


def _keeping(family: Family | None) -> dict[str, Any]:
    return {
        "copies": family.copies if family else "",
        "forgotten": list(family.forgotten) if family else [],
    }


def _children(document: Any, old: Sequence[Child], new: Sequence[Child]) -> None:
    names, news = [child.journal_name for child in old], {child.journal_name: child for child in new}
    tables = document.get("child", ())
    for index, child in enumerate(old):
        if child.journal_name in news:
            _child(tables[index], child, news[child.journal_name])
    come = [child for child in new if child.journal_name not in names]
    gone = [index for index, name in enumerate(names) if name not in news]
    change_rows(document, "child", gone, come, _child_table, tables=True)


def _child_table(child: Child, plain: bool) -> Any:
    table = tomlkit.inline_table() if plain else tomlkit.table()
    _child(table, Child("", journal_name=child.journal_name), child)
    return table


def _child(table: Any, old: Child, new: Child) -> None:
    if new.nickname != old.nickname:
        set_keys(table, {}, {"nickname": new.nickname})
        if "record" not in table:
            set_keys(table, {}, {"record": new.journal_name})
    _levels(table, "held", old.held, new.held)
    _levels(table, "opened", old.opened, new.opened)
    set_keys(table, _values(old), _values(new))
    before: dict[str, dt.date] = dict(old.taught)
    after: dict[str, dt.date] = dict(new.taught)
    if before == after:
        return
    if "taught" not in table:
        add_key(
            table, "taught", tomlkit.inline_table() if isinstance(table, InlineTable) else tomlkit.table()
        )
    taught = table["taught"]
    if list(taught) != list(before):
        # Items by names of before: today's take their places.
        for item in list(taught):
            del taught[item]
        set_keys(taught, {}, before)
    set_keys(taught, before, after | dict.fromkeys(before.keys() - after.keys()))
    if not after:
        kept = [each for each in taught.value.body if each[0] is None and not isinstance(each[1], Null)]
        del table["taught"]
        if isinstance(taught, Table):
            last_table(table).value.body.extend(kept)


def _values(child: Child) -> dict[str, Any]:
    """What is one key of the child's table; what is as it is without the key says nothing."""
    own = child.first_day is not None
    return {
        "paused": child.paused,
        "reads": child.reads,
        "first_day": child.first_day,
        "first_week": child.first_week if own else None,
        "held_weeks": list(child.held_weeks) if own else None,
        "skipped_weeks": list(child.skipped_weeks) if own else None,
        "prompts": child.prompts,
        "resting": child.resting or None,
        "began": child.began,
    }


def _levels(table: Any, key: str, old: Sequence[str], new: Sequence[str]) -> None:
    """Change a list of levels; those by names of before get today's, each once, as they were read."""
    if old == new:
        return
    rows = table.get(key, ())
    for place in reversed(range(len(rows))):
        above = {name for row in rows[:place] for name in renames.levels(str(row))}
        today = [name for name in renames.levels(str(rows[place])) if name not in above]
        if today != [str(rows[place])]:
            del rows[place]
            for name in reversed(today):
                rows.insert(place, name)
    set_elements(table, key, old, new, lambda level, _: level)


def _days_off(rows: Sequence[object], family: Family) -> tuple[DaysOff, ...]:
    """The family's days off in the order in which they are written."""
    dates, yearly = iter(family.off), iter(family.yearly_off)
    return tuple(next(yearly) if comes_yearly(row) else next(dates) for row in rows)


def _day_off(off: DaysOff, in_a_list: bool) -> Any:
    table = tomlkit.inline_table() if in_a_list else tomlkit.table()
    if isinstance(off, YearlyOff):
        if in_a_list and off.days == 1:
            return off.yearly
        table.update({"yearly": off.yearly, "days": off.days})
        return table
    first, last = off
    if in_a_list and first == last:
        return first
    table.update({"from": first, "to": last})
    return table


def _rule(rule: CountdownRule, in_a_list: bool) -> Any:
    table = tomlkit.inline_table() if in_a_list else tomlkit.table()
    set_keys(table, {}, {"name": rule.name, "date": rule.date, "yearly": rule.yearly})
    return table
