"""equal-shares: halves, then quarters, of a whole.

1.G.A.3: circles and rectangles in two or four equal parts, named halves, fourths and quarters;
more equal parts are smaller ones (Common Core State Standards for Mathematics, 2010). Whether parts are
equal is worked out from their areas.
"""

from itertools import accumulate, pairwise
from math import acos, isclose, pi, sqrt

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills.base import Draft, Level, Skill

_FOODS = {
    "toast": "a slice of toast",
    "pancake": "a pancake",
    "sheet": "a sheet of paper",
    "pizza": "a pizza",
    "tortilla": "a tortilla",
    "cheese": "a slice of cheese",
}
_TABLES = {
    "sheet": "paper",
    "toast": "toast (cooled)",
    "pancake": "pancake (cooled)",
    "pizza": "pizza (cooled)",
    "tortilla": "tortilla (cooled)",
}
"""What lies on the table, where it is not the word of the question: what comes hot is cooled first."""
_PART = {2: "half", 4: "quarter"}
_SAME = {"half": "halves", "quarter": "quarters"}

# (whole, cut, parts, lying): parts that are fair, and parts that are not, for two and for four.
_FAIR = {
    2: (
        ("circle", "slices", (1, 1), False),
        ("circle", "strips", (1, 1), True),
        ("rectangle", "strips", (1, 1), False),
        ("rectangle", "strips", (1, 1), True),
        ("square", "corners", (1, 1), False),
        ("rectangle", "corners", (1, 1), False),
    ),
    4: (
        ("circle", "slices", (1, 1, 1, 1), False),
        ("rectangle", "cross", (1, 1), False),
        ("square", "cross", (1, 1), False),
        ("rectangle", "strips", (1, 1, 1, 1), False),
        ("rectangle", "strips", (1, 1, 1, 1), True),
        ("square", "corners", (1, 1, 1, 1), False),
    ),
}
_UNFAIR = {
    2: (
        ("circle", "slices", (1, 2), False),
        ("circle", "strips", (1, 2), False),
        ("circle", "strips", (2, 1), True),
        ("rectangle", "strips", (1, 2), False),
        ("rectangle", "strips", (3, 1), True),
        ("square", "strips", (2, 1), False),
    ),
    4: (
        ("circle", "slices", (1, 2, 1, 2), False),
        ("circle", "strips", (1, 1, 1, 1), False),
        ("circle", "slices", (1, 1, 1), False),
        ("rectangle", "cross", (1, 2), False),
        ("rectangle", "strips", (2, 1, 1, 2), False),
        ("rectangle", "strips", (1, 1, 1), True),
    ),
}


def areas(whole: str, cut: str, parts: tuple[int, ...]) -> list[float]:
    """The share of the whole each part has, adding up to 1."""
    total = sum(parts)
    marks = [0.0, *(mark / total for mark in accumulate(parts))]
    match cut:
        case "cross":
            return [a * b / total**2 for a in parts for b in parts]
        case "strips" if whole == "circle":
            return [_below(end) - _below(start) for start, end in pairwise(marks)]
        case _:
            # Slices, strips of a rectangle, and cuts from corner to corner through the middle.
            return [part / total for part in parts]


