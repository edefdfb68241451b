"""Recomputes measuring answers from ``given``."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer follows from lengths, from the lower end, from the chain, or from the units."""
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
        case "find-longer":
            return f"anything {given['asked']} than the {given['thing']}, with one end of each lined up"
        case "find-heavier":
            return f"anything {given['asked']} than the {given['thing']}, when one is held in each hand"
        case "order-three":
            by_length = dict(zip(given["lengths"], given["forms"], strict=True))
            up = [by_length[length] for length in sorted(by_length)]
            assert len(up) == 3
            return ", then ".join(up if given["first"] == "shortest" else up[::-1])
        case "through-a-third":
            return f"the {given['order'][0 if given['asked'] == 'longest' else 2]} one"
        case _:
            on = [place for place in range(given["long"]) if place not in given["missing"]]
            assert on[0] == 0 and on[-1] == given["long"] - 1
            return num2words(len(on) + len(given["missing"]))
