"""The clock’s hands against geometry: a turn in 12 hours, a turn in 60 minutes (examples.toml, ex57)."""

from functools import cache
from math import atan2, degrees, hypot

import pytest

from tests.bank import reference
from tests.pictures.blobs import pixels, span
from warmup.pictures.canvas import Drawing, Ink
from warmup.pictures.clock import Clock, hour_angle, minute_angle

HALF_HOURS = [(hour, minute) for hour in range(1, 13) for minute in (0, 30)]
PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


@cache
def drawn(clock: Clock, columns: int, rows: int) -> Drawing:
    """The clock at this size, drawn once for all tests."""
    return clock.draw(columns, rows)


@cache
def middle(columns: int, rows: int) -> tuple[float, float]:
    """The middle of the face on the canvas, found from the face itself, in pixels."""
    left, top, right, bottom = span(pixels(drawn(Clock(12, 0, hands=False), columns, rows), Ink.TILE))
    if columns >= 60:
        left, top, right, bottom = span(pixels(drawn(Clock(12, 0, hands=False), columns, rows), Ink.SOFT))
    return (left + right + 1) / 2, (top + bottom + 1) / 2


def painted(clock: Clock, ink: Ink, columns: int, rows: int) -> set[tuple[int, int]]:
    """The pixels of a hand: what is there with hands and not without."""
    bare = drawn(Clock(12, 0, hands=False), columns, rows)
    return pixels(drawn(clock, columns, rows), ink) - pixels(bare, ink)


def polar(clock: Clock, ink: Ink, columns: int, rows: int) -> list[tuple[float, float]]:
    """Each pixel of a hand: how far out in cell widths, and at what angle clockwise from twelve."""
    x, y = middle(columns, rows)
    places = [((u + 0.5 - x) / 2, v + 0.5 - y) for u, v in painted(clock, ink, columns, rows)]
    return [(hypot(a, b), degrees(atan2(a, -b)) % 360) for a, b in places]


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
@pytest.mark.parametrize(("hour", "minute"), HALF_HOURS)
def test_drawn_hands_lie_where_geometry_says(hour: int, minute: int, pane: tuple[int, int]) -> None:
    clock = Clock(hour, minute)
    long = polar(clock, Ink.INK, *pane)
    reach = max(out for out, _ in long)
    for out, angle in long:
        assert out < 2 or off(angle, minute * 6) * out * 0.0175 <= 1.1, (out, angle)
    short = polar(clock, Ink.FIRST, *pane)
    tip = max(out for out, _ in short)
    # Its outer pixels point nearer to this half hour than to the next, 15 degrees on. Beside the minute
    # hand, which lies over a part of it, what is left to see points a little further away.
    outer = [angle for out, angle in short if out > tip * 0.75]
    wants = hour_angle(hour, minute)
    mean = sum((angle - wants + 180) % 360 - 180 for angle in outer) / len(outer)
    assert abs(mean) < (7.5 if off(wants, minute * 6) > 20 else 12), (mean, wants)
    assert tip < 0.85 * reach, "the hour hand is the short one"


@pytest.mark.parametrize("pane", PANES)
def test_each_half_hour_looks_like_no_other(pane: tuple[int, int]) -> None:
    assert len({drawn(Clock(hour, minute), *pane) for hour, minute in HALF_HOURS}) == 24


@pytest.mark.parametrize("pane", PANES)
def test_both_hands_can_be_seen_when_they_overlap(pane: tuple[int, int]) -> None:
    """Twelve o'clock: the broad hand shows on both sides of the thin one."""
    x, _ = middle(*pane)
    short = pixels(Clock(12, 0).draw(*pane), Ink.FIRST)
    assert {u < x for u, _ in short} == {True, False}
    assert painted(Clock(12, 0), Ink.INK, *pane)


