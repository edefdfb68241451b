"""A child who reads number words: asked once, and the answers then start covered."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import Child, load, year_of
from warmup.model import LevelId
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.reads import ReadsScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
WEEK_20 = year_of(FAMILY).mornings[79]


def program(home: Path, clock: Clock, child: Child, today: dt.date = TODAY) -> WarmupApp:
    """The program for this child."""
    family = FAMILY._replace(children=(child,), known_until=today - dt.timedelta(1))
    context = context_at(home, clock, family, today)
    if today == TODAY:
        start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_it_is_asked_when_number_words_are_open(
    home: Path, clock: Clock, size: tuple[int, int]
) -> None:
    app = program(home, clock, Child("Bean"))
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"reads-{size[0]}x{size[1]}", frame(app))


@pytest.mark.parametrize(
    ("child", "today"),
    [
        (Child("Bean"), WEEK_20),
        (Child("Bean", reads=False), TODAY),
        (Child("Bean", reads=True), TODAY),
        (Child("Bean", held=(LevelId("number-words:to-ten"),)), TODAY),
    ],
    ids=["too early", "no", "yes", "held back"],
)
async def test_it_is_not_asked(home: Path, clock: Clock, child: Child, today: dt.date) -> None:
    app = program(home, clock, child, today)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert morning(app).session is not None


@pytest.mark.parametrize(("key", "reads"), [("enter", False), ("d", False), ("up", True), ("w", True)])
async def test_the_answer_is_kept_and_can_be_undone(home: Path, clock: Clock, key: str, reads: bool) -> None:
    app = program(home, clock, Child("Bean"))
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, key)
        assert load(home / "family.toml").children[0].reads is reads
        assert morning(app).state is State.PROMPT and ("covered" in frame(app)) is reads
        await press(pilot, "u")
        assert load(home / "family.toml").children[0].reads is None
        assert "Undone: whether they read." in frame(app)


async def test_left_without_an_answer_it_is_asked_another_day(home: Path, clock: Clock) -> None:
    app = program(home, clock, Child("Bean"))
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert isinstance(app.screen, ReadsScreen)
        await press(pilot, "escape")
        assert morning(app).state is State.PROMPT
    assert load(home / "family.toml").children[0].reads is None


async def test_each_answer_starts_covered_and_one_key_shows_it(home: Path, clock: Clock) -> None:
    app = program(home, clock, replace(Child("Bean"), reads=True))
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert "Answer: covered   o show it" in frame(app) and "three" not in frame(app)
        await press(pilot, "o")
        assert "Answer: three" in frame(app)
        await press(pilot, "o")
        assert "covered" in frame(app)
        await press(pilot, "c", "right")
        assert "Answer: covered" in frame(app), "the next one is covered again"
        rows = frame(app).splitlines()
        row = next(at for at, line in enumerate(rows) if "covered" in line)
        await pilot.click(offset=(rows[row].index("show it"), row))
        await press(pilot)
        assert "twenty-nine" in frame(app)
    assert load(home / "family.toml").answers_shown
