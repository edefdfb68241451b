"""Recomputes compare answers from ``given``, with plain counting and num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the size asked for, the right tray, the right number or the right order."""
    if "mine" in given:
        want = num2words(given["mine"] + given["step"])
    elif "top" in given:
        difference = (given["top"] - given["bottom"]) * (1 if given["ask"] == "more" else -1)
        want = "the same" if difference == 0 else "the top tray" if difference > 0 else "the bottom tray"
        if ("same" in accept) != (difference == 0):
            return f"{given} and {accept}"
    else:
        up = sorted(int(card) for card in given["cards"])
        order = up if given["ask"] in ("least", "less") else up[::-1]
        want = (
            ", ".join(num2words(n) for n in order)
            if given["ask"] in ("least", "most")
            else num2words(order[0])
        )
    return None if answer == want else f"{given} wants {want}"
