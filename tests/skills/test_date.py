import calendar
import datetime as dt
import re
from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference
from tests.mornings import morning
from tests.skills.asking import example
from tests.skills.on_dates import asked_on, sampled_dates, worked_dates
from warmup import skills
from warmup.model import Countdown, Prompt
from warmup.randomness import SeededRandom


def spoken(day: dt.date) -> str:
    """The date in words by num2words and the standard library: "March third"."""
    return f"{calendar.month_name[day.month]} {num2words(day.day, to='ordinal')}"


def answers(prompt: Prompt) -> tuple[str, ...]:
    return (prompt.answer, *prompt.accept)


def test_the_worked_dates_are_said_as_published() -> None:
    # references/calendar.toml, [dates]; ordinals of words.toml.
    ordinals = [row["word"] for row in reference("words")["ordinal"]["rows"]]
    for row in worked_dates():
        for day, text in (
            (row["date"] - dt.timedelta(1), row["day_before"]),
            (row["date"] + dt.timedelta(1), row["day_after"]),
        ):
            name, month, number = text.split()
            (prompt,) = asked_on("date/full", day)
            assert prompt.answer == f"{month} {ordinals[int(number) - 1]}"
            assert f"{name}, {prompt.answer}" in prompt.accept


@pytest.mark.slow
def test_forty_years_agree_with_the_standard_library() -> None:
    for day in sampled_dates():
        assert asked_on("date/full", day)[0].answer == spoken(day)
        assert asked_on("date/say-number", day)[0].answer == num2words(day.day)
        (find,) = asked_on("date/find-number", day)
        assert find.answer.endswith(f"under {calendar.day_name[day.weekday()]}")


def test_cardinals_are_taken_for_ordinals_with_and_without_the_day_of_the_week() -> None:
    day = dt.date(2026, 3, 3)
    (prompt,) = asked_on("date/full", day)
    assert {"March third", "March three", "Tuesday, March third", "Tuesday, March three"} <= set(
        answers(prompt)
    )
    assert {"third", "the third"} <= set(asked_on("date/say-number", day)[0].accept)


def test_the_worked_examples() -> None:
    first = example("ex01")
    (prompt,) = asked_on("date/full", dt.date.fromisoformat(first["given"]))
    assert set(first["accept"]) <= set(answers(prompt))
    for name in ("ex07", "ex09", "ex11", "ex17"):
        row = example(name)
        after = dt.date.fromordinal(dt.date.fromisoformat(row["given"]).toordinal() + 1)
        weekday, month, number = row["answer"].replace(",", "").split()
        (prompt,) = asked_on("date/full", after)
        assert f"{weekday}, {month} {num2words(int(number), to='ordinal')}" in answers(prompt), name
        assert set(row.get("accept", ())) <= set(answers(prompt)), name


def test_the_hard_names_are_asked_in_the_month_that_is() -> None:
    for month in range(1, 13):
        today = dt.date(2027, month, 28)
        for item, days in (("eleventh-to-thirteenth", {11, 12, 13}), ("twenty-first", {21})):
            for prompt in asked_on(f"date/{item}", today, 12):
                start = dt.date.fromisoformat(prompt.given["from"])
                target = start + dt.timedelta(prompt.given["steps"])
                assert (start.year, start.month) == (2027, month) and target.day in days
                assert prompt.answer == spoken(target) and num2words(target.day) in prompt.accept
                assert spoken(start) in prompt.say


def test_a_day_that_matters_within_a_week_is_counted_to() -> None:
    # Also over the ends of years, leap Februaries and clock changes (15 U.S.C. 260a).
    for today in (
        dt.date(2026, 12, 28),
        dt.date(2028, 2, 26),
        dt.date(2027, 2, 26),
        dt.date(2027, 3, 12),
        dt.date(2026, 10, 30),
    ):
        for days in range(1, 8):
            there = dt.date.fromordinal(today.toordinal() + days)
            at = morning(today)._replace(countdowns=(Countdown("the boat trip", there),))
            for n in range(6):
                prompt = skills.prompt("date/sleeps", at, SeededRandom("trip", today, days, n))
                assert prompt.answer == num2words(days)
                assert "the boat trip" in prompt.say.lower()
                name = calendar.day_name[there.weekday()]
                place = f"on {name}" if days < 7 else "a week from today"
                # On a named day a week ahead the same name would be taken for today's.
                assert place in prompt.say


def test_without_such_a_day_sleeps_are_counted_to_a_day_of_the_week() -> None:
    for today in (dt.date(2026, 8, 31) + dt.timedelta(n) for n in range(7)):
        prompts = asked_on("date/sleeps", today, 60, countdowns=False)
        assert {p.answer for p in prompts} == {num2words(n) for n in range(1, 7)}
        for prompt in prompts:
            until = dt.date.fromisoformat(prompt.given["to"])
            assert calendar.day_name[until.weekday()] in prompt.say
    often = Counter(
        p.answer
        for n in range(100)
        for p in asked_on("date/sleeps", dt.date(2026, 8, 31) + dt.timedelta(n), 6, countdowns=False)
    )
    assert max(often.values()) < 150


