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
from warmup.tui.actions import (
    BY_ID,
    Action,
    State,
    actions_of,
    binding_id,
    hand_of,
    is_rebound,
    key_name,
    somewhere_in,
)
from warmup.tui.workspace import Workspace

Result = TypeVar("Result")
Other = TypeVar("Other")


def bindings(*states: State) -> list[Binding]:
    """The bindings of the actions in these states, a key each, before those of the widget with the focus.

    What a binding calls is told the key: its hand's keys are named from then on. The id of the first is that
    of the action, of the others that and the key, so that a keymap can move each (:mod:`warmup.tui.keymap`).
    """
    return [
        Binding(
            key,
            f"do('{action.id}', '{key}')",
            action.label,
            show=False,
            key_display=key_name(key),
            priority=True,
            id=binding_id(action, key),
            tooltip=action.help,
        )
        for action in actions_of(states)
        for key in action.every_key
    ]


def action_of(binding: Binding) -> str:
    """The id of the action that a binding of the table is for."""
    return (binding.id or "").partition(".")[0]


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

    def action_do(self, action: str, key: str = "") -> None:
        """What a binding calls: an action of the table, and the key that was pressed for it."""
        hand = hand_of(key) if key and not is_rebound(action) else None
        if hand is not None:
            self.work.hand = hand
        self.do(action)

    def do(self, action: str) -> None:
        """Do an action of the table, unless its key bounced or midnight has passed since the last one."""
        if self.work.bounces.stops(action):
            return
        if not self.belongs(action):
            self.guarded(lambda: None, asks=action != "quit")
        else:
            self.guarded(lambda: self.perform(action), asks=action != "quit")

    def guarded(self, task: Callable[[], None], *, asks: bool = True) -> None:
        """Do what a key or a click asks for, unless midnight has passed; what was said before is gone."""
        work = self.work
        work.said = work.wrong = ""
        if asks and self.ASKS_AT_MIDNIGHT and work.midnight.asks(work.context.today):
            self.ask_which_day()
        else:
            self.attempt(task)

    def belongs(self, action: str) -> bool:
        """Whether an action does something in the state the screen is in."""
        return self.state in BY_ID[action].somewhere

    def offered(self) -> tuple[Action, ...]:
        """What does something here just now, each as it is called just now."""
        return tuple(action for action in somewhere_in(self.state) if self.belongs(action.id))

    def perform(self, action: str) -> None:
        """Do an action of this state."""
        match action:
            case "quit":
                self.app.exit()
            case "theme":
                self.work.turn_theme()
            case "hand":
                self.work.hand = self.work.hand.other
            case "help":
                self.open_help()
            case "guide":
                self._open_guide()
            case _ if not self.stepped(action):
                self.act(action)

    def stepped(self, action: str) -> bool:
        """Whether the action was to go a line up or down in the screen's list, and that was done."""
        return False

    def attempt(self, task: Callable[[], None]) -> None:
        """Do something and show what came of it; a file it can't read is said, no more."""
        work = self.work
        try:
            task()
        except FileProblem as problem:
            work.wrong = str(problem)
        except Changed:
            work.said = ELSEWHERE
            work.leave_session()
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

    def open_palette(self) -> None:
        """Everything that does something here, grouped and by name; what is picked is done."""
        from warmup.tui.menu import MenuScreen

        self.open(MenuScreen(self.work, self.offered(), grouped=True), self.picked)

    def picked(self, action: str | None) -> None:
        """Do what was picked by name on the page on top, if it does something here."""
        if action and self.belongs(action):
            self.attempt(lambda: self.perform(action))

    def open_help(self) -> None:
        """The help for the keys of this screen."""
        from warmup.tui.help import HelpScreen

        self.open(HelpScreen(self.work, self.STATES), self.picked)

    def _open_guide(self) -> None:
        from warmup.tui.guide import GuideScreen

        self.open(GuideScreen(self.work))
