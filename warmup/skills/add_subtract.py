"""add-subtract: a spoken sum or difference, acted out with things or worked out in the head.

K.OA.A.1: act out adding and taking away; K.OA.A.2: totals no bigger than ten; K.OA.A.5: fluent within
five; 1.OA.C.5: counting on two to add two; 1.OA.C.6: fluent within ten (Common Core State Standards for
Mathematics, 2010).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import BLOCK, SPOON, TO_HOLD, Noun, upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_GRAPE = Noun("grape piece", "grape pieces")
# What each item's total may be: the least, the most while its level is new, the most later on. Later on a
# total of two, which is one and one each time, is left to those who begin.
_TOTALS = {
    "act-add": (2, 4, 5),
    "act-take": (2, 4, 5),
    "take-all": (2, 4, 5),
    "head-add-5": (2, 4, 5),
    "head-take-5": (2, 4, 5),
    "take-all-or-none": (2, 5, 5),
    "objects-add": (6, 8, 10),
    "objects-take": (6, 8, 10),
    "take-none": (2, 8, 10),
    "mixed-5": (2, 5, 5),
    "on-one-or-two": (4, 7, 10),
    "back-one-or-two": (4, 7, 10),
    "head-add-10": (6, 8, 10),
    "head-take-10": (6, 8, 10),
}
_OPENS = {
    "act-add": 7,
    "act-take": 7,
    "take-all": 7,
    "head-add-5": 11,
    "head-take-5": 16,
    "mixed-5": 21,
    "objects-add": 17,
    "objects-take": 17,
    "take-none": 17,
    "on-one-or-two": 25,
    "back-one-or-two": 25,
    "head-add-10": 30,
    "head-take-10": 30,
}
_WITH_THINGS = ("act-add", "act-take", "take-all", "objects-add", "objects-take", "take-none")
_FROM_THE_FIRST = ("act-add", "objects-add")
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
    "take-all-or-none": "Saying the number back, or guessing. Act it out with fingers and look.",
    "mixed-5": "Doing the same as in the question before. Ask whether it gets more or fewer.",
    "on-one-or-two": "Counting everything from one. Say the larger number and count on.",
    "back-one-or-two": "Saying the start as the first step back. Fold one finger for each number said.",
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
    fact = _fact(item, morning, rng)
    sign = "+" if fact.add else "-"
    say, table = _say(item, fact, morning.animal, rng)
    return Draft(
        say=say,
        answer=number_word(fact.result),
        accept=("none", "nothing") if fact.result == 0 else (),
        working=_working(item, fact),
        cues=_adding(fact) if fact.add else _taking(fact),
        watch_for=_watch_for(item, fact),
        given={"first": fact.first, "op": sign, "second": fact.second},
        table=table,
    )


def _fact(item: str, morning: Morning, rng: SeededRandom) -> _Fact:
    """The fact an item asks for this morning; a fact with an item of its own is left to that."""
    match item:
        case "five-minus-four":
            return _Fact(5, 4, add=False)
        case "two-plus-seven":
            # Two and some other large number as well, or it is learned by heart as a rhyme is.
            return _Fact(2, rng.pick((5, 6, 7, 7, 8)), add=True)
    low, at_first, most = _TOTALS[item]
    later = risen(morning, _OPENS.get(item, 0))
    least, high = (max(low, 3), most) if later else (low, at_first)
    total = rng.between(low, high)
    match item:
        case "act-add" | "head-add-5" | "objects-add" | "head-add-10":
            return _sum(least, high, rng)
        case "mixed-5":
            return (_sum if rng.coin() else _difference)(least, high, rng)
        case "act-take" | "head-take-5" | "objects-take" | "head-take-10":
            return _difference(least, high, rng)
        case "take-all":
            return _Fact(total, total, add=False)
        case "take-none":
            return _Fact(total, 0, add=False)
        case "take-all-or-none":
            return _Fact(total, total if rng.coin() else 0, add=False)
        case _:
            step = rng.between(1, 2)
            return _Fact(total - step, step, add=True) if item[0] == "o" else _Fact(total, step, add=False)


def _sum(low: int, high: int, rng: SeededRandom) -> _Fact:
    # The total is drawn first: drawn by the sums, five would be right nearly half of the time.
    total = rng.between(low, high)
    first = rng.between(1, total - 1)
    return _Fact(first, total - first, add=True)


def _difference(low: int, high: int, rng: SeededRandom) -> _Fact:
    # What is left is drawn first: drawn last, it would be one nearly half of the time.
    left = rng.between(1, high - 1)
    totals = [n for n in range(max(low, left + 1), high + 1) if (n, n - left) != (5, 4)]
    total = rng.pick(totals)
    return _Fact(total, total - left, add=False)


def _watch_for(item: str, fact: _Fact) -> str:
    """The slip of the item; another where no number is the larger, or the second is."""
    if fact.add and fact.first == fact.second and "larger" in _WATCH[item]:
        return "Saying the same number back. Put it up on both hands."
    if item in _FROM_THE_FIRST and fact.first < fact.second:
        return "Counting everything over again. Start from the larger pile."
    return _WATCH[item]


def _working(item: str, fact: _Fact) -> str:
    if not fact.add:
        return f"{fact.first} − {fact.second} = {fact.result}"
    turned = f" = {fact.second} + {fact.first}" if item == "two-plus-seven" else ""
    return f"{fact.first} + {fact.second}{turned} = {fact.result}"


def _say(item: str, fact: _Fact, animal: str, rng: SeededRandom) -> tuple[Phrasing, str]:
    """The words, and the things on the table that they use."""
    match item in _WITH_THINGS, fact.add:
        case False, True:
            return _add_in_the_head(fact, rng), ""
        case False, False:
            return _take_in_the_head(fact, animal, rng), ""
        case True, True:
            return _put_together(fact, rng)
        case _:
            return _take_away(fact, rng)


def _put_together(fact: _Fact, rng: SeededRandom) -> tuple[Phrasing, str]:
    thing = rng.pick(TO_HOLD)
    one, other = number_word(fact.first), number_word(fact.second)
    say = rng.phrasing(
        f"Put out {thing.of(fact.first)}. Put out {other} more. How many now?",
        f"Hold up {one} {plural(fact.first, 'finger')}. Put up {other} more. How many now?",
        f"Jump {one} {plural(fact.first, 'time')}. Jump {other} more. How many jumps?",
        f"Put {SPOON.of(fact.first)} here and {other} there. How many spoons?",
        f"Build with {BLOCK.of(fact.first)}. Put on {other} more. How many blocks?",
    )
    return say, {"a": thing.many, "d": SPOON.many, "e": BLOCK.many}.get(say.key, "")


def _take_away(fact: _Fact, rng: SeededRandom) -> tuple[Phrasing, str]:
    thing = rng.pick(TO_HOLD)
    one, other = number_word(fact.first), number_word(fact.second) if fact.second else "none"
    say = rng.phrasing(
        f"Put out {thing.of(fact.first)}. Take {other} away. How many are left?",
        f"Hold up {one} {plural(fact.first, 'finger')}. Put {other} down. How many stay up?",
        f"Build with {BLOCK.of(fact.first)}. Take {other} off. How many are left?",
        f"Put out {_GRAPE.of(fact.first)}. Eat {other}. How many are left?",
        f"Hold {SPOON.of(fact.first)}. Give me {other}. How many do you have?",
    )
    tables = {"a": thing.many, "c": BLOCK.many, "d": "grapes (in quarters)", "e": SPOON.many}
    return say, tables.get(say.key, "")


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
    one, zero = number_word(fact.first), number_word(fact.second)
    # Zero is the number's name; of things that are eaten or given away there are none.
    other = zero if fact.second else "none"
    return rng.phrasing(
        f"What is {one} take away {zero}?",
        f"{upper(one)} minus {zero}. What is it?",
        f"You have {one}. You give away {other}. How many are left?",
        f"I had {one}. I ate {other}. How many are left?",
        f"Take {zero} from {one}. What is left?",
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
            ("act-add", "take-all"),
            ("act-take",),
            codes=("K.OA.A.1",),
            stands_on=("how-many:count-out-to-10",),
            waits_on=("how-many/so-how-many",),
            table="grapes (in quarters), blocks",
        ),
        Level(
            "add-to-5",
            "sums in the head, to five",
            ("head-add-5",),
            codes=("K.OA.A.5",),
            stands_on=("add-subtract:act-to-5", "parts:split-to-5"),
            seconds=20,
        ),
        Level(
            "take-to-5",
            "take away in the head, to five",
            ("head-take-5",),
            ("take-all-or-none",),
            codes=("K.OA.A.5",),
            stands_on=("add-subtract:act-to-5", "parts:hidden-to-5"),
            waits_on=("how-many/zero", "add-subtract/act-take"),
            seconds=20,
        ),
        Level(
            "things-to-10",
            "with things, to ten",
            ("objects-add", "objects-take", "take-none"),
            codes=("K.OA.A.1", "K.OA.A.2"),
            stands_on=("add-subtract:act-to-5", "subitize:five-and-some"),
            table="grapes (in quarters), blocks",
        ),
        Level(
            "mixed-to-5",
            "both mixed, in the head, to five",
            ("mixed-5",),
            ("five-minus-four",),
            codes=("K.OA.A.5",),
            stands_on=("add-subtract:add-to-5", "add-subtract:take-to-5"),
            waits_on=("add-subtract/take-all-or-none",),
            seconds=20,
        ),
        Level(
            "one-or-two",
            "one or two more or less, in the head, to ten",
            ("on-one-or-two", "back-one-or-two"),
            ("two-plus-seven",),
            codes=("K.OA.A.2", "1.OA.C.5"),
            stands_on=(
                "add-subtract:mixed-to-5",
                "add-subtract:things-to-10",
                "neighbors:before-to-10",
                "count-on:within-10",
            ),
            seconds=20,
        ),
        Level(
            "head-to-10",
            "in the head, to ten",
            ("head-add-10", "head-take-10"),
            codes=("K.OA.A.2", "1.OA.C.6"),
            stands_on=("add-subtract:one-or-two", "parts:of-8-and-9", "make-ten:all"),
            waits_on=("add-subtract/two-plus-seven",),
            seconds=20,
        ),
    ),
    ask=ask,
)
