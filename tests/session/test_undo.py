"""Undo takes back the last thing done, whatever it was, also after a restart; and what two windows may do."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, start_fixed
from warmup.config.family import Child, load, save
from warmup.journal.journal import Action, Changed
from warmup.model import ItemId, LevelId, Mark, Morning
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.pausing import turn_week
from warmup.session.session import Session, begin, resume
from warmup.session.undoing import CannotUndo

Clock = Callable[[], dt.datetime]


def window(home: Path, clock: Clock) -> Session:
    """The morning as another start of the program finds it, with a journal of its own."""
    context = context_at(
        home, clock, load(home / "family.toml") if (home / "family.toml").exists() else FAMILY
    )
    assert context.journal is not None
    found = resume(context, context.journal, clock)
    assert found is not None
    return found


@pytest.fixture
def session(home: Path, clock: Clock) -> Session:
    """The fixed five prompts, at the second, the first marked."""
    start_fixed(context_at(home, clock))
    found = window(home, clock)
    found.mark(Mark.HESITATED)
    return found


def state(session: Session) -> tuple[object, ...]:
    """All that an undo must bring back."""
    marks = {at: session.mark_at(at) for at in range(len(session.prompts)) if session.mark_at(at)}
    shown = session.position, session.furthest, session.rough, session.closed
    return shown, marks, session.routine, session.context.family


def pause(session: Session) -> None:
    session.family_action(undoing.PAUSE, lambda: turn_week(session.context))


def taught(session: Session) -> None:
    session.family_action(
        undoing.TAUGHT, lambda: session.context.editor.taught(ItemId("month/this"), session.context.today)
    )


ACTIONS: dict[str, Callable[[Session], object]] = {
    "fluent": lambda session: session.mark(Mark.FLUENT),
    "skip": lambda session: session.mark(Mark.SKIPPED),
    "swap": Session.swap,
    "short": Session.shorten,
    "stop": Session.stop_early,
    "hold": Session.hold_back,
    "known": Session.know_already,
    "new": Session.turn_new,
    "rough": Session.toggle_rough,
    "easy": Session.others_easy,
    "close": Session.close,
    "pause": pause,
    "taught": taught,
}


@pytest.mark.slow
@pytest.mark.parametrize("restart", [False, True], ids=["at once", "after a restart"])
@pytest.mark.parametrize("action", ACTIONS)
def test_the_last_action_is_taken_back_whatever_it_was(
    session: Session, home: Path, clock: Clock, action: str, restart: bool
) -> None:
    before = state(session)
    ACTIONS[action](session)
    assert state(session) != before, "it did nothing"
    if restart:
        session = window(home, clock)
    undone = session.undo()
    (place, marks, routine, family), was = state(session), before
    if action in ("fluent", "skip"):
        # The prompt after it was on screen.
        assert isinstance(place, tuple) and place[0] == 1
        place = was[0]
    assert undone and undone.words and (place, marks, routine, family) == was
    assert state(window(home, clock))[1:] == state(session)[1:]
    undone = session.undo()
    assert undone and undone.words == "hesitated" and session.position == 0 and not session.undo()


@pytest.mark.slow
def test_undo_walks_all_the_way_back_through_everything(session: Session, home: Path, clock: Clock) -> None:
    states = []
    for action in ("rough", "swap", "fluent", "hold", "taught", "short", "fluent", "stop"):
        states.append(state(session)[1:])
        ACTIONS[action](session)
        session = window(home, clock)
    for was in reversed(states):
        assert session.undo() and state(session)[1:] == was
        session = window(home, clock)
    assert [row.what for row in session.journal.actions_of("Bean", TODAY)].count("undo") == 8


def test_a_batch_at_the_close_is_one_undo(session: Session) -> None:
    for _ in range(4):
        session.next()
    assert session.others_easy() == 4 and not session.unmarked
    assert session.undo() and session.unmarked == (1, 2, 3, 4) and session.mark_at(0) is Mark.HESITATED


def test_other_marks_stay_with_a_swap_a_short_morning_and_what_is_held_back(session: Session) -> None:
    """Gone back to the first of three marked prompts: the marks of the other two are not lost."""
    for mark in (Mark.FLUENT, Mark.HESITATED):
        session.mark(mark)
    items = session.items
    for change in (Session.swap, Session.hold_back, Session.shorten):
        while session.position:
            session.back()
        change(session)
        assert session.items[1:3] == items[1:3]
        assert [session.mark_at(at) for at in (1, 2)] == [Mark.FLUENT, Mark.HESITATED]
    assert len(session.prompts) == 4


def test_a_swap_taken_back_brings_the_prompt_its_mark_and_what_was_shown_after_it(
    session: Session, home: Path, clock: Clock
) -> None:
    session.mark(Mark.NOT_YET)
    session.next()
    assert (session.position, session.furthest) == (3, 3)
    while session.position > 1:
        session.back()
    session.next_cue()
    before = state(session)
    assert session.swap() and session.mark_at(1) is None and session.cue == 0
    assert session.undo() == ("swap", "the other prompt") and session.cue == 0
    assert state(session) == before == state(window(home, clock))
    session.mark(Mark.FLUENT)
    assert session.undo() and session.mark_at(1) is Mark.NOT_YET and session.position == 1


def test_days_off_and_an_extra_day_are_taken_back_and_hand_edits_stay(home: Path, clock: Clock) -> None:
    family = FAMILY._replace(began=TODAY - dt.timedelta(2), known_until=None)
    context = context_at(home, clock, family)
    assert context.journal is not None
    days = context.unconfirmed_days()
    undoing.logged(
        context,
        context.journal,
        undoing.DAYS,
        lambda: context.editor.confirm_days(days[:1], context.today),
        {},
    )
    assert context.family.off == ((days[0], days[0]),) and not context.unconfirmed_days()
    by_hand = (dt.date(2027, 5, 3), dt.date(2027, 5, 4))
    context.editor.change(context.family._replace(off=(*context.family.off, by_hand)))
    undoing.logged(context, context.journal, undoing.EXTRA, lambda: context.editor.count(context.today), {})
    assert context.family.extra == (TODAY,)
    undone = undoing.undo_day(context, context.journal)
    assert undone and undone.what == undoing.EXTRA and not context.family.extra
    undone = undoing.undo_day(context, context.journal)
    assert undone and undone.what == undoing.DAYS and context.unconfirmed_days() == days
    assert load(home / "family.toml").off == (by_hand,) and undoing.undo_day(context, context.journal) is None


def test_what_was_edited_by_hand_meanwhile_is_not_undone(session: Session, home: Path) -> None:
    path = home / "family.toml"
    by_hand = (dt.date(2027, 5, 3), dt.date(2027, 5, 3))
    save(path, load(path)._replace(off=(by_hand,), children=(Child("Bean", held=(LevelId("coins:worth"),)),)))
    session.hold_back()
    assert load(path).off == (by_hand,) and len(load(path).children[0].held) == 2
    assert session.undo()
    assert load(path).off == (by_hand,) and load(path).children[0].held == ("coins:worth",)


def test_with_the_stick_pulled_out_nothing_is_written_in_its_place(session: Session, home: Path) -> None:
    home.rename(home.with_name("drawer"))
    home.mkdir()
    session.mark(Mark.FLUENT)
    session.hold_back()
    session.context.editor.prefer(theme="light")
    assert [*home.iterdir()] == [] and session.context.editor.unsaved and not session.journal.saving
    home.rmdir()
    home.with_name("drawer").rename(home)
    session.mark(Mark.NOT_YET)
    assert session.journal.saving and [session.mark_at(at) for at in (0, 1, 2)] == [
        Mark.HESITATED, Mark.FLUENT, Mark.NOT_YET
    ]  # fmt: skip


@pytest.mark.parametrize(
    "before",
    ["[]", "7", '{"marks": {"0": ["best", 0, "", false]}}', '{"position": -1}', '{"routine": "{}"}',
     '{"family": [["", "weather", "dark", "light"]]}', '{"family": [["", "off", 3, []]]}', '"x"'],
)  # fmt: skip
def test_a_log_that_says_no_sense_undoes_nothing(session: Session, before: str) -> None:
    was = state(session)
    session.journal.log("Bean", TODAY, session.number, Action("mark", before=before))
    session.refresh()
    with pytest.raises(CannotUndo):
        session.undo()
    assert state(session) == was


def test_what_changed_since_is_not_undone(session: Session) -> None:
    after = undoing.after_text({"mark": "fluent"}, ("coins/penny",))
    action = Action("mark", before='{"marks": {"0": null}}', after=after)
    session.journal.log("Bean", TODAY, session.number, action)
    session.refresh()
    with pytest.raises(CannotUndo):
        session.undo()
    assert session.mark_at(0) is Mark.HESITATED


def test_a_mark_comes_back_though_its_level_was_held_back_elsewhere(session: Session) -> None:
    session.back()
    assert session.swap() and session.mark_at(0) is None
    session.context.editor.hold(LevelId("make-ten:all"), back=True)
    assert session.undo() and session.mark_at(0) is Mark.HESITATED


def test_a_mark_stays_in_its_place_though_a_prompt_before_it_was_held_back_elsewhere(
    session: Session,
) -> None:
    session.next()
    session.mark(Mark.FLUENT)
    session.back()
    session.back()
    level = session.prompts[1].level_id
    assert session.swap()
    session.context.editor.hold(level, back=True)
    assert session.undo() and session.mark_at(2) is Mark.FLUENT and len(session.prompts) == 5


# -- two windows


def test_a_mark_is_refused_where_another_window_put_another_prompt(
    session: Session, home: Path, clock: Clock
) -> None:
    other = window(home, clock)
    shown = other.prompt
    assert session.swap()
    for action in (lambda: other.mark(Mark.FLUENT), other.next, other.swap, other.shorten, other.undo):
        with pytest.raises(Changed):
            action()
    again = window(home, clock)
    assert again.prompt and shown and again.prompt.item != shown.item
    assert again.mark_at(1) is None and state(again) == state(session)


def test_a_mark_is_refused_where_another_window_stopped(session: Session, home: Path, clock: Clock) -> None:
    other = window(home, clock)
    other.next()
    other.next()
    session = window(home, clock)
    session.back()
    session.back()
    assert session.stop_early()
    with pytest.raises(Changed):
        other.mark(Mark.NOT_YET)
    assert len(window(home, clock).journal.marks_of("Bean", TODAY, 1)) == 1


def test_a_window_that_goes_on_sees_what_the_other_marked(session: Session, home: Path, clock: Clock) -> None:
    other = window(home, clock)
    session.mark(Mark.NOT_YET)
    other.next()
    assert other.mark_at(1) is Mark.NOT_YET and other.position == 2
    other.mark(Mark.FLUENT)
    assert window(home, clock).mark_at(2) is Mark.FLUENT


def test_no_mark_is_made_over_one_that_another_window_made(
    session: Session, home: Path, clock: Clock
) -> None:
    for _ in range(4):
        session.next()
    other = window(home, clock)
    session.back()
    session.mark(Mark.NOT_YET)
    for action in (other.others_easy, other.toggle_rough, other.undo, other.close):
        with pytest.raises(Changed):
            action()
    assert window(home, clock).mark_at(4) is Mark.NOT_YET and not other.context.child.held
    assert [mark for mark in (session.mark_at(at) for at in (1, 2, 3)) if mark] == []


def test_two_windows_begin_one_session(home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> None:
    one, other = context_at(home, clock), context_at(home, clock)
    assert one.journal is not None and other.journal is not None
    began: list[Session] = []
    real = Context.routine

    def routine(
        context: Context, *args: Morning, shape: str = "", session: int = 1, beside: None = None
    ) -> object:
        # The other window begins after this one has looked for a session and before it keeps its own.
        if context is one and other.journal is not None:
            began.append(begin(other, other.journal, clock))
        return real(context, *args, shape=shape, session=session, beside=beside)

    monkeypatch.setattr(Context, "routine", routine)
    mine = begin(one, one.journal, clock)
    assert [each.number for each in began] == [1] == [mine.number] and mine.routine == began[0].routine
    assert len(one.journal.sessions_of("Bean", TODAY)) == 1


def test_rows_that_are_not_the_routine_s_are_never_marked(session: Session, home: Path, clock: Clock) -> None:
    import sqlite3

    with sqlite3.connect(home / "journal.db") as db:
        db.execute("UPDATE prompts SET item = 'coins/penny' WHERE position = 3")
    db.close()
    assert resume(session.context, session.journal, clock) is None
