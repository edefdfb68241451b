"""Number line: 1.OA.C.5 and 2.MD.B.6 (references/standards.toml); facts printed in the standards as hops."""

from collections import Counter

import pytest
from num2words import num2words

from tests.skills.asking import asked, bounds, in_week, level_asked, printed, sought, weeks
from warmup import skills
from warmup.pictures.number_line import NumberLine

HOPPING = {
    "hops-to-10": (0, 10, 2, 3),
    "to-20": (0, 20, 2, 3),
    "to-30": (0, 30, 3, 5),
}


LEVEL = {level.key: at for at, level in enumerate(skills.SKILLS["number-line"].levels)}


@pytest.mark.parametrize("key", HOPPING)
def test_hops_and_numbers_keep_the_range_of_their_level(key: str) -> None:
    """2.MD.B.6 goes to a hundred; the levels stop well before."""
    low, high, few, most = HOPPING[key]
    assert high <= bounds("2.MD.B.6")["within"]
    ends = set()
    for p in level_asked("number-line", key):
        ends |= {p.given["start"], p.given["start"] + p.given["hops"]}
    assert low <= min(ends) and max(ends) == high
    first = weeks("number-line")[key]
    for week, hops in ((first + 1, few), (first + 2, most)):
        items = [f"number-line/{name}" for name in skills.SKILLS["number-line"].levels[LEVEL[key]].items]
        taken = {abs(p.given["hops"]) for item in items for p in asked(item, 200, in_week(week))}
        assert taken == set(range(1, hops + 1)), "few hops at first"


@pytest.mark.parametrize(("item", "tens"), [("across-10", 10), ("on-across-20", 20), ("back-across-20", 20)])
def test_crossing_passes_the_ten_and_lands_beyond_it(item: str, tens: int) -> None:
    landed: Counter[str] = Counter()
    for p in asked(f"number-line/{item}", 800):
        low, high = sorted((p.given["start"], p.given["start"] + p.given["hops"]))
        assert low < tens < high
        landed[p.answer] += 1
    assert len(landed) == 4
    assert max(landed.values()) < 1.4 * 800 / len(landed), "no landing is likelier than another"


def test_on_goes_up_and_back_goes_down() -> None:
    for item in ("on-to-10", "on-to-20", "on-to-30", "on-across-20"):
        assert all(p.given["hops"] > 0 and " forward" in p.say for p in asked(f"number-line/{item}", 60))
    for item in ("back-to-10", "back-to-20", "back-to-30", "back-across-20"):
        assert all(p.given["hops"] < 0 and " back" in p.say for p in asked(f"number-line/{item}", 60))
    ways = [p.given["hops"] > 0 for p in asked("number-line/across-10", 600)]
    assert 0.4 < sum(ways) / 600 < 0.6


@pytest.mark.parametrize(("item", "fact"), [("on-to-10", "5 + 2 = 7"), ("back-to-10", "7 - 2 = 5")])
def test_printed_facts_as_hops(item: str, fact: str) -> None:
    """CCSSM, Grade K introduction; 1.OA.C.5 names counting on two to add two."""
    row = printed(fact)
    hops = row["b"] if row["op"] == "+" else -row["b"]
    p = sought(f"number-line/{item}", {"start": row["a"], "hops": hops})
    assert p.answer == num2words(row["result"])


@pytest.mark.parametrize("key", HOPPING)
def test_the_line_covers_all_that_lies_ahead(key: str) -> None:
    for p in level_asked("number-line", key, 60):
        line = p.picture
        assert isinstance(line, NumberLine)
        start, end = p.given["start"], p.given["start"] + p.given["hops"]
        numbers = range(line.first, line.last + 1)
        ahead = [n for n in numbers if (n > start) == (end > start) and n != start]
        assert line.start == start and end in ahead
        assert sorted(line.hidden) == ahead
        assert line.last <= HOPPING[key][1]


def test_each_number_hides_and_each_between_is_looked_for() -> None:
    hidden = Counter(p.given["hidden"] for p in asked("number-line/which-hides", 660))
    assert set(hidden) == set(range(11)) and max(hidden.values()) < 100
    found = {p.given["find"] for p in asked("number-line/where-it-lives")}
    assert found == set(range(11)) - {0, 5, 10}, "those three can be read off the line"


def test_hops_are_forward_or_back_and_never_on() -> None:
    """ "Two hops on" is no kitchen English: the words and the cues say forward."""
    for item in ("on-to-10", "across-10", "on-across-20"):
        for p in asked(f"number-line/{item}", 100):
            said = " ".join((p.say, *(cue.text for cue in p.cues)))
            assert "hops on" not in said and "hop on" not in said
