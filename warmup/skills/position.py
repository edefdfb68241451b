"""position: above, below, beside, behind, in front of, between; then left and right.

K.G.A.1: say where things are with place words (Common Core State Standards for Mathematics, 2010).
"""

from warmup.model import Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._place_words import ask_between, ask_place, ask_tell_where
from warmup.skills._sides import (
    ask_across_the_middle,
    ask_make_row,
    ask_name_neighbor,
    ask_own_side,
    ask_set_side,
    ask_to_one_side,
)
from warmup.skills.base import Draft, Level, Skill


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Place a thing, say where one is, or move one side of the body, as the item wants."""
    match item:
        case "place":
            return ask_place(rng)
        case "between":
            return ask_between(rng)
        case "tell-where":
            return ask_tell_where(rng)
        case "own-side":
            return ask_own_side(rng)
        case "to-one-side":
            return ask_to_one_side(rng)
        case "across-the-middle":
            return ask_across_the_middle(rng)
        case "set-left-or-right":
            return ask_set_side(rng)
        case "name-the-neighbor":
            return ask_name_neighbor(rng)
        case _:
            return ask_make_row(rng)


SKILL = Skill(
    id="position",
    title="Where things are",
    asks="above, below, beside, between; left and right",
    strand=Strand.SHAPE,
    levels=(
        Level(
            "place-words",
            "above, behind, beside, between",
            ("place", "between", "tell-where"),
            codes=("K.G.A.1",),
            table="cup, doll, box",
            guesses=(("tell-where", 0.2),),
            ends=("place", "between", "tell-where"),
        ),
        Level(
            "own-left-right",
            "own left and right",
            ("own-side", "to-one-side", "across-the-middle"),
            stands_on=("position:place-words",),
            seconds=20,
            guess=0.5,
            ends=("own-side", "to-one-side", "across-the-middle"),
        ),
        Level(
            "same-view",
            "left and right of things, both looking the same way",
            ("set-left-or-right", "name-the-neighbor", "make-a-row"),
            stands_on=("position:own-left-right",),
            guess=0.5,
            table="cup, spoon, box",
            ends=("set-left-or-right", "name-the-neighbor"),
        ),
    ),
    ask=ask,
)
