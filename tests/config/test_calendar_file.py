"""Calendar files: what stands in them date by date, whoever wrote them, and what is refused with its line."""

import datetime as dt
from pathlib import Path

import pytest

from tests.config.calendars import DISTRICT, calendar, event, read, written
from warmup.config import calendar_lines
from warmup.config.calendar_entry import Entry
from warmup.config.calendar_file import LONGEST_NAME, MOST_EVENTS, NO_NAME, entries
from warmup.config.toml_file import FileProblem, Missing

day = dt.date
OCTOBER = day(2026, 10, 1), day(2026, 10, 31)


def days(folder: Path, *lines: str) -> list[tuple[str, str, bool]]:
    """The dates of one event, as texts, and whether it takes whole days."""
    found = read(folder, calendar(event("SUMMARY:x", *lines)))
    return [(str(each.first), str(each.last), each.whole) for each in found]


# -- which dates an event takes


@pytest.mark.parametrize(
    ("lines", "first", "last", "whole"),
    [
        # RFC 5545, section 3.6.1: a DATE start without an end is that day; DTEND is not part of the event.
        (["DTSTART;VALUE=DATE:20261012"], "2026-10-12", "2026-10-12", True),
        (["DTSTART;VALUE=DATE:20261012", "DTEND;VALUE=DATE:20261013"], "2026-10-12", "2026-10-12", True),
        (["DTSTART;VALUE=DATE:20261012", "DTEND;VALUE=DATE:20261017"], "2026-10-12", "2026-10-16", True),
        # Section 3.6.1, the last example: June 28 to July 8, with DTEND July 9 (2007 there).
        (["DTSTART;VALUE=DATE:20270628", "DTEND;VALUE=DATE:20270709"], "2027-06-28", "2027-07-08", True),
        (["DTSTART;VALUE=DATE:20261012", "DURATION:P2D"], "2026-10-12", "2026-10-13", True),
        (["DTSTART;VALUE=DATE:20261012", "DURATION:P1W"], "2026-10-12", "2026-10-18", True),
        # Against the standard, but written by some: an end on the day it begins, or no VALUE.
        (["DTSTART;VALUE=DATE:20261012", "DTEND;VALUE=DATE:20261012"], "2026-10-12", "2026-10-12", True),
        (["DTSTART:20261012", "DTEND:20261014"], "2026-10-12", "2026-10-13", True),
        # A time without an end ends when it begins (section 3.6.1).
        (["DTSTART:20261012T090000"], "2026-10-12", "2026-10-12", False),
        (["DTSTART:20261012T090000", "DTEND:20261012T120000"], "2026-10-12", "2026-10-12", False),
        (["DTSTART:20261012T180000", "DURATION:PT6H"], "2026-10-12", "2026-10-12", False),
        (["DTSTART:20261012T180000", "DURATION:PT6H1M"], "2026-10-12", "2026-10-13", False),
        (["DTSTART:20261012T000000", "DTEND:20261014T000000"], "2026-10-12", "2026-10-13", True),
        (["DTSTART:20261012T000000", "DTEND:20261012T235900"], "2026-10-12", "2026-10-12", True),
        (["DTSTART:20261012T000000", "DTEND:20261012T235800"], "2026-10-12", "2026-10-12", False),
        (["DTSTART:20261012T000100", "DTEND:20261014T000000"], "2026-10-12", "2026-10-13", False),
    ],
    ids=lambda value: " ".join(value) if isinstance(value, list) else None,
)
def test_the_dates_of_an_event(tmp_path: Path, lines: list[str], first: str, last: str, whole: bool) -> None:
    assert days(tmp_path, *lines) == [(first, last, whole)]


def test_a_time_is_told_by_the_clock_where_it_is(tmp_path: Path) -> None:
    """A quarter past eleven at night in New York is the next day in UTC, and still that day."""
    evening = "DTSTART;TZID=America/New_York:20261012T231500"
    assert days(tmp_path, evening, "DTEND:20261013T033000Z") == [("2026-10-12", "2026-10-12", False)]
    windows = "DTSTART;TZID=Eastern Standard Time:20261012T231500"
    assert days(tmp_path, windows, "DTEND:20261013T033000Z") == [("2026-10-12", "2026-10-12", False)]


ZONE = """BEGIN:VTIMEZONE
TZID:Our Valley
BEGIN:STANDARD
DTSTART:20071104T020000
RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU
TZOFFSETFROM:-0400
TZOFFSETTO:-0500
END:STANDARD
BEGIN:DAYLIGHT
DTSTART:20070311T020000
RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU
TZOFFSETFROM:-0500
TZOFFSETTO:-0400
END:DAYLIGHT
END:VTIMEZONE"""


