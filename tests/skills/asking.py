"""Asking a real skill again and again, and until it asks what a worked example gives."""

import datetime as dt
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from tests.bank import reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Morning, Prompt
from warmup.randomness import SeededRandom

LATE = morning(dt.date(2027, 5, 26), 144)
"""The last school day: every level has been open for long, so its numbers have risen to their whole range."""


@cache
def weeks(skill: str) -> dict[str, int]:
    """The weeks in which a skill's levels open, by the year as it is shipped."""
    year = tomllib.loads(Path(__file__).parents[2].joinpath("routines", "year.toml").read_text("utf-8"))
    return dict(year["skills"][skill])


def opens(item: str) -> int:
    """The week in which the level of the item ``skill/name`` opens."""
    return weeks(item.partition("/")[0])[skills.locate(item).level.key]


def in_week(week: int) -> Morning:
    """The first school morning of a week."""
    return morning(school_day=4 * week - 3)


def asked(item: str, count: int = 200, day: Morning = LATE) -> list[Prompt]:
    """``count`` prompts of the item ``skill/name``, late in the year unless a ``day`` is given."""
    return [skills.prompt(item, day, SeededRandom("asked", item, n)) for n in range(count)]


def level_asked(skill: str, key: str, count: int = 200) -> list[Prompt]:
    """``count`` prompts of every item of a level."""
    (level,) = (level for level in skills.SKILLS[skill].levels if level.key == key)
    return [prompt for name in level.items for prompt in asked(f"{skill}/{name}", count)]


def coded(skill: str, code: str, count: int = 200) -> list[Prompt]:
    """``count`` prompts of every item whose level carries the code or leads toward it."""
    levels = [level.key for level in skills.SKILLS[skill].levels if code in (*level.codes, *level.toward)]
    return [prompt for key in levels for prompt in level_asked(skill, key, count)]


def bounds(code: str) -> dict[str, Any]:
    """The numbers that stand in a standard, from references/standards.toml."""
    return dict(reference("standards")["std"][code]["bounds"])


def example(name: str) -> dict[str, Any]:
    """A worked example of references/examples.toml."""
    return next(row for row in reference("examples")["example"] if row["id"] == name)


def printed(fact: str) -> dict[str, Any]:
    """A fact printed in a standard, from references/examples.toml."""
    return next(row for row in reference("examples")["printed"]["rows"] if row["fact"].startswith(fact))


def sought(item: str, given: dict[str, Any], tries: int = 4000) -> Prompt:
    """The first prompt of the item built from ``given`` (and perhaps more). AssertionError for none."""
    for n in range(tries):
        prompt = skills.prompt(item, LATE, SeededRandom("sought", item, n))
        if all(prompt.given.get(name) == value for name, value in given.items()):
            return prompt
    raise AssertionError(f"{item} never asks {given}")
