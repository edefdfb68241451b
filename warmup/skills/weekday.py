"""weekday: the day today, tomorrow and yesterday, and the day before or after any day.

The day before and after a given day: Virginia Mathematics Standards of Learning (2016), K.8. No Common Core
code covers the calendar.
"""

from warmup import pictures
from warmup.english import WALL_WEEK, date_words
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._calendar import day_name, later_day, supposed
from warmup.skills.base import Draft, Level, Skill

# The day a prompt starts from and the steps to the day it asks for. The wrap and the pair that sounds
# alike have items of their own, so the others leave them out. "After" comes weeks before "before": the plain
# item asks for the day after alone, so that it stays sure while the record of the day before is shaky.
_WRAP = (("Saturday", 1), ("Sunday", -1))
_ALIKE = (("Monday", 1), ("Wednesday", -1), ("Wednesday", 1), ("Friday", -1))
_PAIRS = {
    "saturday-sunday": _WRAP,
    "tuesday-thursday": _ALIKE,
    "around": tuple((day, 1) for day in WALL_WEEK if (day, 1) not in (*_WRAP, *_ALIKE)),
    "day-before": tuple((day, -1) for day in WALL_WEEK if (day, -1) not in (*_WRAP, *_ALIKE)),
}
_WATCH = {
    "today": "A guess. The days come in order: saying them in order finds today.",
    "tomorrow": "The day before: tomorrow and yesterday are easily mixed up at this age.",
    "yesterday": "The day to come: yesterday and tomorrow are easily mixed up at this age.",
    "around": "Starting the week over, or a day left out. Move a finger along.",
    "day-before": "The day after instead: “before” is the harder word. Walk a finger back.",
    "saturday-sunday": "Stopping where the strip stops. After the last day the week begins again.",
    "tuesday-thursday": "Tuesday and Thursday sound alike. Listen to how each begins, and say both slowly.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A day of the week, some steps from the real today or from a day drawn."""
    match item:
        case "today":
            return _today(morning, rng)
        case "tomorrow" | "yesterday":
            return _next_to_today(item, morning, rng)
        case _:
            return _around(item, morning, rng)


def _today(morning: Morning, rng: SeededRandom) -> Draft:
    today = day_name(morning.date)
    before = later_day(today, -1)
    return Draft(
        say=rng.phrasing(
            "What day is it today?",
            "What day of the week is today?",
            f"Yesterday was {before}. What day is today?",
            "Tell me what day it is today.",
            "Finish with a day: “Today is…”",
        ),
        answer=today,
        working=f"{date_words(morning.date, year=True)}: the day after {before}",
        cues=(
            Cue("Which day was it at bedtime? We have slept since then."),
            Cue(
                f"Put a finger on {before}. That was yesterday. Today is one square on.",
                pictures.DayStrip(_first(before, today), (today,), (before,)),
            ),
            Cue(f"Say the days together: “{later_day(today, -2)}, {before}…” The child keeps going."),
        ),
        watch_for=_WATCH["today"],
        given={"date": morning.date.isoformat(), "steps": 0},
        picture=pictures.DayStrip(hidden=(today,)),
    )


def _next_to_today(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    today, step = day_name(morning.date), 1 if item == "tomorrow" else -1
    answer = later_day(today, step)
    if step > 0:
        say = rng.phrasing(
            "What day is tomorrow?",
            f"Today is {today}. What day is tomorrow?",
            "When you wake up tomorrow, what day will it be?",
            "What day comes after today?",
            "Finish with a day: “Tomorrow will be…”",
        )
        first = f"Today is {today}. We sleep once and wake up. What is that day called?"
    else:
        say = rng.phrasing(
            "What day was yesterday?",
            f"Today is {today}. What day was yesterday?",
            "Think back one sleep. What day was it?",
            "What day comes before today?",
            "Finish with a day: “Yesterday was…”",
        )
        first = f"Think of supper last night. {today} had not come yet. Which day was it?"
    return Draft(
        say=say,
        answer=answer,
        working=f"{later_day(today, -1)}, {today}, {later_day(today, 1)}",
        cues=(
            Cue(first),
            Cue(
                f"Put a finger on {today}. Hop one square {'on' if step > 0 else 'back'}.",
                pictures.DayStrip(_first(today, answer), (answer,), (today,)),
            ),
            _begin(today, step),
        ),
        watch_for=_WATCH[item],
        given={"date": morning.date.isoformat(), "steps": step},
        picture=pictures.DayStrip(hidden=(answer,), pointed=(today,)),
    )


def _around(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    day, step = rng.pick(_PAIRS[item])
    answer = later_day(day, step)
    return Draft(
        say=_before_or_after(day, step, morning, rng),
        answer=answer,
        working=f"{day}, {answer}" if step > 0 else f"{answer}, {day}",
        cues=(
            # Going forward it names no day but the one asked from, so that there is a draw on any date that
            # does not tell what day it is today.
            Cue(
                f"Say the days in order until you get to {day}. What comes then?"
                if step > 0
                else f"Say the days, and start at {later_day(day, -3)}."
            ),
            Cue(
                f"Finger on {day} in the strip. Hop one square {'on' if step > 0 else 'back'}.",
                pictures.DayStrip(_first(day, answer), pointed=(day,)),
            ),
            _begin(day, step),
        ),
        watch_for=_WATCH[item],
        given={"day": day, "steps": step},
        picture=pictures.DayStrip(hidden=(answer,), pointed=(day,)),
    )


def _before_or_after(day: str, step: int, morning: Morning, rng: SeededRandom) -> Phrasing:
    pretend = supposed(day, day_name(morning.date))
    if step > 0:
        return rng.phrasing(
            f"What day comes just after {day}?",
            f"{later_day(day, -1)}, {day}. What day comes next?",
            f"{pretend}. What day is tomorrow?",
            f"Say the day just after {day}.",
            f"Finish it: “The day just after {day} is…”",
        )
    return rng.phrasing(
        f"What day comes just before {day}?",
        f"{pretend}. What day was yesterday?",
        f"Say the day just before {day}.",
        f"Finish it: “The day just before {day} is…”",
    )


def _first(day: str, answer: str) -> str:
    """Where a strip begins on which the two days are neighbors or nearly so.

    As on the wall, Sunday, unless the end of the week lies between them: then Wednesday.
    """
    return "Sunday" if abs(WALL_WEEK.index(day) - WALL_WEEK.index(answer)) <= 2 else "Wednesday"


def _begin(day: str, step: int) -> Cue:
    """Start the row of days together, or walk a finger back along it."""
    if step > 0:
        return Cue(f"Say the days together: “{later_day(day, -1)}, {day}…” The child keeps going.")
    return Cue(
        f"Begin together: “{later_day(day, -3)}, {later_day(day, -2)}…” The child keeps going to {day}."
    )


SKILL = Skill(
    id="weekday",
    title="Days of the week",
    asks="the day today, tomorrow, yesterday; the day before or after any day",
    strand=Strand.CALENDAR,
    levels=(
        Level("today", "today’s name", ("today",), seconds=20, table="day strip"),
        Level(
            "tomorrow",
            "tomorrow",
            ("tomorrow",),
            stands_on=("weekday:today",),
            seconds=20,
            table="day strip",
        ),
        Level(
            "yesterday",
            "yesterday",
            ("yesterday",),
            stands_on=("weekday:tomorrow",),
            seconds=20,
            table="day strip",
        ),
        Level(
            "around",
            "the day before or after any day",
            ("around", "saturday-sunday", "tuesday-thursday"),
            misconceptions=("day-before",),
            stands_on=("weekday:yesterday",),
            seconds=20,
            table="day strip",
        ),
    ),
    ask=ask,
)
