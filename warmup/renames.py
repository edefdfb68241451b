"""Names that changed: what an older journal, family.toml or year.toml holds is read by its new name.

A name that goes is never given to anything else. A line here stays for good: files are read for years.
"""

from collections.abc import Mapping
from types import MappingProxyType

ITEMS: Mapping[str, str] = MappingProxyType(
    {
        "compare/nineteen-twenty-one": "place-value/nineteen-twenty-one",
        "compare/numerals-to-99": "place-value/numerals-to-99",
        "compare/thirteen-thirty-one": "place-value/which-is-more",
        "number-line/back-to-25": "number-line/back-to-20",
        "number-line/on-to-25": "number-line/on-to-20",
    }
)
"""Items (``skill/name``), the old one first."""

LEVELS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "add-subtract:head-to-5": (
            "add-subtract:add-to-5",
            "add-subtract:take-to-5",
            "add-subtract:mixed-to-5",
        ),
        "add-subtract:objects-to-10": ("add-subtract:things-to-10",),
        "by-twos:to-10": ("by-twos:to-20",),
        "clock:mixed": ("clock:half-past",),
        "coins:dime": ("coins:worth",),
        "coins:penny-and-nickel": ("coins:worth",),
        "compare:numerals-to-99": ("place-value:to-99",),
        "count-on:across-tens": ("count-on:to-50",),
        "count-on:anywhere": ("count-on:to-95",),
        "even-odd:name-and-make": ("even-odd:pair-to-20",),
        "even-odd:pair-to-10": ("even-odd:pair-to-20",),
        "hundred-chart:hidden-to-100": ("hundred-chart:to-100",),
        "hundred-chart:to-50": ("hundred-chart:to-100",),
        "measure:units-to-10": ("measure:units",),
        "neighbors:after-to-9": ("neighbors:after-to-10",),
        "neighbors:between-to-99": ("neighbors:to-99",),
        "neighbors:both-to-19": ("neighbors:both-to-20",),
        "neighbors:both-to-50": ("neighbors:to-99",),
        "number-line:across-ten-and-twenty": ("number-line:to-30",),
        "number-line:to-25": ("number-line:to-20",),
        "number-words:to-five": ("number-words:to-ten",),
        "numerals:to-50": ("numerals:to-100",),
        "ordinals:to-third": ("ordinals:to-fifth",),
        "parts:of-3-to-5": ("parts:split-to-5", "parts:hidden-to-5"),
        "patterns:abc-and-missing": ("patterns:three-part",),
        "place-value:digits-and-hundreds": ("place-value:hundreds",),
        "place-value:to-50": ("place-value:to-99",),
        "school-day:next-and-last": ("school-day:tens-and-ones",),
        "solid-shapes:edges-and-corners": ("solid-shapes:faces",),
        "sort:guess-the-rule": ("sort:order-groups",),
        "subitize:dice": ("subitize:four-and-five",),
        "symmetry:find-the-line": ("symmetry:fold",),
    }
)
"""Levels (``skill:key``), the old one first; what was one level may be several today."""


def every_name(item: str) -> tuple[str, ...]:
    """The names that an item has had, its present one first."""
    return (item, *(old for old, new in ITEMS.items() if new == item))


KINDS: Mapping[str, str] = MappingProxyType({"queue": "toy-line"})
"""Kinds of picture, the old one first."""

DROPPED = frozenset(
    {
        "by-fives/to-100",
        "by-tens/back",
        "by-twos/to-30",
        "capacity/cups-in-a-pint",
        "capacity/cups-in-a-quart",
        "capacity/quarts-in-a-gallon",
        "compare/numerals-to-20",
        "count-back/30-to-29",
        "count-back/across-tens",
        "date/a-week-on",
        "date/month-end",
        "date/one-weekday",
        "date/two-weeks",
        "even-odd/fair-shares",
        "hundred-chart/hidden-to-20",
        "make-ten/ten-and-none",
        "measure/order-three",
        "measure/through-a-third",
        "month/february",
        "month/july-august",
        "month/length",
        "number-words/forty",
        "number-words/tens-and-two-words",
        "ordinals/to-31st",
        "ordinals/twelfth",
        "ordinals/twenty-first",
        "position/two-moves",
        "position/two-shelves",
        "position/two-things",
        "school-day/twenty-nine-thirty",
        "symmetry/how-many-ways",
        "weekday/two-days",
    }
)
"""Items that are asked no more. Their marks stay in the journal and count for nothing."""

DROPPED_LEVELS = frozenset(
    {
        "by-fives:to-100",
        "by-tens:back",
        "by-twos:to-30",
        "capacity:pint-and-quart",
        "compare:numerals-to-20",
        "count-back:across-tens",
        "date:month-end",
        "date:two-weeks",
        "hundred-chart:to-20",
        "measure:order-three",
        "month:length",
        "number-words:tens-and-two-words",
        "ordinals:to-31st",
        "position:two-steps",
        "weekday:two-days",
    }
)
"""Levels that are asked no more. What a family wrote of them stays in its files and does nothing."""


def item(name: str) -> str:
    """The item's name today."""
    return _newest(name, ITEMS)


def levels(name: str) -> tuple[str, ...]:
    """The level's name today, or its names where it was split; a name that never changed is its own."""
    names: tuple[str, ...] = (name,)
    for _ in LEVELS:
        newer = tuple(dict.fromkeys(new for old in names for new in LEVELS.get(old, (old,))))
        if newer == names:
            break
        names = newer
    return names


def kind(name: str) -> str:
    """The picture's kind today."""
    return _newest(name, KINDS)


def dropped(name: str) -> bool:
    """Whether an item or a level of this name was asked once and is no more."""
    return item(name) in DROPPED or name in DROPPED_LEVELS


def _newest(name: str, table: Mapping[str, str]) -> str:
    """The end of the chain of names; a table that leads round in a circle is left after one round."""
    for _ in table:
        name = table.get(name, name)
    return name
