"""A practice round: five prompts of one level, apart from mornings. It changes nothing that memory knows.

Its prompts are drawn by the date and by how many rounds that date had before: the items of the level come in
turn, its misconception items among them. Each mark is in the journal before the next prompt is on screen.
"""

from collections.abc import Iterable, Iterator, Sequence

from warmup import skills
from warmup.engine import eligibility
from warmup.engine.eligibility import rests
from warmup.journal.journal import Journal
from warmup.journal.practice import PracticeRow
from warmup.model import Item, LevelId, Mark, Prompt
from warmup.randomness import SeededRandom
from warmup.session.context import Context
from warmup.session.pausing import paused
from warmup.session.practiced import FIVE
from warmup.session.summary import level_label

DONE = "That is all. Thank you both for the time."
APART = "It is kept as practice, apart from mornings."
WHY = "practice of {}; no morning counts it"
NO_SUCH_LEVEL = "The year plan has no such step."
HELD = "It is held back as not taught yet. The list of what may be asked (‹unlocked›) lets it come."
RESTS = "It rests until you say it was taught again. Do it together at the table first."
NOTHING_NEW = "It isn’t taught yet, and nothing new opens just now."
STANDS_ON = "It isn’t taught yet. What it stands on comes first."
NOT_TODAY = "Nothing of it can be asked today."
NOT_HERE = "This house does not have what it wants."
_TRIES = 16
"""How often an item is drawn anew for other words or another answer."""


class PracticeRound:
    """A round under way; the same things stand on its page as on that of a session.

    ``position`` is the prompt on screen, from 0, and ``len(prompts)`` when all are behind.
    """

    rough = at_opening = offers_stop = False

    def __init__(self, context: Context, journal: Journal, level: LevelId) -> None:
        """Draw it; nothing is kept before the first mark. ValueError for a level that can't be practiced."""
        if reason := why_not(context, level):
            raise ValueError(reason)
        self.context, self.journal, self.level = context, journal, level
        self.morning = context.morning()
        self._child, self._date = context.child.journal_name, context.today
        self._started, number = journal.new_round(self._child, self._date)
        self.prompts = draw(context, level, number)
        self.position = self._furthest = 0
        self._cues: dict[int, int] = {}
        self._marks: dict[int, PracticeRow] = {}
        self._before: list[tuple[int, Mark | None]] = []

    @property
    def prompt(self) -> Prompt | None:
        """The prompt on screen; None when all are behind."""
        return self.prompts[self.position] if self.position < len(self.prompts) else None

    @property
    def cue(self) -> int:
        """How many cues of this prompt are shown, 0 to 3."""
        return self._cues.get(self.position, 0)

    def mark_at(self, position: int) -> Mark | None:
        """The mark of a prompt, None while it has none."""
        row = self._marks.get(position)
        return row.mark if row else None

    def mark(self, mark: Mark) -> None:
        """Mark the prompt on screen and go on."""
        if self.prompt is not None:
            self._before.append((self.position, self.mark_at(self.position)))
            self._put(self.position, mark)
            self.next()

    def next(self) -> None:
        """Go on without a mark."""
        self.position = min(self.position + 1, len(self.prompts))
        self._furthest = max(self._furthest, self.position)

    def back(self) -> None:
        """Go back one prompt."""
        self.position = max(0, self.position - 1)

    def go_to(self, position: int) -> None:
        """Go to a prompt that was shown."""
        if 0 <= position <= min(self._furthest, len(self.prompts) - 1):
            self.position = position

    def next_cue(self) -> None:
        """Show one more cue."""
        if self.prompt is not None:
            self._cues[self.position] = min(3, self.cue + 1)

    def undo(self) -> bool:
        """Take back the last mark and stand at its prompt again; False when there is none."""
        if not self._before:
            return False
        self.position, was = self._before.pop()
        self._put(self.position, was)
        return True

    def _put(self, at: int, mark: Mark | None) -> None:
        """Keep a mark, or that there is none any more, a moment after the one it takes the place of."""
        prompt, there = self.prompts[at], self._marks.get(at)
        row = PracticeRow(
            self._child,
            self._date.isoformat(),
            self._started,
            at,
            prompt.item,
            prompt.wording,
            mark,
            self._cues.get(at, 0),
            self.context.adult,
            there.at if there else "",
        )
        self._marks[at] = self.journal.practice(row)


