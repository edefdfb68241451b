"""The year plan and the shapes of a morning: ``routines/*.toml``, where a family's own copy wins.

A family's own year.toml lies over the one that came with the program: what it names counts, and the rest
stays. One with the line ``weeks = 36``, as a copy of the whole file has it, says all of the year: a level it
leaves out is not asked.
"""

import re
from collections.abc import Iterator, Mapping
from contextlib import suppress
from functools import cached_property

from warmup import renames
from warmup.config.places import Places, routines_folder
from warmup.config.toml_file import Document, FileProblem, Missing, read
from warmup.model import (
    FEWEST_PROMPTS,
    MOST_PROMPTS,
    SECONDS,
    LevelId,
    Plan,
    Shape,
    Slot,
    SlotKind,
    level_id,
    skill_and_key,
)
from warmup.schoolyear import WEEKS
from warmup.skills import SKILLS, levels
from warmup.text import did_you_mean, shown

FORMAT = 1
_MOST_OF_A_SLOT = 12
"""The most prompts one slot, and one morning of an own shape that counts for itself, may have."""
_OF_A_YEAR = (
    "format", "skills", "review_weeks", "nothing_new_from", "prompts", "weeks_a_quarter", "review_every",
)  # fmt: skip
"""What a year that lies over the one that came along may say."""
SHAPES = ("daily", "short", "review")
"""The shapes that come with the program."""
_NO_SHAPES = ("family", "own", "year")
"""What lies beside a family's own shapes and is none."""
_OWN = "Fix that line, or delete your copy to go back to the file that came with the program."
_SHIPPED = "This file came with the program: install it again."


def open_routine(places: Places, name: str) -> tuple[Document, bool]:
    """The routine file of this name, and whether it is the family's own copy."""
    try:
        return read(places.config / f"{name}.toml", _OWN), True
    except Missing:
        return read(routines_folder() / f"{name}.toml", _SHIPPED), False


def load_plan(places: Places) -> Plan:
    """The year plan: the earliest week of each level, and how many prompts a morning has in each week.

    Raises ``FileProblem`` when a week is no number from 1 to 36, or a number of prompts none from 4 to 10. A
    level that no skill has is one too in the family's own copy; in the file that came with the program it is
    left out (:func:`warmup.config.plan_check.check_plan` lists it).
    """
    file, own = open_routine(places, "year")
    return Plan(
        weeks_in(file, own), plan_prompts(file, own), review_weeks(file, own), nothing_new_from(file, own)
    )


class _Known(Mapping[LevelId, int]):
    """The weeks of those levels that a skill has: all skills are loaded once the first is asked for."""

    def __init__(self, weeks: Mapping[LevelId, int]) -> None:
        self._written = weeks

    @cached_property
    def _weeks(self) -> Mapping[LevelId, int]:
        known = frozenset(levels())
        return {level: week for level, week in self._written.items() if level in known}

    def __getitem__(self, level: LevelId) -> int:
        return self._weeks[level]

    def __iter__(self) -> Iterator[LevelId]:
        return iter(self._weeks)

    def __len__(self) -> int:
        return len(self._weeks)


def is_whole(file: Document) -> bool:
    """Whether a family's own year says all of it, and does not lie over the one that came along."""
    return file.has("weeks")


def weeks_in(file: Document, own: bool) -> Mapping[LevelId, int]:
    """The week of each level by its name today; ``FileProblem`` for an unknown level of an own file."""
    file.check_format(FORMAT)
    if own and not is_whole(file):
        file.only(_OF_A_YEAR)
        if not any(file.has(key) for key in _OF_A_YEAR[1:]):
            raise file.problem(("skills",), "at least one level with its week", "none")
        return {**weeks_in(shipped(), own=False), **_own_weeks(file)}
    weeks = _own_weeks(file) if own else {name: week_at(file, *row) for name, row in rows_today(file).items()}
    if not weeks:
        raise file.problem(("skills",), "at least one level with its week", "none")
    return weeks if own else _Known(weeks)


