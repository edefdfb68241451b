"""The bank drawn: prompts of each item over two years of dates, and what recomputes their answers."""

import tomllib
from collections.abc import Iterator
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any

from tests.mornings import many
from warmup import skills
from warmup.model import Morning, Prompt
from warmup.randomness import SeededRandom

REFERENCES = Path(__file__).parents[1] / "references"


@cache
def reference(name: str) -> dict[str, Any]:
    """A table of published check values from tests/references."""
    return tomllib.loads((REFERENCES / f"{name}.toml").read_text("utf-8"))


def asked(skill: str, count: int) -> Iterator[tuple[Prompt, Morning]]:
    """``count`` prompts of each item of a skill, over two years of dates and every school day number."""
    names = [f"{skill}/{name}" for level in skills.SKILLS[skill].levels for name in level.items]
    for name in names:
        able = [m for m in many(max(288, count)) if skills.askable(name, m)]
        for n in range(count):
            morning = able[n * len(able) // count]
            yield skills.prompt(name, morning, SeededRandom("bank", name, n)), morning


def prompts(skill: str, count: int) -> Iterator[Prompt]:
    """The prompts of :func:`asked` without their mornings."""
    return (prompt for prompt, _ in asked(skill, count))


def recomputed(prompt: Prompt) -> str | None:
    """What code that does not import the skills says against the answer; None when it agrees."""
    oracle = import_module(f"tests.oracles.{prompt.skill.replace('-', '_')}")
    return oracle.check(prompt.item.partition("/")[2], dict(prompt.given), prompt.answer, prompt.accept)
