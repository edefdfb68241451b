"""date: today's number, the whole date and its hard names, and how many sleeps until a day that matters.

Common practice in kindergarten rooms, no source; no Common Core code covers the calendar. A cardinal is
taken for the ordinal ("March third", "March three").
"""

import datetime as dt

from warmup import pictures
from warmup.english import count_words, number_word, ordinal_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._calendar import ahead, also_said, day_name, month_name, said, with_weekday
from warmup.skills._conditions import days_are_left, matters_to_the_child
from warmup.skills._days_ahead import beside, few_days_on, sleeps, to_the_next_month
from warmup.skills._home import upper
from warmup.skills.base import Draft, Level, Skill

# The dates whose names are stumbled on, by item.
_NAMED = {"eleventh-to-thirteenth": (11, 12, 13), "twenty-first": (21,)}
_WATCH = {
    "say-number": "Yesterday’s number again. Let a finger move on to the next square.",
    "find-number": "Dropping down a row too soon, or going past Saturday off the edge.",
    "full": "The day of the week for the month: “Tuesday third”. Month first, then number.",
    "eleventh-to-thirteenth": "“Twelveth”, or thirteenth said as thirtieth. Say the end of the word clearly.",
    "twenty-first": "“Twenty-oneth”. The last part is said as in first.",
    "sleeps": "Counting today as well, so ending one too high. A sleep is the night between two days.",
    "few-days-on": "Counting today as the first day, so ending one short.",
    "thirty-to-one": "“Thirty-first” in a month of thirty days. The page has no such square.",
    "thirty-one-to-one": "“Thirty-second”: numbers keep going, but months end.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Today's number or date, a date near by, or how many days until one."""
    watch = _WATCH[item]
    match item:
        case "say-number":
            return _say_number(morning.date, rng)
        case "find-number":
            return _find_number(morning.date, rng)
        case "full":
            return _full(morning.date, morning.festive, rng)
        case "eleventh-to-thirteenth" | "twenty-first":
            return _named(item, morning.date, rng)
        case "sleeps":
            return sleeps(morning, rng, watch)
        case "few-days-on":
            return few_days_on(morning.date, rng, watch)
        case "thirty-to-one":
            return to_the_next_month(30, morning.date, rng, watch)
        case _:
            return to_the_next_month(31, morning.date, rng, watch)


def _say_number(today: dt.date, rng: SeededRandom) -> Draft:
    day = today.day
    page = pictures.MonthCalendar(
        today.year, today.month, hidden=(day,), pointed=(day - 1,) if day > 1 else ()
    )
    if day == 1:
        say = rng.phrasing(
            "A new month starts today. What number is today?",
            "What number is today on the calendar?",
            "It’s a new month. What is today’s number?",
        )
        cues = (
            Cue("The month is new. How do we start to count?"),
            Cue("Touch the blank square that opens the page.", page),
            Cue("Count back together: “three, two…” The child keeps going."),
        )
    else:
        before = number_word(day - 1)
        say = rng.phrasing(
            "What number is today on the calendar?",
            f"Yesterday was number {before}. What number is today?",
            "What is today’s number on the calendar?",
            "Tell me today’s number on the calendar.",
            "Finish with a number: “Today is number…”",
        )
        cues = (
            Cue(f"Yesterday was {before}. What comes next?"),
            Cue(f"Finger on {before}. Hop on to the blank square.", page),
            Cue(f"Count together: “{count_words(range(max(1, day - 3), day))}…” The child keeps going."),
        )
    return Draft(
        say=say,
        answer=number_word(day),
        accept=(ordinal_word(day), f"the {ordinal_word(day)}", said(today), *also_said(today)),
        working=f"{month_name(today)} {day}: number {day}",
        cues=cues,
        watch_for=_WATCH["say-number"],
        given={"date": today.isoformat()},
        picture=pictures.MonthCalendar(today.year, today.month, hidden=(day,)),
    )


def _find_number(today: dt.date, rng: SeededRandom) -> Draft:
    """Where today's card goes on a calendar whose numbers are put up day by day."""
    day, word = today.day, number_word(today.day)
    page = pictures.MonthCalendar(today.year, today.month, upto=day - 1)
    before = number_word(day - 1)
    if day == 1:
        second = Cue("Look along the first row from the left, to where squares begin.", page)
        third = Cue("Move a finger along from Sunday together. The child says stop.")
    else:
        pointed = pictures.MonthCalendar(today.year, today.month, pointed=(day - 1,), upto=day - 1)
        second = Cue(f"Finger on {before}. The next number lives right after it.", pointed)
        third = Cue(
            f"Touch and say “{count_words(range(max(1, day - 3), day))}…” The child’s finger keeps going."
        )
    return Draft(
        say=rng.phrasing(
            f"Today is number {word}. Put your finger where it goes.",
            f"Where does {word} go on the calendar? Point to it.",
            f"Find the square for {word}. Put your finger on it.",
            f"Today is number {word}. Touch its square.",
        ),
        answer=f"the first empty square, under {day_name(today)}",
        accept=("the first empty square",)
        if day == 1
        else ("the first empty square", f"just after {before}"),
        working=f"{month_name(today)} {day}: after {day - 1}" if day > 1 else "1 opens the page",
        cues=(
            Cue("What is the last number you see? Where does the next one go?"),
            second,
            third,
        ),
        watch_for=_WATCH["find-number"],
        given={"date": today.isoformat()},
        picture=page,
    )


def _full(today: dt.date, festive: tuple[str, ...], rng: SeededRandom) -> Draft:
    ways = [
        "What is today’s date?",
        "What is the date today? Say the month and the number.",
        "Tell me today’s date: the month and the number.",
        "Finish with the month and the number: “Today is…”",
    ]
    if today.day == 1:
        ways.append("A new month starts today. What is the date?")
    if festive:
        # What the family counts down to is here: the date is worth saying today.
        name = upper(festive[0])
        ways = [f"{name} is today! What is the date?", f"Hooray! {name} is today. Say the date."]
    yesterday = said(ahead(today, -1))
    return Draft(
        say=rng.phrasing(*ways),
        answer=said(today),
        accept=(*also_said(today), *with_weekday(today)),
        working=f"{month_name(today)} {today.day}: a {day_name(today)}",
        cues=(
            Cue("Which month is it? The number comes after it."),
            Cue(
                "Point at the name on top, then at the blank square.",
                pictures.MonthCalendar(today.year, today.month, hidden=(today.day,)),
            ),
            Cue(f"Begin together: “Yesterday was {yesterday}. Today is…” The child keeps going."),
        ),
        watch_for=_WATCH["full"],
        given={"date": today.isoformat()},
    )


def _named(item: str, today: dt.date, rng: SeededRandom) -> Draft:
    """The date next to one of this month's, where its name is the hard part."""
    target = today.replace(day=rng.pick(_NAMED[item]))
    step = 1 if rng.coin() else -1
    start = ahead(target, -step)
    say = beside(start, step, today, rng)
    place = ordinal_word(target.day)
    lead = [ahead(target, -3), ahead(target, -2)] if step < 0 else [ahead(target, -2), start]
    page = pictures.MonthCalendar(today.year, today.month, hidden=(target.day,), pointed=(start.day,))
    return Draft(
        say=say,
        answer=said(target),
        accept=(*also_said(target), place, f"the {place}", number_word(target.day)),
        working=f"{start.day} {'+' if step > 0 else '−'} 1 = {target.day}: the {place}",
        cues=(
            Cue(f"What number is next to {number_word(start.day)}? Now say it as a date."),
            Cue(
                f"Finger on {number_word(start.day)}. Hop {'on' if step > 0 else 'back'} to the blank.", page
            ),
            Cue(
                f"Say together: “the {ordinal_word(lead[0].day)}, the {ordinal_word(lead[1].day)}…” "
                "The child keeps going."
            ),
        ),
        watch_for=_WATCH[item],
        given={"from": start.isoformat(), "steps": step},
        picture=page,
    )


SKILL = Skill(
    id="date",
    title="The date",
    asks="today’s number, the whole date, how many sleeps until a day that matters",
    strand=Strand.CALENDAR,
    levels=(
        Level(
            "number",
            "today’s number",
            ("say-number", "find-number"),
            stands_on=("count:to-20",),
            seconds=20,
            table="wall calendar",
        ),
        Level(
            "full",
            "the full date",
            ("full", "eleventh-to-thirteenth", "twenty-first", "thirty-to-one", "thirty-one-to-one"),
            stands_on=("date:number", "weekday:today", "month:this"),
            seconds=20,
            table="wall calendar",
        ),
        Level(
            "within-a-week",
            "days until, within a week",
            ("sleeps", "few-days-on"),
            stands_on=("date:full", "weekday:around", "count-on:within-10"),
            waits_on=("weekday/day-before",),
            table="wall calendar",
        ),
    ),
    ask=ask,
    askable={"few-days-on": days_are_left},
    timely={"full": matters_to_the_child},
)
