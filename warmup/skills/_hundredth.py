"""The hundredth school day: what the skill `school-day` asks on the way to it, and on the day itself."""

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning
from warmup.randomness import SeededRandom
from warmup.skills._number import chart_rows
from warmup.skills.base import Draft


def to_the_hundredth(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """How many school days are left to the hundredth."""
    number = morning.school_day
    word, more = number_word(number), 100 - number
    page = chart_rows(number, 100, pointed=(number,))
    first = number_word(number + 1)
    return Draft(
        say=rng.phrasing(
            f"We have had {word} school days. How many more to one hundred?",
            f"We have {word} straws. How many more make one hundred?",
            f"Count on from {word} to one hundred. How many school days?",
        ),
        answer=number_word(more),
        accept=(
            f"{number_word(more)} more",
            *(f"{number_word(more)} {plural(more, noun)}" for noun in ("day", "school day", "straw")),
        ),
        working=f"100 − {number} = {more}",
        cues=(
            Cue(f"Find {word} on the chart. How does its row end?"),
            Cue(f"Finger on {word}. Hop to the last square and count the hops.", page),
            Cue(
                f"Put up a finger together: “{first}…” The child keeps going to one hundred."
                if more > 1
                else "Put up a finger for the next school day. The child says if that is enough."
            ),
        ),
        watch_for=watch_for,
        given={"known": number, "to": 100},
        picture=page,
    )


def hundred_today(rng: SeededRandom, watch_for: str) -> Draft:
    """The day itself: what a hundred is made of."""
    tens = 100 // 10
    return Draft(
        say=rng.phrasing(
            "Today is school day one hundred! How many full bundles is that?",
            "We have one hundred straws today! How many bundles is that?",
            "It’s school day one hundred! Count by tens. How many tens?",
        ),
        answer=number_word(tens),
        accept=(f"{number_word(tens)} bundles", f"{number_word(tens)} tens"),
        working=f"100 = {tens} × 10",
        cues=(
            Cue("A band holds as many straws as you have fingers. Count the bands."),
            Cue("Point at the bundles in two rows. How many in a row?", pictures.Bundles(tens, 0)),
            Cue("Count by tens together, a finger each time. The child stops at one hundred."),
        ),
        watch_for=watch_for,
        given={"straws": 100},
    )
