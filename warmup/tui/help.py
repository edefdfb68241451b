"""The help: every key of a page, what it does, and what the marks mean."""

from collections.abc import Iterable, Sequence
from itertools import zip_longest
from typing import ClassVar

from textual.binding import BindingType
from textual.widget import Widget

from warmup.session.words import MEANINGS
from warmup.tui.actions import FOR_GUESTS, TYPED, Action, State, actions_of, as_guest, keys_of
from warmup.tui.key_screen import bindings
from warmup.tui.lines import Lines
from warmup.tui.reading import Reading
from warmup.tui.script import Line, Span, Tone, wrapped
from warmup.tui.workspace import Workspace

_WIDE, _TALL = 88, 34
"""From so many cells and rows of the screen on each key has a line of its own, with a sentence."""
_OF_SEVERAL = frozenset({"blurted", "next_child"})
"""What a family with one child need not read of."""
_KEYS, _LABEL = 10, 27
"""The cells of the keys and of a label."""


class HelpScreen(Reading):
    """The keys of the page it was opened from. Its result is an action to do there, if one was clicked."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "help.tcss"]
    STATES = (State.HELP,)
    FOOT: ClassVar = {"leave": "back", "guide": "", "line_down": "", "line_up": "", "quit": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, states: Sequence[State]) -> None:
        super().__init__(work)
        self._states = states
        self._actions = tuple(
            each for each in actions_of(states) if work.several or each.id not in _OF_SEVERAL
        )
        if work.guest and State.PROMPT in states:
            self._actions = tuple(as_guest(each) for each in self._actions if each.id in FOR_GUESTS)

    def heading(self) -> str:
        """Whose keys they are."""
        hands = "" if TYPED & {*self._states} else ": either hand, one at a time"
        return f"Keys of {self._states[0].value}{hands}"

    def content(self) -> Iterable[Widget]:
        """The keys above the meanings."""
        yield Lines(self._lines, id="keys")

    def _lines(self, width: int) -> list[Line]:
        """A key to a line where there is room for its sentence, else two or one without; then the marks."""
        actions = self._actions
        if width >= _WIDE and self.app.size.height >= _TALL:
            lines: list[Line] = [(*_named(each), Span(each.help, Tone.QUIET)) for each in actions]
        elif width >= 2 * (_KEYS + _LABEL):
            half = (len(actions) + 1) // 2
            pairs = zip_longest(actions[:half], actions[half:])
            lines = [tuple(span for each in pair if each for span in _named(each)) for pair in pairs]
        else:
            lines = [_named(each) for each in actions]
        if State.PROMPT in self._states:
            lines.append(())
            for mark, meaning in MEANINGS:
                lines += wrapped(meaning, width, f"{mark}:", Tone.PLAIN)
        return lines

    def belongs(self, action: str) -> bool:
        """A click on a key does what it does on the page below."""
        return super().belongs(action) or any(each.id == action for each in self._actions)

    def open_help(self) -> None:
        """The key that opened it closes it."""
        self.leave()


def _named(action: Action) -> Line:
    """An action's keys and its label, each in its column."""
    keys = keys_of(action)
    return (
        Span(f"{keys:<{_KEYS}}", Tone.KEY, action.id),
        Span(f"{action.label:<{_LABEL}}", Tone.PLAIN, action.id),
    )
