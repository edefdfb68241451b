"""place-value: tens and ones, which number is more, what a digit is worth, then a hundred.

1.NBT.B.2: a two-digit number as so many tens and so many ones, 2.C: whole tens to 90; 1.NBT.B.3: two-digit
numbers compared by their tens and then their ones (Common Core State Standards for Mathematics, 2010). The
last level goes on to 199, toward the hundreds of 2.NBT.A.1 and past the two digits of 1.NBT.B.2, so it has no
code. That a bundle is counted as one thing is common practice, no source.
"""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._number import tens_and_ones
from warmup.skills._rising import risen
from warmup.skills._which_number import in_order, two_numerals
from warmup.skills.base import Draft, Level, Skill

_NUMBERS: dict[str, Sequence[int]] = {
    "whole-tens": (20, 30, 40, 50, 60, 70, 80, 90),
    "bundle-is-ten": (20, 30, 40, 50, 60, 70, 80, 90),
    "forty": (40,),
    "to-50": tuple(range(21, 51)),
    "thirteen-thirty-one": (13, 31),
    "to-99": tuple(range(51, 100)),
    "numerals-to-99": tuple(range(21, 100)),
    "digits-and-hundreds": tuple(n for n in range(22, 100) if n % 10 > 1 and n % 11),
}
_WATCH = {
    "whole-tens": "Counting a bundle as a single straw. Each bundle is ten.",
    "bundle-is-ten": "Saying how many bundles there are. Open one and count what is in it.",
    "numerals-to-99": "Looking at the ones first, since a 9 is big wherever it stands.",
    "nineteen-twenty-one": "Going by the biggest digit. The tens settle it.",
    "which-is-more": "Going by the ones, or calling turned digits the same. The tens settle it.",
    "forty": "Looking for something to say about the ones. The last digit tells how many.",
    "to-50": "Counting a bundle as one straw.",
    "thirteen-thirty-one": "The three is heard first in both words. Ask where the tens are.",
    "to-99": "The parts put down in the order they are heard, whichever is the tens.",
    "digits-and-hundreds": "Going by the digit alone, not by its place; or stopping after the hundred.",
    "ten-tens": "“Ten-ty”, or counting on by ones after ninety.",
}
_THINGS = ("straw", "stick", "crayon")


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A number put together from its tens and ones, or taken apart; a digit's worth; a hundred."""
    match item:
        case "whole-tens" | "bundle-is-ten":
            # Four bundles lie in a line without counting; more come when these are sure.
            number = rng.pick(_NUMBERS[item][: None if risen(morning, 24) else 4])
            if item == "bundle-is-ten":
                return _every_straw(item, number, rng)
            return _bundles(item, number, rng) if rng.coin() else _tens_in(item, number, rng)
        case "forty":
            return _apart(item, rng)
        case "numerals-to-99" if rng.coin():
            return in_order(rng.sample(_NUMBERS[item], 3), _WATCH[item], rng)
        case "numerals-to-99" | "nineteen-twenty-one" | "which-is-more":
            return two_numerals(_pair(item, rng), _WATCH[item], rng)
        case "digits-and-hundreds":
            return _worth(item, rng) if rng.coin() else _past_hundred(item, rng)
        case "ten-tens":
            return _more_tens(item, rng) if rng.below(3) else _ten_bundles(item, rng)
        case _:
            return _together(item, rng) if rng.coin() else _apart(item, rng)


def _pair(item: str, rng: SeededRandom) -> tuple[int, ...]:
    """Two numbers to set against each other, in either order."""
    match item:
        case "nineteen-twenty-one":
            pair = (19, 21)
        case "which-is-more":
            # The lesser has more ones: often the same digits turned around, as 13 and 31.
            tens, more_tens = sorted(rng.sample(range(1, 10), 2))
            ones, more_ones = sorted(rng.sample(range(10), 2))
            turned = (10 * tens + more_tens, 10 * more_tens + tens)
            pair = turned if rng.coin() else (10 * tens + more_ones, 10 * more_tens + ones)
        case _:
            return rng.sample(_NUMBERS[item], 2)
    return rng.shuffled(pair)


