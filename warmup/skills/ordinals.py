"""ordinals: who is first, third, last.

Common practice in kindergarten rooms, no source for the levels; an early-learning framework (Head Start Early
Learning Outcomes Framework, at 60 months) has ordinals to tenth.
"""

from typing import Literal

from warmup import pictures
from warmup.english import MONTHS, WEEKDAYS, number_word, ordinal_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

Side = Literal["left", "right"]

_WATCH = {
    "to-third": "Counting from the end that is nearer. The door says which end is first.",
    "which-end": "First stays at the old end, though the door has moved.",
    "to-tenth": "Saying the counting word. Say it back with the ending of a place.",
    "fifth": "“Fiveth.” The middle of the word changes as well as its end.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A place in a line at a door, or in the days of a week or the months of a year."""
    match item:
        case "to-third" | "which-end":
            count = rng.between(3, 5)
            return _point(item, count, rng.pick((1, 2, 3, count)), rng)
        case "fifth":
            place = rng.pick((4, 5))
            return _point(item, rng.between(5, 6), place, rng) if rng.coin() else _hat(item, place, 7, rng)
        case _:
            place = rng.between(4, 10 if risen(morning, 22) else 8)
    match rng.below(3):
        case 0 if place <= 7:
            return _of_days(place, rng)
        case 0 | 1:
            return _of_list("months", MONTHS, place, rng)
        case _:
            return _hat(item, place, 10, rng)


def _point(item: str, count: int, place: int, rng: SeededRandom) -> Draft:
    """Some in line at a door; the child touches the one said."""
    front = _side(rng)
    # The last of three is the third as well, and that of five the fifth: asked for by either name.
    by_place = item == "fifth" or (count == 3 and rng.coin())
    name = "last" if place == count and not by_place else ordinal_word(place)
    say = (
        rng.phrasing(
            f"Find the door first. Who is {name} in line?",
            f"The line starts at the door. Touch the {name} one.",
            f"Look where the door is. Point to the {name} one.",
        )
        if item == "which-end"
        else rng.phrasing(
            f"They wait in line at the door. Who is {name}?",
            f"Touch the {name} one in line.",
            f"Who goes in the door {name}? Point.",
            f"Put your finger on the {name} one in line.",
        )
    )
    begin = (
        "Open the door with a finger. Who is nearest to it? Let the child show who goes in."
        if place == 1
        else f"Walk a finger from the door, and stop at each. The child says when it is {name}."
    )
    return Draft(
        say=say,
        answer=f"the {ordinal_word(place)} from the {front}",
        accept=(f"the {ordinal_word(count + 1 - place)} from the {_other(front)}",),
        working=f"{place}{_ending(place)} of {count}, counted from the door at the {front}",
        cues=(
            Cue("Find the door. Who could go in before all the rest?"),
            Cue("Line up a few toys at a real door, and look at both lines."),
            Cue(begin),
        ),
        watch_for=_WATCH[item],
        given={"count": count, "front": front, "place": place, "name": name},
        picture=pictures.ToyLine(count, front),
        guess=1 / count if item == "fifth" else 0.25,
    )


def _hat(item: str, place: int, most: int, rng: SeededRandom) -> Draft:
    """A line with one hat in it: the child tells its place, from the door."""
    front = _side(rng)
    count = rng.between(max(place, 6), most)
    return Draft(
        say=rng.phrasing(
            "Start at the door. What place in line is the hat?",
            "Count from the door: first, second, third. Which has the hat?",
            "Somebody in line has a hat. What place is that?",
            "Count from the door. What place is the hat in?",
        ),
        answer=ordinal_word(place),
        accept=(f"the {ordinal_word(place)}",),
        working=f"counted from the door at the {front}: {place}{_ending(place)} of {count}",
        cues=(
            Cue("Start with the one at the door, not at the end."),
            Cue("Touch each head from the door on. Say the line words: first, second, third…"),
            Cue("Walk a finger along and say them together; stop at the hat, and the child ends it."),
        ),
        watch_for=_WATCH[item],
        given={"count": count, "front": front, "place": place},
        picture=pictures.ToyLine(count, front, (place,)),
        guess=0.1,
    )


def _of_days(place: int, rng: SeededRandom) -> Draft:
    """The days of a week that starts on Monday or on Sunday, whichever the words say."""
    at = rng.pick((0, 6))
    return _of_list("days", WEEKDAYS[at:] + WEEKDAYS[:at], place, rng)


def _of_list(kind: str, names: tuple[str, ...], place: int, rng: SeededRandom) -> Draft:
    """Names said in order; which one has this place."""
    first, word, one = names[0], ordinal_word(place), kind[:-1]
    begun = ", ".join(names[:2])
    return Draft(
        say=rng.phrasing(
            f"{first} is the first {one}. Which {one} is {word}?"
            if kind == "months"
            else f"Start the week on {first}. Which {one} is {word}?",
            f"Say the {kind}, starting at {first}. Which is {word}?",
            f"If {first} is first, which {one} is {word}?",
        ),
        answer=names[place - 1],
        working=", ".join(f"{n} {name}" for n, name in enumerate(names[:place], start=1)),
        cues=(
            Cue(f"Put up a finger for {first}. Which comes second?"),
            Cue(f"A finger for each {one}, from {first} on, until {number_word(place)} are up."),
            Cue(f"Begin together: “{begun}…” A finger each. The child goes on."),
        ),
        watch_for=f"Starting one late: {first} is left out of the count, so it comes out one too far.",
        given={"names": list(names), "place": place},
        table="",
    )


def _side(rng: SeededRandom) -> Side:
    return "left" if rng.coin() else "right"


def _other(side: Side) -> Side:
    return "right" if side == "left" else "left"


def _ending(number: int) -> str:
    """The letters after the figures: 1st, 2nd, 3rd, 4th, but 11th, 12th, 13th."""
    return "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")


SKILL = Skill(
    id="ordinals",
    title="Ordinals",
    asks="who is first, third, last",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "to-fifth",
            "first to fifth, and last",
            ("to-third", "which-end", "fifth"),
            seconds=20,
            guess=0.25,
            guesses=(("fifth", 0.14),),
            table="toys in a line",
            ends=("to-third", "which-end", "fifth"),
        ),
        Level(
            "to-tenth",
            "to tenth",
            ("to-tenth",),
            stands_on=("ordinals:to-fifth",),
            guess=0.1,
            table="toys in a line",
        ),
    ),
    ask=ask,
)
