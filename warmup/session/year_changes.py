"""What an adult changes in the year: its weeks, the week of a level, its days. Nothing is done here yet.

Each function gives a :class:`FamilyAction`, or a sentence that says why there is nothing to change;
:func:`make` does one and says what it does to the last day of the year.
"""

import datetime as dt
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

from warmup.config.family import LONGEST_BREAK, MOST_HELD, Child, CountdownRule, Family, year_of
from warmup.config.plan_fit import Fault, Misfit, misfits, most_in, standing
from warmup.config.toml_file import LONGEST_NAME
from warmup.english import date_words, listed, plural
from warmup.model import DayKind, LevelId, is_own
from warmup.schoolyear import WEEKS, lessons_from
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.undoing import FamilyAction
from warmup.session.yearview import last_day, planned, rules_on
from warmup.text import clean, visible

_DAY = dt.timedelta(1)
_MOST_COUNTDOWNS = 100
"""As many as family.toml may hold."""

Found = FamilyAction | str
"""A change, or why there is none to make."""
Keep = Callable[..., None]
"""Does the work of an action and logs it: ``keep(what, work, **about)``."""


def make(context: Context, found: Found, keep: Keep) -> str:
    """Make a change; the line that says what came of it, and what that does to the year's last day."""
    if isinstance(found, str):
        return found
    before = last_day(context.year)
    keep(found.what, found.work, **found.about)
    return f"{found.said} {_last_words(before, last_day(context.year))}".strip()


def _last_words(before: dt.date | None, after: dt.date | None) -> str:
    if before is None or after is None:
        return ""
    year = before.year != after.year
    was, now = (date_words(day, weekday=False, year=year) for day in (before, after))
    return f"Last day: {was}, as before." if before == after else f"Last day: {was} → {now}."


# -- the weeks


def hold_week(context: Context, week: int) -> Found:
    """Let the lessons of a week take one week more; one that was skipped takes its one again."""
    mine, (held, skipped) = _mine(context), _lesson_weeks(context)
    if week < mine.first_week:
        return _begun_in(mine.first_week)
    if week in skipped:
        return _back_in(context, week)
    if len(held) >= MOST_HELD:
        return "So many weeks are held already."
    said = f"Week {week} takes one week more."
    return _weeks_changed(context, (*held, week), skipped, said)


def free_week(context: Context, week: int) -> Found:
    """Hold a week once less, or skip it no more."""
    held, skipped = _lesson_weeks(context)
    if week in skipped:
        return _back_in(context, week)
    if week not in held:
        return f"Week {week} is neither held nor skipped."
    fewer = list(held)
    fewer.remove(week)
    return _weeks_changed(context, fewer, skipped, f"Week {week} takes one week less again.")


def can_free(context: Context, week: int) -> bool:
    """Whether a week is held or skipped."""
    return any(week in weeks for weeks in _lesson_weeks(context))


def _back_in(context: Context, week: int) -> FamilyAction:
    held, skipped = _lesson_weeks(context)
    rest = [each for each in skipped if each != week]
    return _weeks_changed(context, held, rest, f"Week {week} is not skipped any more.")


def in_week(context: Context, week: int) -> Found:
    """Say that today's lessons are in this week: the weeks just before are skipped, or this one is held."""
    if context.morning().week == week:
        return f"Today is in week {week} already."
    mine, (held, skipped) = _mine(context), _lesson_weeks(context)
    found = lessons_from(context.year.weeks, mine.first_week, _school_week(context), week)
    if found is None:
        return _begun_in(mine.first_week)
    if len(found[0]) > MOST_HELD:
        return "So many weeks can’t be held."
    said = [f"Your lessons are in week {week} now."]
    gone = [each for each in found[1] if each not in skipped]
    if gone:
        said.append(f"Skipped: {plural(len(gone), 'week')} {listed(tuple(map(str, gone)))}.")
    more = Counter(found[0]) - Counter(held)
    said += [f"Week {each} takes {times} {plural(times, 'week')} more." for each, times in more.items()]
    return _weeks_changed(context, *found, " ".join(said))


def _school_week(context: Context) -> int:
    """The place of today's school week, also where the year would be over by now."""
    longer = (WEEKS,) * MOST_HELD
    child = replace(context.child, held_weeks=longer, skipped_weeks=())
    family = context.family._replace(held_weeks=longer, skipped_weeks=(), last_day=None)
    return year_of(family, child).school_week(context.today)


