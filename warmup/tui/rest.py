"""The stage when there is nothing to look at: two quiet hills, and at the close a sun above them.

Nothing here is one of the things that are asked about, none of it can be counted, and it is the same
whatever the marks were.
"""

from functools import cache
from math import pi, sin

from warmup.pictures import Drawing, Ink
from warmup.pictures.canvas import Canvas, Shape, disc


def hills(columns: int, rows: int, *, sun: bool) -> Drawing:
    """The hills for a stage of this size in cells, with the ``sun`` or without."""
    canvas = Canvas(columns, rows)
    width, height = canvas.width, canvas.height
    if sun:
        canvas.paint(disc(width * 0.62, height * 0.38, min(width, height) * 0.15), Ink.SECOND)
    for ink, top, swing, turn in ((Ink.TILE_ALT, 0.66, 0.08, 0.4), (Ink.TILE, 0.8, 0.06, 2.6)):
        canvas.paint(_hill(width, height, top * height, swing * height, turn), ink)
    return canvas.drawing()


def _hill(width: float, height: float, top: float, swing: float, turn: float) -> Shape:
    """All that lies under one slow wave, ``swing`` high on both sides of ``top``."""

    @cache
    def crest(x: float) -> float:
        return top + swing * sin(1.5 * pi * x / width + turn)

    return Shape(lambda x, y: crest(x) - y, (0, top - swing, width, height))
