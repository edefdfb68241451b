"""A few of each picture, for the tests and the contact sheet that walk all kinds.

A new picture needs a line here: plain, fullest, and whatever looks different (blanks, pointers, forms).
"""

from collections.abc import Mapping
from types import MappingProxyType

from warmup.pictures import Picture
from warmup.pictures.base_ten import BaseTen
from warmup.pictures.bundles import Bundles
from warmup.pictures.clock import Clock
from warmup.pictures.coins import Coins
from warmup.pictures.counters import Counters
from warmup.pictures.day_strip import DayStrip
from warmup.pictures.dots import Dots
from warmup.pictures.flat_shape import FlatShape
from warmup.pictures.fold import Fold
from warmup.pictures.half import Half
from warmup.pictures.hands import Hands
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.jars import Jars
from warmup.pictures.joined_shapes import JoinedShapes
from warmup.pictures.lengths import Lengths
from warmup.pictures.month_calendar import MonthCalendar
from warmup.pictures.month_strip import MonthStrip
from warmup.pictures.number_line import NumberLine
from warmup.pictures.number_row import NumberRow
from warmup.pictures.numeral import Numeral
from warmup.pictures.pairs import Pairs
from warmup.pictures.part_whole import PartWhole
from warmup.pictures.pattern_row import PatternRow
from warmup.pictures.scale import Scale
from warmup.pictures.scene import Scene
from warmup.pictures.shape_row import ShapeRow
from warmup.pictures.shares import Shares
from warmup.pictures.solid_shape import SolidShape
from warmup.pictures.sorted_rows import SortedRows
from warmup.pictures.ten_frame import TenFrame
from warmup.pictures.toy_line import ToyLine
from warmup.pictures.two_frames import TwoFrames
from warmup.pictures.two_sets import TwoSets
from warmup.pictures.word_and_cards import WordAndCards

