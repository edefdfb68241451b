"""The year plan and the shapes of a morning: ``routines/*.toml``, where a family's own copy wins."""

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from contextlib import suppress
from functools import cached_property

from warmup import renames
from warmup.config.places import Places, routines_folder
from warmup.config.toml_file import Document, FileProblem, Missing, read
from warmup.model import LevelId, Plan, Shape, Slot, SlotKind, level_id, skill_and_key
from warmup.schoolyear import WEEKS, WEEKS_A_QUARTER
from warmup.skills import SKILLS, levels
from warmup.text import did_you_mean, shown

FORMAT = 1
MOST_PROMPTS = 12
"""The most prompts one slot, and one morning, may have."""
SHAPES = ("daily", "short", "review")
"""The shapes that come with the program."""
_OWN = "Fix that line, or delete your copy to go back to the file that came with the program."
_SHIPPED = "This file came with the program: install it again."
_FIXED = {"weeks": WEEKS, "weeks_a_quarter": WEEKS_A_QUARTER, "review_every": 5}
"""Keys whose value can't be changed. The last is of an older form of the file: it means the review weeks of
the file that came with the program."""
_A_WEEK, _IN_WEEK_1 = 5, 6
"""How many levels may open in a week, and in the first."""


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
    return Plan(_weeks(file, own), _review_weeks(file, own), _nothing_new_from(file, own))


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


def _weeks(file: Document, own: bool) -> Mapping[LevelId, int]:
    _format(file)
    weeks = {}
    known = frozenset(levels()) if own else frozenset()
    for name, row in _rows_today(file).items():
        if own and name not in known:
            raise next(_unknown(file))
        weeks[name] = _week(file, *row)
    if not weeks:
        raise file.problem(("skills",), "at least one level with its week", "none")
    return weeks if own else _Known(weeks)


def _review_weeks(file: Document, own: bool) -> tuple[int, ...]:
    """The review weeks in their order; those of the file that came along where an own copy names none."""
    if own and not file.has("review_weeks"):
        return _review_weeks(_shipped(), own=False)
    found: list[int] = []
    for n in range(file.length("review_weeks", most=WEEKS)):
        found.append(file.whole("review_weeks", n, least=found[-1] + 1 if found else 1, most=WEEKS))
    return tuple(found)


def _nothing_new_from(file: Document, own: bool) -> int:
    """The week from which on no level opens, found as the review weeks are."""
    if own and not file.has("nothing_new_from"):
        return _nothing_new_from(_shipped(), own=False)
    return file.whole("nothing_new_from", least=2, most=WEEKS, default=WEEKS)


def _shipped() -> Document:
    return read(routines_folder() / "year.toml", _SHIPPED)


def _format(file: Document) -> None:
    if file.has("format") and file.data["format"] != FORMAT:
        file.refuse(("format",), f"format = {FORMAT} (this file may be from a newer version)")


def _rows(file: Document) -> Iterator[tuple[str, str]]:
    for skill in file.keys_of("skills"):
        for level in file.keys_of("skills", skill):
            yield skill, level


def _rows_today(file: Document) -> dict[LevelId, tuple[str, str]]:
    """The row that says the week of each level, by the level's name today; dropped levels are left out.

    A row with today's name counts before one with an older name. Of several older levels that are one
    today the last counts: no part of it was to be asked before its week.
    """
    found: dict[LevelId, tuple[str, str]] = {}
    for row in _rows(file):
        written = level_id(*row)
        for name in () if renames.dropped(written) else map(LevelId, renames.levels(written)):
            if name == written or found.get(name) != skill_and_key(name):
                found[name] = row
    return found


def _week(file: Document, skill: str, level: str) -> int:
    return file.whole("skills", skill, level, least=1, most=WEEKS)


def _unknown(file: Document) -> Iterator[FileProblem]:
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


def _older(file: Document) -> bool:
    """Whether the file is of the form of before review weeks were listed.

    Its weeks were in order by the levels and the review weeks of its day, so it is not held to today's.
    """
    return file.has("review_every") and not file.has("review_weeks")


