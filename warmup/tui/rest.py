"""The stage when there is nothing to look at: two quiet hills, and at the close a sun above them.

Nothing here is one of the things that are asked about, none of it can be counted, and it is the same
whatever the marks were.
"""

from math import pi, sin

from warmup.pictures import Drawing, Ink
from warmup.pictures.cells import drawn
from warmup.pictures.ink import Shade, between
from warmup.pictures.shapes import Shape, disc, polygon
from warmup.pictures.sketch import Sketch


def hills(columns: int, rows: int, *, sun: bool, smooth: bool = False) -> Drawing:
    """The hills for a stage of this size in cells, with the ``sun`` or without, in mixes where ``smooth``."""
    sketch = Sketch(columns, rows)
    width, height = sketch.width, sketch.height
    if sun:
        # As large as the ground above the hills has room for, in a glow that no terminal has to show.
        # In halves of a cell width, so that it is round in plain inks as well.
        least = max(height * 0.19, min(2.5, height * 0.3))
        x, y, radius = round(width * 0.62), round(height * 0.34), round(2 * min(width * 0.19, least)) / 2
        glow = (
            (0.0, between(Ink.GROUND, Ink.SECOND, 0.4)),
            (0.6, between(Ink.GROUND, Ink.SECOND, 0.3)),
            (1.0, Ink.GROUND),
        )
        sketch.paint(disc(x, y, radius * 1.6), Shade(glow, (x, y), (x + radius * 1.6, y), True))
        sketch.paint(disc(x, y, radius), Ink.SECOND)
    for ink, top, swing, turn in ((Ink.TILE_ALT, 0.66, 0.08, 0.4), (Ink.TILE, 0.8, 0.06, 2.6)):
        sketch.paint(_hill(width, height, top * height, swing * height, turn), ink)
    return drawn(sketch, smooth=smooth)


def _hill(width: float, height: float, top: float, swing: float, turn: float) -> Shape:
    """All that lies under one slow wave, ``swing`` high on both sides of ``top``."""
    across = [width * n / 48 for n in range(49)]
    crest = [(x, top + swing * sin(1.5 * pi * x / width + turn)) for x in across]
    return polygon([*crest, (width, height), (0.0, height)])
