"""Everything the adult can do in the morning, in one table.

The bindings, the key line, the command palette, the help and the table in the README all come from
here. Each action has keys for either hand: arrows and the letters near them for the right, letters on
the left of the keyboard for the left. No chords. F1 is help and Escape goes back, whatever is on screen.
"""

from enum import Enum
from typing import NamedTuple


class Group(Enum):
    """Where an action stands in the help."""

    MARK = "Mark"
    MOVE = "Move"
    HELP = "Help the child"
    DAY = "The day"
    PROGRAM = "The program"


class Action(NamedTuple):
    """One thing to do: its id, its keys (right hand first), a short label and one sentence of help.

    ``more`` are keys by which it goes as well, but which no line of keys names.
    """

    id: str
    keys: tuple[str, ...]
    label: str
    help: str
    group: Group
    more: tuple[str, ...] = ()

    @property
    def every_key(self) -> tuple[str, ...]:
        """All of its keys."""
        return self.keys + self.more


ACTIONS = (
    Action(
        "fluent",
        ("up", "w"),
        "came easily",
        "Right, with no cue. Marks it and goes on.",
        Group.MARK,
    ),
    Action(
        "hesitated",
        ("down", "s"),
        "hesitated",
        "A cue, a fresh start or help. Marks it and goes on.",
        Group.MARK,
    ),
    Action("not_yet", ("n", "x"), "not yet", "You had to show it. Marks it and goes on.", Group.MARK),
    Action("skip", ("k", "v"), "leave it", "Leave this one today. It changes nothing.", Group.MARK),
    Action(
        "easy",
        ("0", "t"),
        "others easy",
        "At the close: what has no mark came easily too.",
        Group.MARK,
    ),
    Action("next", ("right", "d"), "next", "Go on without a mark.", Group.MOVE),
    Action("back", ("left", "a"), "back", "Go back one prompt.", Group.MOVE),
    Action("undo", ("u", "z"), "undo", "Take back the last thing done, whatever it was.", Group.MOVE),
    Action("leave", ("escape",), "leave page", "Back from this page, or one prompt back.", Group.MOVE),
    Action("cue", ("space", "e"), "cue", "Show the next cue, one more at each press.", Group.HELP),
    Action("cover", ("o", "c"), "cover", "Cover the answer, or uncover it. The choice is kept.", Group.HELP),
    Action(
        "stage", ("p", "f"), "picture only", "Give the child the whole screen, without words.", Group.HELP
    ),
    Action("short", ("m", "g"), "short morning", "Four prompts in all today.", Group.DAY),
    Action(
        "stop", ("i", "2"), "stop early", "One sure prompt, then the close. The rest is no debt.", Group.DAY
    ),
    Action(
        "swap", ("j", "b"), "no such object", "Ask something else: what this wants is not here.", Group.DAY
    ),
    Action("hold", ("y", "6"), "not taught yet", "Hold this level back and ask something else.", Group.DAY),
    Action("rough", ("h", "r"), "rough day", "Marks are kept today but lower nothing.", Group.DAY),
    Action(
        "unlocked",
        ("l", "1"),
        "unlocked",
        "What this quarter has unlocked, and what is held back.",
        Group.DAY,
    ),
    Action(
        "theme",
        ("comma", "3"),
        "dark or light",
        "Change between dark and light. The choice is kept.",
        Group.PROGRAM,
    ),
    Action(
        "help", ("question_mark", "4"), "help", "Every key, and what the marks mean.", Group.PROGRAM, ("f1",)
    ),
    Action("quit", ("q", "5"), "quit", "Stop here. The morning goes on from this prompt.", Group.PROGRAM),
    Action("accept", ("enter",), "go on", "Accept what the screen offers.", Group.PROGRAM),
)

BY_ID = {action.id: action for action in ACTIONS}

_NAMES = {
    "up": "↑", "down": "↓", "left": "←", "right": "→", "space": "Space", "enter": "Enter",
    "question_mark": "?", "comma": ",", "escape": "Esc", "f1": "F1",
}  # fmt: skip


def key_name(key: str) -> str:
    """The key as a person would name it."""
    return _NAMES.get(key, key)


def keys_of(action: Action) -> str:
    """The action's keys for people: "↑ w"."""
    return " ".join(map(key_name, action.keys))
