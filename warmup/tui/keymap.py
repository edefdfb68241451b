"""Keys of the family's own, [keys] in family.toml: checked, and laid over the table of actions.

A slip there costs no morning: all of it is refused in one sentence, and the usual keys hold. Only a family
that has such keys loads this.
"""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from warmup.config.toml_file import Document, FileProblem, read
from warmup.text import did_you_mean, shown
from warmup.tui.actions import ACTIONS, BY_ID, Action, State, binding_id, key_name

SIGNS = {
    "comma": ",", "full_stop": ".", "question_mark": "?", "slash": "/", "semicolon": ";", "colon": ":",
    "apostrophe": "'", "quotation_mark": '"', "minus": "-", "underscore": "_", "plus": "+",
    "equals_sign": "=", "left_square_bracket": "[", "right_square_bracket": "]", "left_curly_bracket": "{",
    "right_curly_bracket": "}", "vertical_line": "|", "backslash": "\\", "grave_accent": "`", "tilde": "~",
    "exclamation_mark": "!", "at": "@", "number_sign": "#", "dollar_sign": "$", "percent_sign": "%",
    "circumflex_accent": "^", "ampersand": "&", "asterisk": "*", "left_parenthesis": "(",
    "right_parenthesis": ")", "less_than_sign": "<", "greater_than_sign": ">",
}  # fmt: skip
"""What Textual calls the signs of a United States keyboard; a file may have either."""
_NAMED = {sign: name for name, sign in SIGNS.items()}
_EDITING = ("space", "backspace", "delete", "left", "right", "home", "end")
KEYS = (
    *"abcdefghijklmnopqrstuvwxyz0123456789", *(f"f{n}" for n in range(1, 13)), *SIGNS, "up", "down", "enter",
    "tab", "escape", "insert", "pageup", "pagedown", *_EDITING,
)  # fmt: skip
"""Every key that may be one of the family's own: no chords."""
_TYPED = frozenset((*(key for key in KEYS if len(key) == 1), *SIGNS, *_EDITING))
_FORMS = frozenset({State.FORM, State.SETTINGS})
"""Where letters are typed into lines."""
Own = Mapping[str, tuple[str, ...]]


def own_keys(written: Sequence[tuple[str, tuple[str, ...]]], path: Path) -> tuple[Own, str]:
    """The keys of the family's own by their actions; none where one is wrong, and then a sentence about it.

    ``written`` is what the file at ``path`` says.
    """
    first = next(problems(written, path), None)
    if first is not None:
        return {}, f"{first} Until then the usual keys hold."
    return _by_action(written), ""


def textual_keymap(own: Own) -> dict[str, str]:
    """The whole table of keys for Textual's ``set_keymap``, with those of the family's own in their places.

    Whole, since Textual takes every binding from a key of which it moves one.
    """
    return {
        binding_id(action, key): _moved(own[action.id], n) if action.id in own else key
        for action in ACTIONS
        for n, key in enumerate(action.every_key)
    }


def _moved(keys: Sequence[str], n: int) -> str:
    return ",".join(keys) if n == 0 else keys[0]


def _by_action(written: Sequence[tuple[str, tuple[str, ...]]]) -> Own:
    return {action: tuple(dict.fromkeys(_NAMED.get(key, key) for key in keys)) for action, keys in written}


def problems(written: Sequence[tuple[str, tuple[str, ...]]], path: Path) -> Iterator[FileProblem]:
    """What is wrong with these keys, each on its line of the file at ``path``."""
    try:
        file = read(path)
    except FileProblem:
        file = Document(path, {}, "")
    wrong = list(_misnamed(written, file))
    yield from wrong or _clashes(_by_action(written), file)


def _misnamed(written: Sequence[tuple[str, tuple[str, ...]]], file: Document) -> Iterator[FileProblem]:
    """Actions and keys that there are not."""
    movable = [action.id for action in ACTIONS if action.keys]
    for action, keys in written:
        if not action:
            yield file.problem(("keys",), 'a table with lines like undo = "f2"', "something else")
        elif action not in movable:
            yield file.problem(
                ("keys", action), "an action that has a key", shown(action) + did_you_mean(action, movable)
            )
        elif not keys:
            yield file.problem(("keys", action), 'a key like "f2", or a list of keys', "something else")
        for key in keys if action in movable else ():
            if _NAMED.get(key, key) not in KEYS:
                guess = did_you_mean(key, KEYS)
                yield file.problem(("keys", action), 'one key like "f2", "b" or ","', shown(key) + guess)


def _clashes(own: Own, file: Document) -> Iterator[FileProblem]:
    """Keys that would do two things in one state, or that are typed into a line there."""
    for name, keys in own.items():
        action = BY_ID[name]
        for key in keys:
            usual = key in action.every_key
            if key in _TYPED and not usual and not action.states.isdisjoint(_FORMS):
                yield file.problem(("keys", name), "a key that types nothing", shown(key_name(key)))
            other = next((each for each in _beside(action) if key in _keys(each, own)), None)
            if other is not None:
                found = f"{shown(key_name(key))}, which is {other.id} ({other.label})"
                yield file.problem(("keys", name), "a key that does nothing else there", found)


def _beside(action: Action) -> Iterator[Action]:
    """The other actions that are done in a state of this one; what the menu has can be done there."""
    return (
        each
        for each in ACTIONS
        if each is not action
        and (not each.states.isdisjoint(action.states) or _meet(action, each) or _meet(each, action))
    )


def _meet(one: Action, other: Action) -> bool:
    """Whether one stands in the menu, where it goes by its key, and the other moves about there."""
    return bool(one.menu and one.states) and State.MENU in other.states


def _keys(action: Action, own: Own) -> tuple[str, ...]:
    return own.get(action.id, action.every_key)


def lines() -> Iterator[str]:
    """Every action that may have a key of the family's own: its id, its usual keys, and what it does."""
    yield "# Actions for [keys] in family.toml, each with its usual keys."
    for action in ACTIONS:
        if action.keys:
            usual = ", ".join(f'"{key}"' for key in action.every_key)
            yield f"{action.id} = [{usual}]  # {action.label}"
