"""The page that sets the first weeks beside the last ones: what it shows, and how it is reached and left."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from tests.household import context_at, grown_easier, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.session.then_and_now import TOO_LITTLE
from warmup.tui.app import WarmupApp
from warmup.tui.then_and_now import ThenAndNowScreen

SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))


@pytest.mark.slow
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_then_and_now(home: Path, clock: Callable[[], datetime], size: tuple[int, int]) -> None:
    context = context_at(home, clock)
    grown_easier(context)
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=size) as pilot:
        app.action_do("then")
        await pilot.pause()
        golden(f"then-and-now-{size[0]}x{size[1]}", frame(app))
        await press(pilot, "enter")
        assert not isinstance(app.screen, ThenAndNowScreen)


async def test_too_little_is_said_on_the_page(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        app.action_do("then")
        await pilot.pause()
        assert " ".join(TOO_LITTLE.split()[:6]) in frame(app)
