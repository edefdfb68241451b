"""The things that prompts ask for, by their names; and how a prompt is asked in a house that lacks some.

``THINGS`` is the one registry: a test holds that every table of the catalogue is made of these. A house has
no use for what it does not have, nor, with a toddler in it, for what is small: what fits whole into the
cylinder of 16 CFR 1501.4 (1.25 inches wide, 1 to 2.25 inches deep), or chokes for another reason. A prompt
that wants such a thing is asked with a bigger one named in its place, with a picture that shows the thing
itself, or not at all. Only a house that says what it lacks loads this.
"""

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from typing import NamedTuple

from warmup import skills
from warmup.model import OWN_SKILL, ItemId, Morning, Opening, Prompt, skill_and_name
from warmup.randomness import SeededRandom


class Thing(NamedTuple):
    """One thing: its ``name`` for the family, and ``others`` it has on tables.

    ``small`` things are none for a toddler's table. ``shown`` names the kinds of picture that show the thing
    itself. ``instead`` has rewritings, a pattern and what comes in its place, tried in order, which name
    ``bigger`` things: all words of a prompt go through them. ``words`` are what sentences call the thing.
    """

    name: str
    others: tuple[str, ...] = ()
    small: bool = False
    shown: tuple[str, ...] = ()
    bigger: tuple[str, ...] = ()
    instead: tuple[tuple[str, str], ...] = ()
    words: tuple[str, ...] = ()

    @property
    def every_name(self) -> tuple[str, ...]:
        """All of its names."""
        return (self.name, *self.others)

    @property
    def pattern(self) -> re.Pattern[str]:
        """Finds the thing in a sentence."""
        return _any_of(self.words or self.every_name)


@cache
def _any_of(words: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, words))})\b", re.IGNORECASE)


def _swap(one: str, many: str, other: str, others: str) -> tuple[tuple[str, str], ...]:
    """The rewritings of a noun with a plural; both begin with a consonant, so that "a" stays right."""
    return (rf"\b{many}\b", others), (rf"\b{one}\b", other)


_COIN_WORDS = ("coin", "coins", "penny", "pennies", "nickel", "nickels", "dime", "dimes", "quarter",
               "quarters", "a real one")  # fmt: skip
_STRIP = ("strips of paper",)

