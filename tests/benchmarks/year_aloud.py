"""A whole year of mornings, printed to be read with a teacher's eye.

``python -m tests.benchmarks.year_aloud [quick|average|slow]``: each opening, and every prompt with its answer
and why it came, for an invented child whose marks come from a seeded draw.
"""

import datetime as dt
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks import _arguments
from warmup.cli.plain import day_words
from warmup.config.family import Child, CountdownRule, Family
from warmup.config.places import Places
from warmup.engine.memory import Knowledge, fold
from warmup.model import Asked, ItemId, Mark, Morning, Routine
from warmup.randomness import SeededRandom
from warmup.session.context import Context, open_context

FIRST = dt.date(2026, 8, 31)
# In a hundred: how many first answers come easily, and how many more with each fluent mark behind.
CHILDREN = {"quick": (82, 6), "average": (64, 9), "slow": (45, 11)}


def family(name: str) -> Family:
    """An invented family with a few days off and two days that matter."""
    return Family(
        first_day=FIRST,
        began=FIRST,
        children=(Child(name),),
        off=((dt.date(2026, 11, 23), dt.date(2026, 11, 27)), (dt.date(2026, 12, 21), dt.date(2027, 1, 1))),
        countdowns=(
            CountdownRule("the lake", yearly="June 4"),
            CountdownRule("the first snow soup", dt.date(2027, 1, 14)),
        ),
    )


def answer(name: str, item: ItemId, day: dt.date, known: Knowledge) -> Mark:
    """How the invented child answers: surer with each fluent mark, less sure after a long rest."""
    first, more = CHILDREN[name]
    luck = SeededRandom("year", name, item, day.isoformat()).below(100)
    easy = min(96, first + more * known.of(item).run)
    if luck < easy:
        return Mark.FLUENT
    return Mark.HESITATED if luck < easy + (100 - easy) * 0.6 else Mark.NOT_YET


def year(name: str) -> Iterator[tuple[Morning, Routine, tuple[Mark, ...]]]:
    """Every morning of the year in turn, its routine and the marks it got.

    What was not yet three times running is taught again before the next morning.
    """
    with tempfile.TemporaryDirectory() as folder:
        places = Places(Path(folder), Path(folder))
        context: Context = open_context(places, family(name), FIRST, None, saved=False)
        known = Knowledge()
        for day in context.year.mornings:
            context.today = day
            context.know(known)
            for item in context.to_teach():
                context.editor.taught(item, context.today)
            context.know(known)
            routine = context.routine()
            marks = tuple(answer(name, prompt.item, day, known) for prompt in routine.prompts)
            lines = [
                Asked(day, prompt.item, mark, wording=prompt.wording)
                for prompt, mark in zip(routine.prompts, marks, strict=True)
            ]
            known = fold(context.curriculum(), lines, known)
            yield routine.morning, routine, marks


def main(child: str = "average") -> None:
    """Print the year of one child."""
    for morning, routine, marks in year(child):
        print(f"\n{morning.date:%a %d %b}  {day_words(morning)}")
        print(f"  opening   {routine.opening.say if routine.opening else '(none)'}")
        for prompt, mark in zip(routine.prompts, marks, strict=True):
            print(f"  {mark.value:<9} {prompt.item:<34} {prompt.say}  → {prompt.answer}  ({prompt.why})")


if __name__ == "__main__":
    asked = _arguments.parser("year_aloud", __doc__)
    asked.add_argument("child", nargs="?", default="average", choices=list(CHILDREN), help="(average)")
    main(asked.parse_args().child)
