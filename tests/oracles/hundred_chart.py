"""Recomputes hundred-chart answers from ``given`` by laying the chart out, with num2words for the words."""

from typing import Any

from num2words import num2words

CHART = [[10 * row + column for column in range(1, 11)] for row in range(10)]


def where(number: int) -> tuple[int, int]:
    return next((r, row.index(number)) for r, row in enumerate(CHART) if number in row)


def _want(item: str, given: dict[str, Any]) -> int:
    match item:
        case "hidden-to-50" | "hidden-to-100":
            if not given["first"] < given["hidden"] < given["last"]:
                raise ValueError(f"{given}: off the chart")
            return given["hidden"]
        case "end-of-row":
            row, column = where(given["row_end"])
            if column != 9:
                raise ValueError(f"{given}: not the end of a row")
            return CHART[row + 1][0]
        case "one-down":
            row, column = where(given["above"])
            return CHART[row + 1][column]
        case "row-and-column":
            return CHART[where(given["row_start"])[0]][where(given["column"])[1]]
        case _:
            row, column = where(given["number"])
            return CHART[row + given["step"] // 10][column]


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer is the number that stands there."""
    want = num2words(_want(item, given)).replace(" and ", " ")
    return None if answer == want and not accept else f"{given} wants {want}"
