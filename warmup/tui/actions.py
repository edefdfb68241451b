"""Every key of the program, in one table.

The bindings of each screen, its line of keys, the menu, the help, the command palette and the table in the
README all come from here. Each action has keys for either hand: arrows and the keys near them for the right,
keys on the left of the keyboard for the left, Space for both. No chords. F1 is help, Escape and Backspace go
back, whatever is on screen.
"""

from collections.abc import Collection
from enum import Enum
from typing import NamedTuple


class State(Enum):
    """What is on screen: most screens have one state, the morning has three, the missed days have two."""

    PROMPT = "the morning"
    OPENING = "the opening"
    CLOSE = "the close"
    MENU = "the menu"
    HELP = "the help"
    UNLOCKED = "what may be asked"
    COUNTS = "does it count?"
    MIDNIGHT = "another date"
    WEEK = "the week of missed mornings"
    DAYS = "each missed morning"
    FORM = "the first form"


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

    It belongs to the ``states`` named. ``more`` are keys by which it goes as well, but which no line of keys
    names; the README does. What is ``in_menu`` can be picked by name from the menu.
    """

    id: str
    keys: tuple[str, ...]
    label: str
    help: str
    group: Group
    states: frozenset[State]
    more: tuple[str, ...] = ()
    in_menu: bool = False

    @property
    def every_key(self) -> tuple[str, ...]:
        """All of its keys."""
        return self.keys + self.more


_PROMPT = frozenset({State.PROMPT})
_CLOSE = frozenset({State.CLOSE})
_ASKED = _PROMPT | _CLOSE
_ON_THE_WAY = frozenset({State.OPENING, State.PROMPT})
_MORNING = _ASKED | _ON_THE_WAY
_MENU, _UNLOCKED, _COUNTS = frozenset({State.MENU}), frozenset({State.UNLOCKED}), frozenset({State.COUNTS})
_MIDNIGHT, _FORM = frozenset({State.MIDNIGHT}), frozenset({State.FORM})
_WEEK, _DAYS = frozenset({State.WEEK}), frozenset({State.DAYS})
_LISTS = frozenset({State.MENU, State.HELP, State.UNLOCKED})
_KEYS = frozenset(State) - _FORM
"""Wherever a letter is a key, and not typed into a line."""

ACTIONS = (
    Action("fluent", ("up", "w"), "came easily", "Right, with no cue. Marks it and goes on.",
           Group.MARK, _ASKED),
    Action("hesitated", ("down", "s"), "hesitated", "A cue, a fresh start or help. Marks it and goes on.",
           Group.MARK, _PROMPT),
    Action("not_yet", ("n", "x"), "not yet", "You had to show it. Marks it and goes on.",
           Group.MARK, _PROMPT),
    Action("skip", ("k", "v"), "leave it", "Leave this one today. It changes nothing.", Group.MARK, _PROMPT,
           in_menu=True),
    Action("easy", ("0", "t"), "others easy", "At the close: what has no mark came easily too.",
           Group.MARK, _ASKED),
    Action("next", ("right", "d"), "next", "Go on without a mark.", Group.MOVE, _ON_THE_WAY, ("enter",)),
    Action("accept", ("enter", "e"), "finish", "At the close: done for today.", Group.MOVE, _CLOSE),
    Action("back", ("left", "a"), "back", "Go back one prompt.", Group.MOVE, _ASKED),
    Action("undo", ("u", "z"), "undo", "Take back the last thing done, whatever it was.", Group.MOVE,
           _MORNING | _UNLOCKED | _COUNTS | _WEEK | _DAYS),
    Action("leave", ("backspace", "escape"), "leave page", "Back from this page, or one prompt back.",
           Group.MOVE, _MORNING | _LISTS | _COUNTS | _MIDNIGHT),
    Action("cue", ("space", "e"), "cue", "Show the next cue, one more at each press.", Group.HELP, _PROMPT),
    Action("unlocked", ("l", "1"), "what may be asked",
           "What this quarter has unlocked, and what is held back.", Group.DAY, _MORNING | _UNLOCKED,
           in_menu=True),
    Action("short", ("m", "g"), "short morning", "Fewer prompts, just today.", Group.DAY, _MORNING,
           in_menu=True),
    Action("stop", ("i", "2"), "stop early", "One sure prompt, then the close. The rest is no debt.",
           Group.DAY, _PROMPT, in_menu=True),
    Action("swap", ("j", "b"), "no such object", "Ask something else: what this wants is not here.",
           Group.DAY, _PROMPT, in_menu=True),
    Action("hold", ("y", "6"), "not taught yet", "Hold this level back and ask something else.",
           Group.DAY, _ASKED, in_menu=True),
    Action("known", (), "they know it", "Open the next step of this skill today, and ask that.",
           Group.DAY, _PROMPT, in_menu=True),
    Action("new", (), "nothing new", "Nothing opens that has not begun; again, and it may.",
           Group.DAY, _MORNING, in_menu=True),
    Action("rough", ("h", "r"), "rough day", "Marks are kept today but lower nothing.", Group.DAY, _MORNING,
           in_menu=True),
    Action("cover", ("o", "c"), "cover", "Cover the answer, or uncover it. The choice is kept.",
           Group.HELP, _PROMPT, in_menu=True),
    Action("stage", ("p", "f"), "picture only", "Give the child the whole screen, without words.",
           Group.HELP, _PROMPT, in_menu=True),
    # The lists: the menu, the help, what may be asked.
    Action("line_up", ("up", "w"), "up", "One line up.", Group.PAGE, _LISTS),
    Action("line_down", ("down", "s"), "down", "One line down.", Group.PAGE, _LISTS),
    Action("choose", ("enter", "e"), "take it", "Do what the line says.", Group.PAGE, _MENU,
           ("space", "right")),
    Action("turn", ("y", "6"), "hold back", "Hold the level back, or let it come; say it was taught again.",
           Group.PAGE, _UNLOCKED, ("space", "e")),
    Action("return", ("left", "a"), "back", "Back to where you were.", Group.PAGE, _LISTS),
    Action("done", ("enter", "d"), "back", "Back to where you were.", Group.PAGE, _UNLOCKED | {State.HELP}),
    # The questions.
    Action("fun", ("enter", "d"), "no, just for fun", "Today does not count as a school day.",
           Group.PAGE, _COUNTS, ("right",)),
    Action("count", ("up", "w"), "yes, it counts", "Today counts as a school day.", Group.PAGE, _COUNTS),
    Action("today", ("enter", "d"), "today’s warm-up", "Begin the warm-up of the new date.",
           Group.PAGE, _MIDNIGHT),
    Action("finish", ("left", "a"), "finish that one", "Go on with the warm-up that was open.",
           Group.PAGE, _MIDNIGHT),
    # The missed mornings: one question about the week, or each day.
    Action("week_less", ("left", "a"), "earlier", "A week earlier.", Group.PAGE, _WEEK, ("down", "s")),
    Action("week_more", ("right", "w"), "later", "A week later.", Group.PAGE, _WEEK, ("up",)),
    Action("here", ("enter", "e"), "go on from here", "The lessons are in this week.", Group.PAGE, _WEEK),
    Action("by_day", ("o", "d"), "say it day by day", "Say of each morning whether it was school.",
           Group.PAGE, _WEEK),
    Action("day_up", ("up", "w"), "up", "The row above.", Group.PAGE, _DAYS),
    Action("day_down", ("down", "x"), "down", "The row below.", Group.PAGE, _DAYS),
    Action("day_left", ("left", "c"), "left", "The morning before.", Group.PAGE, _DAYS),
    Action("day_right", ("right", "d"), "right", "The next morning.", Group.PAGE, _DAYS),
    Action("change", ("space", "e"), "change", "School, or off.", Group.PAGE, _DAYS),
    Action("all_off", ("o", "a"), "all off", "All of them were off.", Group.PAGE, _DAYS),
    Action("all_school", ("l", "s"), "all school", "All of them were school.", Group.PAGE, _DAYS),
    Action("answered", ("enter", "g"), "go on", "Go on, when all are answered.", Group.PAGE, _DAYS),
    Action("question", ("backspace", "escape"), "question", "Back to the one question.",
           Group.PAGE, _DAYS),
    # The first form, where letters are typed.
    Action("begin", ("enter",), "begin", "Take the form as it stands.", Group.PAGE, _FORM),
    Action("field_down", ("down", "tab"), "next line", "Go to the next line.", Group.PAGE, _FORM),
    Action("field_up", ("up",), "line before", "Go to the line before.", Group.PAGE, _FORM),
    Action("form_help", ("f1",), "help", "What the keys do here.", Group.PROGRAM, _FORM),
    # Everywhere.
    Action("theme", ("comma", "3"), "dark or light", "Change between dark and light. The choice is kept.",
           Group.PROGRAM, _KEYS, in_menu=True),
    Action("menu", ("full_stop", "tab"), "menu", "Every other page and rare thing to do, by name.",
           Group.PROGRAM, _MORNING | _MENU),
    Action("help", ("question_mark", "4"), "help", "Every key, and what the marks mean.",
           Group.PROGRAM, _KEYS, ("f1", "slash"), in_menu=True),
    Action("quit", ("8", "q"), "quit", "Stop here. The morning goes on from this prompt.",
           Group.PROGRAM, _KEYS, in_menu=True),
)  # fmt: skip

BY_ID = {action.id: action for action in ACTIONS}

_NAMES = {
    "up": "↑", "down": "↓", "left": "←", "right": "→", "space": "Space", "enter": "Enter", "tab": "Tab",
    "question_mark": "?", "slash": "/", "comma": ",", "full_stop": ".", "escape": "Esc", "f1": "F1",
    "backspace": "Bksp",
}  # fmt: skip


def key_name(key: str) -> str:
    """The key as a person would name it."""
    return _NAMES.get(key, key)


def keys_of(action: Action, between: str = " ") -> str:
    """The action's keys for people: "↑ w"."""
    return between.join(map(key_name, action.keys))


def actions_of(states: Collection[State]) -> tuple[Action, ...]:
    """The actions that belong to one of these states, in the order of the groups."""
    found = [action for action in ACTIONS if not action.states.isdisjoint(states)]
    return tuple(action for group in Group for action in found if action.group is group)
