"""Past mornings and notes on screen: looked at, corrected, written, undone, by keyboard and by mouse."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from tests.household import FAMILY, OPENING, TODAY, StandingClock, context_at, lived, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import year_of
from warmup.journal.rows import LONGEST_NOTE, MORNING
from warmup.model import Mark
from warmup.session.context import Context
from warmup.session.past import PastMorning
from warmup.session.session import resume
from warmup.tui.app import WarmupApp
from warmup.tui.help import HelpScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.mornings import MorningsScreen
from warmup.tui.note import NoteScreen
from warmup.tui.past_morning import PastMorningScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
LAST = DAYS[-1]
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
SEVEN = "make-ten/seven-three"
SAID = "Like an [b]egg carton[/b]!"


def past(context: Context, date: dt.date = LAST, session: int = 1) -> PastMorning:
    assert context.journal is not None
    return PastMorning(context, context.journal, date, session)


def program(home: Path, clock: Clock, mornings: int = 6) -> WarmupApp:
    """The program on the fixed morning, with the last planned mornings lived."""
    context = context_at(home, clock)
    for number, day in enumerate(DAYS[-mornings:]):
        lived(context, day, {SEVEN: [F, H, N, S][number % 4], "weekday/today": F, "month/this": F})
    lived(context, LAST, {"by-tens/to-50": F})
    past(context).correct(0, N)
    past(context).write(0, SAID)
    past(context, DAYS[-2]).write(MORNING, "Slept badly.")
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def to_the_list(pilot: Pilot[int]) -> None:
    await press(pilot)
    assert isinstance(pilot.app, WarmupApp)
    pilot.app.action_do("mornings")
    await press(pilot)
    assert isinstance(pilot.app.screen, MorningsScreen)


async def to_the_last(pilot: Pilot[int]) -> None:
    """The first session of the last morning before today."""
    await to_the_list(pilot)
    await press(pilot, "down", "enter")
    assert isinstance(pilot.app.screen, PastMorningScreen)


def marks(app: WarmupApp) -> list[Mark | None]:
    rows = app.journal.marks_of("Bean", LAST, 1)
    return [rows[at].mark for at in range(3)]


def cursor(app: WarmupApp) -> int | None:
    return app.screen.query_one(OptionList).highlighted


def flat(app: WarmupApp) -> str:
    return " ".join(frame(app).split())


async def click(pilot: Pilot[int], text: str) -> None:
    assert isinstance(pilot.app, WarmupApp)
    rows = frame(pilot.app).splitlines()
    row = next(at for at, line in enumerate(rows) if text in line)
    await pilot.click(offset=(rows[row].index(text) + 1, row))
    await press(pilot)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_what_they_show(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    name = f"{size[0]}x{size[1]}"
    app = program(home, clock)
    async with app.run_test(size=size) as pilot:
        await to_the_list(pilot)
        golden(f"mornings-{name}", frame(app))
        await press(pilot, "down", "enter")
        golden(f"past-morning-{name}", frame(app))
        await press(pilot, "7")
        golden(f"note-{name}", frame(app))


async def test_a_correction_is_on_disk_told_and_undone(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_last(pilot)
        assert "Not yet; corrected on March 3: was hesitated" in flat(app) and cursor(app) == 0
        for key, mark in (("w", F), ("up", F), ("s", H), ("down", H), ("x", N), ("n", N)):
            await press(pilot, "a", "a", "a", key)
            assert marks(app)[0] is mark and cursor(app) == 1
            await press(pilot, "left")
        await press(pilot, "minus", "c", "full_stop")
        assert marks(app) == [S, S, None] and cursor(app) == 3
        await press(pilot, "w")
        assert "it has no mark" in flat(app)
        await press(pilot, "u", "z", "u")
        assert marks(app) == [N, F, F] and "Undone: left for today." in flat(app)
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningsScreen) and "○●●" in frame(app)


async def test_the_list_has_what_was_changed_and_goes_back_to_the_morning(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_last(pilot)
        await press(pilot, "w", "escape")
        assert isinstance(app.screen, MorningsScreen) and cursor(app) == 1
        assert "●●●" in frame(app).splitlines()[4]
        await press(pilot, "question_mark")
        assert isinstance(app.screen, HelpScreen) and "Keys of past mornings" in frame(app)
        await press(pilot, "escape", "escape")
        assert isinstance(app.screen, MorningScreen) and morning(app).session is not None


async def test_a_note_is_written_ticked_and_taken_away(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_last(pilot)
        await press(pilot, "y")
        assert "The note may go into reports." in flat(app) and f"Note, in reports: {SAID}" in flat(app)
        await press(pilot, "6")
        assert "The note stays with you." in flat(app)
        await press(pilot, "d", "y")
        assert "There is no note here." in flat(app)
        await press(pilot, "5", *"qk u")
        assert isinstance(app.screen, NoteScreen) and app.screen.query_one(Input).value == "qk u"
        await press(pilot, "enter")
        assert "Noted." in flat(app) and "Note: qk u" in flat(app) and cursor(app) == 1
        await press(pilot, "a", "7", *["backspace"] * len(SAID), "enter")
        assert "The note is taken away." in flat(app) and SAID not in flat(app)
        await press(pilot, "u")
        assert "Undone: the note." in flat(app) and SAID in flat(app)
        await press(pilot, "7", "x", "escape")
        assert SAID in flat(app) and isinstance(app.screen, PastMorningScreen), "left as it was"
        await press(pilot, "d", "d", "d", "7", *"hi", "enter")
        assert "The morning as a whole Note: hi" in flat(app)
    note = past(context_at(home, clock)).note
    assert note is not None and note.text == "hi"


async def test_what_another_window_did_stands_there_and_a_typed_note_is_not_lost(
    home: Path, clock: StandingClock
) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_last(pilot)
        past(context_at(home, clock)).correct(0, F)
        await press(pilot, "s")
        assert "Changed in another window" in flat(app) and marks(app)[0] is F and cursor(app) == 0
        await press(pilot, "d", "7", *"six")
        past(context_at(home, clock)).correct(2, H)
        await press(pilot, "enter")
        assert isinstance(app.screen, NoteScreen) and app.screen.query_one(Input).value == "six"
        await press(pilot, "enter")
        assert "Note: six" in flat(app) and marks(app) == [F, F, H]


async def test_the_mouse_alone_opens_corrects_and_ends_it(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_list(pilot)
        await click(pilot, "○●●")
        assert isinstance(app.screen, PastMorningScreen)
        await click(pilot, " 2 ●")
        assert cursor(app) == 1
        await click(pilot, "n not yet")
        assert marks(app) == [N, N, F]
        await click(pilot, "a note")
        await press(pilot, *"hm")
        await click(pilot, "keep it")
        assert "Note: hm" in flat(app)
        await click(pilot, "undo")
        await click(pilot, "undo")
        assert marks(app) == [N, F, F]
        await click(pilot, "Bksp back")
        assert isinstance(app.screen, MorningsScreen)


async def test_in_the_morning_one_key_writes_a_note_on_what_is_on_screen(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "7", *"tired", "enter")
        assert isinstance(app.screen, MorningScreen) and "Noted." in flat(app)
        await press(pilot, "right", "5")
        assert "The ten frame has seven" in flat(app)
        await press(pilot, *SAID, "enter", "w", "7", "escape", "u")
        await press(pilot, "5")
        assert app.screen.query_one(Input).value == SAID, "it opens with what is there"
        await press(pilot, "escape")
        session = morning(app).session
        assert session is not None and session.position == 0
        note, whole = session.note_at(0), session.note_at(MORNING)
        assert note and note.text == SAID and whole and whole.text == "tired" and not note.shared
        await press(pilot, "u", "u")
        assert (
            "Undone: the note." in flat(app)
            and session.note_at(0) is None
            and session.note_at(MORNING) is None
        )


async def test_a_note_in_the_morning_is_not_lost_to_another_window(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "7", *"six")
        other = context_at(home, clock)
        assert other.journal is not None
        session = resume(other, other.journal, clock)
        assert session is not None
        session.mark(F)
        await press(pilot, "enter")
        assert isinstance(app.screen, NoteScreen) and app.screen.query_one(Input).value == "six"
        assert "Start at twenty-eight" in flat(app), "the prompt that is on screen now"
        await press(pilot, "enter")
        assert "Noted." in flat(app)
    session = resume(other, other.journal, clock)
    note = session.note_at(1) if session else None
    assert note is not None and note.text == "six"


async def test_a_note_that_is_longer_than_its_line_shows_its_end(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(60, 20)) as pilot:
        await press(
            pilot, "7", *"and so it goes on and on until it comes to the very last ten words", "enter"
        )
        await press(pilot, "7")
        assert "the very last ten words" in flat(app)


async def test_no_more_than_400_characters_can_be_typed(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "7")
        app.screen.query_one(Input).insert_text_at_cursor("x" * 500)
        app.screen.query_one(Input).value = "x" * 500
        await press(pilot, "enter")
        session = morning(app).session
        note = session.note_at(0) if session else None
        assert note is not None and len(note.text) == LONGEST_NOTE


async def test_before_the_first_morning_there_is_none(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("mornings")
        await press(pilot)
        assert isinstance(app.screen, MorningScreen) and "No warm-up is kept from before today." in flat(app)


async def test_the_years_before_come_below_once_they_are_asked_for(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    lived(app.context, DAYS[0] - dt.timedelta(200), {SEVEN: F})
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_list(pilot)
        rows = app.screen.query_one(OptionList)
        shown = rows.option_count - 1
        assert "the years before" in frame(app) and "February 12" not in frame(app)
        rows.highlighted = shown
        await press(pilot, "enter")
        assert isinstance(app.screen, MorningsScreen), "nothing was opened"
        assert rows.option_count == shown + 1 and rows.highlighted == shown
        assert "the years before" not in frame(app) and "February 12" in frame(app)