def _weeks_changed(context: Context, held: Sequence[int], skipped: Sequence[int], said: str) -> FamilyAction:
    return FamilyAction(undoing.WEEKS, lambda: context.editor.lesson_weeks(held, skipped), {}, said)


def _mine(context: Context) -> Family | Child:
    """Whose weeks they are: the family's, or the child's where it has its own."""
    return context.family if context.child.first_day is None else context.child


def _lesson_weeks(context: Context) -> tuple[tuple[int, ...], tuple[int, ...]]:
    mine = _mine(context)
    return mine.held_weeks, mine.skipped_weeks


def _begun_in(week: int) -> str:
    return f"You began in week {week}: what was before it stays."


# -- a level


def turn_early(context: Context, level: LevelId) -> Found:
    """Open a level before its week, or no longer."""
    week = context.plan.weeks[level]
    named = planned(level, week).named
    editor = context.editor
    if level in context.child.opened:
        said = f"No longer opened early: {named}."
        return FamilyAction(
            undoing.NOT_EARLY, lambda: editor.open_early(level, early=False), {"level": level}, said
        )
    if week <= context.morning().week and level not in context.child.held:
        return f"Its week has come: {named}."
    return FamilyAction(
        undoing.EARLY, lambda: editor.open_early(level), {"level": level}, f"Opened early: {named}."
    )


def turn_held(context: Context, level: LevelId) -> FamilyAction:
    """Hold a level back as not taught yet, or let it come."""
    named = planned(level, context.plan.weeks[level]).named
    back = level not in context.child.held
    said = f"Held back: {named}." if back else f"It may come: {named}."
    what = undoing.HOLD if back else undoing.COME
    return FamilyAction(what, lambda: context.editor.hold(level, back=back), {"level": level}, said)


def move_level(context: Context, level: LevelId, week: int) -> Found:
    """Let a level open in another week of the lessons."""
    was = context.plan.weeks[level]
    named = planned(level, was).named
    if is_own(level):
        return f"Its week is in own.toml: {named}."
    if was == week:
        return f"It is in week {week} already: {named}."
    about = {"level": level, "was": was, "now": week}
    said = f"Week {was} → week {week}: {named}."
    return FamilyAction(undoing.MOVE, lambda: context.move_level(level, week), about, said)


def stands_on(context: Context, level: LevelId, *, brief: bool = False) -> tuple[str, ...]:
    """What a level stands on and what stands on it, a sentence each; ``brief`` without their names."""
    weeks, pairs = context.plan.weeks, list(standing())
    below = [base for name, base in pairs if name == level and base in weeks]
    above = [name for name, base in pairs if base == level and name in weeks]
    if brief:
        on = f"Stands on {_counted(below)}, up to week {max(weeks[each] for each in below)}." if below else ""
        of = f"{_counted(above)} on it, from week {min(weeks[each] for each in above)}." if above else ""
    else:
        on, of = (listed([f"{_name(each)} (week {weeks[each]})" for each in some]) for some in (below, above))
        on, of = f"Stands on {on}." if on else "", f"What stands on it: {of}." if of else ""
    return tuple(filter(None, (on, of)))


def _counted(levels: Sequence[LevelId]) -> str:
    return f"{len(levels)} {plural(len(levels), 'level')}"


def no_longer_fits(context: Context, level: LevelId, week: int) -> tuple[str, ...]:
    """What does not fit any more with a level in this week, a phrase each."""
    plan = context.plan
    said = plan.reviews, plan.nothing_new_from
    # What a family wrote itself is no new step.
    weeks = {each: at for each, at in plan.weeks.items() if not is_own(each)}
    before = {_known_by(each) for each in misfits(weeks, *said)}
    after = misfits({**weeks, level: week}, *said)
    return tuple(_phrase(each, level) for each in after if _known_by(each) not in before)


def _known_by(misfit: Misfit) -> tuple[object, ...]:
    """A crowded week is the same one whichever of its levels is the last."""
    if misfit.fault is Fault.CROWDED:
        return misfit.fault, misfit.week, misfit.opens
    return misfit.fault, misfit.level, misfit.base


