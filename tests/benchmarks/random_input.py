"""Random keys, clicks and resizes over all screens: nothing crashes, and no mark lands on another prompt.

    python -m tests.benchmarks.random_input [inputs] [--seed N]

The program runs without a terminal on an invented family; after each input that made a mark, the mark on disk
must be on the prompt that was on screen before it. What a family sets (names, days, prompts, things) may only
change by an action in the log. A morning that was finished begins again on the next day.
"""

import asyncio
import datetime as dt
import random
import sqlite3
import tempfile
from contextlib import closing
from pathlib import Path

from textual.pilot import OutOfBounds, Pilot

from tests.benchmarks import _arguments
from tests.household import FAMILY, TODAY, StandingClock, context_at
from warmup.config.family import load
from warmup.tui.actions import ACTIONS
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen

SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45), (24, 8), (72, 18))
_LEAVES = {"q", "8"}
KEYS = [*sorted({key for action in ACTIONS for key in action.every_key} - _LEAVES), "ctrl+p", "home", "end"]
"""Every key of the table but the two that end the program, and some that are in none."""
OFTEN = ["up", "w", "down", "s", "n", "x", "right", "d", "escape", "space", "enter", "left"]
"""What is pressed on most mornings."""


async def session(home: Path, day: dt.date, inputs: int, chance: random.Random) -> tuple[int, int]:
    """One day of the program: how many inputs it took, and how many marks it made."""
    clock = StandingClock(dt.datetime.combine(day, dt.time(8)))
    family = load(home / "family.toml") if (home / "family.toml").exists() else FAMILY
    context = context_at(home, clock, family._replace(known_until=None), day)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    done = made = 0
    were, acted = settings(home), actions(home)
    async with app.run_test(size=chance.choice(SIZES)) as pilot:
        while done < inputs and app.return_code is None:
            done += 1
            before = _stands(app)
            logged = len(context.journal.actions_of("Bean", day))
            await _input(pilot, chance)
            rows = context.journal.actions_of("Bean", day)[logged:]
            marks = [row for row in rows if row.what == "mark"]
            assert len(marks) <= 1, "one input, two marks"
            if (now := settings(home)) != were:
                assert actions(home) > acted, f"set without an action: {were} {now}"
            were, acted = now, actions(home)
            for row in marks:
                made += 1
                assert before == row.position, f"a mark on {row.position}, while {before} was on screen"
    context.journal.shut()
    return done, made


def settings(home: Path) -> tuple[object, ...]:
    """What stands in the family's file and is no look, cover or day."""
    family = load(home / "family.toml")
    children = tuple((child.nickname, child.prompts, child.resting, child.reads) for child in family.children)
    return (
        *(children, family.first_day, family.weekdays, family.prompts, family.animal, family.adult),
        *(family.pennies, family.toddler, family.without, family.held_weeks, family.skipped_weeks),
    )


def actions(home: Path) -> int:
    """How many actions the log has, of all children."""
    with closing(sqlite3.connect(home / "journal.db")) as db:
        return int(db.execute("SELECT count(*) FROM actions").fetchone()[0])


def _stands(app: WarmupApp) -> int | None:
    """The prompt on screen, by its position."""
    screens = [screen for screen in app.screen_stack if isinstance(screen, MorningScreen)]
    found = screens[0].session if screens else None
    return found.position if found and found.prompt else None


async def _input(pilot: Pilot[int], chance: random.Random) -> None:
    width, height = pilot.app.size
    kind = chance.random()
    if kind < 0.02:
        await pilot.resize_terminal(*chance.choice(SIZES))
    elif kind < 0.3:
        try:
            await pilot.click(offset=(chance.randrange(width), chance.randrange(height)))
        except OutOfBounds:
            return
    else:
        await pilot.press(chance.choice(OFTEN if kind < 0.65 else KEYS))
    await pilot.pause()


def main(inputs: int, seed: int) -> None:
    """Run until so many inputs were taken."""
    chance, taken, marks, days = random.Random(seed), 0, 0, 0
    day = TODAY
    while taken < inputs:
        with tempfile.TemporaryDirectory() as folder:
            for _ in range(8):
                done, made = asyncio.run(session(Path(folder), day, min(120, inputs - taken), chance))
                taken, marks, days, day = taken + done, marks + made, days + 1, day + dt.timedelta(1)
                if taken >= inputs:
                    break
    print(f"{taken} inputs on {days} days, {marks} marks: no crash, and none on another prompt")


if __name__ == "__main__":
    asked = _arguments.parser("random_input", __doc__)
    asked.add_argument(
        "inputs", type=_arguments.positive, nargs="?", default=20_000, help="how many (20,000)"
    )
    asked.add_argument("--seed", type=int, default=1, help="which ones (1)")
    given = asked.parse_args()
    main(given.inputs, given.seed)
