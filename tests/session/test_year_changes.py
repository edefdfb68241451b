"""What is changed in the year: what it says, what it does, and that each of it can be taken back."""

import calendar
import datetime as dt
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.config.families import FAMILY as EXAMPLE
from tests.household import FAMILY, TODAY, Clock, context_at, lived
from warmup.config.family import CountdownRule, Family, load
from warmup.journal.journal import Action
from warmup.model import DayKind, LevelId, Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.family_changes import changes_between, taken_back
from warmup.session.undoing import CannotUndo
from warmup.session.year_changes import (
    Found,
    does_to,
    free_week,
    hold_week,
    in_week,
    make,
    move_level,
    name_day,
    no_longer_fits,
    stands_on,
    turn_days,
    turn_early,
    turn_held,
)
from warmup.session.yearview import (
    LevelState,
    WeekState,
    countdown_days,
    day_view,
    last_day,
    levels_in,
    objects,
    rules_on,
    year_view,
)

SEE, EASY = LevelId("make-ten:see-places"), LevelId("make-ten:easy-pairs")
LATER = LevelId("count:to-120")
SATURDAY = TODAY + dt.timedelta(3)


def tell(context: Context, found: Found) -> str:
    """Do it as the page does."""
    journal = context.journal
    assert journal is not None

    def keep(what: str, work: Callable[[], None], **said: object) -> None:
        undoing.logged(context, journal, what, work, said)

    return make(context, found, keep)


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A Wednesday in week 27, a review week."""
    context = context_at(home, clock)
    assert context.morning().week == 27 and context.morning().review
    return context


CHANGES: dict[str, Callable[[Context], Found]] = {
    "a week held": lambda context: hold_week(context, 20),
    "in another week": lambda context: in_week(context, 30),
    "back in a week": lambda context: in_week(context, 24),
    "a day off": lambda context: turn_days(context, TODAY, TODAY),
    "days off": lambda context: turn_days(context, TODAY, TODAY + dt.timedelta(20)),
    "an extra morning": lambda context: turn_days(context, SATURDAY, SATURDAY),
    "a countdown": lambda context: name_day(context, SATURDAY, "the lake"),
    "opened early": lambda context: turn_early(context, LATER),
    "held back": lambda context: turn_held(context, SEE),
    "moved": lambda context: move_level(context, LATER, 30),
}


@pytest.mark.parametrize("change", CHANGES)
@pytest.mark.parametrize("restart", [False, True], ids=["at once", "after a restart"])
def test_each_is_on_disk_at_once_and_taken_back_whole(
    context: Context, home: Path, clock: Clock, change: str, restart: bool
) -> None:
    was, weeks = context.family, dict(context.plan.weeks)
    said = tell(context, CHANGES[change](context))
    assert "Last day: " in said
    assert (load(home / "family.toml"), dict(context.plan.weeks)) != (was, weeks)
    if restart:
        context = context_at(home, clock, load(home / "family.toml"))
    assert context.journal is not None
    undone = undoing.undo_day(context, context.journal)
    assert undone and undone.words
    assert load(home / "family.toml") == context.family == was
    assert dict(context.plan.weeks) == weeks == dict(context_at(home, clock).plan.weeks)
    assert undoing.undo_day(context, context.journal) is None


def test_what_was_changed_since_stays_when_an_action_is_taken_back(context: Context) -> None:
    assert context.journal is not None
    tell(context, move_level(context, LATER, 30))
    context.move_level(LATER, 31)
    undoing.undo_day(context, context.journal)
    assert context.plan.weeks[LATER] == 31


@pytest.mark.parametrize("moved", ['["count:to-120",0,30]', '["count:to-120","a",3]', "[]", "3"])
def test_a_log_with_no_week_in_it_takes_nothing_back(context: Context, moved: str) -> None:
    assert context.journal is not None
    action = Action(undoing.MOVE, before=f'{{"moved":{moved}}}')
    context.journal.log("Bean", TODAY, 0, action)
    with pytest.raises(CannotUndo):
        undoing.undo_day(context, context.journal)


# -- the weeks


def test_a_week_is_held_and_given_back(context: Context) -> None:
    assert tell(context, hold_week(context, 30)) == "Week 30 takes one week more. Last day: May 6 → May 13."
    assert tell(context, hold_week(context, 30)) == "Week 30 takes one week more. Last day: May 13 → May 20."
    rows = [row for row in year_view(context).rows if row.week == 30]
    opens = [*context.plan.weeks.values()].count(30)
    assert [(row.name, row.again, row.opens) for row in rows] == [
        ("week 30", 0, opens), ("week 30 again", 1, 0), ("week 30 again", 2, 0)
    ]  # fmt: skip
    assert tell(context, free_week(context, 30)) == (
        "Week 30 takes one week less again. Last day: May 20 → May 13."
    )
    assert context.family.held_weeks == (30,)
    assert free_week(context, 29) == "Week 29 is neither held nor skipped."


def test_lessons_that_are_further_on_skip_weeks_which_come_back_one_by_one(context: Context) -> None:
    said = tell(context, in_week(context, 30))
    assert said == (
        "Your lessons are in week 30 now. Skipped: weeks 27, 28 and 29. Last day: May 6 → April 15."
    )
    assert context.morning().week == 30 and in_week(context, 30) == "Today is in week 30 already."
    rows = {row.week: row for row in year_view(context).rows}
    assert rows[28].state is WeekState.SKIPPED and rows[28].dates() == "skipped" and not rows[28].days
    assert rows[30].state is WeekState.NOW and year_view(context).rows[year_view(context).now].week == 30
    assert tell(context, free_week(context, 28)).startswith("Week 28 is not skipped any more.")
    assert tell(context, hold_week(context, 27)).startswith("Week 27 is not skipped any more.")
    assert context.family.skipped_weeks == (29,) and context.morning().week == 27


def test_lessons_that_are_further_back_hold_their_week(context: Context) -> None:
    said = tell(context, in_week(context, 25))
    assert said == ("Your lessons are in week 25 now. Week 25 takes 2 weeks more. Last day: May 6 → May 20.")
    assert context.morning().week == 25 and context.family.held_weeks == (25, 25)


def test_after_the_last_day_the_year_is_made_longer_by_all_that_passed(home: Path, clock: Clock) -> None:
    today = dt.date(2027, 5, 26)
    context = context_at(home, clock, today=today)
    assert context.year.kind(today) is DayKind.AFTER
    tell(context, in_week(context, 34))
    assert context.morning().week == 34 and context.morning().is_school
    assert context.year.weeks.count(34) == 6


def test_no_more_weeks_are_held_than_the_file_may_hold(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, FAMILY._replace(held_weeks=(3,) * 100))
    assert hold_week(context, 4) == "So many weeks are held already."
    # Two years on, in the last week but one; each school week since would be one of those held.
    late = context_at(home, clock, FAMILY._replace(known_until=None), dt.date(2029, 8, 30))
    assert in_week(late, 2) == "So many weeks can’t be held."


# -- the levels


def test_a_level_is_opened_early_also_where_it_was_held_and_no_longer(context: Context) -> None:
    def stands() -> LevelState:
        return next(each.state for each in levels_in(context, 33) if each.level == LATER)

    assert stands() is LevelState.AHEAD
    tell(context, turn_held(context, LATER))
    assert stands() is LevelState.HELD
    assert tell(context, turn_early(context, LATER)).startswith("Opened early: ")
    assert stands() is LevelState.EARLY and context.child.held == ()
    assert tell(context, turn_early(context, LATER)).startswith("No longer opened early: ")
    assert stands() is LevelState.AHEAD
    found = turn_early(context, SEE)
    assert isinstance(found, str) and found.startswith("Its week has come: ")


def test_a_level_waits_for_what_is_shaky(context: Context) -> None:
    items = context.curriculum().items
    above = next(each for each in items if each.stands_on and not each.kindergarten and each.week < 27)
    base = next(each for each in items if each.level_id == above.stands_on[0] and not each.misconception)

    def stands() -> LevelState:
        return next(e.state for e in levels_in(context, above.week) if e.level == above.level_id)

    assert stands() is LevelState.OPEN
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {base.id: Mark.NOT_YET})
    assert stands() is LevelState.WAITS


def test_what_stands_on_a_level_is_said_before_it_is_moved(context: Context) -> None:
    on, of = stands_on(context, EASY)
    assert on.startswith("Stands on make ten: ") and "(week 10)" in on
    assert of.startswith("What stands on it: make ten: ")
    brief = stands_on(context, EASY, brief=True)
    assert brief[0].startswith("Stands on ") and brief[0].endswith("up to week 10.")
    assert re.fullmatch(r"\d+ levels? on it, from week (1[6-9]|[23]\d)\.", brief[1])
    assert no_longer_fits(context, EASY, 15) == ()
    assert "a review week: nothing new opens" in no_longer_fits(context, EASY, 14)
    assert "late in the year: nothing new opens" in no_longer_fits(context, EASY, 35)
    early = no_longer_fits(context, EASY, 8)
    assert any(each.startswith("before make ten: ") and each.endswith("(week 10)") for each in early)
    assert any(each.startswith("after make ten: ") for each in no_longer_fits(context, EASY, 33))
    assert any("are enough" in each for each in no_longer_fits(context, EASY, 1))


def test_a_moved_level_is_in_its_new_week_and_says_so(context: Context) -> None:
    said = tell(context, move_level(context, LATER, 30))
    assert said.startswith("Week 33 → week 30: ") and said.endswith("Last day: May 6, as before.")
    assert LATER in [each.level for each in levels_in(context, 30)]
    assert all(item.week == 30 for item in context.curriculum().items if item.level_id == LATER)
    assert isinstance(move_level(context, LATER, 30), str)


def test_the_things_of_a_week_are_named_once(context: Context) -> None:
    found = levels_in(context, 10)
    tables = [each.table for each in found if each.table]
    assert tables and objects(found).split("; ") == list(dict.fromkeys(tables))


# -- the days


def test_a_range_is_off_and_school_after_all_in_its_middle(context: Context) -> None:
    first, last = dt.date(2027, 3, 8), dt.date(2027, 3, 18)
    assert does_to(context, first, last) == "days off" and does_to(context, first, first) == "day off"
    said = tell(context, turn_days(context, last, first))
    assert said == "Off: March 8 to March 18, 8 school days. Last day: May 6 → May 20."
    middle = dt.date(2027, 3, 10)
    assert does_to(context, middle, middle) == "school after all"
    assert tell(context, turn_days(context, middle, middle)) == (
        "School after all: Wednesday, March 10. Last day: May 20 → May 19."
    )
    assert context.family.off == (
        (first, dt.date(2027, 3, 9)), (dt.date(2027, 3, 11), last)
    )  # fmt: skip
    week = next(row for row in year_view(context).rows if middle in row.mornings)
    assert week.marks() == "–□–□□□" and week.off == 2 + 5
    assert [row.marks() for row in year_view(context).rows[26:29]] == ["■■▣□", "–□–□□□", "□□□□"]
    tell(context, turn_days(context, first, dt.date(2027, 3, 9)))
    tell(context, turn_days(context, dt.date(2027, 3, 11), last))
    assert not context.family.off and last_day(context.year) == dt.date(2027, 5, 6)


def test_the_first_day_may_be_off_and_school_again(home: Path, clock: Clock) -> None:
    first = FAMILY.first_day
    context = context_at(home, clock)
    tell(context, turn_days(context, first, first))
    assert context.year.kind(first) is DayKind.BEFORE
    tell(context, turn_days(context, first, first))
    assert context.year.mornings[0] == first


def test_a_saturday_is_an_extra_morning_and_none_again(context: Context) -> None:
    assert does_to(context, SATURDAY, SATURDAY) == "extra morning"
    said = tell(context, turn_days(context, SATURDAY, SATURDAY))
    assert said == "An extra morning: Saturday, March 6. Last day: May 6 → May 5."
    assert tell(context, turn_days(context, SATURDAY, SATURDAY)).startswith("Off: Saturday, March 6.")
    assert context.family.extra == () and context.family.off == ()


@pytest.mark.parametrize(
    ("first", "last", "says"),
    [
        (dt.date(2026, 8, 30), dt.date(2026, 8, 30), "That is before the first school day."),
        (dt.date(2027, 5, 10), dt.date(2027, 5, 10), "That is after the last school day."),
        (dt.date(2027, 3, 5), dt.date(2027, 3, 7), "There is no school on these days anyway."),
        (dt.date(2026, 9, 1), dt.date(2027, 9, 2), "At most 366 days in a row."),
    ],
)
def test_what_can_t_be_said_of_days_is_said_why(
    context: Context, first: dt.date, last: dt.date, says: str
) -> None:
    assert turn_days(context, first, last) == says and does_to(context, first, last) == ""


def test_a_day_to_look_forward_to_is_named_renamed_and_forgotten(context: Context) -> None:
    assert tell(context, name_day(context, SATURDAY, "  the lake\x1b[31m ")).startswith(
        "To look forward to: the lake"
    )
    assert "Ahead: the lake[31m in 3 days." in " ".join(day_view(context, TODAY).lines())
    assert "A day to look forward to: the lake[31m." in day_view(context, SATURDAY).lines()
    tell(context, name_day(context, SATURDAY, "the big lake"))
    assert context.family.countdowns == (CountdownRule("the big lake", SATURDAY),)
    assert isinstance(name_day(context, SATURDAY, "the big lake"), str)
    assert tell(context, name_day(context, SATURDAY, " ")).startswith("No longer: the big lake.")
    assert not context.family.countdowns
    assert name_day(context, SATURDAY, "") == "Nothing to look forward to on that day."
    assert isinstance(name_day(context, SATURDAY, "x" * 41), str)


def test_a_day_that_comes_every_year_is_one_rule(home: Path, clock: Clock) -> None:
    feast = CountdownRule("the feast", yearly="first Monday of March")
    context = context_at(home, clock, FAMILY._replace(countdowns=(feast,)))
    monday = dt.date(2027, 3, 1)
    assert rules_on(context.family, monday) == (feast,) and not rules_on(context.family, TODAY)
    assert "A day to look forward to: the feast, every year." in day_view(context, monday).lines()
    tell(context, name_day(context, monday, "the big feast"))
    assert context.family.countdowns == (feast._replace(name="the big feast"),)


def test_countdowns_of_both_forms_are_taken_back_from_the_log() -> None:
    """families.py has one of each; taken away and written again they are what they were."""
    without: Family = EXAMPLE._replace(countdowns=())
    for before, after in ((EXAMPLE, without), (without, EXAMPLE)):
        changes = changes_between(before, after)
        assert [change.field for change in changes] == ["countdowns"]
        assert taken_back(after, changes) == before


def test_the_days_to_look_forward_to_are_found_from_the_first_to_the_last_date() -> None:
    """families.py: June 4, 2027, and the fourth Thursday of November: the 26th in 2026 (stdlib calendar)."""
    feast, lake = dt.date(2026, 11, 26), dt.date(2027, 6, 4)
    assert calendar.Calendar().monthdayscalendar(2026, 11)[4][3] == 26
    assert countdown_days(EXAMPLE, feast, feast) == {feast}
    assert countdown_days(EXAMPLE, feast, lake) == {feast, lake}
    assert countdown_days(EXAMPLE, feast + dt.timedelta(1), lake - dt.timedelta(1)) == frozenset()


@pytest.mark.parametrize(
    ("date", "lines"),
    [
        (dt.date(2027, 3, 3), ("School day 107, week 27, a review week.",)),
        (dt.date(2027, 3, 2), ("School day 106, week 27, a review week.", "Two prompts that day.")),
        (dt.date(2027, 3, 1), ("School day 105, week 27, a review week.", "No warm-up that day.")),
        (
            dt.date(2027, 3, 6),
            ("No school on this weekday. 108 school days so far, week 27, a review week.",),
        ),
        (dt.date(2026, 8, 1), ("Before the first school day.",)),
        (dt.date(2027, 8, 1), ("After the last school day.",)),
    ],
)
def test_a_day_says_what_it_is_and_how_much_was_asked(
    context: Context, date: dt.date, lines: tuple[str, ...]
) -> None:
    lived(context, dt.date(2027, 3, 2), {"make-ten/seven-three": Mark.NOT_YET, "month/this": Mark.FLUENT})
    assert day_view(context, date).lines() == lines


def test_a_child_in_weeks_of_its_own_changes_its_own(home: Path, clock: Clock) -> None:
    own = replace(FAMILY.children[0], first_day=dt.date(2027, 1, 11), first_week=2)
    context = context_at(home, clock, FAMILY._replace(children=(own,)))
    tell(context, hold_week(context, 5))
    assert context.child.held_weeks == (5,) and context.family.held_weeks == ()
    assert hold_week(context, 1) == in_week(context, 1) == "You began in week 2: what was before it stays."
    assert year_view(context).rows[0].dates() == "before you began"
