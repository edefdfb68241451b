"""What stands on the script at the close: the child's own prompts, a row each, and no score."""

from collections.abc import Collection
from typing import TYPE_CHECKING

from warmup.model import Mark
from warmup.session.session import Session
from warmup.session.words import BEADS, SMALL_THINGS, has_small_things, over_words
from warmup.tui.parts import (
    View,
    key,
    keys,
    notices,
    with_remedy,
    year_head,
)
from warmup.tui.script import TALL, Keep, Line, Place, Script, Span, Tone, cells_of, cut, padded

if TYPE_CHECKING:
    from warmup.session.summary import Closing, Row

_FIRST = (Mark.NOT_YET, Mark.HESITATED, None, Mark.SKIPPED, Mark.FLUENT)
"""Which rows stay longest where not all have room; the one that went well does in any case."""

_FEW = 16
"""Under so many rows the close is short of them."""


def close_page(session: Session, closing: "Closing", view: View) -> Script:
    """The close, with as many rows as there is room for; the rest is counted."""
    ranked = sorted(closing.rows, key=lambda row: (row.at != closing.well_at, _FIRST.index(row.mark), row.at))
    for count in range(len(ranked), 0, -1):
        page = _page(session, closing, view, {row.at for row in ranked[:count]})
        # Where rows are few, the prompts are worth more of them than what to lay out tomorrow.
        gives_way = Keep.OBJECT if view.height < _FEW else Keep.WATCH
        if sum(len(block.lines) for block in page.blocks if block.keep > gives_way) <= view.height:
            return page
    return _page(session, closing, view, set())


def _page(session: Session, closing: "Closing", view: View, shown: Collection[int]) -> Script:
    page = Script(view.width)
    year_head(page, session.morning, view)
    page.air(place=Place.TOP)
    page.say(closing.year or over_words(closed=session.closed), band=view.height >= TALL)
    page.air()
    if closing.well_at < 0:
        page.text(closing.well, Tone.PLAIN, Keep.ALWAYS)
    for row in closing.rows:
        if row.at in shown:
            page.add([_row(row, view.width)], Keep.ALWAYS)
            if row.at == closing.well_at:
                page.add([(Span(f"   {closing.well}", Tone.CUE, bead=row.at),)], Keep.HEAD)
    if more := len(closing.rows) - len(shown):
        page.add([(Span(f"   ↓ {more} more", Tone.QUIET),)], Keep.HEAD)
    page.air()
    page.text(closing.again, Tone.CUE, Keep.ALWAYS, "Teach again:", action="unlocked")
    for model in closing.models:
        page.text(model, Tone.PLAIN, Keep.HEAD, "At the table:")
    _next_time(page, session, closing)
    page.text(closing.quarter, Tone.CUE, Keep.HEAD)
    if closing.review:
        page.add(with_remedy(closing.review, "", key("review", view.hand), view.width), Keep.OBJECT)
    if closing.pause:
        back = session.context.child.paused is not None
        label = "new things again" if back else "nothing new for a week"
        page.add(with_remedy(closing.pause, "", key("pause", view.hand, label), view.width), Keep.NOTICE)
    notices(page, view)
    _foot(page, session, view)
    return page


def _row(row: "Row", width: int) -> Line:
    """A bead, the prompt's words as far as they go, and what comes of it; a click goes back to it."""
    bead = Span(f"{BEADS[row.mark]}  ", Tone.HERE, bead=row.at)
    note = Span(row.note, Tone.QUIET, bead=row.at)
    room = width - cells_of((bead,)) - (len(row.note) + 2 if row.note else 0)
    said = Span(cut(f"“{row.say}”", room), Tone.PLAIN, bead=row.at)
    return (*padded((bead, said), width - cells_of((note,))), note)


def _next_time(page: Script, session: Session, closing: "Closing") -> None:
    """What to lay out; what a picture can stand in for gives way when rows run out."""
    day = closing.next_day
    page.text(closing.table, Tone.PLAIN, Keep.OBJECT, f"For {day} have ready:")
    label = "If at hand, too:" if closing.table else f"For {day}, if at hand:"
    page.text(closing.handy, Tone.QUIET, Keep.WATCH, label)
    warned = any(has_small_things(prompt.table) for prompt in session.prompts)
    if not warned and has_small_things(closing.table, closing.handy, *closing.models):
        page.text(SMALL_THINGS, Tone.STRONG, Keep.NEXT_OBJECT)


def _foot(page: Script, session: Session, view: View) -> None:
    hand, left = view.hand, len(session.unmarked)
    finish = "leave" if session.closed else "finish"
    rows = [[key("accept", hand, f"{finish}, {left} without a mark" if left else finish)]]
    if left:
        rows[0].append(key("easy", hand))
    if session.closed and not view.guest:
        rows[0].append(key("again", hand))
    rows.append([key(name, hand) for name in ("back", "undo", "menu", "help")])
    keys(page, rows, view)
