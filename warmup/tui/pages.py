"""What stands on the script at a prompt and at the close, as blocks of lines. No widgets here."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from warmup.english import date_words, in_words
from warmup.model import Mark, Morning
from warmup.session.session import Session
from warmup.session.words import AFTER_CUES, STOP_OFFERED, over_words
from warmup.tui.actions import BY_ID, keys_of
from warmup.tui.script import Block, Keep, Line, Script, Span, Tone, wrapped
from warmup.tui.workspace import Notice

if TYPE_CHECKING:
    from warmup.session.summary import Closing

BEADS = {
    Mark.FLUENT: "●",
    Mark.HESITATED: "◐",
    Mark.NOT_YET: "○",
    Mark.SKIPPED: "–",
    None: "·",
}
"""A prompt's bead by its mark; the one on screen stands in brackets."""
OPENING_BEAD = "◇"
SAID = "Say it; nothing is asked yet."
"""What the opening is, for who sees it first."""

HOW_TO_WAIT = "Ask, count five silently, then Space."
"""Said once a morning, with its first prompt: no cue needs to say it again."""
SMALL_THINGS = "Keep small things away from under-threes and mouthers: choking."
_SMALL = ("coin", "button", "bean", "cereal", "clip", "counter", "dice", "grape", "rice", "cracker", "sock ")


def heading(morning: Morning, name: str = "", *, short: bool = False) -> list[str]:
    """The parts of the script's first line: "Tuesday, March 3", "school day 98", "week 25", "quarter 3".

    ``short`` cuts the names of the weekday and the month to three letters.
    """
    if morning.is_school:
        place = f"school day {morning.school_day}"
    else:
        place = {"no school day of the week": "no school today"}.get(morning.kind.value, morning.kind.value)
    review = ["review"] if morning.review else []
    return [
        date_words(morning.date, short=short),
        place,
        f"week {morning.week}",
        f"quarter {morning.quarter}",
        *review,
        *([name] if name else []),
    ]


def _head(page: Script, morning: Morning, name: str = "") -> None:
    page.parts(heading(morning, name), Tone.QUIET, Keep.HEAD, heading(morning, name, short=True))


def opening_page(session: Session, width: int, notices: Sequence[Notice], name: str) -> Script:
    """What the morning begins with: words to say, and no answer, cue or mark."""
    opening = session.routine.opening
    assert opening is not None
    page = Script(width)
    _head(page, session.morning, name)
    page.air(Keep.SPACE)
    page.text(opening.say, Tone.SAY, Keep.ALWAYS)
    page.air(Keep.SPACE)
    page.text(SAID, Tone.QUIET, Keep.WHY)
    page.text(opening.table, Tone.PLAIN, Keep.OBJECT, "On the table:")
    _notices(page, notices)
    first = session.prompts[0].table
    if first != opening.table:
        page.text(first, Tone.QUIET, Keep.NEXT_OBJECT, "Have ready next:", bottom=True)
    page.line(beads(session), Keep.BEADS, bottom=True)
    names = ("next", "undo", "menu", "help", "quit")
    page.keys([span for name in names for span in _key(name)], Keep.ALWAYS)
    return page


def prompt_page(
    session: Session, width: int, notices: Sequence[Notice], *, covered: bool, name: str
) -> Script:
    """The prompt on screen, whole: what gives way does so when the rows are counted."""
    prompt = session.prompt
    assert prompt is not None
    page = Script(width)
    _head(page, session.morning, name)
    page.air(Keep.SPACE)
    page.text(prompt.do, Tone.PLAIN, Keep.ALWAYS, "Do:")
    page.text(prompt.say, Tone.SAY, Keep.ALWAYS)
    page.air(Keep.SPACE)
    if covered:
        page.line(
            (
                Span("Answer: ", Tone.LABEL),
                Span("covered", Tone.QUIET),
                Span("  "),
                *_key("cover", " uncover"),
            ),
            Keep.ALWAYS,
        )
    else:
        page.text(prompt.answer, Tone.ANSWER, Keep.ALWAYS, "Answer:")
        page.text(", ".join(prompt.accept), Tone.QUIET, Keep.WATCH, "Also right:")
        page.text(in_words(prompt.working), Tone.PLAIN, Keep.WORKING, "Working:")
    if session.position == 0 and session.cue == 0:
        page.text(HOW_TO_WAIT, Tone.QUIET, Keep.WHY)
    _cues(page, session)
    page.air()
    page.text(prompt.watch_for, Tone.PLAIN, Keep.WATCH, "Watch for:")
    page.text(prompt.why, Tone.QUIET, Keep.WHY, "Why today:")
    page.text(prompt.table, Tone.PLAIN, Keep.OBJECT, "On the table:")
    if any(word in prompt.table for word in _SMALL):
        page.text(SMALL_THINGS, Tone.QUIET, Keep.OBJECT)
    if prompt.picture is None and not any(cue.picture for cue in prompt.cues[: session.cue]):
        page.text("Spoken: no picture.", Tone.QUIET, Keep.ASIDE)
    _foot(page, session, notices)
    return page


def _cues(page: Script, session: Session) -> None:
    prompt, shown = session.prompt, session.cue
    assert prompt is not None
    for number, cue in enumerate(prompt.cues[:shown], start=1):
        current = number == shown
        keep = Keep.ALWAYS if current else Keep.OLD_CUES
        page.text(cue.text, Tone.CUE if current else Tone.QUIET, keep, f"Cue {number}:")
    if shown == 3:
        page.text(AFTER_CUES, Tone.QUIET, Keep.OLD_CUES)


