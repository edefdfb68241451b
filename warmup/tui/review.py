"""The review of this week: what settled, what comes more often, what comes easier first."""

from collections.abc import Iterable
from typing import ClassVar

from rich.text import Text
from textual.binding import BindingType
from textual.widget import Widget

from warmup.english import plural
from warmup.session.pausing import paused, until_words, week_of_history, wobbling
from warmup.session.reviewing import parts
from warmup.session.summary import MANY_WOBBLED
from warmup.tui.actions import State, with_keys
from warmup.tui.key_screen import bindings
from warmup.tui.reading import Reading, paragraph

NOTHING_YET = "Nothing was checked yet."


class ReviewScreen(Reading):
    """Its result is ``pause`` where that is taken."""

    CSS_PATH: ClassVar = ["page.tcss", "reading.tcss", "review.tcss"]
    STATES = (State.REVIEW,)
    FOOT: ClassVar = {"done": "back", "pause": "", "line_down": "", "line_up": "", "help": ""}
    BINDINGS: ClassVar[list[BindingType]] = [*bindings(*STATES)]

    def heading(self) -> str:
        """The week, and of how many skills."""
        count = sum(len(part.titles) for part in parts(self.work.context) if part.label != "teach again")
        return f"Review, week {self.work.context.morning().week}: {count} {plural(count, 'skill')} so far"

    def content(self) -> Iterable[Widget]:
        """What became of the skills, then whether much wobbled."""
        context = self.work.context
        found = parts(context)
        for part in found:
            yield paragraph(Text.assemble((f"{part.label}\n", "bold"), " · ".join(part.titles)))
        if not found:
            yield paragraph(Text(NOTHING_YET))
        if (until := paused(context)) is not None:
            yield paragraph(Text(until_words(until)))
        elif self.belongs("pause"):
            said = with_keys(f"{MANY_WOBBLED} ‹pause›: nothing new for a week.", self.work.hand)
            yield paragraph(Text(said))

    def belongs(self, action: str) -> bool:
        """A week with nothing new is offered where much wobbled, or may be taken back."""
        context = self.work.context
        offered = paused(context) or wobbling(week_of_history(context), context.morning(), context.year)
        return super().belongs(action) and (action != "pause" or bool(offered))
