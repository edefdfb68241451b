"""One routine being worked through: where it stands, its marks, and what each key does to it.

Nothing here knows a screen. Every change is in the journal before the method that makes it returns, in
one transaction with its row in the log of actions; :class:`warmup.journal.journal.Changed` where another
window changed the morning meanwhile: nothing was done then, and :func:`resume` finds where it stands.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from warmup.journal.journal import NOT_BEGUN, Change, Changed, Journal
from warmup.journal.routine_json import routine_text
from warmup.journal.rows import MORNING, other_note
from warmup.model import ItemId, LevelId, Mark, Opening, Prompt, Routine
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.family_changes import FamilyChange
from warmup.session.pausing import paused, turn_new
from warmup.session.stored import current, stored
from warmup.session.undoing import Before
from warmup.session.writing import Writing

if TYPE_CHECKING:
    from warmup.session.next_level import NextLevel
    from warmup.session.replacing import Instead


class Session(Writing):
    """A routine under way, and what each key does to it."""

    # -- moving and marking

    def mark(self, mark: Mark) -> None:
        """Mark the prompt on screen and go on."""
        if self.prompt is None:
            return
        at = self.position
        change = self._moved(at + 1)
        before = self._before(change, {at: self.marks.get(at)})
        change = change._replace(marks={at: self._row(mark, self.cue)})
        self._act(undoing.MARK, change, before, at, mark=mark.value)

    def next(self) -> None:
        """Go on without a mark: from the opening to the first prompt."""
        if not self.at_close:
            self._go(0 if self.at_opening else self.position + 1)

    def back(self) -> None:
        """Go back one prompt, and from the first to the opening, if there is one."""
        if self.position:
            self._go(self.position - 1)
        else:
            self._back_at_opening = True
            self.note_at_hand()

    def go_to(self, position: int) -> bool:
        """Go to a prompt that was shown, to the one after these, or with -1 to the opening; else False."""
        if position < 0:
            if self.position:
                self._go(0)
            self._back_at_opening = True
            self.note_at_hand()
        elif position <= min(self.furthest + 1, len(self.prompts) - 1):
            self._go(position)
        else:
            return False
        return True

    def to_close(self) -> None:
        """Go behind the last prompt."""
        self._go(len(self.prompts))

    def next_cue(self) -> None:
        """Show one more cue."""
        if self.prompt is not None:
            self.cues[self.position] = min(3, self.cue + 1)
            self.note_at_hand()

    def others_easy(self) -> int:
        """What was shown and has no mark came easily; gives how many that were. One undo takes all back."""
        left = self.unmarked
        if left:
            change = Change(marks={at: self._row(Mark.FLUENT, self.cues.get(at, 0)) for at in left})
            before = self._before(change, {at: self.marks.get(at) for at in left})
            self._act(undoing.EASY, change, before, count=len(left))
        return len(left)

    def note(self, text: str) -> bool:
        """Keep a line of what the child said, on the prompt on screen or else on the morning.

        Without a text the one there is goes. False when nothing changed.
        """
        at = self.noting
        was = self.note_at(at)
        row = other_note(was, text, self.context.adult)
        if row is None:
            return False
        before = Before(self.position, notes={at: was})
        self._act(undoing.NOTE, Change(notes={at: row}), before, None if at == MORNING else at, note=row.text)
        return True

    def toggle_rough(self) -> None:
        """Flag the day as a rough one, or not."""
        change = Change(rough=not self.rough)
        self._act(undoing.ROUGH, change, Before(rough=self.rough), on=not self.rough)

    def close(self) -> None:
        """The morning is over."""
        if not self.closed:
            self._act(undoing.CLOSE, Change(closed=True), Before(closed=False))

    # -- changing what is still to come

    def shorten(self) -> bool:
        """Make it a short morning, what was asked included. False when nothing changed."""
        instead, done = self._instead(), self._asked + 1
        if len(self.prompts) <= instead.short() or not self.prompts[done:]:
            return False
        change = self._replaced(self.prompts[:done] + instead.shortened(done))
        change = change._replace(reached=min(self.furthest, done - 1))
        self._act(undoing.SHORT, change, self._before(change))
        return True

    def stop_early(self) -> bool:
        """Go to one sure prompt and then the close; False when there is nothing to cut short.

        What was on screen stays, marked or not; only where the stop is offered does the prompt that just came
        up give way, since the child need not have heard it. What was not reached is not asked and is no debt.
        """
        if self.prompt is None or self.closed or self.stopping:
            return False
        unasked = self.offers_stop and self.position == self.furthest and not self.cue
        at = self.position - 1 if unasked else self.position
        change = self._stopped_at(at + 1 if unasked else self._reached, at)
        self._act(undoing.STOP, change, self._before(change))
        self._stopped = True
        return True

    def swap(self) -> bool:
        """Ask something else: what this prompt wants is not here. False when there is nothing else."""
        prompt = self.prompt
        if prompt is None:
            return False
        instead = self._instead(self._missing | ({prompt.table} - {""}), self._declined | {prompt.item})
        prompts = instead.others({prompt.item}, self.position, self._asked)
        return self._changed_to(prompts, undoing.SWAP, missing=prompt.table, declined=prompt.item)

    def another(self) -> bool:
        """Ask something else in this prompt's place, and not this again. False when there is nothing else."""
        prompt = self.prompt
        if prompt is None:
            return False
        prompts = self._without(prompt)
        return self._changed_to(prompts, undoing.ANOTHER, declined=prompt.item)

    def blurted(self) -> bool:
        """Another child has said it: it counts as not asked, and something else is asked in its place.

        Where there is nothing else those that come later move up. False when there is nothing to ask at all.
        """
        prompt = self.prompt
        if prompt is None:
            return False
        prompts = self._without(prompt)
        if prompts[self.position].item == prompt.item:
            if self._asked > self.position:
                return False  # Nothing goes from before a mark.
            prompts = (*prompts[: self.position], *prompts[self.position + 1 :])
        return bool(prompts) and self._changed_to(prompts, undoing.BLURTED, declined=prompt.item)

    def _without(self, prompt: Prompt) -> tuple[Prompt, ...]:
        """The prompts with something else in the place of this one, where there is something."""
        instead = self._instead(None, self._declined | {prompt.item})
        return instead.others({prompt.item}, self.position, self._asked)

    def bare(self) -> bool:
        """Let no prompt of today ask for a thing on the table. False where none did.

        At the opening the morning is chosen anew, its opening as well; later what was asked stays, and what
        is still to come and can't be had without a thing is left out.
        """
        if self.at_opening:
            routine = self.context.routine(session=self.number, bare=True)
            if not routine.prompts or not any(each.table for each in self._things()):
                return False
            change = _from_the_start(routine)
            self._act(undoing.BARE, change, self._before(change))
            return True
        asked = self._asked
        found = self._instead(bare=True).others((), self.position, asked)
        prompts = tuple(each for at, each in enumerate(found) if at <= asked or not each.table)
        return self._changed_to(prompts, undoing.BARE)

    def _things(self) -> tuple[Prompt | Opening, ...]:
        opening = self.routine.opening
        return (opening, *self.prompts) if opening else self.prompts

    def _changed_to(self, prompts: tuple[Prompt, ...], what: str, **said: object) -> bool:
        """Go on with other prompts; False where they are the same."""
        if prompts == self.prompts:
            return False
        change = self._replaced(prompts)
        self._act(what, change, self._before(change), None, **said)
        return True

    def hold_back(self) -> bool:
        """Hold this prompt's level back as not taught yet, and ask something else where there is."""
        prompt = self.prompt
        if prompt is None:
            return False
        self._still()
        level = prompt.level_id
        held = undoing.family_changed(self.context, lambda: self.context.editor.hold(level, back=True))
        prompts = self._instead().others(self._of_level(level), self.position, self._asked)
        self._act_with_family(undoing.HOLD, prompts, held, level=level)
        return True

    def know_already(self) -> "NextLevel | None":
        """They know this prompt's level already: open the next one of its skill, and ask that or another.

        Gives what comes next; None where no prompt is on screen. Where the next level waits, or there is
        none, only something else is asked.
        """
        from warmup.session.next_level import next_level

        prompt = self.prompt
        if prompt is None:
            return None
        self._still()
        found = next_level(self.context, self.morning, prompt.level_id)
        level, opened = found.level, tuple[FamilyChange, ...]()
        if level and found.opens and found.items:
            opened = undoing.family_changed(self.context, lambda: self.context.editor.open_early(level))
        out = self._of_level(prompt.level_id)
        prompts = self._instead().after_known(found.items, self.position, out, self._asked)
        if opened or prompts != self.prompts:
            self._act_with_family(undoing.KNOWN, prompts, opened, level=level or "")
        return found

    def turn_new(self) -> bool:
        """Let nothing new open until the adult says, or let it come again; whether nothing new opens now.

        What is new and still to come today gives way, but for the prompt on screen.
        """
        self._still()
        family = undoing.family_changed(self.context, lambda: turn_new(self.context))
        held = paused(self.context) is not None
        prompts = self.prompts
        if held and not self.at_close:
            known, items = self.context.knowledge(), self.context.curriculum().items
            begun = {item.level_id for item in items if known.of(item.id).marks}
            begun |= {each.level_id for at, each in enumerate(prompts) if self.mark_at(at)}
            new = {each.item for each in prompts[self._asked + 1 :] if begun and each.level_id not in begun}
            prompts = self._instead().others(new, self.position, self._asked)
        self._act_with_family(undoing.NEW_HELD if held else undoing.NEW_AGAIN, prompts, family)
        return held

    def _of_level(self, level: LevelId) -> set[ItemId]:
        return {each.item for each in self.prompts if each.level_id == level}

    def _act_with_family(
        self, what: str, prompts: tuple[Prompt, ...], family: tuple[FamilyChange, ...], level: str = ""
    ) -> None:
        """Log an action that changed the family, with the prompts that come of it where they are others."""
        changed = prompts != self.prompts
        change = self._replaced(prompts) if changed else Change()
        before = self._before(change) if changed else Before()
        self._act(what, change, before._replace(family=family), level=level)

    def family_action(self, what: str, work: Callable[[], None], **said: object) -> None:
        """Do what changes the family while this session is open, and log it."""
        self._still()
        undoing.logged(self.context, self.journal, what, work, said, self.number)
        self.refresh()

    def choose_again(self) -> bool:
        """Choose the prompts anew for the morning as it now is; False once something is marked."""
        if any(self.mark_at(at) for at in self.marks):
            return False
        routine = self.context.routine(session=self.number)
        self._write(_from_the_start(routine), None, routine)
        return True

    def fit_house(self) -> bool:
        """Ask nothing more that the house lacks. False where nothing of today wants such a thing.

        Marked prompts stay as they were asked; what nothing else can stand in for is left out.
        """
        at = self.position if self.prompt and not self.mark_at(self.position) else self._asked + 1
        prompts = self._instead().fitting(at, self._asked)
        if prompts == self.prompts:
            return False
        self._write(self._replaced(prompts), None, self.routine._replace(prompts=prompts))
        return True

    def _instead(
        self,
        missing: frozenset[str] | None = None,
        declined: frozenset[str] | None = None,
        *,
        bare: bool = False,
    ) -> "Instead":
        # Loads the engine, which a morning that goes on does not need before its first frame.
        from warmup.session.replacing import Instead

        missing = self._missing if missing is None else missing
        declined = self._declined if declined is None else declined
        bare = bare or self._bare
        return Instead(
            self.context, self.routine, self.number, missing, declined, bare=bare, beside=self.beside
        )

    def _stopped_at(self, start: int, at: int) -> Change:
        """A sure prompt in the place of all from ``start`` on, and to it, or to the close where none is sure.

        ``at`` is the prompt the child was just asked.
        """
        prompts = self.prompts[:start] + self._instead().sure(start, at)
        reached = min(start, len(prompts) - 1)
        return self._replaced(prompts)._replace(position=start, reached=reached)


