"""The things of an invented home that prompts are about: a kitchen, a garden, a laundry line, a bath.

Words are short, so that a five-year-old knows each of them. Things to hold are large ones: small parts
are no matter for children under three (16 CFR 1501).
"""

from typing import NamedTuple

from warmup.english import number_word


class Noun(NamedTuple):
    """A thing to count: its name for one of it and for more."""

    one: str
    many: str

    def of(self, count: int) -> str:
        """The count and its noun, in words: "one sock", "zero socks", "four socks"."""
        return f"{number_word(count)} {self.named(count)}"

    def named(self, count: int) -> str:
        """The noun that goes with ``count``."""
        return self.one if count == 1 else self.many


SOCK = Noun("sock", "socks")
SPOON = Noun("spoon", "spoons")
BLOCK = Noun("block", "blocks")
CUP = Noun("cup", "cups")
PEG = Noun("clothespin", "clothespins")
LEAF = Noun("leaf", "leaves")
BOOK = Noun("book", "books")
DUCK = Noun("duck", "ducks")
ROLL = Noun("roll", "rolls")
SHELL = Noun("shell", "shells")
BEAN = Noun("bean", "beans")
SNAIL = Noun("snail", "snails")
CAT = Noun("cat", "cats")
HAT = Noun("hat", "hats")
BIRD = Noun("bird", "birds")
FROG = Noun("frog", "frogs")
MOUSE = Noun("mouse", "mice")
APPLE = Noun("apple", "apples")

TO_HOLD = (SOCK, SPOON, BLOCK, CUP, PEG, LEAF, BOOK, SHELL)
"""Things that are at hand in a house and can be laid on a table."""


def a(thing: str) -> str:
    """One of the thing with its article: "a cup", "an apple"."""
    return f"{'an' if thing[0] in 'aeiou' else 'a'} {thing}"


def upper(text: str) -> str:
    """The text with its first letter large, to begin a sentence with."""
    return text[:1].upper() + text[1:]
