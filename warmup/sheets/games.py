"""This week's table games on one page, to hang beside the table."""

from collections.abc import Sequence
from typing import NamedTuple

from warmup.sheets.base import Page
from warmup.sheets.lettering import written
from warmup.sheets.lines import Drawn, Line, segment
from warmup.sheets.paper import ROOM

_SIZES = (5.0, 4.6, 4.2, 3.8, 3.4, 3.0)
_NAME = 1.4
"""How much larger a game's name is than what is said of it."""


class Told(NamedTuple):
    """A game: its name, and all there is to say of it, a label and a sentence each."""

    name: str
    lines: Sequence[tuple[str, str]]


def page(games: Sequence[Told]) -> Page:
    """The games one below the other, as large as there is room for; ValueError where there is none."""
    for size in _SIZES:
        drawn: list[Drawn] = []
        top = 0.0
        for game in games:
            if top:
                drawn.append(segment(0.0, top, ROOM.wide, top, Line.FAINT))
                top += size
            top = written(drawn, game.name, 0.0, top, _NAME * size) + 0.3 * size
            for label, sentence in game.lines:
                top = written(drawn, f"{label}: {sentence}", 6.0, top, size)
            top += size
        if top <= ROOM.high:
            return Page("", tuple(drawn))
    raise ValueError("more games than a page has room for")
