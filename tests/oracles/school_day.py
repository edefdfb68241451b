"""Recomputes answers about school days from ``given`` with plain arithmetic and num2words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the neighbor, the bundles or the days left, and other ways are taken."""
    if item == "tens-and-ones":
        tens, ones = given["number"] // 10, given["number"] % 10
        want = f"{_words(tens)} {'bundle' if tens == 1 else 'bundles'}"
        want += f" and {_words(ones)} loose {'one' if ones == 1 else 'ones'}"
        right = (answer, f"{num2words(tens)} and {num2words(ones)}" in accept) == (want, True)
    elif item == "new-bundle":
        want = num2words((given["before"] + 1) / 10)
        right = answer == want and (given["before"] + 1) % 10 == 0
    elif "straws" in given:
        want = num2words(given["straws"] // 10)
        right = answer == want
    elif "to" in given:
        want = num2words(given["to"] - given["known"])
        right = answer == want and f"{want} more" in accept
    else:
        want = num2words(given["known"] + given["steps"]).replace(" and ", " ")
        right = answer == want
    return None if right else f"{given} wants {want}"


def _words(count: int) -> str:
    return num2words(count) if count else "no"
