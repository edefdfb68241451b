"""family.toml: what a family may write, and what is said when it can't be read."""

import datetime as dt
import tomllib
from pathlib import Path

import pytest

from tests.config.families import EXAMPLE, FAMILY, complaint, written
from warmup.config.family import (
    Child,
    CountdownRule,
    Family,
    countdowns,
    default,
    load,
    save,
    warnings,
    year_of,
)
from warmup.config.toml_file import FileProblem, Missing
from warmup.model import Countdown, LevelId

day = dt.date


def test_the_example_in_full(tmp_path: Path) -> None:
    assert load(written(tmp_path, EXAMPLE)) == FAMILY


def test_little_is_enough(tmp_path: Path) -> None:
    least = 'school.first_day = 2026-08-31\n[[child]]\nnickname = "Pip"\n'
    expected = Family(first_day=day(2026, 8, 31), began=day(2026, 8, 31), children=(Child("Pip"),))
    assert load(written(tmp_path, least)) == expected


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("format = 1", "format = 2", "line 2, format: expected format = 1"),
        ("2026-08-31", '"soon"', 'line 4, school.first_day: expected a date like 2026-08-31, found "soon"'),
        ("2026-08-31", "2026-08-31T09:00:00", "line 4, school.first_day"),
        ("2026-08-31", "[]", "line 4, school.first_day"),
        (
            "first_day = 2026-08-31",
            "",
            "line 3, school.first_day: expected a date like 2026-08-31, found nothing",
        ),
        (
            "first_week = 1",
            "first_week = 37",
            "line 5, school.first_week: expected a whole number from 1 to 36, found 37",
        ),
        ("first_week = 1", "first_week = true", "found true"),
        (
            '"Tuesday"',
            '"Teusday"',
            'school.weekdays 2: expected a day of the week, found "Teusday"; did you mean "Tuesday"?',
        ),
        ('"Tuesday"', '"monday"', "line 6, school.weekdays 2: expected each day once, found monday twice"),
        (
            '["Monday", "Tuesday", "Wednesday", "Thursday"]',
            "[]",
            "at least one day of the week, found an empty list",
        ),
        (
            '["Monday", "Tuesday", "Wednesday", "Thursday"]',
            "4",
            "expected a list in square brackets, found 4",
        ),
        (
            "to = 2027-01-01",
            "to = 2026-01-01",
            "line 9, school.days_off 2.to: expected a date not before 2026-12-21",
        ),
        ("to = 2027-01-01", "to = 2028-01-01", "at most 366 days off in a row"),
        ("to = 2027-01-01", "to = 2027-12-22", "found 2026-12-21 to 2027-12-22"),
        (", to = 2027-01-01", "", "school.days_off 2.to: expected a date like 2026-08-31, found nothing"),
        (
            "[2026-11-26,",
            '["fifth Thursday of May",',
            'line 9, school.days_off 1: expected a date like 2026-08-31, or a day like "December 25"',
        ),
        (
            "[2026-11-26,",
            '["2026-11-31",',
            'line 9, school.days_off 1: expected a date like 2026-08-31, found "2026-11-31"',
        ),
        ("[2026-11-26,", "[{yearly = 7},", "line 9, school.days_off 1.yearly: expected some words"),
        (
            "[2026-11-26,",
            '[{yearly = "May 5", days = 15},',
            "line 9, school.days_off 1.days: expected a whole number from 1 to 14, found 15",
        ),
        (
            "[2026-11-26,",
            '[{yearly = "May 5", days = 0},',
            "line 9, school.days_off 1.days: expected a whole number from 1 to 14, found 0",
        ),
        (
            "[2026-11-26,",
            '[{yearly = "May 5", from = 2026-11-26},',
            "line 9, school.days_off 1.yearly: expected either from and to, or yearly, found both",
        ),
        (
            'nickname = "Bean"',
            'nickname = ""',
            'line 12, child 1.nickname: expected at least one letter, found ""',
        ),
        ('nickname = "Bean"', 'nickname = " \\u0007\\u200d "', "expected at least one letter"),
        (
            'nickname = "Bean"',
            f'nickname = "{"x" * 10_000}"',
            "line 12, child 1.nickname: expected at most 40 characters",
        ),
        ('nickname = "Bean"', "nickname = 7", "line 12, child 1.nickname: expected some words"),
        ('nickname = "Bean"', 'nickname = "Bean"\n[[child]]\nnickname = "BEAN"', "line 14, child 2.nickname"),
        ('held = ["coins:worth"]', "held = [1]", "line 13, child 1.held 1: expected some words"),
        (
            "[[countdown]]",
            '[child.taught]\n"make-ten/seven-three" = "soon"\n[[countdown]]',
            "line 15, child 1.taught.make-ten/seven-three: expected a date like 2026-08-31, found",
        ),
        (
            "[[countdown]]",
            "taught = [2026-12-03]\n[[countdown]]",
            "line 14, child 1.taught: expected a table",
        ),
        (
            "[[countdown]]",
            "taught.make-ten = 2026-12-03T08:00:00\n[[countdown]]",
            "line 14, child 1.taught.make-ten: expected a date",
        ),
        (
            "[[countdown]]",
            'taught."a\\u001b[2Jb" = 2026-12-03\n[[countdown]]',
            "expected an item like make-ten/seven-three, found",
        ),
        (
            "[[countdown]]",
            f'taught."{"x" * 10_000}" = 2026-12-03\n[[countdown]]',
            "expected an item like make-ten/seven-three, found",
        ),
        (
            "[[countdown]]",
            f"taught = {{{', '.join(f'i{n} = 2026-12-03' for n in range(1001))}}}\n[[countdown]]",
            "line 14, child 1.taught: expected a table of at most 1000, found 1001",
        ),
        (
            "[[countdown]]",
            "first_week = 3\n[[countdown]]",
            "line 14, child 1.first_week: expected a first_day of this child beside it",
        ),
        (
            "[[countdown]]",
            "first_day = 2027-01-11\nheld_weeks = [0]\n[[countdown]]",
            "line 15, child 1.held_weeks 1: expected a whole number from 1 to 36",
        ),
        ("first_week = 1", "last_day = 2026-08-01", "line 5, school.last_day: expected a date not before"),
        ("first_week = 1", "skipped_weeks = 3", "line 5, school.skipped_weeks: expected a list"),
        ("[[countdown]]", "reads = 1\n[[countdown]]", "line 14, child 1.reads: expected true or false"),
        ("[[countdown]]", "paused = true\n[[countdown]]", "line 14, child 1.paused: expected a date"),
        ("[[countdown]]", "paused = 9999-12-31\n[[countdown]]", "between the years 1900 and 2999"),
        ("date = 2027-06-04", "", "line 14, countdown 1.date"),
        ("fourth Thursday", "fifth Thursday", "line 19, countdown 2.yearly: expected a day like"),
        ("fourth Thursday of November", "February 30", 'found "February 30"'),
        ('yearly = "', 'date = 2027-01-01\nyearly = "', "expected either date or yearly, found both"),
        (
            'theme = "dark"',
            'theme = "pink"',
            'line 21, preferences.theme: expected "dark" or "light" or "contrast", found "pink"',
        ),
        (
            "pennies = true",
            "prompts = 3",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        (
            "pennies = true",
            "prompts = 11",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        (
            "pennies = true",
            "prompts = 6.0",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        (
            "pennies = true",
            "prompts = 'six'",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        (
            "pennies = true",
            "prompts = true",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        (
            "pennies = true",
            "prompts = [6]",
            "line 23, preferences.prompts: expected a whole number from 4 to 10",
        ),
        ("pennies = true", 'pennies = "yes"', "line 23, preferences.pennies: expected true or false"),
    ],
)
def test_every_slip_has_its_sentence(tmp_path: Path, old: str, new: str, words: str) -> None:
    said = complaint(tmp_path, old, new)
    assert said.startswith("family.toml, line ") and words in said and "\n" not in said


def test_a_whole_leap_year_of_days_off_in_a_row_is_taken(tmp_path: Path) -> None:
    """366 days, both ends included; a day more is refused."""
    found = load(written(tmp_path, EXAMPLE.replace("to = 2027-01-01", "to = 2027-12-21")))
    assert (day(2026, 12, 21), day(2027, 12, 21)) in found.off


@pytest.mark.parametrize(
    "content", ["", "format = 1", "school = 1", "child = 3\nschool.first_day = 2026-08-31", b"\x89PNG\x00"]
)
def test_files_with_no_family_in_them(tmp_path: Path, content: str | bytes) -> None:
    with pytest.raises(FileProblem):
        load(written(tmp_path, content))


def test_no_file_and_a_folder_in_its_place(tmp_path: Path) -> None:
    with pytest.raises(Missing):
        load(tmp_path / "family.toml")
    (tmp_path / "family.toml").mkdir()
    with pytest.raises(FileProblem):
        load(tmp_path / "family.toml")
    with pytest.raises(FileProblem):
        save(tmp_path / "family.toml", FAMILY)


@pytest.mark.parametrize(
    ("raw", "kept"),
    [
        ("[bold red]Pip[/]", "[bold red]Pip[/]"),
        ("3 [/x] 4", "3 [/x] 4"),
        ("Pip\\u001b[2J\\u0007", "Pip[2J"),
        ("\\n Pip \\n", "Pip"),
        ("🐻👩‍👧", "🐻👩‍👧"),
        ("x" * 40, "x" * 40),
    ],
)
def test_a_nickname_is_shown_as_written_and_never_obeyed(tmp_path: Path, raw: str, kept: str) -> None:
    path = written(tmp_path, EXAMPLE.replace("Bean", raw))
    assert load(path).children[0].nickname == kept


@pytest.mark.parametrize(
    ("today", "first"),
    [
        # Mondays by tests/references/calendar.toml: 2026-08-31 is printed there as one.
        (day(2026, 7, 1), day(2026, 8, 31)),
        (day(2026, 12, 31), day(2026, 8, 31)),
        (day(2027, 6, 30), day(2026, 8, 31)),
        (day(2026, 6, 30), day(2025, 8, 25)),
        (day(2027, 7, 1), day(2027, 8, 30)),
    ],
)
def test_a_new_family_starts_on_the_last_monday_of_august(today: day, first: day, tmp_path: Path) -> None:
    family = default(today)
    assert (family.first_day, family.began, family.weekdays) == (first, today, (0, 1, 2, 3))
    save(tmp_path / "family.toml", family)
    assert load(tmp_path / "family.toml") == family and not warnings(family)


def holidays() -> list[dict[str, str]]:
    path = Path(__file__).parents[1] / "references" / "calendar.toml"
    rows: list[dict[str, str]] = tomllib.loads(path.read_text())["federal_holidays"]["rows"]
    return rows


@pytest.mark.parametrize("row", holidays(), ids=lambda row: row["date"])
def test_yearly_days_fall_where_the_law_puts_them(row: dict[str, str]) -> None:
    # 5 U.S.C. 6103(a), by the rows of tests/references/calendar.toml: the rule in words, and its date.
    rule, date = row["rule"], day.fromisoformat(row["date"])
    family = FAMILY._replace(countdowns=(CountdownRule("a day", yearly=rule),))
    assert countdowns(family, date - dt.timedelta(45)) == (Countdown("a day", date),)
    assert countdowns(family, date - dt.timedelta(1), ahead=1) == (Countdown("a day", date),)
    assert countdowns(family, date) == countdowns(family, date - dt.timedelta(61)) == ()
    assert countdowns(
        family._replace(countdowns=(CountdownRule("a day", yearly=rule.replace(" in ", " of ")),)), date, 371
    )


def test_countdowns_lie_ahead_nearest_first() -> None:
    family = FAMILY._replace(
        countdowns=(
            CountdownRule("far", date=day(2027, 1, 20)),
            CountdownRule("over", date=day(2026, 12, 1)),
            CountdownRule("new year", yearly="january 1"),
            CountdownRule("near", date=day(2026, 12, 2)),
            CountdownRule("too far", date=day(2027, 2, 1)),
        ),
    )
    assert [c.name for c in countdowns(family, day(2026, 12, 1))] == ["near", "new year", "far"]
    assert countdowns(family, day(9999, 12, 30)) == ()


def test_a_leap_day_comes_in_leap_years_only() -> None:
    family = FAMILY._replace(countdowns=(CountdownRule("leap day", yearly="February 29"),))
    assert countdowns(family, day(2028, 2, 1))[0].day == day(2028, 2, 29)
    assert countdowns(family, day(2027, 2, 1)) == ()


def test_odd_things_are_warned_of_and_kept() -> None:
    odd = FAMILY._replace(
        children=(Child("Bean", held=(LevelId("count-on:within-11"),)),), first_day=day(2026, 8, 30)
    )
    levels, first = warnings(odd)
    assert (
        'Bean has "count-on:within-11" held back' in levels and 'did you mean "count-on:within-10"?' in levels
    )
    assert "is a Sunday" in first


def test_a_child_may_be_in_weeks_of_its_own(tmp_path: Path) -> None:
    """The family is in week 20 on the day the younger one begins with week 1; days off are for both."""
    own = "first_day = 2027-01-18\nheld_weeks = [2, 1]\n"
    both = f'[[child]]\nnickname = "Fern"\n{own}[[child]]\nnickname = "Moth"\n'
    held = EXAMPLE.replace("first_week = 1", "held_weeks = [9]")
    family = load(written(tmp_path, held + both))
    bean, fern, moth = family.children
    day_in_january = day(2027, 1, 19)
    assert year_of(family, bean) == year_of(family, moth) == year_of(family)
    assert year_of(family, bean).weeks[8:11] == (9, 9, 10)
    assert year_of(family, fern).morning(day_in_january).school_day == 2
    assert year_of(family, fern).weeks[:5] == (1, 1, 2, 2, 3)
