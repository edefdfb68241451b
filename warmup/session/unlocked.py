"""The levels that may be asked by now: what this quarter has unlocked and what has come besides."""

from typing import NamedTuple

from warmup import skills
from warmup.model import LevelId, Morning, Plan, level_id
from warmup.schoolyear import WEEKS_A_QUARTER
from warmup.session.context import Context

_LEFT_OUT = 99
"""Stands for the week of a level that the plan leaves out."""


class Unlocked(NamedTuple):
    """A level: what its skill and itself are called, its week, and how it stands with the child.

    ``fresh`` is one that may be asked and of which nothing was ever on screen.
    """

    level: LevelId
    title: str
    label: str
    week: int
    held: bool
    fresh: bool


def unlocked_levels(context: Context, morning: Morning) -> list[Unlocked]:
    """What the quarter has unlocked up to this week, by skill, and what is held or opened early.

    A level of which something has a mark stays open where its week is a later one by now: it is there too.
    """
    plan, child, known = context.plan, context.child, context.knowledge()
    items = context.curriculum().items
    begun = {item.level_id for item in items if item.week > morning.week and known.of(item.id).marks}
    early = {level for level in child.opened if level in plan.weeks}
    there = unlocked(plan, morning).union(child.held, early, begun)
    open_now = {item.level_id for item in context.eligible(morning).items}
    shown = {item.level_id for item in items if known.of(item.id).shown}
    return [
        Unlocked(
            ref,
            skill.title,
            level.label,
            plan.weeks.get(ref, _LEFT_OUT),
            held=ref in child.held,
            fresh=ref in open_now and ref not in shown,
        )
        for skill in (*skills.SKILLS.values(), *([context.own.skill] if context.own else []))
        for level in skill.levels
        if (ref := level_id(skill.id, level.key)) in there
    ]


def unlocked(plan: Plan, morning: Morning) -> frozenset[LevelId]:
    """The levels that this quarter has unlocked up to this week."""
    return frozenset(
        level
        for level, week in plan.weeks.items()
        if (week - 1) // WEEKS_A_QUARTER + 1 == morning.quarter and week <= morning.week
    )
