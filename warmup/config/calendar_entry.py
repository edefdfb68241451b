"""What a calendar has on a date, apart from what reads calendars: few need that loaded."""

import datetime as dt
from typing import NamedTuple


class Entry(NamedTuple):
    """An event on one of its dates: its name, its first and last date, and whether it takes whole days."""

    name: str
    first: dt.date
    last: dt.date
    whole: bool