@pytest.mark.parametrize("pane", PANES)
def test_the_minute_hand_is_one_clean_bar(pane: tuple[int, int]) -> None:
    """Straight up or down it fills a rectangle: no spot beside it where three inks meet in a cell."""
    x, _ = middle(*pane)
    widths = set()
    for hour, minute in HALF_HOURS:
        bar = painted(Clock(hour, minute), Ink.INK, *pane)
        left, top, right, bottom = span(bar)
        # Round ends of a wide hand may leave out corners; nothing may stick out.
        assert {u for u, v in bar if v == (top + bottom) // 2} == set(range(left, right + 1))
        assert len(bar) >= (right - left + 1) * (bottom - top + 1) - 4, (hour, minute)
        assert left + right + 1 == 2 * x, "its middle is the face's"
        widths.add(right - left + 1)
    assert len(widths) == 1


@pytest.mark.parametrize("pane", PANES)
def test_the_hour_hand_is_twice_as_broad_and_well_shorter(pane: tuple[int, int]) -> None:
    for hour in (3, 6, 9):
        broad, bar = painted(Clock(hour, 0), Ink.FIRST, *pane), painted(Clock(hour, 0), Ink.INK, *pane)
        left, top, right, bottom = span(broad)
        wide, high = (right - left + 1) / 2, float(bottom - top + 1)
        thin = (span(bar)[2] - span(bar)[0] + 1) / 2
        assert min(wide, high) >= 2 * thin
        assert max(wide, high) < span(bar)[3] - span(bar)[1] + 1


@pytest.mark.parametrize("pane", PANES)
def test_the_hour_hand_ends_in_no_lone_pixel(pane: tuple[int, int]) -> None:
    for hour, minute in HALF_HOURS:
        hand = painted(Clock(hour, minute), Ink.FIRST, *pane)
        _, top, _, bottom = span(hand)
        for end in (top, bottom):
            assert sum(v == end for _, v in hand) > 1, (hour, minute)


@pytest.mark.parametrize("pane", PANES)
def test_times_that_mirror_are_drawn_as_mirror_images(pane: tuple[int, int]) -> None:
    """Two and ten o'clock, half past two and half past nine: neither side is drawn more crookedly."""
    x, _ = middle(*pane)
    for hour, minute in HALF_HOURS:
        other = (12 - hour if minute == 0 else 11 - hour) % 12 or 12
        hand = painted(Clock(hour, minute), Ink.FIRST, *pane)
        assert {(int(2 * x) - 1 - u, v) for u, v in hand} == painted(Clock(other, minute), Ink.FIRST, *pane)


@pytest.mark.parametrize("pane", [pane for pane in PANES if pane[1] > 9])
def test_block_numerals_stand_square_to_the_middle_and_touch_nothing(pane: tuple[int, int]) -> None:
    """Twelve and six above and below the middle, three and nine beside it; none touches hand or rim."""
    x, y = middle(*pane)
    bare = pixels(drawn(Clock(12, 0, hands=False), *pane), Ink.INK)
    upright = {(u, v) for u, v in bare if abs(u + 0.5 - x) < 6 * (1 + (pane[1] > 30))}
    level = {(u, v) for u, v in bare if abs(v + 0.5 - y) < 3 * (1 + (pane[1] > 30))}
    assert span(upright)[0] + span(upright)[2] + 1 == 2 * x
    assert span(level)[1] + span(level)[3] + 1 == 2 * y
    for minute in (0, 30):
        bar = painted(Clock(3, minute), Ink.INK, *pane)
        assert not {(u, v + step) for u, v in bar for step in (-1, 1)} & bare
    outside = pixels(drawn(Clock(12, 0, hands=False), *pane), Ink.SOFT)
    outside |= pixels(drawn(Clock(12, 0, hands=False), *pane), Ink.GROUND)
    assert not {(u + a, v + b) for u, v in bare for a, b in ((-1, 0), (1, 0), (0, -1), (0, 1))} & outside


@pytest.mark.parametrize("pane", PANES)
def test_the_face_is_round_and_mirrors(pane: tuple[int, int]) -> None:
    drawing = Clock(12, 0, hands=False).draw(*pane)
    face = pixels(drawing, Ink.TILE) | pixels(drawing, Ink.SOFT) | pixels(drawing, Ink.INK)
    left, top, right, bottom = span(face)
    assert right - left + 1 == 2 * (bottom - top + 1)
    assert {(left + right - x, y) for x, y in face} == face
    assert {(x, top + bottom - y) for x, y in face} == face


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
    assert Clock(3, 30).words() == "a clock, its short hand between the 3 and the 4, its long hand on the 6"
    assert Clock(12, 0).words() == "a clock, its short hand on the 12, its long hand on the 12"
    assert Clock(7, 0, hands=False).words() == Clock(2, 30, hands=False).words()
