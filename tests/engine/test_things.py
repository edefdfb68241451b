"""The registry of things: every table is made of it; and what a house that lacks some is asked."""

import re
from functools import cache
from typing import Any

import pytest

from tests.bank.drawn import prompts, reference
from tests.mornings import morning
from warmup import skills
from warmup.engine.eligibility import at_home
from warmup.engine.things import NAMES, OFTEN_MISSING, THINGS, Household, named, things_on
from warmup.model import Item, ItemId, LevelId, Opening, Prompt
from warmup.session.words import has_small_things

CYLINDER_MM = 31.75
"""The width of the cylinder for small parts, 1.25 inches: 16 CFR 1501.4."""
TODDLER = Household(toddler=True)


@cache
def bank() -> tuple[Prompt, ...]:
    """Prompts of every item."""
    return tuple(prompt for skill in skills.SKILLS for prompt in prompts(skill, 8))


@cache
def every_way() -> tuple[Prompt, ...]:
    """One of the bank's prompts for each way in which an item is asked, with each table it has there."""
    return tuple({(each.item, each.wording, each.table): each for each in bank()}.values())


def prompt(table: str, say: str, **fields: Any) -> Prompt:
    """A prompt with this table and these words, and cues that name nothing."""
    first = next(each for each in bank() if each.item == "make-ten/all")
    return first._replace(table=table, say=say, **fields)


# -- the registry


def test_every_table_of_a_level_and_of_a_prompt_is_made_of_known_things() -> None:
    tables = {level.table for skill in skills.SKILLS.values() for level in skill.levels}
    tables |= {each.table for each in bank()}
    assert len(tables) > 150
    for table in tables:
        assert all(all(thing in THINGS for thing in either) for either in things_on(table)), table
    assert [either[0] in THINGS for either in things_on("beans, a unicorn")] == [True, False]


def test_no_name_stands_for_two_things_and_what_comes_instead_is_there() -> None:
    names = [name for thing in THINGS for name in thing.every_name]
    assert len(names) == len({*names}) and {*OFTEN_MISSING} <= {*NAMES}
    kinds = {each.picture.kind for each in bank() if each.picture}
    for thing in THINGS:
        assert {*thing.shown} <= kinds, thing.name
        for other in thing.bigger:
            assert named(other) in THINGS and not any(
                found.small for either in things_on(other) for found in either
            )


def test_a_table_is_read_as_it_is_written() -> None:
    def read(table: str) -> list[tuple[str, ...]]:
        return [tuple(thing.name for thing in either) for either in things_on(table)]

    assert read("") == []
    assert read("11 beans or the like") == [("beans",)]
    assert read("cups, water or rice") == [("cups",), ("water", "rice")]
    assert read("straws and bands") == [("straws",), ("bands",)]
    assert read("real coins (kept from under-threes)") == [("coins",)]
    assert read("a clock with hands to turn") == [("clock with hands",)]


def test_coins_are_small_by_the_published_cylinder_and_the_screen_warns_of_what_is_small() -> None:
    """tests/references/coins.toml has the diameters of the United States Mint, 16 CFR 1501.4 the cylinder."""
    diameters = [coin["diameter_mm"] for coin in _coins()]
    assert len(diameters) >= 4 and max(diameters) < CYLINDER_MM
    small = {thing.name for thing in THINGS if thing.small}
    assert {"coins", "buttons", "beans", "counters", "beads"} <= small
    assert all(has_small_things(name) for name in small)
    assert not any(has_small_things(other) for thing in THINGS for other in thing.bigger)


def _coins() -> list[dict[str, float]]:
    found: list[dict[str, float]] = []

    def walk(value: object) -> None:
        if isinstance(value, dict):
            if "diameter_mm" in value:
                found.append(value)
            for inner in value.values():
                walk(inner)
        elif isinstance(value, list):
            for inner in value:
                walk(inner)

    walk(reference("coins"))
    return found


# -- what a house is asked


def test_a_house_that_lacks_nothing_has_every_prompt_as_it_is() -> None:
    assert all(Household().furnished(each) is each or Household().furnished(each) == each for each in bank())


def test_with_a_toddler_a_bigger_thing_is_named_instead() -> None:
    asked = TODDLER.furnished(prompt("6 beans or the like", "Count out six beans.", given={"what": "beans"}))
    assert asked is not None
    assert (asked.table, asked.say, asked.given) == (
        "6 spoons or the like", "Count out six spoons.", {"what": "spoons"},
    )  # fmt: skip


def test_where_there_is_none_a_picture_that_shows_it_will_do() -> None:
    coin = next(each for each in bank() if each.picture and each.picture.kind == "coins")
    shown = prompt("real coins", "How many cents is a dime?", picture=coin.picture)
    asked = TODDLER.furnished(shown)
    assert asked is not None and (asked.table, asked.say) == ("", shown.say)
    assert TODDLER.furnished(shown._replace(say="Take a dime. How many cents?")) is None, "that is handling"
    assert TODDLER.furnished(shown._replace(picture=None)) is None, "nothing shows one"


def test_what_will_do_instead_must_be_in_the_house_as_well() -> None:
    beans = prompt("beans", "Count out six beans.")
    assert Household(without=frozenset({"beans"})).furnished(beans) is not None
    assert Household(toddler=True, without=frozenset({"spoons"})).furnished(beans) is None
    assert Household(without=frozenset({"spoons"})).furnished(beans) == beans


def test_of_things_of_which_any_will_do_one_is_enough() -> None:
    pour = prompt("cups, water or rice", "Pour some.")
    for lacking, left in (("rice", "cups, water"), ("water", "cups, rice")):
        asked = Household(without=frozenset({lacking})).furnished(pour)
        assert asked is not None and asked.table == left


def test_an_item_that_can_never_be_asked_here_is_not_eligible() -> None:
    clock = Item(ItemId("clock/o-clock"), "clock", 1, LevelId("clock:o-clock"), "time and money", 1)
    name = next(each.item for each in bank() if each.table == "paper, ball" and each.picture is None)
    thrown = clock._replace(id=name)
    house = Household(without=frozenset({"clock with hands", "ball"}))
    assert list(at_home([clock, thrown], morning(), None)) == [clock, thrown]
    assert list(at_home([clock, thrown], morning(), house)) == [clock], "a picture shows the clock"


@pytest.mark.slow
def test_over_the_whole_bank_nothing_a_house_lacks_is_wanted_and_most_can_be_asked() -> None:
    for house in (TODDLER, *(Household(without=frozenset({name})) for name in OFTEN_MISSING)):
        asked = {each.item for each in bank()}
        fitted = [told for each in every_way() if (told := house.furnished(each)) is not None]
        for told in fitted:
            assert house.has(told.table), (house, told.item, told.table)
            assert told.table == "" or house.furnished(told) == told, "it stays as it is"
            # A box of crackers or of cereal is a box.
            table = re.sub("(cracker|cereal) box", "box", told.table)
            assert not house.toddler or not has_small_things(table), (told.item, table)
        assert len({told.item for told in fitted}) > 0.8 * len(asked), house


def test_an_opening_is_said_with_what_the_house_has() -> None:
    fact = Opening("Put a band around it.", "straws and bands")
    assert TODDLER.opening(fact) == Opening("Put a paper strip around it.", "straws and strips of paper")
    assert Household(without=frozenset({"straws"})).opening(fact) is None
