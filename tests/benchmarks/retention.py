"""How well the engine chooses, on children made of numbers.

:func:`plan` answers one morning of a simulated year with the real ``engine.choose``; it stands alone and may
be called for any morning first. ``python -m tests.benchmarks.retention [--children N] [--seed S]`` lets
invented children live a year under that and under simpler ways of choosing, prints one table, and ends with
exit code 1 when a limit of a kind morning was broken.

What was tried, on 6 to 48 simulated children of each of three kinds of memory, eight prompts a morning, 250
items. The share is how far the rule gets from a fixed rotation toward one that sees into the child's head;
two runs that differ by two or three points are the same.

* no limits at all, the most overdue first: 63 %
* every limit and always a sure close (three hard of eight), returns in any order: 0 to 4 %
* the same three hard prompts, chosen by the rule that sees: 35 %, and a sixth of all items never asked
* four hard of eight, the likeliest of them at the close: 33 %, closes come easily 72 in 100
* four, the freshest return at the close: 26 %, closes 81 in 100
* four, a return that has not rested its whole interval at the close (kept): 41 to 44 %, closes 78 in 100
* calendar talk and counting picked last, only if missing (kept): 4 points more
* one skill that rested too long before the new ones (kept): 1 or 2 points more, and no skill rests long
* three new ones every morning: 10 points less
* the newest first instead of what has waited longest: 11 points less
* intervals that grow by 1.5 or 3 times the rest, or shrink to 0.3 or 0.7: the same
* a floor of 0.76 after mornings that went half well: 6 points less; after a third (kept): 1 or 2
* ties among the most overdue by age, interval or number of marks: the same

With the program's own items and eight prompts a morning the share is 16 %: of the four hard prompts 2.3 are
first times.
"""

import argparse
import datetime as dt
import re
import sys
from bisect import bisect_left
from collections import Counter
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from warmup import skills
from warmup.config.places import Places
from warmup.config.plan import load_plan, load_shape
from warmup.engine.curriculum import Curriculum
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import choose
from warmup.engine.memory import Knowledge, fold
from warmup.model import Asked, DayKind, Item, ItemId, Mark, Morning, Plan, Shape, level_id
from warmup.randomness import digest
from warmup.schoolyear import WEEKS_A_QUARTER, SchoolYear

MORNINGS_A_WEEK = 4
SECONDS = 40
"""What every prompt is taken to need; with no ceiling on the morning, time never decides."""
MARKS = {
    "easy": Mark.FLUENT, "fluent": Mark.FLUENT, "hesitated": Mark.HESITATED,
    "notyet": Mark.NOT_YET, "not_yet": Mark.NOT_YET, "skipped": Mark.SKIPPED,
}  # fmt: skip
Row = tuple[str, str, str]
# A folder that is not there: the plan and the shapes are those that come with the program.
_NOWHERE = Path(__file__).parent / "no family lives here"
_SHIPPED = Places(_NOWHERE, _NOWHERE)


def plan(request: dict[str, Any]) -> list[str]:
    """The item ids of one morning in their order: ``min(n, len(unlocked))`` of them, each once.

    A request has ``child``, ``day_index`` (from 0, four mornings a week), ``date``, ``n``, ``unlocked`` (item
    ids in any order), ``history`` ([date, id, mark] in order of time, all of it) and ``calendar`` (the year's
    planned mornings); dates are ISO. What is kept between calls is what was folded of the same history, and
    for strange ids when they came; a call in a fresh process gives the same for our own.

    Of our own ids (``skill/name``) all is known; whether what they stand on is there, and whether they suit
    the day, the caller has seen to. A strange id such as ``S04.L2.b`` tells its skill and its level, but no
    strand, and not when it unlocked. Who asks for every morning of a year from the first gives it away: it
    was not there the morning before. In any other request an item of a level that was asked, or that lies
    under one that was, is taken to have unlocked in the week of that first asking. A level still waiting
    is taken to have come in the last weeks, by how many wait (:meth:`_Lived.waiting`): a guess, since
    nothing in a request tells it.
    Review weeks are asked like any other here: a request has no say in what is new.

    Where the engine chooses fewer than were asked for, since more would break one of its limits, the rest
    is filled in where it breaks least (:func:`_filled`). KeyError for an unknown mark.
    """
    lived = _history(request)
    morning = _morning(request)
    unlocked = sorted(set(request["unlocked"]))
    strangers = [item for item in unlocked if item not in catalogue()]
    lived.see(strangers, morning.index)
    waiting = lived.waiting(strangers, morning.index)
    items = [lived.item(item, waiting) for item in unlocked]
    if not items or request["n"] < 1:
        return []
    chosen = choose(
        Eligible(tuple(items)),
        _shape(),
        lived.known,
        morning,
        lived.curriculum(items),
        child=request["child"],
        count=request["n"],
    )
    return _filled([choice.item for choice in chosen], items, lived.known, request)


