"""Paints a sketch in the cells of a terminal: by coverage in mixed inks, or in plain inks alone.

A cell holds four pixels, two by two (the quadrant glyphs). Painted smoothly, a pixel is a mix of the
inks that cover it, and a cell shows the two mixes that come nearest to its four; where one straight
level or upright edge runs through it, eighth blocks put that edge in its place. Painted plainly, a
pixel is the ink of what covers its middle: for terminals that show no mixes.

Inside, a mix goes by a number: the list of mixes met so far, which grows but never changes.
"""

from collections import Counter
from collections.abc import Iterator
from functools import cache, lru_cache
from math import ceil, floor
from typing import NamedTuple

from warmup.pictures.ink import PARTS, Ink, Mix, Shade, between, heaviest, mixed, parts_of
from warmup.pictures.shapes import Rect, Shape
from warmup.pictures.sketch import Label, Sketch

_QUADRANTS = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"
_LOWER = " ▁▂▃▄▅▆▇█"
_LEFT = " ▏▎▍▌▋▊▉█"
_FINE = 4
"""Level lines to a pixel: eight to a cell, so that a level edge falls on the eighth it lies nearest to."""

_SHARES, _STEPS = 16, 32
"""Steps of coverage, and of a shade."""

_PLAIN = len(Ink)
"""Numbers below this are those of plain inks."""

_HAIR = 1e-6

_ALIKE = PARTS // 5
"""Neighbors in a straight edge that is not quite level or upright differ by no more parts than this."""


class Cell(NamedTuple):
    """One cell of a drawing: its glyph, the glyph's mix and the mix behind it."""

    glyph: str
    ink: Mix
    paper: Mix
    bold: bool = False


class Drawing(NamedTuple):
    """A finished picture: ``rows`` rows of ``columns`` cells each."""

    columns: int
    rows: int
    cells: tuple[tuple[Cell, ...], ...]

    def text(self) -> str:
        """The glyphs alone, a line a row, blanks at the ends cut off."""
        return "\n".join("".join(cell.glyph for cell in row).rstrip() for row in self.cells)


def drawn(sketch: Sketch, *, smooth: bool) -> Drawing:
    """The sketch in cells, in mixes where ``smooth``, otherwise in plain inks."""
    pixels = [[0] * (2 * sketch.columns) for _ in range(2 * sketch.rows)]
    fill = _fill if smooth else _fill_plainly
    for shape, ink in sketch.shapes:
        fill(pixels, shape, ink)
    rows = [_row(pixels, row, smooth=smooth) for row in range(sketch.rows)]
    for label in sketch.labels:
        _write(rows, pixels, label)
    return Drawing(sketch.columns, sketch.rows, tuple(map(tuple, rows)))


# ---- mixes by number ---------------------------------------------------------------------------------

Pixels = list[list[int]]

_MIXES: list[Mix] = list(Ink)
_NUMBERS: dict[Mix, int] = {ink: int(ink) for ink in Ink}


def _number(mix: Mix) -> int:
    if mix not in _NUMBERS:
        _NUMBERS[mix] = len(_MIXES)
        _MIXES.append(mix)
    return _NUMBERS[mix]


@cache
def _over(below: int, above: int, shares: int) -> int:
    """A mix with some of :data:`_SHARES` shares of it covered by another."""
    return _number(between(_MIXES[below], _MIXES[above], shares / _SHARES))


@lru_cache(maxsize=64)
def _shades(shade: Shade, *, smooth: bool) -> tuple[int, ...]:
    """The shade's mixes, or its plain inks, from its beginning to its end."""
    mixes = [shade.at(n / _STEPS) for n in range(_STEPS + 1)]
    return tuple(_number(mix if smooth else heaviest(mix)) for mix in mixes)


# ---- pixels ------------------------------------------------------------------------------------------


def _lines(pixels: Pixels, shape: Shape, each: int) -> Iterator[tuple[int, list[list[float]]]]:
    """The rows of pixels that a shape may touch, and ``each`` of the level lines through them.

    A pixel is one cell width high and half of one wide; crossings are given in pixels.
    """
    _, top, _, bottom = shape.box
    first, last = max(0, int(top)), min(len(pixels), ceil(bottom))
    if first < last:
        lines = shape.crossings(first + 0.5 / each, 1 / each, each * (last - first))
        for row in range(first, last):
            begin = each * (row - first)
            yield row, [[2 * x for x in line] for line in lines[begin : begin + each]]


def _fill(pixels: Pixels, shape: Shape, ink: Ink | Shade) -> None:
    """Cover each pixel by as much of the shape as lies in it."""
    if isinstance(shape, Rect):
        _fill_rect(pixels, shape, ink)
        return
    wide = len(pixels[0])
    whole = float(_FINE)
    for row, lines in _lines(pixels, shape, _FINE):
        # What each pixel is covered more than the one before it: summed up, the cover.
        steps: dict[int, float] = {}
        for line in lines:
            sign = 1.0
            for x in line:
                x = 0.0 if x < 0 else wide if x > wide else x
                at = int(x)
                part = (x - at) * sign
                steps[at] = steps.get(at, 0.0) + sign - part
                steps[at + 1] = steps.get(at + 1, 0.0) + part
                sign = -sign
        covered, at = 0.0, 0
        for then in sorted(steps):
            if covered > 0.1 and at < then:
                shares = round(covered / whole * _SHARES)
                if shares:
                    _mix(pixels[row], row, at, min(then, wide), ink, shares)
            covered += steps[then]
            at = then


