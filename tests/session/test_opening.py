"""The opening of a morning: true of every date and family, sayable, and no answer to a prompt beside it."""

import datetime as dt
import itertools
import re
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from tests.bank import careless, reference, sentences, spelled, unreadable
from tests.bank.kitchen import unkitchenly, unsafe
from tests.bank.numbers_said import MOST, numbers_said
from tests.bank.rules import uncapped
from tests.bank.secrets import says, told
from tests.household import FAMILY, fixed_prompts
from tests.mornings import morning
from tests.oracles.opening import Truth, untrue
from warmup import skills
from warmup.config.family import CountdownRule, Family
from warmup.config.places import Places
from warmup.engine.engine import build
from warmup.engine.memory import Knowledge
from warmup.engine.things import Household
from warmup.english import MONTHS, number_word, ordinal_word
from warmup.model import Choice, Countdown, Cue, DayKind, Item, ItemId, LevelId, Morning, Opening, SlotKind
from warmup.randomness import SeededRandom
from warmup.session.context import open_context
from warmup.session.opening import facts, opening, tells

NUMBER_WORDS = tuple(number_word(n) for n in range(20)) + tuple(ordinal_word(n) for n in range(1, 20))
NAMES = {"the lake": "June 4", "Grandma’s visit": "October 13", "Pip’s birthday": "February 29"}
ANY = fixed_prompts()[0]
DAYS = tuple(CountdownRule(name, yearly=yearly) for name, yearly in NAMES.items())


def day(year: int, month: int, number: int) -> dt.date:
    return dt.date(year, month, number)


FAMILIES = {
    "four mornings": FAMILY._replace(countdowns=DAYS),
    "days off and days beside": FAMILY._replace(
        off=((day(2026, 11, 23), day(2026, 11, 27)), (day(2026, 12, 19), day(2027, 1, 4))),
        extra=(day(2026, 12, 26), day(2027, 1, 2)),
        countdowns=(*DAYS, CountdownRule("the first snow soup", day(2027, 1, 14))),
    ),
    "seven mornings over a leap day": FAMILY._replace(
        first_day=day(2027, 9, 6), weekdays=(0, 1, 2, 3, 4, 5, 6), countdowns=DAYS
    ),
    "Saturday and Sunday": FAMILY._replace(first_day=day(2026, 9, 5), weekdays=(5, 6)),
    "one morning a week": FAMILY._replace(weekdays=(2,), off=((day(2027, 2, 1), day(2027, 6, 30)),)),
    "begun in week nineteen": FAMILY._replace(first_day=day(2027, 1, 12), first_week=19),
    "five mornings from a Wednesday": FAMILY._replace(first_day=day(2027, 9, 1), weekdays=(0, 1, 2, 3, 4)),
}
THREE_YEARS = tuple(day(2026, 7, 1) + dt.timedelta(n) for n in range(3 * 365 + 1))


def school_days(family: Family) -> list[dt.date]:
    """The school days of a family's year, day by day."""
    ahead = (family.first_day + dt.timedelta(n) for n in range(3 * 366))
    planned = {
        each
        for each in ahead
        if each.weekday() in family.weekdays and not any(a <= each <= b for a, b in family.off)
    }
    besides = {each for each in family.extra if each >= family.first_day}
    return sorted(planned | besides)[: (37 - family.first_week) * len(family.weekdays)]


def mornings(family: Family) -> Iterator[tuple[Morning, Truth]]:
    """Three years of dates as the program sees them, and as this file does."""
    context = open_context(Places(Path("none"), Path("none")), family, family.began, None, saved=False)
    school, before = school_days(family), (family.first_week - 1) * len(family.weekdays)
    matters = [
        (each, rule.name)
        for each in (THREE_YEARS[0] + dt.timedelta(n) for n in range(len(THREE_YEARS) + 61))
        for rule in family.countdowns
        if each == rule.date or f"{each:%B} {each.day}" == rule.yearly
    ]
    for date in THREE_YEARS:
        days = {name: each for each, name in reversed(matters) if each >= date}
        yield context.morning(date), Truth(date, school, before, days)


@pytest.mark.slow
@pytest.mark.parametrize("family", FAMILIES.values(), ids=FAMILIES)
def test_every_fact_of_every_date_is_true_and_sayable(family: Family) -> None:
    """Each sentence said again by other code; a sentence that it does not know is a fault as well."""
    said: dict[str, list[str]] = {}
    for at, truth in mornings(family):
        found = list(facts(at, "Bean"))
        assert found, truth.date
        for fact in found:
            assert not (wrong := untrue(fact.say, truth)), (truth.date, wrong)
            said.setdefault(fact.say, []).append(fact.table)
    faults = {say: bad for say in said if (bad := badly_said(say, said[say][0]))}
    assert not faults, list(faults.items())[:5]
    assert len(said) > 300


