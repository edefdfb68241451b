"""What a child may be asked in a year and when: the plan's items over one family's school year."""

import datetime as dt
from collections.abc import Collection, Mapping
from typing import NamedTuple

from warmup.model import Item, ItemId, Morning
from warmup.schoolyear import SchoolYear

NEW_FAMILY_WEEKS = 2
"""How long a family that began counts as new, in school weeks."""


class Reviews(NamedTuple):
    """Which ``weeks`` are review weeks. ``hands`` names the items asked with things on the table."""

    mornings_a_week: int
    weeks: tuple[int, ...] = ()
    hands: Collection[ItemId] = frozenset()

    def last_before(self, week: int) -> int:
        """The last review week before this week; 0 when there was none."""
        return max((review for review in self.weeks if review < week), default=0)


NO_REVIEWS = Reviews(1)
"""For a year without review weeks."""


class Curriculum(NamedTuple):
    """The items of the plan and the year they lie in; it changes with the family's days and nothing else.

    ``unlocks`` holds the index of the morning each item unlocks at (0 stands in for one that the plan no
    longer names), ``guesses`` its chance of a lucky answer. ``reviews`` says which weeks are review weeks;
    without it none is. ``began`` is the index of the family's first morning with the program.
    """

    items: tuple[Item, ...]
    unlocks: Mapping[ItemId, int]
    guesses: Mapping[ItemId, float]
    year: SchoolYear
    reviews: Reviews | None = None
    began: int = 0

    @property
    def since(self) -> int:
        """The week in which the family began: what the plan has before it is unknown, not new."""
        return self.began // self.year.mornings_a_week + 1

    def new_family(self, morning: Morning) -> bool:
        """Whether the family is in its first weeks with the program."""
        gone = self.year.index_of(morning.date) - self.began
        return gone < NEW_FAMILY_WEEKS * self.year.mornings_a_week


def curriculum(
    items: tuple[Item, ...], year: SchoolYear, began: dt.date, reviews: tuple[int, ...] = ()
) -> Curriculum:
    """The curriculum of these items over a year, for a family that uses the program from ``began`` on.

    ``reviews`` are the review weeks of the plan.
    """
    hands = frozenset(item.id for item in items if item.hands)
    return Curriculum(
        items,
        {item.id: (item.week - 1) * year.mornings_a_week for item in items},
        {item.id: item.guess for item in items},
        year,
        Reviews(year.mornings_a_week, reviews, hands),
        year.index_of(began),
    )
