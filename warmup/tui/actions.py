"""Every key of the program, in one table.

The bindings of each screen, its line of keys, the menu, the help, the command palette and the table in the
guide all come from here. Each action has keys for either hand: arrows and the keys near them for the right,
keys on the left of the keyboard for the left, Space for both. No chords. F1 is help, Escape and Backspace go
back, whatever is on screen.
"""

import re
from collections.abc import Collection, Iterable

from warmup.tui.action_values import Action, Group, Hand, State, hand_of, is_rebound, key_name, rebind

__all__ = [
    "ACTIONS", "BY_ID", "FOR_GUESTS", "TYPED", "Action", "Group", "Hand", "State", "actions_of", "as_guest",
    "binding_id", "hand_of", "is_rebound", "key_name", "keys_of", "menu_of", "rebind", "somewhere_in",
    "with_keys",
]  # fmt: skip


_PROMPT = frozenset({State.PROMPT})
_CLOSE = frozenset({State.CLOSE})
_OPENING = frozenset({State.OPENING})
_ASKED = _PROMPT | _CLOSE
_ON_THE_WAY = _OPENING | _PROMPT
_MORNING = _ASKED | _ON_THE_WAY
_MENU, _UNLOCKED, _COUNTS = frozenset({State.MENU}), frozenset({State.UNLOCKED}), frozenset({State.COUNTS})
_READS, _SCHOOL_WEEK = frozenset({State.READS}), frozenset({State.SCHOOL_WEEK})
_MIDNIGHT, _FORM = frozenset({State.MIDNIGHT}), frozenset({State.FORM})
_REPORT, _FILE = frozenset({State.REPORT}), frozenset({State.FILE})
_GUEST, _PAPER = frozenset({State.GUEST}), frozenset({State.PAPER})
_SETTINGS, _GAME = frozenset({State.SETTINGS}), frozenset({State.GAME})
_NOTE, _PAST_MORNING = frozenset({State.NOTE}), frozenset({State.PAST_MORNING})
_WEEK, _DAYS = frozenset({State.WEEK}), frozenset({State.DAYS})
_ANOTHER, _WIND_DOWN = frozenset({State.ANOTHER}), frozenset({State.WIND_DOWN})
_CALENDAR, _SHEETS = frozenset({State.CALENDAR}), frozenset({State.SHEETS})
_WHO, _CHILDREN = frozenset({State.WHO}), frozenset({State.CHILDREN})
_REMOVAL, _CHILD = frozenset({State.REMOVAL}), frozenset({State.CHILD})
_PICKED = frozenset({State.PAST, State.MORNINGS, State.GUIDE, State.KNOWN})
_CHOICES = _MENU | _ANOTHER | _WIND_DOWN | _WHO | _REMOVAL | _PICKED
"""Short lists to pick from."""
_YEAR, _YEAR_WEEK, _YEAR_DAY = map(frozenset, ({State.YEAR}, {State.YEAR_WEEK}, {State.YEAR_DAY}))
_MOVE, _COUNTDOWN = frozenset({State.MOVE}), frozenset({State.COUNTDOWN})
_PRACTICE = frozenset({State.PRACTICE})
_OF_KNOWN = frozenset({State.KNOWN_LEVEL, State.KNOWN_YEAR})
_READINGS = _OF_KNOWN | _REPORT | {State.HELP, State.REVIEW, State.STORY, State.TOPIC, State.GAME, State.THEN}
_LISTS = _CHOICES | _YEAR_WEEK | _MOVE | _UNLOCKED | _READINGS
_NEW_YEAR = frozenset({State.NEW_YEAR})
_FORMS = _FORM | _NEW_YEAR
TYPED = _FORMS | _GUEST | _SETTINGS | _COUNTDOWN | _CHILD | _FILE | _NOTE
"""Wherever a letter is typed into a line, and no key."""
_KEYS = frozenset(State) - TYPED

