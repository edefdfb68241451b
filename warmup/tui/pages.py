"""What stands on the script in each mode of the morning, as blocks of lines. No widgets here."""

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

from warmup.english import WEEKDAYS, date_words, in_words
from warmup.model import Mark, Morning
from warmup.session.session import Session
from warmup.session.summary import Closing
from warmup.tui.actions import ACTIONS, BY_ID, Group, key_name, keys_of
from warmup.tui.lists import cut_off, scroll_end, scrolled, window
from warmup.tui.script import Block, Keep, Line, Script, Span, Tone, wrapped

BEADS = {
    Mark.FLUENT: "●",
    Mark.HESITATED: "◐",
    Mark.NOT_YET: "○",
    Mark.SKIPPED: "–",
    None: "·",
}
"""A prompt's bead by its mark; the one on screen stands in brackets."""

MARK_WORDS = {
    Mark.FLUENT: "came easily",
    Mark.HESITATED: "hesitated",
    Mark.NOT_YET: "not yet",
    Mark.SKIPPED: "left",
}
_AIRY = 22
"""From so many rows on the help has air between its parts."""
MEANINGS = (
    (
        "Came easily",
        "right with no cue; steady work with fingers too. Five seconds count in adding to 5 only",
    ),
    ("Hesitated", "a cue, a fresh start, or put right after you reacted. Looking up at you is no hesitation"),
    ("Not yet", "you showed it. It comes back; nothing is lost"),
    ("No mark", "changes nothing"),
)
HOW_TO_WAIT = "Ask, count five silently, then Space."
"""Said once a morning, with its first prompt: no cue needs to say it again."""
SMALL_THINGS = "Keep small things away from under-threes and mouthers: choking."
_SMALL = ("coin", "button", "bean", "cereal", "clip", "counter", "dice", "grape", "rice", "cracker", "sock ")


class Notice(NamedTuple):
    """A line above the beads; a ``loud`` one is about something lost or not saved."""

    text: str
    loud: bool = False


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
        page.text(
            "After this: show it, the child says it with you; mark it not yet.", Tone.QUIET, Keep.OLD_CUES
        )


def _notices(page: Script, notices: Sequence[Notice]) -> None:
    """The first notice stays if it is about something lost; the words to say are worth more than others."""
    for at, notice in enumerate(notices):
        tone = Tone.NOTICE if notice.loud else Tone.CUE
        keep = Keep.NOTICE if at or not notice.loud else Keep.ALWAYS
        page.text(notice.text, tone, keep, bottom=True)


def _foot(page: Script, session: Session, notices: Sequence[Notice]) -> None:
    _notices(page, notices)
    ahead = session.prompts[session.position + 1 : session.position + 2]
    if ahead and ahead[0].table and session.prompt and ahead[0].table != session.prompt.table:
        page.text(f"{ahead[0].table}", Tone.QUIET, Keep.NEXT_OBJECT, "Have ready next:", bottom=True)
    page.line(beads(session), Keep.BEADS, bottom=True)
    names = ("fluent", "hesitated", "not_yet", "cue", "next", "back", "undo", "help", "quit")
    page.keys([span for name in names for span in _key(name)], Keep.ALWAYS)


def _key(name: str, label: str = "") -> tuple[Span, Span]:
    action = BY_ID[name]
    return (
        Span("/".join(map(key_name, action.keys)), Tone.KEY, name),
        Span(label or f" {action.label}", Tone.PLAIN, name),
    )


def beads(session: Session) -> Line:
    """A bead for each prompt, the one on screen in brackets, and how far along it is."""
    spans = []
    for at in range(len(session.prompts)):
        glyph = BEADS[session.mark_at(at)]
        here = at == session.position
        spans.append(Span(f"[{glyph}]" if here else f" {glyph} ", Tone.HERE if here else Tone.QUIET))
    where = min(session.position + 1, len(session.prompts))
    rough = " · rough day" if session.rough else ""
    return (*spans, Span(f" {where} of {len(session.prompts)}{rough}", Tone.QUIET))


def close_page(
    session: Session, closing: Closing, width: int, notices: Sequence[Notice], name: str
) -> Script:
    """The close: one thing that went well, what comes back, what to have on the table. No score."""
    page = Script(width)
    _head(page, session.morning, name)
    page.air()
    page.text(
        "That was today’s warm-up." if not session.closed else "Today’s warm-up is done.",
        Tone.SAY,
        Keep.ALWAYS,
    )
    page.air()
    page.text(closing.well, Tone.PLAIN, Keep.ALWAYS, "Went well:")
    page.text(closing.back, Tone.PLAIN, Keep.ALWAYS, "Comes back:")
    page.text(closing.again, Tone.CUE, Keep.ALWAYS, "Teach again:")
    for model in closing.models:
        page.text(model, Tone.PLAIN, Keep.HEAD, "At the table:")
    page.text(closing.review, Tone.PLAIN, Keep.OBJECT, "Review:")
    _offer(page, closing.pause)
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
        [span for each in ("back", "undo", "rough", "help", "quit") for span in _key(each)], Keep.WORKING
    )
    return page


def _next_time(page: Script, closing: Closing) -> None:
    """What to lay out; the warning outlasts what a picture can stand in for when rows run out."""
    page.text(closing.table, Tone.PLAIN, Keep.OBJECT, "On the table next time:")
    label = "If at hand, too:" if closing.table else "Next time, if at hand:"
    page.text(closing.handy, Tone.QUIET, Keep.WATCH, label)
    if any(word in " ".join((closing.table, closing.handy, *closing.models)) for word in _SMALL):
        page.text(SMALL_THINGS, Tone.QUIET, Keep.NEXT_OBJECT)


