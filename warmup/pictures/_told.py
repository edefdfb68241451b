"""How a picture is told: by what gives nothing away, and exactly, to an adult who can't show the screen."""

from collections.abc import Sequence

EMPTY = "(empty)"
"""Stands in a list for a place that is left bare."""


def in_a_row(texts: Sequence[str]) -> str:
    """Things from left to right; "?" and "" are empty places."""
    return ", ".join(text if text not in ("", "?") else EMPTY for text in texts)


def turn_told(degrees: float) -> str:
    """How far a shape is turned, clockwise; nothing for one that stands upright."""
    return f", turned {degrees:g} degrees" if degrees else ""


def blank_words(count: int) -> str:
    """How a picture says that squares are blank; without a number, which might be an answer."""
    match count:
        case 0:
            return ""
        case 1:
            return ", a square left blank"
        case _:
            return ", some squares left blank"


def finger_words(pointed: Sequence[object]) -> str:
    """How a picture says where the finger is."""
    return f", a finger on {' and '.join(map(str, pointed))}" if pointed else ""


def finger_told(pointed: Sequence[object]) -> str:
    """Where the adult's finger rests."""
    return f"; a finger on {', '.join(map(str, pointed))}" if pointed else ""


def blank_told(hidden: Sequence[object]) -> str:
    """What is left out."""
    return f"; blank: {', '.join(map(str, hidden))}" if hidden else ""


def in_runs(pieces: Sequence[str]) -> str:
    """Pieces from left to right, those alike side by side counted: "5 circle, 1 square"."""
    found: list[tuple[str, int]] = []
    for piece in pieces:
        if found and found[-1][0] == piece:
            found[-1] = piece, found[-1][1] + 1
        else:
            found.append((piece, 1))
    return ", ".join(f"{number} {piece}" for piece, number in found)


def counted(number: int, one: str) -> str:
    """ "1 rod", "3 rods"."""
    return f"{number} {one}" + ("" if number == 1 else "s")
