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
from warmup.config.family import Child
from warmup.english import listed
from warmup.session import undoing
from warmup.session.session import Session
from warmup.session.words import (
    A_GAME,
    AFTER_CUES,
    MEANINGS,
    QUARTER_BY_COMMAND,
    STOP_OFFERED,
    over_words,
    ready,
)
from warmup.text import quoted

if TYPE_CHECKING:
    from warmup.session.summary import Closing
    from warmup.tui.parts import Asking

_MARKS = ("fluent", "hesitated", "not_yet")
_TOLD = "tell me more"
FIRST = frozenset({
    "fluent", "hesitated", "not_yet", "next", "easy", "accept", "next_child", "cue", "pause", "help",
})  # fmt: skip
"""What each question names; the help has the rest."""
_COMMON = ("undo", "unlocked", "week", "note", "help", "quit")
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
IN_PRACTICE = (
    *(of_action(name) for name in (*_MARKS, "next", "cue", "cover")),
    of_action("stage", _TOLD, "The picture in words, the working, what to watch for."),
    *_choices("back", "undo", "help"),
    of_action("quit", help="Stop here. What was marked is kept."),
)
"""What may be typed in a practice round."""
AT_A_PROMPT_TOGETHER = (*AT_A_PROMPT, of_action("blurted"))
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


def at_the_close(
    sessions: Sequence[Session], endings: "Sequence[Closing]", after: Child | None
) -> tuple[Choice, ...]:
    """What may be typed at the close, as it stands; ``after`` is the child who comes next."""
    left, closed = sum(len(each.unmarked) for each in sessions), all(each.closed for each in sessions)
    accept = "leave" if closed else "finish"
    offered = [of_action("accept", f"{accept}, {left} without a mark" if left else accept)]
    offered += [of_action("next_child", f"on with {after.nickname}")] if after else []
    offered += [of_action("easy")] if left else []
    offered += [of_action("again")] if closed else []
    offered += [of_action("review")] if endings[0].review else []
    paused = any(each.context.child.paused for each in sessions)
    label = "new things again" if paused else "nothing new for a week"
    offered += [of_action("pause", label)] if any(ending.pause for ending in endings) else []
    offered += [of_action("play")] if any(ending.game for ending in endings) else []
    return (*offered, *_choices("back", "rough", *_COMMON))


def beginning(sessions: Sequence[Session]) -> Iterator[str]:
    """What stands before all: the day, the table, how to wait, what is dangerous."""
    first, *others = sessions
    yield from day_lines(first.routine.morning, first.context)
    if others:
        yield f"With {listed([each.context.child.nickname for each in others])}: prompts take turns."
    prompts = tuple(prompt for each in sessions for prompt in each.prompts)
    yield from table_line(first.routine._replace(prompts=prompts))
    yield f"Prompts: {len(prompts)}."
    yield HOW_TO_WAIT
    yield SMALL_THINGS
    if first.context.own_problem:
        yield str(first.context.own_problem)


def standing(session: Session, *, covered: bool, whose: str = "") -> Iterator[str]:
    """All that stands on the script: the opening or the prompt at hand, with the nickname before it."""
    prompt = session.prompt
    if session.at_opening and session.routine.opening:
        yield opening_line(session.routine.opening)
        if session.routine.opening.job:
            yield session.routine.opening.job
    elif prompt is not None:
        yield from prompt_lines(session, covered=covered, whose=whose)


def prompt_lines(session: "Asking", *, covered: bool, whose: str = "") -> Iterator[str]:
    """The prompt at hand: its place, what it wants, the words, the answer and the cues so far."""
    prompt, mark = session.prompt, session.mark_at(session.position)
    assert prompt is not None
    marked = f", {undoing.MARK_WORDS[mark]}" if mark else ""
    name = f"{whose}. " if whose else ""
    yield f"{name}Prompt {session.position + 1} of {len(session.prompts)}{marked}."
    yield from wants_line(prompt)
    yield from do_and_say(prompt)
    yield from answer(session, covered=covered)
    yield from (cue_line(number, cue) for number, cue in enumerate(prompt.cues[: session.cue], start=1))
    if session.offers_stop:
        yield STOPS


def answer(session: "Asking", *, covered: bool) -> Iterator[str]:
    """The answer, or that it is covered."""
    if session.prompt is None:
        return
    if not covered:
        yield from answer_lines(session.prompt)
    else:
        yield f"Answer: covered. {of_action('cover').first} shows it."


def newest_cue(session: "Asking", before: int) -> Iterator[str]:
    """The cue that was asked for; after the third, what to do."""
    prompt, number = session.prompt, session.cue
    if prompt is None:
        return
    if number > before:
        yield cue_line(number, prompt.cues[number - 1])
    if number == len(prompt.cues):
        yield AFTER_CUES


def more_about(session: "Asking", *, covered: bool) -> Iterator[str]:
    """The picture in words and all else that helps the adult."""
    if session.prompt is not None:
        yield from insight_lines(session.prompt, answers=not covered)


def close_lines(sessions: Sequence[Session], endings: "Sequence[Closing]") -> Iterator[str]:
    """The close: of several children each line with its nickname."""
    yield endings[0].year or over_words(closed=all(each.closed for each in sessions))
    for session, ending in zip(sessions, endings, strict=True):
        name = f"{session.context.child.nickname}: " if len(sessions) > 1 else ""
        yield from (f"{name}{line}" for line in _of_one(ending))
    table, handy = ready(endings)
    day = endings[0].next_day
    if table:
        yield f"For {day} have ready: {table}"
    if handy:
        yield f"{'If at hand, too' if table else f'For {day}, if at hand'}: {handy}"
    quarter = (endings[0].quarter, QUARTER_BY_COMMAND) if endings[0].quarter else ()
    yield from (text for text in (*quarter, endings[0].review) if text)
    yield from (ending.pause for ending in endings if ending.pause)
    if game := next((ending.game for ending in endings if ending.game), ""):
        yield f"{A_GAME} {game}. {of_action('play').first} says how it goes."


def _of_one(ending: "Closing") -> Iterator[str]:
    if ending.well_at < 0:
        yield ending.well
    for row in ending.rows:
        mark = undoing.MARK_WORDS[row.mark] if row.mark else "no mark"
        note = f", {row.note}" if row.note == "soon" else ""
        yield f"{quoted(row.say)} {mark.capitalize()}{note}.{f' {ending.well}' * (row.at == ending.well_at)}"
    if ending.again:
        yield f"Teach again: {ending.again}"
    yield from (f"At the table: {model}" for model in ending.models)


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
