"""how-many: count a set, count out a number.

K.CC.B.4: counting tells how many, one word to a thing (4.A), and the last word is the size of the lot
however it lies (4.B). K.CC.B.5: count up to 20 things in a line, an array or a ring, up to 10 in a
scatter, and count out a number from 1 to 20 (Common Core State Standards for Mathematics, 2010).
Longer lines, rows and rings begin at 6: up to five are seen at a glance (common practice, no source).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import BEAN, BLOCK, BOOK, PEG, ROLL, SOCK, SPOON, TO_HOLD, Noun
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

# Things that are round, so that a disc in a picture can stand for one.
_ROUND = (ROLL, Noun("plum", "plums"), Noun("ball", "balls"), Noun("plate", "plates"), Noun("bead", "beads"))

_CRAYON = Noun("crayon", "crayons")
# What a house has up to fourteen of, and what it has two dozen of.
_MANY_AT_HOME = (SPOON, SOCK, BLOCK, PEG, BOOK, _CRAYON)
_DOZENS_AT_HOME = (BLOCK, PEG, BEAN, _CRAYON)


class _Range(NamedTuple):
    """The fewest to count, the most while the level is new (it opens in week ``opens``), the most later."""

    fewest: int
    at_first: int
    most: int
    opens: int

    def drawn(self, morning: Morning, rng: SeededRandom) -> int:
        return rng.between(self.fewest, self.most if risen(morning, self.opens) else self.at_first)


_RANGES = {
    "line": _Range(2, 5, 5, 1),
    "so-how-many": _Range(3, 5, 5, 1),
    "count-out": _Range(2, 5, 10, 3),
    "line-to-10": _Range(6, 8, 10, 3),
    "rows": _Range(6, 12, 20, 10),
    "ring": _Range(6, 12, 20, 12),
    "scatter": _Range(4, 7, 10, 12),
    "count-out-to-20": _Range(11, 14, 20, 16),
}

_WATCH = {
    "line": "Two words for one thing, or one skipped. Let the finger set the pace.",
    "so-how-many": "Counting them all over again, or a guess. The last number said tells how many.",
    "line-to-10": "A finger faster than the words. Slow down, and let each get its own touch.",
    "rows": "A row left out, or one touched twice. Let the finger finish a row before the next.",
    "ring": "Going past where the ring began. Ask where the first touch was.",
    "scatter": "One missed or touched twice. Ask how to tell which are done.",
    "count-out": "Running past the number: the hand goes on when the count should stop.",
    "count-out-to-20": "Losing the number on the way. Let the child say it once more before going on.",
    "zero": "Saying one, or a shrug. Ask again, and give it time.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count what the picture shows, lay out a number, or tell what is left when all are gone."""
    match item:
        case "count-out" | "count-out-to-20":
            return _count_out(item, morning, rng)
        case "zero":
            return _none_left(rng)
        case "so-how-many":
            return _so_how_many(morning, rng)
        case _:
            return _count(item, morning, rng)


