"""What may be typed in a whole line instead of a key: the letters of the one table of actions."""

import re
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from warmup.text import shown
from warmup.tui.actions import BY_ID

_TYPED = {"enter": "", "comma": ",", "full_stop": ".", "question_mark": "?", "slash": "/"}
"""Keys that are typed otherwise than they are called; those of more letters are none here."""


class Choice(NamedTuple):
    """Something to say in a line: one of its letters (Enter alone is ``""``), or how its label begins."""

    id: str
    letters: tuple[str, ...]
    label: str
    help: str = ""

    def named(self) -> str:
        """How to say it, and what it is called: "n not yet"."""
        return f"{self.first} {self.label}" if self.letters else self.label

    @property
    def first(self) -> str:
        """Enter where that will do, else its first letter."""
        return "Enter" if "" in self.letters else self.letters[0]


def of_action(name: str, label: str = "", help: str = "", letters: Sequence[str] = ()) -> Choice:
    """An action of the table with the letters it has and those given; another label or help where given."""
    action = BY_ID[name]
    typed = [_TYPED.get(key, key) for key in action.every_key]
    every = dict.fromkeys([*letters, *(key for key in typed if len(key) <= 1)])
    # A letter is easier found than a digit.
    return Choice(name, tuple(sorted(every, key=str.isdigit)), label or action.label, help or action.help)


def chosen(line: str, choices: Sequence[Choice]) -> str:
    """The id of the choice a line means; empty where it means none."""
    typed = line.casefold().strip()
    for choice in choices:
        if typed in choice.letters or typed == choice.label.casefold():
            return choice.id
    begins = [each.id for each in choices if len(typed) > 1 and each.label.casefold().startswith(typed)]
    return begins[0] if len(begins) == 1 else ""


def lettered(text: str) -> str:
    """A sentence in which "‹undo›" stands for that action's key, with its letter there."""
    return re.sub(r"‹(\w+)›", lambda found: of_action(found[1]).first, text)


def question(choices: Iterable[Choice]) -> str:
    """The choices in a line: "w came easily; s hesitated; Enter next"."""
    return "; ".join(choice.named() for choice in choices)


def not_understood(line: str, choices: Sequence[Choice]) -> str:
    """A sentence for a line that means none of them."""
    return f"{shown(line)} is none of these: {question(choices)}."
