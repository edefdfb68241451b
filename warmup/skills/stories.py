"""stories: one short story, one question.

The situations are those of the Common Core State Standards for Mathematics (2010), glossary, Table 1
(from memory): in kindergarten add to and take from with the result unknown, put together with the
total unknown, and both parts unknown (K.OA.A.1 acted out, K.OA.A.2 totals no bigger than ten, K.OA.A.3 in
more ways than one); later the change unknown, a part unknown, and compare with the difference unknown
(1.OA.A.1). No word of a story decides what is to be done: a story with "more" in it may ask for what was
there before, or for how many there were not.
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._corners import Corner, in_a_corner
from warmup.skills._home import upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

Cues = tuple[Cue, Cue, Cue]
_ACT = "Set out some toys, to act it out."

_WATCH = {
    "join-5": "Telling only how many came. Ask who was there before.",
    "leave-5": "Telling how many went. Look at those still there.",
    "nothing-left": "Silence, or the number that went. Ask who is still there.",
    "join-10": "Counting all of them from one. Begin with those who were there first.",
    "leave-10": "Adding by habit. Tell again what happened in the story.",
    "together-10": "Waiting for something to happen. No one comes or goes; count them all.",
    "both-parts": "Telling one part only. Ask how many are left over for the other kind.",
    "another-way": "Only one of the two numbers changed, so that some are lost. Count both parts.",
    "change": "Telling the number at the end. Ask what happened in between.",
    "more-is-not-add": "Hearing “more” and adding all the numbers. Ask how many there were before.",
    "how-many-more": "Telling the larger number. Ask which of them have no partner.",
}

# How many there are in all: the fewest, the most at first, the most later on, and the week the level opens.
_TOTALS = {
    "join-5": (2, 4, 5, 8),
    "leave-5": (2, 4, 5, 8),
    "nothing-left": (2, 4, 5, 8),
    "join-10": (6, 8, 10, 20),
    "leave-10": (6, 8, 10, 20),
    "together-10": (6, 8, 10, 20),
    "change": (4, 6, 10, 31),
    "more-is-not-add": (4, 6, 10, 31),
    "how-many-more": (4, 6, 10, 31),
}


class _Story(NamedTuple):
    """A situation with its numbers: how each corner tells it, its answer and its help."""

    situation: str
    given: Mapping[str, int]
    tell: Callable[[Corner, int], str]
    answer: int
    working: str
    cues: Callable[[Corner], Cues]


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A story in one of the corners; its wording is named after the corner."""
    if item in ("both-parts", "another-way"):
        return _both_parts(item, morning, rng)
    story = _story(item, morning, rng)
    told, corner = in_a_corner(story.tell, rng)
    return Draft(
        say=told,
        answer=number_word(story.answer),
        accept=("none", "nothing") if story.answer == 0 else (),
        working=story.working,
        cues=story.cues(corner),
        watch_for=_watch_for(item, story),
        given={"situation": story.situation, **story.given},
        do=_ACT,
    )


def _watch_for(item: str, story: _Story) -> str:
    """The slip of the item, and where its words would not fit the story another."""
    if item == "join-10" and story.given["start"] < story.given["came"]:
        return "Counting all of them from one. Begin with the larger group."
    if item == "change" and "part" in story.given:
        return "Telling a number just heard. Ask who the rest are."
    return _WATCH[item]


def _story(item: str, morning: Morning, rng: SeededRandom) -> _Story:
    low, at_first, most, opens = _TOTALS[item]
    high = most if risen(morning, opens) else at_first
    match item:
        case "join-5" | "join-10":
            total, one = _sum(low, high, rng)
            return _add_to(one, total - one)
        case "leave-5" | "leave-10":
            total, left = _rest(low, high, rng)
            return _take_from(total, total - left)
        case "nothing-left":
            start = rng.between(low, high)
            return _take_from(start, start)
        case "together-10":
            total, one = _sum(low, high, rng)
            return _put_together(one, total - one)
        case "change":
            total, part = _rest(low, high, rng, least=2)
            return _change_took(total, part) if rng.coin() else _part_unknown(total, part)
        case "more-is-not-add":
            total, part = _rest(low, high, rng, least=2)
            return _change_added(total - part, total)
        case _:
            total, part = _rest(low, high, rng)
            return _compare(total, total - part)


