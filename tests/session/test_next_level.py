"""They know it already, and nothing new until the adult says: what each opens, holds and takes back."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, lived, start_fixed
from warmup.config.family import load
from warmup.engine.eligibility import UNTIL_SAID
from warmup.model import LevelId, Mark
from warmup.session import undoing
from warmup.session.next_level import NextLevel, next_level
from warmup.session.pausing import paused, turn_new, turn_week, until_words
from warmup.session.session import Session, resume
from warmup.tui.doing import AT_A_PROMPT, at_the_close
from warmup.tui.workspace import Workspace

Clock = Callable[[], dt.datetime]


def window(home: Path, clock: Clock) -> Session:
    """The fixed morning as another start of the program finds it."""
    family = load(home / "family.toml") if (home / "family.toml").exists() else FAMILY
    context = context_at(home, clock, family)
    assert context.journal is not None
    found = resume(context, context.journal, clock)
    assert found is not None
    return found


@pytest.fixture
def session(home: Path, clock: Clock) -> Session:
    """The fixed five prompts: make ten, count on to fifty, today's name, tens to fifty, this month."""
    context = context_at(home, clock)
    lived(
        context, TODAY - dt.timedelta(1), dict.fromkeys(("make-ten/seven-three", "month/this"), Mark.FLUENT)
    )
    start_fixed(context)
    return window(home, clock)


def later(session: Session, level: str, week: int = 30) -> LevelId:
    """Let the plan have a level only in a later week."""
    plan = session.context.plan
    session.context.plan = plan._replace(weeks={**plan.weeks, LevelId(level): week})
    session.context._curriculum, session.context._items = None, ()
    return LevelId(level)


def after(session: Session, level: str) -> NextLevel:
    return next_level(session.context, session.morning, LevelId(level))


def test_the_next_level_opens_today_and_is_asked_in_the_place_of_the_one_they_know(
    session: Session, home: Path
) -> None:
    next_one = later(session, "weekday:tomorrow")
    session.next()
    session.next()
    assert session.prompt and session.prompt.item == "weekday/today"
    assert AT_A_PROMPT["known"](session) == "Opened: days of the week, tomorrow."
    assert session.position == 2 and session.prompt.item == "weekday/tomorrow"
    assert "they know" in session.prompt.why and len(session.prompts) == 5
    assert load(home / "family.toml").children[0].opened == (next_one,)
    assert session.mark_at(2) is None


def test_undo_takes_the_level_and_the_prompt_back(session: Session, home: Path) -> None:
    later(session, "weekday:tomorrow")
    session.next()
    session.next()
    was = session.routine
    session.know_already()
    undone = session.undo()
    assert undone and (undone.what, undone.words) == (undoing.KNOWN, "they know it already")
    assert session.routine == was and load(home / "family.toml").children[0].opened == ()


def test_a_level_whose_week_has_come_is_asked_and_needs_no_opening(session: Session, home: Path) -> None:
    session.next()
    session.next()
    assert AT_A_PROMPT["known"](session) == "It is open already: days of the week, tomorrow."
    assert session.prompt and session.prompt.item == "weekday/tomorrow"
    assert load(home / "family.toml").children[0].opened == ()


def test_what_it_stands_on_must_be_open(session: Session, home: Path) -> None:
    """A level that stands on another skill's, which is far ahead, waits for that one."""
    later(session, "date:full"), later(session, "weekday:today")
    found = after(session, "date:number")
    assert found.level == "date:full" and not found.items and found.lacking == ("weekday:today",)


def test_what_it_stands_on_must_not_be_shaky(session: Session, home: Path, clock: Clock) -> None:
    for ago in (2, 1):
        lived(session.context, TODAY - dt.timedelta(ago), {"weekday/today": Mark.NOT_YET})
    session = window(home, clock)
    later(session, "weekday:tomorrow")
    session.next()
    session.next()
    said = AT_A_PROMPT["known"](session)
    assert said == (
        "It waits for days of the week, today’s name: days of the week, tomorrow. Something else, then."
    )
    assert session.prompt and session.prompt.skill != "weekday"
    assert load(home / "family.toml").children[0].opened == ()


