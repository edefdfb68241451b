"""What undo knows: what stood there before an action, as the log of actions keeps it, and what it is called.

``before`` of an action is a JSON object of what it changed and how that was; ``after`` one of what the
action was and of the items that then were in the morning: it is taken back only while they still are.
"""

import datetime as dt
import json
from collections.abc import Callable, Mapping, Sequence
from typing import Any, NamedTuple

from warmup.journal.journal import NOT_BEGUN, Action, ActionRow, Journal
from warmup.journal.routine_json import routine_from, routine_text
from warmup.journal.rows import MARKS, MarkRow, NoteRow, plain_note
from warmup.model import LevelId, Mark, Plan, Routine
from warmup.schoolyear import WEEKS as LAST_WEEK
from warmup.session.context import Context
from warmup.session.family_changes import FamilyChange, changes_between, read_changes, taken_back

MARK = "mark"
SHORT = "short"
STOP = "stop"
SWAP = "swap"
ANOTHER = "another"
BARE = "bare"
HOLD = "hold"
COME = "come"
ROUGH = "rough"
EASY = "easy"
CLOSE = "close"
DAYS = "days"
EXTRA = "extra"
CALENDAR = "calendar"
READS = "reads"
PAUSE = "pause"
NEW_HELD = "new_held"
NEW_AGAIN = "new_again"
KNOWN = "known"
TAUGHT = "taught"
REST = "rest"
PAPER = "paper"
COUNTS = "counts"
SETTINGS = "settings"
PRINTED = "printed"
NEW_YEAR = "new_year"
WEEKS = "weeks"
OFF = "off"
SCHOOL = "school"
COUNTDOWN = "countdown"
EARLY = "early"
NOT_EARLY = "not_early"
MOVE = "move"
LESSON = "lesson"
NO_LESSON = "no_lesson"
UNSAID = "unsaid"
BLURTED = "blurted"
ADDED = "child_added"
RENAMED = "child_renamed"
RESTS = "child_rests"
PROMPTS = "child_prompts"
NOTE = "note"
SHARE = "share"
CORRECT = "correct"
UNDO = "undo"

MARK_WORDS = {
    Mark.FLUENT: "came easily",
    Mark.HESITATED: "hesitated",
    Mark.NOT_YET: "not yet",
    Mark.SKIPPED: "left for today",
}
_WORDS = {
    SHORT: "the short morning",
    STOP: "the early stop",
    SWAP: "the other prompt",
    ANOTHER: "the other prompt",
    BARE: "nothing on the table",
    HOLD: "held back",
    COME: "may come again",
    ROUGH: "the rough day",
    EASY: "the others came easily",
    CLOSE: "finished for today",
    DAYS: "the days",
    EXTRA: "today counts as a school day",
    CALENDAR: "the days off from a calendar",
    READS: "whether they read",
    PAUSE: "nothing new for a week",
    NEW_HELD: "nothing new until you say",
    NEW_AGAIN: "new things again",
    KNOWN: "they know it already",
    TAUGHT: "taught again",
    REST: "not taught again",
    PAPER: "the marks from paper",
    COUNTS: "it counts as a school day",
    SETTINGS: "the settings",
    PRINTED: "which sheets you have on paper",
    NEW_YEAR: "the new school year",
    WEEKS: "the weeks of the lessons",
    OFF: "the day off",
    SCHOOL: "school after all",
    COUNTDOWN: "the day to look forward to",
    EARLY: "opened early",
    NOT_EARLY: "not opened early",
    MOVE: "moved to another week",
    LESSON: "taught",
    NO_LESSON: "not taught yet",
    UNSAID: "nothing said of it",
    BLURTED: "called out",
    ADDED: "the child added",
    RENAMED: "the nickname",
    RESTS: "whether they rest",
    PROMPTS: "how many prompts",
    NOTE: "the note",
    SHARE: "whether the note goes into reports",
}
NO_LONGER = "The morning has changed since: this can’t be undone."
SHARED = "shared"
"""Under this name ``after`` says which actions of several children were one to the adult."""


