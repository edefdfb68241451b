"""The order of a morning: the first order, slot by slot, that breaks no limit."""

from collections.abc import Sequence
from typing import Protocol, TypeVar


class Standing(Protocol):
    """What order needs to know of a prompt: its skill, whether it is hard, and where it would like to be."""

    @property
    def skill(self) -> str:
        """The skill it asks."""
        ...

    @property
    def hard(self) -> bool:
        """Whether it may not come first, nor next to another hard one."""
        ...

    @property
    def rank(self) -> int:
        """Its place by the shape of the morning: lower comes earlier."""
        ...

    @property
    def closes(self) -> bool:
        """Whether it must come last."""
        ...


S = TypeVar("S", bound=Standing)
_TRIES = 4000
"""How many steps the search may take; a morning has at most a dozen prompts, and needs far fewer."""


def find_order(chosen: Sequence[S], *, gentle: bool = True) -> tuple[S, ...] | None:
    """The prompts in an order with no skill twice running; None when there is no such order.

    One that closes comes last. When ``gentle``, no two hard ones run together and the first is not hard.
    Of all such orders the one that keeps closest to the ranks, earliest places first, is taken: it does
    not depend on luck.
    """
    left = sorted(range(len(chosen)), key=lambda at: (chosen[at].rank, at))
    order = _extend([], left, chosen, gentle, [_TRIES])
    return None if order is None else tuple(chosen[at] for at in order)


def _extend(
    done: list[int], left: list[int], chosen: Sequence[S], gentle: bool, tries: list[int]
) -> list[int] | None:
    if not left:
        return done
    last = chosen[done[-1]] if done else None
    for at in left:
        if tries[0] <= 0:
            return None
        tries[0] -= 1
        if (chosen[at].closes and len(left) > 1) or not _may_follow(last, chosen[at], gentle):
            continue
        order = _extend([*done, at], [other for other in left if other != at], chosen, gentle, tries)
        if order is not None:
            return order
    return None


def _may_follow(last: Standing | None, then: Standing, gentle: bool) -> bool:
    if last is None:
        return not (gentle and then.hard)
    return last.skill != then.skill and not (gentle and last.hard and then.hard)
