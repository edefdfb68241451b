"""Two-minute games for the table: a game a file, found by itself, each made for one level and morning.

Put a module with a ``GAME`` in this folder, and whatever looks for a game finds it. What a house has is not
known here: whoever asks hands in what says so. Nothing is recorded of a game.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import NamedTuple

from warmup import skills
from warmup.games.base import Game, Play
from warmup.model import LevelId, Morning, is_own
from warmup.randomness import SeededRandom

__all__ = ["Game", "Has", "Match", "Play", "games", "matches", "play"]

Has = Callable[[Sequence[str]], bool]
"""Whether a house has all of these things, by their names."""
_FEWEST = 3


class Match(NamedTuple):
    """A game, and the level it is played for."""

    game: Game
    level: LevelId


@cache
def games() -> Mapping[str, Game]:
    """Every game by its id, in the order of file names; loaded at the first use."""
    names = sorted(file.stem for file in Path(__file__).parent.iterdir() if file.suffix == ".py")
    found = (import_module(f"{__name__}.{name}").GAME for name in names if name != "base" and name[0] != "_")
    return {game.id: game for game in found}


def matches(level: LevelId, has: Has, rng: SeededRandom) -> tuple[Match, ...]:
    """What can be played for a level in this house, in a drawn order.

    The games of the level itself come first. Where there are fewer than three, those of the nearest
    levels below it in its strand come after them. Empty where none of them has a game for this house.
    """
    found: dict[str, Match] = {}
    for step in _downward(level):
        for match in rng.shuffled(_at(step, has)):
            found.setdefault(match.game.id, match)
        if len(found) >= _FEWEST:
            break
    return tuple(found.values())


def _at(levels: Sequence[LevelId], has: Has) -> list[Match]:
    """The games of these levels that the house has the things for."""
    return [
        Match(game, level)
        for level in levels
        for game in games().values()
        if level in game.levels and has(game.things(level))
    ]


def _downward(level: LevelId) -> Iterator[list[LevelId]]:
    """The level alone, then step by step the nearest ones below it in its strand.

    Below it are the level before it in its skill and those that it stands on.
    """
    if is_own(level):
        return
    seen, step = {level}, [level]
    strand = skills.strand_of(level)
    while step:
        yield step
        lower = dict.fromkeys(each for upper in step for each in skills.below(upper))
        step = [each for each in lower if each not in seen and skills.strand_of(each) == strand]
        seen.update(step)


def play(match: Match, morning: Morning, *seed: object) -> Play:
    """The game as it is played for its level on a morning; the same seed gives the same numbers."""
    rng = SeededRandom("game", match.game.id, match.level, *seed)
    return match.game.made(match.level, morning, rng)
