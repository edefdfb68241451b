"""What may stand behind an option: read, or refused with what was expected."""

import argparse
import datetime as dt


def name(text: str) -> str:
    """A name as it is shown; empty for none."""
    # The help needs neither, and loads neither.
    from warmup.config.toml_file import LONGEST_NAME
    from warmup.text import clean, shown, visible

    found = clean(text)
    # Nothing at all is no name, as where none is given.
    if len(found) > LONGEST_NAME or (text and not visible(found)):
        raise argparse.ArgumentTypeError(
            f"expected a name of at most {LONGEST_NAME} letters, found {shown(text)}"
        )
    return found


def date(text: str) -> dt.date:
    """A date as ISO 8601 writes it."""
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"expected a date like 2026-09-01, found {text!r}") from None
    from warmup.text import CLOCK_YEARS

    if day.year not in CLOCK_YEARS:
        raise argparse.ArgumentTypeError(f"expected a year from 1900 to 2200, found {day.year}")
    return day


def count(text: str) -> int:
    """A number from 1 to 10000."""
    if not text.isascii() or not text.isdigit() or not 1 <= int(text[:6]) <= 10_000:
        raise argparse.ArgumentTypeError(f"expected a number from 1 to 10000, found {text[:20]!r}")
    return int(text)


def week_number(text: str) -> int:
    """A week of lessons."""
    from warmup.schoolyear import WEEKS

    if not text.isascii() or not text.isdigit() or not 1 <= int(text[:6]) <= WEEKS:
        raise argparse.ArgumentTypeError(f"expected a week from 1 to {WEEKS}, found {text[:20]!r}")
    return int(text)
