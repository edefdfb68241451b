"""Ribbons of given lengths, true to scale, one below the other; or one ribbon with clips along it."""

from dataclasses import dataclass
from math import floor

from warmup.pictures.base import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, box, disc, frame
from warmup.pictures.sketch import Sketch


@dataclass(frozen=True, eq=False, repr=False)
class Lengths(Picture):
    """Ribbons ``lengths`` steps long, beginning ``starts`` steps in (all at the same line when empty).

    ``forms`` tells each from the others: "plain", "striped" or "spotted". With ``clips`` a row of clips
    a step long lies below the one ribbon, end to end, without gap or overlap; those in ``missing``
    (counted from 0) have fallen off and leave their places bare.
    """

    lengths: tuple[int, ...]
    forms: tuple[str, ...] = ("plain",)
    starts: tuple[int, ...] = ()
    clips: bool = False
    missing: tuple[int, ...] = ()
    kind: str = "lengths"

    def _starts(self) -> tuple[int, ...]:
        return self.starts or (0,) * len(self.lengths)

    def least(self) -> tuple[int, int]:
        """One cell width a step, three a clip; two rows a ribbon and one between."""
        steps = self._steps()
        return steps * (3 if self.clips else 1) + 2, 3 * (len(self.lengths) + self.clips) - 1

    def _steps(self) -> int:
        return max(start + length for start, length in zip(self._starts(), self.lengths, strict=True))

    def sketch(self, columns: int, rows: int) -> Sketch:
        """As long as the pane allows; every step is the same whole number of pixels."""
        sketch = Sketch(columns, rows)
        lines = len(self.lengths) + self.clips
        step = floor(2 * (columns - 2) / self._steps()) / 2
        pitch = min(floor(rows * CELL_HEIGHT / lines), max(10, columns // 6))
        high = max(3, pitch - 2)
        left = floor(columns - self._steps() * step) / 2
        top = float(floor((rows * CELL_HEIGHT - lines * pitch + pitch - high) / 2))
        if not self.starts and not self.clips:
            sketch.paint(box(left - 1, top - 1, 0.5, (lines - 1) * pitch + high + 2), Ink.SOFT)
        for form, start, length in zip(self.forms, self._starts(), self.lengths, strict=True):
            _ribbon(sketch, form, left + start * step, top, length * step, high)
            top += pitch
        if self.clips:
            for place in range(self.lengths[0]):
                if place not in self.missing:
                    sketch.paint(frame(left + place * step, top - 1, step, high, 1), Ink.SECOND)
        return sketch

    def words(self) -> str:
        """The kinds of ribbon in their order, and how they lie, without which is longer or how many clips."""
        if self.clips:
            gone = ", some clips gone" if self.missing else ", end to end"
            return f"a ribbon with a row of clips below it{gone}"
        lie = "their ends not lined up" if self.starts else "their left ends lined up"
        return f"ribbons, from the top: {', '.join(self.forms)}; {lie}"

    def exactly(self) -> str:
        """What to lay out or draw where the screen can't be shown; it may tell the answer."""
        if self.clips:
            gone = f"; fallen off: clip {', '.join(str(n + 1) for n in self.missing)}" if self.missing else ""
            return f"a {self.forms[0]} ribbon, {self.lengths[0]} clips long, clips end to end below it{gone}"
        ribbons = (
            f"{form} from {start} to {start + long}"
            for form, start, long in zip(self.forms, self._starts(), self.lengths, strict=True)
        )
        return f"ribbons, from the top, in steps from one line: {'; '.join(ribbons)}"


def _ribbon(sketch: Sketch, form: str, left: float, top: float, wide: float, high: float) -> None:
    """A bar: solid, or an outline with upright stripes, or dark with a row of spots cut out."""
    match form:
        case "plain":
            sketch.paint(box(left, top, wide, high), Ink.FIRST)
        case "striped":
            sketch.paint(frame(left, top, wide, high, 1), Ink.SECOND)
            for at in _spread(1, wide, 3):
                sketch.paint(box(left + at, top, 1, high), Ink.SECOND)
        case _:
            sketch.paint(box(left, top, wide, high), Ink.INK)
            spot = high - 2 * max(1.0, high // 4)
            for at in _spread(spot, wide, spot + 1):
                sketch.paint(disc(left + at + spot / 2, top + high / 2, spot / 2), Ink.GROUND)


def _spread(size: float, wide: float, pitch: float) -> list[float]:
    """Where things of this size begin, evenly within a width and a space free at both ends."""
    count = max(1, floor((wide - (pitch - size)) / pitch))
    space = (wide - count * size) / (count + 1)
    return [floor(2 * (space + n * (space + size)) + 0.5) / 2 for n in range(count)]


PICTURE = Lengths
