"""Every figure of a week's end: on the pages that the close leads to, and what the commands print."""

import datetime as dt
import re
from collections.abc import Mapping
from functools import partial
from typing import Any

from tests.benchmarks._lived_calendar import A_WEEK, FIRST, MORNINGS
from tests.benchmarks._lived_child import Child
from tests.benchmarks._lived_compare import Compared
from tests.benchmarks._lived_counts import GROWING, NOT_MET, REVISIT, SETTLED, Counts
from tests.benchmarks._lived_house import House, Machine
from tests.benchmarks._lived_morning import GLYPHS
from tests.benchmarks._lived_program import Printed, Screen

LINES = (
    ("known", "--json"), ("known",), ("then", "--json"), ("past",), ("report", "--form", "json"),
    ("report", "--form", "text"), ("year", "--json"), ("year",), ("week", "--json"), ("today", "--json"),
)  # fmt: skip
_MARKS = """
    SELECT date, position, item, mark, cue, adult FROM marks
    JOIN prompts USING (child, date, sitting, position)
    WHERE child = ? AND mark <> '' ORDER BY 1, 2
"""
_BEADS = """
    SELECT coalesce(mark, '') FROM prompts
    JOIN sittings USING (child, date, sitting)
    LEFT JOIN marks USING (child, date, sitting, position)
    WHERE child = ? AND date = ? AND (prompts.position <= furthest OR coalesce(mark, '') <> '')
    ORDER BY sitting, prompts.position
"""
_NUMBERS = "one two three four five six seven eight nine ten eleven twelve"


