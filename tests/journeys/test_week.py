"""The real program in a pseudo-terminal: the page of a week, by one hand alone and by mouse alone."""

import datetime as dt
import sys
import time
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore = ["test_week.py"]

from tests.journeys.test_hands_and_mouse import Adult
from tests.journeys.test_trouble import with_family
from tests.terminal import KEYS, WARMUP, Terminal, environment
from tests.tui.hands import BOTH, LEFT, RIGHT
from warmup.config.family import load
from warmup.journal.journal import Journal
from warmup.tui.guards import BOUNCE, LANDING

HANDS = {
    "right": {
        "menu": "full_stop", "this week": "enter", "week after": "right", "it was taught": "space",
        "it is not taught yet": "space", "undo": "u", "back": "backspace",
    },
    "left": {
        "menu": "tab", "this week": "e", "week after": "d", "it was taught": "e",
        "it is not taught yet": "e", "undo": "z", "back": "escape",
    },
    "mouse": {},
}  # fmt: skip
GAP = 2 * BOUNCE.total_seconds()
"""The same key again sooner would be taken for a bounce."""
DOWN = {"right": "down", "left": "s"}


@pytest.mark.slow
@pytest.mark.parametrize("by", HANDS)
def test_a_level_of_next_week_was_taught_and_that_is_taken_back(home: Path, by: str) -> None:
    assert {*HANDS[by].values()} <= (LEFT if by == "left" else RIGHT) | BOTH
    with_family(home)

    def ticks() -> tuple[int, int]:
        (child,) = load(home / "family.toml").children
        return len(child.opened), len(child.held)

    with Terminal(WARMUP, environment(home)) as terminal:
        adult = Adult(terminal, HANDS[by])
        terminal.wait("nothing is asked yet")
        adult.does("menu", "this week")
        # The entries above it, each with its sentence below the list.
        for sentence in ("Fewer prompts", "What this quarter", "Its mornings") if by in DOWN else ():
            terminal.press(KEYS.get(DOWN[by], DOWN[by]))
            terminal.wait(sentence)
            time.sleep(GAP)
        adult.does("this week", "Week 1 of 36")
        # The arrow takes an entry of the menu as well, and at once would be taken for a bounce of that.
        time.sleep(LANDING.total_seconds() + 0.1)
        adult.does("week after", "Week 2 of 36")
        adult.does("it was taught", "It may come from now on.")
        assert ticks() == (1, 0)
        time.sleep(GAP)
        adult.does("it is not taught yet", "Not taught yet, so held back")
        assert ticks() == (0, 1)
        adult.does("undo", "Undone: not taught yet.")
        time.sleep(GAP)
        adult.does("undo", "Undone: taught.")
        assert ticks() == (0, 0)
        adult.does("back", "nothing is asked yet")
        terminal.press("q")
        assert terminal.finish() == 0
    journal = Journal.open(home, dt.datetime.now, read_only=True)
    assert not journal.history("Bean"), "no key of the page marks"
