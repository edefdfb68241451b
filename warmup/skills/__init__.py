"""What can be asked: a skill a file, found by itself, and one registry.

Put a module with a ``SKILL`` in this folder and its levels in ``routines/year.toml``, and everything
that walks the skills finds it. Its id is the name of its file, with hyphens: ``SKILLS["count-on"]`` loads
``count_on.py`` at the first use, since a morning that goes on asks for eight of them, and loading all would
stand between the adult and the first frame. What a family wrote itself is handed in: of that skill the
registry knows the words for a name, and nothing else.
"""

from collections.abc import Iterator, Mapping
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import NamedTuple

from warmup.model import (
    OWN_SKILL,
    Item,
    ItemId,
    LevelId,
    Morning,
    Plan,
    Prompt,
    item_id,
    level_id,
    skill_and_key,
    skill_and_name,
)
from warmup.randomness import SeededRandom
from warmup.skills import _index
from warmup.skills.base import Draft, Level, Skill

__all__ = [
    "SKILLS",
    "Draft",
    "Level",
    "Location",
    "Skill",
    "askable",
    "below",
    "item_names",
    "items",
    "levels",
    "locate",
    "prompt",
    "strand_of",
    "timely",
]


@cache
def _modules() -> Mapping[str, str]:
    """The module of each skill by the skill's id, in the order of file names."""
    modules = sorted(file.stem for file in Path(__file__).parent.iterdir() if file.suffix == ".py")
    return {
        name.replace("_", "-"): name for name in modules if name not in ("base", OWN_SKILL) and name[0] != "_"
    }


class _Skills(Mapping[str, Skill]):
    """The registry: knows every id, and loads a skill when it is asked for."""

    def __init__(self) -> None:
        self._loaded: dict[str, Skill] = {}

    def __getitem__(self, skill: str) -> Skill:
        if skill not in self._loaded:
            self._loaded[skill] = import_module(f"{__name__}.{_modules()[skill]}").SKILL
        return self._loaded[skill]

    def __contains__(self, skill: object) -> bool:
        return skill in _modules()

    def __iter__(self) -> Iterator[str]:
        return iter(_modules())

    def __len__(self) -> int:
        return len(_modules())


SKILLS: Mapping[str, Skill] = _Skills()
"""Every skill by its id, in the order of file names."""


class Location(NamedTuple):
    """Where an item stands: its skill, its level, the level's number from 1, and its name in the skill."""

    skill: Skill
    level: Level
    number: int
    name: str

    @property
    def id(self) -> ItemId:
        """The id of the item."""
        return item_id(self.skill.id, self.name)

    @property
    def level_id(self) -> LevelId:
        """The id of its level."""
        return level_id(self.skill.id, self.level.key)

    def words(self) -> str:
        """A few words for the adult: "make ten, all"; an item that is not the plain one is named behind."""
        plain = self.name == self.level.variants[0]
        return f"{self.skill.title.lower()}, {self.level.label}{'' if plain else f' ({self.name})'}"


@cache
def _locations(skill: str) -> Mapping[ItemId, Location]:
    """Where each item of a skill stands."""
    found = SKILLS[skill]
    return {
        item_id(skill, name): Location(found, level, number, name)
        for number, level in enumerate(found.levels, start=1)
        for name in level.items
    }


def locate(item: str) -> Location:
    """Where the item with this id stands; an own one by its name alone. KeyError for one no skill has."""
    skill, name = skill_and_name(ItemId(item))
    return _own_location(name) if skill == OWN_SKILL else _locations(skill)[ItemId(item)]


def plain(level: LevelId) -> Location:
    """Where the plain item of a level stands, also of an own one. KeyError for a level that no skill has."""
    skill, key = skill_and_key(level)
    if skill == OWN_SKILL:
        return _own_location(key)
    for at in _locations(skill).values():
        if at.level.key == key:
            return at
    raise KeyError(level)


