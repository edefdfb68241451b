"""The choosing measured on children made of numbers: half a year of it, and what ``plan`` promises."""

import copy
import itertools
import json
import os
import subprocess
import sys
from pathlib import Path
from random import Random
from typing import Any

import pytest

from tests.benchmarks._children import KINDS, Child, Held, Lived, bell, live
from tests.benchmarks._comparison import judge, rotation
from tests.benchmarks.retention import catalogue, plan
from tests.engine.made import made
from warmup.model import Item, ItemId

ROOT = Path(__file__).parents[2]
WEEKS = 18
CHILDREN = [Child(7, number, kind) for number, kind in itertools.product(range(2), KINDS)]
Request = dict[str, Any]
OWN = list(catalogue().values())


def strange(items: list[Item]) -> list[Item]:
    """The same items under ids that tell their skill and level and nothing else."""
    skills = {skill: f"S{at:02}" for at, skill in enumerate(dict.fromkeys(item.skill for item in items))}
    return [
        item._replace(id=ItemId(f"{skills[item.skill]}.L{item.level}.n{at}"), guess=0.0)
        for at, item in enumerate(items)
    ]


def lived(child: Child, items: list[Item]) -> tuple[Lived, list[Request]]:
    """Half a year chosen by ``plan``, and some of its requests, as they would be sent."""
    asked: list[Request] = []

    def choose(request: Request, _: Child) -> list[str]:
        if request["day_index"] % 17 == 3:
            asked.append(json.loads(json.dumps(request)))
        return plan(request)

    return live(copy.deepcopy(child), choose, items, WEEKS), asked


@pytest.fixture(scope="module")
def years() -> list[tuple[Lived, list[Request]]]:
    """Half a year of every child on our own items."""
    return [lived(child, OWN) for child in CHILDREN]


@pytest.fixture(scope="module")
def strange_year() -> tuple[Lived, list[Request]]:
    """Half a year of one child on strange items."""
    return lived(CHILDREN[0], strange(OWN))


@pytest.fixture(scope="module")
def requests(
    years: list[tuple[Lived, list[Request]]], strange_year: tuple[Lived, list[Request]]
) -> list[Request]:
    """Requests of both forms of id, from all through the half year."""
    return years[0][1] + strange_year[1]


@pytest.mark.slow
def test_plan_gives_as_many_as_are_asked_for_in_any_order_of_the_unlocked(requests: list[Request]) -> None:
    assert len(requests) >= 6
    for request in requests:
        for n, some in itertools.product((1, 5, 8, 12), (1, 6, len(request["unlocked"]))):
            unlocked = Random(n).sample(request["unlocked"], some)
            chosen = plan(request | {"n": n, "unlocked": unlocked})
            assert len(chosen) == len(set(chosen)) == min(n, some)
            assert set(chosen) <= set(unlocked)
            assert plan(request | {"n": n, "unlocked": sorted(unlocked, reverse=True)}) == chosen
    assert plan(requests[0] | {"unlocked": []}) == []


@pytest.mark.slow
def test_plan_depends_on_the_request_alone(requests: list[Request]) -> None:
    """A fresh process that hashes otherwise and is asked the last morning first answers the same."""
    few = [request | {"unlocked": request["unlocked"][:14], "n": 12} for request in requests]
    requests = requests + few
    code = (
        "import json, sys; from tests.benchmarks.retention import plan;"
        "print(json.dumps([plan(request) for request in json.load(sys.stdin)]))"
    )
    seed = "1" if os.environ.get("PYTHONHASHSEED") == "2" else "2"
    answer = subprocess.run(
        [sys.executable, "-c", code],
        input=json.dumps(requests[::-1]),
        capture_output=True,
        text=True,
        cwd=ROOT,
        env=os.environ | {"PYTHONHASHSEED": seed},
        check=True,
    )
    assert json.loads(answer.stdout) == [plan(request) for request in requests][::-1]


