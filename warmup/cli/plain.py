"""A routine as plain text: for paper, for a screen reader, for a terminal that is none.

One thing a line, every line with its name first, nothing that needs to be seen to be understood.
"""

import re
from collections.abc import Iterable, Iterator, Sequence

from warmup import skills
from warmup.english import date_words, in_words, listed, plural
from warmup.model import Cue, DayKind, Morning, Opening, Prompt, Routine
from warmup.pictures import Picture
from warmup.session.context import Context
from warmup.session.unlocked import Unlocked, unlocked_levels
from warmup.session.words import KEEP_WARM, back_words, has_small_things
from warmup.session.year_end import year_end

SMALL_THINGS = (
    "Coins, buttons and other small things: keep them from children under three and from anyone who mouths "
    "things. They can choke."
)

HOW_TO_WAIT = "Ask, count five silently, then give a cue."


def routine_lines(routine: Routine, context: Context, *, answers: bool = True) -> Iterator[str]:
    """The whole routine, a line at a time."""
    yield from morning_lines(routine.morning, context)
    yield from table_line(routine)
    minutes = -(-sum(prompt.seconds for prompt in routine.prompts) // 60)
    yield f"Prompts: {len(routine.prompts)}, about {minutes} minutes."
    yield HOW_TO_WAIT
    yield SMALL_THINGS
    if routine.opening:
        yield ""
        yield opening_line(routine.opening)
        if routine.opening.job:
            yield routine.opening.job
    for number, prompt in enumerate(routine.prompts, start=1):
        yield ""
        yield f"Prompt {number} of {len(routine.prompts)}: {title(prompt)}"
        yield from prompt_lines(prompt, answers=answers)
    if closing := year_end(context, routine.morning):
        yield ""
        yield f"To close with: {closing}"


def table_line(routine: Routine) -> Iterator[str]:
    """What the opening and the prompts want at hand, where they want anything."""
    first = [routine.opening.table] if routine.opening else []
    tables = dict.fromkeys([*first, *(prompt.table for prompt in routine.prompts)])
    if things := [table for table in tables if table]:
        yield f"On the table: {listed(things)}."


def opening_line(opening: Opening) -> str:
    """What the morning begins with."""
    return f"Opening, said and not asked: {opening.say}"


def day_lines(morning: Morning, context: Context) -> Iterator[str]:
    """Whose warm-up it is, and which day in the family's year."""
    yield f"Warm-up for {context.child.nickname}, {date_words(morning.date, year=True)}."
    yield day_words(morning)
    if morning.festive:
        yield f"Today: {listed(morning.festive)}."
    if back := back_words(context, morning):
        yield back


def morning_lines(morning: Morning, context: Context) -> Iterator[str]:
    """Which day it is in the family's year, and what the quarter has unlocked, what to teach again."""
    yield from day_lines(morning, context)
    if morning.date == context.today and (said := _review(context, morning)):
        yield f"Review so far: {said}"
    levels = [level for level in unlocked_levels(context, morning) if not level.held]
    if levels:
        yield f"Unlocked this quarter: {'; '.join(_by_skill(levels))}."
    if fresh := [level for level in levels if level.fresh]:
        yield f"Open, not asked yet: {'; '.join(_by_skill(fresh))}."
    resting = context.to_teach()
    if resting:
        yield f"To teach again: {'; '.join(skills.locate(item).words() for item in resting)}."


def day_words(morning: Morning) -> str:
    """The school day, week and quarter in a sentence; what the date is when it is no school day."""
    review = ", a review week" if morning.review else ""
    week = f"week {morning.week}{review}, quarter {morning.quarter}"
    match morning.kind:
        case DayKind.SCHOOL:
            return f"School day {morning.school_day}, {week}."
        case DayKind.BEFORE:
            begins = f"; it begins on {date_words(morning.next)}" if morning.next else ""
            return f"The school year has not begun{begins}. Getting ready."
        case DayKind.AFTER:
            days = f"{morning.school_day} school {plural(morning.school_day, 'day')}"
            return f"The school year is over, {days}. {KEEP_WARM}"
        case DayKind.WEEKEND | DayKind.DAY_OFF:
            return (
                f"No school today ({morning.kind.value}). School days so far: {morning.school_day}, {week}."
            )


def _by_skill(levels: Iterable[Unlocked]) -> list[str]:
    """The levels of a skill together, behind its name."""
    found: dict[str, list[str]] = {}
    for level in levels:
        found.setdefault(level.title.lower(), []).append(level.label)
    return [f"{name} ({', '.join(labels)})" for name, labels in sorted(found.items())]


def title(prompt: Prompt) -> str:
    """The skill and level of a prompt for people."""
    at = skills.locate(prompt.item)
    return f"{at.skill.title}, {at.level.label}."


def prompt_lines(prompt: Prompt, *, answers: bool = True) -> Iterator[str]:
    """One prompt, whole; without its answers when the paper lies where the child can see it."""
    yield from do_and_say(prompt)
    if answers:
        yield from answer_lines(prompt)
        yield from _working_line(prompt)
    yield from (cue_line(number, cue) for number, cue in enumerate(prompt.cues, start=1))
    yield from _watch_line(prompt)
    yield from _picture_line(prompt, answers=answers)
    yield from wants_line(prompt)
    yield from _why_line(prompt)


def insight_lines(prompt: Prompt, *, answers: bool = True) -> Iterator[str]:
    """What the adult may want to know beside the words, the answer and the cues; the picture comes first."""
    yield from _picture_line(prompt, answers=answers)
    if answers:
        yield from _working_line(prompt)
    yield from _watch_line(prompt)
    yield from _why_line(prompt)


def do_and_say(prompt: Prompt) -> Iterator[str]:
    """What to do first, if anything, and the words to say."""
    if prompt.do:
        yield f"Do: {prompt.do}"
    yield f"Say: {prompt.say}"


def answer_lines(prompt: Prompt) -> Iterator[str]:
    """The answer, and what is right as well."""
    yield f"Answer: {prompt.answer}"
    if prompt.accept:
        yield f"Also right: {'; '.join(prompt.accept)}"


def cue_line(number: int, cue: Cue) -> str:
    """One cue, with the picture it brings in."""
    shows = f" (Show {cue.picture.exactly()}.)" if cue.picture else ""
    return f"Cue {number}: {cue.text}{shows}"


def wants_line(prompt: Prompt) -> Iterator[str]:
    """What is to lie on the table, if anything."""
    if prompt.table:
        yield f"Wants: {prompt.table}"


def _working_line(prompt: Prompt) -> Iterator[str]:
    if prompt.working:
        yield f"Working: {in_words(prompt.working)}"


def _watch_line(prompt: Prompt) -> Iterator[str]:
    if prompt.watch_for:
        yield f"Watch for: {prompt.watch_for}"


def _why_line(prompt: Prompt) -> Iterator[str]:
    if prompt.why:
        yield f"Why today: {prompt.why}"


def _picture_line(prompt: Prompt, *, answers: bool) -> Iterator[str]:
    if prompt.picture:
        yield f"Picture: {picture_words(prompt, prompt.picture, answers=answers)}."


def picture_words(prompt: Prompt, picture: Picture, *, answers: bool) -> str:
    """What to lay out or draw; only the gist of it where that would say an answer that is left out."""
    told = picture.exactly()
    right = "|".join(re.escape(form) for form in (prompt.answer, *prompt.accept))
    tells = re.search(rf"(?<!\w)(?:{right})(?!\w)", f"{told}\n{in_words(told)}", re.IGNORECASE)
    return told if answers or not tells else picture.words()


def prompts_lines(prompts: Sequence[Prompt], *, answers: bool = True) -> Iterator[str]:
    """Prompts by themselves, numbered; first of all what is dangerous on their tables."""
    if has_small_things(*(prompt.table for prompt in prompts)):
        yield SMALL_THINGS
        yield ""
    for number, prompt in enumerate(prompts, start=1):
        if number > 1:
            yield ""
        yield f"Prompt {number} of {len(prompts)}: {title(prompt)}"
        yield from prompt_lines(prompt, answers=answers)


def _review(context: Context, morning: Morning) -> str:
    """What this week's review says so far; empty in any other week."""
    from warmup.engine.review import review_summary

    if not morning.review:
        return ""
    titles = {skill.id: skill.title for skill in skills.SKILLS.values()}
    return review_summary(context.knowledge(), context.curriculum(), morning.week, titles)
