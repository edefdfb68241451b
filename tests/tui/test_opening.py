"""The opening on screen: words to say and no more, at every size, and what its few keys do."""

import datetime as dt
from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.household import OPENING, TODAY, context_at, start_fixed
from tests.tui.frame import frame, golden
from warmup.model import Mark
from warmup.session.words import SMALL_THINGS
from warmup.tui.actions import State, actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen

SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))


class Watch:
    """A clock that goes a second further at each press."""

    def __init__(self) -> None:
        self.moment = dt.datetime.combine(TODAY, dt.time(8))

    def __call__(self) -> dt.datetime:
        return self.moment


@pytest.fixture
def watch() -> Watch:
    return Watch()


@pytest.fixture
def app(home: Path, watch: Watch) -> WarmupApp:
    """The program on the fixed morning with an opening."""
    context = context_at(home, watch)
    start_fixed(context, OPENING)
    assert context.journal is not None
    return WarmupApp(context, context.journal, watch)


def morning(app: WarmupApp) -> MorningScreen:
    """The morning screen."""
    assert isinstance(app.screen, MorningScreen)
    return app.screen


async def press(pilot: Pilot[int], watch: Watch, *keys: str, gap: float = 1.0) -> None:
    """Press keys, so many seconds apart, and let the screen settle."""
    for key in keys:
        watch.moment += dt.timedelta(seconds=gap)
        await pilot.press(key)
    await pilot.pause()


def words(app: WarmupApp) -> str:
    """The script as one line, without the stage beside it."""
    column = app.size.width // 2 if app.size.width > 72 else 0
    return " ".join(" ".join(line[column:].split()) for line in frame(app).splitlines())


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_opening_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        shown = frame(app)
        golden(f"opening-{size[0]}x{size[1]}", shown)
        line = " ".join(shown.split())
        for never in ("Answer", "Cue", "came easily", "not yet", "1 of 5"):
            assert never not in line, never
        assert "[◇]" in shown and "next" in shown and "then 5" in shown


async def test_the_stage_beside_it_has_nothing_to_read(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)):
        stage = [line[:40] for line in frame(app).splitlines()]
        assert "█" * 40 in stage and not any(letter.isalnum() for line in stage for letter in line)


MARKS = [key for action in actions_of((State.PROMPT,)) if action.group.name == "MARK" for key in action.keys]


@pytest.mark.parametrize("key", [*MARKS, "space", "e", "k", "y", "o", "p", "left"])
async def test_a_key_that_marks_or_helps_does_nothing_there(app: WarmupApp, watch: Watch, key: str) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        before = frame(app)
        await press(pilot, watch, key)
        assert frame(app) == before and morning(app).state is State.OPENING
        assert app.journal.history("Bean") == () and not app.journal.actions_of("Bean", TODAY)


@pytest.mark.parametrize("key", ["right", "d", "enter"])
async def test_it_goes_on_to_the_first_prompt_and_a_bounce_stays_there(
    app: WarmupApp, watch: Watch, key: str
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, key)
        for gap in (0.02, 0.09, 0.3):
            await press(pilot, watch, key, gap=gap)
        session = morning(app).session
        assert session is not None and session.position == 0 and not session.at_opening
        assert morning(app).state is State.PROMPT and "1 of 5" in words(app)
        assert [line.mark for line in app.journal.history("Bean")] == [None]
        await press(pilot, watch, "up")
        assert "[2]" in words(app) and "2 of 5" in words(app)
        assert [line.mark for line in app.journal.history("Bean")] == [Mark.FLUENT, None]


@pytest.mark.parametrize("key", ["left", "a", "escape"])
async def test_back_from_the_first_prompt_leads_to_it(app: WarmupApp, watch: Watch, key: str) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "right", "up", key)
        assert "1 of 5" in words(app)
        await press(pilot, watch, key)
        assert morning(app).state is State.OPENING and "[◇]" in words(app)
        await press(pilot, watch, "escape")
        assert "This is where the morning begins." in words(app)
        await press(pilot, watch, "right")
        assert "1 of 5" in words(app) and "[●]" in words(app)


async def test_the_day_s_keys_and_the_menu_work_there(app: WarmupApp, watch: Watch) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "m", "h")
        assert "rough day" in words(app) and morning(app).state is State.OPENING
        await press(pilot, watch, "m", "enter")
        assert "then 4" in words(app)
        await press(pilot, watch, "u")
        assert "then 5" in words(app) and "Undone: the short morning." in words(app)
        await press(pilot, watch, "full_stop")
        menu = frame(app)
        assert "wind down" in menu and "rough day" in menu and "nothing on the table" in menu
        assert "another one" not in menu and "picture alone" not in menu
        await press(pilot, watch, "escape", "question_mark")
        assert "Keys of the morning" in frame(app)


async def test_midnight_over_it_asks_and_leads_to_the_new_day_s_opening(app: WarmupApp, watch: Watch) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        # Of a morning that showed no prompt at all it is asked first whether it was school.
        await press(pilot, watch, "right", "left")
        watch.moment += dt.timedelta(days=1)
        await press(pilot, watch, "right")
        assert "It is Thursday now." in frame(app)
        await press(pilot, watch, "enter")
        assert morning(app).state is State.OPENING and app.context.today == TODAY + dt.timedelta(1)
        session = morning(app).session
        assert session is not None and session.routine.opening not in (None, OPENING)


@pytest.mark.parametrize(
    ("table", "warned"), [("straws and bands", True), ("wall calendar", False), ("", False)]
)
async def test_where_it_asks_for_small_things_it_warns_of_them(
    home: Path, watch: Watch, table: str, warned: bool
) -> None:
    context = context_at(home, watch)
    start_fixed(context, OPENING._replace(table=table))
    assert context.journal is not None
    app = WarmupApp(context, context.journal, watch)
    async with app.run_test(size=(80, 24)):
        assert (f"You need: {table}" in words(app)) == bool(table)
        assert (SMALL_THINGS in words(app)) == warned
