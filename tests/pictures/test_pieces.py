"""The pieces of patterns and of sorting, and the two pictures that lay them out."""

import json

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures import from_data, to_data
from warmup.pictures.cells import Drawing, drawn
from warmup.pictures.facts import FORMS
from warmup.pictures.ink import Ink
from warmup.pictures.pattern_row import PatternRow
from warmup.pictures.pieces import piece
from warmup.pictures.sketch import Sketch
from warmup.pictures.sorted_rows import SortedRows

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
INKS = {"circle": Ink.FIRST, "square": Ink.SECOND, "triangle": Ink.INK, "?": Ink.HOLE}
LONGEST = PatternRow(("circle", "square", "triangle") * 2 + ("circle", "square", "?"))
MIXED = SortedRows((("circle", "square", "circle"), ("square", "square", "circle"), ("circle",)))
BIG = SortedRows((("circle",) * 4, ("square",) * 9, ("triangle",) * 3), "circle")


def counted(drawing: Drawing) -> dict[str, int]:
    """How many pieces of each form hang together on the drawing."""
    found = {form: len(pieces(pixels(drawing, INKS[form]))) for form in FORMS}
    return found | {"?": int(bool(pixels(drawing, Ink.HOLE)))}


@pytest.mark.parametrize("size", [3, 5, 9, 14, 30])
def test_an_empty_place_is_a_frame_of_dashes_and_no_piece(size: int) -> None:
    """As large as a piece, bare in its middle, and open in the middle of no side or beside it on all."""
    sketch = Sketch(40, 20)
    piece(sketch, "?", 3, 2, size)
    ((shape, ink),) = sketch.shapes
    assert ink is Ink.HOLE and shape.box == pytest.approx((3, 2, 3 + size, 2 + size))
    marks = pixels(drawn(sketch, smooth=False), Ink.HOLE)
    assert len(pieces(marks)) >= 4
    left, _, right, _ = span(marks)
    everything = {(x, y) for x in range(80) for y in range(40)}
    assert len(pieces(everything - marks)) == 1, "the inside is open to the outside"
    assert all(marks & side for side in ({(left, y) for y in range(40)}, {(right, y) for y in range(40)}))


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("size", [3, 4, 5, 7, 11])
def test_a_piece_fills_its_square_and_is_the_same_on_both_sides(form: str, size: int) -> None:
    sketch = Sketch(20, 10)
    piece(sketch, form, 3, 2, size)
    (found,) = pieces(pixels(drawn(sketch, smooth=False), INKS[form]))
    left, top, right, bottom = span(found)
    assert (left, right - left + 1) == (6, 2 * size)
    assert (top, bottom - top + 1) == (2, size)
    assert found == {(left + right - x, y) for x, y in found}


def test_forms_differ_without_color() -> None:
    """Solid, hollow and pointed: no two cover the same pixels."""
    shapes = []
    for form in FORMS:
        sketch = Sketch(12, 6)
        piece(sketch, form, 0, 0, 9)
        shapes.append(pixels(drawn(sketch, smooth=False), INKS[form]))
    disc, frame, triangle = shapes
    middle = (9, 4)
    assert middle in disc and middle in triangle and middle not in frame
    assert len({frozenset(shape) for shape in shapes}) == 3


def test_an_unknown_form_is_refused() -> None:
    with pytest.raises(ValueError, match="star"):
        piece(Sketch(9, 9), "star", 0, 0, 5)


@pytest.mark.parametrize("pane", [*PANES, LONGEST.least()])
def test_every_piece_of_a_row_is_there_and_one_place_is_bare(pane: tuple[int, int]) -> None:
    drawing = LONGEST.draw(*pane)
    assert counted(drawing) == {"circle": 3, "square": 3, "triangle": 2, "?": 1}
    tops = {span(pixels(drawing, ink))[1] for ink in INKS.values()}
    assert len(tops) == 1, "in one row"


@pytest.mark.parametrize("pane", [*PANES, MIXED.least()])
def test_a_mixed_heap_keeps_its_order(pane: tuple[int, int]) -> None:
    drawing = MIXED.draw(*pane)
    assert counted(drawing) == {"circle": 4, "square": 3, "triangle": 0, "?": 0}
    places = sorted(
        (span(group)[1], span(group)[0], form)
        for form in ("circle", "square")
        for group in pieces(pixels(drawing, INKS[form]))
    )
    assert [form for _, _, form in places] == [form for row in MIXED.rows for form in row]


@pytest.mark.parametrize("pane", [*PANES, BIG.least()])
def test_big_pieces_are_big_and_rows_begin_together(pane: tuple[int, int]) -> None:
    drawing = BIG.draw(*pane)
    assert counted(drawing) == {"circle": 4, "square": 9, "triangle": 3, "?": 0}
    groups = {form: [span(g) for g in pieces(pixels(drawing, INKS[form]))] for form in FORMS}
    wide = {form: {right - left for left, _, right, _ in spans} for form, spans in groups.items()}
    assert all(len(widths) == 1 for widths in wide.values())
    assert min(wide["circle"]) > 1.8 * max(wide["square"] | wide["triangle"])
    assert len({min(left for left, _, _, _ in spans) for spans in groups.values()}) == 1


def test_their_words_name_no_piece_and_no_number() -> None:
    assert LONGEST.words() == "a row of shapes with an empty place at its end"
    assert PatternRow(("circle", "?", "circle")).words() == "a row of shapes with an empty place in it"
    for picture in (LONGEST, MIXED, BIG):
        assert not any(form in picture.words() for form in FORMS)
        assert not any(c.isdigit() for c in picture.words())
        assert picture.shows() == picture.marked() == ()
        assert from_data(json.loads(json.dumps(to_data(picture)))) == picture
