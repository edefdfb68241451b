"""how-many: the bounds of K.CC.B.5 in references/standards.toml, and pictures counted from their pixels."""

from collections import Counter

import pytest

from tests.bank import reference
from tests.mornings import morning
from tests.pictures.blobs import pieces, pixels
from warmup import skills
from warmup.english import number_word
from warmup.model import Prompt
from warmup.pictures import Ink
from warmup.pictures.counters import Counters
from warmup.randomness import SeededRandom

BOUNDS = reference("standards")["std"]["K.CC.B.5"]["bounds"]
ITEMS = {level.key: level.items for level in skills.SKILLS["how-many"].levels}


def drawn(item: str, count: int = 120) -> list[Prompt]:
    return [
        skills.prompt(f"how-many/{item}", morning(), SeededRandom("how-many", item, n)) for n in range(count)
    ]


@pytest.mark.parametrize("item", ["line", "rows", "ring", "scatter"])
def test_the_answer_is_what_the_picture_holds(item: str) -> None:
    """Solid pieces on the picture, counted from its pixels at both small stages."""
    for prompt in drawn(item, 25):
        assert isinstance(prompt.picture, Counters)
        for pane in ((40, 18), (56, 9)):
            seen = len(pieces(pixels(prompt.picture.draw(*pane), Ink.FIRST)))
            assert prompt.answer == number_word(seen)


def test_no_set_goes_past_the_standard() -> None:
    """K.CC.B.5: up to twenty in a line, array or ring, ten in a scatter; count out from one to twenty."""
    arranged = [p.given["count"] for item in ("line", "rows", "ring") for p in drawn(item)]
    assert max(arranged) == BOUNDS["arranged_max"]
    assert max(p.given["count"] for p in drawn("scatter")) == BOUNDS["scattered_max"]
    out = [p.given["count"] for p in drawn("count-out")]
    assert BOUNDS["count_out_min"] <= min(out) and max(out) <= BOUNDS["count_out_max"]
    assert max(p.given["count"] for p in drawn("line")) == 5, "the first level's own bound"
    assert max(out) == 10, "the second level's own bound"


def test_counting_out_wants_no_more_and_no_fewer() -> None:
    for prompt in drawn("count-out", 30):
        assert prompt.picture is None
        assert prompt.answer.startswith(number_word(prompt.given["count"]))
        assert number_word(prompt.given["count"]) in prompt.say


def test_none_left_is_zero_and_the_words_children_say_for_it_count() -> None:
    """K.CC.A.3: zero stands for none (standards.toml)."""
    for prompt in drawn("zero", 40):
        assert prompt.answer == "zero" and {"none", "nothing"} <= set(prompt.accept)
        assert not any(word in cue.text for cue in prompt.cues for word in ("zero", "none", "nothing"))


@pytest.mark.parametrize(
    ("item", "low", "high"), [("line", 2, 5), ("rows", 6, 20), ("ring", 6, 20), ("scatter", 4, 10)]
)
def test_numbers_spread_over_the_whole_range(item: str, low: int, high: int) -> None:
    seen = Counter(p.given["count"] for p in drawn(item, 900))
    assert set(seen) == set(range(low, high + 1))
    assert max(seen.values()) < 2 * min(seen.values())


def test_nobody_is_asked_to_count_one_thing() -> None:
    assert min(p.given["count"] for p in drawn("line")) == 2


def test_a_ring_and_a_scatter_may_be_counted_again_in_rows() -> None:
    for item in ("ring", "scatter"):
        for prompt in drawn(item, 20):
            model = prompt.cues[1].picture
            assert isinstance(model, Counters)
            assert (model.number, model.layout) == (prompt.given["count"], "rows")


def test_levels_follow_the_year_plan() -> None:
    assert list(ITEMS) == ["line-to-5", "count-out-to-10", "rows-to-20", "ring-and-scatter"]


def test_the_slip_with_none_left_is_told_without_its_answer() -> None:
    for prompt in drawn("zero", 40):
        assert not any(word in prompt.watch_for for word in ("zero", "none", "nothing"))
