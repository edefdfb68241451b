"""What the close of a morning says: what went well, what comes back or is taught again, what to lay out."""

from collections.abc import Sequence
from typing import NamedTuple

from warmup import skills
from warmup.engine.memory import Knowledge
from warmup.english import date_words, number_word
from warmup.model import LevelId, Mark, Prompt, skill_and_key
from warmup.session.context import Context
from warmup.session.pausing import paused, until_words, wobbling
from warmup.session.session import Session


class Closing(NamedTuple):
    """The close's lines, each empty when there is nothing to say. No score.

    ``table`` is what the next morning wants, ``handy`` what its pictures can stand in for.
    ``again`` names what today's marks put to rest until it is taught again, ``models`` what to do for it
    at the table, a line an item. ``pause`` offers a week with nothing new, or says until when there is none.
    ``review`` says in a review week how its checks went so far, ``year`` on the last morning of the year
    what became of it.
    """

    well: str
    back: str
    table: str
    handy: str = ""
    again: str = ""
    models: tuple[str, ...] = ()
    pause: str = ""
    review: str = ""
    year: str = ""


def closing(session: Session, before: Knowledge) -> Closing:
    """The close of a session; ``before`` is what was known when the morning began."""
    from warmup.session.year_end import year_end

    session.context.forget()
    resting = _resting(session)
    return Closing(
        _well(session, before),
        _back(session, resting),
        *_table(session.context),
        _again(resting, session.context),
        tuple(_model(prompt, alone=len(resting) == 1) for prompt in resting),
        _pause(session.context),
        session.context.review(),
        year_end(session.context, session.morning),
    )


def item_label(prompt: Prompt) -> str:
    """What a prompt asked, in a few words for the adult: "count on, within ten"."""
    return level_label(skills.locate(prompt.item).level_id)


def level_label(level: LevelId) -> str:
    """A level in the same words. KeyError or StopIteration for one that no skill has."""
    skill, key = skill_and_key(level)
    found = skills.SKILLS[skill]
    return f"{found.title.lower()}, {next(each.label for each in found.levels if each.key == key)}"


def _well(session: Session, before: Knowledge) -> str:
    """The thing that is best worth saying: what used to wobble, then what was new, then the furthest on."""
    easy = [p for at, p in enumerate(session.prompts) if _easy(session, at)]
    wobbled = [p for p in easy if before.of(p.item).mark in (Mark.HESITATED, Mark.NOT_YET)]
    new = [p for p in easy if not before.of(p.item).marks]
    if wobbled:
        return f"{item_label(wobbled[0])}. Last time it took longer; today it came."
    if new:
        return f"{item_label(new[0])}. It was new, and it came easily."
    if easy:
        best = max(easy, key=lambda p: skills.locate(p.item).number)
        return f"{item_label(best)}. It came easily."
    shown = min(session.furthest + 1, len(session.prompts))
    if not shown:
        return "you sat down together."
    return f"you sat down together and talked math, {shown} {'question' if shown == 1 else 'questions'} long."


def _easy(session: Session, at: int) -> bool:
    row = session.marks.get(at)
    return bool(row and row.mark is Mark.FLUENT and not row.cue)


def _back(session: Session, resting: Sequence[Prompt]) -> str:
    again = [
        f"{item_label(p)}: comes back soon"
        for at, p in enumerate(session.prompts)
        if session.mark_at(at) in (Mark.HESITATED, Mark.NOT_YET) and p not in resting
    ]
    return "; ".join(dict.fromkeys(again))


def _resting(session: Session) -> list[Prompt]:
    """The prompts whose mark today was the not yet that puts their item to rest."""
    rest = set(session.context.to_teach())
    return [
        p for at, p in enumerate(session.prompts) if p.item in rest and session.mark_at(at) is Mark.NOT_YET
    ]


def _again(resting: Sequence[Prompt], context: Context) -> str:
    if not resting:
        return ""
    names = "; ".join(skills.locate(prompt.item).words() for prompt in resting)
    times = number_word(min(context.knowledge().of(prompt.item).misses for prompt in resting)).capitalize()
    they, say = ("it rests", "it was taught") if len(resting) == 1 else ("they rest", "they were taught")
    return f"{names}. {times} times not yet: {they} until you say {say} (key l)."


def _model(prompt: Prompt, *, alone: bool) -> str:
    """What to do at the table: the second cue, which brings in a model, and what it wants."""
    skill = "" if alone else f"{skills.locate(prompt.item).skill.title}: "
    ready = f" Have ready: {prompt.table}." if prompt.table else ""
    return f"{skill}{prompt.cues[1].text}{ready}"


def _pause(context: Context) -> str:
    until = paused(context)
    if until and until > context.today:
        return f"{until_words(until)} Key y takes it back."
    wobbles = wobbling(context.history(), context.morning(), context.year)
    return "More than a third wobbles. Key y: nothing new for a week." if wobbles else ""


def _table(context: Context) -> tuple[str, str]:
    """What the next school morning is likely to want, by the routine it would have as things stand."""
    after = context.morning().next
    if after is None:
        return "", ""
    wanted, handy = (
        ", ".join(things) for things in materials(context.routine(context.morning(after)).prompts)
    )
    day = f" ({date_words(after)})"
    return (wanted and wanted + day), (handy and handy + ("" if wanted else day))


def materials(prompts: Sequence[Prompt]) -> tuple[tuple[str, ...], tuple[str, ...]]:
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
