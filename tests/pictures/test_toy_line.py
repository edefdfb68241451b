"""The toys in line, two frames, two trays, a word over its cards: what is painted is what was given."""

from typing import Literal

import pytest

from tests.pictures.blobs import boxes, measures, pieces, pixels, span
from warmup.pictures import Picture
from warmup.pictures.ink import Ink
from warmup.pictures.toy_line import ToyLine
from warmup.pictures.two_frames import TwoFrames
from warmup.pictures.two_sets import TwoSets
from warmup.pictures.word_and_cards import WordAndCards

PANES = ((40, 18), (56, 9), (60, 30), (80, 38))


def sizes(picture: Picture) -> list[tuple[int, int]]:
    wide, high = picture.least()
    return [picture.least(), *(pane for pane in PANES if pane[0] >= wide and pane[1] >= high)]


@pytest.mark.parametrize("count", range(1, 11))
@pytest.mark.parametrize("front", ["left", "right"])
def test_figures_stand_in_line_and_the_door_is_at_the_front(
    count: int, front: Literal["left", "right"]
) -> None:
    picture = ToyLine(count, front)
    assert len(sizes(picture)) == 5, "it fits every pane"
    for size in sizes(picture):
        drawing = picture.draw(*size)
        figures = pieces(pixels(drawing, Ink.FIRST))
        assert len(figures) == count
        assert len(measures(boxes(picture, size, Ink.FIRST))) == 1, "all alike"
        assert len({span(figure)[3] for figure in figures}) == 1, "on one floor"
        door = min(x for x, _ in pixels(drawing, Ink.INK))
        nearest = min(span(figure)[0] for figure in figures)
        assert (door < nearest) is (front == "left")


@pytest.mark.slow
@pytest.mark.parametrize("front", ["left", "right"])
def test_the_hat_stands_at_its_place_and_differs_by_form(front: Literal["left", "right"]) -> None:
    for place in range(1, 11):
        picture = ToyLine(10, front, (place,))
        for size in sizes(picture):
            drawing = picture.draw(*size)
            (hat,) = pieces(pixels(drawing, Ink.SECOND))
            figures = pieces(pixels(drawing, Ink.FIRST))
            before = sum(span(figure)[2] < span(hat)[0] for figure in figures)
            assert before == (place - 1 if front == "left" else 10 - place)
            assert span(hat)[1] < min(span(figure)[1] for figure in figures), "taller by its hat"


def test_two_frames_hold_their_counters_and_are_square() -> None:
    for first, second in ((10, 1), (10, 9), (0, 0), (10, 0), (7, 4)):
        picture = TwoFrames(first, second)
        assert len(sizes(picture)) == 5
        for size in sizes(picture):
            drawing = picture.draw(*size)
            counters = pieces(pixels(drawing, Ink.FIRST))
            assert len(counters) == first + second
            for wide, high in measures(boxes(picture, size, Ink.FIRST)):
                assert wide == high, "round"
            assert len(pieces(pixels(drawing, Ink.SOFT))) == (2 if size != picture.least() else 1)


@pytest.mark.slow
@pytest.mark.parametrize("spread", ["", "top", "bottom"])
def test_trays_hold_hollow_rings_of_one_size(spread: Literal["", "top", "bottom"]) -> None:
    for top, bottom in ((5, 7), (7, 5), (3, 3), (10, 9), (4, 0), (1, 2)):
        picture = TwoSets(top, bottom, spread)
        assert len(sizes(picture)) == 5
        for size in sizes(picture):
            drawing = picture.draw(*size)
            rings = pieces(pixels(drawing, Ink.FIRST))
            assert len(rings) == top + bottom
            assert len({len(ring) for ring in rings}) == 1
            middle = size[1]
            assert sum(span(ring)[3] < middle for ring in rings) == top
            for ring in rings:
                left, top_y, right, low = span(ring)
                assert right - left + 1 == 2 * (low - top_y + 1), "round"
                inside = (right - left + 1) * (low - top_y + 1)
                assert len(ring) < inside - 4, "hollow"


def test_without_spread_a_ring_stands_under_its_match_and_with_it_the_row_is_longer() -> None:
    for size in PANES:
        lefts = [span(ring)[0] for ring in pieces(pixels(TwoSets(5, 5).draw(*size), Ink.FIRST))]
        assert lefts[:5] == lefts[5:]
        rings = pieces(pixels(TwoSets(5, 7, "top").draw(*size), Ink.FIRST))
        ends = [max(span(ring)[2] for ring in part) for part in (rings[:5], rings[5:])]
        assert ends[0] > ends[1], "five spread out reach further than seven close together"


@pytest.mark.parametrize("word", ["two", "seventeen", "twenty-seven"])
def test_a_word_stands_over_cards_that_do_not_touch(word: str) -> None:
    picture = WordAndCards(word, ("17", "27", "72", "71"))
    assert picture.least()[0] <= 40 and picture.least()[1] <= 18
    for size in sizes(picture):
        drawing = picture.draw(*size)
        cards = [p for p in pieces(pixels(drawing, Ink.TILE)) if len(p) > 20]
        # A numeral may cut a corner of card off; the cards are what stands side by side.
        tops = {span(card)[1] for card in cards}
        letters = [y for _, y in pixels(drawing, Ink.INK) if y < min(tops)]
        assert letters and max(letters) < min(tops), "the word is above"
        columns = {x for card in cards for x, _ in card}
        gaps = [x for x in range(min(columns), max(columns)) if x not in columns and x + 1 in columns]
        assert len(gaps) == 3, "three gaps between four cards"


def test_what_they_say_gives_nothing_away() -> None:
    for picture in (ToyLine(4), ToyLine(4, "right", (2,)), TwoFrames(10, 2), TwoSets(2, 3), TwoSets(3, 0)):
        words = picture.words()
        assert not any(part in words.split() for part in ("2", "3", "4", "10", "two", "three", "four"))
        assert picture.shows() == () and picture.marked() == ()
    cards = WordAndCards("two", ("2", "3"))
    assert "two" not in cards.words() and cards.shows() == ("two", "2", "3") and cards.marked() == ()
