"""A morning of the real program: what it asks before it begins, on some dates, and the marks it leaves."""

import datetime as dt
import time
from functools import partial
from pathlib import Path

from tests.terminal import Terminal
from warmup.config import family as families
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.tui.guards import LANDING

QUESTIONS = ("Does it count", "Does your child read")
"""On a day without school; and once, from the week in which number words open."""


def past_questions(terminal: Terminal, begun: str) -> None:
    """Enter past what is asked, until the screen shows ``begun``."""
    for at, question in enumerate(QUESTIONS):
        if question in terminal.wait(partial(_any_of, (begun, *QUESTIONS[at:]))):
            # A key right after the one that opened the question would be taken for a bounce.
            time.sleep(LANDING.total_seconds() + 0.1)
            terminal.press("enter")
    terminal.wait(begun)


def _any_of(texts: tuple[str, ...], screen: str) -> bool:
    return any(text in screen for text in texts)


def history(home: Path) -> list[Mark | None]:
    """The marks on disk, in order."""
    journal = Journal.open(home, dt.datetime.now)
    (child,) = families.load(home / "family.toml").children
    marks = [line.mark for line in journal.history(child.journal_name)]
    journal.shut()
    return marks
