"""The whole bank of prompts: every skill, level and item, judged by one bar."""

import datetime as dt
import re
import tomllib
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

from tests.bank import RULES, asked, grade, judge, prompts, reference, spelled
from tests.bank.kitchen import names_animal, read
from tests.bank.report import DIFFERENT, FEW
from warmup import skills
from warmup.journal.routine_json import routine_from, routine_text
from warmup.model import Morning, Prompt, Routine
from warmup.pictures.scale import Scale
from warmup.randomness import SeededRandom
from warmup.schoolyear import school_year
from warmup.skills import SKILLS, locate

ROOT = Path(__file__).parents[2]
YEAR = tomllib.loads((ROOT / "routines" / "year.toml").read_text("utf-8"))
WEEK_20 = school_year(dt.date(2026, 8, 31), (0, 1, 2, 3)).morning(dt.date(2027, 1, 20))


def test_all_skills_and_levels_of_the_year_are_there_and_no_others() -> None:
    """The file that unlocks them names every level once."""
    in_file = [f"{skill}:{level}" for skill, levels in YEAR["skills"].items() for level in levels]
    assert sorted(in_file) == sorted(skills.levels())
    assert {skill.partition(":")[0] for skill in in_file} == set(SKILLS)


def test_a_skill_is_named_for_its_file_and_found_by_that_name() -> None:
    assert {name: skill.id for name, skill in SKILLS.items()} == {name: name for name in SKILLS}
    assert "base" not in SKILLS and "-home" not in SKILLS and "count_on" not in SKILLS


@pytest.mark.slow
@pytest.mark.parametrize("skill", SKILLS)
def test_a_skill_is_sound(skill: str) -> None:
    """Sixty prompts an item: nothing wrong, no repeating, no answer that a child could guess favored.

    The reading bar is that of pedagogy.toml; no answer is given away; each is computed again by other code.
    """
    found = judge(skill, 60)
    assert not found.wrong, found.wrong.most_common(5)
    assert not found.broken, {rule: faults.most_common(3) for rule, faults in found.rules.items()}
    for level in SKILLS[skill].levels:
        assert len(found.wordings[level.key]) >= 3, level.key
        if f"{skill}:{level.key}" not in FEW and len(found.distinct[level.key]) < DIFFERENT:
            more = {f"{p.say}|{p.given}" for p in prompts(skill, 250) if p.level == level.key}
            assert len(more) >= DIFFERENT, f"{level.key}: only {len(more)} different prompts"
    for item, answers in found.answers.items():
        at = locate(item)
        guess = at.level.guess_of(at.name)
        if guess >= 0.33 and len(answers) > 1:
            most, total = answers.most_common(1)[0][1], sum(answers.values())
            # Four standard deviations of a fair draw: a real lean shows, chance does not.
            assert most / total <= max(guess, 0.5) + 4 * (0.25 / total) ** 0.5, (item, answers.most_common(3))


@cache
def drawn() -> tuple[tuple[Prompt, Morning], ...]:
    """A dozen prompts of every item, each with its morning."""
    return tuple(each for skill in SKILLS for each in asked(skill, 12))


@pytest.mark.slow
@pytest.mark.parametrize("rule", RULES)
def test_no_prompt_of_the_bank_breaks_the_rule(rule: str) -> None:
    """A rule by its name; ``tests.bank.rules`` says what each looks for."""
    faults = Counter(
        f"{prompt.item}: {fault} — {prompt.say}"
        for prompt, morning in drawn()
        for fault in RULES[rule](prompt, morning)
    )
    assert not faults, faults.most_common(5)


@pytest.mark.slow
def test_the_stuffed_animal_takes_part_in_one_prompt_of_twenty_at_most() -> None:
    """By the name the family gives it, and in each skill in no more than one of four."""
    part = [prompt.skill for prompt, morning in drawn() if names_animal(prompt, morning.animal)]
    assert part and len(part) <= len(drawn()) / 20
    of_each = Counter(prompt.skill for prompt, _ in drawn())
    assert all(times <= of_each[skill] / 4 for skill, times in Counter(part).items()), Counter(part)


def test_the_stuffed_animal_goes_by_the_name_the_family_gives_it() -> None:
    day = WEEK_20._replace(animal="Mopsy")
    said = [
        text
        for item in skills.item_names()
        if skills.askable(item, day)
        for n in range(12)
        for _, text in read(skills.prompt(item, day, SeededRandom("animal", item, n)))
    ]
    assert any("Mopsy" in text for text in said)
    assert not [text for text in said if re.search(r"\bBear\b", text)]


def test_the_seesaw_has_at_least_eight_pairs_of_things() -> None:
    pairs = {
        frozenset((prompt.picture.left, prompt.picture.right))
        for prompt in prompts("measure", 200)
        if isinstance(prompt.picture, Scale)
    }
    assert len(pairs) >= 8


