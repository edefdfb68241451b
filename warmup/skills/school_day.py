"""school-day: which school day it is, as bundles of ten and loose ones, and how many to the hundredth.

1.NBT.B.2: a two-digit number as tens and ones; 1.NBT.A.1: count on from any number, here to 100 (Common
Core State Standards for Mathematics, 2010). The running count has no code: from the last quarter on it
goes past 120, where 1.NBT.A.1 ends. The next and the last number stay inside two digits, with the bundles
they belong to; past day 100 the bundles are those begun since then.
"""

from warmup import pictures
from warmup.english import count_words, number_word, ordinal_word, plural
from warmup.model import Cue, DayKind, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._conditions import (
    fills_a_bundle,
    has_a_last_number,
    has_a_next_number,
    has_tens,
    is_first_or_last,
    is_the_hundredth,
    nears_the_hundredth,
)
from warmup.skills._hundredth import hundred_today, to_the_hundredth
from warmup.skills._number import chart_rows
from warmup.skills._straws import new_bundle, tens_and_ones
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "count": "The last day’s number said again, with nothing added for today.",
    "next-number": "The number before instead of the number after.",
    "last-number": "The number after instead of the number before. Last time there were fewer straws.",
    "tens-and-ones": "A bundle counted as one straw. Touch it and say ten.",
    "new-bundle": "The ten left loose, or the bundles of last time named. Does the child reach for the band?",
    "to-the-hundredth": "Counting today as well, so ending one too high.",
    "hundred-today": "Counting straws where bundles are asked for.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A question about the number of school days, true on this date."""
    match item:
        case "count":
            return _count(morning, rng)
        case "next-number" | "last-number":
            return _next_or_last(item, morning, rng)
        case "tens-and-ones":
            return tens_and_ones(morning, rng, _WATCH[item])
        case "new-bundle":
            return new_bundle(morning, rng, _WATCH[item])
        case _:
            return (
                hundred_today(rng, _WATCH["hundred-today"])
                if morning.school_day == 100
                else to_the_hundredth(morning, rng, _WATCH[item])
            )


def _count(morning: Morning, rng: SeededRandom) -> Draft:
    """Today's number from the last one's; on other days the next one's, or at the end the last of all."""
    number = morning.school_day
    known = number - 1 if morning.is_school or (morning.kind is DayKind.AFTER and number) else number
    if morning.is_school:
        say = _today_said(known, morning.next is None, rng)
    elif morning.kind is DayKind.AFTER:
        say = _year_over_said(known, rng)
    else:
        say = _next_said(known, rng)
    return _neighbor(known, 1, say, _WATCH["count"])


