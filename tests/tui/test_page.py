"""What every page has to bring: its heading, its own part, and what its actions do."""

import importlib
import pkgutil
from collections.abc import Iterator
from typing import Any

from warmup import tui
from warmup.tui.choice import Choice
from warmup.tui.key_screen import KeyScreen
from warmup.tui.offering import Offering
from warmup.tui.page import Page
from warmup.tui.reading import Reading
from warmup.tui.ticking import TickingPage


def kinds(of: type[Any]) -> Iterator[type[Any]]:
    """Every class made from this one, and those made from them."""
    for kind in of.__subclasses__():
        yield from (kind, *kinds(kind))


def missing(kind: type[Any]) -> list[str]:
    """The methods that a class only names."""
    return [name for name in dir(kind) if getattr(getattr(kind, name, None), "__isabstractmethod__", False)]


def test_every_screen_that_is_opened_has_all_its_parts() -> None:
    for module in pkgutil.iter_modules(tui.__path__, f"{tui.__name__}."):
        importlib.import_module(module.name)
    found = {kind for kind in kinds(KeyScreen) if kind.__module__.startswith("warmup.")}
    found -= {Choice, Offering, Page, Reading, TickingPage}
    assert len(found) > 30 and missing(Page) == ["act", "body", "heading"]
    assert {kind.__name__: missing(kind) for kind in found if missing(kind)} == {}
