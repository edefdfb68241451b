"""A morning on half a page of plain text: to be carried to the table, ticked, and typed in later.

What has no room is cut, and never the words to say or the answer: cues lose their later sentences before
they break off, and a cue or a picture is left out where nothing else will do.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from warmup import skills
from warmup.cli.plain import picture_words
from warmup.english import date_words
from warmup.model import WOBBLES, ItemId, Prompt, Routine
from warmup.session.context import Context
from warmup.session.words import SMALL_THINGS, has_small_things
from warmup.text import quoted

LINES, COLUMNS = 30, 72
"""How much room there is, in lines and columns."""
WOBBLED = 3
"""So many of the things that wobbled last are named."""
TICK = "w came easily, s hesitated, n not yet. Later: warmup catch-up {}"
_INDENT = "   "
_BOXES = "w[ ] s[ ] n[ ]"
_FEWEST_WORDS = 4
"""A cue that breaks off has so many words at least."""


def brief_lines(routine: Routine, context: Context, *, answers: bool = True) -> list[str]:
    """The morning in at most ``LINES`` lines of ``COLUMNS``, as far as words and answers leave that room."""
    head = [*_flowed(head_words(routine, context)), TICK.format(routine.morning.date)]
    foot = [*foot_lines(routine, context)]
    prompts = [ways(number, prompt, answers=answers) for number, prompt in enumerate(routine.prompts, 1)]
    lines = fitted(prompts, LINES - len(head) - len(foot))
    if routine.opening:
        opening = _flowed(f"To begin with: {routine.opening.say}")
        if len(opening) <= LINES - len(head) - len(foot) - len(lines):
            head += opening
    return [*head, *lines, *foot]


def head_words(routine: Routine, context: Context) -> str:
    """Whose morning it is, and which."""
    morning = routine.morning
    day = f"school day {morning.school_day}" if morning.is_school else "no school day"
    return f"{context.child.nickname}, {date_words(morning.date)}: {day}, week {morning.week}."


def foot_lines(routine: Routine, context: Context) -> Iterator[str]:
    """What wobbled lately, and what to have ready, with its warning."""
    wobbly = [skills.locate(item) for item in wobbled(context)]
    if wobbly:
        names = "; ".join(dict.fromkeys(at.words() for at in wobbly))
        if len(_flowed(f"Wobbled lately: {names}.")) > 1:
            names = "; ".join(dict.fromkeys(at.skill.title.lower() for at in wobbly))
        yield _cut(f"Wobbled lately: {names}.", 1)
    first = [routine.opening.table] if routine.opening else []
    tables = [table for table in [*first, *(prompt.table for prompt in routine.prompts)] if table]
    things = dict.fromkeys(thing for table in tables for thing in table.split(", "))
    if things:
        yield from _flowed(_cut(f"Have ready: {', '.join(things)}.", 2))
    if has_small_things(*tables):
        yield SMALL_THINGS


def wobbled(context: Context) -> list[ItemId]:
    """The items that hesitated or were not yet the last time, the latest first, at most ``WOBBLED``."""
    records = context.knowledge().items.items()
    found = [
        (record.last or 0, item) for item, record in records if record.mark in WOBBLES and skills.known(item)
    ]
    return [item for _, item in sorted(found, key=lambda each: (-each[0], each[1]))[:WOBBLED]]


# -- a prompt in so many lines


class Way(NamedTuple):
    """A prompt with more or less of its help, and how much is lost by that: 0 where it is whole."""

    text: str
    loss: int = 0


_GIST, _NO_PICTURE = 120, 250
_NO_FIRST, _NO_SECOND = 200, 100
_SENTENCE, _CUT = 15, 30
"""What it costs to have a picture in few words or none, no first or second cue, one without its later
sentences, and one that breaks off, beside a point for each letter lost (common practice, no source)."""


def ways(number: int, prompt: Prompt, *, answers: bool) -> Iterator[Way]:
    """A prompt by its number, whole and with less and less; the words and the answer are in each."""
    answer = f" Answer: {prompt.answer}." if answers else ""
    do = f"{prompt.do} " if prompt.do else ""
    words = f"{number}. {_BOXES} {do}{quoted(prompt.say)}{answer}"
    first, second = prompt.cues[0].text, prompt.cues[1].text
    for picture in _pictures(prompt, answers=answers):
        for cue in _cues("Cue:", first, _NO_FIRST):
            for then in _cues("Then:", second, _NO_SECOND):
                parts = filter(None, (words, picture.text, cue.text, then.text))
                yield Way(" ".join(parts), picture.loss + cue.loss + then.loss)


def _pictures(prompt: Prompt, *, answers: bool) -> Iterator[Way]:
    if prompt.picture:
        yield Way(f"Picture: {picture_words(prompt, prompt.picture, answers=answers)}.")
        yield Way(f"Picture: {prompt.picture.words()}.", _GIST)
    yield Way("", _NO_PICTURE if prompt.picture else 0)


def _cues(label: str, text: str, none: int) -> Iterator[Way]:
    """A cue whole, its first sentence, ever fewer words of that, and none."""
    sentence = re.split(r"(?<=[.?!]) ", text, maxsplit=1)[0]
    yield Way(f"{label} {text}")
    if sentence != text:
        yield Way(f"{label} {sentence}", _SENTENCE)
    words = sentence.split()
    for count in range(len(words) - 1, _FEWEST_WORDS - 1, -1):
        kept = " ".join(words[:count]).rstrip(".,:;")
        yield Way(f"{label} {kept} …", _CUT + len(sentence) - len(kept))
    yield Way("", none)


def fitted(prompts: Sequence[Iterable[Way]], room: int) -> list[str]:
    """The lines of prompts, so many that they fit; where each is at its least they are what they are.

    One line after another goes where the least is lost with it.
    """
    by_lines = [_by_lines(each) for each in prompts]
    taken = [max(each) for each in by_lines]
    while sum(taken) > room:
        costs = [
            ((by_lines[at][fewer].loss - by_lines[at][lines].loss) / (lines - fewer), at, fewer)
            for at, lines in enumerate(taken)
            if (fewer := max((n for n in by_lines[at] if n < lines), default=0))
        ]
        if not costs:
            break
        _, at, fewer = min(costs)
        taken[at] = fewer
    return [line for at, lines in enumerate(taken) for line in _flowed(by_lines[at][lines].text)]


def _by_lines(ways: Iterable[Way]) -> dict[int, Way]:
    """Of each number of lines a prompt can have the way that loses least, up to those of the whole."""
    found: dict[int, Way] = {}
    for way in sorted(ways, key=lambda each: each.loss):
        lines = len(_flowed(way.text))
        if lines < min(found, default=lines + 1):
            found[lines] = way
    return found


def _flowed(text: str) -> list[str]:
    """The text in lines, those after the first set in. ``textwrap`` takes ten times as long."""
    lines: list[str] = []
    line = ""
    for word in text.split():
        if not line:
            line = word
        elif len(line) + len(word) < COLUMNS:
            line += f" {word}"
        else:
            lines.append(line)
            line = _INDENT + word
    return [*lines, line] if line else lines


def _cut(text: str, lines: int) -> str:
    """As many words as fit into so many lines."""
    if len(_flowed(text)) <= lines:
        return text
    words = text.split()
    ways = (f"{' '.join(words[:count]).rstrip('.,:;')} …" for count in range(len(words) - 1, 0, -1))
    return next(way for way in ways if len(_flowed(way)) <= lines)
