"""Several children in one morning: whose turn it is, and that nothing done to one touches another."""

import datetime as dt
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.household import FAMILY, TODAY, StandingClock, context_at
from tests.session.sessions import state
from warmup.config.family import Child, load, year_of
from warmup.engine.giveaways import meet
from warmup.engine.things import things_on
from warmup.journal.journal import Journal
from warmup.journal.watching import Watch
from warmup.model import Mark
from warmup.session.context import open_context
from warmup.session.opening import tells
from warmup.session.session import Session, resume
from warmup.session.together import Together
from warmup.session.whose_turn import in_order

Clock = Callable[[], dt.datetime]
TWINS = FAMILY._replace(children=(Child("Fern", reads=False), Child("Moss", reads=False)), prompts=4)


def together(home: Path, clock: Clock, today: dt.date = TODAY) -> Together:
    """The twins' morning, at its opening."""
    context = context_at(home, clock, TWINS, today)
    assert context.journal is not None
    return Together([context.of(each) for each in in_order(TWINS, today)], context.journal, clock)


def resumed(morning: Together, home: Path) -> Together:
    """The same as another start of the program finds it on disk."""
    clock = morning.at_hand.clock
    journal = Journal.open(home, clock)
    family, today = load(home / "family.toml"), morning.at_hand.morning.date
    context = open_context(morning.at_hand.context.places, family, today, journal)
    return Together([context.of(each) for each in in_order(family, today)], journal, clock)


def names(morning: Together) -> list[str]:
    return [f"{turn.session.context.child.nickname}{turn.position + 1}" for turn in morning.turns]


def at(morning: Together) -> str:
    session = morning.at_hand
    place = "close" if session.at_close else "opening" if session.at_opening else f"{session.position + 1}"
    return f"{session.context.child.nickname} {place}"


def do(morning: Together, work: Callable[[Session], object]) -> None:
    """One key: something is done to the session at hand."""
    work(morning.at_hand)
    morning.settle()


def fluent(session: Session) -> None:
    session.mark(Mark.FLUENT)


@pytest.fixture
def morning(home: Path, clock: Clock) -> Together:
    """The twins at their first prompt."""
    found = together(home, clock)
    do(found, Session.next)
    return found


def test_the_turns_go_round_and_the_opening_is_said_once(home: Path, clock: Clock) -> None:
    morning = together(home, clock)
    first, second = (child.nickname for child in in_order(TWINS, TODAY))
    assert at(morning) == f"{first} opening"
    do(morning, Session.next)
    assert names(morning)[:4] == [f"{first}1", f"{second}1", f"{first}2", f"{second}2"]
    seen = []
    while not morning.at_hand.at_close:
        seen.append(at(morning).replace(" ", ""))
        do(morning, fluent)
    assert seen == names(morning) and len(seen) == 8
    assert all(session.at_close for session in morning.sessions)
    marks = [row.mark for session in morning.sessions for row in session.marks.values()]
    assert marks == [Mark.FLUENT] * 8


def test_who_has_the_first_turn_changes_by_the_day(home: Path, clock: Clock) -> None:
    tomorrow = TODAY + dt.timedelta(1)
    one, two = (together(home, clock, day).at_hand.context.child for day in (TODAY, tomorrow))
    assert {one.nickname, two.nickname} == {"Fern", "Moss"}


def test_the_other_has_not_begun_before_the_opening_is_left(home: Path, clock: Clock) -> None:
    """Only the child at hand is folded on the way to the first frame."""
    morning = together(home, clock)
    assert len(morning.sessions) == 1
    do(morning, Session.next)
    assert len(morning.sessions) == 2


def test_a_prompt_counts_as_shown_only_when_its_turn_comes(morning: Together) -> None:
    first, second = morning.sessions
    assert (first.furthest, second.furthest) == (0, -1)
    do(morning, fluent)
    assert morning.at_hand is second and (first.furthest, second.furthest) == (0, 0)
    do(morning, fluent)
    assert morning.at_hand is first and (first.furthest, second.furthest) == (1, 0)


def test_back_goes_round_as_well_and_from_the_first_turn_to_the_opening(morning: Together) -> None:
    seen = [at(morning)]
    for _ in range(3):
        do(morning, fluent)
        seen.append(at(morning))
    for before in reversed(seen[:-1]):
        morning.back()
        morning.settle()
        assert at(morning) == before
    morning.back()
    morning.settle()
    assert at(morning) == f"{seen[0].split()[0]} opening"
    do(morning, Session.next)
    assert at(morning) == seen[0]
    assert [len(session.marks) for session in morning.sessions] == [2, 1]


