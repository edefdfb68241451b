"""The choosing by its smallest examples: what one hard morning, one break and one mark change."""

import datetime as dt
from pathlib import Path

import pytest

from tests.engine.test_review import FIRST, SKILLS, YEAR, day, morning
from warmup.config.places import Places
from warmup.config.plan import load_shape
from warmup.engine.curriculum import curriculum
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose
from warmup.engine.memory import Day, Knowledge, Record
from warmup.engine.pool import Candidate
from warmup.model import Choice, Item, Mark, item_id, level_id

NOWHERE = Places(Path(__file__).parent / "nowhere", Path(__file__).parent / "nowhere")
DAILY = load_shape(NOWHERE, "daily")
STRANDS = {"days": "calendar", "steps": "counting"} | dict.fromkeys(SKILLS, "number")
INDEX = 90
ITEMS = tuple(
    Item(item_id(skill, name), skill, 1, level_id(skill, "1"), strand, 1)
    for skill, strand in STRANDS.items()
    for name in ("one", "two")
)
DUE = tuple(item_id(skill, "one") for skill in SKILLS[:6])


def record(mark: Mark, rested: int, run: int = 3) -> Record:
    """An item of five marks, the last of them so many mornings ago; due back where it was hesitated on."""
    due = INDEX - rested + 2 if mark is Mark.HESITATED else None
    return Record(20.0, INDEX - rested, due, mark, day(INDEX - rested), run, marks=5, shown=5)


KNOWN = {item.id: record(Mark.FLUENT, 4) for item in ITEMS}
KNOWN |= dict.fromkeys(DUE, record(Mark.HESITATED, 2, run=0))


def chosen(last: Day | None = None, *, ahead: int | None = 1, count: int = 8) -> tuple[Choice, ...]:
    """The morning after ``last``, the next one so many days ahead."""
    after = None if ahead is None else day(INDEX) + dt.timedelta(ahead)
    days = () if last is None else (last,)
    today = morning(INDEX)._replace(next=after)
    plan = curriculum(ITEMS, YEAR, FIRST)
    return choose(
        Eligible(ITEMS), DAILY.with_prompts(count), Knowledge(KNOWN, days), today, plan, child="Bean"
    )


def due_in(choices: tuple[Choice, ...]) -> int:
    return sum(choice.item.id in DUE for choice in choices)


def test_after_a_hard_morning_one_more_of_what_is_due_comes() -> None:
    yesterday = day(INDEX - 1)
    even, hard = (due_in(chosen(Day(yesterday, fluent, 8), count=9)) for fluent in (4, 3))
    assert hard == even + 1, "hard is fewer than half"


@pytest.mark.parametrize("ahead", [8, 15, 30, 31, None])
def test_a_morning_before_a_break_ends_surely(ahead: int | None) -> None:
    """A break is more than a week without a morning."""
    assert due_in(chosen(ahead=ahead)[-1:]) == 0 and not chosen(ahead=ahead)[-1].hard


def test_what_was_never_asked_feels_easier_than_a_not_yet_and_harder_than_what_took_longer() -> None:
    def feels(found: Record) -> float:
        return Candidate(ITEMS[0], found, 1.0, 0.85, 0, True, False).feels

    new, not_yet, longer = feels(Record()), feels(record(Mark.NOT_YET, 2)), feels(record(Mark.HESITATED, 2))
    assert not_yet < new < longer < feels(record(Mark.FLUENT, 2)) == 0.85
