"""Then and now: each sentence is so by a count of the journal with other code; over whole invented years."""

import datetime as dt
import random
import re
import sqlite3
from collections import Counter
from collections.abc import Sequence
from contextlib import closing
from itertools import pairwise
from pathlib import Path

import pytest

from tests.household import TODAY, StandingClock, context_at
from tests.oracles.then_and_now import Truth, truths
from warmup import skills
from warmup.journal.rows import About, MarkRow, Whole, put_whole
from warmup.model import Asked, ItemId, Mark
from warmup.session.context import Context
from warmup.session.then_and_now import MOST, NOTHING_YET, TOO_LITTLE, Change, sentences, then_and_now

F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
LEVELS: dict[str, str] = {item: skills.locate(item).level_id for item in skills.item_names()}
TOPICS = {at.level_id: f"{at.skill.title}: {at.level.label}" for at in map(skills.locate, LEVELS)}
MONTHS = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
]
SAID = re.compile(
    r"(?:In (?P<then>\w+(?: \d+)?), “(?P<topic>[^”]+)” (?P<was>needed help|took a moment)"
    r"|“(?P<topic1>[^”]+)” (?P<was1>needed help|took a moment) in (?P<then1>\w+(?: \d+)?))"
    r"\. By (?P<now>\w+(?: \d+)?) it came easily, (?P<times>[a-z-]+(?: times)?) in a row\."
    r"|By (?P<now2>\w+(?: \d+)?), “(?P<topic2>[^”]+)” came easily, (?P<times2>[a-z-]+(?: times)?) in a row\. "
    r"In (?P<then2>\w+(?: \d+)?) it still (?P<was2>needed help|took a moment)\."
)
TIMES = ["none", "once", "twice", "three times", "four times", "five times", "six times", "seven times"]
END = dt.date(2027, 5, 20)


