"""Written numbers set against each other: which is more, or in what order they come."""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import count_words, number_word, plural
from warmup.model import Cue
from warmup.randomness import SeededRandom
from warmup.skills._number import chart_rows, tens_and_ones
from warmup.skills.base import Draft


def two_numerals(pair: Sequence[int], watch_for: str, rng: SeededRandom) -> Draft:
    """Two numerals said and shown; which is more, or less, evenly."""
    one, two = pair
    first, second = number_word(one), number_word(two)
    more = rng.coin()
    word = "more" if more else "less"
    best = max(one, two) if more else min(one, two)
    return Draft(
        say=rng.phrasing(
            f"Which is {word}, {first} or {second}?",
            f"{first.capitalize()} {plural(one, 'step')} or {second} {plural(two, 'step')}: which is {word}?",
            f"Look at {first} and {second}. Which number is {word}?",
        ),
        answer=number_word(best),
        working=f"{max(one, two)} > {min(one, two)}" + _why(one, two),
        cues=_numeral_cues((one, two)),
        watch_for=watch_for,
        given={"cards": [str(one), str(two)], "ask": word},
        picture=pictures.NumberRow((str(one), str(two))),
        guess=0.5,
    )


def _why(one: int, two: int) -> str:
    if min(one, two) < 10:
        return ""
    parts = [f"{n} has {tens_and_ones(n)}" for n in (max(one, two), min(one, two))]
    return ": " + ", ".join(parts)


def in_order(three: Sequence[int], watch_for: str, rng: SeededRandom) -> Draft:
    """Three different numbers to put in order, least or greatest first; they never lie in order already."""
    numbers = rng.shuffled(three)
    while list(numbers) in (sorted(numbers), sorted(numbers, reverse=True)):
        numbers = rng.shuffled(numbers)
    up = rng.coin()
    row = sorted(numbers, reverse=not up)
    first = "least" if up else "most"
    cards = tuple(map(str, numbers))
    return Draft(
        say=rng.phrasing(
            f"Put these in order. Say the {first} first.",
            f"Read these in order, from {'least to most' if up else 'most to least'}.",
            f"Count {'up' if up else 'down'}. In what order do these come?",
        ),
        answer=count_words(row),
        working=f" {'<' if up else '>'} ".join(map(str, row)),
        cues=_numeral_cues(numbers),
        watch_for=watch_for,
        given={"cards": list(cards), "ask": first},
        picture=pictures.NumberRow(cards),
        guess=0.17,
    )


def _numeral_cues(numbers: Sequence[int]) -> tuple[Cue, Cue, Cue]:
    if max(numbers) <= 10:
        return (
            Cue("When you count, which do you meet first?"),
            Cue("Find each on the chart with a finger. How far along is it?", chart_rows(1, 10)),
            Cue("Count up from the start together, slowly. The child calls out each card we meet."),
        )
    tens = ", ".join(f"{number_word(n // 10)} {plural(n // 10, 'ten')} here" for n in numbers)
    return (
        Cue("Read each number. Which digit tells the tens?"),
        Cue(
            "Find each on the chart with a finger. Further on, or further down, is more.",
            chart_rows(min(numbers), max(numbers)),
        ),
        Cue(f"Lay bundles for each: “{tens}…” The child adds the loose ones and looks."),
    )