@pytest.mark.parametrize("home", [[], [ZONE], ["X-WR-TIMEZONE:America/New_York"], ["X-WR-TIMEZONE:\\"]])
def test_a_time_in_utc_is_told_by_the_calendar_s_zone(tmp_path: Path, home: list[str]) -> None:
    """Midnight in New York is four in the morning in UTC in October, five in November (15 U.S.C. 260a)."""
    october = event("SUMMARY:x", "DTSTART:20261012T040000Z", "DTEND:20261013T040000Z")
    november = event("SUMMARY:x", "DTSTART:20261111T050000Z", "DTEND:20261112T050000Z")
    found = read(tmp_path, calendar(*home, october, november))
    known = bool(home) and "\\" not in home[0]
    assert [each.whole for each in found] == [known, known]
    assert [each.last.day for each in found] == ([12, 11] if known else [13, 12])


def test_a_zone_only_the_calendar_tells_bounds_its_rules(tmp_path: Path) -> None:
    """UNTIL is in UTC (section 3.3.10): noon in the valley on November 25 is five o'clock there."""
    weekly = ("SUMMARY:x", "DTSTART;TZID=Our Valley:20261028T120000", "DURATION:PT1H")
    for until, count in (("165959Z", 4), ("170000Z", 5)):
        rule = f"RRULE:FREQ=WEEKLY;UNTIL=20261125T{until}"
        assert len(read(tmp_path, calendar(ZONE, event(*weekly, rule)))) == count
    off = "EXDATE:20261104T170000Z"
    rule = "RRULE:FREQ=WEEKLY;COUNT=3"
    found = read(tmp_path, calendar(ZONE, event(*weekly, rule, off)))
    assert [each.first.day for each in found] == [28, 11]


@pytest.mark.parametrize(
    ("until", "last"),
    [("20261014", 14), ("20261014T000000Z", 14), ("20261014T045959Z", 14), ("20261013", 13)],
)
def test_the_end_of_a_rule_of_whole_days(tmp_path: Path, until: str, last: int) -> None:
    found = days(tmp_path, "DTSTART;VALUE=DATE:20261012", f"RRULE:FREQ=DAILY;UNTIL={until}")
    assert [first for first, _, _ in found] == [f"2026-10-{n}" for n in range(12, last + 1)]


def test_the_end_of_a_rule_by_the_clock_of_the_event(tmp_path: Path) -> None:
    """A date is meant whole; a time in UTC is told by the calendar's zone, where the event has none."""
    timed = days(tmp_path, "DTSTART:20261012T090000", "RRULE:FREQ=DAILY;UNTIL=20261014")
    assert [first[8:] for first, _, _ in timed] == ["12", "13", "14"]
    daily = event("DTSTART;VALUE=DATE:20261012", "RRULE:FREQ=DAILY;UNTIL=20261015T035959Z")
    for home, count in ((["X-WR-TIMEZONE:America/New_York"], 3), ([], 4)):
        assert len(read(tmp_path, calendar(*home, daily))) == count


def test_an_event_of_a_million_years_ends_some_years_behind(tmp_path: Path) -> None:
    ((_, last, whole),) = days(tmp_path, "DTSTART;VALUE=DATE:20261012", "DURATION:P365000000D")
    assert whole and last == str(day(2026, 10, 12) + dt.timedelta(3999))


# -- what comes again, does not, or is moved


def test_more_dates_and_dates_less(tmp_path: Path) -> None:
    lines = ["DTSTART;VALUE=DATE:20261012", "RDATE;VALUE=DATE:20261014,20261020", "RDATE;VALUE=DATE:20261103"]
    lines += [
        "RRULE:FREQ=WEEKLY;COUNT=3",
        "EXDATE;VALUE=DATE:20261014,20261026",
        "EXDATE;VALUE=DATE:20270101",
    ]
    assert [first[5:] for first, _, _ in days(tmp_path, *lines)] == ["10-12", "10-19", "10-20", "11-03"]
    timed = ["DTSTART:20261012T090000", "RRULE:FREQ=DAILY;COUNT=3", "EXDATE;VALUE=DATE:20261013"]
    assert [first[5:] for first, _, _ in days(tmp_path, *timed)] == ["10-12", "10-14"]
    period = ["DTSTART:20261012T090000", "RDATE;VALUE=PERIOD:20261020T090000/PT2H"]
    assert [first[5:] for first, _, _ in days(tmp_path, *period)] == ["10-12", "10-20"]


