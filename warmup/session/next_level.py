"""They know it already: the level after one of a skill, and what of it may be asked today."""

from typing import NamedTuple

from warmup import skills
from warmup.engine import eligibility
from warmup.engine.eligibility import Adjustments
from warmup.model import Item, LevelId, Morning, is_own, level_id, skill_and_key
from warmup.session.context import Context


class NextLevel(NamedTuple):
    """What comes after a level that is known.

    ``level`` is None after the last one of the skill in the plan. ``opens`` says that it has to be opened
    early. ``items`` may then be asked today, the plain one first; where there are none, ``lacking`` names
    the levels it waits for, if it waits for any.
    """

    level: LevelId | None = None
    opens: bool = False
    items: tuple[Item, ...] = ()
    lacking: tuple[LevelId, ...] = ()


def next_level(context: Context, morning: Morning, known: LevelId) -> NextLevel:
    """The level of the skill after the ``known`` one, as it stands on this morning.

    It opens early where all it stands on is open, and nothing of that is shaky or held. What a family wrote
    itself has no level after it.
    """
    if is_own(known):
        return NextLevel()
    skill, key = skill_and_key(known)
    levels = [level_id(skill, level.key) for level in skills.SKILLS[skill].levels]
    after = levels[levels.index(level_id(skill, key)) + 1 :]
    level = next((each for each in after if each in context.plan.weeks), None)
    if level is None:
        return NextLevel()
    said = context.adjustments
    opens = not _open(context, morning, level)
    lacking = tuple(each for each in _stands_on(level) if not _open(context, morning, each))
    if lacking:
        return NextLevel(level, lacking=lacking)
    able = _able(context, morning, level, said._replace(early=(*said.early, level)))
    if able:
        return NextLevel(level, opens, able)
    return NextLevel(level, lacking=waits_for(context, level))


def waits_for(context: Context, level: LevelId) -> tuple[LevelId, ...]:
    """What a level stands on that is shaky; what a family wrote itself stands on nothing."""
    shaky = eligibility.shaky(context.curriculum(), context.knowledge())
    return tuple(each for each in _stands_on(level) if each in shaky)


def _stands_on(level: LevelId) -> tuple[LevelId, ...]:
    return tuple(map(LevelId, skills.plain(level).level.stands_on))


def _open(context: Context, morning: Morning, level: LevelId) -> bool:
    """Whether its week has come, or it was opened early or begun."""
    week = context.plan.weeks.get(level)
    begun = any(context.knowledge().of(item.id).marks for item in _items(context, level))
    return (week is not None and week <= morning.week) or level in context.child.opened or begun


def _items(context: Context, level: LevelId) -> tuple[Item, ...]:
    return tuple(item for item in context.curriculum().items if item.level_id == level)


def _able(context: Context, morning: Morning, level: LevelId, adjustments: Adjustments) -> tuple[Item, ...]:
    """The items of the level that may be asked, in the order of the catalogue."""
    found = eligibility.eligible(context.curriculum(), morning, context.knowledge(), adjustments).items
    return tuple(item for item in _items(context, level) if item in found)
