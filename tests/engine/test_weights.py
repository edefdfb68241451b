"""What a year is made of, over three children: its weight on number, its weekly things, its calendar talk."""

import pytest

from tests.benchmarks.year_aloud import CHILDREN
from tests.engine.years import ITEMS, asked
from warmup.engine.targets import SHARES, WEEKLY, Often
from warmup.model import Item, LevelId
from warmup.schoolyear import WEEKS

NUMBER_WORK = ("counting", "number", "adding")
pytestmark = [pytest.mark.slow, pytest.mark.parametrize("child", CHILDREN)]


def all_of(child: str) -> list[Item]:
    """Every prompt's item of a year."""
    return [item for _, items in asked(child) for item in items]


def test_six_in_ten_prompts_are_number_work(child: str) -> None:
    strands = [item.strand for item in all_of(child)]
    assert len(strands) > 1000
    assert sum(strand in NUMBER_WORK for strand in strands) >= 0.6 * len(strands)


@pytest.mark.parametrize("quarter", range(4))
def test_each_strand_has_its_share_of_each_quarter_within_four_points(quarter: int, child: str) -> None:
    strands = [item.strand for m, items in asked(child) for item in items if m.quarter == quarter + 1]
    off = {name: 100 * strands.count(name) / len(strands) - SHARES[name][quarter] for name in SHARES}
    assert not {name: points for name, points in off.items() if abs(points) > 4}


def test_from_week_12_on_every_morning_has_something_of_adding(child: str) -> None:
    without = [m.date for m, items in asked(child) if not any(item.strand == "adding" for item in items)]
    assert not [date for date in without if date >= asked(child)[44][0].date]
    assert asked(child)[44][0].week == 12


def test_the_aim_of_fluency_and_the_partners_of_ten_come_forty_times(child: str) -> None:
    items = all_of(child)
    assert sum("K.OA.A.5" in item.codes for item in items) >= 40
    assert sum(item.skill == "make-ten" for item in items) >= 40


def test_one_prompt_a_morning_is_about_the_day_and_two_at_most_are_of_things(child: str) -> None:
    for morning, items in asked(child):
        strands = [item.strand for item in items]
        assert strands.count("calendar") == 1, morning.date
        assert strands.count("shape and space") + strands.count("measuring and sorting") <= 2, morning.date


@pytest.mark.parametrize("often", WEEKLY, ids=lambda often: often.skill or "weekday")
def test_what_comes_weekly_comes_in_95_of_100_weeks(often: Often, child: str) -> None:
    first = min(item.week for item in ITEMS.values() if often.holds(item))
    weeks = {m.week for m, items in asked(child) if any(often.holds(item) for item in items)}
    assert len(weeks) >= 0.95 * (WEEKS + 1 - first) > 10


def test_every_third_prompt_at_least_wants_things_on_the_table_or_the_body(child: str) -> None:
    items = all_of(child)
    assert 3 * sum(item.hands for item in items) >= len(items)


def test_each_level_with_a_kindergarten_code_comes_soon_and_four_times(child: str) -> None:
    came: dict[LevelId, list[int]] = {}
    for morning, items in asked(child):
        for item in items:
            came.setdefault(item.level_id, []).append(morning.index)
    coded = {item.level_id: (item.week - 1) * 4 for item in ITEMS.values() if item.kindergarten}
    assert len(coded) > 50
    assert not {level: opened for level, opened in coded.items() if came[level][0] - opened >= 8}
    assert not {level: came[level] for level in coded if len(came[level]) < 4}
