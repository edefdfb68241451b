"""What a family does besides its mornings: settings, another child, days ahead, merges, reports."""

import datetime as dt
import tomllib
from collections.abc import Mapping
from functools import cached_property
from typing import NamedTuple

from tests.benchmarks._lived_calendar import A_QUARTER, DAY, FIRST
from tests.benchmarks._lived_child import Child
from tests.benchmarks._lived_compare import Compared
from tests.benchmarks._lived_counts import Counts
from tests.benchmarks._lived_house import AWAY, JOINS, House, Machine
from tests.benchmarks._lived_program import Screen


class Setting(NamedTuple):
    """A line of the settings: how many below the nicknames, what is typed there, what is kept where."""

    down: int
    keys: str
    table: str
    key: str
    kept: object


SETTINGS = {
    3: Setting(9, "Dana", "preferences", "adult", "Dana"),
    7: Setting(6, " ", "preferences", "pennies", False),
    12: Setting(8, "Fox", "preferences", "animal", "Fox"),
    17: Setting(4, " ", "preferences", "answers", "covered"),
    21: Setting(10, " ", "household", "toddler", True),
    25: Setting(6, " ", "preferences", "pennies", True),
    29: Setting(4, " ", "preferences", "answers", "shown"),
    33: Setting(10, " ", "household", "toddler", False),
}
"""The setting that is changed at the end of a week of the lessons."""
CALENDAR = """BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//invented//EN
BEGIN:VEVENT
UID:1
SUMMARY:No school
DTSTART;VALUE=DATE:{first:%Y%m%d}
DTEND;VALUE=DATE:{end:%Y%m%d}
END:VEVENT
END:VCALENDAR
"""


