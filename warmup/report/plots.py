"""A plot as a sketch, for the same painter as the pictures: level bars, each with its label and its count."""

from warmup.pictures.ink import Ink
from warmup.pictures.shapes import CELL_HEIGHT, box
from warmup.pictures.sketch import Sketch
from warmup.report.document import Plot

LONGEST = 36
"""How long the longest bar is, in cell widths."""
_HIGH = 1.2


def sketch(plot: Plot) -> Sketch:
    """The bars, a row each: the longest as long as there is room, the others to the same measure."""
    labels = max((len(label) for label, _ in plot.bars), default=0)
    most = max((count for _, count in plot.bars), default=0)
    found = Sketch(labels + LONGEST + 2 + len(str(most)), len(plot.bars))
    for row, (label, count) in enumerate(plot.bars):
        long = LONGEST * count / most if most else 0.0
        found.label(0, row, label)
        found.paint(box(labels + 1, row * CELL_HEIGHT + (CELL_HEIGHT - _HIGH) / 2, long, _HIGH), Ink.FIRST)
        found.label(labels + 2 + round(long), row, str(count))
    return found
