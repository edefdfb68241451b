"""sort: sort by one rule, count each group, guess the rule, put the groups in order.

K.MD.B.3: sort things into groups, count each group (ten at most in one) and put the groups in order of
size (Common Core State Standards for Mathematics, 2010).
"""

from collections.abc import Mapping
from typing import NamedTuple

from warmup import pictures
from warmup.english import listed, number_word
from warmup.model import Cue, Morning, Strand
from warmup.pictures.facts import FORMS
from warmup.randomness import SeededRandom
from warmup.skills._home import BLOCK, BOOK, CUP, HAT, SOCK, SPOON, Noun, a, upper
from warmup.skills._rising import risen
from warmup.skills.base import Draft, Level, Skill

_COLORS = ("red", "blue", "green", "white", "brown")
_KINDS = (SOCK, HAT, CUP, BLOCK, BOOK)
_GROUPS = (
    (SOCK, HAT, Noun("shirt", "shirts")),
    (Noun("cat", "cats"), Noun("dog", "dogs"), Noun("fish", "fish")),
    (CUP, SPOON, Noun("fork", "forks")),
    (Noun("ball", "balls"), Noun("kite", "kites"), BOOK),
)
_SHAPES = {"circle": "circles", "square": "squares", "triangle": "triangles"}
_ALSO = {"sock": "clothes", "hat": "clothes"}
"""What else a child may rightly call two of a kind."""
OPENS, ORDER_OPENS = 11, 22
"""The weeks of `count-groups` and `order-groups` in routines/year.toml: small groups for two weeks."""
_WATCH = {
    "put-together": "The rule drifts: begun by color, gone on with by kind. Say the rule again.",
    "does-not-fit": "Naming the one liked least. Hold each up to the rule in turn.",
    "count-each": "Counting the other kind along, or one of them twice. Touch each that counts.",
    "most-not-biggest": "Pointing to the biggest things. Most means how many, not how big.",
    "guess-rule": "Naming one of the things, not what they share.",
    "order-groups": "Ordering by the size of the things, or beginning at the other end.",
}


class _Thing(NamedTuple):
    """Something with a color and a kind."""

    color: str
    kind: Noun

    @property
    def name(self) -> str:
        return f"{self.color} {self.kind.one}"


class _Rule(NamedTuple):
    """A color or a kind that things are sorted by."""

    color: str = ""
    kind: Noun | None = None

    def fits(self, thing: _Thing) -> bool:
        return thing.kind == self.kind if self.kind else thing.color == self.color

    @property
    def key(self) -> str:
        """The color, or one of the kind."""
        return self.kind.one if self.kind else self.color

    @property
    def short(self) -> str:
        """What those that fit are: "red", "cups"."""
        return self.kind.many if self.kind else self.color

    @property
    def one(self) -> str:
        """What one that fits is: "red", "a cup"."""
        return a(self.kind.one) if self.kind else self.color

    @property
    def things(self) -> str:
        """What fits, in the plural: "red things", "cups"."""
        return self.kind.many if self.kind else f"{self.color} things"


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A few things or groups, and a rule."""
    match item:
        case "put-together":
            return _put_together(rng)
        case "does-not-fit":
            return _does_not_fit(rng)
        case "count-each":
            return _count_each(risen(morning, OPENS), rng)
        case "most-not-biggest":
            return _most(rng)
        case "guess-rule":
            return _guess_rule(rng)
        case _:
            return _order(risen(morning, ORDER_OPENS), rng)


def _rule(rng: SeededRandom) -> tuple[_Rule, tuple[str, ...], tuple[Noun, ...]]:
    """A rule, and three colors and three kinds that begin with the rule's own."""
    colors, kinds = rng.sample(_COLORS, 3), rng.sample(_KINDS, 3)
    return (_Rule(color=colors[0]) if rng.coin() else _Rule(kind=kinds[0])), colors, kinds


def _in_and_out(rng: SeededRandom, inside: int, outside: int) -> tuple[_Rule, list[_Thing], list[_Thing]]:
    """Things that fit a rule and things that do not; some of those share what the rule is not about."""
    rule, colors, kinds = _rule(rng)
    every = [_Thing(color, kind) for color in colors for kind in kinds]
    fitting = rng.sample([thing for thing in every if rule.fits(thing)], inside)
    others = rng.shuffled([thing for thing in every if not rule.fits(thing)])
    near = sorted(others, key=lambda thing: not _shares(thing, fitting))
    return rule, list(fitting), near[:outside]


def _shares(thing: _Thing, others: tuple[_Thing, ...]) -> bool:
    return any(thing.color == other.color or thing.kind == other.kind for other in others)


def _names(things: list[_Thing] | tuple[_Thing, ...]) -> str:
    return ", ".join(thing.name for thing in things)


