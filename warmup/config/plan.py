"""The year plan and the shapes of a morning: ``routines/*.toml``, where a family's own copy wins."""

import re
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress

from warmup import renames
from warmup.config.places import Places, routines_folder
from warmup.config.toml_file import Document, FileProblem, Missing, read
from warmup.model import Plan, Shape, Slot, SlotKind
from warmup.schoolyear import REVIEW_EVERY, WEEKS, WEEKS_A_QUARTER
from warmup.skills import SKILLS, levels
from warmup.text import did_you_mean, shown

FORMAT = 1
MOST_PROMPTS = 12
"""The most prompts one slot, and one morning, may have."""
SHAPES = ("daily", "short", "review")
"""The shapes that come with the program."""
_OWN = "Fix that line, or delete your copy to go back to the file that came with the program."
_SHIPPED = "This file came with the program: install it again."
_FIXED = {"weeks": WEEKS, "weeks_a_quarter": WEEKS_A_QUARTER, "review_every": REVIEW_EVERY}


def _open(places: Places, name: str) -> tuple[Document, bool]:
    """The routine file of this name, and whether it is the family's own copy."""
    try:
        return read(places.config / f"{name}.toml", _OWN), True
    except Missing:
        return read(routines_folder() / f"{name}.toml", _SHIPPED), False


def load_plan(places: Places) -> Plan:
    """The year plan: the earliest week of each level.

    Raises ``FileProblem`` when a week is no number from 1 to 36. A level that no skill has is one too in
    the family's own copy; in the file that came with the program it is left out (``check_plan`` lists it).
    """
    file, own = _open(places, "year")
    return Plan(_weeks(file, own))


def _weeks(file: Document, own: bool) -> dict[str, int]:
    _format(file)
    known = frozenset(levels())
    weeks = {}
    for skill, level in _rows(file):
        if (name := renames.level(f"{skill}:{level}")) in known:
            weeks[name] = _week(file, skill, level)
        elif own:
            raise next(_unknown(file))
    if not weeks:
        raise file.problem(("skills",), "at least one level with its week", "none")
    return weeks


def _format(file: Document) -> None:
    if file.has("format") and file.data["format"] != FORMAT:
        file.refuse(("format",), f"format = {FORMAT} (this file may be from a newer version)")


def _rows(file: Document) -> Iterator[tuple[str, str]]:
    for skill in file.keys_of("skills"):
        for level in file.keys_of("skills", skill):
            yield skill, level


def _week(file: Document, skill: str, level: str) -> int:
    return file.whole("skills", skill, level, least=1, most=WEEKS)


def _unknown(file: Document) -> Iterator[FileProblem]:
    for skill in file.keys_of("skills"):
        gone = [key for key in file.keys_of("skills", skill) if not _known(f"{skill}:{key}")]
        if skill not in SKILLS and (gone or not file.keys_of("skills", skill)):
            found = shown(skill) + did_you_mean(skill, SKILLS)
            yield file.problem(("skills", skill), "the name of a skill", found)
        elif skill in SKILLS:
            known = [level.key for level in SKILLS[skill].levels]
            for level in gone:
                found = shown(level) + did_you_mean(level, known)
                yield file.problem(("skills", skill, level), f'a level of "{skill}"', found)


def _known(name: str) -> bool:
    return renames.level(name) in levels()


def check_plan(places: Places) -> list[FileProblem]:
    """Everything that is wrong with the year plan and the shapes of a morning, in the order of the files.

    For the year: skills and levels that are not there, weeks out of 1 to 36, a level before the one below
    it, a new level in a review week or the last week, a level before one it stands on, a level left out.
    """
    problems: list[FileProblem] = []
    try:
        file, own = _open(places, "year")
        _format(file)
        problems += _check_year(file, own)
    except FileProblem as problem:
        problems.append(problem)
    for name in shapes(places):
        try:
            load_shape(places, name)
        except FileProblem as problem:
            problems.append(problem)
    return problems


def _check_year(file: Document, own: bool) -> list[FileProblem]:
    problems = list(_unknown(file))
    for key, fixed in _FIXED.items():
        if file.data.get(key, fixed) != fixed:
            problems.append(file.problem((key,), f"{fixed}, which can't be changed", shown(file.data[key])))
    weeks: dict[str, int] = {}
    for skill, level in _rows(file):
        try:
            weeks[renames.level(f"{skill}:{level}")] = _week(file, skill, level)
        except FileProblem as problem:
            problems.append(problem)
    checks: tuple[Callable[[Document, Mapping[str, int]], Iterator[FileProblem]], ...] = (
        _quiet_weeks,
        _order,
    )
    problems += [problem for check in checks for problem in check(file, weeks)]
    problems += _left_out(file, weeks, own)
    if not problems:
        _weeks(file, own)
    return sorted(problems, key=lambda problem: problem.line or 0)


def _way(file: Document, level: str) -> tuple[str, str, str]:
    """Where the level stands in the file, by the name it has there."""
    rows = (f"{skill}:{key}" for skill, key in _rows(file))
    skill, _, key = next((row for row in rows if renames.level(row) == level), level).partition(":")
    return "skills", skill, key


