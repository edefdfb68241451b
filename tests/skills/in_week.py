"""Asking a skill in a certain week of the year: the numbers of a level rise with the weeks."""

import tomllib
from pathlib import Path

from tests.mornings import morning
from warmup import skills
from warmup.model import Prompt
from warmup.randomness import SeededRandom

YEAR = tomllib.loads((Path(__file__).parents[2] / "routines" / "year.toml").read_text("utf-8"))


def asked_in(week: int, item: str, count: int = 200) -> list[Prompt]:
    """``count`` prompts of the item ``skill/name`` on the first school day of a week."""
    day = morning(school_day=4 * week - 3)
    assert day.week == week
    return [skills.prompt(item, day, SeededRandom("in a week", item, n)) for n in range(count)]


def opening(level: str) -> int:
    """The week in which the year opens the level ``skill:key``."""
    skill, _, key = level.partition(":")
    return int(YEAR["skills"][skill][key])
