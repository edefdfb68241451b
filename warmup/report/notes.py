"""The notes of a journal that were ticked as shared, where the journal keeps any."""

from collections.abc import Iterable
from typing import Protocol, runtime_checkable

from warmup.report.facts import Shared


@runtime_checkable
class Notebook(Protocol):
    """A journal with notes."""

    def shared_notes(self, child: str) -> Iterable[Shared]:
        """The notes of a child, by its name in the journal, that were ticked as shared."""


def shared_notes(journal: object, child: str) -> tuple[Shared, ...]:
    """Those notes; none of a journal that keeps no notes."""
    return tuple(journal.shared_notes(child)) if isinstance(journal, Notebook) else ()
