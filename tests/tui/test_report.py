"""A report on screen: read before it leaves, and put into a file only where that is said."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import Input

from tests.household import FAMILY, TODAY, StandingClock, context_at, lived, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import Family
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.report.asking import Form, Wanted
from warmup.tui.app import WarmupApp
from warmup.tui.help import HelpScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.report import ReportApp, ReportScreen
from warmup.tui.report_file import ONCE, TWICE, FileScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
NAME = f"warmup-report-{TODAY}.html"


def program(home: Path, clock: Clock, family: Family = FAMILY) -> WarmupApp:
    """The program on the fixed morning, two mornings behind it."""
    context = context_at(home, clock, family)
    for back in (2, 1):
        marks = {"make-ten/seven-three": Mark.FLUENT, "count/to-20": Mark.NOT_YET}
        lived(context, TODAY - dt.timedelta(back), marks)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def joined(text: str) -> str:
    """A text without its blanks: a long path is broken anywhere."""
    return "".join(text.split())


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder that a bare name is of."""
    folder = tmp_path / "here"
    folder.mkdir()
    monkeypatch.chdir(folder)
    return folder


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_it_is_read_first(home: Path, clock: Clock, here: Path, size: tuple[int, int]) -> None:
    app = program(home, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot)
        assert isinstance(app.screen, ReportScreen)
        golden(f"report-{size[0]}x{size[1]}", frame(app))
        await press(pilot, "f")
        golden(f"report_file-{size[0]}x{size[1]}", frame(app))
        await press(pilot, "escape", "escape")
        assert isinstance(app.screen, MorningScreen) and list(here.iterdir()) == []


@pytest.mark.parametrize("key", ["k", "f"])
async def test_a_key_of_either_hand_and_enter_put_it_into_a_file(
    home: Path, clock: Clock, here: Path, key: str
) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, key, "enter")
        assert isinstance(app.screen, ReportScreen)
        assert [path.name for path in here.iterdir()] == [NAME]
        assert (here / NAME).read_text("utf-8").startswith("<!DOCTYPE html>")
        assert joined(f"Written: {here / NAME}") in joined(frame(app))


async def named(app: WarmupApp, name: str) -> Input:
    line = app.screen.query_one("#file", Input)
    line.value = name
    return line


async def test_a_file_that_is_there_is_written_over_after_two_questions(
    home: Path, clock: StandingClock, here: Path
) -> None:
    (here / NAME).write_text("mine")
    app = program(home, clock)
    async with app.run_test(size=(160, 45)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, "k")
        for said in (ONCE, TWICE):
            await press(pilot, "enter")
            assert said in frame(app) and (here / NAME).read_text() == "mine"
            clock.moment += dt.timedelta(seconds=5)
        await press(pilot, "enter")
        assert isinstance(app.screen, ReportScreen) and (here / NAME).read_text("utf-8") != "mine"


async def test_another_name_is_asked_of_anew(home: Path, clock: StandingClock, here: Path) -> None:
    for name in ("a.txt", "b.txt"):
        (here / name).write_text("mine")
    app = program(home, clock)
    async with app.run_test(size=(160, 45)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, "k")
        await named(app, "a.txt")
        await press(pilot, "enter", "enter")
        assert TWICE in frame(app)
        await named(app, "b.txt")
        await press(pilot, "enter")
        assert ONCE in frame(app)
        assert {path.read_text() for path in here.iterdir()} == {"mine"}


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("", "A file needs a name."),
        ("no/such/a.txt", "no such folder"),
        (".", "is a folder"),
        ("~nobody-of-this-name/a.txt", "There is no such place."),
    ],
)
async def test_what_can_t_be_a_file_is_said(
    home: Path, clock: Clock, here: Path, name: str, said: str
) -> None:
    app = program(home, clock)
    async with app.run_test(size=(160, 45)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, "k")
        await named(app, name)
        await press(pilot, "enter")
        assert isinstance(app.screen, FileScreen) and joined(said) in joined(frame(app))
        assert list(here.iterdir()) == []


@pytest.mark.parametrize(
    ("name", "begins"), [("a.csv", "part,"), ("a.json", "{"), ("a.txt", "Math"), ("a", "<!DOCTYPE")]
)
async def test_the_ending_says_the_form(home: Path, clock: Clock, here: Path, name: str, begins: str) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, "k")
        await named(app, name)
        await press(pilot, "enter")
        assert (here / name).read_text("utf-8").startswith(begins)


async def test_the_keys_of_the_line_are_told(home: Path, clock: Clock, here: Path) -> None:
    app = program(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        app.action_do("report")
        await press(pilot, "k", "f1")
        assert isinstance(app.screen, HelpScreen) and "write it" in frame(app)


async def test_alone_it_ends_when_it_is_left(home: Path, clock: Clock, here: Path) -> None:
    context = program(home, clock).context
    # As the command opens it.
    context.journal = Journal.open(home, clock, read_only=True)
    app = ReportApp(context, clock, Wanted(summer=True), Form.TEXT)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert "A summer list for Bean" in frame(app) and "Not being saved" not in frame(app)
        await press(pilot, "down", "comma", "f", "enter")
        assert [path.name for path in here.iterdir()] == [f"warmup-summer-{TODAY}.txt"]
        await press(pilot, "escape")
    assert app.return_code == 0
