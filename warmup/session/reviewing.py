"""How the checks of a review week went so far, by what became of each skill."""

from collections.abc import Iterator
from typing import NamedTuple

from warmup import skills
from warmup.engine.review import Outcome, checks, outcome
from warmup.model import ItemId
from warmup.session.context import Context

_LABELS = {
    Outcome.SETTLED: "settled",
    Outcome.PARTLY: "more often for two weeks",
    Outcome.AGAIN: "easier first",
    Outcome.OPEN: "once more to check",
}


class Part(NamedTuple):
    """The skills of which a review says the same, by their titles."""

    label: str
    titles: tuple[str, ...]


def parts(context: Context) -> tuple[Part, ...]:
    """What the review of this week says; empty in any other week, and before anything was checked."""
    return tuple(_parts(context)) if context.morning().review else ()


def _parts(context: Context) -> Iterator[Part]:
    found: dict[Outcome, list[str]] = {each: [] for each in Outcome}
    for skill, marks in checks(context.knowledge(), context.curriculum(), context.morning().week).items():
        found[outcome(marks)].append(skills.SKILLS[skill].title.lower())
    for each, titles in found.items():
        if titles:
            yield Part(_LABELS[each], tuple(sorted(titles)))
    if resting := context.to_teach():
        yield Part("teach again", tuple(map(_named, resting)))


def _named(item: ItemId) -> str:
    return skills.locate(item).words()