@cache
def badly_said(say: str, table: str) -> tuple[str, ...]:
    """What of the bank's rules of wording an opening misses."""
    as_prompt = ANY._replace(
        skill="date", say=say, table=table, do="", watch_for="", answer="", working="", picture=None,
        cues=(Cue(""), Cue(""), Cue("")),
    )  # fmt: skip
    wrong = [*unreadable(say), *careless(as_prompt), *uncapped(as_prompt)]
    wrong += [*unkitchenly(as_prompt), *unsafe(as_prompt)]
    wrong += [f"{len(sentences(say))} sentences"] if len(sentences(say)) > 2 else []
    wrong += [f"{len(numbers_said(say))} numbers"] if len(numbers_said(say)) > MOST else []
    words = reference("vocabulary")["zipf"]["words"]
    names = {word.lower() for name in (*NAMES, "first snow soup") for word in spelled(name)}
    new = [f"a new word: {w}" for w in spelled(say.lower()) if w not in words and w not in names]
    return (*wrong, *new)


def test_the_rules_of_wording_can_fail() -> None:
    assert badly_said("this is a very long sentence that goes on and on and on.", "straws")
    assert badly_said("One. Two. Three.", "") and badly_said("One, two, three, four.", "")
    assert not badly_said("Today is Tuesday, March second.", "")


def test_the_recomputation_can_fail() -> None:
    truth = Truth(day(2027, 3, 2), school_days(FAMILY), 0, {})
    assert not untrue("Today is Tuesday, March second. School day one hundred six: add a straw.", truth)
    assert untrue("Today is Tuesday, March third. School day ninety-nine: add a straw.", truth) == [
        "Today is Tuesday, March third.",
        "School day ninety-nine: add a straw.",
    ]
    assert untrue("The sky is blue.", truth) == ["The sky is blue."]


SCHOOL_DAY_40 = morning(day(2026, 11, 5), 40)


@pytest.mark.parametrize(
    ("at", "said"),
    [
        (morning(day(2026, 8, 31), 1), "School starts today! Put down our first straw."),
        (SCHOOL_DAY_40, "School day forty. Ten loose straws make a new bundle."),
        (morning(day(2027, 3, 9), 100), "School day one hundred! Put ten bundles on the table."),
    ],
)
def test_a_day_that_stands_out_speaks_of_it(at: Morning, said: str) -> None:
    assert opening(at, (), child="Bean") == Opening(said, "straws and bands")


def test_where_a_prompt_asks_what_makes_the_day_stand_out_it_is_not_said() -> None:
    hundredth = morning(day(2027, 3, 9), 100)
    asked = skills.prompt("school-day/to-the-hundredth", hundredth, SeededRandom("opening"))
    assert asked.answer == "ten"
    told_nothing = opening(hundredth, (asked,), child="Bean")
    assert told_nothing and told_nothing.say == "Today is a big school day. Put all our bundles on the table."


def test_a_fact_that_is_the_answer_of_any_prompt_is_passed_over() -> None:
    """Also of one that is no calendar talk: a number said aloud is heard."""
    say = opening(SCHOOL_DAY_40, (), child="Bean")
    count = ANY._replace(skill="count-on", answer="forty", accept=())
    assert say and tells(say, (count,)) and not tells(None, (count,))
    other = opening(SCHOOL_DAY_40, (count,), child="Bean")
    assert other and not tells(other, (count,)) and other != say


def test_there_is_none_where_every_fact_is_asked() -> None:
    every = [fact.say.rstrip(".!").lower() for fact in facts(SCHOOL_DAY_40, "Bean")]
    asks_all = ANY._replace(answer=every[0], accept=tuple(every[1:]))
    assert opening(SCHOOL_DAY_40, (asks_all,), child="Bean") is None


@pytest.mark.parametrize("kind", [DayKind.WEEKEND, DayKind.DAY_OFF, DayKind.BEFORE, DayKind.AFTER])
def test_a_day_without_school_has_an_opening_that_counts_no_straw(kind: DayKind) -> None:
    for number in range(14):
        at = morning(day(2027, 3, 6) + dt.timedelta(number), 40, school=False)
        found = opening(at._replace(kind=kind), (), child="Bean")
        assert found and "straw" not in found.say and "school week" not in found.say


def test_a_name_too_long_to_be_said_is_not() -> None:
    long = "the day on which all the cousins and both the dogs come"
    at = morning(day(2026, 11, 24), 47)._replace(
        festive=(long,), countdowns=(Countdown(long, day(2026, 12, 1)),)
    )
    assert not [fact for fact in facts(at, "Bean") if long in fact.say]


