"""Solids as they are drawn: visible faces that hang together, told apart by shade; toys in a scene."""

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.canvas import Ink
from warmup.pictures.facts import THINGS
from warmup.pictures.scene import Scene
from warmup.pictures.solid_shape import SOLIDS, SolidShape, sizes, visible_faces

PANES = ((40, 18), (56, 9), (60, 30))
SHADES = (Ink.FIRST, Ink.INK, Ink.SOFT)


@pytest.mark.parametrize(("name", "upright"), [("cube", True), ("box", True), ("box", False)])
def test_a_drawn_box_is_a_plane_graph(name: str, upright: bool) -> None:
    """Euler, V - E + F = 2 (shapes.toml, solid), on the drawing: seven corners and nine edges are seen."""
    faces = visible_faces(name, upright)
    corners = {point for face in faces.values() for point in face}
    edges = {
        frozenset(edge) for face in faces.values() for edge in zip(face, face[1:] + face[:1], strict=True)
    }
    assert (len(corners), len(edges), len(faces)) == (7, 9, 3)
    assert len(corners) - len(edges) + len(faces) + 1 == 2, "the outside counts as a face of the drawing"


def test_only_the_cube_measures_the_same_each_way() -> None:
    assert len(set(sizes("cube"))) == 1
    assert all(len(set(sizes("box", upright))) > 1 for upright in (True, False))


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("name", SOLIDS)
def test_every_solid_has_shades_and_keeps_its_rim(name: str, pane: tuple[int, int]) -> None:
    for upright in (True, False):
        drawing = SolidShape(name, upright).draw(*pane)
        shades = [ink for ink in SHADES if pixels(drawing, ink)]
        assert len(shades) >= (3 if name in ("cube", "box", "cylinder") else 2)
        left, top, right, bottom = span(set().union(*(pixels(drawing, ink) for ink in shades)))
        assert left >= 1 and right <= 2 * pane[0] - 2 and top >= 0 and bottom < 2 * pane[1]


@pytest.mark.parametrize("pane", PANES)
def test_the_front_of_a_cube_is_square_and_a_sphere_is_round(pane: tuple[int, int]) -> None:
    left, top, right, bottom = span(pixels(SolidShape("cube").draw(*pane), Ink.FIRST))
    # The bare line along the front's edges takes up to a unit from each.
    assert abs((right - left + 1) / 2 - (bottom - top + 1)) <= 1
    ball = SolidShape("sphere").draw(*pane)
    left, top, right, bottom = span(set().union(*(pixels(ball, ink) for ink in SHADES)))
    assert right - left + 1 == 2 * (bottom - top + 1)


def painted(name: str, pane: tuple[int, int], upright: bool = True) -> set[tuple[int, int]]:
    """All of a solid but the bare lines along its edges."""
    drawing = SolidShape(name, upright).draw(*pane)
    return set().union(*(pixels(drawing, ink) for ink in (*SHADES, Ink.SILVER)))


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("name", SOLIDS)
def test_no_solid_leaves_a_crumb(name: str, pane: tuple[int, int]) -> None:
    """Where three inks meet in a cell, a pixel must not be cut off from its face."""
    for upright in (True, False):
        assert min(len(piece) for piece in pieces(painted(name, pane, upright))) > 5


@pytest.mark.parametrize("pane", PANES)
def test_a_sphere_is_whole_and_its_shadow_thins_out(pane: tuple[int, int]) -> None:
    """A shadow as wide as the ball would make a thick coin of it: this one leaves four fifths lit."""
    ball = painted("sphere", pane)
    left, top, right, bottom = span(ball)
    assert {(left + right - x, y) for x, y in ball} == ball == {(x, top + bottom - y) for x, y in ball}
    shadow = pixels(SolidShape("sphere").draw(*pane), Ink.SOFT)
    assert 0.05 < len(shadow) / len(ball) < 0.2
    assert pixels(SolidShape("sphere").draw(*pane), Ink.SILVER), "a light spot at every size"


@pytest.mark.parametrize("pane", PANES)
def test_a_cone_has_a_round_foot_and_no_second_face(pane: tuple[int, int]) -> None:
    """It must not pass for a pyramid: its shadow is a streak, its foot an arc."""
    drawing = SolidShape("cone").draw(*pane)
    whole, shadow = painted("cone", pane), pixels(drawing, Ink.SOFT)
    rows = [sorted(x for x, v in whole if v == y) for y in range(span(whole)[1], span(whole)[3] + 1)]
    half = span(whole)[1] + len(rows) // 2
    assert sum(v == half for _, v in shadow) <= 0.25 * len(rows[len(rows) // 2])
    assert len(rows[-1]) <= 0.75 * max(map(len, rows))
    assert all(row == list(range(row[0], row[-1] + 1)) for row in rows)


@pytest.mark.parametrize("pane", PANES)
def test_toys_differ_by_form_alone(pane: tuple[int, int]) -> None:
    forms = {}
    for thing in THINGS:
        drawing = Scene(((thing,),)).draw(*pane)
        painted = set().union(*(pixels(drawing, ink) for ink in (Ink.FIRST, Ink.SECOND, Ink.INK)))
        forms[thing] = frozenset(painted)
    assert len(set(forms.values())) == len(THINGS)


def test_the_upper_row_is_above_and_the_row_reads_from_the_left() -> None:
    for pane in PANES:
        stacked = Scene((("ball",), ("cup",))).draw(*pane)
        assert span(pixels(stacked, Ink.FIRST))[3] < span(pixels(stacked, Ink.INK))[1]
        beside = Scene((("ball", "cup"),)).draw(*pane)
        assert span(pixels(beside, Ink.FIRST))[2] < span(pixels(beside, Ink.INK))[0]


def test_what_is_behind_is_partly_hidden() -> None:
    for pane in PANES:
        alone = len(pixels(Scene((("ball",),)).draw(*pane), Ink.FIRST))
        hidden = len(pixels(Scene((("cup",),), behind="ball").draw(*pane), Ink.FIRST))
        assert 0.2 * alone < hidden < 0.95 * alone


@pytest.mark.parametrize(
    "scene", [Scene((("ball", "box", "cup"), ("bear", "hat", "boat"))), Scene((("ball", "box"),))]
)
def test_a_scene_names_no_toy_in_its_words(scene: Scene) -> None:
    assert not any(thing in scene.words() for thing in THINGS)