def _notices(page: Script, notices: Sequence[Notice]) -> None:
    """The first notice stays if it is about something lost; the words to say are worth more than others."""
    for at, notice in enumerate(notices):
        tone = Tone.NOTICE if notice.loud else Tone.CUE
        keep = Keep.NOTICE if at or not notice.loud else Keep.ALWAYS
        page.text(notice.text, tone, keep, bottom=True)


def _foot(page: Script, session: Session, notices: Sequence[Notice]) -> None:
    _notices(page, notices)
    if session.offers_stop:
        _offer(page, STOP_OFFERED, "stop", bottom=True)
    ahead = session.prompts[session.position + 1 : session.position + 2]
    if ahead and ahead[0].table and session.prompt and ahead[0].table != session.prompt.table:
        page.text(f"{ahead[0].table}", Tone.QUIET, Keep.NEXT_OBJECT, "Have ready next:", bottom=True)
    page.line(beads(session), Keep.BEADS, bottom=True)
    names = ("fluent", "hesitated", "not_yet", "cue", "next", "undo", "menu", "help", "quit")
    page.keys([span for name in names for span in _key(name)], Keep.ALWAYS)


def _key(name: str, label: str = "") -> tuple[Span, Span]:
    action = BY_ID[name]
    return (
        Span(keys_of(action, "/"), Tone.KEY, name),
        Span(label or f" {action.label}", Tone.PLAIN, name),
    )


def beads(session: Session) -> Line:
    """A bead for the opening and each prompt, the one on screen in brackets, and how far along it is."""
    count, opening = len(session.prompts), session.at_opening
    glyphs = [BEADS[session.mark_at(at)] for at in range(count)]
    here = -1 if opening else session.position
    before = [(-1, OPENING_BEAD)] if session.routine.opening else []
    spans = [
        Span(f"[{glyph}]" if at == here else f" {glyph} ", Tone.HERE if at == here else Tone.QUIET)
        for at, glyph in (*before, *enumerate(glyphs))
    ]
    where = f"then {count}" if opening else f"{min(session.position + 1, count)} of {count}"
    rough = " · rough day" if session.rough else ""
    return (*spans, Span(f" {where}{rough}", Tone.QUIET))


def close_page(
    session: Session, closing: "Closing", width: int, notices: Sequence[Notice], name: str
) -> Script:
    """The close: one thing that went well, what comes back, what to have on the table. No score."""
    page = Script(width)
    _head(page, session.morning, name)
    page.air()
    page.text(closing.year or over_words(closed=session.closed), Tone.SAY, Keep.ALWAYS)
    page.air()
    page.text(closing.well, Tone.PLAIN, Keep.ALWAYS, "Went well:")
    page.text(closing.back, Tone.PLAIN, Keep.ALWAYS, "Comes back:")
    page.text(closing.again, Tone.CUE, Keep.ALWAYS, "Teach again:")
    for model in closing.models:
        page.text(model, Tone.PLAIN, Keep.HEAD, "At the table:")
    page.text(closing.review, Tone.PLAIN, Keep.OBJECT, "Review:")
    _offer(page, closing.pause, "hold")
    _next_time(page, closing)
    _notices(page, notices)
    page.line(beads(session), Keep.BEADS, bottom=True)
    left = len(session.unmarked)
    if left:
        page.text(f"{left} without a mark.", Tone.QUIET, Keep.WORKING, bottom=True)
    keys = _key("easy", " those came easily too") if left else ()
    if session.closed:
        page.keys([*keys, *_key("accept", " leave"), *_key("short", " another short one")], Keep.ALWAYS)
    else:
        page.keys([*keys, *_key("accept", " leave them, and finish" if left else " finish")], Keep.ALWAYS)
    page.keys(
        [span for each in ("back", "undo", "menu", "help", "quit") for span in _key(each)], Keep.WORKING
    )
    return page


def _next_time(page: Script, closing: "Closing") -> None:
    """What to lay out; the warning outlasts what a picture can stand in for when rows run out."""
    page.text(closing.table, Tone.PLAIN, Keep.OBJECT, "On the table next time:")
    label = "If at hand, too:" if closing.table else "Next time, if at hand:"
    page.text(closing.handy, Tone.QUIET, Keep.WATCH, label)
    if any(word in " ".join((closing.table, closing.handy, *closing.models)) for word in _SMALL):
        page.text(SMALL_THINGS, Tone.QUIET, Keep.NEXT_OBJECT)


def _offer(page: Script, text: str, action: str, *, bottom: bool = False) -> None:
    """A sentence that names the key to take it; a click will do as well."""
    if text:
        rows = wrapped(text, page.width, "", Tone.CUE)
        lines = tuple(tuple(span._replace(action=action) for span in row) for row in rows)
        page.blocks.append(Block(lines, Keep.NOTICE, bottom))


def empty_page(width: int, notices: Sequence[Notice]) -> Script:
    """What stands there while there is no session, since a file it needs can't be read."""
    page = Script(width)
    _notices(page, notices)
    page.keys([*_key("next", " try again"), *_key("quit")], Keep.ALWAYS)
    return page
