"""Which sheets a family's week has use for: those that stand in for what its prompts want or show."""

import datetime as dt
from collections.abc import Iterable, Mapping
from typing import NamedTuple

from warmup.engine.things import things_on
from warmup.model import Prompt
from warmup.session.ahead import Ahead
from warmup.session.context import Context
from warmup.sheets.kinds import kinds


class Use(NamedTuple):
    """What wants a sheet: things on a table, pictures on the stage by their kinds, skills by their ids."""

    things: tuple[str, ...] = ()
    pictures: tuple[str, ...] = ()
    skills: tuple[str, ...] = ()

    def serves(self, prompt: Prompt) -> bool:
        """Whether this prompt wants it."""
        if prompt.skill in self.skills:
            return True
        shown = {each.kind for each in (prompt.picture, *(cue.picture for cue in prompt.cues)) if each}
        wanted = {thing.name for either in things_on(prompt.table) for thing in either}
        return not shown.isdisjoint(self.pictures) or not wanted.isdisjoint(self.things)


USES: Mapping[str, Use] = {
    "adding-cards": Use(skills=("add-subtract",)),
    "base-ten-blocks": Use(pictures=("base-ten",)),
    "clock-face": Use(("clock with hands",), ("clock",)),
    "coins": Use(("coins",), ("coins",)),
    "cut-square": Use(pictures=("joined-shapes",)),
    "day-strips": Use(("day strip",), ("day-strip", "month-strip")),
    "dot-cards": Use(pictures=("dots", "pairs")),
    "equal-shares": Use(pictures=("shares",)),
    "hundred-charts": Use(("hundred chart",), ("hundred-chart",)),
    "matching-halves": Use(pictures=("fold", "half")),
    "measuring-strips": Use(("strips of paper",), ("lengths",)),
    "month-page": Use(("wall calendar",), ("month-calendar",)),
    "number-cards": Use(("number cards", "labels"), ("number-row", "numeral", "word-and-cards")),
    "number-lines": Use(("tape on the floor",), ("number-line",)),
    "part-whole-mats": Use(pictures=("part-whole", "two-sets"), skills=("parts",)),
    "pattern-strips": Use(pictures=("pattern-row",)),
    "shape-cards": Use(pictures=("flat-shape", "shape-row")),
    "skip-strips": Use(skills=("by-fives", "by-tens", "by-twos")),
    "solid-nets": Use(pictures=("solid-shape",)),
    "ten-frames": Use(("ten frame",), ("ten-frame", "two-frames")),
}
"""What each kind stands in for."""
_EACH_MONTH = frozenset({"month-page"})


def tick(kind: str, date: dt.date) -> str:
    """The name a sheet is ticked by; of one that is another each month it has the month."""
    return f"{kind} {date:%Y-%m}" if kind in _EACH_MONTH else kind


def used_by(prompts: Iterable[Prompt]) -> tuple[str, ...]:
    """The kinds that these prompts have use for, in the order of names."""
    asked = tuple(prompts)
    return tuple(
        kind for kind in kinds() if kind in USES and any(USES[kind].serves(prompt) for prompt in asked)
    )


def this_week(context: Context) -> tuple[str, ...]:
    """The kinds for what is left of this week's mornings, today's included, printed already or not."""
    year, week = context.year, context.morning().week
    first, end = (max(0, index - year.before) for index in (year.begins(week), year.ends(week)))
    left = [day for day in year.mornings[first:end] if day >= context.today]
    if not left:
        return ()
    chosen = Ahead(context).until(left[-1])
    return used_by(prompt for day in left for prompt in chosen.get(day, ()))


def not_printed(context: Context, names: Iterable[str]) -> tuple[str, ...]:
    """Those of the kinds that the house does not have on paper yet."""
    return tuple(name for name in names if tick(name, context.today) not in context.family.printed)
