"""What every picture keeps to, whatever it shows."""

import json
from dataclasses import fields, is_dataclass

import pytest

from tests.pictures.examples import EXAMPLES
from warmup.pictures import Picture, from_data, kinds, to_data
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.ink import Ink

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
ALL = [
    pytest.param(picture, id=f"{kind}-{n}")
    for kind, some in EXAMPLES.items()
    for n, picture in enumerate(some)
]


def test_every_kind_has_an_example() -> None:
    missing = set(kinds()) - set(EXAMPLES)
    assert not missing, f"no example in tests/pictures/examples.py of: {', '.join(sorted(missing))}"
    assert set(EXAMPLES) <= set(kinds())
    assert all(picture.kind == kind for kind, some in EXAMPLES.items() for picture in some)


@pytest.mark.slow
@pytest.mark.parametrize("picture", ALL)
def test_it_fills_exactly_the_pane_it_is_given(picture: Picture) -> None:
    least = picture.least()
    for columns, rows in (least, *PANES):
        if columns < least[0] or rows < least[1]:
            continue
        drawing = picture.draw(columns, rows)
        assert (drawing.columns, drawing.rows) == (columns, rows)
        assert [len(row) for row in drawing.cells] == [columns] * rows
        assert all(len(cell.glyph) == 1 for row in drawing.cells for cell in row)
        inks = {cell.ink for row in drawing.cells for cell in row if cell.glyph != " "}
        assert inks - {Ink.GROUND}, "something is to be seen"


@pytest.mark.parametrize("picture", ALL)
def test_it_fits_the_stage_at_breakfast(picture: Picture) -> None:
    """An 80 by 24 terminal leaves the stage 40 columns and 18 rows."""
    columns, rows = picture.least()
    assert columns <= 40 and rows <= 18


STAGES = {"80x24": (38, 22), "60x20": (60, 9), "120x36": (80, 34), "160x45": (120, 43)}
"""The stage's inner size by that of the terminal."""

WORDS_INSTEAD = {
    "60x20": {HundredChart(), HundredChart(1, 100, hidden=(56,)), HundredChart(1, 120)},
    "80x24": {HundredChart(1, 120)},
}
"""Ten rows of numbers need ten rows of cells, and numbers past 100 four cells each."""


@pytest.mark.parametrize("stage", STAGES)
def test_words_take_its_place_only_where_it_is_known_to_be_too_large(stage: str) -> None:
    too_large = {p for some in EXAMPLES.values() for p in some if not p.fits(*STAGES[stage])}
    assert too_large == WORDS_INSTEAD.get(stage, set())


@pytest.mark.parametrize("picture", ALL)
def test_nothing_is_thin_in_the_middle_of_nothing(picture: Picture) -> None:
    """It takes three fifths of one side of the stage, and no part of it is cut off at an edge."""
    for columns, rows in STAGES.values():
        if not picture.fits(columns, rows):
            continue
        sketch = picture.sketch(columns, rows)
        # What is painted in the ground's own ink takes no place.
        boxes = [shape.box for shape, ink in sketch.shapes if ink is not Ink.GROUND]
        boxes += [(at.column, 2 * at.row, at.column + len(at.text), 2 * at.row + 2) for at in sketch.labels]
        lefts, tops, rights, bottoms = zip(*boxes, strict=True)
        left, top, right, bottom = min(lefts), min(tops), max(rights), max(bottoms)
        assert max((right - left) / columns, (bottom - top) / (2 * rows)) >= 0.6
        assert left >= -0.01 and top >= -0.1 and right <= columns + 0.01 and bottom <= 2 * rows + 0.01


@pytest.mark.parametrize("picture", ALL)
def test_it_comes_back_from_json_as_it_went(picture: Picture) -> None:
    back = from_data(json.loads(json.dumps(to_data(picture))))
    assert back == picture and type(back) is type(picture)


@pytest.mark.parametrize("picture", ALL)
def test_it_is_drawn_the_same_each_time(picture: Picture) -> None:
    again = from_data(to_data(picture))
    assert again is not None and again.draw(40, 18) == picture.draw(40, 18)


@pytest.mark.parametrize("picture", ALL)
def test_its_words_are_one_plain_sentence(picture: Picture) -> None:
    words = picture.words()
    assert words and words == words.strip() and "\n" not in words
    assert words[-1] not in ".!?" and ". " not in words


@pytest.mark.parametrize("picture", ALL)
def test_it_cannot_be_changed(picture: Picture) -> None:
    name = next(iter(to_data(picture)))
    with pytest.raises(AttributeError):
        setattr(picture, name, getattr(picture, name))


@pytest.mark.parametrize("picture", ALL)
def test_it_is_never_taken_for_one_of_another_kind(picture: Picture) -> None:
    assert is_dataclass(picture)
    *_, last = fields(picture)
    assert to_data(picture)["kind"] == picture.kind == last.default and last.name == "kind"
    assert kinds()[picture.kind] is type(picture)


@pytest.mark.parametrize("kind", ["counters", "dots", "hands", "toy-line"])
def test_a_number_of_things_is_read_as_version_1_wrote_it(kind: str) -> None:
    for picture in EXAMPLES[kind]:
        data = to_data(picture)
        data["count"] = data.pop("number")
        assert from_data(data) == picture


def test_what_no_version_draws_is_no_picture() -> None:
    assert from_data({"kind": "hologram", "number": 3}) is None and from_data(None) is None
    assert from_data({"kind": "hands", "number": 3, "rings": 2}) is None
    assert from_data({"kind": "dots", "number": 3, "pattern": "cloud"}) is None
    assert from_data({"kind": "hands", "number": "three"}) is None
