"""Which prompt of a morning tells the answer of another, and which would ask the same over again.

Calendar talk is all about one day; two prompts of one skill may come out alike.
"""

import re
from collections.abc import Collection, Iterable, Iterator, Sequence

from warmup.english import number_word
from warmup.model import ItemId, Prompt, Strand, is_own
from warmup.skills import SKILLS

_NUMBERS = {number_word(number): str(number) for number in range(200)}
_SAID_AFTER = re.compile(r", | … ")


def is_talk(prompt: Prompt) -> bool:
    """Whether a prompt is calendar talk: its answer is a fact others may mention. A family's own is none."""
    return not is_own(prompt.item) and SKILLS[prompt.skill].strand is Strand.CALENDAR


def meet(prompt: Prompt, others: Iterable[Prompt]) -> bool:
    """Whether the prompt tells the answer of one of the others, one of them its, or two ask the same."""
    return any(tells(prompt, other) or tells(other, prompt) or alike(prompt, other) for other in others)


def alike(prompt: Prompt, other: Prompt) -> bool:
    """Whether two prompts of a skill have one answer, or the numbers of one lie within the other's count."""
    if prompt.skill != other.skill:
        return False
    if prompt.answer == other.answer:
        return True
    one, two = _ends(prompt), _ends(other)
    within = (one | two).issubset
    return bool(one and two) and (
        within(range(min(one), max(one) + 1)) or within(range(min(two), max(two) + 1))
    )


def _ends(prompt: Prompt) -> set[int]:
    """The first and the last number of a count, those the adult says with it; of any other answer none."""
    said = [_SAID_AFTER.split(form) for form in (prompt.answer, *prompt.accept)]
    counts = [words for words in said if len(words) > 1 and all(word in _NUMBERS for word in words)]
    return {int(_NUMBERS[words[at]]) for words in counts for at in (0, -1)}


def to_leave_out(prompts: Sequence[Prompt], keep: Collection[ItemId] = ()) -> ItemId | None:
    """An item without which no prompt tells the answer of another; None where none does.

    Of two that meet it is the later one, unless that one is to be kept.
    """
    for at, prompt in enumerate(prompts):
        for other in prompts[:at]:
            if meet(prompt, (other,)):
                return other.item if prompt.item in keep else prompt.item
    return None


def tells(prompt: Prompt, other: Prompt) -> bool:
    """Whether the words or a mark in a picture of one prompt say what another one asks."""
    return is_talk(prompt) and is_talk(other) and answered(_told(prompt), other)


def answered(texts: Iterable[str], prompt: Prompt) -> bool:
    """Whether one of these texts says what a prompt asks, in any form that is right."""
    forms = {form.lower() for form in (prompt.answer, *prompt.accept)}
    forms |= {_NUMBERS[form] for form in forms if form in _NUMBERS}
    # Most forms stand nowhere in a text: a pattern is made only of one that does.
    return any(
        form in text and re.search(rf"(?<![\w-]){re.escape(form)}(?![\w-])", text)
        for text in map(str.lower, texts)
        for form in forms
    )


def _told(prompt: Prompt) -> Iterator[str]:
    yield from (prompt.do, prompt.say, prompt.watch_for, *(cue.text for cue in prompt.cues))
    for picture in (prompt.picture, *(cue.picture for cue in prompt.cues)):
        if picture is not None:
            yield "; ".join(picture.marked())
            # A calendar whose numbers are put up day by day ends on today's.
            yield str(getattr(picture, "upto", ""))
