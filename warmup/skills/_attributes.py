"""What can be measured about a thing: how long, how heavy, how much it holds, for the skill `measure`.

K.MD.A.1: tell what can be measured about a thing, and that one thing may have several (Common Core State
Standards for Mathematics, 2010). A child says them in words of its own: "how big around" is right as well.
"""

from warmup.english import listed
from warmup.model import Cue
from warmup.randomness import SeededRandom
from warmup.skills._home import a
from warmup.skills.base import Draft

_OPEN = ("pail", "basket", "tub", "box", "bag")
"""Things that something goes into: what they hold can be measured as well."""
_WHOLE = ("book", "brush", "scarf", "block", "fork", "pillow")
"""Things that hold nothing."""
_TOO = ("how wide it is", "how thick it is", "how far around it is")
"""What is measured like a length: right of anything, in any words."""


def measurable(thing: str) -> tuple[str, ...]:
    """What can be measured about the thing: two for a whole one, three for an open one."""
    length = "how tall it is" if thing in _OPEN else "how long it is"
    holds = ("how much it holds",) if thing in _OPEN else ()
    return (length, "how heavy it is", *holds)


_NOT_SIZE = "Color, or what it is for: true, but not to be measured. Ask what could be more or less."


def ask_what_to_measure(rng: SeededRandom) -> Draft:
    """Two things that can be measured about one thing."""
    thing = rng.pick(rng.pick((_OPEN, _WHOLE)))
    ways = measurable(thing)
    return Draft(
        say=rng.phrasing(
            f"What could we measure about this {thing}? Tell me two things.",
            f"Here is {a(thing)}. Tell me two things we could measure.",
            f"Name two things about this {thing} that we could measure.",
        ),
        answer=listed(ways) if len(ways) == 2 else f"any two of these: {listed(ways)}",
        accept=(*_TOO, "the same in other words"),
        working=f"{thing}: {listed(ways)}",
        cues=_to_find_out(thing),
        watch_for=_NOT_SIZE,
        given={"thing": thing, "wants": 2},
        table=f"{thing}, a strip of paper",
        do=f"Give your child {a(thing)} to hold.",
    )


def ask_another_thing(rng: SeededRandom) -> Draft:
    """One thing that can be measured is told; what else can be?"""
    thing = rng.pick(rng.pick((_OPEN, _WHOLE)))
    ways = measurable(thing)
    known = rng.pick(ways)
    others = [way for way in ways if way != known]
    told = known.replace("it is", f"this {thing} is").replace("it holds", f"this {thing} holds")
    return Draft(
        say=rng.phrasing(
            f"Pretend we know {told}. What else could we measure?",
            f"We could measure {told}. What else could we measure?",
            f"I want to know {told}. What else could we measure?",
        ),
        answer=listed(others, "or"),
        accept=(*(others if len(others) > 1 else ()), *_TOO, "the same in other words"),
        working=f"{thing}: {listed(ways)}",
        cues=_to_find_out(thing),
        watch_for="The same one in other words. Ask for one that needs another way to find out.",
        given={"thing": thing, "known": known},
        table=f"{thing}, a strip of paper",
        do=f"Give your child {a(thing)} to hold.",
    )


def _to_find_out(thing: str) -> tuple[Cue, Cue, Cue]:
    tools = (
        "a strip of paper, an orange and a cup of rice"
        if thing in _OPEN
        else "a strip of paper and an orange"
    )
    return (
        Cue(f"Think of a bigger {thing}. What would be more about it?"),
        Cue(f"Lay {tools} beside the {thing}. What could each help us find out?"),
        Cue(f"Slide a finger along the {thing} together, then lift it. The child tells what each shows."),
    )
