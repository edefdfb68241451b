"""Everything takes a click: a whole morning by mouse alone, beads, rows, a way back, and tooltips."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList
from textual.widgets._tooltip import Tooltip

from tests.household import OPENING, TODAY, context_at, start_fixed
from tests.tui.frame import frame
from tests.tui.pressing import morning
from warmup.model import Mark
from warmup.tui.actions import BY_ID, State
from warmup.tui.app import WarmupApp
from warmup.tui.menu import MenuScreen
from warmup.tui.panes import BEAD

Clock = Callable[[], dt.datetime]


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """The program on the fixed morning with an opening."""
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def place(app: WarmupApp, words: str, *, last: bool = True) -> tuple[int, int]:
    """Where these words stand, as column and row: the lowest of them, or the highest."""
    rows = frame(app).splitlines()
    at = [row for row, line in enumerate(rows) if words in line]
    assert at, f"{words!r} is nowhere:\n{frame(app)}"
    row = at[-1 if last else 0]
    return rows[row].index(words), row


async def click(pilot: Pilot[int], words: str, *, last: bool = True) -> None:
    """Click on these words."""
    app = pilot.app
    assert isinstance(app, WarmupApp)
    await pilot.click(offset=place(app, words, last=last))
    await pilot.pause()
    await pilot.pause()


@pytest.mark.parametrize("size", [(60, 24), (80, 24), (160, 45)], ids=lambda size: f"{size[0]}x{size[1]}")
async def test_a_whole_morning_by_mouse_alone(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        await click(pilot, "next")
        await click(pilot, "easily")
        await click(pilot, "cue")
        assert "Cue 1:" in frame(app)
        await click(pilot, "hesitated")
        await click(pilot, "all keys")
        await click(pilot, "another one", last=False)
        await click(pilot, "just another")
        assert "Something else, then." in frame(app)
        await click(pilot, "undo")
        await click(pilot, "not yet")
        session = morning(app).session
        assert session is not None
        assert [session.mark_at(at) for at in range(4)] == [Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, None]
        await click(pilot, "next")
        await click(pilot, "easily")
        assert morning(app).state is State.CLOSE
        await click(pilot, "those came easily too")
        assert session.mark_at(3) is Mark.FLUENT
        await click(pilot, "“The ten frame")
        assert session.position == 0
        for _ in range(5):
            await click(pilot, "next")
        await click(pilot, "finish")
        assert app.return_code == 0
    assert app.journal.sessions_of("Bean", TODAY)[0].closed


async def test_a_bead_leads_to_its_prompt_and_none_further_than_the_next(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await click(pilot, "next")
        await click(pilot, "easily")
        session = morning(app).session
        assert session is not None and session.position == 1
        column, row = place(app, "● [2] · · ·", last=False)
        await pilot.click(offset=(column, row))
        await pilot.pause()
        assert session.position == 0 and "[●] · · · ·" in frame(app)
        column, row = place(app, "[●] · · · ·", last=False)
        await pilot.click(offset=(column + 10, row))
        await pilot.pause()
        assert session.position == 0 and "That one comes later." in frame(app)
        await pilot.click(offset=(column + 6, row))
        await pilot.pause()
        assert session.position == 2 and session.mark_at(1) is None


async def test_the_picture_alone_is_left_by_a_click(app: WarmupApp) -> None:
    async with app.run_test(size=(40, 12)) as pilot:
        await pilot.press("right")
        await pilot.pause()
        await click(pilot, "shows it alone")
        assert not any(letter.isalpha() for letter in frame(app))
        await pilot.click("#stage")
        await pilot.pause()
        assert "The ten frame" in frame(app)


async def test_the_remedy_stands_behind_the_need_and_takes_a_click(app: WarmupApp) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.press("right")
        await pilot.pause()
        assert "You need: ten frame   j we don’t have it" in frame(app)
        await click(pilot, "we don’t have it")
        session = morning(app).session
        assert session is not None and session.items[0] != "make-ten/seven-three"


async def test_a_click_on_the_rule_names_the_other_hand_s_keys(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("right")
        await pilot.pause()
        await click(pilot, "right hand")
        assert "left hand" in frame(app) and "w came easily  s hesitated  x not yet" in frame(app)
        await pilot.press("space")
        await pilot.pause()
        assert "left hand" in frame(app), "Space is for either hand"
        await pilot.press("left")
        await pilot.pause()
        assert "right hand" in frame(app)


async def test_tooltips_appear_and_say_what_is_under_the_mouse(
    app: WarmupApp, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(WarmupApp, "TOOLTIP_DELAY", 0.01)
    async with app.run_test(size=(80, 24), tooltips=True) as pilot:
        await pilot.press("right")
        await pilot.pause()

        async def told(words: str, right: int = 0) -> str:
            column, row = place(app, words)
            await pilot.hover("#stage", offset=(1, 1))
            await pilot.hover(offset=(column + right, row))
            await pilot.pause(0.05)
            tooltip = app.screen.get_child_by_type(Tooltip)
            return str(tooltip.visual) if tooltip.display else ""

        assert BY_ID["hesitated"].help in await told("hesitated")
        assert BEAD.format(3) in await told("[1] · · · ·", 6)
        assert await told("You need:") == ""
        await pilot.press("full_stop")
        await pilot.pause()
        await pilot.hover(offset=place(app, "take it"))
        await pilot.pause(0.05)
        assert BY_ID["choose"].help in str(app.screen.get_child_by_type(Tooltip).visual)


async def test_the_palette_has_what_does_something_here_grouped_each_with_its_key(app: WarmupApp) -> None:
    async with app.run_test(size=(120, 60)) as pilot:
        await pilot.press("right", "w", "ctrl+p")
        await pilot.pause()
        assert isinstance(app.screen, MenuScreen)
        shown = [" ".join(line.split()) for line in frame(app).splitlines()]
        assert "came easily w Right, with no cue. Marks it and goes on." in shown
        assert shown.index("Mark") < shown.index("Move") < shown.index("Help the child")
        ids = [option.id for option in app.screen.query_one(OptionList).options if option.id]
        assert {"undo", "cue", "swap", "story"} <= {*ids} and not {"accept", "easy", "bare_", "line_up"} & {
            *ids
        }
        await click(pilot, "not yet")
        assert [line.mark for line in app.journal.history("Bean")][:2] == [Mark.FLUENT, Mark.NOT_YET]
        await pilot.press("l", "ctrl+p")
        await pilot.pause()
        assert "hold back" in frame(app) and "came easily" not in frame(app)
