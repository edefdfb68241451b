"""Corners of the invented home for stories to happen in: a bath, a bed, a clothesline, a kite.

Verbs are in the past and questions ask "how many", so that one and many are told in the same words.
"""

from typing import NamedTuple

from warmup.skills._home import BEAR, BIRD, BOOK, BOW, DUCK, FROG, MOUSE, SLICE, SNAIL, SOCK, Noun


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
        "sat in the bath",
        "swam in",
        "swam off",
        "in the bath",
        ("big", "small"),
        ("the bath", "the sink"),
    ),
    Corner(
        BEAR,
        "lay in the bed",
        "got in",
        "got out",
        "in the bed",
        ("brown", "white"),
        ("the bed", "the chair"),
    ),
    Corner(
        SOCK,
        "hung on the line",
        "got hung up",
        "fell down",
        "on the line",
        ("red", "blue"),
        ("the line", "the box"),
    ),
    Corner(
        SNAIL,
        "sat on the wall",
        "crept up",
        "slid off",
        "on the wall",
        ("big", "small"),
        ("the wall", "the step"),
    ),
    Corner(
        BOW,
        "hung on the kite",
        "went on",
        "blew off",
        "on the kite",
        ("red", "blue"),
        ("the kite", "the hat"),
    ),
    Corner(
        SLICE,
        "lay on the tray",
        "slid on",
        "got eaten",
        "on the tray",
        ("warm", "cold"),
        ("the tray", "the plate"),
    ),
    Corner(
        BIRD,
        "sat in the tree",
        "flew in",
        "flew off",
        "in the tree",
        ("black", "white"),
        ("the tree", "the roof"),
    ),
    Corner(
        FROG,
        "sat in the pond",
        "hopped in",
        "hopped out",
        "in the pond",
        ("green", "brown"),
        ("the pond", "the tub"),
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
        "came back",
        "fell off",
        "on the shelf",
        ("thick", "thin"),
        ("the shelf", "the bed"),
    ),
)
"""Ten corners, so that a story is seldom told twice in the same place."""
