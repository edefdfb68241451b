"""Whole sets of the pictures a child reads most closely: every half hour, turning and handful of note.

Too many to walk through every check; ``python -m tests.benchmarks.contact_sheet FOLDER --all`` draws
them, and tests that look for one thing take what they need.
"""

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from warmup.pictures import Picture
from warmup.pictures.clock import Clock
from warmup.pictures.coins import Coins
from warmup.pictures.figures import POLYGONS
from warmup.pictures.flat_shape import FlatShape
from warmup.pictures.shape_row import ShapeRow
from warmup.pictures.solid_shape import SOLIDS, SolidShape
from warmup.skills._money import BY_WORTH, WITHOUT_PENNIES, laid
from warmup.skills.coin_totals import _HANDFULS
from warmup.skills.coins import _AGAINST

HALF_HOURS = tuple((hour, minute) for minute in (0, 30) for hour in range(1, 13))
"""The times that are asked: twelve hours, then twelve half hours."""

ASKED = {
    "triangle": range(0, 120, 10),
    "right triangle": range(0, 360, 10),
    "square": range(0, 90, 10),
    "rectangle": range(0, 180, 10),
    "thin rectangle": range(0, 180, 10),
    "hexagon": range(0, 60, 10),
}
"""Figures that are asked about alone, and every turning that looks different."""

_OTHERS = {
    "circle": (0,),
    "oval": (0, 30, 90),
    "half circle": (0, 90, 180),
    "thin triangle": (0, 40, 90, 130, 180, 270),
    "tall triangle": (0, 40, 90, 180),
    "slanted triangle": (0, 50, 90, 180),
}


def turnings() -> tuple[FlatShape, ...]:
    """Every flat shape in all its turnings that are asked, or in three at least."""
    named = {**dict.fromkeys(POLYGONS, (0, 30, 90)), **ASKED, **_OTHERS}
    return tuple(FlatShape(name, turn) for name, turns in named.items() for turn in turns)


def _rows_to_point_at() -> Iterator[ShapeRow]:
    """Rows as the prompts lay them: a tilted square among others, thin triangles, a gap in a line."""
    for turn in (30, 45, 60):
        yield ShapeRow(("rhombus", "square", "rectangle"), (turn,) * 3)
        yield ShapeRow(("slanted figure", "square", "triangle"), (turn,) * 3)
        yield ShapeRow(("square", "thin rectangle", "rhombus"), (turn,) * 3)
    for odd in ("thin rectangle", "half circle", "rhombus", "kite", "trapezoid"):
        for second in ("triangle", "right triangle", "tall triangle"):
            for turn in (0, 180):
                yield ShapeRow(("thin triangle", second, odd), (turn, turn, 90 if "rect" in odd else turn))
    for turn in (0, 20, 40, 180):
        yield ShapeRow(("triangle", "square", "circle"), (turn,) * 3, (0,))
        yield ShapeRow(("hexagon", "rectangle", "square"), (turn,) * 3, (1,))
        yield ShapeRow(("circle", "triangle", "hexagon"), (turn,) * 3, (2,))


def totals() -> tuple[Coins, ...]:
    """The least, the middle and the most of each kind of handful that is counted, with its dots."""
    found = []
    for held in _HANDFULS.values():
        ordered = sorted(
            held, key=lambda handful: (sum(handful.values()), max(handful, key=handful.__getitem__))
        )
        found += [laid(ordered[at]) for at in (0, len(ordered) // 2, len(ordered) - 1)]
    return tuple(Coins(names, worth=True) for names in dict.fromkeys(found))


def _coins() -> Iterator[Coins]:
    """Coins to name, one against many, and handfuls; with and without dots, with and without pennies."""
    for kinds in (BY_WORTH, WITHOUT_PENNIES):
        for worth in (False, True):
            yield Coins(kinds[::-1], worth)
        yield from (Coins(kinds, pointed=place) for place in range(len(kinds)))
    for coin in BY_WORTH:
        yield from (Coins((coin,), worth) for worth in (False, True))
    yield from (Coins(("dime", "nickel"), worth) for worth in (False, True))
    yield Coins(("nickel", "penny", "penny", "penny", "penny"), worth=True)
    yield Coins(("penny",) * 4)
    for coin, below, above in _AGAINST.values():
        for several in (below[0], below[-1], above[0], above[-1]):
            yield from (Coins((coin, *laid(several)), worth) for worth in (False, True))
    yield from totals()


def _solids() -> tuple[SolidShape, ...]:
    return tuple(SolidShape(name, upright) for name in SOLIDS for upright in (True, False))


FULL: Mapping[str, tuple[Picture, ...]] = MappingProxyType(
    {
        "clock": tuple(Clock(hour, minute) for hour, minute in HALF_HOURS),
        "coins": tuple(_coins()),
        "flat-shape": turnings(),
        "shape-row": tuple(_rows_to_point_at()),
        "solid-shape": _solids(),
    }
)
"""The whole set of a kind, for the kinds that have one."""
