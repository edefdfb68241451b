"""What a family wrote itself, on the screens: whole and plain; where its file is bad, the morning opens."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import OPENING, StandingClock, context_at, start_fixed, start_own
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from tests.tui.test_screens import SIZES, at_size
from warmup.model import LevelId
from warmup.skills.own import OwnPrompt
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]


@pytest.fixture
def own_app(home: Path, clock: StandingClock) -> WarmupApp:
    """The program at a prompt that the family wrote itself."""
    context = context_at(home, clock)
    start_own(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


@pytest.fixture
def bad_app(home: Path, clock: StandingClock) -> WarmupApp:
    """The program with an own.toml whose third line has a slip."""
    home.mkdir(parents=True)
    (home / "own.toml").write_text('[[prompt]]\nsay = "Where do we live?"\nanser = "here"\n', "utf-8")
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def words(text: str) -> str:
    """The words of a screen, wherever its lines break."""
    return " ".join(text.split())


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_an_own_prompt_with_its_cues(own_app: WarmupApp, size: tuple[int, int]) -> None:
    async with own_app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"own-{at_size(size)}", frame(own_app))
        await press(pilot, "space", "space", "space")
        golden(f"own-cues-{at_size(size)}", frame(own_app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_a_bad_file_has_a_standing_line(bad_app: WarmupApp, size: tuple[int, int]) -> None:
    async with bad_app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"own-problem-{at_size(size)}", frame(bad_app))
        await press(pilot, "right")
        assert "own.toml, line 3," in words(frame(bad_app)), "and it stays"


async def test_its_signs_are_plain_text_on_every_page(home: Path, clock: StandingClock) -> None:
    """In the script, the story and the list at the close; and none of them does anything."""
    say, answer = "Who [b]is[/b] [@click=app.quit]it[/]?", "[red]We[/red] ‹quit› \\[x]"
    home.mkdir(parents=True)
    (home / "own.toml").write_text(f"[[prompt]]\nname = 'us'\nsay = '{say}'\nanswer = '{answer}'\n", "utf-8")
    context = context_at(home, clock)
    start_own(context, OwnPrompt("us", say, answer))
    assert context.journal is not None and context.own is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        assert say in frame(app) and answer in frame(app)
        app.action_do("story")
        await pilot.pause()
        assert say in frame(app) and "Its level opens in week 1." in frame(app)
        await press(pilot, "escape")
        app.action_do("hold")
        await pilot.pause()
        assert "Held back: your own, us." in frame(app)
        await press(pilot, "u", *["up"] * 7)
        assert say in frame(app), "at the close"


async def test_its_level_stands_in_its_week_of_the_year_and_is_moved_in_its_file_alone(
    home: Path, clock: StandingClock
) -> None:
    home.mkdir(parents=True)
    (home / "own.toml").write_text(
        "[[prompt]]\nname = 'us'\nsay = 'Who?'\nanswer = 'We'\nweek = 27\n", "utf-8"
    )
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        app.action_do("year")
        await press(pilot, "enter", *["down"] * 30)
        assert "Your own: us" in frame(app)
        await press(pilot, "j")
        assert "Its week is in own.toml: Your own: us." in frame(app)
        assert not (home / "year.toml").exists()


async def test_it_stays_in_the_year_when_another_level_is_moved(home: Path, clock: StandingClock) -> None:
    home.mkdir(parents=True)
    (home / "own.toml").write_text("[[prompt]]\nname = 'us'\nsay = 'Who?'\nanswer = 'We'\n", "utf-8")
    context = context_at(home, clock)
    context.move_level(LevelId("coins:worth"), 30)
    assert context.plan.weeks[LevelId("coins:worth")] == 30
    assert context.plan.weeks[LevelId("own:us")] == 1
