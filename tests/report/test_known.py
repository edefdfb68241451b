"""Each number on the page of what a child knows is that of independent code, and that of the report."""

from collections import Counter

import pytest

from tests.oracles import known as oracle
from tests.oracles.report import Counts, school_days
from tests.report.conftest import CHILD, FIRST, OFF, OTHER, SATURDAY, TODAY, Home
from warmup import skills
from warmup.model import Strand
from warmup.report.gathering import gather
from warmup.session.known import Known, known

REVIEWS = (5, 9)
"""The review weeks of routines/year.toml that lie in these ten weeks."""
PLANNED = sorted(school_days(FIRST, TODAY, range(4), OFF, (SATURDAY,)))


@pytest.fixture(params=[CHILD, OTHER])
def of_whom(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def page(home: Home, child: str) -> Known:
    return known(home.context(child))


def test_first_days_times_and_marks_of_each_level(lived_in: Home, of_whom: str) -> None:
    wanted = oracle.by_level(oracle.shown(lived_in.journal, of_whom, TODAY))
    found = {
        level.id: (level.first, level.times, tuple(mark and mark.value for mark in level.marks))
        for level in page(lived_in, of_whom).levels
        if level.first
    }
    assert found == wanted and (of_whom == OTHER or len(found) > 30)


def test_what_settled_is_what_two_easy_checks_say_and_what_the_report_says(lived_in: Home) -> None:
    weeks = [PLANNED[4 * (week - 1) : 4 * week] for week in REVIEWS]
    wanted = oracle.settled(oracle.shown(lived_in.journal, CHILD, TODAY), weeks)
    found = page(lived_in, CHILD)
    assert {level.id: level.settled for level in found.levels if level.settled} == wanted and wanted
    report = gather(lived_in.context(), FIRST, TODAY)
    on_page = {level.id: (level.words(), level.first, level.settled) for level in found.levels if level.first}
    for level in report.levels:
        assert on_page[level.id] == (level.words, level.first, level.settled)


def test_the_bars_are_counts_over_the_journal(lived_in: Home) -> None:
    found, lines = page(lived_in, CHILD), oracle.shown(lived_in.journal, CHILD, TODAY)
    held = Counts(lived_in.journal, CHILD, FIRST, TODAY).held()
    weeks = Counter((sum(f"{each}" <= day for each in PLANNED) - 1) // 4 + 1 for day in held)
    assert {week.week: week.held for week in found.weeks if week.held} == weeks
    firsts = [first for first, _, _ in oracle.by_level(lines).values()]
    settled = oracle.settled(lines, [PLANNED[4 * (week - 1) : 4 * week] for week in REVIEWS])
    for month in found.months:
        name = f"{month.first:%Y-%m}"
        assert month.met == sum(f"{day:%Y-%m}" <= name for day in firsts)
        assert month.settled == sum(f"{day:%Y-%m}" <= name for day in settled.values())
    strands = {name: skill.strand for name, skill in skills.SKILLS.items()} | {"own": Strand.COUNTING}
    asked = Counter(strands[line.skill] for line in lines)
    hesitated = Counter(strands[line.skill] for line in lines if line.mark == "hesitated")
    assert {each.strand: (each.asked, each.hesitated) for each in found.strands} == {
        strand: (asked[strand], hesitated[strand]) for strand in asked
    }
