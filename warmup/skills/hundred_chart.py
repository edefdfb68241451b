"""hundred-chart: find a hidden number, its row and column, ten more, ten less.

K.CC.A.1: the count to one hundred; 1.NBT.C.5: ten more or ten less than a two-digit number, in the head
(Common Core State Standards for Mathematics, 2010). A chart to find hidden numbers in shows five rows at
most, so that its numerals can be read from across a table.
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._counting import steps
from warmup.skills._home import upper
from warmup.skills._rising import grown
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "hidden-to-50": "The right ones with another ten: the row next door was read.",
    "end-of-row": "Stopping at the edge, or going straight down from the row’s end.",
    "one-down": "One more instead of ten more: down is not plus one.",
    "hidden-to-100": "The right ones with another ten: the row next door was read.",
    "row-and-column": "Counting every square from one. Reading along the row, or down, is shorter.",
    "ten-more": "One more instead of ten, or counting on by ones. Ask what stays the same.",
    "ten-less": "Ten more, or one less. Up the chart is less.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Which number is under the card, at a place told, or ten away."""
    match item:
        case "hidden-to-50":
            return _hidden(item, 1, rng)
        case "hidden-to-100":
            # The chart's first row: higher from week to week, and from the start not the one to fifty.
            return _hidden(item, 10 * rng.between(1, grown(1, 5, morning.week, opens=25)) + 1, rng)
        case "end-of-row":
            return _end_of_row(10 * rng.between(1, 4), rng)
        case "one-down":
            return _one_down(rng.between(2, 39), rng)
        case "row-and-column":
            return _row_and_column(10 * rng.between(1, 9), rng.between(2, 9), rng)
        case "ten-more":
            return _ten_away(rng.between(10, 90), 10, rng)
        case _:
            return _ten_away(rng.between(11, 99), -10, rng)


