"""What all pages of the morning are put together from: the head, the beads, the keys, the notices."""

from collections.abc import Sequence
from enum import Enum
from typing import TYPE_CHECKING, NamedTuple

from warmup.english import date_words
from warmup.model import DayKind, Morning, Prompt
from warmup.session.words import BEADS
from warmup.tui.actions import BY_ID, Hand, with_keys
from warmup.tui.script import Keep, Line, Place, Script, Span, Tone, cells_of, flowed, padded, wrapped
from warmup.tui.workspace import Notice

if TYPE_CHECKING:
    from typing import Protocol

    from warmup.model import Mark
    from warmup.session.together import Turn

    class Asking(Protocol):
        """What the page of a prompt shows: a session, or a practice round."""

        @property
        def morning(self) -> Morning:
            """The morning it is of."""

        @property
        def prompts(self) -> Sequence[Prompt]:
            """All of its prompts."""

        @property
        def prompt(self) -> Prompt | None:
            """The one on screen."""

        @property
        def position(self) -> int:
            """Its place."""

        @property
        def cue(self) -> int:
            """How many of its cues are shown."""

        @property
        def rough(self) -> bool:
            """Whether it is a rough day."""

        @property
        def at_opening(self) -> bool:
            """Whether the opening is on screen."""

        @property
        def offers_stop(self) -> bool:
            """Whether an early stop is offered."""

        def mark_at(self, position: int, /) -> Mark | None:
            """The mark of a prompt."""


OPENING_BEAD = "◇"
LOW = 12
"""Under so many rows a page has one line of keys, the least that a prompt needs."""


class Seen(Enum):
    """Where the picture of a prompt is to be seen."""

    STAGE = "on the stage"
    ALONE = "alone, by a key: there is no room beside the words"
    NOWHERE = "nowhere: the terminal is too small for it"


class View(NamedTuple):
    """What a page is made for: its size in cells, who is at the keys, and what there is to say.

    ``guest`` says who is at the keys in place of the family's own adult.
    ``turns`` are the prompts of all children where they take turns, and ``at`` the one at hand;
    ``next_name`` is who comes after this child. ``practice`` says that it is no morning.
    """

    width: int
    height: int
    hand: Hand = Hand.RIGHT
    notices: tuple[Notice, ...] = ()
    name: str = ""
    covered: bool = False
    seen: Seen = Seen.STAGE
    guest: str = ""
    turns: "tuple[Turn, ...]" = ()
    at: int = 0
    next_name: str = ""
    practice: bool = False

    def prompts(self, session: "Asking") -> tuple[Sequence[Prompt], int]:
        """The prompts of the morning in the order they are asked, and the place of the one at hand."""
        if self.turns:
            return [turn.prompt for turn in self.turns], self.at
        return session.prompts, session.position

    @property
    def low(self) -> bool:
        """Whether there is room for the least only."""
        return self.height < LOW


_LAST = ", the last"


def place_parts(morning: Morning, *, short: bool = False) -> list[str]:
    """Where in the year a morning stands: "Tuesday, March 3", "school day 98", "week 25", "quarter 3".

    ``short`` cuts the names of the weekday and the month to three letters.
    """
    if morning.is_school:
        place = f"school day {morning.school_day}" + _LAST * (morning.next is None)
    else:
        place = {"no school day of the week": "no school today"}.get(morning.kind.value, morning.kind.value)
    if morning.kind in (DayKind.BEFORE, DayKind.AFTER):
        # Lessons have no week there.
        ready = morning.kind is DayKind.BEFORE
        return [date_words(morning.date, short=short), place, "getting ready" if ready else "keeping warm"]
    review = ["review"] if morning.review else []
    return [
        date_words(morning.date, short=short),
        place,
        f"week {morning.week}",
        f"quarter {morning.quarter}",
        *review,
    ]


def year_head(page: Script, morning: Morning, view: View) -> None:
    """The first line of the opening and of the close: where in the year it is."""
    names = ("" if view.turns else view.name, view.guest)
    name = [each for each in names if each]
    most, less = [*place_parts(morning), *name], [*place_parts(morning, short=True), *name]
    least = [less[0], *less[1:2], *name]
    number = [less[0], less[1].removesuffix(_LAST), *name]
    lines = [" · ".join(parts) for parts in (most, less, least, number, [less[0], *name])]
    fitting = next((line for line in lines if cells_of((Span(line),)) <= view.width), lines[-1])
    page.text(fitting, Tone.QUIET, Keep.HEAD, place=Place.TOP)