INSTEAD = "RECURRENCE-ID;VALUE=DATE:20261012"
SERIES = ("UID:s", "SUMMARY:x", "DTSTART;VALUE=DATE:20261005", "RRULE:FREQ=WEEKLY;COUNT=4")


@pytest.mark.parametrize(
    ("change", "found"),
    [
        ([INSTEAD, "DTSTART;VALUE=DATE:20261013"], ["5 x", "13 y", "19 x", "26 x"]),
        ([INSTEAD, "DTSTART;VALUE=DATE:20261012"], ["5 x", "12 y", "19 x", "26 x"]),
        (
            [INSTEAD, "DTSTART;VALUE=DATE:20261012", "STATUS:CANCELLED"],
            ["5 x", "19 x", "26 x"],
        ),
        (["RECURRENCE-ID;RANGE=THISANDFUTURE;VALUE=DATE:20261012", "DTSTART;VALUE=DATE:20261013"],
         ["5 x", "13 y", "20 y", "27 y"]),
        (["RECURRENCE-ID;RANGE=THISANDFUTURE;VALUE=DATE:20261012", "DTSTART;VALUE=DATE:20261012",
          "STATUS:CANCELLED"], ["5 x"]),
        (["RECURRENCE-ID;VALUE=DATE:20261013", "DTSTART;VALUE=DATE:20261014"],
         ["5 x", "12 x", "14 y", "19 x", "26 x"]),
        (["DTSTART;VALUE=DATE:20261014"], ["5 x", "12 x", "14 y", "19 x", "26 x"]),
    ],
    ids=lambda value: " ".join(value),
)  # fmt: skip
@pytest.mark.parametrize("order", [1, -1])
def test_a_change_stands_in_for_one_time_of_its_series(
    tmp_path: Path, change: list[str], found: list[str], order: int
) -> None:
    """RFC 5545, section 3.8.4.4: the instance with this RECURRENCE-ID, and with RANGE all that come after."""
    both = [event(*SERIES), event("UID:s", "SUMMARY:y", *change)]
    read_now = read(tmp_path, calendar(*both[::order]), *OCTOBER)
    assert [f"{each.first.day} {each.name}" for each in read_now] == found


def test_a_change_of_another_series_or_calendar_changes_nothing(tmp_path: Path) -> None:
    change = ("SUMMARY:y", INSTEAD, "DTSTART;VALUE=DATE:20261013")
    expected = ["5 x", "12 x", "13 y", "19 x", "26 x"]
    for content in (
        calendar(event(*SERIES), event("UID:t", *change)),
        calendar(event(*SERIES)) + calendar(event("UID:s", *change)),
    ):
        assert [f"{each.first.day} {each.name}" for each in read(tmp_path, content, *OCTOBER)] == expected


def test_what_is_canceled_is_left_out(tmp_path: Path) -> None:
    for status, count in (("CANCELLED", 0), ("CANCELLED".title(), 0), ("CONFIRMED", 4), ("TENTATIVE", 4)):
        assert len(read(tmp_path, calendar(event(*SERIES, f"STATUS:{status}")))) == count


# -- whoever wrote it


END = "DTEND;VALUE=DATE:20261014"
ONE = calendar(
    event("SUMMARY:Fall break für alle", "DTSTART;VALUE=DATE:20261012", "DTEND;VALUE=DATE:20261014")
)
BREAK = [Entry("Fall break für alle", day(2026, 10, 12), day(2026, 10, 13), True)]


@pytest.mark.parametrize(
    "content",
    [
        ONE.encode(),
        ONE.replace("\n", "\r\n").encode(),
        ONE.replace("\n", "\r").encode(),
        b"\xef\xbb\xbf" + ONE.encode(),
        ONE.encode("latin-1"),
        ONE.rstrip("\n").encode(),
        ONE.replace("\n", "\n\n").encode(),
        ONE.replace("SUMMARY:Fall", "SUMM\n ARY:Fa\n\tll").encode(),
        # Folded by octets, within a letter (section 3.1).
        ONE.encode().replace("ü".encode(), b"\xc3\n \xbc"),
        ONE.replace("SUMMARY", "summary").replace("DTSTART", "DtStart").encode(),
        ONE.replace("SUMMARY:", 'SUMMARY;LANGUAGE=en;X-A="a:b;c":').encode(),
        ONE.replace("SUMMARY", "X-ODD;;;:\x01\nSUMMARY").encode(),
        ONE.replace("BEGIN:VEVENT", "BEGIN:VTODO\nDUE:never\nEND:VTODO\nBEGIN:VEVENT", 1).encode(),
        ONE.encode() + calendar().encode(),
    ],
)
def test_the_same_days_come_of_every_way_to_write_them(tmp_path: Path, content: bytes) -> None:
    assert read(tmp_path, content) == BREAK


