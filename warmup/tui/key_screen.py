"""A screen whose keys come out of the action table, and what stands between a key and what it does."""

from abc import abstractmethod
from collections.abc import Callable
from typing import ClassVar, TypeVar

from textual.binding import Binding
from textual.screen import Screen

from warmup.config.toml_file import FileProblem
from warmup.journal.journal import Changed
from warmup.session import undoing
from warmup.session.undoing import CannotUndo
from warmup.session.words import ELSEWHERE
from warmup.tui.actions import BY_ID, State, actions_of, keys_of
from warmup.tui.workspace import Workspace

Result = TypeVar("Result")
Other = TypeVar("Other")


def bindings(*states: State, **shown: str) -> list[Binding]:
    """The bindings of the actions in these states, before those of the widget that has the focus.

    Those ``shown`` stand first, and in the line of keys, each with the label given or else its own. An action
    without a key of its own is picked from the menu, and has no binding.
    """
    actions = {action.id: action for action in actions_of(states) if action.every_key}
    named = [*shown, *(name for name in actions if name not in shown)]
    return [
        Binding(
            ",".join(actions[name].every_key),
            f"do('{name}')",
            shown.get(name) or actions[name].label,
            show=name in shown,
            key_display=keys_of(actions[name], "/"),
            priority=True,
            id=name,
            tooltip=actions[name].help,
        )
        for name in named
    ]


class KeyScreen(Screen[Result]):
    """Says in which state it is, what its actions do (``act``) and what came of it (``show``).

    Textual's screens have a metaclass of their own and can't take ABCMeta: mypy and a test over every
    screen see to it that what is abstract here is never opened.
    """

    STATES: ClassVar[tuple[State, ...]]
    ASKS_AT_MIDNIGHT: ClassVar = True

    def __init__(self, work: Workspace) -> None:
        super().__init__()
        self.work = work

    @property
    def state(self) -> State:
        """What is on screen."""
        return self.STATES[0]

    @abstractmethod
    def act(self, action: str) -> None:
        """Do an action of this state."""

    def show(self) -> None:
        """Show what came of it."""

    def action_do(self, action: str) -> None:
        """What a binding calls."""
        self.do(action)

    def do(self, action: str) -> None:
        """Do an action of the table, unless its key bounced or midnight has passed since the last one."""
        work = self.work
        if work.bounces.stops(action):
            return
        work.said = work.wrong = ""
        if self.ASKS_AT_MIDNIGHT and action != "quit" and work.midnight.asks(work.context.today):
            self.ask_which_day()
        elif self.belongs(action):
            self.attempt(lambda: self.perform(action))

    def belongs(self, action: str) -> bool:
        """Whether an action does something in the state the screen is in."""
        return self.state in BY_ID[action].states

    def perform(self, action: str) -> None:
        """Do an action of this state."""
        match action:
            case "quit":
                self.app.exit()
            case "theme":
                self.work.turn_theme()
            case "help":
                self.open_help()
            case _:
                self.act(action)

    def attempt(self, task: Callable[[], None]) -> None:
        """Do something and show what came of it; a file it can't read is said, no more."""
        work = self.work
        try:
            task()
        except FileProblem as problem:
            work.wrong = str(problem)
        except Changed:
            work.said, work.session = ELSEWHERE, None
            work.start_over()
        except CannotUndo:
            work.said = undoing.NO_LONGER
        self.show()

    def open(self, screen: Screen[Other], then: Callable[[Other | None], None] | None = None) -> None:
        """Put another screen on top of this one, and show this one again after it."""

        def closed(result: Other | None) -> None:
            self.show()
            if then is not None:
                then(result)

        self.work.bounces.opened_a_page()
        self.app.push_screen(screen, closed)

    def leave(self, result: Result | None = None) -> None:
        """Go back to the screen below."""
        self.work.bounces.opened_a_page()
        self.dismiss(result)

    def ask_which_day(self) -> None:
        """The clock says another date than the morning's: ask whether to go over to it."""
        from warmup.tui.midnight import MidnightScreen

        self.open(MidnightScreen(self.work), self.day_chosen)

    def day_chosen(self, goes: bool | None) -> None:
        """After the question of midnight: the new date's morning, or on with this one."""
        if goes:
            self.work.start_over()

    def open_help(self) -> None:
        """The help for the keys of this screen."""
        from warmup.tui.help import HelpScreen

        self.open(HelpScreen(self.work, self.STATES))
