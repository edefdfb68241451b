"""Recomputes capacity answers from ``given``: water levels, volumes, cups."""

from math import pi
from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer follows from the volumes or the water levels."""
    wants = _wants(item, given)
    return None if answer == wants else f"{given} wants {wants!r}, not {answer!r}"


def _wants(item: str, given: dict[str, Any]) -> str:
    match item:
        case "how-full":
            return {0.0: "empty", 0.5: "half full", 1.0: "full"}[given["fill"] / given["parts"]]
        case "find-jar":
            return (
                "the one "
                + ("on the left", "in the middle", "on the right")[given["fills"].index(given["asked"])]
            )
        case "fill-it":
            where = ("nothing in it", "water about halfway up", "water right up to the rim")
            return f"a {given['vessel']} with {where[given['fill']]}"
        case "pour":
            # What runs over did not fit: the first holds more. What leaves room: the second does.
            more = {"if there is room left": given["two"], "if some runs over": given["one"]}
            less = {"if some runs over": given["two"], "if there is room left": given["one"]}
            ends = more if given["asked"] == "more" else less
            return "; ".join(f"{end}, the {vessel}" for end, vessel in ends.items())
        case "tall-and-thin" | "full-is-not-more":
            names = {"tall": "tall", "wide": "wide", "full": "full", "half": "half-full"}
            volumes = {names[key]: _cylinder(*given[key]) for key in given if key in names}
            assert len(set(volumes.values())) == 2
            best = max if given["asked"] == "more" else min
            return f"the {best(volumes, key=volumes.__getitem__)} jar"
        case "cups-in-jar":
            assert given["cups"] <= given["takes"]
            return num2words(given["cups"])
        case _:
            return num2words(given["takes"] - given["cups"])


def _cylinder(wide: int, high: int) -> float:
    return pi * (wide / 2) ** 2 * high
