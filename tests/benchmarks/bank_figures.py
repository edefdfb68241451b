"""Figures of the whole bank: ``python -m tests.benchmarks.bank_figures``.

How each skill reads, how many different prompts each level has, how evenly guessable answers fall, and how
long a thousand prompts take beside a bare Python.
"""

import subprocess
import sys
import time

from rich.console import Console
from rich.progress import track
from rich.table import Table

from tests.bank import Report, grade, judge
from tests.benchmarks import _arguments
from warmup.skills import SKILLS, locate


def seconds(command: list[str]) -> float:
    """How long a command takes."""
    began = time.perf_counter()
    subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True)
    return time.perf_counter() - began


def main() -> None:
    """Draw two hundred prompts an item, and print the tables."""
    console = Console()
    reports: dict[str, Report] = {
        skill: judge(skill, 200) for skill in track(SKILLS, "Drawing", console=console)
    }
    reading = Table(
        "skill", "prompts", "wrong", "pooled grade", "syllables a word", "fewest distinct a level"
    )
    for skill, report in reports.items():
        level, beats = grade(report.says)
        fewest = min(len(distinct) for distinct in report.distinct.values())
        wrong = sum(report.wrong.values())
        reading.add_row(skill, str(report.made), str(wrong), f"{level:.2f}", f"{beats:.2f}", str(fewest))
    everything = [say for report in reports.values() for say in report.says]
    level, beats = grade(everything)
    reading.add_row("all", str(len(everything)), "", f"{level:.2f}", f"{beats:.2f}", "")
    console.print(reading)
    even = Table("item", "chance", "answers", "commonest", title="Where an answer can be guessed")
    for report in reports.values():
        for item, answers in report.answers.items():
            chance = locate(item).level.guess_of(locate(item).name)
            if chance >= 0.33:
                top = answers.most_common(2)
                shares = ", ".join(f"{answer} {count / sum(answers.values()):.0%}" for answer, count in top)
                even.add_row(item, f"{chance:.2f}", str(len(answers)), shares)
    console.print(even)
    bare = seconds([sys.executable, "-c", "import rich.console, argparse, datetime"])
    ask = seconds([sys.executable, "-m", "warmup", "ask", "count-on", "--count", "1000"])
    console.print(
        f"warmup ask --count 1000: {ask:.2f} s, {ask / bare:.1f} times a bare Python ({bare:.2f} s)"
    )


if __name__ == "__main__":
    _arguments.parser("bank_figures", __doc__).parse_args()
    main()
