"""How lines are laid out, what gives way, and how well it can be seen."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from warmup.pictures import Ink
from warmup.tui.paint import DARK, LIGHT, Palette
from warmup.tui.rest import hills
from warmup.tui.script import Keep, Script, Span, Tone, flowed


@given(st.lists(st.integers(1, 20), max_size=12), st.integers(20, 80))
def test_keys_flow_into_as_few_lines_as_will_do_and_none_is_lost(sizes: list[int], width: int) -> None:
    spans = [piece for at, size in enumerate(sizes) for piece in (Span(str(at % 10)), Span("x" * (size - 1)))]
    lines = flowed(spans, width)
    assert [piece for line in lines for piece in line if piece.text.strip() or not piece.text] == spans
    lengths = [sum(len(piece.text) for piece in line) for line in lines]
    assert all(length <= width for length in lengths)
    # Greedy filling needs the fewest lines there can be: in no two neighbors could one more piece go up.
    used, needed = 0, 1
    for size in sizes:
        used, needed = (used + 2 + size, needed) if used and used + 2 + size <= width else (size, needed + 1)
    assert len(lines) <= max(1, needed)


def test_a_last_key_does_not_stand_alone() -> None:
    spans = [piece for _ in range(4) for piece in (Span("k"), Span(" ninechars"))]
    assert [len(line) for line in flowed(spans, 40)] == [5, 5]


def test_the_heading_is_short_where_only_that_fits_on_one_line() -> None:
    def heading(width: int) -> list[str]:
        page = Script(width)
        page.parts(["Wednesday, November 25", "week 31"], Tone.QUIET, Keep.HEAD, ["Wed Nov 25", "week 31"])
        return ["".join(span.text for span in line) for line in page.blocks[0].lines]

    assert heading(32) == ["Wednesday, November 25 · week 31"]
    assert heading(31) == ["Wed Nov 25 · week 31"]
    assert heading(19) == ["Wednesday, November 25", "week 31"]


def luminance(color: str) -> float:
    """Relative luminance. Source: Web Content Accessibility Guidelines 2.1, "relative luminance"."""
    parts = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21. Source: the same, "contrast ratio"."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize("palette", [DARK, LIGHT], ids=["dark", "light"])
def test_words_and_shapes_stand_out_from_their_ground(palette: Palette) -> None:
    """7 to 1 for words (1.4.6, enhanced contrast), 3 to 1 for shapes (1.4.11, non-text contrast)."""
    for tone, style in palette.tones.items():
        color, _, ground = style.removeprefix("bold ").partition(" on ")
        assert contrast(color, ground or palette.panel) >= 7, tone
    for ink in (Ink.INK, Ink.FIRST, Ink.SECOND, Ink.SOFT, Ink.HOLE, Ink.COPPER, Ink.SILVER):
        assert contrast(palette.inks[ink], palette.inks[Ink.GROUND]) >= 3, ink
    for ink in (Ink.INK, Ink.HOLE):
        for tile in (Ink.TILE, Ink.TILE_ALT):
            assert contrast(palette.inks[ink], palette.inks[tile]) >= 3, (ink, tile)


@pytest.mark.parametrize("size", [(40, 24), (60, 8), (66, 36), (84, 45), (3, 2)])
def test_the_stage_at_rest_is_quiet(size: tuple[int, int]) -> None:
    """Nothing to read, ground above and hills below; the sun only when it is asked for, and round."""
    for sun in (False, True):
        drawing = hills(*size, sun=sun)
        inks = {ink for row in drawing.cells for cell in row for ink in (cell.ink, cell.paper)}
        assert inks <= {Ink.GROUND, Ink.TILE, Ink.TILE_ALT, *([Ink.SECOND] if sun else [])}
        assert not any(cell.glyph.isalnum() for row in drawing.cells for cell in row)
        if min(size) > 2:
            assert {cell.ink for cell in drawing.cells[0]} == {Ink.GROUND}
            assert {cell.ink for cell in drawing.cells[-1]} == {Ink.TILE}
            assert (Ink.SECOND in inks) == sun
