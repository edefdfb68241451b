"""A two-minute game for what wobbled: which one, for whom, and what there is to say of it.

The same child has the same games in the same order all day; nothing is recorded of them.
"""

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from warmup.games import Game, Match, Play, matches, play
from warmup.model import WOBBLES, LevelId
from warmup.randomness import SeededRandom
from warmup.session.context import Context
from warmup.session.settling import year_so_far
from warmup.session.words import SMALL_THINGS, has_small_things

SAY = "Say"
"""The label of what is said to the child."""
TAKE_CARE = "Take care"
"""The label of a warning."""
NO_GAME = "No game fits this house and what was asked."
_A_WEEK = dt.timedelta(weeks=1)
_FEW = 6
"""So many of the newest levels are enough to find games for."""


class Suggestion(NamedTuple):
    """A game to play now: for which level, and how it is played today."""

    game: Game
    level: LevelId
    play: Play

    @property
    def small_things(self) -> bool:
        """Whether something it needs is small enough to choke on."""
        return has_small_things(*self.needs)

    @property
    def needs(self) -> tuple[str, ...]:
        """What it needs, by the names of things."""
        return self.game.things(self.level)


def wobbled_today(context: Context) -> tuple[LevelId, ...]:
    """The levels with a wobble today: not yet before hesitated, then in the order they were asked."""
    return _wobbled(context, context.today)


def suggestion(context: Context, nth: int = 0, skill: str = "") -> Suggestion | None:
    """The game of today, or the ``nth`` other one; of one ``skill`` where that is named.

    It is for what wobbled today, else for what wobbled last, else for what opened last. None where no game
    fits. After the last game the first one comes again, with other numbers.
    """
    for levels in _levels(context, skill):
        if listed := _matches(context, levels, context.today):
            return _suggested(context, listed[nth % len(listed)], context.today, nth)
    return None


def _suggested(context: Context, match: Match, day: dt.date, *seed: int) -> Suggestion:
    """The game of a match as it is played by this child on that day."""
    made = play(match, context.morning(), context.child.journal_name, day, *seed)
    return Suggestion(match.game, match.level, made)


def for_that(context: Context) -> str:
    """The name of a game for what wobbled today; empty where nothing did, or no game fits."""
    listed = _matches(context, wobbled_today(context), context.today)
    return listed[0].game.name if listed else ""


def for_whom(contexts: Sequence[Context]) -> Context:
    """Of several children the first one with a game for what wobbled today, else the first."""
    return next((each for each in contexts if for_that(each)), contexts[0])


def week_games(context: Context, most: int = 4) -> tuple[Suggestion, ...]:
    """Some games for this week, no game twice: first for what wobbled in the last seven days."""
    monday = context.today - dt.timedelta(context.today.weekday())
    recent = _wobbled(context, context.today - _A_WEEK)
    chosen: dict[str, Match] = {}
    levels = (level for some in _levels(context, "") for level in some)
    for level in dict.fromkeys((*recent, *levels)):
        own = [each for each in _matches(context, [level], monday) if each.game.id not in chosen]
        if own and len(chosen) < most:
            chosen[own[0].game.id] = own[0]
    return tuple(_suggested(context, each, monday) for each in chosen.values())


def told(found: Suggestion) -> Iterator[tuple[str, str]]:
    """All there is to say of a game, as a label and a sentence each."""
    from warmup.session.summary import level_label

    made = found.play
    yield "For", f"{level_label(found.level)}."
    if found.needs:
        yield "You need", f"{', '.join(found.needs)}."
    if found.small_things:
        yield TAKE_CARE, SMALL_THINGS
    yield "First", made.setup
    yield SAY, " ".join(made.rule)
    yield "It ends", f"{made.ends}."
    yield "Listen for", made.listen
    yield "Two children", found.game.two


# -- for which levels


def _levels(context: Context, skill: str) -> Iterator[tuple[LevelId, ...]]:
    """What games are for now: today's wobbles, else those of the last morning with one, else the newest."""
    yield _wobbled(context, context.today, skill)
    yield _last(context, skill)
    yield _newest(context, skill)


def _wobbled(context: Context, since: dt.date, skill: str = "") -> tuple[LevelId, ...]:
    marks = [(line.item, line.mark) for line in context.history(since=since)]
    items = context.curriculum().by_id
    known = [(items[item], mark) for item, mark in marks if item in items]
    found = [
        item.level_id
        for wobble in WOBBLES
        for item, mark in known
        if mark is wobble and skill in ("", item.skill)
    ]
    return tuple(dict.fromkeys(found))


def _last(context: Context, skill: str) -> tuple[LevelId, ...]:
    """The levels that wobbled on the last morning of this school year on which one did."""
    items = context.curriculum().by_id
    for line in reversed(year_so_far(context)):
        item = items.get(line.item)
        if item and line.mark in WOBBLES and skill in ("", item.skill):
            return _wobbled(context, line.date, skill)
    return ()


def _newest(context: Context, skill: str) -> tuple[LevelId, ...]:
    """The levels that opened last; of a skill that has not opened, the first."""
    week, weeks = context.morning().week, context.plan.weeks
    mine = [level for level in weeks if not skill or level.startswith(f"{skill}:")]
    held = context.child.held
    opened = [level for level in mine if weeks[level] <= week and level not in held]
    opened.sort(key=lambda level: -weeks[level])
    return tuple(opened[:_FEW] or mine[:1])


def _matches(context: Context, levels: Iterable[LevelId], day: dt.date) -> tuple[Match, ...]:
    """The games for these levels in the child's order of the day, each once, the first level's first."""
    found: dict[str, Match] = {}
    for level in levels:
        rng = SeededRandom("games", context.child.journal_name, day, level)
        for match in matches(level, lambda needs: _has(context, needs), rng):
            found.setdefault(match.game.id, match)
    return tuple(found.values())


def _has(context: Context, needs: Sequence[str]) -> bool:
    """Whether the house has all of these."""
    house = context.household
    return house is None or house.has(", ".join(needs))
