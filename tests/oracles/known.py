"""What the page of what a child knows should count, by plain SQL over the journal and plain dates.

Nothing of ``warmup`` is used. Levels come out of the routines that the journal keeps as JSON. A mark with a
cue counts as hesitation.
"""

import datetime as dt
import sqlite3
from collections import defaultdict
from collections.abc import Sequence
from contextlib import closing
from pathlib import Path
from typing import NamedTuple

_SHOWN = """
    SELECT p.date, substr(p.item, 1, instr(p.item, '/') - 1),
        json_extract(s.routine, '$.prompts[' || p.position || '].level'),
        CASE WHEN m.mark = 'fluent' AND m.cue > 0 THEN 'hesitated' ELSE nullif(m.mark, '') END
    FROM prompts p
    JOIN sittings s ON s.child = p.child AND s.date = p.date AND s.sitting = p.sitting
    LEFT JOIN marks m ON m.child = p.child AND m.date = p.date AND m.sitting = p.sitting
        AND m.position = p.position
    WHERE p.child = ? AND p.date <= ? AND (p.position <= s.furthest OR coalesce(m.mark, '') <> '')
        AND coalesce(m.mark, '') <> 'skipped'
    ORDER BY p.date, s.started, p.sitting, p.position
"""


class Shown(NamedTuple):
    """A question that was asked: its date, its skill, its level, and its mark as it counts."""

    date: dt.date
    skill: str
    level: str
    mark: str | None


def shown(path: Path, child: str, last: dt.date) -> list[Shown]:
    """Every question up to ``last``, in order of time."""
    with closing(sqlite3.connect(path)) as db:
        rows = db.execute(_SHOWN, (child, f"{last}")).fetchall()
    return [Shown(dt.date.fromisoformat(day), *rest) for day, *rest in rows]


def by_level(lines: Sequence[Shown]) -> dict[str, tuple[dt.date, int, tuple[str | None, ...]]]:
    """Of each level that was asked the first date, how often, and the last six marks."""
    found = defaultdict[str, list[Shown]](list)
    for line in lines:
        found[f"{line.skill}:{line.level}"].append(line)
    return {
        level: (each[0].date, len(each), tuple(line.mark for line in each[-6:]))
        for level, each in found.items()
    }


def settled(lines: Sequence[Shown], weeks: Sequence[Sequence[dt.date]]) -> dict[str, dt.date]:
    """The levels that the first two checks of a skill asked in one of these review weeks, both easy.

    A check is the first question of a skill with a mark on a morning; the date is that of the second one.
    """
    found = dict[str, dt.date]()
    for week in weeks:
        checks = defaultdict[str, dict[dt.date, Shown]](dict)
        for line in lines:
            if line.date in week and line.mark and line.skill != "own":
                checks[line.skill].setdefault(line.date, line)
        for of_skill in checks.values():
            two = [of_skill[day] for day in sorted(of_skill)][:2]
            if len(two) == 2 and all(line.mark == "fluent" for line in two):
                for line in two:
                    found.setdefault(f"{line.skill}:{line.level}", two[1].date)
    return found
