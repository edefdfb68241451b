"""How a picture is told exactly: what an adult lays out or draws who can't show the screen."""

from collections.abc import Sequence

EMPTY = "(empty)"
"""Stands in a list for a place that is left bare."""


def in_a_row(texts: Sequence[str]) -> str:
    """Things from left to right; "?" and "" are empty places."""
    return ", ".join(text if text not in ("", "?") else EMPTY for text in texts)


def turn_told(degrees: float) -> str:
    """How far a shape is turned, clockwise; nothing for one that stands upright."""
    return f", turned {degrees:g} degrees" if degrees else ""


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
