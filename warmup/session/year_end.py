"""What the last school morning of a year says of it at its close. No score, and nothing of other children."""

from collections import Counter

from warmup import skills
from warmup.engine.review import Outcome, checks, outcome
from warmup.english import number_word, plural
from warmup.model import WOBBLES, Mark, Morning, skill_and_name
from warmup.session.context import Context


def year_end(context: Context, morning: Morning) -> str:
    """How many school days there were and one thing that settled, in two sentences; else empty."""
    if not morning.is_school or morning.next is not None:
        return ""
    number = morning.school_day
    days = f"{number_word(number)} school {plural(number, 'day')}"
    return f"That was the last school day of the year: {days}. {_one_thing(context)}"


def _one_thing(context: Context) -> str:
    """The skill that settled after the most wobbles, else the one that is furthest on and comes easily."""
    known, curriculum = context.knowledge(), context.curriculum()
    last = dict[str, tuple[bool, ...]]()
    for week in curriculum.reviews:
        last |= checks(known, curriculum, week)
    settled = [skill for skill, marks in last.items() if outcome(marks) is Outcome.SETTLED]
    if settled:
        wobbles = Counter(
            skill_and_name(line.item)[0]
            for line in context.history(since=context.year.mornings[0])
            if line.mark in WOBBLES and not line.rough
        )
        best = max(sorted(settled), key=lambda skill: wobbles[skill])
        time = " after taking its time" if wobbles[best] else ""
        return f"One thing that settled{time}: {_title(best)}."
    items = (item for item in context.curriculum().items if not item.own)
    easy = [item for item in items if known.of(item.id).mark is Mark.FLUENT]
    if easy:
        return f"One thing that comes easily now: {_title(max(easy, key=lambda item: item.level).skill)}."
    return "You sat down together and talked math."


def _title(skill: str) -> str:
    return skills.SKILLS[skill].title.lower()