class CannotUndo(Exception):
    """The newest action can't be taken back any more: what it changed has changed since."""


class Undone(NamedTuple):
    """An action that was taken back: its kind, and what it is called."""

    what: str
    words: str


class FamilyAction(NamedTuple):
    """An action that changes the family or the year plan, not done yet.

    Its word in the log, what it does, what the log says about it, and a line for the screen.
    """

    what: str
    work: Callable[[], None]
    about: Mapping[str, object]
    said: str


class LevelMove(NamedTuple):
    """A level that was moved in the year plan, with its week before and after."""

    level: LevelId
    was: int
    now: int


class Before(NamedTuple):
    """How what an action changed was before it; what is None or empty it left alone.

    ``marks`` has a row, or None for no mark, by position, and ``notes`` one, or None for no note.
    """

    position: int | None = None
    furthest: int | None = None
    marks: Mapping[int, MarkRow | None] = {}
    routine: Routine | None = None
    rough: bool | None = None
    closed: bool | None = None
    family: tuple[FamilyChange, ...] = ()
    moved: LevelMove | None = None
    notes: Mapping[int, NoteRow | None] = {}

    def text(self) -> str:
        """The JSON for the log."""
        marks = {
            str(at): row and [row.mark.value if row.mark else "", row.cue, row.adult, row.from_memory]
            for at, row in self.marks.items()
        }
        data = {
            "position": self.position,
            "furthest": self.furthest,
            "marks": marks,
            "routine": self.routine and routine_text(self.routine),
            "rough": self.rough,
            "closed": self.closed,
            "family": [list(change) for change in self.family],
            "moved": self.moved and list(self.moved),
            "notes": {str(at): row and [row.text, row.shared, row.adult] for at, row in self.notes.items()},
        }
        return _json({key: value for key, value in data.items() if value not in (None, {}, [])})


def before_of(row: ActionRow) -> Before:
    """What the log says stood there before. CannotUndo where it does not say it in a form we know."""
    try:
        data = json.loads(row.before)
        notes = {int(at): kept and _note_row(*kept) for at, kept in data.get("notes", {}).items()}
        return Before(
            _whole(data.get("position")),
            _whole(data.get("furthest"), least=NOT_BEGUN),
            _marks_in(data),
            routine_from(data["routine"]) if "routine" in data else None,
            _flag(data.get("rough")),
            _flag(data.get("closed")),
            read_changes(data.get("family", [])),
            _level_move(*data["moved"]) if "moved" in data else None,
            notes,
        )
    except (ValueError, TypeError, AttributeError, KeyError, RecursionError) as error:
        raise CannotUndo from error


def marks_before(row: ActionRow) -> Mapping[int, MarkRow | None]:
    """The marks that stood there before, by position; none where that is in no form we know."""
    try:
        return _marks_in(json.loads(row.before))
    except (ValueError, TypeError, AttributeError, RecursionError):
        return {}


def _marks_in(data: dict[str, Any]) -> dict[int, MarkRow | None]:
    return {int(at): kept and _mark_row(*kept) for at, kept in data.get("marks", {}).items()}


def items_after(row: ActionRow) -> tuple[str, ...] | None:
    """The items in the morning after the action; None where it touched none."""
    items = details(row).get("items")
    return tuple(map(str, items)) if isinstance(items, list) else None


def shared(row: ActionRow) -> str:
    """What an action shares with those of other children that were one with it; empty for most."""
    return str(details(row).get(SHARED, ""))


def details(row: ActionRow) -> dict[str, Any]:
    """What the log says of the action itself; empty where that is in no form we know."""
    try:
        data = json.loads(row.after)
    except (ValueError, RecursionError):
        return {}
    return data if isinstance(data, dict) else {}


def after_text(said: Mapping[str, object], items: Sequence[str] | None = None) -> str:
    """The JSON for ``after``."""
    return _json(said if items is None else {**said, "items": list(items)})


