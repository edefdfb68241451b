"""add-subtract: a spoken sum or difference, acted out with things or worked out in the head.

K.OA.A.1: act out adding and taking away; K.OA.A.2: totals no bigger than ten; K.OA.A.5: fluent within
five; 1.OA.C.6: fluent within ten (Common Core State Standards for Mathematics, 2010).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import BLOCK, SPOON, TO_HOLD, Noun, upper
from warmup.skills.base import Draft, Level, Skill

_GRAPE = Noun("grape piece", "grape pieces")
_SPOKEN = ("head-add-5", "head-take-5", "five-minus-four", "head-add-10", "head-take-10", "two-plus-seven")
_FIXED = {"five-minus-four": (5, 4), "two-plus-seven": (2, 7)}
_TOTALS = {
    "act-add": (2, 5),
    "act-take": (2, 5),
    "take-all": (2, 5),
    "head-add-5": (2, 5),
    "head-take-5": (2, 5),
    "objects-add": (6, 10),
    "objects-take": (6, 10),
    "take-none": (2, 10),
    "head-add-10": (6, 10),
    "head-take-10": (6, 10),
}
_WATCH = {
    "act-add": "Counting the first ones all over again. It works; later, keep that number in a fist.",
    "act-take": "Telling how many went away. Point to those still here.",
    "take-all": "Silence, or a shrug. Ask again, and give it time.",
    "head-add-5": "Starting again at one. Put the larger number in a fist and count on.",
    "head-take-5": "Starting the count back on the first number, so that it ends too high.",
    "five-minus-four": "Losing the way on the way back. Ask how to count up from the smaller number.",
    "objects-add": "Counting everything over again. Ask how many the first ones were.",
    "objects-take": "Adding on by habit. Say again what happened: some went away.",
    "take-none": "Taking some away all the same. Say the question again, slowly.",
    "head-add-10": "Counting everything over again. Start from the larger number.",
    "head-take-10": "Off by a step when counting back. Fold fingers down to see.",
    "two-plus-seven": "Counting up from the smaller number and losing count. Turn it around.",
}


class _Fact(NamedTuple):
    """``first`` and ``second`` joined, or ``second`` taken from ``first``."""

    first: int
    second: int
    add: bool

    @property
    def result(self) -> int:
        return self.first + self.second if self.add else self.first - self.second


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A sum or a difference; the answer is its result."""
    fact = _fact(item, rng)
    sign = "+" if fact.add else "-"
    return Draft(
        say=_say(item, fact, morning.animal, rng),
        answer=number_word(fact.result),
        accept=("none", "nothing") if fact.result == 0 else (),
        working=_working(item, fact),
        cues=_adding(fact) if fact.add else _taking(fact),
        watch_for=_WATCH[item],
        given={"first": fact.first, "op": sign, "second": fact.second},
        table=_table(item),
    )


def _fact(item: str, rng: SeededRandom) -> _Fact:
    if item in _FIXED:
        return _Fact(*_FIXED[item], add=item == "two-plus-seven")
    low, high = _TOTALS[item]
    match item.split("-"):
        case ["take", "all"]:
            total = rng.between(low, high)
            return _Fact(total, total, add=False)
        case ["take", "none"]:
            return _Fact(rng.between(low, high), 0, add=False)
        case [_, "add", *_]:
            total = rng.between(low, high)
            first = rng.between(1, total - 1)
            return _Fact(first, total - first, add=True)
        case _:
            # What is left is drawn first: drawn last, it would be one nearly half of the time.
            left = rng.between(1, high - 1)
            totals = [n for n in range(max(low, left + 1), high + 1) if (n, n - left) != (5, 4)]
            total = rng.pick(totals)
            return _Fact(total, total - left, add=False)


def _table(item: str) -> str | None:
    return "" if item in _SPOKEN else None


def _working(item: str, fact: _Fact) -> str:
    if not fact.add:
        return f"{fact.first} − {fact.second} = {fact.result}"
    turned = f" = {fact.second} + {fact.first}" if item == "two-plus-seven" else ""
    return f"{fact.first} + {fact.second}{turned} = {fact.result}"


def _say(item: str, fact: _Fact, animal: str, rng: SeededRandom) -> Phrasing:
    match item in _SPOKEN, fact.add:
        case True, True:
            return _add_in_the_head(fact, rng)
        case True, False:
            return _take_in_the_head(fact, animal, rng)
        case False, True:
            return _put_together(fact, rng)
        case _:
            return _take_away(fact, rng)


