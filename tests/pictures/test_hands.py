import pytest

from tests.pictures.blobs import pieces, pixels, span
from warmup.pictures.hands import Hands
from warmup.pictures.ink import Ink

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


def hands(count: int, columns: int, rows: int) -> list[set[tuple[int, int]]]:
    return pieces(pixels(Hands(count).draw(columns, rows), Ink.FIRST))


def fingers(hand: set[tuple[int, int]]) -> int:
    """The most stretches that any row of a hand falls into."""
    return max(
        sum((x, y) in hand and (x - 1, y) not in hand for x in {x for x, _ in hand})
        for y in {y for _, y in hand}
    )


@pytest.mark.parametrize("count", range(1, 11))
@pytest.mark.parametrize("pane", PANES)
def test_each_hand_stands_alone_with_five_fingers(count: int, pane: tuple[int, int]) -> None:
    for size in (pane, Hands(count).least()):
        found = hands(count, *size)
        assert len(found) == count
        assert [fingers(hand) for hand in found] == [5] * count


def test_left_and_right_hands_take_turns_and_mirror_each_other() -> None:
    for pane in PANES:
        left, right = sorted(hands(2, *pane), key=lambda hand: span(hand)[0])
        edge, _, far, _ = span(left)
        start = span(right)[0]
        assert {(far - x + start, y) for x, y in left} == right, (edge, far)


def test_ten_hands_fit_the_smallest_stages() -> None:
    columns, rows = Hands(10).least()
    assert columns <= 40 and rows <= 9


def test_it_tells_nothing() -> None:
    assert Hands(3).words() == Hands(8).words()
    assert Hands(3).shows() == Hands(3).marked() == ()
