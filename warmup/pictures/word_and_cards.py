"""A written word and the number cards to match it with."""

from dataclasses import dataclass
from math import ceil, floor

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import box
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class WordAndCards(Picture):
    """``word`` in large letters, and under it number cards with ``texts`` from left to right.

    A hyphenated word parts after its hyphen where one line is too narrow.
    """

    word: str
    texts: tuple[str, ...]
    kind: str = "word-and-cards"

    def _lines(self, apart: bool) -> tuple[str, ...]:
        return tuple((self.word.replace("-", "- ") if apart else self.word).split())

    def _card(self) -> int:
        """A card's width in blocks: its numeral and a block on either side."""
        return max(extent(text)[0] for text in self.texts) + 2

    def _size(self, lines: tuple[str, ...], block: float = 1.0) -> tuple[float, float]:
        """Width and height at blocks so large, half a cell between cards."""
        sizes = [extent(line) for line in lines]
        cards = len(self.texts) * (self._card() * block + 0.5) - 0.5
        high = sum(6 + up + down for _, up, down in sizes) + 7
        return max(cards, *(wide * block for wide, _, _ in sizes)), high * block

    def least(self) -> tuple[int, int]:
        """Blocks of one cell, the word in as many lines as it has parts."""
        wide, high = self._size(self._lines(apart=True))
        return ceil(wide), ceil(high / 2)

    def fits(self, columns: int, rows: int) -> bool:
        """In a low pane also with the word in one line."""
        return super().fits(columns, rows) or self._fit(self._lines(apart=False), columns, rows) >= 1

    def sketch(self, columns: int, rows: int) -> Sketch:
        """The word above, the cards below, all in blocks of one size."""
        sketch = Sketch(columns, rows)
        block, lines = max((self._fit(self._lines(a), columns, rows), self._lines(a)) for a in (False, True))
        block = max(1.0, block)
        top = float((2 * rows - self._size(lines, block)[1]) // 2)
        for line in lines:
            wide, above, below = extent(line)
            write(sketch, round(columns - wide * block) / 2, top + above * block, line, block)
            top += (6 + above + below) * block
        card, count = self._card() * block, len(self.texts)
        gap = max(0.5, min((columns - count * card) // count, 3.0))
        left = floor(columns - count * (card + gap) + gap) / 2
        for text in self.texts:
            sketch.paint(box(left, top, card, 7 * block), Ink.TILE)
            inset = (card - extent(text)[0] * block) / 2
            write(sketch, left + inset, top + block, text, block)
            left += card + gap
        return sketch

    def _fit(self, lines: tuple[str, ...], columns: int, rows: int) -> float:
        """The largest blocks, in halves, with which all of it fits; 0 when none do."""
        fits = 0.0
        while True:
            wide, high = self._size(lines, fits + 0.5)
            if wide > columns or high > 2 * rows:
                return fits
            fits += 0.5

    def words(self) -> str:
        """A word and a row of cards; neither the word nor the numerals."""
        return "a word in big letters over a row of number cards"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"the word “{self.word}”; under it cards, left to right: {in_a_row(self.texts)}"

    def shows(self) -> tuple[str, ...]:
        """The word and the numerals."""
        return (self.word, *self.texts)


PICTURE = WordAndCards
