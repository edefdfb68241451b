"""The script: what the adult reads, laid out for the room there is. No widgets here, only lines.

When rows run out, lines give way in the order of :class:`Keep`; the words to say, the answer, the
current cue and the mark keys never do.
"""

import textwrap
from collections.abc import Sequence
from enum import Enum, IntEnum
from typing import NamedTuple

from rich.cells import cell_len


class Tone(Enum):
    """How a piece of text looks; the theme gives each its style."""

    PLAIN = "plain"
    SAY = "say"
    NAME = "name"
    ANSWER = "answer"
    LABEL = "label"
    QUIET = "quiet"
    CUE = "cue"
    KEY = "key"
    NOTICE = "notice"
    HERE = "here"
    STRONG = "strong"
    RULE = "rule"


class Keep(IntEnum):
    """What gives way first when rows run out: the lowest number goes first."""

    AIR = 0
    ASIDE = 1
    WHY = 2
    WATCH = 3
    NEXT_OBJECT = 4
    RULE = 5
    OLD_CUE = 6
    SPACE = 7
    CUE_BEFORE = 8
    HOW = 9
    WORKING = 10
    OBJECT = 11
    BEADS = 12
    HEAD = 13
    NOTICE = 14
    OTHER_KEYS = 15
    AT_LAST = 16
    ALWAYS = 99


class Span(NamedTuple):
    """A piece of a line; a click on it does ``action`` (an id of the action table), if there is one.

    ``bead`` is the place of the prompt that a click goes to (-1 the opening), None for no bead.
    """

    text: str
    tone: Tone = Tone.PLAIN
    action: str = ""
    bead: int | None = None


Line = tuple[Span, ...]


class Place(Enum):
    """Where a block stands in the pane: at its top, in its body, or at its foot."""

    TOP = "top"
    BODY = "body"
    FOOT = "foot"


class Block(NamedTuple):
    """Lines that stay or go together."""

    lines: tuple[Line, ...]
    keep: Keep
    place: Place = Place.BODY


TALL = 30
"""From so many rows on the body stands in the middle of the pane, and not right under its top."""