@pytest.fixture(scope="module")
def lived_in(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three school years of an invented child who gets better at each item that is asked often."""
    place, draw = tmp_path_factory.mktemp("then"), random.Random(7)
    context = context_on(place, END)
    days = [
        day - dt.timedelta(364 * back) for back in (2, 1, 0) for day in context.year.mornings if day < END
    ]
    assert context.journal is not None
    context.journal.start("Bean", END, "daily", "{}", [], furthest=-1)
    context.journal.shut()
    with closing(sqlite3.connect(place / "journal.db")) as db, db:
        often = Counter[str]()
        for number, day in enumerate(days):
            opened = [*LEVELS][: 30 + number // 2]
            asked_now = draw.sample(opened, 6)
            _keep(db, day, asked_now, [_answer(often[item], draw) for item in asked_now], draw)
            often.update(asked_now)
    return place


def _answer(often: int, draw: random.Random) -> Mark | None:
    return F if draw.random() < 0.3 + 0.15 * often else draw.choice([H, N, N, S, None])


def _keep(
    db: sqlite3.Connection, day: dt.date, items: Sequence[str], marks: list[Mark | None], draw: random.Random
) -> None:
    """A morning's rows, as the journal has them; some marks are from memory, some mornings were rough."""
    at = f"{day}T08:00:00.000000+00:00"
    about = About(at, at, "daily", "{}", len(items), len(items) - 1, int(draw.random() < 0.15), at)
    rows = {
        position: MarkRow(mark, int(draw.random() < 0.05), "", draw.random() < 0.2, at)
        for position, mark in enumerate(marks)
    }
    prompts = {position: (item, "a") for position, item in enumerate(items)}
    put_whole(db, ("Bean", f"{day}", 1), Whole(about, prompts, rows))


def context_on(place: Path, today: dt.date) -> Context:
    return context_at(place, StandingClock(dt.datetime.combine(today, dt.time(8))), today=today)


def told_on(place: Path, today: dt.date) -> tuple[Change, ...]:
    lines = context_on(place, today).history()
    return then_and_now([line for line in lines if line.date <= today])


def as_truth(change: Change) -> Truth:
    return Truth(f"{change.then}", change.was.value, f"{change.now}", change.running)


@pytest.mark.parametrize("back", range(0, 800, 100))
def test_each_sentence_is_so_by_the_journal(lived_in: Path, back: int) -> None:
    today = END - dt.timedelta(back)
    true = truths(lived_in / "journal.db", "Bean", today, LEVELS)
    told = told_on(lived_in, today)
    assert len(told) == min(MOST, len(true)) > 2
    for change in told:
        truth = true[change.level]
        assert as_truth(change) == truth._replace(halves=truth.halves // 2)
        found = SAID.fullmatch(change.words(today))
        assert found is not None, change.words(today)
        said = {name.rstrip("12"): text for name, text in found.groupdict().items() if text}
        assert said["was"] == ("needed help" if truth.was == "not_yet" else "took a moment")
        assert (said["then"], said["now"]) == (named(truth.then, today), named(truth.now, today))
        if truth.halves // 2 < len(TIMES):
            assert said["times"] == TIMES[truth.halves // 2]
        assert said["topic"] == TOPICS[change.level]


def named(date: str, today: dt.date) -> str:
    """The month as it must be named: with its year where the same month came again by today."""
    year, month = int(date[:4]), int(date[5:7])
    again = (year + 1, month) <= (today.year, today.month)
    return f"{MONTHS[month - 1]} {year}" if again else MONTHS[month - 1]


def test_strands_and_phrasings_take_turns(lived_in: Path) -> None:
    told = told_on(lived_in, END)
    strands = Counter(change.strand for change in told)
    every = {skills.locate(item).skill.strand for item in LEVELS}
    candidates = truths(lived_in / "journal.db", "Bean", END, LEVELS)
    told_of = {skills.SKILLS[level.partition(":")[0]].strand for level in candidates}
    assert strands.keys() == told_of <= every and max(strands.values()) <= 2
    assert all(one[:9] != other[:9] for one, other in pairwise(change.words(END) for change in told))
    assert told == told_on(lived_in, END)


def asked(day: str, mark: Mark | None, item: str = "count-back/from-5", **more: bool | int) -> Asked:
    return Asked(dt.date.fromisoformat(day), ItemId(item), mark)._replace(**more)  # type: ignore[arg-type]


EASY = [asked("2027-01-05", F), asked("2027-03-01", F), asked("2027-03-02", F)]


def test_the_first_and_the_last_weeks_stand_side_by_side() -> None:
    history = [asked("2026-10-05", H), *EASY]
    assert sentences(history, TODAY) == (
        "In October, “Count back: from five” took a moment. By March it came easily, three times in a row.",
    )
    assert sentences([asked("2026-10-05", F, cue=2), *EASY], TODAY) == sentences(history, TODAY)
    (late,) = sentences(history, dt.date(2027, 10, 1))
    assert late.startswith("In October 2026, ") and " By March it" in late


@pytest.mark.parametrize(
    "first",
    [
        [asked("2026-10-05", F)],
        [asked("2026-10-05", N, rough=True)],
        [asked("2026-10-05", N, from_memory=True)],
        [asked("2026-10-05", S)],
        [asked("2026-10-05", None)],
        [asked("2026-10-05", N, "own/our-street")],
        [asked("2026-10-05", N), asked("2026-10-06", F), asked("2026-10-07", F)],
        [asked("2026-10-05", F), asked("2026-11-03", N)],
    ],
)
def test_what_does_not_count_as_hard_is_not_told(first: list[Asked]) -> None:
    history = [asked("2026-09-01", F, "month/this"), *first, *EASY]
    assert sentences(history, TODAY) == (NOTHING_YET,)


@pytest.mark.parametrize(
    "last",
    [
        [asked("2027-03-02", F)],
        [asked("2027-03-01", F, from_memory=True), asked("2027-03-02", F)],
        [*EASY, asked("2027-03-03", N, rough=True)],
        [asked("2026-11-10", F), asked("2026-11-20", F)],
        [asked("2026-12-01", F), asked("2026-12-02", F), asked("2027-03-02", F, "month/this")],
    ],
)
def test_what_is_not_easy_yet_or_was_long_ago_is_not_told(last: list[Asked]) -> None:
    assert sentences([asked("2026-10-05", N), *last], TODAY) in ((NOTHING_YET,), (TOO_LITTLE,))


def test_two_halves_are_one_whole() -> None:
    halves = [asked("2026-10-05", N, from_memory=True), asked("2026-10-06", H, from_memory=True)]
    (told,) = sentences([*halves, EASY[0], EASY[1]._replace(from_memory=True), EASY[2]], TODAY)
    assert "needed help" in told and "twice in a row" in told


def test_too_little_is_said_kindly(home: Path, clock: object) -> None:
    assert sentences([], TODAY) == (TOO_LITTLE,)
    assert sentences([asked("2027-02-01", N), *EASY[1:]], TODAY) == (TOO_LITTLE,)
    assert then_and_now([asked("2027-02-01", N), *EASY[1:]]) == ()
