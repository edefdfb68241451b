"""How many prompts a morning has: the family's number, else the routine file's, else the year plan's."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, context_at, fixed_routine, lived
from warmup.cli.plain import morning_lines
from warmup.config.family import Child, load
from warmup.journal.routine_json import routine_text
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.session import resume
from warmup.session.words import back_words

Clock = Callable[[], dt.datetime]
OLDER_FORM = '[[slot]]\nkind = "older"\nmost = 12\n'


def counts(context: Context, shape: str = "") -> list[int]:
    """The number of prompts in the weeks on both sides of where the plan's number changes."""
    mornings = [context.morning(context.year.mornings[4 * week - 4]) for week in (1, 2, 3, 9, 10, 18, 19, 36)]
    return [context.count(morning, context.shape(morning, shape)) for morning in mornings]


def test_the_plan_says_how_many_and_a_short_morning_has_four(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert counts(context) == [5, 5, 6, 6, 7, 7, 8, 8]
    assert counts(context, "short") == [4] * 8


@pytest.mark.parametrize("number", range(4, 11))
def test_the_familys_number_counts_before_the_plans(home: Path, clock: Clock, number: int) -> None:
    context = context_at(home, clock, FAMILY._replace(prompts=number))
    assert load(home / "family.toml").prompts == number
    assert (
        counts(context) == counts(context, "review") == [number] * 8 and counts(context, "short") == [4] * 8
    )
    for at in (8, 40, 100):
        routine = context.routine(context.morning(context.year.mornings[at]))
        assert len(routine.prompts) == number
        assert len(context.routine(routine.morning, shape="short").prompts) <= 4


def test_a_file_of_the_form_of_before_counts_for_itself_until_the_family_says_a_number(
    home: Path, clock: Clock
) -> None:
    home.mkdir(parents=True, exist_ok=True)
    (home / "daily.toml").write_text(f"prompts = 9\n{OLDER_FORM}", "utf-8")
    (home / "short.toml").write_text(f"prompts = 6\n{OLDER_FORM}", "utf-8")
    context = context_at(home, clock)
    # The review weeks 9, 18 and 36 have the file that came along.
    assert counts(context) == [9, 9, 9, 6, 9, 7, 9, 8] and counts(context, "short") == [6] * 8
    context.editor.change(context.family._replace(prompts=10))
    assert counts(context) == [10] * 8 and counts(context, "short") == [6] * 8, "a short one stays short"
    context.editor.change(context.family._replace(prompts=5))
    assert counts(context) == counts(context, "short") == [5] * 8


def test_shortening_goes_by_the_familys_own_short_morning(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    (home / "short.toml").write_text(f"at_most = 3\n{OLDER_FORM}", "utf-8")
    routine = fixed_routine()
    rows = [(prompt.item, "a") for prompt in routine.prompts]
    assert context.journal is not None
    context.journal.start("Bean", context.today, "daily", routine_text(routine), rows)
    session = resume(context, context.journal, clock)
    assert session is not None and session.shorten() and len(session.prompts) == 3
    assert not session.shorten()


def test_a_review_week_that_was_missed_comes_a_week_later_for_this_child(home: Path, clock: Clock) -> None:
    """Warm-ups in weeks 3 and 4, none in the review week 5: week 6 reviews, and week 9 stays as it was."""
    context = context_at(home, clock)
    mornings = context.year.mornings
    for day in mornings[8:16]:
        lived(context, day, {"month/this": Mark.FLUENT})
    in_week_6 = context_at(home, clock, context.family, mornings[20])
    assert in_week_6.reviews[:2] == (6, 9) and in_week_6.morning().review
    assert in_week_6.curriculum().reviews == in_week_6.reviews
    in_week_6.turn_to(mornings[19])
    assert in_week_6.reviews[:2] == (5, 9) and not in_week_6.morning(mornings[20]).review


def test_a_program_left_open_over_midnight_has_the_review_week_that_moved(home: Path, clock: Clock) -> None:
    mornings = context_at(home, clock).year.mornings
    context = context_at(home, clock, FAMILY._replace(children=(Child("Fern"),)), mornings[19])
    for day in mornings[8:16]:
        lived(context, day, {"month/this": Mark.FLUENT})
    assert context.curriculum().reviews == context.reviews == (5, *context.reviews[1:])
    context.turn_to(mornings[20])
    assert context.curriculum().reviews == context.reviews == (6, *context.reviews[1:])


def test_coming_back_is_said_for_three_mornings(home: Path, clock: Clock) -> None:
    """Eight warm-ups, then two weeks off: said on the first three mornings back."""
    context = context_at(home, clock)
    first = context.year.mornings[:8]
    for day in first:
        lived(context, day, {"month/this": Mark.FLUENT})
    away = (first[-1] + dt.timedelta(1), first[-1] + dt.timedelta(17))
    context.editor.change(context.family._replace(off=(*context.family.off, away)))
    said = []
    for day in context.year.mornings[8:12]:
        back = context_at(home, clock, context.family, day)
        said.append(back_words(back, back.morning()))
        lived(back, day, {"month/this": Mark.FLUENT})
    eight = "Eight mornings without a warm-up: for three mornings nothing new opens."
    assert said == [eight, eight, eight, ""]
    assert eight in morning_lines(back.morning(context.year.mornings[8]), back)


def test_years_away_are_counted_in_digits_and_a_morning_is_chosen(home: Path, clock: Clock) -> None:
    """Words end at 999 mornings, and after a hundred years a chance was too small for a logarithm."""
    context = context_at(home, clock)
    for day in context.year.mornings[:8]:
        lived(context, day, {"month/this": Mark.NOT_YET, "count/to-20": Mark.FLUENT})
    for year in (2036, 2200):
        back = context_at(home, clock, context.family, dt.date(year, 11, 25))
        count, _, said = back_words(back, back.morning()).partition(" ")
        assert count.replace(",", "").isdigit() and said.startswith("mornings without a warm-up")
        assert back.routine().prompts
