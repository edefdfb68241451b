"""On which mornings an item makes sense, and which mornings ask for one by themselves.

A skill names these by its items (``askable`` and ``timely``). They stand apart from the skills since each is
asked every morning, of skills that are seldom chosen: nothing here loads a skill or a picture.
"""

from warmup.model import Morning
from warmup.skills._calendar import days_left

_TWO_DIGITS = 99
"""The last number of two digits: past it the neighbors of a number are no question for kindergarten."""
_NEAR_THE_HUNDREDTH = 60
"""From this school day on the hundredth is near enough to be counted to."""


def with_pennies(morning: Morning) -> bool:
    """Whether the family plays with pennies."""
    return morning.pennies


def days_are_left(morning: Morning) -> bool:
    """Whether two days are left of the month: the count of squares stays on one page."""
    return days_left(morning.date) >= 2


def has_a_next_number(morning: Morning) -> bool:
    """Whether another school day comes, and its number has two digits at most."""
    return 1 <= morning.school_day < _TWO_DIGITS and morning.next is not None


def has_a_last_number(morning: Morning) -> bool:
    """Whether there was a school day before this one; on a day off, whether one was and another comes."""
    return 2 <= morning.school_day <= _TWO_DIGITS if morning.is_school else has_a_next_number(morning)


def has_tens(morning: Morning) -> bool:
    """Whether the count of school days has a bundle of ten past its hundreds."""
    return morning.school_day % 100 >= 10


def nears_the_hundredth(morning: Morning) -> bool:
    """Whether the hundredth school day is ahead and near, or is today: it closes on the day itself."""
    return _NEAR_THE_HUNDREDTH <= morning.school_day < 100 or is_the_hundredth(morning)


def is_the_hundredth(morning: Morning) -> bool:
    """Whether today is the hundredth school day."""
    return morning.is_school and morning.school_day == 100


def is_first_or_last(morning: Morning) -> bool:
    """Whether today is the first school day of the year, or the last."""
    return morning.is_school and (morning.school_day == 1 or morning.next is None)


def fills_a_bundle(morning: Morning) -> bool:
    """Whether today's straw fills a bundle; the hundredth day has a question of its own."""
    return morning.is_school and morning.school_day % 10 == 0 and morning.school_day % 100 != 0


def matters_to_the_child(morning: Morning) -> bool:
    """Whether today is a day of the child's own, such as a birthday."""
    return bool(morning.festive)


def begins_a_month(morning: Morning) -> bool:
    """Whether today is the first school morning of a month, and not of the year."""
    before = morning.previous
    return morning.is_school and before is not None and before.month != morning.date.month
