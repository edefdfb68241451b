"""Small flat shapes that make a larger one: two pieces pushed together, a cut seen, square tiles laid."""

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning
from warmup.randomness import SeededRandom
from warmup.skills._rising import risen
from warmup.skills.base import Draft


def ask_slide_together(rng: SeededRandom) -> Draft:
    """Name what two pieces make once they touch."""
    from warmup.pictures.joined_shapes import PIECES

    # The answer first, so that each comes as often.
    wholes = tuple(dict.fromkeys(whole for whole, _ in PIECES))
    whole = rng.pick(wholes)
    part = rng.pick([part for made, part in PIECES if made == whole])
    turn = rng.pick((0, 45, 90, 180)) if whole != "hexagon" else rng.pick((0, 180))
    return Draft(
        say=rng.phrasing(
            "Pretend to push these together. What shape do they make?",
            "These two slide together. What shape do they make?",
            "Close the gap between these. What shape do you get?",
        ),
        answer=whole,
        accept=(
            f"a {whole}",
            f"a bigger {whole}" if whole == part else f"one {whole}",
            *(("rectangle: true of every square",) if whole == "square" else ()),
        ),
        working=f"{part} + {part} → {whole}",
        cues=(
            Cue("Which two sides will touch? Trace them."),
            Cue("Cut two pieces like these from paper. Slide them until they meet."),
            Cue("Slide them together slowly. The child traces around the outside and names it."),
        ),
        watch_for="Naming one piece. Trace around the outside of both, as if the line were gone.",
        given={"whole": whole, "part": part},
        picture=pictures.JoinedShapes(whole, part, apart=True, turn=turn),
    )


def ask_see_the_two(rng: SeededRandom) -> Draft:
    """Name the two pieces a shape is cut into."""
    from warmup.pictures.joined_shapes import PIECES

    parts = tuple(dict.fromkeys(part for _, part in PIECES if part != "half hexagon"))
    part = rng.pick(parts)
    whole = rng.pick([whole for whole, cut in PIECES if cut == part])
    turn = rng.pick((0, 30, 45, 90))
    return Draft(
        say=rng.phrasing(
            "This is cut in two. What shape is each piece?",
            "Look at the cut. What two shapes do you see?",
            "We cut on the line. What two shapes do we get?",
        ),
        answer=f"{part}s",
        accept=(
            f"two {part}s",
            f"a {part}",
            *(("rectangles: true of squares",) if part == "square" else ()),
        ),
        working=f"{whole} → {part} + {part}",
        cues=(
            Cue("Cover one piece with your hand. Look at the other."),
            Cue("Fold a paper like it along the cut. Look at one half only."),
            Cue("Trace one piece together, side after side. The child names it."),
        ),
        watch_for="Naming the whole shape again. Cover one piece.",
        given={"whole": whole, "part": part},
        picture=pictures.JoinedShapes(whole, part, turn=turn),
    )


_BUILT = (
    (2, "rectangle"),
    (3, "rectangle"),
    (4, "square"),
    (5, "rectangle"),
    (6, "rectangle"),
    (8, "rectangle"),
    (9, "square"),
)
OPENS = 26
"""The week of `put-together` in routines/year.toml: four squares at most until two weeks later."""


def ask_build(morning: Morning, rng: SeededRandom) -> Draft:
    """Lay equal squares to make one bigger shape."""
    count, target = rng.pick(_BUILT if risen(morning, OPENS) else _BUILT[:3])
    rows = [row for row in range(1, count + 1) if count % row == 0 and row <= count // row]
    fits = [row for row in rows if target == "rectangle" or row * row == count]
    said = [
        f"one row of {number_word(count)}"
        if row == 1
        else f"{number_word(row)} rows of {number_word(count // row)}"
        for row in fits
    ]
    word = number_word(count)
    return Draft(
        say=rng.phrasing(
            f"Use {word} square crackers. Make one big {target}.",
            f"Lay {word} square tiles with no gaps. Make a {target}.",
            f"Here are {word} small squares. Build one {target}. Use them all.",
        ),
        answer=" or ".join(said),
        accept=tuple(said) if len(said) > 1 else (),
        working=" or ".join(f"{row} × {count // row}" for row in fits),
        cues=(
            Cue("Put two side by side, edge on edge. What now?"),
            Cue("Look at a tray of tiles or an egg tray: straight rows, no steps at the end."),
            Cue("Lay the first two together. The child sets the rest and checks the corners."),
        ),
        watch_for="Gaps, or a row that ends in a step. The outside needs just four sides.",
        given={"count": count, "target": target},
        table="square crackers",
        do=f"Hand over {word} square crackers, or {word} paper squares all alike.",
    )
