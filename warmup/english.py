"""Words for numbers, days and months, as they are said in a United States classroom.

No "and" after hundred; a hyphen from twenty-one to ninety-nine (US Government Publishing Office
Style Manual, from memory). Names are constants so that no locale can change them.
"""

import datetime as dt
import re
from collections.abc import Sequence
from functools import cache

_SMALL = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
]
_TENS = ["zero", "ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_ORDINAL = {
    "one": "first", "two": "second", "three": "third", "five": "fifth",
    "eight": "eighth", "nine": "ninth", "twelve": "twelfth",
}  # fmt: skip

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
"""Monday first, so that ``WEEKDAYS[date.weekday()]`` is the day's name."""

WALL_WEEK = ("Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday")
"""The week as a wall calendar in the United States prints it."""

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July",
    "August", "September", "October", "November", "December",
)  # fmt: skip
"""January first: ``MONTHS[date.month - 1]``."""


def date_words(day: dt.date, *, weekday: bool = True, year: bool = False, short: bool = False) -> str:
    """A date as people read it in the United States: "Monday, August 31, 2026" when all is asked for.

    ``short`` cuts the names of weekday and month to three letters: "Mon Aug 31".
    """
    letters = 3 if short else None
    parts = [f"{MONTHS[day.month - 1][:letters]} {day.day}"]
    if weekday:
        parts.insert(0, WEEKDAYS[day.weekday()][:letters])
    if year:
        parts.append(f"{day.year}")
    return (" " if short else ", ").join(parts)


def number_word(number: int) -> str:
    """The number in words, from 0 to 999: ``47`` is "forty-seven", ``120`` "one hundred twenty"."""
    if not 0 <= number <= 999:
        raise ValueError(f"no word for {number}: only 0 to 999 are said here")
    if number < 20:
        return _SMALL[number]
    if number < 100:
        tens, ones = divmod(number, 10)
        return _TENS[tens] + (f"-{_SMALL[ones]}" if ones else "")
    hundreds, rest = divmod(number, 100)
    return f"{_SMALL[hundreds]} hundred" + (f" {number_word(rest)}" if rest else "")


def ordinal_word(number: int) -> str:
    """The ordinal in words, from 1 to 999: ``21`` is "twenty-first"."""
    if number < 1:
        raise ValueError(f"no ordinal for {number}")
    words = number_word(number)
    stem, cut, last = words.rpartition("-") if "-" in words else words.rpartition(" ")
    if last in _ORDINAL:
        return stem + cut + _ORDINAL[last]
    if last.endswith("y"):
        return f"{stem}{cut}{last[:-1]}ieth"
    return f"{stem}{cut}{last}th"


def count_words(numbers: Sequence[int]) -> str:
    """Numbers as they are said in a row: "twenty-nine, thirty, thirty-one"."""
    return ", ".join(map(number_word, numbers))


def listed(things: Sequence[str], last: str = "and") -> str:
    """Things in a sentence: "a dime, a nickel and a penny"."""
    if len(things) < 2:
        return "".join(things)
    return f"{', '.join(things[:-1])} {last} {things[-1]}"


def plural(count: int, one: str, many: str = "") -> str:
    """The noun that goes with ``count``: "sock" for 1, "socks" for 2, or ``many`` where it is irregular."""
    return one if count == 1 else (many or f"{one}s")


_SIGNS = {
    "+": "and", "−": "take away", "×": "times", "=": "is", ">": "is more than", "<": "is less than",
    "%": "hundredths", "°": "degrees",
}  # fmt: skip
_PARTS = {2: "half", 3: "third", 4: "quarter"}
_SAID = (
    r"(?P<date>\d{4}-(?P<month>\d\d)-(?P<day>\d\d))|(?P<hour>\d{1,2}):(?P<minute>\d\d)"
    r"|(?P<over>\d)/(?P<under>[234])(?!\d)|(?P<whole>\d+)\.(?P<digits>\d+)"
    r"|(?P<nth>\d+)(?:st|nd|rd|th)\b|(?P<point>\d)\. |(?P<cents>\d+)¢"
    rf"|(?P<of>{'|'.join(MONTHS)}) (?P<dated>\d\d?)\b|(?P<number>\d+)|(?P<sign> ?[+−×=><%°] ?)"
)


def in_words(text: str) -> str:
    """A working with no digit and no sign left, as it is read out: "7 + 3 = 10" is "seven and three is ten".

    A child who reads numerals could read the answer off otherwise.
    """
    return re.sub(r" +(?= |$)", "", _said_signs().sub(_said, text))


@cache
def _said_signs() -> re.Pattern[str]:
    # Compiled when a working is first shown: no first frame has one.
    return re.compile(_SAID)


def _said(found: re.Match[str]) -> str:
    part = found.groupdict()
    match found.lastgroup:
        case "day" | "date":
            return f"{MONTHS[int(part['month']) - 1]} {ordinal_word(int(part['day']))}"
        case "minute":
            return _time_word(int(part["hour"]), int(part["minute"]))
        case "under":
            over, name = int(part["over"]), _PARTS[int(part["under"])]
            return f"{number_word(over)} {plural(over, name, 'halves' if name == 'half' else '')}"
        case "digits":
            after = " ".join(number_word(int(digit)) for digit in part["digits"])
            return f"{_any_number_word(int(part['whole']))} point {after}"
        case "nth":
            return ordinal_word(int(part["nth"]))
        case "point":
            return f"{number_word(int(part['point']))}: "
        case "dated":
            return f"{part['of']} {ordinal_word(int(part['dated']))}"
        case "cents":
            return f"{_any_number_word(int(part['cents']))} {plural(int(part['cents']), 'cent')}"
        case "number":
            return _any_number_word(int(part["number"]))
        case _:
            return f" {_SIGNS[found[0].strip()]} "


def _time_word(hour: int, minute: int) -> str:
    if minute == 0:
        return f"{number_word(hour)} o’clock"
    return f"half past {number_word(hour)}" if minute == 30 else f"{number_word(hour)} {number_word(minute)}"


def _any_number_word(number: int) -> str:
    thousands, rest = divmod(number, 1000)
    if not thousands:
        return number_word(rest)
    return f"{number_word(thousands)} thousand" + (f" {number_word(rest)}" if rest else "")
