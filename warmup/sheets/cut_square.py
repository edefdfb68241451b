"""One square cut into squares and triangles, and what its pieces build. Our own cut and our own figures.

The square is four units long: a quarter of it is a big square, two quarters are halved from corner to corner,
and the last quarter is four small squares. All lengths are in units, y runs down.
"""

from collections.abc import Mapping
from enum import Enum
from types import MappingProxyType
from typing import NamedTuple

from warmup.pictures.shapes import Point, Points


class Piece(Enum):
    """The kinds of pieces, each by what it is called."""

    BIG = "big square"
    SMALL = "small square"
    TRIANGLE = "triangle"


class Placed(NamedTuple):
    """A piece where it lies: ``at`` is the upper left corner of its room.

    ``corner`` says in which corner of its room a triangle has its square corner: "nw", "ne", "se" or "sw".
    """

    piece: Piece
    at: Point
    corner: str = ""

    def points(self) -> Points:
        """Its corners, going round clockwise."""
        x, y = self.at
        side = 1.0 if self.piece is Piece.SMALL else 2.0
        room = {"nw": (x, y), "ne": (x + side, y), "se": (x + side, y + side), "sw": (x, y + side)}
        # A triangle lacks the corner across from its square one.
        lacks = _ACROSS.get(self.corner)
        return tuple(point for name, point in room.items() if name != lacks)


class Figure(NamedTuple):
    """What can be built: its outline, and one way to build it."""

    outline: Points
    pieces: tuple[Placed, ...]


_ACROSS: Mapping[str, str] = MappingProxyType({"nw": "se", "se": "nw", "ne": "sw", "sw": "ne"})


def _big(x: float, y: float) -> Placed:
    return Placed(Piece.BIG, (x, y))


def _triangle(x: float, y: float, corner: str) -> Placed:
    return Placed(Piece.TRIANGLE, (x, y), corner)


def _small(*places: Point) -> tuple[Placed, ...]:
    return tuple(Placed(Piece.SMALL, place) for place in places)


def _block(x: float, y: float) -> tuple[Placed, ...]:
    """All four small squares, as large together as the big one."""
    return _small((x, y), (x + 1, y), (x, y + 1), (x + 1, y + 1))


def _roof(x: float, y: float) -> tuple[Placed, ...]:
    """Two triangles that make a large one, four long and two high."""
    return _triangle(x, y, "se"), _triangle(x + 2, y, "sw")


SQUARE = Figure(
    ((0, 0), (4, 0), (4, 4), (0, 4)),
    (
        _big(0, 0),
        _triangle(2, 0, "nw"),
        _triangle(2, 0, "se"),
        _triangle(0, 2, "nw"),
        _triangle(0, 2, "se"),
        *_block(2, 2),
    ),
)
"""The square as it is cut."""

CUTS: tuple[tuple[Point, Point], ...] = (
    ((2, 0), (2, 4)),
    ((0, 2), (4, 2)),
    ((4, 0), (0, 4)),
    ((3, 2), (3, 4)),
    ((2, 3), (4, 3)),
)
"""Where scissors go: the square is cut apart in five straight lines."""

FIGURES: Mapping[str, Figure] = MappingProxyType(
    {
        "house": Figure(
            ((0, 2), (2, 0), (4, 2), (4, 4), (0, 4)),
            (*_roof(0, 0), _big(0, 2), *_block(2, 2)),
        ),
        "tree": Figure(
            ((1, 2), (3, 0), (5, 2), (4, 2), (6, 4), (3.5, 4), (3.5, 6), (2.5, 6), (2.5, 4), (0, 4), (2, 2)),
            (
                *_roof(1, 0),
                _triangle(0, 2, "se"),
                _big(2, 2),
                _triangle(4, 2, "sw"),
                *_small((2.5, 4), (2.5, 5)),
            ),
        ),
        "boat": Figure(
            ((0, 2), (2, 2), (2, 0), (3, 0), (5, 2), (6, 2), (4, 4), (2, 4)),
            (
                _triangle(0, 2, "ne"),
                _big(2, 2),
                _triangle(4, 2, "nw"),
                *_small((2, 0), (2, 1)),
                _triangle(3, 0, "sw"),
            ),
        ),
        "arrow": Figure(
            ((0, 1), (4, 1), (4, 0), (6, 2), (4, 4), (4, 3), (0, 3)),
            (_big(0, 1), *_block(2, 1), _triangle(4, 0, "sw"), _triangle(4, 2, "nw")),
        ),
        "butterfly": Figure(
            ((0, 0), (5, 0), (3, 2), (5, 4), (0, 4), (2, 2)),
            (
                _triangle(0, 0, "ne"),
                _triangle(0, 2, "se"),
                *_small((2, 0), (2, 1), (2, 2), (2, 3)),
                _triangle(3, 0, "nw"),
                _triangle(3, 2, "sw"),
            ),
        ),
        "long rectangle": Figure(
            ((0, 0), (8, 0), (8, 2), (0, 2)),
            (
                _triangle(0, 0, "sw"),
                _triangle(0, 0, "ne"),
                _big(2, 0),
                *_block(4, 0),
                _triangle(6, 0, "nw"),
                _triangle(6, 0, "se"),
            ),
        ),
        "big triangle": Figure(
            ((0, 4), (4, 0), (8, 4)),
            (*_roof(2, 0), _triangle(0, 2, "se"), _big(2, 2), *_block(4, 2), _triangle(6, 2, "sw")),
        ),
    }
)
"""What the pieces build, simpler ones first; the last two take all of them."""
