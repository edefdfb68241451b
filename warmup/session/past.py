"""Past mornings: what was asked and how it went, a mark corrected later, a note beside a prompt.

A morning is shown as the journal has it, also where this version no longer knows an item of it. So nothing
here is a routine under way: a change is one of rows, and it is logged beside what stood there.
"""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from warmup import renames
from warmup.english import date_words
from warmup.journal import log
from warmup.journal.journal import Action, ActionRow, Change, Journal, MarkRow, NoteRow, Seen
from warmup.journal.routine_json import Words, words_in
from warmup.journal.rows import BESIDE, MORNING, Whole, other_note
from warmup.model import DayKind, Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.undoing import Before, CannotUndo, Undone
from warmup.text import clean

_OF_MARKS = frozenset({undoing.MARK, undoing.EASY, undoing.PAPER, undoing.CORRECT})
"""Actions that may put a mark in the place of another."""
_OF_NOTES = frozenset({undoing.NOTE, undoing.SHARE})
LOST = "a prompt that can’t be read any more"


class Correction(NamedTuple):
    """A mark that was changed: on which day, and what it was."""

    on: dt.date
    was: Mark | None

    def words(self) -> str:
        """In words: "corrected on March 4: was hesitated"."""
        was = f"was {undoing.mark_words(self.was)}" if self.was else "had no mark"
        return f"corrected on {date_words(self.on, weekday=False)}: {was}"


class Line(NamedTuple):
    """One prompt as it was asked: its position in the journal, its words, and all that came of it.

    ``say`` is its item's id where its words can't be read, and ``cues`` are those that were used. ``shown``
    says whether it was asked, as far as the journal tells.
    """

    position: int
    item: str
    say: str
    answer: str
    cues: tuple[str, ...]
    mark: MarkRow | None
    shown: bool
    note: NoteRow | None
    corrections: tuple[Correction, ...]

    @property
    def kind(self) -> Mark | None:
        """The mark alone."""
        return self.mark.mark if self.mark else None

    def went(self) -> str:
        """How it went, in words: "hesitated, with cue 2, Grandma, from memory"."""
        if self.mark is None or self.mark.mark is None:
            return "no mark" if self.shown else "not asked"
        cue = [f"with cue {self.mark.cue}"] if self.mark.cue else []
        memory = ["from memory"] if self.mark.from_memory else []
        adult = [clean(self.mark.adult)] if self.mark.adult else []
        return ", ".join([undoing.mark_words(self.mark.mark), *cue, *adult, *memory])


class Kept(NamedTuple):
    """A session in the list of past mornings: how many on its date came before it, and what it holds.

    ``week`` is that of the family's school year, None outside it.
    """

    date: dt.date
    session: int
    before: int
    week: int | None
    marks: tuple[Mark | None, ...]
    notes: int


def kept_mornings(context: Context, journal: Journal, *, years: bool = True) -> tuple[Kept, ...]:
    """Every session before today of which something was shown, marked or written down, the latest first.

    Those of the ``years`` before this school year may be left out, where it has any of its own.
    """
    this, before = _dates(context, journal)
    found = tuple(_kept(context, journal, this))
    return found if found and not years else (*found, *_kept(context, journal, before))


def any_kept(context: Context, journal: Journal) -> bool:
    """Whether there is any such session."""
    this, before = _dates(context, journal)
    return next(_kept(context, journal, (*this, *before)), None) is not None


def earlier_years(context: Context, journal: Journal) -> bool:
    """Whether there may be some of the years before, beside those of this school year."""
    this, before = _dates(context, journal)
    return bool(this and before)


def _dates(context: Context, journal: Journal) -> tuple[list[dt.date], list[dt.date]]:
    """The dates before today with a session: of this school year, and of the years before."""
    mornings, child = context.year.mornings, context.child.journal_name
    begins = min(mornings[0] if mornings else dt.date.min, context.today)
    return journal.past(child, context.today, begins), journal.past(child, begins)


def _kept(context: Context, journal: Journal, dates: Iterable[dt.date]) -> Iterator[Kept]:
    for date in dates:
        yield from reversed(list(kept_on(context, journal, date)))


