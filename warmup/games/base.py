"""What a table game is: things from the kitchen, one rule, and an end that all come to together."""

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

SECONDS_A_TURN = 5
"""How long a turn takes (common practice, no source)."""
DOT = "draw a dot on one side of a strip of paper"
"""How chance comes to the table: a strip of paper that is dropped, with the dot up or no dot."""


class Play(NamedTuple):
    """A game as it is made for one level and morning.

    ``setup`` is one sentence for the adult. ``rule`` is said to the child, in three short sentences at most.
    ``ends`` says when it is over, ``listen`` what to listen for. ``given`` holds every number that was
    chosen for it. ``turns`` is the most turns it may take, of five seconds each.
    """

    setup: str
    rule: tuple[str, ...]
    ends: str
    listen: str
    given: Mapping[str, int]
    turns: int


Made = Callable[[LevelId, Morning, SeededRandom], Play]
"""Makes a play of a game for one of its levels."""


class Game(NamedTuple):
    """A game: its id, its name, the ``levels`` it serves, and what it ``needs``, by the names of things.

    ``spared`` pairs levels with those of the things that they do without. ``players`` are the numbers of
    children it is for; ``two`` says how two play it. ``simulate`` plays a play with chance in it by itself
    and gives the turns it took; it is None where nothing is left to chance.
    """

    id: str
    name: str
    needs: tuple[str, ...]
    levels: tuple[LevelId, ...]
    made: Made
    two: str = "They take turns."
    simulate: Callable[[Play, SeededRandom], int] | None = None
    players: tuple[int, ...] = (1, 2)
    spared: tuple[tuple[str, tuple[str, ...]], ...] = ()

    def things(self, level: LevelId) -> tuple[str, ...]:
        """What it needs when it is played for this level."""
        return tuple(need for need in self.needs if need not in dict(self.spared).get(level, ()))


def levels(*names: str) -> tuple[LevelId, ...]:
    """The ids of levels, from their names."""
    return tuple(map(LevelId, names))


def laying(pieces: int) -> int:
    """How many turns it takes to lay so many pieces, each in two seconds."""
    return -(-2 * pieces // SECONDS_A_TURN)


def numbered(name: str, numbers: Sequence[int]) -> dict[str, int]:
    """What a play was given, one after another: "hour 1", "hour 2" and so on."""
    return {f"{name} {at}": number for at, number in enumerate(numbers, start=1)}


def turns_along(way: int, step: Callable[[], int]) -> int:
    """How many turns a way takes that ends where a step would go past it."""
    turns = 0
    while way > 0:
        way -= step()
        turns += 1
    return turns


def turns_within(start: int, ends: tuple[int, int], step: int, most: int, rng: SeededRandom) -> int:
    """How many turns it takes from the start, by a step up or down, to one of two ends; no more than that."""
    at, turns = start, 0
    while ends[0] < at < ends[1] and turns < most:
        at += step if rng.coin() else -step
        turns += 1
    return turns
