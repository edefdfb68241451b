"""Sheets of paper, and the room on them."""

from enum import Enum
from typing import NamedTuple

EDGE = 6.0
"""No nearer to the edge of the paper does anything lie: what most printers leave white (common practice)."""


class Size(NamedTuple):
    """How wide and how high, in millimeters."""

    wide: float
    high: float


class Paper(Enum):
    """Paper as it is sold: Letter by ANSI/ASME Y14.1 (size A, 8.5 by 11 inches), A4 by ISO 216."""

    LETTER = Size(215.9, 279.4)
    A4 = Size(210.0, 297.0)

    @property
    def css(self) -> str:
        """Its name in a style sheet (CSS Paged Media Module Level 3)."""
        return "letter" if self is Paper.LETTER else "A4"


HEAD, FOOT = 10.0, 16.0
"""The room for a page's title, and for the rulers and what is to be known of it."""
ROOM = Size(
    min(paper.value.wide for paper in Paper) - 2 * EDGE,
    min(paper.value.high for paper in Paper) - 2 * EDGE - HEAD - FOOT,
)
"""What a page may be drawn in, on any of these papers: 198 by 241.4 millimeters."""