def _dropped(file: Document) -> Iterator[FileProblem]:
    """One warning for all the levels that are asked no more."""
    gone = [row for row in _rows(file) if renames.dropped(level_id(*row))]
    if gone:
        others = f" and {len(gone) - 1} more" if len(gone) > 1 else ""
        found = f"{shown(gone[0][1])}{others} that later versions left out"
        advice = "Nothing is asked for such a line; delete it when you like."
        if _older(file):
            advice += " Newer levels are in the file that came with the program: copy it anew to have them."
        yield file._replace(advice=advice).problem(("skills", *gone[0]), "levels that are still asked", found)


def check_plan(places: Places) -> list[FileProblem]:
    """Everything that is wrong with the year plan and the shapes of a morning, in the order of the files.

    For the year: skills and levels that are not there or no longer, weeks out of 1 to 36, review weeks out of
    order, a new level in a review week or in the last weeks, more new ones a week than a child can take up, a
    level before one it stands on, a level left out.
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
    problems = [*_unknown(file), *_dropped(file)]
    for key, fixed in _FIXED.items():
        if file.data.get(key, fixed) != fixed:
            problems.append(file.problem((key,), f"{fixed}, which can't be changed", shown(file.data[key])))
    reviews: tuple[int, ...] = ()
    last = WEEKS
    try:
        reviews, last = _review_weeks(file, own), _nothing_new_from(file, own)
    except FileProblem as problem:
        problems.append(problem)
    weeks: dict[LevelId, int] = {}
    for name, row in _rows_today(file).items():
        try:
            weeks[name] = _week(file, *row)
        except FileProblem as problem:
            problems.append(problem)
    if not _older(file):
        problems += _quiet_weeks(file, weeks, reviews, last)
        problems += _crowded(file, weeks)
        problems += _order(file, weeks)
        problems += _left_out(file, weeks, own)
    if not problems:
        _weeks(file, own)
    return sorted(problems, key=lambda problem: problem.line or 0)


def _way(file: Document, level: LevelId) -> tuple[str, str, str]:
    """Where the level's week stands in the file, by the name it has there."""
    return "skills", *_rows_today(file).get(level, skill_and_key(level))


def _quiet_weeks(
    file: Document, weeks: Mapping[LevelId, int], reviews: tuple[int, ...], last: int
) -> Iterator[FileProblem]:
    for level, week in weeks.items():
        if week in reviews or week >= last:
            reason = "a review week" if week in reviews else f"and nothing new comes from week {last} on"
            yield file.problem(
                _way(file, level), "a week in which something new may come", f"{week}, {reason}"
            )


def _crowded(file: Document, weeks: Mapping[LevelId, int]) -> Iterator[FileProblem]:
    """Weeks with more new levels than a child can take up, each told at the last of its levels."""
    for week, number in sorted(Counter(weeks.values()).items()):
        if number > (_IN_WEEK_1 if week == 1 else _A_WEEK):
            level = [name for name, at in weeks.items() if at == week][-1]
            expected = f"at most {_A_WEEK} new levels a week ({_IN_WEEK_1} in week 1)"
            yield file.problem(_way(file, level), expected, f"{number} in week {week}")


def _order(file: Document, weeks: Mapping[LevelId, int]) -> Iterator[FileProblem]:
    for skill in SKILLS.values():
        for level in skill.levels:
            name = level_id(skill.id, level.key)
            for base in map(LevelId, level.stands_on):
                if weeks.get(base, 0) > weeks.get(name, WEEKS):
                    expected = f"week {weeks[base]} or later (it stands on {base})"
                    yield file.problem(_way(file, name), expected, str(weeks[name]))


def _left_out(file: Document, weeks: Mapping[LevelId, int], own: bool) -> Iterator[FileProblem]:
    """Levels of skills that have no line: a family may leave any out, but nothing that others stand on."""
    there, needed = _rows_today(file), dict[LevelId, LevelId]()
    for skill in SKILLS.values():
        for level in skill.levels:
            name = level_id(skill.id, level.key)
            if name in weeks:
                needed |= {base: name for base in map(LevelId, level.stands_on) if base not in needed}
    for name in levels():
        if name in there or (own and name not in needed):
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
        if slot.kind is SlotKind.NAMED and not slot.only:
            continue  # All it named is asked no more.
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
    return Slot(kind, file.whole("slot", n, "most", least=1, most=MOST_PROMPTS), tuple(dict.fromkeys(only)))
