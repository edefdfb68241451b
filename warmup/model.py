"""The values that all rooms share: a morning, what can be asked, what was asked, how it went.

All are named tuples, since every start of the program makes these classes. A frozen dataclass with slots
takes about seven times as long to make (3.5 ms against 0.5 for six fields, Python 3.11); for the classes
loaded before the first frame, measured, that came to 27 ms. Elsewhere a frozen dataclass is as good.
"""

import datetime as dt
from collections.abc import Mapping
from enum import Enum
from typing import Any, NamedTuple, NewType

from warmup.pictures import Picture

ItemId = NewType("ItemId", str)
"""The id of an item, ``skill/name``: made by :func:`item_id`, or read from a file."""
LevelId = NewType("LevelId", str)
"""The id of a level, ``skill:key``: made by :func:`level_id`, or read from a file."""


def item_id(skill: str, name: str) -> ItemId:
    """The id of the item ``name`` of a skill."""
    return ItemId(f"{skill}/{name}")


def level_id(skill: str, key: str) -> LevelId:
    """The id of the level ``key`` of a skill."""
    return LevelId(f"{skill}:{key}")


def skill_and_name(item: ItemId) -> tuple[str, str]:
    """The skill of an item, and its name within the skill."""
    skill, _, name = item.partition("/")
    return skill, name


OWN_SKILL = "own"
"""The skill of what a family wrote itself: reserved, so that none that comes along is called so."""


def is_own(name: str) -> bool:
    """Whether an item or a level is one that a family wrote itself."""
    return name.startswith((item_id(OWN_SKILL, ""), level_id(OWN_SKILL, "")))


def skill_and_key(level: LevelId) -> tuple[str, str]:
    """The skill of a level, and its key within the skill."""
    skill, _, key = level.partition(":")
    return skill, key


class DayKind(Enum):
    """What a date is in the school year."""

    SCHOOL = "school day"
    BEFORE = "before the first day"
    AFTER = "after the last day"
    WEEKEND = "no school day of the week"
    DAY_OFF = "day off"


class Countdown(NamedTuple):
    """A day that matters to the child: its name as it is said ("the lake") and its date."""

    name: str
    day: dt.date


class Morning(NamedTuple):
    """One date in one family's school year.

    ``school_day`` is the number of this school day; on any other date that of the last one before it
    (0 before the first). ``week`` is 1 to 36 and ``quarter`` 1 to 4, also outside the year (getting
    ready counts as week 1, keeping warm as week 36). ``index`` is the place of this morning among the
    planned ones, counted from 0 at the year's first; memory measures time in it. ``previous`` and
    ``next`` are the school mornings either side. ``countdowns`` lie after ``date``, nearest first;
    ``festive`` names the days that matter and fall on it. ``animal`` is what the family calls the stuffed
    animal that takes part in a few prompts.
    """

    date: dt.date
    kind: DayKind
    school_day: int
    week: int
    quarter: int
    review: bool
    index: int  # type: ignore[assignment]  # a tuple's own "index" is not wanted here
    mornings_a_week: int = 4
    previous: dt.date | None = None
    next: dt.date | None = None
    countdowns: tuple[Countdown, ...] = ()
    festive: tuple[str, ...] = ()
    pennies: bool = True
    animal: str = "Bear"

    @property
    def is_school(self) -> bool:
        """Whether this date is a school day."""
        return self.kind is DayKind.SCHOOL


class Strand(Enum):
    """The seven strands of the year."""

    CALENDAR = "calendar"
    COUNTING = "counting"
    NUMBER = "number"
    ADDING = "adding"
    SHAPE = "shape and space"
    TIME_MONEY = "time and money"
    MEASURING = "measuring and sorting"


class Item(NamedTuple):
    """The smallest thing a child can know or stumble on, as the engine sees it.

    ``id`` is ``skill/name``; ``level`` counts from 1 within the skill and ``level_id`` names it as
    ``skill:key``; ``week`` is the earliest it may be asked; ``stands_on`` names other levels by their
    ``level_id`` and ``waits_on`` misconceptions by their ids: none of them may be shaky. ``codes`` are those
    its level exercises. ``guess`` is the chance of a lucky answer; ``seconds`` is 20, 40, 60 or 120. On a
    ``ladder`` what comes easily high up retires the rungs below. ``hands`` says that it wants things on the
    table, ``ends`` that it is quick and light enough to end a morning.
    """

    id: ItemId
    skill: str
    level: int
    level_id: LevelId
    strand: str
    week: int
    misconception: bool = False
    stands_on: tuple[LevelId, ...] = ()
    guess: float = 0.0
    seconds: int = 40
    ladder: bool = False
    hands: bool = False
    ends: bool = False
    codes: tuple[str, ...] = ()
    waits_on: tuple[ItemId, ...] = ()

    @property
    def own(self) -> bool:
        """Whether a family wrote it itself."""
        return self.skill == OWN_SKILL

    @property
    def kindergarten(self) -> bool:
        """Whether its level has a kindergarten code."""
        return any(code.startswith("K.") for code in self.codes)

    @property
    def places(self) -> int:
        """How many prompts of a morning it counts as: the whole count takes two minutes, so it is two."""
        return 2 if self.seconds > 60 else 1


class Cue(NamedTuple):
    """One rung of help: what the adult says or does, and the picture it may bring in."""

    text: str
    picture: Picture | None = None


