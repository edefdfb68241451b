"""What the counting skills share: stretches of numbers, and their short form for the adult."""

from collections.abc import Collection, Sequence

from warmup.english import count_words, number_word
from warmup.model import Cue
from warmup.pictures import Picture
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._home import upper
from warmup.skills.base import Draft

_WHOLE = 12
"""A stretch of at most so many numbers is written out; of a longer one only the places that matter."""


def steps(start: int, end: int, by: int = 1) -> range:
    """The numbers said from ``start`` to ``end``, both included; ``by`` is negative to go back."""
    return range(start, end + (1 if by > 0 else -1), by)


def in_words(numbers: Sequence[int], keep: Collection[int] = ()) -> str:
    """The stretch in words. A long one is shortened: "one, two … twenty-nine, thirty … thirty-three".

    What stays: the first two, the last, the places past ten where the tens change, those in ``keep``.
    """
    return " … ".join(map(count_words, _runs(numbers, keep)))


def in_figures(numbers: Sequence[int], keep: Collection[int] = ()) -> str:
    """The same in figures: "1, 2 … 29, 30 … 33"."""
    return " … ".join(", ".join(map(str, run)) for run in _runs(numbers, keep))


def _runs(numbers: Sequence[int], keep: Collection[int]) -> list[list[int]]:
    """The numbers that stay, in runs without a gap."""
    last = len(numbers) - 1
    runs: list[list[int]] = [[]]
    for at, number in enumerate(numbers):
        changes = any(n > 10 and n in numbers and n % 10 == 0 for n in (number, number + 1))
        if last < _WHOLE or at < 2 or at == last or changes or number in keep:
            runs[-1].append(number)
        elif runs[-1]:
            runs.append([])
    return [run for run in runs if run]


def tens_change(numbers: Sequence[int]) -> str:
    """A remark for the working on the first place where the tens change; empty where there is none."""
    crossed = [n for n in numbers[1:] if n % 10 == 0]
    return f": past the {crossed[0] - 1} the tens change" if crossed else ""


def opening(numbers: Sequence[int]) -> str:
    """How adult and child begin together: the first two, or of a short stretch only the first."""
    return f"“{count_words(numbers[: 2 if len(numbers) > 3 else 1])}…”"


def by_way(numbers: Sequence[int], by: str, action: str, rng: SeededRandom) -> tuple[Phrasing, int]:
    """A skip count said in one of its ways, and how many of its numbers the adult says for the child.

    ``by`` is "tens" and the like; ``action`` a sentence on what the child does at each number.
    """
    start, end = number_word(numbers[0]), number_word(numbers[-1])
    # Said for a long count only: of a short one it would leave the child little to say.
    begun = len(numbers) >= 5
    say = rng.phrasing(
        f"Count by {by} from {start} to {end}.",
        f"Start at {start}. Count by {by} to {end}.",
        f"{upper(count_words(numbers[:2]))}. Keep going by {by} to {end}."
        if begun
        else f"Tap the table. Count by {by} from {start} to {end}.",
        f"{action} Count by {by} from {start} to {end}.",
        f"Clap each time. Count by {by} from {start} to {end}.",
        f"I say {start}. You count on by {by} to {end}.",
        f"Count by {by}. Start at {start} and stop at {end}.",
    )
    return say, {"c": 2 if begun else 0, "f": 1}.get(say.key, 0)


def from_there(numbers: Sequence[int], heard: int) -> tuple[str, tuple[str, ...]]:
    """A count as the child says it, and the other right ways.

    It goes on after the ``heard`` numbers the adult has said; else it begins where it is told to. To say an
    adult's number again is right as well, and so is to leave out the start.
    """
    forms = [count_words(numbers[said:]) for said in range(max(heard, 1) + 1)]
    return forms.pop(heard), tuple(forms)


def skip_count(
    numbers: Sequence[int],
    by: str,
    action: str,
    cues: tuple[Cue, Cue],
    rng: SeededRandom,
    *,
    watch_for: str,
    picture: Picture | None,
) -> Draft:
    """A count by twos, fives or tens; the answer is what the child says. Its last cue is to begin together.

    ``by`` and ``action`` are those of ``by_way``.
    """
    say, heard = by_way(numbers, by, action, rng)
    answer, accept = from_there(numbers, heard)
    return Draft(
        say=say,
        answer=answer,
        accept=accept,
        working=", ".join(map(str, numbers)),
        cues=(*cues, Cue(f"Begin together: {opening(numbers)} The child keeps going.")),
        watch_for=watch_for,
        given={"start": numbers[0], "end": numbers[-1], "by": numbers[1] - numbers[0], "heard": heard},
        picture=picture,
    )
