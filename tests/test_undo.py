"""Undo takes back the last thing done, whatever it was, also after a restart; and what two windows may do."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, desk_at, start_fixed
from warmup import undoing
from warmup.closing import turn_pause
from warmup.desk import Desk
from warmup.family import Child, load, save
from warmup.journal import Action, Changed
from warmup.morning import Mark
from warmup.sitting import Sitting, begin, resume
from warmup.undoing import CannotUndo

Clock = Callable[[], dt.datetime]


def window(home: Path, clock: Clock) -> Sitting:
    """The morning as another start of the program finds it, with a journal of its own."""
    desk = desk_at(home, clock, load(home / "family.toml") if (home / "family.toml").exists() else FAMILY)
    assert desk.journal is not None
    found = resume(desk, desk.journal, clock)
    assert found is not None
    return found


@pytest.fixture
def sitting(home: Path, clock: Clock) -> Sitting:
    """The fixed five prompts, at the second, the first marked."""
    start_fixed(desk_at(home, clock))
    found = window(home, clock)
    found.mark(Mark.HESITATED)
    return found


def state(sitting: Sitting) -> tuple[object, ...]:
    """All that an undo must bring back."""
    marks = {at: sitting.mark_at(at) for at in range(len(sitting.prompts)) if sitting.mark_at(at)}
    shown = sitting.position, sitting.furthest, sitting.rough, sitting.closed
    return shown, marks, sitting.routine, sitting.desk.family


def pause(sitting: Sitting) -> None:
    sitting.family_action(undoing.PAUSE, lambda: turn_pause(sitting.desk))


def taught(sitting: Sitting) -> None:
    sitting.family_action(undoing.TAUGHT, lambda: sitting.desk.taught("month/this"))


def not_yet_twice(sitting: Sitting) -> None:
    sitting.marks[0] = sitting.marks[0]._replace(mark=Mark.NOT_YET)
    sitting.mark(Mark.NOT_YET)


ACTIONS: dict[str, Callable[[Sitting], object]] = {
    "fluent": lambda sitting: sitting.mark(Mark.FLUENT),
    "skip": lambda sitting: sitting.mark(Mark.SKIPPED),
    "not yet twice": not_yet_twice,
    "swap": Sitting.swap,
    "short": Sitting.shorten,
    "stop": Sitting.stop_early,
    "hold": Sitting.hold_back,
    "rough": Sitting.toggle_rough,
    "easy": Sitting.others_easy,
    "close": Sitting.close,
    "pause": pause,
    "taught": taught,
}


@pytest.mark.parametrize("restart", [False, True], ids=["at once", "after a restart"])
@pytest.mark.parametrize("action", ACTIONS)
def test_the_last_action_is_taken_back_whatever_it_was(
    sitting: Sitting, home: Path, clock: Clock, action: str, restart: bool
) -> None:
    before = state(sitting)
    ACTIONS[action](sitting)
    assert state(sitting) != before, "it did nothing"
    if restart:
        sitting = window(home, clock)
    undone = sitting.undo()
    (place, marks, routine, family), was = state(sitting), before
    if action in ("fluent", "skip"):
        # The prompt after it was on screen.
        assert isinstance(place, tuple) and place[0] == 1
        place = was[0]
    assert undone and undone.words and (place, marks, routine, family) == was
    assert state(window(home, clock))[1:] == state(sitting)[1:]
    undone = sitting.undo()
    assert undone and undone.words == "hesitated" and sitting.position == 0 and not sitting.undo()


def test_undo_walks_all_the_way_back_through_everything(sitting: Sitting, home: Path, clock: Clock) -> None:
    states = []
    for action in ("rough", "swap", "fluent", "hold", "taught", "short", "fluent", "stop"):
        states.append(state(sitting)[1:])
        ACTIONS[action](sitting)
        sitting = window(home, clock)
    for was in reversed(states):
        assert sitting.undo() and state(sitting)[1:] == was
        sitting = window(home, clock)
    assert [row.what for row in sitting.journal.actions_of("Bean", TODAY)].count("undo") == 8


def test_a_batch_at_the_close_is_one_undo(sitting: Sitting) -> None:
    for _ in range(4):
        sitting.next()
    assert sitting.others_easy() == 4 and not sitting.unmarked
    assert sitting.undo() and sitting.unmarked == (1, 2, 3, 4) and sitting.mark_at(0) is Mark.HESITATED


def test_other_marks_stay_with_a_swap_a_short_morning_and_what_is_held_back(sitting: Sitting) -> None:
    """Gone back to the first of three marked prompts: the marks of the other two are not lost."""
    for mark in (Mark.FLUENT, Mark.HESITATED):
        sitting.mark(mark)
    items = sitting.items
    for change in (Sitting.swap, Sitting.hold_back, Sitting.shorten):
        while sitting.position:
            sitting.back()
        change(sitting)
        assert sitting.items[1:3] == items[1:3]
        assert [sitting.mark_at(at) for at in (1, 2)] == [Mark.FLUENT, Mark.HESITATED]
    assert len(sitting.prompts) == 4


def test_days_off_and_an_extra_day_are_taken_back_and_hand_edits_stay(home: Path, clock: Clock) -> None:
    family = FAMILY._replace(began=TODAY - dt.timedelta(2), settled=None)
    desk = desk_at(home, clock, family)
    assert desk.journal is not None
    days = desk.unsettled()
    undoing.logged(desk, desk.journal, undoing.DAYS, lambda: desk.settle(days[:1]), {})
    assert desk.family.off == ((days[0], days[0]),) and not desk.unsettled()
    by_hand = (dt.date(2027, 5, 3), dt.date(2027, 5, 4))
    desk.change(desk.family._replace(off=(*desk.family.off, by_hand)))
    undoing.logged(desk, desk.journal, undoing.EXTRA, desk.count_today, {})
    assert desk.family.extra == (TODAY,)
    undone = undoing.undo_day(desk, desk.journal)
    assert undone and undone.what == undoing.EXTRA and not desk.family.extra
    undone = undoing.undo_day(desk, desk.journal)
    assert undone and undone.what == undoing.DAYS and desk.unsettled() == days
    assert load(home / "family.toml").off == (by_hand,) and undoing.undo_day(desk, desk.journal) is None


def test_what_was_edited_by_hand_meanwhile_is_not_undone(sitting: Sitting, home: Path) -> None:
    path = home / "family.toml"
    by_hand = (dt.date(2027, 5, 3), dt.date(2027, 5, 3))
    save(path, load(path)._replace(off=(by_hand,), children=(Child("Bean", held=("coins:worth",)),)))
    sitting.hold_back()
    assert load(path).off == (by_hand,) and len(load(path).children[0].held) == 2
    assert sitting.undo()
    assert load(path).off == (by_hand,) and load(path).children[0].held == ("coins:worth",)


def test_with_the_stick_pulled_out_nothing_is_written_in_its_place(sitting: Sitting, home: Path) -> None:
    home.rename(home.with_name("drawer"))
    home.mkdir()
    sitting.mark(Mark.FLUENT)
    sitting.hold_back()
    sitting.desk.prefer(theme="light")
    assert [*home.iterdir()] == [] and sitting.desk.unsaved and not sitting.journal.saving
    home.rmdir()
    home.with_name("drawer").rename(home)
    sitting.mark(Mark.NOT_YET)
    assert sitting.journal.saving and [sitting.mark_at(at) for at in (0, 1, 2)] == [
        Mark.HESITATED, Mark.FLUENT, Mark.NOT_YET
    ]  # fmt: skip


@pytest.mark.parametrize(
    "before",
    ["[]", "7", '{"marks": {"0": ["best", 0, "", false]}}', '{"position": -1}', '{"routine": "{}"}',
     '{"family": [["", "theme", "dark", "light"]]}', '{"family": [["", "off", 3, []]]}', '"x"'],
)  # fmt: skip
def test_a_log_that_says_no_sense_undoes_nothing(sitting: Sitting, before: str) -> None:
    was = state(sitting)
    sitting.journal.log("Bean", TODAY, sitting.number, Action("mark", before=before))
    sitting.refresh()
    with pytest.raises(CannotUndo):
        sitting.undo()
    assert state(sitting) == was


def test_what_changed_since_is_not_undone(sitting: Sitting) -> None:
    after = undoing.after_text({"mark": "fluent"}, ("coins/penny",))
    action = Action("mark", before='{"marks": {"0": null}}', after=after)
    sitting.journal.log("Bean", TODAY, sitting.number, action)
    sitting.refresh()
    with pytest.raises(CannotUndo):
        sitting.undo()
    assert sitting.mark_at(0) is Mark.HESITATED


def test_a_mark_comes_back_though_its_level_was_held_back_elsewhere(sitting: Sitting) -> None:
    sitting.back()
    assert sitting.swap() and sitting.mark_at(0) is None
    sitting.desk.hold("make-ten:all", back=True)
    assert sitting.undo() and sitting.mark_at(0) is Mark.HESITATED


# -- two windows


def test_a_mark_is_refused_where_another_window_put_another_prompt(
    sitting: Sitting, home: Path, clock: Clock
) -> None:
    other = window(home, clock)
    shown = other.prompt
    assert sitting.swap()
    for action in (lambda: other.mark(Mark.FLUENT), other.next, other.swap, other.shorten, other.undo):
        with pytest.raises(Changed):
            action()
    again = window(home, clock)
    assert again.prompt and shown and again.prompt.item != shown.item
    assert again.mark_at(1) is None and state(again) == state(sitting)


def test_a_mark_is_refused_where_another_window_stopped(sitting: Sitting, home: Path, clock: Clock) -> None:
    other = window(home, clock)
    other.next()
    other.next()
    sitting = window(home, clock)
    sitting.back()
    sitting.back()
    assert sitting.stop_early()
    with pytest.raises(Changed):
        other.mark(Mark.NOT_YET)
    assert len(window(home, clock).journal.marks_of("Bean", TODAY, 1)) == 1


def test_a_window_that_goes_on_sees_what_the_other_marked(sitting: Sitting, home: Path, clock: Clock) -> None:
    other = window(home, clock)
    sitting.mark(Mark.NOT_YET)
    other.next()
    assert other.mark_at(1) is Mark.NOT_YET and other.position == 2
    other.mark(Mark.FLUENT)
    assert window(home, clock).mark_at(2) is Mark.FLUENT


def test_no_mark_is_made_over_one_that_another_window_made(
    sitting: Sitting, home: Path, clock: Clock
) -> None:
    for _ in range(4):
        sitting.next()
    other = window(home, clock)
    sitting.back()
    sitting.mark(Mark.NOT_YET)
    for action in (other.others_easy, other.toggle_rough, other.undo, other.close):
        with pytest.raises(Changed):
            action()
    assert window(home, clock).mark_at(4) is Mark.NOT_YET and not other.desk.child.held
    assert [mark for mark in (sitting.mark_at(at) for at in (1, 2, 3)) if mark] == []


def test_two_windows_begin_one_sitting(home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> None:
    one, other = desk_at(home, clock), desk_at(home, clock)
    assert one.journal is not None and other.journal is not None
    began: list[Sitting] = []
    real = Desk.routine

    def routine(desk: Desk, *args: dt.date, shape: str = "", sitting: int = 1) -> object:
        # The other window begins after this one has looked for a sitting and before it keeps its own.
        if desk is one and other.journal is not None:
            began.append(begin(other, other.journal, clock))
        return real(desk, *args, shape=shape, sitting=sitting)

    monkeypatch.setattr(Desk, "routine", routine)
    mine = begin(one, one.journal, clock)
    assert [each.number for each in began] == [1] == [mine.number] and mine.routine == began[0].routine
    assert len(one.journal.sittings_of("Bean", TODAY)) == 1


def test_rows_that_are_not_the_routine_s_are_never_marked(sitting: Sitting, home: Path, clock: Clock) -> None:
    import sqlite3

    with sqlite3.connect(home / "journal.db") as db:
        db.execute("UPDATE prompts SET item = 'coins/penny' WHERE position = 3")
    db.close()
    assert resume(sitting.desk, sitting.journal, clock) is None