def kept_on(context: Context, journal: Journal, date: dt.date) -> Iterator[Kept]:
    """Those of one date, in order of time."""
    child, before = context.child.journal_name, 0
    for row in journal.sessions_of(child, date):
        whole = journal.whole_of(child, date, row.session)
        if whole is None:
            continue
        marks = tuple(_mark_at(whole, at) for at in _positions(whole) if _shown(whole, at))
        notes = sum(bool(note.text) for note in whole.notes.values())
        if marks or notes or row.closed:
            yield Kept(date, row.session, before, _week(context, date), marks, notes)
            before += 1


def _week(context: Context, date: dt.date) -> int | None:
    if context.year.kind(date) in (DayKind.BEFORE, DayKind.AFTER):
        return None
    return context.year.morning(date).week


def _mark_at(whole: Whole, position: int) -> Mark | None:
    row = whole.marks.get(position)
    return row.mark if row else None


def _shown(whole: Whole, position: int) -> bool:
    return position <= whole.about.furthest or _mark_at(whole, position) is not None


def _positions(whole: Whole) -> list[int]:
    """Where a session has prompts, or something of prompts it lost; its own come first, those beside last."""
    noted = {at for at, note in whole.notes.items() if note.text and at != MORNING}
    marked = {at for at in whole.marks if _mark_at(whole, at)}
    own = {at for at in whole.prompts if at < BESIDE}
    return sorted(own | noted | marked)


class PastMorning:
    """One session of a past date: its lines, and what may be changed of it.

    :class:`warmup.journal.journal.Changed` where another window changed the date meanwhile: nothing was done
    then, and :meth:`read` finds how it stands. KeyError where there is no such session.
    """

    def __init__(self, context: Context, journal: Journal, date: dt.date, session: int) -> None:
        self._context, self._journal = context, journal
        self.date, self.session = date, session
        self.read()

    def read(self) -> None:
        """Take it from the journal as it stands now."""
        child = self._context.child.journal_name
        whole = self._journal.whole_of(child, self.date, self.session)
        if whole is None:
            raise KeyError(self.session)
        self._items = tuple(renames.item(whole.prompts[at][0]) for at in sorted(whole.prompts) if at < BESIDE)
        self._newest = self._journal.newest(child, self.date)
        self.rough = bool(whole.about.rough)
        actions = log.standing(self._journal.actions_of(child, self.date, self.session))
        corrections = _corrections(actions, self._items)
        words = words_in(whole.about.routine)
        self.lines = tuple(_line(whole, at, words, corrections.get(at, ())) for at in _positions(whole))
        self._marks, self._notes = dict(whole.marks), dict(whole.notes)
        self.note = self.note_at(MORNING)

    @property
    def week(self) -> int | None:
        """The week of the family's school year, None outside it."""
        return _week(self._context, self.date)

    def note_at(self, position: int) -> NoteRow | None:
        """The note on a prompt or, at ``MORNING``, on the whole of it; None while there is none."""
        row = self._notes.get(position)
        return row if row and row.text else None

    def correct(self, position: int, mark: Mark | None) -> bool:
        """Put another mark on a prompt, None for none; False where it has that one.

        It keeps its cue, and whether it is from memory; a mark where there was none is from memory.
        """
        was = self._marks.get(position)
        if mark is (was.mark if was else None):
            return False
        memory = was.from_memory if was and was.mark else True
        row = MarkRow(mark, was.cue if was else 0, self._context.adult, memory, "")
        before = Before(marks={position: was})
        self._act(
            undoing.CORRECT, Change(marks={position: row}), before, position, mark=mark.value if mark else ""
        )
        return True

    def write(self, position: int, text: str) -> bool:
        """Put a note on a prompt, or at ``MORNING`` on the morning; without a text there is none.

        False when nothing changed.
        """
        was = self.note_at(position)
        row = other_note(was, text, self._context.adult)
        if row is None:
            return False
        change, before = Change(notes={position: row}), Before(notes={position: was})
        self._act(undoing.NOTE, change, before, position, note=row.text)
        return True

    def share(self, position: int) -> bool | None:
        """Let a note go into reports, or no more; whether it may now, None where there is no note."""
        was = self.note_at(position)
        if was is None:
            return None
        change = Change(notes={position: was._replace(shared=not was.shared)})
        self._act(undoing.SHARE, change, Before(notes={position: was}), position, shared=not was.shared)
        return not was.shared

    def undo(self) -> Undone | None:
        """Take back the newest correction or note of the date; None when something else came after it.

        CannotUndo when what it changed has changed since.
        """
        row = undoing.newest(self._journal, self._context.child.journal_name, self.date, self.session)
        if row is None or row.what not in _OF_NOTES | {undoing.CORRECT}:
            return None
        if undoing.items_after(row) not in (None, self._items):
            raise CannotUndo
        before = undoing.before_of(row)
        blank = MarkRow(None, 0, self._context.adult, False, "")
        change = Change(
            marks={at: mark or blank for at, mark in before.marks.items()},
            notes={at: note or NoteRow("", adult=self._context.adult) for at, note in before.notes.items()},
        )
        self._change(change, Action(undoing.UNDO, row.position, takes_back=row.id))
        return Undone(row.what, undoing.words(row))

    def _act(self, what: str, change: Change, before: Before, position: int, **said: object) -> None:
        after = undoing.after_text(said, self._items)
        self._change(change, Action(what, None if position == MORNING else position, before.text(), after))

    def _change(self, change: Change, action: Action) -> None:
        seen = Seen(self._items, self._newest)
        child = self._context.child.journal_name
        self._journal.change(child, self.date, self.session, change, action=action, seen=seen)
        self._context.forget()
        self.read()


