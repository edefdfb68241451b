"""The settings page without its widgets: what it is filled in with comes back, and what is wrong is said."""

import datetime as dt
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.config.families import a_family, names, quiet
from tests.household import FAMILY, TODAY
from warmup.config.family import Child, Family, year_of
from warmup.engine.things import NAMES
from warmup.english import WEEKDAYS
from warmup.session.family_changes import changes_between, read_changes, taken_back
from warmup.session.first_form import Unclear
from warmup.session.settings_form import (
    as_it_is,
    changed,
    chosen_anew,
    family_of,
    nickname_field,
    outcome,
    things_asked,
    wrong,
)

BEAN = FAMILY.children[0]
FORM = as_it_is(FAMILY, BEAN)


@quiet
@given(a_family, st.data())
def test_a_page_saved_as_it_stands_changes_nothing(family: Family, data: st.DataObject) -> None:
    child = data.draw(st.sampled_from(family.children))
    form = as_it_is(family, child)
    if not wrong(form, family):
        assert family_of(form, family, child) == family


@quiet
@given(
    a_family,
    names,
    names,
    st.none() | st.integers(4, 10),
    st.none() | st.booleans(),
    st.booleans(),
    st.lists(st.sampled_from(NAMES), max_size=4, unique=True).map(tuple),
    st.sets(st.integers(0, 6), min_size=1),
)
def test_what_is_filled_in_comes_back_and_one_undo_takes_all_of_it_away(
    family: Family,
    animal: str,
    adult: str,
    prompts: int | None,
    reads: bool | None,
    toddler: bool,
    without: tuple[str, ...],
    days: set[int],
) -> None:
    child = family.children[0]
    weekdays = " ".join(WEEKDAYS[n] for n in days)
    form = as_it_is(family, child)._replace(
        animal=animal, adult=adult, prompts=prompts, reads=reads, toddler=toddler, without=without,
        weekdays=weekdays, first_day="9/7/2026",
    )  # fmt: skip
    if wrong(form, family):
        return
    after = family_of(form, family, child)
    again = as_it_is(after, after.children[0])
    assert again._replace(weekdays="") == form._replace(
        weekdays="", first_day="2026-09-07",
        prompts=prompts or (family.prompts if child.prompts else None),
    )  # fmt: skip
    assert after.weekdays == tuple(sorted(days))
    # Everything the page does not have stays as it was.
    assert after.began == family.began and after.off == family.off and after.keys == family.keys
    assert [each.journal_name for each in after.children] == [each.journal_name for each in family.children]
    logged = read_changes([list(change) for change in changes_between(family, after)])
    back = taken_back(after, logged)
    assert back._replace(without=()) == family._replace(without=())
    assert {*back.without} == {*family.without}


@pytest.mark.parametrize(
    ("field", "change"),
    [
        (nickname_field(0), {"nicknames": (" ",)}),
        (nickname_field(0), {"nicknames": ("x" * 200,)}),
        ("first_day", {"first_day": "soon"}),
        ("first_day", {"first_day": "2026-02-30"}),
        ("weekdays", {"weekdays": "Mon Blue"}),
        ("weekdays", {"weekdays": ""}),
        ("animal", {"animal": "\x1b"}),
        ("animal", {"animal": "x" * 200}),
        ("adult", {"adult": "x" * 200}),
    ],
)
def test_what_is_wrong_is_said_beside_its_field_and_not_taken(field: str, change: dict[str, Any]) -> None:
    form = FORM._replace(**change)
    assert list(wrong(form, FAMILY)) == [field] and wrong(form, FAMILY)[field].endswith(".")
    with pytest.raises(Unclear):
        family_of(form, FAMILY, BEAN)
    assert outcome(form, FAMILY, BEAN, TODAY) == ""


def test_a_year_does_not_begin_after_its_last_day() -> None:
    family = FAMILY._replace(last_day=dt.date(2027, 5, 21))
    late = as_it_is(family, BEAN)._replace(first_day="2027-05-22")
    assert list(wrong(late, family)) == ["first_day"] and outcome(late, family, BEAN, TODAY) == ""
    with pytest.raises(Unclear):
        family_of(late, family, BEAN)
    saturday = family._replace(last_day=dt.date(2027, 5, 22))
    assert not wrong(late, saturday)
    assert outcome(late, saturday, BEAN, TODAY) == "No school day is left in such a year."


def test_two_children_have_two_nicknames() -> None:
    two = FAMILY._replace(children=(BEAN, Child("Pip")))
    form = as_it_is(two, BEAN)._replace(nicknames=("Bean", "bean"))
    assert list(wrong(form, two)) == [nickname_field(1)]
    renamed = family_of(form._replace(nicknames=("Pip", "Bean")), two, BEAN)
    assert [(each.nickname, each.journal_name) for each in renamed.children] == [
        ("Pip", "Bean"), ("Bean", "Pip"),
    ]  # fmt: skip


def test_what_comes_of_other_days_is_said_at_once() -> None:
    assert outcome(FORM, FAMILY, BEAN, TODAY) == (
        "Today is school day 107, week 27 of 36; the last school day is May 6, 2027."
    )
    later = FORM._replace(first_day="2026-09-07")
    assert outcome(later, FAMILY, BEAN, TODAY) == (
        "Today would be school day 103, week 26 of 36; the last school day would be May 13, 2027."
    )
    assert outcome(FORM._replace(weekdays="Mon Tue"), FAMILY, BEAN, TODAY).startswith("No school today; 54 ")


def test_a_child_in_weeks_of_its_own_has_its_own_first_day_and_prompts_changed() -> None:
    own = Child("Pip", first_day=dt.date(2027, 1, 11), prompts=5)
    family = FAMILY._replace(children=(BEAN, own))
    form = as_it_is(family, own)
    assert (form.first_day, form.prompts) == ("2027-01-11", 5)
    after = family_of(form._replace(first_day="2027-01-18", prompts=4), family, own)
    assert after.first_day == FAMILY.first_day and after.prompts is None
    assert (after.children[1].first_day, after.children[1].prompts) == (dt.date(2027, 1, 18), 4)
    assert year_of(after, after.children[1]) != year_of(family, own)


def test_a_line_says_what_was_saved_and_only_what_matters_chooses_the_morning_anew() -> None:
    for change, said, anew in (
        ({"theme": "light"}, "Saved: look.", False),
        ({"adult": "Dad", "reads": True}, "Saved: who marks and reading.", False),
        ({"pennies": False, "toddler": True}, "Saved: pennies and toddler.", True),
        ({"nicknames": ("Pip",)}, "Saved: nickname.", False),
        ({"prompts": 5}, "Saved: prompts a morning.", True),
        ({"without": ("straws",)}, "Saved: what the house has.", True),
    ):
        after = family_of(FORM._replace(**change), FAMILY, BEAN)
        assert (changed(FAMILY, after), chosen_anew(FAMILY, after)) == (said, anew)
    assert changed(FAMILY, FAMILY) == "" and not chosen_anew(FAMILY, FAMILY)


def test_things_that_the_family_lacks_are_asked_of_as_well() -> None:
    assert "pizza" not in things_asked(FAMILY)
    assert things_asked(FAMILY._replace(without=("pizza", "straws"))).count("straws") == 1
    assert "pizza" in things_asked(FAMILY._replace(without=("pizza",)))
