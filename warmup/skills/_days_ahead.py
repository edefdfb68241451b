"""Days ahead: what the skill `date` asks from one date to another, and over the end of a month."""

import datetime as dt

from warmup import pictures
from warmup.english import number_word, ordinal_word, plural
from warmup.model import Countdown, Cue, Morning
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._calendar import (
    ahead,
    also_said,
    day_name,
    days_left,
    month_days,
    month_name,
    near_by,
    said,
    supposed,
)
from warmup.skills._home import upper
from warmup.skills.base import Draft

_WEEK = 7


def _within_a_week(morning: Morning) -> Countdown | None:
    """The nearest day that matters, when it is at most a week ahead."""
    return next((c for c in morning.countdowns if 1 <= (c.day - morning.date).days <= _WEEK), None)


def _count(number: int, *nouns: str) -> tuple[str, ...]:
    """A number of days with its noun, as it may be said."""
    return tuple(f"{number_word(number)} {plural(number, noun)}" for noun in nouns)


def sleeps(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """How many sleeps until the next day that matters, or until a day of the week."""
    today, thing = day_name(morning.date), _within_a_week(morning)
    until = thing.day if thing else ahead(morning.date, rng.between(1, _WEEK - 1))
    count, day = (until - morning.date).days, day_name(until)
    if thing:
        say = _to_a_day_that_matters(thing.name, day if count < _WEEK else "", rng)
    else:
        say = rng.phrasing(
            f"How many sleeps until {day}?",
            f"How many nights until {day}?",
            f"How many times do we go to bed before {day}?",
        )
    strip = pictures.DayStrip(first=today, pointed=(today, day) if count < _WEEK else (today,))
    tomorrow = day_name(ahead(morning.date, 1))
    return Draft(
        say=say,
        answer=number_word(count),
        accept=_count(count, "sleep", "night", "day"),
        working=" → ".join(day_name(ahead(morning.date, step))[:3] for step in range(count + 1)),
        cues=(
            Cue(f"Today is {today}. Sleep, and it is tomorrow. What day is that?"),
            Cue(
                f"Finger on {today}. Hop to {day}, a hop for each night."
                if count < _WEEK
                else "Hop along the strip, a hop for each night, and around to its start.",
                strip,
            ),
            Cue(f"Put up a finger for the night before {tomorrow}. The child keeps going to {day}."),
        ),
        watch_for=watch_for,
        given={"from": morning.date.isoformat(), "to": until.isoformat()},
        picture=strip,
    )


def _to_a_day_that_matters(name: str, day: str, rng: SeededRandom) -> Phrasing:
    """Said with the day of the week it falls on, or as a week from today, when both are the same."""
    when = f"on {day}" if day else "a week from today"
    return rng.phrasing(
        f"{upper(name)} is {when}. How many sleeps until then?",
        f"How many sleeps until {name}? It’s {when}.",
        f"{upper(name)} is {when}. How many nights until then?",
    )


def few_days_on(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """The date two to six days on, inside the month. ValueError when no two days are left of it."""
    steps = rng.between(2, min(_WEEK - 1, days_left(today)))
    target, word = ahead(today, steps), number_word(steps)
    here = ordinal_word(today.day)
    tomorrow = ahead(today, 1)
    return Draft(
        say=rng.phrasing(
            f"Today is the {here}. What is the date in {word} days?",
            f"What date is {word} days after the {here}?",
            f"Today is the {here}. Count on {word} days. What is the date?",
        ),
        answer=said(target),
        accept=near_by(target),
        working=f"{today.day} + {steps} = {target.day}",
        cues=(
            Cue(f"Today is the {here}. What date is tomorrow?"),
            Cue(
                f"Finger on {number_word(today.day)}. Hop {word} squares on.",
                pictures.MonthCalendar(today.year, today.month, pointed=(today.day,)),
            ),
            Cue(
                f"Begin: “{day_name(tomorrow)} the {ordinal_word(tomorrow.day)}…” "
                f"The child keeps going to {day_name(target)}."
            ),
        ),
        watch_for=watch_for,
        given={"from": today.isoformat(), "steps": steps},
        picture=pictures.MonthCalendar(today.year, today.month, pointed=(today.day,), upto=today.day),
    )


def _ends(last: int, today: dt.date) -> list[dt.date]:
    """The last days of months ``last`` days long: this one or the one before, which the child has heard of.

    The months in order come weeks later, so another month is asked about only where neither is so long.
    """
    ends = (today.replace(day=1) - dt.timedelta(1), ahead(today, days_left(today)))
    near = [end for end in ends if end.day == last]
    return near or [
        dt.date(today.year, month, last) for month in range(1, 13) if month_days(today.year, month) == last
    ]


def beside(start: dt.date, step: int, today: dt.date, rng: SeededRandom) -> Phrasing:
    """Asks for the date just after another (``step`` 1) or just before it (-1)."""
    pretend = supposed(said(start), said(today))
    if step > 0:
        return rng.phrasing(
            f"What date comes just after {said(start)}?",
            f"{pretend}. What is tomorrow’s date?",
            f"{said(start)}. What date comes next?",
        )
    return rng.phrasing(
        f"What date comes just before {said(start)}?",
        f"{pretend}. What was yesterday’s date?",
        f"I say {said(start)}. You say the date just before.",
    )


def to_the_next_month(last: int, today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """The date after the last of a month ``last`` days long, or before the first of the month after it."""
    end = rng.pick(_ends(last, today))
    new = ahead(end, 1)
    step = 1 if rng.coin() else -1
    start, target = (end, new) if step > 0 else (new, end)
    say = beside(start, step, today, rng)
    if step > 0:
        lead = f"Say together: “{said(ahead(end, -1))}, {said(end)}…” Turn the page. The child keeps going."
        second = f"Finger on the last square of {month_name(end)}. Which page is next, and how does it begin?"
        first, page = (
            f"Is there one more square in {month_name(end)}?",
            pictures.MonthCalendar(end.year, end.month, (), (last,)),
        )
    else:
        lead = f"Say together: “{said(ahead(end, -2))}, {said(ahead(end, -1))}…” The child keeps going."
        second = f"Turn back to {month_name(end)} together. Find the last square."
        first, page = (
            f"Which month comes before {month_name(new)}?",
            pictures.MonthCalendar(end.year, end.month),
        )
    return Draft(
        say=say,
        answer=said(target),
        accept=also_said(target),
        working=f"{month_name(end)} has {last} days: {last}, then 1 of {month_name(new)}",
        cues=(Cue(first), Cue(second, page), Cue(lead)),
        watch_for=watch_for,
        given={"from": start.isoformat(), "steps": step},
    )