def _line(whole: Whole, at: int, words: Sequence[Words | None], corrections: tuple[Correction, ...]) -> Line:
    item = renames.item(whole.prompts[at][0]) if at in whole.prompts else ""
    said = words[at] if at < len(words) else None
    if said is None or said.item != item:
        said = Words(item, clean(item) or LOST, "", ())
    mark, note = whole.marks.get(at), whole.notes.get(at)
    cues = said.cues[: mark.cue] if mark and mark.mark else ()
    shown = _shown(whole, at)
    kept = note if note and note.text else None
    return Line(at, item, said.say, said.answer, cues, mark, shown, kept, corrections)


def _corrections(actions: Sequence[ActionRow], items: Sequence[str]) -> Mapping[int, tuple[Correction, ...]]:
    """By position the marks that gave way to others, as far as the log tells, the earliest first."""
    found: dict[int, tuple[Correction, ...]] = {}
    for row in actions:
        if row.what not in _OF_MARKS:
            continue
        then = undoing.items_after(row)
        on = dt.datetime.fromisoformat(row.at).astimezone().date()
        for at, mark in undoing.marks_before(row).items():
            was = mark.mark if mark else None
            # The prompt that then stood there may have given way to another since.
            same = then is None or at >= BESIDE or then[at : at + 1] == tuple(items[at : at + 1])
            if same and (was or row.what == undoing.CORRECT):
                found[at] = (*found.get(at, ()), Correction(on, was))
    return found


class Found(NamedTuple):
    """A note that was searched for: its date, what was asked (empty where it is on the morning), the note."""

    date: dt.date
    say: str
    note: NoteRow


def notes_with(context: Context, journal: Journal, words: Sequence[str]) -> Iterator[Found]:
    """The child's notes that hold every one of these words in whatever case, the latest morning first."""
    wanted = [word for text in words for word in clean(text).casefold().split()]
    child, after = context.child.journal_name, context.today + dt.timedelta(1)
    for date in journal.noted(child, after):
        for kept in reversed(list(kept_on(context, journal, date))):
            if not kept.notes:
                continue
            morning = PastMorning(context, journal, date, kept.session)
            says = [("", morning.note), *((line.say, line.note) for line in morning.lines)]
            for say, note in says:
                if note and all(word in note.text.casefold() for word in wanted):
                    yield Found(date, say, note)