def test_back_from_the_close_leads_to_the_last_turn(morning: Together) -> None:
    while not morning.at_hand.at_close:
        do(morning, fluent)
    last = morning.turns[-1]
    morning.back()
    morning.settle()
    assert morning.at_hand is last.session and last.session.position == last.position


def test_undo_takes_back_the_newest_of_either_child_and_goes_to_it(morning: Together) -> None:
    seen = []
    for _ in range(4):
        seen.append(at(morning))
        do(morning, fluent)
    for there in reversed(seen):
        undone = morning.undo()
        morning.settle()
        assert undone and undone.words == "came easily" and at(morning) == there
    assert all(not any(row.mark for row in each.marks.values()) for each in morning.sessions)
    assert morning.undo() is None and not morning.can_undo


def test_what_is_done_for_all_is_undone_at_once(morning: Together) -> None:
    do(morning, fluent)
    morning.all_as_one(Session.toggle_rough)
    assert [session.rough for session in morning.sessions] == [True, True]
    undone = morning.undo()
    assert undone and undone.words == "the rough day"
    assert [session.rough for session in morning.sessions] == [False, False]
    undone = morning.undo()
    assert undone and undone.words == "came easily", "and nothing else with it"


def test_a_child_who_finishes_earlier_has_no_more_turns(morning: Together) -> None:
    first, second = morning.sessions
    do(morning, fluent)
    do(morning, Session.stop_early)
    assert morning.at_hand is second or len(second.prompts) < 4
    while not morning.at_hand.at_close:
        do(morning, fluent)
    assert len(second.prompts) < len(first.prompts) == 4 and first.at_close and second.at_close


def test_a_blurted_one_is_not_asked_and_another_comes_in_its_place(morning: Together) -> None:
    session, other = morning.sessions
    asked, items = session.prompt, other.items
    assert asked is not None
    do(morning, Session.blurted)
    assert morning.at_hand is session and session.prompt is not None
    assert session.prompt.item != asked.item and asked.item not in session.items
    history = session.journal.history(session.context.child.journal_name)
    assert asked.item not in {line.item for line in history}, "it changes no memory"
    assert other.items == items and not other.marks
    undone = morning.undo()
    assert undone and undone.words == "called out"
    assert session.prompt is not None and session.prompt.item == asked.item


def test_where_nothing_else_can_be_asked_the_next_one_moves_up(
    morning: Together, monkeypatch: pytest.MonkeyPatch
) -> None:
    from warmup.session.replacing import Instead

    monkeypatch.setattr(Instead, "others", lambda self, *_: self._routine.prompts)
    session = morning.at_hand
    items = session.items
    do(morning, Session.blurted)
    assert session.items == items[1:] and session.furthest == 0 and not session.marks
    for _ in range(3):
        do(morning, Session.blurted)
        do(morning, fluent)
    assert len(session.prompts) >= 1, "a morning keeps a prompt"


def test_a_blurted_one_before_a_mark_keeps_its_place_where_nothing_else_can_be_asked(
    morning: Together, monkeypatch: pytest.MonkeyPatch
) -> None:
    from warmup.session.replacing import Instead

    for _ in range(3):
        do(morning, fluent)
    morning.go_to_turn(0)
    morning.settle()
    monkeypatch.setattr(Instead, "others", lambda self, *_: self._routine.prompts)
    session = morning.at_hand
    before = state(session)
    assert not session.blurted() and state(session) == before


def test_beside_another_child_nothing_is_asked_or_told_again(home: Path, clock: Clock) -> None:
    """Twins with the same level, on ten mornings: what one is asked nothing of the other's tells or asks."""
    for day in [day for day in year_of(TWINS).mornings if day >= TODAY][:10]:
        morning = together(home, clock, day)
        morning.gather()
        first, second = morning.sessions
        assert len(second.prompts) == 4
        assert not {*first.items} & {*second.items}
        assert not [each.say for each in second.prompts if meet(each, first.prompts)]
        assert not tells(first.routine.opening, second.prompts)


