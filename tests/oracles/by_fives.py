"""Recomputes counts by fives from ``given``."""

from typing import Any

from tests.oracles.by_tens import skipped


def check(item: str, given: dict[str, Any], answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer goes by fives from start to end."""
    return skipped(given, answer, accept, 5)
