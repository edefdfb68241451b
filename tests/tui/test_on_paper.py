"""The page of a morning on paper: a key a mark, on disk at once, by keyboard alone and by mouse alone."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import OptionList

from tests.household import FAMILY, TODAY, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import load, year_of
from warmup.model import Mark
from warmup.session.on_paper import paper_session
from warmup.tui.app import WarmupApp
from warmup.tui.help import HelpScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.on_paper import PaperApp, PaperScreen
from warmup.tui.past import PastScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
DAY = max(day for day in year_of(FAMILY).mornings if day < TODAY)
SUNDAY = dt.date(2027, 2, 28)
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED


def program(home: Path, clock: Clock, date: dt.date = DAY) -> PaperApp:
    context = context_at(home, clock)
    assert context.journal is not None
    return PaperApp(context, context.journal, clock, date)


def marks(app: WarmupApp, date: dt.date = DAY) -> list[Mark | None]:
    """Those on disk, of eight."""
    rows = app.journal.marks_of("Bean", date, 1)
    return [rows[at].mark if at in rows else None for at in range(8)]


def cursor(app: WarmupApp) -> int | None:
    return app.screen.query_one(OptionList).highlighted


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_what_it_shows(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    name = f"{size[0]}x{size[1]}"
    app = program(home, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot, "w", "s", "n", "minus")
        golden(f"on-paper-{name}", frame(app))
    app = program(home, clock, SUNDAY)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"on-paper-sunday-{name}", frame(app))


@pytest.mark.parametrize(
    "keys",
    [["w", "s", "n", "minus", "full_stop"], ["j", "k", "n", "minus", "full_stop"], ["w", "s", "x", "c", "v"]],
)
async def test_each_letter_marks_and_goes_on(home: Path, clock: Clock, keys: list[str]) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        for at, key in enumerate(keys):
            assert cursor(app) == at
            await press(pilot, key)
            assert marks(app)[: at + 1] == [F, H, N, S, None][: at + 1], "on disk before the next row"
        await press(pilot, "enter")
    assert app.return_code == 0
    rows = app.journal.marks_of("Bean", DAY, 1)
    assert all(rows[at].from_memory for at in range(4))
    (session,) = app.journal.sessions_of("Bean", DAY)
    assert session.closed


async def test_up_down_a_mark_over_another_and_undo_to_its_row(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "w", "w", "up", "up", "up", "n")
        assert marks(app)[:2] == [N, F] and cursor(app) == 1
        await press(pilot, "down", "down", "r", "f", "u")
        assert marks(app)[:2] == [F, F] and cursor(app) == 0 and "Undone: not yet." in frame(app)
        await press(pilot, "z", "u", "u")
        assert marks(app) == [None] * 8 and "Nothing to undo." in frame(app)


async def test_it_begins_at_the_first_without_a_mark(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    paper_session(app.context, app.journal, clock, DAY).put({0: F, 1: H, 3: F})
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert cursor(app) == 2


async def test_the_mouse_alone_marks_and_ends_it(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)

        async def click(text: str) -> None:
            rows = frame(app).splitlines()
            row = next(at for at, line in enumerate(rows) if text in line)
            await pilot.click(offset=(rows[row].index(text) + 1, row))
            await press(pilot)

        await click(" 3 ·")
        assert cursor(app) == 2
        await click("hesitated")
        await click(" 1 ·")
        await click("not yet")
        assert marks(app)[:3] == [N, None, H]
        await click("undo")
        assert marks(app)[:3] == [None, None, H]
        await click("Enter done")
    assert app.return_code == 0


async def test_a_sunday_counts_by_a_key_and_undo_takes_that_back(home: Path, clock: Clock) -> None:
    app = program(home, clock, SUNDAY)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        before = frame(app)
        await press(pilot, "y")
        assert load(home / "family.toml").extra == (SUNDAY,)
        assert "school day 105" in frame(app) and "it counts" not in frame(app)
        await press(pilot, "6", "u")
        assert load(home / "family.toml").extra == () and "Undone: it counts as a school day." in frame(app)
        rows = [line for line in frame(app).splitlines() if "“" in line]
        assert rows == [line for line in before.splitlines() if "“" in line], "the prompts of before"


async def test_help_quit_and_what_another_window_did(home: Path, clock: Clock) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "question_mark")
        assert isinstance(app.screen, HelpScreen) and "Keys of a morning on paper" in frame(app)
        await press(pilot, "escape")
        context = context_at(home, clock)
        assert context.journal is not None
        paper_session(context, context.journal, clock, DAY).put({0: H})
        await press(pilot, "w")
        assert "Changed in another window" in frame(app) and marks(app)[0] is H
        assert "hesitated" in next(line for line in frame(app).splitlines() if " 1 ◐" in line)
        await press(pilot, "n")
        assert marks(app)[0] is N or marks(app)[1] is N
        await press(pilot, "q")
    assert app.return_code == 0


async def test_the_menu_offers_the_last_mornings(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("paper")
        await press(pilot)
        assert isinstance(app.screen, PastScreen) and "Tuesday, March 2" in frame(app)
        assert "It has no mark yet." in frame(app)
        golden("past-80x24", frame(app))
        await press(pilot, "enter")
        assert isinstance(app.screen, PaperScreen)
        await press(pilot, "w", "s", "enter")
        assert isinstance(app.screen, MorningScreen) and marks(app)[:2] == [F, H]
        assert morning(app).session is not None and "1 of 5" in frame(app)
        app.action_do("paper")
        await press(pilot)
        assert "It has two marks." in frame(app)
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen)
