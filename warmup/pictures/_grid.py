"""Where round things lie in even rows."""

from math import floor

from warmup.pictures.shapes import Point


def grid(count: int, across: int, lines: int, width: float, height: float) -> tuple[list[Point], float]:
    """The middles of ``count`` round things row by row, ``across`` a row, and their radius.

    They are as large as a pane of this width and height allows, with a gap of about a fifth between two,
    and all stand alike on their pixels; three cells is the least they are wide.
    """
    beside = down = float(max(4, floor(min((width + 1) / across, (height + 1) / lines))))
    radius = (down - max(1, round(0.2 * down))) / 2
    if beside * across > width + 1:
        # The smallest may stand closer side by side, where a pixel is half as wide as it is high.
        beside = max(3.5, floor(2 * (width + 0.5) / across) / 2)
    left = floor(width - (across - 1) * beside - 2 * radius) / 2 + radius
    top = floor((height - (lines - 1) * down) / 2 - radius) + radius
    return [(left + at % across * beside, top + at // across * down) for at in range(count)], radius
