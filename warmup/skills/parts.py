"""parts: split a number in two, find the part that is hidden.

K.OA.A.3: split a number up to ten into two parts, in more than one way (Common Core State Standards
for Mathematics, 2010). A part of zero counts as a part. A pair turned round is right when any split is
asked for, and no new way when another one is.
"""

from warmup import pictures
from warmup.draw import Draw
from warmup.morning import Cue, Morning, Strand
from warmup.skills._home import BEAN, BLOCK, CUP, LEAF, PEG, SHELL, SOCK, SPOON, Noun, upper
from warmup.skills.base import Draft, Level, Skill
from warmup.words import number_word

_WHOLES = {
    "split-to-5": (3, 4, 5),
    "hidden-to-5": (3, 4, 5),
    "turned-pair": (3, 4, 5),
    "split-6-7": (6, 7),
    "hidden-6-7": (6, 7),
    "part-of-zero": (6, 7),
    "split-8-9": (8, 9),
    "hidden-8-9": (8, 9),
}
_THINGS = (BEAN, BLOCK, LEAF, PEG, SHELL, SPOON)


def ask(item: str, _morning: Morning, draw: Draw) -> Draft:
    """A whole and its parts, with one or both parts to find."""
    whole = draw.pick(_WHOLES[item])
    match item.split("-")[0]:
        case "split":
            # Three has no second pair of parts that are both something, so it is split once only.
            return _new_way(whole, draw) if whole > 3 and draw.coin() else _split(whole, draw)
        case "turned":
            return _turned(whole, draw)
        case "part":
            return _hidden(whole, whole if draw.coin() else 0, draw)
        case _:
            return _hidden(whole, draw.between(1, whole - 1), draw)


def _pair(left: int, right: int) -> str:
    return f"{number_word(left)} and {number_word(right)}"


def _both(pairs: list[tuple[int, int]]) -> str:
    return ", ".join(f"{left} + {right}" for left, right in pairs)


def _split(whole: int, draw: Draw) -> Draft:
    """Any two parts do."""
    thing, word = draw.pick(_THINGS), number_word(whole)
    pairs = [(left, whole - left) for left in range(whole + 1)]
    first = draw.pick(pairs[1:-1])
    return Draft(
        say=draw.way(
            f"Here are {thing.of(whole)}. Make two piles. How many in each?",
            f"Put {thing.of(whole)} in two hands. How many in each hand?",
            f"{upper(word)} ducks swim in two tubs. How many could be in each?",
            f"Lay {thing.of(whole)} on two plates. Tell me how many on each.",
            f"{upper(word)} can be two parts. Which two?",
        ),
        answer=_pair(*first),
        accept=tuple(_pair(*pair) for pair in pairs if pair != first),
        working=f"{_both(pairs[: whole // 2 + 1])}, or the same turned round",
        cues=(
            Cue("Say it again. Push some over to the side."),
            Cue("Point to each pile in turn. How many lie here? How many lie there?"),
            Cue("Move the first over together. The child moves more, or stops, and counts both."),
        ),
        watch_for="Counting only one pile and stopping. Point to the other pile.",
        given={"whole": whole},
        table="beans, cup",
    )


def _new_way(whole: int, draw: Draw) -> Draft:
    """One way is told, another asked for; the same pair turned round is not another."""
    left = draw.between(1, whole - 1)
    right, word = whole - left, number_word(whole)
    others = [(a, whole - a) for a in range(whole + 1) if a not in (left, right)]
    first = draw.pick(others[1:-1])
    return Draft(
        say=draw.way(
            f"{upper(word)} can be {_pair(left, right)}. What else can it be?",
            f"I split {word} into {_pair(left, right)}. You split it in a new way.",
            f"My two piles are {_pair(left, right)}. Make {word} with two other piles.",
            f"{upper(_pair(left, right))} make {word}. Which other two make {word}?",
        ),
        answer=_pair(*first),
        accept=tuple(_pair(*pair) for pair in others if pair != first),
        working=f"{left} + {right} = {whole}; also {_both([pair for pair in others if pair[0] <= pair[1]])}",
        cues=(
            Cue(f"Say it again. Start from my {_pair(left, right)}. Can one move over?"),
            Cue("Lay it out in two piles. Move some from this pile to that.", _bond(whole, left, right)),
            Cue("Slide the first across together. The child counts both piles."),
        ),
        watch_for=f"The same pair turned round: {_pair(right, left)}. Nod, and ask for other piles."
        if left != right
        else "The same pair again. Nod, and ask for other piles.",
        given={"whole": whole, "shown": [left, right]},
        table="beans, cup",
    )


