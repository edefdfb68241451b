"""This week's pack: what its prompts want, less what the house has on paper."""

import datetime as dt
from pathlib import Path

import pytest

from tests.household import FAMILY, StandingClock, context_at
from warmup import pictures, skills
from warmup.engine.things import NAMES
from warmup.model import ItemId
from warmup.randomness import SeededRandom
from warmup.sheets.kinds import kinds
from warmup.sheets.needed import not_printed, this_week, tick, used_by


def test_every_kind_says_what_it_is_for_by_names_that_there_are() -> None:
    for name, sheet in kinds().items():
        assert any(sheet.use), f"{name}: its Sheet has no Use, so no week is told of it"
        things, kinds_of, ids = sheet.use
        unknown = {*things} - {*NAMES} | {*kinds_of} - {*pictures.kinds()} | {*ids} - {*skills.SKILLS}
        assert not unknown, f"{name}: its Use names what there is not: {sorted(unknown)}"


def test_prompts_want_what_they_show_or_have_on_the_table(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock, FAMILY)
    morning = context.morning()

    def asked(item: str) -> tuple[str, ...]:
        return used_by([skills.prompt(ItemId(item), morning, SeededRandom("needed"))])

    assert "ten-frames" in asked("make-ten/seven-three")
    assert "skip-strips" in asked("by-tens/to-100") and "ten-frames" not in asked("by-tens/to-100")
    assert used_by([]) == ()


@pytest.mark.slow
def test_the_week_leaves_out_what_is_printed_and_the_month_comes_again(
    home: Path, clock: StandingClock
) -> None:
    context = context_at(home, clock, FAMILY)
    used = this_week(context)
    assert used and set(used) < set(kinds())
    context.editor.print_sheets([tick(used[0], context.today)])
    assert not_printed(context, used) == used[1:]
    march, april = (tick("month-page", dt.date(2027, month, 2)) for month in (3, 4))
    assert (
        march == tick("month-page", dt.date(2027, 3, 31)) != april
        and tick("coins", dt.date(2027, 3, 2)) == "coins"
    )


@pytest.mark.slow
def test_on_a_weekend_it_is_the_week_to_come(home: Path, clock: StandingClock) -> None:
    monday = dt.date(2027, 3, 8)
    used = [this_week(context_at(home, clock, FAMILY, day)) for day in (monday - dt.timedelta(2), monday)]
    assert used[0] and used[0] == used[1]
    assert this_week(context_at(home, clock, FAMILY, dt.date(2027, 8, 1))) == (), "the year is over"
