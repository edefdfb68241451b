"""The opening of a morning: one fact of its date, said whole, which answers no prompt of that morning.

A day that stands out speaks of what makes it so: a day that matters, the first school day and the last, the
hundredth, each tenth, a new month, the days around a break. What holds for a whole month is said once in it.
On other days the kinds of facts take turns, each child from a place of its own. A day without school has
facts as well: its date, the days until school begins, what comes next. All are of our own making, and true of
the morning whether or not anything was asked before.
"""

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from itertools import chain
from typing import TYPE_CHECKING

from warmup.engine.giveaways import answered
from warmup.english import MONTHS, WEEKDAYS, date_words, in_words, number_word, ordinal_word, plural
from warmup.model import DayKind, Morning, Opening, Prompt
from warmup.randomness import SeededRandom

if TYPE_CHECKING:
    from warmup.engine.things import Household

STRAWS, WALL = "straws and bands", "wall calendar"
BREAK = 7
"""From so many days between two school mornings on, they are a break: more than any weekend."""
_NEAR = 31
"""How far ahead a day that matters is spoken of, in days."""
_MOST = 99
"""The longest stretch of days that is said as a number."""
_LONGEST_NAME = 6
"""A day that matters with more words in its name makes too long a sentence."""
_STEP = 5
"""How far the turn moves each morning: where a kind has nothing to say, the next one's is not spent."""
_PLACE_FROM, _LENGTH_FROM = 10, 20
"""From these days of a month on, its first school morning says its place in the year, and its length."""
_STRAWS = "school-day"
_ADDS = ("add ", "put down", "one more")
"""How a prompt about straws has today's put down."""


def opening(
    morning: Morning,
    prompts: Sequence[Prompt],
    *,
    child: str,
    bare: bool = False,
    household: "Household | None" = None,
) -> Opening | None:
    """The first fact of this date, in the order of this child, that answers none of the prompts.

    Where a prompt has the child put down today's straw, no fact has it put down before. The same arguments
    give the same fact on any machine. None where every fact would answer one. With ``bare`` it is one that
    needs nothing at hand, or else the date alone. A ``household`` has it with its own things, and with a
    toddler in it there may be a job for that one.
    """
    able = facts(morning, child)
    # Not by its table: without bands the straws are tied with something else.
    if any(prompt.skill == _STRAWS and any(way in prompt.say.lower() for way in _ADDS) for prompt in prompts):
        able = (fact for fact in able if fact.table != STRAWS or not morning.is_school)
    date = Opening(f"Today is {_whole(morning)}.")
    if bare:
        able = chain((fact for fact in able if not fact.table), [date])
    if household is not None:
        able = (found for fact in chain(able, [date]) if (found := household.opening(fact)))
    fact = next((fact for fact in able if not tells(fact, prompts)), None)
    if fact is None or household is None or not household.toddler:
        return fact
    return fact._replace(job=job(morning.date, household, bare=bare))


JOBS = (
    ("The little one may hand out the spoons.", "spoons"),
    ("The little one may put the napkins around.", "napkins"),
    ("The little one may carry the socks to the table.", "socks"),
    ("The little one may stack the big blocks.", "blocks"),
    ("The little one may bring a big ball.", "ball"),
    ("The little one may wave good morning.", ""),
    ("The little one may clap with us.", ""),
)
"""What a toddler may do meanwhile, and what it takes: large things alone, and nothing has to be done."""
_JOB_EVERY = 2
"""A job is offered on one date in so many."""


def job(date: dt.date, household: "Household", *, bare: bool = False) -> str:
    """The toddler's job on this date, with what the house has; empty on the dates that offer none.

    The same on any machine. With ``bare`` it takes nothing at hand.
    """
    able = [say for say, thing in JOBS if not thing or (not bare and household.has(thing))]
    turn, offered = divmod(date.toordinal(), _JOB_EVERY)
    return "" if offered else able[turn % len(able)]


def tells(fact: Opening | None, prompts: Sequence[Prompt]) -> bool:
    """Whether the fact says what one of the prompts asks; no fact tells nothing."""
    return fact is not None and any(answered((fact.say,), prompt) for prompt in prompts)


def facts(morning: Morning, child: str) -> Iterator[Opening]:
    """Every fact of the date: what makes the day stand out first, then one kind after another."""
    for kind in _SPECIAL:
        yield from kind(morning)
    own = SeededRandom("opening", child).below(len(_ORDINARY))
    # By mornings, not by dates: a weekend between two of them takes nobody's turn.
    at = morning.index if morning.is_school else morning.date.toordinal()
    turn = (own + at * _STEP) % len(_ORDINARY)
    first, *others = (*_ORDINARY[turn:], *_ORDINARY[:turn])
    # Up and down the list by turns: where prompts answer most kinds, the same would step in each morning.
    for kind in (first, *(others if at % 2 else reversed(others))):
        yield from kind(morning)


