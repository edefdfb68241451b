"""A whole year of mornings in a row: the limits of a kind morning, judged here by code of its own."""

import hashlib
import itertools
import os
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.bank.given_away import given_away
from tests.bank.secrets import says, told
from tests.benchmarks.year_aloud import CHILDREN
from tests.engine.made import F, Line, is_hard
from tests.engine.years import ITEMS, PLAN, Lived
from tests.engine.years import lived as lived_by
from warmup.model import Item, Morning
from warmup.skills import item_names

ROOT = Path(__file__).parents[2]
COUNTS = ((2, 5), (9, 6), (18, 7), (36, 8))
"""How many prompts a morning has, up to which week."""


@pytest.fixture(scope="module", params=list(CHILDREN))
def lived(request: pytest.FixtureRequest) -> Lived:
    """The 144 mornings of one invented child."""
    return lived_by(request.param)


Past = list[Line]


def with_past(lived: Lived) -> Iterator[tuple[Morning, list[Item], Past]]:
    """Each morning with its items and the marks before it, oldest first."""
    past: Past = []
    for morning, routine, marks in lived:
        items = [ITEMS[prompt.item] for prompt in routine.prompts]
        yield morning, items, past
        past += [(morning.index, item, mark) for item, mark in zip(items, marks, strict=True)]


@pytest.mark.slow
def test_no_limit_is_ever_broken(lived: Lived) -> None:
    assert len(lived) == 144
    for morning, items, past in with_past(lived):
        names, strands = [item.skill for item in items], Counter(item.strand for item in items)
        assert all(one != other for one, other in itertools.pairwise(names)), names
        assert max(Counter(names).values()) <= 2, names
        assert len(set(items)) == len(items)
        assert 50 + sum(item.seconds + 12 for item in items) <= 480
        assert strands["calendar"] == 1
        assert strands["shape and space"] + strands["measuring and sorting"] <= 2
        if morning.week > 2:
            hards = [is_hard(item, past, morning.index) for item in items]
            assert not hards[0], morning.date
            assert not any(one and other for one, other in itertools.pairwise(hards)), morning.date
            asked = {item for _, item, _ in past}
            assert sum(item not in asked for item in items) <= 3
            assert len({item.level_id for item in items} - {item.level_id for item in asked}) <= 2


def test_a_morning_has_its_number_of_prompts(lived: Lived) -> None:
    """The whole count as two; one short where the time is up, on one morning of a hundred at most."""
    short = []
    for morning, items, _ in with_past(lived):
        target = next(number for last, number in COUNTS if morning.week <= last)
        places = len(items) + sum(item.seconds == 120 for item in items)
        short += [target - places] * (places != target)
    assert set(short) <= {1} and len(short) <= 1


def test_the_whole_count_comes_once_in_a_fortnight(lived: Lived) -> None:
    counts: dict[str, list[int]] = {}
    for morning, items, _ in with_past(lived):
        for item in items:
            if item.seconds == 120:
                counts.setdefault(item.level_id, []).append(morning.index)
    assert counts
    for days in counts.values():
        assert all(then - one >= 8 for one, then in itertools.pairwise(days)), days


def test_nothing_comes_before_its_week_and_nothing_new_in_a_review(lived: Lived) -> None:
    """But a level with a kindergarten code that has waited a week."""
    assert PLAN.nothing_new_from == 34
    for morning, items, past in with_past(lived):
        begun = {item.level_id for _, item, _ in past}
        for item in items:
            assert item.week <= morning.week and item.week < PLAN.nothing_new_from
            assert item.week not in PLAN.reviews, "a review week unlocks something"
            if item.level_id not in begun and (morning.review or morning.next is None):
                assert item.kindergarten and item.week < morning.week and morning.next


def test_the_close_came_easily_the_last_time_and_is_likely(lived: Lived) -> None:
    """Past the first weeks, 98 mornings in 100: for the others the day itself asks last."""
    good = closes = 0
    for morning, items, past in with_past(lived):
        if morning.week <= 2:
            continue
        marks = [mark for _, item, mark in past if item == items[-1]]
        closes += 1
        good += marks[-1:] == [F] and not is_hard(items[-1], past, morning.index)
    assert good >= 0.98 * closes, f"{good} of {closes}"


def test_no_prompt_tells_the_answer_of_another_the_same_morning(lived: Lived) -> None:
    for morning, routine, _ in lived:
        assert not given_away(routine.prompts), morning.date


def test_no_morning_asks_the_same_twice(lived: Lived) -> None:
    """Of two prompts of a skill neither has the other's answer, nor is its count a part of the other's."""
    for morning, routine, _ in lived:
        for one, other in itertools.permutations(routine.prompts, 2):
            if one.skill == other.skill:
                said = (morning.date, one.say, other.say)
                assert one.answer != other.answer, said
                a, b = ((p.given.get("over", p.given.get("start")), p.given.get("end")) for p in (one, other))
                if None not in (*a, *b):
                    assert not min(b) <= min(a) <= max(a) <= max(b), said


def test_every_morning_has_an_opening_that_answers_none_of_its_prompts(lived: Lived) -> None:
    heard: Counter[str] = Counter()
    for morning, routine, _ in lived:
        assert routine.opening, morning.date
        say = routine.opening.say
        tells = [(p.item, form) for p in routine.prompts for form in told(p) if says(say, form)]
        assert not tells, (morning.date, say, tells)
        heard[say] += 1
    assert len(heard) >= 90 and heard.most_common(1)[0][1] <= 8, heard.most_common(3)


def test_nearly_every_item_of_the_year_is_asked(lived: Lived) -> None:
    """All but a few of the last weeks: a child who says not yet is not led on to what stands on it."""
    child = lived[0][1].child
    asked = {prompt.item for _, routine, _ in lived for prompt in routine.prompts}
    never = set(item_names()) - asked
    assert len(never) <= (0.15 if child == "slow" else 0.1) * len(item_names()), sorted(never)
    early = {item for item in never if ITEMS[item].week <= 20}
    assert len(early) <= {"quick": 0, "average": 4, "slow": 7}[child], sorted(early)


def test_the_same_words_never_come_twice_running(lived: Lived) -> None:
    last: dict[str, str] = {}
    for _, routine, _ in lived:
        for prompt in routine.prompts:
            assert last.get(prompt.item) != prompt.wording, prompt.item
            last[prompt.item] = prompt.wording


DIGEST = """
import hashlib
from tests.bank.given_away import given_away
from tests.benchmarks.year_aloud import year
from warmup.journal.routine_json import routine_text
whole = hashlib.sha256()
for _, routine, _ in year("average"):
    whole.update(routine_text(routine).encode())
print(whole.hexdigest())
"""


@pytest.mark.slow
def test_a_year_is_the_same_byte_for_byte_in_other_processes() -> None:
    digests = {
        subprocess.run(
            [sys.executable, "-c", DIGEST],
            capture_output=True,
            text=True,
            check=True,
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed, "TZ": zone},
        ).stdout
        for seed, zone in (("0", "UTC"), ("77", "Pacific/Auckland"))
    }
    assert len(digests) == 1 and len(digests.pop().strip()) == len(hashlib.sha256().hexdigest())
