"""The opening in a session: no prompt, no mark, gone back to, resumed, and kept through what else is done."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, OPENING, context_at, start_fixed
from warmup.config.family import load
from warmup.engine.eligibility import Eligible
from warmup.journal.journal import NOT_BEGUN
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.opening import tells
from warmup.session.session import Session, begin, resume

Clock = Callable[[], dt.datetime]


def window(home: Path, clock: Clock) -> Session:
    """The morning as another start of the program finds it."""
    context = context_at(home, clock, load(home / "family.toml"))
    assert context.journal is not None
    found = resume(context, context.journal, clock)
    assert found is not None
    return found


@pytest.fixture
def session(home: Path, clock: Clock) -> Session:
    """The fixed morning with an opening, as it begins."""
    start_fixed(context_at(home, clock), OPENING)
    return window(home, clock)


def shown(session: Session) -> int:
    """How many prompts the journal believes were on screen."""
    return len(session.journal.history("Bean"))


def test_a_morning_begins_with_its_opening_of_which_nothing_is_marked(session: Session) -> None:
    assert session.at_opening and not session.at_close and session.prompt is None
    session.mark(Mark.FLUENT)
    assert session.at_opening and not session.swap() and not session.hold_back()
    assert not session.stop_early()
    session.next_cue()
    assert session.at_opening and session.cue == 0 and shown(session) == 0 and session.unmarked == ()
    session.next()
    assert not session.at_opening and session.position == 0 and session.prompt == session.prompts[0]
    assert shown(session) == 1


def test_it_is_resumed_until_a_prompt_was_shown_and_then_no_more(
    session: Session, home: Path, clock: Clock
) -> None:
    assert window(home, clock).at_opening
    session.next()
    again = window(home, clock)
    assert not again.at_opening and again.position == 0


def test_back_from_the_first_prompt_leads_to_it_and_forgets_nothing(
    session: Session, home: Path, clock: Clock
) -> None:
    session.next()
    session.mark(Mark.HESITATED)
    session.back()
    session.back()
    assert session.at_opening and session.mark_at(0) is Mark.HESITATED and session.furthest == 1
    session.back()
    session.toggle_rough()
    assert session.at_opening
    session.next()
    assert session.position == 0 and not session.at_opening and session.mark_at(0) is Mark.HESITATED
    assert window(home, clock).position == 0


def test_undo_of_the_first_mark_leads_to_its_prompt(session: Session) -> None:
    session.next()
    session.mark(Mark.FLUENT)
    session.undo()
    assert session.position == 0 and not session.at_opening and session.mark_at(0) is None


def test_what_is_done_at_it_leaves_it_on_screen_and_is_undone_there(
    session: Session, home: Path, clock: Clock
) -> None:
    was = session.routine
    session.toggle_rough()
    assert session.at_opening and session.shorten() and len(session.prompts) == 4
    assert session.at_opening and session.furthest == NOT_BEGUN and shown(session) == 0
    assert session.routine.opening == OPENING and window(home, clock).at_opening
    session.next()
    session.mark(Mark.FLUENT)
    session.undo()
    session.undo()
    assert session.routine == was and session.at_opening and session.furthest == NOT_BEGUN
    session.undo()
    assert session.at_opening and not session.rough


def test_another_window_may_have_gone_on(session: Session, home: Path, clock: Clock) -> None:
    other = window(home, clock)
    other.next()
    other.next()
    session.next()
    assert session.position == 0 and not session.at_opening and session.furthest == 1


def test_a_second_warm_up_of_the_day_begins_with_its_prompts(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    first = begin(context, context.journal, clock)
    assert first.at_opening
    for _ in range(len(first.prompts) + 1):
        first.next()
    first.close()
    second = begin(context, context.journal, clock, shape="short")
    assert second.number == 2 and not second.at_opening and second.routine.opening is None
    assert second.furthest == 0


def test_chosen_again_for_another_day_it_has_that_day_s_opening(home: Path, clock: Clock) -> None:
    """A Saturday that turns out to count: its straw may be added."""
    saturday = dt.date(2027, 1, 16)
    context = context_at(home, clock, FAMILY._replace(known_until=dt.date(2027, 1, 15)), saturday)
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    before = session.routine.opening
    assert before and "straw" not in before.say and session.at_opening
    context.editor.count(saturday)
    assert session.choose_again() and session.at_opening and session.morning.is_school
    assert session.routine.opening == context.routine().opening != before


@pytest.mark.parametrize(("said", "item"), [("twelve", "date/say-number"), ("three", "month/twelve-months")])
def test_what_is_asked_instead_is_never_what_the_opening_said(
    session: Session, monkeypatch: pytest.MonkeyPatch, said: str, item: str
) -> None:
    """Two items have but one answer each on this day: the one whose answer was said is not taken."""
    names = ("date/say-number", "month/twelve-months")
    two = [each for each in session.context.curriculum().items if each.id in names]
    monkeypatch.setattr(Context, "eligible", lambda _context, _morning: Eligible(tuple(two)))
    session.next()
    session.routine = session.routine._replace(opening=OPENING._replace(say=f"Today we say {said}."))
    assert session.swap() and session.prompt is not None and session.prompt.item == item


def test_the_one_to_end_with_is_none_that_the_opening_said(session: Session) -> None:
    session.next()
    session.next()
    assert session.stop_early() and session.prompt is not None
    sure = session.prompt
    session.undo()
    said = OPENING._replace(say=f"Today we say {sure.answer}.")
    session.routine = session.routine._replace(opening=said)
    assert session.stop_early()
    assert session.prompt is None or not tells(said, (session.prompt,))