Kind = Callable[[Morning], Iterator[Opening]]
"""One kind of fact: its sentences for a morning, the fuller first; none where it has nothing to say."""


def _whole(morning: Morning) -> str:
    """The date in full: "Tuesday, March second"."""
    return in_words(date_words(morning.date))


def _month(morning: Morning) -> str:
    return MONTHS[morning.date.month - 1]


def _days_in(month: dt.date) -> int:
    """How many days the date's month has. The standard library's ``calendar`` takes long to load."""
    if month.month == 12:
        return 31
    return (month.replace(month=month.month + 1, day=1) - month.replace(day=1)).days


# -- days that stand out


def _matters(morning: Morning) -> Iterator[Opening]:
    for name in morning.festive:
        if len(name.split()) <= _LONGEST_NAME:
            yield Opening(f"Today is {name}! It is {_whole(morning)}.", WALL)
            yield Opening(f"Today is {name}!")


def _first_of_all(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.school_day == 1:
        yield Opening("School starts today! Put down our first straw.", STRAWS)
        yield Opening("A new school year begins today. Put down a straw.", STRAWS)
        yield Opening("A new school year begins today.")


def _last_of_all(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.next is None:
        yield Opening("Today is the last school day of the year. Add the last straw.", STRAWS)
        yield Opening("Today is the last school day of the year.")


def _hundredth(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.school_day == 100:
        yield Opening("School day one hundred! Put ten bundles on the table.", STRAWS)
        yield Opening("Today is a big school day. Put all our bundles on the table.", STRAWS)


def _tenth(morning: Morning) -> Iterator[Opening]:
    number = morning.school_day
    if morning.is_school and number % 10 == 0 and number != 100:
        yield Opening(f"School day {number_word(number)}. Ten loose straws make a new bundle.", STRAWS)
        yield Opening("Today’s straw fills a bundle. Put a band around it.", STRAWS)
        yield Opening("Today we need a new band for our straws.")


def _leap_day(morning: Morning) -> Iterator[Opening]:
    if (morning.date.month, morning.date.day) == (2, 29):
        yield Opening(f"Today is {_whole(morning)}. Most years do not have this day.", WALL)
        yield Opening("Most years do not have the day we have today.", WALL)


def _new_year(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.previous and morning.previous.year != morning.date.year:
        yield Opening("A new year is here! It starts with January.", WALL)
        yield Opening("A new year is here! Hang up the new calendar.", WALL)


def _new_month(morning: Morning) -> Iterator[Opening]:
    before, day = morning.previous, morning.date
    if morning.is_school and before and (before.year, before.month) != (day.year, day.month):
        here = "starts today" if day.day == 1 else "is here"
        yield Opening(f"A new month {here}: {_month(morning)}. Turn the page.", WALL)
        yield Opening(f"A new month {here}. Turn the page.", WALL)


def _back(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.previous:
        without = (morning.date - morning.previous).days - 1
        if BREAK <= without <= _MOST:
            yield Opening(f"We are back after {number_word(without)} days without school.")


def _break_ahead(morning: Morning) -> Iterator[Opening]:
    if morning.is_school and morning.next:
        without = (morning.next - morning.date).days - 1
        if BREAK <= without <= _MOST:
            yield Opening(f"After today we have {number_word(without)} days without school.")


# -- once a month


def _month_place(morning: Morning) -> Iterator[Opening]:
    if _first_from(morning, _PLACE_FROM):
        place = ordinal_word(morning.date.month)
        yield Opening(f"{_month(morning)} is the {place} month of the year.", WALL)


def _month_long(morning: Morning) -> Iterator[Opening]:
    if _first_from(morning, _LENGTH_FROM):
        days = number_word(_days_in(morning.date))
        yield Opening(f"We are in {_month(morning)}. It has {days} days.", WALL)


def _first_from(morning: Morning, number: int) -> bool:
    """Whether it is the month's first school morning on that day of it or later."""
    start = morning.date.replace(day=number)
    return (
        morning.is_school and start <= morning.date and not (morning.previous and morning.previous >= start)
    )


# -- any day


def _date_and_straw(morning: Morning) -> Iterator[Opening]:
    today = f"Today is {_whole(morning)}."
    if morning.is_school:
        straw = f"School day {number_word(morning.school_day)}: add a straw."
        yield Opening(f"{today} {straw}", STRAWS)
        yield Opening(straw, STRAWS)
    else:
        yield Opening(f"{today} We have no school today.", WALL)


def _date(morning: Morning) -> Iterator[Opening]:
    yield Opening(f"Today is {_whole(morning)}.", WALL)


def _bundles(morning: Morning) -> Iterator[Opening]:
    """All of the straws; past the hundred, prompts speak of those since then."""
    tens, ones = divmod(morning.school_day, 10)
    if morning.is_school and 0 < tens < 10 and ones:
        bundles = f"{number_word(tens)} {plural(tens, 'bundle')}"
        straws = f"{number_word(ones)} loose {plural(ones, 'straw')}"
        yield Opening(f"Add today’s straw. We have {bundles} and {straws}.", STRAWS)


def _edge_of_the_week(morning: Morning) -> Iterator[Opening]:
    """The first or the last school day of a week as the wall calendar has it, from Sunday on."""
    if not morning.is_school:
        return
    day = morning.date
    since = (day.weekday() + 1) % 7
    # Where a family begins in the middle of a year, nobody knows of the days before.
    first = (day - morning.previous).days > since if morning.previous else morning.school_day == 1
    last = morning.next is None or (morning.next - day).days > 6 - since
    if first is not last:
        which = "first" if first else "last"
        yield Opening(f"Today is {WEEKDAYS[day.weekday()]}, our {which} school day this week.")
        yield Opening(f"Today is our {which} school day this week.")


def _sleeps(morning: Morning) -> Iterator[Opening]:
    for thing in morning.countdowns[:1]:
        sleeps = (thing.day - morning.date).days
        if sleeps <= _NEAR and len(thing.name.split()) <= _LONGEST_NAME:
            more = "Only one more sleep" if sleeps == 1 else f"{number_word(sleeps).capitalize()} more sleeps"
            yield Opening(f"{more} until {thing.name}.")


def _month_left(morning: Morning) -> Iterator[Opening]:
    month, day = _month(morning), morning.date
    left = _days_in(day) - day.day
    if left:
        days = f"{number_word(left)} more {plural(left, 'day')}"
        yield Opening(f"After today {month} has {days}.", WALL)
    else:
        yield Opening(f"Today is the last day of {month}.", WALL)
        yield Opening("Today is the last day of the month.", WALL)


def _which_weekday(morning: Morning) -> Iterator[Opening]:
    """Today as the second Tuesday in March."""
    day = morning.date
    which = ordinal_word((day.day - 1) // 7 + 1)
    yield Opening(f"Today is the {which} {WEEKDAYS[day.weekday()]} in {_month(morning)}.", WALL)


def _week_ahead(morning: Morning) -> Iterator[Opening]:
    ahead = morning.date + dt.timedelta(days=7)
    yield Opening(f"One week from today is {in_words(date_words(ahead, weekday=False))}.", WALL)


def _to_the_hundredth(morning: Morning) -> Iterator[Opening]:
    more = 100 - morning.school_day
    if morning.is_school and 0 < more <= 20:
        yield Opening(f"{number_word(more).capitalize()} more school {plural(more, 'day')} make one hundred.")


def _next_time(morning: Morning) -> Iterator[Opening]:
    if morning.next:
        days = (morning.next - morning.date).days
        weekday = WEEKDAYS[morning.next.weekday()]
        if days == 1:
            yield Opening(f"Tomorrow is {weekday}. We have school{' again' if morning.is_school else ''}.")
        elif days < 7:
            yield Opening(f"Our next school day is {weekday}.")


def _outside_the_year(morning: Morning) -> Iterator[Opening]:
    """What is said before the first school day and after the last."""
    number = morning.school_day
    match morning.kind:
        case DayKind.BEFORE if morning.next and not number:
            days = (morning.next - morning.date).days
            if days <= _MOST:
                more = "Only one more sleep" if days == 1 else f"{number_word(days).capitalize()} more sleeps"
                yield Opening(f"{more} until school starts.")
        case DayKind.AFTER if number > 0:
            yield Opening(f"School is over. We had {number_word(number)} school days this year.")
        case _:
            return


_SPECIAL: tuple[Kind, ...] = (
    _matters, _first_of_all, _last_of_all, _hundredth, _tenth, _leap_day, _new_year, _new_month, _back,
    _break_ahead, _month_place, _month_long,
)  # fmt: skip
# What often has nothing to say stands between others, so that none of these gets a third turn. Their number
# shares no factor with that of a week's mornings: else a kind would keep to its weekday.
_ORDINARY: tuple[Kind, ...] = (
    _date_and_straw, _sleeps, _month_left, _to_the_hundredth, _next_time, _edge_of_the_week, _week_ahead,
    _bundles, _date, _outside_the_year, _which_weekday,
)  # fmt: skip
