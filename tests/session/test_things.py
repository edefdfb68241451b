"""What is to lie on the table: each thing once."""

import datetime as dt

from hypothesis import given
from hypothesis import strategies as st

from tests.household import fixed_prompts
from warmup.model import Prompt
from warmup.pictures.ten_frame import TenFrame
from warmup.session.things import Gather, Thing, gather

MONDAY, TUESDAY = dt.date(2027, 3, 1), dt.date(2027, 3, 2)


def wants(table: str, *, shown: bool = False) -> Prompt:
    """A prompt that wants these things; ``shown`` on the stage as well."""
    return fixed_prompts()[0]._replace(table=table, picture=TenFrame(3) if shown else None)


def test_a_thing_is_named_once_and_for_the_first_morning_that_wants_it() -> None:
    things = gather({TUESDAY: [wants("cup, beans")], MONDAY: [wants("beans")]})
    assert things == Gather((Thing("beans", MONDAY), Thing("cup", TUESDAY)))


def test_what_a_picture_stands_in_for_is_apart_unless_another_prompt_wants_it_itself() -> None:
    things = gather({MONDAY: [wants("ten frame, cups", shown=True)], TUESDAY: [wants("cups")]})
    assert things == Gather((Thing("cups", MONDAY),), (Thing("ten frame", MONDAY),))


def test_other_spellings_are_the_same_thing_and_the_most_of_it_is_named() -> None:
    spelled = ["a cup", "cup", "cups", "3 cups", "12 cups or the like", "cups"]
    assert gather({MONDAY: [wants(each) for each in spelled]}).wanted == (
        Thing("12 cups or the like", MONDAY),
    )
    assert gather({MONDAY: [wants("2 spoons, spoons, a spoon")]}).wanted == (Thing("spoons", MONDAY),)
    apart = gather({MONDAY: [wants("glass, glasses for reading, paper cup, cup")]}).wanted
    assert [thing.name for thing in apart] == ["glass", "glasses for reading", "paper cup", "cup"]


NAMES = st.sampled_from(("cup", "cups", "a cup", "5 cups or the like", "beans", "ten frame", "toast", ""))
PROMPTS = st.builds(lambda names, shown: wants(", ".join(names), shown=shown), st.lists(NAMES), st.booleans())


@given(st.dictionaries(st.sampled_from((MONDAY, TUESDAY)), st.lists(PROMPTS, max_size=5)))
def test_all_that_is_wanted_is_there_once(mornings: dict[dt.date, list[Prompt]]) -> None:
    def same(name: str) -> str:
        return "cup" if "cup" in name else name

    things = gather(mornings)
    named = [same(thing.name) for thing in (*things.wanted, *things.handy)]
    assert len(named) == len({*named})
    by_day = {
        day: {same(name) for each in prompts for name in each.table.split(", ") if name}
        for day, prompts in mornings.items()
    }
    assert {*named} == {name for names in by_day.values() for name in names}
    for thing in (*things.wanted, *things.handy):
        assert thing.first == min(day for day, names in by_day.items() if same(thing.name) in names)
    bare = [each for prompts in mornings.values() for each in prompts if not each.picture]
    must = {same(name) for each in bare for name in each.table.split(", ") if name}
    assert {same(thing.name) for thing in things.wanted} == must
