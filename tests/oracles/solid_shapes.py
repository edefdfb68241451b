"""Recomputes solid-shapes answers from ``given`` with tests/references/shapes.toml."""

import tomllib
from itertools import product
from pathlib import Path
from typing import Any

from num2words import num2words

SHAPES = tomllib.loads((Path(__file__).parents[1] / "references" / "shapes.toml").read_text("utf-8"))
POLYHEDRA = {"cube": "cube", "box": "rectangular_prism"}
FLAT = ("circle", "triangle", "square", "rectangle", "hexagon")
# What the things asked about are, written down apart from the skill.
HELD = {"a ball", "an orange", "a soap bubble"}
TRACED = {"the rim of a cup", "a ring drawn on paper", "a plate drawn on paper", "the top of a can"}
HATS = {"a party hat", "a clown’s tall hat", "a pointed paper cup"}
FLAGS = {"a yield sign", "a sail drawn on paper", "a napkin folded corner to corner"}


def flat_faces(solid: str) -> int:
    """From the table: all faces of a polyhedron, the flat ones of a curved solid."""
    if solid in POLYHEDRA:
        return SHAPES["solid"][POLYHEDRA[solid]]["faces"]
    return SHAPES["curved_solid"][solid]["flat_faces"]


def box_counts() -> dict[str, int]:
    """Corners of the unit cube, the pairs of them one step apart, and the planes that hold four."""
    corners = list(product((0, 1), repeat=3))
    edges = [(a, b) for a in corners for b in corners if a < b and sum(map(abs, map(int.__sub__, a, b))) == 1]
    faces = [
        (axis, side) for axis in range(3) for side in (0, 1) if sum(c[axis] == side for c in corners) == 4
    ]
    return {"corners": len(corners), "edges": len(edges), "faces": len(faces)}


def _moves(solid: str) -> set[str]:
    curved, flat = solid not in POLYHEDRA, flat_faces(solid)
    # Two flat faces opposite each other make a stack; a cone has only one.
    able = {"roll": curved, "slide": flat > 0, "stack": flat >= 2}
    return {move for move, can in able.items() if can}


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer fits the solid given."""
    match item:
        case "name" | "name-any":
            good = answer == given["solid"] and (answer in SHAPES["curved_solid"] or answer in POLYHEDRA)
        case "find-at-home":
            good = ("square faces" in answer) == (given["solid"] == "cube") and ("round" in answer) == (
                given["solid"] == "sphere"
            )
        case "ball-or-circle":
            good = given["thing"] in (HELD if answer == "sphere" else TRACED) and answer in (
                "sphere",
                "circle",
            )
        case "cone-or-triangle":
            good = given["thing"] in (HATS if answer == "cone" else FLAGS) and answer in ("cone", "triangle")
        case "roll-stack-slide":
            good = set(answer.replace(" and ", ", ").split(", ")) == _moves(given["solid"])
        case "flat-faces":
            good = answer == num2words(flat_faces(given["solid"]))
        case "print-of-a-face":
            good = answer == {"cube": "square", "box": "rectangle"}.get(given["solid"], "circle")
        case "flat-or-solid":
            good = answer == ("flat" if given["name"] in FLAT else "solid")
        case "count-on-a-box":
            good = answer == num2words(box_counts()[given["part"]]) and given["solid"] in POLYHEDRA
        case _:
            good = answer == ("yes" if max(given["sizes"]) == min(given["sizes"]) else "no")
    return None if good else f"{given} does not give {answer!r}"
