"""Pictures for the child: shapes once, two painters, a picture a file. Nothing here knows prompts or screens.

A picture's module is named for its class and its kind: ``TenFrame`` lives in ``ten_frame`` and is of
the kind "ten-frame". ``pictures.TenFrame`` loads that module at the first use: a morning draws nine of
them, and loading all would stand between the adult and the first frame. Types alone are listed below.
"""

import re
from collections.abc import Mapping
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING, Any

from warmup import renames
from warmup.pictures.base import Picture
from warmup.pictures.cells import Cell, Drawing
from warmup.pictures.ink import Ink

if TYPE_CHECKING:
    from warmup.pictures.base_ten import BaseTen as BaseTen
    from warmup.pictures.bundles import Bundles as Bundles
    from warmup.pictures.clock import Clock as Clock
    from warmup.pictures.coins import Coins as Coins
    from warmup.pictures.counters import Counters as Counters
    from warmup.pictures.day_strip import DayStrip as DayStrip
    from warmup.pictures.dots import Dots as Dots
    from warmup.pictures.flat_shape import FlatShape as FlatShape
    from warmup.pictures.fold import Fold as Fold
    from warmup.pictures.half import Half as Half
    from warmup.pictures.hands import Hands as Hands
    from warmup.pictures.hundred_chart import HundredChart as HundredChart
    from warmup.pictures.jars import Jars as Jars
    from warmup.pictures.joined_shapes import JoinedShapes as JoinedShapes
    from warmup.pictures.lengths import Lengths as Lengths
    from warmup.pictures.month_calendar import MonthCalendar as MonthCalendar
    from warmup.pictures.month_strip import MonthStrip as MonthStrip
    from warmup.pictures.number_line import NumberLine as NumberLine
    from warmup.pictures.number_row import NumberRow as NumberRow
    from warmup.pictures.numeral import Numeral as Numeral
    from warmup.pictures.pairs import Pairs as Pairs
    from warmup.pictures.part_whole import PartWhole as PartWhole
    from warmup.pictures.pattern_row import PatternRow as PatternRow
    from warmup.pictures.scale import Scale as Scale
    from warmup.pictures.scene import Scene as Scene
    from warmup.pictures.shape_row import ShapeRow as ShapeRow
    from warmup.pictures.shares import Shares as Shares
    from warmup.pictures.solid_shape import SolidShape as SolidShape
    from warmup.pictures.sorted_rows import SortedRows as SortedRows
    from warmup.pictures.ten_frame import TenFrame as TenFrame
    from warmup.pictures.toy_line import ToyLine as ToyLine
    from warmup.pictures.two_frames import TwoFrames as TwoFrames
    from warmup.pictures.two_sets import TwoSets as TwoSets
    from warmup.pictures.word_and_cards import WordAndCards as WordAndCards


_MOST_THINGS = 200
_LARGEST = 9999
"""A picture out of a file has no longer list and no larger number: a year is the largest there is."""


@cache
def _modules() -> frozenset[str]:
    return frozenset(file.stem for file in Path(__file__).parent.iterdir() if file.suffix == ".py")


@cache
def _picture(module: str) -> type[Picture] | None:
    """The picture of a module; None where there is no such module or it holds none."""
    found: type[Picture] | None = None
    if module in _modules():
        found = getattr(import_module(f"{__name__}.{module}"), "PICTURE", None)
    return found


def __getattr__(name: str) -> type[Picture]:
    found = _picture(re.sub(r"(?<!^)(?=[A-Z])", "_", name).lower()) if name[:1].isupper() else None
    if found is None or found.__name__ != name:
        raise AttributeError(f"no picture {name!r}")
    return found


def kinds() -> Mapping[str, type[Picture]]:
    """Every picture by its kind, found in the modules of this folder that have a ``PICTURE``."""
    found = ((module.replace("_", "-"), _picture(module)) for module in sorted(_modules()))
    return {kind: picture for kind, picture in found if picture is not None}


def to_data(picture: Picture) -> dict[str, Any]:
    """The picture as plain values for JSON: its kind and its fields."""
    return picture._asdict()


def from_data(data: dict[str, Any] | None) -> Picture | None:
    """The picture :func:`to_data` was given; None for none, or for one this version does not know."""
    if not isinstance(data, dict):
        return None
    kind = renames.kind(str(data.get("kind")))
    picture = _picture(kind.replace("-", "_"))
    if picture is None:
        return None
    try:
        # Version 1 of a routine's JSON called the number of things in a picture their count.
        fields = {"number" if name == "count" else name: _frozen(value) for name, value in data.items()}
        found = picture(**(fields | {"kind": kind}))
        hash(found), found.least(), found.words(), found.exactly(), found.shows(), found.marked()
    except Exception:
        # The data may be anything, and what a picture makes of a shape of no name can't be listed here.
        return None
    return found


def _frozen(value: Any) -> Any:
    """The value as a picture holds it. ValueError for more than any picture can show."""
    if isinstance(value, list):
        if len(value) > _MOST_THINGS:
            raise ValueError("too long a list")
        return tuple(map(_frozen, value))
    if isinstance(value, int | float) and not abs(value) <= _LARGEST:
        raise ValueError("too large a number")
    return value


__all__ = ["Cell", "Drawing", "Ink", "Picture", "from_data", "kinds", "to_data"]
