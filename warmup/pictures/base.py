"""What every picture can do."""

from typing import Any

from warmup.pictures.cells import Drawing, drawn
from warmup.pictures.sketch import Sketch


class Picture:
    """Something the child may look at: a frozen dataclass of numbers, words and tuples of them.

    A picture knows nothing of prompts. It sketches itself at whatever size it is given, says its
    smallest legible size, and has words for screen readers, for paper and for panes that are too small.
    Its class leaves equality, hash and repr to this one, and so costs half as much to load.
    """

    kind: str
    """The picture's name in the journal and in JSON: the last field of every picture, with a default."""

    def _asdict(self) -> dict[str, Any]:
        """Its fields in their order, the kind last."""
        return dict(self.__dict__)

    def __eq__(self, other: object) -> bool:
        return type(self) is type(other) and self.__dict__ == other.__dict__

    def __hash__(self) -> int:
        return hash((type(self), *self.__dict__.values()))

    def __repr__(self) -> str:
        fields = ", ".join(f"{name}={value!r}" for name, value in self.__dict__.items() if name != "kind")
        return f"{type(self).__name__}({fields})"

    def draw(self, columns: int, rows: int, *, smooth: bool = False) -> Drawing:
        """The picture in cells, centered: in mixed inks where ``smooth``, otherwise in plain ones."""
        return drawn(self.sketch(columns, rows), smooth=smooth)

    def least(self) -> tuple[int, int]:
        """The smallest size, columns and rows, at which it can be read from a meter."""
        raise NotImplementedError

    def fits(self, columns: int, rows: int) -> bool:
        """Whether it can be read at this size: one that has another layout for it knows better."""
        least = self.least()
        return least[0] <= columns and least[1] <= rows

    def sketch(self, columns: int, rows: int) -> Sketch:
        """Its shapes, laid out for this size; called only where it :meth:`fits`."""
        raise NotImplementedError

    def words(self) -> str:
        """What it shows, in one plain sentence that gives nothing away."""
        raise NotImplementedError

    def exactly(self) -> str:
        """What it shows, so exactly that an adult can lay it out or draw it from these words alone.

        It may tell the answer, so it is never shown in the picture's place.
        """
        raise NotImplementedError

    def shows(self) -> tuple[str, ...]:
        """Every numeral, name or word that can be read off it: none, unless the picture has some."""
        return ()

    def marked(self) -> tuple[str, ...]:
        """What it makes stand out among the rest: nothing, unless the picture says so; never the answer."""
        return ()
