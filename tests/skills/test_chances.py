"""Even chances over the whole bank: no answer a child could guess is favored, and no turn-taking.

The bounds are those of a fair draw: a share may stray four of its standard deviations (once in sixteen
thousand draws), a count of runs four of its own (Wald and Wolfowitz 1940, from memory).
"""

from collections import Counter
from collections.abc import Callable, Mapping
from functools import cache
from itertools import pairwise
from typing import Any

import pytest

from tests.mornings import many
from warmup import skills
from warmup.model import Prompt
from warmup.randomness import SeededRandom
from warmup.skills import locate

DRAWS = 300
"""How often an item is drawn here; tests.benchmarks.bank_figures draws more."""

ITEMS = skills.item_names()
_MORNINGS = many(288)


@cache
def drawn(item: str, count: int = DRAWS) -> tuple[Prompt, ...]:
    """An item's prompts, over two years of dates and every school day number."""
    able = [morning for morning in _MORNINGS if skills.askable(item, morning)]
    return tuple(
        skills.prompt(item, able[n % len(able)], SeededRandom("chance", item, n)) for n in range(count)
    )


def some(item: str) -> tuple[Prompt, ...]:
    """Fewer of them, where nothing is to be guessed."""
    return drawn(item) if guess_of(item) >= 0.15 else drawn(item, 60)


def items_of(skill: str) -> list[str]:
    """A skill's items."""
    return [item for item in ITEMS if item.partition("/")[0] == skill]


def guess_of(item: str) -> float:
    """The chance of a lucky answer that the engine reckons with."""
    at = locate(item)
    return at.level.guess_of(at.name)


def strays(share: float, fair: float, count: int) -> bool:
    """Whether a share of ``count`` draws lies more than four standard deviations from a fair one."""
    return abs(share - fair) > 4 * (fair * (1 - fair) / count) ** 0.5


@pytest.mark.slow
@pytest.mark.parametrize("skill", skills.SKILLS)
def test_the_chance_of_a_lucky_answer_is_that_of_the_prompts(skill: str) -> None:
    """What the memory is told of an item is the mean of what its prompts say, to a twentieth or so."""
    for item in items_of(skill):
        said = [prompt.guess for prompt in some(item)]
        assert abs(sum(said) / len(said) - guess_of(item)) <= 0.06, (item, guess_of(item), Counter(said))


# What is asked about is one thing: the answer never changes, and the choice lies in the cards or dots shown.
ONE_ANSWER = {"number-words/two", "number-words/eight", "subitize/scattered-four", "subitize/scattered-five"}


@pytest.mark.slow
@pytest.mark.parametrize("item", [item for item in ITEMS if guess_of(item) >= 0.15])
def test_no_answer_that_can_be_guessed_is_favored(item: str) -> None:
    """The commonest answer comes no oftener than the chance of a lucky one, or than each of them would."""
    answers = Counter(prompt.answer for prompt in drawn(item))
    assert (len(answers) == 1) == (item in ONE_ANSWER), answers
    if item in ONE_ANSWER:
        return
    (answer, most), fair = answers.most_common(1)[0], max(guess_of(item), 1 / len(answers))
    share = most / DRAWS
    assert share <= fair or not strays(share, fair, DRAWS), (answer, share, fair)


# A word to choose in the question, or yes and no for an answer, is a choice; of how many, by hand.
YES_AND_NO = {"yes", "no"}
TOLD_AS_WELL = {
    "even-odd/pair-to-10": "the pairs and what is left are told as well",
    "even-odd/seven-nine": "the pairs and what is left are told as well",
    "even-odd/pair-to-20": "the pairs and what is left are told as well",
    "even-odd/eleven": "the pairs and what is left are told as well",
    "even-odd/twelve": "the pairs and what is left are told as well",
}


@pytest.mark.slow
@pytest.mark.parametrize("skill", skills.SKILLS)
def test_a_coin_flip_owns_up_to_it(skill: str) -> None:
    """Yes or no is one in two; a card, or a thing named in the question beside "or", one in so many."""
    for prompt in (prompt for item in items_of(skill) for prompt in some(item)):
        if prompt.answer.split(":")[0] in YES_AND_NO and prompt.item not in TOLD_AS_WELL:
            assert prompt.guess == 0.5, prompt.say
        cards = prompt.given.get("cards", ())
        if len(cards) > 1 and "find" in prompt.given:
            assert abs(prompt.guess - 1 / len(cards)) < 0.05, prompt.say


