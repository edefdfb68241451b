"""Shapes rebuilt from their exact words, and what every reader of such words needs."""

import re
from typing import Any

Fields = dict[str, Any]
EMPTY = "(empty)"
"""What stands in a list for a place that is left bare."""
_TURN = r"(?:, turned (-?\d+) degrees)?"


def match(form: str, words: str) -> re.Match[str] | None:
    """The words, if they have this form from end to end."""
    return re.fullmatch(form, words)


def whole(text: str | None) -> int:
    """A number that may be missing: nothing is 0."""
    return int(text) if text else 0


def numbers(text: str | None) -> tuple[int, ...]:
    """Every number in the text."""
    return tuple(int(each) for each in re.findall(r"\d+", text or ""))


def places(text: str) -> tuple[str, ...]:
    """A list from left to right; "?" for what is left bare."""
    return tuple("?" if each == EMPTY else each for each in text.split(", "))


def flat_shape(words: str) -> Fields | None:
    """A flat shape."""
    m = match(rf"(a solid shape|the outline of a shape, a piece cut out of it): ([a-z ]+?){_TURN}", words)
    return m and {"name": m[2], "turn": whole(m[3]), "gap": m[1].startswith("the outline")}


def fold(words: str) -> Fields | None:
    """A paper shape to fold."""
    off = r"(?:, (-?\d+) hundredths of half its size off the middle)?"
    m = match(
        rf"a paper shape: ([a-z ]+?){_TURN}(?:; a fold line (-?[\d.]+) degrees up from flat{off})?", words
    )
    line = float(m[3]) if m and m[3] else None
    return m and {"figure": m[1], "turn": whole(m[2]), "line": line, "aside": whole(m[4])}


def half(words: str) -> Fields | None:
    """Half a figure on graph paper."""
    m = match(
        r"graph paper, (\d+) by (\d+) squares each side of a fold line (down the middle|across); "
        r"filled (left of|right of|above|below) it, counted from it: (.+)",
        words,
    )
    if m is None:
        return None
    filled = tuple(
        (along, away)
        for along, squares in enumerate(m[5].split("; "))
        for away in numbers(squares.partition("squares")[2])
    )
    return {
        "filled": filled,
        "along": int(m[1]),
        "away": int(m[2]),
        "lying": m[3] == "across",
        "other": m[4] in ("right of", "below"),
    }


def joined(words: str) -> Fields | None:
    """Two pieces and what they make."""
    m = match(
        rf"two pieces, ([a-z ]+) and \1, (joined into|side by side, ready to make) one ([a-z ]+?){_TURN}",
        words,
    )
    return m and {
        "part": m[1],
        "apart": m[2] != "joined into",
        "whole": m[3],
        "turn": whole(m[4]),
    }


def shape_row(words: str) -> Fields | None:
    """Shapes side by side."""
    m = match(r"(?:outlines of )?shapes, left to right: (.+)", words)
    if m is None:
        return None
    shapes = [re.fullmatch(rf"([a-z ]+?){_TURN}(, a piece cut out)?", each) for each in m[1].split("; ")]
    if not all(shapes):
        return None
    return {
        "names": tuple(each[1] for each in shapes if each),
        "turns": tuple(whole(each[2]) for each in shapes if each),
        "gaps": tuple(place for place, each in enumerate(shapes) if each and each[3]),
    }


def shares(words: str) -> Fields | None:
    """Something cut into parts."""
    sizes = r"(\d+(?: to \d+)*)"
    forms = {
        "slices": rf"from the middle into slices {sizes}{_TURN}",
        "strips": rf"into strips (?:one above the other|side by side), {sizes}",
        "cross": rf"once each way, {sizes}",
    }
    if m := match(r"a (\w+) cut from corner to corner(, both ways)?", words):
        return {"whole": m[1], "cut": "corners", "parts": (1,) * (4 if m[2] else 2)}
    for cut, form in forms.items():
        if m := match(rf"a (\w+) cut {form}", words):
            turn = whole(m[3]) if cut == "slices" else 0
            lying = "one above the other" in words
            return {"whole": m[1], "cut": cut, "parts": numbers(m[2]), "turn": turn, "lying": lying}
    return None


def solid_shape(words: str) -> Fields | None:
    """A solid."""
    m = match(r"a solid: (\w+)(, point down|, lying)?", words)
    return m and {"name": m[1], "upright": m[2] is None}


def sorted_rows(words: str) -> Fields | None:
    """Rows of shapes."""
    m = match(r"rows of shapes, from the top: (.+?)(?:; each (\w+) twice as big)?", words)
    if m is None:
        return None
    rows = tuple(
        tuple(form for n, form in re.findall(r"(\d+) (\w+)", line) for _ in range(int(n)))
        for line in m[1].split("; ")
    )
    return {"rows": rows, "big": m[2] or ""}


def pattern_row(words: str) -> Fields | None:
    """A row of shapes with a part that repeats."""
    m = match(r"shapes, left to right: (.+)", words)
    return m and {"pieces": places(m[1])}
