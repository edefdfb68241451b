"""Recomputes coin answers from ``given`` and the United States Mint's table (references/coins.toml)."""

import tomllib
from pathlib import Path
from typing import Any

from num2words import num2words

from tests.oracles.english import ENGLISH

COIN = tomllib.loads((Path(__file__).parents[1] / "references" / "coins.toml").read_text("utf-8"))["coin"]


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer follows from the table."""
    wants = _wants(item, given)
    return None if answer == wants else f"{given} wants {wants!r}, not {answer!r}"


def _wants(item: str, given: dict[str, Any]) -> str:
    match item:
        case "name-it":
            return f"a {given['coins'][given['pointed']]}"
        case "find-it":
            return _look(given["named"], given["coins"])
        case "worth" | "dime-worth" | "quarter-worth":
            unit = 1 if given["unit"] == "cent" else COIN[given["unit"]]["cents"]
            whole, over = divmod(COIN[given["coin"]]["cents"], unit)
            assert over == 0
            return num2words(whole)
        case "fill-a-nickel":
            return num2words(COIN["nickel"]["cents"] - given["have"])
        case "dime-or-nickel":
            field = "cents" if "buys" in given["asked"] else "diameter_mm"
            best = max if given["asked"] in ("buys more", "is bigger") else min
            return f"a {best(given['coins'], key=lambda name: COIN[name][field])}"
        case "line-up":
            up = sorted(given["coins"], key=lambda name: COIN[name]["cents"])
            return ", ".join(up if given["first"] == "least" else reversed(up))
        case _:
            one, many = COIN[given["one"]]["cents"], given["count"] * COIN[given["kind"]]["cents"]
            assert one != many, "neither buys more"
            several = (
                f"{num2words(given['count'])} {ENGLISH.plural(given['kind'], given['count'])}"
                if given["count"] > 1
                else f"a {given['kind']}"
            )
            return f"a {given['one']}" if (one > many) == (given["asked"] == "more") else several


def _look(name: str, shown: list[str]) -> str:
    sizes = sorted(shown, key=lambda other: COIN[other]["diameter_mm"])
    edge = {"reeded": "ridges", "plain": "a smooth edge"}[COIN[name]["edge"]]
    if name in (sizes[0], sizes[-1]):
        return f"the {'smallest' if name == sizes[0] else 'biggest'} one, {COIN[name]['look']} with {edge}"
    return f"the {COIN[name]['look']} one with {edge}"