# ---- one rule ---------------------------------------------------------------------------------------


def _put_together(rng: SeededRandom) -> Draft:
    inside = rng.between(2, 3)
    rule, fitting, others = _in_and_out(rng, inside, 4 - inside)
    things = rng.shuffled(fitting + others)
    right = [thing.name for thing in things if rule.fits(thing)]
    row, first = upper(_names(things)), things[0].name
    return Draft(
        say=rng.phrasing(
            f"{row}. Which are {rule.short}?",
            f"Find the {rule.things}. {row}.",
            f"Which are {rule.short}? {row}.",
        ),
        answer=listed(right),
        accept=("in any order",),
        working=f"{rule.things}: {', '.join(right)}",
        cues=(
            Cue(f"We sort for {rule.things}, and for nothing else."),
            Cue("Put up a finger for each as you say it again. Ask of each: in, or out?"),
            Cue(f"Say “{first}” together: thumbs up or thumbs down? The child does the rest."),
        ),
        watch_for=_WATCH["put-together"],
        given={"things": [thing.name for thing in things], "rule": rule.key},
    )


def _does_not_fit(rng: SeededRandom) -> Draft:
    rule, fitting, others = _in_and_out(rng, 2, 1)
    things = rng.shuffled(fitting + others)
    (wrong,) = (thing.name for thing in things if not rule.fits(thing))
    row = upper(_names(things))
    return Draft(
        say=rng.phrasing(
            f"{row}. Which one is not {rule.one}?",
            f"{upper(rule.things)} only. {row}. Which stays out?",
            f"Which one is not {rule.one}? {row}.",
        ),
        answer=wrong,
        accept=(f"the {wrong}",),
        working=f"{rule.things}: {', '.join(thing.name for thing in fitting)}",
        cues=(
            Cue(f"What do all {rule.things} have that we look for?"),
            Cue("Put up a finger for each. Touch one after the other: does it belong?"),
            Cue(f"Say “{fitting[0].name}” together: it belongs. The child tries the other two."),
        ),
        watch_for=_WATCH["does-not-fit"],
        given={"things": [thing.name for thing in things], "rule": rule.key},
    )


# ---- count each group -------------------------------------------------------------------------------


def _count_each(far: bool, rng: SeededRandom) -> Draft:
    """Count one kind in a heap of two or three: to ten once that goes well."""
    kinds = rng.sample(FORMS, rng.between(2, 3))
    counts = {kinds[0]: rng.between(2, 10 if far else 6)}
    counts |= {kind: rng.between(2, 5 if len(kinds) > 2 or not far else 8) for kind in kinds[1:]}
    wanted = _SHAPES[kinds[0]]
    mixed = rng.shuffled([kind for kind, count in counts.items() for _ in range(count)])
    sorted_out = pictures.SortedRows(tuple((kind,) * counts[kind] for kind in FORMS if kind in counts))
    return Draft(
        say=rng.phrasing(
            f"The shapes are all mixed up. How many {wanted} are there?",
            f"Pick out the {wanted}. How many are there?",
            f"Count only the {wanted}. How many are there?",
        ),
        answer=number_word(counts[kinds[0]]),
        working=", ".join(f"{_SHAPES[kind]} {counts[kind]}" for kind in FORMS if kind in counts),
        cues=(
            Cue(f"Show me just the {wanted}. We leave the rest alone."),
            Cue("Here they are sorted, a kind in each row.", sorted_out),
            Cue(f"Touch the first of the {wanted} together and count. The child goes on."),
        ),
        watch_for=_WATCH["count-each"],
        given={"mixed": list(mixed), "count": kinds[0]},
        picture=pictures.SortedRows(_in_lines(mixed)),
    )


