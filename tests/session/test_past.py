"""Past mornings: shown as they were asked, corrected beside what stood there, and noted; all taken back."""

import datetime as dt
import json
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.household import FAMILY, TODAY, StandingClock, context_at, fixed_routine, lived, start_fixed
from warmup.config.family import year_of
from warmup.engine.memory import fold
from warmup.journal.journal import Changed, Journal, NoteRow
from warmup.journal.routine_json import routine_text, words_in
from warmup.journal.rows import MORNING
from warmup.model import ItemId, Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.on_paper import paper_session
from warmup.session.past import PastMorning, any_kept, earlier_years, kept_mornings, notes_with
from warmup.session.session import Session, resume

Clock = Callable[[], dt.datetime]
DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
DAY = DAYS[-3]
SEVEN, TWENTY = ItemId("make-ten/seven-three"), ItemId("count-on/across-30")
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED


def journal_of(context: Context) -> Journal:
    assert context.journal is not None
    return context.journal


def past(context: Context, date: dt.date = DAY, session: int = 1) -> PastMorning:
    return PastMorning(context, journal_of(context), date, session)


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A family with a morning of two prompts three mornings ago."""
    found = context_at(home, clock)
    lived(found, DAY, {SEVEN: H, TWENTY: F})
    return found


def again(home: Path, clock: Clock) -> PastMorning:
    """The morning as another start of the program finds it."""
    return past(context_at(home, clock))


# -- what it shows


def test_a_morning_is_shown_as_it_was_asked(context: Context) -> None:
    first, second = past(context).lines
    assert (first.item, first.kind, first.went(), first.corrections) == (SEVEN, H, "hesitated", ())
    assert "seven" in first.say and first.answer == "three" and second.kind is F and first.cues == ()


def test_cues_who_marked_and_from_memory_are_told(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    context.marks_by = "Grand[b]ma"
    session = resume(context, journal_of(context), clock)
    assert session is not None
    for _ in range(2):
        session.next_cue()
    session.mark(H)
    context.marks_by = ""
    paper_session(context, journal_of(context), clock, TODAY).put({1: N, 2: S})
    lines = past(context, TODAY).lines
    assert [line.went() for line in lines] == [
        "hesitated, with cue 2, Grand[b]ma", "not yet, from memory", "left, from memory", *["not asked"] * 2
    ]  # fmt: skip
    assert lines[0].cues == tuple(cue.text for cue in fixed_routine().prompts[0].cues[:2])


ODD = {
    "an item that is gone": lambda data: data["prompts"][0].update(item="juggle/three", skill="juggle"),
    "a picture that is gone": lambda data: data["prompts"][0].update(picture={"kind": "hologram"}),
}


@pytest.mark.parametrize("kind", ODD)
def test_what_this_version_does_not_know_is_shown_as_it_was_asked(
    home: Path, clock: Clock, context: Context, kind: str
) -> None:
    say = past(context).lines[0].say
    path = journal_of(context).path
    journal_of(context).shut()
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        data = json.loads(db.execute("SELECT routine FROM sittings").fetchone()[0])
        ODD[kind](data)
        db.execute("UPDATE sittings SET routine = ?", (json.dumps(data),))
        db.execute("UPDATE prompts SET item = ? WHERE position = 0", (data["prompts"][0]["item"],))
    morning = again(home, clock)
    assert morning.lines[0].say == say and morning.lines[0].answer == "three"
    assert morning.correct(0, F) and morning.lines[0].kind is F


@pytest.mark.parametrize(
    "routine", ["", "{}", "[" * 5000, '{"prompts": 7}', '{"prompts": [7, {"item": "x"}]}']
)
def test_where_the_words_can_t_be_read_the_item_is_named(
    home: Path, clock: Clock, context: Context, routine: str
) -> None:
    path = journal_of(context).path
    journal_of(context).shut()
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("UPDATE sittings SET routine = ?", (routine,))
        db.execute("UPDATE prompts SET item = 'juggle/' || char(27) || '[31mthree' WHERE position = 0")
    morning = again(home, clock)
    assert [line.say for line in morning.lines] == ["juggle/[31mthree", TWENTY]
    assert morning.correct(1, N) and morning.write(0, "With oranges.") and morning.undo()


def test_words_of_another_prompt_are_not_put_on_one(home: Path, clock: Clock, context: Context) -> None:
    path = journal_of(context).path
    journal_of(context).shut()
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("UPDATE prompts SET item = 'month/this' WHERE position = 0")
    assert again(home, clock).lines[0].say == "month/this"


def test_what_a_prompt_was_corrected_from_is_not_told_of_the_one_in_its_place(session: Session) -> None:
    session.mark(H)
    session.back()
    session.mark(F)
    (correction,) = past(session.context, TODAY).lines[0].corrections
    assert correction.words() == "corrected on March 3: was hesitated", "also within the morning"
    session.back()
    assert session.swap() and past(session.context, TODAY).lines[0].corrections == ()


def test_words_are_those_of_the_routine_and_harmless() -> None:
    routine = fixed_routine()
    said = words_in(routine_text(routine))
    assert [(each.item, each.say, each.answer, len(each.cues)) for each in said if each] == [
        (prompt.item, prompt.say, prompt.answer, 3) for prompt in routine.prompts
    ]
    (words,) = words_in(
        routine_text(routine._replace(prompts=(routine.prompts[0]._replace(say="a\x1b[31m\nb"),)))
    )
    assert words is not None and words.say == "a[31m b"


# -- corrected


def test_a_correction_keeps_beside_it_what_stood_there(home: Path, clock: Clock, context: Context) -> None:
    morning = past(context)
    assert not morning.correct(0, H), "it has that one"
    assert morning.correct(0, F)
    (correction,) = again(home, clock).lines[0].corrections
    assert correction.words() == "corrected on March 3: was hesitated"
    row = morning.lines[0].mark
    assert row is not None and (row.mark, row.from_memory) == (F, False), "the adult’s slip, not the child’s"
    assert morning.correct(0, None) and morning.lines[0].went() == "no mark"
    assert [each.words() for each in morning.lines[0].corrections] == [
        "corrected on March 3: was hesitated", "corrected on March 3: was came easily"
    ]  # fmt: skip
    assert morning.correct(0, N)
    row = morning.lines[0].mark
    assert row is not None and row.from_memory, "where there was no mark it is from memory"
    assert morning.lines[0].corrections[-1].words() == "corrected on March 3: had no mark"


def test_corrections_are_taken_back_one_by_one_and_nothing_else(
    home: Path, clock: Clock, context: Context
) -> None:
    morning, first = past(context), past(context).lines
    morning.correct(0, F), morning.correct(1, N)
    undone = again(home, clock).undo()
    assert undone and undone.words == "not yet"
    morning = again(home, clock)
    undone = morning.undo()
    assert undone and undone.words == "came easily"
    assert [(line.kind, line.corrections) for line in morning.lines] == [(line.kind, ()) for line in first]
    assert morning.undo() is None


def test_the_morning_s_own_marks_are_not_taken_back_here(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    paper_session(context, journal_of(context), clock, DAY).put({0: H})
    assert past(context).undo() is None and past(context).lines[0].kind is H


def test_a_correction_is_taken_back_as_any_action_is(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    paper_session(context, journal_of(context), clock, DAY).put({0: H})
    past(context).correct(0, F), past(context).write(0, "Six."), past(context).write(MORNING, "Early.")
    session = paper_session(context, journal_of(context), clock, DAY)
    words = [undone.words if (undone := session.undo()) else "" for _ in range(3)]
    assert words == ["the note", "the note", "came easily"] and session.mark_at(0) is H
    assert past(context).note is None and past(context).lines[0].note is None


def test_a_correction_changes_what_memory_holds(home: Path, clock: Clock, context: Context) -> None:
    before = context.knowledge().of(SEVEN)
    past(context).correct(0, N)
    after = context.knowledge().of(SEVEN)
    assert before.mark is H and after.mark is N
    whole = context_at(home, clock)
    assert fold(whole.curriculum(), whole.history()).of(SEVEN) == after
    past(context).undo()
    assert context.knowledge().of(SEVEN) == before


def test_what_another_window_changed_is_not_written_over(
    home: Path, clock: StandingClock, context: Context
) -> None:
    mine, other = past(context), again(home, clock)
    other.correct(0, N)
    for change in (
        lambda: mine.correct(0, F), lambda: mine.write(0, "Six."), lambda: mine.write(MORNING, "6"), mine.undo
    ):  # fmt: skip
        with pytest.raises(Changed):
            change()
    mine.read()
    assert mine.lines[0].kind is N and mine.correct(0, F)


# -- notes


def test_a_note_is_kept_shared_and_taken_back(home: Path, clock: Clock, context: Context) -> None:
    context.marks_by = "Jo"
    morning = past(context)
    assert morning.share(0) is None and not morning.write(0, " \x1b ")
    assert morning.write(0, "Like \x1b[1m an\negg carton.") and not morning.write(
        0, "Like [1m an egg carton."
    )
    note = again(home, clock).lines[0].note
    assert note is not None and note[:3] == ("Like [1m an egg carton.", False, "Jo"), "shared only if ticked"
    assert morning.share(0) is True and morning.write(0, "Like an egg carton.")
    note = again(home, clock).lines[0].note
    assert note is not None and note.shared, "another text leaves the tick"
    assert morning.share(0) is False and morning.write(0, "") and morning.lines[0].note is None
    texts: list[tuple[str, bool] | None] = []
    while morning.undo():
        note = morning.lines[0].note
        texts.append((note.text[:7], note.shared) if note else None)
    assert texts == [("Like an", False), ("Like an", True), ("Like [1", True), ("Like [1", False), None]


def test_a_note_in_the_morning_is_on_the_prompt_or_on_the_morning(
    session: Session, home: Path, clock: Clock
) -> None:
    assert session.note("Three more make ten!") and not session.note("Three more make ten!")
    session.mark(F)
    while not session.at_close:
        session.next()
    assert session.note("Slept well.") and session.at_close
    found = past(context_at(home, clock), TODAY)
    assert found.lines[0].note and found.lines[0].note.text == "Three more make ten!"
    assert found.note and found.note.text == "Slept well."
    undone = session.undo()
    assert undone and undone.words == "the note" and session.at_close and session.note_at(MORNING) is None
    assert session.undo() and session.undo() and session.note_at(0) is None and not session.undo()


def test_a_note_on_a_prompt_that_gives_way_comes_back_with_it(session: Session) -> None:
    session.note("Is it seven already?")
    item = session.prompts[0].item
    assert session.swap()
    lines = past(session.context, TODAY).lines
    assert lines[0].note is None and (lines[-1].item, lines[-1].note and lines[-1].note.text) == (
        item, "Is it seven already?"
    )  # fmt: skip
    assert session.undo() and session.note_at(0) is not None
    assert len(past(session.context, TODAY).lines) == len(session.prompts)


@settings(max_examples=40)
@given(
    steps=st.lists(
        st.tuples(st.sampled_from([MORNING, 0, 1]), st.sampled_from(["F", "N", "", "a", "b", "share"]))
    )
)
def test_whatever_was_done_undo_walks_all_the_way_back(
    tmp_path_factory: pytest.TempPathFactory, steps: list[tuple[int, str]]
) -> None:
    """Marks, notes and ticks in any order: each undo brings back the state before, row for row."""
    context = context_at(tmp_path_factory.mktemp("past"), StandingClock(dt.datetime(2027, 3, 3, 8)))
    lived(context, DAY, {SEVEN: H, TWENTY: F})
    morning = past(context)

    def state() -> list[object]:
        rows: list[NoteRow | None] = [morning.note, *(line.note for line in morning.lines)]
        notes = [note and note[:2] for note in rows]
        return [*notes, *((line.kind, len(line.corrections)) for line in morning.lines)]

    states = []
    for position, step in steps:
        before = state()
        match step:
            case "F" | "N":
                done = position != MORNING and morning.correct(position, F if step == "F" else N)
            case "share":
                done = morning.share(position) is not None
            case _:
                done = morning.write(position, step)
        states += [before] if done else []
    for was in reversed(states):
        assert morning.undo() and state() == was
    assert morning.undo() is None
    journal_of(context).shut()


# -- the list, and the search


def test_the_list_has_every_session_before_today_the_latest_first(context: Context) -> None:
    lived(context, DAYS[-1], {SEVEN: F, TWENTY: N})
    lived(context, DAYS[-1], {SEVEN: S})
    lived(context, dt.date(2026, 3, 3), {SEVEN: F})
    start_fixed(context)
    past(context).write(0, "Six.")
    assert [each[:1] + each[2:] for each in kept_mornings(context, journal_of(context))] == [
        (DAYS[-1], 1, 27, (S,), 0), (DAYS[-1], 0, 27, (F, N), 0), (DAY, 0, 26, (H, F), 1),
        (dt.date(2026, 3, 3), 0, None, (F,), 0),
    ]  # fmt: skip


def test_the_years_before_are_left_out_unless_this_one_has_nothing(context: Context) -> None:
    journal = journal_of(context)
    lived(context, dt.date(2026, 3, 3), {SEVEN: F})
    assert [each.date for each in kept_mornings(context, journal, years=False)] == [DAY]
    assert earlier_years(context, journal) and any_kept(context, journal)
    first = context.as_of(dt.date(2026, 9, 1))
    assert [each.date.year for each in kept_mornings(first, journal, years=False)] == [2026]
    assert not earlier_years(first, journal) and not any_kept(first.as_of(dt.date(2026, 3, 3)), journal)


def test_what_showed_nothing_is_no_past_morning(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    paper_session(context, journal_of(context), clock, DAY)
    assert kept_mornings(context, journal_of(context)) == ()
    past(context).write(MORNING, "We were at the lake.")
    (kept,) = kept_mornings(context, journal_of(context))
    assert kept.marks == () and kept.notes == 1


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ([], 3), (["EGG"], 2), (["egg", "carton"], 1), (["carton egg"], 1), (["egg", "six"], 0),
        (["straße"], 1), (["STRASSE"], 1), ([""], 3),
    ],
)  # fmt: skip
def test_notes_are_found_by_all_words_in_whatever_case(
    context: Context, words: list[str], found: int
) -> None:
    """Folded as Unicode folds: ``ß`` and ``SS`` are one (Unicode Standard, 5.18, case folding)."""
    past(context).write(0, "Like an Egg carton.")
    past(context).write(1, "egg!")
    past(context).write(MORNING, "Walked down our Straße.")
    notes = list(notes_with(context, journal_of(context), words))
    assert len(notes) == found
    assert all(each.date == DAY and each.note.text for each in notes)
    if len(notes) == 3:
        assert notes[0].say == "" and "seven" in notes[1].say


def test_of_several_days_the_latest_note_comes_first_and_a_note_taken_back_never(context: Context) -> None:
    lived(context, DAYS[-1], {SEVEN: F})
    past(context).write(0, "Old.")
    past(context, DAYS[-1]).write(0, "New.")
    past(context).write(1, "Gone."), past(context).undo()
    start_fixed(context)
    past(context, TODAY).write(MORNING, "Just now.")
    assert [each.note.text for each in notes_with(context, journal_of(context), [])] == [
        "Just now.", "New.", "Old."
    ]  # fmt: skip
    assert undoing.words(journal_of(context).actions_of("Bean", DAY)[0]) == "the note"
