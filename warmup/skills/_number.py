"""What the number skills share: number cards to choose among, and tens and ones in words."""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import number_word, ordinal_word, plural
from warmup.randomness import SeededRandom


def dealt(
    rng: SeededRandom, wanted: int, like: Sequence[int], rest: Sequence[int], count: int = 4
) -> tuple[str, ...]:
    """``count`` different number cards in a drawn order: ``wanted``, then those it is taken for (``like``),
    filled up with numbers drawn from ``rest``."""
    near = [n for n in dict.fromkeys(like) if n != wanted]
    others = rng.shuffled([n for n in rest if n != wanted and n not in near])
    return tuple(map(str, rng.shuffled([wanted, *near, *others][:count])))


def card_place(cards: Sequence[str], wanted: int) -> str:
    """Where a card lies, for the adult: "the second card from the left"."""
    return f"the {ordinal_word(cards.index(str(wanted)) + 1)} card from the left"


def swapped(number: int) -> int:
    """The number with its two digits the other way around: 31 for 13, 2 for 20."""
    tens, ones = divmod(number, 10)
    return 10 * ones + tens


def tens_and_ones(number: int) -> str:
    """The number as tens and ones: "three tens and four ones", "four tens" for 40."""
    tens, ones = divmod(number, 10)
    parts = [f"{number_word(tens)} {plural(tens, 'ten')}"] if tens else []
    if ones or not tens:
        parts.append(f"{number_word(ones)} {plural(ones, 'one')}")
    return " and ".join(parts)


def figures(number: int) -> str:
    """The number as a sum of its parts, in figures: "30 + 4 = 34", "10 + 10 = 20" is never written."""
    tens, ones = divmod(number, 10)
    return f"{10 * tens} + {ones} = {number}"


def chart_to(number: int) -> "pictures.HundredChart":
    """The chart from 1 to the end of the number's row of ten, at least to 20 once it is past 10."""
    return pictures.HundredChart(1, max(10, -(-number // 10) * 10))


def chart_rows(low: int, high: int) -> "pictures.HundredChart":
    """The chart's whole rows of ten that hold the numbers from ``low`` to ``high``."""
    return pictures.HundredChart((low - 1) // 10 * 10 + 1, -(-high // 10) * 10)
