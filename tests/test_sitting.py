"""A sitting: what each key does to it, that it is on disk at once, and comes back as it was."""

import datetime as dt
import itertools
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, desk_at, fixed_prompts, start_fixed
from warmup.closing import closing, laid_out
from warmup.desk import Desk, year_of
from warmup.instead import SHORT
from warmup.journal import Journal
from warmup.memory import Knowledge, Record
from warmup.morning import Mark
from warmup.pictures.ten_frame import TenFrame
from warmup.sitting import Sitting, begin, resume

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
    assert all(prompt.table != "ten frame" for prompt in sitting.prompts)
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
    tomorrow = FAMILY._replace(settled=TODAY)
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
    # Hesitated on Wednesday, March 3: due two school mornings on, which is the next Monday.
    assert words.back == "count on, across a ten, from 25 to 49: again Monday"
    assert "%" not in f"{words.well}{words.back}{words.table}{words.handy}"


def test_what_comes_back_is_said_by_its_day(home: Path, clock: Callable[[], dt.datetime]) -> None:
    """Not yet: the next school morning. After a break the weekday alone would mislead."""
    away = FAMILY._replace(off=((TODAY + dt.timedelta(1), TODAY + dt.timedelta(11)),))
    for family, said in ((FAMILY, ": again Thursday"), (away, ": again March 15")):
        desk = desk_at(home / said[-5:].strip(), clock, family)
        assert desk.journal is not None
        start_fixed(desk)
        today = resume(desk, desk.journal, clock)
        assert today is not None
        today.mark(Mark.NOT_YET)
        assert closing(today, Knowledge()).back.endswith(said)


def test_no_day_is_named_after_the_last_morning(home: Path, clock: Callable[[], dt.datetime]) -> None:
    last = year_of(FAMILY).mornings[-1]
    desk = desk_at(home, clock, FAMILY._replace(settled=last - dt.timedelta(1)), last)
    assert desk.journal is not None
    today = begin(desk, desk.journal, clock)
    today.mark(Mark.NOT_YET)
    back = closing(today, Knowledge()).back
    assert back and "again" not in back


def test_a_picture_stands_in_for_a_thing_that_need_not_be_fetched(sitting: Sitting) -> None:
    one, two, three, *_ = sitting.prompts
    assert laid_out(
        (
            one._replace(table="beans, cup", picture=None),
            two._replace(table="real coins, cup", picture=TenFrame(3)),
            three._replace(table="beans", picture=None),
        )
    ) == (("beans", "cup"), ("real coins",))
    assert laid_out([one._replace(table="")]) == ((), ())


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


# -- the early stop


def easy(desk: Desk, *items: str, run: int = 2, rested: int = 1, mark: Mark = Mark.FLUENT) -> None:
    """Let the child have met these items, ``rested`` mornings ago."""
    known, today = desk.knowledge(), desk.morning().index
    met = Record(20.0, today - rested, None, mark, TODAY - dt.timedelta(rested), run, marks=3, shown=3)
    desk.know(Knowledge({**known.records, **dict.fromkeys(items, met)}))


def items_of(sitting: Sitting) -> list[str]:
    """The items of the morning, in order."""
    return [prompt.item for prompt in sitting.prompts]


def test_an_early_stop_goes_straight_to_one_sure_prompt_and_leaves_this_one_unmarked(
    sitting: Sitting,
) -> None:
    easy(sitting.desk, "sort/put-together")
    before, met = items_of(sitting), sitting.desk.knowledge()
    sitting.mark(Mark.HESITATED)
    assert sitting.stop_early()
    assert items_of(sitting) == [*before[:2], "sort/put-together"]
    assert sitting.prompts[2].why == "a sure one to finish"
    assert sitting.position == 2 and sitting.unmarked == (1, 2)
    assert state(again(sitting)) == state(sitting)
    sitting.mark(Mark.FLUENT)
    assert sitting.at_close and state(again(sitting)) == state(sitting)
    assert [(line.item, line.mark) for line in sitting.journal.history("Bean")] == [
        (before[0], Mark.HESITATED),
        (before[1], None),
        ("sort/put-together", Mark.FLUENT),
    ]
    sitting.desk.forget()
    after = sitting.desk.knowledge()
    assert all(after.of(item) == met.of(item) for item in before[2:])


def test_the_sure_prompt_is_the_likeliest_and_of_no_skill_just_asked(sitting: Sitting) -> None:
    desk = sitting.desk
    easy(desk, "sort/put-together", rested=3)
    easy(desk, "patterns/ab-heard", rested=2)
    easy(desk, "capacity/how-full", run=1, rested=1)
    easy(desk, "make-ten/easy-pairs", rested=1)
    easy(desk, "compare/match-to-5", rested=0)
    today = {"compare/match-to-5": desk.knowledge().of("compare/match-to-5")._replace(shown_on=TODAY)}
    desk.know(Knowledge({**desk.knowledge().records, **today}))
    assert sitting.stop_early() and items_of(sitting)[1:] == ["patterns/ab-heard"]


def test_where_nothing_is_sure_the_next_best_comes_and_the_never_asked_last(sitting: Sitting) -> None:
    desk = sitting.desk
    better = (
        ("sort/put-together", Mark.HESITATED, 0),
        ("patterns/ab-heard", Mark.FLUENT, 1),
        ("compare/match-to-5", Mark.FLUENT, 2),
    )
    assert sitting.stop_early() and not desk.knowledge().of(items_of(sitting)[1]).marks
    for item, mark, run in better:
        assert sitting.undo()
        easy(desk, item, mark=mark, run=run)
        assert sitting.stop_early() and items_of(sitting)[1:] == [item]


