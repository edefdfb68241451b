"""What is wrong with the year plan and the shapes of a morning: for ``warmup check`` alone."""

from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from warmup import renames
from warmup.config.places import Places
from warmup.config.plan import (
    FORMAT,
    is_whole,
    load_shape,
    nothing_new_from,
    open_routine,
    plan_prompts,
    review_weeks,
    rows,
    rows_today,
    shapes,
    shipped,
    unknown,
    week_at,
    weeks_in,
)
from warmup.config.plan_fit import A_WEEK, IN_WEEK_1, Fault, Misfit, misfits
from warmup.config.toml_file import Document, FileProblem
from warmup.model import LevelId, level_id, skill_and_key
from warmup.schoolyear import WEEKS, WEEKS_A_QUARTER
from warmup.skills import SKILLS, levels
from warmup.text import shown

_FIXED = {"weeks": WEEKS, "weeks_a_quarter": WEEKS_A_QUARTER, "review_every": 5}
"""Keys whose value can't be changed. The last is of an older form of the file: it means the review weeks of
the file that came with the program."""
_SOMETHING_NEW = "a week in which something new may come"


def check_plan(places: Places) -> list[FileProblem]:
    """Everything that is wrong with the year plan and the shapes of a morning, in the order of the files.

    For the year: skills and levels that are not there or no longer, weeks out of 1 to 36, review weeks out of
    order, numbers of prompts out of 4 to 10, a new level in a review week or in the last weeks, more new ones
    a week than a child can take up, a level before one it stands on, a level left out.
    """
    problems: list[FileProblem] = []
    with _noted(problems):
        file, own = open_routine(places, "year")
        file.check_format(FORMAT)
        problems += _check_year(file, own)
    for name in shapes(places):
        with _noted(problems):
            load_shape(places, name)
    return problems


@contextmanager
def _noted(problems: list[FileProblem]) -> Iterator[None]:
    """Go on where something is wrong, and add that to the problems."""
    try:
        yield
    except FileProblem as problem:
        problems.append(problem)


def _check_year(file: Document, own: bool) -> list[FileProblem]:
    problems = [*unknown(file), *_dropped(file)]
    for key, fixed in _FIXED.items():
        if file.data.get(key, fixed) != fixed:
            problems.append(file.problem((key,), f"{fixed}, which can't be changed", shown(file.data[key])))
    reviews: tuple[int, ...] = ()
    last = WEEKS
    with _noted(problems):
        reviews, last = review_weeks(file, own), nothing_new_from(file, own)
    with _noted(problems):
        plan_prompts(file, own)
    weeks: dict[LevelId, int] = {}
    for name, row in rows_today(file).items():
        with _noted(problems):
            weeks[name] = week_at(file, *row)
    if own and not is_whole(file):
        weeks = {**dict(weeks_in(shipped(), own=False)), **weeks}
    if not _older(file):
        problems += (_misfit(file, misfit, last) for misfit in misfits(weeks, reviews, last))
        problems += _left_out(file, weeks, own) if is_whole(file) or not own else ()
    if not problems:
        weeks_in(file, own)
    return sorted(problems, key=lambda problem: problem.line or 0)


def _older(file: Document) -> bool:
    """Whether the file is of the form of before review weeks were listed.

    Its weeks were in order by the levels and the review weeks of its day, so it is not held to today's.
    """
    return file.has("review_every") and not file.has("review_weeks")


def _dropped(file: Document) -> Iterator[FileProblem]:
    """One warning for all the levels that are asked no more."""
    gone = [row for row in rows(file) if renames.dropped(level_id(*row))]
    if gone:
        others = f" and {len(gone) - 1} more" if len(gone) > 1 else ""
        found = f"{shown(gone[0][1])}{others} that later versions left out"
        advice = "Nothing is asked for such a line; delete it when you like."
        if _older(file):
            advice += " Newer levels are in the file that came with the program: copy it anew to have them."
        yield file._replace(advice=advice).problem(("skills", *gone[0]), "levels that are still asked", found)


def _way(file: Document, level: LevelId) -> tuple[str, str, str]:
    """Where the level's week stands in the file, by the name it has there."""
    return "skills", *rows_today(file).get(level, skill_and_key(level))


def _misfit(file: Document, misfit: Misfit, last: int) -> FileProblem:
    """What is said of a level that does not fit its week."""
    week = misfit.week
    match misfit.fault:
        case Fault.REVIEW:
            expected, found = _SOMETHING_NEW, f"{week}, a review week"
        case Fault.NOTHING_NEW:
            expected, found = _SOMETHING_NEW, f"{week}, and nothing new comes from week {last} on"
        case Fault.CROWDED:
            expected = f"at most {A_WEEK} new levels a week ({IN_WEEK_1} in week 1)"
            found = f"{misfit.opens} in week {week}"
        case Fault.ORDER:
            expected, found = f"week {misfit.base_week} or later (it stands on {misfit.base})", str(week)
    return file.problem(_way(file, misfit.level), expected, found)


def _left_out(file: Document, weeks: Mapping[LevelId, int], own: bool) -> Iterator[FileProblem]:
    """Levels of skills that have no line: a family may leave any out, but nothing that others stand on."""
    there, needed = rows_today(file), dict[LevelId, LevelId]()
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
