"""Which level ``warmup practice`` means."""

from warmup.cli.printing import Refused
from warmup.model import LevelId
from warmup.session.context import Context
from warmup.session.practice import levels_of, title, why_not
from warmup.text import did_you_mean
from warmup.tui.actions import with_keys
from warmup.tui.hands import Hand


def level_named(context: Context, what: str) -> LevelId:
    """The level of "skill:level", or the last open one of "skill". Refused, with why, where there is none."""
    skill, _, key = what.partition(":")
    levels = levels_of(context, skill)
    if not levels:
        every = {item.skill for item in context.curriculum().items}
        raise Refused(f"no skill {skill!r}{did_you_mean(skill, every)}")
    named = [level for level in levels if not key or level == LevelId(what)]
    if not named:
        known = ", ".join(level.partition(":")[2] for level in levels)
        raise Refused(f"no level {key!r} in {skill}; there is {known}")
    reasons = {level: why_not(context, level) for level in named}
    able = [level for level in named if not reasons[level]]
    if not able:
        raise Refused(f"{title(named[0])}: {with_keys(reasons[named[0]], Hand.RIGHT)}")
    return able[-1]
