"""A sitting: what each key does to it, that it is on disk at once, and comes back as it was."""

import datetime as dt
import itertools
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, desk_at, fixed_prompts, start_fixed
from warmup.closing import closing
from warmup.desk import Desk
from warmup.journal import Journal
from warmup.memory import Knowledge
from warmup.morning import Mark
from warmup.sitting import SHORT, Sitting, begin, resume

Clock = Callable[[], dt.datetime]


@pytest.fixture
def desk(home: Path, clock: Clock) -> Desk:
    """A family in week 25, nothing asked yet."""
    return desk_at(home, clock)


@pytest.fixture
def sitting(desk: Desk, clock: Clock) -> Sitting:
    """The fixed five prompts, at the first."""
    start_fixed(desk)
    found = resume(desk, desk.journal, clock) if desk.journal else None
    assert found is not None
    return found


def again(sitting: Sitting) -> Sitting:
    """The sitting as another start of the program finds it on disk."""
    journal = Journal.open(sitting.journal.folder, sitting.clock)
    desk = desk_at(sitting.journal.folder, sitting.clock, sitting.desk.family)
    found = resume(desk, journal, sitting.clock)
    assert found is not None
    return found


def state(sitting: Sitting) -> tuple[object, ...]:
    """What a resumed sitting must have in common with the one that was left."""
    marks = {at: sitting.mark_at(at) for at in range(len(sitting.prompts))}
    items = [(prompt.item, prompt.say, prompt.picture) for prompt in sitting.prompts]
    return sitting.position, sitting.furthest, sitting.rough, marks, items


def test_a_mark_goes_on_and_is_on_disk_at_once(sitting: Sitting) -> None:
    for mark in (Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED):
        at = sitting.position
        sitting.mark(mark)
        assert sitting.position == at + 1
        assert state(again(sitting)) == state(sitting)
    assert [sitting.mark_at(at) for at in range(5)] == [*list(Mark), None]


def test_going_on_marks_nothing_and_the_history_tells_shown_from_not_asked(sitting: Sitting) -> None:
    sitting.next()
    sitting.mark(Mark.FLUENT)
    history = sitting.journal.history("Bean")
    assert [(line.item, line.mark) for line in history] == [
        ("make-ten/seven-three", None),
        ("count-on/across-30", Mark.FLUENT),
        (sitting.prompts[2].item, None),
    ]


def test_back_undo_and_marking_again(sitting: Sitting) -> None:
    sitting.mark(Mark.FLUENT)
    sitting.mark(Mark.NOT_YET)
    assert sitting.undo() and sitting.position == 1 and sitting.mark_at(1) is None
    sitting.back()
    sitting.mark(Mark.HESITATED)
    assert sitting.mark_at(0) is Mark.HESITATED
    assert sitting.undo() and sitting.mark_at(0) is Mark.FLUENT and sitting.position == 0
    assert state(again(sitting)) == state(sitting)
    assert sitting.undo() and sitting.mark_at(0) is None
    assert not sitting.undo()


def test_undo_after_a_restart_takes_back_the_newest_mark(sitting: Sitting) -> None:
    sitting.mark(Mark.FLUENT)
    sitting.mark(Mark.HESITATED)
    back = again(sitting)
    assert back.undo() and back.position == 1 and back.mark_at(1) is None and back.mark_at(0) is Mark.FLUENT


def test_a_cue_used_is_kept_with_the_mark_and_there_are_three(sitting: Sitting) -> None:
    for _ in range(5):
        sitting.next_cue()
    assert sitting.cue == 3
    sitting.mark(Mark.HESITATED)
    assert sitting.journal.history("Bean")[0].cue == 3


def test_the_others_came_easily_marks_what_was_shown_and_nothing_else(sitting: Sitting) -> None:
    sitting.mark(Mark.HESITATED)
    sitting.next()
    assert sitting.unmarked == (1, 2)
    assert sitting.others_easy() == 2
    assert [sitting.mark_at(at) for at in range(5)] == [Mark.HESITATED, Mark.FLUENT, Mark.FLUENT, None, None]
    assert state(again(sitting)) == state(sitting)


