"""A list for the summer: three things a week for ten weeks, to be asked at the table without the program."""

from collections.abc import Iterator, Sequence

from warmup import skills
from warmup.english import date_words
from warmup.model import Morning, Prompt, Strand, item_id, skill_and_key
from warmup.randomness import SeededRandom
from warmup.report.document import Bullets, Document, Part, Section
from warmup.report.facts import LevelMet, Report
from warmup.report.summary import NO_TEST
from warmup.session.context import Context
from warmup.text import quoted

WEEKS, A_WEEK, SECOND_LOOKS = 10, 3, 2
"""The weeks of the list, the things of a week, and how many of these deserve a second look."""


def summer(report: Report, context: Context, signed: str = "") -> Document:
    """The list, out of what the report's steps say: what did not come easily, and what did."""
    morning = context.year.morning(report.made, pennies=context.family.pennies)
    usable = [level for level in report.levels if _prompt(level, morning, 0)]
    second = [level for level in usable if not level.easy and not level.settled]
    sure = [level for level in usable if level not in second]
    sections = [
        Section(f"Week {week + 1}", (Bullets(tuple(_things(levels, morning, week))),))
        for week, levels in enumerate(_weeks(second, sure))
        if levels
    ]
    how: tuple[Part, ...] = (
        "Three things a week are plenty, and a week without any is fine. Two of them deserve a second "
        "look, where there are such; the others keep warm what came easily.",
        "Ask one at the table, in the car or on a walk. If it does not come, show it together and go on.",
    )
    if not sections:
        how = ("Nothing was asked yet that a summer could come back to, so there is no list.",)
    end = (Section("", (NO_TEST, *([f"Warm wishes, {signed}"] if signed else []))),)
    return Document(
        f"A summer list for {report.child}",
        f"Out of the warm-ups up to {date_words(report.last, weekday=False, year=True)}.",
        (Section("", how), *sections, *end),
    )


def _weeks(second: Sequence[LevelMet], sure: Sequence[LevelMet]) -> Iterator[list[LevelMet]]:
    """The steps of each week, none twice in one, each kind taken in turn."""
    looked = kept = 0
    for _ in range(WEEKS):
        looks = min(len(second), max(SECOND_LOOKS, A_WEEK - len(sure)), A_WEEK)
        others = min(len(sure), A_WEEK - looks)
        yield [
            *(second[(looked + n) % len(second)] for n in range(looks)),
            *(sure[(kept + n) % len(sure)] for n in range(others)),
        ]
        looked, kept = looked + looks, kept + others


def _things(levels: Sequence[LevelMet], morning: Morning, week: int) -> Iterator[str]:
    for level in levels:
        prompt = _prompt(level, morning, week)
        if prompt:
            ready = f" Have ready: {prompt.table}." if prompt.table else ""
            drawn = f" Lay out or draw {prompt.picture.exactly()}." if prompt.picture else ""
            do = f" {prompt.do}" if prompt.do else ""
            yield f"{_capital(level.words)}.{ready}{drawn}{do} {quoted(prompt.say)} Answer: {prompt.answer}."


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _prompt(level: LevelMet, morning: Morning, week: int) -> Prompt | None:
    """A question of a step, always the same for a week; None where it would hang on a date."""
    skill, key = skill_and_key(level.id)
    found = skills.SKILLS[skill]
    items = next(each for each in found.levels if each.key == key).items
    able = [item for item in (item_id(skill, name) for name in items) if skills.askable(item, morning)]
    if found.strand is Strand.CALENDAR or not able:
        return None
    asked = [skills.prompt(item, morning, SeededRandom("summer", item, week)) for item in able]
    # What can be asked without laying anything out comes first.
    plain = [prompt for prompt in asked if prompt.picture is None] or asked
    return plain[week % len(plain)]