@pytest.mark.parametrize(
    ("summary", "name"),
    [
        ("SUMMARY:Snow\\, ice\\; and\\nwind", "Snow, ice; and wind"),
        ("SUMMARY:\x1b[31mred\x07", "[31mred"),
        ("SUMMARY:[bold]x[/bold]", "[bold]x[/bold]"),
        ("SUMMARY:\u202eevil", "evil"),
        ("SUMMARY:", NO_NAME),
        ("SUMMARY:\u200b \x07", NO_NAME),
        ("X-NOT:a name", NO_NAME),
        (f"SUMMARY:{'x' * 10_000}", "x" * LONGEST_NAME),
    ],
)
def test_a_name_is_shown_as_written_and_never_obeyed(tmp_path: Path, summary: str, name: str) -> None:
    (found,) = read(tmp_path, calendar(event(summary, "DTSTART;VALUE=DATE:20261012")))
    assert found.name == name


def test_a_district_s_file_is_read_in_full() -> None:
    found = entries(DISTRICT, day(2026, 8, 31), day(2027, 6, 30))
    named = [(each.name, str(each.first), str(each.last), each.whole) for each in found]
    assert (
        "Fall break, no classes (both schools; bus drivers too)",
        "2026-10-12",
        "2026-10-13",
        True,
    ) in named
    # Midnight to midnight by the zone that only this file tells, written in UTC.
    assert ("Veterans Day", "2026-11-11", "2026-11-11", True) in named
    assert ("Thanksgiving recess", "2026-11-25", "2026-11-27", True) in named
    assert ("Winter break", "2026-12-21", "2027-01-03", True) in named
    assert ("Summer vacation", "2027-06-11", "2027-08-29", True) in named
    early = [first for name, first, _, whole in named if name == "Early release" and not whole]
    # Each Wednesday from September 2 to December 16, 2026, but October 14 (moved) and November 25 (left out).
    assert len(early) == 16 - 2 and "2026-10-14" not in early and "2026-11-25" not in early
    assert early[-1] == "2026-12-16"
    assert ("Early release, on a Thursday", "2026-10-15", "2026-10-15", False) in named
    assert [first for name, first, _, _ in named if name == "Staff planning day"] == [
        "2027-03-05", "2027-03-08", "2027-03-09",
    ]  # fmt: skip
    assert not [name for name, *_ in named if name.startswith("Ski")]
    assert len([name for name, *_ in named if name.casefold() == "spring recess"]) == 4
    # Beside these fifteen and the four and three: twelve more events, each once in this year.
    assert len(named) == len(early) + 1 + 4 + 3 + 12


# -- what is refused


