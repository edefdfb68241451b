"""Recomputes place-value answers from ``given`` by adding up tens and ones, with num2words for the words."""

from typing import Any

from num2words import num2words


def _word(number: int) -> str:
    return num2words(number).replace("hundred and ", "hundred ")


def _counted(number: int, name: str) -> str:
    return f"{_word(number) if number else 'no'} {name}{'' if number == 1 else 's'}"


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the number, its tens and ones, a digit's worth, the rest to 100 or an order is right."""
    if "cards" in given:
        return _compared(given, answer)
    digits = [int(digit) for digit in str(given.get("number", ""))]
    if "have" in given:
        want = _word((100 - 10 * given["have"]) // 10)
    elif "place" in given:
        want = _word(digits[0] * 10 if given["place"] == "tens" else digits[1])
    elif "tens" in given:
        want = _word(sum([100] * given.get("hundreds", 0) + [10] * given["tens"] + [1] * given["ones"]))
    elif given["count"] == "tens":
        want = _word(digits[0])
    elif given["count"] == "tens and ones":
        want = f"{_counted(digits[0], 'ten')} and {_counted(digits[1], 'one')}"
    else:
        want = f"{_counted(digits[0], 'bundle')} and {_counted(digits[1], 'loose one')}"
    return None if answer == want else f"{given} wants {want}"


def _compared(given: dict[str, Any], answer: str) -> str | None:
    """None when the greater or lesser number is told, or all in order: by tens, then by ones."""
    up = sorted(given["cards"], key=lambda card: (int(card[0]), int(card[1])))
    order = [_word(int(card)) for card in (up if given["ask"] in ("least", "less") else up[::-1])]
    want = order[0] if given["ask"] in ("less", "more") else ", ".join(order)
    return None if answer == want else f"{given} wants {want}"
