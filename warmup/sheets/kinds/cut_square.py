"""One square cut into squares and triangles, and outlines to build with the pieces."""

from warmup.pictures.shapes import Points
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.cut_square import CUTS, FIGURES, SQUARE, Figure
from warmup.sheets.lines import Drawn, Line, Stroke, Words, closed
from warmup.sheets.paper import ROOM

UNIT = 24.0
"""A unit of the square in millimeters."""
_PAGES = (("house", "arrow"), ("boat", "butterfly"), ("tree", "long rectangle"), ("big triangle",))
_HELP = "Lay the pieces on the outline. The thin lines show one way."
_ALONE = "Fill the outline with your pieces. There may be more than one way."


def pages(_day: Day) -> tuple[Page, ...]:
    """The square to cut, then outlines with the pieces drawn in, then outlines alone."""
    cut = Page("cut it into nine pieces", tuple(_square()))
    helped = [_outlines(names, helped=True) for names in _PAGES]
    return (cut, *helped, *(_outlines(names, helped=False) for names in _PAGES))


def _square() -> list[Drawn]:
    cuts = [Stroke(_placed(cut, SQUARE, 0.0), Line.CUT) for cut in CUTS]
    return [*cuts, closed(_placed(SQUARE.outline, SQUARE, 0.0), Line.CUT)]


def _outlines(names: tuple[str, ...], *, helped: bool) -> Page:
    """Figures one below the other, as large as the pieces."""
    drawn: list[Drawn] = []
    top = 0.0
    for name in names:
        figure = FIGURES[name]
        if helped:
            pieces = [_placed(piece.points(), figure, top) for piece in figure.pieces]
            drawn += [closed(piece, Line.FAINT) for piece in pieces]
        drawn.append(closed(_placed(figure.outline, figure, top)))
        top += UNIT * max(y for _, y in figure.outline) + 10.0
    drawn.append(Words((ROOM.wide / 2, top), _HELP if helped else _ALONE))
    return Page(" and ".join(names), tuple(drawn))


def _placed(points: Points, figure: Figure, top: float) -> Points:
    """The points in millimeters, their figure in the middle of the room."""
    left = (ROOM.wide - UNIT * max(x for x, _ in figure.outline)) / 2
    return tuple((left + UNIT * x, top + UNIT * y) for x, y in points)


SHEET = Sheet(
    "A square in pieces",
    "Nine pieces of one square build a house, a boat and more.",
    pages,
    Use(pictures=("joined-shapes",)),
    small=True,
)
