"""A morning that ends early: by a key, which a line offers after two not yet running."""

import datetime as dt

import pytest

from tests.household import TODAY
from tests.session.sessions import again, items_of, state
from warmup import skills
from warmup.engine.memory import Knowledge, Record
from warmup.model import ItemId, Mark
from warmup.session.context import Context
from warmup.session.session import Session


def easy(context: Context, *items: str, run: int = 2, rested: int = 1, mark: Mark = Mark.FLUENT) -> None:
    """Let the child have met these items, ``rested`` mornings ago."""
    known, today = context.knowledge(), context.morning().index
    met = Record(20.0, today - rested, mark, TODAY - dt.timedelta(rested), run, marks=3, shown=3)
    levels = [skills.locate(item).level_id for item in items]
    context.know(
        Knowledge(
            {**known.items, **dict.fromkeys(map(ItemId, items), met)},
            {**known.levels, **dict.fromkeys(levels, met)},
        )
    )


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
    known = context.knowledge()
    context.know(known._replace(items={**known.items, **today}))
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
