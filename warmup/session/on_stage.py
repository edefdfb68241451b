"""What the child's own window shows of the morning at hand: a picture, or a quiet one."""

from typing import NamedTuple

from warmup.journal.at_hand import OPENING
from warmup.journal.journal import NOT_BEGUN
from warmup.journal.routine_json import routine_from
from warmup.journal.watching import Found
from warmup.model import Routine
from warmup.pictures import Picture


class OnStage(NamedTuple):
    """A picture, or None for the quiet one.

    ``hidden`` says that it starts so, ``over`` that all prompts are behind, and ``closed`` that the morning
    is. ``prompt`` tells one prompt and its picture from every other.
    """

    picture: Picture | None = None
    hidden: bool = False
    over: bool = False
    closed: bool = False
    prompt: tuple[object, ...] = ()


NOTHING = OnStage()


class Reader:
    """Reads what is found; the routine, which seldom changes, is taken apart once."""

    def __init__(self) -> None:
        self._text = ""
        self._routine: Routine | None = None

    def on_stage(self, found: Found | None) -> OnStage:
        """What to show of a session; nothing where there is none, or its routine can't be read."""
        routine = self._read(found.about.routine) if found else None
        if found is None or routine is None:
            return NOTHING
        about, note, prompts = found.about, found.note, routine.prompts
        stands = OnStage(prompt=(found.key, about.started), closed=bool(about.closed))
        at_opening = about.furthest == NOT_BEGUN and routine.opening is not None
        if about.position >= len(prompts) or about.closed:
            return stands._replace(over=True)
        if at_opening or (note is not None and note.position == OPENING):
            return stands
        prompt = prompts[about.position]
        picture = prompt.picture_after(note.cue if note else 0)
        return stands._replace(
            picture=picture,
            # A model that a cue brings in stays open.
            hidden=prompt.flashed and picture == prompt.picture,
            prompt=(*stands.prompt, about.position, prompt.item, picture),
        )

    def _read(self, text: str) -> Routine | None:
        if text != self._text:
            self._text = text
            try:
                self._routine = routine_from(text)
            except ValueError:
                self._routine = None
        return self._routine
