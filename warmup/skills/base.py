"""What a skill is: a file that can ask, and whose answers are computed from what was given."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import Phrasing, SeededRandom

Condition = Callable[[Morning], bool]
"""Whether a morning is of some kind: see :mod:`warmup.skills._conditions`."""


class Draft(NamedTuple):
    """What a skill's ``ask`` gives back; the registry adds what it knows of the level.

    ``say`` is one of the ways to say it; ``answer`` is computed from ``given`` and nothing else.
    ``seconds``, ``guess`` and ``table`` replace the level's where an item differs. ``do`` is what the adult
    does before speaking.
    """

    say: Phrasing
    answer: str
    working: str
    cues: tuple[Cue, Cue, Cue]
    watch_for: str
    given: Mapping[str, Any]
    accept: tuple[str, ...] = ()
    picture: Picture | None = None
    seconds: int | None = None
    guess: float | None = None
    table: str | None = None
    do: str = ""


class Level(NamedTuple):
    """One level of a skill.

    ``key`` names it in ``routines/year.toml``; ``label`` is for people. ``variants`` are the ways its one
    question is met, the plain one first, asked in turn; ``misconceptions`` are known slips with a record
    of their own: one that is shaky makes other levels wait. Both are *items*. ``codes`` are those of the
    Common Core State Standards for Mathematics (2010) that the level exercises within their bounds,
    ``toward`` those it only leads to; a level past every bound of a code has neither. ``stands_on`` names
    every level that must be there before it, as ``skill:key``; ``waits_on`` the misconceptions, as
    ``skill/name``, that must not be shaky. ``seconds`` is 20, 40, 60 or 120, ``guess`` the chance of a
    lucky answer, ``table`` what the level would like on the table. ``slower`` names items that take 60
    seconds, ``guesses`` those whose chance is another. ``ends`` names the items a morning may end with: a
    name or a movement, no chain of words, and 20 seconds at most.
    """

    key: str
    label: str
    variants: tuple[str, ...]
    misconceptions: tuple[str, ...] = ()
    codes: tuple[str, ...] = ()
    toward: tuple[str, ...] = ()
    stands_on: tuple[str, ...] = ()
    waits_on: tuple[str, ...] = ()
    seconds: int = 40
    guess: float = 0.0
    table: str = ""
    slower: tuple[str, ...] = ()
    guesses: tuple[tuple[str, float], ...] = ()
    ends: tuple[str, ...] = ()

    @property
    def items(self) -> tuple[str, ...]:
        """Everything of this level that has a record: its variants, then its misconceptions."""
        return self.variants + self.misconceptions

    def seconds_of(self, item: str) -> int:
        """How long an item's prompt takes at most: 60 for the slower ones, 20 for what ends a morning."""
        return 60 if item in self.slower else 20 if item in self.ends else self.seconds

    def guess_of(self, item: str) -> float:
        """The chance of a lucky answer to an item's prompts."""
        return dict(self.guesses).get(item, self.guess) if self.guesses else self.guess


class Skill(NamedTuple):
    """Something that can be asked.

    ``ask(item, morning, rng)`` gets an item's name (without the skill) and makes a prompt of it.
    ``askable`` has the condition of each item that makes sense on some mornings only, ``timely`` that of each
    item that some mornings ask for by themselves. ``ladder`` names the levels, by their
    keys and lowest first, of which fluency at a higher one retires the lower. The words of a ``private`` one
    are a family's own: what is handed on to others, such as a report, leaves them out.
    """

    id: str
    title: str
    asks: str
    strand: Strand
    levels: tuple[Level, ...]
    ask: Callable[[str, Morning, SeededRandom], Draft]
    ladder: tuple[str, ...] = ()
    askable: Mapping[str, Condition] = MappingProxyType({})
    timely: Mapping[str, Condition] = MappingProxyType({})
    private: bool = False
