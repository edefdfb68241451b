"""Recomputes flat-shapes answers from ``given`` with tests/references/shapes.toml and plain geometry."""

import tomllib
from pathlib import Path
from typing import Any

from num2words import num2words

FLAT = tomllib.loads((Path(__file__).parents[1] / "references" / "shapes.toml").read_text("utf-8"))
ROWS = {
    "triangle": "triangle_equilateral",
    "right triangle": "triangle_scalene",
    "thin triangle": "triangle_isosceles",
    "tall triangle": "triangle_isosceles",
    "square": "square",
    "rectangle": "rectangle",
    "thin rectangle": "rectangle",
    "hexagon": "hexagon_regular",
    "rhombus": "rhombus",
    "kite": "kite",
    "trapezoid": "trapezoid_isosceles",
}
PLACES = ["the left one", "the middle one", "the right one"]
# Corners in quarter units of a half turn, to be counted for what two pieces make: (whole, its corners).
WHOLES = {
    ("triangle", "square"): 4,
    ("rectangle", "square"): 4,
    ("square", "rectangle"): 4,
    ("triangle", "rectangle"): 4,
    ("rectangle", "rectangle"): 4,
    ("triangle", "triangle"): 3,
    ("half hexagon", "hexagon"): 6,
    ("half circle", "circle"): 0,
}


def _sides(figure: str) -> int:
    return (
        FLAT["flat"][ROWS[figure]]["sides"]
        if figure in ROWS
        else FLAT["curved"][figure.replace(" ", "_")]["straight_sides"]
    )


def _named(figure: str) -> str:
    """The kindergarten name, by the number of sides for the triangles."""
    return "triangle" if figure != "circle" and _sides(figure) == 3 else figure.removeprefix("thin ")


def _rule(figure: str, text: str) -> bool:
    if figure == "circle":
        return "round" in text and "no corners" in text
    word = num2words(_sides(figure))
    alike = "as long as each other" in text
    return (
        f"{word} straight sides" in text
        and alike == (figure == "square")
        and ("square corners" in text) == (_sides(figure) == 4)
    )


def _fits(name: str, given: dict[str, Any]) -> bool:
    return _sides(name) == given["sides"]


def _grids(count: int, target: str) -> set[str]:
    found = set()
    for down in range(1, count + 1):
        for wide in range(down, count + 1):
            if down * wide == count and (target == "rectangle" or down == wide):
                found.add(
                    f"one row of {num2words(wide)}"
                    if down == 1
                    else f"{num2words(down)} rows of {num2words(wide)}"
                )
    return found


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer fits the shapes given."""
    match item:
        case "name" | "turned":
            good = answer == _named(given["figure"]) and answer != "diamond"
        case "find-in-the-room" | "draw-in-the-air":
            good = _rule(given["figure"], answer)
        case "tilted-square":
            good = given["names"].count("square") == 1 and answer == PLACES[given["names"].index("square")]
        case "hexagon":
            most = [at for at, name in enumerate(given["names"]) if _sides(name) == 6]
            good = len(most) == 1 and answer == PLACES[most[0]]
        case "make-of-straws":
            straws = FLAT["flat"][ROWS[given["figure"]]]["sides"]
            good = answer.startswith(f"{num2words(straws)} straws, end to end") and _rule(
                given["figure"], answer
            )
        case "thin-triangle":
            odd = [at for at, name in enumerate(given["names"]) if _sides(name) != 3]
            good = len(odd) == 1 and answer == PLACES[odd[0]]
        case "not-closed":
            good = answer == PLACES[given["gap"]]
        case "count-sides" if given["ask"] == "count":
            row = FLAT["flat"][ROWS[given["figure"]]]
            good = answer == num2words(row[given["part"]])
        case "count-sides":
            told = {name.removeprefix("a ") for name in (*answer.split(" or "), *accept)}
            named = {name for name in ("triangle", "square", "rectangle", "hexagon") if _fits(name, given)}
            good = set(answer.split(" or ")) == named and all(_fits(name, given) for name in told)
        case "square-is-a-rectangle":
            told = FLAT["inclusive"]["square_is_rectangle"]["answer"]
            good = answer == ("yes" if (given["first"] == "square") == told else "no")
        case "slide-together":
            good = answer == given["whole"] and _sides(answer) == WHOLES[given["part"], answer]
        case "see-the-two":
            good = answer == given["part"] + "s" and (given["part"], given["whole"]) in WHOLES
        case _:
            good = set(answer.split(" or ")) == _grids(given["count"], given["target"])
    return None if good else f"{given} does not give {answer!r}"
