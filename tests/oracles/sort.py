"""Recomputes sorting answers from ``given``: filters by the words of names, counts, orders by size."""

from collections import Counter
from typing import Any

from num2words import num2words

from tests.oracles.english import ENGLISH


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the key holds what the rule, the counts or the sizes say."""
    if "rule" in given:
        return _by_rule(item, given, answer, accept)
    if "mixed" in given:
        return _want(num2words(Counter(given["mixed"])[given["count"]]), answer)
    if "in" in given:
        return _want(_shared(given), answer)
    groups = given["groups"]
    if len(set(groups.values())) < len(groups) and "order" in given:
        return f"{groups} has groups of one size"
    if "order" in given:
        order = sorted(groups, key=groups.get, reverse=given["order"] == "most first")
        return _want(", ".join(order), answer)
    most = [kind for kind in groups if groups[kind] == max(groups.values())]
    if len(most) > 1 or most[0] == given["big"]:
        return f"{given} has no single most, or it is the biggest"
    return _want(ENGLISH.plural(most[0]), answer)


def _want(want: str, answer: str) -> str | None:
    return None if answer == want else f"wants {want}"


def _by_rule(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    fits = [name for name in given["things"] if given["rule"] in name.split()]
    if item == "does-not-fit":
        (out,) = set(given["things"]) - set(fits)
        return _want(out, answer)
    told = answer.replace(" and ", ", ").split(", ")
    if accept != ("in any order",):
        return f"the order does not matter, but {accept}"
    return None if Counter(told) == Counter(fits) and len(fits) < len(given["things"]) else f"wants {fits}"


def _shared(given: dict[str, Any]) -> str:
    """The only color or kind that all inside have and nothing outside has."""
    words = [set(name.split()) for name in given["in"]]
    (word,) = set.intersection(*words) - {w for name in given["out"] for w in name.split()}
    return f"{word} things" if given["in"][0].split()[0] == word else ENGLISH.plural(word)
