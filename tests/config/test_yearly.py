"""Days off that come every year: where they fall, that they are kept as written, and what they load."""

import datetime as dt
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.config.families import EXAMPLE, FAMILY, every_year, written
from warmup.config.family import Child, Family, YearlyOff, load, save, year_of
from warmup.config.yearly import LONGEST, days, stretches
from warmup.model import DayKind

day = dt.date
ROWS = tomllib.loads((Path(__file__).parents[1] / "references/calendar.toml").read_text("utf-8"))[
    "federal_holidays"
]["rows"]
TOLD = """days_off = [
    "Fourth Thursday of NOVEMBER", # the feast
    2026-10-12,
    {yearly = "December 24", days = 9},
]"""


def told(folder: Path) -> Path:
    line = next(line for line in EXAMPLE.splitlines() if line.startswith("days_off"))
    return written(folder, EXAMPLE.replace(line, TOLD))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["date"])
def test_words_fall_where_the_law_puts_them(row: dict[str, str]) -> None:
    """5 U.S.C. 6103(a), by the rows of tests/references/calendar.toml: the rule in words, and its date."""
    date = day.fromisoformat(row["date"])
    assert days(row["rule"], day(date.year, 1, 1), day(date.year, 12, 31)) == [date]
    assert days(row["rule"], date, date) == [date]
    assert days(row["rule"], date + dt.timedelta(1), date + dt.timedelta(300)) == []


def test_they_stand_among_the_others_and_are_kept_as_written(tmp_path: Path) -> None:
    path = told(tmp_path)
    family, text = load(path), path.read_text("utf-8")
    assert family.off == ((day(2026, 10, 12),) * 2,)
    assert family.yearly_off == (YearlyOff("Fourth Thursday of NOVEMBER"), YearlyOff("December 24", 9))
    more = family._replace(off=(*family.off, (day(2027, 3, 1), day(2027, 3, 2))), theme="light")
    assert save(path, more, family) == load(path) == more
    now = path.read_text("utf-8")
    for line in TOLD.splitlines()[:-1]:
        assert line in now
    assert "from = 2027-03-01" in now
    save(path, family, more)
    assert path.read_text("utf-8").replace(" ", "") == text.replace(" ", "")
    fewer = save(path, family._replace(yearly_off=family.yearly_off[1:]), family)
    assert fewer.yearly_off == (YearlyOff("December 24", 9),) and fewer.off == family.off
    added = save(path, fewer._replace(yearly_off=(YearlyOff("May 5"), YearlyOff("May 7", 2))), fewer)
    assert load(path) == added
    assert '"May 5"' in path.read_text("utf-8")
    assert '{yearly = "May 7", days = 2}' in path.read_text("utf-8")


def test_they_are_off_in_every_year_the_school_year_reaches(tmp_path: Path) -> None:
    """The feasts of 2026 and 2027 by the rows of tests/references/calendar.toml; December 24 to January 1."""
    family = load(told(tmp_path))._replace(extra=())
    year = year_of(family)
    assert year.kind(day(2026, 11, 26)) is DayKind.DAY_OFF
    assert {each for each in year.mornings if day(2026, 12, 24) <= each <= day(2027, 1, 1)} == set()
    assert day(2026, 12, 23) in year.mornings and day(2027, 1, 4) in year.mornings
    dated = ((day(2026, 11, 26),) * 2, (day(2026, 12, 24), day(2027, 1, 1)))
    assert year == year_of(family._replace(yearly_off=(), off=(*family.off, *dated)))
    pip = Child("Pip", first_day=day(2029, 12, 1))
    assert year_of(family, pip).kind(day(2029, 12, 24)) is DayKind.DAY_OFF, "behind the family's own year"
    long = (day(2026, 8, 31), day(2027, 8, 29))
    late = year_of(family._replace(off=(long,)))
    assert late.kind(day(2027, 11, 25)) is DayKind.DAY_OFF
    assert late.kind(day(2027, 12, 24)) is DayKind.WEEKEND
    assert late.kind(day(2027, 12, 27)) is DayKind.DAY_OFF


def test_a_stretch_that_began_before_the_first_day_still_is_off() -> None:
    family = FAMILY._replace(off=(), extra=(), yearly_off=(YearlyOff("August 24", 9),))
    assert year_of(family).mornings[0] == day(2026, 9, 2)
    assert year_of(family._replace(yearly_off=(YearlyOff("August 24", 7),))).mornings[0] == day(2026, 8, 31)


@given(every_year, st.integers(1, LONGEST), st.dates(day(1900, 1, 1), day(2999, 1, 1)), st.integers(0, 1200))
def test_a_stretch_touches_the_time_asked_for_and_none_is_left_out(
    words: str, count: int, first: dt.date, length: int
) -> None:
    last = first + dt.timedelta(length)
    found = stretches([(words, count)], first, last)
    assert all(start <= last and end >= first for start, end in found)
    every = days(words, first - dt.timedelta(400), last + dt.timedelta(400))
    touching = [each for each in every if each <= last and each + dt.timedelta(count - 1) >= first]
    assert [start for start, _ in found] == touching
    assert all((end - start).days == count - 1 for start, end in found)


@pytest.mark.slow
@pytest.mark.parametrize(("yearly", "loads"), [((), False), ((YearlyOff("May 5"),), True)])
def test_a_family_without_them_loads_nothing_for_them(
    tmp_path: Path, yearly: tuple[YearlyOff, ...], loads: bool
) -> None:
    family = Family(day(2026, 8, 31), day(2026, 8, 31), FAMILY.children, yearly_off=yearly)
    path = tmp_path / "family.toml"
    save(path, family)
    code = """
import pathlib, sys
from warmup.config.family import load, year_of
year_of(load(pathlib.Path(sys.argv[1])))
print(sorted({"warmup.config.yearly", "dateutil.rrule"} & set(sys.modules)))
"""
    run = subprocess.run([sys.executable, "-c", code, str(path)], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == ("['dateutil.rrule', 'warmup.config.yearly']" if loads else "[]")