def _offer(page: Script, text: str) -> None:
    """A sentence that names the key to take it; a click will do as well."""
    if text:
        rows = wrapped(text, page.width, "", Tone.CUE)
        lines = tuple(tuple(span._replace(action="hold") for span in row) for row in rows)
        page.blocks.append(Block(lines, Keep.NOTICE))


def help_page(width: int, height: int, first: int = 0) -> Script:
    """Every key by its group, with what it does where there is room, and what the marks mean.

    Where it is longer than the pane, it is shown from the line ``first`` on.
    """
    return scrolled(_help(width, height), height, first)


def help_end(width: int, height: int) -> int:
    """How far the help can be scrolled down, in lines."""
    return scroll_end(_help(width, height), height)


def _help(width: int, height: int) -> Script:
    page = Script(width)
    page.text("Keys: either hand, one at a time", Tone.SAY, Keep.HEAD)
    if height >= _AIRY:
        page.air()
    actions = [each for group in Group for each in ACTIONS if each.group is group and each.id != "accept"]
    if width >= 80 and height >= len(actions) + 11:
        for action in actions:
            cell = _cell(keys_of(action), action.label, action.id, 24)
            page.line((*cell, Span(f"  {action.help}", Tone.QUIET)), Keep.ALWAYS)
    else:
        column = (width - 2) // 2 if width >= 56 else width
        cells = [span for each in actions for span in _cell(keys_of(each), each.label, each.id, column)]
        page.keys(cells, Keep.ALWAYS, bottom=False)
    if height >= _AIRY:
        page.air()
    for mark, meaning in MEANINGS:
        page.text(meaning, Tone.PLAIN, Keep.WATCH, f"{mark}:")
    page.keys([*_key("help", " back to the morning"), *_key("quit")], Keep.ALWAYS)
    return page


def _cell(keys: str, label: str, action: str, width: int) -> list[Span]:
    head = keys.ljust(8)
    return [Span(head, Tone.KEY, action), Span(label[: width - 8].ljust(width - 8), Tone.PLAIN, action)]


class Unlocked(NamedTuple):
    """One level in the list of what this quarter has unlocked."""

    level: str
    title: str
    label: str
    week: int
    held: bool

    def words(self) -> str:
        """The row as it stands in the list."""
        return f"week {self.week:>2}  {'held back: ' if self.held else ''}{self.named()}"

    def named(self) -> str:
        """What the level is called."""
        return f"{self.title}: {self.label}"


class TeachAgain(NamedTuple):
    """One item in that list which rests until it is taught again, or was taught today."""

    item: str
    named: str
    taught: bool

    def words(self) -> str:
        """The row as it stands in the list."""
        return f"{'taught again' if self.taught else 'teach again'}: {self.named}"


def unlocked_page(
    morning: Morning,
    rows: Sequence[Unlocked | TeachAgain],
    cursor: int,
    width: int,
    height: int,
    notices: Sequence[Notice] = (),
    paused: str = "",
) -> Script:
    """What is to be taught again, then the quarter's levels, newest first, and those held back.

    The key that holds a level, or lets it come, says of an item that it was taught. ``paused`` is the date
    up to which nothing new comes.
    """
    page = Script(width)
    _notices(page, notices)
    match rows[cursor : cursor + 1]:
        case [TeachAgain(taught=taught)]:
            label = " take that back" if taught else " it was taught again"
        case _:
            label = " hold back, or let it come"
    keys = [Span("↑ ↓", Tone.KEY), Span(" choose", Tone.PLAIN), *_key("hold", label)]
    page.keys([*keys, *_key("unlocked", " back to the morning")], Keep.ALWAYS)
    page.text(f"Quarter {morning.quarter}: what may be asked so far", Tone.SAY, Keep.HEAD)
    page.text(f"Nothing new until {paused}." if paused else "", Tone.CUE, Keep.NOTICE)
    room = max(3, height - 1 - sum(len(block.lines) for block in page.blocks))
    shown = window(len(rows), cursor, room)
    for at in shown:
        here = at == cursor
        words = Span(_cut(rows[at].words(), width - 2), Tone.HERE if here else Tone.PLAIN)
        page.line((Span("› " if here else "  ", Tone.KEY), words), Keep.ALWAYS)
    page.text(cut_off(len(rows), shown.start, len(shown)), Tone.QUIET, Keep.ALWAYS)
    return page


def _cut(text: str, width: int) -> str:
    return text if len(text) <= width else f"{text[: width - 1]}…"


def counts_page(morning: Morning, width: int, notices: Sequence[Notice] = ()) -> Script:
    """A morning on a day that was not planned: does it count?"""
    page = Script(width)
    _head(page, morning)
    page.air()
    page.text("No school was planned today. A warm-up is welcome.", Tone.SAY, Keep.ALWAYS)
    page.text("Does it count as a school day?", Tone.SAY, Keep.ALWAYS)
    _notices(page, notices)
    page.keys(
        [*_key("accept", " no, just for fun"), *_key("fluent", " yes, it counts"), *_key("quit")], Keep.ALWAYS
    )
    return page


def turned_page(now: dt.date, stood: dt.date, width: int) -> Script:
    """The clock says another date than the morning on screen: today's, or finish that one?"""
    page, day = Script(width), dt.timedelta(1)
    named = WEEKDAYS[now.weekday()] if now == stood + day else date_words(now, year=True)
    page.text(f"It is {named} now.", Tone.SAY, Keep.ALWAYS)
    page.text("What was marked stays with its day.", Tone.QUIET, Keep.WATCH)
    back = " finish yesterday’s" if now == stood + day else f" finish the one of {date_words(stood)}"
    page.keys([*_key("accept", " today’s warm-up"), *_key("back", back), *_key("quit")], Keep.ALWAYS)
    return page