def _fill_rect(pixels: Pixels, rect: Rect, ink: Ink | Shade) -> None:
    """The same for a rectangle, of which most pixels are covered wholly."""
    left, top, right, bottom = rect.box
    left, right = max(0.0, 2 * left), min(float(len(pixels[0])), 2 * right)
    if left >= right:
        return
    begin, end = int(left), int(right)
    if begin == end:
        parts = [(begin, begin + 1, right - left)]
    else:
        parts = [(begin, begin + 1, begin + 1 - left), (begin + 1, end, 1.0), (end, end + 1, right - end)]
    for row in range(max(0, int(top)), min(len(pixels), ceil(bottom))):
        high = min(bottom, row + 1) - max(top, row)
        for first, last, across in parts:
            shares = round(across * high * _SHARES)
            if shares and first < last:
                _mix(pixels[row], row, first, last, ink, shares)


def _mix(line: list[int], row: int, begin: int, end: int, ink: Ink | Shade, shares: int) -> None:
    """Cover some pixels of a row alike."""
    if isinstance(ink, Shade):
        above = _shaded(ink, row, begin, end, smooth=True)
        if shares < _SHARES:
            above = [_over(line[begin + n], mix, shares) for n, mix in enumerate(above)]
        line[begin:end] = above
    elif shares == _SHARES:
        line[begin:end] = [int(ink)] * (end - begin)
    else:
        above_all = int(ink)
        line[begin:end] = [_over(below, above_all, shares) for below in line[begin:end]]


def _fill_plainly(pixels: Pixels, shape: Shape, ink: Ink | Shade) -> None:
    """Give each pixel whose middle lies in the shape its ink."""
    wide = len(pixels[0])
    for row, (line,) in _lines(pixels, shape, 1):
        for place in range(0, len(line) - 1, 2):
            # A middle on the edge itself counts as inside on both sides, so that both come out alike.
            begin = max(0, ceil(line[place] - 0.5 - _HAIR))
            end = min(wide, floor(line[place + 1] - 0.5 + _HAIR) + 1)
            if begin < end:
                plain = (
                    _shaded(ink, row, begin, end, smooth=False)
                    if isinstance(ink, Shade)
                    else [int(ink)] * (end - begin)
                )
                pixels[row][begin:end] = plain


def _shaded(shade: Shade, row: int, begin: int, end: int, *, smooth: bool) -> list[int]:
    """The numbers of a shade's mixes at the middles of some pixels of a row."""
    mixes, most = _shades(shade, smooth=smooth), _STEPS
    shares = shade.along(begin / 2 + 0.25, row + 0.5, 0.5, end - begin)
    return [mixes[0 if share < 0 else most if share >= 1 else int(share * most + 0.5)] for share in shares]


# ---- cells -------------------------------------------------------------------------------------------


def _row(pixels: Pixels, row: int, *, smooth: bool) -> list[Cell]:
    """The cells of a row."""
    upper, lower = pixels[2 * row], pixels[2 * row + 1]
    fours = zip(upper[::2], upper[1::2], lower[::2], lower[1::2], strict=True)
    if not smooth or max(max(upper), max(lower)) < _PLAIN:
        return [_cell(four) for four in fours]
    return [
        (max(four) >= _PLAIN and _with_edge(pixels, row, column, four)) or _cell(four)
        for column, four in enumerate(fours)
    ]


Four = tuple[int, int, int, int]


@lru_cache(maxsize=20_000)
def _cell(four: Four) -> Cell:
    """The cell that comes nearest to four pixels, those of the upper row first."""
    kinds = set(four)
    if len(kinds) == 1:
        return _full(_MIXES[four[0]])
    if len(kinds) == 2:
        # By what is in them: numbers tell only what was drawn first.
        one, other = sorted(kinds, key=lambda number: parts_of(_MIXES[number]))
        mask = sum(1 << bit for bit in range(4) if four[bit] == other)
        return Cell(_QUADRANTS[mask], _MIXES[other], _MIXES[one])
    if max(kinds) < _PLAIN:
        counted = Counter(four).most_common(2)
        paper, ink = sorted((counted[0][0], counted[1][0]))
        mask = sum(1 << bit for bit in range(4) if four[bit] == ink)
        return Cell(_QUADRANTS[mask], _MIXES[ink], _MIXES[paper])
    far = [[_distance(one, other) for other in four] for one in four]
    mask = min(_PARTED, key=lambda mask: sum(_spread(far, some) for some in _PARTED[mask]))
    return Cell(_QUADRANTS[mask], _mean(four, mask), _mean(four, 15 - mask))