def _put_together(fact: _Fact, rng: SeededRandom) -> Phrasing:
    thing = rng.pick(TO_HOLD)
    one, other = number_word(fact.first), number_word(fact.second)
    return rng.phrasing(
        f"Put out {thing.of(fact.first)}. Put out {other} more. How many now?",
        f"Hold up {one} {plural(fact.first, 'finger')}. Put up {other} more. How many now?",
        f"Jump {one} {plural(fact.first, 'time')}. Jump {other} more. How many jumps?",
        f"Put {SPOON.of(fact.first)} here and {other} there. How many spoons?",
        f"Build with {BLOCK.of(fact.first)}. Put on {other} more. How many blocks?",
    )


def _take_away(fact: _Fact, rng: SeededRandom) -> Phrasing:
    thing = rng.pick(TO_HOLD)
    one, other = number_word(fact.first), number_word(fact.second) if fact.second else "none"
    return rng.phrasing(
        f"Put out {thing.of(fact.first)}. Take {other} away. How many are left?",
        f"Hold up {one} {plural(fact.first, 'finger')}. Put {other} down. How many stay up?",
        f"Build with {BLOCK.of(fact.first)}. Take {other} off. How many are left?",
        f"Put out {_GRAPE.of(fact.first)}. Eat {other}. How many are left?",
        f"Hold {SPOON.of(fact.first)}. Give me {other}. How many do you have?",
    )


def _add_in_the_head(fact: _Fact, rng: SeededRandom) -> Phrasing:
    one, other = number_word(fact.first), number_word(fact.second)
    return rng.phrasing(
        f"What is {one} and {other}?",
        f"{upper(one)} plus {other}. What is it?",
        f"You have {one}. You get {other} more. How many now?",
        f"{upper(one)} in this hand, {other} in the other. How many?",
        f"I eat {one} and you eat {other}. How many is that?",
        f"What do {one} and {other} make?",
    )


def _take_in_the_head(fact: _Fact, animal: str, rng: SeededRandom) -> Phrasing:
    one, other = number_word(fact.first), number_word(fact.second)
    return rng.phrasing(
        f"What is {one} take away {other}?",
        f"{upper(one)} minus {other}. What is it?",
        f"You have {one}. You give away {other}. How many are left?",
        f"I had {one}. I ate {other}. How many are left?",
        f"Take {other} from {one}. What is left?",
        f"{animal} had {one} and lost {other}. How many are left?",
    )


def _adding(fact: _Fact) -> tuple[Cue, Cue, Cue]:
    large, small = max(fact.first, fact.second), min(fact.first, fact.second)
    most, least = number_word(large), number_word(small)
    dots = pictures.Counters(fact.first, second=fact.second, what="counters")
    return (
        Cue(f"Say it again. Start from {most}. Do we need to count it again?"),
        Cue(f"Keep {most} in a fist. Put up {least} beside it, or look here.", dots),
        Cue(f"Say “{most}” and raise the first finger together. The child says the rest."),
    )


def _taking(fact: _Fact) -> tuple[Cue, Cue, Cue]:
    whole, away = number_word(fact.first), number_word(fact.second) if fact.second else "none"
    match fact.second:
        case 0:
            last = f"Put up {whole} together and fold none down. The child says how many stay up."
        case 1:
            last = f"Put up {whole} together and fold the thumb down. The child says how many stay up."
        case _:
            last = f"Put up {whole} together and fold the first. The child folds until {away} are down."
    return (
        Cue(f"Say it again. Show me {whole} on your fingers."),
        Cue(
            f"Cover {away} of these with a hand. What can you still see?"
            if fact.second
            else "Here they all are. Did any go away?",
            pictures.Counters(fact.first, what="counters"),
        ),
        Cue(last),
    )


SKILL = Skill(
    id="add-subtract",
    title="Add and take away",
    asks="a spoken sum or difference",
    strand=Strand.ADDING,
    levels=(
        Level(
            "act-to-5",
            "act it out, to five",
            ("act-add", "act-take", "take-all"),
            codes=("K.OA.A.1",),
            table="grapes (in quarters), blocks",
        ),
        Level(
            "head-to-5",
            "in the head, to five",
            ("head-add-5", "head-take-5", "five-minus-four"),
            codes=("K.OA.A.5",),
            stands_on=("parts:of-3-to-5",),
            seconds=20,
        ),
        Level(
            "objects-to-10",
            "with objects, to ten",
            ("objects-add", "objects-take", "take-none"),
            codes=("K.OA.A.1", "K.OA.A.2"),
            table="grapes (in quarters), blocks",
        ),
        Level(
            "head-to-10",
            "in the head, to ten",
            ("head-add-10", "head-take-10", "two-plus-seven"),
            codes=("1.OA.C.6",),
            seconds=20,
        ),
    ),
    ask=ask,
)