@cache
def _plan() -> Plan:
    return load_plan(_SHIPPED)


@cache
def catalogue() -> dict[str, Item]:
    """Our own items by id, as the year plan that comes with the program opens them."""
    return {item.id: item._replace(seconds=SECONDS) for item in skills.items(_plan())}


@cache
def _shape() -> Shape:
    return load_shape(_SHIPPED, "daily")._replace(seconds=86_400)


@cache
def _stranger(item: str) -> tuple[str, int]:
    """The skill and the level that stand in an id such as ``S04.L2.b``; level 1 where none does."""
    skill, _, rest = item.partition(".")
    level = re.match(r"L(\d+)", rest)
    return skill, int(level[1]) if level else 1


def _morning(request: dict[str, Any]) -> Morning:
    now = request["day_index"]
    week = now // MORNINGS_A_WEEK + 1
    days = [dt.date.fromisoformat(day) for day in request["calendar"]]
    return Morning(
        date=dt.date.fromisoformat(request["date"]),
        kind=DayKind.SCHOOL,
        school_day=now + 1,
        week=week,
        quarter=(week - 1) // WEEKS_A_QUARTER + 1,
        review=week in _plan().reviews,
        index=now,
        mornings_a_week=MORNINGS_A_WEEK,
        previous=days[now - 1] if now else None,
        next=days[now + 1] if now + 1 < len(days) else None,
    )


@dataclass(slots=True)
class _Lived:
    """What was folded of one history.

    ``begun`` is the morning on which each level of a strange skill was first asked; ``asked`` holds each item
    asked so far as it is taken to be; ``seen`` the one on which a strange item was first among
    those of a request, while the requests of a year were followed from its beginning to ``now``.
    """

    calendar: list[str]
    rows: list[Row] = field(default_factory=list)
    known: Knowledge = field(default_factory=Knowledge)
    begun: dict[tuple[str, int], int] = field(default_factory=dict)
    seen: dict[str, int] = field(default_factory=dict)
    now: int = -1
    asked: dict[ItemId, Item] = field(default_factory=dict)

    def see(self, strangers: Collection[str], now: int) -> None:
        """Note what has unlocked since the request before this one."""
        if now == 0 or self.now >= 0:
            for item in strangers:
                self.seen.setdefault(item, now)
            self.now = now

    def live(self, rows: Sequence[Row]) -> None:
        """Fold the rows that are new."""
        days = [dt.date.fromisoformat(day) for day in self.calendar]
        new = [
            Asked(dt.date.fromisoformat(day), ItemId(item), MARKS[mark])
            for day, item, mark in rows[len(self.rows) :]
        ]
        for asked in new:
            if asked.item not in self.asked:
                if asked.item not in catalogue():
                    self.begun.setdefault(_stranger(asked.item), bisect_left(days, asked.date))
                self.asked[asked.item] = self.item(asked.item, {})
        self.known = fold(self.curriculum(()), new, self.known)
        self.rows = list(rows)

    def curriculum(self, items: Sequence[Item]) -> Curriculum:
        """What was asked so far and these items, over the mornings of the calendar."""
        mornings = tuple(map(dt.date.fromisoformat, self.calendar))
        year = SchoolYear(tuple(range(MORNINGS_A_WEEK)), mornings)
        return Curriculum(self.asked | {item.id: item for item in items}, year)

    def item(self, item: str, waiting: dict[tuple[str, int], int]) -> Item:
        """The item as the engine sees it; ``waiting`` holds the morning of levels that were not begun."""
        if item in catalogue():
            return catalogue()[item]
        skill, level = _stranger(item)
        if ItemId(item) in self.asked:
            return self.asked[ItemId(item)]
        opened = self.seen.get(item, self._begun(skill, level))
        if opened is None:
            opened = waiting[skill, level]
        week = opened // MORNINGS_A_WEEK + 1
        return Item(
            ItemId(item), skill, level, level_id(skill, str(level)), "", week, seconds=SECONDS, ends=True
        )

    def _begun(self, skill: str, level: int) -> int | None:
        """The first morning this level or a higher one was asked: by then it had unlocked."""
        return min((day for (of, at), day in self.begun.items() if of == skill and at >= level), default=None)

    def waiting(self, strangers: Collection[str], now: int) -> dict[tuple[str, int], int]:
        """The levels nobody was asked yet, and the morning each is taken to have unlocked at.

        If levels come at an even pace and the last to come are those that wait, then the oldest of them has
        waited as large a share of the year so far as they are of all levels. Each is taken to be the oldest,
        lest it wait for ever, but no older than the level below it.
        """
        levels = {_stranger(item) for item in strangers}
        left = {at for at in levels if self._begun(*at) is None}
        oldest = now - now * len(left) // len(levels) if levels else now
        below = {
            (skill, level): [day for (of, at), day in self.begun.items() if of == skill and at < level]
            for skill, level in left
        }
        return {at: max([oldest, *days]) for at, days in below.items()}


