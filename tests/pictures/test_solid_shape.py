"""Solids as they are drawn: visible faces that hang together, told apart by shade; toys in a scene."""

import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.facts import THINGS
from warmup.pictures.ink import Ink, Shade
from warmup.pictures.scene import Scene
from warmup.pictures.shapes import Round
from warmup.pictures.solid_shape import SOLIDS, SolidShape, sizes, visible_faces

PANES = ((40, 18), (56, 9), (60, 30))
SHADES = (Ink.FIRST, Ink.LIGHT, Ink.SHADOW)


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
        assert len(shades) >= (2 if name == "cone" else 3)
        left, top, right, bottom = span(set().union(*(pixels(drawing, ink) for ink in shades)))
        assert left >= 1 and right <= 2 * pane[0] - 2 and top >= 0 and bottom < 2 * pane[1]


@pytest.mark.parametrize("pane", PANES)
def test_the_front_of_a_cube_is_square_and_a_sphere_is_round(pane: tuple[int, int]) -> None:
    front = SolidShape("cube").sketch(*pane).shapes[0][0]
    left, top, right, bottom = front.box
    assert right - left == pytest.approx(bottom - top)
    ball = SolidShape("sphere").sketch(*pane).shapes[0][0]
    assert isinstance(ball, Round) and ball.across == ball.down


def painted(name: str, pane: tuple[int, int], upright: bool = True) -> set[tuple[int, int]]:
    """All of a solid but the bare lines along its edges."""
    drawing = SolidShape(name, upright).draw(*pane)
    return set().union(*(pixels(drawing, ink) for ink in SHADES))


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize("name", SOLIDS)
def test_no_solid_leaves_a_crumb(name: str, pane: tuple[int, int]) -> None:
    """Where plain inks meet, a pixel must not be cut off from its face."""
    for upright in (True, False):
        assert min(len(piece) for piece in pieces(painted(name, pane, upright))) > 5


def middle(found: set[tuple[int, int]]) -> tuple[float, float]:
    return sum(x for x, _ in found) / len(found), sum(y for _, y in found) / len(found)


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize(("name", "upright"), [(name, up) for name in SOLIDS for up in (True, False)])
def test_light_comes_from_the_upper_left(name: str, upright: bool, pane: tuple[int, int]) -> None:
    """What is light lies left of what is in shadow or above it, also without mixes."""
    drawing = SolidShape(name, upright).draw(*pane)
    light = middle(pixels(drawing, Ink.LIGHT) | pixels(drawing, Ink.FIRST))
    shadow = middle(pixels(drawing, Ink.SHADOW))
    assert light[0] < shadow[0] - 1 or light[1] < shadow[1] - 1


@pytest.mark.parametrize("pane", PANES)
def test_most_of_a_sphere_is_lit(pane: tuple[int, int]) -> None:
    """A shadow as wide as the ball would make a thick coin of it."""
    ball, drawing = painted("sphere", pane), SolidShape("sphere").draw(*pane)
    assert 0.02 < len(pixels(drawing, Ink.SHADOW)) / len(ball) < 0.3
    assert 0.01 < len(pixels(drawing, Ink.LIGHT)) / len(ball) < 0.1


@pytest.mark.parametrize("pane", PANES)
def test_a_cone_has_a_round_foot_and_no_second_face(pane: tuple[int, int]) -> None:
    """It must not pass for a pyramid: its foot is an arc, and it darkens toward one side step by step."""
    whole = painted("cone", pane)
    rows = [sorted(x for x, v in whole if v == y) for y in range(span(whole)[1], span(whole)[3] + 1)]
    assert len(rows[-1]) <= 0.75 * max(map(len, rows))
    assert all(row == list(range(row[0], row[-1] + 1)) for row in rows)
    wall = SolidShape("cone").sketch(*pane).shapes[0][1]
    assert isinstance(wall, Shade) and not wall.circle and wall.start[1] == wall.end[1]
    mixes = {cell.ink for row in SolidShape("cone").draw(*pane, smooth=True).cells for cell in row}
    assert len(mixes) >= 8


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
        stacked = Scene((("bear",), ("tree",))).draw(*pane)
        assert span(pixels(stacked, Ink.SECOND))[3] < span(pixels(stacked, Ink.FIRST))[1]
        beside = Scene((("bear", "tree"),)).draw(*pane)
        assert span(pixels(beside, Ink.SECOND))[2] < span(pixels(beside, Ink.FIRST))[0]


def test_what_is_behind_is_partly_hidden() -> None:
    for pane in PANES:
        alone = len(pixels(Scene((("bear", ""),)).draw(*pane), Ink.SECOND))
        hidden = len(pixels(Scene((("cup",),), behind="bear").draw(*pane), Ink.SECOND))
        assert 0.2 * alone < hidden < 0.95 * alone


@pytest.mark.parametrize(
    "scene", [Scene((("ball", "box", "cup"), ("bear", "hat", "boat"))), Scene((("ball", "box"),))]
)
def test_a_scene_names_no_toy_in_its_words(scene: Scene) -> None:
    assert not any(thing in scene.words() for thing in THINGS)
