"""even-odd: can everyone find a partner?

2.OA.C.3: pair up to twenty things, or count them by twos, and say whether the group is odd or even (Common
Core State Standards for Mathematics, 2010). The pairs come first and the two words last: a child who makes
the pairs has no coin to flip. That 12 is called odd "because of the 1" is common practice, no source.
"""

from collections.abc import Sequence

from warmup.draw import Draw
from warmup.morning import Cue, Morning, Strand
from warmup.pictures.counters import Counters
from warmup.pictures.pairs import Pairs
from warmup.skills.base import Draft, Level, Skill
from warmup.words import listed, number_word, plural

# Each item's numbers: as many even as odd, over the level.
_NUMBERS: dict[str, Sequence[int]] = {
    "pair-to-10": (2, 3, 4, 5, 6, 7, 8, 9, 10, 6, 8, 5, 3, 4),
    "seven-nine": (7, 9, 8, 6),
    "pair-to-20": (11, 12, 13, 14, 15, 16, 17, 18, 19, 20),
    "eleven": (11,),
    "twelve": (12,),
    "name-and-make": tuple(range(1, 21)),
    "fair-shares": tuple(range(4, 20)),
}
_WATCH = {
    "pair-to-10": "Dealing things into two heaps in place of making pairs.",
    "seven-nine": "Saying these pair up, since they are big or often heard. Let the last sock settle it.",
    "pair-to-20": "Losing count of the pairs. Lay each pair down with a gap after it.",
    "eleven": "“It has two the same, so it pairs up.” Two 1s in the numeral are not a pair of things.",
    "twelve": "“It has a 1, so there is an odd sock.” Pair them and look.",
    "name-and-make": "Going by the first digit: “13 and 1 are odd, so 14 is.” Only the ones can pair up or not.",
    "fair-shares": "Two shares or pairs of two: both come out, but the numbers are not the same.",
}
_PAIRED = (("socks", "sock"), ("shoes", "shoe"), ("mittens", "mitten"))


def ask(item: str, _morning: Morning, draw: Draw) -> Draft:
    """Pairs and what is left; a number of a kind to make; two fair shares."""
    match item:
        case "name-and-make":
            return _name(item, draw) if draw.coin() else _make(item, draw)
        case "fair-shares":
            return _share(item, draw)
        case _:
            return _pair_up(item, draw.pick(_NUMBERS[item]), draw)