class Evening:
    """The figures of one child at one machine, at the end of a day, each beside its own count."""

    def __init__(
        self,
        house: House,
        machine: Machine,
        child: Child,
        day: dt.date,
        compared: Compared,
        plain: Mapping[str, bool],
    ) -> None:
        self.house, self.machine, self.child, self.day = house, machine, child, day
        self.counts = Counts(machine.laptop, child.name, machine.year, day, plain)
        where = f"{house.name} {child.name} {day} {machine.laptop.home.name}"
        self.same = partial(compared.same, where=where)

    @property
    def _since(self) -> dt.date:
        return self.child.joined or FIRST

    def log(self) -> None:
        """The journal holds what was keyed: each mark at its place, and nothing else."""
        rows = self.machine.laptop.rows(_MARKS, self.child.name)
        keyed = sorted((f"{each.day}", *each[1:]) for each in self.child.log)
        self.same("journal: marks as keyed", set(rows) ^ set(keyed), set())
        rough = self.machine.laptop.rows(
            "SELECT DISTINCT date FROM sittings WHERE child = ? AND rough", self.child.name
        )
        self.same("journal: rough days", {day for (day,) in rough}, {f"{day}" for day in self.child.rough})

    def commands(self) -> None:
        """What the commands print in the evening."""
        moment = dt.datetime.combine(self.day, dt.time(18))
        printed = self.machine.laptop.commands(
            moment, *((name, "--child", self.child.name, *rest) for name, *rest in LINES)
        )
        known, known_text, then, past, report, report_text, year, year_text, week, today = printed
        self._known(known.data(), known_text.text)
        self._then(then.data())
        self._past(past.text)
        self._report(report.data()["report"], report_text.text)
        self._year(year.data(), year_text.text)
        self._week(week.data())
        self._today(today)

    # -- what they know

    def _known(self, data: Any, text: str) -> None:
        counts, taught = self.counts, self.machine.taught
        met = {each["level"]: each for each in data["levels"] if each["stand"] != NOT_MET}
        self.same("known: levels met", set(met), set(counts.levels))
        for level, (first, times, marks) in counts.levels.items():
            shown = met.get(level, {})
            self.same("known: first day of a level", shown.get("first"), f"{first}")
            self.same("known: times of a level", shown.get("times"), times)
            self.same("known: last marks of a level", tuple(shown.get("marks", ())), marks)
            settled = counts.settled.get(level)
            self.same("known: settled on", shown.get("settled"), f"{settled}" if settled else None)
        stands = counts.stands(taught)
        self.same(
            "known: how a level stands",
            {level: each["stand"] for level, each in met.items() if each["stand"] != stands.get(level)},
            {},
        )
        for group, number in counts.groups(taught).items():
            told = re.search(rf"^{group.capitalize()}: (\d+)\.", text, re.MULTILINE)
            self.same(f"known: {group}", int(told[1]) if told else 0, number)
        self.same("known: slips that are open", {each["item"] for each in data["slips"]}, counts.slips())
        held = {each["week"]: each["held"] for each in data["weeks"] if each["held"]}
        self.same("known: mornings a week", held, dict(counts.weeks()))
        months = [(each["first"], each["met"], each["settled"]) for each in data["months"]]
        self.same("known: met and settled by month", months, counts.months())

    def _then(self, data: Any) -> None:
        truths = self.counts.then
        self.same("then and now: how many", len(data), min(8, len(truths)))
        for each in data:
            truth = truths.get(each["level"])
            shown = (each["then"], each["was"], each["now"], each["running"])
            want = truth and (truth.then, truth.was, truth.now, truth.halves // 2)
            self.same("then and now: one change", shown, want)

    # -- past mornings

    def _past(self, text: str) -> None:
        """Each line of the list, read back to its date and its counts."""
        told = dict(line.partition(": ")[::2] for line in text.splitlines() if ": " in line)
        want = {f"{day:%A}, {day:%B} {day.day}, {day.year}": self._words(day) for day in self._past_days()}
        self.same("past: days", set(told), set(want))
        for day, words in want.items():
            self.same("past: marks of a morning", told.get(day), words)

    def _past_days(self) -> set[dt.date]:
        """Today’s is no past morning yet."""
        return self.counts.held - {self.day}

    def _words(self, day: dt.date) -> str:
        marks = self.counts.morning(day)
        called = {"fluent": "came easily", "hesitated": "hesitated", "not_yet": "not yet", "skipped": "left"}
        numbers = ["no", *_NUMBERS.split()]
        parts = [f"{numbers[sum(marks.values())]} asked"]
        parts += [f"{numbers[marks[mark]]} {words}" for mark, words in called.items() if marks.get(mark)]
        return f"{', '.join(parts)}."

    # -- the report

    def _report(self, data: Any, text: str) -> None:
        counts = self.counts
        seconds = counts.report.seconds_by_month()
        confirmed = self.machine.confirmed(self._since, self.day)
        school, held = counts.by_month(confirmed), counts.by_month(counts.held)
        months = {each["first"][:7]: (each["school"], each["held"], each["seconds"]) for each in
                  data["attendance"]["months"]}  # fmt: skip
        want = {month: (school[month], held[month], seconds.get(month, 0)) for month in (*school, *held)}
        self.same("report: days and minutes by month", months, want)
        self.same("report: days held", set(data["attendance"]["held"]), {f"{day}" for day in counts.held})
        topics = {each["title"]: (each["questions"], each["days"]) for each in data["topics"]}
        self.same("report: questions and days by topic", sorted(topics.values()),
                  sorted(counts.report.by_skill().values()))  # fmt: skip
        for each in data["levels"]:
            questions, first = counts.report.by_level().get(each["id"], (0, ""))
            self.same("report: questions of a level", (each["questions"], each["first"]), (questions, first))
            settled = counts.settled.get(each["id"])
            self.same("report: a level settled", each["settled"], f"{settled}" if settled else None)
        self._report_text(" ".join(text.split()), len(confirmed), sum(seconds.values()))
        self._reviews(data["reviews"])

    def _report_text(self, text: str, confirmed: int, seconds: int) -> None:
        found = re.search(r"warm-up on (\d+) days?, about (\d+) minutes? in all, with (\d+) question", text)
        want = (len(self.counts.held), (seconds + 30) // 60, self.counts.questions())
        self.same("report: days, minutes, questions", found and tuple(map(int, found.groups())), want)
        told = re.search(r"(\d+) planned school days? (?:are|is) confirmed; (\d+)", text)
        planned = len(self.counts.held & set(self.machine.year.mornings))
        self.same(
            "report: school days confirmed", told and tuple(map(int, told.groups())), (confirmed, planned)
        )

    def _reviews(self, data: Any) -> None:
        weeks = {each["week"] for each in data}
        self.same("report: review weeks are the year's", weeks <= set(self.counts.reviews), True)
        settled = [each for each in data if each["outcome"] == "settled"]
        days = {day for each in settled for day in each["dates"]}
        self.same("report: review dates were held", days <= {f"{day}" for day in self.counts.held}, True)

    # -- the year, the week, the day

    def _year(self, data: Any, text: str) -> None:
        year, day = self.machine.year, self.day
        self.same("year: last day", data["last_day"], f"{year.mornings[-1]}")
        weeks = {each["week"]: each["mornings"] for each in data["weeks"]}
        want = {week: [f"{each}" for each in year.of_week(week)] for week in range(1, MORNINGS // A_WEEK + 1)}
        self.same("year: mornings of every week", weeks, want)
        reviews = {each["week"] for each in data["weeks"] if each["review"]}
        self.same("year: review weeks", reviews, set(self.counts.reviews))
        last = year.mornings[-1]
        review = ", a review week" if year.week(day) in self.counts.reviews else ""
        first_lines = " ".join(text.split("Quarter 1")[0].split())
        self.same(
            "year: today’s line",
            first_lines,
            f"Today is {day:%A}, {day:%B} {day.day}, {day.year}. School day {year.number(day)}, week "
            f"{year.week(day)}{review}. The last day is {last:%A}, {last:%B} {last.day}, {last.year}.",
        )

    def _week(self, data: Any) -> None:
        year = self.machine.year
        self.same("week: its number and quarter", (data["week"], data["quarter"]),
                  (year.week(self.day), year.quarter(self.day)))  # fmt: skip
        shown = [each["first"] for each in data["days"] if each["when"] != "off"]
        self.same("week: its mornings", shown, [f"{day}" for day in year.of_week(year.week(self.day))])

    def _today(self, printed: Printed) -> None:
        morning, year, day = printed.data()["morning"], self.machine.year, self.day
        later = [f"{each}" for each in year.mornings if each > day]
        before = [f"{each}" for each in year.mornings if each < day]
        shown = [morning[key] for key in ("school_day", "week", "quarter", "next", "previous")]
        around = [later[0] if later else None, before[-1] if before else None]
        want = [year.number(day), year.week(day), year.quarter(day), *around]
        self.same("today: school day, week, quarter, neighbors", shown, want)

    # -- pages

    def pages(self, screen: Screen) -> None:
        """Look at the pages that the menu of the close leads to."""
        for label, heading, look in (
            ("past mornings", "Past mornings", self._past_page),
            ("what they know", "the year in bars", self._known_page),
            ("the year", "Quarter 4", self._year_page),
            ("a report", "By month:", self._report_page),
        ):
            if look == self._past_page and not self._past_days():
                continue
            screen.choose(label)
            screen.wait(partial(_is_page, heading))
            look(screen.settle(0.15))
            screen.back()
            screen.wait(lambda _text: screen.closed())
            screen.settle()

    def _past_page(self, text: str) -> None:
        rows = re.findall(r"(\w+day), (\w+) (\d+)\s+([●◐○–·]+)", text)
        by_name = {f"{day:%A} {day:%B} {day.day}": day for day in self._past_days()}
        self.same("past page: has rows", bool(rows), bool(self._past_days()))
        for weekday, month, number, beads in rows:
            day = by_name.get(f"{weekday} {month} {number}")
            self.same("past page: beads of a morning", beads, day and self._beads(day))

    def _beads(self, day: dt.date) -> str:
        rows = self.machine.laptop.rows(_BEADS, self.child.name, f"{day}")
        return "".join(GLYPHS[mark] for (mark,) in rows)

    def _known_page(self, text: str) -> None:
        groups = self.counts.groups(self.machine.taught)
        for group in (REVISIT, GROWING, SETTLED, NOT_MET):
            found = re.search(rf"(\d+) {group}", text)
            self.same(f"known page: {group}", int(found[1]) if found else 0, groups[group])
        found = re.search(r"(\d+) slips? open", text)
        self.same("known page: slips", int(found[1]) if found else 0, len(self.counts.slips()))

    def _year_page(self, text: str) -> None:
        year = self.machine.year
        last = year.mornings[-1]
        self.same("year page: last day", f"last day {last:%B} {last.day}, {last.year}" in text, True)
        cells = re.findall(r"(\d+) ([■▣□–◇=]+) +([A-Z][a-z]{2} \d+)", text)
        self.same("year page: weeks", len(cells), MORNINGS // A_WEEK)
        for number, squares, first in cells:
            days = year.of_week(int(number))
            past = sum(day < self.day for day in days)
            self.same("year page: a week’s first day", first, f"{days[0]:%b} {days[0].day}")
            self.same("year page: mornings past", squares.count("■"), past)

    def _report_page(self, text: str) -> None:
        flat = " ".join(text.split())
        self._report_text(flat, len(self.machine.confirmed(self._since, self.day)),
                          sum(self.counts.report.seconds_by_month().values()))  # fmt: skip


def _is_page(heading: str, text: str) -> bool:
    """Whether the page with these words is on screen, and the menu no longer."""
    return heading in text and "Menu" not in text
