"""Left and right: of one's own body, and of toys seen the same way.

Common practice, no source. Whoever faces the child has the sides swapped; the answers say so.
"""

from warmup import pictures
from warmup.model import Cue
from warmup.randomness import SeededRandom
from warmup.skills._home import a
from warmup.skills._place_words import MOVED, PLAIN, SHOWN
from warmup.skills.base import Draft

_SIDE_BY_SIDE = "Stand beside your child, both facing the same way."
_SAME_SIDE_OF_TABLE = "Sit beside your child, on the same side of the table."

_OTHER = {"left": "right", "right": "left"}

_BODY = {
    "hand": "Wave",
    "foot": "Stamp",
    "knee": "Tap",
    "ear": "Touch",
    "elbow": "Touch",
    "shoulder": "Tap",
    "cheek": "Pat",
    "leg": "Shake",
}
_GO = {
    "step": "Take one big step to your",
    "hop": "Hop once to your",
    "lean": "Lean over to your",
    "head": "Turn your head to your",
    "point": "Point far out to your",
    "slide": "Slide one foot to your",
}
_ACROSS = ("knee", "ear", "elbow", "shoulder", "foot", "cheek")
_SET_ON_A_TABLE = ("cup", "spoon", "napkin")


def _as_yours(side: str) -> str:
    return f"side by side, your {side} as well"


_MIRROR = "Moving like a mirror of you. Both face the same way before you show it."


def ask_own_side(rng: SeededRandom) -> Draft:
    """Move the side of the body that is named."""
    part, side = rng.pick(tuple(_BODY)), rng.pick(("left", "right"))
    do = _BODY[part]
    return Draft(
        say=rng.phrasing(
            f"{do} your {side} {part}.",
            f"Show me: {do.lower()} your {side} {part}.",
            f"Stand up tall. Now {do.lower()} your {side} {part}.",
        ),
        answer=f"the child’s own {side} {part}: {_as_yours(side)}",
        accept=(f"{side} {part}",),
        working=f"side by side, the child’s {side} is your {side}",
        cues=(
            Cue("Which hand do you draw with? What do we call that side?"),
            Cue("Stand side by side, facing the same way. Hold out both hands, palms down."),
            Cue("Lift both arms together. The child drops the one I did not name."),
        ),
        watch_for=_MIRROR,
        given={"part": part, "side": side},
        do=_SIDE_BY_SIDE,
    )


def ask_to_one_side(rng: SeededRandom) -> Draft:
    """Go or lean to the side that is named."""
    go, side = rng.pick(tuple(_GO)), rng.pick(("left", "right"))
    return Draft(
        say=rng.phrasing(
            f"{_GO[go]} {side}.",
            f"Listen, then move. {_GO[go]} {side}.",
            f"Stand up tall. {_GO[go]} {side}.",
        ),
        answer=f"to the child’s own {side}: {_as_yours(side)}",
        accept=(f"to the {side}",),
        working=f"side by side, the child’s {side} is your {side}",
        cues=(
            Cue("Hold out the hand of that side first."),
            Cue("Hold out both arms. The child does the same. Which hand is on that side?"),
            Cue("Sway together, one way and back. The child stops on the side I named."),
        ),
        watch_for="Going the other way, or waiting to go along with you. Stand still until it is done.",
        given={"go": go, "side": side},
        do=_SIDE_BY_SIDE,
    )


def ask_across_the_middle(rng: SeededRandom) -> Draft:
    """Bring one hand over the middle to the other side."""
    part, side = rng.pick(_ACROSS), rng.pick(("left", "right"))
    hand = _OTHER[side]
    return Draft(
        say=rng.phrasing(
            f"Touch your {side} {part} with your {hand} hand.",
            f"{hand.capitalize()} hand up! Now pat your {side} {part} with it.",
            f"Take your {hand} hand. Find your {side} {part} with it.",
        ),
        answer=f"{hand} hand on {side} {part}: the arm goes over the middle",
        working=f"{hand} hand → {side} {part}",
        cues=(
            Cue("Say it in two parts: first the hand, then the place."),
            Cue("Tap the hand I named. Tap the place I named. They are far apart."),
            Cue("Lift that hand together, out to the front. The child brings it to the place."),
        ),
        watch_for="Using the near hand, or changing hands halfway. The middle is hard to cross.",
        given={"part": part, "side": side, "hand": hand},
    )


