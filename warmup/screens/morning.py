"""The morning: one screen whose mode changes, since a pushed screen would cost a blink."""

import datetime as dt
from collections.abc import Callable
from enum import Enum

from rich.text import Text
from textual import events
from textual.app import ComposeResult
from textual.screen import Screen

from warmup import skills
from warmup.closing import Closing, closing, turn_pause
from warmup.desk import Clock, Desk
from warmup.documents import FileProblem
from warmup.journal import Journal
from warmup.morning import Mark
from warmup.pictures import Picture
from warmup.screens import pages
from warmup.screens.pages import Notice, TeachAgain, Unlocked
from warmup.screens.panes import ScriptPane, Stage
from warmup.screens.script import Script
from warmup.sitting import Sitting, begin, resume
from warmup.words import date_words

NARROW = 72
"""Under this many columns the script is a strip below the stage."""
UNUSABLE = 3
"""The exit code for a file that can't be used as it is (see ``cli``)."""
NOT_SAVED = "Not being saved: the disk takes no writing. Tried again at each mark."

STOPPED = "One that comes easily, then done for today."
STOPPED_ITSELF = "Two in a row not yet: one that comes easily, then done for today."
STOPPED_AT_ONCE = "Done for today. The rest is no debt."
_MARKS = {
    "fluent": Mark.FLUENT,
    "hesitated": Mark.HESITATED,
    "not_yet": Mark.NOT_YET,
    "skip": Mark.SKIPPED,
}


class Mode(Enum):
    """What the morning shows."""

    COUNTS = "counts"
    PROMPT = "prompt"
    CLOSE = "close"
    HELP = "help"
    UNLOCKED = "unlocked"


