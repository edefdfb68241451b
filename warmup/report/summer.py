"""A list for the summer: three things a week for ten weeks, to be asked at the table without the program."""

from collections import deque
from collections.abc import Iterator, Sequence

from warmup import skills
from warmup.model import Morning, Prompt, Strand, item_id, skill_and_key
from warmup.randomness import SeededRandom
from warmup.report.document import Bullets, Document, Part, Section
from warmup.report.facts import LevelMet, Report
from warmup.report.summary import NO_TEST, dated
from warmup.session.context import Context
from warmup.session.rounds import in_rounds
from warmup.session.words import SMALL_THINGS, has_small_things
from warmup.text import quoted

WEEKS, A_WEEK, SECOND_LOOKS = 10, 3, 2
"""The weeks of the list, the things of a week, and how many of these deserve a second look."""


def summer(report: Report, context: Context, signed: str = "") -> Document:
    """The list, out of what the report's steps say: what did not come easily, and what did."""
    morning = context.year.morning(report.made, pennies=context.family.pennies)
    usable = [level for level in report.levels if _prompt(level, morning, 0)]
    second = _by_turns([level for level in usable if not level.easy and not level.settled])
    # From the other end, so that what is sure is seldom of the skill that deserves a second look.
    sure = _by_turns([level for level in reversed(usable) if level not in second])
    weeks = [[*_asked(levels, morning, week)] for week, levels in enumerate(_weeks(second, sure))]
    sections = [
        Section(f"Week {number}", (Bullets(tuple(_line(level, prompt) for level, prompt in asked)),))
        for number, asked in enumerate(weeks, start=1)
        if asked
    ]
    how: tuple[Part, ...] = (
        "Three things a week are plenty, and a week without any is fine. Two of them deserve a second "
        "look, where there are such; the others keep warm what came easily.",
        "Ask one at the table, in the car or on a walk. If it does not come, show it together and go on.",
    )
    if not sections:
        how = ("Nothing was asked yet that a summer could come back to, so there is no list.",)
    small = has_small_things(*(prompt.table for asked in weeks for _, prompt in asked))
    warned = [SMALL_THINGS] if small else []
    end = (Section("", (*warned, NO_TEST, *([f"Warm wishes, {signed}"] if signed else []))),)
    return Document(
        f"A summer list for {report.child}",
        f"Out of the warm-ups up to {dated(report.last)}.",
        (Section("", how), *sections, *end),
    )


def _by_turns(levels: Sequence[LevelMet]) -> list[LevelMet]:
    """One of each part of the year, then the next of each, of a skill one before another of it.

    In the order of the report a child who found much hard would be all summer at its first skills.
    """
    skill = in_rounds(levels, lambda level: skill_and_key(level.id)[0])
    return in_rounds(skill, lambda level: skills.SKILLS[skill_and_key(level.id)[0]].strand)


def _weeks(second: Sequence[LevelMet], sure: Sequence[LevelMet]) -> Iterator[list[LevelMet]]:
    """The steps of each week, none twice in one: each kind in turn, and of as many skills as can be."""
    looked, kept = deque(second), deque(sure)
    for _ in range(WEEKS):
        looks = min(len(second), max(SECOND_LOOKS, A_WEEK - len(sure)), A_WEEK)
        week = list[LevelMet]()
        for turn in range(looks + min(len(sure), A_WEEK - looks)):
            week.append(_next(looked if turn < looks else kept, week))
        yield week


def _next(waiting: deque[LevelMet], week: Sequence[LevelMet]) -> LevelMet:
    """The first that waits whose skill the week has not yet, or else the first; it waits at the end again."""
    had = {skill_and_key(level.id)[0] for level in week}
    able = [level for level in waiting if level not in week]
    taken = next((level for level in able if skill_and_key(level.id)[0] not in had), able[0])
    waiting.remove(taken)
    waiting.append(taken)
    return taken


def _asked(levels: Sequence[LevelMet], morning: Morning, week: int) -> Iterator[tuple[LevelMet, Prompt]]:
    for level in levels:
        prompt = _prompt(level, morning, week)
        if prompt:
            yield level, prompt


def _line(level: LevelMet, prompt: Prompt) -> str:
    ready = f" Have ready: {prompt.table}." if prompt.table else ""
    drawn = f" Lay out or draw {prompt.picture.exactly()}." if prompt.picture else ""
    do = f" {prompt.do}" if prompt.do else ""
    return f"{_capital(level.words)}.{ready}{drawn}{do} {quoted(prompt.say)} Answer: {prompt.answer}."


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _prompt(level: LevelMet, morning: Morning, week: int) -> Prompt | None:
    """A question of a step, always the same for a week; None where it would hang on a date."""
    at = skills.plain(level.id)
    names = (item_id(at.skill.id, name) for name in at.level.items)
    able = [item for item in names if skills.askable(item, morning)]
    if at.skill.strand is Strand.CALENDAR or not able:
        return None
    asked = [skills.prompt(item, morning, SeededRandom("summer", item, week)) for item in able]
    # What can be asked without laying anything out comes first.
    plain = [prompt for prompt in asked if prompt.picture is None] or asked
    return plain[week % len(plain)]
