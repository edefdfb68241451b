"""Where a routine under way stands: its prompt on screen, its marks, and what the journal says of them."""

import datetime as dt

from warmup.journal import log
from warmup.journal.journal import NOT_BEGUN, Journal, MarkRow, NoteRow
from warmup.journal.rows import MORNING
from warmup.model import ItemId, Mark, Morning, Prompt, Routine
from warmup.session import undoing
from warmup.session.context import Clock, Context

_PUT_ASIDE = (undoing.SWAP, undoing.ANOTHER, undoing.BLURTED)
"""Actions that put a prompt aside for the rest of the morning."""


class Standing:
    """A routine under way, as far as it got.

    ``position`` is the prompt on screen, from 0; at ``len(prompts)`` the close is, and at 0 the opening may
    be. ``cues`` holds how many cues of each prompt were shown, ``marks`` the marks by position, and
    ``furthest`` the last prompt shown, ``NOT_BEGUN`` before the first. ``beside`` are the prompts of other
    children at the same table, ``takes_turns`` says that the next prompt comes up only when it is this
    child's turn (see :meth:`Writing.come_up`), and ``shares`` what the log says of an action that is one for
    several children.
    """

    def __init__(
        self,
        context: Context,
        journal: Journal,
        clock: Clock,
        number: int,
        routine: Routine,
        position: int = 0,
    ) -> None:
        self.context, self.journal, self.clock = context, journal, clock
        self.number, self.routine, self.position = number, routine, position
        self.furthest = 0
        self.rough = self.closed = False
        self.marks: dict[int, MarkRow] = {}
        self.cues: dict[int, int] = {}
        self._missing: frozenset[str] = frozenset()
        self._declined: frozenset[str] = frozenset()
        self._stopped = self._back_at_opening = self._bare = False
        self._newest = ""
        self.beside: tuple[Prompt, ...] = ()
        self.takes_turns = False
        self.shares = ""

    # -- where it stands

    @property
    def prompts(self) -> tuple[Prompt, ...]:
        """The prompts, in order."""
        return self.routine.prompts

    @property
    def items(self) -> tuple[ItemId, ...]:
        """The items of the prompts, in order."""
        return tuple(prompt.item for prompt in self.prompts)

    @property
    def morning(self) -> Morning:
        """The morning it belongs to, as it was when it started."""
        return self.routine.morning

    @property
    def where(self) -> tuple[str, dt.date, int]:
        """Where the journal has it: under which name, of which date, by which number."""
        return self.context.child.journal_name, self.morning.date, self.number

    @property
    def at_close(self) -> bool:
        """Whether all prompts are behind."""
        return self.position >= len(self.prompts)

    @property
    def at_opening(self) -> bool:
        """Whether the opening is on screen: no prompt was yet, or the adult went back to it."""
        there = self.routine.opening is not None and self.position == 0 and not self.at_close
        return there and (self.furthest == NOT_BEGUN or self._back_at_opening)

    @property
    def prompt(self) -> Prompt | None:
        """The prompt on screen; None at the opening and at the close."""
        return None if self.at_opening or self.at_close else self.prompts[self.position]

    @property
    def cue(self) -> int:
        """How many cues of this prompt are shown, 0 to 3."""
        return self.cues.get(self.position, 0)

    def mark_at(self, position: int) -> Mark | None:
        """The mark of a prompt, None while it has none."""
        row = self.marks.get(position)
        return row.mark if row else None

    def note_at(self, position: int) -> NoteRow | None:
        """The note on a prompt, or with ``MORNING`` on the whole of it; None while there is none."""
        whole = self.journal.whole_of(*self.where)
        row = whole.notes.get(position) if whole else None
        return row if row and row.text else None

    @property
    def noting(self) -> int:
        """What a note is on now: the prompt on screen, else the morning as a whole."""
        return MORNING if self.prompt is None else self.position

    @property
    def unmarked(self) -> tuple[int, ...]:
        """Prompts that were shown and have no mark."""
        shown = range(self._reached)
        return tuple(at for at in shown if self.mark_at(at) is None)

    @property
    def _reached(self) -> int:
        """How many prompts were shown."""
        return min(self.furthest + 1, len(self.prompts))

    @property
    def _asked(self) -> int:
        """The last prompt that keeps its place: the one on screen, or one with a mark."""
        marked = [at for at in self.marks if self.mark_at(at)]
        return min(max([self.position, *marked]), len(self.prompts) - 1)

    @property
    def stopping(self) -> bool:
        """Whether the morning is down to its sure prompt: stopped early, or come to it by itself."""
        from warmup.session.replacing import ends_surely

        return self._stopped or (ends_surely(self.routine) and self.furthest >= len(self.prompts) - 1)

    @property
    def offers_stop(self) -> bool:
        """Whether to offer an early stop: the last two marks are not yet, and more than one prompt is left.

        They are those before the prompt on screen, with no other mark between and none after.
        """
        marked = [at for at in sorted(self.marks) if self.mark_at(at)]
        wobbled = len(marked) > 1 and all(self.mark_at(at) is Mark.NOT_YET for at in marked[-2:])
        ahead = wobbled and marked[-1] < self.position < len(self.prompts) - 1
        return ahead and not (self.closed or self.stopping)

    # -- the journal

    def refresh(self) -> None:
        """Take from the journal what another window may have added without changing the prompts."""
        child, date, _ = self.where
        rows = self.journal.sessions_of(child, date)
        stored = next((row for row in rows if row.session == self.number), None)
        if stored is not None:
            self.furthest, self.rough, self.closed = stored.furthest, stored.rough, stored.closed
        self.marks = self.journal.marks_of(*self.where)
        standing = log.standing(self.journal.actions_of(*self.where))
        swaps = [undoing.details(row) for row in standing if row.what in _PUT_ASIDE]
        self._missing, self._declined = (
            frozenset(text for swap in swaps if isinstance(text := swap.get(name), str) and text)
            for name in ("missing", "declined")
        )
        self._bare = any(row.what == undoing.BARE for row in standing)
        self._newest = self.journal.newest(child, date)
