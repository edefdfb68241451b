"""hundred-chart: find a hidden number, its row and column, ten more, ten less.

K.CC.A.1: the count to one hundred; 1.NBT.C.5: ten more or ten less than a two-digit number, in the head
(Common Core State Standards for Mathematics, 2010). A chart to find hidden numbers in shows five rows at
most, so that its numerals can be read from across a table.
"""

from warmup import pictures
from warmup.draw import Draw
from warmup.morning import Cue, Morning, Strand
from warmup.skills._counting import steps
from warmup.skills._home import upper
from warmup.skills.base import Draft, Level, Skill
from warmup.words import count_words, number_word

_WATCH = {
    "hidden-to-20": "Counting from one each time. It works; starting at the row’s first number is shorter.",
    "hidden-to-50": "The right ones with another ten: the row next door was read.",
    "end-of-row": "Stopping at the edge, or going straight down from the row’s end.",
    "one-down": "One more in place of a row more: down is not plus one.",
    "hidden-to-100": "The right ones with another ten: the row next door was read.",
    "row-and-column": "Finding the row and then reading on from its start. One hand for each way helps.",
    "ten-more": "One more in place of ten, or counting on by ones. Ask what stays the same.",
    "ten-less": "Ten more in its place, or one less. Up the chart is less.",
}


def ask(item: str, _morning: Morning, draw: Draw) -> Draft:
    """Which number is under the card, at a place told, or ten away."""
    match item:
        case "hidden-to-20" | "hidden-to-50" | "hidden-to-100":
            return _hidden(item, draw)
        case "end-of-row":
            return _end_of_row(10 * draw.between(1, 4), draw)
        case "one-down":
            return _one_down(draw.between(2, 39), draw)
        case "row-and-column":
            return _row_and_column(10 * draw.between(1, 9), draw.between(2, 9), draw)
        case "ten-more":
            return _ten_away(draw.between(10, 90), 10, draw)
        case _:
            return _ten_away(draw.between(11, 99), -10, draw)


def _hidden(item: str, draw: Draw) -> Draft:
    first = 10 * draw.between(0, 5) + 1 if item == "hidden-to-100" else 1
    last = 20 if item == "hidden-to-20" else first + 49
    # Not the chart's ends, which its words name, nor ten, which they name as well; past the first row once
    # that is no news.
    low = 11 if item == "hidden-to-50" else first + 1
    number = draw.pick([n for n in range(low, last) if n != 10])
    chart = pictures.HundredChart(first, last, hidden=(number,))
    before = range(max(first, number - 3), number)
    row_start = number % 10 == 1
    return Draft(
        say=draw.way(
            "Which number hides under the card?",
            "The cat sits on a number. Which one is it?",
            "One square is bare. Which number goes there?",
            "Jam fell on the chart. Which number is under it?",
            "I put a cup on a number. Which one did I hide?",
        ),
        answer=number_word(number),
        working=f"row {_row(number)}: {number - 1}, {number}",
        cues=(
            Cue(
                "Look at the end of the row above. What comes after it?"
                if row_start
                else "Read the number on the square before it."
            ),
            Cue(
                f"Put a finger on {number_word(number - 1)}. Walk on a square.",
                pictures.HundredChart(first, last, hidden=(number,), pointed=(number - 1,)),
            ),
            Cue(f"Walk there together: “{count_words(before)}…” and let the child land."),
        ),
        watch_for=_WATCH[item],
        given={"first": first, "last": last, "hidden": number},
        picture=chart,
    )


def _end_of_row(end: int, draw: Draw) -> Draft:
    word, number = number_word(end), end + 1
    return Draft(
        say=draw.way(
            f"{upper(word)} ends its row. Which number starts the next row?",
            f"Walk along the row to {word}. Where do you step next?",
            f"A snail crawls past {word}. Which number is next on its way?",
            f"You read the chart like a book. What comes after {word}?",
        ),
        answer=number_word(number),
        working=f"{end - 1}, {end} | {number}: the row ends, the count goes on",
        cues=(
            Cue(f"Look away from the chart and count on from {number_word(end - 2)}."),
            Cue(
                f"Put a finger on {word}. Where does a book’s next line begin?",
                pictures.HundredChart(1, 50, hidden=(number,), pointed=(end,)),
            ),
            Cue(f"Walk it together: “{count_words(steps(end - 2, end))}…” and on to the row below."),
        ),
        watch_for=_WATCH["end-of-row"],
        given={"first": 1, "last": 50, "row_end": end},
        picture=pictures.HundredChart(1, 50, hidden=(number,)),
    )


