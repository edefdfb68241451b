"""Calendar talk as a sentence the child finishes: true of the day, and its end is the answer."""

import datetime as dt
import re

import pytest

from tests.bank.drawn import recomputed
from tests.mornings import many
from warmup import skills
from warmup.model import Prompt
from warmup.randomness import SeededRandom

ITEMS = (
    "weekday/today", "weekday/tomorrow", "weekday/yesterday", "weekday/around", "weekday/day-before",
    "weekday/saturday-sunday", "month/this", "month/around", "date/say-number", "date/full",
    "school-day/count",
)  # fmt: skip
SENTENCE = re.compile(r"[Ff]inish (?:it|with .+): “([^“”]+)…”$")


def finished(item: str) -> list[Prompt]:
    """Prompts of the item that are a sentence to finish, over two years."""
    drawn = (
        skills.prompt(item, at, SeededRandom("finish", item, at.date, n)) for at in many(60) for n in range(6)
    )
    return [prompt for prompt in drawn if SENTENCE.search(prompt.say)]


@pytest.mark.parametrize("item", ITEMS)
def test_each_everyday_item_has_a_sentence_to_finish_that_its_answer_makes_true(item: str) -> None:
    found = finished(item)
    assert len(found) > 20
    for prompt in found:
        assert recomputed(prompt) is None and prompt.answer.lower() not in prompt.say.lower()


@pytest.mark.parametrize(("item", "step"), [("today", 0), ("tomorrow", 1), ("yesterday", -1)])
def test_finished_it_is_the_day_that_the_sentence_speaks_of(item: str, step: int) -> None:
    begins = {0: "Today is", 1: "Tomorrow will be", -1: "Yesterday was"}[step]
    for prompt in finished(f"weekday/{item}"):
        (sentence,) = SENTENCE.findall(prompt.say)
        day = dt.date.fromisoformat(prompt.given["date"]) + dt.timedelta(step)
        assert f"{sentence} {prompt.answer}." == f"{begins} {day:%A}."
