"""capacity: full, half full, empty; which holds more; how many cupfuls.

K.MD.A.2 compares what two things hold (Common Core State Standards for Mathematics, 2010). Full, half full
and empty, and cupfuls, are ordinary kitchen practice and stand in no standard of kindergarten.
"""

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._home import a, upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_FILLS = ("empty", "half full", "full")
_SAID_TOO = (("nothing in it",), ("half", "halfway"), ("to the top",))
_PLACES = ("on the left", "in the middle", "on the right")
# Nothing hot and nothing that breaks: no pot, pan or mug, no glass or jar in a child's hands.
_VESSELS = ("cup", "tub", "bowl", "pitcher", "pail")
_POURED = _VESSELS[:4]

# A tall and a wide jar, width and height in steps: first those where the wide one holds more. What holds
# more is the larger to look at as well.
_WIDE_MORE = (((3, 9), (7, 5)), ((3, 8), (6, 6)), ((4, 9), (8, 6)), ((3, 9), (8, 4)))
_TALL_MORE = (((5, 9), (6, 3)), ((6, 9), (7, 4)), ((5, 8), (6, 2)), ((6, 8), (7, 3)))
_SMALL_FULL = ((3, 3), (3, 4), (4, 3), (4, 4))
_BIG_HALF = ((6, 8), (7, 7), (6, 7), (7, 8))

OPENS = 29
"""The week of `cupfuls` in routines/year.toml: six cups at most until two weeks later."""


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """How full, which holds more, how many cups."""
    match item:
        case "how-full":
            return _how_full(rng)
        case "find-jar":
            return _find_jar(morning.animal, rng)
        case "fill-it":
            return _fill_it(rng)
        case "pour":
            return _pour(rng)
        case "tall-and-thin":
            return _tall_and_thin(rng)
        case "full-is-not-more":
            return _full_is_not_more(rng)
        case "cups-in-jar":
            return _cups_in_jar(risen(morning, OPENS), rng)
        case _:
            return _cups_to_fill(risen(morning, OPENS), rng)


# ---- full, half full, empty ------------------------------------------------------------------------


def _how_full(rng: SeededRandom) -> Draft:
    fill = rng.below(3)
    size = rng.pick(((3, 7), (4, 6), (5, 5), (6, 5), (4, 8)))
    return Draft(
        say=rng.phrasing(
            "Look at the jar. How full is it?",
            "How full is this jar?",
            "Tell me about this jar. How full is it?",
        ),
        answer=_FILLS[fill],
        accept=_SAID_TOO[fill],
        working=f"water {('at the bottom: none', 'halfway up', 'up to the rim')[fill]}",
        cues=(
            Cue("Is there any water? Look how far up it comes."),
            Cue("Put one finger at the top of the jar and one at the water."),
            Cue("Slide a finger up the jar together. The child tells how far up the water comes."),
        ),
        watch_for=(
            "“No jar” or “no water”: right. Give the word for it and say it together.",
            "“Full” for anything with water in it. Look for the rim.",
            "“Big” or “a lot”. Ask how far up the water comes.",
        )[fill],
        given={"fill": fill, "parts": 2, "size": list(size)},
        picture=pictures.Jars((size,), (fill,)),
    )


def _find_jar(animal: str, rng: SeededRandom) -> Draft:
    fills = rng.shuffled((0, 1, 2))
    fill = rng.below(3)
    return Draft(
        say=rng.phrasing(
            f"Touch the jar that is {_FILLS[fill]}.",
            f"{animal} wants the jar that is {_FILLS[fill]}. Point to it.",
            f"Which of the jars is {_FILLS[fill]}? Point to it.",
        ),
        answer=f"the one {_PLACES[fills.index(fill)]}",
        working=f"from the left: {', '.join(_FILLS[level] for level in fills)}",
        cues=(
            Cue(f"{_FILLS[fill].capitalize()}. How far up does the water come?"),
            Cue("Slide a finger up each jar from the bottom. Stop where the water stops."),
            Cue("Cover a jar that is not it together. The child picks from the rest."),
        ),
        watch_for="Half full and full mixed up. Look for the rim of the jar.",
        given={"fills": list(fills), "asked": fill},
        picture=pictures.Jars(((4, 7),) * 3, fills),
    )


