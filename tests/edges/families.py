"""What the tests of family.toml share: a file with everything in it, and the family it describes."""

import datetime as dt
from pathlib import Path

import pytest

from warmup.documents import FileProblem
from warmup.family import Child, CountdownRule, Family, load

day = dt.date

EXAMPLE = """
format = 1
[school]
first_day = 2026-08-31
first_week = 1
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday"]
began = 2026-11-25
settled = 2026-11-24
days_off = [2026-11-26, {from = 2026-12-21, to = 2027-01-01}]
extra = [2026-12-05]
[[child]]
nickname = "Bean"
held = ["coins:dime"]
[[countdown]]
name = "the lake"
date = 2027-06-04
[[countdown]]
name = "the feast"
yearly = "fourth Thursday of November"
[preferences]
theme = "dark"
answers = "covered"
pennies = true
"""

FAMILY = Family(
    first_day=day(2026, 8, 31),
    began=day(2026, 11, 25),
    children=(Child("Bean", held=("coins:dime",)),),
    settled=day(2026, 11, 24),
    off=((day(2026, 11, 26), day(2026, 11, 26)), (day(2026, 12, 21), day(2027, 1, 1))),
    extra=(day(2026, 12, 5),),
    countdowns=(
        CountdownRule("the lake", date=day(2027, 6, 4)),
        CountdownRule("the feast", yearly="fourth Thursday of November"),
    ),
    answers_shown=False,
)


def written(folder: Path, content: str | bytes) -> Path:
    path = folder / "family.toml"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def complaint(folder: Path, old: str, new: str) -> str:
    assert old in EXAMPLE
    with pytest.raises(FileProblem) as caught:
        load(written(folder, EXAMPLE.replace(old, new, 1)))
    return str(caught.value)
