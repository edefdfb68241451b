"""Stories: the table of situations, K.OA.A.2, 1.OA.A.1 (references/standards.toml), ex77, printed facts."""

from collections import Counter

import pytest
from num2words import num2words

from tests.bank import reference, spelled
from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, printed, sought
from warmup import skills
from warmup.model import Prompt

EARLY = ("act-to-5", "to-10", "both-parts")


def total(p: Prompt) -> int:
    """The largest number in the story, its answer counted in."""
    given = p.given
    if given["situation"] == "add to, result unknown":
        return int(given["start"] + given["came"])
    if given["situation"] == "put together, total unknown":
        return int(given["one"] + given["other"])
    return max(value for value in given.values() if isinstance(value, int))


def test_every_situation_of_the_table_is_told_in_its_years() -> None:
    """CCSSM glossary, Table 1 (standards.toml, situations)."""
    table = reference("standards")["situations"]
    early = {p.given["situation"] for key in EARLY for p in level_asked("stories", key)}
    late = {p.given["situation"] for p in level_asked("stories", "change-and-compare")}
    assert early == set(table["kindergarten"])
    assert late == set(table["later"])


def test_totals_keep_the_bounds() -> None:
    """K.OA.A.2: to ten. 1.OA.A.1: to twenty; ours stop at ten there too. Acted stories stop at five."""
    assert max(map(total, level_asked("stories", "act-to-5"))) == 5
    assert max(map(total, coded("stories", "K.OA.A.2"))) == bounds("K.OA.A.2")["within"]
    assert max(map(total, coded("stories", "1.OA.A.1"))) <= bounds("1.OA.A.1")["within"]


@pytest.mark.parametrize(
    ("item", "fact", "names"),
    [
        ("join-5", "5 = 2 + 3", ("start", "came")),
        ("join-10", "5 + 2 = 7", ("start", "came")),
        ("together-10", "5 + 2 = 7", ("one", "other")),
        ("leave-10", "7 - 2 = 5", ("start", "went")),
        ("how-many-more", "10 - 8 = 2", ("larger", "smaller")),
    ],
)
def test_printed_facts_as_stories(item: str, fact: str, names: tuple[str, str]) -> None:
    """CCSSM, as each row of examples.toml, printed, names."""
    row = printed(fact)
    p = sought(f"stories/{item}", dict(zip(names, (row["a"], row["b"]), strict=True)))
    assert p.answer == num2words(row["result"])


def test_how_many_more_of_one_than_of_the_other() -> None:
    """examples.toml, ex77: seven dogs, four cats."""
    row = example("ex77")
    p = sought("stories/how-many-more", {"larger": row["given"]["dogs"], "smaller": row["given"]["cats"]})
    assert p.answer == num2words(row["answer"])


def test_more_does_not_mean_add() -> None:
    """Wherever the word is said, the numbers told are not to be added."""
    said = [
        p
        for key in (*EARLY, "change-and-compare")
        for p in level_asked("stories", key)
        if "more" in p.say.lower()
    ]
    assert len(said) > 200
    for p in said:
        numbers = [value for value in p.given.values() if isinstance(value, int)]
        assert p.answer != num2words(sum(numbers))
    assert all("ore" in p.say for p in asked("stories/more-is-not-add"))


@pytest.mark.parametrize(
    ("key", "early", "late"),
    [("act-to-5", 4, 5), ("to-10", 8, 10), ("both-parts", 6, 10), ("change-and-compare", 6, 10)],
)
def test_totals_begin_small(key: str, early: int, late: int) -> None:
    (level,) = (level for level in skills.SKILLS["stories"].levels if level.key == key)
    for item in level.items:
        first = opens(f"stories/{item}")
        for week, most in ((first + 1, early), (first + 2, late)):
            assert max(map(total, asked(f"stories/{item}", 200, in_week(week)))) == most, item


def test_no_word_gives_the_sum_away() -> None:
    for level in skills.SKILLS["stories"].levels:
        for p in level_asked("stories", level.key):
            assert not {"altogether", "total", "sum", "plus", "minus", "add"} & set(spelled(p.say.lower()))


def test_only_its_own_item_ends_at_zero() -> None:
    """pedagogy.toml, trouble.zero: zero is for how many are left."""
    assert {p.answer for p in asked("stories/nothing-left")} == {"zero"}
    for item in ("join-5", "leave-5", "join-10", "leave-10", "change", "more-is-not-add", "how-many-more"):
        assert "zero" not in {p.answer for p in asked(f"stories/{item}")}


def test_stories_happen_in_many_places() -> None:
    for level in skills.SKILLS["stories"].levels:
        assert len({p.wording for p in level_asked("stories", level.key)}) >= 8


def test_no_answer_is_a_good_guess_and_the_larger_comes_first_half_the_time() -> None:
    for item in ("join-10", "leave-10", "together-10", "change", "more-is-not-add", "how-many-more"):
        answers = Counter(p.answer for p in asked(f"stories/{item}", 600))
        assert max(answers.values()) / 600 < 0.27
    first = [
        p.say.lower().find(num2words(p.given["larger"])) < p.say.lower().find(num2words(p.given["smaller"]))
        for p in asked("stories/how-many-more", 600)
    ]
    assert 0.4 < sum(first) / 600 < 0.6


def test_each_of_the_two_kinds_is_some() -> None:
    for item in ("both-parts", "another-way"):
        for p in asked(f"stories/{item}"):
            key = [form.split(" and ") for form in (p.answer, *p.accept)]
            assert all("zero" not in pair for pair in key)
            if shown := p.given.get("shown"):
                turned = [num2words(part) for part in reversed(shown)]
                assert key[0] != turned or len(key) == 1, "not the same two turned round to show first"
                assert [num2words(part) for part in shown] not in key


def test_some_are_two_at_least_and_the_rest_are_told_as_the_rest() -> None:
    """ "Some hopped out" when one did, or "Two are brown. How many are white?", has no one answer."""
    for item in ("change", "more-is-not-add"):
        for p in asked(f"stories/{item}", 400):
            assert p.answer not in ("zero", "one"), p.say
            if p.given["situation"] == "put together, addend unknown":
                assert "the rest were" in p.say or "the rest are" in p.say, p.say
    for p in asked("stories/both-parts"):
        assert "one" not in p.answer.split() or p.given["total"] < 4, "the first way shown has some of each"


def test_a_story_has_something_to_act_it_out_with() -> None:
    for level in skills.SKILLS["stories"].levels:
        for p in level_asked("stories", level.key, 30):
            assert p.do == "Set out some toys, to act it out." and "toys" in p.table