def _in_lines(pieces: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
    across = 5 if len(pieces) <= 15 else 6
    return tuple(pieces[start : start + across] for start in range(0, len(pieces), across))


def _most(rng: SeededRandom) -> Draft:
    """The kind with the biggest pieces is never the one there are most of."""
    big, *small = rng.sample(FORMS, 3)
    most, few = rng.sample(small, 2)
    counts = {most: rng.between(5, 9)}
    counts[big] = rng.between(2, min(4, counts[most] - 1))
    counts[few] = rng.between(1, counts[most] - 1)
    rows = rng.shuffled(FORMS)
    return Draft(
        say=rng.phrasing(
            "Count each kind. Which kind has the most?",
            "Which shape do you see the most of?",
            "Find the row with the most. Which shape is it?",
        ),
        answer=_SHAPES[most],
        accept=(most, f"the {_SHAPES[most]}"),
        working=", ".join(f"{_SHAPES[kind]} {counts[kind]}" for kind in rows) + f": most are {_SHAPES[most]}",
        cues=(
            Cue("Most means how many there are. How many are in each row?"),
            Cue("Cover all rows but the top. Count that, then slide the hand down."),
            Cue("Touch the first in each row together, then the next. Which row is the last to run out?"),
        ),
        watch_for=_WATCH["most-not-biggest"],
        given={"groups": {kind: counts[kind] for kind in rows}, "big": big},
        picture=pictures.SortedRows(tuple((kind,) * counts[kind] for kind in rows), big),
    )


# ---- guess the rule, order the groups ---------------------------------------------------------------


def _guess_rule(rng: SeededRandom) -> Draft:
    rule, fitting, others = _in_and_out(rng, 2, 1)
    inside, out = _names(fitting), others[0].name
    other = f"all {rule.color}" if rule.color else f"all {rule.things}"
    wider = _ALSO.get(rule.key, "")
    # Two hats are clothes as well, unless what stays out is.
    true_too = (wider,) if wider and _ALSO.get(others[0].kind.one) != wider else ()
    not_out = f"not {others[0].color}" if rule.color else f"not {a(others[0].kind.one)}"
    return Draft(
        say=rng.phrasing(
            f"In: {inside}. Out: {out}. What is my rule?",
            f"{upper(inside)}: yes. {upper(out)}: no. What is my rule?",
            f"{upper(inside)} fit. {upper(out)} does not. What’s my rule?",
        ),
        answer=rule.things,
        accept=(other, f"they are {other}", *((rule.color,) if rule.color else ()), *true_too, not_out),
        working=f"in: {other}; out: {out}",
        cues=(
            Cue("What is the same about all that go in?"),
            Cue("Say those that go in once more. Listen for color first, then for what each is."),
            Cue(f"Say “{out}, {fitting[0].name}” together. The child says what is not the same."),
        ),
        watch_for=_WATCH["guess-rule"],
        given={"in": [thing.name for thing in fitting], "out": [out]},
    )


def ordered(groups: Mapping[str, int], fewest_first: bool) -> list[str]:
    """The names of the groups in order of size. No two are to be the same size."""
    return sorted(groups, key=lambda name: groups[name] if fewest_first else -groups[name])


def _order(far: bool, rng: SeededRandom) -> Draft:
    """Three groups of three sizes, put in order: to ten once that goes well."""
    nouns = rng.shuffled(rng.pick(_GROUPS))
    counts = dict(zip(nouns, rng.sample(range(1, 11 if far else 7), 3), strict=True))
    groups = {noun.many: count for noun, count in counts.items()}
    fewest = rng.coin()
    first, way = ("fewest", "fewest to most") if fewest else ("most", "most to fewest")
    told = ", ".join(noun.of(count) for noun, count in counts.items())
    order = ordered(groups, fewest)
    rows = pictures.SortedRows(
        tuple((form,) * count for form, count in zip(FORMS, counts.values(), strict=True))
    )
    return Draft(
        say=rng.phrasing(
            f"{upper(told)}. Name them, {first} first.",
            f"We have {told}. Say them, {first} first.",
            f"{upper(told)}. Say them from {way}.",
        ),
        answer=", ".join(order),
        working=", then ".join(
            noun.of(counts[noun]) for noun in sorted(counts, key=lambda noun: order.index(noun.many))
        ),
        cues=(
            Cue(f"Which are there the {first} of?"),
            Cue("Here is a row for each kind, in the order I said them.", rows),
            Cue("Stack a block for each together. The child lines the stacks up and names them."),
        ),
        watch_for=_WATCH["order-groups"],
        given={"groups": groups, "order": "fewest first" if fewest else "most first"},
    )


SKILL = Skill(
    id="sort",
    title="Sort",
    asks="sort by one rule; count each group; put the groups in order",
    strand=Strand.MEASURING,
    levels=(
        Level(
            "one-rule",
            "sort by one rule",
            ("put-together", "does-not-fit"),
            codes=("K.MD.B.3",),
            guesses=(("does-not-fit", 0.33),),
        ),
        Level(
            "count-groups",
            "count each group, to ten",
            ("count-each",),
            ("most-not-biggest",),
            codes=("K.MD.B.3",),
            stands_on=("sort:one-rule", "compare:sets-to-10", "how-many:count-out-to-10"),
            waits_on=("compare/spread",),
            guesses=(("most-not-biggest", 0.33),),
        ),
        Level(
            "order-groups",
            "order the groups, guess the rule",
            ("order-groups", "guess-rule"),
            codes=("K.MD.B.3",),
            stands_on=("sort:count-groups", "compare:numerals-to-10"),
            waits_on=("compare/fewer", "sort/most-not-biggest"),
            guesses=(("order-groups", 0.17),),
        ),
    ),
    ask=ask,
)
