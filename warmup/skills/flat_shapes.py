"""flat-shapes: name them, find them, count their sides, make one, put two together.

K.G.A.1 and K.G.A.2: shapes in the world around, and their right names however they are turned; K.G.B.4:
sides and corners; K.G.B.5: shapes made of sticks; K.G.B.6: small shapes make larger ones (Common Core
State Standards for Mathematics, 2010). A square is a rectangle too, and no flat shape here is called a
diamond (Virginia Curriculum Framework 2016, 2.13 and K.10).
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._geometry import clean_turns, count_sides, rule
from warmup.skills._joining import ask_build, ask_see_the_two, ask_slide_together
from warmup.skills._straight_sides import (
    ask_hexagon,
    ask_not_closed,
    ask_of_straws,
    ask_sides,
    ask_square_is_a_rectangle,
    called,
    find_in_row,
)
from warmup.skills.base import Draft, Level, Skill

_FOUR = ("circle", "triangle", "square", "rectangle")
_FOUND = {
    "circle": ("a plate", "a lid", "a clock face", "the rim of a cup"),
    "triangle": ("a yield sign", "a flag with three sides", "a napkin folded corner to corner"),
    "square": ("a square napkin", "a tile", "a sticky note"),
    "rectangle": ("a door", "a book", "a window", "a drawer", "anything square"),
}

_TO_TURN = (("triangle", "right triangle"), ("square",), ("rectangle", "thin rectangle"))


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Name, find, draw, count or join, as the item wants."""
    match item:
        case "name":
            return _name(rng.pick(_FOUR), rng.pick((0, 90)), rng)
        case "find-in-the-room":
            return _find(rng)
        case "draw-in-the-air":
            return _draw_it(rng)
        case "turned":
            # A name first, so that each comes as often, then a form of it.
            figure = rng.pick(rng.pick(_TO_TURN))
            return _name(figure, rng.pick(clean_turns(figure, range(20, 341, 5))), rng)
        case "tilted-square":
            return _tilted_square(morning.animal, rng)
        case "thin-triangle":
            return _thin_triangle(rng)
        case "count-sides":
            return ask_sides(rng)
        case "not-closed":
            return ask_not_closed(rng)
        case "square-is-a-rectangle":
            return ask_square_is_a_rectangle(rng)
        case "hexagon":
            return ask_hexagon(rng)
        case "make-of-straws":
            return ask_of_straws(rng)
        case "slide-together":
            return ask_slide_together(rng)
        case "see-the-two":
            return ask_see_the_two(rng)
        case _:
            return ask_build(morning, rng)


# ---- names -----------------------------------------------------------------------------------------


def _name(figure: str, turn: int, rng: SeededRandom) -> Draft:
    """The name of the shape in the picture."""
    name = called(figure)
    sides = count_sides(figure)
    tilted = turn % 90 != 0
    watch = {
        "circle": "“Ball” or “round”. Round is true; ask for the name of the flat shape.",
        "triangle": "“Arrow” or “roof”. Count the sides together.",
        "square": "“Rectangle” is true; ask for the name that also tells its sides are equal."
        + (" For “diamond”, turn your head until it sits flat." if tilted else ""),
        "rectangle": "“Square.” Two sides are longer than the others."
        + (" Turning it changes nothing." if tilted else ""),
    }[name]
    return Draft(
        say=rng.phrasing(
            "What is the name of this shape?",
            "Look here. What shape is it?",
            "Tell me what this shape is called.",
            "What do we call this shape?",
        ),
        answer=name,
        accept=(f"a {name}", *(("rectangle: true of every square",) if name == "square" else ())),
        working=f"{name}: {rule(name)}",
        cues=(
            Cue("Trace around it with a finger. What do you feel?" if not tilted else _TURN_HEAD),
            Cue(
                "Run a finger around it. Is there a corner to bump into?"
                if not sides
                else "Touch each corner and count. Are the sides all as long as each other?"
            ),
            Cue("Draw it big in the air together. The child says what we drew."),
        ),
        watch_for=watch,
        given={"figure": figure, "turn": turn},
        picture=pictures.FlatShape(figure, turn),
        guess=0.33 if tilted else 0.25,
    )


_TURN_HEAD = "Lean your head until it sits flat. Is it a shape you know?"


def _find(rng: SeededRandom) -> Draft:
    name = rng.pick(_FOUR)
    also = " (a square counts: it is a rectangle too)" if name == "rectangle" else ""
    return Draft(
        say=rng.phrasing(
            f"Find something in this room shaped like a {name}.",
            f"Go and touch a {name} in this room.",
            f"A {name} is hiding in this room. Where is it?",
            f"Walk around with me. Stop at a {name}.",
        ),
        answer=f"anything with this shape: {rule(name)}{also}",
        accept=_FOUND[name],
        working=f"{name}: {rule(name)}",
        cues=(
            Cue("Draw the shape in the air with your finger. Now look around."),
            Cue(
                "Walk to the table. Look at the tops and ends of things, one by one.",
                pictures.FlatShape(name),
            ),
            Cue("Trace the edge of one flat thing together. Is this it? Try the next."),
        ),
        watch_for="A whole ball or box. Ask for the flat part: the end, the side."
        if name != "triangle"
        else "Anything with a point. Count its sides: it needs three.",
        given={"figure": name},
    )


