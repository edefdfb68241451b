"""A window left open overnight: ``python -m tests.benchmarks.overnight [SESSIONS] [SEED]`` (60, 1).

Seeded sessions across midnight, at the ends of months and years, on a leap day, where summer time begins and
ends, and with a clock that is set back. Marks are read from the file by plain SQL: the first key after the
date changed that means something here must do nothing but ask; after Enter marks belong to the new day,
after the arrow to the old one.
Exit code 1 where one of these does not hold.
"""

import asyncio
import datetime as dt
import sys
import tempfile
from collections import Counter
from pathlib import Path
from random import Random

from textual.pilot import Pilot

from tests.benchmarks import _arguments
from tests.benchmarks._findings import told
from tests.benchmarks._stays import Stays, marks_on_disk, morning_of
from tests.household import FAMILY, context_at
from warmup.tui.actions import State
from warmup.tui.counts import CountsScreen
from warmup.tui.days import DaysScreen
from warmup.tui.midnight import MidnightScreen

EVES = (
    (2026, 8, 31), (2026, 10, 31), (2026, 11, 1), (2026, 12, 30), (2026, 12, 31), (2027, 1, 31),
    (2027, 2, 28), (2027, 3, 13), (2027, 3, 14), (2028, 2, 28), (2028, 2, 29),
)  # fmt: skip
KEYS = ("up", "down", "n", "k", "right", "left", "space", "u", "j", "h", "escape", "t", "m", "f1", "enter")


class Clock:
    """A clock that stands until it is set."""

    def __init__(self, moment: dt.datetime) -> None:
        self.moment = moment

    def __call__(self) -> dt.datetime:
        return self.moment

    def go(self, seconds: float) -> None:
        """So much later, or earlier."""
        self.moment += dt.timedelta(seconds=seconds)


async def session(home: Path, rng: Random, done: Counter[str]) -> list[str]:
    """One night; what was wrong."""
    eve = dt.date(*rng.choice(EVES))
    clock = Clock(dt.datetime.combine(eve, dt.time(23, 59)) - dt.timedelta(seconds=rng.randrange(3000)))
    first_day = dt.date(2026, 8, 31) if eve < dt.date(2027, 8, 1) else dt.date(2027, 8, 30)
    family = FAMILY._replace(first_day=first_day, began=eve, known_until=eve - dt.timedelta(1))
    context = context_at(home, clock, family, eve)
    assert context.journal is not None
    app = Stays(context, context.journal, clock)
    found: list[str] = []
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        if isinstance(app.screen, CountsScreen):
            await pilot.press("enter")
        for _ in range(rng.randrange(4)):
            clock.go(10)
            await pilot.press(rng.choice(("up", "down", "right")))
        found += await across(app, pilot, clock, rng, done)
        if rng.random() < 0.5:
            done["set back"] += 1
            clock.go(-86_400 * rng.randrange(1, 3))
            found += await at_another_date(app, pilot, clock, rng, done)
    context.journal.shut()
    return [f"{eve}: {each}" for each in found]


async def across(app: Stays, pilot: Pilot[int], clock: Clock, rng: Random, done: Counter[str]) -> list[str]:
    """Over midnight, or to a morning some days later."""
    clock.go(86_400 * rng.choice((0, 0, 0, 1, 5)) + 3_600 * rng.randrange(1, 14))
    if clock().date() == app.context.today:
        return []
    done["over midnight"] += 1
    return await at_another_date(app, pilot, clock, rng, done)


async def at_another_date(
    app: Stays, pilot: Pilot[int], clock: Clock, rng: Random, done: Counter[str]
) -> list[str]:
    """Any key, then the answer, then marks: where did they go?"""
    screen, path = morning_of(app), app.journal.path
    stood, now, key = app.context.today, clock().date(), rng.choice(KEYS)
    was, left = marks_on_disk(path), app.left
    means_something = key in {each for action in screen.offered() for each in action.every_key}
    await pilot.press(key)
    await pilot.pause()
    if not means_something and app.screen is screen:
        # A key that means nothing here may do nothing at midnight either; one that does has to ask.
        if marks_on_disk(path) != was or app.left != left:
            return [f"{key} at {now} did something, and means nothing here"]
        done["meant nothing"] += 1
        clock.go(10)
        key = "right" if screen.state is not State.CLOSE else "left"
        await pilot.press(key)
        await pilot.pause()
    found = []
    if not isinstance(app.screen, MidnightScreen) and now != stood:
        return [f"{key} at {now} did not ask"]
    if now == stood:
        return []
    if marks_on_disk(path) != was or app.left != left:
        found.append(f"{key} at {now} did something else")
    goes = rng.random() < 0.6
    done["taken: the new day" if goes else "taken: the old day"] += 1
    clock.go(10)
    await pilot.press("enter" if goes else "left")
    await pilot.pause()
    for keys in ((("s", "enter") if isinstance(app.screen, DaysScreen) else ()), ("enter",)):
        # Mornings that were missed meanwhile were school; a day without school does not count.
        if keys and (len(keys) > 1 or isinstance(app.screen, CountsScreen)):
            clock.go(10)
            await pilot.press(*keys)
            await pilot.pause()
    day = now if goes else stood
    if app.screen is screen and screen.state is State.OPENING:
        clock.go(10)
        await pilot.press("right")
        await pilot.pause()
    for key in ("up", "down"):
        if app.screen is not screen or screen.session is None or screen.session.prompt is None:
            break
        item, was = screen.session.prompt.item, marks_on_disk(path)
        clock.go(10)
        await pilot.press(key)
        await pilot.pause()
        added = {each: mark for each, mark in marks_on_disk(path).items() if was.get(each) != mark}
        done["marks checked"] += 1
        if {*added} - {(day.isoformat(), item)} or marks_on_disk(path).get((day.isoformat(), item)) is None:
            found.append(f"a mark on {item} for {day} went to {[*added]}")
    return found


def main(count: int, seed: int) -> int:
    """Run the sessions and print their figures."""
    rng, done, found = Random(seed), Counter[str](), list[str]()
    with tempfile.TemporaryDirectory() as folder:
        for n in range(count):
            home = Path(folder, str(n))
            home.mkdir()
            found += asyncio.run(session(home, rng, done))
    return told(("what", "times"), done, f"{count} sessions", found)


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("overnight", __doc__, "sessions", 60)))
