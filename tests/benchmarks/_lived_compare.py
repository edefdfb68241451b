"""What was compared, how often, and what differed."""

from collections import Counter
from dataclasses import dataclass, field

MOST = 400
"""So long are the two sides of a difference told."""


@dataclass
class Compared:
    """The comparisons by what they compare, the differences, and what was done besides."""

    times: Counter[str] = field(default_factory=Counter)
    wrong: list[str] = field(default_factory=list)
    done: Counter[str] = field(default_factory=Counter)

    def same(self, what: str, shown: object, counted: object, where: str) -> None:
        """Note one comparison of what the program ``shown`` with what was ``counted``."""
        self.times[what] += 1
        if shown != counted:
            self.wrong.append(f"{where}: {what}: shown {str(shown)[:MOST]}, counted {str(counted)[:MOST]}")

    def __add__(self, other: "Compared") -> "Compared":
        return Compared(self.times + other.times, [*self.wrong, *other.wrong], self.done + other.done)