def _own_location(name: str) -> Location:
    """Where an own item stands, whether it still is in the family's file or not."""
    from warmup.skills import own  # few families have any

    if not own.is_name(name):
        raise KeyError(item_id(OWN_SKILL, name))
    return Location(own.skill(), own.level(name), 1, name)


def known(item: str) -> bool:
    """Whether there is such an item, or an own one may be called so; a journal may be another version's."""
    skill, name = skill_and_name(ItemId(item))
    if skill == OWN_SKILL:
        from warmup.skills.own import is_name  # few families have any

        return is_name(name)
    return skill in SKILLS and item in _locations(skill)


def item_names() -> tuple[ItemId, ...]:
    """Every item."""
    return tuple(item for skill in SKILLS for item in _locations(skill))


def levels() -> tuple[LevelId, ...]:
    """Every level, a skill after another, lowest first."""
    return tuple(map(LevelId, _index.LEVELS))


def strand_of(level: LevelId) -> str:
    """The strand of a level. KeyError for one that no skill has."""
    return str(_index.LEVELS[level][1])


def below(level: LevelId) -> tuple[LevelId, ...]:
    """The level before it in its skill, then those it stands on. KeyError for one that no skill has."""
    skill, _ = skill_and_key(level)
    number, _, stands_on, *_ = _index.LEVELS[level]
    before = (each for each in levels() if skill_and_key(each)[0] == skill)
    lower = (each for each in before if _index.LEVELS[each][0] == number - 1)
    return tuple(dict.fromkeys((*lower, *map(LevelId, stands_on))))


def items(plan: Plan) -> tuple[Item, ...]:
    """Every item of every level the plan names, as the engine sees them."""
    return tuple(
        item for level in levels() if (week := plan.weeks.get(level)) for item in _items(level, week)
    )


def _items(level: LevelId, week: int) -> Iterator[Item]:
    skill, _ = skill_and_key(level)
    number, strand, stands_on, waits_on, codes, ladder, hands, rows = _index.LEVELS[level]
    for name, misconception, guess, seconds, ends in rows:
        yield Item(
            id=item_id(skill, name),
            skill=skill,
            level=number,
            level_id=level,
            misconception=misconception,
            strand=strand,
            week=week,
            stands_on=stands_on,
            guess=guess,
            seconds=seconds,
            ladder=ladder,
            hands=hands,
            ends=ends,
            codes=codes,
            waits_on=waits_on,
        )


def askable(item: str, morning: Morning) -> bool:
    """Whether the item makes sense on this morning (a count of tens only once there are ten straws)."""
    condition = _index.ASKABLE.get(item)
    return condition is None or condition(morning)


def timely(item: str, morning: Morning) -> bool:
    """Whether the day itself asks for the item: the hundredth school day, a birthday, a new month."""
    condition = _index.TIMELY.get(item)
    return condition is not None and condition(morning)


def prompt(item: str, morning: Morning, rng: SeededRandom, why: str = "", own: Skill | None = None) -> Prompt:
    """The item with this id as a whole prompt for this morning. KeyError for an unknown item.

    ``own`` is the skill of what the family wrote itself, where it wrote something.
    """
    at = locate(item)
    asked = own if own and at.skill.id == OWN_SKILL else at.skill
    draft = asked.ask(at.name, morning, rng)
    return Prompt(
        skill=at.skill.id,
        level=at.level.key,
        item=at.id,
        say=draft.say.text,
        wording=draft.say.key,
        answer=draft.answer,
        accept=draft.accept,
        working=draft.working,
        cues=draft.cues,
        watch_for=draft.watch_for,
        table=at.level.table if draft.table is None else draft.table,
        seconds=at.level.seconds_of(at.name) if draft.seconds is None else draft.seconds,
        guess=at.level.guess_of(at.name) if draft.guess is None else draft.guess,
        given=draft.given,
        picture=draft.picture,
        why=why,
        do=draft.do,
    )
