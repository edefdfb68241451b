"""What stands on the script at the close: the child's own prompts, a row each, and no score."""

from collections.abc import Collection, Sequence
from typing import TYPE_CHECKING, NamedTuple

from warmup.model import Mark
from warmup.session.session import Session
from warmup.session.words import (
    A_GAME,
    BEADS,
    QUARTER_ON_SCREEN,
    SMALL_THINGS,
    has_small_things,
    over_words,
    ready,
)
from warmup.text import quoted
from warmup.tui.actions import with_keys
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

_NAME = 10
"""The most cells of a nickname before a row."""
_FEW = 16
"""Under so many rows the close is short of them."""


class Part(NamedTuple):
    """What the close says of one child: its session, the lines, and the nickname where there are others.

    ``places`` are those of its prompts among the prompts of all, where these took turns.
    """

    session: Session
    closing: "Closing"
    name: str = ""
    places: tuple[int, ...] = ()

    def rows(self) -> "list[_Shown]":
        """The rows of its prompts."""
        return [
            _Shown(
                row,
                self.places[row.at] if self.places else row.at,
                self.name,
                self.closing.well if row.at == self.closing.well_at else "",
            )
            for row in self.closing.rows
        ]

    def of(self, text: str) -> str:
        """A line of this child, with its name where there are others."""
        return f"{self.name}: {text}" if self.name and text else text


class _Shown(NamedTuple):
    """A row, where a click on it goes, whose it is, and what went well."""

    row: "Row"
    bead: int
    name: str
    well: str


def close_page(parts: Sequence[Part], view: View) -> Script:
    """The close, with as many rows as there is room for; the rest is counted."""
    rows = sorted((row for part in parts for row in part.rows()), key=lambda row: row.bead)
    ranked = sorted(rows, key=lambda each: (not each.well, _FIRST.index(each.row.mark), each.bead))
    for count in range(len(ranked), 0, -1):
        page = _page(parts, rows, view, {each.bead for each in ranked[:count]})
        # Where rows are few, the prompts are worth more of them than what to lay out tomorrow.
        gives_way = Keep.OBJECT if view.height < _FEW else Keep.WATCH
        if sum(len(block.lines) for block in page.blocks if block.keep > gives_way) <= view.height:
            return page
    return _page(parts, rows, view, set())


def _page(parts: Sequence[Part], rows: Sequence[_Shown], view: View, shown: Collection[int]) -> Script:
    page, session = Script(view.width), parts[0].session
    year_head(page, session.morning, view)
    page.air(place=Place.TOP)
    closed = all(part.session.closed for part in parts)
    page.say(parts[0].closing.year or over_words(closed=closed), band=view.height >= TALL)
    page.air()
    for part in parts:
        if part.closing.well_at < 0:
            page.text(part.of(part.closing.well), Tone.PLAIN, Keep.ALWAYS)
    for each in rows:
        if each.bead in shown:
            page.add([_row(each, view.width)], Keep.ALWAYS)
            if each.well:
                page.add([(Span(f"   {each.well}", Tone.CUE, bead=each.bead),)], Keep.HEAD)
    if more := len(rows) - len(shown):
        page.add([(Span(f"   ↓ {more} more", Tone.QUIET),)], Keep.HEAD)
    page.air()
    for part in parts:
        page.text(part.of(part.closing.again), Tone.CUE, Keep.ALWAYS, "Teach again:", action="unlocked")
        for model in part.closing.models:
            page.text(model, Tone.PLAIN, Keep.HEAD, "At the table:")
    _next_time(page, parts)
    if quarter := parts[0].closing.quarter:
        page.text(quarter, Tone.CUE, Keep.HEAD)
        page.text(with_keys(QUARTER_ON_SCREEN, view.hand), Tone.QUIET, Keep.WATCH)
    _offers(page, parts, view)
    notices(page, view)
    _foot(page, parts, view)
    return page


def _offers(page: Script, parts: Sequence[Part], view: View) -> None:
    """The review, a week with nothing new where much wobbled, a game, and who comes next."""
    hand, named = view.hand, [part for part in parts if part.closing.pause]
    if review := parts[0].closing.review:
        page.add(with_remedy(review, "", key("review", hand), view.width), Keep.OBJECT)
    if named:
        back = any(part.session.context.child.paused for part in named)
        label = "new things again" if back else "nothing new for a week"
        text = " ".join(part.of(part.closing.pause) for part in named)
        page.add(with_remedy(text, "", key("pause", hand, label), view.width), Keep.NOTICE)
    game = next((part.of(f"{A_GAME} {name}.") for part in parts if (name := part.closing.game)), "")
    if game:
        page.add(with_remedy(game, "", key("play", hand, "how it goes"), view.width), Keep.WATCH)
    if view.next_name:
        text = f"{view.next_name} is next."
        page.add(with_remedy(text, "", key("next_child", hand, "go on"), view.width), Keep.ALWAYS)


def _row(shown: _Shown, width: int) -> Line:
    """A bead, the prompt's words as far as they go, and what comes of it; a click goes back to it."""
    row, at = shown.row, shown.bead
    bead = Span(f"{BEADS[row.mark]}  ", Tone.HERE, bead=at)
    whose = (Span(f"{cut(shown.name, _NAME)}  ", Tone.STRONG, bead=at),) if shown.name else ()
    note = Span(row.note, Tone.QUIET, bead=at)
    room = width - cells_of((bead, *whose)) - (len(row.note) + 2 if row.note else 0)
    said = Span(cut(quoted(row.say), room), Tone.PLAIN, bead=at)
    return (*padded((bead, *whose, said), width - cells_of((note,))), note)


def _next_time(page: Script, parts: Sequence[Part]) -> None:
    """What to lay out, each thing once; what a picture can stand in for gives way when rows run out."""
    closings = [part.closing for part in parts]
    day = closings[0].next_day
    table, handy = ready(closings)
    page.text(table, Tone.PLAIN, Keep.OBJECT, f"For {day} have ready:")
    label = "If at hand, too:" if table else f"For {day}, if at hand:"
    page.text(handy, Tone.QUIET, Keep.WATCH, label)
    warned = any(has_small_things(prompt.table) for part in parts for prompt in part.session.prompts)
    models = [model for closing in closings for model in closing.models]
    if not warned and has_small_things(table, handy, *models):
        page.text(SMALL_THINGS, Tone.STRONG, Keep.NEXT_OBJECT)


def _foot(page: Script, parts: Sequence[Part], view: View) -> None:
    hand, left = view.hand, sum(len(part.session.unmarked) for part in parts)
    closed = all(part.session.closed for part in parts)
    finish = "leave" if closed else "finish"
    rows = [[key("accept", hand, f"{finish}, {left} without a mark" if left else finish)]]
    if left:
        rows[0].append(key("easy", hand))
    if closed and not view.guest:
        rows[0].append(key("again", hand))
    rows.append([key(name, hand) for name in ("back", "undo", "menu", "help")])
    keys(page, rows, view)
