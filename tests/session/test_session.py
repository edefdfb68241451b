"""A session: what each key does to it, that it is on disk at once, and comes back as it was."""

import datetime as dt
import itertools
from collections.abc import Callable

from tests.household import FAMILY, TODAY, begun, context_at, fixed_prompts, without_reviews
from tests.session.sessions import again, items_of, state
from warmup.model import LevelId, Mark
from warmup.session.context import Context
from warmup.session.session import Session, begin

Clock = Callable[[], dt.datetime]


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
    assert len(session.prompts) <= 4 and session.prompts[:2] == first_two
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


def test_a_closed_morning_opens_at_its_close_and_a_second_session_is_its_own(
    session: Session, clock: Clock
) -> None:
    for _ in session.prompts:
        session.mark(Mark.FLUENT)
    session.close()
    back = again(session)
    assert back.closed and back.at_close
    second = begin(back.context, back.journal, clock, shape="short")
    assert second.number == 2 and len(second.prompts) <= 4
    assert again(second).number == 2


def test_fixed_prompts_are_five() -> None:
    assert len({prompt.item for prompt in fixed_prompts()}) == 5


def test_what_was_declined_does_not_come_again_that_day(context: Context, clock: Clock) -> None:
    """Neither in another's place nor as the sure one, also after a restart; an undo gives it back."""
    session = begun(context, clock)
    declined = list[str]()
    for _ in range(3):
        assert session.prompt is not None
        declined.append(session.prompt.item)
        assert session.another() and session.prompt.item not in declined
    kept = again(session)
    kept.next()
    assert kept.swap() or kept.another()
    kept.stop_early()
    assert not {*declined} & {*items_of(kept)}
    for _ in range(3):
        kept.undo()
    assert declined[-1] in items_of(kept)
