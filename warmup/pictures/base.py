"""What every picture can do."""

from typing import Any, Protocol

from warmup.pictures.canvas import Drawing


class Picture(Protocol):
    """Something the child may look at: a named tuple of numbers, words and tuples of them.

    A picture knows nothing of prompts. It draws itself at whatever size it is given, says its
    smallest legible size, and has words for screen readers, for paper and for panes that are too small.
    """

    @property
    def kind(self) -> str:
        """The picture's name in the journal and in JSON."""
        ...

    def _asdict(self) -> dict[str, Any]: ...

    def least(self) -> tuple[int, int]:
        """The smallest size, columns and rows, at which it can be read from a meter."""
        ...

    def draw(self, columns: int, rows: int) -> Drawing:
        """The picture at this size, centered; called only with at least :meth:`least`."""
        ...

    def words(self) -> str:
        """What it shows, in one plain sentence that gives nothing away."""
        ...

    def exactly(self) -> str:
        """What it shows, so exactly that an adult can lay it out or draw it from these words alone.

        It may tell the answer, so it is never shown in the picture's place.
        """
        ...

    def shows(self) -> tuple[str, ...]:
        """Every numeral, name or word that can be read off it."""
        ...

    def marked(self) -> tuple[str, ...]:
        """What it makes stand out among the rest: never the answer."""
        ...