class MorningScreen(Screen[object]):
    """Stage and script, and what each key does in each mode."""

    AUTO_FOCUS = None

    def __init__(
        self,
        desk: Desk,
        journal: Journal,
        clock: Clock,
        notices: tuple[str, ...] = (),
        turn_theme: Callable[[], None] = lambda: None,
        aside: str = "",
    ) -> None:
        super().__init__()
        self.turn_theme, self.aside = turn_theme, aside
        self.desk, self.journal, self.clock, self.notices = desk, journal, clock, notices
        self.stage, self.script = Stage(), ScriptPane(self.page)
        self._room: tuple[int | str, int | str] | None = None
        self.sitting: Sitting | None = None
        self.cursor = self._end = 0
        self.said = self.wrong = ""
        self._ending: Closing | None = None
        self.mode = self._first_mode()

    def compose(self) -> ComposeResult:
        """The two panes, in the shape the terminal gives them from the start: a second layout costs time."""
        yield self.stage
        yield self.script
        self._shape(self.app.size.width, self.app.size.height)

    def on_mount(self) -> None:
        """Begin or go on with the sitting, unless there is something to ask of missed mornings first.

        A routine file that can't be read ends the program, with the sentence that says so.
        """
        try:
            if days := self.desk.unsettled():
                self._ask_of(days)
            else:
                self._enter(self.mode)
        except FileProblem as problem:
            self.app.exit(None, UNUSABLE, Text(f"warmup: {problem}"))

    def on_resize(self, event: events.Resize) -> None:
        """The script goes below the stage on a narrow terminal."""
        self._shape(event.size.width, event.size.height)

    # -- modes

    def _ask_of(self, days: tuple[dt.date, ...]) -> None:
        """Ask whether missed mornings were school or off, then begin."""
        from warmup.missed import Missed
        from warmup.screens.days import DaysScreen

        missed = Missed(self.desk.family, self.desk.today, days)
        self.app.push_screen(DaysScreen(missed, self.turn_theme), self._settle)

    def _settle(self, off: tuple[dt.date, ...] | None) -> None:
        self.desk.settle(off or ())
        self._enter(self._first_mode())

    def _first_mode(self) -> Mode:
        planned = self.desk.morning().is_school
        started = self.journal.sittings_of(self.desk.child.record, self.desk.today)
        return Mode.PROMPT if planned or started else Mode.COUNTS

    def _enter(self, mode: Mode) -> None:
        if mode in (Mode.PROMPT, Mode.CLOSE) and self.sitting is None:
            self.sitting = resume(self.desk, self.journal, self.clock) or begin(
                self.desk, self.journal, self.clock
            )
        if mode is Mode.PROMPT and self.sitting is not None and self.sitting.at_close:
            mode = Mode.CLOSE
        if mode is Mode.CLOSE and self.sitting is not None:
            self._ending = closing(self.sitting, self.desk.knew_before_today())
        if mode is Mode.UNLOCKED:
            self.desk.forget()
        self.mode = mode
        self._show()

    def _show(self) -> None:
        self.set_class(self._words_only(), "words")
        if self.mode is not Mode.PROMPT:
            self.set_class(False, "picture")
        self._shape(self.app.size.width, self.app.size.height)
        self.stage.show(self._picture(), over=self.mode is Mode.CLOSE)
        self.script.show()

    def _words_only(self) -> bool:
        """Whether the adult's words take the whole screen."""
        return self.mode in (Mode.COUNTS, Mode.HELP, Mode.UNLOCKED)

    def _shape(self, width: int, height: int) -> None:
        """Give the panes their room: side by side, or the script as a strip below on a narrow terminal."""
        narrow = width < NARROW
        self.set_class(narrow, "narrow")
        beside = not narrow and not self._words_only()
        below = narrow and not self._words_only()
        room = (
            min(76, max(40, width * 9 // 20)) if beside else "100%",
            max(12, height * (4 if self.mode is Mode.CLOSE else 3) // 5) if below else "100%",
        )
        if room != self._room:
            self._room = room
            self.script.styles.width, self.script.styles.height = room

    def _picture(self) -> Picture | None:
        """The picture for the stage: the last model a cue brought in, else the question's own."""
        if self.mode is not Mode.PROMPT or self.sitting is None or self.sitting.prompt is None:
            return None
        prompt = self.sitting.prompt
        shown = [cue.picture for cue in prompt.cues[: self.sitting.cue] if cue.picture]
        return shown[-1] if shown else prompt.picture

    # -- the page of each mode

    def page(self, width: int, height: int) -> Script:
        """The script's page for this mode at this size."""
        name = self.desk.child.nickname if len(self.desk.family.children) > 1 else ""
        match self.mode:
            case Mode.PROMPT if self.sitting and self.sitting.prompt:
                covered = not self.desk.family.answers_shown
                return pages.prompt_page(self.sitting, width, self._notices(), covered=covered, name=name)
            case Mode.CLOSE if self.sitting and self._ending:
                return pages.close_page(self.sitting, self._ending, width, self._notices(), name)
            case Mode.HELP:
                self._end = pages.help_end(width, height)
                self.cursor = min(self.cursor, self._end)
                return pages.help_page(width, height, self.cursor)
            case Mode.UNLOCKED:
                return self._unlocked_page(width, height)
            case Mode.COUNTS:
                return pages.counts_page(self.desk.morning(), width)
            case _:
                return Script(width)

    def _notices(self) -> tuple[Notice, ...]:
        """Standing lines: trouble with the disk first, then what the last key had to say."""
        saving = "" if self.journal.saving else NOT_SAVED
        loud = [Notice(line, loud=True) for line in (saving, self.desk.unsaved, *self.notices, self.wrong)]
        lines = (*loud, Notice(self.aside), Notice(self.said))
        return tuple(line for line in lines if line.text)

    def _unlocked_page(self, width: int, height: int) -> Script:
        until = self.desk.paused_until()
        paused = date_words(until) if until else ""
        rows, notices = self._unlocked(), self._notices()
        return pages.unlocked_page(self.desk.morning(), rows, self.cursor, width, height, notices, paused)

    def _unlocked(self) -> list[Unlocked | TeachAgain]:
        morning, plan = self.desk.morning(), self.desk.plan
        rows: list[Unlocked] = []
        for skill in skills.SKILLS.values():
            for level in skill.levels:
                ref = f"{skill.id}:{level.key}"
                week = plan.weeks.get(ref, 99)
                if (
                    (week - 1) // 9 + 1 == morning.quarter and week <= morning.week
                ) or ref in self.desk.child.held:
                    rows.append(Unlocked(ref, skill.title, level.label, week, ref in self.desk.child.held))
        return [*self._teach_again(), *sorted(rows, key=lambda row: (-row.week, row.title))]

    def _teach_again(self) -> list[TeachAgain]:
        resting, taught = self.desk.to_teach(), dict(self.desk.child.taught)
        return [
            TeachAgain(item, skills.place(item).words(), item not in resting)
            for item in self.desk.missed()
            if item in resting or taught.get(item) == self.desk.today
        ]

    # -- what the keys do

    def do(self, action: str) -> None:
        """Do one action of the table in the mode the screen is in; a file it can't read is said, no more."""
        self.said = self.wrong = ""
        try:
            self._do(action)
        except FileProblem as problem:
            self.wrong = str(problem)
            self._show()

    def _do(self, action: str) -> None:
        match action, self.mode:
            case "quit", _:
                self.app.exit()
            case "theme", _:
                self.turn_theme()
                self._show()
            case "fluent" | "hesitated", Mode.HELP:
                self.cursor = max(0, self.cursor + (1 if action == "hesitated" else -1))
                self._show()
            case "help", Mode.HELP:
                self._enter(Mode.PROMPT if self.sitting else self._first_mode())
            case "help", _:
                self.cursor = 0
                self._enter(Mode.HELP)
            case _, Mode.COUNTS:
                self._do_counts(action)
            case _, Mode.PROMPT:
                self._do_prompt(action)
            case _, Mode.CLOSE:
                self._do_close(action)
            case _, Mode.UNLOCKED:
                self._do_unlocked(action)
            case _, Mode.HELP:
                self._enter(Mode.PROMPT if self.sitting else self._first_mode())

    def _do_prompt(self, action: str) -> None:
        sitting = self.sitting
        assert sitting is not None
        match action:
            case "fluent" | "hesitated" | "not_yet" | "skip":
                if sitting.mark(_MARKS[action]):
                    self.said = STOPPED_AT_ONCE if sitting.at_close else STOPPED_ITSELF
            case "next" | "accept":
                sitting.next()
            case "back":
                sitting.back()
            case "undo":
                self.said = "" if sitting.undo() else "Nothing to undo."
            case "cue":
                sitting.next_cue()
            case "cover":
                self.desk.prefer(answers_shown=not self.desk.family.answers_shown)
            case "stage":
                self.toggle_class("picture")
            case "rough":
                sitting.toggle_rough()
            case "short":
                self.said = "" if sitting.shorten() else "It is as short as it gets."
            case "stop":
                self.said = _said_of_stopping(sitting)
            case "swap":
                self.said = (
                    "Something else, then." if sitting.swap() else "There is nothing else to ask just now."
                )
            case "hold":
                sitting.hold_back()
                self.said = "Held back. Key l lists what is held, to let it come again."
            case "unlocked":
                self.cursor = 0
                self._enter(Mode.UNLOCKED)
                return
        self._enter(Mode.PROMPT)

    def _do_close(self, action: str) -> None:
        sitting = self.sitting
        assert sitting is not None
        match action:
            case "accept" if sitting.closed:
                self.app.exit()
                return
            case "accept" | "fluent":
                if action == "fluent":
                    sitting.others_easy()
                sitting.close()
                self.app.exit(0, 0)
                return
            case "back":
                sitting.back()
            case "undo":
                self.said = "" if sitting.undo() else "Nothing to undo."
            case "rough":
                sitting.toggle_rough()
            case "short" if sitting.closed:
                self.desk.forget()
                self.sitting = begin(self.desk, self.journal, self.clock, shape="short")
            case "hold" if self._ending and self._ending.pause:
                turn_pause(self.desk)
                self.said = "" if self.desk.paused_until() else "New things may come again."
            case "unlocked":
                self.cursor = 0
                self._enter(Mode.UNLOCKED)
                return
        self._enter(Mode.PROMPT)

    def _do_counts(self, action: str) -> None:
        match action:
            case "fluent":
                self.desk.count_today()
            case "accept" | "next":
                pass
            case _:
                return
        self._enter(Mode.PROMPT)

    def _do_unlocked(self, action: str) -> None:
        rows = self._unlocked()
        match action:
            case "fluent":
                self.cursor = max(0, self.cursor - 1)
            case "hesitated":
                self.cursor = min(max(0, len(rows) - 1), self.cursor + 1)
            case "hold" if rows:
                self._say_taught_or_hold(rows[self.cursor])
            case "unlocked" | "accept" | "back" | "next":
                self._enter(Mode.PROMPT)
                return
        self._show()

    def _say_taught_or_hold(self, row: Unlocked | TeachAgain) -> None:
        match row:
            case Unlocked():
                self.desk.hold(row.level, back=not row.held)
            case TeachAgain(taught=False):
                self.desk.taught(row.item)
                self.said = f"Taught again on {date_words(self.desk.today)}; it may come back."
            case TeachAgain():
                self.desk.taught(row.item, again=False)
                self.said = "It rests until you say it was taught."


def _said_of_stopping(sitting: Sitting) -> str:
    """Stop early, and what the screen says of it."""
    if not sitting.stop_early():
        return "There is nothing more to leave out."
    return STOPPED_AT_ONCE if sitting.at_close else STOPPED