@pytest.mark.parametrize(
    ("content", "says"),
    [
        ("", "line 1: expected BEGIN:VCALENDAR, found the end of the file"),
        ("\n\n", "line 1: expected BEGIN:VCALENDAR, found the end of the file"),
        ("Dear parents,\n", 'line 1: expected BEGIN:VCALENDAR, found "Dear parents,"'),
        ("<html>\n", 'line 1: expected BEGIN:VCALENDAR, found "<html>"'),
        ("BEGIN:VCARD\nEND:VCARD\n", 'line 1: expected BEGIN:VCALENDAR, found "BEGIN:VCARD"'),
        (b"PK\x03\x04\0\0", "line 1: expected text, found a NUL byte"),
        (ONE.replace("END:VEVENT\n", ""), "line 8, END: expected END:VEVENT, begun on line 4, found"),
        (ONE.partition("END:VEVENT")[0], "line 7: expected END:VEVENT, found the end of the file"),
        (ONE + "X:1\n", 'line 10: expected BEGIN:VCALENDAR, found "X:1"'),
        (ONE.replace("SUMMARY:Fall", "SUMMARY Fall"), "line 5: expected a line of a calendar like"),
        (ONE.replace("DTSTART;VALUE=DATE:20261012\n", ""), "line 4, BEGIN:VEVENT: expected an event"),
        (ONE.replace("20261012", "20261312"), 'line 6, DTSTART: expected a date like 20261126 or a time like '
         '20261126T090000, found "20261312"'),
        (ONE.replace("20261014", "tomorrow"), 'line 7, DTEND: expected a date like 20261126'),
        (ONE.replace("20261014", "20261011"), "line 7, DTEND: expected an end that is not"),
        (ONE.replace(END, "DURATION:-P1D"), "line 7, DURATION: expected an end that"),
        (ONE.replace(END, "DURATION:1 day"), "line 7, DURATION: expected a duration"),
        (ONE.replace("20261012", "10011012"), "line 6, DTSTART: expected a date between the years"),
        (ONE.replace("DTEND;", "EXDATE;"), None),
        (ONE.replace(END, "EXDATE:20261014,never"), "line 7, EXDATE: expected a date"),
        (ONE.replace(END, "RDATE:never"), "line 7, RDATE: expected a date like"),
        (ONE.replace(END, "RECURRENCE-ID:P1D"), "line 7, RECURRENCE-ID: expected a date"),
        (ONE.replace("DTSTART;VALUE", 'DTSTART;VAL"UE'), "line 6, DTSTART: expected"),
        ("BEGIN:VCALENDAR\n" + "BEGIN:X\n" * 9, "line 9, BEGIN: expected a calendar that is not so deep"),
        (calendar(ZONE.replace("FREQ=YEARLY", "FREQ=SECONDLY"), "X-WR-TIMEZONE:Our Valley"),
         "line 8, RRULE: expected a zone that changes on days of the year"),
        (calendar(ZONE.replace("-0400", "late"), "X-WR-TIMEZONE:Our Valley"),
         "line 4, BEGIN:VTIMEZONE: expected a time zone that can be used"),
    ],
)  # fmt: skip
def test_a_file_that_is_none_is_refused_in_a_sentence_with_its_line(
    tmp_path: Path, content: str | bytes, says: str | None
) -> None:
    if says is None:
        assert len(read(tmp_path, content)) == 1
        return
    with pytest.raises(FileProblem) as caught:
        read(tmp_path, content)
    said = str(caught.value)
    assert said.startswith(f"days.ics, {says}") and "\n" not in said
    assert said.endswith("Nothing was changed. Fix that line, or export the calendar once more.")


def test_a_zone_told_by_one_calendar_is_none_of_the_next(tmp_path: Path) -> None:
    utc = event("SUMMARY:x", "DTSTART:20261012T040000Z", "DTEND:20261013T040000Z")
    assert read(tmp_path, calendar(ZONE, utc))[0].whole
    assert not read(tmp_path, calendar("X-WR-TIMEZONE:Our Valley", utc))[0].whole


def test_the_line_is_that_of_the_file_whatever_was_folded_before(tmp_path: Path) -> None:
    folded = ONE.replace("SUMMARY:Fall", "SUMMARY:F\n a\n l\n l").replace("20261014", "never")
    with pytest.raises(FileProblem, match=r"days\.ics, line 10, DTEND"):
        read(tmp_path, folded)


def test_a_huge_file_a_folder_and_no_file_are_refused(tmp_path: Path) -> None:
    with pytest.raises(Missing):
        entries(tmp_path / "days.ics", *OCTOBER)
    path = written(tmp_path, "")
    with path.open("wb") as file:
        file.truncate(calendar_lines.LIMIT + 1)
    with pytest.raises(FileProblem, match=r"expected a file of at most 5000000 bytes.*Nothing was changed\."):
        entries(path, *OCTOBER)
    path.unlink()
    path.mkdir()
    with pytest.raises(FileProblem, match="expected a file, found a folder"):
        entries(path, *OCTOBER)


def test_more_events_than_may_be_are_refused_with_the_first_that_is_too_many(tmp_path: Path) -> None:
    one = event("DTSTART:20261012")
    line = 4 + 3 * MOST_EVENTS
    with pytest.raises(FileProblem, match=rf"line {line}, BEGIN: expected at most {MOST_EVENTS} events"):
        read(tmp_path, calendar(*[one] * (MOST_EVENTS + 1)))


def test_a_long_name_of_a_part_makes_no_long_sentence(tmp_path: Path) -> None:
    with pytest.raises(FileProblem) as caught:
        read(tmp_path, calendar(f"BEGIN:{'X' * 5000}", "END:VEVENT"))
    assert len(str(caught.value)) < 300 and f"expected END:{'X' * 40}," in str(caught.value)
