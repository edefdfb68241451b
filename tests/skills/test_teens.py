"""Teens: K.NBT.A.1 (references/standards.toml), worked example ex35, the fact that standard prints."""

from num2words import num2words

from tests.bank import reference
from tests.skills.asking import asked, bounds, coded, example, in_week, level_asked, opens, printed, sought
from warmup.model import Prompt
from warmup.pictures.two_frames import TwoFrames


def number(p: Prompt) -> int:
    given = p.given
    return (
        given["ten"] + given["more"]
        if "more" in given
        else next(given[k] for k in ("build", "find", "number") if k in given)
    )


def test_eleven_is_ten_and_how_many_more() -> None:
    """examples.toml, ex35: one, though no one is heard in the word."""
    row = example("ex35")
    p = sought("teens/both-ways", {"number": row["given"]})
    assert p.answer == num2words(row["answer"])
    assert "eleven" in p.say.lower()


def test_the_fact_the_standard_prints_both_ways() -> None:
    """CCSSM K.NBT.A.1 prints 18 = 10 + 8."""
    row = printed("18 = 10 + 8")
    assert sought("teens/both-ways", {"ten": row["a"], "more": row["b"]}).answer == num2words(row["result"])
    assert sought("teens/both-ways", {"number": row["result"]}).answer == num2words(row["b"])


def test_a_teen_that_is_built_is_told_as_both_parts() -> None:
    """K.NBT.A.1: ten ones and some further ones; the further ones alone are taken as well."""
    for p in asked("teens/build"):
        if "build" in p.given:
            more = num2words(p.given["build"] - 10)
            assert p.answer == f"ten and {more} more" and more in p.accept
            assert not p.say.endswith(("Tell me the rest.", "left over?"))


def test_the_code_keeps_its_bounds() -> None:
    """K.NBT.A.1: from 11 to 19, ten ones and one to nine more."""
    edge = bounds("K.NBT.A.1")
    for p in coded("teens", "K.NBT.A.1"):
        assert edge["min"] <= number(p) <= edge["max"]
        assert p.given.get("ten", 10) == edge["ten"]
    assert {number(p) for p in asked("teens/build", 300)} == set(range(11, 16))
    for item in ("both-ways", "in-the-head"):
        assert {number(p) for p in asked(f"teens/{item}", 400)} == set(range(edge["min"], edge["max"] + 1))


def test_both_ways_begin_with_what_was_built() -> None:
    """The teens to fifteen, then all of them."""
    first = opens("teens/both-ways")
    for week, most in ((first + 1, 15), (first + 2, 19)):
        assert {number(p) for p in asked("teens/both-ways", 400, in_week(week))} == set(range(11, most + 1))


def test_together_and_apart_come_as_often() -> None:
    for item in ("both-ways", "in-the-head"):
        prompts = asked(f"teens/{item}", 600)
        assert 0.42 < sum("more" in p.given for p in prompts) / 600 < 0.58


def test_no_objects_means_no_picture() -> None:
    assert all(p.picture is None for p in level_asked("teens", "in-the-head"))
    for p in asked("teens/both-ways"):
        shown = TwoFrames(10, p.given["more"]) if "more" in p.given else TwoFrames(10, 0)
        assert p.picture == shown, "apart, the second frame is left empty"


def test_the_teens_misheard_as_tens_have_their_items() -> None:
    """words.toml, teen_ty: thirteen and thirty, fifteen and fifty."""
    for item in ("thirteen", "fifteen"):
        (other,) = (ty for teen, ty in reference("words")["teen_ty"]["pairs"] if num2words(teen) == item)
        for p in asked(f"teens/{item}"):
            assert num2words(number(p)) == item
            assert num2words(other) in p.watch_for


def test_fourteen_lies_beside_forty_one() -> None:
    """Teen words say the ten last, so it is written last (references/pedagogy.toml, trouble.teens)."""
    found = [p for p in asked("teens/fourteen") if "cards" in p.given]
    assert len(found) > 80
    assert all("14" in p.given["cards"] and len(set(p.given["cards"])) >= 3 for p in found)
    assert sum("41" in p.given["cards"] for p in found) == len(found)


def test_what_holds_ten_is_called_a_ten_frame() -> None:
    for key in ("build", "both-ways", "in-the-head"):
        for p in level_asked("teens", key, 60):
            texts = " ".join((p.say, p.watch_for, p.table, *(cue.text for cue in p.cues)))
            assert "tray" not in texts, texts