def test_plan_goes_by_the_history_it_is_given(requests: list[Request]) -> None:
    """A history that ends alike but went otherwise is folded anew, not gone on with."""
    request = requests[2]
    before = plan(request)
    easy = [[day, item, "easy"] for day, item, _ in request["history"][:-1]]
    other = request | {"history": [*easy, request["history"][-1]]}
    assert plan(other) != before
    assert plan(request) == before
    same = {"easy": "fluent", "notyet": "not_yet"}
    own_words = [[day, item, same.get(mark, mark)] for day, item, mark in request["history"]]
    assert plan(request | {"history": own_words}) == before


def test_no_limit_is_broken(
    years: list[tuple[Lived, list[Request]]], strange_year: tuple[Lived, list[Request]]
) -> None:
    for year, items in (*((year, OWN) for year, _ in years), (strange_year[0], strange(OWN))):
        assert len(year.mornings) > 50
        assert judge(year.mornings, items) == ([], 0)


def test_the_judge_sees_each_limit_broken() -> None:
    easy = [f"{skill}/{name}" for skill in "abcdef" for name in ("one", "two", "three")]
    before = Held(8, tuple(easy), tuple((item, "easy") for item in easy[::3]))
    hard = (*easy, "x/one", "y/one", "z/one", "z/two")
    made_up = [made(item, guess=0.0) for item in hard]

    def broken(*items: str) -> list[str]:
        wrong, _ = judge([before, Held(9, hard, tuple((item, "easy") for item in items))], made_up)
        return [each for each in wrong if each.startswith("morning 9")]

    assert broken("a/one", "x/one", "b/one", "y/one", "c/one", "z/one", "d/one") == []
    assert broken("a/one", "a/one")[0].endswith("a twice running")
    assert broken("a/one", "b/one", "a/one", "c/one", "a/one")[0].endswith("3 of a")
    assert broken("x/one", "b/one")[0].endswith("begins hard with x/one")
    assert broken("a/one", "x/one", "y/one")[0].endswith("run together")
    assert broken("a/one", "x/one", "b/one", "y/one", "c/one", "z/one", "d/one", "z/two")[0].endswith(
        "4 for the first time"
    )


@pytest.mark.parametrize("kind", KINDS)
def test_both_memories_gain_by_spacing(kind: str) -> None:
    """references/pedagogy.toml, spacing.meta and spacing.ridgeline: spread beats massed, and the best gap
    grows with how long it must last. Only the direction: those were adults."""

    def recall(gap: float, delay: float) -> float:
        total = 0.0
        for number in range(6):
            memory = KINDS[kind](number, bell(number))
            memory.meet("skill/item", 0)
            known = memory.recall("skill/item", gap)
            for knew, chance in ((True, known), (False, 1 - known)):
                after = copy.deepcopy(memory)
                after.ask("skill/item", gap, knew)
                total += chance * after.recall("skill/item", gap + delay)
        return total

    gaps = (0.01, 1, 4, 14, 30, 60)
    assert recall(14, 90) > recall(0.01, 90)
    best_for_a_week, best_for_a_year = (
        max((recall(gap, delay), gap) for gap in gaps)[1] for delay in (7, 350)
    )
    assert best_for_a_week < best_for_a_year


def test_ours_keeps_as_much_as_rotation_but_for_half_a_point(
    years: list[tuple[Lived, list[Request]]],
) -> None:
    """references/pedagogy.toml, spacing.meta and spacing.ridgeline: rests matter, and which is best depends.

    These children learn each item by itself, where the year's weights cost what rests by the marks gain; half
    a point a child is within chance. Half a year: the benchmark prints how a whole one ends.
    """

    def kept(year: Lived) -> float:
        return year.at_end + year.later

    plain = [live(copy.deepcopy(child), rotation, OWN, WEEKS) for child in CHILDREN]
    for kind in KINDS:
        pairs = [
            (kept(ours), kept(other))
            for child, (ours, _), other in zip(CHILDREN, years, plain, strict=True)
            if child.kind == kind
        ]
        assert sum(ours for ours, _ in pairs) > sum(other - 0.005 for _, other in pairs), kind
