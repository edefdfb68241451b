"""measure: which is longer, which is heavier; three in order; how many units long.

K.MD.A.1 and K.MD.A.2 compare two things and name what is compared; 1.MD.A.1 puts three in order and
compares two through a third; 1.MD.A.2 counts equal units laid end to end (Common Core State Standards for
Mathematics, 2010).
"""

from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word, plural
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._home import a
from warmup.skills.base import Draft, Level, Skill

_FORMS = ("plain", "striped", "spotted")
_LONG_THINGS = ("spoon", "shoe", "fork", "sock", "book", "brush", "scarf", "mitt", "straw", "leaf")
_HEAVY_THINGS = ("shoe", "spoon", "book", "apple", "pear", "block", "orange", "roll", "hat", "sock")
ON_SEE_SAW = ("ball", "box", "cup", "hat", "boat", "fish")
"""What can be drawn on the seesaw, any two of them a pair."""
_COLORS = ("red", "blue", "green", "black", "white", "pink", "brown", "gray")


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
_WEIGHT = _Attribute(
    "heavier",
    "lighter",
    "when one is held in each hand",
    "Hold out both hands like a seesaw, the {thing} in one. Which hand sinks?",
    "Put the {thing} in one hand together. The child tries things in the other.",
    "Choosing by looks: a big thing need not be heavy. Lift it first.",
)


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Two ribbons, a seesaw, three in a row, a ribbon in clips; or a thing to be found in the room."""
    match item:
        case "longer" | "ends-not-lined-up":
            return _ribbons(item, morning.animal, rng)
        case "find-longer":
            return _find(_LENGTH, rng.pick(_LONG_THINGS), rng)
        case "find-heavier":
            return _find(_WEIGHT, rng.pick(_HEAVY_THINGS), rng)
        case "heavier" | "big-is-not-heavy":
            return _see_saw(item, rng)
        case "order-three":
            return _order(rng)
        case "through-a-third":
            return _through(rng)
        case "units":
            return _units(rng)
        case _:
            return _fallen(rng)


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
        working=f"{forms[0]} {lengths[0]} steps, {forms[1]} {lengths[1]} steps",
        cues=_side_by_side(lined_up),
        watch_for=f"Hearing longer for {asked}. Say the word again, slowly."
        if lined_up and asked == "shorter"
        else "Looking at one end only. A ribbon that sticks out need not be the longer one.",
        given={
            "forms": list(forms),
            "lengths": list(lengths),
            "starts": list(picture.starts),
            "asked": asked,
        },
        picture=picture,
        guess=0.5,
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
            f"Hold the {thing}. Now find something {asked}.",
        ),
        answer=f"anything {asked} than the {thing}, {attribute.fair}",
        working=f"put both side by side: the new thing is {asked}"
        if attribute is _LENGTH
        else f"one in each hand: the {thing} {'rises' if asked == attribute.more else 'sinks'}",
        cues=(
            Cue(f"{asked.capitalize()} than the {thing}. What could you try?"),
            Cue(attribute.look.format(thing=thing, asked=asked)),
            Cue(attribute.begin.format(thing=thing)),
        ),
        watch_for=attribute.slip,
        given={"thing": thing, "asked": asked},
        guess=0.0,
        table=a(thing),
        do=f"Give your child {a(thing)} to hold.",
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
        guess=0.5,
    )


# ---- three things ----------------------------------------------------------------------------------


def _order(rng: SeededRandom) -> Draft:
    forms = rng.shuffled(_FORMS)
    short = rng.between(4, 7)
    middle = short + rng.between(2, 4)
    lengths = rng.shuffled((short, middle, middle + rng.between(2, 4)))
    first = rng.pick(("shortest", "longest"))
    order = sorted(zip(lengths, forms, strict=True), reverse=first == "longest")
    picture = pictures.Lengths(lengths, forms)
    return Draft(
        say=rng.phrasing(
            f"Put the ribbons in order. Start with the {first}.",
            f"Hang up the ribbons, {first} one first. Say them in order.",
            f"Name the ribbons one by one, {first} one first.",
        ),
        answer=", then ".join(form for _, form in order),
        working=", ".join(f"{form} {length}" for length, form in order) + " steps",
        cues=(
            Cue(f"Which one is the {first} of all? Cover it and look again."),
            Cue("Run a finger along each from the line. Where does each one stop?"),
            Cue(f"Say the first together: “{order[0][1]}…” The child goes on."),
        ),
        watch_for="Two in order, and the third put just anywhere. Compare it with both.",
        given={"forms": list(forms), "lengths": list(lengths), "first": first},
        picture=picture,
        guess=0.17,
        seconds=60,
    )


def _through(rng: SeededRandom) -> Draft:
    """Two ropes that never lie side by side, compared through a third."""
    long, middle, short = rng.sample(_COLORS, 3)
    asked = rng.pick(("longest", "shortest"))
    answer, again = long if asked == "longest" else short, middle.capitalize()
    end = f"Which is {asked}?"
    return Draft(
        say=rng.phrasing(
            f"Three ropes: {long} is longer than {middle}. {again} is longer than {short}. {end}",
            f"Three strings: {middle} is longer than {short}. {again} is shorter than {long}. {end}",
            f"Three tails: {short} is shorter than {middle}. {again} is shorter than {long}. {end}",
        ),
        answer=f"the {answer} one",
        accept=(answer,),
        working=f"{long} > {middle} > {short}",
        cues=(
            Cue("Say it again, slowly. Which color do you hear twice?"),
            Cue(f"Draw a line for {middle}. Where do the other two lines end?"),
            Cue(f"Draw {middle} together. The child draws one that is longer and one that is shorter."),
        ),
        watch_for="Taking the last one named. Draw each as you say it.",
        given={"order": [long, middle, short], "asked": asked},
        guess=0.33,
        seconds=60,
    )


# ---- units -----------------------------------------------------------------------------------------


def _units(rng: SeededRandom) -> Draft:
    """Clips end to end along a ribbon."""
    count = rng.between(3, 10)
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


def _fallen(rng: SeededRandom) -> Draft:
    """Some clips are gone; the first and the last stay, so that both ends of the ribbon are covered."""
    count = rng.between(6, 10)
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
    asks="longer, heavier; three in order; how many units long",
    strand=Strand.MEASURING,
    levels=(
        Level(
            "longer",
            "longer and shorter",
            ("longer", "ends-not-lined-up", "find-longer"),
            codes=("K.MD.A.2",),
            guess=0.5,
            table="spoons, strips of paper",
            guesses=(("find-longer", 0.0),),
        ),
        Level(
            "heavier",
            "heavier and lighter",
            ("heavier", "big-is-not-heavy", "find-heavier"),
            codes=("K.MD.A.1", "K.MD.A.2"),
            guess=0.5,
            table="things to lift",
            guesses=(("find-heavier", 0.0),),
        ),
        Level(
            "order-three",
            "three in order",
            ("order-three", "through-a-third"),
            codes=("1.MD.A.1",),
            guess=0.17,
            seconds=60,
            table="three ribbons",
            guesses=(("through-a-third", 0.33),),
        ),
        Level(
            "units-to-10",
            "how many units long, to 10",
            ("units", "fallen-clips"),
            codes=("1.MD.A.2",),
            table="big clips, a ribbon",
        ),
    ),
    ask=ask,
)
