"""A half to finish on graph paper: the other half is its mirror image in the fold line."""

from warmup import pictures
from warmup.english import count_words, number_word, ordinal_word, plural
from warmup.model import Cue
from warmup.randomness import SeededRandom
from warmup.skills.base import Draft

_SIDES = {(False, False): "right", (False, True): "left", (True, False): "lower", (True, True): "upper"}
"""The bare side, by whether the line lies flat and whether the other side is filled."""


def fold_lines_of(runs: tuple[int, ...]) -> int:
    """How many of a square's four lines fold the finished figure onto itself.

    ``runs`` are the squares in each row from the line out, the same on both sides of it.
    """
    cells = {
        (2 * row, side * (2 * k - 1))
        for row, run in enumerate(runs)
        for k in range(1, run + 1)
        for side in (1, -1)
    }
    rows, columns = [r for r, _ in cells], [c for _, c in cells]
    down, across = (min(rows) + max(rows)) / 2, (min(columns) + max(columns)) / 2
    about = {(r - down, c - across) for r, c in cells}
    mirrors = (
        {(r, -c) for r, c in about},
        {(-r, c) for r, c in about},
        {(c, r) for r, c in about},
        {(-c, -r) for r, c in about},
    )
    return sum(mirror == about for mirror in mirrors)


def ask_finish(rng: SeededRandom) -> Draft:
    """Fill the other half of a figure whose only fold line is the one drawn."""
    lying, other = rng.coin(), rng.coin()
    along, away = (6, 2) if lying else (4, 3)
    runs = tuple(rng.between(1, away) for _ in range(along))
    while fold_lines_of(runs) != 1:
        runs = tuple(rng.between(1, away) for _ in range(along))
    filled = tuple((row, k) for row, run in enumerate(runs) for k in range(1, run + 1))
    start = "left" if lying else "top"
    side = _SIDES[lying, other]
    return Draft(
        say=rng.phrasing(
            "Finish the other half. Show me each square to fill.",
            "The squares are wet paint. We fold. Where does it print?",
            "Make the halves match. Touch each square we must fill.",
        ),
        answer=f"{side} side, squares out from the line, starting at the {start}: {count_words(runs)}",
        working=" ".join(map(str, runs)) + " | " + " ".join(map(str, runs)),
        cues=(
            Cue(f"Start at the {start}. How many squares out from the line?"),
            Cue("Paint or crayon it thick on graph paper. Fold, rub, open and look."),
            Cue(f"Do the first one at the {start} together, counting out from the line."),
        ),
        watch_for="Sliding it over: the shape comes out facing the same way. A fold turns it over.",
        given={"runs": list(runs), "lying": lying, "other": other},
        picture=pictures.Half(filled, along, away, lying, other),
    )


def ask_flip_not_slide(rng: SeededRandom) -> Draft:
    """Find the twin of one square: as far from the line, on the other side."""
    lying, other = rng.coin(), rng.coin()
    along, away = (6, 2) if lying else (4, 4)
    row, far = rng.below(along), rng.between(1, away)
    side = _SIDES[lying, other]
    place = f"{ordinal_word(row + 1)} from the {'left' if lying else 'top'}"
    return Draft(
        say=rng.phrasing(
            "The square is wet paint. We fold. Where does it print?",
            "We fold on the line. Where does this square land?",
            "Touch the square that matches, across the line.",
        ),
        answer=f"{side} side, {place}, {number_word(far)} {plural(far, 'square')} out from the line",
        working=f"{far} before the line, {far} past it",
        cues=(
            Cue("How many steps from the square to the line?"),
            Cue("Put a dab of paint on graph paper. Fold it on the line, open it up."),
            Cue("Walk a finger to the line together, counting. The child walks as far past it."),
        ),
        watch_for="Sliding: the square keeps its place in its half. Near the line stays near the line.",
        given={"along": row, "away": far, "lying": lying, "other": other},
        picture=pictures.Half(((row, far),), along, away, lying, other),
    )
