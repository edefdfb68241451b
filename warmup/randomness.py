"""Chance that comes out the same everywhere: drawing seeded by what a morning is, never by the machine."""

from collections.abc import Sequence
from random import Random
from typing import NamedTuple, TypeVar

try:
    # What hashlib gives out under this name, without the library for all other hashes that it loads.
    from _blake2 import blake2b
except ImportError:
    from hashlib import blake2b

T = TypeVar("T")


def digest(*parts: object) -> int:
    """A 64-bit number made from the parts, the same on every machine and in every process."""
    text = "\x1f".join(map(str, parts))
    return int.from_bytes(blake2b(text.encode("utf-8", "surrogatepass"), digest_size=8).digest(), "big")


class Phrasing(NamedTuple):
    """One of a prompt's ways to be said: its key (kept with the prompt) and its text."""

    key: str
    text: str


class SeededRandom:
    """Draws numbers, choices and phrasings from a seed.

    Only ``Random.random()`` is used: it is the one method whose stream Python promises to keep.
    ``avoid`` is the key of the phrasing used last time, which :meth:`phrasing` leaves out when it has others.
    """

    def __init__(self, *seed: object, avoid: str = "") -> None:
        self._random = Random(digest(*seed)).random
        self._avoid = avoid

    def below(self, count: int) -> int:
        """A whole number from 0 up to but not including ``count``, which is at least 1."""
        if count < 1:
            raise ValueError(f"cannot draw below {count}")
        return int(self._random() * count)

    def between(self, low: int, high: int) -> int:
        """A whole number from ``low`` to ``high``, both included."""
        return low + self.below(high - low + 1)

    def coin(self) -> bool:
        """True half of the time."""
        return self._random() < 0.5

    def pick(self, choices: Sequence[T]) -> T:
        """One of ``choices``, which is not empty."""
        return choices[self.below(len(choices))]

    def shuffled(self, things: Sequence[T]) -> tuple[T, ...]:
        """The same things in a drawn order."""
        left = list(things)
        return tuple(left.pop(self.below(len(left))) for _ in range(len(left)))

    def sample(self, things: Sequence[T], count: int) -> tuple[T, ...]:
        """``count`` different things, in a drawn order."""
        return self.shuffled(things)[:count]

    def phrasing(self, *texts: str) -> Phrasing:
        """One of the ways to say a prompt; not the one used last, when there is another."""
        ways = [Phrasing("abcdefghijklmnopqrstuvwxyz"[index], text) for index, text in enumerate(texts)]
        fresh = [way for way in ways if way.key != self._avoid] or ways
        return self.pick(fresh)