def _draw_it(rng: SeededRandom) -> Draft:
    name = rng.pick(_FOUR)
    return Draft(
        say=rng.phrasing(
            f"Draw a big {name} in the air.",
            f"Draw a {name} on my back with your finger.",
            f"Use your finger. Draw a {name} on the table.",
            f"Walk in a {name}. End where you started.",
        ),
        answer=rule(name),
        accept=("any size, any way up", *(("a square counts too",) if name == "rectangle" else ())),
        working=f"{name}: {rule(name)}",
        cues=(
            Cue("What will it need? Any corners?"),
            Cue("Look at one first. Trace it with a finger, slowly.", pictures.FlatShape(name)),
            Cue("Start the line together from one spot. The child brings it back there."),
        ),
        watch_for="The line stops short and leaves a gap. Ask where a bug could get in.",
        given={"figure": name},
    )


# ---- turned and thin, three in a row ---------------------------------------------------------------


def _tilted_square(animal: str, rng: SeededRandom) -> Draft:
    others = rng.sample(("rhombus", "rectangle", "triangle", "slanted figure", "thin rectangle"), 2)
    names = rng.shuffled(("square", *others))
    turns = tuple(rng.pick(clean_turns(name, range(25, 70, 5))) for name in names)
    place = next(at for at, name in enumerate(names) if name == "square")
    return find_in_row(
        "square",
        names,
        turns,
        place,
        say=rng.phrasing(
            "Put a finger on the square.",
            "One of these is a square. Which one?",
            "Here are three shapes. Touch the square.",
            f"{animal} wants the square. Touch it.",
        ),
        working=f"square, turned: {rule('square')}",
        cues=(
            Cue("Lean your head one way, then the other. Look again."),
            Cue("Turn a square napkin slowly on its corner. Did its sides change?"),
            Cue("Measure with a thumb: go around one shape together, side by side. Now the next."),
        ),
        watch_for="“That’s a diamond.” Turned or not, it is a square: same sides, same corners.",
    )


_LIES_FLAT = ("thin rectangle", "rhombus", "right triangle")


def _thin_triangle(rng: SeededRandom) -> Draft:
    odd = rng.pick(("thin rectangle", "half circle", "rhombus", "kite", "trapezoid"))
    second = rng.pick(("triangle", "right triangle", "tall triangle"))
    names = rng.shuffled(("thin triangle", second, odd))
    # Upright or upside down: lying on its side a thin shape has too few rows of pixels.
    turns = tuple(rng.pick((90, 270) if name in _LIES_FLAT else (0, 180)) for name in names)
    place = names.index(odd)
    corners = "a curved side" if odd == "half circle" else f"{number_word(count_sides(odd))} sides"
    return find_in_row(
        "no triangle",
        names,
        turns,
        place,
        say=rng.phrasing(
            "Two of these are triangles. Which one is not?",
            "One shape is not a triangle. Put a finger on it.",
            "Which one does not belong with the triangles?",
        ),
        working=f"three straight sides make a triangle, thin or not; this one has {corners}",
        cues=(
            Cue("Trace each one. How many straight sides do you feel?"),
            Cue("Make one from three straws: a short one and two long. Look at its shape."),
            Cue("Count the sides of one shape together. The child counts the next two."),
        ),
        watch_for="Leaving out the thin one: “too pointy”. Three straight sides are enough.",
    )


SKILL = Skill(
    id="flat-shapes",
    title="Flat shapes",
    asks="name, sides, corners, find one in the room, make one, put two together",
    strand=Strand.SHAPE,
    ladder=("four-shapes", "turned-and-thin"),
    levels=(
        Level(
            "four-shapes",
            "circle, triangle, square, rectangle",
            ("name", "find-in-the-room", "draw-in-the-air"),
            codes=("K.G.A.1", "K.G.A.2"),
            guess=0.25,
            slower=("find-in-the-room",),
            guesses=(("find-in-the-room", 0.0), ("draw-in-the-air", 0.0)),
            ends=("name", "draw-in-the-air"),
        ),
        Level(
            "turned-and-thin",
            "turned and thin ones",
            ("turned", "thin-triangle"),
            ("tilted-square",),
            codes=("K.G.A.2",),
            stands_on=("flat-shapes:four-shapes",),
            guess=0.33,
            table="square napkin",
            ends=("turned", "thin-triangle", "tilted-square"),
        ),
        Level(
            "sides-and-corners",
            "sides and corners, hexagon, make it of straws",
            ("count-sides", "not-closed", "square-is-a-rectangle", "hexagon", "make-of-straws"),
            codes=("K.G.A.2", "K.G.B.4", "K.G.B.5"),
            stands_on=("flat-shapes:turned-and-thin", "how-many:count-out-to-10"),
            waits_on=("flat-shapes/tilted-square",),
            guess=0.33,
            table="straws",
            slower=("make-of-straws",),
            guesses=(("count-sides", 0.3), ("square-is-a-rectangle", 0.5), ("make-of-straws", 0.0)),
        ),
        Level(
            "put-together",
            "put two together",
            ("slide-together", "see-the-two", "build"),
            codes=("K.G.B.6",),
            stands_on=("flat-shapes:sides-and-corners",),
            guess=0.25,
            table="paper, square crackers",
            slower=("build",),
            guesses=(("slide-together", 0.2), ("build", 0.1)),
        ),
    ),
    ask=ask,
)
