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
from warmup.skills._geometry import clean_turns
from warmup.skills._money import BY_WORTH, WITHOUT_PENNIES, laid
from warmup.skills.coin_totals import _HANDFULS
from warmup.skills.coins import _AGAINST

HALF_HOURS = tuple((hour, minute) for minute in (0, 30) for hour in range(1, 13))
"""The times that are asked: twelve hours, then twelve half hours."""

_ASKED = {
    "triangle": range(0, 120, 5),
    "right triangle": range(0, 360, 5),
    "square": range(0, 90, 5),
    "rectangle": range(0, 180, 5),
    "thin rectangle": range(0, 180, 5),
    "hexagon": range(0, 60, 30),
}
ASKED = {name: clean_turns(name, turns) for name, turns in _ASKED.items()}
"""Figures that are asked about alone, and every turning that looks different and has no stairs."""

_OTHERS = {
    "circle": (0,),
    "oval": (0, 30, 90),
    "half circle": (0, 90, 180),
    "thin triangle": (0, 30, 50, 130, 180, 220),
    "tall triangle": (0, 40, 120, 180),
    "slanted triangle": (0, 60, 90, 180),
}


def turnings() -> tuple[FlatShape, ...]:
    """Every flat shape in all its turnings that are asked, or in three at least."""
    named = {**dict.fromkeys(POLYGONS, (0, 30, 90)), **ASKED, **_OTHERS}
    return tuple(FlatShape(name, turn) for name, turns in named.items() for turn in turns)


def _rows_to_point_at() -> Iterator[ShapeRow]:
    """Rows as the prompts lay them: a tilted square among others, thin triangles, a gap in a line."""
    for turn in (30, 60):
        yield ShapeRow(("rhombus", "square", "rectangle"), (turn, 45, turn))
        yield ShapeRow(("slanted figure", "square", "triangle"), (turn, 65, turn))
        yield ShapeRow(("square", "thin rectangle", "rhombus"), (25, 90 - turn, turn))
    flat = {"thin rectangle", "right triangle", "rhombus"}
    for odd in ("thin rectangle", "half circle", "rhombus", "kite", "trapezoid"):
        for second in ("triangle", "right triangle", "tall triangle"):
            names = ("thin triangle", second, odd)
            for turn in (0, 180):
                yield ShapeRow(names, tuple(turn + 90 if name in flat else turn for name in names))
    for turn in (0, 60, 90, 180):
        yield ShapeRow(("triangle", "square", "circle"), (turn,) * 3, (0,))
        yield ShapeRow(("hexagon", "rectangle", "square"), (turn, turn, 45), (1,))
        yield ShapeRow(("circle", "triangle", "hexagon"), (turn,) * 3, (2,))
        yield ShapeRow(("square", "circle", "triangle"), (45, turn, turn), (0, 1))


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
