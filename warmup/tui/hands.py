"""Which hand a key lies under, so that only that hand's keys are named.

On a United States keyboard, each hand on its own side of it; Space is for either.
"""

from enum import Enum


class Hand(Enum):
    """A hand at the keys, by its name for people."""

    RIGHT = "right hand"
    LEFT = "left hand"

    @property
    def other(self) -> "Hand":
        """The other one."""
        return Hand.LEFT if self is Hand.RIGHT else Hand.RIGHT


_LEFT = frozenset({*"qwertasdfgzxcvb123456", "tab", "escape", "f1"})
_EITHER = frozenset({"space"})


def hand_of(key: str) -> Hand | None:
    """The hand that pressed a key; None where either may have."""
    if key in _EITHER:
        return None
    return Hand.LEFT if key in _LEFT else Hand.RIGHT
