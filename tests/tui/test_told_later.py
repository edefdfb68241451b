"""What needs a look at the disk is said once the first frame is out, and stands quietly from then on."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import context_at, start_fixed
from tests.tui.frame import frame, golden
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen

LINE = "A second journal lies beside yours: “warmup merge 'journal (2).db'” takes it in."
SIZES = [(60, 20), (80, 24), (120, 36), (160, 45)]


@pytest.fixture
def app(home: Path, clock: Callable[[], dt.datetime]) -> WarmupApp:
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_a_line_found_later_stands_on_the_morning(app: WarmupApp, size: tuple[int, int]) -> None:
    looked = list[bool]()

    def look() -> tuple[str, ...]:
        screen = app.screen
        looked.append(isinstance(screen, MorningScreen) and screen.session is not None and screen.is_mounted)
        return (LINE,)

    app.told_later = look
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert looked == [True], "once, and the prompt was there before"
        golden(f"told-later-{size[0]}x{size[1]}", frame(app))
        await pilot.press("right")
        assert isinstance(app.screen, MorningScreen)
        assert [notice.text for notice in app.screen.work.notices()] == [LINE]
        assert not app.screen.work.notices()[0].loud


async def test_where_there_is_nothing_to_say_nothing_is_drawn_again(app: WarmupApp) -> None:
    async with app.run_test() as pilot:
        await pilot.pause()
        assert isinstance(app.screen, MorningScreen) and app.screen.work.notices() == ()
