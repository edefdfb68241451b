"""What the child's own window shows of the morning at hand: a picture, or a quiet one."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from warmup.journal.at_hand import OPENING
from warmup.journal.journal import NOT_BEGUN
from warmup.journal.routine_json import routine_from
from warmup.journal.watching import Found
from warmup.model import Prompt, Routine
from warmup.pictures import Picture


class OnStage(NamedTuple):
    """A picture, or None for the quiet one.

    ``hidden`` says that it starts so, ``over`` that all prompts are behind, and ``closed`` that the morning
    is. ``prompt`` tells one prompt and its picture from every other. ``coming`` are pictures that may follow.
    """

    picture: Picture | None = None
    hidden: bool = False
    over: bool = False
    closed: bool = False
    prompt: tuple[object, ...] = ()
    coming: tuple[Picture, ...] = ()


NOTHING = OnStage()


def soon(prompts: Sequence[Prompt], at: int, cue: int) -> Iterator[Picture]:
    """The pictures that the next keys may bring, the likeliest first; ``at`` is -1 at the opening."""
    here = [prompts[at]] if 0 <= at < len(prompts) else []
    pictures = [each.picture for each in prompts[at + 1 : at + 2]]
    pictures += [each.picture_after(cues) for each in here for cues in range(cue, 4)]
    pictures += [each.picture for each in prompts[max(0, at - 1) : max(0, at)]]
    return (picture for picture in pictures if picture is not None)


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
            return stands._replace(coming=tuple(soon(prompts, -1, 0)))
        prompt, cue = prompts[about.position], note.cue if note else 0
        picture = prompt.picture_after(cue)
        return stands._replace(
            picture=picture,
            # A model that a cue brings in stays open.
            hidden=prompt.flashed and picture == prompt.picture,
            prompt=(*stands.prompt, about.position, prompt.item, picture),
            coming=tuple(soon(prompts, about.position, cue)),
        )

    def _read(self, text: str) -> Routine | None:
        if text != self._text:
            self._text = text
            try:
                self._routine = routine_from(text)
            except ValueError:
                self._routine = None
        return self._routine
