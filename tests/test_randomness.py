"""Chance that comes out the same everywhere: a routine must be the same on any machine."""

import subprocess
import sys
from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from warmup.randomness import SeededRandom, digest


def test_the_digest_is_that_of_every_process_and_machine() -> None:
    """BLAKE2b (RFC 7693) of the parts, told apart; the number was computed once and stays."""
    assert digest("Bean", 3) == digest("Bean", "3") != digest("Bean3")
    command = [sys.executable, "-c", "from warmup.randomness import digest; print(digest('Bean', 3))"]
    assert {
        subprocess.run(
            command, capture_output=True, text=True, check=True, env={"PYTHONHASHSEED": seed}
        ).stdout
        for seed in ("1", "2")
    } == {f"{digest('Bean', 3)}\n"}
    assert 0 <= digest("\ud800") < 2**64, "half of a surrogate pair out of a file is no error"


def test_the_same_seed_draws_the_same_and_another_seed_another() -> None:
    def drawn(*seed: object) -> list[int]:
        rng = SeededRandom(*seed)
        return [rng.below(1000) for _ in range(20)]

    assert drawn("Bean", 1) == drawn("Bean", 1) != drawn("Bean", 2)


@given(st.integers(), st.integers(-50, 50), st.integers(0, 60))
def test_between_holds_both_ends_and_nothing_else(seed: int, low: int, more: int) -> None:
    rng = SeededRandom(seed)
    assert {rng.between(low, low + more) for _ in range(40)} <= set(range(low, low + more + 1))


def test_every_number_comes_about_equally_often() -> None:
    """Of 6,000 draws among six each comes 1,000 times; four standard deviations are 115."""
    rng = SeededRandom("dice")
    counts = Counter(rng.below(6) for _ in range(6000))
    assert set(counts) == set(range(6)) and all(885 < count < 1115 for count in counts.values())
    assert 2845 < sum(rng.coin() for _ in range(6000)) < 3155


@pytest.mark.parametrize("count", [0, -1])
def test_nothing_to_draw_from_is_an_error(count: int) -> None:
    with pytest.raises(ValueError, match="cannot draw below"):
        SeededRandom(1).below(count)


@given(st.integers(), st.lists(st.integers()), st.integers(0, 10))
def test_shuffled_keeps_everything_and_a_sample_is_part_of_it(
    seed: int, things: list[int], count: int
) -> None:
    assert sorted(SeededRandom(seed).shuffled(things)) == sorted(things)
    sample = SeededRandom(seed).sample(things, count)
    assert len(sample) == min(count, len(things)) and not Counter(sample) - Counter(things)


@given(st.integers())
def test_the_phrasing_used_last_is_left_out_where_there_is_another(seed: int) -> None:
    assert SeededRandom(seed, avoid="b").phrasing("one", "two", "three").key in ("a", "c")
    assert SeededRandom(seed, avoid="a").phrasing("one") == ("a", "one")