def _pair_up(item: str, number: int, draw: Draw) -> Draft:
    """How many pairs, and whether one is left: nothing to flip a coin for."""
    things, one = draw.pick(_PAIRED)
    word = number_word(number)
    pairs, left = divmod(number, 2)
    made = f"{number_word(pairs)} {plural(pairs, 'pair')}"
    can = "no" if left else "yes"
    return Draft(
        say=draw.way(
            f"Put {word} {things} in pairs. Tell me the pairs and what is left.",
            f"Here are {word} friends. Can they all find a partner? Show me.",
            f"Can {word} {things} all go in pairs? Show me the pairs.",
            f"{word.capitalize()} bears walk hand in hand. Tell me how they pair up.",
        ),
        answer=f"{can}: {made} and one left over" if left else f"{can}: {made} and none left over",
        accept=(f"{made} and one left", "no, one is left") if left else (made, f"{made}, none left"),
        working=f"{number} = {' + '.join(['2'] * pairs + ['1'] * left)}",
        cues=(
            Cue(f"Wait. Then: show {word} on your fingers, and let finger tips meet." if number <= 10 else _low(word)),
            Cue("Look at the row. Ring the first two with a finger; they hold hands. Who is next?"),
            Cue(f"Lay the first pair down together: “one pair…” The child goes on with the {things}."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "thing": one},
        picture=Pairs(pairs, left, things, paired=False),
    )


def _low(word: str) -> str:
    return f"Wait. Then: lay {word} things out, and think how to match them."


def _name(item: str, draw: Draw) -> Draft:
    """Odd or even, with the reason: the pairs."""
    number = draw.pick(_NUMBERS[item])
    word = number_word(number)
    even = number % 2 == 0
    return Draft(
        say=draw.way(
            f"Is {word} odd or even? Show me how you know.",
            f"Pair up {word}. Now tell me: odd or even?",
            f"Page {word} of the book: odd or even? Tell me why.",
        ),
        answer="even" if even else "odd",
        working=f"{number} = {number // 2} + {number // 2}" + ("" if even else " + 1"),
        cues=(
            Cue(f"Wait. Then: could {word} friends each have a partner?"),
            Cue("Lay that many buttons down two by two. What happens at the end?"),
            Cue(f"Count by twos together, “two, four…”, and listen for {word}. The child tells."),
        ),
        watch_for=_WATCH[item],
        given={"number": number},
        guess=0.5,
    )


def _make(item: str, draw: Draw) -> Draft:
    """A number of the kind asked for between two others: make one."""
    even = draw.coin()
    low = draw.between(1, 14)
    high = low + draw.between(4, 6)
    fits = [n for n in range(low + 1, high) if (n % 2 == 0) is even]
    kind = "even" if even else "odd"
    low_word, high_word = number_word(low), number_word(high)
    best, *others = fits
    return Draft(
        say=draw.way(
            f"Say an {kind} number that is between {low_word} and {high_word}.",
            f"Make an {kind} number. More than {low_word}, less than {high_word}.",
            f"The bear wants an {kind} number. It lies between {low_word} and {high_word}.",
        ),
        answer=listed([number_word(n) for n in fits], "or"),
        accept=tuple(number_word(n) for n in (best, *others)) if others else (),
        working=f"{kind}, from {low + 1} to {high - 1}: {', '.join(map(str, fits))}",
        cues=(
            Cue(f"Wait. Then: what does {kind} mean? What happens to the last sock?"),
            Cue(f"Say a number just past {low_word}. Lay it out in pairs and look."),
            Cue("Try the numbers in turn together, two by two. The child stops at the right kind."),
        ),
        watch_for=_WATCH[item],
        given={"kind": kind, "low": low, "high": high},
        guess=0.4,
    )


def _share(item: str, draw: Draw) -> Draft:
    """Two fair shares: how many each, and what is left."""
    number = draw.pick(_NUMBERS[item])
    each, left = divmod(number, 2)
    word = number_word(number)
    thing = draw.pick(("plum", "cracker", "block", "sock"))
    things = plural(2, thing)
    rest = "one left over" if left else "none left over"
    return Draft(
        say=draw.way(
            f"Two bears share {word} {things}. Tell me each share and what is left.",
            f"Deal {word} {things} to two bears, the same for each. What happens?",
            f"Give two bears {word} {things}, fair and square. What does each get?",
        ),
        answer=f"{number_word(each)} each, {rest}",
        accept=(f"{number_word(each)} and {number_word(each)}",),
        working=f"{number} = {each} + {each}" + (" + 1" if left else ""),
        cues=(
            Cue("Wait. Then: how do you deal so that no bear is cross?"),
            Cue(f"Look at all the {things}. Each bear takes from the row, turn by turn.", Counters(number, "line", what=things)),
            Cue("Begin: this for this bear, this for that bear. The child deals on and tells the shares."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "bears": 2},
    )


SKILL = Skill(
    id="even-odd",
    title="Even and odd",
    asks="can everyone find a partner?",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "pair-to-10",
            "pair to ten",
            ("pair-to-10", "seven-nine"),
            ("2.OA.C.3",),
            stands_on=("by-twos:to-10",),
            table="shoes",
        ),
        Level(
            "pair-to-20",
            "pair to twenty",
            ("pair-to-20", "eleven", "twelve"),
            ("2.OA.C.3",),
            seconds=60,
            table="shoes, socks",
        ),
        Level(
            "name-and-make",
            "name and make, to twenty",
            ("name-and-make", "fair-shares"),
            ("2.OA.C.3",),
            guess=0.4,
            table="buttons",
        ),
    ),
    ask=ask,
)
