"""Names that changed: what an older journal, family.toml or year.toml holds is read by its new name.

A name that goes is never given to anything else. A line here stays for good: files are read for years.
"""

from collections.abc import Mapping
from types import MappingProxyType

ITEMS: Mapping[str, str] = MappingProxyType({})
"""Items (``skill/name``), the old one first."""

LEVELS: Mapping[str, str] = MappingProxyType({})
"""Levels (``skill:key``), the old one first."""

KINDS: Mapping[str, str] = MappingProxyType({"queue": "toy-line"})
"""Kinds of picture, the old one first."""


def item(name: str) -> str:
    """The item's name today."""
    return _newest(name, ITEMS)


def level(name: str) -> str:
    """The level's name today."""
    return _newest(name, LEVELS)


def kind(name: str) -> str:
    """The picture's kind today."""
    return _newest(name, KINDS)


def _newest(name: str, table: Mapping[str, str]) -> str:
    """The end of the chain of names; a table that leads round in a circle is left after one round."""
    for _ in table:
        name = table.get(name, name)
    return name
