"""Corners of the invented home for stories to happen in: a tub, a bed, a clothesline, a tree.

Verbs are in the past and questions ask "how many", so that one and many are told in the same words.
"""

from collections.abc import Callable
from typing import NamedTuple

from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import APPLE, BIRD, BOOK, CAT, DUCK, FROG, MOUSE, ROLL, SNAIL, SOCK, Noun


class Corner(NamedTuple):
    """Who is there, how they come and go, two kinds of them, and the place beside a second one.

    ``were``, ``came`` and ``went`` are verbs with all that goes with them; ``here`` is where it is.
    """

    who: Noun
    were: str
    came: str
    went: str
    here: str
    kinds: tuple[str, str]
    places: tuple[str, str]


CORNERS = (
    Corner(
        DUCK,
        "swam in the tub",
        "got in",
        "got out",
        "in the tub",
        ("big", "small"),
        ("the tub", "the sink"),
    ),
    Corner(
        CAT,
        "sat on the bed",
        "got on",
        "got off",
        "on the bed",
        ("black", "white"),
        ("the bed", "the chair"),
    ),
    Corner(
        SOCK,
        "lay in the drawer",
        "went in",
        "came out",
        "in the drawer",
        ("red", "blue"),
        ("the drawer", "the basket"),
    ),
    Corner(
        SNAIL,
        "sat on the wall",
        "came up",
        "fell off",
        "on the wall",
        ("big", "small"),
        ("the wall", "the leaf"),
    ),
    Corner(
        APPLE,
        "sat in the bowl",
        "went in",
        "got eaten",
        "in the bowl",
        ("red", "green"),
        ("the bowl", "the bag"),
    ),
    Corner(
        ROLL,
        "lay in the basket",
        "went in",
        "got eaten",
        "in the basket",
        ("big", "small"),
        ("the basket", "the plate"),
    ),
    Corner(
        BIRD,
        "sat in the tree",
        "flew in",
        "flew off",
        "in the tree",
        ("black", "brown"),
        ("the tree", "the roof"),
    ),
    Corner(
        FROG,
        "sat in the pond",
        "hopped in",
        "hopped out",
        "in the pond",
        ("green", "brown"),
        ("the pond", "the lake"),
    ),
    Corner(
        MOUSE,
        "rode on the train",
        "got on",
        "got off",
        "on the train",
        ("gray", "white"),
        ("the train", "the bus"),
    ),
    Corner(
        BOOK,
        "stood on the shelf",
        "got put back",
        "fell off",
        "on the shelf",
        ("thick", "thin"),
        ("the shelf", "the bed"),
    ),
)
"""Ten corners, so that a story is seldom told twice in the same place."""


def in_a_corner(tell: Callable[[Corner, int], str], rng: SeededRandom) -> tuple[Phrasing, Corner]:
    """A story told in one of its two shapes, and the corner it is set in."""
    shape = rng.below(2)
    told = rng.phrasing(*(tell(corner, shape) for corner in CORNERS))
    return told, CORNERS[ord(told.key) - ord("a")]
