"""The page of a game: from the menu and from the close, at every size, and on to another."""

import pytest

from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from tests.tui.test_screens import SIZES, at_size, pick
from warmup.session.gaming import suggestion
from warmup.tui.app import WarmupApp
from warmup.tui.game import GameScreen
from warmup.tui.morning import MorningScreen


@pytest.mark.slow
@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_a_game_at_the_close(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "n", *["right"] * 4, "9")
        golden(f"game-{at_size(size)}", frame(app))


@pytest.mark.slow
async def test_a_key_goes_on_to_another_and_the_menu_has_it_from_the_start(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop")
        await pick(pilot, "a two-minute game")
        assert isinstance(app.screen, GameScreen)
        first, second = (suggestion(app.context, nth) for nth in (0, 1))
        assert first and second and first.game.name in frame(app)
        await press(pilot, "v")
        assert second.game.name in frame(app) and first.game.name not in frame(app)
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen), "and nothing else has changed"


@pytest.mark.slow
async def test_where_nothing_wobbled_the_close_has_no_word_of_it(app: WarmupApp) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, "up", *["right"] * 4)
        assert "A game for that" not in frame(app)
        await press(pilot, "left", "down")
        assert "A game for that" in frame(app)