THINGS: tuple[Thing, ...] = (
    # What is small, each with what is bigger. Spoons, socks and big blocks do not fit into the cylinder.
    Thing("beans", ("bean",), small=True, bigger=("spoons",),
          instead=_swap("bean", "beans", "spoon", "spoons")),
    Thing("buttons", ("button",), small=True, bigger=("spoons",),
          instead=_swap("button", "buttons", "spoon", "spoons")),
    Thing("shells", ("shell",), small=True, bigger=("spoons",),
          instead=_swap("shell", "shells", "spoon", "spoons")),
    Thing("beads", ("bead",), small=True, bigger=("socks",), instead=_swap("bead", "beads", "sock", "socks")),
    Thing("counters", ("counter", "loose ones"), small=True, shown=("two-frames", "ten-frame"),
          words=("counter", "counters")),
    Thing("cereal", ("cereal in a cup",), small=True, bigger=("spoons", "cups"),
          instead=((r"\bcereal in a cup\b", "spoons, cup"),), words=("cereal in",)),
    Thing("grapes", ("grape", "grape pieces"), small=True, bigger=("blocks",),
          instead=((r"\bgrapes(?: \(in quarters\))?, blocks\b", "blocks"),), words=("grape", "grapes")),
    Thing("rice", small=True, bigger=("water",),
          instead=((r"\bwater or rice\b", "water"), (r"\bthe same with rice\b", "the same with water"),
                   (r"\brice\b", "water"))),
    Thing("square crackers", ("square cracker",), small=True, bigger=("paper",),
          instead=((r"\b(\w+) square crackers, or \1 paper squares all alike", r"\1 paper squares all alike"),
                   (r"\bpaper, square crackers\b", "paper"), (r"\bsquare crackers\b", "paper squares"))),
    Thing("clips", ("big clips", "clip"), small=True, shown=("lengths",)),
    Thing("bands", ("band",), small=True, bigger=_STRIP,
          instead=((r"\bPut the band around\b", "Put the strip of paper around"),
                   (r"\bstraws and bands\b", "straws and strips of paper"),
                   (r"\bbanded straws\b", "straws in bundles"), (r"\bbanded\b", "bundled"),
                   (r"\bbands\b", "paper strips"),
                   (r"\bband\b", "paper strip")), words=("band", "bands", "banded")),
    Thing("coins", ("coin", "real coins"), small=True, shown=("coins",), words=_COIN_WORDS,
          instead=((r"\bHold the (?=penny|nickel|dime|quarter)", "Look at the "),
                   (r"\bLine them up\. Look\b", "Look"),
                   (r"\bPush one that is not it away together\b", "Cover one that is not it together"))),
    # What hangs on a wall, is drawn or is printed: a picture shows it whole.
    Thing("clock with hands", ("clock with hands to turn",), shown=("clock",), words=("clock", "hands")),
    Thing("wall calendar", shown=("month-calendar", "month-strip", "day-strip"), words=("calendar", "page")),
    Thing("day strip", shown=("day-strip",)),
    Thing("hundred chart", ("printed chart",), shown=("hundred-chart",), words=("chart",)),
    Thing("ten frame", shown=("ten-frame", "two-frames"), words=("ten frame", "frame", "frames")),
    Thing("number cards", shown=("number-row", "numeral"), words=("card", "cards")),
    Thing("tape on the floor", shown=("number-line",), words=("tape",)),
    Thing("handprints", shown=("hands",)),
    Thing("labels", shown=("word-and-cards",), words=("label", "labels")),
    Thing("graph paper", shown=("half",)),
    Thing("card to cover the dots", words=("card",)),
    Thing("balance"),  # Families name it; no table asks for one.
    # What most kitchens have.
    Thing("straws", ("straw", "straws in bundles", "banded straws", "some cut shorter"), shown=("bundles",)),
    Thing("strips of paper", ("strip of paper", "paper strips"), words=("strip of paper", "strips of paper")),
    Thing("paper", ("sheet of paper", "paper circle", "paper squares"), shown=("joined-shapes", "fold")),
    Thing("tape"), Thing("ribbon", shown=("lengths",)), Thing("things to lift", shown=("scale",)),
    Thing("things to hold"), Thing("things to count out"), Thing("stairs"), Thing("door numbers"),
    Thing("page numbers"), Thing("water"), Thing("tray"),
    Thing("blocks", ("block", "toy block")), Thing("spoons", ("spoon",)), Thing("forks", ("fork",)),
    Thing("cups", ("cup",)), Thing("bowls", ("bowl",)), Thing("pitcher"), Thing("tub"), Thing("pail"),
    Thing("basket"), Thing("box"), Thing("bag"), Thing("chair"), Thing("table"), Thing("shelf"),
    Thing("socks", ("sock", "pairs of socks")), Thing("shoes", ("shoe",)), Thing("hats", ("hat",)),
    Thing("mitt"), Thing("scarf"), Thing("pillow"), Thing("brush"), Thing("book", ("books",)),
    Thing("crayons", ("crayon",)), Thing("clothespins", ("clothespin",)), Thing("leaves", ("leaf",)),
    Thing("napkins", ("napkin", "square napkin", "paper napkin", "paper napkins")),
    Thing("toys", ("toys in a line", "toy dog", "doll"), shown=("toy-line",)),
    Thing("ball"), Thing("can", ("soup can",)), Thing("toy drum"),
    Thing("cone block", ("clay cone",)), Thing("clay cube"),
    Thing("cereal box", ("cracker box", "juice box")),
    Thing("fruit", ("apple", "pear", "orange")), Thing("roll"), Thing("toast"), Thing("cheese"),
    Thing("pancake"), Thing("pizza"), Thing("tortilla"),
)  # fmt: skip
NAMES = tuple(thing.name for thing in THINGS)
"""The names by which a family says what its house does not have."""
OFTEN_MISSING = (
    "wall calendar", "clock with hands", "day strip", "hundred chart", "ten frame", "number cards",
    "tape on the floor", "handprints", "labels", "graph paper", "straws", "bands", "coins", "beans",
    "buttons", "counters", "clips", "ribbon", "blocks", "crayons", "clothespins", "socks",
    "toys", "ball", "stairs",
)  # fmt: skip
"""Those a house may well not have, in the order in which it is asked of them."""
_BY_NAME = {name: thing for thing in THINGS for name in thing.every_name}
_COUNT = r"(?:an?|some|plastic|[0-9]+|twenty-four)"
_DRAWS = 6
"""So many prompts tell whether an item can be asked in a house."""
_HANDLES = re.compile(
    r"\b(?:lay|put|take|hold|give|pay|build|set|fill|hand|drop|stack|turn|rub|find|add|hang|use|buy)\b",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"[^.!?:]+[.!?:]?”?")


def things_on(table: str) -> Iterator[tuple[Thing, ...]]:
    """What a table is made of: for each thing the one it must be, or those of which any will do.

    Words that name no thing of the registry, a family's own, are a thing by themselves that no house lacks.
    """
    for part in filter(None, re.sub(r" ?\([^)]*\)", "", table).split(", ")):
        if part in _BY_NAME:
            yield (_BY_NAME[part],)
        else:
            for each in part.split(" and "):
                yield tuple(_named(word) for word in each.removesuffix(" or the like").split(" or "))


def named(name: str) -> Thing | None:
    """The thing with this name, capitals or not; None where there is none."""
    return _BY_NAME.get(name.casefold())