def test_what_was_not_yet_last_is_no_kind_end_and_the_close_comes_at_once(sitting: Sitting) -> None:
    desk, before = sitting.desk, items_of(sitting)
    easy(desk, *(item.id for item in desk.items()), mark=Mark.NOT_YET, run=0)
    assert sitting.stop_early()
    assert items_of(sitting) == before[:1] and sitting.at_close
    assert state(again(sitting)) == state(sitting)
    assert sitting.undo() and items_of(sitting) == before and sitting.unmarked == (0,)


def test_a_morning_that_stopped_with_nothing_sure_can_be_gone_back_to_after_a_restart(
    sitting: Sitting,
) -> None:
    easy(sitting.desk, *(item.id for item in sitting.desk.items()), mark=Mark.NOT_YET, run=0)
    assert not sitting.mark(Mark.NOT_YET) and sitting.mark(Mark.NOT_YET)
    assert sitting.at_close and len(sitting.prompts) == 2
    back = again(sitting)
    back.back()
    assert back.stop_early() and back.position == 2 and state(again(back)) == state(back)


def test_a_stopping_morning_stops_no_second_time_after_a_restart_either(sitting: Sitting) -> None:
    assert sitting.stop_early() and not sitting.stop_early()
    back, items = again(sitting), items_of(sitting)
    assert back.stopping and not back.stop_early()
    back.mark(Mark.NOT_YET)
    assert not back.stop_early() and items_of(again(back)) == items


def test_two_not_yet_running_stop_the_morning(sitting: Sitting) -> None:
    before = items_of(sitting)
    assert not sitting.mark(Mark.NOT_YET)
    sitting.next()
    back = again(sitting)
    assert back.mark(Mark.NOT_YET), "a prompt without a mark between is no other mark, nor is a restart"
    assert items_of(back)[:3] == before[:3] and len(back.prompts) == 4 and back.position == 3
    assert back.prompts[3].item not in before[:3] and back.prompts[3].why == "a sure one to finish"
    assert state(again(back)) == state(back)
    shown = [line.item for line in back.journal.history("Bean")]
    assert shown == items_of(back)


@pytest.mark.parametrize("between", [Mark.FLUENT, Mark.HESITATED, Mark.SKIPPED])
def test_another_mark_between_is_no_reason_to_stop(sitting: Sitting, between: Mark) -> None:
    assert not any(sitting.mark(mark) for mark in (Mark.NOT_YET, between, Mark.NOT_YET))
    assert len(sitting.prompts) == 5


def test_with_one_prompt_to_come_the_morning_goes_on_as_it_is(sitting: Sitting) -> None:
    before = items_of(sitting)
    sitting.next()
    sitting.next()
    assert not sitting.mark(Mark.NOT_YET) and not sitting.mark(Mark.NOT_YET)
    assert items_of(sitting) == before and sitting.position == 4


def test_undo_takes_the_mark_back_and_brings_the_prompts_again(sitting: Sitting) -> None:
    sitting.mark(Mark.NOT_YET)
    sitting.next_cue()
    before = items_of(sitting)
    assert sitting.mark(Mark.NOT_YET)
    sitting.next_cue()
    sitting.mark(Mark.HESITATED)
    assert sitting.undo() and sitting.position == 2 and len(sitting.prompts) == 3
    assert sitting.undo() and sitting.position == 1 and sitting.mark_at(1) is None
    assert items_of(sitting) == before and sitting.furthest == 1 and not sitting.stopping
    assert state(again(sitting)) == state(sitting)
    assert [line.item for line in sitting.journal.history("Bean")] == before[:2]
    assert not sitting.mark(Mark.NOT_YET), "who takes it back has decided"
    assert sitting.cue == 0 and items_of(sitting) == before
    assert sitting.stop_early()


def test_undo_of_a_stop_by_key_touches_no_mark(sitting: Sitting) -> None:
    sitting.mark(Mark.FLUENT)
    before = state(sitting)
    sitting.stop_early()
    assert sitting.undo() and state(sitting) == before == state(again(sitting))
    assert sitting.undo() and sitting.mark_at(0) is None


def test_a_stop_on_the_way_back_keeps_what_was_shown_and_its_marks(sitting: Sitting) -> None:
    before = items_of(sitting)
    for mark in (Mark.FLUENT, Mark.FLUENT, Mark.HESITATED):
        sitting.mark(mark)
    for _ in range(3):
        sitting.back()
    assert sitting.stop_early()
    assert items_of(sitting)[:4] == before[:4] and len(sitting.prompts) == 5 and sitting.position == 4
    assert [sitting.mark_at(at) for at in range(3)] == [Mark.FLUENT, Mark.FLUENT, Mark.HESITATED]
    assert state(again(sitting)) == state(sitting)
    assert sitting.undo() and items_of(sitting) == before and sitting.position == 0


def test_what_was_held_back_since_does_not_come_again_with_an_undo(sitting: Sitting) -> None:
    last = sitting.prompts[-1]
    sitting.stop_early()
    sitting.desk.hold(f"{last.skill}:{last.level}", back=True)
    assert sitting.undo() and last.item not in items_of(sitting)


def test_at_the_close_there_is_nothing_to_stop(sitting: Sitting) -> None:
    for _ in sitting.prompts:
        sitting.next()
    before = state(sitting)
    assert not sitting.stop_early() and state(sitting) == before
    sitting.close()
    sitting.back()
    assert not sitting.stop_early() and len(sitting.prompts) == 5
