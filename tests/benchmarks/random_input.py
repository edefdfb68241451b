"""Random keys, clicks and resizes over all screens: nothing crashes, and no mark lands on another prompt.

    python -m tests.benchmarks.random_input [inputs] [--seed N]

The program runs without a terminal on invented families: one child or several who take turns, a guest, a
first form, after the year's last day, with missed mornings. Besides keys and clicks anywhere, something of
the menu or the guide is opened now and then, and midnight passes. After each input that made a mark, the mark
on disk must be on the prompt that was on screen before it. What a family sets (names, days, prompts, things)
may only change by an action in the log. A morning that was finished begins again on the next day. From 20,000
inputs on, every page that the table of actions has must have been on screen. Exit code 1 where not.
"""

import asyncio
import contextlib
import datetime as dt
import gc
import random
import sqlite3
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

from textual.app import App
from textual.pilot import OutOfBounds, Pilot

from tests.benchmarks import _arguments, _findings
from tests.benchmarks._everything import OWN
from tests.household import FAMILY, TODAY, StandingClock, context_at
from tests.tui.settling import settle_by_the_loop
from warmup.cli.opening import welcomed
from warmup.config.family import Child, Family, default, load
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.session.calendar_days import Offer
from warmup.session.context import open_context
from warmup.tui.actions import ACTIONS, State
from warmup.tui.app import WarmupApp
from warmup.tui.calendar_days import CalendarApp
from warmup.tui.morning import MorningScreen

SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45), (24, 8), (72, 18))
_LEAVES = {"q", "8"}
KEYS = [*sorted({key for action in ACTIONS for key in action.every_key} - _LEAVES), "ctrl+p", "home", "end"]
"""Every key of the table but the two that end the program, and some that are in none."""
OFTEN = ["up", "w", "down", "s", "n", "x", "right", "d", "escape", "space", "enter", "left"]
"""What is pressed on most mornings."""
ENOUGH = 20_000
"""From so many inputs on every page must have been reached."""
_OF_OTHER_DAYS = {State.PAPER.value, State.PAST_MORNING.value}
"""The pages whose marks go to a morning that is past."""
_LINES = 26
"""No menu is longer, in lines."""


class Life(NamedTuple):
    """A family to begin with, on a day; who is at the keys, and whether it has prompts of its own."""

    family: Family | None
    day: dt.date = TODAY
    guest: bool = False
    together: bool = False
    calendar: bool = False
    own: bool = False


ONE = FAMILY._replace(known_until=None)
TWO = ONE._replace(children=(Child("Bean", reads=False), Child("Pip", prompts=5)))
LIVES = (
    *[Life(ONE)] * 2,
    Life(ONE, own=True),
    Life(ONE._replace(children=(Child("Bean"),))),
    Life(TWO),
    Life(TWO, together=True, own=True),
    Life(TWO, guest=True),
    Life(FAMILY._replace(known_until=TODAY - dt.timedelta(20))),
    Life(FAMILY._replace(known_until=dt.date(2027, 8, 1)), dt.date(2027, 8, 2)),
    Life(None),
    Life(ONE, calendar=True),
)
"""What they begin with, the usual one more often."""


class Tally:
    """What was done so far: inputs by page, marks, and what was wrong."""

    def __init__(self) -> None:
        self.pages, self.marks, self.days = Counter[str](), 0, 0
        self.wrong: list[str] = []

    @property
    def inputs(self) -> int:
        """All of them."""
        return self.pages.total()


async def session(home: Path, life: Life, inputs: int, chance: random.Random, tally: Tally) -> None:
    """One day of the program."""
    clock = StandingClock(dt.datetime.combine(life.day, dt.time(8)))
    with opened(home, life, clock) as app:
        trail, keys = list[str](), list[str]()
        try:
            async with app.run_test(size=chance.choice(SIZES)) as pilot:
                for _ in range(inputs):
                    if app.return_code is not None:
                        break
                    before, were = _stands(app), settings(home)
                    newest, acted = _newest(home)
                    page = _page(app)
                    tally.pages[page] += 1
                    keys = keys or _walk(chance)
                    trail.append(await _input(pilot, chance, keys, clock))
                    marks, now = marks_since(home, newest), settings(home)
                    tally.marks += len(marks)
                    if page not in _OF_OTHER_DAYS:
                        assert marks in ([], [before]), f"marks {marks}, while {before} was on screen"
                    if now != were and were is not None:
                        assert _newest(home)[1] > acted, f"set without an action: {were} {now}"
        except Exception as error:
            kept = [str(each) for each in (error, error.__cause__ or "") if str(each)]
            tally.wrong.append(f"{type(error).__name__} {kept} on {life.day}, after {trail[-12:]}")
    tally.days += 1
    # Each start of the program freezes what is loaded by then: here that is what was left of the last one.
    gc.unfreeze()


