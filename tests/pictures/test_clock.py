"""The clock’s hands against geometry: a turn in 12 hours, a turn in 60 minutes (examples.toml, ex57)."""

from functools import cache
from itertools import combinations
from math import atan2, degrees, hypot
from typing import NamedTuple

import pytest

from tests.bank import reference
from tests.pictures.blobs import pixels
from warmup.pictures.cells import Drawing
from warmup.pictures.clock import Clock, hour_angle, minute_angle
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import Edges, Point, Points, Polygon, Round

HALF_HOURS = [(hour, minute) for hour in range(1, 13) for minute in (0, 30)]
PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


@cache
def drawn(clock: Clock, columns: int, rows: int) -> Drawing:
    """The clock at this size, drawn once for all tests."""
    return clock.draw(columns, rows)


class Hands(NamedTuple):
    """The middle of the face and both hands as they are painted: the short one, then the long one."""

    middle: Point
    short: Points
    long: Points


def hands(clock: Clock, columns: int, rows: int) -> Hands:
    """The last three shapes of a sketch are the hands and the pin they turn on."""
    shapes = [shape for shape, _ in clock.sketch(columns, rows).shapes]
    face, short, long = shapes[0], shapes[-3], shapes[-2]
    assert isinstance(face, Round) and isinstance(short, Polygon) and isinstance(long, Polygon)
    return Hands((face.x, face.y), *short.contours, *long.contours)


def angle(middle: Point, hand: Points) -> float:
    """Where a hand points, clockwise from twelve: its points lie alike on both sides of its middle line."""
    x, y = sum(x for x, _ in hand) / len(hand), sum(y for _, y in hand) / len(hand)
    return degrees(atan2(x - middle[0], middle[1] - y)) % 360


def reach(middle: Point, hand: Points) -> float:
    return max(hypot(x - middle[0], y - middle[1]) for x, y in hand)


def breadth(middle: Point, hand: Points) -> float:
    """Twice as far as any of its points behind the middle lies from it: its end is half a disc."""
    return 2 * min(hypot(x - middle[0], y - middle[1]) for x, y in hand)


def off(one: float, two: float) -> float:
    return abs((one - two + 180) % 360 - 180)


def test_at_half_past_three_the_hour_hand_stands_half_way() -> None:
    """ex57: 105 degrees, with three at 90 and four at 120."""
    example = next(e for e in reference("examples")["example"] if e["id"] == "ex57")
    assert f"{hour_angle(3, 30)} degrees" in example["basis_note"]
    assert hour_angle(3, 30) == (hour_angle(3, 0) + hour_angle(4, 0)) / 2


@pytest.mark.parametrize(("hour", "minute"), HALF_HOURS)
def test_angles_of_all_half_hours(hour: int, minute: int) -> None:
    """Both hands turn evenly: the hour hand by a whole turn in 720 minutes, the minute hand in 60."""
    past_twelve = hour * 60 % 720 + minute
    assert hour_angle(hour, minute) == past_twelve * 360 / 720
    assert minute_angle(minute) == minute * 360 / 60


@pytest.mark.parametrize("pane", PANES)
@pytest.mark.parametrize(("hour", "minute"), [*HALF_HOURS, (2, 17), (7, 43), (11, 59)])
def test_hands_point_where_geometry_says_at_any_minute(hour: int, minute: int, pane: tuple[int, int]) -> None:
    found = hands(Clock(hour, minute), *pane)
    assert off(angle(found.middle, found.short), (hour * 60 % 720 + minute) / 2) < 1e-6
    assert off(angle(found.middle, found.long), minute * 6) < 1e-6
    assert reach(found.middle, found.short) < 0.85 * reach(found.middle, found.long)
    assert breadth(found.middle, found.short) > 1.8 * breadth(found.middle, found.long)


@pytest.mark.parametrize("pane", PANES)
def test_each_half_hour_looks_like_no_other(pane: tuple[int, int]) -> None:
    assert len({drawn(Clock(hour, minute), *pane) for hour, minute in HALF_HOURS}) == 24


@pytest.mark.parametrize("pane", PANES)
def test_both_hands_can_be_seen_when_they_overlap(pane: tuple[int, int]) -> None:
    """Twelve o'clock: the broad hand shows on both sides of the thin one."""
    x = hands(Clock(12, 0), *pane).middle[0]
    drawing = drawn(Clock(12, 0), *pane)
    assert {u < 2 * x for u, _ in pixels(drawing, Ink.FIRST)} == {True, False}
    assert pixels(drawing, Ink.INK) - pixels(drawn(Clock(12, 0, hands=False), *pane), Ink.INK)


@pytest.mark.parametrize("pane", [pane for pane in PANES if pane[0] >= 60])
def test_block_numerals_stand_round_the_middle_and_touch_nothing(pane: tuple[int, int]) -> None:
    """Each lies at its angle, clear of the rim and of where the hands may reach, and of the next."""
    face, _, *numerals = [shape for shape, _ in Clock(12, 0, hands=False).sketch(*pane).shapes]
    assert isinstance(face, Round)
    long = reach((face.x, face.y), hands(Clock(12, 0), *pane).long)
    places: dict[int, list[Edges]] = {}
    for shape in numerals:
        left, top, right, bottom = shape.box
        turn = degrees(atan2((left + right) / 2 - face.x, face.y - (top + bottom) / 2))
        places.setdefault(round(turn / 30) % 12 or 12, []).append(shape.box)
        corners = [hypot(x - face.x, y - face.y) for x in (left, right) for y in (top, bottom)]
        assert max(corners) < face.across
        nearest = hypot(max(left - face.x, face.x - right, 0), max(top - face.y, face.y - bottom, 0))
        assert nearest > long
    assert {number: len(boxes) for number, boxes in places.items()} == {
        number: len(str(number)) for number in range(1, 13)
    }
    every = [box for boxes in places.values() for box in boxes]
    for one, two in combinations(every, 2):
        assert one[2] < two[0] or two[2] < one[0] or one[3] < two[1] or two[3] < one[1]


@pytest.mark.parametrize("pane", PANES)
def test_the_face_is_round_and_lies_in_the_pane(pane: tuple[int, int]) -> None:
    face = Clock(12, 0, hands=False).sketch(*pane).shapes[0][0]
    assert isinstance(face, Round) and face.across == face.down
    left, top, right, bottom = face.box
    assert left >= 0 and top >= 0 and right <= pane[0] and bottom <= 2 * pane[1]
    assert min(pane[0], 2 * pane[1]) - 2 * face.across <= 2


def test_a_bare_face_has_no_hands() -> None:
    drawing = Clock(4, 30, hands=False).draw(40, 18)
    assert not pixels(drawing, Ink.FIRST) and drawing != Clock(4, 30).draw(40, 18)
    assert drawing == Clock(9, 0, hands=False).draw(40, 18)


def test_twelve_numerals_stand_on_the_small_face() -> None:
    columns, rows = Clock(1, 0).least()
    assert columns <= 40 and rows <= 9
    written = Clock(1, 0).draw(columns, rows).text()
    assert set(Clock(1, 0).shows()) <= set("".join(c if c.isdigit() else " " for c in written).split())


def test_words_tell_hands_but_no_time() -> None:
    """Where a picture falls back to its words, the child is still to say what time it is."""
    assert len({Clock(hour, minute).words() for hour, minute in HALF_HOURS}) == 1
    assert not any(c.isdigit() for c in Clock(3, 30).words())
    assert Clock(7, 0, hands=False).words() == Clock(2, 30, hands=False).words()
