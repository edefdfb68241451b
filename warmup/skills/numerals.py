"""numerals: read a numeral, find the numeral said, put it to a set.

K.CC.A.3 holds the written numerals from 0 to 20 and the sets they stand for, 1.NBT.A.1 those to 120 (Common
Core State Standards for Mathematics, 2010). That 14 is read as 41, as teen words say the ones first, is in
National Research Council (2009), Mathematics Learning in Early Childhood. The pairs taken for each other,
6 and 9 or 13 and 31, are common practice, no source; that -teen and -ty sound alike follows from the words
themselves.
"""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import count_words, number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.pictures import Picture
from warmup.randomness import SeededRandom
from warmup.skills._home import BEAN, BLOCK, PEG, SOCK, SPOON
from warmup.skills._number import card_place, chart_rows, dealt, swapped, tens_and_ones
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

# The numbers of the plain items, by their level.
_PLAIN = {
    "to-5": range(0, 6),
    "to-10": range(6, 11),
    "to-20": range(11, 21),
    "to-50": range(21, 51),
    "to-100": range(51, 101),
}
# The numbers taken for each other, and the cards they are laid among.
_PAIRS = {
    "six-nine": ((6, 9), (0, 8, 5, 3)),
    "one-four-or-four-one": ((13, 31, 14, 41, 16, 61, 17, 71, 18, 81, 19, 91), (1, 4, 40)),
    "twelve-twenty-one": ((12, 21), (2, 20, 11, 22)),
    "thirteen-thirty-one": ((13, 31), (30, 3, 33, 11)),
    "fifteen-fifty": ((15, 50), (5, 51, 55, 14)),
    "teens-and-tens": ((16, 60, 17, 70, 18, 80, 19, 90), (61, 76, 81, 96)),
}
_LOOKS_LIKE = {
    0: (6,),
    1: (4,),
    2: (5, 3),
    3: (5, 2),
    4: (1,),
    5: (2, 3),
    6: (9, 8),
    7: (1,),
    8: (6,),
    9: (6,),
    10: (1,),
}
_WATCH = {
    "to-5": "Mixing up shapes that look alike, or seeing them turned around. Trace it, then ask.",
    "to-10": "Mixing up shapes that look alike. Or reading both digits of a number by themselves.",
    "to-20": "Reading the two digits one by one, or hearing -teen as -ty.",
    "to-50": "Reading the digits from right to left, or one by one.",
    "to-100": "Hearing -ty as -teen, or reading the digits one by one.",
    "one-four-or-four-one": "Reading the digits as the word is heard, ones first. The ten stands in front.",
    "six-nine": "The loop is up for one and down for the other. Turned cards add to it.",
    "twelve-twenty-one": "The same digits, read the other way around.",
    "thirteen-thirty-one": "The three is heard first in both words, so it is looked for first.",
    "fifteen-fifty": "The two words sound alike. Lean on the ending: fif-TEEN, fif-TY.",
    "teens-and-tens": "The ending is missed: -teen for -ty. Say it slowly and lean on the end.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """One numeral to read, or one to find among four, evenly; up to twenty also one to put to a set."""
    number = rng.pick(_numbers(item, morning))
    if item in ("to-5", "to-10", "to-20") and rng.below(3) == 0:
        return _lay(item, number, rng)
    # A hundred is only read: four cards as wide as that would not fit a small screen.
    if rng.coin() or number == 100:
        return _read(item, number, rng)
    return _find(item, number, rng)


def _numbers(item: str, morning: Morning) -> Sequence[int]:
    """The numbers an item asks for; of those from eleven on the low ones first."""
    if item == "one-four-or-four-one":
        return [n for n in _PAIRS[item][0] if n < 20]
    if item == "to-20" and not risen(morning, 12):
        return range(11, 16)
    return _PAIRS[item][0] if item in _PAIRS else _PLAIN[item]


def _lay(item: str, number: int, rng: SeededRandom) -> Draft:
    """A numeral is shown; the child puts out as many as it says: none at all for a zero."""
    noun = rng.pick((BLOCK, SPOON, PEG, SOCK) if number <= 10 else (BLOCK, PEG, BEAN))
    return Draft(
        say=rng.phrasing(
            f"Look at this number. Put out this many {noun.many}.",
            f"Give me this many {noun.many}.",
            f"Take this many {noun.many} and show me.",
        ),
        answer=f"{noun.of(number)} laid out",
        accept=() if number else ("none", f"no {noun.many}", "nothing laid out"),
        working=f"{number}: {noun.of(number)}",
        cues=(
            Cue("What is the name of this number? Trace it with a finger."),
            Cue("Find the same number here. Count up to it with a finger.", _model(number)[1]),
            Cue(f"Lay down the first {noun.one} together, “one…”. The child decides when to stop.")
            if number
            else Cue(f"Say its name together, a {noun.one} in hand. Does it go down? The child decides."),
        ),
        watch_for="Laying out a handful, or never stopping. Ask what the number is, then count.",
        given={"read": str(number), "lay": noun.many},
        picture=pictures.Numeral(str(number)),
        guess=0.0,
        table=f"{number + 3} {noun.many}",
    )


def _read(item: str, number: int, rng: SeededRandom) -> Draft:
    """A numeral is shown; the child says its name."""
    return Draft(
        say=rng.phrasing(
            "What number is this?",
            "Read this number to me.",
            "Pretend this is a page in a book. What page is it?" if number else "Say this number for me.",
            # Of one digit nothing could be overlooked.
            "Look at the whole number. What does it say?" if number > 9 else "What does this number say?",
            "Look at this number. How do you say it?",
        ),
        answer=number_word(number),
        accept=("oh",) if number == 0 else (),
        working=_working(number),
        cues=_read_cues(number),
        watch_for=_watch_for(item, number),
        given={"read": str(number)},
        picture=pictures.Numeral(str(number)),
        seconds=20,
        guess=0.1,
    )


def _watch_for(item: str, number: int) -> str:
    """The slip of the item; of one digit there are no two to be read apart."""
    return _WATCH["to-5" if item == "to-10" and number < 10 else item]


def _find(item: str, number: int, rng: SeededRandom) -> Draft:
    """A number is said; the child finds its card among four."""
    cards = _cards(item, number, rng)
    return Draft(
        say=rng.phrasing(*_find_ways(number_word(number))),
        answer=card_place(cards, number),
        working=_working(number),
        cues=_find_cues(number),
        watch_for=_watch_for(item, number),
        given={"find": number, "cards": list(cards)},
        picture=pictures.NumberRow(cards),
        seconds=20,
        guess=0.25,
    )


def _find_ways(word: str) -> tuple[str, ...]:
    return (
        f"Point to {word}.",
        f"Which card says {word}? Touch it.",
        f"Show me the number {word}.",
        f"Put your finger on {word}.",
        f"Find {word} for me.",
    )


def _cards(item: str, number: int, rng: SeededRandom) -> tuple[str, ...]:
    """Four cards: the number, what it is taken for, and others of its kind."""
    if item in _PAIRS:
        pair, rest = _PAIRS[item]
        other = _partner(pair, number)
        return dealt(rng, number, (other,), rest)
    if number <= 10:
        return dealt(rng, number, _LOOKS_LIKE[number][:1], range(6) if item == "to-5" else range(10))
    like = [n for n in (swapped(number), 10 * (number // 10) + rng.below(10)) if n >= 10]
    return dealt(rng, number, like, range(10, _PLAIN[item].stop))


def _partner(pair: Sequence[int], number: int) -> int:
    """The other of the two in a list of pairs."""
    at = list(pair).index(number)
    return pair[at - 1 if at % 2 else at + 1]


def _working(number: int) -> str:
    if number == 100:
        return "100 = 10 tens"
    if number < 10:
        return f"{number}: {number_word(number)}" + {
            6: ", its loop below",
            9: ", its loop above",
            0: ", not any",
        }.get(number, "")
    return f"{number} = {tens_and_ones(number)}"


def _model(number: int) -> tuple[str, Picture]:
    """Where the numeral stands among others in order, and how to look for it there."""
    if number < 6:
        return "Here they lie in order.", pictures.NumberRow(tuple("012345"))
    if number <= 20:
        return "Look along the chart together.", chart_rows(1, number)
    low = (number - 1) // 10 * 10
    return "Look in these rows of the chart.", chart_rows(low - 9, min(100, low + 20))


def _read_cues(number: int) -> tuple[Cue, Cue, Cue]:
    where, chart = _model(number)
    if number == 100:
        return (
            Cue("How many digits are there? It is more than any number with two."),
            Cue("Run down the last column of the chart, a ten at a time.", chart),
            Cue("Count by tens together: “ten, twenty, thirty…” to the end of the chart."),
        )
    if number <= 10:
        return (
            Cue("Trace it in the air with a finger."),
            Cue(f"{where} Which looks just the same?", chart),
            _count_up(number),
        )
    tens, ones = divmod(number, 10)
    first = f"Look at the {tens} first. How many tens is that?"
    return (
        Cue("The 1 in front is a ten. Ten and what?" if number < 20 else first),
        Cue(f"{where} Find the same two digits in the same order.", chart),
        Cue(
            f"Say together: “ten and {number_word(ones)}”. The child gives it its name."
            if number < 20
            else f"Put up ten fingers {number_word(tens)} times"
            + (f", then {number_word(ones)} more." if ones else ", and no more.")
            + " The child says what that makes."
        ),
    )


def _count_up(number: int) -> Cue:
    """The count begun, for the child to finish at the numeral."""
    if number == 0:
        return Cue("Hold out your empty hands. The child says how many things are in them.")
    if number == 1:
        return Cue("Start at zero with a fist. The child puts up the next finger and says it.")
    begun = count_words(range(max(0, number - 3), number))
    return Cue(f"Finger on each in turn, count together: “{begun}…” and let the child say the next.")


def _find_cues(number: int) -> tuple[Cue, Cue, Cue]:
    word = number_word(number)
    where, chart = _model(number)
    if number <= 10:
        return (
            Cue(f"The child draws {word} on the table with a finger."),
            Cue(
                f"{where} Count to {word}, then look for that shape."
                if number
                else f"{where} Where does the row begin?",
                chart,
            ),
            Cue(f"Trace each card together with a finger. The child says when it is {word}."),
        )
    tens, ones = divmod(number, 10)
    return (
        Cue(
            f"Say it slowly, and lean on the end: {word}."
            if word.endswith(("teen", "ty"))
            else f"Say it again: {word}."
        ),
        Cue(f"{where} Count on to {word} with a finger, then look at the cards.", chart),
        Cue(
            f"“It has {number_word(tens)} {plural(tens, 'ten')}. Which digit on a card tells that?” "
            "Then the child looks for the ones."
            if ones
            else f"Say “{tens_and_ones(number)}, no ones” together. Which digit says that there are no ones?"
        ),
    )


SKILL = Skill(
    id="numerals",
    title="Numerals",
    asks="read a numeral, find the numeral said, put it to a set",
    strand=Strand.NUMBER,
    ladder=("to-5", "to-10", "to-20", "to-100"),
    levels=(
        Level(
            "to-5",
            "zero to five",
            ("to-5",),
            codes=("K.CC.A.3",),
            stands_on=("how-many:line-to-5",),
            guess=0.12,
            table="door numbers, blocks",
        ),
        Level(
            "to-10",
            "six to ten",
            ("to-10", "six-nine"),
            codes=("K.CC.A.3",),
            stands_on=("numerals:to-5", "how-many:count-out-to-10"),
            guess=0.12,
            guesses=(("six-nine", 0.2),),
            table="door numbers, page numbers, blocks",
            ends=("six-nine",),
        ),
        Level(
            "to-20",
            "eleven to twenty",
            ("to-20",),
            ("one-four-or-four-one",),
            codes=("K.CC.A.3",),
            stands_on=("numerals:to-10", "how-many:rows-to-20"),
            seconds=20,
            guess=0.2,
            guesses=(("to-20", 0.12),),
            table="page numbers, blocks",
            slower=("to-20",),
        ),
        Level(
            "to-100",
            "twenty-one to a hundred",
            ("to-50", "to-100", "twelve-twenty-one", "thirteen-thirty-one", "fifteen-fifty"),
            ("teens-and-tens",),
            codes=("1.NBT.A.1",),
            stands_on=("numerals:to-20", "by-tens:to-100"),
            waits_on=("numerals/one-four-or-four-one",),
            seconds=20,
            guess=0.2,
            table="page numbers",
            ends=("to-50", "to-100", "twelve-twenty-one", "thirteen-thirty-one", "fifteen-fifty"),
        ),
    ),
    ask=ask,
)
