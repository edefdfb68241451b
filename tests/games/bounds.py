"""The highest number a game of a level may have, worked out without the games: by its codes and by its label.

The bounds of the codes stand in ``tests/references/standards.toml``, each with its source.
"""

import re
from collections.abc import Iterator

from tests.bank import reference
from warmup.english import number_word, ordinal_word
from warmup.model import LevelId, Morning, skill_and_key
from warmup.skills import SKILLS, Level

# Of a code with bounds, the entry that no number may pass.
_ENTRIES = {
    "K.CC.A.1": "count_to", "K.CC.A.2": "known_range_by_year_end", "K.CC.A.3": "write_max",
    "K.CC.B.5": "arranged_max", "K.CC.C.6": "group_max", "K.CC.C.7": "max", "K.OA.A.2": "within",
    "K.OA.A.3": "max", "K.OA.A.4": "target", "K.OA.A.5": "fluent_within", "K.NBT.A.1": "max",
    "K.MD.B.3": "category_count_max", "1.OA.A.1": "within", "1.OA.C.6": "within", "1.NBT.A.1": "count_to",
    "1.NBT.B.3": "max", "1.NBT.C.5": "given_max", "2.OA.C.3": "group_max", "2.NBT.A.2": "within",
    "2.MD.B.6": "within",
}  # fmt: skip
_NUMBERS = {number_word(n): n for n in range(121)} | {ordinal_word(n): n for n in range(1, 101)}
_NUMBERS |= {"a hundred": 100, "hundredth": 100}
_WORD = "|".join(sorted(map(re.escape, _NUMBERS), key=len, reverse=True))
_REACHES = re.compile(rf"\b(?:to|from|within|and|the) ({_WORD}|\d+)\b")
_NOT_OF_ITS_NUMBERS = LevelId("make-ten:easy-pairs")
"""A label that names the partners; what they make stands in its code."""
_OTHERS = {
    "school-day:tens-and-ones": 99,  # 1.NBT.B.2: numbers of two digits.
    "date:number": 31,  # Days in a month: calendar.toml.
    "date:within-a-week": 7,  # Days in a week: calendar.toml.
    "coin-totals:nickel-and-pennies": 9,  # A nickel and four pennies; five would be another nickel.
    "coins:worth": 10, "coins:quarter": 25, "coins:names": 25,  # 2.MD.C.8: coin_cents.
    "clock:o-clock": 12, "clock:set-and-hour-later": 12, "clock:half-past": 12,  # Hours on a dial.
}  # fmt: skip
_HANDFUL = 10
"""For a level of no numbers: of turns, of things to lay, of parts of a fold."""


def level_of(level: LevelId) -> Level:
    """The level with this id."""
    skill, key = skill_and_key(level)
    return next(each for each in SKILLS[skill].levels if each.key == key)


def highest(level: LevelId, morning: Morning) -> int:
    """The highest number that may come up."""
    if level == "school-day:count":
        return max(_HANDFUL, morning.school_day)
    found = [*_by_codes(level_of(level)), *_by_label(level)]
    if level in _OTHERS:
        found.append(_OTHERS[level])
    return min(found, default=_HANDFUL)


def _by_codes(level: Level) -> Iterator[int]:
    standards = reference("standards")["std"]
    for code in level.codes:
        if code in _ENTRIES:
            yield int(standards[code]["bounds"][_ENTRIES[code]])


def _by_label(level: LevelId) -> Iterator[int]:
    if level == _NOT_OF_ITS_NUMBERS:
        return
    found = _REACHES.findall(level_of(level).label)
    if found:
        yield max(_NUMBERS[word] if word in _NUMBERS else int(word) for word in found)
