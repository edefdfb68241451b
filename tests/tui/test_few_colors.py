"""256 colors: inks near in OKLab, apart from each other, and arriving as what was chosen."""

import pytest
from rich.color import Color, ColorSystem

from tests.tui.test_script import contrast
from warmup.pictures.cells import drawn
from warmup.pictures.ink import Ink, between
from warmup.pictures.shapes import box, disc
from warmup.pictures.sketch import Sketch
from warmup.tui import paint
from warmup.tui.few_colors import CHOICE, NUMBERS, color_at, hexadecimal, nearest, number_of, oklab, sent_for
from warmup.tui.paint import Depth, Look, depth_of, stage_strips


def from_oklab(light: float, a: float, b: float) -> list[float]:
    """Linear red, green and blue: the way back, by the inverse numbers of the same source (Ottosson 2020)."""
    long = (light + 0.3963377774 * a + 0.2158037573 * b) ** 3
    medium = (light - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (light - 0.0894841775 * a - 1.2914855480 * b) ** 3
    return [
        4.0767416621 * long - 3.3077115913 * medium + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * medium - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * medium + 1.7076147010 * short,
    ]


@pytest.mark.parametrize("color", [(0, 0, 0), (255, 255, 255), (255, 0, 0), (12, 200, 99), (20, 24, 31)])
def test_oklab_leads_back_to_where_it_came_from(color: tuple[int, int, int]) -> None:
    """Linear values of sRGB by IEC 61966-2-1."""
    linear = [v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in (c / 255 for c in color)]
    assert from_oklab(*oklab(color)) == pytest.approx(linear, abs=1e-6)


def test_white_is_light_and_has_no_hue() -> None:
    assert oklab((255, 255, 255)) == pytest.approx((1, 0, 0), abs=1e-4)


def test_what_is_handed_on_arrives_as_what_was_chosen() -> None:
    for number in CHOICE:
        sent = Color.from_rgb(*sent_for(number)).downgrade(ColorSystem.EIGHT_BIT)
        assert sent.number == number
        known = Color.from_ansi(number).get_truecolor()
        assert tuple(known) == color_at(number), "Rich's own table of the palette"


@pytest.mark.parametrize("look", Look)
def test_each_ink_has_the_nearest_color(look: Look) -> None:
    table, inks = NUMBERS[look], paint.palette(look).inks
    assert set(table) == set(Ink) == set(inks)
    for ink, number in table.items():
        red, green, blue = Color.parse(inks[ink]).get_truecolor()
        assert number == nearest((red, green, blue)), ink


@pytest.mark.parametrize("look", Look)
def test_inks_stay_apart_on_their_ground(look: Look) -> None:
    """3 to 1 for shapes (WCAG 2.1, 1.4.11), less a tenth, since colors are few."""
    table = NUMBERS[look]
    grounds = [table[ink] for ink in (Ink.GROUND, Ink.TILE, Ink.TILE_ALT)]
    assert len(set(grounds)) == (2 if look is Look.CONTRAST else 3), "a checkerboard, on one of its squares"
    for ink in (Ink.INK, Ink.FIRST, Ink.SECOND, Ink.SOFT, Ink.HOLE, Ink.COPPER, Ink.SILVER):
        assert contrast(hexadecimal(color_at(table[ink])), hexadecimal(color_at(grounds[0]))) >= 2.7, ink
    assert len({table[ink] for ink in (Ink.INK, Ink.FIRST, Ink.SECOND, Ink.SOFT, Ink.HOLE)}) == 5


@pytest.mark.parametrize("look", Look)
def test_a_mix_lies_between_its_inks(look: Look) -> None:
    mixes = [between(Ink.GROUND, Ink.FIRST, n / 8) for n in range(9)]
    steps = [oklab(color_at(number_of(mix, look))) for mix in mixes]
    lights = [light for light, _, _ in steps]
    assert lights == sorted(lights, reverse=look is Look.LIGHT) and len(set(lights)) >= 5


@pytest.mark.parametrize(
    ("no_color", "system", "depth"),
    [
        (False, "truecolor", Depth.ALL),
        (False, "256", Depth.SOME),
        (False, "standard", Depth.FEW),
        (False, "windows", Depth.FEW),
        (False, None, Depth.FEW),
        (True, "truecolor", Depth.FEW),
        (True, "256", Depth.FEW),
    ],
)
def test_the_depth_is_the_terminals(no_color: bool, system: str | None, depth: Depth) -> None:
    assert depth_of(no_color, system) is depth


def test_strips_have_the_colors_of_their_depth() -> None:
    sketch = Sketch(12, 6)
    sketch.paint(disc(6, 6, 5), Ink.FIRST)
    sketch.paint(box(0, 10, 12, 2), Ink.SECOND)
    drawing = drawn(sketch, smooth=True)
    for depth, allowed in ((Depth.SOME, {hexadecimal(sent_for(n)) for n in CHOICE}), (Depth.ALL, None)):
        strips = stage_strips(drawing, Look.DARK, depth)
        assert [strip.text for strip in strips] == ["".join(c.glyph for c in row) for row in drawing.cells]
        colors = {
            part.name for strip in strips for s in strip if s.style for part in (s.style.color,) if part
        }
        assert allowed is None or colors <= allowed
        assert len(colors) > 4, "mixes at the edge"
