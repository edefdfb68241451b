"""What a family wrote itself, as a skill: made of the file and handed in, never in the registry."""

import datetime as dt
import unicodedata

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from tests.mornings import morning
from warmup import skills
from warmup.model import OWN_SKILL, Strand, is_own
from warmup.randomness import SeededRandom
from warmup.skills.own import CUES, LONGEST_NAME, OwnPrompt, is_name, name_from, own

DOOR = OwnPrompt(
    "front-door",
    "What number stands on our front door?",
    "forty-two",
    ("Picture our front door.",),
    Strand.NUMBER,
    9,
    "Turning the two digits round.",
    "a walk to the door",
    ("four two",),
)
DUCK = OwnPrompt("duck", "Finish: one little duck…", "two little ducks")


def test_no_skill_that_comes_along_is_called_so() -> None:
    assert OWN_SKILL not in skills.SKILLS and not any(map(is_own, skills.item_names()))
    assert not any(map(is_own, skills.levels()))
    assert is_own("own/duck") and is_own("own:duck") and not is_own("owner/duck") and not is_own("own")


def test_each_prompt_is_an_item_of_a_level_of_its_own() -> None:
    made = own((DOOR, DUCK))
    assert [(item.id, item.level_id, item.strand, item.week) for item in made.items] == [
        ("own/front-door", "own:front-door", "number", 9),
        ("own/duck", "own:duck", "counting", 1),
    ]
    assert made.weeks == {"own:front-door": 9, "own:duck": 1}
    assert {(item.guess, item.seconds, item.level, item.ends, item.codes) for item in made.items} == {
        (0.0, 20, 1, False, ())
    }
    assert [item.hands for item in made.items] == [True, False]
    assert made.skill.private and not any(skill.private for skill in skills.SKILLS.values())


@pytest.mark.parametrize("seed", range(5))
def test_its_words_are_asked_as_they_stand(seed: int) -> None:
    made = own((DOOR, DUCK))
    prompt = skills.prompt(
        "own/front-door", morning(dt.date(2026, 10, 5)), SeededRandom(seed, avoid="a"), "why", made.skill
    )
    assert (prompt.say, prompt.answer, prompt.accept) == (DOOR.say, DOOR.answer, DOOR.accept)
    assert (prompt.wording, prompt.seconds, prompt.guess, prompt.why) == ("a", 20, 0.0, "why")
    assert (prompt.watch_for, prompt.table, prompt.picture) == (DOOR.watch_for, DOOR.table, None)
    assert [cue.text for cue in prompt.cues] == [*DOOR.cues, *CUES[1:]]
    assert prompt.given == {"name": "front-door"}


@pytest.mark.parametrize("count", range(4))
def test_cues_that_are_missing_are_filled_up_to_three(count: int) -> None:
    mine = tuple(f"Mine, {n}." for n in range(count))
    made = own((DUCK._replace(cues=mine),))
    prompt = skills.prompt("own/duck", morning(dt.date(2026, 10, 5)), SeededRandom(1), own=made.skill)
    assert [cue.text for cue in prompt.cues] == [*mine, *CUES[count:]]


def test_a_name_is_words_for_the_adult_whether_it_still_is_in_the_file_or_not() -> None:
    at = skills.locate("own/front-door")
    assert at.words() == "your own, front door" and at.level_id == "own:front-door" and at.skill.private
    assert skills.known("own/front-door") and not skills.known("own/Front Door") and not skills.known("own/")
    for wrong in ("own/", "own/Front Door", "own/-", f"own/{'x' * 41}", "own/[red]"):
        with pytest.raises(KeyError):
            skills.locate(wrong)
    with pytest.raises(KeyError):
        skills.prompt("own/front-door", morning(dt.date(2026, 10, 5)), SeededRandom(1))


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("Our Front Door!", "our-front-door"),
        ("front-door", "front-door"),
        ("  When is  your birthday? ", "when-is-your-birthday"),
        ("¿Cómo se llama tu calle?", "cómo-se-llama-tu-calle"),
        ("हमारा पता क्या है?", "हमारा-पता-क्या-है"),
        ("[red]No[/red] 3½", "red-no-red-31-2"),
        ("What is the number that stands on our own front door?", "what-is-the-number-that-stands-on-our"),
        ("x" * 50, "x" * 40),
        ("…!?", ""),
    ],
)
def test_names_made_from_words(text: str, name: str) -> None:
    assert name_from(text) == name


@given(st.text(max_size=80))
@example("İİ̇" * 30)
@example("ﷺ" * 30)
@example("ΐ ΰ ß ﬃ ŉ")
@example("a\u0308\u1ffc\u0308b")
def test_a_name_from_any_words_is_a_name_or_nothing(text: str) -> None:
    name = name_from(text)
    assert len(name) <= LONGEST_NAME and name_from(name) == name
    assert is_name(name) is bool(name)
    assert all(c == "-" or unicodedata.category(c)[0] in "LNM" for c in name)
    assert not name.startswith("-") and not name.endswith("-") and "--" not in name
