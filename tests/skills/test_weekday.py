import calendar
import datetime as dt
import re
from collections import Counter

import pytest

from tests.bank import reference
from tests.skills.asking import asked, example, level_asked, sought
from tests.skills.on_dates import asked_on, clock_changes, sampled_dates, worked_dates
from warmup import skills

AROUND = ("around", "saturday-sunday", "tuesday-thursday", "day-before")


def test_the_worked_dates_have_the_published_days_before_on_and_after() -> None:
    # references/calendar.toml, [dates]: Zeller's congruence (1882) and the Gregorian rule.
    for row in worked_dates():
        assert asked_on("weekday/today", row["date"])[0].answer == row["weekday"]
        assert asked_on("weekday/yesterday", row["date"])[0].answer == row["day_before"].split()[0]
        assert asked_on("weekday/tomorrow", row["date"])[0].answer == row["day_after"].split()[0]


@pytest.mark.slow
def test_forty_years_agree_with_the_standard_librarys_calendar() -> None:
    for day in sampled_dates():
        at = calendar.weekday(day.year, day.month, day.day)
        for item, step in (("today", 0), ("tomorrow", 1), ("yesterday", -1)):
            (prompt,) = asked_on(f"weekday/{item}", day)
            assert prompt.answer == calendar.day_name[(at + step) % 7], (item, day)


def test_days_before_and_after_are_those_of_the_table() -> None:
    # Virginia Standards of Learning (2016) K.8; rows of references/calendar.toml, [weekday_wrap].
    rows = {row["given"]: row for row in reference("calendar")["weekday_wrap"]["rows"]}
    names = {1: "after", -1: "before"}
    seen = set()
    for item in AROUND:
        for prompt in asked(f"weekday/{item}"):
            day, step = prompt.given["day"], prompt.given["steps"]
            assert prompt.answer == rows[day][names[step]]
            seen.add((day, step))
    assert len(seen) == 7 * 2, "some day is never asked for in some direction"


def test_no_level_goes_past_the_bound_of_the_standard() -> None:
    # Virginia Standards of Learning (2016) K.8: day_offset in references/standards.toml.
    low, high = reference("standards")["state"]["va_calendar"]["bounds"]["day_offset"]
    for level in skills.SKILLS["weekday"].levels:
        for prompt in level_asked("weekday", level.key, 100):
            assert low <= prompt.given["steps"] <= high


def test_the_day_before_has_a_record_of_its_own_and_the_plain_item_asks_after_alone() -> None:
    """So "after" can be sure while "before" is shaky; the wrap and the pair that sounds alike go both ways.

    Between them the two start at each day but Wednesday, whose neighbors sound alike.
    """
    for item, ways in (("around", {1}), ("day-before", {-1}), ("saturday-sunday", {1, -1})):
        assert {prompt.given["steps"] for prompt in asked(f"weekday/{item}")} == ways
    starts = {prompt.given["day"] for item in ("around", "day-before") for prompt in asked(f"weekday/{item}")}
    assert starts == set(calendar.day_name) - {"Wednesday"}


def test_the_worked_examples() -> None:
    assert (
        sought("weekday/saturday-sunday", {"day": "Saturday", "steps": 1}).answer == example("ex03")["answer"]
    )
    assert (
        sought("weekday/saturday-sunday", {"day": "Sunday", "steps": -1}).answer == example("ex05")["answer"]
    )


def test_the_day_after_the_clocks_change_is_monday() -> None:
    # 15 U.S.C. 260a: both changes fall on Sundays; ex17 is one of them.
    sundays = clock_changes()[1::3]
    assert example("ex17")["given"] in {day.isoformat() for day in sundays}
    for day in sundays:
        assert asked_on("weekday/tomorrow", day)[0].answer == example("ex17")["answer"].split(",")[0]
        assert asked_on("weekday/yesterday", day)[0].answer == "Saturday"


def test_before_and_after_come_equally_often_and_no_day_is_a_good_guess() -> None:
    for item in ("saturday-sunday", "tuesday-thursday"):
        prompts = asked(f"weekday/{item}", 1000)
        forward = sum(prompt.given["steps"] > 0 for prompt in prompts) / 1000
        assert 0.45 < forward < 0.55, item
    for item in ("around", "day-before"):
        often = Counter(prompt.answer for prompt in asked(f"weekday/{item}", 1000))
        assert len(often) == 4 and max(often.values()) < 310


def test_the_wrap_is_shown_on_a_strip_where_the_two_days_touch() -> None:
    for prompt in asked("weekday/saturday-sunday", 20):
        picture = prompt.cues[1].picture
        assert picture is not None
        strip = picture.shows()
        assert abs(strip.index("Saturday") - strip.index("Sunday")) == 1


def test_another_day_is_only_pretended_and_today_is_not() -> None:
    """On a Thursday no prompt says that it is Tuesday, and none pretends that it is Thursday."""
    supposed = set()
    for today in (dt.date(2026, 11, 23) + dt.timedelta(n) for n in range(7)):
        name = calendar.day_name[today.weekday()]
        for item in AROUND:
            for prompt in asked_on(f"weekday/{item}", today, 80):
                day = prompt.given["day"]
                said = [
                    part for part in (f"It’s {day}.", f"Pretend it’s {day}.") if prompt.say.startswith(part)
                ]
                assert not said or said == [f"It’s {day}." if day == name else f"Pretend it’s {day}."]
                supposed |= {(day, day == name) for _ in said}
    assert len(supposed) == 14


def test_nothing_is_told_that_did_not_happen() -> None:
    """No snow, bread or lost hat: what is said of a day is its name, and yesterday's is true."""
    for today in (dt.date(2026, 11, 23) + dt.timedelta(n) for n in range(7)):
        before = calendar.day_name[(today.weekday() - 1) % 7]
        for prompt in asked_on("weekday/today", today, 20):
            assert "Yesterday" not in prompt.say or f"Yesterday was {before}." in prompt.say
        for item in ("today", "tomorrow", "yesterday"):
            for prompt in asked_on(f"weekday/{item}", today, 20):
                assert not re.search(r"\b(?:snow|bread|hat|bear|kite|moon|sun)\b", prompt.say.lower())
                assert "day" in prompt.say.rpartition(". ")[2]
