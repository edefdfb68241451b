"""The drawing of what a net becomes shows the faces that can be seen, and no other."""

from math import hypot

from warmup.pictures.solid_shape import visible_faces
from warmup.sheets.nets import FLAT_FACED, cube
from warmup.sheets.solid_views import cone_view, view


def test_cube_is_drawn_as_on_the_stage() -> None:
    drawn = {frozenset((round(x, 6), round(y, 6)) for x, y in face) for face in view(cube(1.0))}
    stage = {
        frozenset((round(x, 6), round(y, 6)) for x, y in face) for face in visible_faces("cube").values()
    }
    assert drawn == stage


def test_faces_toward_the_reader_are_drawn() -> None:
    # Seen from the front, a little from above and from the right, a face turned away is not drawn.
    seen = {solid.name: sorted(len(face) - 1 for face in view(solid)) for solid in FLAT_FACED}
    assert seen == {
        "cube": [4, 4, 4],
        "box": [4, 4, 4],
        "square pyramid": [3, 3],
        "triangular prism": [3, 4],
    }


def test_walls_of_a_cone_touch_its_rim_where_that_goes_out_of_sight() -> None:
    walls, rim = cone_view(25.0, 60.0)
    left, tip, right = walls
    assert (left, right) == (rim[-1], rim[0]) or (left, right) == (rim[0], rim[-1])
    # The rim is an ellipse; where the wall meets it, both run the same way but for the bend of one step.
    for end, inner in ((rim[0], rim[1]), (rim[-1], rim[-2])):
        wall, step = (end[0] - tip[0], end[1] - tip[1]), (inner[0] - end[0], inner[1] - end[1])
        cross = wall[0] * step[1] - wall[1] * step[0]
        assert abs(cross) / (hypot(*wall) * hypot(*step)) < 0.1
