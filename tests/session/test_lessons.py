"""The tick of a level's own lesson: what it does to the family, what it says, and how it is taken back."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, lived
from warmup.config.family import Child, load
from warmup.engine.eligibility import UNTIL_SAID
from warmup.model import LevelId, Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.lessons import ticked, turn_tick, would_say
from warmup.session.session import Session
from warmup.session.undoing import details, newest
from warmup.session.week import Lesson, New, Weeks

Clock = Callable[[], dt.datetime]
LATER, NOW = LevelId("coins:quarter"), LevelId("coin-totals:one-kind")


def row(context: Context, level: LevelId) -> New:
    """The level on the page where it stands."""
    weeks = Weeks(context)
    return next(row for week in range(1, 37) for row in weeks.page(week).new if row.level == level)


def turned(session: Session, level: LevelId) -> str:
    """Turn its tick as the screen does; what is said of it."""
    context = session.context
    turn = turn_tick(row(context, level), context)
    session.family_action(turn.what, turn.work, **turn.about)
    context.forget()
    return turn.said


def on_disk(home: Path) -> Child:
    """The child as family.toml has it."""
    return load(home / "family.toml").children[0]


def may_come(context: Context, level: LevelId) -> bool:
    """Whether something of the level may be asked today."""
    return level in {item.level_id for item in context.eligible(context.morning()).items}


def test_a_tick_opens_early_then_holds_then_says_nothing(session: Session, home: Path) -> None:
    context = session.context
    assert context.plan.weeks[LATER] == 28 and context.morning().week == 27
    assert not may_come(context, LATER) and row(context, LATER).lesson is Lesson.UNSAID
    assert turned(session, LATER) == (
        "Taught: Coins: a quarter, and coins in order of worth. It may come from now on."
    )
    assert on_disk(home).opened == (LATER,) and may_come(context, LATER)
    assert row(context, LATER).lesson is Lesson.TAUGHT
    assert turned(session, LATER).startswith("Not taught yet, so held back: Coins:")
    assert on_disk(home).held == (LATER,) and on_disk(home).opened == () and not may_come(context, LATER)
    assert row(context, LATER).lesson is Lesson.NOT_TAUGHT
    assert turned(session, LATER).endswith(" It opens in week 28.")
    assert on_disk(home).held == () == on_disk(home).opened
    assert row(context, LATER).lesson is Lesson.UNSAID


def test_a_level_whose_week_has_come_may_come_ticked_or_not(session: Session) -> None:
    context = session.context
    assert may_come(context, NOW)
    assert turned(session, NOW).endswith("It may come from now on.") and may_come(context, NOW)
    turned(session, NOW)
    assert not may_come(context, NOW)
    assert turned(session, NOW).endswith(" It may come now.") and may_come(context, NOW)


def test_each_turn_is_taken_back_by_its_name(session: Session, home: Path) -> None:
    states = [on_disk(home)]
    for _ in range(3):
        turned(session, LATER)
        states.append(on_disk(home))
    logged = newest(session.journal, "Bean", TODAY, session.number)
    assert logged is not None and details(logged)["level"] == LATER
    for words, before in (("nothing said of it", 2), ("not taught yet", 1), ("taught", 0)):
        undone = session.undo()
        assert undone is not None and undone.words == words
        assert on_disk(home) == states[before]
    assert session.undo() is None


def test_undo_leaves_what_was_ticked_besides(session: Session, home: Path) -> None:
    turned(session, LATER)
    session.context.editor.lesson(NOW, taught=False)
    assert session.undo() is not None
    assert (on_disk(home).opened, on_disk(home).held) == ((), (NOW,))


def test_what_it_waits_for_is_said(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {"coins/dime-worth": Mark.NOT_YET})
    said = turn_tick(row(context, LATER), context).said
    assert "It waits for coins, " in said and not may_come(context, LATER)
    paused = FAMILY._replace(children=(Child("Bean", reads=False, paused=UNTIL_SAID),))
    context = context_at(home, clock, paused)
    assert turn_tick(row(context, LATER), context).said.endswith(" Nothing new until you say.")


def test_what_was_asked_already_is_not_kept_back_by_a_pause(home: Path, clock: Clock) -> None:
    paused = FAMILY._replace(children=(Child("Bean", reads=False, paused=UNTIL_SAID),))
    context = context_at(home, clock, paused)
    lived(context, TODAY - dt.timedelta(1), {"make-ten/seven-three": Mark.FLUENT})
    assert turn_tick(row(context, LevelId("make-ten:all")), context).said.endswith("It may come from now on.")


@pytest.mark.parametrize(
    "lesson, says",
    [
        (Lesson.UNSAID, "it was taught"),
        (Lesson.TAUGHT, "it is not taught yet"),
        (Lesson.NOT_TAUGHT, "say nothing of it"),
    ],
)
def test_a_tick_says_what_turning_it_would_do(context: Context, lesson: Lesson, says: str) -> None:
    assert would_say(lesson) == says
    now = row(context, LATER)._replace(lesson=lesson)
    assert ticked(ticked(ticked(now))) == now and ticked(now) != now


def test_the_words_of_the_actions_are_those_of_the_ticks() -> None:
    words = {undoing.LESSON: Lesson.TAUGHT.value, undoing.NO_LESSON: Lesson.NOT_TAUGHT.value}
    assert {what: undoing._WORDS[what] for what in words} == words
