"""solid-shapes: sphere, cube, cylinder, cone: names, rolling and stacking, flat or solid, faces, corners.

K.G.A.2, K.G.A.3 and K.G.B.4: names of solids, flat or solid, how they are alike (Common Core State
Standards for Mathematics, 2010). A face is flat, an edge a straight line (Virginia Curriculum Framework
2016, 2.13): curved solids are asked for flat faces only, edges and corners on cube and box alone.
"""

from collections.abc import Mapping
from typing import NamedTuple

from warmup import pictures
from warmup.english import listed, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._cubes import box_or_cube
from warmup.skills._home import a, upper
from warmup.skills.base import Draft, Level, Skill


class _Solid(NamedTuple):
    """``faces`` are the flat ones by the shape each has; ``opposite`` that two of them lie face to face."""

    faces: tuple[str, ...]
    curved: bool
    opposite: bool
    rule: str
    things: tuple[str, ...]

    def does(self) -> tuple[str, ...]:
        """What it can do: roll on a curved side, stack between two flat ones, slide on any flat one."""
        can = {"roll": self.curved, "stack": self.opposite, "slide": bool(self.faces)}
        return tuple(move for move, able in can.items() if able)


def _table(thing: str) -> str:
    """The thing as it is wanted on the table: the rim of an open can is sharp."""
    return f"{thing} (unopened)" if thing in ("can", "soup can") else thing


_SOLIDS = {
    "sphere": _Solid((), True, False, "round every way you turn it", ("ball", "orange")),
    "cube": _Solid(
        ("square",) * 6,
        False,
        True,
        "six flat square faces, all the same",
        ("block", "clay cube"),
    ),
    "cylinder": _Solid(
        ("circle",) * 2, True, True, "a round wall and two flat round ends", ("can", "toy drum", "soup can")
    ),
    "cone": _Solid(
        ("circle",), True, False, "a round wall, a point, one flat round end", ("cone block", "clay cone")
    ),
    "box": _Solid(
        ("rectangle",) * 6,
        False,
        True,
        "six flat faces, square corners",
        ("cereal box", "cracker box", "juice box"),
    ),
}
_UNLIKE = (("sphere",), ("cylinder",), ("cone",), ("cube", "box"))
"""Those that do the same and have as many flat faces together, so that each answer comes as often."""
_CUBE_FACTS = {"faces": 3 * 2, "edges": 3 * 2**2, "corners": 2**3}
"""Of a cube or a box: two faces and two by two edges for each of three directions, and 2 x 2 x 2 corners."""

