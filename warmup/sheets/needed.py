"""Which sheets a family's week has use for: those that stand in for what its prompts want or show."""

import datetime as dt
from collections.abc import Iterable

from warmup.engine.things import things_on
from warmup.model import Prompt
from warmup.session.ahead import Ahead
from warmup.session.context import Context
from warmup.sheets.base import Use
from warmup.sheets.kinds import kinds


def tick(kind: str, date: dt.date) -> str:
    """The name a sheet is ticked by; of one that is another each month it has the month."""
    return f"{kind} {date:%Y-%m}" if kinds()[kind].monthly else kind


def used_by(prompts: Iterable[Prompt]) -> tuple[str, ...]:
    """The kinds that these prompts have use for, in the order of names."""
    asked = tuple(prompts)
    return tuple(
        kind for kind, sheet in kinds().items() if any(_serves(sheet.use, prompt) for prompt in asked)
    )


def _serves(use: Use, prompt: Prompt) -> bool:
    """Whether this prompt wants a sheet of this use."""
    if prompt.skill in use.skills:
        return True
    shown = {each.kind for each in (prompt.picture, *(cue.picture for cue in prompt.cues)) if each}
    wanted = {thing.name for either in things_on(prompt.table) for thing in either}
    return not shown.isdisjoint(use.pictures) or not wanted.isdisjoint(use.things)


def this_week(context: Context) -> tuple[str, ...]:
    """The kinds for what is left of this week's mornings, today's included, printed already or not.

    Where none is left it is the next week: on a weekend one prints ahead.
    """
    year = context.year
    following = next((day for day in year.mornings if day >= context.today), None)
    if following is None:
        return ()
    week = year.morning(following).week
    first, end = (max(0, index - year.before) for index in (year.begins(week), year.ends(week)))
    left = [day for day in year.mornings[first:end] if day >= context.today]
    chosen = Ahead(context).until(left[-1])
    return used_by(prompt for day in left for prompt in chosen.get(day, ()))


def not_printed(context: Context, names: Iterable[str]) -> tuple[str, ...]:
    """Those of the kinds that the house does not have on paper yet."""
    return tuple(name for name in names if tick(name, context.today) not in context.family.printed)
