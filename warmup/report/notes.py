"""The notes of a child that were ticked as shared."""

from warmup.report.facts import Note, Shared
from warmup.session.context import Context
from warmup.session.past import notes_with


def shared_notes(context: Context) -> tuple[Shared, ...]:
    """Those notes, the latest first; none where there is no journal."""
    if context.journal is None:
        return ()
    found = notes_with(context, context.journal, ())
    return tuple(Note(each.date, each.note.text) for each in found if each.note.shared)
