"""What the number skills share: number cards to choose among, tens and ones in words, and the chart."""

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


def chart_rows(
    low: int, high: int, pointed: tuple[int, ...] = (), hidden: tuple[int, ...] = ()
) -> "pictures.HundredChart":
    """The chart's whole rows of ten that hold the numbers from ``low`` to ``high``; from 1 where it is 0."""
    return pictures.HundredChart(max(0, low - 1) // 10 * 10 + 1, -(-high // 10) * 10, hidden, pointed)
