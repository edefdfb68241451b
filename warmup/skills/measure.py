"""measure: which is longer, which is heavier; what could be measured; how many units long.

K.MD.A.2 compares two things; K.MD.A.1 tells what can be measured about one; 1.MD.A.2 counts equal units
laid end to end (Common Core State Standards for Mathematics, 2010).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._attributes import ask_another_thing, ask_what_to_measure
from warmup.skills._home import a
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_FORMS = ("plain", "striped", "spotted")
_LONG_THINGS = ("spoon", "shoe", "fork", "sock", "book", "brush", "scarf", "mitt", "straw", "leaf")
_HEAVY_THINGS = ("shoe", "spoon", "book", "apple", "pear", "block", "orange", "roll", "hat", "sock")
ON_SEE_SAW = ("ball", "box", "cup", "hat", "boat", "fish")
"""What can be drawn on the seesaw, any two of them a pair."""
_STANDING = ("box", "basket", "pail", "tub", "shoe", "toy dog", "chair", "doll")
OPENS = 33
"""The week of `units` in routines/year.toml: short ribbons until the week after."""


class _Attribute(NamedTuple):
    """What two things are compared by, the act that compares them, and the slip it is known for."""

    more: str
    less: str
    fair: str
    look: str
    begin: str
    slip: str


_LENGTH = _Attribute(
    "longer",
    "shorter",
    "with one end of each lined up",
    "Hold up the {thing}. Slide a finger from end to end. What is {asked}?",
    "Lay the {thing} at the edge of the table together. The child lays a thing beside it.",
    "Ends not lined up. Start both things at the same edge.",
)
_HEIGHT = _Attribute(
    "taller",
    "shorter",
    "with both standing on the floor",
    "Stand the {thing} against a wall. Hold a hand level with its top. What is {asked}?",
    "Stand the {thing} on the floor together. The child stands a thing beside it.",
    "One stands on something, or lies down. Both stand on the floor.",
)
_WEIGHT = _Attribute(
    "heavier",
    "lighter",
    "when one is held in each hand",
    "Hold out both hands like a seesaw, the {thing} in one. Which hand sinks?",
    "Put the {thing} in one hand together. The child tries things in the other.",
    "Choosing by looks: a big thing need not be heavy. Lift it first.",
)

_NAMES = {_LENGTH: "length", _HEIGHT: "height", _WEIGHT: "weight"}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Two ribbons, a seesaw, a ribbon in clips; a thing to be found, or to be told about."""
    match item:
        case "longer" | "ends-not-lined-up":
            return _ribbons(item, morning.animal, rng)
        case "find-longer":
            tall = rng.coin()
            return _find(_HEIGHT if tall else _LENGTH, rng.pick(_STANDING if tall else _LONG_THINGS), rng)
        case "find-heavier":
            return _find(_WEIGHT, rng.pick(_HEAVY_THINGS), rng)
        case "heavier" | "big-is-not-heavy":
            return _see_saw(item, rng)
        case "what-to-measure":
            return ask_what_to_measure(rng)
        case "another-thing-to-measure":
            return ask_another_thing(rng)
        case "units":
            return _units(risen(morning, OPENS, 1), rng)
        case _:
            return _fallen(risen(morning, OPENS, 1), rng)


# ---- two things ------------------------------------------------------------------------------------


