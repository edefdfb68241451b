"""A list taken in rounds: the first of each kind, then the second of each: no kind fills its start."""

from collections import Counter
from collections.abc import Callable, Hashable, Iterable
from typing import TypeVar

Each = TypeVar("Each")


def in_rounds(found: Iterable[Each], kind: Callable[[Each], Hashable]) -> list[Each]:
    """The first of each kind in their order, then the second of each, and so on."""
    before, rounds = Counter[Hashable](), list[tuple[int, Each]]()
    for each in found:
        rounds.append((before[kind(each)], each))
        before[kind(each)] += 1
    return [each for _, each in sorted(rounds, key=lambda pair: pair[0])]