def _every_straw(item: str, number: int, rng: SeededRandom) -> Draft:
    """Bundles that nobody calls ten: how many straws? A bundle that counts as one shows here."""
    tens, thing = number_word(number // 10), rng.pick(("straw", "crayon"))
    things = f"{thing}s"
    say = rng.phrasing(
        f"Look at the bundles. How many {things} are in them all?",
        f"Pretend we open every bundle. How many loose {things}?",
        f"Here are {tens} bundles. How many kids can each get one {thing}?",
    )
    return Draft(
        say=say,
        answer=number_word(number),
        accept=tuple(
            f"{number_word(number)} {unit}"
            for unit in (things, "kids" if say.key == "c" else f"loose {things}")
        ),
        working=f"{' + '.join(['10'] * (number // 10))} = {number}",
        cues=(
            Cue(f"How many {things} does one bundle hold?"),
            Cue(f"Open a bundle and count its {things}. Tie it up again. What do you count by?"),
            Cue("Touch the first bundle together and say “ten”. The child goes on by tens."),
        ),
        watch_for=_WATCH[item],
        given={"tens": number // 10, "ones": 0},
        picture=pictures.Bundles(number // 10, 0, things),
    )


def _bundles(item: str, number: int, rng: SeededRandom) -> Draft:
    """Some bundles of ten: how many in all?"""
    tens, things = number_word(number // 10), f"{rng.pick(_THINGS)}s"
    say = rng.phrasing(
        f"Each bundle has ten {things}. Here are {tens} bundles. How many {things}?",
        f"You have {tens} tens. What number is that?",
        f"Here are {tens} bundles of ten {things}. How many {things}?",
    )
    return Draft(
        say=say,
        answer=number_word(number),
        accept=() if say.key == "b" else (f"{number_word(number)} {things}",),
        working=f"{' + '.join(['10'] * (number // 10))} = {number}",
        cues=(
            Cue(f"What is in a bundle? There are {tens} of those."),
            Cue(
                "Touch each bundle in turn. What do you count by?", pictures.Bundles(number // 10, 0, things)
            ),
            Cue("Count by tens together, a finger on each bundle: “ten…” The child goes on."),
        ),
        watch_for=_WATCH[item],
        given={"tens": number // 10, "ones": 0},
        picture=pictures.Bundles(number // 10, 0, things),
    )


def _tens_in(item: str, number: int, rng: SeededRandom) -> Draft:
    """How many tens are in a whole ten?"""
    word, things = number_word(number), f"{rng.pick(_THINGS)}s"
    return Draft(
        say=rng.phrasing(
            f"How many tens are in {word}?",
            f"You tie {word} {things} in bundles of ten. How many bundles?",
            f"A box holds ten {things}. How many boxes for {word}?",
        ),
        answer=number_word(number // 10),
        accept=tuple(f"{number_word(number // 10)} {tens}" for tens in ("tens", "bundles", "boxes")),
        working=f"{number} = {' + '.join(['10'] * (number // 10))}",
        cues=(
            Cue(f"Count by tens. When do you get to {word}?"),
            Cue("Look at the bundles. Each is a ten.", pictures.Bundles(number // 10, 0, things)),
            Cue(f"Count by tens to {word} together, a finger up for each. The child tells the fingers."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "count": "tens"},
    )


def _together(item: str, rng: SeededRandom) -> Draft:
    """So many tens and so many ones: which number? Past fifty the ones may come first."""
    number = rng.pick(_NUMBERS[item])
    tens, ones = divmod(number, 10)
    parts = tens_and_ones(number).split(" and ")
    if item == "to-99" and rng.coin():
        parts.reverse()
    said = " and ".join(parts)
    things = f"{rng.pick(_THINGS)}s"
    say = rng.phrasing(
        f"{said.capitalize()}. What number is that?",
        f"I have {said}. What number is that?",
        f"Put out {said}. How many {things}?",
        f"What number has {said}?",
    )
    return Draft(
        say=say,
        answer=number_word(number),
        accept=(f"{number_word(number)} {things}",) if say.key == "c" else (),
        working=f"{10 * tens} + {ones} = {number}" if ones else f"{tens} × 10 = {number}",
        cues=(
            Cue("Which part is the tens? Start with that part."),
            Cue(
                "Touch the bundles first and count by tens, then the loose ones.",
                pictures.Bundles(tens, ones, things),
            ),
            Cue("Count the bundles together: “ten…” The child goes on, then counts on by ones."),
        ),
        watch_for=_WATCH[item],
        given={"tens": tens, "ones": ones},
        picture=pictures.Bundles(tens, ones, things),
    )


def _apart(item: str, rng: SeededRandom) -> Draft:
    """A number taken apart in tens and ones."""
    number = rng.pick(_NUMBERS[item])
    tens, ones = divmod(number, 10)
    word, things = number_word(number), f"{rng.pick(_THINGS)}s"
    say = rng.phrasing(
        f"Tell me the tens and the ones in {word}.",
        f"Tie {word} {things} in tens. How many bundles and loose ones?",
        f"Build {word} with bundles and loose ones. What do you use?",
    )
    # The key in the words of the question: tens and ones, or bundles and loose ones.
    ten, one = ("ten", "one") if say.key == "a" else ("bundle", "loose one")
    loose = number_word(ones) if ones else "no"
    exact = (
        (f"{number_word(tens)} and {number_word(ones)}", tens_and_ones(number))
        if ones
        else (f"{number_word(tens)} {plural(tens, ten)}", f"{number_word(tens)} tens", number_word(tens))
    )
    # Ten ones may stay unbundled where nothing was to be tied: a child who says so is right.
    others = [
        f"{number_word(t)} {plural(t, ten)} and {number_word(number - 10 * t)} {one}s"
        for t in range(tens - 1, 0, -1)
        if say.key != "b"
    ]
    answer = f"{number_word(tens)} {plural(tens, ten)} and {loose} {plural(ones, one)}"
    return Draft(
        say=say,
        answer=answer,
        accept=tuple(form for form in dict.fromkeys((*exact, *others)) if form != answer),
        working=f"{number} = {10 * tens} + {ones}",
        cues=(
            Cue(f"Say it slowly: {word}. How many whole tens fit in it?"),
            Cue("Look at it laid out. What is tied up, what is loose?", pictures.Bundles(tens, ones, things)),
            Cue("Write it together, and cover the last digit. The child tells that part, then the other."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "count": "tens and ones" if say.key == "a" else "bundles and loose ones"},
    )


def _worth(item: str, rng: SeededRandom) -> Draft:
    """What one of the two digits is worth."""
    number = rng.pick(_NUMBERS[item])
    tens, ones = divmod(number, 10)
    front = rng.coin()
    digit = tens if front else ones
    word, worth = number_word(digit), 10 * digit if front else digit
    units = ("ten", "bundle") if front else ("one", "loose one")
    return Draft(
        say=rng.phrasing(
            f"Look at this number. What is the {word} worth?",
            f"Point to the {word}. How many straws does it stand for?",
            f"We have this many straws. How many does the {word} mean?",
        ),
        answer=number_word(worth),
        accept=(
            *(f"{word} {plural(digit, unit)}" for unit in units),
            f"{number_word(worth)} {plural(worth, 'straw')}",
        ),
        working=f"{number} = {10 * tens} + {ones}",
        cues=(
            Cue(f"Read the whole number. Does the {word} count bundles or loose ones?"),
            Cue(f"Look at it built. Which part does the {word} tell?", pictures.Bundles(tens, ones)),
            Cue("Lay that part out together, count the first, and let the child count it to the end."),
        ),
        watch_for=_WATCH[item],
        given={"number": number, "place": "tens" if front else "ones"},
        picture=pictures.Numeral(str(number)),
    )


def _past_hundred(item: str, rng: SeededRandom) -> Draft:
    """A hundred, so many tens and so many ones: which number?"""
    # Nobody says "one ten, one one": with the hundred that would be four numbers to keep in mind.
    rest = rng.pick([n for n in range(2, 100) if n // 10 != 1 and n % 10 != 1])
    tens, ones = divmod(rest, 10)
    number = 100 + rest
    parts = [
        f"{number_word(count) if count else 'no'} {plural(count, name)}"
        for count, name in ((tens, "ten"), (ones, "one"))
    ]
    said = ", ".join(("one hundred", *parts))
    return Draft(
        say=rng.phrasing(
            f"{said.capitalize()}. What number is that?",
            f"Say this number: {said}.",
            f"What number has {said}?",
        ),
        answer=number_word(number),
        accept=(number_word(number).replace("hundred ", "hundred and "),),
        working=f"100 + {10 * tens} + {ones} = {number}",
        cues=(
            Cue("Say the hundred first. What comes after it?"),
            Cue(
                "Look at the blocks: the big square, then the rods, then the small cubes.",
                pictures.BaseTen(1, tens, ones),
            ),
            Cue("Touch the big square and say “one hundred” together. The child says the rest."),
        ),
        watch_for=_WATCH[item],
        given={"hundreds": 1, "tens": tens, "ones": ones},
        picture=pictures.BaseTen(1, tens, ones),
    )


def _more_tens(item: str, rng: SeededRandom) -> Draft:
    """Some tens: how many more tens make a hundred?"""
    have = rng.between(1, 9)
    word, tens = number_word(have), plural(have, "ten")
    more, bundles = number_word(10 - have), plural(have, "bundle")
    return Draft(
        say=rng.phrasing(
            f"You have {word} {tens}. How many more tens make a hundred?",
            f"Here are {word} {bundles} of ten. How many more bundles make a hundred?",
            f"Count by tens from {number_word(10 * have)} to a hundred. How many tens?",
        ),
        answer=more,
        accept=(f"{more} more", *(f"{more} {plural(10 - have, unit)}" for unit in ("ten", "bundle"))),
        working=f"{10 * have} + {100 - 10 * have} = 100, and {100 - 10 * have} is {10 - have} of the tens",
        cues=(
            Cue("Think of a hundred as a row of bundles. How long is the row?"),
            Cue("Look at the bundles we have. What is not there yet?", pictures.Bundles(have, 0)),
            Cue(f"Count on by tens from {number_word(10 * have)} together, fingers up. The child ends it."),
        ),
        watch_for=_WATCH[item],
        given={"have": have, "make": 10},
    )


def _ten_bundles(item: str, rng: SeededRandom) -> Draft:
    """Ten tens are a hundred."""
    things = f"{rng.pick(_THINGS)}s"
    return Draft(
        say=rng.phrasing(
            f"Here are ten bundles of ten {things}. How many {things}?",
            "What number is ten tens?",
            f"Put ten tens of {things} together. How many {things}?",
        ),
        answer="one hundred",
        accept=("a hundred", "hundred", f"one hundred {things}"),
        working=f"10 × 10 = {10 * 10}",
        cues=(
            Cue("What do you count by, when each bundle is ten?"),
            Cue("Look at all the bundles. Count them by tens.", pictures.Bundles(10, 0, things)),
            Cue("Count by tens together to ninety, a finger for each. The child says the last."),
        ),
        watch_for=_WATCH[item],
        given={"tens": 10, "ones": 0},
    )


SKILL = Skill(
    id="place-value",
    title="Place value",
    asks="tens and ones, which is more, then hundreds",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "whole-tens",
            "whole tens to ninety",
            ("whole-tens", "forty"),
            ("bundle-is-ten",),
            codes=("1.NBT.B.2", "1.NBT.B.2.C"),
            stands_on=("by-tens:to-100", "teens:both-ways", "school-day:tens-and-ones"),
            waits_on=("school-day/new-bundle",),
            table="banded straws",
        ),
        Level(
            "to-99",
            "to ninety-nine, which is more",
            ("to-50", "to-99", "thirteen-thirty-one", "numerals-to-99", "nineteen-twenty-one"),
            ("which-is-more",),
            codes=("1.NBT.B.2", "1.NBT.B.3"),
            stands_on=("place-value:whole-tens", "numerals:to-100"),
            waits_on=("numerals/teens-and-tens", "place-value/bundle-is-ten"),
            table="banded straws",
            guesses=(("numerals-to-99", 0.33), ("nineteen-twenty-one", 0.5), ("which-is-more", 0.5)),
        ),
        Level(
            "hundreds",
            "a hundred is ten tens, to 199",
            ("digits-and-hundreds", "ten-tens"),
            toward=("2.NBT.A.1",),
            stands_on=("place-value:to-99", "count:one-to-100"),
            waits_on=("place-value/which-is-more",),
            seconds=60,
            table="banded straws",
        ),
    ),
    ask=ask,
)
