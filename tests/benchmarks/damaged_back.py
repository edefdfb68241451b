"""Damaged journals given to the commands: ``python -m tests.benchmarks.damaged_back [COUNT]`` (300).

Each of COUNT journals has flipped bits, is cut short, or holds odd values (seeded). It is given to ``merge``
and ``restore``; what those take is exported, the export damaged as well, and given to ``import``. Each must
be taken or refused in one sentence, with no traceback; the damaged file stays byte for byte as it was; the
family's own journal stays whole and loses no mark. Exit code 1 where one of these fails.
"""

import contextlib
import datetime as dt
import io
import os
import sqlite3
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import closing, suppress
from pathlib import Path
from random import Random
from typing import NamedTuple

from tests.benchmarks import _arguments
from tests.benchmarks.salvage import every_mark, flipped
from warmup.cli.main import main as warmup
from warmup.journal.journal import Action, Journal, MarkRow
from warmup.model import Mark

NOW = dt.datetime(2026, 11, 25, 8)
_TABLES = ("sittings", "prompts", "marks", "actions")
_ODD = (None, -1, 2**62, 1.5, b"\xff\x00", "", "\x1b[31m", "9999-99-99", "x" * 9000)


class Outcome(NamedTuple):
    """What became of one damaged journal: what each command did, and what is wrong with that."""

    did: tuple[str, ...]
    wrong: tuple[str, ...]


def written(folder: Path, days: range) -> Path:
    """Mornings of two children in a journal of its own, with actions."""
    journal = Journal.open(folder, lambda: NOW, window=folder.name)
    for day in days:
        for child in ("Bean", "Pip"):
            date, at = dt.date(2026, 11, day), f"2026-11-{day:02}T08:00:00+00:00"
            rows = [(f"count-on/{day}-{number}", "a") for number in range(8)]
            marks = [MarkRow(list(Mark)[number % 4], 0, "Jo", False, at) for number in range(8)]
            action = Action("others", 0, "null", '["fluent"]')
            journal.add_whole(child, date, "daily", "x" * 3000, rows, marks, action=action)
    journal.shut()
    return journal.path


def damage(path: Path, seed: int) -> None:
    """Flip bits of the file, cut it short, or put odd values into its rows."""
    chance, raw = Random(seed), path.read_bytes()
    match seed % 3:
        case 0:
            path.write_bytes(flipped(raw, seed))
        case 1:
            path.write_bytes(raw[: chance.randrange(len(raw))])
        case _:
            _odd_values(path, chance)


def _odd_values(path: Path, chance: Random) -> None:
    with closing(sqlite3.connect(path, isolation_level=None)) as db:
        db.execute("PRAGMA ignore_check_constraints = ON")
        for _ in range(chance.randrange(1, 6)):
            table = chance.choice(_TABLES)
            column = chance.choice([row[1] for row in db.execute(f"PRAGMA table_info({table})")])
            keys = "child, date, sitting" if table != "actions" else "id"
            row = db.execute(f"SELECT {keys} FROM {table} ORDER BY {keys}").fetchall()
            where = " AND ".join(f"{key} IS ?" for key in keys.split(", "))
            with suppress(sqlite3.Error):
                values = (chance.choice(_ODD), *chance.choice(row))
                db.execute(f"UPDATE {table} SET {column} = ? WHERE {where}", values)


def damage_text(folder: Path, seed: int) -> None:
    """Flip a bit of one file of an export, or cut it short."""
    chance = Random(seed)
    path = chance.choice(sorted(each for each in folder.rglob("*") if each.suffix in (".csv", ".toml")))
    raw = bytearray(path.read_bytes())
    if chance.random() < 0.4:
        raw = raw[: chance.randrange(len(raw))]
    else:
        raw[chance.randrange(len(raw))] ^= 1 << chance.randrange(8)
    path.write_bytes(raw)


def outcome(folder: Path, seed: int) -> Outcome:
    """Give one damaged journal to all three commands."""
    other = written(folder / "other", range(5, 12))
    damage(other, seed)
    raw = other.read_bytes()
    did, wrong = list[str](), list[str]()
    for command in ("merge", "restore"):
        home = folder / command
        own = written(home, range(2, 7))
        # What a flipped bit made later than a mark on the same prompt here is the later one.
        known = {read for read in every_mark(own) if command == "restore" or read.place[1] < "2026-11-05"}
        did.append(f"{command} {_run(home, wrong, command, str(other))}")
        kept = home / "journal-before-2026-11-25.db" if command == "restore" else own
        if not known <= every_mark(kept if kept.exists() else own):
            wrong.append(f"{command}: a mark of the family's own is gone")
        if any(": damaged (" in said for said in Journal.examine(home)):
            wrong.append(f"{command}: the family's own journal is not whole: {Journal.examine(home)}")
    if other.read_bytes() != raw:
        wrong.append("the damaged file was changed")
    target, home = folder / "out", folder / "merge"
    if _run(home, wrong, "export", "--all", str(target)) == 0:
        damage_text(target, seed)
        did.append(f"import {_run(folder / 'anew', wrong, 'import', str(target))}")
        if did[-1] != "import 0" and (folder / "anew").exists():
            wrong.append("import: something was begun though it was refused")
    return Outcome(tuple(did), tuple(wrong))


def _run(home: Path, wrong: list[str], *words: str) -> int:
    """The exit code of a command; what it says is looked at."""
    said, sorry = io.StringIO(), io.StringIO()
    with _at_home(home), contextlib.redirect_stdout(said), contextlib.redirect_stderr(sorry):
        code = warmup(words, lambda: NOW)
    lines = sorry.getvalue().splitlines()
    if code not in (0, 3) or (code == 3 and (len(lines) != 1 or not lines[0].startswith("warmup: "))):
        wrong.append(f"{words[0]} gave {code}: {lines}")
    return code


@contextlib.contextmanager
def _at_home(home: Path) -> Iterator[None]:
    """The family's place for one command, and an adult who says yes."""
    before, stdin = os.environ.get("WARMUP_HOME"), sys.stdin
    os.environ["WARMUP_HOME"], sys.stdin = str(home), io.StringIO("yes\n")
    try:
        yield
    finally:
        sys.stdin = stdin
        if before is None:
            del os.environ["WARMUP_HOME"]
        else:
            os.environ["WARMUP_HOME"] = before


def main(count: int) -> int:
    """Damage COUNT journals and print what became of them."""
    did, wrong = Counter[str](), list[str]()
    for seed in range(count):
        with tempfile.TemporaryDirectory() as folder:
            found = outcome(Path(folder), seed)
        did.update(found.did)
        wrong += [f"seed {seed}: {each}" for each in found.wrong]
    print(f"{count} damaged journals; by command and exit code: {dict(sorted(did.items()))}")
    print("\n".join(wrong) or "each was taken or refused in a sentence, and everything before was kept")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(_arguments.number("damaged_back", __doc__, "count", 300)))
