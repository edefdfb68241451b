"""A numeral, or a number word, as large as it will go."""

from dataclasses import dataclass
from math import floor

from warmup.pictures.base import Picture
from warmup.pictures.glyphs import extent, write
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Numeral(Picture):
    """``text`` in large blocks: digits, small letters, ``? + - = / : ¢``; other letters are made small.

    Words part at a space, and after a hyphen where a line would be too long. KeyError on drawing a
    glyph there is no block form of.
    """

    text: str
    kind: str = "numeral"

    def _lines(self, apart: bool) -> tuple[str, ...]:
        text = self.text.lower()
        if text.replace("-", "").replace(" ", "").isalpha():
            return tuple((text.replace("-", "- ") if apart else text).split())
        return (text,)

    def _size(self, lines: tuple[str, ...], gap: int = 1) -> tuple[int, int]:
        """Blocks wide and high, ``gap`` blocks between lines."""
        sizes = [extent(line) for line in lines]
        return max(wide for wide, _, _ in sizes), sum(5 + up + down + gap for _, up, down in sizes) - gap

    def least(self) -> tuple[int, int]:
        """One cell a block across, half a row a block down."""
        wide, high = self._size(self._lines(apart=True), gap=0)
        return wide, (high + 1) // 2

    def fits(self, columns: int, rows: int) -> bool:
        """In a low pane also in one line."""
        return super().fits(columns, rows) or self._fit(self._lines(apart=False), columns, rows) >= 1

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The lines one under another, in the middle, blocks as large as fit."""
        sketch = Sketch(columns, rows)
        lines = max((self._lines(a) for a in (False, True)), key=lambda some: self._fit(some, columns, rows))
        block = max(1.0, self._fit(lines, columns, rows))
        # Where rows are short, what hangs down may come next to what reaches up on the line below.
        gap = 1 if self._size(lines)[1] * block <= 2 * rows else 0
        top = (2 * rows - self._size(lines, gap)[1] * block) // 2
        for line in lines:
            wide, above, below = extent(line)
            write(sketch, round(columns - wide * block) / 2, top + above * block, line, block)
            top += (5 + above + below + gap) * block
        return sketch

    def _fit(self, lines: tuple[str, ...], columns: int, rows: int) -> float:
        """The largest blocks, in halves, that leave a little ground on all sides; 0: none do."""
        wide, high = self._size(lines)
        return floor(2 * min((columns - 1) / wide, (2 * rows - 1) / high)) / 2

    def words(self) -> str:
        """What kind of sign it is, not which."""
        if self.text == "?":
            return "a big question mark"
        return "a word in big letters" if self.text[:1].isalpha() else "a big numeral"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"in big print: {self.text}"

    def shows(self) -> tuple[str, ...]:
        """The text, unless it is only the asking mark."""
        return () if self.text == "?" else (self.text,)


PICTURE = Numeral