_ROUND = {
    "sphere": ("a ball", "an orange", "a soap bubble"),
    "circle": (
        "the rim of a cup",
        "a ring drawn on paper",
        "a plate drawn on paper",
        "the top of a can",
    ),
}
_POINTED = {
    "cone": ("a party hat", "a clown’s tall hat", "a pointed paper cup"),
    "triangle": ("a yield sign", "a sail drawn on paper", "a napkin folded corner to corner"),
}
_FLAT = ("circle", "triangle", "square", "rectangle")
"""The flat shapes that have been named by then: the hexagon comes later."""


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Name, find, roll, count, as the item wants."""
    match item:
        case "name":
            return _name(rng.pick(("sphere", "cube")), rng)
        case "name-any":
            return _name(rng.pick(("sphere", "cube", "cylinder", "cone")), rng)
        case "find-at-home":
            return _find(rng)
        case "ball-or-circle":
            return _solid_or_flat(_ROUND, rng)
        case "cone-or-triangle":
            return _solid_or_flat(_POINTED, rng)
        case "roll-stack-slide":
            return _roll_stack_slide(rng)
        case "flat-faces":
            return _flat_faces(rng)
        case "print-of-a-face":
            return _print(rng)
        case "flat-or-solid":
            return _flat_or_solid(rng)
        case "count-on-a-box":
            return _count_on_a_box(rng)
        case _:
            return box_or_cube(rng)


# ---- names -----------------------------------------------------------------------------------------

_LIKE = {"sphere": "ball", "cube": "toy block", "cylinder": "can", "cone": "party hat"}
_SAID_FOR = {
    "sphere": "“Ball” is what it looks like; “circle” is the flat one. Ask for its shape name.",
    "cube": "“Square.” A square is flat: it is only one face of this.",
    "cylinder": "“Can” or “tube” is what it looks like. Ask for its shape name.",
    "cone": "“Triangle.” That one is flat. Show the round end.",
}


def _name(name: str, rng: SeededRandom) -> Draft:
    solid, upright = _SOLIDS[name], rng.coin()
    return Draft(
        say=rng.phrasing(
            "What do we call this solid shape?",
            "You could hold this shape. What is it called?",
            "This shape is not flat. What is its name?",
        ),
        answer=name,
        accept=(f"a {name}",),
        working=f"{name}: {solid.rule}",
        cues=(
            Cue("Would it roll? Would it sit still? What is on its outside?"),
            Cue(f"Hold a {_LIKE[name]}. Feel all around it. Look back at the picture."),
            Cue("Turn a thing like it every way together. The child says its shape name."),
        ),
        watch_for=_SAID_FOR[name],
        given={"solid": name, "upright": upright},
        picture=pictures.SolidShape(name, upright),
    )


def _find(rng: SeededRandom) -> Draft:
    name = rng.pick(("sphere", "cube"))
    solid = _SOLIDS[name]
    return Draft(
        say=rng.phrasing(
            f"Find something at home shaped like a {name}.",
            f"Go find a {name}. Bring it to me.",
            f"Show me a {name} in this house.",
        ),
        answer=f"anything that is {solid.rule}" if name == "sphere" else f"anything with {solid.rule}",
        accept=tuple(a(thing) for thing in solid.things),
        working=f"{name}: {solid.rule}",
        cues=(
            Cue("Is it flat, or can your hand go around it?"),
            Cue("Look at this one. What at home has that shape?", pictures.SolidShape(name)),
            Cue("Pick up one thing together. Turn it every way. Does it fit? Try the next."),
        ),
        watch_for="Bringing something flat, or a box whose faces are not all alike.",
        given={"solid": name},
    )


def _solid_or_flat(things: Mapping[str, tuple[str, ...]], rng: SeededRandom) -> Draft:
    name = rng.pick(tuple(things))
    (other,) = set(things) - {name}
    thing = rng.pick(things[name])
    solid = name in _SOLIDS
    return Draft(
        say=rng.phrasing(
            f"Think of {thing}. What shape is it?",
            f"What shape is {thing}?",
            f"Name the shape of {thing}.",
        ),
        answer=name,
        accept=(f"a {name}",),
        working=f"{thing}: {'solid' if solid else 'flat'}, {name}",
        cues=(
            Cue("Could you hold it in two hands, or only trace it?"),
            Cue("Hold something up, then trace something on paper. Which of the two is it like?"),
            Cue("Begin together: “I can hold it, or I can draw all of it. So it’s a…”"),
        ),
        watch_for=f"“{upper(other)}.” Ask if it lies flat or if you could hold it.",
        given={"thing": thing, "solid": solid},
        table="",
    )


# ---- what they do, their faces ---------------------------------------------------------------------


def _thing(name: str, rng: SeededRandom) -> str:
    return rng.pick(_SOLIDS[name].things)


def _hand_over(thing: str) -> str:
    """What the adult gives the child, told so that it is the solid that is meant."""
    alike = " with faces all alike" if thing == "block" else ""
    return f"Give your child {a(thing)}{alike} to hold."


def _roll_stack_slide(rng: SeededRandom) -> Draft:
    name = rng.pick(rng.pick(_UNLIKE))
    solid, thing = _SOLIDS[name], _thing(name, rng)
    can = solid.does()
    return Draft(
        say=rng.phrasing(
            f"Take the {thing}. Can it roll, stack or slide?",
            f"Try the {thing} on the floor. Does it roll, stack or slide?",
            f"What can the {thing} do: roll, stack or slide?",
        ),
        answer=listed(can),
        accept=("all three",) if len(can) == 3 else ("only roll",) if can == ("roll",) else (),
        working=f"{name}: {solid.rule}; to stack, one sits on another like it",
        cues=(
            Cue(f"Stroke the {thing} all over. Where is it flat? Where is it curved?"),
            Cue(f"Set the {thing} down one way, then the next. Push it softly each time."),
            Cue("Try the first of the three together. The child tries the others and tells."),
        ),
        watch_for="Stopping at the first thing it does. Some shapes do more than one.",
        given={"solid": name, "thing": thing},
        table=_table(thing),
        do=_hand_over(thing),
    )


def _flat_faces(rng: SeededRandom) -> Draft:
    name = rng.pick(rng.pick(_UNLIKE))
    # An orange has a stem: a ball alone is sure to have no flat spot.
    solid, thing = _SOLIDS[name], "ball" if name == "sphere" else _thing(name, rng)
    count = len(solid.faces)
    return Draft(
        say=rng.phrasing(
            f"How many flat faces does a {name} have?",
            f"Feel this {thing}. How many flat faces does it have?",
            f"Turn this {thing} around. How many flat faces does it have?",
        ),
        answer=number_word(count),
        accept=("none", "no flat faces") if count == 0 else (),
        working=f"{name}: {solid.rule}; flat faces: {count}",
        cues=(
            Cue("Find a place where your whole hand lies flat."),
            Cue(f"Set the {thing} on the table, every way. Does it sit flat, or does it rock?"),
            Cue("Turn it together and stroke each part. The child pats it where it is flat."),
        ),
        watch_for="Counting the curved wall too. Only a flat part is asked for."
        if solid.curved
        else "Losing count on the way around, or leaving out the one it stands on.",
        given={"solid": name},
        table=_table(thing),
        do=_hand_over(thing),
    )


def _print(rng: SeededRandom) -> Draft:
    name = rng.pick(rng.pick((("cube",), ("box",), ("cylinder", "cone"))))
    solid, thing = _SOLIDS[name], _thing(name, rng)
    face = solid.faces[0]
    return Draft(
        say=rng.phrasing(
            f"Trace around one flat face of the {thing}. What shape is it?",
            f"Stand the {thing} on paper. Trace around it. What shape is that?",
            f"Paint one flat face of the {thing}. What shape will it print?",
        ),
        answer=face,
        accept=(f"a {face}", "a square") if face == "rectangle" else (f"a {face}",),
        working=f"{name}: each flat face is a {face}",
        cues=(
            Cue(f"Run a finger around the rim of one flat face of the {thing}."),
            Cue(f"Lift the {thing} and look at the face it stood on, straight from below."),
            Cue("Begin the line around it together. The child closes it, lifts the thing and looks."),
        ),
        watch_for=f"Naming the whole {thing}. One face alone is flat and has its own name.",
        given={"solid": name, "thing": thing},
        table=f"{_table(thing)}, paper",
        do=_hand_over(thing),
    )


def _flat_or_solid(rng: SeededRandom) -> Draft:
    solid = rng.coin()
    name = rng.pick(("sphere", "cube", "cylinder", "cone") if solid else _FLAT)
    return Draft(
        say=rng.phrasing(
            f"Is a {name} flat or solid?",
            f"Think of a {name}. Is it flat or solid?",
            f"Make a {name} with your hands. Is it flat or solid?",
        ),
        answer="solid" if name in _SOLIDS else "flat",
        accept=("you could hold it",) if name in _SOLIDS else ("it lies flat",),
        working=f"{name}: {_SOLIDS[name].rule}"
        if name in _SOLIDS
        else f"{name}: drawn on paper, no thickness",
        cues=(
            Cue(f"Can you draw all of a {name} on paper, or would it stick up?"),
            Cue("Lay a hand on a sheet of paper. Then hold a ball. Which one is it like?"),
            Cue(f"Draw the {name} in the air together. Could your arms go around it?"),
        ),
        watch_for="Thinking of a thing with that shape, like a plate. Ask for the shape alone.",
        given={"name": name},
        table="paper, ball",
    )


# ---- edges and corners -----------------------------------------------------------------------------


def _count_on_a_box(rng: SeededRandom) -> Draft:
    name, part = rng.pick(("cube", "box")), rng.pick(tuple(_CUBE_FACTS))
    thing, count = _thing(name, rng), _CUBE_FACTS[part]
    one = part[:-1]
    return Draft(
        say=rng.phrasing(
            f"How many {part} does a {name} have?",
            f"Touch the {part} of this {thing}. How many are there?",
            f"Count the {part} of this {thing}.",
        ),
        answer=number_word(count),
        working=f"{name}: 6 faces, 12 edges, 8 corners",
        cues=(
            Cue(f"Stick a bit of tape on each {one} as you count it."),
            Cue(f"Stand the {thing} up. Count the {part} on top, then those lower down."),
            Cue(f"Touch the first {one} together: “one…” Turn it slowly while the child counts."),
        ),
        watch_for=f"Leaving out the {part} at the back, or counting one twice.",
        given={"solid": name, "part": part, "thing": thing},
        table=f"{_table(thing)}, tape",
        do=_hand_over(thing),
    )


SKILL = Skill(
    id="solid-shapes",
    title="Solid shapes",
    asks="name, roll or stack, flat or solid, faces and corners",
    strand=Strand.SHAPE,
    levels=(
        Level(
            "sphere-and-cube",
            "sphere, cube",
            ("name", "find-at-home"),
            ("ball-or-circle",),
            codes=("K.G.A.2", "K.G.A.3"),
            stands_on=("flat-shapes:four-shapes",),
            guess=0.5,
            table="ball, block",
            slower=("find-at-home",),
            guesses=(("find-at-home", 0.0),),
            ends=("name", "ball-or-circle"),
        ),
        Level(
            "cylinder-and-cone",
            "cylinder, cone, roll or stack, flat or solid",
            ("name-any", "cone-or-triangle", "roll-stack-slide", "flat-or-solid"),
            codes=("K.G.A.2", "K.G.A.3", "K.G.B.4"),
            stands_on=("solid-shapes:sphere-and-cube",),
            waits_on=("solid-shapes/ball-or-circle",),
            guess=0.25,
            table="can (unopened), ball, block",
            slower=("roll-stack-slide",),
            guesses=(("cone-or-triangle", 0.5), ("roll-stack-slide", 0.15), ("flat-or-solid", 0.5)),
            ends=("name-any", "cone-or-triangle", "flat-or-solid"),
        ),
        Level(
            "faces",
            "faces and corners",
            ("flat-faces", "print-of-a-face", "count-on-a-box", "box-or-cube"),
            codes=("K.G.B.4",),
            stands_on=("solid-shapes:cylinder-and-cone", "flat-shapes:sides-and-corners"),
            guess=0.33,
            table="can (unopened), ball, box",
            slower=("count-on-a-box",),
            guesses=(("flat-faces", 0.2), ("count-on-a-box", 0.2), ("box-or-cube", 0.5)),
        ),
    ),
    ask=ask,
)
