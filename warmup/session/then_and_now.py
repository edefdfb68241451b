"""What was hard at first and has come easily lately, a step at a time: the first weeks beside the last ones.

Everything is worked out of the marks, and each sentence holds what it was worked out of. A mark from memory
weighs half, as memory weighs it. What did not come easily on a rough day is not held against anybody at
first; later it ends a row of easy marks, as it does in memory.
"""

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from warmup import skills
from warmup.engine.memory import NEW, learn
from warmup.english import MONTHS, number_word
from warmup.model import Asked, LevelId, Mark, Strand, is_own, skill_and_key
from warmup.session.rounds import in_rounds

MOST = 8
"""How many steps are set side by side at once."""
FIRST_MARKS, FIRST_WEEKS = 3, dt.timedelta(weeks=4)
"""What is called *then*: the first marks of a step, as far as they lie in its first weeks."""
APART = dt.timedelta(weeks=8)
"""How far *then* and *now* are apart at least."""
LATELY = dt.timedelta(weeks=12)
"""How long before the child's last mark the last of a step may lie, to be called *now*."""
RUNNING = 2
"""How many easy marks running say that it comes easily."""

TITLE = "Then and now"
ABOUT = "What did not come easily at first, and does by now."
TOO_LITTLE = (
    "There is too little yet to set side by side. After two or three months of warm-ups, look here again."
)
NOTHING_YET = "Nothing can be set side by side just now. That is ordinary."


class Change(NamedTuple):
    """A step that was hard and has come easily lately.

    Its mark on ``then`` was ``was``, hesitated or not yet; half of its first marks, by weight, did not come
    easily. On ``now`` it came easily for the last time, ``running`` times in a row as memory counts them, in
    whole marks. ``number`` is its place among those told, which chooses the phrasing.
    """

    level: LevelId
    topic: str
    strand: Strand
    then: dt.date
    was: Mark
    now: dt.date
    running: int
    number: int = 0

    def words(self, today: dt.date) -> str:
        """It in two sentences, as they are true on ``today``."""
        then, now = month_words(self.then, today), month_words(self.now, today)
        was = "needed help" if self.was is Mark.NOT_YET else "took a moment"
        times = "twice" if self.running == 2 else f"{number_word(min(self.running, 999))} times"
        match self.number % 3:
            case 0:
                return f"In {then}, “{self.topic}” {was}. By {now} it came easily, {times} in a row."
            case 1:
                return f"“{self.topic}” {was} in {then}. By {now} it came easily, {times} in a row."
            case _:
                return f"By {now}, “{self.topic}” came easily, {times} in a row. In {then} it still {was}."


def month_words(day: dt.date, today: dt.date) -> str:
    """A day's month; with its year where the month alone would mean a later one."""
    name = MONTHS[day.month - 1]
    ago = (today.year - day.year) * 12 + today.month - day.month
    return name if ago < 12 else f"{name} {day.year}"


def then_and_now(history: Iterable[Asked]) -> tuple[Change, ...]:
    """What can be set side by side, the most telling first; ``history`` is in order of time."""
    marked = _marked(history)
    if not marked:
        return ()
    of_level = dict[LevelId, list[Asked]]()
    for line in marked:
        of_level.setdefault(skills.locate(line.item).level_id, []).append(line)
    changes = (_change(level, lines, marked[-1].date - LATELY) for level, lines in of_level.items())
    told = _varied(change for change in changes if change)
    return tuple(change._replace(number=number) for number, change in enumerate(told))


def sentences(history: Iterable[Asked], today: dt.date) -> tuple[str, ...]:
    """The same in words; where there is nothing to set side by side, why in a kind one."""
    marked = _marked(history)
    if not marked or marked[-1].date - marked[0].date < APART:
        return (TOO_LITTLE,)
    return tuple(change.words(today) for change in then_and_now(marked)) or (NOTHING_YET,)


def _marked(history: Iterable[Asked]) -> list[Asked]:
    """What counts: marked, not left, and none of the family's own, which nobody but they know."""
    return [line for line in history if line.marked and not is_own(line.item)]


def _easy(line: Asked) -> bool:
    # A cue was needed: that is hesitation, whatever key was pressed.
    return line.mark is Mark.FLUENT and not line.cue


def _weight(line: Asked) -> float:
    if line.rough and not _easy(line):
        return 0
    return 0.5 if line.from_memory else 1


def _change(level: LevelId, lines: Sequence[Asked], lately: dt.date) -> Change | None:
    """What is told of a level's marked lines; None where it was not hard, or does not come easily now."""
    first = [line for line in lines if line.date < lines[0].date + FIRST_WEEKS][:FIRST_MARKS]
    hard = [line for line in first if not _easy(line) and _weight(line)]
    heavy = sum(map(_weight, hard))
    if heavy < 1 or heavy < sum(map(_weight, first)) / 2:
        return None
    last = lines[-1].date
    running = int(learn(NEW, ((line, 0, 0.0) for line in lines), 0).run)
    # The plainest witness: a mark that says most, and of those the earliest.
    witness = next((line for line in hard if line.mark is Mark.NOT_YET), hard[0])
    if running < RUNNING or last < lately or last - witness.date < APART:
        return None
    at = skills.locate(witness.item)
    was = Mark.NOT_YET if witness.mark is Mark.NOT_YET else Mark.HESITATED
    topic = f"{at.skill.title}: {at.level.label}"
    return Change(level, topic, at.skill.strand, witness.date, was, last, running)


def _telling(change: Change) -> tuple[bool, int, dt.timedelta, LevelId]:
    """Sorts the most telling first: what needed help, came easily most often, and took longest."""
    return change.was is not Mark.NOT_YET, -change.running, change.then - change.now, change.level


def _varied(changes: Iterable[Change]) -> Iterator[Change]:
    """The best of each strand before the second best of any, of a skill one before another of it."""
    ranked = sorted(changes, key=_telling)
    by_skill = in_rounds(ranked, lambda change: skill_and_key(change.level)[0])
    by_strand = in_rounds(by_skill, lambda change: change.strand.value)
    yield from by_strand[:MOST]