def begin(
    context: Context, journal: Journal, clock: Clock, *, shape: str = "", beside: Routine | None = None
) -> Session:
    """Start a new session for today and keep it; where another window just began one, go on with that.

    ``beside`` is the routine of another child at the same table.
    """
    known = journal.sessions_of(context.child.journal_name, context.today)
    if any(not row.closed for row in known) and (found := resume(context, journal, clock)):
        return found
    try:
        number, routine = keep(context, journal, shape=shape, beside=beside)
    except Changed:
        return resume(context, journal, clock) or begin(context, journal, clock, shape=shape, beside=beside)
    return _session_of(context, journal, clock, number, routine, 0)


def keep(
    context: Context, journal: Journal, *, shape: str = "", begun: bool = True, beside: Routine | None = None
) -> tuple[int, Routine]:
    """Choose a routine for today and keep it as one more session; its number, and the routine.

    Without ``begun`` no prompt of it is on screen yet. Changed where another window just began one.
    """
    known = journal.sessions_of(context.child.journal_name, context.today)
    routine = context.routine(shape=shape, session=len(known) + 1, beside=beside)
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    kept = context.child.journal_name, context.today, routine.shape, routine_text(routine), rows
    furthest = _reached_by(routine) if begun else NOT_BEGUN
    return journal.start(*kept, known=len(known), furthest=furthest), routine


def _reached_by(routine: Routine) -> int:
    """How far a session is when it begins: at its first prompt, or not even there where an opening comes."""
    return NOT_BEGUN if routine.opening else 0


def _from_the_start(routine: Routine) -> Change:
    """The change to other prompts than those the session began with, before any mark."""
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    return Change(0, routine_text(routine), rows, position=0, reached=_reached_by(routine))


def resume(context: Context, journal: Journal, clock: Clock) -> Session | None:
    """Today's session as it was left: the open one, else the last closed one; None when there is none."""
    found = current(stored(journal, context.child.journal_name, context.today))
    if found is None:
        return None
    row, routine = found
    return _session_of(context, journal, clock, row.session, routine, row.position)


def _session_of(
    context: Context, journal: Journal, clock: Clock, number: int, routine: Routine, position: int
) -> Session:
    journal.keep_in_mind(context.child.journal_name, context.today, number)
    session = Session(context, journal, clock, number, routine, min(position, len(routine.prompts)))
    session.refresh()
    session.note_at_hand()
    return session
