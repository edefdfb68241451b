"""Asking a real skill again and again, and until it asks what a worked example gives."""

from typing import Any

from tests.bank import reference
from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.randomness import SeededRandom


def asked(item: str, count: int = 200) -> list[Prompt]:
    """``count`` prompts of the item ``skill/name``."""
    day = morning()
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
    day = morning()
    for n in range(tries):
        prompt = skills.prompt(item, day, SeededRandom("sought", item, n))
        if all(prompt.given.get(name) == value for name, value in given.items()):
            return prompt
    raise AssertionError(f"{item} never asks {given}")