ACTIONS = (
    Action("fluent", ("up", "w"), "came easily", "Right, with no cue. Marks it and goes on.",
           Group.MARK, _PROMPT | _PAST_MORNING | _PRACTICE, brief="easily"),
    Action("hesitated", ("down", "s"), "hesitated", "A cue, a fresh start or help. Marks it and goes on.",
           Group.MARK, _PROMPT | _PAST_MORNING | _PRACTICE, brief="hesit."),
    Action("not_yet", ("n", "x"), "not yet", "You had to show it. Marks it and goes on.",
           Group.MARK, _PROMPT | _PAST_MORNING | _PRACTICE),
    Action("easy", ("0", "t"), "those came easily too", "At the close: what has no mark came easily too.",
           Group.MARK, _CLOSE),
    Action("next", ("right", "d"), "next", "Go on without a mark.", Group.MOVE,
           _ON_THE_WAY | _PAST_MORNING | _PRACTICE, ("enter",)),
    Action("accept", ("enter", "e"), "finish", "At the close: done for today.", Group.MOVE, _CLOSE),
    Action("next_child", ("right", "d"), "on with the next child",
           "Done with this one; the next child’s morning.", Group.MOVE, _CLOSE),
    Action("back", ("left", "a"), "back", "Go back one prompt.", Group.MOVE,
           _ASKED | _PAST_MORNING | _PRACTICE),
    Action("undo", ("u", "z"), "undo", "Take back the last thing done, whatever it was.", Group.MOVE,
           _MORNING | _UNLOCKED | _SCHOOL_WEEK | _COUNTS | _WEEK | _DAYS | _PAPER | _CHILDREN | _YEAR
           | _YEAR_WEEK | _YEAR_DAY | _PAST_MORNING | _PRACTICE | _SHEETS),
    Action("leave", ("backspace", "escape"), "leave page", "Back from this page, or one prompt back.",
           Group.MOVE,
           _MORNING | _LISTS | _SCHOOL_WEEK | _COUNTS | _READS | _MIDNIGHT | _CALENDAR | _PAPER | _CHILDREN
           | _YEAR | _YEAR_DAY | _PAST_MORNING | _PRACTICE | _SHEETS,
           brief="back"),
    Action("cue", ("space", "e"), "cue", "Show the next cue, one more at each press.", Group.HELP,
           _PROMPT | _PRACTICE),
    Action("cover", ("o", "c"), "hide", "Hide the answer, or show it.",
           Group.HELP, _PROMPT | _PRACTICE, menu=_PROMPT),
    Action("stage", ("p", "f"), "picture alone", "Give the child the whole screen, without words.",
           Group.HELP, _PROMPT | _PRACTICE, menu=_PROMPT),
    Action("another", ("k", "v"), "another one", "Ask something else, for one of four reasons.",
           Group.DAY, _PROMPT, menu=_PROMPT),
    Action("blurted", ("i", "2"), "called out", "The other child said it. It does not count.",
           Group.DAY, _PROMPT, menu=_PROMPT),
    Action("skip", (), "leave it", "Leave this one today. It changes nothing.", Group.DAY, frozenset(),
           menu=_PROMPT),
    Action("swap", ("j", "b"), "we don’t have it", "Ask something else: what this wants is not here.",
           Group.DAY, _PROMPT | _ANOTHER),
    Action("bare", ("j", "b"), "nothing on the table", "No prompt of today asks for a thing.",
           Group.DAY, _OPENING, menu=_ON_THE_WAY),
    Action("wind_down", ("m", "g"), "wind down", "Fewer prompts, or one more and the close.",
           Group.DAY, _ON_THE_WAY, menu=_ON_THE_WAY),
    Action("unlocked", ("l", "1"), "what may be asked",
           "What this quarter has unlocked, and what is held.", Group.DAY, _MORNING | _UNLOCKED,
           menu=_MORNING),
    Action("week", (), "this week", "Its mornings, what opens, and what to have ready.", Group.DAY,
           frozenset(), menu=_MORNING),
    Action("year", (), "the year", "Weeks and days: hold, move, days off, countdowns.", Group.DAY,
           frozenset(), menu=_MORNING),
    Action("new_year", (), "a new school year", "When this one is over: begin the next.", Group.DAY,
           frozenset(), menu=_MORNING),
    Action("story", (), "the story of this one", "When it was asked, how it went, and when it is due.",
           Group.DAY, frozenset(), menu=_PROMPT),
    Action("note", ("7", "5"), "a note", "Write down what the child said.",
           Group.DAY, _MORNING | _PAST_MORNING, menu=_MORNING),
    Action("new", (), "nothing new", "Nothing opens that has not begun; again, and it may.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("pause", ("y", "6"), "nothing new for a week", "Where much wobbled: nothing opens for a week.",
           Group.DAY, _CLOSE | {State.REVIEW}, menu=_CLOSE),
    Action("review", ("k", "v"), "see the review", "How the checks of this review week went.",
           Group.DAY, _CLOSE, menu=_ASKED),
    Action("again", ("m", "g"), "another short one", "When today is finished: a second, short warm-up.",
           Group.DAY, _CLOSE, menu=_CLOSE),
    Action("game", (), "a two-minute game", "A game with kitchen things, for what wobbled.", Group.DAY,
           frozenset(), menu=_ON_THE_WAY),
    # At the close it has keys, which mean something else before it.
    Action("play", ("9", "x"), "a two-minute game", "A game with kitchen things, for what wobbled.",
           Group.DAY, _CLOSE, menu=_CLOSE),
    Action("paper", (), "a morning on paper", "Type in the marks of one of the last mornings.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("who", (), "another child", "Go to the morning of another child.", Group.DAY, frozenset(),
           menu=_MORNING),
    Action("together", (), "together", "One morning for all: their prompts take turns.", Group.DAY,
           frozenset(), menu=_OPENING),
    Action("children", (), "the children", "Add one, rename, rest, prompts, take out.", Group.DAY,
           frozenset(), menu=_MORNING),
    Action("report", (), "a report", "What was done this year, to read, print or keep.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("sheets", (), "sheets to print", "Frames, charts, cards and coins, true to size.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("mornings", (), "past mornings", "What was asked, and how it went; to correct, too.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("knows", (), "what they know", "What is settled, growing, or worth a second look.",
           Group.DAY, frozenset(), menu=_MORNING),
    Action("practice", ("k", "v"), "practice it", "Five prompts of this level, apart from mornings.",
           Group.PAGE, frozenset({State.KNOWN_LEVEL})),
    Action("bars", ("k", "v"), "the year in bars", "Mornings, levels and hesitations over the year.",
           Group.PAGE, frozenset({State.KNOWN})),
    Action("then", (), "then and now", "What was hard at first, and comes easily by now.",
           Group.DAY, frozenset(), menu=_MORNING),
    # Another one, and why.
    Action("just", ("k", "v"), "just another", "Ask something else.", Group.DAY, _ANOTHER),
    Action("hold", ("y", "6"), "it isn’t taught yet", "Hold this level back and ask something else.",
           Group.DAY, _ANOTHER),
    Action("known", ("i", "2"), "they know it already",
           "Open the next step of this skill today, and ask it.", Group.DAY, _ANOTHER),
    # Winding down.
    Action("short", ("m", "g"), "four in all", "Fewer prompts, just today.", Group.DAY,
           _WIND_DOWN),
    Action("stop", ("i", "2"), "one sure one, then the close",
           "It is likely to come easily. The rest is no debt.", Group.DAY, _WIND_DOWN),
    Action("rough", ("h", "r"), "a rough day", "Marks are kept today but lower nothing.", Group.DAY,
           _WIND_DOWN | _CLOSE, menu=_MORNING),
    # The lists: the menu, the help, what may be asked.
    Action("line_up", ("up", "w"), "up", "One line up.", Group.PAGE,
           _LISTS | _CALENDAR | _SCHOOL_WEEK | _CHILDREN | _YEAR | _SHEETS),
    Action("line_down", ("down", "s"), "down", "One line down.", Group.PAGE,
           _LISTS | _CALENDAR | _SCHOOL_WEEK | _CHILDREN | _YEAR | _SHEETS),
    Action("choose", ("enter", "e"), "take it", "Do what the line says.", Group.PAGE, _CHOICES | _MOVE,
           ("space", "right")),
    Action("turn", ("y", "6"), "hold back", "Hold the level back, or let it come; say it was taught again.",
           Group.PAGE, _UNLOCKED, ("space", "e")),
    Action("lesson", ("space", "e"), "taught, or not yet", "Say of its lesson: taught, not yet, or nothing.",
           Group.PAGE, _SCHOOL_WEEK, ("enter",)),
    Action("week_before", ("left", "a"), "week before", "The week before.", Group.PAGE, _SCHOOL_WEEK),
    Action("week_after", ("right", "d"), "week after", "The week after.", Group.PAGE, _SCHOOL_WEEK),
    Action("return", ("left", "a"), "back", "Back to where you were.", Group.PAGE, _LISTS),
    Action("done", ("enter", "d"), "back", "Back to where you were.", Group.PAGE,
           _UNLOCKED | _READINGS),
    Action("file", ("k", "f"), "put it into a file", "Asks where. It is kept as a page to print.",
           Group.PAGE, _REPORT),
    Action("another_game", ("k", "v"), "another game", "The next game; after the last, the first again.",
           Group.PAGE, _GAME),
    # The year, a week of it, a day of it.
    Action("column_left", ("left", "a"), "left", "The quarter before.", Group.PAGE, _YEAR),
    Action("column_right", ("right", "d"), "right", "The next quarter.", Group.PAGE, _YEAR),
    Action("zoom", ("enter", "e"), "open", "Look closer.", Group.PAGE, _YEAR | _YEAR_WEEK, ("space",)),
    Action("hold_week", ("y", "6"), "one week more", "The lessons of this week take one week more.",
           Group.PAGE, _YEAR | _YEAR_WEEK),
    Action("free_week", ("k", "v"), "one week less", "A held week takes one less; a skipped one comes back.",
           Group.PAGE, _YEAR | _YEAR_WEEK),
    Action("in_week", ("m", "g"), "we are here", "Today’s lessons are really in this week.",
           Group.PAGE, _YEAR | _YEAR_WEEK),
    Action("early", ("i", "2"), "open early", "Open this level before its week, or no longer.",
           Group.PAGE, _YEAR_WEEK),
    Action("hold_level", ("o", "c"), "hold back", "Hold this level back, or let it come.",
           Group.PAGE, _YEAR_WEEK),
    Action("move_level", ("j", "b"), "another week", "Choose another week for this level.",
           Group.PAGE, _YEAR_WEEK),
    Action("day_before", ("left", "a"), "day before", "The day before.", Group.PAGE, _YEAR_DAY),
    Action("day_after", ("right", "d"), "next day", "The next day.", Group.PAGE, _YEAR_DAY),
    Action("days_back", ("up", "w"), "week before", "A week back.", Group.PAGE, _YEAR_DAY),
    Action("days_on", ("down", "s"), "week after", "A week on.", Group.PAGE, _YEAR_DAY),
    Action("turn_days", ("y", "6"), "day off", "A day off, school after all, or an extra morning.",
           Group.PAGE, _YEAR_DAY),
    Action("from_day", ("m", "g"), "from this day", "Days off from this day to the one you go to.",
           Group.PAGE, _YEAR_DAY),
    Action("countdown", ("k", "v"), "look forward", "Name this day as one to look forward to.",
           Group.PAGE, _YEAR_DAY),
    Action("keep_name", ("enter",), "keep it", "Look forward to this day by this name.",
           Group.PAGE, _COUNTDOWN),
    Action("drop_name", ("escape",), "back", "Back to the day, nothing changed.", Group.PAGE, _COUNTDOWN),
    # The children of the family.
    Action("add_child", ("n", "x"), "add a child", "Another child, with a nickname.", Group.PAGE, _CHILDREN),
    Action("rename", ("i", "2"), "another nickname", "The marks stay with the child.", Group.PAGE, _CHILDREN),
    Action("rest", ("y", "6"), "rest", "No mornings for now, or mornings again.", Group.PAGE, _CHILDREN),
    Action("fewer", ("left", "a"), "fewer prompts", "One prompt less a morning.", Group.PAGE, _CHILDREN),
    Action("more", ("right", "d"), "more prompts", "One prompt more a morning.", Group.PAGE, _CHILDREN),
    Action("take_out", ("j", "b"), "take out", "Out of the family. It asks twice, and keeps a copy.",
           Group.PAGE, _CHILDREN),
    Action("all_set", ("enter", "e"), "back", "Back to where you were.", Group.PAGE, _CHILDREN),
    Action("stay", (), "no, leave it as it is", "Nothing is changed.", Group.PAGE, frozenset(),
           menu=_REMOVAL),
    Action("copy", (), "make a copy first", "Copies the journal and family.toml.", Group.PAGE, frozenset(),
           menu=_REMOVAL),
    Action("out", (), "take out now", "The family goes on without this child.", Group.PAGE, frozenset(),
           menu=_REMOVAL),
    # The questions.
    Action("fun", ("enter", "d"), "no, just for fun", "Today does not count as a school day.",
           Group.PAGE, _COUNTS, ("right",)),
    Action("count", ("up", "w"), "yes, it counts", "Today counts as a school day.", Group.PAGE, _COUNTS),
    Action("no_reader", ("enter", "d"), "not yet", "Answers stay as they are.", Group.PAGE, _READS,
           ("right",)),
    Action("reader", ("up", "w"), "yes, they read them", "Answers start covered; one key shows them.",
           Group.PAGE, _READS),
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
    # Days off out of a calendar file.
    Action("tick", ("space", "e"), "check", "Check the line, or uncheck it.", Group.PAGE,
           _CALENDAR | _SHEETS),
    Action("tick_all", ("l", "a"), "all or none", "Check every line; when all are checked, none.",
           Group.PAGE, _CALENDAR | _SHEETS),
    Action("take", ("enter", "d"), "take them", "What is checked is off from now on.", Group.PAGE, _CALENDAR),
    # Sheets to print.
    Action("make_sheets", ("enter", "d"), "make the page", "What is checked goes into one file to print.",
           Group.PAGE, _SHEETS),
    Action("have_sheets", ("y", "6"), "we have them", "What is checked is on paper, or no longer.",
           Group.PAGE, _SHEETS),
    Action("other_paper", ("k", "v"), "other paper", "Letter, or A4.", Group.PAGE, _SHEETS),
    # The first form, where letters are typed.
    Action("begin", ("enter",), "begin", "Take the form as it stands.", Group.PAGE, _FORMS | _CHILD),
    Action("form_leave", ("escape",), "back", "Back, and the year stays as it is.", Group.PAGE, _NEW_YEAR),
    Action("field_down", ("down", "tab"), "next line", "Go to the next line.", Group.PAGE,
           _FORMS | _SETTINGS | _CHILD),
    Action("field_up", ("up",), "line before", "Go to the line before.", Group.PAGE,
           _FORMS | _SETTINGS | _CHILD),
    Action("give_up", ("escape",), "leave it", "Back, and nothing is changed.", Group.PAGE, _CHILD),
    Action("form_tick", ("space",), "check", "Check the day off, or uncheck it.", Group.PAGE,
           _FORMS),
    Action("form_help", ("f1",), "help", "What the keys do here.", Group.PROGRAM,
           _FORMS | _SETTINGS | _COUNTDOWN | _FILE),
    # The settings, where letters are typed as well.
    Action("save", ("enter",), "save all", "Keep the settings as they stand here.", Group.PAGE, _SETTINGS),
    Action("drop", ("escape",), "change nothing", "Leave all settings as they were.", Group.PAGE,
           _SETTINGS),
    Action("named", ("enter",), "begin", "Begin. Without a name the marks say “guest”.", Group.PAGE, _GUEST),
    Action("name_help", ("f1",), "help", "What the keys do here.", Group.PROGRAM, _GUEST),
    Action("write", ("enter",), "write it", "Write the report to this file.", Group.PAGE, _FILE),
    Action("no_file", ("escape",), "back", "Back to the report. Nothing is written.", Group.PAGE, _FILE),
    # A morning on paper: the letters of a line in the terminal, and others for the other hand.
    Action("paper_fluent", ("j", "w"), "came easily", "Marks it and goes on.", Group.MARK, _PAPER),
    Action("paper_hesitated", ("k", "s"), "hesitated", "Marks it and goes on.", Group.MARK, _PAPER),
    Action("paper_not_yet", ("n", "x"), "not yet", "Marks it and goes on.", Group.MARK, _PAPER),
    Action("paper_left", ("minus", "c"), "left", "It was left that day. Goes on.", Group.MARK,
           _PAPER | _PAST_MORNING),
    Action("paper_none", ("full_stop", "v"), "no mark", "Takes its mark away and goes on.", Group.MARK,
           _PAPER | _PAST_MORNING),
    Action("paper_up", ("up", "r"), "up", "One prompt up.", Group.PAGE, _PAPER),
    Action("paper_down", ("down", "f"), "down", "One prompt down.", Group.PAGE, _PAPER),
    Action("paper_counts", ("y", "6"), "it counts", "That day counts as a school day.", Group.PAGE, _PAPER),
    Action("paper_done", ("enter", "d"), "done", "All that was marked is kept.", Group.PAGE, _PAPER),
    # A past morning, and a note, which is typed.
    Action("share", ("y", "6"), "in reports", "The note may go into reports.", Group.PAGE, _PAST_MORNING),
    Action("noted", ("enter",), "keep it", "Keep the note. Without a word it is gone.", Group.PAGE, _NOTE),
    Action("unnoted", ("escape",), "back", "Back, and the note stays as it was.", Group.PAGE, _NOTE),
    Action("note_help", ("f1",), "help", "What the keys do here.", Group.PROGRAM, _NOTE),
    # Everywhere.
    Action("theme", ("comma", "3"), "dark, light, contrast", "The next of three looks. The choice is kept.",
           Group.PROGRAM, _KEYS, menu=_MORNING),
    Action("settings", (), "settings", "Names, days, looks, and what the house has.", Group.PROGRAM,
           frozenset(), menu=_MORNING),
    Action("hand", (), "the other hand’s keys", "Name the keys of the other hand.",
           Group.PROGRAM, frozenset(), menu=_MORNING),
    Action("menu", ("full_stop", "tab"), "menu", "Every other page and rare thing to do, by name.",
           Group.PROGRAM, _MORNING | _MENU),
    Action("help", ("question_mark", "4"), "all keys", "Every key, and what the marks mean.",
           Group.PROGRAM, _KEYS, ("f1", "slash"), menu=_MORNING, brief="more"),
    Action("guide", ("i", "g"), "the guide", "How things are done here, a topic at a time.",
           Group.PROGRAM, frozenset({State.HELP}), menu=_MORNING),
    Action("quit", ("8", "q"), "quit", "Stop here. The morning goes on from this prompt.",
           Group.PROGRAM, _KEYS, menu=_MORNING),
)  # fmt: skip

FOR_GUESTS = frozenset({
    "fluent", "hesitated", "not_yet", "skip", "easy", "next", "accept", "back", "undo", "leave", "cue",
    "cover", "stage", "theme", "hand", "menu", "help", "quit",
})  # fmt: skip
"""What a guest can do on a morning: words, answers, cues, marks, undo and the close."""


def binding_id(action: Action, key: str) -> str:
    """The id of the binding of one of an action's usual keys."""
    return action.id if key == action.every_key[0] else f"{action.id}.{key}"


BY_ID = {action.id: action for action in ACTIONS}


def keys_of(action: Action, between: str = " ") -> str:
    """The action's keys for people: "↑ w"."""
    return between.join(map(key_name, action.named_keys))


def with_keys(text: str, hand: Hand) -> str:
    """A text in which "‹undo›" stands for that action's key, with the key of this hand there."""
    return re.sub(r"‹(\w+)›", lambda found: BY_ID[found[1]].key(hand), text)


def actions_of(states: Collection[State]) -> tuple[Action, ...]:
    """The actions whose keys work in one of these states, in the order of the groups."""
    return _grouped(action for action in ACTIONS if not action.states.isdisjoint(states))


def menu_of(state: State) -> tuple[Action, ...]:
    """The actions that the menu has in this state, in the order of the groups."""
    return _grouped(action for action in ACTIONS if state in action.menu)


def somewhere_in(state: State) -> tuple[Action, ...]:
    """All that can be done in this state, by a key or by name, in the order of the groups."""
    return _grouped(action for action in ACTIONS if state in action.somewhere)


def as_guest(action: Action) -> Action:
    """The action as it is told to a guest, of whom no choice is kept."""
    return action._replace(help="The next of three looks.") if action.id == "theme" else action


def _grouped(actions: Iterable[Action]) -> tuple[Action, ...]:
    found = list(actions)
    return tuple(action for group in Group for action in found if action.group is group)
