"""What the tests of calendar files share: an invented district's file, and small ones made on the spot."""

import datetime as dt
from pathlib import Path

from warmup.config.calendar_entry import Entry
from warmup.config.calendar_file import entries
from warmup.config.family import Child, Family

DISTRICT = Path(__file__).with_name("district.ics")
"""A calendar with what such files have of oddities: CRLF, a mark at its start, folded lines, its own zone,
a second calendar, times in UTC, what was canceled and what was moved."""
TODAY = dt.date(2026, 9, 1)
FAMILY = Family(first_day=dt.date(2026, 8, 31), began=dt.date(2026, 8, 31), children=(Child("Bean"),))


def event(*lines: str) -> str:
    """The lines of an event, between its BEGIN and END."""
    return "\n".join(("BEGIN:VEVENT", *lines, "END:VEVENT"))


def calendar(*parts: str) -> str:
    """A calendar of these events and other parts."""
    return "\n".join(
        ("BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Invented//EN", *parts, "END:VCALENDAR", "")
    )


def written(folder: Path, content: str | bytes) -> Path:
    """A calendar file with this in it."""
    path = folder / "days.ics"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def read(
    folder: Path,
    content: str | bytes,
    first: dt.date = dt.date(2026, 8, 31),
    last: dt.date = dt.date(2027, 8, 30),
) -> list[Entry]:
    """What a calendar with this content has in a year."""
    return list(entries(written(folder, content), first, last))
