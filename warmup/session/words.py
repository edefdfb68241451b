"""What the screen and the lines both say: sentences of the morning that belong to no one value."""

import datetime as dt

from warmup.english import WEEKDAYS, date_words

ELSEWHERE = "Changed in another window: this is where it stands."
STOP_OFFERED = "Two not yet: i ends with an easy one."
MEANINGS = (
    (
        "Came easily",
        "right with no cue; steady work with fingers too. Five seconds count in adding to 5 only",
    ),
    ("Hesitated", "a cue, a fresh start, or put right after you reacted. Looking up at you is no hesitation"),
    ("Not yet", "you showed it. It comes back; nothing is lost"),
    ("No mark", "changes nothing"),
)
"""The marks, and when to give each."""
AFTER_CUES = "After this: show it, the child says it with you; mark it not yet."

NOT_PLANNED = "No school was planned today. A warm-up is welcome."
COUNTS = "Does it count as a school day?"
COUNTED = "Today counts as a school day."
FOR_FUN = "Just for fun: today does not count."

HELLO = "Five to seven minutes of spoken math at breakfast."
PRIVACY = "Stays on this machine."

STAYS = "What was marked stays with its day."
_DAY = dt.timedelta(1)


def now_words(now: dt.date, stood: dt.date) -> str:
    """Which date it is by now, where the morning that ``stood`` open is of another."""
    return f"It is {WEEKDAYS[now.weekday()] if now == stood + _DAY else date_words(now, year=True)} now."


def open_still(now: dt.date, stood: dt.date) -> str:
    """Which warm-up is open still."""
    if now == stood + _DAY:
        return "Yesterday’s warm-up is still open."
    return f"The one of {date_words(stood)} is still open."


def over_words(*, closed: bool) -> str:
    """What the close begins with."""
    return "Today’s warm-up is done." if closed else "That was today’s warm-up."
