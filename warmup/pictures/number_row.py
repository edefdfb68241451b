"""Number cards in a row, one or more of them blank."""

from dataclasses import dataclass

from warmup.pictures._told import in_a_row
from warmup.pictures.base import Picture
from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class NumberRow(Picture):
    """Cards with the numerals of ``texts`` from left to right; "?" is an empty card, a hole."""

    texts: tuple[str, ...]
    kind: str = "number-row"

    def _widest(self) -> int:
        return max((extent(text)[0] for text in self.texts if text != "?"), default=3)

    def least(self) -> tuple[int, int]:
        """Blocks of one cell, a block of card round each numeral, a cell between cards."""
        return len(self.texts) * (self._widest() + 3) - 1, 4

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Equal cards in the middle, the numerals as large as fit."""
        sketch = Sketch(columns, rows)
        count, wide = len(self.texts), self._widest()
        # A numeral and a block of card on every side; a cell between two cards.
        block = max(1, min((columns - count + 1) // (count * (wide + 2)), 2 * rows // 7))
        card, high = (wide + 2) * block, (7 * block + 1) // 2
        gap = max(1, min((columns - count * card) // max(1, count), 3))
        left, top = (columns - count * card - (count - 1) * gap) // 2, (rows - high) // 2
        for text in self.texts:
            sketch.tile(left, top, card, high, Ink.HOLE if text == "?" else Ink.TILE)
            if text != "?":
                inset = (card - extent(text)[0] * block) / 2
                write(sketch, left + inset, 2 * top + (2 * high - 5 * block) // 2, text, block)
            left += card + gap
        return sketch

    def words(self) -> str:
        """What lies there; no number, which could be an answer."""
        return "number cards in a row" + (", a blank among them" if "?" in self.texts else "")

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        return f"cards, left to right: {in_a_row(self.texts)}"

    def shows(self) -> tuple[str, ...]:
        """The numerals on the cards."""
        return tuple(text for text in self.texts if text != "?")


PICTURE = NumberRow