def mark_words(mark: Mark) -> str:
    """A mark in words, of whatever day it is."""
    return "left" if mark is Mark.SKIPPED else MARK_WORDS[mark]


def words(row: ActionRow) -> str:
    """What the action is called when it is taken back: "hesitated", "the early stop"."""
    if row.what in (MARK, CORRECT):
        mark = MARKS.get(str(details(row).get("mark")))
        return MARK_WORDS[mark] if mark else "the mark"
    return _WORDS.get(row.what, row.what)


def newest(journal: Journal, child: str, date: dt.date, session: int = 0) -> ActionRow | None:
    """The action that undo takes back now: the day's newest, unless it belongs to another session."""
    row = journal.last_undoable(child, date)
    return row if row is not None and row.session in (0, session) else None


def put_back(context: Context, before: Before) -> None:
    """Take an action's changes of the family and of the year plan back. CannotUndo where they can't be."""
    try:
        family = taken_back(context.family, before.family)
    except ValueError as error:
        raise CannotUndo from error
    moved = before.moved
    # A level that something else moved since stays where it is.
    if moved is not None and context.plan.weeks.get(moved.level) == moved.now:
        context.move_level(moved.level, moved.was)
    if family != context.family:
        context.editor.change(family)


def undo_day(context: Context, journal: Journal) -> Undone | None:
    """Take back what was said of the days before any session was begun; None when there is nothing."""
    row = newest(journal, context.child.journal_name, context.today)
    if row is None:
        return None
    put_back(context, before_of(row))
    journal.log(context.child.journal_name, context.today, 0, Action(UNDO, takes_back=row.id))
    return Undone(row.what, words(row))


def family_changed(context: Context, work: Callable[[], None]) -> tuple[FamilyChange, ...]:
    """Do what changes the family once; what it changed, without what its file was edited to meanwhile."""
    context.editor.kept.changed = None
    work()
    changed = context.editor.kept.changed
    return changes_between(*changed) if changed else ()


def logged(
    context: Context,
    journal: Journal,
    what: str,
    work: Callable[[], None],
    said: Mapping[str, object],
    session: int = 0,
) -> None:
    """Do what changes the family or moves a level of the plan, and log what it changed."""
    plan = context.plan
    changes = family_changed(context, work)
    before = Before(family=changes, moved=_moved(plan, context.plan, said))
    action = Action(what, before=before.text(), after=after_text(said))
    journal.log(context.child.journal_name, context.today, session, action)


def _moved(before: Plan, after: Plan, said: Mapping[str, object]) -> LevelMove | None:
    """What an action on a level did to its week; what its file was edited to meanwhile is no part of it."""
    level = LevelId(str(said.get("level")))
    if before is after or level not in before.weeks or level not in after.weeks:
        return None
    return LevelMove(level, before.weeks[level], after.weeks[level])


def _level_move(level: object, was: object, now: object) -> LevelMove:
    return LevelMove(LevelId(str(level)), _week(was), _week(now))


def _week(value: object) -> int:
    if type(value) is not int or not 1 <= value <= LAST_WEEK:
        raise ValueError(f"no week: {value!r}")
    return value


def _mark_row(mark: object, cue: object, adult: object, from_memory: object) -> MarkRow:
    if mark not in MARKS or type(cue) is not int or not isinstance(adult, str):
        raise ValueError(f"no mark: {mark!r}")
    return MarkRow(MARKS[str(mark)], cue, adult, bool(from_memory), "")


def _note_row(text: object, shared: object, adult: object) -> NoteRow:
    if not isinstance(text, str) or not isinstance(adult, str):
        raise ValueError(f"no note: {text!r}")
    return NoteRow(plain_note(text), bool(shared), adult)


def _whole(value: object, least: int = 0) -> int | None:
    if value is not None and (type(value) is not int or not least <= value < 1000):
        raise ValueError(f"no position: {value!r}")
    return value


def _flag(value: object) -> bool | None:
    if not isinstance(value, bool | None):
        raise ValueError(f"neither yes nor no: {value!r}")
    return value


def _json(data: object) -> str:
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