class Jobs:
    """The jobs of one family, each done once, when its time has come."""

    def __init__(self, house: House, compared: Compared) -> None:
        self.house, self.compared = house, compared
        self.set = set[int]()
        self.quarters = 0
        self.today, self.machine = FIRST, house.machines[0]

    @cached_property
    def plain(self) -> Mapping[str, bool]:
        """Of every item whether it is a plain one, and no known slip, as the catalogue lists it."""
        (printed,) = self.house.machines[0].laptop.commands(
            dt.datetime.combine(FIRST, dt.time(9)), ("catalogue", "--json")
        )
        return {each["id"]: not each["trouble"] for each in printed.data()["items"]}

    def at_the_close(self, machine: Machine, screen: Screen, day: dt.date, *, last: bool) -> None:
        """What is done by keys once the children are through."""
        self.today, self.machine = day, machine
        if self.house.name == JOINS[0] and day >= JOINS[1] and len(self.house.children) == 1:
            self._join(screen, day)
        away = AWAY.get(self.house.name)
        if (
            self.house.name == "average"
            and away
            and machine is self.house.machines[0]
            and self._soon(away[0], machine)
        ):
            self._day_off(machine, screen, away[0])
        if last:
            self._teach(machine, screen, day)
            week = machine.year.week(day)
            if week in SETTINGS and week not in self.set:
                self.set.add(week)
                self._settings(machine, screen, SETTINGS[week])

    def _soon(self, day: dt.date, machine: Machine) -> bool:
        return self.today < day <= self.today + 7 * DAY and day not in machine.year.off

    def _join(self, screen: Screen, day: dt.date) -> None:
        """Another child, by the page of the children; its first morning comes right after."""
        screen.choose("the children")
        screen.wait("add a child")
        screen.press("n")
        screen.wait("Another child")
        screen.press(*JOINS[2])
        screen.wait("The same weeks as the family")
        screen.press("enter")
        screen.wait(f"{JOINS[2]} is one of the children now.")
        screen.back()
        screen.wait(lambda _text: screen.closed())
        screen.settle()
        self.house.children.append(Child(JOINS[2], "average", self.house.seed, joined=day))
        self.compared.done["children joined"] += 1

    def _day_off(self, machine: Machine, screen: Screen, day: dt.date) -> None:
        """A day off ahead, by the page of the year, of its week and of its day."""
        screen.choose("the year")
        screen.wait("last day")
        screen.press("enter")
        screen.wait("To have ready")
        screen.press("enter")
        screen.wait(lambda text: "Sun  Mon" in text)
        for _ in range(40):
            if f"{day:%A}, {day:%B} {day.day}, {day.year}" in screen.terminal.text():
                break
            screen.press("right")
        screen.press("y")
        machine.year.off.add(day)
        for _ in range(3):
            screen.back()
        screen.wait(lambda _text: screen.closed())
        self.compared.done["days off by key"] += 1

    def _teach(self, machine: Machine, screen: Screen, day: dt.date) -> None:
        """Say of what rests that it was taught again."""
        child = self.house.children[0].name
        resting = Counts(machine.laptop, child, machine.year, day, self.plain).resting(machine.taught)
        if not resting or len(self.house.children) > 1:
            return
        screen.press("l")
        text = screen.wait("what may be asked so far")
        where = f"{self.house.name} {child} {day}"
        self.compared.same("items to teach again", text.count("teach again: "), len(resting), where)
        for _ in resting:
            screen.press("y", "down")
        screen.wait(lambda text: text.count("taught again: ") == len(resting))
        machine.taught |= dict.fromkeys(resting, day)
        screen.back()
        screen.wait(lambda _text: screen.closed())
        self.compared.done["items taught again"] += len(resting)

    def _settings(self, machine: Machine, screen: Screen, setting: Setting) -> None:
        screen.choose("settings")
        screen.wait("Settings: Space changes a line")
        screen.press(*["\t"] * (setting.down + len(self.house.children) - 1), *setting.keys, "enter")
        screen.wait("Saved:")
        screen.settle()
        kept = tomllib.loads((machine.laptop.home / "family.toml").read_text("utf-8"))[setting.table]
        where = f"{self.house.name} {self.today}"
        self.compared.same("a setting as it was set", kept.get(setting.key), setting.kept, where)
        if setting.key == "adult":
            machine.adult = str(setting.kept)
        self.compared.done["settings changed"] += 1

    # -- after it, and in the evening

    def after(self, day: dt.date) -> None:
        """Once the first morning is over a second laptop gets the family's settings."""
        if day == FIRST:
            self._copy_settings()

    def in_the_evening(self, day: dt.date) -> None:
        """What is done by commands at a week's end."""
        self.today = day
        if len(self.house.machines) > 1:
            self._merge(day)
        quarter = (self.house.truth.number(day)) // (4 * A_QUARTER)
        if quarter > self.quarters:
            self.quarters = quarter
            self._quarter(day, quarter)

    def days_off_come_up(self) -> None:
        """A school’s calendar says that days are off, days before: that is taken in at a week's end."""
        away, machine = AWAY.get(self.house.name), self.house.machines[0]
        if self.house.name != "quick" or not away or not self._soon(away[0], machine):
            return
        file = machine.laptop.home / "school.ics"
        file.write_text(CALENDAR.format(first=away[0], end=away[1] + DAY), "utf-8")
        self._give(machine, ("days", "--import", f"{file}", "--take", "all"))
        machine.year.off |= {away[0] + n * DAY for n in range((away[1] - away[0]).days + 1)}
        self.compared.done["days off by a calendar file"] += 1

    def _give(self, machine: Machine, *lines: tuple[str, ...]) -> None:
        machine.laptop.commands(dt.datetime.combine(self.today, dt.time(17)), *lines)

    def _merge(self, day: dt.date) -> None:
        """Each laptop takes in the other's journal, where that has one; the settings are those last used."""
        one, other = self.house.machines
        for taker, giver in ((one, other), (other, one)):
            if (giver.laptop.home / "journal.db").exists():
                self._give(taker, ("merge", f"{giver.laptop.home}"))
        one.held |= other.held
        other.held |= one.held
        self._copy_settings()
        tables = "sittings", "prompts", "marks"
        for table in tables:
            rows = [set(machine.laptop.rows(f"SELECT * FROM {table}")) for machine in self.house.machines]
            self.compared.same(f"merged alike: {table}", rows[0] ^ rows[1], set(), f"{self.house.name} {day}")
        self.compared.done["merges"] += 1

    def _copy_settings(self) -> None:
        for machine in self.house.machines:
            if machine is not self.machine:
                machine.take_settings_of(self.machine)

    def _quarter(self, day: dt.date, quarter: int) -> None:
        """Sheets, a report, a letter and a copy, each a new file of some size."""
        machine = self.house.machines[0]
        folder = machine.laptop.home / f"quarter {quarter}"
        folder.mkdir()
        for child in self.house.children:
            made = {
                "week.html": ("sheets", "week", "--out"),
                "today.html": ("sheets", "today", "--out"),
                "report.html": ("report", "--form", "html", "--out"),
                "report.csv": ("report", "--form", "csv", "--out"),
                "letter.txt": ("report", "--letter", "quarter", "--form", "text", "--out"),
            }
            lines = [
                (*line, f"{folder / f'{child.name} {name}'}", "--child", child.name)
                for name, line in made.items()
            ]
            self._give(machine, *lines, ("copy", f"{folder / f'{child.name}.db'}"), ("check",))
            for file in folder.glob(f"{child.name}*"):
                where = f"{self.house.name} {day} {file.name}"
                self.compared.same("a file that was made", file.stat().st_size > 200, True, where)
        self.compared.done["quarters"] += 1

    def at_the_end(self) -> None:
        """A letter of the year, a list for the summer, and an export of all."""
        machine = self.house.machines[0]
        for child in self.house.children:
            who = ("--child", child.name)
            self._give(
                machine, ("report", "--letter", "year", *who), ("report", "--summer", *who), ("game", *who)
            )
        self._give(machine, ("export", "--all", f"{machine.laptop.home / 'export'}"), ("check",))