def _ribbons(item: str, animal: str, rng: SeededRandom) -> Draft:
    forms = rng.sample(_FORMS, 2)
    long = rng.between(9, 16)
    short = long - rng.between(2, 4)
    lined_up = item == "longer"
    # Laid askew, each of the two is as often the one that sticks out at the right.
    reach = rng.between(1, 3) if rng.coin() else -rng.between(1, min(2, long - short - 1))
    starts = {long: 0, short: 0 if lined_up else long - short + reach}
    lengths = rng.shuffled((long, short))
    asked = rng.pick(("longer", "shorter"))
    answer = forms[lengths.index(long if asked == "longer" else short)]
    picture = pictures.Lengths(
        lengths, forms, () if lined_up else tuple(starts[length] for length in lengths)
    )
    return Draft(
        say=rng.phrasing(
            f"Look at the two ribbons. Which one is {asked}?",
            f"Touch the {asked} ribbon.",
            f"{animal} wants the {asked} ribbon. Which one is it?",
        ),
        answer=f"the {answer} one",
        accept=(f"the {answer} ribbon",),
        working=f"from end to end, the {forms[lengths.index(long)]} one is the longer",
        cues=_side_by_side(lined_up),
        watch_for=f"Hearing longer for {asked}. Say the word again, slowly."
        if lined_up and asked == "shorter"
        else "Touching the one liked better. Run a finger along both."
        if lined_up
        else "Looking at one end only. A ribbon that sticks out need not be the longer one.",
        given={
            "forms": list(forms),
            "lengths": list(lengths),
            "starts": list(picture.starts),
            "asked": asked,
        },
        picture=picture,
    )


def _side_by_side(lined_up: bool) -> tuple[Cue, Cue, Cue]:
    begin = Cue("Cut two strips to match. Line up one end together; the child sees the rest.")
    if lined_up:
        return (
            Cue("They start at one line. Look at the other ends."),
            Cue("Run a finger along each from end to end. Which takes you on farther?"),
            begin,
        )
    return (
        Cue("Do both start at the same place?"),
        Cue("Mark each ribbon’s two ends on a strip of paper. Then line the marks up."),
        begin,
    )


def _find(attribute: _Attribute, thing: str, rng: SeededRandom) -> Draft:
    """Find a thing in the room: many are right, and the answer states the rule."""
    asked = rng.pick((attribute.more, attribute.less))
    return Draft(
        say=rng.phrasing(
            f"Find something {asked} than this {thing}.",
            f"What in this room is {asked} than this {thing}?",
            f"{'Look at' if attribute is _HEIGHT else 'Hold'} the {thing}. Now find something {asked}.",
        ),
        answer=f"anything {asked} than the {thing}, {attribute.fair}",
        working=f"put both side by side: the new thing is {asked}"
        if attribute is not _WEIGHT
        else f"one in each hand: the {thing} {'rises' if asked == attribute.more else 'sinks'}",
        cues=(
            Cue(f"{asked.capitalize()} than the {thing}. What could you try?"),
            Cue(attribute.look.format(thing=thing, asked=asked)),
            Cue(attribute.begin.format(thing=thing)),
        ),
        watch_for=attribute.slip,
        given={"thing": thing, "asked": asked, "by": _NAMES[attribute]},
        table=a(thing),
        do=f"Stand {a(thing)} on the floor."
        if attribute is _HEIGHT
        else f"Give your child {a(thing)} to hold.",
    )


def _see_saw(item: str, rng: SeededRandom) -> Draft:
    left, right = rng.sample(ON_SEE_SAW, 2)
    down = rng.pick(("left", "right"))
    heavy, light = (left, right) if down == "left" else (right, left)
    asked = rng.pick(("heavier", "lighter"))
    answer = heavy if asked == "heavier" else light
    trap = item == "big-is-not-heavy"
    return Draft(
        say=rng.phrasing(
            f"A {left} and a {right} sit on a seesaw. Which is {asked}?",
            f"Look at the seesaw. Which thing is {asked}?",
            f"Put your finger on the thing that is {asked}.",
        ),
        answer=f"the {answer}",
        working=f"the {heavy} is down: it is the heavier one",
        cues=(
            Cue("Which end of the seesaw is down?"),
            Cue("Hold out your arms like the plank. What makes an arm sink?"),
            Cue("Tip your arms like the plank together. The child tells what pulls its end down."),
        ),
        watch_for="Choosing the big one because it is big. Ask which end went down."
        if trap
        else f"Naming the end that is up. Say the word again: {asked}.",
        given={"left": left, "right": right, "down": down, "big": light if trap else "", "asked": asked},
        picture=pictures.Scale(left, right, down, light if trap else ""),
    )


