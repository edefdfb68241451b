"""Every answer again, by other code: ``python -m tests.benchmarks.recompute [COUNT] [SIDE]``.

Draws COUNT prompts (20,000 unless told) over all skills, levels and items, the dates of two years, every
school day and many seeds. SIDE is ``number`` (counting, number, adding) or ``other`` (the other strands).
Ends with a table by strand; exit code 1 if any answer is wrong.
"""

import sys
from collections import Counter

from rich.console import Console
from rich.progress import track
from rich.table import Table

from tests.bank import leaks, recomputed
from tests.benchmarks import _arguments
from tests.mornings import many
from warmup import skills
from warmup.model import Strand
from warmup.randomness import SeededRandom

NUMBER = (Strand.COUNTING, Strand.NUMBER, Strand.ADDING)


def names(side: str) -> list[str]:
    """The items of one side of the year, or of both."""
    wanted = {"number": set(NUMBER), "other": set(Strand) - set(NUMBER)}.get(side, set(Strand))
    return [name for name in skills.item_names() if skills.locate(name).skill.strand in wanted]


def main(count: int = 20_000, side: str = "") -> int:
    """Draw, compute again, and print the table."""
    console, mornings, items = Console(), many(730), names(side)
    made: Counter[str] = Counter()
    wrong: Counter[str] = Counter()
    for n in track(range(count), "Computing again", console=console):
        name = items[n % len(items)]
        turn = n // len(items)
        day = next(
            m
            for step in range(len(mornings))
            if skills.askable(name, m := mornings[(turn * 7 + n + step) % len(mornings)])
        )
        prompt = skills.prompt(name, day, SeededRandom("recompute", name, turn))
        strand = skills.locate(name).skill.strand.value
        made[strand] += 1
        complaint = recomputed(prompt)
        faults = ([complaint] if complaint else []) + leaks(prompt)
        if faults:
            wrong[strand] += 1
            console.print(f"{name} on {day.date}: {faults[0]} | {prompt.say} | {prompt.answer}", markup=False)
    table = Table("strand", "prompts", "wrong")
    for strand in made:
        table.add_row(strand, f"{made[strand]:,}", str(wrong[strand]))
    table.add_row("all", f"{sum(made.values()):,}", str(sum(wrong.values())))
    console.print(table)
    return 1 if wrong else 0


if __name__ == "__main__":
    asked = _arguments.parser("recompute", __doc__)
    asked.add_argument("count", type=_arguments.positive, nargs="?", default=20_000, help="how many (20,000)")
    asked.add_argument("side", nargs="?", default="", choices=["number", "other", ""], help="one side alone")
    wanted = asked.parse_args()
    sys.exit(main(wanted.count, wanted.side))
