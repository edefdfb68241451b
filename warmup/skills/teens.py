"""teens: ten and some more.

K.NBT.A.1: put together and take apart the numbers from 11 to 19 as ten ones and some more ones (Common Core
State Standards for Mathematics, 2010). That teen words hide the ten and say it last, so that eighteen is
written 81, is in National Research Council (2009), Mathematics Learning in Early Childhood; that -teen and
-ty are misheard is common practice, no source.
"""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._number import card_place, dealt
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_NUMBERS: dict[str, Sequence[int]] = {
    "build": (11, 12, 13, 14, 15),
    "eleven-twelve": (11, 12),
    "both-ways": tuple(range(11, 20)),
    "fourteen": (14,),
    "in-the-head": tuple(range(11, 20)),
    "thirteen": (13,),
    "fifteen": (15,),
}
_WATCH = {
    "build": "Counting the full frame all over again. Say ten, and count on.",
    "eleven-twelve": "No ten can be heard in this word. Say it as “ten and some more”.",
    "both-ways": "Saying the whole teen number for the part past ten.",
    "fourteen": "The ones are heard first, so they are put first. The ten goes in front.",
    "in-the-head": "Counting all of it on the fingers. Ten is there already.",
    "thirteen": "Heard or said as thirty. Say thir-TEEN, and ask again.",
    "fifteen": "Heard or said as fifty. Say fif-TEEN, and ask again.",
}
_THINGS = ("egg", "roll", "block", "apple")


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A teen number put together from ten and some more, or taken apart."""
    new = item == "both-ways" and not risen(morning, 16)
    number = rng.pick(_NUMBERS["build" if new else item])
    match item:
        case "fourteen" if rng.below(3) > 0:
            return _find(item, number, rng)
        case "thirteen" | "fifteen":
            return _apart(item, number, rng) if rng.below(3) > 0 else _together(item, number, rng)
        case "build" | "eleven-twelve" if rng.coin():
            return _build(item, number, rng)
        case "build" | "eleven-twelve":
            return _together(item, number, rng)
        case _:
            return _together(item, number, rng) if rng.coin() else _apart(item, number, rng)


def _seen(item: str) -> bool:
    """Whether the item's level has objects to look at."""
    return item not in ("in-the-head", "thirteen", "fifteen")


def _together(item: str, number: int, rng: SeededRandom) -> Draft:
    """Ten and some more: which number?"""
    more = number - 10
    word, thing = number_word(more), rng.pick(_THINGS)
    return Draft(
        say=rng.phrasing(
            f"Ten and {word} more. What number is that?",
            f"A full ten frame and {word} more. What number is it?",
            f"Start at ten. Count {word} more. What number do you reach?",
            f"We have ten {thing}s. We get {word} more. How many now?",
        ),
        answer=number_word(number),
        working=f"10 + {more} = {number}",
        cues=(
            Cue(f"Start at ten. Then put up {word} {plural(more, 'finger')}."),
            Cue(
                "Look at the frames. How many are in the full frame, without counting?",
                pictures.TwoFrames(10, more),
            ),
            Cue("Touch the full frame and say “ten” together. The child counts on, a finger on each."),
        ),
        watch_for=_WATCH[item],
        given={"ten": 10, "more": more},
        picture=pictures.TwoFrames(10, more) if _seen(item) else None,
        guess=0.0,
    )


def _apart(item: str, number: int, rng: SeededRandom) -> Draft:
    """A teen number is ten and how many more?"""
    word, thing = number_word(number), rng.pick(_THINGS)
    return Draft(
        say=rng.phrasing(
            f"{word.capitalize()} is ten and how many more?",
            f"We have {word} {thing}s. We use ten. How many are left?",
            f"I need {word}, and I have ten. How many more?",
            f"How many more than ten is {word}?",
        ),
        answer=number_word(number - 10),
        working=f"{number} = 10 + {number - 10}",
        cues=(
            Cue(f"Say it slowly: {word}. Ten is in it."),
            Cue(
                "Look at the full frame and the empty frame. What has to go in it?", pictures.TwoFrames(10, 0)
            ),
            Cue(
                f"Say “ten” together and count on to {word}, a finger for each. The child tells the fingers."
            ),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "ten": 10},
        picture=pictures.TwoFrames(10, 0) if _seen(item) else None,
        guess=0.0,
    )


def _build(item: str, number: int, rng: SeededRandom) -> Draft:
    """Build it: fill a ten frame first, then tell what is beside it."""
    word = number_word(number)
    more = number_word(number - 10)
    return Draft(
        say=rng.phrasing(
            f"Build {word}. Fill the ten frame first. Tell me both parts.",
            f"Put out {word}. Fill the ten frame first. What are the parts?",
            f"Show me {word}: a full ten frame and some more.",
        ),
        answer=f"ten and {more} more",
        accept=(f"ten and {more}", f"{more} more", more),
        working=f"{number} = 10 + {number - 10}",
        cues=(
            Cue("How many does the ten frame hold when it is full?"),
            Cue("Look at the full frame. Make yours the same, then count on.", pictures.TwoFrames(10, 0)),
            Cue(f"Fill the frame together and say “ten”. The child counts on and stops at {word}."),
        ),
        watch_for=_WATCH[item],
        given={"build": number, "ten": 10},
        picture=pictures.TwoFrames(0, 0),
    )


def _find(item: str, number: int, rng: SeededRandom) -> Draft:
    """The numeral among cards that turn it round: the ten is written in front."""
    word, more = number_word(number), number_word(number - 10)
    cards = dealt(rng, number, (41, 40, 4), (), count=rng.between(3, 4))
    return Draft(
        say=rng.phrasing(
            f"Ten and {more} more. Which card says that?",
            f"Find {word}. It is ten and {more} more.",
            f"Touch the card for {word}.",
        ),
        answer=card_place(cards, number),
        working=f"{number}: 1 ten in front, then {number - 10} ones",
        cues=(
            Cue(f"Say it slowly: {word}. How many tens does it have?"),
            Cue(
                "Look at a full frame and some more. Which digit stands for the full frame?",
                pictures.TwoFrames(10, number - 10),
            ),
            Cue("Write the 1 for the ten together. The child writes what comes after it, then looks."),
        ),
        watch_for=_WATCH[item],
        given={"find": number, "cards": list(cards)},
        picture=pictures.NumberRow(cards),
        seconds=20,
        guess=0.3,
    )


SKILL = Skill(
    id="teens",
    title="Teen numbers",
    asks="ten and some more",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "build",
            "build eleven to fifteen",
            ("build",),
            ("eleven-twelve",),
            codes=("K.NBT.A.1",),
            stands_on=("numerals:to-20", "subitize:five-and-some", "how-many:rows-to-20"),
            waits_on=("count/past-15",),
            table="ten frame and loose ones",
            slower=("build", "eleven-twelve"),
        ),
        Level(
            "both-ways",
            "both ways, eleven to nineteen",
            ("both-ways", "fourteen"),
            codes=("K.NBT.A.1",),
            stands_on=("teens:build",),
            waits_on=("numerals/one-four-or-four-one", "teens/eleven-twelve"),
            table="ten frame and loose ones",
            guesses=(("fourteen", 0.2),),
        ),
        Level(
            "in-the-head",
            "no objects",
            ("in-the-head", "thirteen", "fifteen"),
            codes=("K.NBT.A.1",),
            stands_on=("teens:both-ways",),
            seconds=20,
        ),
    ),
    ask=ask,
)