# ---- units -----------------------------------------------------------------------------------------


def _units(far: bool, rng: SeededRandom) -> Draft:
    """Clips end to end along a ribbon, up to ten once that goes well."""
    count = rng.between(3, 10 if far else 6)
    return Draft(
        say=rng.phrasing(
            "How many clips long is the ribbon?",
            "We measure this ribbon with clips. How many clips long is it?",
            "Count the clips. How long is the ribbon?",
        ),
        answer=number_word(count),
        accept=(f"{number_word(count)} clips",),
        working=f"{count} clips, end to end",
        cues=(
            Cue("Start at one end. Touch each clip once."),
            Cue("Follow the ribbon’s edge. Stop at the end of each clip."),
            Cue("Touch the first clip together: “one…” The child goes on to the ribbon’s end."),
        ),
        watch_for="A clip counted twice, or the ends of clips counted, not the clips.",
        given={"long": count, "missing": []},
        picture=pictures.Lengths((count,), clips=True),
    )


def _fallen(far: bool, rng: SeededRandom) -> Draft:
    """Some clips are gone; the first and the last stay, so that both ends of the ribbon are covered."""
    count = rng.between(6, 10 if far else 7)
    missing = tuple(sorted(rng.sample(range(1, count - 1), rng.between(2, count // 3))))
    left = count - len(missing)
    return Draft(
        say=rng.phrasing(
            "Some clips fell off. How many clips long is the ribbon?",
            "Some clips are gone. How many clips long is the ribbon?",
            "The clips have gaps. How many clips long is the ribbon?",
        ),
        answer=number_word(count),
        accept=(f"{number_word(count)} clips",),
        working=f"{left} {plural(left, 'clip')} + {len(missing)} gone = {count}",
        cues=(
            Cue("What must lie in the gaps, so that nothing is left bare?"),
            Cue("Walk a finger along the ribbon, a clip’s length at each step."),
            Cue("Touch the first clip together: “one…” The child goes on, gaps as well."),
        ),
        watch_for="Counting only the clips that are there. A gap is long as well.",
        given={"long": count, "missing": list(missing)},
        picture=pictures.Lengths((count,), clips=True, missing=missing),
    )


SKILL = Skill(
    id="measure",
    title="Measure",
    asks="longer, heavier; what could we measure; how many units long",
    strand=Strand.MEASURING,
    levels=(
        Level(
            "longer",
            "longer, taller",
            ("longer", "find-longer"),
            ("ends-not-lined-up",),
            codes=("K.MD.A.2",),
            guess=0.5,
            table="spoons, strips of paper",
            guesses=(("find-longer", 0.0),),
            ends=("longer", "find-longer"),
        ),
        Level(
            "heavier",
            "heavier and lighter",
            ("heavier", "big-is-not-heavy", "find-heavier"),
            codes=("K.MD.A.2",),
            stands_on=("measure:longer",),
            guess=0.5,
            table="things to lift",
            guesses=(("find-heavier", 0.0),),
            ends=("heavier", "find-heavier"),
        ),
        Level(
            "what-to-measure",
            "what could we measure?",
            ("what-to-measure", "another-thing-to-measure"),
            codes=("K.MD.A.1",),
            stands_on=("measure:heavier", "capacity:pour-and-compare"),
            table="things to hold, a strip of paper",
        ),
        Level(
            "units",
            "how many units long, to 10",
            ("units", "fallen-clips"),
            codes=("1.MD.A.2",),
            stands_on=("measure:what-to-measure", "how-many:rows-to-20"),
            waits_on=("measure/ends-not-lined-up",),
            table="big clips, a ribbon",
        ),
    ),
    ask=ask,
)
