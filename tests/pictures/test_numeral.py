import pytest

from tests.pictures.blobs import boxes, pieces, pixels, span
from warmup.english import number_word
from warmup.pictures.cells import drawn
from warmup.pictures.glyphs import extent, write
from warmup.pictures.ink import Ink
from warmup.pictures.number_row import NumberRow
from warmup.pictures.numeral import Numeral
from warmup.pictures.sketch import Sketch

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


@pytest.mark.parametrize("text", ["0", "7", "29", "100", "?", "12", "21"])
@pytest.mark.parametrize("pane", PANES)
def test_a_numeral_is_two_rows_and_a_half_tall_at_least_and_centered(
    text: str, pane: tuple[int, int]
) -> None:
    ((left, top, right, bottom),) = boxes(Numeral(text), pane, Ink.INK)
    assert bottom - top >= 5 and 2 * (bottom - top) % 5 == 0, "five blocks, in halves of a cell width"
    assert left > 0 and top >= 0 and right < pane[0] and bottom <= 2 * pane[1]
    assert abs(left - (pane[0] - right)) <= 2 and abs(top - (2 * pane[1] - bottom)) <= 1


def test_every_numeral_and_letter_has_a_form_of_its_own() -> None:
    forms: dict[frozenset[tuple[int, int]], list[str]] = {}
    for glyph in "0123456789abcdefghijklmnopqrstuvwxyz?+-=/:¢":
        sketch = Sketch(12, 10)
        write(sketch, 2, 6, glyph)
        forms.setdefault(frozenset(pixels(drawn(sketch, smooth=False), Ink.INK)), []).append(glyph)
    alike = [same for same in forms.values() if len(same) > 1]
    assert alike == [["0", "o"], ["5", "s"], ["9", "g"]] or all(
        not (set(same) <= set("0123456789") or set(same) <= set("abcdefghijklmnopqrstuvwxyz"))
        for same in alike
    )


@pytest.mark.parametrize("number", [*range(21), 30, 40, 47, 78, 100])
def test_number_words_fit_the_smallest_stage(number: int) -> None:
    word = Numeral(number_word(number))
    columns, rows = word.least()
    assert columns <= 40 and rows <= 10
    for pane in ((40, 18), (80, 38)):
        left, top, right, bottom = span(pixels(word.draw(*pane), Ink.INK))
        assert left >= 0 and right < 2 * pane[0] and top >= 0 and bottom < 2 * pane[1]
        assert bottom - top + 1 >= 5


def test_the_words_do_not_tell_the_numeral() -> None:
    assert "29" not in Numeral("29").words() and Numeral("29").shows() == ("29",)
    assert "seven" not in Numeral("seven").words()
    assert Numeral("?").shows() == ()


def test_extent_counts_blocks() -> None:
    assert extent("29") == (7, 0, 0)
    assert extent("eight") == (3 + 1 + 1 + 1 + 3 + 1 + 3 + 1 + 3, 2, 2)


@pytest.mark.parametrize("pane", PANES)
def test_the_blank_card_is_a_hole_as_large_as_the_others(pane: tuple[int, int]) -> None:
    row = NumberRow(("29", "?", "31"))
    drawing = row.draw(*pane)
    hole = pixels(drawing, Ink.HOLE)
    left, top, right, bottom = span(hole)
    assert len(hole) == (right - left + 1) * (bottom - top + 1), "nothing is written on it"
    cards = pieces(pixels(drawing, Ink.TILE) | pixels(drawing, Ink.INK))
    spans = {(b - t + 1, r - x + 1) for x, t, r, b in map(span, cards)}
    assert spans == {(bottom - top + 1, right - left + 1)} and len(cards) == 2
    assert row.shows() == ("29", "31") and not any(text in row.words() for text in row.texts if text != "?")


def test_a_row_of_five_fits_the_small_stages() -> None:
    assert NumberRow(("1", "2", "3", "?", "5")).least() <= (40, 9)
    assert NumberRow(("28", "29", "?", "31")).least() <= (40, 9)
