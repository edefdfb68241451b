"""subitize: the published benchmark of five at a glance, and pictures counted from their pixels."""

from collections import Counter

from tests.bank import reference
from tests.pictures.blobs import pieces, pixels
from tests.skills.asking import LATE, asked, in_week, opens
from warmup import skills
from warmup.english import number_word
from warmup.model import Morning, Prompt
from warmup.pictures import Ink
from warmup.pictures.dots import Dots

SKILL = skills.SKILLS["subitize"]
ITEMS = [name for level in SKILL.levels for name in level.items]


def drawn(item: str, count: int = 120, day: Morning = LATE) -> list[Prompt]:
    return asked(f"subitize/{item}", count, day)


def test_the_answer_is_what_the_picture_holds() -> None:
    """Solid pieces on the picture, counted from its pixels at both small stages."""
    for item in ITEMS:
        for prompt in drawn(item, 15):
            assert prompt.picture is not None
            for pane in ((40, 18), (56, 9)):
                seen = len(pieces(pixels(prompt.picture.draw(*pane), Ink.FIRST)))
                assert prompt.answer == number_word(seen)


def test_no_group_is_larger_than_five() -> None:
    """Head Start Early Learning Outcomes Framework (2015), by 60 months: sees up to five (pedagogy.toml)."""
    limit = reference("pedagogy")["benchmark"]["headstart_60m"]["subitize_to"]
    groups = [group for item in ITEMS for p in drawn(item) for group in p.given["groups"]]
    assert max(groups) == limit


def test_one_to_three_come_first() -> None:
    """The first groups seen without counting are one to three (pedagogy.toml, claims of that kind)."""
    assert {p.given["groups"][0] for p in drawn("to-3")} == {1, 2, 3}


def test_totals_keep_to_ten() -> None:
    """K.OA.A.3, which the upper levels lead to, ends at ten (standards.toml)."""
    most = reference("standards")["std"]["K.OA.A.3"]["bounds"]["max"]
    totals = [sum(p.given["groups"]) for item in ("five-and-some", "two-groups") for p in drawn(item, 300)]
    assert max(totals) == most
    assert set(range(6, 11)) <= set(totals)


def test_groups_are_small_while_a_level_is_new() -> None:
    """Two weeks of one to three beside the five, or on either side; then to five."""
    for item in ("five-and-some", "two-groups"):
        first = opens(f"subitize/{item}")
        for week, most in ((first + 1, 3), (first + 2, 5)):
            groups = [p.given["groups"] for p in drawn(item, 300, in_week(week))]
            assert max(group for pair in groups for group in pair[item == "five-and-some" :]) == most


def test_every_level_leads_toward_numbers_seen_as_parts() -> None:
    """K.OA.A.3 is no code of any of them: nothing is split here (standards.toml)."""
    assert all(not level.codes and level.toward == ("K.OA.A.3",) for level in SKILL.levels)


def test_scattered_four_and_five_are_scattered_and_nine_is_one_short_of_ten() -> None:
    for item, count in (("scattered-four", 4), ("scattered-five", 5)):
        for prompt in drawn(item, 20):
            assert isinstance(prompt.picture, Dots)
            assert (prompt.picture.pattern, prompt.picture.number) == ("scatter", count)
    assert {sum(p.given["groups"]) for p in drawn("nine")} == {9}


def test_it_is_shown_and_covered_by_the_adult_not_by_the_words() -> None:
    for item in ITEMS:
        for prompt in drawn(item, 10):
            assert prompt.do == "Show it, count to two, cover it." and "cover" in prompt.table
            assert "cover it." not in prompt.watch_for and "cover" not in prompt.say.lower()


def test_no_answer_is_the_safe_one() -> None:
    first = Counter(p.answer for p in drawn("to-3", 600))
    assert all(170 <= first[word] <= 230 for word in ("one", "two", "three"))
    dice = Counter(p.answer for p in drawn("dice", 600))
    assert all(160 <= dice[word] <= 240 for word in ("four", "five"))
    more_left = [p.given["groups"][0] > p.given["groups"][1] for p in drawn("two-groups", 600)]
    more_right = [p.given["groups"][0] < p.given["groups"][1] for p in drawn("two-groups", 600)]
    assert abs(sum(more_left) - sum(more_right)) < 80


def test_no_cue_says_a_count_it_asks_for() -> None:
    for item in ITEMS:
        for prompt in drawn(item):
            for cue in prompt.cues:
                words = (
                    cue.text.lower().replace("“", " ").replace("…", " ").replace("”", " ").replace(",", " ")
                )
                assert prompt.answer not in words.replace(".", " ").split()
