"""What the close of a morning says: one thing that went well, what comes back, what to lay out. No score."""

from typing import NamedTuple

from warmup import skills
from warmup.desk import Desk, date_words
from warmup.memory import Knowledge
from warmup.morning import Mark, Prompt
from warmup.sitting import Sitting


class Closing(NamedTuple):
    """The close's three lines; ``back`` and ``table`` are empty when there is nothing to say."""

    well: str
    back: str
    table: str


def closing(sitting: Sitting, before: Knowledge) -> Closing:
    """The close of a sitting; ``before`` is what was known when the morning began."""
    return Closing(_well(sitting, before), _back(sitting), _table(sitting.desk))


def named(prompt: Prompt) -> str:
    """What a prompt asked, in a few words for the adult: "count on, within ten"."""
    at = skills.place(prompt.item)
    return f"{at.skill.title.lower()}, {at.level.label}"


def _well(sitting: Sitting, before: Knowledge) -> str:
    """The thing that is best worth saying: what used to wobble, then what was new, then the furthest on."""
    easy = [p for at, p in enumerate(sitting.prompts) if _easy(sitting, at)]
    wobbled = [p for p in easy if before.of(p.item).mark in (Mark.HESITATED, Mark.NOT_YET)]
    new = [p for p in easy if not before.of(p.item).marks]
    if wobbled:
        return f"{named(wobbled[0])}. Last time it took longer; today it came."
    if new:
        return f"{named(new[0])}. It was new, and it came easily."
    if easy:
        best = max(easy, key=lambda p: skills.place(p.item).number)
        return f"{named(best)}. It came easily."
    shown = min(sitting.furthest + 1, len(sitting.prompts))
    return (
        f"you sat down together and talked maths, {shown} {'question' if shown == 1 else 'questions'} long."
    )


def _easy(sitting: Sitting, at: int) -> bool:
    row = sitting.marks.get(at)
    return bool(row and row.mark is Mark.FLUENT and not row.cue)


def _back(sitting: Sitting) -> str:
    again = [
        named(p)
        for at, p in enumerate(sitting.prompts)
        if sitting.mark_at(at) in (Mark.HESITATED, Mark.NOT_YET)
    ]
    return "; ".join(dict.fromkeys(again))


def _table(desk: Desk) -> str:
    """What the next school morning is likely to want, by the routine it would have as things stand."""
    after = desk.morning().next
    if after is None:
        return ""
    desk.forget()
    wanted = dict.fromkeys(p.table for p in desk.routine(after).prompts if p.table)
    return f"{', '.join(wanted)} ({date_words(after)})" if wanted else ""
