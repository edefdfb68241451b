"""Sorting: K.MD.B.3 (references/standards.toml); the groups of worked example ex77."""

from collections import Counter

from num2words import num2words

from tests.oracles import sort as oracle
from tests.skills.asking import asked, bounds, example
from tests.skills.in_week import asked_in, opening
from warmup import skills
from warmup.pictures.sorted_rows import SortedRows
from warmup.skills.sort import OPENS, ORDER_OPENS, ordered


def test_no_group_is_larger_than_the_code_has_it() -> None:
    """K.MD.B.3, its footnote: ten at most in a group."""
    most = bounds("K.MD.B.3")["category_count_max"]
    sizes: list[int] = []
    for item in ("count-each", "most-not-biggest", "order-groups"):
        for p in asked_in(36, f"sort/{item}"):
            sizes += Counter(p.given.get("mixed", ())).values()
            sizes += dict(p.given.get("groups", {})).values()
    assert max(sizes) == most
    assert min(sizes) >= 1
    assert all("K.MD.B.3" in level.codes for level in skills.SKILLS["sort"].levels)


def test_cats_dogs_and_fish_in_order() -> None:
    """examples.toml, ex77: 4 cats, 7 dogs, 2 fish."""
    groups = example("ex77")["given"]
    for fewest, name in ((True, "fewest first"), (False, "most first")):
        answer = ", ".join(ordered(groups, fewest))
        assert oracle.check("order-groups", {"groups": groups, "order": name}, answer, ()) is None
    assert ordered(groups, True) == ["fish", "cats", "dogs"]


def test_the_picture_holds_what_is_counted() -> None:
    for p in asked("sort/count-each"):
        assert isinstance(p.picture, SortedRows)
        seen = Counter(piece for row in p.picture.rows for piece in row)
        assert seen == Counter(p.given["mixed"])
        assert p.answer == num2words(seen[p.given["count"]])
        assert p.say.count(p.given["count"]) == 1
    assert len({p.answer for p in asked_in(36, "sort/count-each")}) == 9, "two to ten"


def test_most_is_not_biggest() -> None:
    longest = 0
    for p in asked("sort/most-not-biggest", 300):
        groups, big = p.given["groups"], p.given["big"]
        most = max(groups, key=groups.get)
        assert list(groups.values()).count(groups[most]) == 1
        assert most != big and p.answer == f"{most}s"
        assert isinstance(p.picture, SortedRows) and p.picture.big == big
        assert {row[0]: len(row) for row in p.picture.rows} == groups
        longest += 2 * groups[big] >= groups[most]
    assert longest > 100, "often the row of the biggest is as long as the one with the most"


def test_a_rule_takes_some_and_leaves_some_and_colors_come_as_often_as_kinds() -> None:
    for item in ("put-together", "does-not-fit"):
        colors = 0
        for p in asked(f"sort/{item}", 600):
            fits = [name for name in p.given["things"] if p.given["rule"] in name.split()]
            assert 0 < len(fits) < len(p.given["things"])
            assert len(set(p.given["things"])) == len(p.given["things"])
            colors += (
                p.given["things"][0].split()[0] == p.given["rule"] or fits[0].split()[0] == p.given["rule"]
            )
        assert 0.4 < colors / 600 < 0.6


def test_only_one_rule_can_be_guessed() -> None:
    """Whatever all that go in share, and what stays out has not, is one color or one kind."""
    for p in asked("sort/guess-rule", 400):
        shared = set.intersection(*(set(name.split()) for name in p.given["in"]))
        outside = {word for name in p.given["out"] for word in name.split()}
        assert len(shared - outside) == 1
        assert len(shared) == 1, "what goes in is alike in nothing else"


def test_what_stays_out_is_nearly_right() -> None:
    """It shares its kind or color with something that goes in, so that no other rule will do."""
    for p in asked("sort/guess-rule"):
        inside = {word for name in p.given["in"] for word in name.split()}
        assert all(set(name.split()) & inside for name in p.given["out"])


def test_groups_are_ordered_both_ways_about_as_often() -> None:
    fewest = [p.given["order"] == "fewest first" for p in asked("sort/order-groups", 600)]
    assert 0.4 < sum(fewest) / 600 < 0.6
    for p in asked("sort/order-groups"):
        assert len(set(p.given["groups"].values())) == 3
        first = "fewest" if p.given["order"] == "fewest first" else "most"
        assert f"{first} first" in p.say or f"from {first} to" in p.say


def test_a_rule_guessed_otherwise_and_still_right_is_accepted() -> None:
    """Two hats are clothes as well, unless a sock stays out; and what stays out is not among them."""
    seen = set()
    for p in asked("sort/guess-rule", 400):
        kinds = [name.split()[1] for name in p.given["in"]]
        (out,) = p.given["out"]
        worn = {"sock", "hat"}
        clothes = {*kinds} <= worn and out.split()[1] not in worn
        assert ("clothes" in p.accept) == clothes
        by_kind = len(set(kinds)) == 1
        assert (f"not a {out.split()[1]}" if by_kind else f"not {out.split()[0]}") in p.accept
        seen.add(clothes)
    assert seen == {True, False}


def test_what_is_only_heard_is_short() -> None:
    """Twelve words at most, since there is nothing to look at."""
    for item in ("put-together", "does-not-fit", "guess-rule", "order-groups"):
        for p in asked(f"sort/{item}", 300):
            assert len(p.say.split()) <= 12 and p.picture is None, p.say


def test_groups_are_small_until_their_level_has_been_open() -> None:
    assert (opening("sort:count-groups"), opening("sort:order-groups")) == (OPENS, ORDER_OPENS)
    for week in (1, OPENS, OPENS + 1):
        heaps = [Counter(p.given["mixed"]) for p in asked_in(week, "sort/count-each")]
        assert max(max(heap.values()) for heap in heaps) == 6
    heaps = [Counter(p.given["mixed"]) for p in asked_in(OPENS + 2, "sort/count-each")]
    assert max(max(heap.values()) for heap in heaps) == 10
    for week in (1, ORDER_OPENS, ORDER_OPENS + 1):
        assert max(max(p.given["groups"].values()) for p in asked_in(week, "sort/order-groups")) == 6
    late = asked_in(ORDER_OPENS + 2, "sort/order-groups")
    assert max(max(p.given["groups"].values()) for p in late) == 10


def test_the_biggest_taken_for_the_most_makes_the_order_wait() -> None:
    _, count, order = skills.SKILLS["sort"].levels
    assert count.misconceptions == ("most-not-biggest",)
    assert {"sort/most-not-biggest", "compare/fewer"} == {*order.waits_on}
    assert order.variants[0] == "order-groups"
