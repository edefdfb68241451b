"""The federal holidays, against published dates; the breaks, against what is common."""

import datetime as dt
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from warmup.config.holidays import Holiday, breaks, federal, offered

REFERENCE = tomllib.loads((Path(__file__).parents[1] / "references/calendar.toml").read_text("utf-8"))
ROWS = REFERENCE["federal_holidays"]["rows"]
SCHOOL_WEEK = (0, 1, 2, 3)


@pytest.mark.parametrize("year", sorted({row["year"] for row in ROWS}))
def test_the_federal_holidays_are_observed_on_the_published_days(year: int) -> None:
    """calendar.toml, federal_holidays: 5 U.S.C. 6103 and Executive Order 11582, dates for 2026 to 2028."""
    published = {row["name"]: dt.date.fromisoformat(row["observed"]) for row in ROWS if row["year"] == year}
    assert len(published) == REFERENCE["federal_holidays"]["count_per_year"] == len(federal(year))
    assert {each.name.replace("’", "'"): each.first for each in federal(year)} == published
    assert all(each.first == each.last for each in federal(year))


@pytest.mark.parametrize("year", range(2024, 2031))
def test_the_federal_holidays_are_those_opm_publishes(year: int) -> None:
    """calendar.toml, federal_holidays_opm: OPM's dates (from memory, checked with the holidays library)."""
    published = REFERENCE["federal_holidays_opm"][str(year)]
    assert len(published) == 11 and [each.first.isoformat() for each in federal(year)] == published


@pytest.mark.slow
@given(st.integers(1900, 2200))
def test_no_federal_holiday_is_observed_at_a_weekend(year: int) -> None:
    assert all(each.first.weekday() < 5 for each in federal(year))


@pytest.mark.slow
@given(st.integers(1900, 2200))
def test_thanksgiving_takes_two_weekdays_and_winter_ten(year: int) -> None:
    thanksgiving, winter = breaks(year)
    for each, count in ((thanksgiving, 2), (winter, 10)):
        days = [each.first + dt.timedelta(n) for n in range((each.last - each.first).days + 1)]
        assert sum(day.weekday() < 5 for day in days) == count
    assert thanksgiving.first.weekday() == 3
    christmas = next(each.first for each in federal(year) if each.name == "Christmas Day")
    new_year = federal(year + 1)[0].first
    assert winter.first <= christmas <= winter.last and winter.first <= new_year <= winter.last


def test_a_year_is_offered_what_falls_on_its_school_weekdays_in_order() -> None:
    found = offered(dt.date(2026, 8, 31), dt.date(2027, 5, 27), SCHOOL_WEEK)
    assert [(each.name, each.first.isoformat()) for each in found] == [
        ("Labor Day", "2026-09-07"),
        ("Columbus Day", "2026-10-12"),
        ("Veterans Day", "2026-11-11"),
        ("Thanksgiving (2 days)", "2026-11-26"),
        ("Winter break (10 days)", "2026-12-21"),
        ("Birthday of Martin Luther King, Jr.", "2027-01-18"),
        ("Washington’s Birthday", "2027-02-15"),
    ]


def test_what_no_school_weekday_falls_on_is_not_offered() -> None:
    names = {each.name for each in offered(dt.date(2026, 8, 31), dt.date(2027, 6, 30), (2,))}
    assert names == {"Veterans Day", "Winter break (10 days)"}
    friday = {each.name for each in offered(dt.date(2026, 8, 31), dt.date(2027, 6, 30), (4,))}
    assert {"Christmas Day", "New Year’s Day", "Juneteenth National Independence Day"} <= friday


def test_a_new_years_day_observed_in_december_is_offered_to_the_year_it_falls_in() -> None:
    """calendar.toml, federal_holidays: January 1, 2028, a Saturday, is observed on December 31, 2027."""
    found = offered(dt.date(2027, 12, 30), dt.date(2027, 12, 31), (4,))
    assert Holiday("New Year’s Day", dt.date(2027, 12, 31), dt.date(2027, 12, 31)) in found
