"""compare: more, fewer, the same; which number is greater.

K.CC.C.6 compares groups of up to ten things, K.CC.C.7 two written numerals from 1 to 10, 1.NBT.B.3 two-digit
numbers from 10 to 99 by their tens and then their ones (Common Core State Standards for Mathematics, 2010).
That a longer row looks like more, and that "fewer" is met late, is common practice, no source.
"""

from collections.abc import Sequence
from typing import Literal

from warmup import pictures
from warmup.english import count_words, number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import SeededRandom
from warmup.skills._number import chart_rows, chart_to, tens_and_ones
from warmup.skills.base import Draft, Level, Skill

# The numbers on the cards of the numeral items: a range for the plain ones, a pair for the others.
_NUMERALS: dict[str, Sequence[int]] = {
    "numerals-to-10": range(1, 11),
    "numerals-to-20": range(10, 21),
    "numerals-to-99": range(21, 100),
    "thirteen-thirty-one": (13, 31),
    "nineteen-twenty-one": (19, 21),
}
_WATCH = {
    "match-to-5": "Putting down a handful without looking. Match them up, each with a partner.",
    "equal-to-5": "Adding a few for luck. Just as many means each has a partner and no more.",
    "sets-to-10": "Judging by the space a row takes up. Let each find its partner.",
    "fewer": "Showing the one with more: “fewer” is a new word, and more is easier to see.",
    "spread": "Going by how wide a row is. Ask for partners; do not say whether it is so.",
    "numerals-to-10": "Choosing the number said last, or the one that is nicer to write.",
    "numerals-to-20": "Comparing the last digits only. Look at the tens first.",
    "numerals-to-99": "Looking at the ones first, since a 9 is big wherever it stands.",
    "thirteen-thirty-one": "The same digits, so “the same”. The tens settle it.",
    "nineteen-twenty-one": "Going by the biggest digit. The tens settle it.",
}
_THINGS = ("spoon", "cup", "block", "crayon", "sock")


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Sets to lay out or to look at, or numerals to set against each other."""
    match item:
        case "match-to-5":
            return _lay_out(item, rng.between(2, 4), rng.pick((1, 0)), rng)
        case "equal-to-5":
            return _lay_out(item, rng.between(2, 5), 0, rng)
        case "fewer":
            return _lay_out(item, rng.between(3, 10), -1, rng) if rng.coin() else _look(item, rng)
        case "sets-to-10" | "spread":
            return _look(item, rng)
        case _ if len(_NUMERALS[item]) > 2 and rng.coin():
            return _in_order(item, rng)
        case _:
            return _two_numerals(item, rng)


def _lay_out(item: str, mine: int, step: int, rng: SeededRandom) -> Draft:
    """The adult's set is seen; the child lays out as many, one more or one fewer, and says how many.

    "One more" alone could mean a single thing: the words say than what. Sets begin at two, for of one
    there is nothing to count. The picture shows the adult's as rings, so the words call them rings.
    """
    thing = rng.pick(_THINGS)
    things, theirs = plural(2, thing), mine + step
    wish = {0: "just as many", 1: "one more", -1: "one fewer"}[step]
    than = f"{wish} than that" if step else wish
    noun = f"{wish.partition(' ')[2]} {thing}" if step else things
    return Draft(
        say=rng.phrasing(
            f"Look at my rings. Put out {than}. How many are yours?",
            f"Here is my row. Make yours with {wish}. How many?",
            f"Take one {noun} than I have rings. How many {things}?"
            if step
            else f"Take just as many {things} as I have rings. How many?",
        ),
        answer=number_word(theirs),
        working=f"{mine} {plural(mine, 'ring')}, {wish}: {theirs}",
        cues=(
            Cue(f"How can you be sure that it is {wish}?"),
            Cue("Point along the row. Each gets a partner, put down right under it."),
            _finish(step),
        ),
        watch_for=_WATCH[item],
        given={"mine": mine, "step": step, "thing": thing},
        picture=pictures.TwoSets(mine, 0),
        do=f"Give the child a big handful of {things}.",
        table=things,
    )


def _finish(step: int) -> Cue:
    match step:
        case 1:
            return Cue("Lay the partners together, one under each. The child puts down the last and counts.")
        case -1:
            return Cue("Cover the end of the row with a hand. The child matches the rest and counts.")
        case _:
            return Cue("Lay the first one under its partner together. The child goes on, then counts.")


def _look(item: str, rng: SeededRandom) -> Draft:
    """Two trays: which has more, which has fewer, or are they the same?"""
    top, bottom, spread = _two_sets(item, rng)
    ask_for = "fewer" if item == "fewer" or (item == "sets-to-10" and rng.coin()) else "more"
    wins = top if (top > bottom) is (ask_for == "more") else bottom
    answer = "the same" if top == bottom else "the top tray" if wins == top else "the bottom tray"
    mates = pictures.TwoSets(top, bottom)
    return Draft(
        say=rng.phrasing(
            f"Which tray has {ask_for} rings? Say “same” if they match.",
            f"Point to the tray with {ask_for} rings, or say “same”.",
            f"Top or bottom: which has {ask_for} rings? Or say “same”.",
        ),
        answer=answer,
        accept=("same", "both") if top == bottom else (),
        working=f"top {top}, bottom {bottom}",
        cues=(
            Cue("How could you find out without a guess?"),
            Cue("Here each has its partner under it. Does every one have a partner?", mates),
            Cue("Touch the first of each row together, then the next two. The child goes on."),
        ),
        watch_for=_WATCH[item],
        given={"top": top, "bottom": bottom, "spread": spread, "ask": ask_for},
        picture=pictures.TwoSets(top, bottom, spread),
        guess=0.33,
    )


def _two_sets(item: str, rng: SeededRandom) -> tuple[int, int, Literal["", "top", "bottom"]]:
    """Two counts to ten, alike a third of the time, and which of them is spread out."""
    if item == "spread":
        # The wide row never holds more: it only looks so.
        wide = rng.between(3, 7)
        close = wide + rng.pick((0, 1, 2))
        return (wide, close, "top") if rng.coin() else (close, wide, "bottom")
    low = rng.between(2, 9)
    high = low if rng.below(3) == 0 else min(10, low + rng.between(1, 2))
    return (low, high, "") if rng.coin() else (high, low, "")


def _two_numerals(item: str, rng: SeededRandom) -> Draft:
    """Two numerals said and shown; which is more, or less, evenly."""
    one, two = _pair(item, rng)
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
        watch_for=_WATCH[item],
        given={"cards": [str(one), str(two)], "ask": word},
        picture=pictures.NumberRow((str(one), str(two))),
        guess=0.5,
    )


def _pair(item: str, rng: SeededRandom) -> tuple[int, int]:
    """Two different numbers; half of the two-digit ones have more ones in the lesser."""
    numbers = _NUMERALS[item]
    one, two = rng.sample(tuple(numbers), 2)
    if item == "numerals-to-99" and rng.coin():
        # The lesser has more ones: that is where the tens must be looked at.
        tens, more_tens = sorted(rng.sample(range(2, 10), 2))
        ones, more_ones = sorted(rng.sample(range(10), 2))
        one, two = rng.shuffled((10 * tens + more_ones, 10 * more_tens + ones))
    return one, two


def _why(one: int, two: int) -> str:
    if min(one, two) < 10:
        return ""
    parts = [f"{n} has {tens_and_ones(n)}" for n in (max(one, two), min(one, two))]
    return ": " + ", ".join(parts)


def _in_order(item: str, rng: SeededRandom) -> Draft:
    """Three numerals to put in order, least or greatest first."""
    numbers = _three(item, rng)
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
        watch_for=_WATCH[item],
        given={"cards": list(cards), "ask": first},
        picture=pictures.NumberRow(cards),
        guess=0.17,
    )


def _three(item: str, rng: SeededRandom) -> tuple[int, ...]:
    """Three different numbers of the item, as they lie: not in order already."""
    numbers = rng.sample(tuple(_NUMERALS[item]), 3)
    while list(numbers) in (sorted(numbers), sorted(numbers, reverse=True)):
        numbers = rng.sample(numbers, 3)
    return numbers


def _numeral_cues(numbers: Sequence[int]) -> tuple[Cue, Cue, Cue]:
    if max(numbers) <= 10:
        return (
            Cue("When you count, which do you meet first?"),
            Cue("Find each on the chart with a finger. How far along is it?", chart_to(10)),
            Cue("Count up from the start together, slowly. The child calls out each card we meet."),
        )
    tens = ", ".join(f"{number_word(n // 10)} {plural(n // 10, 'ten')} here" for n in numbers)
    model: Picture = chart_to(20) if max(numbers) <= 20 else chart_rows(min(numbers), max(numbers))
    return (
        Cue("Read each number. Which digit tells the tens?"),
        Cue("Find each on the chart with a finger. Further on, or further down, is more.", model),
        Cue(f"Lay bundles for each: “{tens}…” The child adds the loose ones and looks."),
    )


SKILL = Skill(
    id="compare",
    title="Compare",
    asks="more, fewer, the same; which number is greater",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "match-to-5",
            "match sets to five",
            ("match-to-5", "equal-to-5"),
            ("K.CC.C.6",),
            table="spoons, bowls",
        ),
        Level(
            "sets-to-10",
            "sets to ten",
            ("sets-to-10", "fewer", "spread"),
            ("K.CC.C.6",),
            guess=0.33,
            table="spoons, bowls",
        ),
        Level(
            "numerals-to-10",
            "numerals to ten",
            ("numerals-to-10",),
            ("K.CC.C.7",),
            stands_on=("numerals:to-10",),
            guess=0.33,
        ),
        Level(
            "numerals-to-20",
            "numerals to twenty",
            ("numerals-to-20",),
            ("1.NBT.B.3",),
            stands_on=("numerals:to-20",),
            guess=0.33,
        ),
        Level(
            "numerals-to-99",
            "numerals to ninety-nine",
            ("numerals-to-99", "thirteen-thirty-one", "nineteen-twenty-one"),
            ("1.NBT.B.3",),
            stands_on=("numerals:to-100",),
            guess=0.5,
            guesses=(("numerals-to-99", 0.33),),
        ),
    ),
    ask=ask,
)
