"""What an action is: where it does something, how it is called, and by which keys of which hand."""

from collections.abc import Mapping
from enum import Enum
from typing import NamedTuple


class Hand(Enum):
    """A hand at the keys, by its name for people."""

    RIGHT = "right hand"
    LEFT = "left hand"

    @property
    def other(self) -> "Hand":
        """The other one."""
        return Hand.LEFT if self is Hand.RIGHT else Hand.RIGHT


# On a United States keyboard, each hand on its own side of it; Space is for either.
_LEFT = frozenset({*"qwertasdfgzxcvb123456", "tab", "escape", "f1"})
_EITHER = frozenset({"space"})


def hand_of(key: str) -> Hand | None:
    """The hand that pressed a key; None where either may have."""
    if key in _EITHER:
        return None
    return Hand.LEFT if key in _LEFT else Hand.RIGHT


class State(Enum):
    """What is on screen: most screens have one state, the morning has three, the missed days have two."""

    PROMPT = "the morning"
    OPENING = "the opening"
    CLOSE = "the close"
    MENU = "the menu"
    ANOTHER = "another one"
    WIND_DOWN = "winding down"
    HELP = "the help"
    REVIEW = "the review"
    STORY = "the story of a prompt"
    UNLOCKED = "what may be asked"
    SCHOOL_WEEK = "a week"
    COUNTS = "does it count?"
    READS = "do they read?"
    MIDNIGHT = "another date"
    WEEK = "the week of missed mornings"
    DAYS = "each missed morning"
    WHO = "another child"
    CHILDREN = "the children"
    REMOVAL = "taking a child out"
    FORM = "the first form"
    NEW_YEAR = "the form of a new school year"
    CALENDAR = "days off from a calendar"
    GUEST = "a guest’s name"
    PAST = "the last mornings"
    PAPER = "a morning on paper"
    SETTINGS = "the settings"
    YEAR = "the year"
    YEAR_WEEK = "a week of the year"
    YEAR_DAY = "a day of the year"
    MOVE = "the week of a level"
    COUNTDOWN = "a day to look forward to"
    CHILD = "a child’s form"
    REPORT = "a report"
    FILE = "a report’s file"
    SHEETS = "sheets to print"
    NOTE = "a note"
    GAME = "a two-minute game"
    MORNINGS = "past mornings"
    GUIDE = "the guide"
    TOPIC = "a topic of the guide"
    PAST_MORNING = "a past morning"
    KNOWN = "what the child knows"
    KNOWN_LEVEL = "a level that the child knows"
    KNOWN_YEAR = "the year in bars"
    THEN = "then and now"
    PRACTICE = "a practice round"


class Group(Enum):
    """Where an action stands in the help."""

    MARK = "Mark"
    MOVE = "Move"
    HELP = "Help the child"
    DAY = "The day"
    PAGE = "This page"
    PROGRAM = "The program"


class Action(NamedTuple):
    """One thing to do: its id, its keys (right hand first), a short label and one sentence of help.

    Its keys work in the ``states`` named; in those of ``menu`` it can be picked by name, with keys there or
    without. ``more`` are keys by which it goes as well, but which no line of keys names; the guide does.
    ``brief`` is a label for where the other has no room.
    """

    id: str
    keys: tuple[str, ...]
    label: str
    help: str
    group: Group
    states: frozenset[State]
    more: tuple[str, ...] = ()
    menu: frozenset[State] = frozenset()
    brief: str = ""

    @property
    def every_key(self) -> tuple[str, ...]:
        """All of its usual keys."""
        return self.keys + self.more

    @property
    def named_keys(self) -> tuple[str, ...]:
        """The keys that lines of keys name: the family's own, or the usual ones."""
        return _own_keys.get(self.id, self.keys)

    @property
    def keys_now(self) -> tuple[str, ...]:
        """All the keys by which it goes: the family's own, or the usual ones."""
        return _own_keys.get(self.id, self.every_key)

    def key(self, hand: Hand) -> str:
        """The key of this hand for people, or the one key there is; empty where there is none."""
        own = (key for key in self.named_keys if hand_of(key) in (hand, None))
        return key_name(next(own, self.named_keys[0])) if self.named_keys else ""

    @property
    def somewhere(self) -> frozenset[State]:
        """The states in which it can be done, by a key or by name."""
        return self.states | self.menu


_own_keys: dict[str, tuple[str, ...]] = {}


def rebind(own: Mapping[str, tuple[str, ...]]) -> None:
    """Name these keys for these actions from now on, and for all others the usual ones."""
    _own_keys.clear()
    _own_keys.update(own)


def is_rebound(action: str) -> bool:
    """Whether an action goes by keys of the family's own."""
    return action in _own_keys


_NAMES = {
    "up": "↑", "down": "↓", "left": "←", "right": "→", "space": "Space", "enter": "Enter", "tab": "Tab",
    "question_mark": "?", "slash": "/", "comma": ",", "full_stop": ".", "escape": "Esc", "f1": "F1",
    "backspace": "Bksp", "minus": "-",
}  # fmt: skip


def key_name(key: str) -> str:
    """The key as a person would name it."""
    if key in _NAMES or len(key) == 1:
        return _NAMES.get(key, key)
    from warmup.tui.keymap import SIGNS  # A key of the family's own.

    return SIGNS.get(key, key.capitalize())
