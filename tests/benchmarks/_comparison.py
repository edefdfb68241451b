"""Ways to choose a morning, and what became of the children: measured, judged and printed."""

import datetime as dt
import itertools
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from statistics import fmean
from typing import NamedTuple

from rich.console import Console
from rich.progress import track
from rich.table import Table

from tests.benchmarks._children import (
    A_WEEK,
    EASY,
    FIRST,
    HESITATED,
    KINDS,
    NOT_YET,
    PROMPTS,
    SKIPPED,
    Child,
    Choose,
    Held,
    Lived,
    Request,
    live,
    luck,
)
from tests.engine.made import Line, is_hard
from warmup.model import Item, Mark

MARKS = {EASY: Mark.FLUENT, HESITATED: Mark.HESITATED, NOT_YET: Mark.NOT_YET}
SETTLED_AFTER = 2
"""The weeks in which everything is new and hard prompts can't be kept apart."""
AHEAD = (20, 60)
"""How many days on the rule that sees wants recall; near the end of the year, what the year is judged by."""


# -- ways to choose


def rotation(request: Request, child: Child) -> list[str]:
    """What was asked longest ago; before all what was never asked, in the order of the plan."""
    last = {item: at for at, (_, item, _) in enumerate(request["history"])}
    return sorted(request["unlocked"], key=lambda item: last.get(item, -1))[: request["n"]]


def by_luck(request: Request, child: Child) -> list[str]:
    """Any of what is open."""
    own = (child.seed, child.number, request["day_index"], "drawn")
    return sorted(request["unlocked"], key=lambda item: luck(*own, item))[: request["n"]]


def seeing(request: Request, child: Child) -> list[str]:
    """What gains most by being asked now, read in the child's head. It heeds no limit, and is no bound."""
    day, end = (
        (dt.date.fromisoformat(each) - FIRST).days for each in (request["date"], request["calendar"][-1])
    )
    judged = (end + 1.0, end + 31.0)
    later = judged if end - day < AHEAD[-1] else tuple(day + ahead for ahead in AHEAD)
    gains = {item: child.memory.gain(item, day, later) for item in request["unlocked"]}
    return sorted(gains, key=lambda item: (-gains[item], item))[: request["n"]]


# -- one year, measured and judged


def skill_of(item: str) -> str:
    """The skill that stands first in an id, our own (``skill/name``) or a strange one (``S04.L2.b``)."""
    return re.split("[/.]", item, maxsplit=1)[0]


class Figures(NamedTuple):
    """A year in numbers: shares from 0 to 1, the rest in planned mornings, the last three counted.

    ``ability`` is the child's, about 0 with a spread of 1; the engine knows nothing of it.
    """

    at_end: float
    later: float
    easy: float
    close: float
    rough: float
    never: float
    rest: float
    ability: float
    broken: int
    gave_way: int
    mornings: int


def measure(lived: Lived, child: Child, items: Sequence[Item]) -> Figures:
    """What became of a year. Skipped prompts have no mark that counts."""
    marks = [[mark for _, mark in held.asked if mark != SKIPPED] for held in lived.mornings]
    marks = [morning for morning in marks if morning]
    easy = [fmean(mark == EASY for mark in morning) for morning in marks]
    asked = {item for held in lived.mornings for item, mark in held.asked if mark != SKIPPED}
    wrong, gave_way = judge(lived.mornings, items)
    return Figures(
        lived.at_end,
        lived.later,
        fmean(mark == EASY for morning in marks for mark in morning),
        fmean(morning[-1] == EASY for morning in marks),
        fmean(share < 0.5 for share in easy),
        1 - len(asked) / len(set(lived.mornings[-1].unlocked)),
        longest_rest(lived.mornings),
        child.ability,
        len(wrong),
        gave_way,
        len(lived.mornings),
    )


def longest_rest(mornings: Sequence[Held]) -> int:
    """The longest that any skill that was open went without being asked."""
    last: dict[str, int] = {}
    longest = 0
    for held in mornings:
        for skill in {skill_of(item) for item in held.unlocked}:
            last.setdefault(skill, held.morning - 1)
            longest = max(longest, held.morning - last[skill])
        last |= {skill_of(item): held.morning for item, mark in held.asked if mark != SKIPPED}
    return longest


def judge(mornings: Sequence[Held], items: Sequence[Item]) -> tuple[list[str], int]:
    """The limits that were broken, and on how many mornings those on hard and first-time prompts give way.

    They give way while fewer than half of the prompts could be anything but hard, two of a skill. What is
    hard is worked out again from the marks, by code of its own.
    """
    by_id: dict[str, Item] = {item.id: item for item in items}
    past: dict[str, list[Line]] = {item.level_id: [] for item in items}
    asked: set[str] = set()
    wrong: list[str] = []
    gave_way = 0
    for held in mornings:
        there = [by_id[item] for item in held.unlocked]
        hard = {str(item.id) for item in there if is_hard(item, past[item.level_id], held.morning)}
        settled = held.morning >= SETTLED_AFTER * A_WEEK
        kind = Counter(skill_of(item) for item in held.unlocked if item not in hard)
        scarce = sum(min(2, count) for count in kind.values()) < PROMPTS / 2
        gave_way += settled and scarce
        wrong += [f"morning {held.morning}: {each}" for each in _on_skills(held)]
        if settled and not scarce:
            new = {item for item in held.unlocked if item not in asked}
            wrong += [f"morning {held.morning}: {each}" for each in _on_hard(held, hard, new)]
        for item, mark in held.asked:
            if mark != SKIPPED:
                past[by_id[item].level_id].append((held.morning, by_id[item], MARKS[mark]))
                asked.add(item)
    return wrong, gave_way


