"""The kinds of sheets: a file each with a ``SHEET``, found by itself; the id is its name, with hyphens."""

from collections.abc import Mapping
from functools import cache
from importlib import import_module
from pathlib import Path

from warmup.sheets.base import Sheet


@cache
def kinds() -> Mapping[str, Sheet]:
    """Every kind by its id, in the order of file names."""
    names = sorted(file.stem for file in Path(__file__).parent.glob("[a-z]*.py"))
    return {name.replace("_", "-"): import_module(f"{__name__}.{name}").SHEET for name in names}