_PARTED = {
    mask: tuple(tuple(bit for bit in range(4) if side >> bit & 1) for side in (mask, 15 - mask))
    for mask in range(2, 16, 2)
}
"""The seven ways to part four pixels in two, by the mask of those that are the glyph's."""


def _full(mix: Mix) -> Cell:
    # A full block in one ink: no seam shows between neighbors, as it may between blanks.
    return Cell(" " if mix is Ink.GROUND else "█", mix, mix)


def _mean(four: Four, mask: int) -> Mix:
    """The mix of those of four pixels whose bits are set."""
    weights: dict[Ink, float] = {}
    for bit, pixel in enumerate(four):
        if mask >> bit & 1:
            for ink, count in parts_of(_MIXES[pixel]):
                weights[ink] = weights.get(ink, 0.0) + count
    return mixed(weights)


def _spread(far: list[list[float]], some: tuple[int, ...]) -> float:
    """How far, in squares, some of four pixels lie from their mean, by how far they lie from each other."""
    return sum(far[one][other] for one in some for other in some if one < other) / len(some)


@lru_cache(maxsize=20_000)
def _distance(one: int, other: int) -> float:
    """How far two mixes lie apart, in squares of parts."""
    first, second = dict(parts_of(_MIXES[one])), dict(parts_of(_MIXES[other]))
    return float(sum((first.get(ink, 0) - second.get(ink, 0)) ** 2 for ink in {*first, *second}))


def _with_edge(pixels: Pixels, row: int, column: int, four: Four) -> Cell | None:
    """The cell as an eighth block where one straight edge between two inks runs through it, or None."""
    upper_left, upper_right, lower_left, lower_right = four
    y, x = 2 * row, 2 * column
    if _near(upper_left, upper_right) and _near(lower_left, lower_right):
        above = pixels[y - 1][x] if y else upper_left
        below = pixels[y + 2][x] if y + 2 < len(pixels) else lower_left
        level = True
    elif _near(upper_left, lower_left) and _near(upper_right, lower_right):
        line = pixels[y]
        above = line[x - 1] if x else upper_left
        below = line[x + 2] if x + 2 < len(line) else upper_right
        four, level = (upper_left, lower_left, upper_right, lower_right), False
    else:
        return None
    edge = _edge(above, four, below)
    if edge is None:
        return None
    eighths, one, other = edge
    if eighths in (0, 8):
        return _full(one if eighths else other)
    return Cell(_LOWER[8 - eighths], other, one) if level else Cell(_LEFT[eighths], one, other)


@lru_cache(maxsize=20_000)
def _near(one: int, other: int) -> bool:
    """Whether two pixels may both lie on one edge that is nearly level, or nearly upright."""
    if one == other:
        return True
    if one < _PLAIN and other < _PLAIN:
        return False
    first, second = dict(parts_of(_MIXES[one])), dict(parts_of(_MIXES[other]))
    return all(abs(first.get(ink, 0) - second.get(ink, 0)) <= _ALIKE for ink in {*first, *second})


@lru_cache(maxsize=20_000)
def _edge(before: int, four: Four, after: int) -> tuple[int, Ink, Ink] | None:
    """How many eighths of a cell lie before its edge, and the plain inks before and after.

    ``four`` are the cell's pixels, the two before the edge first; ``before`` and ``after`` lie beyond
    them. None unless all pass from one plain ink to another at one place: a thin line, or a corner, is
    shown in mixes.
    """
    if four[0] == four[1] < _PLAIN:
        before = four[0]
    if four[2] == four[3] < _PLAIN:
        after = four[2]
    if before == after or before >= _PLAIN or after >= _PLAIN:
        return None
    shares = []
    for pixel in four:
        parts = {int(ink): count for ink, count in parts_of(_MIXES[pixel])}
        if not parts.keys() <= {before, after}:
            return None
        shares.append(parts.get(before, 0))
    near, far = shares[0] + shares[1], shares[2] + shares[3]
    # Where the near half is not whole and the far one not empty, the change is no edge but a blur.
    if near < 2 * PARTS - _ALIKE and far > _ALIKE:
        return None
    return round((near + far) / (4 * PARTS) * 8), Ink(before), Ink(after)


# ---- labels ------------------------------------------------------------------------------------------


def _write(rows: list[list[Cell]], pixels: Pixels, label: Label) -> None:
    """Put letters into cells, each over the ink there is most of behind it."""
    row = label.row
    if not 0 <= row < len(rows):
        return
    cells, upper, lower = rows[row], pixels[2 * row], pixels[2 * row + 1]
    for at, letter in enumerate(label.text, start=label.column):
        if 0 <= at < len(cells):
            four = (*upper[2 * at : 2 * at + 2], *lower[2 * at : 2 * at + 2])
            behind = Counter(four).most_common(1)[0][0]
            cells[at] = Cell(letter, label.ink, _MIXES[behind], True)
