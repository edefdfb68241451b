"""What the program's figures should be at the end of a week, by SQL over the journal and plain dates.

Counted from the lines of tests/oracles, and from nothing of ``warmup``.
"""

import datetime as dt
import tomllib
from collections import Counter
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from tests.benchmarks._lived_calendar import PLAN, Calendar
from tests.benchmarks._lived_program import Laptop
from tests.oracles import known, report, then_and_now

REVISIT, GROWING, SETTLED, NOT_MET = "worth revisiting", "growing", "settled", "not met yet"
_ITEMS = """
    SELECT p.item, json_extract(s.routine, '$.prompts[' || p.position || '].level'), p.date,
        CASE WHEN m.mark = 'fluent' AND m.cue > 0 THEN 'hesitated' ELSE m.mark END, s.rough, m.from_memory
    FROM marks m
    JOIN prompts p USING (child, date, sitting, position)
    JOIN sittings s USING (child, date, sitting)
    WHERE m.child = ? AND m.date <= ? AND m.mark IN ('fluent', 'hesitated', 'not_yet')
    ORDER BY p.date, s.started, p.sitting, p.position
"""
_ASKED = """
    SELECT count(*) FROM prompts p
    JOIN sittings s USING (child, date, sitting)
    LEFT JOIN marks m USING (child, date, sitting, position)
    WHERE p.child = ? AND p.date <= ? AND (p.position <= s.furthest OR coalesce(m.mark, '') <> '')
        AND coalesce(m.mark, '') <> 'skipped'
"""
_MORNING = """
    SELECT coalesce(m.mark, ''), count(*) FROM prompts p
    JOIN sittings s USING (child, date, sitting)
    LEFT JOIN marks m USING (child, date, sitting, position)
    WHERE p.child = ? AND p.date = ? AND (p.position <= s.furthest OR coalesce(m.mark, '') <> '')
    GROUP BY 1
"""


class Folded(NamedTuple):
    """What an item's marks come to: not yet running, its last mark that counts, and the last date."""

    level: str
    misses: float = 0
    last: tuple[str, str] | None = None
    marked: str = ""


class Counts:
    """All counts of one child on one day, on one laptop."""

    def __init__(
        self, laptop: Laptop, child: str, year: Calendar, today: dt.date, plain: Mapping[str, bool]
    ) -> None:
        self._laptop, self._child, self._year, self.today = laptop, child, year, today
        self._plain = plain
        self.lines = known.shown(laptop.journal, child, today)
        self.levels = known.by_level(self.lines)
        self.report = report.Counts(laptop.journal, child, year.mornings[0], today)
        self.held = {dt.date.fromisoformat(day) for day in self.report.held()}
        self.reviews = year.reviews(self.held, today)
        self.settled = known.settled(self.lines, [year.of_week(week) for week in self.reviews])
        self.then = then_and_now.truths(laptop.journal, child, today, self._level_of())
        self.items = self._folded()

    def _level_of(self) -> dict[str, str]:
        rows = self._laptop.rows(_ITEMS, self._child, f"{self.today}")
        return {item: f"{item.partition('/')[0]}:{level}" for item, level, *_ in rows}

    def _folded(self) -> dict[str, Folded]:
        found = dict[str, Folded]()
        for item, level, date, mark, rough, from_memory in self._laptop.rows(
            _ITEMS, self._child, f"{self.today}"
        ):
            was = found.get(item, Folded(f"{item.partition('/')[0]}:{level}"))
            weight = 0 if rough else 0.5 if from_memory else 1
            misses = was.misses + weight if mark == "not_yet" else 0
            last = was.last if rough and mark != "fluent" else (mark, date)
            found[item] = Folded(was.level, misses, last, date)
        return found

    @property
    def planned_levels(self) -> int:
        """How many levels the year has."""
        with PLAN.open("rb") as file:
            return sum(map(len, tomllib.load(file)["skills"].values()))

    def resting(self, taught: Mapping[str, dt.date]) -> set[str]:
        """The items that rest until they are taught again: three not yet running, and not taught since."""
        return {
            item
            for item, each in self.items.items()
            if each.misses >= 3 and not (item in taught and f"{taught[item]}" >= each.marked)
        }

    def stands(self, taught: Mapping[str, dt.date]) -> dict[str, str]:
        """How each level that was met stands."""
        resting, found = self.resting(taught), dict[str, str]()
        unsteady = {item for item, each in self.items.items() if each.misses >= 2} | resting
        for level in self.levels:
            own = {item for item, each in self.items.items() if each.level == level and self._plain[item]}
            settled = self.settled.get(level)
            since = settled and any(self._wobbled(item, f"{settled}") for item in own)
            revisit = own & unsteady or since
            found[level] = REVISIT if revisit else SETTLED if settled else GROWING
        return found

    def _wobbled(self, item: str, since: str) -> bool:
        last = self.items[item].last
        return last is not None and last[0] != "fluent" and last[1] >= since

    def groups(self, taught: Mapping[str, dt.date]) -> Counter[str]:
        """How many levels stand in each group."""
        found = Counter(self.stands(taught).values())
        found[NOT_MET] = self.planned_levels - len(self.levels)
        return found

    def slips(self) -> set[str]:
        """The misconceptions whose last mark that counts wobbled."""
        return {
            item
            for item, each in self.items.items()
            if not self._plain[item] and each.last and each.last[0] != "fluent"
        }

    def by_month(self, dates: Iterable[dt.date]) -> Counter[str]:
        """How many of these dates lie in each month."""
        return Counter(f"{day:%Y-%m}" for day in dates)

    def months(self) -> list[tuple[str, int, int]]:
        """By the end of each month, and by today: how many levels were met, and how many had settled."""
        first, found = self._year.mornings[0].replace(day=1), list[tuple[str, int, int]]()
        while first <= self.today:
            after = (first + dt.timedelta(31)).replace(day=1)
            met = sum(each[0] < after for each in self.levels.values())
            found.append((f"{first}", met, sum(day < after for day in self.settled.values())))
            first = after
        return found

    def weeks(self) -> Counter[int]:
        """On how many mornings of each week there was a warm-up."""
        return Counter(self._year.week(day) for day in self.held)

    def questions(self) -> int:
        """How many questions were asked."""
        return int(self._laptop.rows(_ASKED, self._child, f"{self.today}")[0][0])

    def morning(self, day: dt.date) -> dict[str, int]:
        """How many questions of a day got each mark; empty for those with none."""
        return dict(self._laptop.rows(_MORNING, self._child, f"{day}"))