def _today_said(known: int, last_of_all: bool, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    if known == 0:
        return rng.phrasing(
            "School starts today! What number is today?",
            "School starts today. Put down a straw. How many straws?",
            "Today we start counting school days. What number is today?",
        )
    if last_of_all:
        return rng.phrasing(
            f"It’s the last school day! What number comes after {word}?",
            f"School ends today! Last time was {word}. What number is today?",
            f"We have {word} {plural(known, 'straw')}. Add the last one. How many now?",
        )
    ways = [
        f"Last time was school day {word}. What school day is today?",
        f"What school day is today? Last time was number {word}.",
        f"We have {word} {plural(known, 'straw')}. Add one for today. How many now?",
        f"School day {word} is over. What school day is today?",
        f"Last time was {word}. Finish it: “Today is school day…”",
    ]
    if known == 99:
        ways.append(f"It’s a big day! Last time was {word}. What number is today?")
    return rng.phrasing(*ways)


def _next_said(known: int, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    if known == 0:
        return rng.phrasing(
            "School starts soon. What number will that day be?",
            "We count each school day. What number do we start with?",
            "We have no school days yet. What number comes next?",
        )
    return rng.phrasing(
        f"Last time was school day {word}. What number comes next?",
        f"What number is the school day after {word}?",
        f"Last time was {word}. Finish it: “Next is school day…”",
        f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
    )


def _year_over_said(known: int, rng: SeededRandom) -> Phrasing:
    word = number_word(known)
    return rng.phrasing(
        f"School is over! What number came after school day {word}?",
        f"School is over! We had {word}, then one more. How many?",
        f"We had {word} {plural(known, 'straw')}. Then we added one. How many now?",
    )


def _next_or_last(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    step = 1 if item == "next-number" else -1
    number = morning.school_day
    known = number if morning.is_school or step > 0 else number + 1
    word = number_word(known)
    if step > 0 and morning.is_school:
        say = rng.phrasing(
            f"Today is school day {word}. What number comes next?",
            f"What number comes after school day {word}?",
            f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
        )
    elif step > 0:
        say = rng.phrasing(
            f"School day {word} is over. What number comes next?",
            f"What number comes after school day {word}?",
            f"We have {word} {plural(known, 'straw')}. How many will we have next time?",
        )
    elif morning.is_school:
        say = rng.phrasing(
            f"Today is school day {word}. What number was last time?",
            f"What number comes before school day {word}?",
            f"We have {word} straws. Take today’s away. How many are left?",
        )
    else:
        say = rng.phrasing(
            f"Next time is school day {word}. What number was last time?",
            f"What number comes before school day {word}?",
            f"Next time we will have {word} straws. How many now?",
        )
    return _neighbor(known, step, say, _WATCH[item])


def _neighbor(known: int, step: int, say: Phrasing, watch_for: str) -> Draft:
    """The number one on or one back from one the question says."""
    answer = known + step
    return Draft(
        say=say,
        answer=number_word(answer),
        accept=(
            ordinal_word(answer),
            f"the {ordinal_word(answer)}",
            f"school day {number_word(answer)}",
            f"{number_word(answer)} {plural(answer, 'straw')}",
        ),
        working=f"{known} {'+' if step > 0 else '−'} 1 = {answer}",
        cues=_from_nothing() if known == 0 else _from(known, step),
        watch_for=watch_for,
        given={"known": known, "steps": step},
        picture=_blank(known, answer),
        seconds=20,
    )


def _blank(known: int, answer: int) -> "pictures.HundredChart | None":
    """The chart's rows about the number, its square blank; none for the first, which begins the chart."""
    if known == 0 or answer == 1:
        return None
    # A row more where the number begins or ends one: a finger needs to see both neighbors.
    return chart_rows(answer - 1, answer + 1, pointed=(known,), hidden=(answer,))


def _from_nothing() -> tuple[Cue, Cue, Cue]:
    return (
        Cue("We have counted no days yet. How do you start to count?"),
        Cue("Put down a straw where there was none. What number is it?"),
        Cue("Count back together: “three, two…” The child keeps going."),
    )


def _from(known: int, step: int) -> tuple[Cue, Cue, Cue]:
    word, where = number_word(known), "on" if step > 0 else "back"
    if step > 0:
        begin = count_words(range(max(1, known - 2), known + 1))
    else:
        begin = count_words(range(max(1, known - 3), known - 1))
    start = (
        f"Start a few numbers before {word} and count up to it."
        if known > 5
        else f"Count up to {word} on your fingers."
    )
    third = (
        f"Count together: “{begin}…” The child keeps going."
        if begin
        else "Count the straws, but leave out the last."
    )
    picture = _blank(known, known + step)
    return (
        Cue(f"{start} {'What comes next?' if step > 0 else 'What came just before it?'}"),
        Cue(f"Finger on {word} in the chart. Move {where} to the blank.", picture)
        if picture
        else Cue("Lay the straws in a row, then take the last away."),
        Cue(third),
    )


SKILL = Skill(
    id="school-day",
    title="School days",
    asks="how many school days so far; as bundles of ten and loose ones; how many to the hundredth",
    strand=Strand.CALENDAR,
    levels=(
        Level("count", "the count", ("count",), seconds=20, table="straws and bands"),
        Level(
            "tens-and-ones",
            "tens and ones, the next and the last",
            ("tens-and-ones", "next-number", "last-number"),
            misconceptions=("new-bundle",),
            codes=("1.NBT.B.2",),
            stands_on=("school-day:count", "by-tens:to-50", "neighbors:before-to-10"),
            table="straws and bands",
        ),
        Level(
            "to-the-hundredth",
            "how many to the hundredth",
            ("to-the-hundredth",),
            codes=("1.NBT.A.1",),
            stands_on=("school-day:tens-and-ones", "count:to-100"),
            table="straws and bands",
        ),
    ),
    ask=ask,
    askable={
        "next-number": has_a_next_number,
        "last-number": has_a_last_number,
        "tens-and-ones": has_tens,
        "to-the-hundredth": nears_the_hundredth,
    },
    timely={
        "count": is_first_or_last,
        "new-bundle": fills_a_bundle,
        "to-the-hundredth": is_the_hundredth,
    },
)