def _sum(low: int, high: int, rng: SeededRandom) -> tuple[int, int]:
    """A total from ``low`` to ``high``, each as likely as another, and a part of it."""
    total = rng.between(low, high)
    return total, rng.between(1, total - 1)


def _rest(low: int, high: int, rng: SeededRandom, least: int = 1) -> tuple[int, int]:
    """A total from ``low`` to ``high``, and a part of it, drawn first so that each is as likely.

    Of what is told as "some" or as "the rest" there are two at the ``least``.
    """
    part = rng.between(least, high - 1)
    return rng.between(max(low, part + 1), high), part


def _come_or_go(start: int, corner: Corner, picture: "pictures.Counters", act: str, last: str) -> Cues:
    return (
        Cue(f"Tell it again. First {corner.who.of(start)}. Did some come, or go?"),
        Cue(act, picture),
        Cue(last),
    )


def _add_to(start: int, came: int) -> _Story:
    one, other = number_word(start), number_word(came)
    return _Story(
        "add to, result unknown",
        {"start": start, "came": came},
        lambda s, shape: (
            f"{upper(s.who.of(start))} {s.were}. {upper(other)} {s.came}. How many are {s.here} now?"
            if shape
            else f"{upper(s.who.of(start))} {s.were}. Then {other} {s.came}. How many {s.who.many} is that?"
        ),
        start + came,
        f"{start} + {came} = {start + came}",
        lambda s: _come_or_go(
            start,
            s,
            pictures.Counters(start, second=came, what=s.who.many),
            f"Let blocks be the {s.who.many}: {one} here, {other} on their way.",
            f"Say “{one}” and move the first of the others over together. The child counts on.",
        ),
    )


def _take_from(start: int, went: int) -> _Story:
    one, other = number_word(start), number_word(went)
    return _Story(
        "take from, result unknown",
        {"start": start, "went": went},
        lambda s, shape: (
            f"{upper(s.who.of(start))} {s.were}. {upper(other)} {s.went}. How many are still {s.here}?"
            if shape
            else f"{upper(s.who.of(start))} {s.were}. Then {other} {s.went}. How many {s.who.many} were left?"
        ),
        start - went,
        f"{start} − {went} = {start - went}",
        lambda s: _come_or_go(
            start,
            s,
            pictures.Counters(start, what=s.who.many),
            f"Let blocks be the {s.who.many}. Lay out {one} and tell it again.",
            f"Slide the first away together. The child goes on until {other} "
            f"{'has' if went == 1 else 'have'} gone.",
        ),
    )


def _put_together(one: int, other: int) -> _Story:
    a, b = number_word(one), number_word(other)
    return _Story(
        "put together, total unknown",
        {"one": one, "other": other},
        lambda s, shape: (
            f"{upper(a)} {s.kinds[0]} {s.who.named(one)} {s.were}. "
            f"{upper(b)} {s.kinds[1]} {s.who.named(other)} did too. How many {s.who.many} is that?"
            if shape
            else f"I see {a} {s.kinds[0]} and {b} {s.kinds[1]} {s.who.named(other)}. "
            f"How many {s.who.many} do I see?"
        ),
        one + other,
        f"{one} + {other} = {one + other}",
        lambda s: (
            Cue(f"Tell it again. Who is {s.kinds[0]}? Who is {s.kinds[1]}? We want them all."),
            Cue(
                f"Let blocks be the {s.who.many}: {a} here, {b} there.",
                pictures.Counters(one, second=other, what=s.who.many),
            ),
            Cue(f"Push both heaps together. Say “{a}” and let the child count on."),
        ),
    )


