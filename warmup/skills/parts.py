"""parts: split a number in two, find the part that is hidden.

K.OA.A.3: split a number up to ten into two parts, in more than one way (Common Core State Standards
for Mathematics, 2010). A part of zero counts as a part. A pair turned around is right when any split is
asked for, and no new way when another one is.
"""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._home import BEAN, BLOCK, CUP, LEAF, PEG, SHELL, SOCK, SPOON, Noun, upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_WHOLES = {
    "split-to-5": (3, 4, 5),
    "hidden-to-5": (3, 4, 5),
    "turned-pair": (3, 4, 5),
    "split-6-7": (6, 7),
    "hidden-6-7": (6, 7),
    "part-of-zero": (6, 7),
    "another-way": (6, 7),
    "split-8-9": (8, 9),
    "hidden-8-9": (8, 9),
}
_THINGS = (BEAN, BLOCK, LEAF, PEG, SHELL, SPOON)


# Items that begin with three and four, and the week in which their level opens.
_OPENS = {"split-to-5": 6, "turned-pair": 6, "hidden-to-5": 10}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A whole and its parts, with one or both parts to find."""
    new = item in _OPENS and not risen(morning, _OPENS[item])
    whole = rng.pick(_WHOLES[item][: 2 if new else None])
    match item.split("-")[0]:
        case "another":
            return _new_way(whole, rng)
        case "split":
            # Three has no second pair of parts that are both something, so it is split once only; another
            # way to split six and seven is an item of its own.
            twice = whole > 3 and item != "split-6-7" and rng.coin()
            return _new_way(whole, rng) if twice else _split(whole, rng)
        case "turned":
            return _turned(whole, rng)
        case "part":
            return _hidden(whole, whole if rng.coin() else 0, rng)
        case _:
            return _hidden(whole, rng.between(1, whole - 1), rng)


def _pair(left: int, right: int) -> str:
    return f"{number_word(left)} and {number_word(right)}"


def _both(pairs: list[tuple[int, int]]) -> str:
    return ", ".join(f"{left} + {right}" for left, right in pairs)


def _split(whole: int, rng: SeededRandom) -> Draft:
    """Any two parts do."""
    thing, word = rng.pick(_THINGS), number_word(whole)
    pairs = [(left, whole - left) for left in range(whole + 1)]
    first = rng.pick(pairs[1:-1])
    say = rng.phrasing(
        f"Here are {thing.of(whole)}. Make two piles. How many in each?",
        f"Hold {thing.of(whole)} in two hands. How many in each?",
        f"{upper(word)} ducks sit in two tubs. How many could be in each?",
        f"Put {thing.of(whole)} on two plates. How many on each?",
        f"Split {word} into two parts. What are they?",
    )
    # Of ducks that are told of, and of a bare number, nothing lies there to push.
    lies = say.key in ("a", "b", "d")
    return Draft(
        say=say,
        answer=_pair(*first),
        accept=tuple(_pair(*pair) for pair in pairs if pair != first),
        working=f"{_both(pairs[: whole // 2 + 1])}, or the same turned around",
        cues=(
            Cue(f"{'Say it again' if lies else f'Lay out {BLOCK.of(whole)}'}. Push some over to the side."),
            Cue("Point to each pile in turn. How many lie here? How many lie there?"),
            Cue("Move the first over together. The child moves more, or stops, and counts both."),
        ),
        watch_for="Counting only one pile and stopping. Point to the other pile.",
        given={"whole": whole},
        table=thing.many if lies else BLOCK.many,
    )


def _new_way(whole: int, rng: SeededRandom) -> Draft:
    """One way is told, another asked for; the same pair turned around is not another."""
    left = rng.between(1, whole - 1)
    right, word = whole - left, number_word(whole)
    others = [(a, whole - a) for a in range(whole + 1) if a not in (left, right)]
    first = rng.pick(others[1:-1])
    return Draft(
        say=rng.phrasing(
            f"{upper(word)} can be {_pair(left, right)}. What else can it be?",
            f"I split {word} into {_pair(left, right)}. Split it another way.",
            f"{upper(_pair(left, right))} make {word}. Tell me another way.",
            f"I made {word} with {_pair(left, right)}. Find a new way.",
        ),
        answer=_pair(*first),
        accept=tuple(_pair(*pair) for pair in others if pair != first),
        working=f"{left} + {right} = {whole}; also {_both([pair for pair in others if pair[0] <= pair[1]])}",
        cues=(
            Cue(f"Say it again. Start from my {_pair(left, right)}. Can one move over?"),
            Cue(
                "Lay out both parts in blocks. Move some from this pile to that.",
                _part_whole(whole, left, right),
            ),
            Cue("Slide the first across together. The child counts both piles."),
        ),
        watch_for="The same pair turned around. Nod, and ask for other parts."
        if left != right
        else "The same pair again. Nod, and ask for other parts.",
        given={"whole": whole, "shown": [left, right]},
        table=BLOCK.many,
    )


def _part_whole(whole: int, left: int, right: int | None = None) -> "pictures.PartWhole":
    return pictures.PartWhole(str(whole), str(left), "?" if right is None else str(right))


def _turned(whole: int, rng: SeededRandom) -> Draft:
    """The pair is told; the same pair turned around is asked for."""
    left = rng.pick([part for part in range(1, whole) if 2 * part != whole])
    right = whole - left
    two, make = _pair(left, right), number_word(whole)
    thing = rng.pick((SOCK, CUP, BLOCK))
    say = rng.phrasing(
        f"{upper(two)} make {make}. Say it the other way around.",
        f"{upper(make)} is {two}. Turn the parts around. What is it now?",
        f"{_colors(thing, left, right)} make {make}. Now swap the colors. How many of each?",
    )
    thing = thing if say.key == "c" else BLOCK
    colors = (f"{number_word(right)} red and {number_word(left)} blue",) if say.key == "c" else ()
    return Draft(
        say=say,
        answer=_pair(right, left),
        accept=(f"{_pair(right, left)} make {make}", *colors),
        working=f"{left} + {right} = {whole}, so {right} + {left} = {whole}",
        cues=(
            Cue(f"Say it again. We know that {two} make {make}."),
            Cue(f"Lay out two piles of {thing.many}. Walk around and look from the other side."),
            Cue("Touch the pile that comes last together. The child says that one first, then the other."),
        ),
        watch_for="Counting it all out again. It is the same pile, seen from the other side.",
        given={"whole": whole, "left": left, "right": right, "colors": bool(colors)},
        table=thing.many,
    )


def _colors(thing: Noun, red: int, blue: int) -> str:
    one, other = number_word(red), number_word(blue)
    return f"{upper(one)} red {thing.named(red)} and {other} blue {thing.named(blue)}"


def _hidden(whole: int, seen: int, rng: SeededRandom) -> Draft:
    """The whole and a part are told; the other part is hidden."""
    thing, word, part = rng.pick(_THINGS), number_word(whole), whole - seen
    shown = number_word(seen) if seen else "none"
    ends = {
        0: "Saying back the number just heard. Ask where they are.",
        whole: "Silence, or a shrug. Ask again, and give it time.",
    }
    hides = {"c": "for the other part. Show that part on fingers", "e": "for those we lack. Lay out ours"}
    say = rng.phrasing(
        f"I have {thing.of(whole)}. You see {shown}. How many am I hiding?",
        f"There are {word} ducks. You see {shown}. How many are hiding?",
        f"{upper(word)} is {number_word(seen)} and what?",
        f"The bag has {thing.of(whole)}. Take out {shown}. How many stay in?",
        f"We need {thing.of(whole)}. We have {shown}. How many more?",
    )
    return Draft(
        say=say,
        do=_hide(thing.of(whole), shown, say.key),
        answer=number_word(part),
        accept=("none", "nothing") if part == 0 else (),
        working=f"{whole} = {seen} + {part}",
        cues=(
            Cue(
                f"Say it again. {word.capitalize()} is all of them. How many do we "
                f"{'have' if say.key in ('c', 'e') else 'see'}?"
            ),
            Cue("The whole is on top. A part is empty. Which number goes there?", _part_whole(whole, seen)),
            Cue(f"Hold up {word} fingers together. Cover {shown}. The child says how many still show."),
        ),
        watch_for=ends.get(
            seen,
            f"Saying {word} again: all of them "
            f"{hides.get(say.key, 'for the hidden part. Uncover them and look')}.",
        ),
        given={"whole": whole, "seen": seen},
        picture=pictures.Counters(seen, what="counters") if 0 < seen < whole else None,
        table={"a": thing.many, "d": f"{thing.many}, a bag"}.get(say.key, ""),
    )


def _hide(things: str, shown: str, way: str) -> str:
    """What the adult does first, where the words need it."""
    match way:
        case "a":
            return f"Take {things} in your hands. Show {shown}."
        case "d":
            return f"Put {things} in a cloth bag."
        case _:
            return ""


def _level(
    key: str,
    label: str,
    variants: tuple[str, ...],
    stands_on: tuple[str, ...],
    misconceptions: tuple[str, ...] = (),
    waits_on: tuple[str, ...] = (),
) -> Level:
    return Level(
        key,
        label,
        variants,
        misconceptions,
        codes=("K.OA.A.3",),
        stands_on=stands_on,
        waits_on=waits_on,
        table="beans, cup",
    )


SKILL = Skill(
    id="parts",
    title="Parts of a number",
    asks="split a number in two, another way, find the hidden part",
    strand=Strand.ADDING,
    levels=(
        _level(
            "split-to-5",
            "split three, four and five",
            ("split-to-5", "turned-pair"),
            ("how-many:count-out-to-10", "subitize:four-and-five"),
            waits_on=("subitize/scattered-five",),
        ),
        _level(
            "hidden-to-5",
            "the hidden part of three, four and five",
            ("hidden-to-5",),
            ("parts:split-to-5",),
        ),
        _level(
            "of-6-and-7",
            "parts of six and seven",
            ("split-6-7", "hidden-6-7", "part-of-zero"),
            ("parts:hidden-to-5", "subitize:five-and-some"),
            ("another-way",),
        ),
        _level(
            "of-8-and-9",
            "parts of eight and nine",
            ("split-8-9", "hidden-8-9"),
            ("parts:of-6-and-7",),
            waits_on=("parts/another-way",),
        ),
    ),
    ask=ask,
)
