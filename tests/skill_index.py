"""The index of the skills, made from their own files.

    python -m tests.skill_index

writes it; a test fails while it is out of date.
"""

from collections.abc import Iterator
from pathlib import Path

from warmup.model import LevelId, level_id
from warmup.skills import SKILLS, _index
from warmup.skills.base import Level, always, never

FILE = Path(_index.__file__)
_TEXT = '''"""What every level is and what its items are, as the skills' own files have it.

A copy, so that a new morning loads the skills it asks for and not all of them. It is made by
``python -m tests.skill_index``, and a test compares the two.
"""

from typing import Any

# fmt: off
ASKABLE: tuple[str, ...] = {askable}
"""The skills with an ``askable`` of their own."""
TIMELY: tuple[str, ...] = {timely}
"""The skills with a ``timely`` of their own."""
LEVELS: dict[str, tuple[Any, ...]] = {{
{levels}
}}
"""By the id of a level, skill after skill and lowest first: its number in the skill, strand, ``stands_on``,
``waits_on``, codes, whether it is on the ladder and wants things on the table; and its items, each with its
name, whether it is a misconception item, guess, seconds, and whether a morning may end with it."""
'''


def text() -> str:
    """The whole file."""
    skills = SKILLS.values()
    return _TEXT.format(
        askable=tuple(skill.id for skill in skills if skill.askable is not always),
        timely=tuple(skill.id for skill in skills if skill.timely is not never),
        levels="\n".join(f"    {level!r}: {row!r}," for level, row in _levels()),
    )


def _levels() -> Iterator[tuple[LevelId, tuple[object, ...]]]:
    for skill in SKILLS.values():
        for number, level in enumerate(skill.levels, start=1):
            of_level = (skill.strand.value, level.stands_on, level.waits_on, level.codes)
            flags = (level.key in skill.ladder, bool(level.table))
            yield level_id(skill.id, level.key), (number, *of_level, *flags, tuple(_items(level)))


def _items(level: Level) -> Iterator[tuple[object, ...]]:
    for name in level.items:
        trouble, ends = name in level.misconceptions, name in level.ends
        yield name, trouble, level.guess_of(name), level.seconds_of(name), ends


if __name__ == "__main__":
    FILE.write_text(text(), "utf-8")
    print(f"{FILE.name}: {len(_index.LEVELS)} levels before, {len(dict(_levels()))} now")
