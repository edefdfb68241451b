import pytest

from tests.pictures.blobs import form_of, pieces, pixels, span
from warmup.pictures.ink import Ink
from warmup.pictures.lengths import Lengths

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))
INKS = {"plain": Ink.FIRST, "striped": Ink.SECOND, "spotted": Ink.INK}
THREE = ("plain", "striped", "spotted")


def wide(picture: Lengths, form: str, pane: tuple[int, int]) -> tuple[int, int]:
    left, _, right, _ = span(pixels(picture.draw(*pane), INKS[form]))
    return left, right - left + 1


@pytest.mark.parametrize("pane", PANES)
def test_ribbons_are_to_scale_and_start_at_one_line(pane: tuple[int, int]) -> None:
    for lengths in ((16, 12, 7), (4, 6, 8), (9, 16, 13)):
        picture = Lengths(lengths, THREE)
        drawn = [wide(picture, form, pane) for form in THREE]
        assert len({left for left, _ in drawn}) == 1
        step = drawn[0][1] / lengths[0]
        assert [width for _, width in drawn] == [length * step for length in lengths]


@pytest.mark.parametrize("pane", PANES)
def test_ends_lie_where_they_are_said_to(pane: tuple[int, int]) -> None:
    picture = Lengths((12, 9), ("spotted", "striped"), (0, 6))
    (one, width), (two, other) = wide(picture, "spotted", pane), wide(picture, "striped", pane)
    assert width / 12 == other / 9 == (two - one) / 6
    assert not pixels(picture.draw(*pane), Ink.SOFT), "no line to start from"


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("count", range(3, 11))
def test_clips_fill_the_ribbon_end_to_end(count: int, pane: tuple[int, int]) -> None:
    picture = Lengths((count,), clips=True)
    clips = pixels(picture.draw(*pane), Ink.SECOND)
    left, top, right, bottom = span(clips)
    ribbon = wide(picture, "plain", pane)
    assert (left, right - left + 1) == ribbon
    # No column of the row of clips is bare, and each clip has one open middle.
    assert {x for x, _ in clips} == set(range(left, right + 1))
    inner = {(x, y) for x in range(left, right + 1) for y in range(top, bottom + 1)} - clips
    assert len(pieces(inner)) == count
    assert len({len(piece) for piece in pieces(inner)}) == 1


@pytest.mark.parametrize("pane", PANES)
def test_fallen_clips_leave_places_a_clip_long(pane: tuple[int, int]) -> None:
    picture = Lengths((9,), clips=True, missing=(2, 5))
    columns = {x for x, _ in pixels(picture.draw(*pane), Ink.SECOND)}
    left, width = wide(picture, "plain", pane)
    bare = sorted((x - left) * 9 // width for x in set(range(left, left + width)) - columns)
    assert set(bare) == {2, 5} and bare.count(2) == bare.count(5) == width // 9


def test_forms_differ_without_color() -> None:
    shapes = set()
    for form in THREE:
        found = pixels(Lengths((10,), (form,)).draw(40, 18), INKS[form])
        shapes.add(form_of(found))
    assert len(shapes) == 3
    solid = pixels(Lengths((10,), ("plain",)).draw(40, 18), Ink.FIRST)
    left, top, right, bottom = span(solid)
    assert len(solid) == (right - left + 1) * (bottom - top + 1), "what we count is solid"


def test_it_fits_the_smallest_stages_and_its_own_least() -> None:
    for picture in (
        Lengths((16, 12, 8), THREE),
        Lengths((16, 14), ("striped", "plain"), (0, 5)),
        Lengths((10,), clips=True),
    ):
        columns, rows = picture.least()
        assert columns <= 40 and rows <= 9
        assert picture.draw(columns, rows).text().strip()


def test_words_give_no_length() -> None:
    assert Lengths((16, 12), ("plain", "striped")).words() == Lengths((5, 9), ("plain", "striped")).words()
    assert Lengths((7,), clips=True).words() == Lengths((10,), clips=True).words()
