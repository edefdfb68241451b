"""The day's lesson is the family's own, from any book: what is said of it on the page of a week."""

from collections.abc import Mapping

from warmup.english import listed
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.next_level import waits_for
from warmup.session.pausing import paused, until_words
from warmup.session.summary import level_label
from warmup.session.undoing import FamilyAction
from warmup.session.week import Lesson, New

_AFTER: Mapping[Lesson, Lesson] = {
    Lesson.UNSAID: Lesson.TAUGHT,
    Lesson.TAUGHT: Lesson.NOT_TAUGHT,
    Lesson.NOT_TAUGHT: Lesson.UNSAID,
}
"""What a tick becomes when it is turned."""


def would_say(lesson: Lesson) -> str:
    """What turning a tick says of the lesson."""
    match _AFTER[lesson]:
        case Lesson.TAUGHT:
            return "it was taught"
        case Lesson.NOT_TAUGHT:
            return "it is not taught yet"
        case Lesson.UNSAID:
            return "say nothing of it"


def ticked(row: New) -> New:
    """The row once its tick is turned."""
    return row._replace(lesson=_AFTER[row.lesson])


def turn_tick(row: New, context: Context) -> FamilyAction:
    """Say the next thing of a level's lesson; nothing is done yet."""
    editor, level = context.editor, row.level
    taught: bool | None
    match ticked(row).lesson:
        case Lesson.TAUGHT:
            what, taught, said = undoing.LESSON, True, f"Taught: {row.named()}. {_when_taught(row, context)}"
        case Lesson.NOT_TAUGHT:
            what, taught, said = undoing.NO_LESSON, False, f"Not taught yet, so held back: {row.named()}."
        case Lesson.UNSAID:
            ahead = row.week > context.morning().week
            comes = f"It opens in week {row.week}." if ahead else "It may come now."
            what, taught, said = undoing.UNSAID, None, f"Nothing said of {row.named()}. {comes}"
    return FamilyAction(what, lambda: editor.lesson(level, taught=taught), {"level": level}, said)


def _when_taught(row: New, context: Context) -> str:
    """Whether it may come at once, and if not what it waits for."""
    until = paused(context)
    if until and not row.asked:
        return until_words(until)
    if lacking := waits_for(context, row.level):
        return f"It waits for {listed(tuple(map(level_label, lacking)))}."
    return "It may come from now on."
