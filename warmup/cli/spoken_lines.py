"""What a morning in lines says of an opening, a prompt and the close."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from warmup.cli.letters import Choice, lettered, of_action
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

_MARKS = ("fluent", "hesitated", "not_yet")
_TOLD = "tell me more"
FIRST = frozenset({"fluent", "hesitated", "not_yet", "next", "easy", "accept", "cue", "pause", "help"})
"""What each question names; the help has the rest."""
_COMMON = ("undo", "unlocked", "week", "help", "quit")
AGAIN = Choice("say_again", (".",), "say it again", "Say once more what stands here.")


STOPS = lettered(STOP_OFFERED)
"""The offer of an early stop."""


def _choices(*names: str) -> tuple[Choice, ...]:
    return (*(of_action(name) for name in names), AGAIN)


AT_THE_OPENING = _choices("next", "bare", "wind_down", *_COMMON)
AT_A_PROMPT = (
    *(of_action(name) for name in _MARKS),
    of_action("skip", letters=("-",)),
    of_action("next"),
    of_action("cue"),
    of_action("cover"),
    of_action("stage", _TOLD, "The picture in words, the working, what to watch for, why today."),
    *_choices("back", "another", "swap", "wind_down", *_COMMON),
)
ANOTHER = (
    of_action("just", letters=("",)),
    of_action("swap"),
    of_action("hold"),
    of_action("known"),
    of_action("back"),
)
"""Why something else is to be asked."""
WIND_DOWN = (of_action("short"), of_action("stop"), of_action("rough"), of_action("back", letters=("",)))
"""How the morning gets shorter, or counts for less."""
FROM_THE_OPENING = tuple(choice for choice in WIND_DOWN if choice.id != "stop")
"""The same before anything was asked."""


def at_the_close(session: Session, ending: "Closing") -> tuple[Choice, ...]:
    """What may be typed at the close, as it stands."""
    left = len(session.unmarked)
    accept = "leave" if session.closed else "finish"
    offered = [of_action("accept", f"{accept}, {left} without a mark" if left else accept)]
    offered += [of_action("easy")] if left else []
    offered += [of_action("again")] if session.closed else []
    offered += [of_action("review")] if ending.review else []
    offered += [of_action("pause", _turned(session))] if ending.pause else []
    return (*offered, *_choices("back", "rough", *_COMMON))


def _turned(session: Session) -> str:
    return "new things again" if session.context.child.paused else "nothing new for a week"


def beginning(session: Session) -> Iterator[str]:
    """What stands before all: the day, the table, how to wait, what is dangerous."""
    context, routine = session.context, session.routine
    yield from day_lines(routine.morning, context)
    yield from table_line(routine)
    yield f"Prompts: {len(routine.prompts)}."
    yield HOW_TO_WAIT
    yield SMALL_THINGS
    if context.own_problem:
        yield str(context.own_problem)


def standing(session: Session, ending: "Closing | None", *, covered: bool) -> Iterator[str]:
    """All that stands on the script: the opening, the prompt at hand, or the close."""
    prompt = session.prompt
    if session.at_opening and session.routine.opening:
        yield opening_line(session.routine.opening)
        if session.routine.opening.job:
            yield session.routine.opening.job
    elif prompt is not None:
        yield from _prompt(session, covered=covered)
    elif ending is not None:
        yield from _close(session, ending)


def _prompt(session: Session, *, covered: bool) -> Iterator[str]:
    prompt, mark = session.prompt, session.mark_at(session.position)
    assert prompt is not None
    marked = f", {undoing.MARK_WORDS[mark]}" if mark else ""
    yield f"Prompt {session.position + 1} of {len(session.prompts)}{marked}."
    yield from wants_line(prompt)
    yield from do_and_say(prompt)
    yield from answer(session, covered=covered)
    yield from (cue_line(number, cue) for number, cue in enumerate(prompt.cues[: session.cue], start=1))
    if session.offers_stop:
        yield STOPS


def answer(session: Session, *, covered: bool) -> Iterator[str]:
    """The answer, or that it is covered."""
    if session.prompt is None:
        return
    if not covered:
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


def more_about(session: Session, *, covered: bool) -> Iterator[str]:
    """The picture in words and all else that helps the adult."""
    if session.prompt is not None:
        yield from insight_lines(session.prompt, answers=not covered)


def _close(session: Session, ending: "Closing") -> Iterator[str]:
    yield ending.year or over_words(closed=session.closed)
    if ending.well_at < 0:
        yield ending.well
    for row in ending.rows:
        mark = undoing.MARK_WORDS[row.mark] if row.mark else "no mark"
        note = f", {row.note}" if row.note == "soon" else ""
        yield f"“{row.say}” {mark.capitalize()}{note}.{f' {ending.well}' * (row.at == ending.well_at)}"
    for label, text in (
        ("Teach again", ending.again),
        *(("At the table", model) for model in ending.models),
        (f"For {ending.next_day} have ready", ending.table),
        ("If at hand, too" if ending.table else f"For {ending.next_day}, if at hand", ending.handy),
    ):
        if text:
            yield f"{label}: {text}"
    yield from (text for text in (ending.quarter, ending.review, ending.pause) if text)


def review_lines(session: Session) -> Iterator[str]:
    """How the checks of this review week went so far."""
    from warmup.session.reviewing import parts

    for each in parts(session.context):
        yield f"{each.label.capitalize()}: {', '.join(each.titles)}."


def help_lines(choices: Sequence[Choice], *, marks: bool) -> Iterator[str]:
    """Every choice with its letters and a sentence, and what the marks mean."""
    for choice in choices:
        letters = " or ".join(letter or "Enter" for letter in choice.letters)
        letters = f"{letters}, or “{choice.label}”" if letters else f"“{choice.label}”"
        yield f"{letters}: {choice.help}" if choice.help else f"{letters}."
    if marks:
        yield from (f"{mark}: {meaning}." for mark, meaning in MEANINGS)