def ask_set_side(rng: SeededRandom) -> Draft:
    """Put a thing left or right of another."""
    thing, landmark, side = rng.pick(MOVED), rng.pick(PLAIN), rng.pick(("left", "right"))
    job = "Set the table" if thing in _SET_ON_A_TABLE else "Help me clean up"
    return Draft(
        say=rng.phrasing(
            f"Put the {thing} to the {side} of the {landmark}.",
            f"The {thing} goes to the {side} of the {landmark}. Show me.",
            f"{job}. The {thing} goes to the {side} of the {landmark}.",
        ),
        answer=f"the {thing} to the {side} of the {landmark}, as both see it, side by side",
        working=f"{thing} · {landmark}" if side == "left" else f"{landmark} · {thing}",
        cues=(
            Cue("Hold up the hand of that side."),
            Cue(f"Lay the child’s two hands on the two sides of the {landmark}."),
            Cue(f"Slide the {thing} slowly back and forth past the {landmark}. The child says when."),
        ),
        watch_for="The other side: from across the table the sides are swapped.",
        given={"thing": thing, "landmark": landmark, "side": side},
        table=f"{thing}, {landmark}",
        do=f"{_SAME_SIDE_OF_TABLE} Set out {a(landmark)}.",
    )


def ask_name_neighbor(rng: SeededRandom) -> Draft:
    """Name the toy just left or right of another."""
    row, side = rng.sample(SHOWN, 4), rng.pick(("left", "right"))
    at = rng.pick((1, 2))
    found = row[at + (1 if side == "right" else -1)]
    return Draft(
        say=rng.phrasing(
            f"Find the {row[at]}. What is just to the {side} of it?",
            f"Put a finger on the {row[at]}. What is next on the {side}?",
            f"What is just to the {side} of the {row[at]}?",
        ),
        answer=f"the {found}",
        accept=(found,),
        working=" · ".join(row),
        cues=(
            Cue(f"Touch the {row[at]}. Hold up the hand of the side I said."),
            Cue("Sit side by side. Hold both hands flat, one on each side of the screen."),
            Cue(f"Start a finger together on the {row[at]}. The child slides it one place on."),
        ),
        watch_for="Naming the toy at the far end, not the very next one; or the other side.",
        given={"row": list(row), "from": row[at], "side": side},
        picture=pictures.Scene((row,)),
        table="",
    )


def ask_make_row(rng: SeededRandom) -> Draft:
    """Lay three things in a row from one end."""
    side = rng.pick(("left", "right"))
    names = rng.sample(MOVED, 3)
    row = names if side == "left" else names[::-1]
    first, second, third = names
    return Draft(
        say=rng.phrasing(
            f"Make a row. Start on the {side}: {first}, {second}, {third}.",
            f"Line up {first}, {second}, {third}. Start on the {side}.",
            f"First {first}, next {second}, then {third}. Start on the {side}.",
        ),
        answer=f"from the left: {', '.join(row)}",
        working=" · ".join(row),
        cues=(
            Cue(f"Which end is the {side} end? Put your hand there."),
            Cue("Lay a strip of paper down. Both sit on the same long side of it."),
            Cue(f"Hand over the {first} first, then one at a time. The child finds each place."),
        ),
        watch_for="Starting at the end that is nearest. Ask which end before the first one.",
        given={"names": list(names), "start": side},
        table=", ".join(names),
        do=f"{_SAME_SIDE_OF_TABLE} Hand over the {first}, {second} and {third}.",
    )
