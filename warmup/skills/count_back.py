"""count-back: count backward.

No kindergarten code of the Common Core asks for it; it leads toward 1.OA.C.5, where counting back is
taking away. Its reach follows Virginia's Standards of Learning (2023), K.NS.1.f: back by ones from any
number from 1 to 20.
"""

from warmup import pictures
from warmup.english import count_words, number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills._counting import from_there, steps
from warmup.skills._number import chart_rows
from warmup.skills._rising import grown
from warmup.skills.base import Draft, Level, Skill

_WATCH = {
    "from-5": "Stopping at one, a step too soon. Fold down the last finger too.",
    "from-10": "Turning around halfway: “seven, six, seven”. Or stopping a step too soon.",
    "from-20": "Counting up in a whisper before each word. Fine for now; the chart helps.",
    "20-to-19": "“Twenty, ten” or “twenty, ninety”: the teens are missed on the way down.",
    "13-to-12": "“Thirteen, eleven”: twelve gets lost, as it has no teen in it.",
}


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """Count back from a start to an end; the answer is what the child says, after what the adult said."""
    start, end = _stretch(item, morning.week, rng)
    numbers, word = steps(start, end, -1), number_word(start)
    small = start <= 10
    # From above the start where the way down is hard just there, so that the cue does not walk it.
    begin = numbers[:2] if small else steps(start + 2, start, -1)
    say = _way(word, number_word(end), rng, stairs=small, zero=end == 0)
    heard = int(say.key == "c")
    answer, accept = from_there(numbers, heard)
    return Draft(
        say=say,
        table="stairs" if small and say.key == "b" else "",
        answer=answer,
        accept=(*accept, *_to_nothing(numbers)),
        working=", ".join(map(str, numbers)),
        cues=(
            Cue(
                f"Say it again. Show {word} fingers. Fold them down, one at a time."
                if small
                else f"Say it again. Count up from {number_word(end)} to {word}. Now come back down."
            ),
            Cue(
                f"Put a finger on {word}. Hop it back, a step for each number.",
                pictures.NumberLine(0, start, start=start)
                if small
                else chart_rows(end, start + 2, pointed=(start,)),
            ),
            Cue(f"Begin together: “{count_words(begin)}…” The child keeps going."),
        ),
        watch_for=_WATCH[item],
        given={"start": start, "end": end, "heard": heard},
        picture=None if small else pictures.Numeral(str(start)),
    )


def _way(start: str, end: str, rng: SeededRandom, *, stairs: bool, zero: bool) -> Phrasing:
    """Only ten stairs or fewer are walked down, and only at zero does a rocket start."""
    return rng.phrasing(
        f"Count back from {start} to {end}.",
        f"Walk down the stairs. Count back from {start} to {end}."
        if stairs
        else f"Close your eyes. Count back from {start} to {end}.",
        f"I say {start}. You count back to {end}.",
        f"Start at {start}. Count down to {end}.",
        f"Pretend you’re a rocket. Count down from {start} to {end}."
        if zero
        else f"Count down from {start}. Stop at {end}.",
        f"Fold down your fingers. Count back from {start} to {end}."
        if stairs
        else f"Tap the table. Count back from {start} to {end}.",
    )


def _to_nothing(numbers: range) -> tuple[str, ...]:
    """A last step called "nothing" where it is zero."""
    parts = (numbers[:-1], numbers[1:-1]) if numbers[-1] == 0 else ()
    return tuple(f"{count_words(part)}, nothing" for part in parts)


def _stretch(item: str, week: int, rng: SeededRandom) -> tuple[int, int]:
    """The first and the last number to say; the start rises from the week in which the level opens."""
    match item:
        case "from-5":
            return rng.between(3, grown(3, 5, week, opens=2)), 0
        case "from-10":
            start = rng.between(6, grown(6, 10, week, opens=10))
            return start, rng.between(0, start - 4)
        case "20-to-19":
            return 20, rng.between(14, 17)
        case "13-to-12":
            return rng.between(13, 16), rng.between(8, 11)
        case _:
            start = rng.between(11, grown(11, 19, week, opens=21))
            return start, start - rng.between(4, 5)


SKILL = Skill(
    id="count-back",
    title="Count back",
    asks="count backward",
    strand=Strand.COUNTING,
    ladder=("from-5", "from-10", "from-20"),
    levels=(
        Level("from-5", "from five", ("from-5",), toward=("1.OA.C.5",), seconds=20),
        Level(
            "from-10",
            "from ten",
            ("from-10",),
            toward=("1.OA.C.5",),
            stands_on=("count-back:from-5", "count:to-20"),
            seconds=20,
        ),
        Level(
            "from-20",
            "from twenty",
            ("from-20", "20-to-19"),
            misconceptions=("13-to-12",),
            toward=("1.OA.C.5",),
            stands_on=("count-back:from-10", "count-on:within-20"),
        ),
    ),
    ask=ask,
)
