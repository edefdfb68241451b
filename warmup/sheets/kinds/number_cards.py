"""Cards with numbers, and cards with their words, from zero to twenty."""

from collections.abc import Iterator

from warmup.english import number_word
from warmup.sheets import cards
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Words, segment

WIDE, HIGH, LAST = 49.0, 40.0, 20


def _pages(_day: Day) -> Iterator[Page]:
    yield from cards.pages("numbers", [_number(n) for n in range(LAST + 1)], WIDE, HIGH)
    yield from cards.pages("words", [_word(number_word(n)) for n in range(LAST + 1)], WIDE, HIGH)


def _number(n: int) -> cards.Card:
    """The number over a line that says which way up it is: a six turned round is a nine."""
    foot = segment(WIDE / 2 - 9, HIGH - 6, WIDE / 2 + 9, HIGH - 6)
    return Words((WIDE / 2, HIGH / 2 - 2), str(n), 22.0), foot


def _word(word: str) -> cards.Card:
    return (Words((WIDE / 2, HIGH / 2), word, 9.0),)


SHEET = Sheet(
    "Number cards",
    "To read, to put in order, and to lay beside so many things.",
    _pages,
    Use(("number cards", "labels"), ("number-row", "numeral", "word-and-cards")),
)