def _phrase(misfit: Misfit, level: LevelId) -> str:
    match misfit.fault:
        case Fault.REVIEW:
            return "a review week: nothing new opens"
        case Fault.NOTHING_NEW:
            return "late in the year: nothing new opens"
        case Fault.CROWDED:
            return f"{misfit.opens} new that week, {most_in(misfit.week)} are enough"
        case Fault.ORDER if misfit.level == level and misfit.base is not None:
            return f"before {_name(misfit.base)} (week {misfit.base_week})"
        case Fault.ORDER:
            return f"after {_name(misfit.level)} (week {misfit.week})"


def _name(level: LevelId) -> str:
    return planned(level, 0).named.lower()


# -- the days


def turn_days(context: Context, first: dt.date, last: dt.date) -> Found:
    """Take days off, both ends included; where none of them is school, have school after all.

    On one day that is no school weekday an extra morning is held.
    """
    editor, year = context.editor, context.year
    first, last = min(first, last), max(first, last)
    about = {"from": first.isoformat(), "to": last.isoformat()}
    if (last - first).days >= LONGEST_BREAK:
        return f"At most {LONGEST_BREAK} days in a row."
    school = year.between(first, last + _DAY)
    if school:
        said = f"Off: {_stretch(first, last, len(school))}."
        return FamilyAction(undoing.OFF, lambda: editor.no_school(first, last), about, said)
    back = _off_between(context, first, last)
    if back:
        said = f"School after all: {_stretch(first, last, back)}."
    elif first == last and year.kind(first) is DayKind.WEEKEND:
        said = f"An extra morning: {date_words(first)}."
    else:
        return _no_school(year.kind(first))
    return FamilyAction(undoing.SCHOOL, lambda: editor.have_school(first, last), about, said)


def does_to(context: Context, first: dt.date, last: dt.date) -> str:
    """What :func:`turn_days` would make of these days, in a few words; empty where it does nothing."""
    found = turn_days(context, first, last)
    if isinstance(found, str):
        return ""
    if found.what == undoing.OFF:
        return "day off" if first == last else "days off"
    return "extra morning" if context.year.kind(first) is DayKind.WEEKEND else "school after all"


def _off_between(context: Context, first: dt.date, last: dt.date) -> int:
    """How many school weekdays there are off within the year."""
    family, year = context.family, context.year
    begins = _mine(context).first_day or family.first_day
    ends = last_day(year) or last
    days = (first + later * _DAY for later in range((last - first).days + 1))
    return sum(
        begins <= day <= ends
        and day.weekday() in family.weekdays
        and any(start <= day <= end for start, end in family.off)
        for day in days
    )


def _stretch(first: dt.date, last: dt.date, count: int) -> str:
    if first == last:
        return date_words(first)
    ends = " to ".join(date_words(day, weekday=False) for day in (first, last))
    return f"{ends}, {count} school {plural(count, 'day')}"


def _no_school(kind: DayKind) -> str:
    match kind:
        case DayKind.BEFORE:
            return "That is before the first school day."
        case DayKind.AFTER:
            return "That is after the last school day."
        case _:
            return "There is no school on these days anyway."


def name_day(context: Context, date: dt.date, words: str) -> Found:
    """Look forward to a date by this name; without a name what stood there goes."""
    before = next(iter(rules_on(context.family, date)), None)
    name = clean(words)
    if len(name) > LONGEST_NAME:
        return f"At most {LONGEST_NAME} letters, please."
    if not visible(name):
        if before is None:
            return "Nothing to look forward to on that day."
        return _counted_down(context, None, before, f"No longer: {before.name}.")
    if before is not None and before.name == name:
        return f"It is there already: {name}."
    if before is None and len(context.family.countdowns) >= _MOST_COUNTDOWNS:
        return "There are so many days to look forward to already."
    rule = CountdownRule(name, date) if before is None else before._replace(name=name)
    return _counted_down(context, rule, before, f"To look forward to: {name}, {date_words(date)}.")


def _counted_down(
    context: Context, rule: CountdownRule | None, before: CountdownRule | None, said: str
) -> FamilyAction:
    return FamilyAction(undoing.COUNTDOWN, lambda: context.editor.count_down(rule, before), {}, said)
