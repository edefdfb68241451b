"""``warmup past`` and ``warmup notes``: past mornings, and what the child said on them, printed.

The list is of this school year, with ``--all`` of the years before as well.

Their JSON: ``past --json`` is such a list, the latest session first, each with ``date``, ``session`` (its
number on that date), ``week`` (of the family's school year, or null), ``marks`` (of what was asked, null for
none) and ``notes`` (how many). With a date it is a list of the sessions of that date, each with ``date``,
``session``, ``week``, ``rough``, ``note`` (that on the morning as a whole, or null) and ``prompts``, each of
these with ``item``, ``say``, ``answer``, ``asked``, ``mark``, ``cue`` (the last one used), ``adult``,
``from_memory``, ``corrections`` (each with ``on``, a date, and ``was``) and ``note``. ``notes --json`` is a
list with ``date``, ``say`` (empty where the note is on the morning) and ``note``. A note has ``text``,
``shared``, ``adult`` and ``at``, its moment in UTC.
"""

from collections import Counter
from collections.abc import Iterator
from types import SimpleNamespace
from typing import Any

from warmup.cli.printing import Refused, reading_context, show, show_json
from warmup.config.places import Places
from warmup.english import date_words, number_word, plural
from warmup.journal.journal import Journal, NoteRow
from warmup.model import Mark
from warmup.session.context import Clock, Context
from warmup.session.past import (
    Kept,
    Line,
    PastMorning,
    earlier_years,
    kept_mornings,
    kept_on,
    notes_with,
)
from warmup.session.undoing import mark_words
from warmup.session.words import NOTHING_KEPT
from warmup.text import clean, quoted

EARLIER = "The years before: warmup past --all."


def past(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the list of past mornings, or one date whole. Refused for a date of which nothing is kept."""
    context, journal = reading_context(places, arguments.child, clock)
    if arguments.date is not None:
        _one(arguments, context, journal)
    else:
        found = kept_mornings(context, journal, years=arguments.all) if journal else ()
        if arguments.json:
            show_json([_kept_data(each) for each in found])
        else:
            show(_list_lines(found) if found else [NOTHING_KEPT])
            if journal and not arguments.all and earlier_years(context, journal):
                show([EARLIER])
    if journal:
        journal.shut()


def notes(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the notes that hold all the words, or every note without a word."""
    context, journal = reading_context(places, arguments.child, clock)
    found = list(notes_with(context, journal, arguments.words)) if journal else []
    if arguments.json:
        show_json(
            [{"date": f"{each.date}", "say": each.say, "note": _note_data(each.note)} for each in found]
        )
    elif found:
        for each in found:
            about = f"{quoted(each.say)} " if each.say else ""
            show([f"{date_words(each.date, year=True)}: {about}{_note_words(each.note)}"])
    else:
        show(["No note has these words." if arguments.words else "There is no note yet."])
    if journal:
        journal.shut()


def _one(arguments: SimpleNamespace, context: Context, journal: Journal | None) -> None:
    sessions = list(kept_on(context, journal, arguments.date)) if journal else []
    if journal is None or not sessions:
        raise Refused(f"nothing is kept of {date_words(arguments.date, year=True)}")
    mornings = [PastMorning(context, journal, each.date, each.session) for each in sessions]
    if arguments.json:
        show_json([_morning_data(each) for each in mornings])
    else:
        for morning in mornings:
            show(_morning_lines(morning))


def _list_lines(found: tuple[Kept, ...]) -> Iterator[str]:
    """A line a session, under a line for each week."""
    last = ""
    for each in found:
        week = f"Week {each.week}" if each.week else f"{each.date.year}"
        if week != last:
            yield week
            last = week
        again = ", again" if each.before else ""
        parts = [_marks_words(each.marks)]
        if each.notes:
            parts.append(f"{number_word(each.notes)} {plural(each.notes, 'note')}")
        yield f"{date_words(each.date, year=True)}{again}: {'; '.join(parts)}."


def _marks_words(marks: tuple[Mark | None, ...]) -> str:
    """How it went, counted: "seven asked, five came easily, two hesitated"."""
    counts = Counter(marks)
    told = [f"{_few(counts[mark])} {mark_words(mark)}" for mark in Mark if counts[mark]]
    return ", ".join([f"{_few(len(marks))} asked", *told])


def _few(count: int) -> str:
    return number_word(count) if count < 1000 else f"{count}"


def _morning_lines(morning: PastMorning) -> Iterator[str]:
    """One session: a prompt a block, then the note on the whole."""
    week = f", week {morning.week}" if morning.week else ""
    rough = ", a rough day" if morning.rough else ""
    yield f"{date_words(morning.date, year=True)}{week}{rough}."
    for number, line in enumerate(morning.lines, start=1):
        yield ""
        yield from _prompt_lines(number, line)
    if morning.note:
        yield ""
        yield f"The morning as a whole: {_note_words(morning.note)}"


def _prompt_lines(number: int, line: Line) -> Iterator[str]:
    yield f"{number}. {quoted(line.say)}" if line.answer else f"{number}. {line.say}"
    if line.answer:
        yield f"Answer: {line.answer}"
    yield "; ".join([f"It went: {line.went()}", *(each.words() for each in line.corrections)]) + "."
    yield from (f"Cue {at}: {cue}" for at, cue in enumerate(line.cues, start=1))
    if line.note:
        yield f"Note: {_note_words(line.note)}"


def _note_words(note: NoteRow) -> str:
    """The note, who wrote it, and whether it may go into reports."""
    beside = [*[clean(note.adult)] * bool(note.adult), *["in reports"] * note.shared]
    return f"{note.text} ({', '.join(beside)})" if beside else note.text


def _kept_data(kept: Kept) -> dict[str, Any]:
    return {
        "date": f"{kept.date}",
        "session": kept.session,
        "week": kept.week,
        "marks": [mark and mark.value for mark in kept.marks],
        "notes": kept.notes,
    }


def _morning_data(morning: PastMorning) -> dict[str, Any]:
    return {
        "date": f"{morning.date}",
        "session": morning.session,
        "week": morning.week,
        "rough": morning.rough,
        "note": _note_data(morning.note),
        "prompts": [_line_data(line) for line in morning.lines],
    }


def _line_data(line: Line) -> dict[str, Any]:
    row = line.mark if line.kind else None
    return {
        "item": line.item,
        "say": line.say,
        "answer": line.answer,
        "asked": line.shown,
        "mark": line.kind and line.kind.value,
        "cue": row.cue if row else 0,
        "adult": row.adult if row else "",
        "from_memory": row.from_memory if row else False,
        "corrections": [
            {"on": f"{each.on}", "was": each.was and each.was.value} for each in line.corrections
        ],
        "note": _note_data(line.note),
    }


def _note_data(note: NoteRow | None) -> dict[str, Any] | None:
    return note and note._asdict()
