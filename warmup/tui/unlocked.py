"""The list of what this quarter has unlocked: its rows, its page, and what its keys do."""

from collections.abc import Callable

from warmup import skills
from warmup.english import date_words
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
        self._desk, self._keep, self._cursor = context, keep, 0

    def page(self, width: int, height: int, notices: tuple[Notice, ...]) -> Script:
        """The page at this size."""
        until = self._desk.paused_until()
        paused = date_words(until) if until else ""
        rows, morning = self.rows(), self._desk.morning()
        self._cursor = max(0, min(self._cursor, len(rows) - 1))
        return pages.unlocked_page(morning, rows, self._cursor, width, height, notices, paused)

    def rows(self) -> list[Unlocked | TeachAgain]:
        """The rows in order: what is to be taught again, then the newest first."""
        morning, plan, held = self._desk.morning(), self._desk.plan, self._desk.child.held
        rows: list[Unlocked] = []
        for skill in skills.SKILLS.values():
            for level in skill.levels:
                ref = f"{skill.id}:{level.key}"
                week = plan.weeks.get(ref, 99)
                if ((week - 1) // 9 + 1 == morning.quarter and week <= morning.week) or ref in held:
                    rows.append(Unlocked(ref, skill.title, level.label, week, ref in held))
        return [*self._teach_again(), *sorted(rows, key=lambda row: (-row.week, row.title))]

    def _teach_again(self) -> list[TeachAgain]:
        resting, taught = self._desk.to_teach(), dict(self._desk.child.taught)
        return [
            TeachAgain(item, skills.place(item).words(), item not in resting)
            for item in self._desk.missed()
            if item in resting or taught.get(item) == self._desk.today
        ]

    def move(self, by: int) -> None:
        """Put the cursor on another row."""
        self._cursor = max(0, min(len(self.rows()) - 1, self._cursor + by))

    def choose(self) -> str:
        """Hold the level under the cursor back or let it come, or say that it was taught; a line about it."""
        rows, context = self.rows(), self._desk
        match rows[self._cursor : self._cursor + 1]:
            case [Unlocked(held=False) as row]:
                self._keep(undoing.HOLD, lambda: context.hold(row.level, back=True), level=row.level)
                return f"Held back: {row.named()}."
            case [Unlocked() as row]:
                self._keep(undoing.COME, lambda: context.hold(row.level, back=False), level=row.level)
                return f"It may come again: {row.named()}."
            case [TeachAgain(taught=False) as row]:
                self._keep(undoing.TAUGHT, lambda: context.taught(row.item), item=row.item)
                return f"Taught again on {date_words(context.today)}; it may come back."
            case [TeachAgain() as row]:
                self._keep(undoing.REST, lambda: context.taught(row.item, again=False), item=row.item)
                return "It rests until you say it was taught."
        return ""