def test_after_the_last_level_something_else_comes(session: Session) -> None:
    last = session.context.curriculum().items
    assert after(session, "month:around") == NextLevel() and last
    session.next()
    said = []
    for _ in range(5):
        said.append(AT_A_PROMPT["known"](session))
        if "last step" in said[-1]:
            break
    assert said[-1].startswith("That is the last step of ") or "open already" in said[-1], said


def test_a_held_level_is_not_opened(session: Session, home: Path) -> None:
    level = later(session, "weekday:tomorrow")
    session.context.editor.hold(level, back=True)
    session.next()
    session.next()
    assert AT_A_PROMPT["known"](session).startswith("Not today. It waits: days of the week, tomorrow.")
    assert load(home / "family.toml").children[0].opened == ()


# -- nothing new until I say


def test_nothing_new_until_i_say_holds_on_any_day_and_ends_by_the_same_action(
    session: Session, home: Path
) -> None:
    context = session.context
    assert not context.morning(TODAY + dt.timedelta(7)).review, "no review need come first"
    assert "Nothing new until you say" in AT_A_PROMPT["new"](session)
    assert load(home / "family.toml").children[0].paused == UNTIL_SAID == paused(context)
    begun = {"make-ten:all", "month:this"}
    for days in (0, 1, 40, 400):
        at = context.morning(TODAY + dt.timedelta(days))
        assert {item.level_id for item in context.eligible(at).items} <= begun, days
    assert AT_A_PROMPT["new"](session) == "New things may come again."
    assert load(home / "family.toml").children[0].paused is None
    assert len({item.level_id for item in context.eligible(context.morning()).items}) > 20


def test_it_holds_what_the_day_itself_would_ask_for(session: Session) -> None:
    """The hundredth day's question is new as well."""
    context = session.context
    hundredth = next(m for d in context.year.mornings if (m := context.morning(d)).school_day == 100)
    item = "school-day/to-the-hundredth"
    assert item in {each.id for each in context.eligible(hundredth).items}
    turn_new(context)
    assert item not in {each.id for each in context.eligible(hundredth).items}


def test_what_is_new_and_still_to_come_today_gives_way_and_undo_brings_it_back(session: Session) -> None:
    was, here = session.routine, session.prompt
    begun = {"make-ten:all", "month:this"}
    assert session.turn_new() and session.prompt == here
    new = [prompt for prompt in session.prompts if prompt.level_id not in begun]
    # Only what is begun may be asked instead, and there is too little of it for all.
    assert len(new) < len([prompt for prompt in was.prompts if prompt.level_id not in begun])
    undone = session.undo()
    assert undone and undone.words == "nothing new until you say"
    assert session.routine == was and session.context.child.paused is None


def test_new_things_again_is_undone_too(session: Session) -> None:
    session.turn_new()
    assert not session.turn_new()
    undone = session.undo()
    assert undone and undone.words == "new things again" and session.context.child.paused == UNTIL_SAID


def test_it_can_be_said_at_the_close(session: Session) -> None:
    for _ in session.prompts:
        session.next()
    prompts = session.prompts
    work = Workspace(session.context, session.journal, session.clock)
    work.sit()
    assert "until you say" in at_the_close("new", work)
    assert session.prompts == prompts and paused(session.context) == UNTIL_SAID


def test_a_week_without_new_things_ends_by_new_things_again(session: Session) -> None:
    turn_week(session.context)
    until = paused(session.context)
    assert until is not None and until != UNTIL_SAID and "Nothing new until W" in until_words(until)
    assert not session.turn_new() and session.context.child.paused is None


def test_while_nothing_new_may_open_what_is_next_waits(session: Session, home: Path) -> None:
    later(session, "weekday:tomorrow")
    session.next()
    session.next()
    turn_new(session.context)
    assert AT_A_PROMPT["known"](session).startswith(
        "Nothing new until you say. It waits: days of the week, tomorrow."
    )
    assert load(home / "family.toml").children[0].opened == ()
