"""Today's prompts on one page for the fridge: words, cues and boxes in front, answers folded back.

The part with the answers is printed upside down, so that it stands upright behind once it is folded back.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from warmup.sheets.base import Page
from warmup.sheets.lettering import written
from warmup.sheets.lines import Drawn, Line, Words, frame, segment
from warmup.sheets.paper import ROOM

MARKS = "wsn"
"""The letters of the boxes, those of ``warmup catch-up``."""
_SIZES = (4.4, 4.0, 3.6, 3.2, 2.8)
_BOX, _BOXES = 4.4, 24.0
FOLD = "Fold back along the dots: the answers are behind."


class Entry(NamedTuple):
    """A prompt on paper: what to say, what helps, most needed first, and the answer."""

    say: str
    help: tuple[str, ...]
    answer: str


class _Laid(NamedTuple):
    drawn: tuple[Drawn, ...]
    high: float


def page(head: Sequence[str], entries: Sequence[Entry], foot: Sequence[str]) -> Page:
    """The page: as large as there is room for, and with less help where even small letters need more."""
    most = max((len(entry.help) for entry in entries), default=0)
    for helps in range(most, -1, -1):
        fewer = [entry._replace(help=entry.help[:helps]) for entry in entries]
        for size in _SIZES:
            front, back = _front(head, fewer, foot, size), _back(fewer, size)
            if front.high + back.high <= ROOM.high:
                return Page("", (*front.drawn, *_folded(front.high, back)))
    raise ValueError("more prompts than a page has room for")


def _front(head: Sequence[str], entries: Sequence[Entry], foot: Sequence[str], size: float) -> _Laid:
    drawn: list[Drawn] = []
    top = 0.0
    for line in head:
        top = written(drawn, line, 0.0, top, 0.9 * size)
    for number, entry in enumerate(entries, start=1):
        top += 0.7 * size
        drawn += _boxes(top)
        under = written(drawn, f"{number}. {entry.say}", _BOXES, top, size)
        for text in entry.help:
            under = written(drawn, text, _BOXES + 5, under, 0.78 * size)
        top = max(under, top + _BOX + 1)
    top += 0.7 * size
    for line in foot:
        top = written(drawn, line, 0.0, top, 0.78 * size)
    return _Laid(tuple(drawn), top + 2)


def _back(entries: Sequence[Entry], size: float) -> _Laid:
    """The answers, upright and from the top."""
    drawn: list[Drawn] = []
    top = 3.0
    for number, entry in enumerate(entries, start=1):
        top = written(drawn, f"{number}. {entry.answer}", 0.0, top, size)
    return _Laid(tuple(drawn), top + 3)


def _folded(top: float, back: _Laid) -> Iterator[Drawn]:
    """The line to fold along, and the answers turned about the middle of their part."""
    yield segment(0.0, top, ROOM.wide, top, Line.FOLD)
    for part in back.drawn:
        assert isinstance(part, Words)
        x, y = part.at
        yield part._replace(at=(ROOM.wide - x, top + back.high - y), turned=True)


def _boxes(top: float) -> Iterator[Drawn]:
    for number, mark in enumerate(MARKS):
        left = 7.6 * number
        yield Words((left + 0.9, top + _BOX / 2), mark, 3.4)
        yield frame(left + 2.6, top, _BOX, _BOX)