def _quiet_weeks(file: Document, weeks: Mapping[str, int]) -> Iterator[FileProblem]:
    for level, week in weeks.items():
        if week % REVIEW_EVERY == 0 or week == WEEKS:
            reason = "the last week" if week == WEEKS else "a review week"
            yield file.problem(
                _way(file, level), "a week in which something new may come", f"{week}, {reason}"
            )


def _order(file: Document, weeks: Mapping[str, int]) -> Iterator[FileProblem]:
    for skill in SKILLS.values():
        for level in skill.levels:
            name = f"{skill.id}:{level.key}"
            for base in level.stands_on:
                if weeks.get(base, 0) > weeks.get(name, WEEKS):
                    expected = f"week {weeks[base]} or later (it stands on {base})"
                    yield file.problem(_way(file, name), expected, str(weeks[name]))


def _left_out(file: Document, weeks: Mapping[str, int], own: bool) -> Iterator[FileProblem]:
    """Levels of skills that have no line: a family may leave any out, but nothing that others stand on."""
    needed: dict[str, str] = {}
    for skill in SKILLS.values():
        for level in skill.levels:
            name = f"{skill.id}:{level.key}"
            if name in weeks:
                needed |= {base: name for base in level.stands_on if base not in needed}
    for name in levels():
        if file.has(*_way(file, name)) or (own and name not in needed):
            continue
        expected = f"a week, because {needed[name]} stands on it" if name in needed else "a week"
        yield file.problem(_way(file, name), expected, "nothing")


def shapes(places: Places) -> tuple[str, ...]:
    """The names of the shapes there are: those that came along, then the family's own."""
    own: set[str] = set()
    # A folder that can't be looked at has none; reading a file in it says why.
    with suppress(OSError):
        own = {path.stem for path in places.config.glob("*.toml")} - {"family", "year", *SHAPES}
    return SHAPES + tuple(sorted(name for name in own if _is_name(name)))


def _is_name(name: str) -> bool:
    return re.fullmatch(r"[a-z0-9][a-z0-9-]{0,39}", name) is not None


def load_shape(places: Places, name: str) -> Shape:
    """The shape of this name. ``FileProblem`` when there is none or it is not as it should be."""
    path = places.config / f"{name}.toml"
    if not _is_name(name) or name in ("family", "year"):
        advice = f"There are {', '.join(shapes(places))}."
        raise FileProblem(path, None, "", "the name of a shape", shown(name), advice)
    try:
        file, _ = _open(places, name)
    except Missing:
        advice = f"There are {', '.join(shapes(places))}."
        raise Missing(path, None, "", "a file", "none", advice) from None
    return _shape(name, file)


def _shape(name: str, file: Document) -> Shape:
    _format(file)
    _only_keys(file, (), ("format", "seconds", "prompts", "slot"))
    slots: list[Slot] = []
    for n in range(file.length("slot", most=20)):
        slot = _slot(file, n)
        if slot.kind is not SlotKind.NAMED and slot.kind in [other.kind for other in slots]:
            found = f"{shown(slot.kind.value)} a second time"
            raise file.problem(("slot", n, "kind"), "each kind once, save named", found)
        slots.append(slot)
    if not slots:
        raise file.problem(("slot",), "at least one [[slot]]", "none")
    return Shape(name, tuple(slots), _prompts(file), file.whole("seconds", least=60, most=900, default=360))


def _only_keys(file: Document, way: tuple[str | int, ...], known: tuple[str, ...]) -> None:
    for key in file.keys_of(*way):
        if key not in known:
            raise file.problem(
                (*way, key), f"one of {', '.join(known)}", shown(key) + did_you_mean(key, known)
            )


def _prompts(file: Document) -> tuple[tuple[int, int], ...]:
    if not isinstance(file.data.get("prompts"), list):
        return ((WEEKS, file.whole("prompts", least=1, most=MOST_PROMPTS)),)
    counts: list[tuple[int, int]] = []
    for n in range(file.length("prompts", most=WEEKS)):
        least = counts[-1][0] + 1 if counts else 1
        last = file.whole("prompts", n, "to_week", least=least, most=WEEKS)
        counts.append((last, file.whole("prompts", n, "count", least=1, most=MOST_PROMPTS)))
    if not counts:
        file.refuse(("prompts",), "a number, or at least one stretch of weeks")
    return tuple(counts)


def _slot(file: Document, n: int) -> Slot:
    kind = SlotKind(
        file.choice("slot", n, "kind", among=[kind.value for kind in SlotKind if kind is not SlotKind.AFTER])
    )
    _only_keys(file, ("slot", n), ("kind", "most", "only"))
    if kind is not SlotKind.NAMED and file.has("slot", n, "only"):
        expected = 'no such key: only a slot of kind "named" is held to some skills'
        file.refuse(("slot", n, "only"), expected)
    only = tuple(map(renames.level, file.names("slot", n, "only")))
    known = (*SKILLS, *levels())
    for place, name in enumerate(only):
        if name not in known:
            found = shown(name) + did_you_mean(name, known)
            raise file.problem(("slot", n, "only", place), "a skill or a level", found)
    if kind is SlotKind.NAMED and not only:
        raise file.problem(("slot", n, "only"), "the skills or levels this slot is for", "nothing")
    return Slot(kind, file.whole("slot", n, "most", least=1, most=MOST_PROMPTS), only)
