"""A plot's bars: each as long as its count says, with its label before it and its count behind it."""

from hypothesis import given
from hypothesis import strategies as st

from warmup.pictures.shapes import Rect
from warmup.report.document import Plot
from warmup.report.plots import LONGEST, sketch

BARS = st.lists(
    st.tuples(st.text("abc", min_size=1, max_size=9), st.integers(0, 999)), min_size=1, max_size=12
)


@given(BARS)
def test_bars_are_as_long_as_their_counts_and_all_lies_inside(bars: list[tuple[str, int]]) -> None:
    drawn = sketch(Plot("What", tuple(bars)))
    most = max(count for _, count in bars)
    boxes = [shape.box for shape, _ in drawn.shapes if isinstance(shape, Rect)]
    assert len(boxes) == len(bars)
    for (_, count), (left, _, right, _) in zip(bars, boxes, strict=True):
        assert abs((right - left) * most - LONGEST * count) < 1e-6 * (most + 1)
    assert all(0 <= top < low <= drawn.height and right <= drawn.width for _, top, right, low in boxes)
    for label in drawn.labels:
        assert label.column >= 0 and label.column + len(label.text) <= drawn.columns
        assert not [
            box for box in boxes if label.row == int(box[1] // 2) and _over(label.column, label.text, box)
        ]
    assert [label.text for label in drawn.labels] == [text for label, n in bars for text in (label, str(n))]


def _over(column: int, text: str, box: tuple[float, float, float, float]) -> bool:
    """Whether a label lies on a bar, by more than half a cell."""
    return min(column + len(text), box[2]) - max(column, box[0]) > 0.5
