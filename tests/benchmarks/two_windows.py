"""Two windows on one morning: ``python -m tests.benchmarks.two_windows [ACTIONS] [SEED]`` (2000, 1).

Two sessions, each with its own journal on one file, do seeded random actions. After each the file is read
by plain SQL: a mark that was made must lie on the prompt which that window showed, every other mark must be
where it was (a swap may take that of the prompt it replaced), a refused action must have changed nothing,
and an undo must bring back what stood there before. The child's window, in a process of its own, looks after
each action, and must be at the prompt that was worked on last. Exit code 1 where one of these does not hold.
"""

import datetime as dt
import multiprocessing
import sqlite3
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from multiprocessing.connection import Connection
from pathlib import Path
from random import Random
from typing import NamedTuple

from tests.benchmarks import _arguments
from tests.benchmarks._findings import told
from tests.household import TODAY, StandingClock, context_at
from warmup import skills
from warmup.journal.journal import Changed
from warmup.journal.watching import Watch
from warmup.model import Mark
from warmup.session.session import Session, begin, resume
from warmup.session.undoing import CannotUndo

ACTIONS = {
    "mark": 9, "next": 6, "back": 4, "cue": 3, "undo": 4, "swap": 2, "hold": 1, "rough": 1, "easy": 1,
    "short": 1, "stop": 1, "known": 1, "new": 1,
}  # fmt: skip


class OnDisk(NamedTuple):
    """What the file says: items and standing marks by (session, position), and which days were rough."""

    items: dict[tuple[int, int], str]
    marks: dict[tuple[int, int], str]
    rough: dict[int, int]


def on_disk(path: Path) -> OnDisk:
    """The file as it is, read without any code of the program."""
    db = sqlite3.connect(path)
    items = {(n, at): item for n, at, item in db.execute("SELECT sitting, position, item FROM prompts")}
    marks = {(n, at): mark for n, at, mark in db.execute("SELECT sitting, position, mark FROM marks") if mark}
    rough = dict(db.execute("SELECT sitting, rough FROM sittings"))
    db.close()
    return OnDisk(items, marks, rough)


def do(session: Session, action: str, mark: Mark) -> bool:
    """Do an action; whether it did anything that is logged."""
    match action:
        case "mark":
            shown = session.prompt
            session.mark(mark)
            return shown is not None
        case "next":
            session.next()
        case "back":
            session.back()
        case "cue":
            session.next_cue()
        case "swap":
            return session.swap()
        case "hold":
            return session.hold_back()
        case "rough":
            session.toggle_rough()
            return True
        case "easy":
            return bool(session.others_easy())
        case "short":
            return session.shorten()
        case "stop":
            return session.stop_early()
        case "known":
            before = session.items, session.context.child.opened
            session.know_already()
            return (session.items, session.context.child.opened) != before
        case "new":
            session.turn_new()
            return True
    return False


def wrong(action: str, session: Session, seen: tuple[int, str, Mark], was: OnDisk, now: OnDisk) -> str:
    """What is wrong with the file after an action that was done; empty when nothing is."""
    at, item, mark = seen
    place = (session.number, at)
    expected = {each: was.marks[each] for each in was.marks if now.items.get(each) == was.items[each]}
    if action in ("swap", "hold", "short", "stop", "mark", "known", "new"):
        lost = {each for each in was.marks.keys() - expected.keys() if each != place}
        if lost:
            return f"{action}: marks of other prompts went: {sorted(lost)}"
    if action == "mark" and item:
        if now.items.get(place) != item:
            return f"mark: the prompt that was seen, {item}, is no longer at {at}"
        expected[place] = mark.value
    if action == "easy":
        added = {each: now.marks[each] for each in now.marks.keys() - expected.keys()}
        if set(added.values()) - {Mark.FLUENT.value}:
            return f"easy: other marks were made: {added}"
        expected |= added
    return "" if now.marks == expected else f"{action}: marks {now.marks} instead of {expected}"


def stage(home: Path, asked: Connection) -> None:
    """The child's window: at each question it looks, and answers which session and position it shows."""
    watch = Watch(home, dt.datetime.combine(TODAY, dt.time(8)))
    while asked.recv():
        watch.look(TODAY)
        found = watch.found
        asked.send(found and (found.key[2], found.about.position))


@contextmanager
def child_window(home: Path) -> Iterator[Connection]:
    """Such a window in a process of its own, since its looks would let go of this one's locks."""
    here, there = multiprocessing.Pipe()
    process = multiprocessing.get_context("spawn").Process(target=stage, args=(home, there))
    process.start()
    yield here
    here.send(False)
    process.join()


