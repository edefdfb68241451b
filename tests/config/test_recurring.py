"""Events that come again: the examples of the standard, and rules that would be followed for ever."""

import datetime as dt
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from dateutil.rrule import rrulestr
from hypothesis import given
from hypothesis import strategies as st

from tests.config.calendars import calendar, event, read
from warmup.config.recurring import Rule, Walk, rule_parts, starts
from warmup.config.toml_file import FileProblem

day = dt.date
EXAMPLES = tomllib.loads((Path(__file__).parents[1] / "references/recurrence.toml").read_text("utf-8"))[
    "example"
]


def printed(dates: str) -> Iterator[day]:
    """The dates of an example: "1997-09 2-11; 1997-10 2 12"."""
    for month in dates.removesuffix(" ...").split("; "):
        name, *days = month.split(" ")
        year, number = map(int, name.split("-"))
        for each in days:
            first, _, last = each.partition("-")
            yield from (day(year, number, n) for n in range(int(first), int(last or first) + 1))


def test_the_examples_are_all_of_the_section() -> None:
    assert len(EXAMPLES) == 42 and sum(len([*printed(each["dates"])]) for each in EXAMPLES) > 600


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example["what"])
def test_the_examples_of_the_standard_fall_on_the_dates_it_prints(
    tmp_path: Path, example: dict[str, Any]
) -> None:
    """RFC 5545, section 3.8.5.3, by the rows of tests/references/recurrence.toml."""
    dates = [*printed(example["dates"])]
    start = f"DTSTART;TZID=America/New_York:{example['start']}T090000"
    lines = [start, "SUMMARY:x", f"RRULE:{example['rule']}", *filter(None, [example.get("more")])]
    endless = example["dates"].endswith("...")
    last = dates[-1] if endless else dates[-1] + dt.timedelta(4000)
    if "MINUTELY" in example["rule"] and not endless:
        last = dates[-1] + dt.timedelta(30)
    found = read(tmp_path, calendar(event(*lines)), day(1990, 1, 1), last)
    assert [each.first for each in found] == dates
    assert all(each.last == each.first and not each.whole for each in found)


FREQUENCIES = st.sampled_from(["YEARLY", "MONTHLY", "WEEKLY", "DAILY"])
FILTERS = st.sampled_from(
    [
        "",
        ";BYDAY=MO",
        ";BYDAY=TU,TH",
        ";BYMONTH=11",
        ";BYMONTH=2,9;BYDAY=FR",
        ";BYMONTHDAY=15",
        ";BYMONTHDAY=-1",
    ]
)


@given(
    FREQUENCIES,
    FILTERS,
    st.integers(1, 5),
    st.none() | st.integers(1, 40),
    st.dates(day(2015, 1, 1), day(2027, 1, 1)),
    st.none() | st.dates(day(2015, 1, 1), day(2030, 1, 1)),
)
def test_a_rule_comes_when_dateutil_says_and_first_of_all_at_its_start(
    frequency: str, filters: str, interval: int, count: int | None, first: dt.date, until: dt.date | None
) -> None:
    start, end = dt.datetime.combine(first, dt.time(9)), dt.datetime(2028, 6, 1)
    text = f"FREQ={frequency};INTERVAL={interval}{filters}"
    if count:
        text += f";COUNT={count}"
    stop = None if until is None else dt.datetime.combine(until, dt.time(9))
    found = starts(start, [Rule(rule_parts(text), stop)], [], (), end, Walk())
    expected = rrulestr(text, dtstart=start).between(start, end, inc=True)
    expected = [when for when in expected if stop is None or when <= stop]
    assert found == sorted({start, *expected})


SENTENCE = "RRULE: expected a rule of days, weeks, months or years like FREQ=YEARLY, found "


@pytest.mark.parametrize(
    "rule",
    [
        "FREQ=SECONDLY;BYMONTH=2;BYMONTHDAY=30",
        "FREQ=YEARLY;BYSETPOS=1;BYHOUR=0,1,2,3,4,5,6,7,8,9,10;BYMINUTE=0,1,2,3,4,5,6,7,8,9",
        "FREQ=NEVER",
        "FREQ=DAILY;FREQ=DAILY",
        "FREQ=DAILY;INTERVAL=0",
        "FREQ=DAILY;INTERVAL=-1",
        "FREQ=DAILY;COUNT=x",
        "FREQ=DAILY;UNTIL=soon",
        "FREQ=DAILY;BYDAY=XX",
        "FREQ=DAILY;BYHOUR=25",
        "FREQ=YEARLY;BYWEEKNO=a",
        "FREQ=DAILY;COLOR=blue",
        "COUNT=3",
        "",
    ],
)
def test_a_rule_that_is_none_is_refused_with_its_line(tmp_path: Path, rule: str) -> None:
    with pytest.raises(FileProblem) as caught:
        read(tmp_path, calendar(event("DTSTART;VALUE=DATE:20200106", f"RRULE:{rule}", "SUMMARY:x")))
    assert str(caught.value).startswith(f"days.ics, line 6, {SENTENCE}")


@pytest.mark.slow
@pytest.mark.parametrize(
    ("rule", "often"),
    [
        ("FREQ=SECONDLY", 1),
        ("FREQ=MINUTELY", 1),
        ("FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", 3),
        ("FREQ=DAILY;COUNT=3;BYMONTH=2;BYMONTHDAY=30", 3),
        ("FREQ=DAILY;INTERVAL=7;BYDAY=TU", 30),
    ],
)
def test_a_rule_that_would_be_followed_for_ever_is_refused_in_a_moment(
    tmp_path: Path, rule: str, often: int
) -> None:
    """A second of a hundred years is too many, and so are a few rules that never come."""
    monday = event("DTSTART;VALUE=DATE:20200106", f"RRULE:{rule}", "SUMMARY:x")
    with pytest.raises(FileProblem) as caught:
        read(tmp_path, calendar(*[monday] * often))
    assert f"{SENTENCE}one that can’t be followed." in str(caught.value)


def test_a_rule_that_never_comes_still_has_its_first_day(tmp_path: Path) -> None:
    never = event("DTSTART;VALUE=DATE:20261012", "RRULE:FREQ=DAILY;INTERVAL=7;BYDAY=TU", "SUMMARY:x")
    assert [each.first for each in read(tmp_path, calendar(never))] == [day(2026, 10, 12)]


def test_what_the_budget_is_spent_on_is_said() -> None:
    walk = Walk(3)
    walk.take(2)
    walk.take(0.2)
    with pytest.raises(ValueError, match="too many"):
        walk.take(1)
