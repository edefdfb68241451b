"""A morning on paper: the prompts it had, its letters typed back, and what its marks do afterward."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.household import FAMILY, TODAY, StandingClock, context_at, lived
from warmup.config.family import load, year_of
from warmup.engine.memory import fold
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.on_paper import (
    LETTERS,
    PaperSession,
    Unread,
    can_count,
    count,
    kept_today,
    not_kept,
    paper_session,
    past_mornings,
    read_letters,
    routine_on,
)
from warmup.session.session import begin, resume
from warmup.session.stored import stored
from warmup.text import clean

Clock = Callable[[], dt.datetime]
DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
BEFORE, DAY = DAYS[-5], DAYS[-4]
SUNDAY = dt.date(2027, 2, 28)
SEVEN = "make-ten/seven-three"


def journal_of(context: Context) -> Journal:
    assert context.journal is not None
    return context.journal


def paper(context: Context, clock: Clock, date: dt.date = DAY) -> PaperSession:
    return paper_session(context, journal_of(context), clock, date)


def on_disk(home: Path, clock: StandingClock, date: dt.date = DAY) -> list[Mark | None]:
    """The marks of a date as another start of the program finds them."""
    context = context_at(home, clock, load(home / "family.toml"))
    (found,) = stored(journal_of(context), "Bean", date)
    rows = journal_of(context).marks_of("Bean", date, found[0].session)
    return [rows[at].mark if at in rows else None for at in range(len(found[1].prompts))]


# -- letters


@given(st.lists(st.sampled_from(sorted(LETTERS)), max_size=10), st.data())
def test_any_line_of_letters_gives_exactly_its_marks(letters: list[str], data: st.DataObject) -> None:
    """Spaces anywhere, capitals or not, and as many prompts as letters or more."""
    spaces = data.draw(st.lists(st.text(" \t", max_size=2), min_size=len(letters), max_size=len(letters)))
    upper = data.draw(st.booleans())
    line = "".join(map("".join, zip(spaces, letters, strict=True)))
    marks = read_letters(line.upper() if upper else line, len(letters) + data.draw(st.integers(0, 3)))
    assert [marks.get(at) for at in range(len(letters))] == [LETTERS[letter] for letter in letters]
    assert set(marks) <= set(range(len(letters)))


@given(st.text(max_size=60), st.integers(0, 10))
def test_any_other_line_gets_a_sentence_on_one_line(line: str, prompts: int) -> None:
    try:
        marks = read_letters(line, prompts)
    except Unread as unread:
        said = str(unread)
        assert clean(said) == said and said.endswith(".") and len(said) < 300
    else:
        assert all(0 <= at < prompts for at in marks)


def test_a_letter_that_only_folds_into_two_is_none() -> None:
    with pytest.raises(Unread, match="Letter 1"):
        read_letters("ß", 4)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("wwxw", 'Letter 3 of "wwxw" is "x"; there is w came easily'),
        ("w w ?", 'Letter 3 of "w w ?" is "?"'),
        ("wwwww", '"wwwww" has 5 letters for 4 prompts; letter 5 is one too many.'),
    ],
)
def test_a_line_that_can_t_be_taken_says_where(line: str, says: str) -> None:
    with pytest.raises(Unread) as caught:
        read_letters(line, 4)
    assert str(caught.value).startswith(says)


# -- which prompts


def test_a_date_without_a_session_has_the_routine_of_that_morning(home: Path, clock: StandingClock) -> None:
    """What came after that morning changes nothing of it; what came before does."""
    context = context_at(home, clock)
    lived(context, BEFORE, {SEVEN: Mark.NOT_YET})
    then = context_at(home, clock, today=DAY).routine()
    clock.turn_to(TODAY)
    assert routine_on(context, DAY) == then
    lived(context, DAYS[-2], {SEVEN: Mark.FLUENT})
    assert routine_on(context, DAY) == then
    assert paper(context, clock).routine == then
    assert routine_on(context, DAY) == then, "and it is kept now"


def test_today_s_brief_is_what_the_program_then_asks(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    assert not_kept(context) == ""
    printed = kept_today(context, journal_of(context))
    again = context_at(home, clock)
    assert kept_today(again, journal_of(again)) == printed
    session = resume(again, journal_of(again), clock)
    assert session is not None and session.routine == printed
    assert session.at_opening and session.furthest < 0
    assert again.history() == () and not journal_of(again).dates_of("Bean"), "nothing was asked yet"


def test_a_brief_without_an_opening_has_shown_no_prompt_either(
    home: Path, clock: StandingClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    context = context_at(home, clock)
    bare = context.routine()._replace(opening=None)
    monkeypatch.setattr(Context, "routine", lambda *_, **__: bare)
    assert kept_today(context, journal_of(context)) == bare
    assert context.history() == () and not journal_of(context).dates_of("Bean")


def test_marks_made_between_printing_and_typing_shift_nothing(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    printed = kept_today(context, journal_of(context))
    paper(context, clock, BEFORE).put({0: Mark.NOT_YET, 1: Mark.NOT_YET})
    lived(context, DAYS[-2], {item.item: Mark.NOT_YET for item in printed.prompts})
    clock.turn_to(TODAY + dt.timedelta(1))
    tomorrow = context_at(home, clock, today=TODAY + dt.timedelta(1))
    begin(tomorrow, journal_of(tomorrow), clock).mark(Mark.HESITATED)
    session = paper(tomorrow, clock, TODAY)
    assert session.routine == printed
    session.put(read_letters("wsn-", len(printed.prompts)))
    marks = [line.mark for line in tomorrow.history() if line.date == TODAY]
    assert marks == [Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED]


def test_it_is_not_kept_where_something_is_to_be_asked_first(home: Path, clock: StandingClock) -> None:
    away = context_at(home, clock, FAMILY._replace(known_until=DAYS[-3]))
    assert "mornings without a warm-up" in not_kept(away)
    assert "no school day" in not_kept(context_at(home, clock, today=SUNDAY))
    # Said to be just for fun: that morning is kept, and the paper of it as well.
    opened = context_at(home, clock, today=SUNDAY)
    assert opened.journal is not None
    kept_today(opened, opened.journal)
    assert not_kept(opened) == ""


# -- its marks


def test_they_are_from_memory_by_that_adult_and_half(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    context.marks_by = "Grandma"
    session = paper(context, clock)
    session.put({0: Mark.FLUENT, 2: Mark.NOT_YET})
    rows = journal_of(context).marks_of("Bean", DAY, session.number)
    assert {at: (row.mark, row.adult, row.from_memory, row.cue) for at, row in rows.items()} == {
        0: (Mark.FLUENT, "Grandma", True, 0),
        2: (Mark.NOT_YET, "Grandma", True, 0),
    }
    shown = [line for line in context.history() if line.date == DAY]
    assert [line.mark for line in shown] == [Mark.FLUENT, None, Mark.NOT_YET]
    assert [line.from_memory for line in shown] == [True, False, True]
    assert fold(context.curriculum(), shown).of(shown[2].item).misses == 0.5
    (row,) = journal_of(context).sessions_of("Bean", DAY)
    assert row.closed and row.furthest == 2


def test_a_morning_on_paper_is_held_and_one_without_marks_is_not(home: Path, clock: StandingClock) -> None:
    away = FAMILY._replace(known_until=DAYS[-6])
    context = context_at(home, clock, away)
    assert context.unconfirmed_days() == tuple(DAYS[-5:])
    session = paper(context, clock)
    assert DAY in context.unconfirmed_days()
    session.put({1: Mark.FLUENT})
    assert DAY not in context.unconfirmed_days() and BEFORE in context.unconfirmed_days()
    session.undo()
    assert DAY in context.unconfirmed_days(), "undone, nobody has said of it that it was school"


@settings(max_examples=25)
@given(st.data())
def test_typing_and_undo_leave_it_as_it_was(
    tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    home, clock = tmp_path_factory.mktemp("paper"), StandingClock(dt.datetime.combine(TODAY, dt.time(8)))
    context = context_at(home, clock)
    session = paper(context, clock)
    some = st.dictionaries(st.integers(0, 7), st.sampled_from([*Mark]), min_size=1)
    first, second = data.draw(some), data.draw(some)
    session.put(first)
    once = on_disk(home, clock)
    assert once == [first.get(at) for at in range(8)]
    (row,) = journal_of(context).sessions_of("Bean", DAY)
    session.put(second)
    assert on_disk(home, clock) == [{**first, **second}.get(at) for at in range(8)]
    undone = paper(context_at(home, clock), clock).undo()
    assert undone is not None and undone.what == undoing.PAPER and undone.words == "the marks from paper"
    assert on_disk(home, clock) == once and journal_of(context).sessions_of("Bean", DAY) == [row]
    paper(context_at(home, clock), clock).undo()
    assert on_disk(home, clock) == [None] * 8
    (row,) = journal_of(context).sessions_of("Bean", DAY)
    assert (row.position, row.furthest, row.closed) == (0, -1, False)


def test_today_goes_on_after_what_was_typed_and_is_over_when_all_is(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    session = paper(context, clock, TODAY)
    session.put({0: Mark.FLUENT, 1: Mark.HESITATED})
    found = resume(context, journal_of(context), clock)
    assert found is not None and (found.position, found.closed) == (2, False)
    paper(context, clock, TODAY).put(dict.fromkeys(range(2, len(session.prompts)), Mark.FLUENT))
    found = resume(context, journal_of(context), clock)
    assert found is not None and found.at_close and found.closed
    assert not found.marks[0].at > found.marks[2].at and all(row.from_memory for row in found.marks.values())


def test_a_mark_on_the_screen_afterward_is_no_longer_from_memory(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    paper(context, clock, TODAY).put({0: Mark.FLUENT})
    found = resume(context, journal_of(context), clock)
    assert found is not None
    found.mark(Mark.FLUENT)
    assert [found.marks[at].from_memory for at in (0, 1)] == [True, False]


# -- a day that was not planned


def test_a_sunday_can_count_and_that_is_undone_by_itself(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    assert can_count(context, SUNDAY) and not can_count(context, DAY)
    count(context, journal_of(context), SUNDAY)
    assert load(home / "family.toml").extra == (SUNDAY,) and not can_count(context, SUNDAY)
    session = paper(context, clock, SUNDAY)
    assert session.morning.is_school
    session.put({0: Mark.FLUENT})
    assert [undone.words for undone in iter(session.undo, None)] == [
        "the marks from paper",
        "it counts as a school day",
    ]
    assert load(home / "family.toml").extra == ()


def test_the_last_mornings_with_their_marks(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    paper(context, clock, DAYS[-1]).put({0: Mark.FLUENT, 3: Mark.SKIPPED})
    assert past_mornings(context) == ((DAYS[-1], 2), *((day, 0) for day in DAYS[-2:-9:-1]))
    assert past_mornings(context_at(home, clock, today=FAMILY.first_day)) == ()
