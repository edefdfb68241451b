"""What the tests of family.toml share: a file with everything in it, and the family it describes."""

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import settings
from hypothesis import strategies as st

from warmup.config.family import Child, CountdownRule, Family, YearlyOff, load
from warmup.config.toml_file import FileProblem
from warmup.engine.things import NAMES
from warmup.model import LevelId
from warmup.text import clean, visible

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
held = ["coins:worth"]
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
    children=(Child("Bean", held=(LevelId("coins:worth"),)),),
    known_until=day(2026, 11, 24),
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


quiet = settings(database=None, derandomize=True, deadline=None, max_examples=80)

names = st.text(st.characters(codec="utf-8"), min_size=1, max_size=40).map(clean).filter(visible)
refs = st.lists(st.sampled_from(["coins:worth", "no such:level", "count:to-20"]), unique=True).map(tuple)
dates = st.dates(day(2020, 1, 1), day(2040, 1, 1))
taught = st.dictionaries(
    st.sampled_from(["make-ten/seven-three", "no such/item", "[x] = 'q\"", "a.b"]), dates
).map(lambda found: tuple(found.items()))
every_year = st.sampled_from(["December 25", "last Monday in May", "FIRST friday of june", "February 29"])
rules = st.one_of(
    st.builds(CountdownRule, names, date=dates, yearly=st.just("")),
    st.builds(
        CountdownRule,
        names,
        date=st.none(),
        yearly=every_year,
    ),
)
weeks = st.lists(st.integers(1, 36), max_size=4).map(sorted).map(tuple)
a_family = st.builds(
    Family,
    first_day=dates,
    began=dates,
    children=st.lists(
        st.builds(
            Child,
            names,
            refs,
            refs,
            taught=taught,
            paused=st.none() | dates,
            reads=st.none() | st.booleans(),
            prompts=st.none() | st.integers(4, 10),
            resting=st.booleans(),
            began=st.none() | dates,
        ).flatmap(
            lambda child: (
                st.just(child)
                | st.builds(
                    replace,
                    st.just(child),
                    first_day=dates,
                    first_week=st.integers(1, 36),
                    held_weeks=weeks,
                    skipped_weeks=weeks,
                )
            )
        ),
        min_size=1,
        max_size=3,
        unique_by=lambda c: c.nickname.casefold(),
    ).map(tuple),
    first_week=st.integers(1, 36),
    held_weeks=weeks,
    skipped_weeks=weeks,
    last_day=st.none() | st.just(dt.date.max.replace(year=2999)),
    weekdays=st.sets(st.integers(0, 6), min_size=1).map(sorted).map(tuple),
    known_until=st.none() | dates,
    off=st.lists(
        st.tuples(dates, st.integers(0, 365)).map(lambda p: (p[0], p[0] + dt.timedelta(p[1]))), max_size=4
    ).map(tuple),
    extra=st.lists(dates, max_size=3).map(tuple),
    countdowns=st.lists(rules, max_size=3).map(tuple),
    theme=st.sampled_from(["dark", "light", "contrast"]),
    answers_shown=st.booleans(),
    pennies=st.booleans(),
    adult=st.just("") | names,
    animal=names,
    prompts=st.none() | st.integers(4, 10),
    yearly_off=st.lists(st.builds(YearlyOff, every_year, st.integers(1, 14)), max_size=3).map(tuple),
    toddler=st.booleans(),
    without=st.lists(st.sampled_from(NAMES), max_size=4, unique=True).map(tuple),
    printed=st.lists(st.sampled_from(("coins", "month-page 2027-03", "ten-frames")), unique=True).map(tuple),
    keys=st.just(()),
    together=st.booleans(),
    pixels=st.booleans(),
    copies=st.just("") | names,
    forgotten=st.lists(st.sampled_from(["00-ff", "0a-0b", "c-d"]), unique=True).map(sorted).map(tuple),
)
