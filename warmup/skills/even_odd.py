"""even-odd: can everyone find a partner?

2.OA.C.3: pair up to twenty things, or count them by twos, and say whether the group is odd or even (Common
Core State Standards for Mathematics, 2010). The pairs come first and the two words last: a child who makes
the pairs has no coin to flip. That 12 is called odd "because of the 1" is common practice, no source.
"""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import listed, number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills.base import Draft, Level, Skill

# Each item's numbers; 7 and 9 stand beside 6 and 8, so that the answer is no habit.
_NUMBERS: dict[str, Sequence[int]] = {
    "pair-to-10": tuple(range(3, 11)),
    "seven-nine": (6, 7, 8, 9),
    "pair-to-20": tuple(range(11, 21)),
    "eleven": (11,),
    "twelve": (12,),
    "name-and-make": tuple(range(3, 21)),
}
_WATCH = {
    "pair-to-10": "Making two piles in place of pairs.",
    "seven-nine": "A guess, with no pairs made. Let the last one settle it.",
    "pair-to-20": "Losing count of the pairs. Lay each pair down with a gap after it.",
    "eleven": "Going by the two 1s that look alike. Put real things in pairs and look.",
    "twelve": "Going by the 1 in front. Put real things in pairs and look.",
    "name-and-make": "Going by the first digit. Only the last digit tells.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Pairs and what is left; a number of a kind to name or to make."""
    if item != "name-and-make":
        return _pair_up(item, rng)
    return _name(item, rng) if rng.coin() else _make(item, morning.animal, rng)


def _pair_up(item: str, rng: SeededRandom) -> Draft:
    """How many pairs, and whether one is left: nothing to flip a coin for."""
    # Even and odd by an even chance, where the item has both.
    kinds = [[n for n in _NUMBERS[item] if n % 2 == rest] for rest in (0, 1)]
    number = rng.pick(rng.pick([kind for kind in kinds if kind]))
    word, clothes = number_word(number), rng.pick(("socks", "shoes"))
    say = rng.phrasing(
        f"Put {word} {clothes} in pairs. Tell me what you get.",
        f"Pair up {word} {clothes}. How many pairs, and what is left?",
        f"Here are {word} kids. Can everyone have a partner? Show me.",
        f"Can {word} {clothes} all go in pairs? Show me the pairs.",
    )
    things = "kids" if say.key == "c" else clothes
    pairs, left = divmod(number, 2)
    made = f"{number_word(pairs)} {plural(pairs, 'pair')}"
    full = f"{made} and {'one' if left else 'none'} left over"
    asked_can = say.key in "cd"
    yes_no = ("no, one is left", "no") if left else ("yes, they all can", "yes")
    return Draft(
        say=say,
        answer=f"{yes_no[1]}: {full}" if asked_can else full,
        accept=(f"{made}, one left" if left else made, *(yes_no[:1] if asked_can else ())),
        working=f"{number} = {' + '.join(['2'] * pairs + ['1'] * left)}",
        cues=(
            Cue(
                f"Lay two {things} side by side. Can each of the {word} get a partner?"
                if things == clothes
                else f"How could {word} of them line up so that all hold a hand?"
            ),
            Cue("Look at the row. Circle the first two with a finger: they belong. Now the next two."),
            Cue(f"Move the first pair together, off to the side. The child goes on with the {things}."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "things": things, "can": asked_can},
        picture=pictures.Pairs(pairs, left, things, paired=False),
    )


def _name(item: str, rng: SeededRandom) -> Draft:
    """Odd or even, with the reason: the pairs."""
    number = rng.pick(_NUMBERS[item])
    word = number_word(number)
    even = number % 2 == 0
    return Draft(
        say=rng.phrasing(
            f"Is {word} odd or even? Show me how you know.",
            f"Pair up {word} blocks. Is {word} odd or even?",
            f"Is page {word} odd or even? Tell me why.",
        ),
        answer="even" if even else "odd",
        working=f"{number} = {number // 2} + {number // 2}" + ("" if even else " + 1"),
        cues=(
            Cue(f"Could {word} kids each have a partner?"),
            Cue("Lay that many buttons down two by two. What happens at the end?"),
            Cue(f"Count by twos together, “two, four…”, and listen for {word}. The child tells."),
        ),
        watch_for=_WATCH[item],
        given={"number": number},
        table="buttons",
        guess=0.5,
    )


def _make(item: str, animal: str, rng: SeededRandom) -> Draft:
    """A number of the kind asked for between two others: make one."""
    even = rng.coin()
    low = rng.between(1, 14)
    high = low + rng.between(5, 6)
    fits = [n for n in range(low + 1, high) if (n % 2 == 0) is even]
    kind = "even" if even else "odd"
    low_word, high_word = number_word(low), number_word(high)
    return Draft(
        say=rng.phrasing(
            f"Say an {kind} number between {low_word} and {high_word}.",
            f"Find an {kind} number. More than {low_word}, less than {high_word}.",
            f"{animal} wants an {kind} number between {low_word} and {high_word}.",
        ),
        answer=listed([number_word(n) for n in fits], "or"),
        accept=tuple(number_word(n) for n in fits),
        working=f"{kind}, from {low + 1} to {high - 1}: {', '.join(map(str, fits))}",
        cues=(
            Cue(f"What does {kind} mean when you pair up socks?"),
            Cue(f"Say a number just past {low_word}. Lay it out in buttons, in pairs, and look."),
            Cue("Try the numbers in turn together, pair by pair. The child stops at the right kind."),
        ),
        watch_for=_WATCH[item],
        given={"kind": kind, "low": low, "high": high},
        table="buttons",
        guess=0.4,
    )


SKILL = Skill(
    id="even-odd",
    title="Even and odd",
    asks="can everyone find a partner?",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "pair-to-20",
            "pair and name, to twenty",
            ("pair-to-10", "pair-to-20", "seven-nine", "eleven", "twelve", "name-and-make"),
            codes=("2.OA.C.3",),
            stands_on=("by-twos:to-20",),
            table="shoes, socks",
            slower=("pair-to-20", "eleven", "twelve"),
            guesses=(("name-and-make", 0.45),),
        ),
    ),
    ask=ask,
)
