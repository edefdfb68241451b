"""What may be asked, a row each: what is to be taught again and the levels, and how a row is turned."""

from typing import NamedTuple

from warmup import skills
from warmup.english import date_words
from warmup.model import ItemId
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.undoing import FamilyAction
from warmup.session.unlocked import Unlocked, unlocked_levels

NOT_ASKED = "open, not asked yet"


def heading(context: Context) -> str:
    """What the list holds."""
    return f"Quarter {context.morning().quarter}: what may be asked so far"


class TeachAgain(NamedTuple):
    """One item in that list which rests until it is taught again, or was taught today."""

    item: ItemId
    named: str
    taught: bool

    def words(self, *, wide: bool) -> str:
        """The row as it stands in the list."""
        return f"{'taught again' if self.taught else 'teach again'}: {self.named}"

    def turned(self) -> str:
        """What the key does to it."""
        return "take that back" if self.taught else "it was taught again"

    def after(self) -> "TeachAgain":
        """The row once it is turned."""
        return self._replace(taught=not self.taught)


class LevelRow(NamedTuple):
    """One level in the list of what may be asked."""

    at: Unlocked

    def words(self, *, wide: bool) -> str:
        """The row as it stands in the list; only a ``wide`` one has room to say that it was not asked yet."""
        held, fresh = "held back: " * self.at.held, f" · {NOT_ASKED}" * (self.at.fresh and wide)
        return f"week {self.at.week:>2}  {held}{self.named()}{fresh}"

    def named(self) -> str:
        """What the level is called."""
        return f"{self.at.title}: {self.at.label}"

    def turned(self) -> str:
        """What the key does to it."""
        return "let it come" if self.at.held else "hold it back"

    def after(self) -> "LevelRow":
        """The row once it is turned."""
        return LevelRow(self.at._replace(held=not self.at.held))


Row = LevelRow | TeachAgain


def rows_of(context: Context) -> list[Row]:
    """The rows in order: what is to be taught again, then the levels, the newest first."""
    rows = sorted(unlocked_levels(context, context.morning()), key=lambda row: (-row.week, row.title))
    return [*_teach_again(context), *map(LevelRow, rows)]


def _teach_again(context: Context) -> list[TeachAgain]:
    resting, taught = context.to_teach(), dict(context.child.taught)
    return [
        TeachAgain(item, skills.locate(item).words(), item not in resting)
        for item in context.missed()
        if item in resting or taught.get(item) == context.today
    ]


def turn(row: Row, context: Context) -> FamilyAction:
    """Hold a level back or let it come, or say that an item was taught; nothing is done yet."""
    editor, today = context.editor, context.today
    match row:
        case LevelRow(at):
            back = not at.held
            what = undoing.HOLD if back else undoing.COME
            said = f"{'Held back' if back else 'It may come again'}: {row.named()}."
            return FamilyAction(what, lambda: editor.hold(at.level, back=back), {"level": at.level}, said)
        case TeachAgain(item, taught=False):
            said = f"Taught again on {date_words(today)}; it may come back."
            return FamilyAction(undoing.TAUGHT, lambda: editor.taught(item, today), {"item": item}, said)
        case TeachAgain(item):
            said = "It rests until you say it was taught."
            return FamilyAction(
                undoing.REST, lambda: editor.taught(item, today, again=False), {"item": item}, said
            )
