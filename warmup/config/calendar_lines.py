"""The content lines of an iCalendar file (RFC 5545, section 3.1) with the numbers they have in the file.

Lines may end as any system ends them, be folded anywhere, even within a letter, and hold UTF-8 or Latin-1.
What is in no form a calendar has is refused with its line. What no day off hangs on is passed over unread.
"""

import re
from pathlib import Path
from typing import NamedTuple

from warmup.config.toml_file import FileProblem, file_bytes
from warmup.text import shown

LIMIT = 5_000_000
"""The largest calendar that is read, in bytes."""
ADVICE = "Nothing was changed. Fix that line, or export the calendar once more."
_DEEPEST = 8
_NAME = re.compile(r"([A-Za-z0-9-]+)[;:]")
_KEPT = frozenset({
    "DTSTART", "DTEND", "DURATION", "RRULE", "RDATE", "EXDATE", "RECURRENCE-ID", "SUMMARY", "STATUS", "UID",
    "TZID", "TZOFFSETFROM", "TZOFFSETTO", "X-WR-TIMEZONE",
})  # fmt: skip
"""The properties on which days off hang, or the name of one."""


class Line(NamedTuple):
    """A content line: where it begins in the file, from 1; the name of its property; all of it, unfolded."""

    number: int
    name: str
    text: str


class Component(NamedTuple):
    """What stands between BEGIN and END: the lines of its own that count, and the components inside."""

    name: str
    number: int
    lines: list[Line]
    inside: list["Component"]

    def every(self, name: str) -> list[Line]:
        """The lines of a property."""
        return [line for line in self.lines if line.name == name]

    def first(self, name: str) -> Line | None:
        """The first line of a property; None where there is none."""
        return next((line for line in self.lines if line.name == name), None)


def problem(path: Path, line: Line, expected: str, found: str | None = None) -> FileProblem:
    """What is wrong with a line: its value, unless ``found`` says something else."""
    value = line.text.partition(":")[2] if found is None else found
    return FileProblem(
        path, line.number, line.name, expected, shown(value) if found is None else found, ADVICE
    )


def calendars(path: Path) -> list[Component]:
    """The calendars of a file, of which there may be several. FileProblem where it is no calendar."""
    lines = _unfolded(path)
    found: list[Component] = []
    open_ones: list[Component] = []
    for number, text in lines:
        named = _NAME.match(text)
        if named is None or (not open_ones and text.strip().upper() != "BEGIN:VCALENDAR"):
            expected = "a line of a calendar like SUMMARY:Fall break" if open_ones else "BEGIN:VCALENDAR"
            raise FileProblem(path, number, "", expected, shown(text), ADVICE)
        line = Line(number, named[1].upper(), text)
        match line.name:
            case "BEGIN":
                begun = Component(text.partition(":")[2].strip().upper(), number, [], [])
                if len(open_ones) == _DEEPEST:
                    raise problem(path, line, "a calendar that is not so deep", f"{_DEEPEST} levels")
                (open_ones[-1].inside if open_ones else found).append(begun)
                open_ones.append(begun)
            case "END":
                if text.partition(":")[2].strip().upper() != open_ones[-1].name:
                    raise problem(
                        path, line, f"END:{open_ones[-1].name[:40]}, begun on line {open_ones[-1].number}"
                    )
                open_ones.pop()
            case name if name in _KEPT:
                open_ones[-1].lines.append(line)
    if open_ones or not found:
        last = lines[-1][0] if lines else 1
        expected = f"END:{open_ones[-1].name[:40]}" if open_ones else "BEGIN:VCALENDAR"
        raise FileProblem(path, last, "", expected, "the end of the file", ADVICE)
    return found


def _unfolded(path: Path) -> list[tuple[int, str]]:
    """The content lines with the numbers of the lines they begin on. Blank ones are left out."""
    raw = file_bytes(path, LIMIT, "Nothing was changed.").removeprefix(b"\xef\xbb\xbf")
    raw = raw.replace(b"\r\n", b"\n").replace(b"\r", b"\n")
    if b"\0" in raw:
        line = raw.count(b"\n", 0, raw.index(b"\0")) + 1
        raise FileProblem(path, line, "", "text", "a NUL byte", ADVICE)
    whole: list[tuple[int, bytearray]] = []
    for number, each in enumerate(raw.split(b"\n"), start=1):
        if each[:1] in (b" ", b"\t") and whole:
            whole[-1][1].extend(each[1:])
        elif each.strip():
            whole.append((number, bytearray(each)))
    try:
        return [(number, each.decode("utf-8")) for number, each in whole]
    except UnicodeDecodeError:
        return [(number, each.decode("latin-1")) for number, each in whole]
