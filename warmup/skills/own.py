"""own: what a family wrote itself, in own.toml. The registry has no such skill: it is made of the file.

Its words are the family's alone: an address, a birthday, a rhyme. The skill is ``private``: whatever is
handed on to others, such as a report, leaves it out.
"""

import re
import unicodedata
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from warmup.model import OWN_SKILL, Cue, Item, LevelId, Morning, Strand, item_id, level_id
from warmup.randomness import Phrasing, SeededRandom
from warmup.skills.base import Draft, Level, Skill

LONGEST_NAME = 40
"""The longest name of an own prompt, in characters."""
SECONDS = 20
CUES = (
    "Say it again, slowly. Count to five in your head.",
    "Let the child say the question back to you.",
    "Say only the first sound of the answer. The child goes on.",
)
"""What helps with any question: what a family wrote comes first, and these fill up what is left of three."""


class OwnPrompt(NamedTuple):
    """One table of own.toml: ``name`` is the item's and the level's, ``week`` the first it may be asked in.

    ``cues`` holds at most three. What the family left out is empty.
    """

    name: str
    say: str
    answer: str
    cues: tuple[str, ...] = ()
    strand: Strand = Strand.COUNTING
    week: int = 1
    watch_for: str = ""
    table: str = ""
    accept: tuple[str, ...] = ()


class Own(NamedTuple):
    """What a family's own prompts are to the rest: a skill, its items, and the week of each level."""

    skill: Skill
    items: tuple[Item, ...]
    weeks: Mapping[LevelId, int]


def own(prompts: Sequence[OwnPrompt]) -> Own:
    """The skill of these prompts, each a level with one item. Their names differ."""
    weeks = {level_id(OWN_SKILL, prompt.name): prompt.week for prompt in prompts}
    return Own(skill(prompts), tuple(map(_item, prompts)), weeks)


def skill(prompts: Sequence[OwnPrompt] = ()) -> Skill:
    """The skill alone. Its ``ask`` gives the words as they stand, and KeyError for a prompt it has not."""
    by_name = {prompt.name: prompt for prompt in prompts}

    def ask(item: str, _morning: Morning, _rng: SeededRandom) -> Draft:
        return _draft(by_name[item])

    return Skill(
        id=OWN_SKILL,
        title="Your own",
        asks="what you wrote yourselves",
        strand=Strand.COUNTING,
        levels=tuple(level(prompt.name, prompt.table) for prompt in prompts),
        ask=ask,
        private=True,
    )


def level(name: str, table: str = "") -> Level:
    """The level of the prompt of this name; its label is the name in words."""
    return Level(name, name.replace("-", " "), (name,), seconds=SECONDS, table=table)


def _item(prompt: OwnPrompt) -> Item:
    return Item(
        id=item_id(OWN_SKILL, prompt.name),
        skill=OWN_SKILL,
        # None of them is a step to another.
        level=1,
        level_id=level_id(OWN_SKILL, prompt.name),
        strand=prompt.strand.value,
        week=prompt.week,
        seconds=SECONDS,
        hands=bool(prompt.table),
    )


def _draft(prompt: OwnPrompt) -> Draft:
    first, second, third = (Cue(text) for text in (*prompt.cues, *CUES[len(prompt.cues) :]))
    return Draft(
        say=Phrasing("a", prompt.say),
        answer=prompt.answer,
        accept=prompt.accept,
        working="",
        cues=(first, second, third),
        watch_for=prompt.watch_for,
        table=prompt.table,
        given={"name": prompt.name},
    )


# -- names


def name_from(text: str) -> str:
    """A name made from words: letters and digits with hyphens between; empty where there are none."""
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", text).casefold())
    kept = "".join(c if c.isalnum() or unicodedata.category(c)[0] == "M" else "-" for c in folded)
    name = re.sub(r"-+", "-", kept).strip("-")
    if len(name) > LONGEST_NAME:
        # At the end of a word, unless one word is as long as that.
        name = name[: LONGEST_NAME + 1].rpartition("-")[0] or name[:LONGEST_NAME]
    return name


def is_name(name: str) -> bool:
    """Whether an own prompt may have this name."""
    return bool(name) and name_from(name) == name
