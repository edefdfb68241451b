"""The real program in a pseudo-terminal: a whole morning by one hand alone, and by mouse alone."""

import datetime as dt
import re
import sys
import time
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore = ["test_hands_and_mouse.py"]

from tests.journeys.test_trouble import with_family
from tests.terminal import KEYS, WARMUP, Terminal, environment
from tests.tui.hands import BOTH, LEFT, RIGHT
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.tui.guards import LANDING

_TYPED = {"escape": "\x1b", "tab": "\t", "backspace": "\x7f", "question_mark": "?", "full_stop": "."}


class Adult:
    """Somebody who presses keys of one hand, or clicks on what is named at the foot."""

    def __init__(self, terminal: Terminal, keys: dict[str, str]) -> None:
        self._terminal, self._keys = terminal, keys

    def does(self, label: str, then: str) -> None:
        """Do what this label says, and wait for what comes of it."""
        self.press(label)
        self._terminal.wait(then)

    def press(self, label: str) -> None:
        """Press its key, or click on it where it stands lowest."""
        if self._keys:
            key = self._keys[label]
            self._terminal.press(KEYS.get(key, _TYPED.get(key, key)))
            return
        shown = ""
        while self._terminal.wait(label) != shown:  # What is half drawn has other rows.
            shown = self._terminal.text()
            self._terminal.read(0.1)
        rows = shown.splitlines()
        row = max(at for at, line in enumerate(rows) if label in line)
        where = f"{rows[row].index(label) + 1};{row + 1}"
        self._terminal.press(f"\x1b[<0;{where}M", f"\x1b[<0;{where}m")


HANDS = {
    "right": {
        "next": "right", "came easily": "up", "hesitated": "down", "not yet": "n", "cue": "space",
        "undo": "u", "back": "left", "all keys": "question_mark", "those came easily too": "0",
        "finish": "enter",
    },
    "left": {
        "next": "d", "came easily": "w", "hesitated": "s", "not yet": "x", "cue": "e", "undo": "z",
        "back": "a", "all keys": "4", "those came easily too": "t", "finish": "e",
    },
    "mouse": {},
}  # fmt: skip


@pytest.mark.slow
@pytest.mark.parametrize("by", HANDS)
def test_a_whole_morning(home: Path, by: str) -> None:
    keys = HANDS[by]
    assert {*keys.values()} <= (LEFT if by == "left" else RIGHT) | BOTH
    with_family(home)
    with Terminal(WARMUP, environment(home)) as terminal:
        adult = Adult(terminal, keys)
        terminal.wait("nothing is asked yet")
        adult.does("next", "1 of ")
        total = int(re.findall(r"1 of (\d+)", terminal.text())[0])
        adult.does("cue", "Cue 1:")
        adult.does("hesitated", "2 of ")
        adult.does("came easily", "3 of ")
        adult.does("undo", "2 of ")
        adult.does("all keys", "Keys of the morning")
        adult.does("back", "2 of ")
        adult.does("not yet", "3 of ")
        adult.does("next", "4 of ")
        for number in range(5, total + 1):
            adult.does("came easily" if number % 2 else "hesitated", f"{number} of ")
        adult.does("not yet", "1 without a mark")
        adult.does("those came easily too", "Marked came easily: one.")
        adult.does("back", f"{total} of {total}")
        adult.does("next", "finish")
        # At once it would be taken for a bounce of the key that led to the close.
        time.sleep(LANDING.total_seconds() + 0.1)
        adult.press("finish")
        assert terminal.finish() == 0
    journal = Journal.open(home, dt.datetime.now)
    marks = [line.mark for line in journal.history("Bean")]
    journal.shut()
    assert len(marks) == total and None not in marks
    assert marks[:3] == [Mark.HESITATED, Mark.NOT_YET, Mark.FLUENT]
