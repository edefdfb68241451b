"""What a key must get past before it does anything: a bounce of the same key, and midnight."""

import datetime as dt

from warmup.session.context import Clock
from warmup.text import CLOCK_YEARS
from warmup.tui.actions import BY_ID

BOUNCE = dt.timedelta(milliseconds=100)
"""The same key again within this time was pressed once (from memory: switches bounce for 5 to 25 ms, and
a key held down repeats every 30 ms; nobody asks a prompt so fast)."""
LANDING = dt.timedelta(milliseconds=500)
"""For this long the key that opened a page does nothing on it: the second press was meant for the page
before."""
REPEATED = frozenset({
    "next", "back", "cue", "line_up", "line_down", "week_less", "week_more", "field_up", "field_down",
    "day_up", "day_down", "day_left", "day_right", "paper_up", "paper_down", "column_left", "column_right",
    "day_before", "day_after", "days_back", "days_on", "week_before", "week_after",
})  # fmt: skip
"""Actions that are not guarded: repeating one by mistake loses nothing."""


class Bounces:
    """Knows the last key and whether it opened a page."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._last, self._at, self._opened = "", dt.datetime.min, False

    def stops(self, action: str) -> bool:
        """Whether this key is the last one once more, too soon to be meant.

        On another page the same key may do another action: it is known by the keys that the two share.
        """
        now = self._clock()
        since = now.replace(tzinfo=None) - self._at.replace(tzinfo=None)
        soon = dt.timedelta(0) <= since < (LANDING if self._opened else BOUNCE)
        again = soon and bool(self._last) and _one_key(action, self._last)
        stopped = again and (self._opened or action not in REPEATED)
        self._opened = stopped and self._opened
        self._last, self._at = action, now
        return stopped

    def opened_a_page(self) -> None:
        """The last key opened another page, or left one."""
        self._opened = True


def _one_key(action: str, other: str) -> bool:
    return action == other or not {*BY_ID[action].keys_now}.isdisjoint(BY_ID[other].keys_now)


class Midnight:
    """Knows which date was asked about when the clock no longer says the morning's own date."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self.offered: dt.date | None = None
        self._stayed: dt.date | None = None

    def asks(self, today: dt.date) -> bool:
        """Whether the clock says another date than the morning's, and nobody was asked about it yet."""
        now = self._clock().date()
        if now.year not in CLOCK_YEARS:
            return False  # The clock was set wrong: there is no such morning.
        if now in (today, self._stayed, self.offered):
            if now != self.offered:
                self.offered = None
            return False
        self.offered = now
        return True

    def stay(self) -> None:
        """The adult finishes the morning that was open; another date is asked about again."""
        self._stayed, self.offered = self.offered, None

    def go(self) -> None:
        """The adult takes the new day's morning."""
        self._stayed = self.offered = None