def test_a_rough_day_is_kept_and_can_be_taken_back(sitting: Sitting) -> None:
    sitting.mark(Mark.NOT_YET)
    sitting.toggle_rough()
    assert again(sitting).rough and sitting.journal.history("Bean")[0].rough
    sitting.toggle_rough()
    assert not again(sitting).rough


def test_a_short_morning_has_four_prompts_with_those_shown(sitting: Sitting) -> None:
    sitting.mark(Mark.FLUENT)
    first_two = sitting.prompts[:2]
    assert sitting.shorten()
    assert len(sitting.prompts) <= SHORT and sitting.prompts[:2] == first_two
    assert not sitting.shorten()
    assert state(again(sitting)) == state(sitting)


def test_what_a_short_morning_puts_in_the_place_of_prompts_shown_was_not_shown(sitting: Sitting) -> None:
    for _ in range(4):
        sitting.next()
    for _ in range(4):
        sitting.back()
    assert sitting.shorten()
    assert sitting.unmarked == (0,)


def test_no_such_object_asks_something_else_that_does_not_want_it(sitting: Sitting) -> None:
    before = sitting.prompts
    assert sitting.swap()
    assert sitting.prompts[0].item not in {prompt.item for prompt in before}
    assert all(prompt.table != "ten-hole tray" for prompt in sitting.prompts)
    assert len(sitting.prompts) == len(before)
    assert state(again(sitting)) == state(sitting)


def test_not_taught_yet_holds_the_level_back_from_now_on(sitting: Sitting) -> None:
    sitting.hold_back()
    assert "make-ten:all" in sitting.desk.child.held
    assert all((prompt.skill, prompt.level) != ("make-ten", "all") for prompt in sitting.prompts)
    kept = again(sitting)
    open_now = kept.desk.open_items(kept.desk.morning())
    assert not [item for item in open_now if item.level_id == "make-ten:all"]
    kept.desk.hold("make-ten:all", back=False)
    assert [item for item in kept.desk.open_items(kept.desk.morning()) if item.level_id == "make-ten:all"]


def test_every_prompt_can_be_swapped_and_no_skill_comes_twice_running(sitting: Sitting) -> None:
    for _ in range(4):
        sitting.swap()
        sitting.next()
    names = [prompt.skill for prompt in sitting.prompts]
    assert all(one != other for one, other in itertools.pairwise(names)), names


def test_the_next_morning_knows(desk: Desk, clock: Clock) -> None:
    assert desk.journal is not None
    first = begin(desk, desk.journal, clock)
    for _ in first.prompts:
        first.mark(Mark.NOT_YET)
    first.close()
    tomorrow = replace(FAMILY, settled=TODAY)
    after = desk_at(desk.places.config, clock, tomorrow, TODAY + dt.timedelta(1))
    items = {prompt.item: prompt.why for prompt in after.routine().prompts}
    again_asked = {
        item: why for item, why in items.items() if item in {prompt.item for prompt in first.prompts}
    }
    assert any("not yet" in why for why in again_asked.values()), items


def test_the_close_says_what_went_well_what_comes_back_and_nothing_that_counts(sitting: Sitting) -> None:
    sitting.mark(Mark.FLUENT)
    sitting.mark(Mark.HESITATED)
    words = closing(sitting, Knowledge())
    assert "make ten" in words.well and "new" in words.well
    assert "count on" in words.back
    assert "%" not in f"{words.well}{words.back}{words.table}"


def test_the_close_has_a_kind_word_when_nothing_came_easily(sitting: Sitting) -> None:
    sitting.mark(Mark.NOT_YET)
    assert "sat down together" in closing(sitting, Knowledge()).well


def test_a_closed_morning_opens_at_its_close_and_a_second_sitting_is_its_own(
    sitting: Sitting, clock: Clock
) -> None:
    for _ in sitting.prompts:
        sitting.mark(Mark.FLUENT)
    sitting.close()
    back = again(sitting)
    assert back.closed and back.at_close
    second = begin(back.desk, back.journal, clock, shape="short")
    assert second.number == 2 and len(second.prompts) <= SHORT
    assert again(second).number == 2


def test_fixed_prompts_are_five() -> None:
    assert len({prompt.item for prompt in fixed_prompts()}) == 5
