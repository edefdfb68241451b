"""A written word and the number cards to match it with."""

from typing import NamedTuple

from warmup.pictures._told import in_a_row
from warmup.pictures.canvas import Canvas, Drawing, Ink
from warmup.pictures.glyphs import extent, write


class WordAndCards(NamedTuple):
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

    def _size(self, lines: tuple[str, ...]) -> tuple[int, int]:
        """Cells wide (a cell between cards) and half rows high at a block of one."""
        sizes = [extent(line) for line in lines]
        cards = len(self.texts) * (self._card() + 1) - 1
        return max(cards, *(wide for wide, _, _ in sizes)), sum(6 + up + down for _, up, down in sizes) + 8

    def least(self) -> tuple[int, int]:
        """Blocks of one cell, the word in as many lines as it has parts."""
        wide, high = self._size(self._lines(apart=True))
        return wide, (high + 1) // 2

    def draw(self, columns: int, rows: int) -> Drawing:
        """The word above, the cards below, all in blocks of one size."""
        canvas = Canvas(columns, rows)
        block, lines = max((self._fit(self._lines(a), columns, rows), self._lines(a)) for a in (False, True))
        block = max(1, block)
        top = (2 * rows - self._size(lines)[1] * block) // 2
        for line in lines:
            wide, above, below = extent(line)
            write(canvas, (columns - wide * block) / 2, top + above * block, line, block)
            top += (6 + above + below) * block
        # Cards are whole cells: they begin on an even half row and are an even number of them high.
        row, card, high = (top + 1) // 2, self._card() * block, (7 * block + 1) // 2
        gap = max(1, min((columns - len(self.texts) * card) // len(self.texts), 3))
        left = (columns - len(self.texts) * (card + gap) + gap) // 2
        for text in self.texts:
            canvas.tile(left, row, card, high, Ink.TILE)
            inset = (card - extent(text)[0] * block) / 2
            write(canvas, left + inset, 2 * row + (2 * high - 5 * block) // 2, text, block)
            left += card + gap
        return canvas.drawing()

    def _fit(self, lines: tuple[str, ...], columns: int, rows: int) -> int:
        """The largest block at which all of it fits, 0 when none does."""
        fits = (block for block in range(1, 12) if self._fits(lines, columns, rows, block))
        return max(fits, default=0)

    def _fits(self, lines: tuple[str, ...], columns: int, rows: int, block: int) -> bool:
        sizes = [extent(line) for line in lines]
        cards = len(self.texts) * (self._card() * block + 1) - 1
        high = self._size(lines)[1] * block
        return max(cards, *(wide * block for wide, _, _ in sizes)) <= columns and high <= 2 * rows

    def words(self) -> str:
        """A word and a row of cards; neither the word nor the numerals."""
        return "a word in big letters over a row of number cards"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"the word “{self.word}”; under it cards, left to right: {in_a_row(self.texts)}"

    def shows(self) -> tuple[str, ...]:
        """The word and the numerals."""
        return (self.word, *self.texts)

    def marked(self) -> tuple[str, ...]:
        """No card stands out."""
        return ()


PICTURE = WordAndCards