def at_hand(path: Path) -> tuple[int, int] | None:
    """The session that was touched last, and its position, read without any code of the program."""
    db = sqlite3.connect(path)
    row: tuple[int, int] | None = db.execute(
        "SELECT sitting, position FROM sittings ORDER BY touched DESC LIMIT 1"
    ).fetchone()
    db.close()
    return row


def campaign(home: Path, count: int, rng: Random, shown: Connection) -> tuple[Counter[str], list[str]]:
    """Do the actions; how often each was done or refused, and what was wrong."""
    clock = StandingClock(dt.datetime.combine(TODAY, dt.time(8)))
    done: Counter[str] = Counter()
    found: list[str] = []
    windows = _opened(home, clock)
    before: list[OnDisk] = []
    for n in range(count):
        here = [each for each in on_disk(home / "journal.db").marks if each[0] == windows[0].number]
        if len(here) >= 5 and rng.random() < 0.15:
            # A morning is over: the next session, begun by both windows at once.
            windows = [_again(each) for each in windows]
            windows[0].close()
            numbers = [begin(each.context, each.journal, clock).number for each in windows]
            done["begun by both at once"] += 1
            if numbers[0] != numbers[1] or numbers[0] != windows[0].number + 1:
                found.append(f"{n}: two sessions were begun: {numbers}")
            windows, before = [_again(each) for each in windows], []
        shown.send(True)
        if (at := shown.recv()) != (last := at_hand(home / "journal.db")):
            found.append(f"{n}: the child's window is at {at}, not at {last}")
        done["looks of the child's window"] += 1
        turn = rng.randrange(2)
        session, action = windows[turn], rng.choices([*ACTIONS], [*ACTIONS.values()])[0]
        mark = rng.choice(list(Mark))
        was = on_disk(home / "journal.db")
        seen = (session.position, session.prompt.item if session.prompt else "", mark)
        try:
            if action == "undo":
                undone = session.undo()
                now = on_disk(home / "journal.db")
                if undone and before and now != (stood := before.pop()):
                    if held_since(session, stood, now):
                        done["undone, without what was held back"] += 1
                        # All positions after it are others now, so what stood there can't be compared.
                        before.clear()
                        continue
                    found.append(f"{n}: undo of {undone.what} did not bring back what stood there")
                done["undone" if undone else "nothing to undo"] += 1
                continue
            logged = do(session, action, mark)
        except (Changed, CannotUndo):
            if on_disk(home / "journal.db") != was:
                found.append(f"{n}: {action} was refused and changed something")
            windows[turn] = _again(session)
            done[f"{action} refused"] += 1
            continue
        now = on_disk(home / "journal.db")
        if complaint := wrong(action, session, seen, was, now):
            found.append(f"{n}: {complaint}")
        if logged:
            before.append(was)
        done[action] += 1
    return done, found


def held_since(session: Session, stood: OnDisk, now: OnDisk) -> bool:
    """Whether only prompts of levels that are held back by now did not come again."""
    n = session.number
    was, here = ([item for (each, _), item in sorted(d.items.items()) if each == n] for d in (stood, now))
    gone = [item for item in was if item not in here]
    held, places = session.context.child.held, [skills.locate(item) for item in gone]
    return (
        bool(gone)
        and here == [item for item in was if item not in gone]
        and all(f"{place.skill.id}:{place.level.key}" in held for place in places)
        and sorted(now.marks.values()) == sorted(stood.marks.values())
    )


def _opened(home: Path, clock: StandingClock) -> list[Session]:
    """Two windows at once: each has looked for a session and found none before either begins one."""
    contexts = [context_at(home, clock) for _ in range(2)]
    sessions = []
    for context in contexts:
        assert context.journal is not None
        sessions.append(begin(context, context.journal, clock))
    return sessions


def _again(session: Session) -> Session:
    """The session as a window that was told of a change shows it."""
    found = resume(session.context, session.journal, session.clock)
    assert found is not None
    return found


def main(count: int, seed: int) -> int:
    """Run the campaign and print its figures."""
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder, "home")
        home.mkdir()
        with child_window(home) as shown:
            done, found = campaign(home, count, Random(seed), shown)
    refused = sum(times for name, times in done.items() if name.endswith("refused"))
    summary = f"{count} actions, {refused} refused as changed elsewhere"
    return told(("action", "times"), done, summary, found)


if __name__ == "__main__":
    sys.exit(main(*_arguments.count_and_seed("two_windows", __doc__, "actions", 2000)))
