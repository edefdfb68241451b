"""Lists that are longer than the screen say how much of them is out of sight."""

import datetime as dt
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.pilot import Pilot

from tests.household import context_at, start_fixed
from tests.tui.frame import frame
from warmup.tui.actions import ACTIONS
from warmup.tui.app import WarmupApp
from warmup.tui.lists import cut_off, scroll_end, scrolled, window
from warmup.tui.script import Keep, Script, Span

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]


@pytest.fixture
def app(home: Path, clock: Clock) -> WarmupApp:
    """The program on the fixed morning."""
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def out_of_sight(shown: str) -> tuple[int, int]:
    """How many rows are said to be above and below."""
    above, below = re.search(r"↑ (\d+) more", shown), re.search(r"↓ (\d+) more", shown)
    return int(above[1]) if above else 0, int(below[1]) if below else 0


@given(st.integers(1, 200), st.integers(0, 199), st.integers(2, 60))
def test_the_cursor_is_in_sight_and_the_rest_is_counted(total: int, cursor: int, room: int) -> None:
    cursor = min(cursor, total - 1)
    shown = window(total, cursor, room)
    note = cut_off(total, shown.start, len(shown))
    assert cursor in shown and len(shown) + bool(note) <= room
    above, below = out_of_sight(note)
    assert above + len(shown) + below == total and above == shown.start


@given(st.integers(1, 60), st.integers(0, 80), st.integers(4, 40))
def test_a_page_scrolls_to_its_last_line_and_keeps_its_foot(lines: int, first: int, height: int) -> None:
    page = Script(40)
    for n in range(lines):
        page.line((Span(f"line {n}"),), Keep.WATCH)
    page.line((Span("foot"),), Keep.ALWAYS, bottom=True)
    end = scroll_end(page, height)
    text = ["".join(span.text for span in line) for line in scrolled(page, height, first).fitted(height)]
    assert text[-1] == "foot" and (end == 0) == (lines + 1 <= height)
    seen = [int(line.removeprefix("line ")) for line in text if line.startswith("line")]
    above, below = out_of_sight("\n".join(text))
    assert above + len(seen) + below == lines and seen == list(range(above, above + len(seen)))
    assert above == min(first, end)


async def press(pilot: Pilot[int], *keys: str) -> None:
    for key in keys:
        await pilot.press(key)
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_all_of_the_help_can_be_reached_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "question_mark")
        seen, (_, below) = frame(app), out_of_sight(frame(app))
        assert below or size != (40, 12)
        for _ in range(below):
            await press(pilot, "down")
            seen += frame(app)
        assert out_of_sight(frame(app))[1] == 0 and "back to the morning" in frame(app)
        words = [action.label for action in ACTIONS if action.id != "accept"]
        assert [word for word in (*words, "changes nothing") if word not in seen] == []
        await press(pilot, "down", "up")
        assert out_of_sight(frame(app))[0] == max(0, below - 1)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_unlocked_list_says_what_is_out_of_sight(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "l")
        rows = len(re.findall(r"week +\d+  ", frame(app)))
        above, below = out_of_sight(frame(app))
        assert above == 0 and rows
        await press(pilot, *["down"] * (rows + below))
        assert out_of_sight(frame(app))[1] == 0
        last = len(re.findall(r"week +\d+  ", frame(app)))
        assert out_of_sight(frame(app))[0] + last == rows + below