def _count(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """How many lie in this layout; the answer is the last number said."""
    layout = "line" if item == "line-to-10" else item
    count, noun, seed = _RANGES[item].drawn(morning, rng), rng.pick(_ROUND), rng.below(1000)
    figures = ", ".join(map(str, range(1, count + 1))) if count <= 5 else f"1, 2, 3 … {count}"
    picture = pictures.Counters(count, layout, what=noun.many, seed=seed if layout == "scatter" else 0)
    return Draft(
        say=_say_count(layout, noun, morning.animal, rng),
        answer=number_word(count),
        working=f"{figures}: the last number said",
        cues=_cues_count(layout, count, noun),
        watch_for=_WATCH[item],
        given={"count": count, "layout": layout, "what": noun.many, "seed": picture.seed},
        picture=picture,
        table="",
    )


def _so_how_many(morning: Morning, rng: SeededRandom) -> Draft:
    """Counted aloud, then covered: the last number said must tell how many, with nothing left to count."""
    count, noun = _RANGES["so-how-many"].drawn(morning, rng), rng.pick(_ROUND)
    return Draft(
        say=rng.phrasing(
            f"Count the {noun.many}. Now they hide. So how many were there?",
            f"Touch and count the {noun.many}. Then I hide them. How many are there?",
            f"Count these {noun.many}. Shut your eyes. How many {noun.many} are there?",
        ),
        answer=number_word(count),
        working=f"{', '.join(map(str, range(1, count + 1)))}: the last number said",
        cues=(
            Cue("What was the last number you said?"),
            Cue(f"Uncover the {noun.many}. Count them once more. Then ask with a hand over them."),
            Cue("Uncover and count together, “one, two…”. The child says the last one extra loud."),
        ),
        watch_for=_WATCH["so-how-many"],
        given={"count": count, "layout": "line", "what": noun.many, "seed": 0},
        picture=pictures.Counters(count, "line", what=noun.many),
        do=f"Keep a hand ready to cover the {noun.many} once they are counted.",
    )


def _say_count(layout: str, noun: Noun, animal: str, rng: SeededRandom) -> Phrasing:
    many, one = noun.many, noun.one
    match layout:
        case "line":
            return rng.phrasing(
                f"How many {many} are in this line?",
                f"Touch each {one} as you count. How many are there?",
                f"{animal} wants to know how many {many} there are. Tell {animal}.",
                f"Count the {many}. How many are there?",
                f"Start at the first {one}. Count to the end. How many?",
            )
        case "rows":
            return rng.phrasing(
                f"The {many} are in rows. How many are there?",
                f"Count every row. How many {many} are there?",
                f"How many {many} do you count in these rows?",
            )
        case "ring":
            return rng.phrasing(
                f"The {many} go around in a ring. How many are there?",
                f"Go around the ring with your finger. How many {many}?",
                f"Count all the {many} in the ring. How many are there?",
            )
        case _:
            return rng.phrasing(
                f"The {many} are all mixed up. How many are there?",
                f"Touch each one of the {many} once. How many are there?",
                f"Count all the {many}. How many are there?",
            )


def _cues_count(layout: str, count: int, noun: Noun) -> tuple[Cue, Cue, Cue]:
    rows = pictures.Counters(count, "rows", what=noun.many)
    match layout:
        case "line":
            first = f"Put a finger on each {noun.one} and say its number."
            second = Cue("Point along the line from the left, slowly. Stop under the last.")
        case "rows":
            first = "Start with the top row. Go along it with a finger."
            second = Cue("Lay a strip of paper under the top row. Slide it down row by row.")
        case "ring":
            first = f"Which {noun.one} will you start with? Remember it."
            second = Cue(
                f"Rest your own finger by the first {noun.one}. Or count the same in short rows.", rows
            )
        case _:
            first = "Start at the top and work down."
            second = Cue(f"Cross off each {noun.one} in the air. Or count the same in short rows.", rows)
    begin = "“one…”" if count == 2 else "“one, two…”"
    third = f"Touch the first {noun.named(2)} together, {begin} and let the child go on."
    return Cue(first), second, Cue(third)


def _count_out(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Lay out a number of things; the answer says when it is right.

    Of the things there are more on the table than are asked for, so only what a house has many of will do.
    """
    many = item == "count-out-to-20"
    count = _RANGES[item].drawn(morning, rng)
    noun, animal = rng.pick(_DOZENS_AT_HOME if many else _MANY_AT_HOME), morning.animal
    wanted = noun.of(count)
    return Draft(
        say=rng.phrasing(
            f"Please give me {wanted}.",
            f"{animal} needs {wanted}. Count them out.",
            f"Put {wanted} in a row. Count as you go.",
            f"I need {wanted}. Count them out, please.",
        ),
        answer=f"{wanted} laid out, no more and no fewer",
        working=f"1 … {count}, and stop at {count}",
        cues=(
            Cue(f"Say it again: {wanted}. Ask which number to stop at."),
            Cue(f"Line up the first ten. Ask how far it still is to {number_word(count)}.")
            if many
            else Cue(f"Hold up {number_word(count)} fingers and leave them up while the child counts."),
            Cue(f"Lay the first {noun.one} together, “one…”. The child lays the rest."),
        ),
        watch_for=_WATCH[item],
        given={"count": count, "what": noun.many},
        table=f"{count + 4} {noun.many} or the like",
    )


def _none_left(rng: SeededRandom) -> Draft:
    """All are taken away again: none are left, and zero says so."""
    start, noun = rng.between(2, 6), rng.pick(TO_HOLD)
    away = start
    left = start - away
    some = noun.of(start)
    return Draft(
        say=rng.phrasing(
            f"You have {some}. You give them all away. How many are left?",
            f"Put out {some}. Now put them all away. How many are out?",
            f"Take {some}. Give them all to me. How many do you have?",
        ),
        answer=number_word(left),
        accept=("none", "nothing", f"no {noun.many}"),
        working=f"{start} − {away} = {left}",
        cues=(
            Cue(f"Do it with real {noun.many} and look."),
            Cue("Hold up a closed fist. Ask how many fingers stand up."),
            Cue("Fold fingers down together, “two, one…”. The child says what comes next."),
        ),
        watch_for=_WATCH["zero"],
        given={"start": start, "away": away, "what": noun.many},
        table=f"{start} {noun.many}",
    )


SKILL = Skill(
    id="how-many",
    title="How many",
    asks="count a set and say how many; count out a number",
    strand=Strand.NUMBER,
    ladder=("line-to-5", "count-out-to-10", "rows-to-20", "ring-and-scatter", "count-out-to-20"),
    levels=(
        Level(
            "line-to-5",
            "a line to five",
            ("line",),
            ("so-how-many",),
            codes=("K.CC.B.4", "K.CC.B.4.A", "K.CC.B.4.B", "K.CC.B.5"),
            seconds=20,
            ends=("line",),
        ),
        Level(
            "count-out-to-10",
            "a line to ten, count out to ten",
            ("count-out", "line-to-10"),
            ("zero",),
            codes=("K.CC.B.4", "K.CC.B.4.A", "K.CC.B.5"),
            stands_on=("how-many:line-to-5", "count:to-20"),
            table="things to count out",
        ),
        Level(
            "rows-to-20",
            "rows to twenty",
            ("rows",),
            codes=("K.CC.B.4", "K.CC.B.5"),
            stands_on=("how-many:count-out-to-10",),
            seconds=60,
        ),
        Level(
            "ring-and-scatter",
            "a ring to twenty, a scatter to ten",
            ("ring",),
            ("scatter",),
            codes=("K.CC.B.4", "K.CC.B.4.B", "K.CC.B.5"),
            stands_on=("how-many:rows-to-20",),
            seconds=60,
        ),
        Level(
            "count-out-to-20",
            "count out to twenty",
            ("count-out-to-20",),
            codes=("K.CC.B.4", "K.CC.B.5"),
            stands_on=("how-many:ring-and-scatter",),
            waits_on=("how-many/scatter",),
            seconds=60,
            table="twenty-four things to count out",
        ),
    ),
    ask=ask,
)
