"""A note in lines: what the child said, on the prompt at hand or on the morning."""

from warmup.cli.lines import ask, say
from warmup.journal.journal import Changed
from warmup.session.session import Session
from warmup.session.words import WHOLE_MORNING, noted_words
from warmup.tui.workspace import Workspace

_AWAY = "-"
_ASKS = "What did they say? Enter alone leaves it as it is, - takes a note away"


def write_note(work: Workspace, session: Session) -> None:
    """Say the note there is, and keep the line that is typed. A line is kept whatever another window did.

    Changed where that took its prompt away; the line is said then, to be typed again.
    """
    kept = session.note_at(session.noting)
    about = WHOLE_MORNING if session.prompt is None else "this prompt"
    say(f"On {about}: {kept.text}" if kept else f"On {about}.")
    line = ask(_ASKS)
    if not line:
        return
    text = "" if line == _AWAY else line
    try:
        changed = session.note(text)
    except Changed:
        session.refresh()
        try:
            changed = session.note(text)
        except Changed:
            say(f"Not kept: {text}")
            raise
    work.said = noted_words(text) if changed else ""
