"""Several children in one family: who comes first on which day, who is left out, what is asked once."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

from tests.household import FAMILY, TODAY, begun, context_at
from warmup.config.family import Child, year_of
from warmup.session.context import Context, open_context
from warmup.session.whose_turn import first_to_come, has_been, in_order, still_to_come

Clock = Callable[[], dt.datetime]
THREE = FAMILY._replace(
    children=(Child("Fern", reads=False), Child("Moss", reads=False), Child("Wren", reads=False))
)


def names(children: tuple[Child, ...]) -> str:
    return " ".join(child.nickname for child in children)


def test_each_school_morning_the_next_child_comes_first() -> None:
    mornings = [day for day in year_of(THREE).mornings if day >= TODAY][:4]
    orders = [names(in_order(THREE, day)) for day in mornings]
    turned = ["Fern Moss Wren", "Moss Wren Fern", "Wren Fern Moss"]
    first = turned.index(orders[0])
    assert orders == [turned[(first + later) % 3] for later in range(4)]
    # A weekend takes nobody's turn: it has the order of the school morning after it.
    saturday = TODAY + dt.timedelta(3)
    assert names(in_order(THREE, saturday)) == names(in_order(THREE, dt.date(2027, 3, 8)))


def test_who_rests_and_who_has_been_is_left_out(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, THREE)
    journal = context.journal
    assert journal is not None
    first, second, third = in_order(THREE, TODAY)
    assert first_to_come(THREE, journal, TODAY) == first
    session = begun(context.of(first), clock)
    assert not has_been(journal, first, TODAY), "what was begun goes on"
    session.close()
    assert has_been(journal, first, TODAY) and still_to_come(THREE, journal, TODAY) == (second, third)
    asleep = THREE._replace(children=tuple(replace(each, resting=each == second) for each in THREE.children))
    assert still_to_come(asleep, journal, TODAY) == (third,)
    begun(context.of(third), clock).close()
    assert still_to_come(asleep, journal, TODAY) == () and first_to_come(asleep, journal, TODAY) in (
        first,
        third,
    )
    all_rest = THREE._replace(children=tuple(replace(each, resting=True) for each in THREE.children))
    assert in_order(all_rest, TODAY) == () and first_to_come(all_rest, journal, TODAY).nickname == "Fern"


def missed_of(context: Context, child: Child) -> tuple[dt.date, ...]:
    return context.of(child).unconfirmed_days()


def test_missed_mornings_are_the_family_s_and_asked_once(home: Path, clock: Clock) -> None:
    tuesday, monday = TODAY - dt.timedelta(1), TODAY - dt.timedelta(2)
    family = THREE._replace(known_until=monday - dt.timedelta(1))
    context = context_at(home, clock, family)
    assert [missed_of(context, child) for child in family.children] == [(monday, tuesday)] * 3
    # A morning with one child is no missed one for another.
    before = open_context(context.places, family, monday, context.journal)
    begun(before, clock)
    assert [missed_of(context, child) for child in family.children] == [(tuesday,)] * 3
    other = context.of(family.children[1])
    other.editor.confirm_days((tuesday,), TODAY)
    assert [missed_of(context, child) for child in family.children] == [()] * 3
    assert context.family.off == ((tuesday, tuesday),), "one family, whichever child it was said beside"


def test_a_child_with_weeks_of_its_own_shares_the_days(home: Path, clock: Clock) -> None:
    monday = TODAY - dt.timedelta(2)
    own = Child("Moss", first_day=monday, first_week=3, began=monday)
    family = THREE._replace(children=(Child("Fern", began=TODAY), own), known_until=monday - dt.timedelta(1))
    context = context_at(home, clock, family)
    asked = [missed_of(context, child) for child in family.children]
    assert asked == [(monday, TODAY - dt.timedelta(1))] * 2
    context.editor.confirm_days((monday,), TODAY)
    # Its week 3 began a morning later, since Monday was off; the family's week went on as it stood.
    assert context.of(own).morning().week == 3 and context.of(own).year.mornings[0] == TODAY - dt.timedelta(1)


def test_days_off_said_beside_a_child_who_began_after_them_are_off(home: Path, clock: Clock) -> None:
    week_before = [TODAY - dt.timedelta(back) for back in (9, 8, 7, 6)]
    own = Child("Moss", first_day=TODAY, began=TODAY)
    family = THREE._replace(
        children=(Child("Fern"), own), known_until=week_before[0] - dt.timedelta(1), off=()
    )
    beside = context_at(home, clock, family).of(own)
    assert beside.unconfirmed_days()[:4] == tuple(week_before)
    beside.editor.confirm_days((week_before[0], week_before[1], week_before[3]), TODAY)
    assert beside.family.off == ((week_before[0], week_before[1]), (week_before[3], week_before[3]))


def test_twins_are_asked_other_things(home: Path, clock: Clock) -> None:
    """Their draws differ by their names, also on a first morning on which neither knows anything."""
    context = context_at(home, clock, THREE)
    routines = [context.of(child).routine() for child in THREE.children]
    for one, two in pairwise(routines):
        same = [a.say == b.say for a, b in zip(one.prompts, two.prompts, strict=True)]
        assert sum(same) <= 1
