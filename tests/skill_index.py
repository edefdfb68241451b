"""The index of the skills, made from their own files.

    python -m tests.skill_index

writes it, and says what a new skill still lacks and which weeks of the year have room. A test fails while it
is out of date.
"""

import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from importlib import reload
from pathlib import Path

from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.config.plan_check import check_plan
from warmup.config.plan_fit import most_in
from warmup.model import LevelId, item_id, level_id
from warmup.skills import SKILLS, Skill, _conditions, _index, item_names
from warmup.skills.base import Condition, Level

FILE = Path(_index.__file__)
_TEXT = '''"""What every level is and what its items are, as the skills' own files have it.

A copy, so that a new morning loads the skills it asks for and not all of them. It is made by
``python -m tests.skill_index``, and a test compares the two.
"""

from collections.abc import Callable
from typing import Any

from warmup.model import Morning
from warmup.skills import _conditions

# fmt: off
ASKABLE: dict[str, Callable[[Morning], bool]] = {{
{askable}
}}
"""The condition of each item that makes sense on some mornings only."""
TIMELY: dict[str, Callable[[Morning], bool]] = {{
{timely}
}}
"""The condition of each item that some mornings ask for by themselves."""
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
        askable="\n".join(row for skill in skills for row in _conditional(skill.id, skill.askable)),
        timely="\n".join(row for skill in skills for row in _conditional(skill.id, skill.timely)),
        levels="\n".join(f"    {level!r}: {row!r}," for level, row in _levels()),
    )


def _conditional(skill: str, conditions: Mapping[str, Condition]) -> Iterator[str]:
    """A row an item; a condition is a function of the module for them."""
    for name, condition in conditions.items():
        assert getattr(_conditions, condition.__name__) is condition
        yield f"    {item_id(skill, name)!r}: _conditions.{condition.__name__},"


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


def lacking(skills: Iterable[Skill]) -> Iterator[str]:
    """What these skills lack to be asked, a sentence each: a base, an item waited on, a recomputation."""
    for skill in skills:
        oracle = f"tests/oracles/{skill.id.replace('-', '_')}.py"
        if not (FILE.parents[2] / oracle).exists():
            yield f"{oracle}: there is no such file yet"
        for level in skill.levels:
            named = [("stands on", base, base in _index.LEVELS) for base in level.stands_on]
            named += [("waits on", item, item in item_names()) for item in level.waits_on]
            for verb, name, there in named:
                if not there:
                    yield f"{skill.id}:{level.key} {verb} {name}, and no skill has that"


def slips() -> Iterator[str]:
    """What is wrong with the weeks of routines/year.toml."""
    with tempfile.TemporaryDirectory() as nothing_own:
        for problem in check_plan(Places(Path(nothing_own), Path(nothing_own))):
            yield str(problem).removesuffix(problem.advice).rstrip()


def weeks_with_room() -> Iterator[int]:
    """The weeks in which one more level may open."""
    with tempfile.TemporaryDirectory() as nothing_own:
        plan = load_plan(Places(Path(nothing_own), Path(nothing_own)))
    opens = Counter(plan.weeks.values())
    for week in range(1, plan.nothing_new_from):
        if week not in plan.reviews and opens[week] < most_in(week):
            yield week


def main() -> None:
    """Write the index, and say what is still to do."""
    before = len(_index.LEVELS)
    FILE.write_text(text(), "utf-8")
    reload(_index)
    print(f"{FILE.name}: {before} levels before, {len(_index.LEVELS)} now")
    for sentence in (*lacking(SKILLS.values()), *slips()):
        print(sentence)
    print(f"weeks with room for one more level: {', '.join(map(str, weeks_with_room()))}")


if __name__ == "__main__":
    main()
