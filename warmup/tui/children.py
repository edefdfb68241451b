"""The children of the family, a line each: one more, another nickname, rest, prompts, and taking one out."""

from typing import ClassVar

from rich.cells import cell_len
from rich.text import Text
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.widgets import OptionList

from warmup.config.family import Child
from warmup.journal.journal import JournalProblem
from warmup.session import children, undoing
from warmup.tui.actions import BY_ID, State
from warmup.tui.key_screen import bindings
from warmup.tui.lists import More
from warmup.tui.page import Page
from warmup.tui.script import cut
from warmup.tui.workspace import Workspace

_NICKNAME = 20
"""The most cells of a nickname in the list."""


class ChildrenScreen(Page[bool]):
    """The list. Its result is whether other children have mornings now than before."""

    CSS_PATH: ClassVar = ["page.tcss", "children.tcss"]
    AUTO_FOCUS = "#list"
    STATES = (State.CHILDREN,)
    FOOT: ClassVar = {
        "add_child": "",
        "rename": "",
        "rest": "rest, or come back",
        "fewer": "",
        "more": "",
        "take_out": "",
        "undo": "",
        "leave": "back",
        "help": "",
    }
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self._list = OptionList(id="list", markup=False, compact=True)
        self._rows: list[str] = []
        self._before = self._up()

    def heading(self) -> str:
        """What the list holds."""
        return "The children"

    def body(self) -> ComposeResult:
        """The list."""
        yield self._list
        yield More(self._list)

    def show(self) -> None:
        """The rows as they stand now."""
        super().show()
        if not self._list.is_attached:
            return
        rows = [self._row(child) for child in self._children]
        if rows != self._rows:
            at, self._rows = self._list.highlighted or 0, rows
            self._list.clear_options()
            self._list.add_options([Text(row) for row in rows])
            self._list.highlighted = min(at, len(rows) - 1)

    @property
    def _children(self) -> tuple[Child, ...]:
        return self.work.context.family.children

    @property
    def _picked(self) -> Child:
        return self._children[min(self._list.highlighted or 0, len(self._children) - 1)]

    def _row(self, child: Child) -> str:
        context = self.work.context
        longest = min(_NICKNAME, max(cell_len(each.nickname) for each in self._children))
        name = cut(child.nickname, longest)
        about = children.about(child, context.family, context.today)
        return f"{name}{' ' * (longest + 2 - cell_len(name))}{about}"

    def _up(self) -> frozenset[str]:
        """The names of those who have mornings."""
        return frozenset(child.journal_name for child in self._children if not child.resting)

    def act(self, action: str) -> None:
        """Change the child under the cursor, or add one."""
        match action:
            case "add_child":
                self._form(None)
            case "rename":
                self._form(self._picked)
            case "rest":
                self._rest(self._picked)
            case "fewer" | "more":
                self._count(self._picked, 1 if action == "more" else -1)
            case "take_out":
                self._ask_to_take_out(self._picked)
            case "undo":
                self.work.undo()
            case _:
                self.leave(self._up() != self._before)

    # -- one more, and another nickname

    def _form(self, child: Child | None) -> None:
        from warmup.tui.child_form import ChildFormScreen

        def typed(new: Child | None) -> None:
            if new is not None:
                self.attempt(lambda: self._rename(child, new) if child else self._add(new))

        self.open(ChildFormScreen(self.work, child), typed)

    def _add(self, child: Child) -> None:
        work = self.work
        work.keep(undoing.ADDED, lambda: work.context.editor.add(child))
        work.said = f"{child.nickname} is one of the children now."

    def _rename(self, child: Child, new: Child) -> None:
        work = self.work
        work.keep(undoing.RENAMED, lambda: work.context.editor.rename(child, new.nickname))
        work.said = f"{child.nickname} is called {new.nickname} now. The marks stay."

    # -- mornings

    def _rest(self, child: Child) -> None:
        work, rests = self.work, not child.resting
        if rests and children.is_the_last_up(child, work.context.family):
            work.said = children.ONE_IS_UP
            return
        work.keep(undoing.RESTS, lambda: work.context.editor.rest(child, resting=rests))
        work.said = f"{child.nickname} {'has no mornings for now' if rests else 'has mornings again'}."

    def _count(self, child: Child, by: int) -> None:
        work, count = self.work, children.other_count(child, by)
        if count == child.prompts:
            return
        work.keep(undoing.PROMPTS, lambda: work.context.editor.prompts(child, count))
        said = f"{count} prompts a morning" if count else "as many prompts as the family says"
        work.said = f"{child.nickname}: {said}, from the next morning on."

    # -- taking one out

    def _ask_to_take_out(self, child: Child) -> None:
        """Ask a first time; then come the copies."""
        from warmup.tui.removal import RemovalScreen

        if len(self._children) == 1:
            self.work.said = children.THE_LAST
            return
        told = f"{children.STAYS_IN_THE_JOURNAL} First the journal and family.toml are copied."
        question = f"Take {child.nickname} out of the family?"
        self.open(
            RemovalScreen(self.work, question, told, [BY_ID["stay"], BY_ID["copy"]]),
            lambda picked: self.attempt(lambda: self._copy(child)) if picked == "copy" else None,
        )

    def _copy(self, child: Child) -> None:
        """Make the copies, and ask a second time."""
        from warmup.tui.removal import RemovalScreen

        work = self.work
        try:
            copies = children.keep_copies(work.context, work.journal, child, work.clock())
        except JournalProblem as problem:
            work.wrong = str(problem)
            return
        told = f"{copies.words()} {children.STAYS_IN_THE_JOURNAL}"
        self.open(
            RemovalScreen(work, f"Take {child.nickname} out now?", told, [BY_ID["stay"], BY_ID["out"]]),
            lambda picked: self.attempt(lambda: self._take_out(child)) if picked == "out" else None,
        )

    def _take_out(self, child: Child) -> None:
        self.work.context.editor.take_out(child)
        self.work.said = f"{child.nickname} is out of the family. {children.STAYS_IN_THE_JOURNAL}"