@pytest.mark.parametrize("child", ["Bean", "Pip", "Wren", "average", "slow"])
@pytest.mark.parametrize("name", ["four mornings", "five mornings from a Wednesday"])
def test_no_opening_returns_within_two_weeks(name: str, child: str) -> None:
    """In the same words, and in the same form with another number on two mornings running."""
    school = [at for at, _ in mornings(FAMILIES[name]) if at.is_school]
    said = [found.say for at in school if (found := opening(at, (), child=child))]
    assert len(said) == len(school) > 140
    for n, say in enumerate(said):
        assert say not in said[max(0, n - 8) : n], (school[n].date, say)
    forms = [FORM.sub("…", say) for say in said]
    twice = [form for one, form in itertools.pairwise(forms) if one == form]
    assert not twice, twice
    assert max(Counter(forms).values()) < len(said) / 5, Counter(forms).most_common(3)


FORM = re.compile(r"\b(?:[A-Z]\w+day|[a-z]+-[a-z]+|" + "|".join((*MONTHS, *NUMBER_WORDS)) + r")\b")


def test_what_a_month_has_is_said_once_in_it() -> None:
    for say in ("October is the tenth month of the year.", "We are in October. It has thirty-one days."):
        heard = [at.date for at, _ in mornings(FAMILY) if say in {fact.say for fact in facts(at, "Bean")}]
        assert len({(at.year, at.month) for at in heard}) == len(heard) > 0


def test_children_at_one_table_hear_other_openings() -> None:
    at = [morning(day(2026, 9, 1) + dt.timedelta(n), 1 + n)._replace(countdowns=()) for n in range(1, 99)]
    heard = {child: [opening(m, (), child=child) for m in at] for child in ("Bean", "Pip")}
    assert heard["Bean"] == [opening(m, (), child="Bean") for m in at] != heard["Pip"]


@pytest.mark.parametrize(
    ("item", "at"),
    [
        ("school-day/new-bundle", SCHOOL_DAY_40),
        ("school-day/count", morning(day(2026, 8, 31), 1)),
        ("school-day/count", morning(day(2027, 5, 27), 144)._replace(next=None)),
        ("school-day/count", morning(day(2026, 11, 9), 41)),
    ],
)
def test_a_straw_that_a_prompt_has_put_down_is_not_put_down_before(item: str, at: Morning) -> None:
    drawn = [skills.prompt(item, at, SeededRandom("straw", n)) for n in range(40)]
    adding = [prompt for prompt in drawn if "straw" in prompt.say and "How many" in prompt.say]
    assert adding
    for prompt in adding:
        for child in ("Bean", "Pip", "Wren"):
            found = opening(at, (prompt,), child=child)
            assert found and found.table != "straws and bands", (prompt.say, found)


def test_nor_is_it_where_straws_are_tied_with_something_else() -> None:
    """With a toddler in the house no band is on the table, and the prompt wants strips of paper."""
    house = Household(toddler=True)
    drawn = [skills.prompt("school-day/new-bundle", SCHOOL_DAY_40, SeededRandom(n)) for n in range(20)]
    adding = [found for prompt in drawn if "Add" in prompt.say and (found := house.furnished(prompt))]
    assert adding and all("bands" not in prompt.table for prompt in adding)
    for prompt in adding:
        fact = opening(SCHOOL_DAY_40, (prompt,), child="Bean", household=house)
        assert fact and not fact.table.startswith("straws"), (prompt.say, fact)


def test_no_prompt_of_a_morning_is_answered_in_words_of_the_bank() -> None:
    """By the forms that the bank's own check of secrets looks for."""
    for n, item in enumerate(item for item in skills.item_names() if item.startswith(("date", "weekday"))):
        at = morning(day(2026, 9, 2) + dt.timedelta(3 * n), 20 + n)
        if skills.askable(item, at):
            asked = skills.prompt(item, at, SeededRandom("secret", item))
            found = opening(at, (asked,), child="Bean")
            assert found and not [form for form in told(asked) if says(found.say, form)], item


def test_a_prompt_whose_answer_the_opening_says_is_drawn_again() -> None:
    """An item that can be asked in many ways is kept, in one that was not told."""
    at = morning(day(2026, 11, 24), 47)
    item = Item(ItemId("neighbors/after-to-9"), "neighbors", 1, LevelId("neighbors:any"), "number", 1)
    choices = [Choice(item, "", SlotKind.OLDER, False)]
    plain = build(choices, at, Knowledge(), child="Pip", shape="daily").prompts[0]
    said = Opening(f"Today we say {plain.answer}.")
    other = build(choices, at, Knowledge(), child="Pip", shape="daily", said=said).prompts[0]
    assert tells(said, (plain,)) and not tells(said, (other,)) and other.item == plain.item