def _own_weeks(file: Document) -> dict[LevelId, int]:
    """The weeks that a family's own file names."""
    known, found = frozenset(levels()), rows_today(file)
    if not found.keys() <= known:
        raise next(unknown(file))
    return {name: week_at(file, *row) for name, row in found.items()}


def review_weeks(file: Document, own: bool) -> tuple[int, ...]:
    """The review weeks in their order; those of the file that came along where an own copy names none."""
    if own and not file.has("review_weeks"):
        return review_weeks(shipped(), own=False)
    found: list[int] = []
    for n in range(file.length("review_weeks", most=WEEKS)):
        found.append(file.whole("review_weeks", n, least=found[-1] + 1 if found else 1, most=WEEKS))
    return tuple(found)


def nothing_new_from(file: Document, own: bool) -> int:
    """The week from which on no level opens, found as the review weeks are."""
    if own and not file.has("nothing_new_from"):
        return nothing_new_from(shipped(), own=False)
    return file.whole("nothing_new_from", least=2, most=WEEKS, default=WEEKS)


def plan_prompts(file: Document, own: bool) -> tuple[tuple[int, int], ...]:
    """How many prompts a morning has, as (last week, number) pairs, found as the review weeks are."""
    if own and not file.has("prompts"):
        return plan_prompts(shipped(), own=False)
    return _counts(file, least=FEWEST_PROMPTS, most=MOST_PROMPTS)


def shipped() -> Document:
    """The year that came with the program."""
    return read(routines_folder() / "year.toml", _SHIPPED)


def rows(file: Document) -> Iterator[tuple[str, str]]:
    """The skill and level of each line, as the file writes them."""
    for skill in file.keys_of("skills"):
        for level in file.keys_of("skills", skill):
            yield skill, level


def rows_today(file: Document) -> dict[LevelId, tuple[str, str]]:
    """The row that says the week of each level, by the level's name today; dropped levels are left out.

    A row with today's name counts before one with an older name. Of several older levels that are one
    today the last counts: no part of it was to be asked before its week.
    """
    found: dict[LevelId, tuple[str, str]] = {}
    for row in rows(file):
        written = level_id(*row)
        for name in () if renames.dropped(written) else map(LevelId, renames.levels(written)):
            if name == written or found.get(name) != skill_and_key(name):
                found[name] = row
    return found


def week_at(file: Document, skill: str, level: str) -> int:
    """The week that the line of this skill and level says, 1 to 36."""
    return file.whole("skills", skill, level, least=1, most=WEEKS)


def unknown(file: Document) -> Iterator[FileProblem]:
    """The skills and levels of a year that no skill has, nor had, each where it stands."""
    for skill in file.keys_of("skills"):
        gone = [key for key in file.keys_of("skills", skill) if not _known(skill, key)]
        if skill not in SKILLS and (gone or not file.keys_of("skills", skill)):
            found = shown(skill) + did_you_mean(skill, SKILLS)
            yield file.problem(("skills", skill), "the name of a skill", found)
        elif skill in SKILLS:
            known = [level.key for level in SKILLS[skill].levels]
            for level in gone:
                found = shown(level) + did_you_mean(level, known)
                yield file.problem(("skills", skill, level), f'a level of "{skill}"', found)


def _known(skill: str, key: str) -> bool:
    written = level_id(skill, key)
    return renames.dropped(written) or set(renames.levels(written)) <= set(levels())


def shapes(places: Places) -> tuple[str, ...]:
    """The names of the shapes there are: those that came along, then the family's own."""
    own: set[str] = set()
    # A folder that can't be looked at has none; reading a file in it says why.
    with suppress(OSError):
        own = {path.stem for path in places.config.glob("*.toml")} - {*_NO_SHAPES, *SHAPES}
    return SHAPES + tuple(sorted(name for name in own if _is_name(name)))


def _is_name(name: str) -> bool:
    return re.fullmatch(r"[a-z0-9][a-z0-9-]{0,39}", name) is not None


