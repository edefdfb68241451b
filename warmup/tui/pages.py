"""What stands on the script at the opening and at a prompt, as blocks of lines. No widgets here."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from warmup.english import in_words
from warmup.model import DayKind, Prompt
from warmup.session.session import Session
from warmup.session.words import (
    A_NEW_YEAR,
    AFTER_CUES,
    SMALL_THINGS,
    STOP_OFFERED,
    has_small_things,
    of_the_day,
)
from warmup.tui.actions import with_keys
from warmup.tui.parts import (
    Seen,
    View,
    beads,
    head,
    key,
    keys,
    notices,
    with_remedy,
    year_head,
)
from warmup.tui.script import TALL, Keep, Line, Place, Script, Span, Tone, beside, cells_of, padded, wrapped

if TYPE_CHECKING:
    from warmup.tui.parts import Asking

SAID = "Say it; nothing is asked yet."
"""What the opening is, for who sees it first."""
BEADS_EXPLAINED = "A bead for each prompt: · is still to come."
"""Said at the first opening of all; a mark's own bead is named when the mark is made."""
HOW_TO_WAIT = "Ask, count five silently, then ‹cue›."
"""Said at each prompt of the first two weeks: no cue needs to say it again."""
AT_LAST_SHORT = "After this: show it; it is not yet."
_FORMS = 3
"""So many other forms of an answer are named."""
_TWO_COLUMNS, _GAP, _LABEL = 64, 3, 12
"""From so many cells on there are two columns, with a gap; and the cells of the labels in the second."""


def opening_page(session: Session, view: View, *, first: bool) -> Script:
    """What the morning begins with: words to say, and no answer, cue or mark. ``first`` is the very first."""
    opening = session.routine.opening
    assert opening is not None
    page, hand = Script(view.width), view.hand
    year_head(page, session.morning, view)
    page.air(Keep.SPACE, Place.TOP)
    page.say(opening.say, band=view.height >= TALL)
    page.air(Keep.SPACE)
    page.text(SAID, Tone.QUIET, Keep.WHY)
    page.text(opening.table, Tone.PLAIN, Keep.OBJECT, "You need:")
    if has_small_things(opening.table):
        page.text(SMALL_THINGS, Tone.STRONG, Keep.OBJECT)
    page.text(of_the_day(session.context, session.morning), Tone.CUE, Keep.BEADS)
    if session.morning.kind is DayKind.AFTER:
        page.text(with_keys(A_NEW_YEAR, hand), Tone.QUIET, Keep.WHY)
    page.text(opening.job, Tone.CUE, Keep.WATCH)
    notices(page, view)
    ahead = session.prompts[0].table
    if ahead != opening.table:
        page.text(ahead, Tone.QUIET, Keep.NEXT_OBJECT, "Have ready next:", place=Place.FOOT)
    rough = " · rough day" if session.rough else ""
    if view.turns:
        page.text(f"Then {view.name} take turns.{rough}", Tone.QUIET, Keep.BEADS, place=Place.FOOT)
    else:
        then = Span(f"  then {len(session.prompts)}{rough}", Tone.QUIET)
        page.add([(*beads(session), then)], Keep.BEADS, Place.FOOT)
    if first and not view.turns:
        page.text(BEADS_EXPLAINED, Tone.QUIET, Keep.WHY, place=Place.FOOT)
    wants = bool(opening.table) or any(prompt.table for prompt in session.prompts)
    rare = [] if view.guest else [key("bare", hand)] * wants + [key("wind_down", hand)] * (not view.low)
    keys(page, [rare, [key(name, hand) for name in ("next", "undo", "menu", "help")]], view)
    return page


def prompt_page(session: "Asking", view: View, *, early: bool) -> Script:
    """The prompt on screen, whole: what gives way does so when the rows are counted.

    ``early`` says that it is one of the family's first weeks.
    """
    prompt = session.prompt
    assert prompt is not None
    page = Script(view.width)
    head(page, session, view)
    page.air(Keep.SPACE, Place.TOP)
    if view.turns:
        page.name(view.name, band=view.height >= TALL)
    page.text(prompt.do, Tone.PLAIN, Keep.ALWAYS, "Do:")
    page.say(prompt.say, band=view.height >= TALL)
    page.air(Keep.SPACE)
    wide = view.width >= _TWO_COLUMNS and view.height >= TALL
    if wide:
        left = (view.width - _GAP) * 9 // 20
        aside = [
            line for lines, _ in _asides(session, view, view.width - left - _GAP, wide) for line in lines
        ]
        page.add(beside(_box(prompt, view, left), aside, left + _GAP), Keep.ALWAYS)
        page.air()
    else:
        _answer(page, prompt, view)
    if early and not session.cue:
        page.text(with_keys(HOW_TO_WAIT, view.hand), Tone.QUIET, Keep.HOW)
    _cues(page, session, view)
    _where_to_look(page, session, view)
    page.air()
    if not wide:
        for lines, keep in _asides(session, view, view.width, wide):
            page.add(lines, keep)
    _foot(page, session, view)
    return page


