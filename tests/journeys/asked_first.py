"""What the real program asks before a morning begins, on some dates."""

import time
from functools import partial

from tests.terminal import Terminal
from warmup.tui.guards import LANDING

_QUESTIONS = ("Does it count", "Does your child read")
"""On a day without school; and once, from the week in which number words open."""


def past_questions(terminal: Terminal, begun: str) -> None:
    """Enter past what is asked, until the screen shows ``begun``."""
    for at, question in enumerate(_QUESTIONS):
        if question in terminal.wait(partial(_any_of, (begun, *_QUESTIONS[at:]))):
            # A key right after the one that opened the question would be taken for a bounce.
            time.sleep(LANDING.total_seconds() + 0.1)
            terminal.press("enter")
    terminal.wait(begun)


def _any_of(texts: tuple[str, ...], screen: str) -> bool:
    return any(text in screen for text in texts)
