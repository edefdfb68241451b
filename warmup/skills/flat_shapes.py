"""flat-shapes: name them, find them, count their sides, put two together.

K.G.A.1 and K.G.A.2: shapes in the world around, and their right names however they are turned; K.G.B.4:
sides and corners; K.G.B.6: small shapes make larger ones (Common Core State Standards for Mathematics,
2010). A square is a rectangle too, and no flat shape here is called a diamond (Virginia Curriculum
Framework 2016, 2.13 and K.10).
"""

from warmup import pictures
from warmup.english import listed, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._geometry import PLACES, clean_turns, count_sides, equal_sides, rule, square_corners
from warmup.skills._joining import ask_build, ask_see_the_two, ask_slide_together
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
            return _count_sides(rng) if rng.coin() else _by_its_sides(rng)
        case "not-closed":
            return _not_closed(rng)
        case "square-is-a-rectangle":
            return _square_is_a_rectangle(rng)
        case "slide-together":
            return ask_slide_together(rng)
        case "see-the-two":
            return ask_see_the_two(rng)
        case _:
            return ask_build(rng)


def called(figure: str) -> str:
    """The name a child gives a figure: a thin triangle is a triangle."""
    return figure.split()[-1]


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
        seconds=60,
        guess=0.0,
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
        guess=0.0,
    )


# ---- turned and thin, three in a row ---------------------------------------------------------------


