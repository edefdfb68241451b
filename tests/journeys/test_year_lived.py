"""The first week of ``year_lived``: two adults, two machines, every figure counted beside."""

import sqlite3
import sys
from contextlib import closing
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore = ["test_year_lived.py"]

from tests.benchmarks._lived_checks import Evening
from tests.benchmarks._lived_compare import Compared
from tests.benchmarks._lived_house import houses
from tests.benchmarks._lived_jobs import Jobs
from tests.benchmarks.year_lived import live


@pytest.mark.slow
def test_a_week_is_lived_and_counted_and_a_mark_that_changed_is_found(tmp_path: Path) -> None:
    _, house, _ = houses(tmp_path, seed=1)
    compared = Compared()
    live(house, 1, compared)
    assert not compared.wrong
    assert compared.done["mornings"] == 4 and compared.done["merges"] == 1
    assert len(compared.times) > 40
    machine, child = house.machines[0], house.children[0]
    with closing(sqlite3.connect(machine.laptop.journal)) as db, db:
        db.execute("UPDATE marks SET mark = CASE mark WHEN 'fluent' THEN 'not_yet' ELSE 'fluent' END")
    after = Compared()
    Evening(house, machine, child, max(machine.held), after, Jobs(house, after).plain).log()
    assert any("marks as keyed" in each for each in after.wrong)