# -- what may be practiced


def why_not(context: Context, level: LevelId) -> str:
    """Why a level can't be practiced now, in a sentence or two; empty where it can."""
    items = [item for item in context.curriculum().items if item.level_id == level]
    if not items:
        return NO_SUCH_LEVEL
    if level in context.child.held:
        return HELD
    if _askable(context, items) and draw(context, level, 1):
        return ""
    known, taught = context.knowledge(), dict(context.child.taught)
    if all(rests(known.of(item.id), taught.get(item.id)) for item in items):
        return RESTS
    if _open(context, level):
        return NOT_HERE if any(skills.askable(item.id, context.morning()) for item in items) else NOT_TODAY
    week = items[0].week
    if week > context.morning().week:
        return f"It isn’t taught yet. It opens in week {week}."
    return NOTHING_NEW if paused(context) else STANDS_ON


def _open(context: Context, level: LevelId) -> list[Item]:
    """The items of a level that are open, or were met already, and do not rest."""
    found = eligibility.open_items(
        context.curriculum(), context.morning(), context.knowledge(), context.adjustments
    )
    return [item for item in found if item.level_id == level]


def _askable(context: Context, items: Sequence[Item]) -> list[Item]:
    """Those of a level's items that make sense today, in this house."""
    morning = context.morning()
    able = [item for item in _open(context, items[0].level_id) if skills.askable(item.id, morning)]
    return list(eligibility.at_home(able, morning, context.household))


def levels_of(context: Context, skill: str) -> list[LevelId]:
    """The levels of a skill that the plan has, lowest first."""
    return list(dict.fromkeys(item.level_id for item in context.curriculum().items if item.skill == skill))


# -- what is asked


def draw(context: Context, level: LevelId, number: int) -> tuple[Prompt, ...]:
    """The prompts of the round with this number, from 1: the same on every machine.

    No two have the same words, and no two running the same answer, as far as the level has others. Each is as
    the house can have it; none where it can have none of the level.
    """
    items = _askable(context, [item for item in context.curriculum().items if item.level_id == level])
    found = list[Prompt]()
    for at in range(FIVE):
        turn = (at + number - 1) % len(items)
        in_turn = [*items[turn:], *items[:turn]]
        prompt = _freshest(_drawn(context, in_turn, number, at), found)
        found.extend([prompt] if prompt else [])
    return tuple(found)


def _drawn(context: Context, items: Sequence[Item], number: int, at: int) -> Iterator[Prompt]:
    """Prompts of these items, each drawn several times; only what this house can have."""
    morning, house = context.morning(), context.household
    for item in items:
        for again in range(_TRIES):
            seed = context.child.journal_name, morning.date.isoformat(), number, at, item.id, again
            why = WHY.format(level_label(item.level_id))
            rng = SeededRandom("practice", *seed)
            prompt: Prompt | None = skills.prompt(item.id, morning, rng, why, context.own_skill)
            if prompt and house:
                prompt = house.furnished(prompt)
            if prompt:
                yield prompt


def _freshest(drawn: Iterable[Prompt], before: Sequence[Prompt]) -> Prompt | None:
    """The first that repeats nothing; where there is none, the first of those that repeat least."""
    best: tuple[int, Prompt] | None = None
    for prompt in drawn:
        repeats = _repeats(prompt, before)
        if not repeats:
            return prompt
        if best is None or repeats < best[0]:
            best = repeats, prompt
    return best[1] if best else None


def _repeats(prompt: Prompt, before: Sequence[Prompt]) -> int:
    """How much of what was asked before comes again, from 0; the same words running are the most."""
    said = [each.say for each in before]
    if not before:
        return 0
    return 4 * (prompt.say == said[-1]) + 2 * (prompt.answer == before[-1].answer) + (prompt.say in said)


def title(level: LevelId) -> str:
    """What is practiced, in words."""
    label = level_label(level)
    return label[:1].upper() + label[1:]
