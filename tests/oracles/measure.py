"""Recomputes measuring answers from ``given``."""

import re
from typing import Any

from num2words import num2words

# What something can be put into, written down apart from the skill.
HOLLOW = {"pail", "basket", "tub", "box", "bag"}


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer follows from lengths, the lower end, the units, or from what a thing is."""
    if item in ("what-to-measure", "another-thing-to-measure"):
        return _measurable(given, answer)
    wants = _wants(item, given)
    return None if answer == wants else f"{given} wants {wants!r}, not {answer!r}"


def _wants(item: str, given: dict[str, Any]) -> str:
    match item:
        case "longer" | "ends-not-lined-up":
            first, second = given["lengths"]
            assert first != second
            return f"the {given['forms'][(first < second) == (given['asked'] == 'longer')]} one"
        case "heavier" | "big-is-not-heavy":
            other = {"left": "right", "right": "left"}[given["down"]]
            return f"the {given[given['down'] if given['asked'] == 'heavier' else other]}"
        case "find-longer" | "find-heavier":
            fair = {
                "length": "with one end of each lined up",
                "height": "with both standing on the floor",
                "weight": "when one is held in each hand",
            }[given["by"]]
            return f"anything {given['asked']} than the {given['thing']}, {fair}"
        case _:
            on = [place for place in range(given["long"]) if place not in given["missing"]]
            assert on[0] == 0 and on[-1] == given["long"] - 1
            return num2words(len(on) + len(given["missing"]))


def _measurable(given: dict[str, Any], answer: str) -> str | None:
    """Length and weight of anything, what it holds only where it is hollow, and nothing that is known."""
    words = set(re.findall(r"how (long|tall|heavy|much)", answer))
    length = {"tall"} if given["thing"] in HOLLOW else {"long"}
    wants = length | {"heavy"} | ({"much"} if given["thing"] in HOLLOW else set())
    known = set(re.findall(r"how (\w+)", given.get("known", "")))
    if not known <= wants or len(wants) < given.get("wants", 2):
        return f"{given} has too little to measure"
    return None if words == wants - known else f"{given} wants {wants - known}"
