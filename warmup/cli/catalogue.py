"""All that can be asked: skills, strands, levels, items, codes, weeks, what each level stands on.

``warmup catalogue --json`` holds ``format`` ("warmup-catalogue"), ``version`` (1), ``skills`` and ``items``.
A skill has ``id``, ``title``, ``asks``, ``strand``, ``ladder`` and ``levels``; a level ``key``, ``label``,
``week`` (null when the plan leaves it out), ``codes``, ``toward`` (codes it only leads to), ``stands_on``,
``table`` and ``items``. The list of all items gives each as the engine sees it: ``id``, ``skill``, ``level``
(a number from 1), ``strand``, ``week``, ``trouble`` (whether it is a misconception item), ``guess`` and
``seconds``.
"""

from collections.abc import Iterator
from typing import Any

from warmup import skills
from warmup.model import Plan, item_id, level_id
from warmup.skills import Skill

FORMAT = "warmup-catalogue"
VERSION = 1


def catalogue_data(plan: Plan) -> dict[str, Any]:
    """The catalogue as JSON values, with every item in one list as the engine sees it."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "skills": [_skill_data(skill, plan) for skill in skills.SKILLS.values()],
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
            for item in skills.items(plan)
        ],
    }


def _skill_data(skill: Skill, plan: Plan) -> dict[str, Any]:
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
                "week": plan.weeks.get(level_id(skill.id, level.key)),
                "codes": list(level.codes),
                "toward": list(level.toward),
                "stands_on": list(level.stands_on),
                "table": level.table,
                "items": [item_id(skill.id, name) for name in level.items],
            }
            for level in skill.levels
        ],
    }


def catalogue_lines(plan: Plan) -> Iterator[str]:
    """The catalogue as plain text: a skill after another, strand by strand, a level a line."""
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
