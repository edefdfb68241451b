"""The list for the summer: three things a week for ten weeks, out of what was asked."""

import datetime as dt
import re
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from tests.report.conftest import Home
from warmup import skills
from warmup.model import LevelId, skill_and_key
from warmup.report.asking import Form, Wanted, make
from warmup.report.document import Bullets
from warmup.report.facts import LevelMet
from warmup.report.summer import A_WEEK, SECOND_LOOKS, WEEKS, _weeks, summer
from warmup.session.words import SMALL_THINGS, has_small_things


def test_ten_weeks_of_three_things(lived_in: Home) -> None:
    made = make(lived_in.context(), Wanted(summer=True))
    weeks = [section for section in made.document.sections if section.title]
    assert [section.title for section in weeks] == [f"Week {number}" for number in range(1, 11)]
    words = {level.words.casefold(): level for level in made.report.levels}
    for section in weeks:
        (bullets,) = section.parts
        assert isinstance(bullets, Bullets) and len({*bullets.lines}) == A_WEEK
        found = [_level(line, words) for line in bullets.lines]
        assert [not level.easy and not level.settled for level in found] == [True, True, False]
        for line in bullets.lines:
            assert "“" in line and " Answer: " in line


def test_a_week_is_of_three_skills_and_the_summer_of_many(lived_in: Home) -> None:
    made = make(lived_in.context(), Wanted(summer=True))
    words = {level.words.casefold(): level for level in made.report.levels}
    weeks = [
        [skill_and_key(_level(line, words).id)[0] for line in bullets.lines]
        for section in made.document.sections
        for bullets in section.parts
        if isinstance(bullets, Bullets)
    ]
    assert all(len({*week}) == A_WEEK for week in weeks[:5]), weeks
    strands = {skills.SKILLS[skill].strand for week in weeks[:3] for skill in week}
    assert len(strands) >= 5, strands


def _level(line: str, words: dict[str, LevelMet]) -> LevelMet:
    return next(words[name] for name in sorted(words, key=len)[::-1] if line.casefold().startswith(name))


def test_nothing_on_it_hangs_on_a_date(lived_in: Home) -> None:
    text = make(lived_in.context(), Wanted(summer=True)).text(Form.TEXT)
    calendar = [skill.title for skill in skills.SKILLS.values() if skill.strand.value == "calendar"]
    assert calendar and not [title for title in calendar if f"- {title}," in text]


def test_small_things_on_it_bring_their_warning(lived_in: Home) -> None:
    made = make(lived_in.context(), Wanted(summer=True))
    text = " ".join(made.text(Form.TEXT).split())
    asked = re.findall(r"Have ready: ([^.]*)\.", text)
    assert has_small_things(*asked) and text.count(SMALL_THINGS) == 1
    none = replace(made.report, levels=())
    assert SMALL_THINGS not in str(summer(none, lived_in.context()))


def test_the_list_is_the_same_each_time(lived_in: Home) -> None:
    one, other = (make(lived_in.context(), Wanted(summer=True)).text(Form.HTML) for _ in range(2))
    assert one == other


@given(st.integers(0, 8), st.integers(0, 8))
def test_no_week_has_a_step_twice_and_each_step_has_its_turn(second: int, sure: int) -> None:
    looks = [_made(f"a{number}", False) for number in range(second)]
    others = [_made(f"b{number}", True) for number in range(sure)]
    weeks = list(_weeks(looks, others))
    assert len(weeks) == WEEKS
    for week in weeks:
        assert len(week) == len({level.id for level in week}) == min(A_WEEK, second + sure)
        assert sum(level in looks for level in week) >= min(SECOND_LOOKS, second)
    asked = {level.id for week in weeks for level in week}
    assert asked == {level.id for level in (*looks, *others)}


def _made(name: str, easy: bool) -> LevelMet:

    return LevelMet(LevelId(f"x:{name}"), name, (), (), dt.date(2026, 9, 1), None, 1, easy)
