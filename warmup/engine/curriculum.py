"""What a child may be asked in a year and when: the plan's items over one family's school year."""

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from warmup.model import Item, ItemId, Morning
from warmup.schoolyear import SchoolYear

NEW_FAMILY_WEEKS = 2
"""How long a family that began counts as new, in school weeks."""


class Curriculum(NamedTuple):
    """The items of the plan by their ids, and the year they lie in.

    It changes with the family's days and nothing else. ``reviews`` are the review weeks, ``began`` is the
    index of the family's first morning with the program.
    """

    by_id: Mapping[ItemId, Item]
    year: SchoolYear
    reviews: tuple[int, ...] = ()
    began: int = 0

    @property
    def items(self) -> tuple[Item, ...]:
        """The items in the order of the catalogue."""
        return tuple(self.by_id.values())

    @property
    def since(self) -> int:
        """The week in which the family began: what the plan has before it is unknown, not new."""
        return self.year.week_at(self.began)

    def opened(self, item: Item) -> int:
        """The index of the morning an item unlocked at, by the plan; no earlier than the family began."""
        return self.year.begins(max(item.week, self.since))

    def new_family(self, morning: Morning) -> bool:
        """Whether the family is in its first weeks with the program."""
        return morning.index - self.began < NEW_FAMILY_WEEKS * self.year.mornings_a_week


def curriculum(
    items: Iterable[Item], year: SchoolYear, began: dt.date, reviews: tuple[int, ...] = ()
) -> Curriculum:
    """The curriculum of these items over a year, for a family that uses the program from ``began`` on."""
    return Curriculum(
        {item.id: item for item in items}, year, reviews, max(year.before, year.index_of(began))
    )
