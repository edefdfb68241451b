"""The pages on which something is picked or read: another one, winding down, the review, the story."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import OptionList

from tests.household import FAMILY, OPENING, TODAY, context_at, lived, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import load
from warmup.model import Mark
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
WEDNESDAY = dt.date(2027, 2, 3)
"""A morning of week 23, a review week."""


def picks(app: WarmupApp) -> list[str]:
    """What stands in the list on screen."""
    return [option.id or "" for option in app.screen.query_one(OptionList).options]


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_pages_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    name = f"{size[0]}x{size[1]}"
    lived(app.context, TODAY - dt.timedelta(1), {"make-ten/seven-three": Mark.HESITATED})
    async with app.run_test(size=size) as pilot:
        await press(pilot, "k")
        golden(f"another-{name}", frame(app))
        await press(pilot, "escape", "m")
        golden(f"wind-down-{name}", frame(app))
        await press(pilot, "escape")
        app.action_do("story")
        await press(pilot)
        golden(f"story-{name}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_review_is_a_page_of_its_own(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    context = context_at(home, clock, FAMILY._replace(known_until=WEDNESDAY - dt.timedelta(1)), WEDNESDAY)
    for back, mark in ((2, Mark.FLUENT), (1, Mark.FLUENT)):
        lived(
            context,
            WEDNESDAY - dt.timedelta(back),
            {"weekday/today": mark, "month/this": Mark.NOT_YET, "by-tens/to-50": Mark.HESITATED},
        )
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        while morning(app).state is not State.CLOSE:
            await pilot.press("right")
        await press(pilot, "v")
        golden(f"review-{size[0]}x{size[1]}", frame(app))
        await press(pilot, "y")
        assert load(home / "family.toml").children[0].paused is not None
        assert morning(app).state is State.CLOSE and "new things again" in frame(app)


async def test_another_one_names_only_what_is_so(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "k")
        assert picks(app) == ["just", "swap", "hold", "known"]
        await press(pilot, "escape")
        session = morning(app).session
        assert session is not None
        session.routine = session.routine._replace(
            prompts=tuple(prompt._replace(table="") for prompt in session.prompts)
        )
        await press(pilot, "v")
        assert picks(app) == ["just", "hold", "known"]
        await press(pilot, "j")
        assert "Another one" in frame(app), "there is nothing that could be missing"


async def test_a_key_of_the_page_before_is_none_on_the_choice(app: WarmupApp) -> None:
    """No mark is made by a key that marks at a prompt."""
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "m", "n", "x", "s", "w", "escape")
        assert [line.mark for line in app.journal.history("Bean")] == [None]


async def test_nothing_on_the_table_is_one_key_at_the_opening(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "j")
        session = morning(app).session
        assert session is not None and morning(app).state is State.OPENING
        assert not any(prompt.table for prompt in session.prompts) and "You need" not in frame(app)
        assert "Nothing on the table today" in frame(app) and "j nothing" not in frame(app)
        await press(pilot, "b")
        assert "Nothing today asks for a thing." in frame(app)
        await press(pilot, "u")
        assert session.prompts[0].table and "Undone: nothing on the table." in frame(app)
