"""The years of three invented children, lived once, and every item of the plan by its id."""

from functools import cache
from pathlib import Path

from tests.benchmarks.year_aloud import year
from warmup import skills
from warmup.config.places import Places
from warmup.config.plan import load_plan
from warmup.model import Item, Mark, Morning, Routine

_NOWHERE = Path(__file__).parent / "nowhere"
PLAN = load_plan(Places(_NOWHERE, _NOWHERE))
ITEMS = {item.id: item for item in skills.items(PLAN)}
Lived = list[tuple[Morning, Routine, tuple[Mark, ...]]]


@cache
def lived(child: str) -> Lived:
    """The 144 mornings of one invented child."""
    return list(year(child))


def asked(child: str) -> list[tuple[Morning, list[Item]]]:
    """Each morning with the items it asks, in their order."""
    return [
        (morning, [ITEMS[prompt.item] for prompt in routine.prompts]) for morning, routine, _ in lived(child)
    ]
