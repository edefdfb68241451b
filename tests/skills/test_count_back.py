"""Counting back: Virginia 2023 K.NS.1.f (references/standards.toml), ex21."""

import pytest

from tests.bank import reference
from tests.skills.asking import asked, example, level_asked, sought
from warmup import skills

TROUBLE = {"20-to-19": (20, 19), "13-to-12": (13, 12), "30-to-29": (30, 29)}


def test_twelve_back_to_eight() -> None:
    """examples.toml, ex21."""
    row = example("ex21")
    p = sought("count-back/from-20", {"start": row["given"]["start"], "end": row["given"]["to"]})
    assert p.answer.split(", ") == row["answer"]


def test_the_first_three_levels_keep_the_published_starts() -> None:
    bound = reference("standards")["state"]["va_count_backward"]["bounds"]
    starts = {
        p.given["start"] for key in ("from-5", "from-10", "from-20") for p in level_asked("count-back", key)
    }
    assert bound["start_min"] <= min(starts) and max(starts) == bound["start_max"]
    assert not any(level.codes for level in skills.SKILLS["count-back"].levels)


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


def test_across_a_ten_always_changes_the_tens() -> None:
    tens = set()
    for p in asked("count-back/across-tens"):
        assert p.given["start"] // 10 == p.given["end"] // 10 + 1
        tens.add(p.given["start"] // 10)
    assert tens == {4, 5, 6, 7, 8, 9}


def test_only_a_count_to_zero_is_a_rockets_and_only_a_small_one_uses_fingers() -> None:
    for key in ("from-5", "from-10", "from-20"):
        for p in level_asked("count-back", key):
            assert "count" in p.say.lower() and ("rocket" in p.say) == p.say.startswith("Pretend")
            assert ("rocket" in p.say) <= (p.given["end"] == 0)
            assert ("fingers" in p.say or "stairs" in p.say) <= (p.given["start"] <= 10)
            assert (p.table == "stairs") == ("stairs" in p.say)
