"""What is to be read, before it has a form: sections of sentences, lists, tables and plots."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Bullets:
    """A list of sentences."""

    lines: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """Rows of cells under their heads, as many in each; the columns in ``numbers`` are set to the right."""

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: frozenset[int] = frozenset()


@dataclass(frozen=True)
class Plot:
    """Bars by their labels, each with a count from 0 up. What it shows stands in a table as well."""

    caption: str
    bars: tuple[tuple[str, int], ...]


Part = str | Bullets | Table | Plot
"""A paragraph, or one of the others."""


@dataclass(frozen=True)
class Section:
    """Some parts under a title, which may be empty."""

    title: str
    parts: tuple[Part, ...]


@dataclass(frozen=True)
class Document:
    """A title, a line below it, and sections."""

    title: str
    about: str
    sections: tuple[Section, ...]
