"""A fork stands for ten and a spoon for one, and numbers lie on the table."""

from warmup.english import listed, number_word
from warmup.games.base import Game, Play, laying, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_COUNT = 3
_WHOLE_TENS = "place-value:whole-tens"
_LEVELS = levels(_WHOLE_TENS, "place-value:to-99", "school-day:tens-and-ones")


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Three numbers to lay."""
    range_of = range(10, 91, 10) if level == _WHOLE_TENS else range(11, 100)
    numbers = rng.sample(range_of, _COUNT)
    pieces = sum(sum(divmod(number, 10)) for number in numbers)
    return Play(
        "Put nine forks and nine spoons in reach, and name "
        f"{listed([number_word(number) for number in numbers], 'and then')}.",
        ("A fork is ten.", "A spoon is one.", "I say a number, and you lay it."),
        "when the last number lies on the table",
        "Are there tens and ones, and not one spoon for each?",
        numbered("number", numbers),
        laying(pieces),
    )


GAME = Game(
    id="forks-are-ten",
    name="Forks are ten",
    needs=("forks", "spoons"),
    levels=_LEVELS,
    made=made,
    two="One lays the forks, the other the spoons.",
)
