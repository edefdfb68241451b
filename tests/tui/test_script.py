"""How lines are laid out, what gives way, and how well it can be seen."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from warmup.pictures import Ink
from warmup.tui.paint import CONTRAST, DARK, LIGHT, Look, Palette
from warmup.tui.paint import palette as palette_of
from warmup.tui.quiet_app import QuietApp
from warmup.tui.rest import hills
from warmup.tui.script import Keep, Place, Script, Span, Tone, cut, flowed, wrapped


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


def test_what_gives_way_leaves_no_gap_and_the_foot_at_the_bottom() -> None:
    page = Script(20)
    page.text("head", Tone.QUIET, Keep.HEAD, place=Place.TOP)
    page.text("say", Tone.SAY, Keep.ALWAYS)
    page.air()
    page.text("why", Tone.QUIET, Keep.WHY)
    page.air()
    page.text("need", Tone.QUIET, Keep.OBJECT)
    page.text("keys", Tone.KEY, Keep.ALWAYS, place=Place.FOOT)

    def rows(height: int) -> list[str]:
        return ["".join(span.text for span in line) for line in page.fitted(height)]

    assert rows(8) == ["head", "say", "", "why", "", "need", "", "keys"]
    assert rows(5) == ["head", "say", "why", "need", "keys"]
    assert rows(4) == ["head", "say", "need", "keys"]
    assert rows(3) == ["head", "say", "keys"]
    assert rows(2) == ["say", "keys"] and rows(1) == ["keys"]
    tall = rows(36)
    assert tall.index("say") == 12 and tall[-1] == "keys" and len(tall) == 36, (
        "mid-height, where there is room"
    )


@given(st.lists(st.text("abc ", min_size=1, max_size=30), min_size=1, max_size=6), st.integers(1, 60))
def test_no_word_is_cut_in_what_wraps(texts: list[str], width: int) -> None:
    words = " ".join(texts).split()
    lines = wrapped(" ".join(words), max(width, max(map(len, words), default=1)), "", Tone.PLAIN)
    assert " ".join("".join(span.text for span in line) for line in lines).split() == words


@given(st.text("abc, ", max_size=60), st.integers(2, 60))
def test_what_is_cut_ends_with_a_whole_word(text: str, width: int) -> None:
    shown = cut(text, width)
    assert len(shown) <= width
    if shown != text:
        kept = shown.removesuffix("…")
        assert text.startswith(kept) and not text[len(kept)].isalpha() if kept else True


def luminance(color: str) -> float:
    """Relative luminance. Source: Web Content Accessibility Guidelines 2.1, "relative luminance"."""
    parts = [int(color[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.03928 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio, 1 to 21. Source: the same, "contrast ratio"."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def style_of(palette: Palette, tone: Tone) -> tuple[str, str, frozenset[str]]:
    """The color of a tone, its ground, and its forms: bold, underline, italic, turned, a ground."""
    words, _, ground = palette.tones[tone].partition(" on ")
    *forms, color = words.split()
    return color, ground or palette.panel, frozenset([*forms, *["ground"] * bool(ground)])


@pytest.mark.parametrize("look", Look)
def test_what_pages_write_in_can_be_read_on_the_panel(look: Look) -> None:
    """The same formula over the variables that the pages' styles take their colors from."""
    app = QuietApp(look)
    variables = app.get_css_variables()
    styles = "".join(
        path.read_text("utf-8") for path in (Path(__file__).parents[2] / "warmup" / "tui").glob("*.tcss")
    )
    used = {*re.findall(r"(?<!-)color: \$(say|quiet|cue|here|key|foreground)\b", styles)}
    assert {"say", "quiet", "cue", "foreground"} <= used
    for name in used:
        assert contrast(variables[name], palette_of(look).panel) >= 7, name


@pytest.mark.parametrize("palette", [DARK, LIGHT, CONTRAST], ids=["dark", "light", "contrast"])
def test_words_and_shapes_stand_out_from_their_ground(palette: Palette) -> None:
    """7 to 1 for words (1.4.6, enhanced contrast), 3 to 1 for shapes (1.4.11, non-text contrast)."""
    for tone in Tone:
        color, ground, _ = style_of(palette, tone)
        least = 3 if tone is Tone.RULE else 7
        assert contrast(color, ground) >= least, tone
    for ink in (Ink.INK, Ink.FIRST, Ink.SECOND, Ink.SOFT, Ink.HOLE, Ink.COPPER, Ink.SILVER):
        assert contrast(palette.inks[ink], palette.inks[Ink.GROUND]) >= 3, ink
    for ink in (Ink.INK, Ink.HOLE):
        for tile in (Ink.TILE, Ink.TILE_ALT):
            assert contrast(palette.inks[ink], palette.inks[tile]) >= 3, (ink, tile)


def test_the_look_of_most_contrast_has_seven_to_one_throughout_and_forms_instead_of_shades() -> None:
    """Shapes too, which 1.4.11 asks 3 to 1 for; without its colors each kind of words is still another."""
    for ink in Ink:
        if ink not in (Ink.GROUND, Ink.TILE, Ink.TILE_ALT):
            assert contrast(CONTRAST.inks[ink], CONTRAST.inks[Ink.GROUND]) >= 7, ink
    assert {CONTRAST.inks[ink] for ink in (Ink.GROUND, Ink.TILE)} == {CONTRAST.panel}
    assert all(contrast(*style_of(CONTRAST, tone)[:2]) >= 7 for tone in Tone)
    told_apart = (Tone.PLAIN, Tone.SAY, Tone.ANSWER, Tone.LABEL, Tone.CUE, Tone.KEY, Tone.STRONG)
    assert len({style_of(CONTRAST, tone)[2] for tone in told_apart}) == len(told_apart)


@pytest.mark.parametrize("look", Look)
def test_amber_is_for_the_answer_alone(look: Look) -> None:
    """Of all tones only the answer is more red than blue by half."""

    def warm(color: str) -> bool:
        red, blue = int(color[1:3], 16), int(color[5:7], 16)
        return red > 1.5 * blue

    tones = palette_of(look).tones
    grounds = [style_of(palette_of(look), tone)[1] for tone in Tone]
    assert [tone for tone in tones if warm(style_of(palette_of(look), tone)[0])] == [Tone.ANSWER]
    assert not any(map(warm, grounds))


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