def test_a_few_days_on_stay_in_the_month() -> None:
    for day in range(1, 32):
        today = dt.date(2027, 5, day)
        assert skills.askable("date/few-days-on", morning(today)) == (day <= 29)
        for prompt in asked_on("date/few-days-on", today, 20) if day <= 29 else ():
            target = today + dt.timedelta(prompt.given["steps"])
            assert target.month == 5 and prompt.answer == spoken(target)


def test_the_last_of_every_month_goes_over_to_the_first_and_back() -> None:
    # references/calendar.toml, [month_lengths]: which months have 30 days and which 31.
    table = reference("calendar")["month_lengths"]
    start_of = dt.date(2027, 1, 1)
    for item, days in (("thirty-to-one", 30), ("thirty-one-to-one", 31)):
        ends, forward = set(), 0
        prompts = [p for n in range(365) for p in asked_on(f"date/{item}", start_of + dt.timedelta(n))]
        for prompt in prompts:
            start = dt.date.fromisoformat(prompt.given["from"])
            target = dt.date.fromordinal(start.toordinal() + prompt.given["steps"])
            end, new = sorted((start, target))
            assert (end.day, new.day) == (days, 1) and prompt.answer == spoken(target)
            ends.add(calendar.month_name[end.month])
            forward += prompt.given["steps"] > 0
        assert ends == set(table[f"days_{days}"])
        assert 0.4 < forward / len(prompts) < 0.6


def test_the_end_of_a_month_is_one_beside_today_where_it_can_be() -> None:
    """The months in order are taught weeks later than the whole date."""
    for today, item, ends in (
        (dt.date(2026, 11, 17), "thirty-to-one", {dt.date(2026, 11, 30)}),
        (dt.date(2026, 11, 17), "thirty-one-to-one", {dt.date(2026, 10, 31)}),
        (dt.date(2027, 1, 20), "thirty-one-to-one", {dt.date(2026, 12, 31), dt.date(2027, 1, 31)}),
        (dt.date(2027, 1, 20), "thirty-to-one", {dt.date(2027, month, 30) for month in (4, 6, 9, 11)}),
        (dt.date(2026, 12, 31), "thirty-one-to-one", {dt.date(2026, 12, 31)}),
    ):
        starts = [(p.given["from"], p.given["steps"]) for p in asked_on(f"date/{item}", today, 80)]
        found = {dt.date.fromisoformat(start) - dt.timedelta(0 if step > 0 else 1) for start, step in starts}
        assert found == ends, (today, item)


def test_the_first_of_a_month_is_spoken_of_as_such() -> None:
    for prompt in asked_on("date/say-number", dt.date(2027, 2, 1), 12):
        assert prompt.answer == "one" and "yesterday" not in prompt.say.lower()
    (find,) = asked_on("date/find-number", dt.date(2027, 2, 1))
    assert find.picture is not None
    assert not any(label.isdigit() and len(label) < 3 for label in find.picture.shows())


def test_a_day_that_matters_is_noticed_on_the_day() -> None:
    today = morning()._replace(festive=("the lake",))
    for n in range(6):
        prompt = skills.prompt("date/full", today, SeededRandom("festive", n))
        assert "The lake is today" in prompt.say and prompt.answer == "November twenty-fifth"


@pytest.mark.slow
def test_another_date_is_only_pretended_and_todays_is_not() -> None:
    """Over a year, so that the last of a month and the tenth are sometimes today."""
    real = pretended = 0
    for today in (dt.date(2027, 1, 1) + dt.timedelta(n) for n in range(365)):
        for item in ("eleventh-to-thirteenth", "twenty-first", "thirty-to-one", "thirty-one-to-one"):
            for prompt in asked_on(f"date/{item}", today, 6):
                start = dt.date.fromisoformat(prompt.given["from"])
                if re.match(r"(?:Pretend it|It)’s", prompt.say):
                    so = start == today
                    real, pretended = real + so, pretended + (not so)
                    assert prompt.say.startswith(f"{'It' if so else 'Pretend it'}’s {spoken(start)}."), (
                        prompt.say
                    )
    assert real > 5 and pretended > 500


def test_no_prompt_about_the_date_names_todays_day_of_the_week() -> None:
    """It is the answer of another prompt of the same morning."""
    for today in (dt.date(2027, 3, 1) + dt.timedelta(n) for n in range(7)):
        for item in ("say-number", "find-number", "full", "sleeps", "few-days-on"):
            for prompt in asked_on(f"date/{item}", today, 20):
                assert calendar.day_name[today.weekday()] not in prompt.say


def test_todays_number_may_be_said_as_the_whole_date() -> None:
    (prompt,) = asked_on("date/say-number", dt.date(2026, 3, 3))
    assert {"third", "the third", "March third", "March three"} <= set(prompt.accept)
