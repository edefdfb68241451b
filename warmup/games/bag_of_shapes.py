"""Hands know a shape before the eyes do."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_FACES = "solid-shapes:faces"
_THINGS = {
    "solid-shapes:sphere-and-cube": ("a ball and a cube block", 2),
    "solid-shapes:cylinder-and-cone": ("a ball, a cube block and an unopened can", 3),
    _FACES: ("a block, an unopened can and a box", 3),
}


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """A bag of things with shapes, felt one at a time."""
    things, count = _THINGS[level]
    tell = "Say how many flat faces it has." if level == _FACES else "Say its shape before it comes out."
    return Play(
        f"Put {things} into a cloth bag where nobody sees, and fill it once more when it is empty.",
        ("Reach in without a look.", "Feel one thing.", tell),
        "when the bag was empty twice",
        "Is each flat face felt once?"
        if level == _FACES
        else "Do hands tell it: round all over, or flat faces?",
        {"things": count},
        6 * count,
    )


GAME = Game(
    id="bag-of-shapes",
    name="The bag of shapes",
    needs=("bag", "ball", "blocks", "can", "box"),
    levels=levels(*_THINGS),
    made=made,
    two="One fills the bag, the other feels; then they change.",
    spared=(
        ("solid-shapes:sphere-and-cube", ("can", "box")),
        ("solid-shapes:cylinder-and-cone", ("box",)),
        (_FACES, ("ball",)),
    ),
)
