"""A strip of paper waits in one shoe of a line, and its place is told."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_NOTES = 5
_SHOES = {"ordinals:to-fifth": (4, 5), "ordinals:to-tenth": (6, 10)}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """A line of shoes from the door on."""
    shoes = rng.between(*_SHOES[level])
    return Play(
        f"Line up {number_word(shoes)} shoes from the door on, and hide a strip of paper in one.",
        ("A note is in a shoe.", "I say its place from the door.", "Go to that shoe and look."),
        "after five notes",
        "Does the count begin at the door?",
        {"shoes": shoes, "notes": _NOTES},
        3 * _NOTES,
    )


GAME = Game(
    id="note-in-a-shoe",
    name="A note in a shoe",
    needs=("shoes", "strips of paper"),
    levels=levels(*_SHOES),
    made=made,
    two="One hides and tells the place, the other looks; then they change.",
)