def _one_down(above: int, draw: Draw) -> Draft:
    word, number = number_word(above), above + 10
    return Draft(
        say=draw.way(
            f"Put a finger on {word}. Which number hides just below it?",
            f"A frog sits on {word}. It drops down a row. Where now?",
            f"Look just under {word}. Which number is gone?",
            f"The ball is on {word}. It rolls down one row. Where now?",
        ),
        answer=number_word(number),
        working=f"{above} + 10 = {number}: a row down is ten more",
        cues=(
            Cue("How many squares are in a whole row?"),
            Cue(
                f"Put a finger on {word}. Slide it straight down a row.",
                pictures.HundredChart(1, 50, hidden=(number,), pointed=(above,)),
            ),
            Cue(f"Hop along together from {word}: “{count_words(steps(above + 1, above + 3))}…” ten hops."),
        ),
        watch_for=_WATCH["one-down"],
        given={"first": 1, "last": 50, "above": above},
        picture=pictures.HundredChart(1, 50, hidden=(number,)),
    )


def _row_and_column(tens: int, top: int, draw: Draw) -> Draft:
    start, number = tens + 1, tens + top
    row, column = number_word(start), number_word(top)
    return Draft(
        say=draw.way(
            f"Finger on {column}. Slide down to the row that starts at {row}. Which number hides?",
            f"My number is straight below {column}. Its row starts at {row}. Which one?",
            f"One row starts at {row}. A snail slides down to it from {column}. Where does it stop?",
            f"One row begins with {row}. Which number is in it, straight below {column}?",
        ),
        answer=number_word(number),
        working=f"{tens} and {top} = {number}",
        cues=(
            Cue(f"Put a finger on {row}. That is how its row starts."),
            Cue(
                f"Put one finger on {row} and one on {column}. Bring them together.",
                pictures.HundredChart(1, 100, hidden=(number,), pointed=(top, start)),
            ),
            Cue(f"Walk the row together: “{row}…” until you stand under {column}."),
        ),
        watch_for=_WATCH["row-and-column"],
        given={"row_start": start, "column": top},
        picture=pictures.HundredChart(1, 100, hidden=(number,)),
    )


def _ten_away(number: int, step: int, draw: Draw) -> Draft:
    word, more = number_word(number), step > 0
    answer, change = number + step, "more" if more else "less"
    side = "down" if more else "up"
    return Draft(
        say=draw.way(
            f"What is ten {change} than {word}?",
            f"You have {word} straws. {'You get' if more else 'I take'} ten. How many now?",
            f"We are on page {word}. Turn {'on' if more else 'back'} ten pages. Which page?",
            f"A frog sits on {word}. It jumps {side} a row. Where now?",
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
            "to-20",
            "1 to 20",
            ("hidden-to-20",),
            codes=("K.CC.A.1",),
            stands_on=("numerals:to-20",),
            table="printed chart",
        ),
        Level(
            "to-50",
            "to 50",
            ("hidden-to-50", "end-of-row", "one-down"),
            codes=("K.CC.A.1",),
            stands_on=("numerals:to-50",),
            table="printed chart",
        ),
        Level(
            "hidden-to-100",
            "hidden, to 100",
            ("hidden-to-100", "row-and-column"),
            codes=("K.CC.A.1",),
            stands_on=("numerals:to-100",),
            table="printed chart",
        ),
        Level(
            "ten-more-or-less",
            "ten more or ten less",
            ("ten-more", "ten-less"),
            codes=("1.NBT.C.5",),
            table="printed chart",
        ),
    ),
    ask=ask,
)
