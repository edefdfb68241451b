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
    ANSWER = "answer"
    LABEL = "label"
    QUIET = "quiet"
    CUE = "cue"
    KEY = "key"
    NOTICE = "notice"
    HERE = "here"


class Keep(IntEnum):
    """What gives way first when rows run out: the lowest number goes first."""

    AIR = 0
    ASIDE = 1
    WHY = 2
    WATCH = 3
    NEXT_OBJECT = 4
    OLD_CUES = 5
    SPACE = 6
    WORKING = 7
    OBJECT = 8
    BEADS = 9
    HEAD = 10
    NOTICE = 11
    ALWAYS = 99


class Span(NamedTuple):
    """A piece of a line; a click on it does ``action`` (an id of the action table), if there is one."""

    text: str
    tone: Tone = Tone.PLAIN
    action: str = ""


Line = tuple[Span, ...]


class Block(NamedTuple):
    """Lines that stay or go together. ``bottom`` blocks stand at the foot of the pane."""

    lines: tuple[Line, ...]
    keep: Keep
    bottom: bool = False


class Script:
    """The blocks of a pane as they are put together, for a given width in cells."""

    def __init__(self, width: int) -> None:
        self.width = width
        self.blocks: list[Block] = []

    def text(self, text: str, tone: Tone, keep: Keep, label: str = "", *, bottom: bool = False) -> None:
        """A paragraph, wrapped; a ``label`` runs in before it and its lines hang under the first."""
        if not text:
            return
        lines = wrapped(text, self.width, label, tone)
        self.blocks.append(Block(tuple(lines), keep, bottom))

    def parts(self, parts: Sequence[str], tone: Tone, keep: Keep, short: Sequence[str] = ()) -> None:
        """Parts of one line with dots between, or their ``short`` forms where only those fit on one line.

        Where neither does, the line breaks between two parts.
        """
        lines = [" · ".join(parts)]
        if cell_len(lines[0]) > self.width and short and cell_len(" · ".join(short)) <= self.width:
            lines = [" · ".join(short)]
        elif cell_len(lines[0]) > self.width:
            lines = [parts[0]]
            for part in parts[1:]:
                if cell_len(lines[-1]) + 3 + cell_len(part) > self.width:
                    lines.append(part)
                else:
                    lines[-1] += f" · {part}"
        self.blocks.append(Block(tuple((Span(line, tone),) for line in lines), keep))

    def line(self, spans: Sequence[Span], keep: Keep, *, bottom: bool = False) -> None:
        """One line of spans, as it is."""
        self.blocks.append(Block((tuple(spans),), keep, bottom))

    def keys(self, spans: Sequence[Span], keep: Keep, *, bottom: bool = True) -> None:
        """Keys with their labels, flowed into as many lines as they need."""
        self.blocks.append(Block(tuple(flowed(spans, self.width)), keep, bottom))

    def air(self, keep: Keep = Keep.AIR) -> None:
        """An empty line."""
        self.blocks.append(Block(((),), keep))

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
        top = [line for block in blocks if not block.bottom for line in block.lines]
        foot = [line for block in blocks if block.bottom for line in block.lines]
        room = max(0, height - len(foot))
        return [*top[:room], *[()] * (room - len(top)), *foot][:height]


def wrapped(text: str, width: int, label: str, tone: Tone) -> list[Line]:
    """Text in lines of at most ``width`` cells, behind a label."""
    lead = f"{label} " if label else ""
    rows = textwrap.wrap(text, max(8, width), initial_indent=" " * len(lead), break_on_hyphens=False) or [""]
    first = rows[0][len(lead) :]
    head: Line = (Span(lead, Tone.LABEL), Span(first, tone)) if label else (Span(first, tone),)
    return [head, *((Span(row, tone),) for row in rows[1:])]


def flowed(spans: Sequence[Span], width: int) -> list[Line]:
    """Spans in as few lines of at most ``width`` cells as will do, none much longer than the others.

    Pairs of key and label (even, odd) are not parted.
    """
    pairs = [tuple(spans[at : at + 2]) for at in range(0, len(spans), 2)]
    cells = [sum(len(span.text) for span in pair) for pair in pairs]
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
