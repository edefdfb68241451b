"""All that can be asked: skills, strands, levels, items, codes, weeks, what each level stands on.

``warmup catalogue --json`` holds ``format`` ("warmup-catalogue"), ``version`` (1), ``skills`` and ``items``.
A skill has ``id``, ``title``, ``asks``, ``strand``, ``ladder`` and ``levels``; a level ``key``, ``label``,
``week`` (null when the plan leaves it out), ``codes``, ``toward`` (codes it only leads to), ``stands_on``,
``table`` and ``items``. The list of all items gives each as the engine sees it: ``id``, ``skill``, ``level``
(a number from 1), ``strand``, ``week``, ``trouble`` (whether it is a misconception item), ``guess`` and
``seconds``. What the family wrote itself comes last, where there is any: the skill ``own``, of which each
item has a strand of its own and no level is a step to another.
"""

from collections.abc import Iterator, Mapping
from typing import Any

from warmup import skills
from warmup.model import LevelId, Plan, item_id, level_id
from warmup.skills import Skill
from warmup.skills.own import Own

FORMAT = "warmup-catalogue"
VERSION = 1


def catalogue_data(plan: Plan, own: Own | None = None) -> dict[str, Any]:
    """The catalogue as JSON values, with every item in one list as the engine sees it."""
    weeks = {**plan.weeks, **(own.weeks if own else {})}
    every = (*skills.SKILLS.values(), *([own.skill] if own else []))
    return {
        "format": FORMAT,
        "version": VERSION,
        "skills": [_skill_data(skill, weeks) for skill in every],
        "items": [
            {
                "id": item.id,
                "skill": item.skill,
                "level": item.level,
                "strand": item.strand,
                "week": item.week,
                "trouble": item.misconception,
                "guess": item.guess,
                "seconds": item.seconds,
            }
            for item in (*skills.items(plan), *(own.items if own else ()))
        ],
    }


def _skill_data(skill: Skill, weeks: Mapping[LevelId, int]) -> dict[str, Any]:
    return {
        "id": skill.id,
        "title": skill.title,
        "asks": skill.asks,
        "strand": skill.strand.value,
        "ladder": list(skill.ladder),
        "levels": [
            {
                "key": level.key,
                "label": level.label,
                "week": weeks.get(level_id(skill.id, level.key)),
                "codes": list(level.codes),
                "toward": list(level.toward),
                "stands_on": list(level.stands_on),
                "table": level.table,
                "items": [item_id(skill.id, name) for name in level.items],
            }
            for level in skill.levels
        ],
    }


def catalogue_lines(plan: Plan, own: Own | None = None) -> Iterator[str]:
    """The catalogue as plain text: a skill after another, strand by strand, a level a line."""
    yield from _strands(plan)
    if own:
        yield "Your own prompts"
        yield f"  {own.skill.id}: {own.skill.asks}"
        for item, level in zip(own.items, own.skill.levels, strict=True):
            yield f"    {level.key}, week {item.week}: {item.strand}"


def _strands(plan: Plan) -> Iterator[str]:
    strand = ""
    for skill in sorted(skills.SKILLS.values(), key=lambda skill: skill.strand.value):
        if skill.strand.value != strand:
            strand = skill.strand.value
            yield f"Strand: {strand}"
        yield f"  {skill.id}: {skill.asks}"
        for number, level in enumerate(skill.levels, start=1):
            week = plan.weeks.get(level_id(skill.id, level.key))
            opens = f"week {week}" if week else "not in the plan"
            codes = f"; {', '.join(level.codes)}" if level.codes else ""
            codes += f"; toward {', '.join(level.toward)}" if level.toward else ""
            stands = f"; stands on {', '.join(level.stands_on)}" if level.stands_on else ""
            yield f"    {number}. {level.key}, {opens}: {level.label}{codes}{stands}"
            yield f"       items: {', '.join(level.items)}"