@pytest.mark.parametrize("skill", SKILLS)
def test_a_skill_is_laid_out_as_it_should_be(skill: str) -> None:
    levels = SKILLS[skill].levels
    names = [name for level in levels for name in level.items]
    assert len(names) == len(set(names)) and [level.key for level in levels] == list(YEAR["skills"][skill])
    for level in levels:
        assert level.variants and level.seconds in (20, 40, 60, 120) and 0 <= level.guess <= 0.5
        assert {name for name, _ in level.guesses} | set(level.slower) <= set(level.items)
        assert {*level.codes, *level.toward} <= set(reference("standards")["std"]), (
            "a code that the references do not hold"
        )
    everything = [*names, *(level.key for level in levels), skill]
    assert all(name == name.lower() and " " not in name for name in everything)


@pytest.mark.slow
def test_the_bank_reads_as_a_five_year_old_hears() -> None:
    """Pooled over the whole bank, as pedagogy.toml says a single prompt cannot be judged."""
    bar = reference("pedagogy")["readability"]["bar"]
    says = [prompt.say for skill in SKILLS for prompt in prompts(skill, 12)]
    pooled, beats = grade(says)
    assert pooled <= bar["max_pooled_fk"] and beats <= bar["max_pooled_syllables_per_word"], (pooled, beats)
    assert sum(len(spelled(say)) for say in says) / len(says) <= 14


# What a standard prints as its largest number, and the given values that count toward it.
BOUNDS = {
    "K.CC.A.1": 100, "K.CC.A.2": 100, "K.CC.C.6": 10, "K.CC.C.7": 10, "K.OA.A.2": 10, "K.OA.A.3": 10,
    "K.OA.A.4": 10, "K.OA.A.5": 5, "K.NBT.A.1": 19, "1.NBT.A.1": 120, "2.OA.C.3": 20, "K.MD.B.3": 10,
    "1.OA.C.6": 20, "1.OA.A.1": 20, "1.NBT.B.3": 99, "1.NBT.B.2": 99,
    "1.NBT.B.2.C": 90,
}  # fmt: skip


def numbers(value: object) -> list[int]:
    """Every whole number in a value of ``given``."""
    if isinstance(value, bool) or value is None or isinstance(value, str):
        return []
    if isinstance(value, int):
        return [value]
    if isinstance(value, dict):
        return [n for each in value.values() for n in numbers(each)]
    return [n for each in value for n in numbers(each)] if isinstance(value, tuple | list) else []


@pytest.mark.parametrize("code", BOUNDS)
def test_no_prompt_goes_past_the_bound_of_its_code(code: str) -> None:
    """Bounds from standards.toml; a level with several codes keeps the widest of them."""
    checked = 0
    for skill in SKILLS.values():
        for level in skill.levels:
            codes = (*level.codes, *level.toward)
            if code not in codes or any(other not in BOUNDS for other in codes):
                continue
            most = max(BOUNDS[each] for each in codes)
            for name in level.items:
                for n in range(40):
                    item = f"{skill.id}/{name}"
                    given = skills.prompt(item, WEEK_20, SeededRandom("bounds", item, n)).given
                    said = {key: value for key, value in given.items() if key != "seed"}
                    assert max(numbers(said), default=0) <= most, (item, given)
                    checked += 1
    assert checked, f"no level claims {code}"


def test_every_prompt_survives_its_journey_through_json() -> None:
    for item in skills.item_names():
        if not skills.askable(item, WEEK_20):
            continue
        prompt = skills.prompt(item, WEEK_20, SeededRandom("json", item))
        text = routine_text(Routine("Pip", WEEK_20, "daily", (prompt,)))
        again = routine_from(text)
        assert routine_text(again) == text
        assert again.prompts[0].picture == prompt.picture
        assert again.prompts[0].cues == prompt.cues


def test_no_prompt_takes_longer_than_its_item_says() -> None:
    """The engine keeps a morning short by what the items say."""
    for item in skills.item_names():
        at = locate(item)
        if skills.askable(item, WEEK_20):
            most = max(skills.prompt(item, WEEK_20, SeededRandom("time", item, n)).seconds for n in range(25))
            assert most <= at.level.seconds_of(at.name), item


@pytest.mark.slow
def test_every_word_is_common_or_of_the_home() -> None:
    """Zipf 4.0 by vocabulary.toml (wordfreq 3.1.1), as pedagogy.toml asks, or let in by name."""
    table, least = reference("vocabulary"), reference("pedagogy")["readability"]["bar"]["min_zipf"]
    common, home = table["zipf"]["words"], set(table["home"]["words"])
    said = {word.lower() for skill in SKILLS for prompt in prompts(skill, 12) for word in spelled(prompt.say)}
    assert sorted(said - set(common)) == [], "a new word: look it up, and let it in only if a child has it"
    assert sorted(word for word in said if common[word] < least and word not in home) == []
    assert len(home) < len(common) / 4