def _hidden(item: str, first: int, rng: SeededRandom) -> Draft:
    last = first + 49
    # Not the chart's ends, which its words name; past the first row, which is no news.
    number = rng.between(max(11, first + 1), last - 1)
    chart = pictures.HundredChart(first, last, hidden=(number,))
    before = range(max(first, number - 3), number)
    row_start = number % 10 == 1
    return Draft(
        say=rng.phrasing(
            "What number is missing on the chart?",
            "One square is empty. What number goes there?",
            "Find the empty square. What number goes in it?",
        ),
        answer=number_word(number),
        working=f"row {_row(number)}: {number - 1}, {number}",
        cues=(
            Cue(
                "Look at the end of the row above. What comes after that?"
                if row_start
                else "Read the number on the square before it."
            ),
            Cue(
                f"Put a finger on {number_word(number - 1)}. Move on one square.",
                pictures.HundredChart(first, last, hidden=(number,), pointed=(number - 1,)),
            ),
            Cue(f"Walk there together: “{count_words(before)}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"first": first, "last": last, "hidden": number},
        picture=chart,
    )


def _end_of_row(end: int, rng: SeededRandom) -> Draft:
    word, number = number_word(end), end + 1
    return Draft(
        say=rng.phrasing(
            f"{upper(word)} ends its row. Which number starts the next row?",
            f"Find {word} on the chart. What number comes next?",
            f"What number comes after {word} on the chart?",
        ),
        answer=number_word(number),
        working=f"{end - 1}, {end} | {number}: the row ends, the count keeps going",
        cues=(
            Cue(f"Look away from the chart and count on from {number_word(end - 2)}."),
            Cue(
                f"Put a finger on {word}. In a book, where does the next line start?",
                pictures.HundredChart(1, 50, hidden=(number,), pointed=(end,)),
            ),
            Cue(f"Together: “{count_words(steps(end - 2, end))}…” The child keeps going into the next row."),
        ),
        watch_for=_WATCH["end-of-row"],
        given={"first": 1, "last": 50, "row_end": end},
        picture=pictures.HundredChart(1, 50, hidden=(number,)),
    )


def _one_down(above: int, rng: SeededRandom) -> Draft:
    word, number = number_word(above), above + 10
    return Draft(
        say=rng.phrasing(
            f"Put a finger on {word}. What number is just below it?",
            f"Find {word}. What number is missing just below it?",
            f"Start at {word}. Go down one square. What number is it?",
        ),
        answer=number_word(number),
        working=f"{above} + 10 = {number}: a row down is ten more",
        cues=(
            Cue("How many squares are in a whole row?"),
            Cue(
                f"Put a finger on {word}. Slide it straight down one row.",
                pictures.HundredChart(1, 50, hidden=(number,), pointed=(above,)),
            ),
            Cue(f"Hop along together from {word}: “{count_words(steps(above + 1, above + 3))}…” ten hops."),
        ),
        watch_for=_WATCH["one-down"],
        given={"first": 1, "last": 50, "above": above},
        picture=pictures.HundredChart(1, 50, hidden=(number,)),
    )


def _row_and_column(tens: int, top: int, rng: SeededRandom) -> Draft:
    start, number = tens + 1, tens + top
    row, column = number_word(start), number_word(top)
    return Draft(
        say=rng.phrasing(
            f"Find {row}. Slide right to the empty square. What number?",
            f"Find {column}. Slide down to the empty square. What number?",
            f"The empty square is below {column}. What number goes there?",
        ),
        answer=number_word(number),
        working=f"{tens} and {top} = {number}",
        cues=(
            Cue(f"Put a finger on {row}. Its row has the empty square."),
            Cue(
                f"Put one finger on {row} and one on {column}. Bring them together.",
                pictures.HundredChart(1, 100, hidden=(number,), pointed=(top, start)),
            ),
            Cue(f"Walk along the row together: “{row}…” The child keeps going to the empty square."),
        ),
        watch_for=_WATCH["row-and-column"],
        given={"row_start": start, "column": top},
        picture=pictures.HundredChart(1, 100, hidden=(number,)),
    )


def _ten_away(number: int, step: int, rng: SeededRandom) -> Draft:
    word, more = number_word(number), step > 0
    answer, change = number + step, "more" if more else "less"
    side = "down" if more else "up"
    return Draft(
        say=rng.phrasing(
            f"What is ten {change} than {word}?",
            f"Start at {word}. {'Add' if more else 'Take away'} ten. What number is it?",
            f"Say the number that is ten {change} than {word}.",
        ),
        answer=number_word(answer),
        working=f"{number} {'+' if more else '−'} 10 = {answer}: only the tens change",
        cues=(
            Cue(f"{word.capitalize()} has how many tens? {'Add' if more else 'Take away'} a bundle."),
            Cue(
                f"Put a finger on {word}. Slide it {side} a row.",
                pictures.HundredChart(1, 100, hidden=(answer,), pointed=(number,)),
            ),
            Cue(_column_walk(number, step)),
        ),
        watch_for=_WATCH["ten-more" if more else "ten-less"],
        given={"number": number, "step": step},
    )


def _column_walk(number: int, step: int) -> str:
    """The way down or up the column to the number; the answer comes next."""
    way = [n for n in (number - 2 * step, number - step, number) if 0 < n <= 100]
    if len(way) == 1:
        return f"Count {'on' if step > 0 else 'back'} ten together from {number_word(number)}, on fingers."
    return f"Walk the column together: “{count_words(way)}…” The child keeps going."


def _row(number: int) -> int:
    return (number - 1) // 10 + 1


SKILL = Skill(
    id="hundred-chart",
    title="Hundred chart",
    asks="find a hidden number, its row and column, ten more, ten less",
    strand=Strand.COUNTING,
    levels=(
        Level(
            "to-100",
            "hidden, to 100",
            ("hidden-to-50", "hidden-to-100", "end-of-row", "one-down", "row-and-column"),
            codes=("K.CC.A.1",),
            stands_on=("numerals:to-100", "by-tens:to-100"),
            table="printed chart",
        ),
        Level(
            "ten-more-or-less",
            "ten more or ten less",
            ("ten-more", "ten-less"),
            codes=("1.NBT.C.5",),
            stands_on=("hundred-chart:to-100", "place-value:to-99"),
            waits_on=("place-value/bundle-is-ten",),
            table="printed chart",
        ),
    ),
    ask=ask,
)