def _named(words: str) -> Thing:
    plain = re.sub(rf"^{_COUNT} ", "", words)
    return _BY_NAME.get(words) or _BY_NAME.get(plain) or Thing(plain)


class Household(NamedTuple):
    """What a house says of itself: a ``toddler`` in it, and the names of things it is ``without``."""

    toddler: bool = False
    without: frozenset[str] = frozenset()

    def lacks(self, thing: Thing) -> bool:
        """Whether the thing is not for this table."""
        return thing.name in self.without or (self.toddler and thing.small)

    def has(self, table: str) -> bool:
        """Whether all that is on the table is for this house as it stands."""
        return not any(self.lacks(thing) for either in things_on(table) for thing in either)

    def can_ask(self, item: ItemId, morning: Morning) -> bool:
        """Whether the item can be asked here: where its level's table will not do, by a few prompts of it."""
        if skill_and_name(item)[0] == OWN_SKILL or self.has(skills.locate(item).level.table):
            return True
        draws = (skills.prompt(item, morning, SeededRandom("house", item, n)) for n in range(_DRAWS))
        return any(self.furnished(prompt) for prompt in draws)

    def can(self, prompt: Prompt) -> bool:
        """Whether the prompt can be asked here in one way or another."""
        return self.furnished(prompt) is not None

    def furnished(self, prompt: Prompt) -> Prompt | None:
        """The prompt as this house can have it; None where it can't be asked here."""
        if not prompt.table:
            return prompt  # What a picture alone shows is nothing to fetch, whatever it is called.
        told = self._rewritten(prompt)
        kind = told.picture.kind if told.picture else ""
        parts = [self._left_of(part) for part in filter(None, told.table.split(", "))]
        lacking = {thing for _, without in parts for thing in without}
        if any(kind not in thing.shown for thing in lacking):
            return None
        if any(_handled(thing, told) for thing in _lacked(self)):
            return None
        return told._replace(table=", ".join(filter(None, (left for left, _ in parts))))

    def _left_of(self, part: str) -> tuple[str, tuple[Thing, ...]]:
        """What is left of a part of a table in this house, and the things it is then without.

        Of things of which any will do one is enough.
        """
        if part in _BY_NAME:
            whole = _BY_NAME[part]
            return ("", (whole,)) if self.lacks(whole) else (part, ())
        for between in (" and ", " or "):
            pieces = part.removesuffix(" or the like").split(between)
            if len(pieces) > 1:
                gone = tuple(_named(piece) for piece in pieces if self.lacks(_named(piece)))
                left = between.join(piece for piece in pieces if not self.lacks(_named(piece)))
                return left, () if left and between == " or " else gone
        thing = next(things_on(part))[0]
        return ("", (thing,)) if self.lacks(thing) else (part, ())

    def opening(self, fact: Opening) -> Opening | None:
        """The opening as this house can have it, or None."""
        say, table = self._words(fact.say), self._words(fact.table)
        return fact._replace(say=say, table=table) if self.has(table) else None

    def rewrites(self, thing: Thing) -> bool:
        """Whether other words stand in its place: it is lacked, and the bigger thing they name is not."""
        return self.lacks(thing) and not any(self.lacks(_BY_NAME[name]) for name in thing.bigger)

    def _words(self, text: str) -> str:
        for pattern, other in _swaps(self):
            text = pattern.sub(other, text)
        return text

    def _rewritten(self, prompt: Prompt) -> Prompt:
        """The prompt with bigger things named; what it was built from goes by the same names."""
        first, second, third = (cue._replace(text=self._words(cue.text)) for cue in prompt.cues)
        return prompt._replace(
            say=self._words(prompt.say),
            answer=self._words(prompt.answer),
            accept=tuple(dict.fromkeys(map(self._words, prompt.accept))),
            working=self._words(prompt.working),
            cues=(first, second, third),
            watch_for=self._words(prompt.watch_for),
            table=self._words(prompt.table),
            do=self._words(prompt.do),
            given={key: self._words(value) if isinstance(value, str) else value
                   for key, value in prompt.given.items()},
        )  # fmt: skip


@lru_cache(maxsize=64)
def _lacked(house: Household) -> tuple[Thing, ...]:
    """All that is not for this house's table."""
    return tuple(thing for thing in THINGS if house.lacks(thing))


@lru_cache(maxsize=64)
def _swaps(house: Household) -> tuple[tuple[re.Pattern[str], str], ...]:
    """What this house's words go through, in the order of the things."""
    return tuple(
        (re.compile(pattern), other)
        for thing in THINGS
        if house.rewrites(thing)
        for pattern, other in thing.instead
    )


def _handled(thing: Thing, prompt: Prompt) -> bool:
    """Whether a sentence of the prompt has somebody take the thing in hand."""
    texts = (prompt.do, prompt.say, *(cue.text for cue in prompt.cues))
    return any(
        thing.pattern.search(sentence) and _HANDLES.search(sentence)
        for text in texts
        for sentence in _SENTENCE.findall(text)
    )