def _change_took(start: int, went: int) -> _Story:
    end, one = number_word(start - went), number_word(start)
    return _Story(
        "take from, change unknown",
        {"start": start, "end": start - went},
        lambda s, shape: (
            f"{upper(s.who.of(start))} {s.were}. Some {s.went}, and {end} stayed. How many {s.went}?"
            if shape
            else f"{upper(s.who.of(start))} {s.were}. Some {s.went}. With {end} left, how many {s.went}?"
        ),
        went,
        f"{start} − {went} = {start - went}",
        lambda s: _come_or_go(
            start,
            s,
            pictures.Counters(start, what=s.who.many),
            f"Lay out {one} blocks. Take some off until {end} {'is' if start - went == 1 else 'are'} left.",
            f"Slide the first away together. The child stops at {end} and counts those that went.",
        ),
    )


def _part_unknown(total: int, hidden: int) -> _Story:
    part, word = number_word(total - hidden), number_word(total)
    are, were = ("is", "was") if total - hidden == 1 else ("are", "were")
    return _Story(
        "put together, addend unknown",
        {"total": total, "part": total - hidden},
        lambda s, shape: (
            f"I see {s.who.of(total)}. {upper(part)} {are} {s.kinds[0]}, the rest are {s.kinds[1]}. "
            f"How many are {s.kinds[1]}?"
            if shape
            else f"{upper(s.who.of(total))} {s.were}. {upper(part)} {were} {s.kinds[0]}, "
            f"the rest were {s.kinds[1]}. How many were {s.kinds[1]}?"
        ),
        hidden,
        f"{total} = {total - hidden} + {hidden}",
        lambda s: (
            Cue(f"Tell it again. {word.capitalize()} is all of them, {s.kinds[0]} and {s.kinds[1]}."),
            Cue(
                f"Cover {part} of these with a hand: they are {s.kinds[0]}.",
                pictures.Counters(total, what=s.who.many),
            ),
            Cue(f"Lay out {word} together and push {part} aside. The child counts the rest."),
        ),
    )


def _change_added(start: int, end: int) -> _Story:
    one, last = number_word(start), number_word(end)
    return _Story(
        "add to, change unknown",
        {"start": start, "end": end},
        lambda s, shape: (
            f"{upper(s.who.of(start))} {s.were}. More {s.came}, and now there are {last}. How many {s.came}?"
            if shape
            else f"{upper(s.who.of(start))} {s.were}. Some more {s.came}. "
            f"With {last} there now, how many {s.came}?"
        ),
        end - start,
        f"{start} + {end - start} = {end}",
        lambda s: (
            Cue(f"Tell it again. Was it {last} at the start, or at the end?"),
            Cue(
                f"Lay out {one}. Put more down until it is {last}.", pictures.Counters(start, what=s.who.many)
            ),
            Cue(f"Say “{one}” and lay the first new block together. The child goes on to {last}."),
        ),
    )


def _compare(larger: int, smaller: int) -> _Story:
    a, b = number_word(larger), number_word(smaller)
    return _Story(
        "compare, difference unknown",
        {"larger": larger, "smaller": smaller},
        lambda s, shape: (
            f"{upper(s.places[0])} has {s.who.of(larger)}. {upper(s.places[1])} has {b}. "
            f"How many more does {s.places[0]} have?"
            if shape
            else f"{upper(s.places[1])} has {s.who.of(smaller)}. {upper(s.places[0])} has {a}. "
            f"How many more does {s.places[0]} have?"
        ),
        larger - smaller,
        f"{larger} − {smaller} = {larger - smaller}",
        lambda s: (
            Cue(f"Tell it again. Which has more, {s.places[0]} or {s.places[1]}?"),
            Cue(f"Lay {a} in a row and {b} below. Which have no partner?", pictures.TwoSets(larger, smaller)),
            Cue("Match the first pair together. The child goes on, then counts those without a partner."),
        ),
    )