def _fill_it(rng: SeededRandom) -> Draft:
    fill, vessel = rng.below(3), rng.pick(_VESSELS)
    where = ("nothing in it", "water about halfway up", "water right up to the rim")[fill]
    return Draft(
        say=rng.phrasing(
            f"Show me a {vessel} that is {_FILLS[fill]}.",
            f"Make this {vessel} {_FILLS[fill]}.",
            f"This {vessel} should be {_FILLS[fill]}. Can you do that?",
        ),
        answer=f"a {vessel} with {where}",
        accept=("the same with rice",) if fill else (),
        working=f"{_FILLS[fill]}: {('0 of 2', '1 of 2', '2 of 2')[fill]} halves",
        cues=(
            Cue(f"{_FILLS[fill].capitalize()}. Where on the {vessel} will it stop?"),
            Cue(f"Look at these jars, then at your {vessel}.", pictures.Jars(((4, 7),) * 3, (0, 1, 2))),
            Cue(f"Hold the {vessel} together. The child pours and says when to stop."),
        ),
        watch_for="Pouring until it runs over. Let it be seen, and ask where full ends.",
        given={"fill": fill, "vessel": vessel},
        table=f"plastic {vessel}, water, tray",
        do=f"Put {a(vessel)} with a little water on a tray, and more water beside it.",
    )


# ---- which holds more ------------------------------------------------------------------------------


def _pour(rng: SeededRandom) -> Draft:
    """Two real vessels and a pour from one into the other: what it shows decides, so the answer is a rule."""
    one, two = rng.sample(_POURED, 2)
    asked = rng.pick(("more", "less"))
    # What holds less does not take all of a full one.
    ends = (("there is room left", two), ("some runs over", one))
    if asked == "less":
        ends = (("some runs over", two), ("there is room left", one))
    return Draft(
        say=rng.phrasing(
            f"Which holds {asked}, the {one} or the {two}? Pour and see.",
            f"Pour a full {one} into the {two}. Which holds {asked}?",
            f"Fill the {one} and pour it into the {two}. Which holds {asked}?",
        ),
        answer="; ".join(f"if {end}, the {vessel}" for end, vessel in ends),
        working=f"a full {one} poured in: room left, the {two} holds more; runs over, the {one} holds more",
        cues=(
            Cue("Fill one to the rim. Where can all that water go?"),
            Cue("Watch the rim as it pours. Is there room left, or does it run over?"),
            Cue("Start to pour together. The child pours the rest and looks at the rim."),
        ),
        watch_for="Choosing the taller one before pouring. Let the water show it."
        if asked == "more"
        else "Hearing more for less. Say the word again, slowly.",
        given={"one": one, "two": two, "asked": asked},
        table=f"plastic {one}, plastic {two}, water, tray",
        do=f"Put an empty {one}, an empty {two} and water on a tray.",
    )


def _tall_and_thin(rng: SeededRandom) -> Draft:
    from warmup.pictures.jars import holds

    tall, wide = rng.pick(_WIDE_MORE if rng.coin() else _TALL_MORE)
    asked = rng.pick(("more", "less"))
    best = max if asked == "more" else min
    answer = "tall" if best(tall, wide, key=holds) == tall else "wide"
    sizes = rng.shuffled((tall, wide))
    return Draft(
        say=rng.phrasing(
            f"Look at the tall jar and the wide jar. Which holds {asked}?",
            f"Pretend we fill both jars. Which one holds {asked}?",
            f"Point to the jar that holds {asked}.",
        ),
        answer=f"the {answer} jar",
        accept=(f"the {answer} one",),
        working=f"tall {tall[0]} × {tall[0]} × {tall[1]} = {holds(tall)}, "
        f"wide {wide[0]} × {wide[0]} × {wide[1]} = {holds(wide)}",
        cues=(
            Cue("Look how high each is, and how wide as well."),
            Cue("Show with your arms how far around each jar is. Then how high."),
            Cue("Pretend to pour one into the other together. The child says if it runs over."),
        ),
        watch_for="Looking at height alone. Pour rice from a tall cup into a bowl to see.",
        given={"tall": list(tall), "wide": list(wide), "asked": asked},
        picture=pictures.Jars(sizes, (0, 0), parts=1),
    )


