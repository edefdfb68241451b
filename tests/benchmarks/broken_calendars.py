"""Broken calendar files: ``python -m tests.benchmarks.broken_calendars [COUNT]`` (300).

Each of COUNT files has one or two faults (seeded), such as editors, mail and disks make. It must give days,
or be refused in one sentence that names a line, with no traceback; the family's own file stays byte for byte
as it was. Exit code 1 where one of these fails.
"""

import contextlib
import datetime as dt
import io
import os
import sys
import tempfile
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import _arguments
from tests.config.calendars import DISTRICT, TODAY, calendar, event
from warmup.cli.main import DONE, UNUSABLE
from warmup.cli.main import main as warmup
from warmup.randomness import SeededRandom

OURS = """school.first_day = 2026-08-31
school.days_off = ["fourth Thursday of November", {from = 2026-12-21, to = 2026-12-24}] # ours
school.extra = [2026-12-05, 2026-08-29]
[[child]]
nickname = "Bean"
"""
"""The family's file, with a remark."""


class Outcome(NamedTuple):
    """What became of one broken file, and what is wrong with that."""

    refused: bool
    wrong: tuple[str, ...]


def mutated(good: bytes, luck: SeededRandom) -> bytes:
    """The file with one or two faults in it, such as editors, mail and disks make."""
    data = bytearray(good)
    for _ in range(1 + luck.below(2)):
        at, length = luck.below(len(data) + 1), luck.below(40)
        lines = bytes(data).split(b"\n")
        row = luck.below(len(lines))
        match luck.below(9):
            case 0:
                data[at : at + 1] = bytes([luck.below(256)])
            case 1:
                del data[at : at + length]
            case 2:
                data[at:at] = data[at : at + length]
            case 3:
                del data[at:]
                data = data or bytearray(b"\n")
            case 4:
                del lines[row]
                data = bytearray(b"\n".join(lines) or b"\n")
            case 5:
                other = luck.below(len(lines))
                lines[row], lines[other] = lines[other], lines[row]
                data = bytearray(b"\n".join(lines))
            case 6:
                name, _, _ = lines[row].partition(b":")
                odd = (b"", b"99999999", b"P999999999D", b"FREQ=SECONDLY", b"FREQ=DAILY;BYMONTHDAY=32", b"-")
                lines[row] = name + b":" + odd[luck.below(len(odd))]
                data = bytearray(b"\n".join(lines))
            case 7:
                digits = [place for place, byte in enumerate(data) if chr(byte).isdigit()] or [0]
                data[digits[luck.below(len(digits))]] = ord("0") + luck.below(10)
            case _:
                lines[row:row] = [
                    (b" ", b"\x00", b"END:VEVENT", b"BEGIN:VCALENDAR", b"X\xff:\xc3")[luck.below(5)]
                ]
                data = bytearray(b"\n".join(lines))
    return bytes(data)


GOOD = (
    DISTRICT.read_bytes(),
    calendar(
        event("UID:a", "SUMMARY:Break", "DTSTART;VALUE=DATE:20261012",
              "RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=2MO"),
        event("UID:a", "SUMMARY:Break", "RECURRENCE-ID;VALUE=DATE:20261012", "DTSTART;VALUE=DATE:20261013"),
        event("UID:b", "SUMMARY:Game", "DTSTART;TZID=America/New_York:20260901T170000", "DURATION:PT2H",
              "RRULE:FREQ=WEEKLY;COUNT=20;BYDAY=TU,TH", "EXDATE;TZID=America/New_York:20260908T170000"),
    ).encode(),
)  # fmt: skip


def imported(seed: int, folder: Path, family: Path) -> Outcome:
    """What ``warmup days`` makes of a broken file, beside the family's file in its place."""
    path = folder / "broken.ics"
    path.write_bytes(mutated(GOOD[seed % 2], SeededRandom("broken calendar", seed)))
    code, out, err = _run("--import", str(path))
    refused = code == UNUSABLE
    wrong = [] if code in (DONE, UNUSABLE) else [f"exit code {code}"]
    if refused:
        if not err.startswith("warmup: broken.ics, line ") or err.count("\n") != 1:
            wrong.append("no line, or more than a sentence")
        if "Nothing was changed." not in err or "mistake" in err or out:
            wrong.append("it does not say that nothing was changed")
        if _run("--import", str(path), "--take", "all")[0] != UNUSABLE:
            wrong.append("its days were taken")
    elif not out or err:
        wrong.append("neither days nor a sentence")
    if not all(line.isprintable() for line in (out + err).splitlines()):
        wrong.append("what can't be printed was")
    if family.read_text("utf-8") != OURS:
        wrong.append("the family changed")
    return Outcome(refused, tuple(f"{each}: {err or out}" for each in wrong))


def _run(*words: str) -> tuple[int, str, str]:
    """The exit code of ``warmup days``, and what it printed."""
    out, err = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            code = warmup(["days", *words], lambda: dt.datetime.combine(TODAY, dt.time(8)))
        except SystemExit as ended:
            code = int(ended.code or 0)
    return code, out.getvalue(), err.getvalue()


def main(count: int) -> int:
    """Give COUNT broken files and print how many were refused, and what is wrong."""
    with tempfile.TemporaryDirectory() as name:
        home = Path(name) / "home"
        home.mkdir()
        os.environ["WARMUP_HOME"] = str(home)
        (home / "family.toml").write_text(OURS, "utf-8")
        outcomes = {seed: imported(seed, Path(name), home / "family.toml") for seed in range(count)}
    wrong = {seed: each.wrong for seed, each in outcomes.items() if each.wrong}
    print(f"{count} files, {sum(each.refused for each in outcomes.values())} refused, {len(wrong)} wrong")
    for seed, each in wrong.items():
        print(f"  {seed}: {'; '.join(each)}")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main(_arguments.number("broken_calendars", __doc__, "count", 300)))