def _on_skills(held: Held) -> Iterator[str]:
    names = [skill_of(item) for item, _ in held.asked]
    yield from (f"{one} twice running" for one, then in itertools.pairwise(names) if one == then)
    yield from (f"{count} of {name}" for name, count in Counter(names).items() if count > 2)


def _on_hard(held: Held, hard: set[str], new: set[str]) -> Iterator[str]:
    items = [item for item, _ in held.asked]
    if items[0] in hard:
        yield f"begins hard with {items[0]}"
    for one, then in itertools.pairwise(items):
        if one in hard and then in hard:
            yield f"{one} and {then} are hard and run together"
    if len(new.intersection(items)) > 3:
        yield f"{len(new.intersection(items))} for the first time"


# -- all of them


Years = Mapping[str, Mapping[tuple[str, int], Figures]]
"""By the way of choosing, then by the child's kind and number."""
COLUMNS = (
    ("recall at the year's end %", "at_end", 100),
    ("30 days later %", "later", 100),
    ("came easily %", "easy", 100),
    ("closes that came easily %", "close", 100),
    ("mornings under half easy %", "rough", 100),
    ("never asked %", "never", 100),
    ("longest rest of a skill, mornings", "rest", 1),
)
ROTATION, LUCK, OURS, SEEING = "fixed rotation", "random", "ours", "sees into the head"


def compare(ours: Choose, items: Sequence[Item], children: int, seed: int, console: Console) -> Years:
    """Every child of every kind lives the same year once under each way of choosing."""
    ways: dict[str, Choose] = {ROTATION: rotation, LUCK: by_luck, OURS: ours, SEEING: seeing}
    years: dict[str, dict[tuple[str, int], Figures]] = {way: {} for way in ways}
    runs = list(itertools.product(range(children), KINDS, ways))
    for number, kind, way in track(runs, "Living", console=console, transient=True):
        child = Child(seed, number, kind)
        years[way][kind, number] = measure(live(child, ways[way], items), child, items)
    return years


def mean(figures: Mapping[tuple[str, int], Figures], name: str) -> float:
    """The mean of one figure over the children."""
    return fmean(getattr(each, name) for each in figures.values())


def kept(figures: Mapping[tuple[str, int], Figures]) -> float:
    """What a way of choosing is measured by: mean recall, of the year's end and 30 days later."""
    return (mean(figures, "at_end") + mean(figures, "later")) / 2


def table(years: Years) -> Table:
    """One row for each way of choosing."""
    made = Table("chosen by", *(heading for heading, _, _ in COLUMNS))
    for way, figures in years.items():
        made.add_row(way, *(f"{scale * mean(figures, name):.1f}" for _, name, scale in COLUMNS))
    return made


def total(years: Years, name: str) -> int:
    """The sum of one count over the years of ours."""
    return sum(int(getattr(each, name)) for each in years[OURS].values())


def lines(years: Years) -> Iterator[str]:
    """What the table does not hold, a sentence each."""
    weakest = _weakest_third(years)
    yield _against_rotation(years, "The weakest third", [at for at in years[OURS] if at[1] in weakest])
    for kind in KINDS:
        yield _against_rotation(years, f"The kind {kind}", [at for at in years[OURS] if at[0] == kind])
    ours, plain, best = (kept(years[way]) for way in (OURS, ROTATION, SEEING))
    share = 100 * (ours - plain) / (best - plain)
    yield f"Of the way from rotation to the rule that sees, ours goes {share:.0f} %."
    broken, gave_way, mornings = (total(years, name) for name in ("broken", "gave_way", "mornings"))
    yield f"Limits broken by ours: {broken} in {mornings} mornings (expected 0)."
    yield (
        f"On {gave_way} of those, past week {SETTLED_AFTER}, fewer than half of the prompts could be anything"
        " but hard: there the limits on hard and first-time prompts give way."
    )


def _weakest_third(years: Years) -> set[int]:
    """The numbers of the children to whom least comes easily by nature, whatever they are asked."""
    able = {number: years[OURS][kind, number].ability for kind, number in years[OURS]}
    return set(sorted(able, key=able.__getitem__)[: -(-len(able) // 3)])


def _against_rotation(years: Years, name: str, some: Sequence[tuple[str, int]]) -> str:
    ours, plain = (100 * kept({at: years[way][at] for at in some}) for way in (OURS, ROTATION))
    return f"{name}: recall {ours:.1f} % ours, {plain:.1f} % in rotation ({ours - plain:+.1f} points)."
