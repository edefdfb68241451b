"""Sides and corners of flat shapes: counted, named by, found out by a gap, and laid out of straws.

A side is a straight line between two corners; a shape is closed, and a square is a rectangle too (Virginia
Curriculum Framework 2016, 2.13). Making a shape of sticks is K.G.B.5, counting its sides K.G.B.4 (Common
Core State Standards for Mathematics, 2010).
"""

from warmup import pictures
from warmup.english import listed, number_word
from warmup.model import Cue
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._geometry import PLACES, clean_turns, count_sides, equal_sides, rule, square_corners
from warmup.skills.base import Draft


def called(figure: str) -> str:
    """The name a child gives a figure: a thin triangle is a triangle."""
    return figure.split()[-1]


def find_in_row(
    find: str,
    names: tuple[str, ...],
    turns: tuple[int, ...],
    place: int,
    *,
    say: Phrasing,
    working: str,
    cues: tuple[Cue, Cue, Cue],
    watch_for: str,
) -> Draft:
    """Which of three shapes side by side, each turned by so many degrees, is the one at ``place``."""
    return Draft(
        say=say,
        answer=PLACES[place],
        working=working,
        cues=cues,
        watch_for=watch_for,
        given={"names": list(names), "turns": list(turns), "find": find},
        picture=pictures.ShapeRow(names, turns),
    )


def ask_not_closed(rng: SeededRandom) -> Draft:
    """Find the shape whose line has a gap."""
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
    )


def ask_sides(rng: SeededRandom) -> Draft:
    """Count the sides or corners of a shape, or name a shape by its sides."""
    return _count_sides(rng) if rng.coin() else _by_its_sides(rng)


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


def ask_square_is_a_rectangle(rng: SeededRandom) -> Draft:
    """Is every square a rectangle, or every rectangle a square? Told by corners and sides."""
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
            Cue("Lay a square napkin beside a book. Touch the corners, then the sides of each."),
            Cue(f"Check together: four sides? Square corners? Then what else does a {second} need?"),
        ),
        watch_for="“A square is a square!” It is one, and a rectangle as well: a special one."
        if yes
        else "Yes to everything. Show a long door: are all its sides the same?",
        given={"first": first, "second": second},
        table="square napkin, book",
    )


def ask_hexagon(rng: SeededRandom) -> Draft:
    """Find the hexagon in a row of three, told from the others by its sides."""
    names = rng.shuffled(("hexagon", *rng.sample(_BESIDE_A_HEXAGON, 2)))
    # As when its sides are counted: level or upright, so that its blunt corners can be seen.
    turns = tuple(rng.pick(clean_turns(name, range(0, 360, 30))) for name in names)
    place = names.index("hexagon")
    return find_in_row(
        "hexagon",
        names,
        turns,
        place,
        say=rng.phrasing(
            "Put a finger on the hexagon.",
            "One of these is a hexagon. Which one?",
            "Look at these shapes. Touch the hexagon.",
        ),
        working=f"hexagon: {rule('hexagon')}",
        cues=(
            Cue("A hexagon has more sides than a square. Which one could it be?"),
            Cue("Keep a thumb on one corner. Count the sides of each until you meet it."),
            Cue("Count around one shape together, side after side. The child counts the next."),
        ),
        watch_for="Taking any shape that looks new. Count its sides before you choose.",
    )


_BESIDE_A_HEXAGON = ("square", "rectangle", "triangle", "rhombus", "trapezoid", "kite")


def ask_of_straws(rng: SeededRandom) -> Draft:
    """Lay a shape of straws, end to end."""
    name = rng.pick(("triangle", "square", "rectangle", "hexagon"))
    sides = number_word(count_sides(name))
    long_one = ("a square counts too: it is a rectangle",) if name == "rectangle" else ()
    return Draft(
        say=rng.phrasing(
            f"Make a {name} out of straws.",
            f"Use straws. Lay a {name} on the table.",
            f"Build a {name}. Each straw is one side.",
        ),
        answer=f"{sides} straws, end to end: {rule(name)}",
        accept=("any size, any way up", *long_one),
        working=f"{name}: {rule(name)}",
        cues=(
            Cue(f"How many sides does a {name} have? Take a straw for each."),
            Cue("Look at one like it. Touch each corner: two sides meet there.", pictures.FlatShape(name)),
            Cue("Lay the first two together, end on end. The child lays the rest until it closes."),
        ),
        watch_for="Straws that cross, or a gap at a corner. Each end must touch the next one."
        if not square_corners(name)
        else "Corners that lean. Hold a book’s corner inside each and look.",
        given={"figure": name},
        table="straws, some cut shorter",
        do="Lay out ten straws, some long and some cut shorter.",
    )