EXAMPLES: Mapping[str, tuple[Picture, ...]] = MappingProxyType(
    {
        "base-ten": (BaseTen(0, 3, 4), BaseTen(1, 0, 0), BaseTen(1, 9, 9), BaseTen(0, 4, 0)),
        "bundles": (Bundles(2, 4), Bundles(4, 7), Bundles(9, 9), Bundles(0, 5)),
        "clock": (Clock(3, 0), Clock(12, 0), Clock(5, 30), Clock(9, 0, hands=False)),
        "coins": (
            Coins(("penny", "nickel", "dime", "quarter")),
            Coins(("dime", "dime", "penny", "penny"), worth=True),
            Coins(("dime", "nickel"), pointed=1),
            Coins(("dime",) * 4 + ("penny",) * 9, worth=True),
            Coins(("quarter", "dime", "nickel", "nickel", "penny", "penny"), worth=True),
        ),
        "counters": (
            Counters(5),
            Counters(10),
            Counters(18, "rows"),
            Counters(7, "rows", second=3),
            Counters(20, "ring"),
            Counters(6, "ring"),
            Counters(5, "scatter", seed=1),
            Counters(10, "scatter", seed=2),
        ),
        "day-strip": (
            DayStrip(),
            DayStrip(hidden=("Wednesday",)),
            DayStrip("Thursday", hidden=("Sunday",), pointed=("Saturday",)),
        ),
        "dots": (
            Dots(3),
            Dots(5),
            Dots(9),
            Dots(5, "ring"),
            Dots(4, "scatter", 1),
            Dots(5, "scatter", 2),
            Dots(7, "array"),
            Dots(9, "five-and-some"),
            Dots(8, "two-groups", 0, 3),
            Dots(10, "two-groups", 3, 5),
        ),
        "flat-shape": (
            FlatShape("circle"),
            FlatShape("triangle"),
            FlatShape("square", 45),
            FlatShape("thin triangle", 50),
            FlatShape("hexagon"),
            FlatShape("rectangle", gap=True),
        ),
        "fold": (
            Fold("heart"),
            Fold("square", line=90),
            Fold("rectangle", line=31),
            Fold("circle", aside=40, line=90),
        ),
        "half": (
            Half(((1, 1), (2, 1), (2, 2), (3, 1))),
            Half(((0, 1), (1, 1), (1, 2), (3, 3)), lying=True, other=True),
        ),
        "hands": (Hands(1), Hands(3), Hands(10)),
        "hundred-chart": (
            HundredChart(),
            HundredChart(1, 20, hidden=(14,)),
            HundredChart(21, 50, hidden=(47,), pointed=(37,)),
            HundredChart(1, 100, hidden=(56,)),
            HundredChart(1, 120),
        ),
        "joined-shapes": (
            JoinedShapes("square", "triangle"),
            JoinedShapes("rectangle", "square", apart=True),
            JoinedShapes("hexagon", "half hexagon", turn=30),
        ),
        "jars": (
            Jars(((4, 7),) * 3, (2, 0, 1)),
            Jars(((3, 9), (7, 5)), (0, 0), parts=1),
            Jars(((3, 4), (6, 8)), (2, 1)),
            Jars(((8, 10),), (5,), parts=8, lined=True),
        ),
        "lengths": (
            Lengths((16, 12), ("striped", "spotted")),
            Lengths((12, 9), ("plain", "striped"), (0, 5)),
            Lengths((16, 12, 8), ("plain", "striped", "spotted")),
            Lengths((7,), clips=True),
            Lengths((9,), clips=True, missing=(3,)),
        ),
        "month-calendar": (
            MonthCalendar(2027, 2, hidden=(14,)),
            MonthCalendar(2026, 8, pointed=(24, 27)),
            MonthCalendar(2026, 10, upto=13),
        ),
        "month-strip": (MonthStrip(), MonthStrip(hidden=("July",), pointed=("June",))),
        "number-line": (
            NumberLine(0, 10),
            NumberLine(0, 10, (1, 1, 1), 2),
            NumberLine(0, 10, (-2,), 7, (5,)),
            NumberLine(0, 25, (1, 1), 18),
            NumberLine(0, 25, hidden=(14,)),
            NumberLine(5, 15, start=9),
        ),
        "number-row": (
            NumberRow(("29", "?", "31")),
            NumberRow(("1", "2", "3", "?", "5")),
            NumberRow(("8", "3")),
        ),
        "numeral": (
            Numeral("6"),
            Numeral("29"),
            Numeral("100"),
            Numeral("?"),
            Numeral("seven"),
            Numeral("forty-eight"),
        ),
        "pairs": (
            Pairs(3),
            Pairs(4, 1, "shoes"),
            Pairs(10, 0, "buttons"),
            Pairs(4, 1, "socks", paired=False),
        ),
        "part-whole": (PartWhole("7", "4", "?"), PartWhole("?", "?", "?"), PartWhole("10", "10", "0")),
        "pattern-row": (
            PatternRow(("circle", "square", "circle", "square", "circle", "?")),
            PatternRow(("circle", "square", "triangle", "circle", "?", "triangle")),
        ),
        "toy-line": (ToyLine(3), ToyLine(10, "right"), ToyLine(6, "left", (4,))),
        "scale": (
            Scale("ball", "box", "left"),
            Scale("ball", "box", "right", "ball"),
            Scale("hat", "cup", "left"),
            Scale("fish", "boat", "right", "fish"),
            Scale("box", "hat", "left", "hat"),
        ),
        "scene": (
            Scene((("ball", "", "cup"), ("bear", "box", "hat"))),
            Scene((("boat", "fish", "tree"),)),
            Scene((("box",),), behind="bear"),
        ),
        "shape-row": (
            ShapeRow(("circle", "triangle", "square"), (0, 0, 45)),
            ShapeRow(("rectangle", "hexagon", "triangle"), (0, 0, 180), (1,)),
        ),
        "shares": (
            Shares("circle", "slices", (1, 1)),
            Shares("circle", "slices", (1, 1, 1, 1), turn=45),
            Shares("square", "corners", (1, 1, 1, 1)),
            Shares("rectangle", "strips", (2, 1), lying=True),
        ),
        "solid-shape": (
            SolidShape("sphere"),
            SolidShape("cube"),
            SolidShape("cylinder"),
            SolidShape("cylinder", upright=False),
            SolidShape("cone"),
            SolidShape("box"),
        ),
        "sorted-rows": (
            SortedRows((("circle",) * 5, ("square",) * 3, ("triangle",) * 4)),
            SortedRows((("circle",) * 4, ("square",) * 2), big="square"),
        ),
        "ten-frame": (TenFrame(0), TenFrame(3), TenFrame(6, 2), TenFrame(10)),
        "two-frames": (TwoFrames(10, 4), TwoFrames(10, 10)),
        "two-sets": (TwoSets(4, 5), TwoSets(10, 8, "bottom")),
        "word-and-cards": (
            WordAndCards("seven", ("6", "7", "9")),
            WordAndCards("forty-eight", ("48", "84", "40", "18")),
        ),
    }
)
"""Instances by kind."""
