"""Every reason is true: over three children's years each ``why`` is worked out again from the history.

What closes a morning and what is a check, the morning itself does not tell; of these the conditions are held.
"""

import datetime as dt
from collections import Counter
from collections.abc import Iterator

import pytest

from tests.benchmarks.year_aloud import CHILDREN
from tests.engine import made
from tests.engine.years import ITEMS, lived
from warmup import skills
from warmup.model import Item, Mark, Morning, Prompt

WORDS: tuple[str, ...] = (
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
)
WORDS += ("twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")
TENS = {2: "twenty", 3: "thirty"}
CLOSE, DAY, CHECK = "a sure one to finish", "the day itself asks for it", "a check in this review"
SECOND = "its second check in this review"
Line = tuple[Morning, Mark]
Past = dict[Item, list[Line]]


def looking_back(last: Line, today: dt.date) -> str:
    """What the last mark says, in the adult's words."""
    day, mark = last[0].date, last[1]
    gone = (today - day).days
    when = f"on {day:%A}" if gone < 7 else f"on {day:%B} {day.day}"
    if mark is Mark.HESITATED:
        return f"took longer {when}"
    if mark is Mark.NOT_YET:
        return f"not yet {when}"
    weeks = gone // 7
    number = WORDS[weeks] if weeks < 20 else f"{TENS[weeks // 10]}-{WORDS[weeks % 10]}".removesuffix("-zero")
    return f"not met for {number} weeks" if weeks >= 2 else f"came easily {when}"


def plain_reason(item: Item, morning: Morning, past: Past) -> str:
    """Why it comes if it neither closes the morning nor is a check."""
    if skills.timely(item.id, morning):
        return DAY
    if not any(other.level_id == item.level_id for other in past):
        return "new this week" if item.week == morning.week else "open, not asked yet"
    if item in past:
        return looking_back(past[item][-1], morning.date)
    at = skills.locate(item.id)
    return "new: many children slip here" if at.name in at.level.misconceptions else "not asked before"


def judged(child: str) -> Iterator[tuple[Morning, int, Prompt, Item, Past, list[made.Line]]]:
    """Each prompt of a year with its morning, its place from the end, and what came before the morning:
    by item, and line by line.
    """
    past: Past = {}
    lines: list[made.Line] = []
    for morning, routine, marks in lived(child):
        for at, prompt in enumerate(routine.prompts):
            yield morning, len(routine.prompts) - at, prompt, ITEMS[prompt.item], past, lines
        for prompt, mark in zip(routine.prompts, marks, strict=True):
            past.setdefault(ITEMS[prompt.item], []).append((morning, mark))
            lines.append((morning.index, ITEMS[prompt.item], mark))


@pytest.mark.slow
@pytest.mark.parametrize("child", CHILDREN)
def test_every_reason_is_true(child: str) -> None:
    told: Counter[str] = Counter()
    for morning, from_end, prompt, item, past, lines in judged(child):
        plain, said = plain_reason(item, morning, past), f"{morning.date} {item.id}: {prompt.why}"
        told[" ".join(prompt.why.split()[:2])] += 1
        if prompt.why == CLOSE:
            assert from_end == 1 and past[item][-1][1] is Mark.FLUENT and plain != DAY, said
            assert not made.is_hard(item, lines, morning.index), said
        elif prompt.why in (CHECK, SECOND):
            mine = [
                then
                for other, rows in past.items()
                if other.skill == item.skill
                for then, _ in rows
                if then.week == morning.week
            ]
            assert morning.review and (prompt.why == SECOND) is bool(mine), said
            assert not plain.startswith(("new this", "open", DAY)), said
        else:
            assert prompt.why == plain, said
    # After the winter break a quick child's levels too wait a morning or two.
    kinds = {"new this", "took longer", "not yet", "came easily", "not met", "open, not", "not asked"}
    assert kinds | {"a sure", "new: many", "a check", "its second", "the day"} == set(told)


@pytest.mark.slow
@pytest.mark.parametrize("child", CHILDREN)
def test_every_morning_ends_surely_once_something_is_known(child: str) -> None:
    """Only a timely prompt is another's close; from the third week on nothing else stands there."""
    last = [(m, prompt) for m, from_end, prompt, *_ in judged(child) if from_end == 1 and m.week > 2]
    assert {prompt.why for _, prompt in last} <= {CLOSE, DAY}
