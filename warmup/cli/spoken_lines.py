"""What a morning in lines says of an opening, a prompt and the close."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from warmup.cli.letters import Choice, of_action
from warmup.cli.plain import (
    HOW_TO_WAIT,
    SMALL_THINGS,
    answer_lines,
    cue_line,
    day_lines,
    do_and_say,
    insight_lines,
    opening_line,
    table_line,
    wants_line,
)
from warmup.session import undoing
from warmup.session.session import Session
from warmup.session.words import AFTER_CUES, MEANINGS, STOP_OFFERED, over_words

if TYPE_CHECKING:
    from warmup.session.summary import Closing

_MARKS = ("fluent", "hesitated", "not_yet", "skip")
_TOLD = "tell me more"
FIRST = frozenset({"fluent", "hesitated", "not_yet", "next", "easy", "accept", "cue", "help"})
"""What each question names; the help has the rest."""
_COMMON = ("undo", "unlocked", "help", "quit")
AGAIN = Choice("again", (".",), "say it again", "Say once more what stands here.")


def _choices(*names: str) -> tuple[Choice, ...]:
    return (*(of_action(name) for name in names), AGAIN)


AT_THE_OPENING = _choices("next", "short", "rough", *_COMMON)
AT_A_PROMPT = (
    *(of_action(name) for name in _MARKS),
    of_action("next"),
    of_action("cue"),
    of_action("cover"),
    of_action("stage", _TOLD, "The picture in words, the working, what to watch for, why today."),
    of_action("back"),
    of_action("swap", "another one", "Ask something else, for one of four reasons."),
    of_action("short", "wind down", "A short morning, an early stop, or a rough day."),
    *_choices("stop", "hold", "known", "rough", *_COMMON),
)
ANOTHER = (
    Choice("another", ("",), "just another"),
    of_action("swap"),
    of_action("hold"),
    of_action("known", letters=("k",)),
    of_action("back"),
)
"""Why something else is to be asked."""
WIND_DOWN = (of_action("short"), of_action("stop"), of_action("rough"), of_action("back", letters=("",)))
"""How the morning gets shorter, or counts for less."""


def at_the_close(session: Session, ending: "Closing") -> tuple[Choice, ...]:
    """What may be typed at the close, as it stands."""
    left = len(session.unmarked)
    accept = "leave" if session.closed else "leave them, and finish" if left else "finish"
    offered = [of_action("easy", "those came easily too")] if left else []
    offered += [of_action("accept", accept)]
    offered += [of_action("short", "another short one")] if session.closed else []
    offered += [of_action("hold", "nothing new for a week, or new things again")] if ending.pause else []
    return (*offered, *_choices("back", "rough", *_COMMON))


def beginning(session: Session) -> Iterator[str]:
    """What stands before all: the day, the table, how to wait, what is dangerous."""
    context, routine = session.context, session.routine
    yield from day_lines(routine.morning, context)
    yield from table_line(routine)
    yield f"Prompts: {len(routine.prompts)}."
    yield HOW_TO_WAIT
    yield SMALL_THINGS


def standing(session: Session, ending: "Closing | None") -> Iterator[str]:
    """All that stands on the script: the opening, the prompt at hand, or the close."""
    prompt = session.prompt
    if session.at_opening and session.routine.opening:
        yield opening_line(session.routine.opening)
    elif prompt is not None:
        yield from _prompt(session)
    elif ending is not None:
        yield from _close(session, ending)


def _prompt(session: Session) -> Iterator[str]:
    prompt, mark = session.prompt, session.mark_at(session.position)
    assert prompt is not None
    marked = f", {undoing.MARK_WORDS[mark]}" if mark else ""
    yield f"Prompt {session.position + 1} of {len(session.prompts)}{marked}."
    yield from wants_line(prompt)
    yield from do_and_say(prompt)
    yield from answer(session)
    yield from (cue_line(number, cue) for number, cue in enumerate(prompt.cues[: session.cue], start=1))
    if session.offers_stop:
        yield STOP_OFFERED


def answer(session: Session) -> Iterator[str]:
    """The answer, or that it is covered."""
    if session.prompt is None:
        return
    if session.context.family.answers_shown:
        yield from answer_lines(session.prompt)
    else:
        yield f"Answer: covered. {of_action('cover').first} shows it."


def newest_cue(session: Session, before: int) -> Iterator[str]:
    """The cue that was asked for; after the third, what to do."""
    prompt, number = session.prompt, session.cue
    if prompt is None:
        return
    if number > before:
        yield cue_line(number, prompt.cues[number - 1])
    if number == len(prompt.cues):
        yield AFTER_CUES


def more_about(session: Session) -> Iterator[str]:
    """The picture in words and all else that helps the adult."""
    if session.prompt is not None:
        yield from insight_lines(session.prompt, answers=session.context.family.answers_shown)


def _close(session: Session, ending: "Closing") -> Iterator[str]:
    yield ending.year or over_words(closed=session.closed)
    for label, text in (
        ("Went well", ending.well),
        ("Comes back", ending.back),
        ("Teach again", ending.again),
        *(("At the table", model) for model in ending.models),
        ("Review", ending.review),
        ("On the table next time", ending.table),
        ("If at hand, too" if ending.table else "Next time, if at hand", ending.handy),
    ):
        if text:
            yield f"{label}: {text}"
    if ending.pause:
        yield ending.pause
    if left := len(session.unmarked):
        yield f"{left} without a mark."


def help_lines(choices: Sequence[Choice], *, marks: bool) -> Iterator[str]:
    """Every choice with its letters and a sentence, and what the marks mean."""
    for choice in choices:
        letters = " or ".join(letter or "Enter" for letter in choice.letters)
        letters = f"{letters}, or “{choice.label}”" if letters else f"“{choice.label}”"
        yield f"{letters}: {choice.help}" if choice.help else f"{letters}."
    if marks:
        yield from (f"{mark}: {meaning}." for mark, meaning in MEANINGS)
