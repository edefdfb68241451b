"""Solids to fold out of paper, a net a page."""

from collections.abc import Sequence

from warmup.pictures.shapes import Points, extent
from warmup.sheets.base import Day, Page, Sheet, Use
from warmup.sheets.lines import Drawn, Line, Stroke, Words, moved
from warmup.sheets.nets import FLAT_FACED, Net, unfold
from warmup.sheets.paper import ROOM
from warmup.sheets.round_nets import ROLLED, RoundNet
from warmup.sheets.solid_views import solid_lines

_SMALL = 34.0
"""How large the drawing of the solid is that is to come of it."""
_FOLD = ("Fold each dotted line away from you.", "Glue every tab behind its neighbor.")
_ROLL = ("Roll the wall and glue its tab. Fold the teeth in.", "Glue each round end onto its teeth.")


def pages(_day: Day) -> tuple[Page, ...]:
    """First those to fold, then those to roll."""
    folded = [_page(unfold(solid), _FOLD, low=False) for solid in FLAT_FACED]
    return (*folded, *(_page(net, _ROLL, low=True) for net in ROLLED))


def _page(net: Net | RoundNet, how: tuple[str, ...], *, low: bool) -> Page:
    """The net in the middle, and in the corner that it leaves free what it becomes."""
    cuts = [Stroke(points, Line.CUT) for points in net.cuts()]
    folds = [Stroke(points, Line.FOLD) for points in net.folds()]
    left, top, right, bottom = extent([point for stroke in cuts + folds for point in stroke.points])
    laid = moved((*cuts, *folds), ROOM.wide / 2 - (left + right) / 2, -top)
    high = bottom - top
    seen = _small(solid_lines(net.name), high - _SMALL if low else 0.0)
    words = [Words((ROOM.wide / 2, high + 8.0 + 6.0 * line), text) for line, text in enumerate(how)]
    return Page(net.name, (*laid, *seen, *words))


def _small(seen: Sequence[Points], top: float) -> tuple[Drawn, ...]:
    """The drawing of the solid, at the left edge of the room."""
    left, high, right, low = extent([point for points in seen for point in points])
    scale = _SMALL / max(right - left, low - high)
    return tuple(
        Stroke(tuple(((x - left) * scale, top + (y - high) * scale) for x, y in points)) for points in seen
    )


SHEET = Sheet(
    "Paper solids",
    "A cube, a box, a can, a cone and two more, to fold and glue.",
    pages,
    Use(pictures=("solid-shape",)),
)
