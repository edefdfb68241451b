"""A practice round of five: the panes of the morning with the prompts of one level, apart from mornings."""

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import BindingType

from warmup.journal.journal import Journal
from warmup.model import LevelId, Mark
from warmup.session.context import Clock, Context
from warmup.session.practice import APART, DONE, PracticeRound, title, why_not
from warmup.session.undoing import MARK_WORDS
from warmup.session.words import BEADS
from warmup.tui import pages
from warmup.tui.actions import State
from warmup.tui.app import PageApp
from warmup.tui.key_screen import KeyScreen, bindings
from warmup.tui.morning import NARROW, STAGE, STRIP, seen, stage_room
from warmup.tui.panes import ScriptPane, Stage
from warmup.tui.parts import View, beads, key, keys, notices
from warmup.tui.script import TALL, Keep, Place, Script, Tone
from warmup.tui.workspace import Workspace

WAITS = "This one can wait. There is plenty to enjoy meanwhile."


class PracticeScreen(KeyScreen[object]):
    """Stage and script of a round; where the level can't be practiced, why."""

    DEFAULT_CLASSES = "panes"
    AUTO_FOCUS = None
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.PRACTICE,)
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, level: LevelId) -> None:
        super().__init__(work)
        self._level, self._reason = level, why_not(work.context, level)
        self.round = None if self._reason else PracticeRound(work.context, work.journal, level)
        self.stage, self.script = Stage(self._clicked_picture), ScriptPane(self.page)
        self._room, self._uncovered = (0, 0), -1

    # -- what is on screen

    def compose(self) -> ComposeResult:
        """The two panes."""
        yield self.stage
        yield self.script

    def on_mount(self) -> None:
        """Show the first prompt."""
        self.show()

    def on_resize(self, _event: events.Resize) -> None:
        """The script goes below the stage on a narrow terminal."""
        self.show()

    def show(self) -> None:
        """The prompt, with its picture beside it or above."""
        if self not in self.app.screen_stack:
            return
        round_, (width, height) = self.round, self.app.size
        picture = round_.prompt.picture_after(round_.cue) if round_ and round_.prompt else None
        narrow = width < NARROW
        alone = round_ is None or (narrow and (round_.prompt is None or height < STAGE + STRIP))
        self._room = (0, 0) if alone else stage_room(width, height, picture)
        self.set_class(narrow, "narrow")
        self.set_class(alone, "words")
        if round_ is None or round_.prompt is None:
            self.remove_class("picture")
        self.script.styles.width = "100%" if narrow or alone else width - self._room[0]
        self.script.styles.height = height - self._room[1] if narrow and not alone else "100%"
        self.stage.show(picture, over=round_ is not None and round_.prompt is None)
        self.script.show()

    def page(self, width: int, height: int) -> Script:
        """The script's page at this size."""
        work, round_ = self.work, self.round
        name = work.context.child.nickname if work.several else ""
        view = View(width, height, work.hand, work.notices(), name, self._covered, practice=True)
        if round_ is None:
            return self._refusal(view)
        if round_.prompt is None:
            return self._end(round_, view)
        picture = round_.prompt.picture_after(round_.cue)
        view = view._replace(seen=seen(picture, self._room, self.app.size))
        return pages.prompt_page(round_, view, early=False)

    def _refusal(self, view: View) -> Script:
        """Why the level is not practiced now."""
        page = Script(view.width)
        page.text(title(self._level), Tone.QUIET, Keep.HEAD, place=Place.TOP)
        page.air(Keep.SPACE, Place.TOP)
        page.text(self._reason, Tone.PLAIN, Keep.ALWAYS)
        page.air()
        page.text(WAITS, Tone.QUIET, Keep.WHY)
        notices(page, view)
        keys(page, [[key(name, view.hand) for name in ("leave", "help")]], view)
        return page

    def _end(self, round_: PracticeRound, view: View) -> Script:
        """All prompts are behind."""
        page = Script(view.width)
        page.text(title(self._level), Tone.QUIET, Keep.HEAD, place=Place.TOP)
        page.air(Keep.SPACE, Place.TOP)
        page.say(DONE, band=view.height >= TALL)
        page.air(Keep.SPACE)
        page.add([beads(round_)], Keep.BEADS)
        page.air()
        page.text(APART, Tone.QUIET, Keep.WHY)
        notices(page, view)
        others = [key(name, view.hand) for name in ("back", "undo", "help")]
        keys(page, [[key("next", view.hand, "done")], others], view)
        return page

    @property
    def _covered(self) -> bool:
        """Whether the answer is covered: for who reads, until it is asked for."""
        if self.work.context.child.reads:
            return self.round is not None and self.round.position != self._uncovered
        return not self.work.context.family.answers_shown

    # -- what the keys do

    def act(self, action: str) -> None:
        """Mark, go on or back, help, or leave."""
        round_ = self.round
        if round_ is None or (round_.prompt is None and action == "next"):
            self.leave()
            return
        match action:
            case "leave" if self.has_class("picture"):
                self.remove_class("picture")
            case "leave":
                self.leave()
            case "stage":
                self.toggle_class("picture")
            case "cover":
                self._turn_cover(round_)
            case "undo":
                self.work.said = "Undone: the last mark." if round_.undo() else "Nothing to undo."
            case "next":
                round_.next()
            case "back":
                round_.back()
            case "cue":
                round_.next_cue()
            case _ if round_.prompt is not None:
                mark = Mark(action)
                round_.mark(mark)
                self.work.said = f"{BEADS[mark]} {MARK_WORDS[mark]}"

    def _turn_cover(self, round_: PracticeRound) -> None:
        if self.work.context.child.reads:
            self._uncovered = round_.position if self._covered else -1
        else:
            self.work.context.editor.prefer(answers_shown=self._covered)

    def _clicked_picture(self) -> None:
        """A way back for the mouse where the picture has the whole screen."""
        if self.has_class("picture"):
            self.do("stage")

    def action_bead(self, at: int) -> None:
        """A click on a bead: go to its prompt."""
        if self.round is not None and not self.work.bounces.stops("next"):
            round_ = self.round
            self.guarded(lambda: round_.go_to(at))


class PracticeApp(PageApp):
    """A round alone."""

    def __init__(self, context: Context, journal: Journal, clock: Clock, level: LevelId) -> None:
        super().__init__(context, journal, clock, lambda work: PracticeScreen(work, level))
