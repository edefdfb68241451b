import calendar
import datetime as dt

from tests.bank import reference
from tests.skills.asking import asked, example, sought
from tests.skills.on_dates import asked_on, sampled_dates, worked_dates

NAMES = list(calendar.month_name)


def test_the_month_is_that_of_the_date() -> None:
    for row in worked_dates():
        (prompt,) = asked_on("month/this", row["date"])
        assert prompt.answer == reference("calendar")["month_lengths"]["names"][row["date"].month - 1]
    for day in sampled_dates():
        assert asked_on("month/this", day)[0].answer == NAMES[day.month]


def test_a_new_month_is_spoken_of_on_its_first_day_only() -> None:
    for month in range(1, 13):
        assert any("new month" in p.say for p in asked_on("month/this", dt.date(2027, month, 1), 40))
        assert not any("new month" in p.say for p in asked_on("month/this", dt.date(2027, month, 2), 40))


def test_months_before_and_after_are_those_of_the_table() -> None:
    # references/calendar.toml, [month_wrap]; the months in order: Virginia Standards of Learning (2016) K.8.
    rows = {row["given"]: row for row in reference("calendar")["month_wrap"]["rows"]}
    seen = set()
    for item in ("around", "december-january", "june-july"):
        for prompt in asked(f"month/{item}", 300):
            month, step = prompt.given["month"], prompt.given["steps"]
            assert prompt.answer == rows[month]["after" if step > 0 else "before"]
            seen.add((month, step))
    # What comes after August has an item of its own.
    assert len(seen) == 23 and ("August", 1) not in seen
    for prompt in asked("month/august-september", 50):
        assert prompt.answer == rows["August"]["after"] and prompt.given["said"][-1] == "August"


def test_the_row_of_months_goes_on_and_never_past_the_year() -> None:
    rows = {row["given"]: row["after"] for row in reference("calendar")["month_wrap"]["rows"]}
    starts = set()
    for prompt in asked("month/in-order", 400):
        last = prompt.given["said"][-1]
        assert prompt.answer == f"{rows[last]} and {rows[rows[last]]}"
        assert "January" not in prompt.answer and last != "August"
        starts.add(last)
    assert len(starts) >= 8


def test_a_year_has_twelve_months() -> None:
    # Virginia Standards of Learning (2016) K.8: months_in_year in references/standards.toml.
    twelve = reference("standards")["state"]["va_calendar"]["bounds"]["months_in_year"]
    assert twelve == 12 and {p.answer for p in asked("month/twelve-months", 20)} == {"twelve"}


def test_the_worked_examples() -> None:
    assert sought("month/december-january", {"month": "December"}).answer == example("ex13")["answer"]


def test_before_and_after_come_equally_often() -> None:
    for item in ("around", "december-january", "june-july"):
        forward = sum(prompt.given["steps"] > 0 for prompt in asked(f"month/{item}", 1000)) / 1000
        # Nine of the nineteen plain ones go forward: what follows August is asked elsewhere.
        assert 0.4 < forward < 0.55, item


def test_another_month_is_only_pretended_and_this_one_is_not() -> None:
    supposed = set()
    for number in range(1, 13):
        for item in ("around", "december-january", "june-july"):
            for prompt in asked_on(f"month/{item}", dt.date(2027, number, 9), 200):
                month = prompt.given["month"]
                said = [part for part in (f"It’s {month}.", f"Pretend it’s {month}.") if part in prompt.say]
                now = month == NAMES[number]
                assert not said or prompt.say.startswith(
                    f"It’s {month}." if now else f"Pretend it’s {month}."
                )
                supposed |= {(month, now) for _ in said}
    assert len(supposed) == 24


def test_last_month_is_named_as_it_was() -> None:
    for number in range(1, 13):
        before = NAMES[(number - 2) % 12 + 1]
        says = {p.say for p in asked_on("month/this", dt.date(2027, number, 9), 40)}
        assert f"Last month was {before}. What month is it now?" in says
        assert all(f"Last month was {before}" in say for say in says if "Last month" in say)