class Script:
    """The blocks of a pane as they are put together, for a given width in cells."""

    def __init__(self, width: int) -> None:
        self.width = width
        self.blocks: list[Block] = []

    def text(
        self,
        text: str,
        tone: Tone,
        keep: Keep,
        label: str = "",
        *,
        place: Place = Place.BODY,
        action: str = "",
    ) -> None:
        """A paragraph, wrapped; a ``label`` runs in before it. A click on it does ``action``."""
        if text:
            lines = wrapped(text, self.width, label, tone)
            if action:
                lines = [tuple(span._replace(action=action) for span in line) for line in lines]
            self.add(lines, keep, place)

    def say(self, text: str, *, band: bool) -> None:
        """The words to say, on a ground of their own: with a row of it above and below where ``band``."""
        self._on_ground(list(wrapped(text, self.width - 2, "", Tone.SAY)), Tone.SAY, band=band)

    def name(self, name: str, *, band: bool) -> None:
        """Whose turn it is, in the same way."""
        self._on_ground([(Span(cut(name, self.width - 2), Tone.NAME),)], Tone.NAME, band=band)

    def _on_ground(self, rows: list[Line], tone: Tone, *, band: bool) -> None:
        edge: list[Line] = [()] * band
        lines = [padded((Span(" ", tone), *row), self.width, tone) for row in [*edge, *rows, *edge]]
        self.add(lines, Keep.ALWAYS)

    def add(self, lines: Sequence[Line], keep: Keep, place: Place = Place.BODY) -> None:
        """Lines as they are."""
        self.blocks.append(Block(tuple(lines), keep, place))

    def air(self, keep: Keep = Keep.AIR, place: Place = Place.BODY) -> None:
        """An empty line."""
        self.add([()], keep, place)

    def fitted(self, height: int) -> list[Line]:
        """The lines for this many rows: what gives way is gone, the foot stands at the bottom."""
        blocks = list(self.blocks)
        while sum(len(block.lines) for block in blocks) > height:
            going = min(blocks, key=lambda block: block.keep, default=None)
            if going is None or going.keep is Keep.ALWAYS:
                break
            # Of those that go first, the last: air near the top holds the page together longest.
            last = max(at for at, block in enumerate(blocks) if block.keep == going.keep)
            del blocks[last]
        top, body, foot = (
            [line for block in blocks if block.place is place for line in block.lines] for place in Place
        )
        body = _without_gaps(body)
        spare = max(0, height - len(top) - len(body) - len(foot))
        above = min(spare, height // 3 - len(top)) if height >= TALL else 0
        # A pane too low for all of it loses what stands above the foot: the keys stay in reach.
        whole = [*top, *[()] * max(0, above), *body][: max(0, height - len(foot))]
        return [*whole, *[()] * (height - len(whole) - len(foot)), *foot][:height]


def _without_gaps(lines: Sequence[Line]) -> list[Line]:
    """The lines without the empty ones that what gave way has left beside each other or at the end."""
    kept: list[Line] = []
    for line in lines:
        if line or (kept and kept[-1]):
            kept.append(line)
    return kept[:-1] if kept and not kept[-1] else kept


def beside(left: Sequence[Line], right: Sequence[Line], width: int) -> list[Line]:
    """Two columns, the left one ``width`` cells wide."""
    rows = max(len(left), len(right))
    return [
        (*padded(left[at] if at < len(left) else (), width), *(right[at] if at < len(right) else ()))
        for at in range(rows)
    ]


def padded(line: Line, width: int, tone: Tone = Tone.PLAIN) -> Line:
    """The line with blanks behind it, at least ``width`` cells in all."""
    left = width - cells_of(line)
    return (*line, Span(" " * left, tone)) if left > 0 else line


def cells_of(line: Sequence[Span]) -> int:
    """How many cells a line takes."""
    return sum(cell_len(span.text) for span in line)


def wrapped(text: str, width: int, label: str, tone: Tone) -> list[Line]:
    """Text in lines of at most ``width`` cells, behind a label."""
    lead = f"{label} " if label else ""
    rows = textwrap.wrap(text, max(8, width), initial_indent=" " * len(lead), break_on_hyphens=False) or [""]
    first = rows[0][len(lead) :]
    head: Line = (Span(lead, Tone.LABEL), Span(first, tone)) if label else (Span(first, tone),)
    return [head, *((Span(row, tone),) for row in rows[1:])]


def cut(text: str, width: int) -> str:
    """The text, or as many of its whole words as leave room for the sign that there are more."""
    if cell_len(text) <= width:
        return text
    kept = ""
    for word in text.split(" "):
        longer = f"{kept} {word}" if kept else word
        if cell_len(longer) + 1 > width:
            break
        kept = longer
    return f"{kept.rstrip(' .,:;?!')}…"


def flowed(spans: Sequence[Span], width: int) -> list[Line]:
    """Spans in as few lines of at most ``width`` cells as will do, none much longer than the others.

    Pairs of key and label (even, odd) are not parted.
    """
    pairs = [tuple(spans[at : at + 2]) for at in range(0, len(spans), 2)]
    cells = [cells_of(pair) for pair in pairs]
    rows = _filled(cells, width)
    for narrower in range(width - 1, max(cells, default=width) - 1, -1):
        if len(closer := _filled(cells, narrower)) > len(rows):
            break
        rows = closer
    lines: list[Line] = []
    for row in rows:
        spaced = [piece for at in row for piece in (Span("  "), *pairs[at])]
        lines.append(tuple(spaced[1:]))
    return lines


def _filled(cells: Sequence[int], width: int) -> list[list[int]]:
    """Which pieces of these widths stand on each line, two cells between them."""
    rows: list[list[int]] = [[]]
    used = 0
    for at, wide in enumerate(cells):
        if rows[-1] and used + 2 + wide > width:
            rows.append([])
        used = used + 2 + wide if rows[-1] else wide
        rows[-1].append(at)
    return rows