def _tilted_square(animal: str, rng: SeededRandom) -> Draft:
    others = rng.sample(("rhombus", "rectangle", "triangle", "slanted figure", "thin rectangle"), 2)
    names = rng.shuffled(("square", *others))
    turns = tuple(rng.pick(clean_turns(name, range(25, 70, 5))) for name in names)
    place = next(at for at, name in enumerate(names) if name == "square")
    return Draft(
        say=rng.phrasing(
            "Put a finger on the square.",
            "One of these is a square. Which one?",
            "Here are three shapes. Touch the square.",
            f"{animal} wants the square. Touch it.",
        ),
        answer=PLACES[place],
        working=f"square, turned: {rule('square')}",
        cues=(
            Cue("Lean your head one way, then the other. Look again."),
            Cue("Turn a square napkin slowly on its corner. Did its sides change?"),
            Cue("Measure with a thumb: go around one shape together, side by side. Now the next."),
        ),
        watch_for="“That’s a diamond.” Turned or not, it is a square: same sides, same corners.",
        given={"names": list(names), "turns": list(turns), "find": "square"},
        picture=pictures.ShapeRow(names, turns),
        guess=0.33,
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
    return Draft(
        say=rng.phrasing(
            "Two of these are triangles. Which one is not?",
            "One shape is not a triangle. Put a finger on it.",
            "Which one does not belong with the triangles?",
        ),
        answer=PLACES[place],
        working=f"three straight sides make a triangle, thin or not; this one has {corners}",
        cues=(
            Cue("Trace each one. How many straight sides do you feel?"),
            Cue("Make one from three straws: a short one and two long. Look at its shape."),
            Cue("Count the sides of one shape together. The child counts the next two."),
        ),
        watch_for="Leaving out the thin one: “too pointy”. Three straight sides are enough.",
        given={"names": list(names), "turns": list(turns), "find": "no triangle"},
        picture=pictures.ShapeRow(names, turns),
        guess=0.33,
    )


def _not_closed(rng: SeededRandom) -> Draft:
    names = rng.shuffled(("triangle", "square", "circle", "rectangle", "hexagon"))[:3]
    turns = tuple(rng.pick(clean_turns(name, (0, 45, 60, 90, 180))) for name in names)
    place = rng.below(3)
    return Draft(
        say=rng.phrasing(
            "A bug can get into one shape. Which one?",
            "Which shape is not closed? Show me where.",
            "These are fences. Which one lets the sheep out?",
        ),
        answer=PLACES[place],
        working="a gap in the line: not closed, so not a circle, triangle or square",
        cues=(
            Cue("Trace around each one. Do you come back to the start?"),
            Cue("Lay a loop of yarn, then pull its ends apart. Look at the row again."),
            Cue("Walk a finger along one line together. Say “stop” where the line stops."),
        ),
        watch_for="“It’s still a triangle.” With a gap it has no inside: it is not one yet.",
        given={"names": list(names), "gap": place},
        picture=pictures.ShapeRow(names, turns, (place,)),
        guess=0.33,
    )


# ---- sides and corners -----------------------------------------------------------------------------


def _count_sides(rng: SeededRandom) -> Draft:
    figure = rng.pick(("triangle", "right triangle", "square", "rectangle", "hexagon", "hexagon"))
    # A hexagon's corners are so blunt that they can be counted only where sides lie level or upright.
    turns = clean_turns(figure, range(0, 360, 30 if figure == "hexagon" else 5))
    part, turn = rng.pick(("sides", "corners")), rng.pick(turns)
    count, name = count_sides(figure), called(figure)
    return Draft(
        say=rng.phrasing(
            f"How many {part} does this {name} have?",
            f"Touch the {part} of this shape. How many are there?",
            f"Here is a {name}. Count its {part}.",
        ),
        answer=number_word(count),
        working=f"{name}: {count} sides, {count} corners",
        cues=(
            Cue(f"Show me one of its {part}."),
            Cue(f"Keep a thumb where you began. Count the {part} until you meet it."),
            Cue(f"Touch one of the {part} together: “one…” and let the child go around."),
        ),
        watch_for=f"Counting the first of the {part} twice. A finger stays on the start.",
        given={"figure": figure, "part": part, "ask": "count"},
        picture=pictures.FlatShape(figure, turn),
        guess=0.33,
    )


def _by_its_sides(rng: SeededRandom) -> Draft:
    """The name for so many sides: one for three and for six, any of several for four."""
    count, names = rng.pick(tuple(_FITS.items()))
    word, said = number_word(count), listed(names, "or")
    return Draft(
        say=rng.phrasing(
            f"Name a shape with {word} straight sides.",
            f"Draw a shape with {word} straight sides. What is it called?",
            f"A shape has {word} straight sides. What could it be?",
        ),
        answer=said,
        accept=(*(f"a {name}" for name in names), *_FITS_TOO.get(count, ())),
        working=f"{count} straight sides, {count} corners: {said}",
        cues=(
            Cue(f"Put up {word} fingers. Each one is a side."),
            Cue("Lay straws or spoons end to end, one for each side, until they close."),
            Cue("Draw the first two sides together. The child draws the rest and names it."),
        ),
        watch_for="Naming any shape with points. Count the sides of the shape that was named.",
        given={"sides": count, "ask": "name"},
        guess=0.25,
    )


_FITS = {3: ("triangle",), 4: ("square", "rectangle"), 6: ("hexagon",)}
"""Names of the kindergarten shapes by their sides."""
_FITS_TOO = {4: ("a rhombus", "a trapezoid", "a kite")}


def _square_is_a_rectangle(rng: SeededRandom) -> Draft:
    first, second = rng.pick((("square", "rectangle"), ("rectangle", "square")))
    needs_equal = second == "square"
    yes = square_corners(first) and (equal_sides(first) or not needs_equal)
    return Draft(
        say=rng.phrasing(
            f"Is every {first} a {second}? Tell me why.",
            f"Can we call every {first} a {second}? Tell me why.",
            f"Think of any {first}. Is it always a {second}?",
        ),
        answer="yes" if yes else "no",
        accept=("yes: four sides and four square corners",) if yes else ("no: some are longer than wide",),
        working=f"rectangle: {rule('rectangle')}; square: {rule('square')}",
        cues=(
            Cue("What must a shape have before we call it that?"),
            Cue("Lay a napkin beside a book. Touch the corners, then the sides of each."),
            Cue(f"Check together: four sides? Square corners? Then what else does a {second} need?"),
        ),
        watch_for="“A square is a square!” It is one, and a rectangle as well: a special one."
        if yes
        else "Yes to everything. Show a long door: are all its sides the same?",
        given={"first": first, "second": second},
        guess=0.5,
    )


SKILL = Skill(
    id="flat-shapes",
    title="Flat shapes",
    asks="name, sides, corners, find one in the room, put two together",
    strand=Strand.SHAPE,
    levels=(
        Level(
            "four-shapes",
            "circle, triangle, square, rectangle",
            ("name", "find-in-the-room", "draw-in-the-air"),
            codes=("K.G.A.1", "K.G.A.2"),
            guess=0.25,
            slower=("find-in-the-room",),
            guesses=(("find-in-the-room", 0.0), ("draw-in-the-air", 0.0)),
        ),
        Level(
            "turned-and-thin",
            "turned and thin ones",
            ("turned", "tilted-square", "thin-triangle"),
            codes=("K.G.A.2",),
            guess=0.33,
            table="square napkin",
        ),
        Level(
            "sides-and-corners",
            "sides and corners, hexagon",
            ("count-sides", "not-closed", "square-is-a-rectangle"),
            codes=("K.G.A.2", "K.G.B.4"),
            guess=0.33,
            table="straws",
            guesses=(("count-sides", 0.3), ("square-is-a-rectangle", 0.5)),
        ),
        Level(
            "put-together",
            "put two together",
            ("slide-together", "see-the-two", "build"),
            codes=("K.G.B.6",),
            guess=0.25,
            table="paper, square crackers",
            slower=("build",),
            guesses=(("slide-together", 0.2), ("build", 0.1)),
        ),
    ),
    ask=ask,
)
