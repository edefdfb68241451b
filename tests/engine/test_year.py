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
from tests.benchmarks.year_aloud import CHILDREN, year
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.model import LevelId, Mark, Morning, Prompt, Routine
from warmup.skills import item_names, locate

ROOT = Path(__file__).parents[2]
PLAN = load_plan(Places(ROOT / "nowhere", ROOT / "nowhere"))
WEEKS = PLAN.weeks
Lived = list[tuple[Morning, Routine, tuple[Mark, ...]]]


@pytest.fixture(scope="module", params=list(CHILDREN))
def lived(request: pytest.FixtureRequest) -> Lived:
    """The 144 mornings of one invented child."""
    return list(year(request.param))


def with_past(
    lived: Lived,
) -> Iterator[tuple[Morning, tuple[Prompt, ...], dict[str, list[tuple[int, Mark]]]]]:
    """Each morning with what came before it: by item, the mornings and marks, oldest first."""
    past: dict[str, list[tuple[int, Mark]]] = {}
    for morning, routine, marks in lived:
        yield morning, routine.prompts, past
        for prompt, mark in zip(routine.prompts, marks, strict=True):
            past.setdefault(prompt.item, []).append((morning.index, mark))


def hard(marks: list[tuple[int, Mark]] | None) -> bool:
    """Never asked, or hesitated or not yet the last time."""
    return not marks or marks[-1][1] in (Mark.HESITATED, Mark.NOT_YET)


@pytest.mark.slow
def test_no_limit_is_ever_broken(lived: Lived) -> None:
    assert len(lived) == 144
    begun: set[tuple[str, str]] = set()
    for morning, prompts, past in with_past(lived):
        names = [prompt.skill for prompt in prompts]
        assert all(one != other for one, other in itertools.pairwise(names)), names
        assert max(Counter(names).values()) <= 2, names
        assert len({prompt.item for prompt in prompts}) == len(prompts)
        assert sum(prompt.seconds for prompt in prompts) <= 360
        assert all(prompt.why for prompt in prompts)
        if morning.week > 2:
            hards = [hard(past.get(prompt.item)) for prompt in prompts]
            assert not hards[0], morning.date
            assert not any(one and other for one, other in itertools.pairwise(hards)), morning.date
            assert sum(prompt.item not in past for prompt in prompts) <= 3
            ideas = {(p.skill, p.level) for p in prompts} - begun
            assert len(ideas) <= 2, morning.date
        begun |= {(prompt.skill, prompt.level) for prompt in prompts}


@pytest.mark.slow
def test_a_morning_has_its_number_of_prompts_calendar_talk_and_counting(lived: Lived) -> None:
    for morning, routine, _ in lived:
        target = 6 if morning.week <= 5 else 7 if morning.week <= 9 else 8 if morning.week <= 18 else 9
        assert target - 3 <= len(routine.prompts) <= target, morning.date
        strands = Counter(strand(prompt) for prompt in routine.prompts)
        assert 1 <= strands["calendar"] <= 2, morning.date
        assert strands["counting"] >= 1, morning.date


def strand(prompt: Prompt) -> str:
    """The strand of a prompt."""
    return locate(prompt.item).skill.strand.value


def level_of(item: str) -> str:
    """The level an item belongs to, as ``skill:level``."""
    return f"{locate(item).skill.id}:{locate(item).level.key}"


def test_nothing_comes_before_its_week_and_nothing_new_in_a_review(lived: Lived) -> None:
    for morning, routine, _ in lived:
        for prompt in routine.prompts:
            week = WEEKS[LevelId(level_of(prompt.item))]
            assert week <= morning.week and week < PLAN.nothing_new_from == 34
            assert week not in PLAN.reviews, "a review week unlocks something"


def test_the_close_is_sure_or_a_return_that_is_likely(lived: Lived) -> None:
    """Past the first month, nine closes in ten. A return closes only an even number of prompts."""
    good = closes = 0
    for morning, prompts, past in with_past(lived):
        if morning.week <= 4:
            continue
        marks = past.get(prompts[-1].item, [])
        sure = [mark for _, mark in marks][-2:] == [Mark.FLUENT, Mark.FLUENT]
        returns = hard(marks) and bool(marks)
        assert not returns or len(prompts) % 2 == 0 or sure, morning.date
        closes, good = closes + 1, good + (sure or returns)
    assert good >= 0.9 * closes, f"{good} of {closes}"


def test_no_prompt_tells_the_answer_of_another_the_same_morning(lived: Lived) -> None:
    for morning, routine, _ in lived:
        assert not given_away(routine.prompts), morning.date


def test_every_morning_has_an_opening_that_answers_none_of_its_prompts(lived: Lived) -> None:
    heard: Counter[str] = Counter()
    for morning, routine, _ in lived:
        assert routine.opening, morning.date
        say = routine.opening.say
        tells = [(p.item, form) for p in routine.prompts for form in told(p) if says(say, form)]
        assert not tells, (morning.date, say, tells)
        heard[say] += 1
    assert len(heard) > 90 and heard.most_common(1)[0][1] <= 8, heard.most_common(3)


def test_nearly_every_item_of_the_year_is_asked(lived: Lived) -> None:
    """All but a few of the last weeks: a child who says not yet is not led on to what stands on it."""
    asked = {prompt.item for _, routine, _ in lived for prompt in routine.prompts}
    never = set(item_names()) - asked
    assert len(never) <= (0.15 if lived[0][1].child == "slow" else 0.1) * len(item_names()), sorted(never)
    early = {item for item in never if WEEKS[LevelId(level_of(item))] <= 20}
    assert not early or lived[0][1].child == "slow", sorted(early)


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
