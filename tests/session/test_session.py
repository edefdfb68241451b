"""A session: what each key does to it, that it is on disk at once, and comes back as it was."""

import datetime as dt
import itertools
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, begun, context_at, fixed_prompts, start_fixed, without_reviews
from warmup.config.family import year_of
from warmup.engine.memory import Knowledge, Record
from warmup.journal.journal import Journal
from warmup.model import ItemId, LevelId, Mark
from warmup.pictures.ten_frame import TenFrame
from warmup.session.context import Context
from warmup.session.replacing import SHORT
from warmup.session.session import Session, begin, resume
from warmup.session.summary import closing, materials

Clock = Callable[[], dt.datetime]


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A family in week 25, nothing asked yet."""
    return context_at(home, clock)


@pytest.fixture
def session(context: Context, clock: Clock) -> Session:
    """The fixed five prompts, at the first."""
    start_fixed(context)
    found = resume(context, context.journal, clock) if context.journal else None
    assert found is not None
    return found


def again(session: Session) -> Session:
    """The session as another start of the program finds it on disk."""
    journal = Journal.open(session.journal.folder, session.clock)
    context = context_at(session.journal.folder, session.clock, session.context.family)
    found = resume(context, journal, session.clock)
    assert found is not None
    return found


def state(session: Session) -> tuple[object, ...]:
    """What a resumed session must have in common with the one that was left."""
    marks = {at: session.mark_at(at) for at in range(len(session.prompts))}
    items = [(prompt.item, prompt.say, prompt.picture) for prompt in session.prompts]
    return session.position, session.furthest, session.rough, marks, items


def test_a_mark_goes_on_and_is_on_disk_at_once(session: Session) -> None:
    for mark in (Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED):
        at = session.position
        session.mark(mark)
        assert session.position == at + 1
        assert state(again(session)) == state(session)
    assert [session.mark_at(at) for at in range(5)] == [*list(Mark), None]


def test_going_on_marks_nothing_and_the_history_tells_shown_from_not_asked(session: Session) -> None:
    session.next()
    session.mark(Mark.FLUENT)
    history = session.journal.history("Bean")
    assert [(line.item, line.mark) for line in history] == [
        ("make-ten/seven-three", None),
        ("count-on/across-30", Mark.FLUENT),
        (session.prompts[2].item, None),
    ]


def test_back_undo_and_marking_again(session: Session) -> None:
    session.mark(Mark.FLUENT)
    session.mark(Mark.NOT_YET)
    assert session.undo() and session.position == 1 and session.mark_at(1) is None
    session.back()
    session.mark(Mark.HESITATED)
    assert session.mark_at(0) is Mark.HESITATED
    assert session.undo() and session.mark_at(0) is Mark.FLUENT and session.position == 0
    assert state(again(session)) == state(session)
    assert session.undo() and session.mark_at(0) is None
    assert not session.undo()


def test_undo_after_a_restart_takes_back_the_newest_mark(session: Session) -> None:
    session.mark(Mark.FLUENT)
    session.mark(Mark.HESITATED)
    back = again(session)
    assert back.undo() and back.position == 1 and back.mark_at(1) is None and back.mark_at(0) is Mark.FLUENT


def test_a_cue_used_is_kept_with_the_mark_and_there_are_three(session: Session) -> None:
    for _ in range(5):
        session.next_cue()
    assert session.cue == 3
    session.mark(Mark.HESITATED)
    assert session.journal.history("Bean")[0].cue == 3


def test_the_others_came_easily_marks_what_was_shown_and_nothing_else(session: Session) -> None:
    session.mark(Mark.HESITATED)
    session.next()
    assert session.unmarked == (1, 2)
    assert session.others_easy() == 2
    assert [session.mark_at(at) for at in range(5)] == [Mark.HESITATED, Mark.FLUENT, Mark.FLUENT, None, None]
    assert state(again(session)) == state(session)


def test_a_rough_day_is_kept_and_can_be_taken_back(session: Session) -> None:
    session.mark(Mark.NOT_YET)
    session.toggle_rough()
    assert again(session).rough and session.journal.history("Bean")[0].rough
    session.toggle_rough()
    assert not again(session).rough


def test_a_short_morning_has_four_prompts_with_those_shown(session: Session) -> None:
    session.mark(Mark.FLUENT)
    first_two = session.prompts[:2]
    assert session.shorten()
    assert len(session.prompts) <= SHORT and session.prompts[:2] == first_two
    assert not session.shorten()
    assert state(again(session)) == state(session)


def test_what_a_short_morning_puts_in_the_place_of_prompts_shown_was_not_shown(session: Session) -> None:
    for _ in range(4):
        session.next()
    for _ in range(4):
        session.back()
    assert session.shorten()
    assert session.unmarked == (0,)


def test_no_such_object_asks_something_else_that_does_not_want_it(session: Session) -> None:
    before = session.prompts
    assert session.swap()
    assert session.prompts[0].item not in {prompt.item for prompt in before}
    assert all(prompt.table != "ten frame" for prompt in session.prompts)
    assert len(session.prompts) == len(before)
    assert state(again(session)) == state(session)


def test_not_taught_yet_holds_the_level_back_from_now_on(session: Session) -> None:
    session.hold_back()
    assert "make-ten:all" in session.context.child.held
    assert all((prompt.skill, prompt.level) != ("make-ten", "all") for prompt in session.prompts)
    kept = again(session)
    open_now = kept.context.eligible(kept.context.morning()).items
    assert not [item for item in open_now if item.level_id == "make-ten:all"]
    kept.context.editor.hold(LevelId("make-ten:all"), back=False)
    assert [
        item
        for item in kept.context.eligible(kept.context.morning()).items
        if item.level_id == "make-ten:all"
    ]


def test_every_prompt_can_be_swapped_and_no_skill_comes_twice_running(session: Session) -> None:
    for _ in range(4):
        session.swap()
        session.next()
    names = [prompt.skill for prompt in session.prompts]
    assert all(one != other for one, other in itertools.pairwise(names)), names


def test_the_next_morning_knows(context: Context, clock: Clock) -> None:
    first = begun(context, clock)
    for _ in first.prompts:
        first.mark(Mark.NOT_YET)
    first.close()
    tomorrow = FAMILY._replace(known_until=TODAY)
    after = without_reviews(context_at(context.places.config, clock, tomorrow, TODAY + dt.timedelta(1)))
    items = {prompt.item: prompt.why for prompt in after.routine().prompts}
    again_asked = {
        item: why for item, why in items.items() if item in {prompt.item for prompt in first.prompts}
    }
    assert any("not yet" in why for why in again_asked.values()), items


def test_the_close_says_what_went_well_what_comes_back_and_nothing_that_counts(session: Session) -> None:
    session.mark(Mark.FLUENT)
    session.mark(Mark.HESITATED)
    words = closing(session, Knowledge())
    assert "make ten" in words.well and "new" in words.well
    # Hesitated on Wednesday, March 3: due two school mornings on, which is the next Monday.
    assert words.back == "count on, to fifty, across a ten: again Monday"
    assert "%" not in f"{words.well}{words.back}{words.table}{words.handy}"


def test_what_comes_back_is_said_by_its_day(home: Path, clock: Callable[[], dt.datetime]) -> None:
    """Not yet: the next school morning. After a break the weekday alone would mislead."""
    away = FAMILY._replace(off=((TODAY + dt.timedelta(1), TODAY + dt.timedelta(11)),))
    for family, said in ((FAMILY, ": again Thursday"), (away, ": again March 15")):
        context = context_at(home / said[-5:].strip(), clock, family)
        assert context.journal is not None
        start_fixed(context)
        today = resume(context, context.journal, clock)
        assert today is not None
        today.mark(Mark.NOT_YET)
        assert closing(today, Knowledge()).back.endswith(said)


def test_no_day_is_named_after_the_last_morning(home: Path, clock: Callable[[], dt.datetime]) -> None:
    last = year_of(FAMILY).mornings[-1]
    context = context_at(home, clock, FAMILY._replace(known_until=last - dt.timedelta(1)), last)
    today = begun(context, clock)
    today.mark(Mark.NOT_YET)
    back = closing(today, Knowledge()).back
    assert back and "again" not in back


def test_a_picture_stands_in_for_a_thing_that_need_not_be_fetched(session: Session) -> None:
    one, two, three, *_ = session.prompts
    assert materials(
        (
            one._replace(table="beans, cup", picture=None),
            two._replace(table="real coins, cup", picture=TenFrame(3)),
            three._replace(table="beans", picture=None),
        )
    ) == (("beans", "cup"), ("real coins",))
    assert materials([one._replace(table="")]) == ((), ())


def test_the_close_has_a_kind_word_when_nothing_came_easily(session: Session) -> None:
    session.mark(Mark.NOT_YET)
    assert "sat down together" in closing(session, Knowledge()).well


def test_a_closed_morning_opens_at_its_close_and_a_second_session_is_its_own(
    session: Session, clock: Clock
) -> None:
    for _ in session.prompts:
        session.mark(Mark.FLUENT)
    session.close()
    back = again(session)
    assert back.closed and back.at_close
    second = begin(back.context, back.journal, clock, shape="short")
    assert second.number == 2 and len(second.prompts) <= SHORT
    assert again(second).number == 2


def test_fixed_prompts_are_five() -> None:
    assert len({prompt.item for prompt in fixed_prompts()}) == 5


# -- the early stop


def easy(context: Context, *items: str, run: int = 2, rested: int = 1, mark: Mark = Mark.FLUENT) -> None:
    """Let the child have met these items, ``rested`` mornings ago."""
    known, today = context.knowledge(), context.morning().index
    met = Record(20.0, today - rested, None, mark, TODAY - dt.timedelta(rested), run, marks=3, shown=3)
    context.know(Knowledge({**known.records, **dict.fromkeys(map(ItemId, items), met)}))


def items_of(session: Session) -> list[ItemId]:
    """The items of the morning, in order."""
    return [prompt.item for prompt in session.prompts]


def test_an_early_stop_goes_straight_to_one_sure_prompt_and_leaves_this_one_unmarked(
    session: Session,
) -> None:
    easy(session.context, "sort/put-together")
    before, met = items_of(session), session.context.knowledge()
    session.mark(Mark.HESITATED)
    assert session.stop_early()
    assert items_of(session) == [*before[:2], "sort/put-together"]
    assert session.prompts[2].why == "a sure one to finish"
    assert session.position == 2 and session.unmarked == (1, 2)
    assert state(again(session)) == state(session)
    session.mark(Mark.FLUENT)
    assert session.at_close and state(again(session)) == state(session)
    assert [(line.item, line.mark) for line in session.journal.history("Bean")] == [
        (before[0], Mark.HESITATED),
        (before[1], None),
        ("sort/put-together", Mark.FLUENT),
    ]
    session.context.forget()
    after = session.context.knowledge()
    assert all(after.of(ItemId(item)) == met.of(item) for item in before[2:])


def test_the_sure_prompt_is_the_likeliest_and_of_no_skill_just_asked(session: Session) -> None:
    context = session.context
    easy(context, "sort/put-together", rested=3)
    easy(context, "patterns/ab-heard", rested=2)
    easy(context, "capacity/how-full", run=1, rested=1)
    easy(context, "make-ten/easy-pairs", rested=1)
    easy(context, "compare/match-to-5", rested=0)
    compared = ItemId("compare/match-to-5")
    today = {compared: context.knowledge().of(compared)._replace(shown_on=TODAY)}
    context.know(Knowledge({**context.knowledge().records, **today}))
    assert session.stop_early() and items_of(session)[1:] == ["patterns/ab-heard"]


def test_where_nothing_is_sure_the_next_best_comes_and_the_never_asked_last(session: Session) -> None:
    context = session.context
    better = (
        ("sort/put-together", Mark.HESITATED, 0),
        ("patterns/ab-heard", Mark.FLUENT, 1),
        ("compare/match-to-5", Mark.FLUENT, 2),
    )
    assert session.stop_early() and not context.knowledge().of(ItemId(items_of(session)[1])).marks
    for item, mark, run in better:
        assert session.undo()
        easy(context, item, mark=mark, run=run)
        assert session.stop_early() and items_of(session)[1:] == [item]


def test_what_was_not_yet_last_is_no_kind_end_and_the_close_comes_at_once(session: Session) -> None:
    context, before = session.context, items_of(session)
    easy(context, *(item.id for item in context.curriculum().items), mark=Mark.NOT_YET, run=0)
    assert session.stop_early()
    assert items_of(session) == before[:1] and session.at_close
    assert state(again(session)) == state(session)
    assert session.undo() and items_of(session) == before and session.unmarked == (0,)


def test_a_morning_that_stopped_with_nothing_sure_can_be_gone_back_to_after_a_restart(
    session: Session,
) -> None:
    easy(session.context, *(item.id for item in session.context.curriculum().items), mark=Mark.NOT_YET, run=0)
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    assert session.stop_early() and session.at_close and len(session.prompts) == 2
    back = again(session)
    back.back()
    assert back.stop_early() and back.position == 2 and state(again(back)) == state(back)


def test_a_stopping_morning_stops_no_second_time_after_a_restart_either(session: Session) -> None:
    assert session.stop_early() and not session.stop_early()
    back, items = again(session), items_of(session)
    assert back.stopping and not back.stop_early()
    back.mark(Mark.NOT_YET)
    assert not back.stop_early() and items_of(again(back)) == items


def test_two_not_yet_running_offer_the_stop_and_change_nothing(session: Session) -> None:
    before = items_of(session)
    session.mark(Mark.NOT_YET)
    assert not session.offers_stop
    session.next()
    back = again(session)
    back.mark(Mark.NOT_YET)
    assert back.offers_stop, "a prompt without a mark between is no other mark, nor is a restart"
    assert items_of(back) == before and back.position == 3 and again(back).offers_stop


def test_an_offer_that_is_taken_puts_a_sure_prompt_in_the_place_of_the_next(session: Session) -> None:
    before = items_of(session)
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    assert session.offers_stop and session.stop_early() and not session.offers_stop
    assert items_of(session)[:2] == before[:2] and len(session.prompts) == 3 and session.position == 2
    assert session.prompts[2].item not in before[:3] and session.prompts[2].why == "a sure one to finish"
    assert state(again(session)) == state(session)
    assert [line.item for line in session.journal.history("Bean")] == items_of(session)
    assert session.undo() and items_of(session) == before and session.position == 2
    assert [session.mark_at(at) for at in (0, 1)] == [Mark.NOT_YET] * 2


def test_an_offer_taken_after_a_cue_keeps_the_prompt_that_was_asked(session: Session) -> None:
    before = items_of(session)
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    session.next_cue()
    assert session.stop_early() and items_of(session)[:3] == before[:3] and session.position == 3


@pytest.mark.parametrize("between", [Mark.FLUENT, Mark.HESITATED, Mark.SKIPPED])
def test_another_mark_between_is_no_reason_to_stop(session: Session, between: Mark) -> None:
    for mark in (Mark.NOT_YET, between, Mark.NOT_YET):
        session.mark(mark)
        assert not session.offers_stop


def test_an_offer_stands_until_another_mark_and_not_on_the_way_back(session: Session) -> None:
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    session.back()
    assert not session.offers_stop
    session.next()
    assert session.offers_stop
    session.next()
    assert session.offers_stop
    session.back()
    session.mark(Mark.HESITATED)
    assert not session.offers_stop


def test_with_one_prompt_to_come_nothing_is_offered(session: Session) -> None:
    before = items_of(session)
    session.next()
    session.next()
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    assert not session.offers_stop and items_of(session) == before and session.position == 4


def test_undo_of_a_stop_by_key_touches_no_mark(session: Session) -> None:
    session.mark(Mark.FLUENT)
    before = state(session)
    session.stop_early()
    assert session.undo() and state(session) == before == state(again(session))
    assert session.undo() and session.mark_at(0) is None


def test_a_stop_on_the_way_back_keeps_what_was_shown_and_its_marks(session: Session) -> None:
    before = items_of(session)
    for mark in (Mark.FLUENT, Mark.FLUENT, Mark.HESITATED):
        session.mark(mark)
    for _ in range(3):
        session.back()
    assert session.stop_early()
    assert items_of(session)[:4] == before[:4] and len(session.prompts) == 5 and session.position == 4
    assert [session.mark_at(at) for at in range(3)] == [Mark.FLUENT, Mark.FLUENT, Mark.HESITATED]
    assert state(again(session)) == state(session)
    assert session.undo() and items_of(session) == before and session.position == 0


def test_what_was_held_back_since_does_not_come_again_with_an_undo(session: Session) -> None:
    last = session.prompts[-1]
    session.stop_early()
    session.context.editor.hold(last.level_id, back=True)
    assert session.undo() and last.item not in items_of(session)


def test_at_the_close_there_is_nothing_to_stop(session: Session) -> None:
    for _ in session.prompts:
        session.next()
    before = state(session)
    assert not session.stop_early() and state(session) == before
    session.close()
    session.back()
    assert not session.stop_early() and len(session.prompts) == 5
