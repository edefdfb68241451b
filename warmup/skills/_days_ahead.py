"""Days ahead: what the skill `date` asks from one date to another, also past a month's end."""

import datetime as dt
from collections import Counter

from warmup import pictures
from warmup.english import WEEKDAYS, number_word, ordinal_word, plural
from warmup.model import Countdown, Cue, Morning
from warmup.pictures import Picture
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
# How far ahead, in days, a day that matters may lie and still be counted to past the month's end.
_FARTHEST = 21


def _nearest(morning: Morning, low: int, high: int) -> Countdown | None:
    """The nearest day that matters from ``low`` to ``high`` days ahead."""
    found = (c for c in morning.countdowns if low <= (c.day - morning.date).days <= high)
    return next(found, None)


def _count(number: int, *nouns: str) -> tuple[str, ...]:
    """A number of days with its noun, as it may be said."""
    return tuple(f"{number_word(number)} {plural(number, noun)}" for noun in nouns)


def sleeps(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """How many sleeps until the next day that matters, or until a day of the week."""
    today, thing = day_name(morning.date), _nearest(morning, 1, _WEEK)
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


def two_weeks(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """How many sleeps until a day 8 to 14 days ahead, of this month; or to the second of a named day."""
    today, thing = morning.date, _nearest(morning, _WEEK + 1, 2 * _WEEK)
    if thing and thing.day.month != today.month:
        thing = None  # Past the month's end is the next level's.
    if not thing and (days_left(today) <= _WEEK or rng.coin()):
        return _second_named(today, rng, watch_for)
    until = thing.day if thing else ahead(today, rng.between(_WEEK + 1, min(2 * _WEEK, days_left(today))))
    here, there = ordinal_word(today.day), ordinal_word(until.day)
    if thing:
        say = rng.phrasing(
            f"Today is the {here}. {upper(thing.name)} is on the {there}. How many sleeps?",
            f"{upper(thing.name)} comes on the {there}. It is the {here}. How many sleeps until then?",
            f"How many sleeps until {thing.name}? It is on the {there}. Today is the {here}.",
        )
    else:
        say = rng.phrasing(
            f"Today is the {here}. How many sleeps until the {there}?",
            f"Finger on the {here}. How many hops to the {there}?",
            f"Today is the {here}. How many nights until the {there}?",
        )
    page = pictures.MonthCalendar(
        today.year, today.month, pointed=_fingers(today.day, until.day, (until - today).days)
    )
    first = Cue(f"A week leads straight down to the {ordinal_word(today.day + _WEEK)}. Go on from there.")
    second = Cue(f"Finger on the {here}. Down a row for seven sleeps, then hop on.", page)
    return _across(today, until, (say, None, first, second), watch_for)


def _fingers(*days_and_count: int) -> tuple[int, ...]:
    """The days to point at, without the one that happens to be the count asked for."""
    *days, count = days_and_count
    return tuple(day for day in days if day != count)


def _second_named(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """Not the coming day of that name but the one after it."""
    until = ahead(today, _WEEK + rng.between(1, _WEEK - 1))
    here, day = day_name(today), day_name(until)
    # The coming one is told first: "this Friday" and "next Friday" mean different days to different people.
    near = until.toordinal() - today.toordinal() - _WEEK
    sleeps = f"{number_word(near)} {plural(near, 'sleep')}"
    say = rng.phrasing(
        f"{day} is {sleeps} off. How many sleeps to the {day} after?",
        f"In {sleeps} it is {day}. How many sleeps until the {day} after that?",
        f"In {sleeps} it’s {day}. How many nights until the {day} after?",
    )
    strip = pictures.DayStrip(first=here, pointed=(here, day))
    first = Cue(f"How many sleeps to this {day}? A week more takes us to the next.")
    second = Cue(f"Once around the strip is seven sleeps. Then hop on to {day}.", strip)
    return _across(today, until, (say, strip, first, second), watch_for)


def _across(
    today: dt.date, until: dt.date, parts: tuple[Phrasing, Picture | None, Cue, Cue], watch_for: str
) -> Draft:
    """A count of sleeps as a week and some more."""
    count = (until - today).days
    say, picture, first, second = parts
    return Draft(
        say=say,
        answer=number_word(count),
        accept=_count(count, "sleep", "night", "day", "hop"),
        working=f"{_WEEK} + {count - _WEEK} = {count}",
        cues=(first, second, Cue("Say together: “A week is seven…” The child counts the rest on fingers.")),
        watch_for=watch_for,
        given={"from": today.isoformat(), "to": until.isoformat()},
        picture=picture,
    )


def week_on(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """The date one week on or back, whichever lies in this month; either when both do."""
    ways = [step for step in (_WEEK, -_WEEK) if 1 <= today.day + step <= month_days(today.year, today.month)]
    step = rng.pick(ways)
    target = ahead(today, step)
    here = ordinal_word(today.day)
    if step > 0:
        say = rng.phrasing(
            f"Today is the {here}. What date is it in one week?",
            f"What date comes one week after the {here}?",
            f"Start at the {here}. Count on one week. What date is it?",
        )
    else:
        say = rng.phrasing(
            f"Today is the {here}. What date was it one week ago?",
            f"What date comes one week before the {here}?",
            f"Start at the {here}. Count back one week. What date is it?",
        )
    page = pictures.MonthCalendar(today.year, today.month, hidden=(target.day,), pointed=(today.day,))
    near = [ordinal_word(today.day + move * (1 if step > 0 else -1)) for move in (1, 2)]
    return Draft(
        say=say,
        answer=said(target),
        accept=near_by(target),
        working=f"{today.day} {'+' if step > 0 else '−'} 7 = {target.day}",
        cues=(
            Cue(f"A week from a {day_name(today)} it is {day_name(today)} again. Same column."),
            Cue(f"Finger on {number_word(today.day)}. Straight {'down' if step > 0 else 'up'} a row.", page),
            Cue(
                f"Hop {'on' if step > 0 else 'back'} for a week together: “the {near[0]}, the {near[1]}…” "
                "The child hops the rest."
            ),
        ),
        watch_for=watch_for,
        given={"from": today.isoformat(), "steps": step},
        picture=page,
    )


def over_the_end(morning: Morning, rng: SeededRandom, watch_for: str) -> Draft:
    """How many days from a date to one in the next month: to a day that matters where one lies so."""
    today = morning.date
    first_of_next = ahead(today, days_left(today) + 1)
    thing = next((c for c in morning.countdowns if _just_past(c.day, first_of_next, today)), None)
    near = thing or 1 <= days_left(today) <= 9
    start = today if near else ahead(first_of_next, -rng.between(2, 6))
    until = thing.day if thing else ahead(first_of_next, rng.between(0, 5))
    count, left = (until - start).days, days_left(start)
    month, after = month_name(start), month_name(until)
    return Draft(
        say=_over_the_end_said(start, until, thing, today, rng),
        answer=number_word(count),
        accept=_count(count, "sleep", "night", "day", "hop"),
        working=f"{month} has {start.day + left} days: {left} of them left, {left} + {until.day} = {count}",
        cues=(
            Cue(f"On which number does {month} end?"),
            Cue(
                f"Hop from the {ordinal_word(start.day)} to the last square. Turn the page and hop on."
                if left
                else "It is the last square. Turn the page and hop on.",
                pictures.MonthCalendar(start.year, start.month, pointed=_fingers(start.day, count)),
            ),
            Cue(
                f"Count the hops to the end of {month} together. The child keeps going into {after}."
                if left
                else f"Turn the page together, a hop into {after}. The child hops on."
            ),
        ),
        watch_for=watch_for,
        given={"from": start.isoformat(), "to": until.isoformat()},
        seconds=60,
    )


def _just_past(day: dt.date, first_of_next: dt.date, today: dt.date) -> bool:
    same = (day.year, day.month) == (first_of_next.year, first_of_next.month)
    return same and (day - today).days <= _FARTHEST


def _over_the_end_said(
    start: dt.date, until: dt.date, thing: Countdown | None, today: dt.date, rng: SeededRandom
) -> Phrasing:
    here, there = said(start), said(until)
    if thing:
        return rng.phrasing(
            f"Today is {here}. {upper(thing.name)} comes on {there}. How many sleeps?",
            f"{upper(thing.name)} is on {there}. It is {here} today. How many sleeps?",
            f"It is {here} today. How many sleeps until {thing.name} on {there}?",
        )
    ways = [
        f"From {here}, how many days to {there}?",
        f"Start on {here}. Hop to {there}. How many hops?",
        f"From {here} to {there}, how many nights?",
    ]
    if start == today:
        ways.append(f"Today is {here}. How many sleeps until {there}?")
    return rng.phrasing(*ways)


def to_the_next_month(last: int, today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """The date after the last of a month ``last`` days long, or before the first of the month after it."""
    months = [month for month in range(1, 13) if month_days(today.year, month) == last]
    end = dt.date(today.year, rng.pick(months), last)
    new = ahead(end, 1)
    step = 1 if rng.coin() else -1
    start, target = (end, new) if step > 0 else (new, end)
    pretend = supposed(said(start), said(today))
    if step > 0:
        say = rng.phrasing(
            f"What date comes just after {said(start)}?",
            f"{pretend}. What is tomorrow’s date?",
            f"{said(start)}. What date comes next?",
        )
        lead = f"Say together: “{said(ahead(end, -1))}, {said(end)}…” Turn the page. The child keeps going."
        second = f"Finger on the last square of {month_name(end)}. Which page is next, and how does it begin?"
        first, page = (
            f"Is there one more square in {month_name(end)}?",
            pictures.MonthCalendar(end.year, end.month, (), (last,)),
        )
    else:
        say = rng.phrasing(
            f"What date comes just before {said(start)}?",
            f"{pretend}. What was yesterday’s date?",
            f"I say {said(start)}. You say the date just before.",
        )
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


def one_weekday(today: dt.date, rng: SeededRandom, watch_for: str) -> Draft:
    """How often one day of the week comes in this month: four times or five."""
    first = today.replace(day=1)
    days = [day for n in range(31) if (day := first + dt.timedelta(n)).month == today.month]
    times = Counter(day.weekday() for day in days)
    # Most days of the week come four times: how often is drawn first, so that neither is the better guess.
    often = rng.pick(sorted(set(times.values())))
    weekday = rng.pick([day for day in range(7) if times[day] == often])
    name = WEEKDAYS[weekday]
    numbers = [day.day for day in days if day.weekday() == weekday]
    page = pictures.MonthCalendar(today.year, today.month)
    return Draft(
        say=rng.phrasing(
            f"How many {name}s are in this month?",
            f"How many times does {name} come this month?",
            f"Count the {name}s in {month_name(today)}. How many are there?",
        ),
        answer=number_word(len(numbers)),
        working=f"{name}s: {', '.join(map(str, numbers))}",
        cues=(
            Cue(f"Find the name {name} on top. Which squares stand below it?"),
            Cue(f"Slide a finger down below {name}, square by square.", page),
            Cue(f"Touch the first {name} together, “one…” The child keeps going down."),
        ),
        watch_for=watch_for,
        given={"year": today.year, "month": today.month, "weekday": weekday},
        guess=0.5,
    )
