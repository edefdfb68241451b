"""Cubes among boxes: told apart by their measures, for the skill `solid-shapes`."""

from warmup import pictures
from warmup.model import Cue
from warmup.randomness import SeededRandom
from warmup.skills.base import Draft


def box_or_cube(rng: SeededRandom) -> Draft:
    """Is the drawn one a cube, by its measures?"""
    # Only here: pictures are loaded one by one, as they are wanted.
    from warmup.pictures.solid_shape import sizes

    drawn, upright = rng.pick(("cube", "box")), rng.coin()
    measures = sizes(drawn, upright)
    cube = len(set(measures)) == 1
    return Draft(
        say=rng.phrasing(
            "Is this a cube? Tell me how you know.",
            "Look at its faces. Is it a cube?",
            "Does this one belong with the cubes? Tell me why.",
        ),
        answer="yes" if cube else "no",
        accept=("yes: all its faces are the same square",)
        if cube
        else ("no: some faces are longer than wide",),
        working="wide × high × deep: " + " × ".join(f"{size:g}" for size in measures),
        cues=(
            Cue("Look at the front, the top and the side. What shape is each?"),
            Cue("Hold a toy block next to a shoe box. Turn both. What is different?"),
            Cue("Measure one side with two fingers together. The child tries the next side."),
        ),
        watch_for="Any box is called a cube. A cube’s faces are all the same square.",
        given={"sizes": list(measures)},
        picture=pictures.SolidShape(drawn, upright),
        table="toy block, box",
    )
