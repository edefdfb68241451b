"""What is on the sheets: numbers, names and sizes against tables and other code."""

import calendar
import datetime as dt
import tomllib
from collections import Counter
from itertools import pairwise
from math import dist
from pathlib import Path

import pytest
from num2words import num2words

from tests.sheets.test_pages import DAY
from warmup.sheets import cards
from warmup.sheets.base import Day, Page
from warmup.sheets.kinds import (
    adding_cards,
    clock_face,
    coins,
    dot_cards,
    hundred_charts,
    kinds,
    number_lines,
    skip_strips,
)
from warmup.sheets.lines import Dot, Line, Ring, Stroke, Words

REFERENCES = Path(__file__).parents[1] / "references"


def pages(kind: str, day: Day = DAY) -> list[Page]:
    return [*kinds()[kind].pages(day)]


def words(page: Page) -> list[str]:
    return [part.text for part in page.drawn if isinstance(part, Words)]


def test_coins_are_as_wide_as_the_mint_says() -> None:
    """coins.toml: United States Mint, coin specifications."""
    table = tomllib.loads((REFERENCES / "coins.toml").read_text("utf-8"))["coin"]
    cut = [part for part in pages("coins")[0].drawn if isinstance(part, Ring) and part.line is Line.CUT]
    wide = Counter(round(2 * part.radius, 3) for part in cut)
    assert wide == {table[name]["diameter_mm"]: count for name, count in coins.COUNTS.items()}
    for one, other in pairwise(cut):
        assert dist(one.at, other.at) > one.radius + other.radius
    dots = sum(isinstance(part, Dot) for part in pages("coins")[1].drawn)
    assert dots == 2 * sum(table[name]["cents"] for name in coins.COUNTS)


def test_the_charts_hold_their_numbers_and_hide_some() -> None:
    full, hiding, empty, more = pages("hundred-charts")
    assert words(full) == [str(n) for n in range(1, 101)] and words(empty) == []
    assert words(more) == [str(n) for n in range(1, 121)]
    assert len(words(hiding)) == 100 - 12 and {"1", "100"} <= {*words(hiding)}
    other = words(pages("hundred-charts", DAY._replace(date=dt.date(2027, 3, 4)))[1])
    assert other != words(hiding)
    assert hundred_charts.CELL * 10 < 198


@pytest.mark.parametrize("last", [20, 30])
def test_a_number_line_goes_on_evenly_from_strip_to_strip(last: int) -> None:
    """Glued with its edge on the last mark of the one before, each strip begins where that ended."""
    for first in range(0, last, 10):
        drawn = [*number_lines.strip(first, last, 0)]
        frame = drawn[0]
        assert isinstance(frame, Stroke)
        marks = sorted(
            part.points[0][0] - frame.points[0][0]
            for part in drawn
            if isinstance(part, Stroke) and part.points[0][0] == part.points[1][0] and len(part.points) == 2
        )
        assert marks[0] == pytest.approx(8.0 if first == 0 else 0.0)
        assert [b - a for a, b in pairwise(marks)] == pytest.approx([17.0] * 10)
    strips = [number_lines.strip(first, last, 0) for first in range(0, last, 10)]
    said = [text for each in strips for text in words(Page("", tuple(each)))]
    assert [text for text in said if text != "glue"] == [str(n) for n in range(last + 1)]


def test_numbers_and_words_go_together() -> None:
    """num2words, a general library, says the same."""
    numbers, names = pages("number-cards")
    assert words(numbers) == [str(n) for n in range(21)]
    assert words(names) == [num2words(n) for n in range(21)]


def test_the_month_is_that_of_the_standard_library_s_calendar() -> None:
    (page,) = pages("month-page")
    said = [text for text in words(page) if text.isdigit()]
    assert said == [str(n) for n in range(1, calendar.monthrange(2027, 3)[1] + 1)]
    assert [text for text in words(page) if text.startswith("day")] == [f"day {n}" for n in (90, 91, 92, 93)]
    first = next(part for part in page.drawn if isinstance(part, Words) and part.text == "1")
    monday = next(part for part in page.drawn if isinstance(part, Words) and part.text == "Monday")
    assert first.at[0] == pytest.approx(monday.at[0]) and calendar.weekday(2027, 3, 1) == calendar.MONDAY


def test_the_hands_of_the_clock_reach_no_further_than_its_numbers() -> None:
    (page,) = pages("clock-face")
    middle = next(part.at for part in page.drawn if isinstance(part, Ring))
    numbers = [part for part in page.drawn if isinstance(part, Words) and part.text.isdigit()]
    away = {round(dist(middle, part.at), 3) for part in numbers}
    assert len(numbers) == 12 and len(away) == 1
    assert clock_face.HOUR_HAND[0] < clock_face.MINUTE_HAND[0] < clock_face.RADIUS - 10
    three = next(part for part in numbers if part.text == "3")
    assert three.at[1] == pytest.approx(middle[1]) and three.at[0] > middle[0]


def test_dots_are_as_many_as_they_stand_for() -> None:
    for count in range(1, 7):
        assert len({*dot_cards.die(count)}) == count
    for count in range(5, 11):
        assert len({*dot_cards.fives(count)}) == count
    for count in range(1, 13):
        found = dot_cards.spread(count, 1)
        assert len(found) == count and all(
            dist(a, b) > 2 * 2.6 for n, a in enumerate(found) for b in found[:n]
        )
    pieces = [part for part in pages("dot-cards")[-1].drawn if isinstance(part, Dot)]
    # Every pair of numbers to six once: each number stands eight times.
    assert len(pieces) == 8 * sum(range(7))


def test_adding_cards_have_each_sum_once_and_the_dots_of_both() -> None:
    made = [page for page in pages("adding-cards") if page.title == "to five"]
    sums = [text for page in made for text in words(page)]
    assert sums == [f"{a} + {total - a}" for total in range(6) for a in range(total + 1)]
    every = [text for page in pages("adding-cards") for text in words(page)]
    assert len(every) == len({*every}) == 66 and all(sum(map(int, text.split(" + "))) <= 10 for text in every)
    card = adding_cards.card(3, 4)
    dots = [part for part in card if isinstance(part, Dot)]
    assert Counter(part.shade.value for part in dots) == {"black": 3, "gray": 4}
    assert all(part.at[1] > adding_cards.FRONT for part in dots)


def test_the_gaps_of_a_strip_can_be_filled() -> None:
    (page,) = pages("skip-strips")
    assert words(page)[:10] == [str(n) for n in range(10, 101, 10)]
    for step in skip_strips.STEPS:
        for gaps in skip_strips.GAPS:
            said = [int(part.text) for part in skip_strips.strip(step, gaps, 0.0) if isinstance(part, Words)]
            assert said[0] == step and said[-1] == 10 * step and len(said) == 10 - len(gaps)


def test_cards_meet_edge_to_edge_and_none_is_too_large() -> None:
    assert cards.place(1, 49.0, 40.0)[0] - cards.place(0, 49.0, 40.0)[0] == 49.0
    made = cards.pages("", [()] * 25, 49.0, 40.0)
    assert len(made) == 2
    with pytest.raises(ValueError, match="larger than a page"):
        cards.grid(300.0, 10.0)
