from collections.abc import Iterator

from tests import skill_index
from warmup import skills
from warmup.model import Item, ItemId, LevelId, Plan, item_id, level_id
from warmup.skills import SKILLS


def _from_the_files(plan: Plan) -> Iterator[Item]:
    """The items as the skills' own files have them."""
    for skill in SKILLS.values():
        for number, level in enumerate(skill.levels, start=1):
            for name in level.items:
                yield Item(
                    id=item_id(skill.id, name),
                    skill=skill.id,
                    level=number,
                    level_id=level_id(skill.id, level.key),
                    strand=skill.strand.value,
                    week=plan.weeks[level_id(skill.id, level.key)],
                    misconception=name in level.misconceptions,
                    stands_on=tuple(map(LevelId, level.stands_on)),
                    guess=level.guess_of(name),
                    seconds=level.seconds_of(name),
                    ladder=level.key in skill.ladder,
                    hands=bool(level.table),
                    ends=name in level.ends,
                    codes=level.codes,
                    waits_on=tuple(map(ItemId, level.waits_on)),
                )


def test_the_index_is_made_of_the_skills_as_they_are() -> None:
    assert skill_index.FILE.read_text("utf-8") == skill_index.text(), (
        "a skill changed: python -m tests.skill_index"
    )


def test_what_a_new_skill_lacks_is_said_by_name() -> None:
    assert list(skill_index.lacking(SKILLS.values())) == list(skill_index.slips()) == []
    level = SKILLS["by-twos"].levels[0]._replace(stands_on=("count:to-10",), waits_on=("count/ten-teen",))
    assert list(skill_index.lacking([SKILLS["by-twos"]._replace(id="by-nines", levels=(level,))])) == [
        "tests/oracles/by_nines.py: there is no such file yet",
        "by-nines:to-20 stands on count:to-10, and no skill has that",
        "by-nines:to-20 waits on count/ten-teen, and no skill has that",
    ]


def test_the_items_are_those_of_the_skills() -> None:
    levels = [level_id(skill.id, level.key) for skill in SKILLS.values() for level in skill.levels]
    plan = Plan({level: 1 + at % 36 for at, level in enumerate(levels)}, ((36, 5),))
    assert skills.items(plan) == tuple(_from_the_files(plan))
    assert skills.levels() == tuple(levels)
