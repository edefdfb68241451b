"""month: this month, the months in order, and the month before or after.

The twelve months and their order: Virginia Mathematics Standards of Learning (2016), K.8. No Common Core code
covers the calendar.
"""

from warmup import pictures
from warmup.english import MONTHS, listed, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._calendar import later_month, month_name, supposed
from warmup.skills._conditions import begins_a_month
from warmup.skills.base import Draft, Level, Skill

# The month a prompt starts from and the step to the one it asks for. Pairs with items of their own are
# left out of the plain item.
_TURN = (("December", 1), ("January", -1))
_SHORT_NAMES = (("May", 1), ("July", -1), ("June", 1), ("August", -1))
_PAIRS = {
    "december-january": _TURN,
    "june-july": _SHORT_NAMES,
    "around": tuple(
        (month, step)
        for month in MONTHS
        for step in (1, -1)
        if (month, step) not in (*_TURN, *_SHORT_NAMES, ("August", 1))
    ),
}
_WATCH = {
    "this": "A day of the week instead of a month.",
    "in-order": "A month left out in the middle, most often past April.",
    "twelve-months": "Seven, as for the days of the week.",
    "august-september": "The month after August is often jumped over, or the child starts at January again.",
    "around": "The month after instead of the month before. Let a finger move along.",
    "december-january": "Silence at the end of the year. The months begin again.",
    "june-july": "Two names that sound alike run together or trade places.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A month's name, the next ones in the row, or how many there are."""
    match item:
        case "this":
            return _this(morning, rng)
        case "in-order" | "august-september":
            return _in_order(item, rng)
        case "twelve-months":
            return _twelve(rng)
        case _:
            return _around(item, morning, rng)


def _this(morning: Morning, rng: SeededRandom) -> Draft:
    month = month_name(morning.date)
    before = later_month(month, -1)
    ways = [
        "What month is it now?",
        "What month are we in?",
        f"Last month was {before}. What month is it now?",
        "Tell me what month it is.",
        "Finish with a month: “Now we are in…”",
    ]
    if morning.date.day == 1:
        ways.append("A new month starts today. What month is it?")
    return Draft(
        say=rng.phrasing(*ways),
        answer=month,
        working=f"{morning.date.isoformat()}: month {morning.date.month} of 12",
        cues=(
            Cue(f"Last month was {before}. Say the months up to that one."),
            Cue(
                f"Put a finger on {before}. The empty square after it is this month.",
                _strip(before, month),
            ),
            Cue(f"Say the months together: “{later_month(month, -2)}, {before}…” The child keeps going."),
        ),
        watch_for=_WATCH["this"],
        given={"date": morning.date.isoformat()},
        picture=pictures.MonthStrip(hidden=(month,)),
    )


def _strip(pointed: str, hidden: str) -> "pictures.MonthStrip":
    """The months with a finger on one and its neighbor blank; turned about where the two lie a year apart."""
    first = "July" if {pointed, hidden} == {"December", "January"} else "January"
    return pictures.MonthStrip(first, (hidden,), (pointed,))


def _in_order(item: str, rng: SeededRandom) -> Draft:
    """One to three months said, and the next ones to say: two, or September alone after August."""
    if item == "august-september":
        count, more = rng.between(1, 3), 1
        first = MONTHS.index("September") - count
    else:
        count, more = rng.between(1, 3), 2
        # Neither past the year's end nor from August on to September.
        first = rng.pick([n for n in range(13 - count - more) if n + count + more <= 8 or n + count >= 9])
    said, answer = MONTHS[first : first + count], MONTHS[first + count : first + count + more]
    row = ", ".join(said)
    return Draft(
        say=_next_said(row, said[-1], more, rng),
        answer=listed(answer),
        # The child may start at the last month said, or say the whole row again.
        accept=(
            *((", ".join(answer),) if more > 1 else ()),
            *dict.fromkeys((", ".join((said[-1], *answer)), ", ".join((*said, *answer)))),
        ),
        working=", ".join(MONTHS[: first + count + more]),
        cues=(
            Cue(f"Start at January. Say the months and keep going past {said[-1]}."),
            Cue(
                f"Put a finger on {said[-1]}. Move it on, one square at a time.",
                pictures.MonthStrip(pointed=(said[-1],)),
            ),
            Cue(f"Say together: “{_lead(first + count)}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"said": list(said), "more": more},
        picture=pictures.MonthStrip(hidden=answer, pointed=(said[-1],)),
    )


def _next_said(row: str, last: str, more: int, rng: SeededRandom) -> Phrasing:
    if more == 1:
        return rng.phrasing(
            f"{row}. What month comes next?",
            f"{row}. Say the next month.",
            f"What month comes just after {last}?",
        )
    return rng.phrasing(
        f"{row}. What are the next two months?",
        f"{row}. Keep going. Say two more months.",
        f"What two months come just after {last}?",
    )


def _lead(next_month: int) -> str:
    """The two months before the one at this place, to begin with."""
    return ", ".join((MONTHS[next_month - 2], MONTHS[next_month - 1]))


def _twelve(rng: SeededRandom) -> Draft:
    return Draft(
        say=rng.phrasing(
            "How many months are there in a year?",
            "How many months does a year have?",
            "Say the months and count them. How many are there?",
        ),
        answer=number_word(len(MONTHS)),
        accept=(f"{number_word(len(MONTHS))} months",),
        working="January to December: 12 names",
        cues=(
            Cue("Which month comes first in a year? Put up a finger for it."),
            Cue("Look at the months. Touch and count each square once.", pictures.MonthStrip()),
            Cue("Put up a finger and say January, then February. The child keeps going to December."),
        ),
        watch_for=_WATCH["twelve-months"],
        given={"first": MONTHS[0], "last": MONTHS[-1]},
    )


def _around(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    month, step = rng.pick(_PAIRS[item])
    answer = later_month(month, step)
    start = later_month(month, -3)
    if step > 0:
        third = Cue(f"Say the months together: “{later_month(month, -1)}, {month}…” The child keeps going.")
    else:
        lead = f"{start}, {later_month(month, -2)}"
        third = Cue(f"Begin together: “{lead}…” The child keeps going to {month}.")
    return Draft(
        say=_before_or_after(month, step, morning, rng),
        answer=answer,
        working=f"{month}, {answer}" if step > 0 else f"{answer}, {month}",
        cues=(
            Cue(f"Say the months, and start at {start}."),
            Cue(
                f"Finger on {month}. One square {'on' if step > 0 else 'back'}.",
                pictures.MonthStrip(_strip(month, answer).first, pointed=(month,)),
            ),
            third,
        ),
        watch_for=_WATCH[item],
        given={"month": month, "steps": step},
        picture=pictures.MonthStrip(hidden=(answer,), pointed=(month,)),
    )


def _before_or_after(month: str, step: int, morning: Morning, rng: SeededRandom) -> Phrasing:
    pretend = supposed(month, month_name(morning.date))
    if step > 0:
        return rng.phrasing(
            f"What month comes just after {month}?",
            f"{pretend}. What month comes next?",
            f"I say {month}. You say the next month.",
            f"Finish it: “The month just after {month} is…”",
        )
    return rng.phrasing(
        f"What month comes just before {month}?",
        f"{pretend}. What was last month?",
        f"I say {month}. You say the month before.",
        f"Finish it: “The month just before {month} is…”",
    )


SKILL = Skill(
    id="month",
    title="Months",
    asks="this month; the months in order; the month before or after",
    strand=Strand.CALENDAR,
    levels=(
        Level("this", "this month", ("this",), seconds=20, table="wall calendar"),
        Level(
            "order",
            "in order",
            ("in-order", "twelve-months", "august-september"),
            stands_on=("month:this",),
            table="wall calendar",
        ),
        Level(
            "around",
            "the month before or after",
            ("around", "december-january", "june-july"),
            stands_on=("month:order",),
            seconds=20,
            table="wall calendar",
        ),
    ),
    ask=ask,
    timely={"this": begins_a_month},
)
