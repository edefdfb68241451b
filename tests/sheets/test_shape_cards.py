"""What the back of a shape card says is true of the shape on its front."""

from itertools import combinations
from math import atan2, degrees, dist

import pytest

from tests.sheets.geometry import around
from warmup.english import number_word
from warmup.pictures.figures import POLYGONS
from warmup.pictures.shapes import Points
from warmup.sheets.kinds.shape_cards import CARDS, RULES, SOLIDS, Card
from warmup.sheets.nets import FLAT_FACED


def _slants(points: Points) -> list[float]:
    return [degrees(atan2(y1 - y0, x1 - x0)) % 180 for (x0, y0), (x1, y1) in around(points)]


def _level(one: float, other: float) -> bool:
    """Whether two slants are the same, round half a turn."""
    return min(abs(one - other), 180 - abs(one - other)) < 1e-6


@pytest.mark.parametrize(
    "card", [card for card in CARDS if card.name != "circle"], ids=lambda card: card.figure
)
def test_rule_holds_of_the_figure(card: Card) -> None:
    points, rule = POLYGONS[card.figure], " ".join(RULES[card.name])
    sides = [dist(*side) for side in around(points)]
    slants = _slants(points)
    assert rule.startswith(f"{number_word(len(points)).capitalize()} straight sides.")
    if "same length" in rule:
        assert max(sides) - min(sides) < 1e-9
    if "square corners" in rule:
        turns = [abs(a - b) for a, b in zip(slants, slants[1:] + slants[:1], strict=True)]
        assert all(abs(turn - 90) < 1e-6 for turn in turns)
    if "side by side" in rule:
        assert sum(_level(one, other) for one, other in combinations(slants, 2)) == 1


def test_a_square_is_said_to_be_a_rectangle() -> None:
    # A square is a rectangle too (Virginia Mathematics Curriculum Framework 2016, 2.13).
    assert "It is a rectangle, too." in RULES["square"]
    assert set(RULES["rectangle"]) <= set(RULES["square"])


def test_cards_hold_turned_and_thin_ones_of_each_kind_met_at_breakfast() -> None:
    names = [card.name for card in CARDS]
    assert all(names.count(name) >= 2 for name in set(RULES) - {"circle"})
    turned = {card.name for card in CARDS if card.turn % 90}
    assert {"triangle", "square", "rectangle", "rhombus", "trapezoid"} <= turned


def test_faces_of_solids_are_counted_right() -> None:
    for solid in FLAT_FACED:
        said = SOLIDS[solid.name]
        many = {3: "triangle", 4: "square" if solid.name in ("cube", "square pyramid") else "rectangle"}
        kinds = [many[len(face)] for face in solid.faces]
        if solid.name == "box":
            assert said[0] == f"{number_word(len(kinds)).capitalize()} flat faces."
            continue
        for kind in set(kinds):
            count = kinds.count(kind)
            assert f"{number_word(count).capitalize()} {kind} face{'s' * (count > 1)}." in said