def _bond(whole: int, left: int | None, right: int | None) -> "pictures.PartWhole":
    return pictures.PartWhole(str(whole), *("?" if part is None else str(part) for part in (left, right)))


def _turned(whole: int, draw: Draw) -> Draft:
    """The pair is told; the same pair turned round is asked for."""
    left = draw.pick([part for part in range(1, whole) if 2 * part != whole])
    right = whole - left
    two, word, make = _pair(left, right), number_word(right), number_word(whole)

    return Draft(
        say=draw.way(
            f"{upper(two)} make {make}. {upper(word)} and what make {make}?",
            f"{_colors(SOCK, left, right)} make {make}. Make {make} with {word} red. How many are blue?",
            f"{_colors(CUP, left, right)} make {make}. Make {make} with {word} red. How many are blue?",
            f"{upper(make)} is {two}. Turn it round. {upper(word)} and what?",
        ),
        answer=number_word(left),
        working=f"{left} + {right} = {whole}, so {right} + {left} = {whole}",
        cues=(
            Cue(f"Say it again. We know that {two} make {make}."),
            Cue("Lay the two piles out. Walk round and look from the other side."),
            Cue(f"Point to the pile that is {word} together. The child says the other."),
        ),
        watch_for="Counting it all out again. It is the same pile, seen from the other side.",
        given={"whole": whole, "left": left, "right": right},
        table="blocks",
    )


def _colors(thing: Noun, red: int, blue: int) -> str:
    one, other = number_word(red), number_word(blue)
    return f"{upper(one)} red {thing.named(red)} and {other} blue {thing.named(blue)}"


def _hidden(whole: int, seen: int, draw: Draw) -> Draft:
    """The whole and a part are told; the other part is hidden."""
    thing, word, part = draw.pick(_THINGS), number_word(whole), whole - seen
    shown = number_word(seen) if seen else "none"
    ends = {
        0: "Saying zero over again. All of them are hiding.",
        whole: "Silence: none can feel like no answer.",
    }
    return Draft(
        say=draw.way(
            f"I have {thing.of(whole)}. I show you {shown}. How many do I hide?",
            f"{upper(word)} ducks live in the pond. You see {shown}. How many hide?",
            f"{upper(word)} is {number_word(seen)} and what?",
            f"The bag has {thing.of(whole)}. You take out {shown}. How many stay in?",
            f"We need {thing.of(whole)}. We have {shown}. How many must we find?",
        ),
        answer=number_word(part),
        accept=("none", "nothing") if part == 0 else (),
        working=f"{whole} = {seen} + {part}",
        cues=(
            Cue(f"Say it again. {word.capitalize()} is all of them. How many have we got here?"),
            Cue("A circle of the bond is empty. Which number lives there?", _bond(whole, seen, None)),
            Cue(f"Hold up {word} fingers together. Cover {shown}. The child says how many are bare."),
        ),
        watch_for=ends.get(
            seen, f"Saying {word} again: all of them for the hidden part. Uncover them and look."
        ),
        given={"whole": whole, "seen": seen},
        picture=pictures.Counters(seen, what="counters") if 0 < seen < whole else None,
        table="beans, cup",
    )


SKILL = Skill(
    id="parts",
    title="Parts of a number",
    asks="split a number in two, find the hidden part",
    strand=Strand.ADDING,
    levels=(
        Level(
            "of-3-to-5",
            "parts of three, four and five",
            ("split-to-5", "hidden-to-5", "turned-pair"),
            codes=("K.OA.A.3",),
            table="beans, cup",
        ),
        Level(
            "of-6-and-7",
            "parts of six and seven",
            ("split-6-7", "hidden-6-7", "part-of-zero"),
            codes=("K.OA.A.3",),
            table="beans, cup",
        ),
        Level(
            "of-8-and-9",
            "parts of eight and nine",
            ("split-8-9", "hidden-8-9"),
            codes=("K.OA.A.3",),
            table="beans, cup",
        ),
    ),
    ask=ask,
)
