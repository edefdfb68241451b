"""The pieces of patterns and of sorting: kinds that differ by their form, not only by color."""

from math import floor

from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Shape, box, disc, frame, joined, polygon
from warmup.pictures.sketch import Sketch


def piece(sketch: Sketch, form: str, left: float, top: float, size: int) -> None:
    """Paint one of ``FORMS``, or "?", a frame of dashes for an empty place, in a square of ``size``.

    ``left`` is to be a multiple of a half and ``top`` whole, so that edges lie on pixels. ValueError
    for another form.
    """
    middle = left + size / 2
    match form:
        case "circle":
            sketch.paint(disc(middle, top + size / 2, size / 2), Ink.FIRST)
        case "square":
            sketch.paint(frame(left, top, size, size, max(1, floor(size / 5))), Ink.SECOND)
        case "triangle":
            low, wide = top + size, size / 2
            sketch.paint(polygon([(middle, top), (middle - wide, low), (middle + wide, low)]), Ink.INK)
        case "?":
            sketch.paint(_dashes(left, top, size), Ink.HOLE)
        case _:
            raise ValueError(f"no piece has the form {form!r}")


def _dashes(left: float, top: float, size: float) -> Shape:
    """A frame of dashes, one round each corner: nothing lies there, and it is no piece with four sides."""
    count = 3 if size < 8 else 5 if size < 16 else 7
    dash, line = size / count, max(1.0, size / 12)
    dashes = []
    for n in range(0, count, 2):
        for off in (0.0, size - line):
            dashes += [
                box(left + n * dash, top + off, dash, line),
                box(left + off, top + n * dash, line, dash),
            ]
    return joined(*dashes)