class Prompt(NamedTuple):
    """One thing to ask, whole: everything the adult needs and everything its answer came from.

    ``given`` holds the numbers and names it was built from, so that anyone can compute the answer again.
    ``wording`` is the key of the way it is said. ``why`` is filled in once the prompt is chosen. ``do`` is
    what the adult does before speaking ("Show it, count to two, cover it."); empty when there is nothing.
    """

    skill: str
    level: str
    item: ItemId
    say: str
    wording: str
    answer: str
    accept: tuple[str, ...]
    working: str
    cues: tuple[Cue, Cue, Cue]
    watch_for: str
    table: str
    seconds: int
    guess: float
    given: Mapping[str, Any]
    picture: Picture | None = None
    why: str = ""
    do: str = ""

    @property
    def level_id(self) -> LevelId:
        """The id of its level."""
        return level_id(self.skill, self.level)

    @property
    def flashed(self) -> bool:
        """Whether its picture is shown for a moment and then covered."""
        return self.do.casefold().endswith("cover it.")

    def picture_after(self, cues: int) -> Picture | None:
        """The picture with so many cues shown: the last model that came in, else the question's own."""
        brought_in = [cue.picture for cue in self.cues[:cues] if cue.picture]
        return brought_in[-1] if brought_in else self.picture


class Mark(Enum):
    """How a prompt went."""

    FLUENT = "fluent"
    HESITATED = "hesitated"
    NOT_YET = "not_yet"
    SKIPPED = "skipped"


WOBBLES = (Mark.NOT_YET, Mark.HESITATED)
"""The marks that say that an item wobbled, the graver first."""


class Asked(NamedTuple):
    """One line of what happened: an item shown on a date, and its mark (None: unmarked).

    ``cue`` is the number of the last cue used, 0 for none. ``rough`` says the whole morning was a
    rough day; ``from_memory`` that the mark was entered later.
    """

    date: dt.date
    item: ItemId
    mark: Mark | None
    cue: int = 0
    rough: bool = False
    from_memory: bool = False
    wording: str = ""

    @property
    def marked(self) -> bool:
        """Whether it has a mark that says how it went: it was not left that day."""
        return self.mark is not None and self.mark is not Mark.SKIPPED


class SlotKind(Enum):
    """What a slot of a morning is for."""

    CALENDAR = "calendar"
    COUNTING = "counting"
    ADDING = "adding"
    WOBBLED = "wobbled"
    NEWEST = "newest"
    OLDER = "older"
    CHECK = "check"
    SURE = "sure"
    NAMED = "named"


class Slot(NamedTuple):
    """A part of a morning: at most ``most`` prompts of one kind.

    ``only`` holds the skills or levels of a slot that is ``NAMED``; of any other kind it is empty.
    """

    kind: SlotKind
    most: int
    only: tuple[str, ...] = ()


FEWEST_PROMPTS, MOST_PROMPTS = 4, 10
"""How many prompts a morning may aim at, by the year plan or by the family."""
SECONDS = 480
"""The ceiling of a morning that says none, in seconds: eight minutes with cues, hands, marks and close."""


def _in_week(counts: tuple[tuple[int, int], ...], week: int) -> int:
    """The number of the first stretch that ``week`` falls in; after the last stretch its number holds on."""
    return next((number for last, number in counts if week <= last), counts[-1][1])


class Shape(NamedTuple):
    """What a routine file says: the slots in their order, and the ceiling in seconds.

    ``prompts`` holds (last week, number) pairs in order of weeks in a file that counts for itself, and is
    empty where the year plan says how many prompts a morning has; ``at_most`` is the most prompts of this
    shape, 0 for no such limit.
    """

    name: str
    slots: tuple[Slot, ...]
    prompts: tuple[tuple[int, int], ...] = ()
    seconds: int = SECONDS
    at_most: int = 0

    def prompts_in(self, week: int) -> int | None:
        """How many prompts a morning of this week aims at; None where the shape does not say."""
        return _in_week(self.prompts, week) if self.prompts else None


class Plan(NamedTuple):
    """The year plan: the earliest week of each level, by its id, and the weeks that open none.

    ``prompts`` holds, in order of weeks and at least once, a last week and how many prompts a morning has up
    to it. ``reviews`` are the review weeks in their order; from ``nothing_new_from`` on no level opens.
    """

    weeks: Mapping[LevelId, int]
    prompts: tuple[tuple[int, int], ...]
    reviews: tuple[int, ...] = ()
    nothing_new_from: int = 36

    def prompts_in(self, week: int) -> int:
        """How many prompts a morning of this week aims at."""
        return _in_week(self.prompts, week)


class Choice(NamedTuple):
    """One item chosen for a morning, why (for the adult), and what it was chosen for."""

    item: Item
    why: str
    slot: SlotKind
    hard: bool


class Opening(NamedTuple):
    """What a morning begins with: one fact of its date, said whole, that asks nothing.

    ``say`` is one sentence or two, ``table`` what they speak of and would like at hand. ``job`` is one more
    sentence, for the adult: what a toddler at the table may do meanwhile. It is empty on most mornings.
    """

    say: str
    table: str = ""
    job: str = ""


class Routine(NamedTuple):
    """The sequence for one child and date; ``opening`` comes before its prompts, where there is one."""

    child: str
    morning: Morning
    shape: str
    prompts: tuple[Prompt, ...]
    opening: Opening | None = None
