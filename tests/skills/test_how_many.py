"""how-many: the bounds of K.CC.B.5 in references/standards.toml, and pictures counted from their pixels."""

from collections import Counter

import pytest

from tests.bank import reference
from tests.pictures.blobs import pieces, pixels
from tests.skills.asking import LATE, asked, coded, in_week, opens, weeks
from warmup import skills
from warmup.english import number_word
from warmup.model import Morning, Prompt
from warmup.pictures import Ink
from warmup.pictures.counters import Counters

BOUNDS = reference("standards")["std"]["K.CC.B.5"]["bounds"]
ITEMS = {level.key: level.items for level in skills.SKILLS["how-many"].levels}


def drawn(item: str, count: int = 120, day: Morning = LATE) -> list[Prompt]:
    return asked(f"how-many/{item}", count, day)


@pytest.mark.parametrize("item", ["line", "so-how-many", "line-to-10", "rows", "ring", "scatter"])
def test_the_answer_is_what_the_picture_holds(item: str) -> None:
    """Solid pieces on the picture, counted from its pixels at both small stages."""
    for prompt in drawn(item, 25):
        assert isinstance(prompt.picture, Counters)
        for pane in ((40, 18), (56, 9)):
            seen = len(pieces(pixels(prompt.picture.draw(*pane), Ink.FIRST)))
            assert prompt.answer == number_word(seen)


def test_no_set_goes_past_the_standard() -> None:
    """K.CC.B.5: up to twenty in a line, array or ring, ten in a scatter; count out from one to twenty."""
    for p in coded("how-many", "K.CC.B.5", 120):
        if "layout" in p.given:
            scattered = p.given["layout"] == "scatter"
            assert p.given["count"] <= BOUNDS["scattered_max" if scattered else "arranged_max"]
        elif "count" in p.given:
            assert BOUNDS["count_out_min"] <= p.given["count"] <= BOUNDS["count_out_max"]


def test_counting_out_wants_no_more_and_no_fewer() -> None:
    for prompt in (*drawn("count-out", 30), *drawn("count-out-to-20", 30)):
        assert prompt.picture is None
        assert prompt.answer.startswith(number_word(prompt.given["count"]))
        assert number_word(prompt.given["count"]) in prompt.say
        assert int(prompt.table.split()[0]) > prompt.given["count"], "the child must stop, not run out"


def test_none_left_is_zero_and_the_words_children_say_for_it_count() -> None:
    """K.CC.A.3: zero stands for none (standards.toml)."""
    for prompt in drawn("zero", 40):
        assert prompt.answer == "zero" and {"none", "nothing"} <= set(prompt.accept)
        assert not any(word in cue.text for cue in prompt.cues for word in ("zero", "none", "nothing"))


# The fewest, the most in the week a level opens, and the most later on.
RANGES = [
    ("line", 2, 5, 5), ("so-how-many", 3, 5, 5), ("count-out", 2, 5, 10), ("line-to-10", 6, 8, 10),
    ("rows", 6, 12, 20), ("ring", 6, 12, 20), ("scatter", 4, 7, 10), ("count-out-to-20", 11, 14, 20),
]  # fmt: skip


@pytest.mark.parametrize(("item", "low", "at_first", "high"), RANGES)
def test_numbers_spread_over_the_range_and_rise_with_the_weeks(
    item: str, low: int, at_first: int, high: int
) -> None:
    first = opens(f"how-many/{item}")
    for day, most in ((in_week(first + 1), at_first), (in_week(first + 2), high), (LATE, high)):
        seen = Counter(p.given["count"] for p in drawn(item, 900, day))
        assert set(seen) == set(range(low, most + 1))
        assert max(seen.values()) < 2 * min(seen.values())


def test_counted_once_and_covered_so_that_only_the_last_number_is_left() -> None:
    """K.CC.B.4.B: the last number said is the size of the lot (standards.toml)."""
    for prompt in drawn("so-how-many", 60):
        assert "count" in prompt.say.lower() and "cover" in prompt.do
        assert prompt.answer not in prompt.say.split()


def test_nobody_is_asked_to_count_one_thing() -> None:
    assert min(p.given["count"] for p in drawn("line")) == 2


def test_a_ring_and_a_scatter_may_be_counted_again_in_rows() -> None:
    for item in ("ring", "scatter"):
        for prompt in drawn(item, 20):
            model = prompt.cues[1].picture
            assert isinstance(model, Counters)
            assert (model.number, model.layout) == (prompt.given["count"], "rows")


def test_levels_follow_the_year_plan() -> None:
    assert list(ITEMS) == list(weeks("how-many"))


def test_the_slip_with_none_left_is_told_without_its_answer() -> None:
    for prompt in drawn("zero", 40):
        assert not any(word in prompt.watch_for for word in ("zero", "none", "nothing"))