@contextlib.contextmanager
def opened(home: Path, life: Life, clock: StandingClock) -> Iterator[App[int]]:
    """The program on this family's files, or on those it left there the day before."""
    path, places = home / "family.toml", Places(home, home)
    family = load(path) if path.exists() else life.family
    if family and life.family:
        family = family._replace(known_until=life.family.known_until)
    app: App[int]
    if family is None:
        journal = Journal.open(home, clock)
        context = open_context(places, default(life.day), life.day, journal, saved=False)
        app = WarmupApp(context, journal, clock, welcome=lambda new: welcomed(places, new, life.day, journal))
    else:
        context = context_at(home, clock, family, life.day)
        assert context.journal is not None
        journal = context.journal
        if life.calendar:
            days = context.year.mornings[-9:]
            offers = [Offer(f"Day [b]{n}[/b]", (day,), n % 2 == 0, n % 3 == 0) for n, day in enumerate(days)]
            app = CalendarApp(context, clock, offers)
        else:
            app = WarmupApp(context, journal, clock, guest=life.guest, takes_turns=life.together)
    yield app
    journal.shut()


def settings(home: Path) -> tuple[object, ...] | None:
    """What stands in the family's file and is no look, cover or day; None before there is one."""
    if not (home / "family.toml").exists():
        return None
    family = load(home / "family.toml")
    children = tuple((child.nickname, child.prompts, child.resting, child.reads) for child in family.children)
    return (
        *(children, family.first_day, family.weekdays, family.prompts, family.animal, family.adult),
        *(family.pennies, family.toddler, family.without, family.held_weeks, family.skipped_weeks),
    )


def _newest(home: Path) -> tuple[int, int]:
    """The number of the newest action in the log, of all children, and how many there are."""
    with closing(sqlite3.connect(home / "journal.db")) as db:
        newest, count = db.execute("SELECT max(rowid), count(*) FROM actions").fetchone()
        return int(newest or 0), int(count)


def marks_since(home: Path, newest: int) -> list[tuple[str, int]]:
    """The marks on a morning's prompts made since an action: whose, and the prompt's position."""
    with closing(sqlite3.connect(home / "journal.db")) as db:
        return db.execute(
            "SELECT child, position FROM actions WHERE what = 'mark' AND rowid > ?", (newest,)
        ).fetchall()


def _stands(app: App[int]) -> tuple[str, int] | None:
    """The prompt on screen: whose, and its position."""
    screens = [screen for screen in app.screen_stack if isinstance(screen, MorningScreen)]
    found = screens[0].session if screens else None
    return (found.context.child.journal_name, found.position) if found and found.prompt else None


def _page(app: App[int]) -> str:
    """What is on screen, in the words of the table of actions."""
    state = getattr(app.screen, "state", getattr(app.screen, "STATE", None))
    return state.value if isinstance(state, State) else "a blank screen"


def _walk(chance: random.Random) -> list[str]:
    """Now and then, the keys that open something of the menu or of the guide, and something in that."""
    way = chance.random()
    if way > 0.03:
        return []
    first = ["?", "i"] if way < 0.003 else ["full_stop"]
    deeper = chance.choices(("down", "enter", "enter", "k", "j", "n"), k=chance.randrange(6))
    return [*first, *["down"] * chance.randrange(_LINES), "enter", *deeper]


async def _input(pilot: Pilot[int], chance: random.Random, keys: list[str], clock: StandingClock) -> str:
    """One input: the next of ``keys``, or any. Gives what it was."""
    width, height = pilot.app.size
    kind = chance.random()
    if kind < 0.02:
        size = chance.choice(SIZES)
        await pilot.resize_terminal(*size)
        did = f"size {size}"
    elif kind < 0.022:
        clock.moment += dt.timedelta(days=1)
        did = "midnight"
    elif keys:
        did = keys.pop(0)
        await pilot.press(did)
    elif kind < 0.3:
        at = chance.randrange(width), chance.randrange(height)
        did = f"click {at}"
        with contextlib.suppress(OutOfBounds):
            await pilot.click(offset=at)
    else:
        did = chance.choice(OFTEN if kind < 0.65 else KEYS)
        await pilot.press(did)
    await pilot.pause()
    return did


def main(inputs: int, seed: int) -> int:
    """Run until so many inputs were taken, and print how many each page got."""
    chance, tally = random.Random(seed), Tally()
    settle_by_the_loop(setattr)
    while tally.inputs < inputs:
        with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
            life, home = chance.choice(LIVES), Path(folder, "family")
            home.mkdir()
            if life.own:
                (home / "own.toml").write_text(OWN, "utf-8")
            for _ in range(8):
                # The calendar is one page, and a form that was typed full of letters is never taken.
                short = life.calendar or not (life.family or (home / "family.toml").exists())
                many = min(20 if short else 120, inputs - tally.inputs)
                asyncio.run(session(home, life, many, chance, tally))
                life = life._replace(day=life.day + dt.timedelta(1))
                if tally.inputs >= inputs:
                    break
    missed = [state.value for state in State if state.value not in tally.pages]
    if missed and inputs >= ENOUGH:
        tally.wrong.append(f"not reached: {', '.join(missed)}")
    summary = f"{inputs} inputs on {tally.days} days, {tally.marks} marks"
    return _findings.told(("page", "inputs"), tally.pages, summary, tally.wrong)


if __name__ == "__main__":
    asked = _arguments.parser("random_input", __doc__)
    asked.add_argument(
        "inputs", type=_arguments.positive, nargs="?", default=ENOUGH, help=f"how many ({ENOUGH})"
    )
    asked.add_argument("--seed", type=int, default=1, help="which ones (1)")
    given = asked.parse_args()
    sys.exit(main(given.inputs, given.seed))
