"""When nothing new opens: for a school week, as the close may offer, or until the adult says, on any day."""

import datetime as dt

from warmup.engine.eligibility import UNTIL_SAID, pause_end, paused_until
from warmup.english import date_words
from warmup.session.context import Context


def paused(context: Context) -> dt.date | None:
    """The last day without new levels, today or later; ``UNTIL_SAID`` where none is named. Else None."""
    return paused_until(context.adjustments, context.today)


def until_words(until: dt.date) -> str:
    """Until when nothing new comes, in a sentence."""
    return f"Nothing new until {'you say' if until == UNTIL_SAID else date_words(until)}."


def turn_week(context: Context) -> None:
    """Take the offer of a school week with nothing new, or take back what pause there is."""
    until = paused(context)
    # On the last day of one such week the next may be wanted.
    taken = until is not None and until > context.today
    year = context.year
    context.editor.pause(None if taken else pause_end(year, context.today, year.mornings_a_week))


def turn_new(context: Context) -> None:
    """Let nothing new open until the adult says, or let new things come again."""
    context.editor.pause(None if paused(context) else UNTIL_SAID)
