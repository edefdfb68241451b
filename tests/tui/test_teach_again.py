"""What the close and the list of what is unlocked say of items that rest until they are taught again."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import OptionList

from tests.household import TODAY, context_at, lived, start_fixed, without_reviews
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import load
from warmup.model import ItemId, Mark
from warmup.session import summary as closing
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.unlocked import UnlockedScreen

Clock = Callable[[], dt.datetime]
SIZES = ((60, 20), (80, 24), (120, 36))
ITEMS = ("make-ten/seven-three", "count-on/across-30")


@pytest.fixture
def app(home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> WarmupApp:
    """The fixed morning, after two mornings of not yet on the items of its first two prompts.

    What the next morning wants is fixed as well, so that no change of the engine moves these screens.
    """
    monkeypatch.setattr(
        closing, "_table", lambda _context: ("Thursday", "beans, cup", "real coins, day strip")
    )
    context = without_reviews(context_at(home, clock))
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), dict.fromkeys(ITEMS, Mark.NOT_YET))
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def mode(app: WarmupApp) -> State:
    """The mode of the morning screen."""
    assert isinstance(app.screen, MorningScreen)
    return app.screen.state


def cursor(app: WarmupApp) -> int | None:
    """The line of the list that is under the cursor."""
    return app.screen.query_one(OptionList).highlighted


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_close_says_what_to_teach_again(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "n", "right", "right", "right", "right")
        assert mode(app) is State.CLOSE
        golden(f"teach-again-{size[0]}x{size[1]}", frame(app))


async def test_two_at_once_keep_their_names_and_the_keys_on_a_small_screen(app: WarmupApp) -> None:
    async with app.run_test(size=(60, 20)) as pilot:
        await press(pilot, "n", "n", "down", "down", "down")
        shown = " ".join(frame(app).split())
        for piece in (
            "You sat down together",
            "Teach again:",
            "(seven-three);",
            "count on, to fifty, across a ten",
            "finish",
        ):
            assert piece in shown, shown


async def test_the_list_says_it_was_taught_and_takes_it_back(app: WarmupApp, home: Path) -> None:
    def taught() -> dict[str, dt.date]:
        return dict(load(home / "family.toml").children[0].taught)

    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "n", "n", "l")
        rows = [row for row in frame(app).splitlines() if row]
        assert cursor(app) == 0
        assert "teach again:" in rows[1] and "teach again:" in rows[2] and "week" in rows[3]
        assert "it was taught again" in frame(app)
        await press(pilot, "y")
        (item,) = taught()
        assert taught() == {item: TODAY} and item in ITEMS
        assert "Taught again on Wednesday, March 3; it may come back." in frame(app)
        assert cursor(app) == 0 and " taught again:" in frame(app) and "take that back" in frame(app)
        assert not load(home / "family.toml").children[0].held
        await press(pilot, "y")
        assert not taught() and "It rests until you say it was taught." in frame(app)
        await press(pilot, "6", "down", "y", "l", "l")
        assert set(taught()) == set(ITEMS) and frame(app).count("taught again:") == 2


@pytest.mark.parametrize("keys", [(), ("n",)])
async def test_the_rows_below_hold_levels_as_before(
    app: WarmupApp, home: Path, keys: tuple[str, ...]
) -> None:
    async with app.run_test(size=(60, 20)) as pilot:
        await press(pilot, *keys, "l", "end")
        assert "hold it back" in " ".join(frame(app).split())
        assert cursor(app) == app.screen.query_one(OptionList).option_count - 1, frame(app)
        await press(pilot, "y")
        child = load(home / "family.toml").children[0]
        assert len(child.held) == 1 and not child.taught


async def test_what_was_taught_earlier_is_listed_no_more(home: Path, clock: Clock, app: WarmupApp) -> None:
    lived(app.context, TODAY, {ITEMS[0]: Mark.NOT_YET})
    app.context.editor.taught(ItemId(ITEMS[0]), app.context.today)
    tomorrow = context_at(home, clock, app.context.family, TODAY + dt.timedelta(1))
    assert tomorrow.missed() == (ITEMS[0],) and tomorrow.journal is not None
    later = WarmupApp(tomorrow, tomorrow.journal, clock)
    async with later.run_test(size=(80, 24)) as pilot:
        while mode(later) is not State.PROMPT:
            await press(pilot, "enter")
        await press(pilot, "l")
        assert isinstance(later.screen, UnlockedScreen) and "again" not in frame(later)
