"""What is painted: a sketch's shapes, and a drawing's glyphs read back as pixels that hang together."""

from warmup.pictures import Drawing, Ink, Picture
from warmup.pictures.shapes import Edges

_QUADRANTS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"
_LOWER, _LEFT = " ▁▂▃▄▅▆▇█", " ▏▎▍▌▋▊▉█"

Block = tuple[float, float, float, float]


def filled(glyph: str) -> tuple[Block, ...] | None:
    """The parts of a cell, as left, top, width and height from 0 to 1, that a block glyph fills.

    By the names of the Unicode block "Block Elements" (U+2580). None for any other glyph.
    """
    if glyph in _LOWER:
        high = _LOWER.index(glyph) / 8
        return ((0.0, 1 - high, 1.0, high),) if high else ()
    if glyph in _LEFT:
        return ((0.0, 0.0, _LEFT.index(glyph) / 8, 1.0),)
    if glyph in _QUADRANTS:
        mask = _QUADRANTS.index(glyph)
        return tuple((bit % 2 / 2, bit // 2 / 2, 0.5, 0.5) for bit in range(4) if mask >> bit & 1)
    return None


def pixels(drawing: Drawing, ink: Ink) -> set[tuple[int, int]]:
    """Every (x, y) painted in this ink; two pixels to a cell each way. Labels count as their paper."""
    found = set()
    for row, cells in enumerate(drawing.cells):
        for column, cell in enumerate(cells):
            if ink is cell.ink or ink is cell.paper:
                mask = max(0, _QUADRANTS.find(cell.glyph))
                for bit in range(4):
                    if ink is (cell.ink if mask >> bit & 1 else cell.paper):
                        found.add((2 * column + bit % 2, 2 * row + bit // 2))
    return found


def pieces(found: set[tuple[int, int]]) -> list[set[tuple[int, int]]]:
    """The pixels that touch along an edge, piece by piece, from the upper left."""
    left, groups = set(found), []
    for start in sorted(found, key=lambda p: (p[1], p[0])):
        if start not in left:
            continue
        left.remove(start)
        group, edge = {start}, [start]
        while edge:
            x, y = edge.pop()
            for near in ((x - 1, y), (x + 1, y), (x, y - 1), (x, y + 1)):
                if near in left:
                    left.remove(near)
                    group.add(near)
                    edge.append(near)
        groups.append(group)
    return groups


def span(piece: set[tuple[int, int]]) -> tuple[int, int, int, int]:
    """Left, top, right and bottom pixel of a piece, all included."""
    xs, ys = [x for x, _ in piece], [y for _, y in piece]
    return min(xs), min(ys), max(xs), max(ys)


def form_of(piece: set[tuple[int, int]]) -> frozenset[tuple[int, int]]:
    """The piece wherever it stands: moved so that its left and top are 0."""
    left, top, _, _ = span(piece)
    return frozenset((x - left, y - top) for x, y in piece)


def boxes(picture: Picture, size: tuple[int, int], ink: Ink) -> list[Edges]:
    """Left, top, right and bottom of each shape painted in this ink, in cell widths, in their order."""
    return [shape.box for shape, found in picture.sketch(*size).shapes if found is ink]


def measures(boxes: list[Edges]) -> set[tuple[float, float]]:
    """The different widths and heights of some boxes."""
    return {(round(right - left, 6), round(bottom - top, 6)) for left, top, right, bottom in boxes}
