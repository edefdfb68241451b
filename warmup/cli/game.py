"""A two-minute game as text or JSON.

``warmup game --json`` holds ``format`` ("warmup-game"), ``version`` (1), ``child`` and ``game``, which is
null where no game fits. A game has ``id``, ``name``, ``level``, ``needs`` (names of things),
``small_things`` (true where one of them is small enough to choke on), ``players``, ``setup``, ``rule``
(sentences), ``ends``, ``listen``, ``two`` (how two play it), ``given`` (the numbers chosen for it) and
``turns`` (the most there are).
"""

from collections.abc import Iterator
from types import SimpleNamespace
from typing import Any

from warmup.cli.printing import Refused, reading_context, show, show_json
from warmup.config.places import Places
from warmup.session.context import Clock
from warmup.session.gaming import NO_GAME, Suggestion, suggestion, told
from warmup.skills import SKILLS
from warmup.text import did_you_mean

FORMAT = "warmup-game"
VERSION = 1


def game(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the game of today, or another one."""
    if arguments.skill and arguments.skill not in SKILLS:
        raise Refused(f"no skill called {arguments.skill!r}{did_you_mean(arguments.skill, SKILLS)}")
    context, journal = reading_context(places, arguments.child, clock)
    found = suggestion(context, arguments.another, arguments.skill)
    if arguments.json:
        show_json(game_data(found, context.child.nickname))
    else:
        show(game_lines(found))
    if journal:
        journal.shut()


def game_lines(found: Suggestion | None) -> Iterator[str]:
    """The game, one thing a line, every line with its name first."""
    if found is None:
        yield NO_GAME
        return
    yield f"A two-minute game: {found.game.name}"
    yield from (f"{label}: {text}" for label, text in told(found))


def game_data(found: Suggestion | None, child: str) -> dict[str, Any]:
    """The game as JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": child,
        "game": found
        and {
            "id": found.game.id,
            "name": found.game.name,
            "level": found.level,
            "needs": list(found.needs),
            "small_things": found.small_things,
            "players": list(found.game.players),
            "setup": found.play.setup,
            "rule": list(found.play.rule),
            "ends": found.play.ends,
            "listen": found.play.listen,
            "two": found.game.two,
            "given": dict(found.play.given),
            "turns": found.play.turns,
        },
    }
