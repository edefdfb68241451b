"""Lists that are longer than the screen say how much of them is out of sight."""

import datetime as dt
import re
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from textual.widgets import OptionList

from tests.tui.frame import frame
from tests.tui.pressing import press
from warmup.tui.actions import actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.lists import cut_off
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]


def out_of_sight(shown: str) -> tuple[int, int]:
    """How many rows are said to be above and below."""
    above, below = re.search(r"↑ (\d+) more", shown), re.search(r"↓ (\d+) more", shown)
    return int(above[1]) if above else 0, int(below[1]) if below else 0


@given(st.integers(0, 200), st.integers(0, 199), st.integers(1, 60))
def test_rows_in_and_out_of_sight_are_all_there_are(total: int, first: int, room: int) -> None:
    first = min(first, max(0, total - room))
    shown = min(room, total - first)
    above, below = out_of_sight(cut_off(total, first, shown))
    assert above == first and above + shown + below == total


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_all_of_the_help_can_be_reached_at_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "question_mark")
        seen, (_, below) = frame(app), out_of_sight(frame(app))
        assert below or size != (40, 12)
        # Line by line where that is soon done, else by the page.
        key, times = ("pagedown", below // 4) if below > 20 else ("down", below)
        for _ in range(times):
            await press(pilot, key)
            seen += frame(app)
        assert out_of_sight(frame(app))[1] == 0 and "Bksp back" in frame(app)
        of_several = {"blurted", "next_child"}
        words = [each.label for each in actions_of(MorningScreen.STATES) if each.id not in of_several]
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
        await press(pilot, "end")
        assert out_of_sight(frame(app))[1] == 0
        last = len(re.findall(r"week +\d+  ", frame(app)))
        assert out_of_sight(frame(app))[0] + last == rows + below


async def test_the_cursor_passes_over_headings_and_stays_at_the_ends(app: WarmupApp) -> None:
    """At 120x45 the menu stands in groups, whose names are no entries."""
    async with app.run_test(size=(120, 45)) as pilot:
        await press(pilot, "full_stop")
        listed = app.screen.query_one(OptionList)
        entries = [at for at, option in enumerate(listed.options) if not option.disabled]
        assert len(entries) < listed.option_count
        seen = [listed.highlighted]
        for _ in entries:
            await press(pilot, "down")
            seen.append(listed.highlighted)
        assert seen == [*entries, entries[-1]]
        for at in reversed(entries[:-1]):
            await press(pilot, "up")
            assert listed.highlighted == at
        await press(pilot, "w")
        assert listed.highlighted == entries[0]
