"""A finger draws on a back, and the back tells what it was."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_DRAWINGS = 6
_SHAPES = {
    "flat-shapes:four-shapes": "circles, triangles, squares and rectangles",
    "flat-shapes:turned-and-thin": "triangles, squares and rectangles, turned or thin",
    "flat-shapes:sides-and-corners": "shapes with three to six sides",
}
_NUMERALS = {"numerals:to-5": (0, 5), "numerals:to-10": (4, 10)}
_DRAW = "My finger draws on your back."


def made(level: LevelId, _morning: Morning, _rng: SeededRandom) -> Play:
    """Shapes, or numerals, drawn large and slowly."""
    given: dict[str, int] = {}
    if level in _NUMERALS:
        low, high = _NUMERALS[level]
        what, given = f"numerals from {number_word(low)} to {number_word(high)}", {"low": low, "high": high}
        tell, listen = "Say which number it is.", "Is the numeral known by how it is drawn?"
    elif level == "flat-shapes:sides-and-corners":
        given = {"fewest": 3, "most": 6}
        what, tell, listen = _SHAPES[level], "Say how many sides it has.", "Is each side counted once?"
    else:
        what, tell = _SHAPES[level], "Say which shape it is."
        listen = "Is it the sides that tell the shape, and not how it is turned?"
    return Play(
        f"Draw {what} with a finger, large and slowly.",
        (_DRAW, tell, "Then draw one on mine."),
        "after six drawings",
        listen,
        given,
        2 * _DRAWINGS,
    )


GAME = Game(
    id="drawn-on-your-back",
    name="Drawn on your back",
    needs=(),
    levels=levels(*_SHAPES, *_NUMERALS),
    made=made,
    two="They draw for each other, and you look on.",
)