def _full_is_not_more(rng: SeededRandom) -> Draft:
    from warmup.pictures.jars import holds

    small, big = rng.pick(_SMALL_FULL), rng.pick(_BIG_HALF)
    asked = rng.pick(("more", "less"))
    jars = rng.shuffled(((small, 2), (big, 1)))
    answer = "half-full" if asked == "more" else "full"
    return Draft(
        say=rng.phrasing(
            f"One jar is full. One is half full. Which can hold {asked}?",
            f"Which of these two jars can hold {asked}?",
            f"Pretend we fill both to the top. Which jar holds {asked}?",
        ),
        answer=f"the {answer} jar",
        accept=(f"the {'big' if asked == 'more' else 'small'} jar",),
        working=f"full to the top: small {holds(small)}, big {holds(big)}",
        cues=(
            Cue("Not how much is in it now, but how much could go in."),
            Cue("Draw with a finger how far the water could rise in each."),
            Cue("Pretend to fill both to the rim together. The child says where more went in."),
        ),
        watch_for="Choosing by what is in it now. Full tells how far up, not how much it holds.",
        given={"full": list(small), "half": list(big), "asked": asked},
        picture=pictures.Jars(tuple(size for size, _ in jars), tuple(fill for _, fill in jars)),
    )


# ---- cupfuls ---------------------------------------------------------------------------------------


def _cups_in_jar(far: bool, rng: SeededRandom) -> Draft:
    """A jar with a line for each cup; eight are as many as a small pane can show."""
    takes = rng.between(5, 8 if far else 6)
    cups = rng.between(2, takes)
    return Draft(
        say=rng.phrasing(
            "Each line is one cup. How many cups are in the jar?",
            "Count the cups by the lines. How many are there?",
            "Each line is one cup. How many cups of water is that?",
        ),
        answer=number_word(cups),
        accept=(f"{number_word(cups)} cups",),
        working=f"the water stands at line {cups} of {takes}",
        cues=(
            Cue("Find where the water stops. Count up to there."),
            Cue("Put a finger on the lowest line: that is the first cup."),
            Cue("Count the lowest line together: “one…” The child goes up to the water."),
        ),
        watch_for="Counting the lines above the water too. Stop where the water stops.",
        given={"takes": takes, "cups": cups},
        picture=pictures.Jars(((8, 10),), (cups,), parts=takes, lined=True),
    )


def _cups_to_fill(far: bool, rng: SeededRandom) -> Draft:
    """How many more cups fill it: to ten once that goes well."""
    takes, vessel = rng.between(5, 10 if far else 6), rng.pick(("pitcher", "pail", "bowl", "tub"))
    cups = rng.between(1, takes - 1)
    more = takes - cups
    word = number_word(takes)
    held = f"{number_word(cups)} {plural(cups, 'cup')}"
    return Draft(
        say=rng.phrasing(
            f"{upper(word)} cups fill the {vessel}. We poured {number_word(cups)}. How many more?",
            f"The {vessel} holds {word} cups. {upper(held)} went in. How many more?",
            f"A {vessel} takes {word} cups. It has {number_word(cups)}. How many more?",
        ),
        answer=number_word(more),
        accept=(f"{number_word(more)} {plural(more, 'cup')}",),
        working=f"{cups} + {more} = {takes}",
        cues=(
            Cue(f"{number_word(cups).capitalize()} in it now. We stop at {word}."),
            Cue(f"Show {word} fingers. Fold a finger for each cup that is in."),
            Cue(f"Begin at {number_word(cups)} together and put up a finger for the next cup."),
        ),
        watch_for=f"Saying {word}: that is all it takes, not what is still to come.",
        given={"takes": takes, "cups": cups},
    )


SKILL = Skill(
    id="capacity",
    title="Capacity",
    asks="full, half full, empty; which holds more; how many cupfuls",
    strand=Strand.MEASURING,
    ladder=("full-half-empty", "pour-and-compare", "cupfuls"),
    levels=(
        Level(
            "full-half-empty",
            "full, half full, empty",
            ("how-full", "find-jar", "fill-it"),
            guess=0.33,
            table="cups, water or rice",
            guesses=(("fill-it", 0.0),),
            ends=("how-full", "find-jar"),
        ),
        Level(
            "pour-and-compare",
            "pour and compare",
            ("pour", "full-is-not-more"),
            ("tall-and-thin",),
            codes=("K.MD.A.2",),
            stands_on=("capacity:full-half-empty",),
            guess=0.5,
            table="a cup, a bowl, rice",
            slower=("pour",),
        ),
        Level(
            "cupfuls",
            "cupfuls to 10",
            ("cups-in-jar", "cups-to-fill"),
            stands_on=("capacity:pour-and-compare", "how-many:count-out-to-10"),
            waits_on=("capacity/tall-and-thin",),
            table="a cup, a pitcher, rice",
        ),
    ),
    ask=ask,
)
