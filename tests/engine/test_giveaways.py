"""One prompt of a morning never tells the answer of another, whatever is drawn or swapped in."""

import datetime as dt
from functools import partial

import pytest

from tests.bank.given_away import given_away
from tests.mornings import many, morning
from warmup import skills
from warmup.engine.engine import build
from warmup.engine.giveaways import alike, answered, meet, tells, to_leave_out
from warmup.engine.memory import Knowledge
from warmup.model import Choice, Item, ItemId, LevelId, Opening, Prompt, SlotKind
from warmup.randomness import SeededRandom

TUESDAY = morning(dt.date(2026, 10, 6), 24)


def asked(item: str, way: str, at: int = 0) -> Prompt:
    """The item's prompt in this way of saying it."""
    found = (skills.prompt(item, TUESDAY, SeededRandom("said", at, n)) for n in range(200))
    return next(prompt for prompt in found if way in prompt.say)


def choice(item: str) -> Choice:
    """The item as the engine would choose it."""
    at = skills.locate(item)
    level = f"{at.skill.id}:{at.level.key}"
    return Choice(
        Item(ItemId(item), at.skill.id, at.number, LevelId(level), at.skill.strand.value, 1),
        "",
        SlotKind.OLDER,
        False,
    )


def test_what_a_prompt_says_answers_another() -> None:
    told = asked("weekday/tomorrow", "Today is Tuesday")
    assert tells(told, asked("weekday/today", "What day is it today?"))
    assert meet(asked("weekday/today", "What day is it today?"), (told,))
    assert not tells(asked("month/this", "What month"), asked("weekday/today", "What day is it today?"))


def test_counting_that_happens_on_the_number_of_the_day_tells_nothing() -> None:
    """Only calendar talk is about the day."""
    count = skills.prompt("count-on/within-10", TUESDAY, SeededRandom("on"))
    number = skills.prompt("date/say-number", TUESDAY, SeededRandom("on"))
    assert not tells(count._replace(say="Count on from six."), number)


@pytest.mark.parametrize(
    ("skill", "one", "other", "same"),
    [
        ("count", "one, two … thirteen", "one, two … fourteen, fifteen, sixteen", True),
        ("count", "sixty-one, sixty-two … seventy", "ninety-one, ninety-two, ninety-three", False),
        ("count-on", "forty, forty-one, forty-two", "thirty-eight, thirty-nine, forty, forty-one", False),
        ("count-back", "three, two, one, zero", "seven, six, five, four, three", False),
        ("by-twos", "ten, twelve, fourteen", "ten, twelve, fourteen, sixteen", True),
        ("by-tens", "ten, twenty", "ten, twenty, thirty", True),
        ("count", "one, two, three", "seven", False),
        ("clock", "half past five", "half past five", True),
        ("clock", "half past five", "half past six", False),
        ("parts", "two and one", "one and two", False),
    ],
)
def test_two_of_a_skill_are_alike_with_one_answer_or_a_count_within_the_other(
    skill: str, one: str, other: str, same: bool
) -> None:
    asked_of = skills.prompt("count/to-20", TUESDAY, SeededRandom("alike"))._replace(skill=skill)
    pair = asked_of._replace(answer=one), asked_of._replace(answer=other)
    assert alike(*pair) is alike(*pair[::-1]) is same
    assert not alike(pair[0], pair[1]._replace(skill="ordinals"))


def test_a_prompt_like_another_is_drawn_again_and_one_that_always_is_goes() -> None:
    late = many(144)[143]
    pair = ("clock/half-past-five", "clock/half-past")
    for day in (late._replace(date=late.date + dt.timedelta(n)) for n in range(60)):
        prompts = build([choice(i) for i in pair], day, Knowledge(), child="Pip", shape="daily").prompts
        assert prompts[0].answer != prompts[1].answer
    counts = [choice("count/to-20"), choice("count/past-15")]
    built = build(counts, TUESDAY, Knowledge(), child="Pip", shape="daily").prompts
    assert to_leave_out(built) == "count/past-15"


@pytest.mark.parametrize("at", range(0, 288, 7))
@pytest.mark.parametrize("item", ["around", "day-before"])
def test_a_pair_is_drawn_again_until_neither_tells_the_other(item: str, at: int) -> None:
    """Where any draw will do: the day before and after any day, and today's name."""
    day = many(288)[at]
    pair = ("weekday/today", f"weekday/{item}")
    prompts = build([choice(i) for i in pair], day, Knowledge(), child="Pip", shape="daily").prompts
    assert not given_away(prompts), [prompt.say for prompt in prompts]


def test_a_prompt_that_the_opening_answers_is_drawn_again() -> None:
    """A prompt that comes in place of another, once the morning has begun."""
    said, item = Opening("Our next school day is Thursday."), choice("weekday/tuesday-thursday")

    def told(opening: Opening | None) -> int:
        drawn = (
            build([item], TUESDAY, Knowledge(), child=f"Pip {n}", shape="daily", said=opening)
            for n in range(20)
        )
        return sum(answered((said.say,), routine.prompts[0]) for routine in drawn)

    assert told(None) > 0 and told(said) == 0


def test_of_two_that_meet_in_whatever_words_the_later_goes_unless_the_day_asks_for_it() -> None:
    told, other = asked("weekday/tomorrow", "Today is Tuesday"), asked("weekday/today", "What day is it")
    assert to_leave_out((other, told)) == "weekday/tomorrow"
    assert to_leave_out((other, told), keep={told.item}) == "weekday/today"
    assert to_leave_out((other,)) is None


def test_a_prompt_is_drawn_for_the_first_warm_up_of_the_day_unless_another_is_named() -> None:
    make = partial(build, [choice("weekday/around")], TUESDAY, Knowledge(), shape="daily")
    children = [f"Pip {n}" for n in range(12)]
    plain = [make(child=child).prompts for child in children]
    assert plain == [make(child=child, session=1).prompts for child in children]
    assert plain != [make(child=child, session=2).prompts for child in children]
