"""What the close of a morning says: what went well, what comes back or is taught again, what to lay out."""

from collections.abc import Sequence
from typing import NamedTuple

from warmup import skills
from warmup.desk import Desk
from warmup.memory import Knowledge
from warmup.morning import Mark, Prompt
from warmup.sitting import Sitting
from warmup.story import morning_at
from warmup.words import WEEKDAYS, date_words, number_word


class Closing(NamedTuple):
    """The close's lines, each empty when there is nothing to say. No score.

    ``table`` is what the next morning wants, ``handy`` what its pictures can stand in for.
    ``again`` names what today's marks put to rest until it is taught again, ``models`` what to do for it
    at the table, a line an item. ``pause`` offers a week with nothing new, or says until when there is none.
    ``review`` says in a review week how its checks went so far.
    """

    well: str
    back: str
    table: str
    handy: str = ""
    again: str = ""
    models: tuple[str, ...] = ()
    pause: str = ""
    review: str = ""


def closing(sitting: Sitting, before: Knowledge) -> Closing:
    """The close of a sitting; ``before`` is what was known when the morning began."""
    sitting.desk.forget()
    resting = _resting(sitting)
    return Closing(
        _well(sitting, before),
        _back(sitting, resting),
        *_table(sitting.desk),
        _again(resting, sitting.desk),
        tuple(_model(prompt, alone=len(resting) == 1) for prompt in resting),
        _pause(sitting.desk),
        sitting.desk.review(),
    )


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
    if not shown:
        return "you sat down together."
    return f"you sat down together and talked math, {shown} {'question' if shown == 1 else 'questions'} long."


def _easy(sitting: Sitting, at: int) -> bool:
    row = sitting.marks.get(at)
    return bool(row and row.mark is Mark.FLUENT and not row.cue)


def _back(sitting: Sitting, resting: Sequence[Prompt]) -> str:
    again = [
        f"{named(p)}{_when(sitting.desk, p)}"
        for at, p in enumerate(sitting.prompts)
        if sitting.mark_at(at) in (Mark.HESITATED, Mark.NOT_YET) and p not in resting
    ]
    return "; ".join(dict.fromkeys(again))


def _when(desk: Desk, prompt: Prompt) -> str:
    """The school day on which it is due back, ": again Monday"; nothing after the year's last morning."""
    owed = desk.knowledge().of(prompt.item).owed
    day = None if owed is None else morning_at(desk, owed)
    if day is None:
        return ""
    near = (day - desk.today).days < 7
    return f": again {WEEKDAYS[day.weekday()] if near else date_words(day, weekday=False)}"


def _resting(sitting: Sitting) -> list[Prompt]:
    """The prompts whose mark today was the not yet that puts their item to rest."""
    rest = set(sitting.desk.to_teach())
    return [
        p for at, p in enumerate(sitting.prompts) if p.item in rest and sitting.mark_at(at) is Mark.NOT_YET
    ]


def _again(resting: Sequence[Prompt], desk: Desk) -> str:
    if not resting:
        return ""
    names = "; ".join(skills.place(prompt.item).words() for prompt in resting)
    times = number_word(min(desk.knowledge().of(prompt.item).misses for prompt in resting)).capitalize()
    they, say = ("it rests", "it was taught") if len(resting) == 1 else ("they rest", "they were taught")
    return f"{names}. {times} times not yet: {they} until you say {say} (key l)."


def _model(prompt: Prompt, *, alone: bool) -> str:
    """What to do at the table: the second cue, which brings in a model, and what it wants."""
    skill = "" if alone else f"{skills.place(prompt.item).skill.title}: "
    ready = f" Have ready: {prompt.table}." if prompt.table else ""
    return f"{skill}{prompt.cues[1].text}{ready}"


def _pause(desk: Desk) -> str:
    until = desk.paused_until()
    if until and until > desk.today:
        return f"Nothing new until {date_words(until)}. Key y takes it back."
    return "More than a third wobbles. Key y: nothing new for a week." if wobbling(desk) else ""


def wobbling(desk: Desk) -> bool:
    """Whether more than a third of the skills marked so far in this review week had a wobble in it.

    A wobble is a mark of hesitated or not yet, or a cue. A rough day lowers nothing: it is left out here
    as well. False in any other week.
    """
    morning = desk.morning()
    if not morning.review:
        return False
    wobbles: dict[str, bool] = {}
    for line in reversed(desk.history()):
        if desk.year.morning(line.date).week != morning.week:
            break
        if line.mark in (None, Mark.SKIPPED) or line.rough:
            continue
        skill = line.item.partition("/")[0]
        wobbles[skill] = wobbles.get(skill, False) or line.mark is not Mark.FLUENT or line.cue > 0
    return 3 * sum(wobbles.values()) > len(wobbles)


def turn_pause(desk: Desk) -> None:
    """Take the offer of a school week with nothing new, or take it back."""
    until = desk.paused_until()
    # On the last day of one such week the next may be wanted.
    desk.pause(0 if until and until > desk.today else desk.year.mornings_a_week)


def _table(desk: Desk) -> tuple[str, str]:
    """What the next school morning is likely to want, by the routine it would have as things stand."""
    after = desk.morning().next
    if after is None:
        return "", ""
    wanted, handy = (", ".join(things) for things in laid_out(desk.routine(after).prompts))
    day = f" ({date_words(after)})"
    return (wanted and wanted + day), (handy and handy + ("" if wanted else day))


def laid_out(prompts: Sequence[Prompt]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What lies on the table for these prompts: what must, and what a picture on the stage can stand in for.

    Eight things to fetch would be a burden; half of them are shown as well.
    """
    wanted, handy = (
        dict.fromkeys(
            thing for p in prompts if p.table and (p.picture is None) is bare for thing in p.table.split(", ")
        )
        for bare in (True, False)
    )
    return tuple(wanted), tuple(thing for thing in handy if thing not in wanted)
