"""What is asked instead: a short morning goes on with another skill than the last."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

from tests.household import TODAY, context_at
from warmup import skills
from warmup.journal.routine_json import routine_text
from warmup.model import Routine
from warmup.randomness import SeededRandom
from warmup.session.session import resume

Clock = Callable[[], dt.datetime]


def test_a_short_morning_goes_on_with_another_skill_than_the_last(home: Path, clock: Clock) -> None:
    """Calendar talk comes first in a short morning, and it has just been asked."""
    context = context_at(home, clock)
    items = ("month/this", "count-on/within-20", "month/in-order", "numerals/to-10", "by-tens/to-50")
    morning = context.morning(TODAY)
    prompts = tuple(skills.prompt(item, morning, SeededRandom("short", item)) for item in items)
    text = routine_text(Routine("Bean", morning, "daily", prompts))
    assert context.journal is not None
    context.journal.start("Bean", TODAY, "daily", text, [(item, "a") for item in items])
    session = resume(context, context.journal, clock)
    assert session is not None and session.shorten()
    assert session.items[0] == "month/this" and session.items[-1] == "month/in-order"
    assert len(session.items) == 4
