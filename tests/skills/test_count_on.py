"""Counting on: K.CC.A.2 (references/standards.toml), ex19, the trouble starts of pedagogy.toml."""

import pytest
from num2words import num2words

from tests.bank import reference
from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, sought
from warmup import skills


def test_the_count_never_starts_at_one_and_stays_in_the_known_range() -> None:
    found = coded("count-on", "K.CC.A.2")
    bound = bounds("K.CC.A.2")
    assert all(p.given["start"] != bound["start_must_not_be"] for p in found)
    assert max(p.given["end"] for p in found) == bound["known_range_by_year_end"]


def test_twenty_seven_to_thirty_two() -> None:
    """examples.toml, ex19."""
    row = example("ex19")
    p = sought("count-on/across-30", {"start": row["given"]["start"], "end": row["given"]["to"]})
    assert p.answer.split(", ") == row["answer"]
    assert {q.say for q in asked("count-on/across-30", 600)} >= {row["asked"]}


@pytest.mark.parametrize(
    ("key", "low", "high"),
    [("within-10", 2, 10), ("within-20", 7, 23), ("to-50", 26, 52), ("to-95", 31, 100)],
)
def test_levels_keep_their_range(key: str, low: int, high: int) -> None:
    found = level_asked("count-on", key)
    assert min(p.given["start"] for p in found) == low
    assert max(p.given["end"] for p in found) == high
    assert all(2 <= p.given["end"] - p.given["start"] <= 6 for p in found)
    assert max(p.given["start"] for p in found) <= 95


@pytest.mark.parametrize("ten", [30, 40, 50])
def test_across_a_ten_starts_where_the_trouble_is(ten: int) -> None:
    """NRC (2009), p. 143, in pedagogy.toml: starts of 27 to 29 and the like."""
    starts = set()
    for p in asked(f"count-on/across-{ten}"):
        assert p.given["start"] < ten < p.given["end"]
        assert f"{num2words(ten)}…" not in p.cues[2].text
        starts.add(p.given["start"])
    assert starts >= {
        n for n in reference("pedagogy")["trouble"]["decade_crossing"]["starts"] if 0 < ten - n < 4
    }


def test_the_teens_pass_fifteen_but_for_the_earliest_stops() -> None:
    found = asked("count-on/teens")
    assert all(11 <= p.given["start"] <= 14 and 15 <= p.given["end"] <= 19 for p in found)
    assert sum(p.given["end"] >= 16 for p in found) > len(found) / 2


def test_starts_inside_the_teens_have_a_record_of_their_own() -> None:
    """So starts below ten, and out past nineteen, can be sure while those in the teens fall back to one."""
    starts = {p.given["start"] for p in asked("count-on/within-20", 300)}
    assert starts == {7, 8, 9, 10, 17, 18, 19}


@pytest.mark.parametrize(
    ("item", "low", "high"), [("within-10", 3, 6), ("teens", 12, 14), ("anywhere", 52, 95)]
)
def test_starts_rise_in_the_four_weeks_after_the_level_opens(item: str, low: int, high: int) -> None:
    first = opens(f"count-on/{item}")
    tops = [
        max(p.given["start"] for p in asked(f"count-on/{item}", 600, in_week(week)))
        for week in range(first, first + 6)
    ]
    assert tops == sorted(tops) and tops[0] == low and tops[3] < tops[4] == tops[5] == high


def test_across_a_ten_stands_on_a_count_that_passes_there() -> None:
    (level,) = (level for level in skills.SKILLS["count-on"].levels if level.key == "to-50")
    assert "count:to-69" in level.stands_on
    assert set(level.waits_on) == {"count/across-30", "count-on/teens"}


def test_the_start_may_be_left_out_and_is_shown_once_its_numeral_is_known() -> None:
    for p in asked("count-on/anywhere"):
        longer, shorter = sorted((p.answer, *p.accept), key=len, reverse=True)
        assert shorter == longer.partition(", ")[2]
        assert p.picture is not None and p.picture.shows() == (str(p.given["start"]),)
    assert all(p.picture is None for p in asked("count-on/within-20", 30))


def test_what_the_adult_does_with_the_cup_is_a_line_of_its_own() -> None:
    for key in ("within-10", "within-20"):
        found = level_asked("count-on", key)
        assert any(p.do for p in found)
        for p in found:
            assert bool(p.do) == ("are in the cup" in p.say)
            assert "drop" not in p.watch_for.lower()
    assert not any(p.do or "cup" in p.say for p in level_asked("count-on", "to-95"))


def test_the_adult_never_begins_at_one() -> None:
    """K.CC.A.2 counts on from another number than one, and "one, two" begins there."""
    assert not any(p.say.startswith("One,") for p in asked("count-on/within-10", 400))
    assert any(p.say.startswith("Two, three. Keep going") for p in asked("count-on/within-10", 400))
