"""The pieces of patterns and of sorting: kinds that differ by their form, not only by color."""

from math import floor

from warmup.pictures.canvas import Canvas, Ink, box, disc, frame, polygon


def piece(canvas: Canvas, form: str, left: float, top: float, size: int) -> None:
    """Paint one of ``FORMS``, or "?" for an empty place, in a square of ``size`` cell widths.

    ``left`` is to be a multiple of a half and ``top`` whole, so that edges lie on pixels. ValueError
    for another form.
    """
    middle = left + size / 2
    match form:
        case "circle":
            canvas.paint(disc(middle, top + size / 2, size / 2), Ink.FIRST)
        case "square":
            canvas.paint(frame(left, top, size, size, max(1, floor(size / 5))), Ink.SECOND)
        case "triangle":
            # A hair wider than its square: an edge through a pixel's middle falls alike on both sides.
            low, wide = top + size, size / 2 + 0.01
            canvas.paint(polygon([(middle, top), (middle - wide, low), (middle + wide, low)]), Ink.INK)
        case "?":
            canvas.paint(box(left, top, size, size), Ink.HOLE)
        case _:
            raise ValueError(f"no piece has the form {form!r}")
