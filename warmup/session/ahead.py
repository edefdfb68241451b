"""The mornings to come, chosen one after another as though all of them went easily; nothing is kept."""

import copy
import datetime as dt
from collections.abc import Mapping

from warmup.engine.memory import fold
from warmup.model import Asked, LevelId, Mark, Prompt
from warmup.session.context import Context
from warmup.session.stored import stored


class Ahead:
    """The prompts of today's school morning and of those after it, as far as anybody asked.

    A morning takes about five milliseconds to choose, so a year of them is chosen when its end is asked for.
    FileProblem where a routine file can't be read.
    """

    def __init__(self, context: Context) -> None:
        # A context of its own, whose knowledge grows by what is assumed.
        self._context = copy.copy(context)
        self._to_come = iter([day for day in context.year.mornings if day >= context.today])
        self._chosen = dict[dt.date, tuple[Prompt, ...]]()
        self._next = next(self._to_come, None)
        self.first_asked = dict[LevelId, dt.date]()
        """The first morning of those chosen so far that has a prompt of a level."""

    def until(self, last: dt.date) -> Mapping[dt.date, tuple[Prompt, ...]]:
        """The prompts of the mornings up to and on this date, and of later ones where they are chosen."""
        while self._next is not None and self._next <= last:
            day, self._next = self._next, next(self._to_come, None)
            self._chosen[day] = prompts = self._choose(day)
            for prompt in prompts:
                self.first_asked.setdefault(prompt.level_id, day)
        return self._chosen

    def _choose(self, day: dt.date) -> tuple[Prompt, ...]:
        """The prompts of a morning, begun or not; what is still to be asked of it then came easily."""
        context = self._context
        journal, child = context.journal, context.child.journal_name
        begun = stored(journal, child, day) if day == context.today else []
        marked = {line.item for line in context.history(since=day) if line.mark} if begun else ()
        if begun:
            prompts = tuple(prompt for row, routine in begun if not row.closed for prompt in routine.prompts)
        else:
            prompts = context.routine(context.morning(day)).prompts
        easy = [Asked(day, prompt.item, Mark.FLUENT) for prompt in prompts if prompt.item not in marked]
        context.know(fold(context.curriculum(), easy, context.knowledge()))
        return prompts
