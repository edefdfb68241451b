"""A week of the year on screen: where its cursor is at first, and what it warns of."""

import datetime as dt
from pathlib import Path

from tests.household import TODAY
from tests.tui.pressing import press
from tests.tui.test_year import Clock, opened, to_the_year, words
from warmup.session.words import SMALL_THINGS, has_small_things
from warmup.session.yearview import WeekDay
from warmup.tui.year_week import YearWeekScreen


async def test_a_week_opens_on_today_and_any_other_on_its_first_day(home: Path, clock: Clock) -> None:
    """Tomorrow off is what the page is opened for most."""
    app = opened(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await to_the_year(pilot)
        await press(pilot, "enter")
        assert isinstance(app.screen, YearWeekScreen) and isinstance(app.screen.line, WeekDay)
        assert app.screen.line.date == TODAY
        await press(pilot, "down", "y", "u")
        assert app.screen.line.date == TODAY + dt.timedelta(1), "a change leaves the cursor where it is"
        await press(pilot, "backspace", "down", "enter")
        assert isinstance(app.screen, YearWeekScreen) and isinstance(app.screen.line, WeekDay)
        assert app.screen.line == app.screen._lines[0] and app.screen.line.date > TODAY


async def test_a_week_that_wants_small_things_warns_of_them(home: Path, clock: Clock) -> None:
    app = opened(home, clock)
    warned = set[bool]()
    async with app.run_test(size=(120, 36)) as pilot:
        await to_the_year(pilot)
        for _ in range(2):
            await press(pilot, "enter")
            ready = words(app).partition("To have ready: ")[2]
            small = has_small_things(ready.partition(SMALL_THINGS)[0])
            assert ready and small == (SMALL_THINGS in ready), ready
            warned.add(small)
            await press(pilot, "escape", "down")
    assert warned == {True, False}
