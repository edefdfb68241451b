"""Cards of flat shapes, some of them turned or thin, and of solids, with the name on the back."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from warmup.pictures.figures import placed, points_of, turned
from warmup.pictures.shapes import Points, extent
from warmup.sheets import cards
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Stroke, Words, moved, segment
from warmup.sheets.solid_views import solid_lines

WIDE, HIGH = 48.0, 56.0
"""A card as it is folded."""
_SHAPE = 39.0
"""How large a shape is on it."""


class Card(NamedTuple):
    """A figure, turned clockwise by degrees, and what it is called."""

    figure: str
    turn: float
    name: str


CARDS = (
    Card("circle", 0, "circle"),
    Card("triangle", 0, "triangle"),
    Card("square", 0, "square"),
    Card("rectangle", 0, "rectangle"),
    Card("hexagon", 0, "hexagon"),
    Card("rhombus", 90, "rhombus"),
    Card("trapezoid", 0, "trapezoid"),
    Card("triangle", 180, "triangle"),
    Card("square", 45, "square"),
    Card("thin rectangle", 30, "rectangle"),
    Card("thin triangle", 75, "triangle"),
    Card("right triangle", 200, "triangle"),
    Card("slanted triangle", 320, "triangle"),
    Card("hexagon", 90, "hexagon"),
    Card("rhombus", 20, "rhombus"),
    Card("trapezoid", 160, "trapezoid"),
)
"""Upright ones on the first page, turned and thin ones on the second."""

RULES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "circle": ("Round all the way.", "No corners."),
        "triangle": ("Three straight sides.", "Three corners."),
        "square": (
            "Four straight sides.",
            "All are the same length.",
            "Four square corners.",
            "It is a rectangle, too.",
        ),
        "rectangle": ("Four straight sides.", "Four square corners."),
        "hexagon": ("Six straight sides.", "Six corners."),
        "rhombus": ("Four straight sides.", "All are the same length."),
        "trapezoid": ("Four straight sides.", "Two of them run", "side by side."),
    }
)
"""What the back says of each flat shape, a line at a time."""

SOLIDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "sphere": ("It is round", "every way you turn it."),
        "cube": ("Six square faces.", "All are the same."),
        "box": ("Six flat faces.", "Square corners."),
        "cylinder": ("A round wall.", "Two flat round ends."),
        "cone": ("A round wall.", "One flat round end.", "One point."),
        "square pyramid": ("One square face.", "Four triangle faces."),
        "triangular prism": ("Two triangle faces.", "Three rectangle faces."),
    }
)
"""What the back says of each solid."""


class Leaf(NamedTuple):
    """A card: the lines of its front, about (0, 0), and the words of its back."""

    name: str
    rule: tuple[str, ...]
    lines: tuple[Points, ...]


def pages(_day: Day) -> tuple[Page, ...]:
    """Eight cards a page, two across."""
    flat = [Leaf(card.name, RULES[card.name], (_outline(card),)) for card in CARDS]
    solids = [Leaf(name, rule, _seen(name)) for name, rule in SOLIDS.items()]
    packs = {"flat": flat[:8], "turned and thin": flat[8:], "solid": solids}
    return tuple(
        page
        for title, leaves in packs.items()
        for page in cards.pages(title, [_drawn(leaf) for leaf in leaves], 2 * WIDE, HIGH)
    )


def _outline(card: Card) -> Points:
    points = placed(turned(points_of(card.figure), card.turn), (0.0, 0.0), _SHAPE, _SHAPE)
    return (*points, points[0])


def _seen(name: str) -> tuple[Points, ...]:
    """The solid as a line drawing, as large as the card lets it be."""
    lines = solid_lines(name)
    left, top, right, bottom = extent([point for line in lines for point in line])
    scale = _SHAPE / max(right - left, bottom - top)
    x0, y0 = (left + right) / 2, (top + bottom) / 2
    return tuple(tuple(((x - x0) * scale, (y - y0) * scale) for x, y in line) for line in lines)


def _drawn(leaf: Leaf) -> tuple[Drawn, ...]:
    """The card's front, the fold, and its back: folded behind, that can be read."""
    front = moved([Stroke(line) for line in leaf.lines], WIDE / 2, HIGH / 2)
    rule = [Words((1.5 * WIDE, 26 + 4.8 * line), words, 3.6) for line, words in enumerate(leaf.rule)]
    fold = segment(WIDE, 0.0, WIDE, HIGH, Line.FOLD)
    name = Words((1.5 * WIDE, 15), leaf.name, 6.0 if len(leaf.name) < 12 else 4.6)
    return (*front, fold, name, *rule)


SHEET = Sheet(
    "Shape cards",
    "A shape on the front, some turned or thin, and its name on the back.",
    pages,
    Use(pictures=("flat-shape", "shape-row")),
)
