"""One level: how it stands, when it comes again, what it leads to, and what was asked of it."""

import datetime as dt
import textwrap
from collections.abc import Iterable, Iterator
from typing import ClassVar

from rich.text import Text
from textual.binding import BindingType
from textual.widget import Widget

from warmup.english import date_words
from warmup.model import LevelId
from warmup.report import standards
from warmup.session.known import Known
from warmup.session.known_level import LevelStory, earlier_words, level_story
from warmup.session.known_words import BEADS_MEAN, slip_words
from warmup.session.words import BEADS
from warmup.text import quoted
from warmup.tui.actions import State
from warmup.tui.key_screen import bindings
from warmup.tui.lines import Lines
from warmup.tui.reading import Reading, paragraph
from warmup.tui.script import Line, Span
from warmup.tui.workspace import Workspace

ROUNDS_ARE = "Practice rounds, apart from mornings:"
_DATE = 8
"""The cells of a date in short, with a gap behind it."""


class KnownLevelScreen(Reading):
    """Its sentences, then its questions, the latest first."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "known_level.tcss"]
    ASKS_AT_MIDNIGHT: ClassVar = False
    STATES = (State.KNOWN_LEVEL,)
    FOOT: ClassVar = {"leave": "back", "practice": "", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def __init__(self, work: Workspace, found: Known, level: LevelId) -> None:
        self._found, self._child = found, found.child
        self._story = level_story(work.context, found, level)
        super().__init__(work)

    def heading(self) -> str:
        """What the level is called, and whose it is where there are several."""
        whose = f" · {self._child}" if self.work.several else ""
        words = self._story.level.words()
        return f"{words[0].upper()}{words[1:]}{whose}"

    def content(self) -> Iterable[Widget]:
        """How it stands, slips, questions, standards."""
        story = self._story
        yield paragraph(Text(f"{story.stands} {story.next}"))
        for slip in story.slips:
            yield paragraph(Text.assemble(("A slip that is open. ", "bold"), slip_words(slip)))
        if story.history:
            yield paragraph(Text.assemble(("What was asked   ", "bold"), BEADS_MEAN))
            yield Lines(self._lines, id="asked")
        if story.rounds:
            rounds = [
                f"{date_words(each.date, weekday=False, short=True)}  {each.words()}" for each in story.rounds
            ]
            yield paragraph(Text("\n".join((ROUNDS_ARE, *rounds))))
        if coded := list(_standards(story)):
            lines = [Text("Standards", "bold"), *coded, Text(standards.SOURCE)]
            yield paragraph(Text("\n").join(lines))

    def act(self, action: str) -> None:
        """Practice the level, or go up and down, or leave."""
        if action != "practice":
            super().act(action)
            return
        from warmup.tui.practice import PracticeScreen

        practice = PracticeScreen(self.work, self._story.level.id)
        self.open(practice, self._practiced)

    def _practiced(self, _: object) -> None:
        self.call_later(self._look_again)

    async def _look_again(self) -> None:
        """The story with the round that was held just now."""
        self._story = level_story(self.work.context, self._found, self._story.level.id)
        await self._scroll.remove_children()
        await self._scroll.mount(*self.content())

    def _lines(self, width: int) -> list[Line]:
        """The questions, the latest first: each its bead, its date, its words and what there is besides."""
        found: list[Line] = []
        for told in self._story.history:
            besides = f" {told.besides}." if told.besides else ""
            lead = f"{BEADS[told.mark]} {_short(told.on)}"
            words = f"{lead}{quoted(told.say)}{besides}"
            found += [(Span(line),) for line in _hanging(words, len(lead), width)]
        return [*found, *[(Span(earlier_words(self._story)),)] * bool(self._story.before), ()]


def _short(date: dt.date) -> str:
    return f"{date_words(date, weekday=False, short=True):<{_DATE}}"


def _hanging(words: str, indent: int, width: int) -> list[str]:
    return textwrap.wrap(
        words, max(width, 2 * indent), subsequent_indent=" " * indent, break_on_hyphens=False
    )


def _standards(story: LevelStory) -> Iterator[Text]:
    """Each code in our own words; a level may only lead toward it."""
    for leads, codes in (("", story.codes), ("toward ", story.toward)):
        for code in codes:
            yield Text(f"{leads}{code}: {standards.WORDS[code]}")
