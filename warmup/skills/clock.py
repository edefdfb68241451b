"""clock: read a clock, or set one, to the hour and then the half hour.

1.MD.B.3: tell and write time in hours and half-hours (Common Core State Standards for Mathematics, 2010).
At half past, the hour hand stands halfway to the next number, in the picture and in the words.
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills.base import Draft, Level, Skill

_TABLE = "a clock with hands to turn"
_HOURS = tuple(range(1, 13))
_PLAIN = tuple(hour for hour in _HOURS if hour not in (5, 12))
_ONE_TIME = {"half-past-five": 5, "half-past-twelve": 12}

_WATCH_READ = {
    "o-clock": "Reading the long hand, so that every hour is twelve. The short hand tells the hour.",
    "twelve-o-clock": "Silence: one hand seems gone. It lies under the other.",
    "half-past": "Naming the number the short hand will come to next.",
    "half-past-five": "“Half past six”: both hands are near the six. Has the short hand got there yet?",
    "half-past-twelve": "“Half past one.” The short hand is past the top but has not reached the one.",
    "mixed": "The hands swapped, or the next hour named at half past.",
}


def ask(item: str, _morning: Morning, rng: SeededRandom) -> Draft:
    """Read the hands, put them where they go, or go on an hour."""
    match item:
        case "set-it":
            return _set(rng.pick(_HOURS[:-1]), rng)
        case "hour-later":
            return _later(rng.pick(_HOURS), rng)
        case "where-short-hand":
            return _which_hand(rng.pick(_HOURS[:-1]), rng)
        case "twelve-o-clock":
            return _read(item, 12, 0, rng) if rng.coin() else _set(12, rng)
        case "o-clock":
            return _read(item, rng.pick(_HOURS[:-1]), 0, rng)
        case "mixed":
            return _read(item, rng.pick(_HOURS), rng.pick((0, 30)), rng)
        case "half-past":
            return _half_past(rng)
        case _:
            return _read(item, _ONE_TIME[item], 30, rng)


def _time(hour: int, minute: int) -> str:
    word = number_word(hour)
    return f"half past {word}" if minute else f"{word} o’clock"


def _other_words(hour: int, minute: int) -> tuple[str, ...]:
    """What else a child may say for this time. The hour’s bare number is left out: it is on the face."""
    if minute:
        return f"{number_word(hour)}-thirty", f"{hour}:30"
    return (f"{hour}:00",)


def _read(item: str, hour: int, minute: int, rng: SeededRandom) -> Draft:
    after = hour % 12 + 1
    where = f"halfway from {hour} to {after}" if minute else f"on {hour}"
    return Draft(
        say=rng.phrasing(
            "Look at the clock. What time does it show?",
            "What time does this clock say?",
            "Pretend this is our clock. What time is it?",
        ),
        answer=_time(hour, minute),
        accept=_other_words(hour, minute),
        working=f"short hand {where}, long hand on {6 if minute else 12}: {hour}:{minute:02}",
        cues=_read_half_cues() if minute else _read_hour_cues(hour),
        watch_for=_WATCH_READ[item],
        given={"hour": hour, "minute": minute, "do": "read"},
        picture=pictures.Clock(hour, minute),
    )


def _read_hour_cues(hour: int) -> tuple[Cue, Cue, Cue]:
    if hour == 12:
        return (
            Cue("Where is the short hand hiding?"),
            Cue("Point to the top. Both hands reach for the same number. Which one?"),
            Cue("Run a finger up both hands together. The child reads what is at the tip."),
        )
    return (
        Cue("Find the short hand. It tells the hour."),
        Cue("Lay a finger along the short hand. What number is at its tip?"),
        Cue("Trace the long hand to the top: “o’clock.” The child reads the short one."),
    )


def _read_half_cues() -> tuple[Cue, Cue, Cue]:
    return (
        Cue("Find the short hand. Which number has it gone past?"),
        Cue("Trace the long hand’s way from the top: it has gone halfway around."),
        Cue("Trace the short hand back together to the number it left. The child says the time."),
    )


def _set(hour: int, rng: SeededRandom) -> Draft:
    time, word = _time(hour, 0), number_word(hour)
    both = hour == 12
    return Draft(
        say=rng.phrasing(
            f"Set the clock to {time}. Where do the hands go?",
            f"Show me {time}. Where does each hand go?",
            f"Make this clock say {time}. Point to each hand’s place.",
        ),
        answer="both hands on twelve" if both else f"the short hand on {word}, the long hand on twelve",
        accept=()
        if both
        else (f"the long hand on twelve, the short hand on {word}", f"short on {word}, long on twelve"),
        working=f"{hour}:00: short hand {hour * 30 % 360}° around, long hand at the top",
        cues=(
            Cue("Which hand tells the hour, the short one or the long one?"),
            Cue("Point to the top of the face: each new hour, the long hand starts here."),
            Cue("Put the long hand up together. The child puts the short one."),
        ),
        watch_for="One hand put up and the other forgotten: it lies under it."
        if both
        else f"Hands swapped: the long one on {word}. Ask which hand is slow.",
        given={"hour": hour, "minute": 0, "do": "set"},
        picture=pictures.Clock(hour, 0, hands=False),
    )


def _later(hour: int, rng: SeededRandom) -> Draft:
    now, after = _time(hour, 0), hour % 12 + 1
    return Draft(
        say=rng.phrasing(
            f"Pretend it’s {now}. What time is it an hour later?",
            f"What time is one hour after {now}?",
            f"A nap starts at {now}. It takes one hour. When is it over?",
        ),
        answer=_time(after, 0),
        accept=_other_words(after, 0),
        working=f"{hour} → {after}" if hour < 12 else "12 → 1: past twelve the hours start again",
        cues=(
            Cue("In an hour the short hand moves to the next number."),
            Cue(
                "Point to the short hand. Slide a finger on to the number after it.", pictures.Clock(hour, 0)
            ),
            Cue("Take the long hand once around together. The child reads the short one."),
        ),
        watch_for="“Thirteen” after twelve: on a clock the hours start again."
        if hour == 12
        else "Giving the same hour back, or going one back.",
        given={"hour": hour, "minute": 0, "do": "later"},
        picture=pictures.Clock(hour, 0),
    )


def _which_hand(hour: int, rng: SeededRandom) -> Draft:
    """Which of the two hands tells the hour, shown by the number it is on; never where both are on one."""
    word = number_word(hour)
    return Draft(
        say=rng.phrasing(
            "One hand tells the hour. Which number is it on?",
            "Touch the hand that tells the hour. Which number is there?",
            "Look for the hour hand. Which number is it on?",
        ),
        answer=f"the {word}",
        accept=(f"on the {word}", _time(hour, 0)),
        working=f"the short hand tells the hour: it is on {hour}",
        cues=(
            Cue("One hand is slow, and one is quick. The slow one tells the hour."),
            Cue("Trace each hand from the middle out. Which one stops sooner?"),
            Cue("Turn a real clock once around together. The child tells which hand moved just a step."),
        ),
        watch_for="Reading the long hand. It is the minute hand: at each new hour it is at the top.",
        given={"hour": hour, "minute": 0, "do": "which hand"},
        picture=pictures.Clock(hour, 0),
    )


def _half_past(rng: SeededRandom) -> Draft:
    """Read a half hour; once in three, say where its short hand is."""
    if rng.below(3) == 0:
        return _where(rng.pick(_HOURS), rng)
    return _read("half-past", rng.pick(_PLAIN), 30, rng)


def _where(hour: int, rng: SeededRandom) -> Draft:
    time, after = _time(hour, 30), number_word(hour % 12 + 1)
    word = number_word(hour)
    return Draft(
        say=rng.phrasing(
            f"Where does the short hand point at {time}?",
            f"Set the clock to {time}. Where does the short hand go?",
            f"Pretend it’s {time}. Show me where the short hand is.",
        ),
        answer=f"halfway between {word} and {after}",
        accept=(f"between {word} and {after}",),
        working=f"{hour}:30: {hour * 30 % 360 + 15}° around, halfway from {hour} to {hour % 12 + 1}",
        cues=(
            Cue(f"Where is it at {word} o’clock? And half an hour on?"),
            Cue("Trace halfway around the face: the long hand has gone this far."),
            Cue(f"Put a finger on the {word} together. The child slides it halfway to the next."),
        ),
        watch_for=f"Putting it right on the {word}. In half an hour it has moved on.",
        given={"hour": hour, "minute": 30, "do": "where"},
        picture=pictures.Clock(hour, 30, hands=False),
    )


SKILL = Skill(
    id="clock",
    title="Clock",
    asks="read or set a clock, to the hour then the half hour",
    strand=Strand.TIME_MONEY,
    levels=(
        Level(
            "o-clock",
            "o’clock",
            ("o-clock",),
            ("where-short-hand",),
            codes=("1.MD.B.3",),
            stands_on=("numerals:to-20",),
            table=_TABLE,
            guesses=(("where-short-hand", 0.5),),
            ends=("o-clock",),
        ),
        Level(
            "set-and-hour-later",
            "set it, twelve o’clock, an hour later",
            ("set-it", "twelve-o-clock", "hour-later"),
            codes=("1.MD.B.3",),
            stands_on=("clock:o-clock",),
            table=_TABLE,
        ),
        Level(
            "half-past",
            "half past, then hours and half hours mixed",
            ("half-past", "half-past-five", "half-past-twelve", "mixed"),
            codes=("1.MD.B.3",),
            stands_on=("clock:set-and-hour-later", "equal-shares:halves"),
            waits_on=("equal-shares/halves-or-not", "clock/where-short-hand"),
            table=_TABLE,
        ),
    ),
    ask=ask,
)
