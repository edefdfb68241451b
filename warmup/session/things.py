"""What is to lie on the table: each thing once, however prompts spell it, and when it is first wanted."""

import datetime as dt
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from warmup.model import Prompt

_A_FEW = 4


class Thing(NamedTuple):
    """One thing for the table, and the first morning that wants it."""

    name: str
    first: dt.date


class Gather(NamedTuple):
    """What must be on the table, and what a picture on the stage can stand in for; nothing is in both.

    Eight things to fetch for a morning would be a burden; half of them are shown as well.
    """

    wanted: tuple[Thing, ...] = ()
    handy: tuple[Thing, ...] = ()


def gather(mornings: Mapping[dt.date, Iterable[Prompt]]) -> Gather:
    """The things that these mornings want, in order of time."""
    wanted, handy = dict[str, list[Thing]](), dict[str, list[Thing]]()
    for date, prompts in sorted(mornings.items(), key=lambda each: each[0]):
        for prompt in prompts:
            lists = wanted if prompt.picture is None else handy
            for name in filter(None, prompt.table.split(", ")):
                lists.setdefault(_plain(name), []).append(Thing(name, date))
    # What is wanted on one morning may be shown on an earlier one, and is fetched for that once.
    must = [_once((*handy.get(plain, ()), *things)) for plain, things in wanted.items()]
    may = [_once(things) for plain, things in handy.items() if plain not in wanted]
    return Gather(*(tuple(sorted(things, key=lambda thing: thing.first)) for things in (must, may)))


def _once(things: Sequence[Thing]) -> Thing:
    """One thing of its spellings: the one that asks for the most of it."""
    return Thing(max((thing.name for thing in things), key=_many), min(thing.first for thing in things))


def _many(name: str) -> int:
    """How many a name asks for; where it says no number, a few or one."""
    number = name.partition(" ")[0]
    return int(number[:4]) if number.isdecimal() else _A_FEW if name.endswith("s") else 1


def _plain(name: str) -> str:
    """The same for "a cup", "cup", "cups" and "3 cups or the like"."""
    words = re.sub(r"^(?:an?|\d+) | or the like$", "", name).split()
    return " ".join(word[:-1] if word.endswith("s") and not word.endswith("ss") else word for word in words)
