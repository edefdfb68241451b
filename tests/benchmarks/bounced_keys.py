"""Every key pressed twice by a bounce: ``python -m tests.benchmarks.bounced_keys [MORNINGS] [SEED]`` (1, 1).

At the opening, at every prompt and at the close of seeded mornings each key is pressed once on one copy of
the files, and twice within a tenth of a second on another; at the last prompt and the close it comes again,
on a third copy, after a third of a second, as from a finger that did not see the page change. The bounce must
leave on disk what one press does, and never leave the program where one press does not. The slow one must not
leave it either, and make no batch of marks. Exit code 1 where one of these does not hold.
"""

import asyncio
import datetime as dt
import itertools
import shutil
import sys
import tempfile
from collections import Counter
from pathlib import Path
from random import Random
from typing import NamedTuple

from textual.pilot import Pilot

from tests.benchmarks import _arguments
from tests.benchmarks._findings import told
from tests.benchmarks._stays import Stays, marks_on_disk, shown_anew
from tests.benchmarks.overnight import Clock
from tests.household import FAMILY, TODAY, context_at
from warmup.config.family import Family, load
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.session import begin
from warmup.tui.actions import actions_of
from warmup.tui.morning import MorningScreen

KEYS = [(action.id, key) for action in actions_of(MorningScreen.STATES) for key in action.every_key]


class Outcome(NamedTuple):
    """What a key left behind: standing marks, the items asked, the family, and whether it left."""

    marks: dict[tuple[str, str], str]
    items: tuple[str, ...]
    closed: bool
    family: Family
    left: bool


async def outcome(
    app: Stays, pilot: Pilot[int], clock: Clock, home: Path, keys: list[str], gap: float
) -> Outcome:
    """Start on these files, press the keys, and see what is there then."""
    app.journal = Journal.open(home, clock)
    context = context_at(home, clock, load(home / "family.toml"), clock().date())
    context.journal, app.context, app.left = app.journal, context, 0
    screen = await shown_anew(app, pilot)
    for key in keys:
        await pilot.press(key)
        clock.go(gap)
    await pilot.pause()
    (row, *_) = app.journal.sessions_of(context.child.journal_name, context.today)
    items = screen.session.items if screen.session else ()
    app.journal.shut()
    return Outcome(
        marks_on_disk(home / "journal.db"), items, row.closed, load(home / "family.toml"), app.left > 0
    )


def prepared(home: Path, clock: Clock, rng: Random) -> list[Path]:
    """Copies of one morning's files: at its opening, each prompt, some of them marked, and the close."""
    day = clock().date()
    context = context_at(home, clock, FAMILY._replace(known_until=day - dt.timedelta(1)), day)
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    copies = []
    while True:
        place = "opening" if session.at_opening else session.position
        copies.append(home.with_name(f"{home.name}-{place}"))
        shutil.copytree(home, copies[-1])
        if session.at_close:
            break
        if session.at_opening or rng.random() < 0.5:
            session.next()
        else:
            session.mark(rng.choice(list(Mark)))
    context.journal.shut()
    return copies


def wrong(once: Outcome, twice: Outcome, later: Outcome | None = None) -> list[str]:
    """What the second press did that it must not."""
    found = []
    if twice != once:
        found.append("the bounce did something")
    if later and later.left and not once.left:
        found.append("the slow second press left the program")
    if later and len(later.marks) - len(once.marks) > 1:
        found.append("the slow second press marked several")
    return found


async def campaign(count: int, rng: Random, folder: Path) -> tuple[Counter[str], list[str]]:
    """All keys at all places of so many mornings."""
    clock = Clock(dt.datetime.combine(TODAY, dt.time(8)))
    done, found = Counter[str](), list[str]()
    first = folder / "first"
    first.mkdir()
    context = context_at(first, clock)
    assert context.journal is not None
    app = Stays(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        for n in range(count):
            home = folder / f"morning-{n}"
            home.mkdir()
            # A Wednesday of another week.
            clock.moment = dt.datetime.combine(TODAY, dt.time(8)) + dt.timedelta(7 * rng.randrange(-20, 9))
            places = prepared(home, clock, rng)
            for place, (action, key) in itertools.product(places, KEYS):
                outcomes = []
                ways = [([key], 1.0), ([key, key], rng.uniform(0, 0.09)), ([key, key], 0.3)]
                for keys, gap in ways[: 3 if place in places[-2:] else 2]:
                    copy = folder / "copy"
                    shutil.copytree(place, copy)
                    outcomes.append(await outcome(app, pilot, clock, copy, keys, gap))
                    shutil.rmtree(copy)
                    clock.go(1)
                done[action] += 1
                found += [f"{place.name}, {key} ({action}): {each}" for each in wrong(*outcomes)]
    return done, found


def main(count: int, seed: int) -> int:
    """Run the campaign and print its figures."""
    with tempfile.TemporaryDirectory() as folder:
        done, found = asyncio.run(campaign(count, Random(seed), Path(folder)))
    return told(
        ("action", "pressed twice, at every prompt and the close"),
        done,
        f"{done.total()} keys pressed twice, fast and slowly",
        found,
    )


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("bounced_keys", __doc__, "mornings", 1)))
