"""Recomputes backward counts from ``given``, with num2words for the words."""

from typing import Any

from num2words import num2words


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is every number from start down to end, and the accepted forms are that too."""
    said = [num2words(n) for n in sorted(range(given["end"], given["start"] + 1), reverse=True)]
    forms = [", ".join(said), ", ".join(said[1:])]
    if answer != forms[given["heard"]]:
        return f"{given} wants {forms[given['heard']]}"
    right = set(forms) - {answer}
    if given["end"] == 0:
        right |= {", ".join([*said[:-1], "nothing"]), ", ".join([*said[1:-1], "nothing"])}
    return None if right == set(accept) else f"{given} accepts {accept}"
