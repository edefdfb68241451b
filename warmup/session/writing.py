"""How a change of a session gets into the journal: in one transaction, with its row in the log of actions.

:class:`warmup.journal.journal.Changed` where another window changed the morning meanwhile: nothing was done.
"""

from collections.abc import Mapping
from typing import ClassVar

from warmup.journal.at_hand import OPENING
from warmup.journal.changes import replacing
from warmup.journal.journal import Action, Change, Changed, MarkRow, Seen
from warmup.journal.routine_json import routine_from
from warmup.model import Mark, Prompt, Routine
from warmup.session import undoing
from warmup.session.standing import Standing
from warmup.session.undoing import Before


class Writing(Standing):
    """A routine under way, and the one way by which it is changed."""

    FROM_MEMORY: ClassVar = False
    """Whether its marks are entered later than they were earned."""

    def _row(self, mark: Mark | None, cue: int) -> MarkRow:
        return MarkRow(
            mark=mark,
            cue=cue,
            adult=self.context.adult,
            from_memory=self.FROM_MEMORY,
            at=self.clock().isoformat(),
        )

    def _moved(self, position: int) -> Change:
        position = min(position, len(self.prompts))
        shown = position - 1 if self.takes_turns and not self.at_opening else position
        return Change(position=position, shown=max(self.furthest, min(shown, len(self.prompts) - 1)))

    def come_up(self) -> None:
        """The prompt the session stands at comes on screen, and counts as shown from now on.

        The child's window follows the session that was touched last.
        """
        seen, shown = Seen(self.items), min(self.position, len(self.prompts) - 1)
        change = Change(position=self.position, shown=max(self.furthest, shown))
        self._stand(change, seen)

    def _go(self, position: int) -> None:
        self._stand(self._moved(position), Seen(self.items))

    def _stand(self, change: Change, seen: Seen) -> None:
        """Stand at another prompt; nothing is marked and nothing logged."""
        self.journal.change(
            self.context.child.journal_name, self.morning.date, self.number, change, seen=seen
        )
        self.position = change.position or 0
        self._back_at_opening = False
        self.refresh()
        self.note_at_hand()

    def _replaced(self, prompts: tuple[Prompt, ...], routine: Routine | None = None) -> Change:
        new = (routine or self.routine)._replace(prompts=prompts)
        return replacing(self.routine, new, self.position, self.furthest)

    def _before(self, change: Change, marks: Mapping[int, MarkRow | None] | None = None) -> Before:
        """What stands here now of what a change will change."""
        before = Before(self.position, marks=marks or {})
        if change.start is None:
            return before
        new = {at: item for at, (item, _) in enumerate(change.rows, change.start)}
        gone = {
            at: row
            for at, row in self.marks.items()
            if change.start <= at < len(self.prompts) and new.get(at) != self.items[at]
        }
        return before._replace(furthest=self.furthest, routine=self.routine, marks={**gone, **before.marks})

    def _act(
        self, what: str, change: Change, before: Before, position: int | None = None, **said: object
    ) -> None:
        routine = None if change.start is None else routine_from(change.routine)
        items = self.items if routine is None else tuple(prompt.item for prompt in routine.prompts)
        after = undoing.after_text({**said, undoing.SHARED: self.shares} if self.shares else said, items)
        at = self.position if position is None else position
        self._write(change, Action(what, at, before.text(), after), routine)

    def _write(self, change: Change, action: Action | None, routine: Routine | None = None) -> None:
        """Do a change unless another window did something since, and stand where it leads."""
        child, date = self.context.child.journal_name, self.morning.date
        seen = Seen(self.items, self._newest)
        self.journal.change(child, date, self.number, change, action=action, seen=seen)
        if routine is not None:
            new = tuple(prompt.item for prompt in routine.prompts)
            self.cues = {at: n for at, n in self.cues.items() if new[at : at + 1] == self.items[at : at + 1]}
            self.routine = routine
        self.position = min(self.position if change.position is None else change.position, len(self.prompts))
        self._back_at_opening = self._back_at_opening and change.position is None
        self.refresh()
        self.note_at_hand()

    def note_at_hand(self) -> None:
        """Let the child's window know what stands here, as far as no row of the journal says it."""
        position = OPENING if self._back_at_opening and self.at_opening else self.position
        cue = 0 if self.prompt is None else self.cue
        self.journal.at_hand(self.context.child.journal_name, self.morning.date, self.number, position, cue)

    def _still(self) -> None:
        """Raise Changed where another window did something; looked at before the family is touched."""
        if self.journal.newest(self.context.child.journal_name, self.morning.date) != self._newest:
            raise Changed
