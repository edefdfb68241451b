"""The week of a level, written into the family's own year.toml: its line and nothing else.

The file is read again, edited by ``tomlkit`` so that remarks and order stay, and must then say what was asked
for before it takes the place of the old one. Where there is none, one is made that lies over the year that
came along. A file that can't be read, or that says something else afterward, is left as it is.
"""

import tomllib
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from typing import Any

import tomlkit

from warmup.config.places import Places
from warmup.config.plan import FORMAT, is_whole, open_routine, rows_today, shipped, weeks_in
from warmup.config.toml_edit import UNUSUAL, add_key, to_edit, too_unusual
from warmup.config.toml_file import Document, FileProblem
from warmup.config.writing import NO_CHANGE, read_again, write_atomic
from warmup.model import LevelId, skill_and_key

_HEAD = "Only what differs from the year that came with the program. Delete a line to go back to it."


def move_level(places: Places, level: LevelId, week: int) -> None:
    """Let a level of the plan open in this week, 1 to 36; where that is the week it came with, its line goes.

    Raises ``FileProblem`` and changes nothing when the file can't be read or written, or its layout can't be
    changed.
    """
    read_again(places.config / "year.toml", lambda: _move(places, level, week))


def _move(places: Places, level: LevelId, week: int) -> None:
    file, own = open_routine(places, "year")
    path = places.config / "year.toml"
    before = dict(weeks_in(file, own))
    wanted = before | {level: week}
    if wanted == before:
        return
    if not own:
        text = _new(level, week)
        if _says(path, text) != wanted:
            raise too_unusual(path)
        write_atomic(path, text)
        return
    for text in _ways(file, level, week):
        if _says(path, text) == wanted:
            write_atomic(path, text, over=file.text)
            return
    raise too_unusual(path)


def _ways(file: Document, level: LevelId, week: int) -> Iterator[str]:
    """The texts that may say it: without the level's line where that is enough, else with the week in it."""
    skill, key = skill_and_key(level)
    named = rows_today(file).get(level) == (skill, key)
    for removes in (True, False) if named and not is_whole(file) else (False,):
        with suppress(*UNUSUAL):
            document = to_edit(file)
            if removes:
                _remove(document, skill, key)
            else:
                _set(document, skill, key, week)
            yield tomlkit.dumps(document)


def _set(document: Any, skill: str, key: str, week: int) -> None:
    if "skills" not in document:
        document.add("skills", tomlkit.table(is_super_table=True))
    tables = document["skills"]
    if skill not in tables:
        tables.append(skill, tomlkit.table())
    table = tables[skill]
    if key in table:
        table[key] = week
    else:
        add_key(table, key, week)


def _remove(document: Any, skill: str, key: str) -> None:
    """Take the line out; its heading goes where nothing is left under it, not even a remark, but the last."""
    tables = document["skills"]
    del tables[skill][key]
    bare = not tomlkit.dumps(tables[skill]).strip()
    if bare and (len(tables) > 1 or any(name not in ("format", "skills") for name in document)):
        del tables[skill]


def _new(level: LevelId, week: int) -> str:
    document = tomlkit.document()
    document.add(tomlkit.comment(_HEAD))
    document.add("format", FORMAT)
    document.add(tomlkit.nl())
    _set(document, *skill_and_key(level), week)
    return tomlkit.dumps(document)


def _says(path: Path, text: str) -> dict[LevelId, int] | None:
    """The weeks that a text of the family's own year says; None where it is no year."""
    try:
        return dict(weeks_in(Document(path, tomllib.loads(text), text, NO_CHANGE), own=True))
    except (FileProblem, ValueError):
        return None


def shipped_week(level: LevelId) -> int | None:
    """The week of a level in the year that came with the program; None where that leaves it out."""
    return weeks_in(shipped(), own=False).get(level)
