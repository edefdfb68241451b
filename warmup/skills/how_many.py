"""how-many: count a set, count out a number.

K.CC.B.4: counting tells how many. K.CC.B.5: count up to 20 things in a line, an array or a ring, up to
10 in a scatter, and count out a number from 1 to 20 (Common Core State Standards for Mathematics, 2010).
Rows and rings begin at 6: up to five are seen at a glance, not counted (common practice, no source).
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import BLOCK, BOOK, PEG, ROLL, SOCK, SPOON, TO_HOLD, Noun
from warmup.skills.base import Draft, Level, Skill

# Things that are round, so that a disc in a picture can stand for one.
_ROUND = (ROLL, Noun("plum", "plums"), Noun("ball", "balls"), Noun("plate", "plates"), Noun("bead", "beads"))

# The fewest and the most there are to count in a layout.
_RANGES = {"line": (2, 5), "rows": (6, 20), "ring": (6, 20), "scatter": (4, 10)}
_MANY_AT_HOME = (SPOON, SOCK, BLOCK, PEG, BOOK, Noun("crayon", "crayons"))

_WATCH = {
    "line": "Counting all over again when asked how many. Ask “So how many?” and wait.",
    "rows": "A row left out, or one touched twice. Let the finger finish a row before the next.",
    "ring": "Going past where the ring began. Ask where the first touch was.",
    "scatter": "One missed or touched twice. Ask how to tell which are done.",
    "count-out": "Running past the number: the hand goes on when the count should stop.",
    "zero": "Saying one, or a shrug. Ask again, and give it time.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count what the picture shows, lay out a number, or tell what is left when all are gone."""
    match item:
        case "count-out":
            return _count_out(morning.animal, rng)
        case "zero":
            return _none_left(rng)
        case _:
            return _count(item, morning.animal, rng)


def _count(layout: str, animal: str, rng: SeededRandom) -> Draft:
    """How many lie in this layout; the answer is the last number said."""
    count, noun, seed = rng.between(*_RANGES[layout]), rng.pick(_ROUND), rng.below(1000)
    figures = ", ".join(map(str, range(1, count + 1))) if count <= 5 else f"1, 2, 3 … {count}"
    picture = pictures.Counters(count, layout, what=noun.many, seed=seed if layout == "scatter" else 0)
    return Draft(
        say=_say_count(layout, noun, animal, rng),
        answer=number_word(count),
        working=f"{figures}: the last number said",
        cues=_cues_count(layout, count, noun),
        watch_for=_WATCH[layout],
        given={"count": count, "layout": layout, "what": noun.many, "seed": picture.seed},
        picture=picture,
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
                f"A cat ran through the {many}. How many are there?",
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


def _count_out(animal: str, rng: SeededRandom) -> Draft:
    """Lay out a number of things; the answer says when it is right.

    Of the things there are more on the table than are asked for, so only what a house has many of will do.
    """
    count, noun = rng.between(2, 10), rng.pick(_MANY_AT_HOME)
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
            Cue(f"Hold up {number_word(count)} fingers and leave them up while the child counts."),
            Cue(f"Lay the first {noun.one} together, “one…”. The child lays the rest."),
        ),
        watch_for=_WATCH["count-out"],
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
    asks="count a set; count out a number",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "line-to-5",
            "a line to five",
            ("line",),
            codes=("K.CC.B.4",),
            toward=("K.CC.B.5",),
            seconds=20,
        ),
        Level(
            "count-out-to-10",
            "count out to ten",
            ("count-out", "zero"),
            codes=("K.CC.B.4",),
            toward=("K.CC.B.5",),
            table="things to count out",
        ),
        Level(
            "rows-to-20",
            "rows to twenty",
            ("rows",),
            codes=("K.CC.B.4", "K.CC.B.5"),
            seconds=60,
        ),
        Level(
            "ring-and-scatter",
            "a ring to twenty, a scatter to ten",
            ("ring", "scatter"),
            codes=("K.CC.B.4", "K.CC.B.5"),
            seconds=60,
        ),
    ),
    ask=ask,
)