def test_what_a_house_lacks_gives_way_to_nothing_the_other_child_is_asked(home: Path, clock: Clock) -> None:
    for day in year_of(TWINS).mornings[40:56:3]:
        morning = together(home, clock, day)
        morning.gather()
        morning.settle()
        first, second = morning.sessions
        things = [thing.name for each in second.prompts for some in things_on(each.table) for thing in some]
        second.context.editor.change(TWINS._replace(toddler=True, without=tuple(dict.fromkeys(things))))
        second.fit_house()
        assert not {*first.items} & {*second.items}, day


def test_a_second_short_one_is_for_all(morning: Together) -> None:
    contexts = [session.context for session in morning.sessions]
    morning.all_as_one(Session.close)
    again = Together(contexts, morning.at_hand.journal, morning.at_hand.clock, shape="short")
    assert [session.number for session in again.sessions] == [2, 2]
    assert not again.at_hand.at_opening and not again.at_hand.closed


def test_the_child_s_window_follows_the_child_at_hand(morning: Together, home: Path, clock: Clock) -> None:
    """It shows the session that was touched last: whatever is done, that is the one at hand."""
    watch = Watch(home, dt.datetime.combine(TODAY, dt.time(8)))
    ways: list[Callable[[], object]] = [
        lambda: do(morning, fluent),
        lambda: do(morning, Session.next),
        morning.back,
        lambda: do(morning, Session.next_cue),
        morning.undo,
        lambda: morning.go_to_turn(1),
    ]
    for way in ways:
        way()
        morning.settle()
        watch.look(TODAY)
        session = morning.at_hand
        assert watch.found and watch.found.key[0] == session.context.child.journal_name
        assert watch.found.about.position == session.position
        assert watch.found.note is None or watch.found.note.cue == session.cue


# -- anything, in any order

ACTIONS: Mapping[str, Callable[[Together], object]] = {
    "fluent": lambda m: m.at_hand.mark(Mark.FLUENT),
    "hesitated": lambda m: m.at_hand.mark(Mark.HESITATED),
    "not_yet": lambda m: m.at_hand.mark(Mark.NOT_YET),
    "skip": lambda m: m.at_hand.mark(Mark.SKIPPED),
    "next": lambda m: m.at_hand.next(),
    "back": lambda m: m.back(),
    "cue": lambda m: m.at_hand.next_cue(),
    "swap": lambda m: m.at_hand.swap(),
    "another": lambda m: m.at_hand.another(),
    "blurted": lambda m: m.at_hand.blurted(),
    "short": lambda m: m.at_hand.shorten(),
    "stop": lambda m: m.at_hand.stop_early(),
    "first": lambda m: m.go_to_turn(0),
    "own first": lambda m: m.go_to(0),
    "own last": lambda m: m.go_to(9),
    "undo": lambda m: m.undo(),
}
MOVES = {"next", "back", "cue", "first", "own first", "own last"}


def shows(session: Session) -> tuple[object, ...]:
    """The prompts and the marks of a child, as they are on disk."""
    found = resume(session.context, session.journal, session.clock)
    assert found is not None
    marks = {place: row.mark for place, row in found.marks.items() if row.mark}
    return found.items, marks


@settings(max_examples=25)
@given(st.lists(st.sampled_from(sorted(ACTIONS)), max_size=14))
def test_no_action_touches_the_other_child_and_the_morning_comes_back_as_it_was(actions: list[str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        morning = together(home, StandingClock(dt.datetime.combine(TODAY, dt.time(8))))
        do(morning, Session.next)
        for action in actions:
            before = {id(session): shows(session) for session in morning.sessions}
            newest = max(
                ((row.at, id(each)) for each in morning.sessions if (row := each.undoable)), default=("", 0)
            )
            mine = newest[1] if action == "undo" else id(morning.at_hand)
            ACTIONS[action](morning)
            morning.settle()
            changed = {id(each) for each in morning.sessions if shows(each) != before[id(each)]}
            assert changed <= {mine}, action
            assert action not in MOVES or not changed
            now = morning.at_hand
            assert now.at_close or now.at_opening or now.furthest >= now.position
            assert all(
                each is now or each.furthest <= max(each.position, _asked(each)) for each in morning.sessions
            )
        again = resumed(morning, home)
        # That the opening is on screen once more is kept nowhere: its first prompt is at hand then.
        assert morning.at_hand.at_opening or at(again) == at(morning)
        assert [*map(state, again.sessions)] == [*map(state, morning.sessions)]


def _asked(session: Session) -> int:
    """How far a child who went back had come."""
    return session.furthest if session.furthest > session.position else -1