def _below(mark: float) -> float:
    """The share of a circle within ``mark`` of its width, from one side (a circular segment)."""
    x = max(-1.0, min(1.0, 1 - 2 * mark))
    return (acos(x) - x * sqrt(1 - x * x)) / pi


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Judge the parts, make them, or tell how many make a whole."""
    match item:
        case "halves-or-not":
            return _equal_or_not(2, rng)
        case "quarters-or-not":
            return _equal_or_not(4, rng)
        case "make-halves":
            return _make(2, rng)
        case "make-quarters":
            return _make(4, rng)
        case "about-halves":
            return _about_halves(rng)
        case _:
            return _smaller(morning.animal, rng)


def _equal_or_not(count: int, rng: SeededRandom) -> Draft:
    part = _PART[count]
    fair = rng.coin()
    whole, cut, parts, lying = rng.pick((_FAIR if fair else _UNFAIR)[count])
    turn = rng.pick((0, 45, 90, 135)) if cut == "slices" else 0
    sizes = areas(whole, cut, parts)
    equal = len(sizes) == count and all(isclose(size, sizes[0], rel_tol=1e-9) for size in sizes)
    friends = number_word(count)
    return Draft(
        say=rng.phrasing(
            f"Is this cut into {_SAME[part]}? Tell me why.",
            f"{friends.capitalize()} friends get one part each. Is it fair?",
            f"Are all these parts {_SAME[part]}?",
        ),
        answer="yes" if equal else "no",
        accept=(f"yes: {friends} parts, all the same size",)
        if equal
        else (f"no: not {friends} equal parts",),
        working=" + ".join(f"{size:.0%}" for size in sizes),
        cues=(
            Cue("Count the parts. Which one would you like? Why that one?"),
            Cue("Cut a paper like it. Lay one part on top of the next and look at the edges."),
            Cue("Put a hand over the first part together. Does the next one fill the same hand?"),
        ),
        watch_for="Counting the parts and not looking at their size. The parts have to be equal."
        if count == 2
        else f"“{friends.capitalize()} parts, so they are quarters.” They must be equal as well.",
        given={"whole": whole, "cut": cut, "parts": list(parts), "count": count},
        picture=pictures.Shares(whole, cut, parts, turn, lying),
        table="",
    )


def _make(count: int, rng: SeededRandom) -> Draft:
    part, food = _PART[count], rng.pick(tuple(_FOODS))
    thing, friends = _FOODS[food], number_word(count)
    folds = {2: "once, edge to edge", 4: "in two, then in two again"}[count]
    return Draft(
        say=rng.phrasing(
            f"Show how to cut {thing} into {_SAME[part]}.",
            f"{friends.capitalize()} friends share {thing} fairly. Show where to cut.",
            f"Cut {thing} into {_SAME[part]} with your finger.",
        ),
        answer=f"{friends} parts, all the same size; nothing left over",
        accept=(f"folding it {folds}",) if food == "sheet" else (),
        working=" + ".join([f"1/{count}"] * count) + " = 1",
        cues=(
            Cue("How many parts do we want? May one of them be bigger?"),
            Cue("Fold a paper napkin first. Open it and look at the creases."),
            Cue("Lay a straw over the middle together. The child turns it until it looks fair."),
        ),
        watch_for="A small piece and a big one: “you get the big half”. Equal parts come first."
        if count == 2
        else "Cutting three times side by side, and the last part comes out thin.",
        given={"thing": food, "count": count},
        table=f"{_TABLES.get(food, food)}, straw",
        do="Hand over a sheet of paper." if food == "sheet" else f"Lay out {thing}, or draw one.",
    )


_SIZE = {"half": 1 / 2, "quarter": 1 / 4}


def _halves_asked(
    asked: str, thing: str, name: str, rng: SeededRandom
) -> tuple[Phrasing, str, tuple[str, ...]]:
    """What is said, its answer and what else counts, for one of the three questions."""
    half, whole = _SIZE["half"], thing.replace("a ", "a whole ", 1)
    match asked:
        case "how many":
            say = rng.phrasing(
                f"How many halves make {whole}?",
                f"We cut {thing} into halves. How many pieces is that?",
                f"You have {whole}. How many halves is that?",
            )
            return say, number_word(int(1 / half)), ()
        case "left":
            say = rng.phrasing(
                f"I take one of two equal parts. How much {name} is left?",
                f"Two equal parts, and you take one. How much {name} is left?",
                f"Two of us share {thing} fairly. You eat yours. How much is left?"
                if name != "paper"
                else "Two of us share a sheet of paper fairly. You use yours. How much is left?",
            )
            part = next(part for part, size in _SIZE.items() if size == 1 - half)
            return say, f"one {part}", (f"a {part}", part, f"the other {part}", "one part", "the other part")
        case _:
            say = rng.phrasing(
                f"Two equal parts make {whole}. What is each called?",
                f"I cut {thing} in two equal parts. What is each called?",
                f"Two of us share {thing} fairly. How much does each get?",
            )
            part = next(part for part, size in _SIZE.items() if size * 2 == 1)
            return say, f"a {part}", (part, f"one {part}")


def _about_halves(rng: SeededRandom) -> Draft:
    """How many halves make a whole, how much is left, what a part is called."""
    food, asked = rng.pick(tuple(_FOODS)), rng.pick(("how many", "left", "name"))
    name = food if food != "sheet" else "paper"
    say, answer, accept = _halves_asked(asked, _FOODS[food], name, rng)
    return Draft(
        say=say,
        answer=answer,
        accept=accept,
        working="1/2 + 1/2 = 1",
        cues=(
            Cue(f"See the {name} with a cut right down the middle."),
            Cue("Fold a napkin edge to edge, open it, and look at its parts."),
            Cue("Tear it on the crease together and share it out. The child tells the rest."),
        ),
        watch_for="Calling any pieces fair. Lay them on each other and look.",
        given={"thing": food, "ask": asked},
        table="paper napkin",
    )


def _smaller(animal: str, rng: SeededRandom) -> Draft:
    """Which is more, or less, of the same whole: a half or a quarter?"""
    food, more = rng.pick(tuple(_FOODS)), rng.coin()
    first, second = rng.shuffled(tuple(_SIZE))
    answer = (max if more else min)(_SIZE, key=_SIZE.__getitem__)
    much, big = ("more", "bigger") if more else ("less", "smaller")
    name, thing = food if food != "sheet" else "paper", _FOODS[food]
    return Draft(
        say=rng.phrasing(
            f"Which is {much} {name}, a {first} or a {second}?",
            f"{animal} wants {much} {name}. Should it be a {first} or a {second}?",
            f"Think of {thing}. Which is {big}, a {first} or a {second}?",
        ),
        answer=f"a {answer}",
        accept=(answer, f"the {answer}", *(("a fourth",) if answer == "quarter" else ())),
        working="1/2 = 1/4 + 1/4: a half is as much as two quarters",
        cues=(
            Cue("How many friends share when we cut it in two? In four?"),
            Cue("Fold one napkin once. Fold its twin twice. Lay them on top of each other."),
            Cue("Cut it in two together. Now the child cuts each part in two, and looks."),
        ),
        watch_for="“Four is more than two.” More parts means smaller parts: look at one of each.",
        given={"thing": food, "more": more},
        table="paper napkins",
    )


SKILL = Skill(
    id="equal-shares",
    title="Equal shares",
    asks="halves and quarters of a whole",
    strand=Strand.SHAPE,
    levels=(
        Level(
            "halves",
            "halves",
            ("make-halves", "about-halves"),
            ("halves-or-not",),
            codes=("1.G.A.3",),
            stands_on=("flat-shapes:four-shapes",),
            guess=0.5,
            table="toast (cooled), paper",
            guesses=(("make-halves", 0.1), ("about-halves", 0.3)),
        ),
        Level(
            "quarters",
            "quarters",
            ("quarters-or-not", "make-quarters", "quarter-or-half"),
            codes=("1.G.A.3",),
            stands_on=("equal-shares:halves",),
            waits_on=("equal-shares/halves-or-not",),
            guess=0.5,
            table="toast (cooled), paper",
            guesses=(("make-quarters", 0.1),),
        ),
    ),
    ask=ask,
)