def _both_parts(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A total of two kinds; any two parts that are both something do, but for one already told."""
    total = rng.between(4, 10 if risen(morning, 26) else 6)
    pairs = [(part, total - part) for part in range(1, total)]
    shown = rng.pick(pairs) if item == "another-way" else None
    right = [pair for pair in pairs if pair != shown]
    # The same two numbers turned round are a new way too, but a poor one to show first.
    # Each part of it is more than one, as "some" are.
    fresh = [pair for pair in right if pair[::-1] != shown] or right
    first = rng.pick([pair for pair in fresh if min(pair) > 1] or fresh)
    told, s = in_a_corner(lambda corner, shape: _tell_parts(corner, total, shown, shape), rng)
    return Draft(
        say=told,
        answer=_pair(*first),
        accept=tuple(_pair(*pair) for pair in right if pair != first),
        working=", ".join(f"{a} + {b}" for a, b in right) + f": each is {total}",
        cues=(
            Cue(f"Tell it again. Could only a few be {s.kinds[0]}?"),
            Cue(
                f"Let these be the {s.who.many}. Cover some: they are {s.kinds[0]}.",
                pictures.Counters(total, what=s.who.many),
            ),
            Cue(f"Slide the first to the {s.kinds[0]} side together. The child goes on and counts both."),
        ),
        watch_for=_WATCH[item],
        do=_ACT,
        given={"situation": "take apart, both addends unknown", "total": total}
        | ({"shown": list(shown)} if shown else {}),
    )


def _pair(one: int, other: int) -> str:
    return f"{number_word(one)} and {number_word(other)}"


def _tell_parts(s: Corner, total: int, shown: tuple[int, int] | None, shape: int) -> str:
    one, other = s.kinds
    if shown is None:
        return (
            f"{upper(s.who.of(total))} {s.were}. Some were {one}, some {other}. How many of each could it be?"
            if shape
            else f"I see {s.who.of(total)}. Some are {one}, the rest {other}. How many of each could it be?"
        )
    a, b = (number_word(part) for part in shown)
    return (
        f"{upper(s.who.of(total))} {s.were}. I say {a} {one} and {b} {other}. What else could it be?"
        if shape
        else f"I see {s.who.of(total)}. I say {a} {one}, {b} {other}. Tell me a new way."
    )


SKILL = Skill(
    id="stories",
    title="Story problems",
    asks="one short story, one question",
    strand=Strand.ADDING,
    levels=(
        Level(
            "act-to-5",
            "act it out, to five",
            ("join-5", "leave-5", "nothing-left"),
            codes=("K.OA.A.1", "K.OA.A.2"),
            stands_on=("add-subtract:act-to-5",),
            table="toys",
        ),
        Level(
            "to-10",
            "join, leave, together, to ten",
            ("join-10", "leave-10"),
            ("together-10",),
            codes=("K.OA.A.2",),
            stands_on=("stories:act-to-5", "add-subtract:things-to-10"),
            table="toys",
        ),
        Level(
            "both-parts",
            "both parts unknown",
            ("both-parts", "another-way"),
            codes=("K.OA.A.2", "K.OA.A.3"),
            stands_on=("stories:to-10", "parts:of-8-and-9"),
            waits_on=("parts/another-way", "stories/together-10"),
            table="toys",
        ),
        Level(
            "change-and-compare",
            "change unknown, compare",
            ("change", "more-is-not-add", "how-many-more"),
            codes=("1.OA.A.1",),
            stands_on=("stories:both-parts", "make-ten:in-the-head", "compare:sets-to-10"),
            waits_on=("compare/fewer",),
            seconds=60,
            table="toys",
        ),
    ),
    ask=ask,
)
