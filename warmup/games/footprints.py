"""Feet walk along the sides of a shape that nobody sees."""

from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_WALKS = 4
_SHAPES = {
    "flat-shapes:four-shapes": "a circle, a triangle, a square or a rectangle",
    "flat-shapes:turned-and-thin": "a triangle, a square or a rectangle, turned or thin",
    "flat-shapes:sides-and-corners": "a shape with three to six sides",
}
_SIDES = "flat-shapes:sides-and-corners"


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Shapes to be walked, one at a time."""
    tell = "Say its sides and corners." if level == _SIDES else "Say what shape it was."
    return Play(
        f"Clear some floor, and walk {_SHAPES[level]}, heel to toe.",
        ("Watch my feet walk a shape.", tell, "Now you walk one for me."),
        "after four walks",
        "Straight sides and a turn at each corner: is that what tells?",
        {"fewest": 3, "most": 6} if level == _SIDES else {},
        5 * _WALKS,
    )


GAME = Game(
    id="footprints",
    name="Footprints",
    needs=(),
    levels=levels(*_SHAPES),
    made=made,
    two="They walk for each other, and you look on.",
)
