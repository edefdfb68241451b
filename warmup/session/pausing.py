"""When nothing new opens: for a school week, as the close may offer, or until the adult says, on any day."""

import datetime as dt
from collections.abc import Sequence

from warmup.engine.eligibility import UNTIL_SAID
from warmup.english import date_words
from warmup.model import Asked, Mark, Morning, skill_and_name
from warmup.schoolyear import SchoolYear
from warmup.session.context import Context


def paused(context: Context) -> dt.date | None:
    """The last day without new levels, today or later; ``UNTIL_SAID`` where none is named. Else None."""
    until = context.adjustments.paused
    return until if until is not None and until >= context.today else None


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


def pause_end(year: SchoolYear, today: dt.date, mornings: int) -> dt.date:
    """The last of so many planned mornings after today, or of those the year still has."""
    ahead = [date for date in year.mornings if date > today][:mornings]
    return ahead[-1] if ahead else today


def week_of_history(context: Context) -> tuple[Asked, ...]:
    """What was asked since the last morning before this week."""
    year = context.year
    before = year.begins(context.morning().week) - year.before
    return context.history(since=year.mornings[before - 1] if 0 < before <= len(year.mornings) else None)


def wobbling(history: Sequence[Asked], morning: Morning, year: SchoolYear) -> bool:
    """Whether more than a third of the skills marked so far in this review week had a wobble in it.

    A wobble is a mark of hesitated or not yet, or a cue. A rough day lowers nothing: it is left out here
    as well. False in any other week.
    """
    if not morning.review:
        return False
    wobbles: dict[str, bool] = {}
    for line in reversed(history):
        if year.morning(line.date).week != morning.week:
            break
        if not line.marked or line.rough:
            continue
        skill, _ = skill_and_name(line.item)
        wobbles[skill] = wobbles.get(skill, False) or line.mark is not Mark.FLUENT or line.cue > 0
    return 3 * sum(wobbles.values()) > len(wobbles)
