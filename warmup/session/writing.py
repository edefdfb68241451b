"""How a change of a session gets into the journal, and out of it again: in one transaction, with its row in
the log of actions.

:class:`warmup.journal.journal.Changed` where another window changed the morning meanwhile: nothing was done.
"""

from collections.abc import Mapping
from typing import ClassVar

from warmup.journal.at_hand import OPENING
from warmup.journal.changes import replacing
from warmup.journal.journal import Action, ActionRow, Change, Changed, MarkRow, NoteRow, Seen
from warmup.journal.routine_json import routine_from
from warmup.model import Mark, Prompt, Routine
from warmup.session import undoing
from warmup.session.standing import Standing
from warmup.session.undoing import Before, CannotUndo, Undone


class Writing(Standing):
    """A routine under way, the one way by which it is changed, and undo."""

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
        self.journal.change(*self.where, change, seen=seen)
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
        seen = Seen(self.items, self._newest)
        self.journal.change(*self.where, change, action=action, seen=seen)
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
        self.journal.at_hand(*self.where, position, cue)

    def _still(self) -> None:
        """Raise Changed where another window did something; looked at before the family is touched."""
        if self.journal.newest(*self.where[:2]) != self._newest:
            raise Changed

    # -- undo

    @property
    def can_undo(self) -> bool:
        """Whether there is an action to take back."""
        return self.undoable is not None or self.journal.last_mark(*self.where) is not None

    @property
    def undoable(self) -> ActionRow | None:
        """The action that undo takes back next, by the log."""
        return undoing.newest(self.journal, *self.where)

    def undo(self) -> Undone | None:
        """Take back the newest action of the day, whatever it was; None when there is none.

        CannotUndo when what it changed has changed since. Marks from before there was a log are taken back
        newest first.
        """
        self._still()
        row = self.undoable
        if row is None:
            return self._undo_unlogged()
        before = undoing.before_of(row)
        if undoing.items_after(row) not in (None, self.items):
            raise CannotUndo
        undoing.put_back(self.context, before)
        change, routine = self._put_back(before)
        self._write(change, Action(undoing.UNDO, row.position, takes_back=row.id), routine)
        self._stopped = self._stopped and before.routine is None
        return Undone(row.what, undoing.words(row))

    def _put_back(self, before: Before) -> tuple[Change, Routine | None]:
        """The change that brings back what stood there, without what is held back by now."""
        was, held = before.routine or self.routine, self.context.child.held
        # Nothing goes from before a mark: a mark keeps its place.
        marked = max(
            (at for at, row in {**self.marks, **before.marks}.items() if row and row.mark), default=-1
        )
        kept = [
            at
            for at, prompt in enumerate(was.prompts)
            if at <= marked or prompt.item in self.items or prompt.level_id not in held
        ]
        change, routine = Change(), before.routine
        if routine is not None:
            routine = routine._replace(prompts=tuple(routine.prompts[at] for at in kept))
            change = self._replaced(routine.prompts, routine)
        marks = {kept.index(at): row or self._row(None, 0) for at, row in before.marks.items() if at in kept}
        # An action that changed a note changed no prompt, so notes stay where they are.
        notes = {at: row or NoteRow("") for at, row in before.notes.items()}
        stands = before.position
        if stands is not None:
            stands = sum(at < stands for at in kept)
        change = change._replace(
            marks=marks, position=stands, rough=before.rough, closed=before.closed, notes=notes
        )
        if before.furthest is not None or routine is not None:
            change = change._replace(reached=before.furthest)
        return change, routine

    def _undo_unlogged(self) -> Undone | None:
        newest = self.journal.last_mark(*self.where)
        if newest is None:
            return None
        mark, change = self.mark_at(newest), Change(marks={newest: self._row(None, 0)}, position=newest)
        # It takes back what the log never had, so that it is not itself taken back by the next undo.
        self._write(change, Action(undoing.UNDO, newest, takes_back="unlogged"))
        return Undone(undoing.MARK, undoing.MARK_WORDS[mark] if mark else "the mark")