_lived: dict[str, _Lived] = {}


def _history(request: dict[str, Any]) -> _Lived:
    """What the history tells; what was folded before is gone on with if it is how this history begins."""
    rows: list[Row] = [(day, item, mark) for day, item, mark in request["history"]]
    kept = _lived.get(request["child"])
    if kept is None or kept.calendar != request["calendar"] or kept.rows != rows[: len(kept.rows)]:
        kept = _lived[request["child"]] = _Lived(list(request["calendar"]))
    kept.live(rows)
    return kept


def _filled(
    chosen: list[Item], items: Sequence[Item], known: Knowledge, request: dict[str, Any]
) -> list[str]:
    """The chosen items and as many more as are missing.

    Those come first whose last mark was easy, of skills asked less than twice. Each goes to the last place,
    before the close, where no skill and no two hard ones run; failing that, where no skill does, or last.
    """
    hard = {item.id for item in items if known.of(item.id).mark is not Mark.FLUENT}
    skill: dict[str, str] = {item.id: item.skill for item in items}
    count = Counter(item.skill for item in chosen)
    out: list[str] = [item.id for item in chosen]
    left = [item.id for item in items if item.id not in set(out)]
    while left and len(out) < request["n"]:
        item = min(
            left,
            key=lambda item: (
                count[skill[item]] > 1,
                item in hard,
                digest(request["child"], request["date"], item),
            ),
        )
        left.remove(item)
        count[skill[item]] += 1
        out.insert(_place(item, out, skill, hard), item)
    return out


def _place(item: str, out: Sequence[str], skill: dict[str, str], hard: Collection[str]) -> int:
    at: int
    apart: list[int] = []
    for at in [*range(len(out) - 1, -1, -1), len(out)]:
        beside = out[max(0, at - 1) : at + 1]
        if any(skill[item] == skill[other] for other in beside):
            continue
        apart.append(at)
        if (at or item not in hard) and not any({item, other} <= set(hard) for other in beside):
            return at
    # Where all is hard, as on the first morning, the skills at least are kept apart.
    return apart[0] if apart else len(out)


def main(arguments: Sequence[str]) -> int:
    """Let the children live, and print what became of them."""
    # Not at the head of the module: plan needs none of it.
    from rich.console import Console

    from tests.benchmarks import _comparison as comparison

    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.retention")
    parser.add_argument("--children", type=int, default=12, metavar="N", help="of each kind of memory (12)")
    parser.add_argument("--seed", type=int, default=1, metavar="S", help="another seed, other children (1)")
    wanted = parser.parse_args(arguments)
    if wanted.children < 1:
        parser.error("there must be at least one child")
    console, items = Console(), list(catalogue().values())
    years = comparison.compare(lambda request, _: plan(request), items, wanted.children, wanted.seed, console)
    console.print(comparison.table(years))
    for line in comparison.lines(years):
        console.print(line, highlight=False)
    return 1 if comparison.total(years, "broken") else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