# -- the answer


def _answer(page: Script, prompt: Prompt, view: View) -> None:
    if view.covered:
        covered = (Span("Answer: ", Tone.LABEL), Span("covered   ", Tone.QUIET))
        page.add([(*covered, *key("cover", view.hand, "show it"))], Keep.ALWAYS)
        return
    page.text(prompt.answer, Tone.ANSWER, Keep.ALWAYS, "Answer:", action="cover")
    page.text(_also_right(prompt), Tone.QUIET, Keep.WATCH, "Also right:")
    page.text(in_words(prompt.working), Tone.PLAIN, Keep.WORKING)


def _box(prompt: Prompt, view: View, width: int) -> list[Line]:
    """The answer in a frame with how it comes about; the key that hides it stands at its foot."""
    room, rows = width - 4, list[Line]()
    title = (Span("covered", Tone.QUIET),)
    if not view.covered:
        title = (Span(prompt.answer, Tone.ANSWER, "cover"),)
        if cells_of(title) > room:
            title = (Span("Answer", Tone.LABEL),)
            rows += wrapped(prompt.answer, room, "", Tone.ANSWER)
        if prompt.accept:
            rows += wrapped(_also_right(prompt), room, "also:", Tone.QUIET)
        if prompt.working:
            rows += wrapped(in_words(prompt.working), room, "", Tone.PLAIN)
    foot = key("cover", view.hand, "show it" if view.covered else "hide")
    side = Span("│", Tone.RULE)
    return [
        _edge("┌ ", title, " ", 0, "┐", width),
        *((side, Span(" "), *padded(row, room), Span(" "), side) for row in rows),
        _edge("└", foot, " ", width - cells_of(foot) - 5, "┘", width),
    ]


def _edge(corner: str, words: Line, after: str, before: int, end: str, width: int) -> Line:
    """An edge of the frame with words in it, ``before`` of its cells drawn ahead of them."""
    lead = f"{corner}{'─' * before} " if before else corner
    rest = width - len(lead) - cells_of(words) - len(after) - 1
    return (Span(lead, Tone.RULE), *words, Span(f"{after}{'─' * rest}{end}", Tone.RULE))


# -- help for the child


def _also_right(prompt: Prompt) -> str:
    """A few other forms of the answer: a date has nine, and an adult knows one when it is said."""
    some = prompt.accept[:_FORMS]
    return ", ".join(some) + (" …" if len(prompt.accept) > len(some) else "")


def _cues(page: Script, session: "Asking", view: View) -> None:
    """The cues so far, and what to press for the next or to do after the third."""
    prompt, shown = session.prompt, session.cue
    assert prompt is not None
    for number, cue in enumerate(prompt.cues[:shown], start=1):
        current = number == shown
        # Cue 1 gives way before cue 2: what was tried last is what the child has in mind.
        keep = Keep.ALWAYS if current else Keep.CUE_BEFORE if number == shown - 1 else Keep.OLD_CUE
        page.text(cue.text, Tone.CUE if current else Tone.QUIET, keep, f"Cue {number}:")
    if shown == len(prompt.cues):
        page.text(AFTER_CUES if view.height >= _CUE_ABOVE else AT_LAST_SHORT, Tone.QUIET, Keep.AT_LAST)
    elif view.height >= _CUE_ABOVE and view.width < _CUE_IN_FOOT:
        page.add([key("cue", view.hand, _next_cue(session))], Keep.HOW)


_CUE_IN_FOOT = 46
"""From so many cells on the foot has room to say which cue comes next."""
_CUE_ABOVE = 18
"""From so many rows on it is said under the cues where the foot has no room."""


def _next_cue(session: "Asking") -> str:
    return f"cue {session.cue + 1} of 3"


