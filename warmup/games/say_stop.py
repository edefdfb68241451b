"""Water is poured slowly, and the child says when to stop."""

from warmup.english import number_word
from warmup.games.base import Game, Play, levels
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

_POURS = 3
_LEVELS = levels("capacity:full-half-empty", "capacity:pour-and-compare", "capacity:cupfuls")
_ENDS = "; the water goes back into the pitcher"


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Cold water, a cup and a bowl, and a pitcher to keep it in."""
    match level:
        case "capacity:full-half-empty":
            setup = "Stand a plastic cup and a bowl on the tray, with cold water in a pitcher."
            rule = ("I pour slowly.", "Say stop when it is half full.", "We look: half, more or less?")
            return Play(
                setup,
                rule,
                f"after three pours{_ENDS}",
                "Half full, full, empty: are the words there?",
                {"pours": _POURS},
                5 * _POURS,
            )
        case "capacity:pour-and-compare":
            setup = "Stand two plastic cups that differ and a bowl on the tray, with cold water in a pitcher."
            rule = ("Choose two.", "Say which one holds more.", "Fill one, and pour it into the other.")
            return Play(
                setup,
                rule,
                f"when all three were compared{_ENDS}",
                "Is it what happens to the water that tells, and not which is taller?",
                {"things": 3},
                5 * _POURS,
            )
        case _:
            most = rng.between(4, 8)
            return Play(
                f"Stand a bowl that takes {number_word(most)} plastic cups or fewer on the tray, "
                "with cold water in a pitcher.",
                ("Guess how many cups fill the bowl.", "Pour and count.", "Say stop when it is full."),
                f"when the bowl is full{_ENDS}",
                "Is each cup full, and counted once?",
                {"most": most},
                2 * most,
            )


GAME = Game(
    id="say-stop",
    name="Say stop",
    needs=("water", "pitcher", "cups", "bowls", "tray"),
    levels=_LEVELS,
    made=made,
    two="One pours, the other says stop; then they change.",
)
