import pytest

from tests.pictures.blobs import pixels, span
from warmup.pictures.ink import Ink
from warmup.pictures.scale import Scale
from warmup.skills.measure import ON_SEE_SAW

PANES = ((40, 18), (56, 9), (60, 30), (80, 38), (30, 8))
INKS = {"ball": Ink.FIRST, "box": Ink.SECOND}
ALL = [
    Scale(left, right, down, big)
    for left, right in (("ball", "box"), ("box", "ball"))
    for down in ("left", "right")
    for big in ("", "ball", "box")
]


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("scale", ALL)
def test_the_heavier_thing_is_down_whatever_its_size(scale: Scale, pane: tuple[int, int]) -> None:
    drawing = scale.draw(*pane)
    left = span(pixels(drawing, INKS[scale.left]))
    right = span(pixels(drawing, INKS[scale.right]))
    assert left[2] < right[0]
    assert (left[3] > right[3]) == (scale.down == "left")
    if scale.big:
        sizes = {scale.left: left[3] - left[1], scale.right: right[3] - right[1]}
        assert max(sizes, key=sizes.__getitem__) == scale.big


@pytest.mark.slow
@pytest.mark.parametrize("pane", PANES)
def test_ball_and_box_are_as_high_as_wide_and_whole(pane: tuple[int, int]) -> None:
    for scale in ALL:
        for ink in INKS.values():
            left, top, right, bottom = span(pixels(scale.draw(*pane), ink))
            assert abs((right - left + 1) / 2 - (bottom - top + 1)) <= 1
            assert top >= 0 and left > 0 and right < 2 * pane[0] - 1


def test_words_name_neither_as_heavy() -> None:
    words = Scale("ball", "box", "left", "box").words()
    assert "heav" not in words and "light" not in words and "left end down" in words


@pytest.mark.slow
@pytest.mark.parametrize("pane", PANES)
def test_each_pair_of_things_is_drawn_apart_from_all_others(pane: tuple[int, int]) -> None:
    """Inside the pane, and told from every other pair, also with one of the two drawn big."""
    drawings = set()
    pairs = [(left, right) for left in ON_SEE_SAW for right in ON_SEE_SAW if left != right]
    for left, right in pairs:
        for big in ("", left, right):
            drawing = Scale(left, right, "left", big).draw(*pane)
            painted = set().union(*(pixels(drawing, ink) for ink in (Ink.FIRST, Ink.SECOND, Ink.INK)))
            x0, y0, x1, y1 = span(painted)
            assert x0 > 0 and y0 >= 0 and x1 < 2 * pane[0] - 1 and y1 < 2 * pane[1]
            drawings.add(drawing.cells)
    assert len(drawings) == 3 * len(pairs)