def load_shape(places: Places, name: str) -> Shape:
    """The shape of this name. ``FileProblem`` when there is none or it is not as it should be."""
    path = places.config / f"{name}.toml"
    if not _is_name(name) or name in _NO_SHAPES:
        advice = f"There are {', '.join(shapes(places))}."
        raise FileProblem(path, None, "", "the name of a shape", shown(name), advice)
    try:
        file, _ = open_routine(places, name)
    except Missing:
        advice = f"There are {', '.join(shapes(places))}."
        raise Missing(path, None, "", "a file", "none", advice) from None
    return _shape(name, file)


def _shape(name: str, file: Document) -> Shape:
    file.check_format(FORMAT)
    file.only(("format", "seconds", "at_most", "prompts", "slot"))
    slots: list[Slot] = []
    for n in range(file.length("slot", most=20)):
        slot = _slot(file, n)
        if slot.kind is SlotKind.NAMED and not slot.only:
            continue  # All it named is asked no more.
        if slot.kind is not SlotKind.NAMED and slot.kind in [other.kind for other in slots]:
            found = f"{shown(slot.kind.value)} a second time"
            raise file.problem(("slot", n, "kind"), "each kind once, save named", found)
        slots.append(slot)
    if not slots:
        raise file.problem(("slot",), "at least one [[slot]]", "none")
    seconds = file.whole("seconds", least=60, most=900, default=SECONDS)
    prompts = _counts(file, least=1, most=_MOST_OF_A_SLOT) if file.has("prompts") else ()
    return Shape(name, tuple(slots), prompts, seconds, _at_most(name, file, prompts))


def _at_most(name: str, file: Document, prompts: tuple[tuple[int, int], ...]) -> int:
    """The most prompts of the shape, 0 for no such limit.

    A short morning of the form of before has only ``prompts``: it stays as short as that, whatever number of
    prompts the family asks for.
    """
    if file.has("at_most"):
        return file.whole("at_most", least=1, most=MOST_PROMPTS)
    return max((count for _, count in prompts), default=0) if name == "short" else 0


def _counts(file: Document, *, least: int, most: int) -> tuple[tuple[int, int], ...]:
    """What ``prompts`` says: one number for the whole year, or one for each stretch of weeks."""
    if not isinstance(file.data.get("prompts"), list):
        return ((WEEKS, file.whole("prompts", least=least, most=most)),)
    counts: list[tuple[int, int]] = []
    for n in range(file.length("prompts", most=WEEKS)):
        week = counts[-1][0] + 1 if counts else 1
        last = file.whole("prompts", n, "to_week", least=week, most=WEEKS)
        counts.append((last, file.whole("prompts", n, "count", least=least, most=most)))
    if not counts:
        file.refuse(("prompts",), "a number, or at least one stretch of weeks")
    return tuple(counts)


def _slot(file: Document, n: int) -> Slot:
    kind = SlotKind(file.choice("slot", n, "kind", among=[kind.value for kind in SlotKind]))
    file.only(("kind", "most", "only"), "slot", n)
    if kind is not SlotKind.NAMED and file.has("slot", n, "only"):
        expected = 'no such key: only a slot of kind "named" is held to some skills'
        file.refuse(("slot", n, "only"), expected)
    named = file.names("slot", n, "only")
    only: list[str] = []
    known = (*SKILLS, *levels()) if named else ()
    for index, name in enumerate(named):
        today = () if renames.dropped(name) else renames.levels(name)
        if not set(today) <= set(known):
            found = shown(name) + did_you_mean(name, known)
            raise file.problem(("slot", n, "only", index), "a skill or a level", found)
        only += today
    if kind is SlotKind.NAMED and not named:
        raise file.problem(("slot", n, "only"), "the skills or levels this slot is for", "nothing")
    return Slot(
        kind, file.whole("slot", n, "most", least=1, most=_MOST_OF_A_SLOT), tuple(dict.fromkeys(only))
    )