def _where_to_look(page: Script, session: "Asking", view: View) -> None:
    """Where the picture is, when it is not beside the words."""
    prompt = session.prompt
    assert prompt is not None
    picture = prompt.picture_after(session.cue)
    match view.seen:
        case _ if picture is None:
            page.text("Spoken: no picture.", Tone.QUIET, Keep.ASIDE)
        case Seen.ALONE:
            alone = key("stage", view.hand, "shows it alone")
            page.add([(Span("Picture: ", Tone.LABEL), *alone)], Keep.OBJECT)
        case Seen.NOWHERE:
            page.text(picture.words(), Tone.PLAIN, Keep.OBJECT, "Lay out:")
        case Seen.STAGE:
            pass


# -- for the adult alone


def _asides(session: "Asking", view: View, width: int, wide: bool) -> Sequence[tuple[list[Line], Keep]]:
    """What to watch for, why it comes today and what it needs, each with how long it stays."""
    prompt = session.prompt
    assert prompt is not None
    found: list[tuple[list[Line], Keep]] = []

    def said(label: str, text: str, tone: Tone, keep: Keep) -> None:
        if text:
            found.append(
                (_labeled(label, text, tone, width) if wide else _run_in(label, text, tone, width), keep)
            )

    said("Watch for", prompt.watch_for, Tone.PLAIN, Keep.WATCH)
    said("Why today", prompt.why, Tone.QUIET, Keep.WHY)
    if prompt.table:
        remedy, label = key("swap", view.hand), "" if wide else "You need:"
        room = width - _LABEL * wide
        lines = with_remedy(prompt.table, label, remedy, room)
        if view.guest or view.practice:
            lines = wrapped(prompt.table, room, label, Tone.PLAIN)
        found.append((_beside_label("You need", lines) if wide else lines, Keep.OBJECT))
    if _warns(session, view):
        found.append((wrapped(SMALL_THINGS, width, "", Tone.STRONG), Keep.OBJECT))
    return found


def _run_in(label: str, text: str, tone: Tone, width: int) -> list[Line]:
    return wrapped(text, width, f"{label}:", tone)


def _labeled(label: str, text: str, tone: Tone, width: int) -> list[Line]:
    """A paragraph beside its label, which has a column of its own."""
    return _beside_label(label, wrapped(text, width - _LABEL, "", tone))


def _beside_label(label: str, rows: Sequence[Line]) -> list[Line]:
    return [(Span(f"{label if not at else '':<{_LABEL}}", Tone.LABEL), *row) for at, row in enumerate(rows)]


def _warns(session: "Asking", view: View) -> bool:
    """Whether this is the first prompt of the morning with small things: the warning stands there alone."""
    prompts, here = view.prompts(session)
    small = (at for at, prompt in enumerate(prompts) if has_small_things(prompt.table))
    return next(small, None) == here


# -- the foot


def _foot(page: Script, session: "Asking", view: View) -> None:
    hand = view.hand
    notices(page, view)
    if session.offers_stop and not view.guest:
        page.text(with_keys(STOP_OFFERED, hand), Tone.CUE, Keep.NOTICE, place=Place.FOOT, action="wind_down")
    prompts, here = view.prompts(session)
    ahead = prompts[here + 1 : here + 2]
    if ahead and ahead[0].table and session.prompt and ahead[0].table != session.prompt.table:
        page.text(ahead[0].table, Tone.QUIET, Keep.NEXT_OBJECT, "Have ready next:", place=Place.FOOT)
    more = session.cue < 3
    if view.low and view.width >= _CUE_IN_FOOT:
        cue = [key("cue", hand)] * more
        least = [key("fluent", hand, "easily"), key("hesitated", hand), key("not_yet", hand)]
        keys(page, [[*least, *cue, key("help", hand, "more")]], view)
        return
    cue = [key("cue", hand, _next_cue(session) if view.width >= _CUE_IN_FOOT else "")] * more
    names = ("next", "undo", "menu", "help") if view.width >= _CUE_IN_FOOT else ("next", "undo", "help")
    others = [key(name, hand) for name in names]
    if view.practice:
        others = [*others[:2], key("leave", hand, "leave"), others[-1]]
    marks = [key(name, hand) for name in ("fluent", "hesitated", "not_yet")]
    keys(page, [marks, [*cue, *others]], view)


def empty_page(view: View) -> Script:
    """What stands there while there is no session, since a file it needs can't be read."""
    page = Script(view.width)
    notices(page, view)
    keys(page, [[key("next", view.hand, "try again"), key("quit", view.hand)]], view)
    return page