def head(page: Script, session: "Asking", view: View) -> None:
    """The first line at a prompt: the date, the beads, how far along it is; in two where one is full."""
    # Where prompts take turns the name stands before the words, large.
    names = ("" if view.turns else view.name, view.guest, "practice" if view.practice else "")
    name = "".join(f" · {each}" for each in names if each)
    date = session.morning.date
    lefts = [Span(date_words(date, short=short) + name, Tone.QUIET) for short in (False, True)]
    where = Span(_where(session), Tone.QUIET)
    string = beads(session)
    for left in lefts:
        if cells_of((left, *string, where)) + 4 <= view.width:
            page.add([_apart((left,), (*string, Span("  "), where), view.width)], Keep.HEAD, Place.TOP)
            return
    left = next((each for each in lefts if cells_of((each, where)) + 2 <= view.width), lefts[-1])
    page.add([_apart((left,), (where,), view.width)], Keep.HEAD, Place.TOP)
    if cells_of(string) <= view.width:
        page.add([string], Keep.BEADS, Place.TOP)


def _apart(left: Line, right: Line, width: int) -> Line:
    """One line with a piece at either end."""
    return (*padded(left, width - cells_of(right)), *right)


def _where(session: "Asking") -> str:
    rough = "rough day · " if session.rough else ""
    return f"{rough}{min(session.position + 1, len(session.prompts))} of {len(session.prompts)}"


def beads(session: "Asking") -> Line:
    """A bead for each prompt, the one on screen in brackets; a click goes there. The opening has its own."""
    pieces: list[Span] = []
    if session.at_opening:
        pieces.append(Span(f"[{OPENING_BEAD}]", Tone.HERE, bead=-1))
    for at in range(len(session.prompts)):
        mark = session.mark_at(at)
        if at == session.position and not session.at_opening:
            glyph, tone = f"[{BEADS[mark] if mark else at + 1}]", Tone.HERE
        else:
            glyph, tone = BEADS[mark], Tone.QUIET
        pieces.append(Span(glyph, tone, bead=at))
    return tuple(piece for each in pieces for piece in (Span(" "), each))[1:]


def key(name: str, hand: Hand, label: str = "") -> tuple[Span, Span]:
    """An action's key and what it does."""
    action = BY_ID[name]
    return Span(action.key(hand), Tone.KEY, name), Span(f" {label or action.label}", Tone.QUIET, name)


def keys(page: Script, rows: Sequence[Sequence[tuple[Span, Span]]], view: View) -> None:
    """The foot: under a rule that names the hand, keys in these rows, in more where one is too long."""
    if not view.low:
        page.add([_rule(view)], Keep.RULE, Place.FOOT)
    for at, row in enumerate(filter(None, rows)):
        lines = flowed([span for pair in row for span in pair], view.width)
        page.add(lines, Keep.OTHER_KEYS if at else Keep.ALWAYS, Place.FOOT)


def _rule(view: View) -> Line:
    """A rule with the hand whose keys are named; a click names those of the other."""
    named = f" {view.hand.value} "
    behind = max(0, view.width - len(named) - 2)
    return (Span("──", Tone.RULE), Span(named, Tone.QUIET, "hand"), Span("─" * behind, Tone.RULE))


def notices(page: Script, view: View) -> None:
    """The first notice stays if it is about something lost; the words to say are worth more than others."""
    for at, notice in enumerate(view.notices):
        tone = Tone.NOTICE if notice.loud else Tone.CUE
        keep = Keep.NOTICE if at or not notice.loud else Keep.ALWAYS
        page.text(with_keys(notice.text, view.hand), tone, keep, place=Place.FOOT)


def with_remedy(text: str, label: str, remedy: tuple[Span, Span], width: int) -> list[Line]:
    """A line that says what is needed and, where there is room behind it, the key that does without."""
    lines = wrapped(text, width, label, Tone.PLAIN)
    if cells_of((*lines[-1], *remedy)) + 3 <= width:
        return [*lines[:-1], (*lines[-1], Span("   "), *remedy)]
    return [*lines, (Span("  "), *remedy)]
