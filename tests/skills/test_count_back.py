"""Counting back: Virginia 2023 K.NS.1.f (references/standards.toml), ex21."""

import pytest

from tests.bank import reference
from tests.skills.asking import asked, example, in_week, level_asked, opens, sought
from warmup import skills

TROUBLE = {"20-to-19": (20, 19), "13-to-12": (13, 12)}


def test_twelve_back_to_eight() -> None:
    """examples.toml, ex21."""
    row = example("ex21")
    p = sought("count-back/from-20", {"start": row["given"]["start"], "end": row["given"]["to"]})
    assert p.answer.split(", ") == row["answer"]


def test_the_levels_keep_the_published_starts_and_only_lead_to_a_code() -> None:
    bound = reference("standards")["state"]["va_count_backward"]["bounds"]
    starts = {
        p.given["start"] for key in ("from-5", "from-10", "from-20") for p in level_asked("count-back", key)
    }
    assert bound["start_min"] <= min(starts) and max(starts) == bound["start_max"]
    for level in skills.SKILLS["count-back"].levels:
        assert level.codes == () and level.toward == ("1.OA.C.5",)


@pytest.mark.parametrize(("item", "low", "high"), [("from-5", 3, 5), ("from-10", 7, 10), ("from-20", 13, 19)])
def test_starts_rise_in_the_four_weeks_after_the_level_opens(item: str, low: int, high: int) -> None:
    first = opens(f"count-back/{item}")
    tops = [
        max(p.given["start"] for p in asked(f"count-back/{item}", 200, in_week(week)))
        for week in range(first, first + 6)
    ]
    assert tops == sorted(tops) and tops[0] == low and tops[3] < tops[4] == tops[5] == high


@pytest.mark.parametrize("item", TROUBLE)
def test_trouble_items_walk_over_their_place_and_the_cue_does_not(item: str) -> None:
    high, low = TROUBLE[item]
    for p in asked(f"count-back/{item}"):
        assert p.given["end"] <= low and high <= p.given["start"]
        words = p.answer.split(", ")
        assert p.cues[2].text.count("…") == 1
        assert words[p.given["start"] - low] not in p.cues[2].text


def test_small_counts_end_at_zero_and_nothing_will_do_for_it() -> None:
    for p in asked("count-back/from-5"):
        assert p.given["end"] == 0
        assert p.answer.endswith(", zero")
        assert f"{p.answer.removesuffix('zero')}nothing" in p.accept
    assert {p.given["end"] for p in asked("count-back/from-10", 400)} == set(range(7))


def test_only_a_count_to_zero_is_a_rockets_and_only_a_small_one_uses_fingers() -> None:
    for key in ("from-5", "from-10", "from-20"):
        for p in level_asked("count-back", key):
            assert "count" in p.say.lower() and ("rocket" in p.say) == p.say.startswith("Pretend")
            assert ("rocket" in p.say) <= (p.given["end"] == 0)
            assert ("fingers" in p.say or "stairs" in p.say) <= (p.given["start"] <= 10)
            assert (p.table == "stairs") == ("stairs" in p.say)
