"""The list of what this quarter has unlocked: its rows, its page, and what its keys do."""

from collections.abc import Callable

from warmup import skills
from warmup.engine.eligibility import paused_until, unlocked
from warmup.english import date_words
from warmup.model import level_id
from warmup.session import undoing
from warmup.session.context import Context
from warmup.tui import pages
from warmup.tui.pages import Notice, TeachAgain, Unlocked
from warmup.tui.script import Script

Keep = Callable[..., None]
"""Does what changes the family and logs it: a kind of action, what to do, and what to say of it."""


class UnlockedList:
    """What is to be taught again, the quarter's levels and those held back, one of them under the cursor."""

    def __init__(self, context: Context, keep: Keep) -> None:
        self._context, self._keep, self._cursor = context, keep, 0

    def page(self, width: int, height: int, notices: tuple[Notice, ...]) -> Script:
        """The page at this size."""
        until = paused_until(self._context.adjustments, self._context.today)
        paused = date_words(until) if until else ""
        rows, morning = self.rows(), self._context.morning()
        self._cursor = max(0, min(self._cursor, len(rows) - 1))
        return pages.unlocked_page(morning, rows, self._cursor, width, height, notices, paused)

    def rows(self) -> list[Unlocked | TeachAgain]:
        """The rows in order: what is to be taught again, then the newest first."""
        morning, plan, held = self._context.morning(), self._context.plan, self._context.child.held
        open_now = unlocked(plan, morning).union(held)
        rows: list[Unlocked] = []
        for skill in skills.SKILLS.values():
            for level in skill.levels:
                ref = level_id(skill.id, level.key)
                if ref in open_now:
                    week = plan.weeks.get(ref, 99)
                    rows.append(Unlocked(ref, skill.title, level.label, week, ref in held))
        return [*self._teach_again(), *sorted(rows, key=lambda row: (-row.week, row.title))]

    def _teach_again(self) -> list[TeachAgain]:
        resting, taught = self._context.to_teach(), dict(self._context.child.taught)
        return [
            TeachAgain(item, skills.locate(item).words(), item not in resting)
            for item in self._context.missed()
            if item in resting or taught.get(item) == self._context.today
        ]

    def move(self, by: int) -> None:
        """Put the cursor on another row."""
        self._cursor = max(0, min(len(self.rows()) - 1, self._cursor + by))

    def choose(self) -> str:
        """Hold the level under the cursor back or let it come, or say that it was taught; a line about it."""
        rows, context = self.rows(), self._context
        match rows[self._cursor : self._cursor + 1]:
            case [Unlocked(held=False) as row]:
                self._keep(undoing.HOLD, lambda: context.editor.hold(row.level, back=True), level=row.level)
                return f"Held back: {row.named()}."
            case [Unlocked() as row]:
                self._keep(undoing.COME, lambda: context.editor.hold(row.level, back=False), level=row.level)
                return f"It may come again: {row.named()}."
            case [TeachAgain(taught=False) as row]:
                self._keep(
                    undoing.TAUGHT, lambda: context.editor.taught(row.item, context.today), item=row.item
                )
                return f"Taught again on {date_words(context.today)}; it may come back."
            case [TeachAgain() as row]:
                self._keep(
                    undoing.REST,
                    lambda: context.editor.taught(row.item, context.today, again=False),
                    item=row.item,
                )
                return "It rests until you say it was taught."
        return ""
