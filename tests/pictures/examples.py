"""A few of each picture, for the tests and the contact sheet that walk all kinds.

A new picture needs a line here: plain, fullest, and whatever looks different (blanks, pointers, forms).
"""

from collections.abc import Mapping
from types import MappingProxyType

from warmup import pictures
from warmup.pictures import Picture

EXAMPLES: Mapping[str, tuple[Picture, ...]] = MappingProxyType(
    {
        "base-ten": (
            pictures.BaseTen(0, 3, 4),
            pictures.BaseTen(1, 0, 0),
            pictures.BaseTen(1, 9, 9),
            pictures.BaseTen(0, 4, 0),
        ),
        "bundles": (
            pictures.Bundles(2, 4),
            pictures.Bundles(4, 7),
            pictures.Bundles(9, 9),
            pictures.Bundles(0, 5),
        ),
        "clock": (
            pictures.Clock(3, 0),
            pictures.Clock(12, 0),
            pictures.Clock(5, 30),
            pictures.Clock(9, 0, hands=False),
        ),
        "coins": (
            pictures.Coins(("penny", "nickel", "dime", "quarter")),
            pictures.Coins(("dime", "dime", "penny", "penny"), worth=True),
            pictures.Coins(("dime", "nickel"), pointed=1),
            pictures.Coins(("dime",) * 4 + ("penny",) * 9, worth=True),
            pictures.Coins(("quarter", "dime", "nickel", "nickel", "penny", "penny"), worth=True),
        ),
        "counters": (
            pictures.Counters(5),
            pictures.Counters(10),
            pictures.Counters(18, "rows"),
            pictures.Counters(7, "rows", second=3),
            pictures.Counters(20, "ring"),
            pictures.Counters(6, "ring"),
            pictures.Counters(5, "scatter", seed=1),
            pictures.Counters(10, "scatter", seed=2),
        ),
        "day-strip": (
            pictures.DayStrip(),
            pictures.DayStrip(hidden=("Wednesday",)),
            pictures.DayStrip("Thursday", hidden=("Sunday",), pointed=("Saturday",)),
        ),
        "dots": (
            pictures.Dots(3),
            pictures.Dots(5),
            pictures.Dots(9),
            pictures.Dots(5, "ring"),
            pictures.Dots(4, "scatter", 1),
            pictures.Dots(5, "scatter", 2),
            pictures.Dots(7, "array"),
            pictures.Dots(9, "five-and-some"),
            pictures.Dots(8, "two-groups", 0, 3),
            pictures.Dots(10, "two-groups", 3, 5),
        ),
        "flat-shape": (
            pictures.FlatShape("circle"),
            pictures.FlatShape("triangle"),
            pictures.FlatShape("square", 45),
            pictures.FlatShape("thin triangle", 50),
            pictures.FlatShape("hexagon"),
            pictures.FlatShape("rectangle", gap=True),
        ),
        "fold": (
            pictures.Fold("heart"),
            pictures.Fold("square", line=90),
            pictures.Fold("rectangle", line=31),
            pictures.Fold("circle", aside=40, line=90),
        ),
        "half": (
            pictures.Half(((1, 1), (2, 1), (2, 2), (3, 1))),
            pictures.Half(((0, 1), (1, 1), (1, 2), (3, 3)), lying=True, other=True),
        ),
        "hands": (pictures.Hands(1), pictures.Hands(3), pictures.Hands(10)),
        "hundred-chart": (
            pictures.HundredChart(),
            pictures.HundredChart(1, 20, hidden=(14,)),
            pictures.HundredChart(21, 50, hidden=(47,), pointed=(37,)),
            pictures.HundredChart(1, 100, hidden=(56,)),
            pictures.HundredChart(1, 120),
        ),
        "joined-shapes": (
            pictures.JoinedShapes("square", "triangle"),
            pictures.JoinedShapes("rectangle", "square", apart=True),
            pictures.JoinedShapes("hexagon", "half hexagon", turn=30),
        ),
        "jars": (
            pictures.Jars(((4, 7),) * 3, (2, 0, 1)),
            pictures.Jars(((3, 9), (7, 5)), (0, 0), parts=1),
            pictures.Jars(((3, 4), (6, 8)), (2, 1)),
            pictures.Jars(((8, 10),), (5,), parts=8, lined=True),
        ),
        "lengths": (
            pictures.Lengths((16, 12), ("striped", "spotted")),
            pictures.Lengths((12, 9), ("plain", "striped"), (0, 5)),
            pictures.Lengths((16, 12, 8), ("plain", "striped", "spotted")),
            pictures.Lengths((7,), clips=True),
            pictures.Lengths((9,), clips=True, missing=(3,)),
        ),
        "month-calendar": (
            pictures.MonthCalendar(2027, 2, hidden=(14,)),
            pictures.MonthCalendar(2026, 8, pointed=(24, 27)),
            pictures.MonthCalendar(2026, 10, upto=13),
        ),
        "month-strip": (pictures.MonthStrip(), pictures.MonthStrip(hidden=("July",), pointed=("June",))),
        "number-line": (
            pictures.NumberLine(0, 10),
            pictures.NumberLine(0, 10, (1, 1, 1), 2),
            pictures.NumberLine(0, 10, (-2,), 7, (5,)),
            pictures.NumberLine(0, 25, (1, 1), 18),
            pictures.NumberLine(0, 25, hidden=(14,)),
            pictures.NumberLine(5, 15, start=9),
        ),
        "number-row": (
            pictures.NumberRow(("29", "?", "31")),
            pictures.NumberRow(("1", "2", "3", "?", "5")),
            pictures.NumberRow(("8", "3")),
        ),
        "numeral": (
            pictures.Numeral("6"),
            pictures.Numeral("29"),
            pictures.Numeral("100"),
            pictures.Numeral("?"),
            pictures.Numeral("seven"),
            pictures.Numeral("forty-eight"),
        ),
        "pairs": (
            pictures.Pairs(3),
            pictures.Pairs(4, 1, "shoes"),
            pictures.Pairs(10, 0, "buttons"),
            pictures.Pairs(4, 1, "socks", paired=False),
        ),
        "part-whole": (
            pictures.PartWhole("7", "4", "?"),
            pictures.PartWhole("?", "?", "?"),
            pictures.PartWhole("10", "10", "0"),
        ),
        "pattern-row": (
            pictures.PatternRow(("circle", "square", "circle", "square", "circle", "?")),
            pictures.PatternRow(("circle", "square", "triangle", "circle", "?", "triangle")),
        ),
        "toy-line": (pictures.ToyLine(3), pictures.ToyLine(10, "right"), pictures.ToyLine(6, "left", (4,))),
        "scale": (
            pictures.Scale("ball", "box", "left"),
            pictures.Scale("ball", "box", "right", "ball"),
            pictures.Scale("hat", "cup", "left"),
            pictures.Scale("fish", "boat", "right", "fish"),
            pictures.Scale("box", "hat", "left", "hat"),
        ),
        "scene": (
            pictures.Scene((("ball", "", "cup"), ("bear", "box", "hat"))),
            pictures.Scene((("boat", "fish", "tree"),)),
            pictures.Scene((("box",),), behind="bear"),
        ),
        "shape-row": (
            pictures.ShapeRow(("circle", "triangle", "square"), (0, 0, 45)),
            pictures.ShapeRow(("rectangle", "hexagon", "triangle"), (0, 0, 180), (1,)),
        ),
        "shares": (
            pictures.Shares("circle", "slices", (1, 1)),
            pictures.Shares("circle", "slices", (1, 1, 1, 1), turn=45),
            pictures.Shares("square", "corners", (1, 1, 1, 1)),
            pictures.Shares("rectangle", "strips", (2, 1), lying=True),
        ),
        "solid-shape": (
            pictures.SolidShape("sphere"),
            pictures.SolidShape("cube"),
            pictures.SolidShape("cylinder"),
            pictures.SolidShape("cylinder", upright=False),
            pictures.SolidShape("cone"),
            pictures.SolidShape("box"),
        ),
        "sorted-rows": (
            pictures.SortedRows((("circle",) * 5, ("square",) * 3, ("triangle",) * 4)),
            pictures.SortedRows((("circle",) * 4, ("square",) * 2), big="square"),
        ),
        "ten-frame": (
            pictures.TenFrame(0),
            pictures.TenFrame(3),
            pictures.TenFrame(6, 2),
            pictures.TenFrame(10),
        ),
        "two-frames": (pictures.TwoFrames(10, 4), pictures.TwoFrames(10, 10)),
        "two-sets": (pictures.TwoSets(4, 5), pictures.TwoSets(10, 8, "bottom")),
        "word-and-cards": (
            pictures.WordAndCards("seven", ("6", "7", "9")),
            pictures.WordAndCards("forty-eight", ("48", "84", "40", "18")),
        ),
    }
)
"""Instances by kind."""
