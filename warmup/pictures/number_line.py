"""A number line with ticks, numerals, a place to start from, and hops."""

from dataclasses import dataclass

from warmup.pictures._told import blank_told
from warmup.pictures.base import Picture
from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import bow, box, disc
from warmup.pictures.sketch import Sketch

_LARGE = {1: 6, 2: 10, 3: 14}
"""Cells from one number to the next that large numerals of so many digits want, side by side."""

_BELOW = (1, 3, 6)
"""Rows under the line for numerals in print, in blocks of one cell width, of two."""

_STEP = 5
"""Cells from one number to the next, where there is room: enough to see a hop of one."""


@dataclass(frozen=True, eq=False, repr=False)
class NumberLine(Picture):
    """The numbers ``first`` to ``last`` on a line that goes on in further lines where it is too long.

    ``start`` is the number to start from, marked by a solid dot. ``hops`` are signed steps, one arc
    each, the first from ``start`` (from ``first`` without one); where the last lands is not marked.
    ``hidden`` numbers are holes.
    """

    first: int
    last: int
    hops: tuple[int, ...] = ()
    start: int | None = None
    hidden: tuple[int, ...] = ()
    kind: str = "number-line"

    def _count(self) -> int:
        return self.last - self.first + 1

    def _high(self) -> int:
        """Rows a line needs: the arcs or the dot, the line with its ticks, the numerals."""
        return 3 if self.hops or self.start is not None else 2

    def least(self) -> tuple[int, int]:
        """Three cells a number in at most three lines."""
        lines = min(3, -(-self._count() // 6))
        return max(12, 3 * -(-self._count() // lines) + 1), lines * self._high()

    def _large_step(self) -> int:
        """Cells a number so that no two large numerals meet; ten alone fits beside a nine at six."""
        return _LARGE[1 if self.last <= 10 else len(str(self.last))]

    def _shape(self, columns: int, rows: int) -> tuple[int, int, int, int]:
        """How many lines, numbers a line, cells a number, and the side of the numerals' blocks (0: print)."""
        fewest = -(-self._count() // ((columns - 1) // _STEP))
        large = self._large_step()
        for step, block in ((2 * large, 2), (large, 1), (_STEP, 0), (4, 0), (3, 0)):
            each = max(1, (columns - 1) // step)
            lines = -(-self._count() // each)
            high = self._high() + _BELOW[block] - 1
            # Large numerals may cost a line more where the pane is tall, but not in a low one.
            most = (5, 3 if rows >= 24 else fewest, 2)[block]
            if lines * high <= rows and lines <= most:
                break
        each = -(-self._count() // lines)
        return lines, each, max(3, min((columns - 1) // each, (9, 14, 28)[block])), block

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Lines one under another; each goes on where the one above leaves off."""
        sketch = Sketch(columns, rows)
        lines, each, step, block = self._shape(columns, rows)
        below = _BELOW[block]
        high = max(self._high() + below - 1, min(rows // lines, self._high() + below + 3 + 2 * block))
        left, top = (columns - each * step) // 2, (rows - lines * high) // 2
        for line in range(lines):
            low = self.first + line * each
            here = range(low, min(low + each, self.last + 1))
            row = top + (line + 1) * high - 1 - below
            self._draw_line(sketch, here, left, row, step)
            self._draw_hops(sketch, here, (left, row, step), high - 1 - below)
            for at, number in enumerate(here):
                self._draw_number(sketch, number, left + at * step + step // 2, row, block)
        return sketch

    def _draw_line(self, sketch: Sketch, here: range, left: int, row: int, step: int) -> None:
        """The line in the lower half of its row of cells, with a tick for each number."""
        begin = left if here.start > self.first else left + step // 2
        end = (
            left + len(here) * step if here[-1] < self.last else left + (len(here) - 1) * step + step // 2 + 1
        )
        sketch.paint(box(begin, 2 * row + 1, end - begin, 1), Ink.SOFT)
        for at in range(len(here)):
            sketch.tile(left + at * step + step // 2, row, 1, 1, Ink.SOFT)

    def _draw_number(self, sketch: Sketch, number: int, x: int, row: int, block: int) -> None:
        """The numeral under the tick in column ``x``, or its hole, and the dot if the start is here."""
        text = str(number)
        if number == self.start:
            sketch.paint(disc(x + 0.5, 2 * row + 0.5, 1.5 * max(1, block)), Ink.SECOND)
        if number in self.hidden:
            wide = (extent(text)[0] + 2) * block if block else 3
            sketch.tile(x - wide // 2, row + 1, wide, _BELOW[block], Ink.HOLE)
        elif block:
            # A block to the right, ten stands clear of the nine before it.
            aside = block if len(text) > 1 and self.last <= 10 else 0
            write(sketch, x + 0.5 - extent(text)[0] * block / 2 + aside, 2 * row + 3, text, block)
        else:
            sketch.label(x - (len(text) - 1) // 2 - (len(text) > 2), row + 1, text)

    def _draw_hops(self, sketch: Sketch, here: range, where: tuple[int, int, int], room: int) -> None:
        """The arcs, or the parts of them, that lie over this line."""
        left, row, step = where
        at = self.first if self.start is None else self.start
        for hop in self.hops:
            low, high = sorted((at, at + hop))
            at += hop
            if low == high:
                continue
            x0, x1 = (left + (n - here.start) * step + step // 2 + 0.5 for n in (low, high))
            if low < here.stop and high >= here.start:
                edges = left, left + len(here) * step
                sketch.paint(bow(x0, x1, 2 * row, 2 * room - 0.7, 1.3, edges), Ink.FIRST)

    def words(self) -> str:
        """Its ends where they can be read, where to start and how many hops; not where they land."""
        ends = "" if {self.first, self.last} & set(self.hidden) else f" from {self.first} to {self.last}"
        begin = f", a dot on {self.start}" if self.start is not None else ""
        arcs = {0: "", 1: ", a hop drawn"}.get(len(self.hops), f", {len(self.hops)} hops drawn")
        bare = {0: "", 1: ", a number left blank"}.get(len(self.hidden), ", some numbers left blank")
        return f"a number line{ends}{begin}{arcs}{bare}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        begin = f"; a dot on {self.start}" if self.start is not None else ""
        arcs = ", ".join(f"{abs(hop)} {'on' if hop > 0 else 'back'}" for hop in self.hops)
        hops = f"; hops drawn: {arcs}" if arcs else ""
        return f"a number line from {self.first} to {self.last}{begin}{hops}{blank_told(self.hidden)}"

    def shows(self) -> tuple[str, ...]:
        """Every numeral that is not hidden."""
        return tuple(str(n) for n in range(self.first, self.last + 1) if n not in self.hidden)

    def marked(self) -> tuple[str, ...]:
        """The number to start from."""
        return () if self.start is None else (str(self.start),)


PICTURE = NumberLine
