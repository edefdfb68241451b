"""A family that lives a school year: its laptops and children, who is at the table, and what each day was."""

import datetime as dt
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tests.benchmarks._children import luck
from tests.benchmarks._lived_calendar import A_WEEK, DAY, FIRST, Calendar
from tests.benchmarks._lived_child import Child
from tests.benchmarks._lived_program import Laptop

HELD, SCHOOL, OFF = "held", "school", "off"
"""A planned morning with a warm-up; one with school and none; one that was off after all."""
IN_BED = {"wobbly": (dt.date(2027, 2, 22), dt.date(2027, 3, 3))}
"""A stretch of mornings off that nobody knew of before: more than four, of which one question is asked."""
AWAY = {
    "quick": (dt.date(2027, 4, 12), dt.date(2027, 4, 15)),
    "average": (dt.date(2027, 3, 25), dt.date(2027, 3, 25)),
}
"""Mornings off that the program was told of before: out of a calendar file, and on the page of a day."""
JOINS = ("quick", dt.date(2027, 1, 4), "Pip")
"""Where another child joins, from when on, and its nickname."""


class Machine:
    """One adult's laptop, and what its family.toml and its journal were told so far."""

    def __init__(self, home: Path) -> None:
        self.laptop = Laptop(home)
        self.year = Calendar()
        self.held = set[dt.date]()
        self.told_school = set[dt.date]()
        self.told_until: dt.date | None = None
        self.taught = dict[str, dt.date]()
        self.adult = ""

    def missing(self, day: dt.date) -> list[dt.date]:
        """The planned mornings before this day without a word about them and without a warm-up."""
        since = self.told_until
        return [
            each
            for each in self.year.mornings
            if each < day and each not in self.held and (since is None or each > since)
        ]

    def confirmed(self, since: dt.date, until: dt.date) -> set[dt.date]:
        """The school days that had a warm-up, or of which it was said that they were school."""
        known = self.held | self.told_school
        return {day for day in self.year.mornings if since <= day <= until and day in known}

    def take_settings_of(self, other: "Machine") -> None:
        """Copy the other's family.toml here, as two adults on two machines do."""
        shutil.copyfile(other.laptop.home / "family.toml", self.laptop.home / "family.toml")
        self.year.off = set(other.year.off)
        self.told_school, self.told_until = set(other.told_school), other.told_until
        self.taught, self.adult = dict(other.taught), other.adult


@dataclass
class House:
    """A family by its way of living, its machines (the first is the usual one) and its children."""

    name: str
    seed: int
    machines: list[Machine]
    children: list[Child]
    truth: Calendar = field(default_factory=Calendar)
    fates: dict[dt.date, str] = field(default_factory=dict)

    def luck(self, *parts: object) -> float:
        """This family's luck in something, from 0 up to 1."""
        return luck(self.seed, self.name, *parts)

    def days(self) -> Iterator[tuple[dt.date, Machine]]:
        """The mornings that are held, in order, each with the machine it is held at.

        Which mornings are off is settled on the way, and moves the rest of the year on.
        """
        day = FIRST
        while day <= self.truth.mornings[-1]:
            if self.truth.planned(day):
                fate = self.fates[day] = self._fate(day)
                if fate == HELD:
                    yield day, self.machine_of(day)
                elif fate == OFF:
                    self.truth.off.add(day)
            day += DAY

    def _fate(self, day: dt.date) -> str:
        for stretch in (IN_BED.get(self.name), AWAY.get(self.name)):
            if stretch and stretch[0] <= day <= stretch[1]:
                return OFF
        drawn = self.luck(day, "fate")
        if day == FIRST or drawn >= 0.05:
            return HELD
        return OFF if drawn < 0.035 else SCHOOL

    def machine_of(self, day: dt.date) -> Machine:
        """Thursdays are the second adult's, where there is one."""
        return self.machines[-1] if day.weekday() == A_WEEK - 1 else self.machines[0]

    def last_of_week(self, day: dt.date) -> bool:
        """Whether no other morning of this calendar week is held; what is to come is drawn already."""
        later = (day + n * DAY for n in range(1, 7 - day.weekday()))
        return not any(self.truth.planned(each) and self._fate(each) == HELD for each in later)


def houses(folder: Path, seed: int) -> list[House]:
    """Three families: a quick child, an average one with two laptops, a wobbly one."""

    def house(kind: str, nickname: str, laptops: int = 1) -> House:
        machines = [Machine(folder / f"{kind}-{number}") for number in range(laptops)]
        return House(kind, seed, machines, [Child(nickname, kind, seed)])

    return [house("quick", "Fern"), house("average", "Moss", 2), house("wobbly", "Wren")]
