"""Nothing one prompt of a morning says answers another of the same morning.

What can be given away is a fact of the morning: today's name, its number, the month, the school day, and
those of the days beside it. A prompt *asks* such a fact when it is calendar talk; another one *tells* it
when it says the answer or sets it off in a picture, in whatever order the two come.
"""

from collections.abc import Sequence
from itertools import permutations

from tests.bank.kitchen import spoken
from tests.bank.secrets import says, told
from warmup.model import Prompt
from warmup.pictures import Picture

CALENDAR = {"weekday", "month", "date", "school-day"}


def given_away(prompts: Sequence[Prompt]) -> list[str]:
    """Faults: which prompt of a morning tells the answer of which, and where."""
    talk = [prompt for prompt in prompts if prompt.skill in CALENDAR]
    return [
        f"{teller.item} tells {form!r}, the answer of {asker.item}, in {where}: {teller.say} / {asker.say}"
        for teller, asker in permutations(talk, 2)
        for where, text in _told(teller)
        for form in told(asker)
        if says(text, form)
    ]


def _told(prompt: Prompt) -> list[tuple[str, str]]:
    texts = [*spoken(prompt), ("do", prompt.do), ("watch for", prompt.watch_for)]
    pictures = [("the picture", prompt.picture)]
    pictures += [(f"cue {n}'s picture", cue.picture) for n, cue in enumerate(prompt.cues, 1)]
    texts += [(where, "; ".join(_set_off(picture))) for where, picture in pictures if picture]
    return texts


def _set_off(picture: Picture) -> tuple[str, ...]:
    """What a picture makes stand out: where a finger is, and the last number put up on a calendar."""
    last = getattr(picture, "upto", 31)
    return (*picture.marked(), *((str(last),) if last < 31 else ()))