# Two ways a question can go, told from what a prompt was built from: each comes half of the time.
TWO_WAYS: Mapping[str, Callable[[Mapping[str, Any]], bool]] = {
    "add-subtract/mixed-5": lambda given: given["op"] == "+",
    "add-subtract/take-all-or-none": lambda given: given["second"] == 0,
    "capacity/pour": lambda given: given["asked"] == "more",
    "capacity/tall-and-thin": lambda given: given["asked"] == "more",
    "capacity/full-is-not-more": lambda given: given["asked"] == "more",
    "coins/dime-or-nickel": lambda given: given["coins"][0] == "dime",
    "coins/nickel-or-pennies": lambda given: given["asked"] == "more",
    "coins/dime-or-many": lambda given: given["asked"] == "more",
    "coins/quarter-or-many": lambda given: given["asked"] == "more",
    "coins/line-up": lambda given: given["first"] == "most",
    "compare/sets-to-10": lambda given: given["ask"] == "more",
    "place-value/which-is-more": lambda given: given["ask"] == "more",
    "place-value/nineteen-twenty-one": lambda given: given["ask"] == "more",
    "equal-shares/quarter-or-half": lambda given: given["more"],
    "even-odd/pair-to-10": lambda given: given["number"] % 2 == 0,
    "even-odd/pair-to-20": lambda given: given["number"] % 2 == 0,
    "even-odd/name-and-make": lambda given: _is_even(given),
    "flat-shapes/square-is-a-rectangle": lambda given: given["first"] == "square",
    "measure/longer": lambda given: given["asked"] == "longer",
    "measure/ends-not-lined-up": lambda given: given["asked"] == "longer",
    "measure/heavier": lambda given: given["asked"] == "heavier",
    "measure/big-is-not-heavy": lambda given: given["asked"] == "heavier",
    "month/around": lambda given: given["steps"] == 1,
    "month/december-january": lambda given: given["steps"] == 1,
    "neighbors/both-to-19": lambda given: given["step"] == 1,
    "neighbors/both-to-50": lambda given: given["step"] == 1,
    "number-line/across-10": lambda given: given["hops"] > 0,
    "numerals/six-nine": lambda given: "6" in (str(given.get("read")), str(given.get("find"))),
    "patterns/how-long-a-part": lambda given: len(set(given["shown"])) == 2 and _turns(given["shown"]),
    "position/own-side": lambda given: given["side"] == "left",
    "position/to-one-side": lambda given: given["side"] == "left",
    "position/across-the-middle": lambda given: given["side"] == "left",
    "position/set-left-or-right": lambda given: given["side"] == "left",
    "position/name-the-neighbor": lambda given: given["side"] == "left",
    "position/make-a-row": lambda given: given["start"] == "left",
    "solid-shapes/ball-or-circle": lambda given: given["solid"],
    "solid-shapes/cone-or-triangle": lambda given: given["solid"],
    "symmetry/finish": lambda given: given["lying"],
    "weekday/saturday-sunday": lambda given: given["steps"] == 1,
    "weekday/tuesday-thursday": lambda given: given["steps"] == 1,
}


def _is_even(given: Mapping[str, Any]) -> bool:
    return given["kind"] == "even" if "kind" in given else given["number"] % 2 == 0


def _turns(shown: list[str]) -> bool:
    """Whether a row goes one and the other, by turns."""
    return all(one != other for one, other in pairwise(shown))


def two_ways(item: str) -> list[bool]:
    """Which of the two ways each drawing of an item went."""
    if item in TWO_WAYS:
        return [bool(TWO_WAYS[item](prompt.given)) for prompt in drawn(item)]
    first = sorted({prompt.answer for prompt in drawn(item)})[0]
    return [prompt.answer == first for prompt in drawn(item)]


def fair_runs(one: int, other: int) -> tuple[float, float]:
    """How many runs tossing makes of so many of one and of the other: the mean, and its deviation."""
    count = one + other
    fair = 1 + 2 * one * other / count
    return fair, ((fair - 1) * (fair - 2) / (count - 1)) ** 0.5


def _two_answers(item: str) -> bool:
    return guess_of(item) >= 0.3 and len({prompt.answer for prompt in drawn(item)}) == 2


def may_go_two_ways(item: str) -> bool:
    """Whether an item may go one of two ways, as far as can be told before anything is drawn."""
    return item in TWO_WAYS or guess_of(item) >= 0.3


@pytest.mark.slow
@pytest.mark.parametrize("skill", sorted({locate(item).skill.id for item in ITEMS if may_go_two_ways(item)}))
def test_the_two_ways_come_half_and_half_and_take_no_turns(skill: str) -> None:
    """Even or odd, left or right, more or fewer, yes or no: as often, and as if by tossing a coin."""
    for item in items_of(skill):
        if item not in TWO_WAYS and not _two_answers(item):
            continue
        ways = two_ways(item)
        count, one = len(ways), sum(ways)
        assert count > 250 and not strays(one / count, 0.5, count), (item, one, count)
        runs = 1 + sum(1 for this, after in pairwise(ways) if this != after)
        fair, spread = fair_runs(one, count - one)
        assert abs(runs - fair) <= 4 * spread, (item, runs, fair)


def test_what_goes_two_ways_is_there() -> None:
    assert set(TWO_WAYS) <= set(ITEMS)


def test_the_runs_test_finds_turn_taking_and_sticking() -> None:
    """The measure itself: by turns there are twice as many runs as by tossing, and in a block but two."""
    fair, spread = fair_runs(DRAWS // 2, DRAWS // 2)
    assert DRAWS - fair > 4 * spread
    assert fair - 2 > 4 * spread


# Items that belong to certain school days only, and on how many of the 144 they can be asked.
RARE: Mapping[str, int] = {
    "school-day/next-number": 98,  # Inside two digits: on days 1 to 98,
    "school-day/last-number": 98,  # and on days 2 to 99.
    "school-day/to-the-hundredth": 41,  # From the sixtieth to the hundredth.
}


def test_every_item_comes_up_in_a_year() -> None:
    """Each item, trouble items too, can be asked on nearly all of the 144 school days, or is named above."""
    for item in ITEMS:
        able = {morning.school_day for morning in _MORNINGS if skills.askable(item, morning)}
        assert len(able) == RARE[item] if item in RARE else len(able) >= 120, (item, len(able))
