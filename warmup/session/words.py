"""What the screen and the lines both say: sentences of the morning that belong to no one value."""

import datetime as dt
from collections.abc import Sequence
from typing import TYPE_CHECKING

from warmup.config.toml_file import FileProblem
from warmup.english import WEEKDAYS, date_words, number_word
from warmup.model import DayKind, LevelId, Mark, Morning
from warmup.session.context import Context
from warmup.text import clean, visible

if TYPE_CHECKING:
    from warmup.session.summary import Closing

BEADS = {
    Mark.FLUENT: "●",
    Mark.HESITATED: "◐",
    Mark.NOT_YET: "○",
    Mark.SKIPPED: "–",
    None: "·",
}
"""A prompt's bead by its mark; the one on screen stands in brackets, by its number until it has a mark."""

ELSEWHERE = "Changed in another window: this is where it stands."
STOP_OFFERED = "Two not yet in a row: ‹wind_down› winds down."
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

WHOLE_MORNING = "the morning as a whole"
NOT_PLANNED = "No school was planned today. A warm-up is welcome."
COUNTS = "Does it count as a school day?"
COUNTED = "Today counts as a school day."
FOR_FUN = "Just for fun: today does not count."

READS = "Does your child read words like “seven” by now?"
READS_NAMED = "Does {} read words like “seven” by now?"
READS_WHY = "Number words open now."
READS_TELLS = (
    "The answer on your side is in words. For a child who reads them it starts covered, and one key shows it."
)
STARTS_COVERED = "Answers start covered."

HELLO = "Five to eight minutes of spoken math at breakfast."
PRIVACY = "Stays on this machine."

A_GAME = "A game for that:"
"""What stands before the name of a game for what wobbled today."""
KEEP_WARM = "Three things a week keep math warm."
"""Said of a warm-up after the year's last school day."""
SMALL_THINGS = "Choking hazard: keep small things away from under-threes and mouths."
_SMALL = (
    "coin", "button", "bean", "bead", "shell", "band", "cereal", "clip", "counter", "dice", "grape", "rice",
    "cracker", "sock ", "marble", "pebble", "balloon", "battery", "batteries", "magnet",
)  # fmt: skip
"""Words of what chokes small children, whose names stand on tables; the last five on a family's own."""

QUARTER_ON_SCREEN = "In the menu (‹menu›), a report makes a letter of it. “warmup copy FILE” keeps a copy."
QUARTER_BY_COMMAND = (
    "“warmup report --letter quarter” makes a letter of it, and “warmup copy FILE” keeps a copy."
)
"""What a quarter that is done may be followed by."""
A_NEW_YEAR = "A new school year is in the menu (‹menu›)."
NEW_YEAR_KEPT = "The new school year is kept."
NOTHING_KEPT = "No warm-up is kept from before today."
NOTHING_TO_TYPE_IN = "There is no earlier morning to type in yet."
STAYS = "What was marked stays with its day."
_DAY = dt.timedelta(1)
_NUMBER_WORDS = LevelId("number-words:to-ten")


def now_words(now: dt.date, stood: dt.date) -> str:
    """Which date it is by now, where the morning that ``stood`` open is of another."""
    return f"It is {WEEKDAYS[now.weekday()] if now == stood + _DAY else date_words(now, year=True)} now."


def open_still(now: dt.date, stood: dt.date) -> str:
    """Which warm-up is open still."""
    if now == stood + _DAY:
        return "Yesterday’s warm-up is still open."
    return f"The one of {date_words(stood)} is still open."


def of_the_day(context: Context, morning: Morning) -> str:
    """What the adult should know of this morning before it begins, in a sentence; mostly nothing."""
    return KEEP_WARM if morning.kind is DayKind.AFTER else back_words(context, morning)


def back_words(context: Context, morning: Morning) -> str:
    """What is said on the first mornings after days away, and why they hold nothing new; else empty."""
    days = context.absence(morning).days
    if not days:
        return ""
    count = number_word(days).capitalize() if days < 1000 else f"{days:,}"
    return f"{count} mornings without a warm-up: for three mornings nothing new opens."


def own_words(problem: FileProblem | None) -> str:
    """What stands on the screen where own.toml can't be used: short, since it stays all morning."""
    if problem is None:
        return ""
    where = f", line {problem.line}," if problem.line else ""
    return f"own.toml{where} can’t be used: none of your own prompts is asked. “warmup check” says why."


def noted_words(text: str) -> str:
    """What is said once a note is kept, or taken away since nothing was written."""
    return "Noted." if visible(clean(text)) else "The note is taken away."


def over_words(*, closed: bool) -> str:
    """What the close begins with."""
    return "Today’s warm-up is done." if closed else "That was today’s warm-up."


def reads_question(context: Context) -> str:
    """The question whether the child reads, with its name where there are several."""
    several = len(context.family.children) > 1
    return READS_NAMED.format(context.child.nickname) if several else READS


def asks_whether_they_read(context: Context) -> bool:
    """Whether number words are open, and nobody said yet whether the child reads them."""
    opens, child = context.plan.weeks.get(_NUMBER_WORDS), context.child
    open_now = opens is not None and context.morning().week >= opens and _NUMBER_WORDS not in child.held
    return open_now and child.reads is None


def has_small_things(*tables: str) -> bool:
    """Whether something on these tables is small enough to choke on."""
    return any(word in table for word in _SMALL for table in tables)


def ready(closings: "Sequence[Closing]") -> tuple[str, str]:
    """What to have ready for the next morning of all these children, and what else if at hand: each once."""
    table, handy = (
        dict.fromkeys(thing for things in tables if things for thing in things.split(", "))
        for tables in ([each.table for each in closings], [each.handy for each in closings])
    )
    return ", ".join(table), ", ".join(thing for thing in handy if thing not in table)
