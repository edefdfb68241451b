"""What a report should count, by plain SQL over the journal and plain dates, without any of ``warmup``.

Seconds and things come out of the routines that the journal keeps as JSON.
"""

import datetime as dt
import sqlite3
from collections.abc import Collection
from contextlib import closing
from pathlib import Path
from typing import Any

_ASKED = """
    WITH asked AS (
        SELECT p.date AS date, p.item AS item, substr(p.item, 1, instr(p.item, '/') - 1) AS skill,
            json_extract(s.routine, '$.prompts[' || p.position || '].seconds') AS seconds,
            json_extract(s.routine, '$.prompts[' || p.position || '].table') AS things,
            json_extract(s.routine, '$.prompts[' || p.position || '].level') AS level
        FROM prompts p
        JOIN sittings s ON s.child = p.child AND s.date = p.date AND s.sitting = p.sitting
        LEFT JOIN marks m ON m.child = p.child AND m.date = p.date AND m.sitting = p.sitting
            AND m.position = p.position
        WHERE p.child = :child AND p.date <= :last AND p.item NOT LIKE 'own/%'
            AND (p.position <= s.furthest OR coalesce(m.mark, '') <> '')
            AND coalesce(m.mark, '') <> 'skipped'
    )
"""
_IN_SPAN = "date BETWEEN :first AND :last"


class Counts:
    """The counts of one child from a first day to a last one, read from a journal's file."""

    def __init__(self, path: Path, child: str, first: dt.date, last: dt.date) -> None:
        self._path = path
        self._given = {"child": child, "first": f"{first}", "last": f"{last}"}

    def _rows(self, question: str) -> list[tuple[Any, ...]]:
        with closing(sqlite3.connect(self._path)) as db:
            return db.execute(question, self._given).fetchall()

    def held(self) -> set[str]:
        """The dates with a warm-up: a prompt was on screen, or it was closed, or something was marked."""
        rows = self._rows(
            "SELECT DISTINCT s.date FROM sittings s LEFT JOIN marks m USING (child, date, sitting) "
            "WHERE s.child = :child AND s.date BETWEEN :first AND :last "
            "AND (s.furthest >= 0 OR s.closed <> '' OR coalesce(m.mark, '') <> '')"
        )
        return {date for (date,) in rows}

    def seconds_by_month(self) -> dict[str, int]:
        """How many seconds the questions of each month take at most."""
        rows = self._rows(
            f"{_ASKED} SELECT substr(date, 1, 7), sum(seconds) FROM asked WHERE {_IN_SPAN} GROUP BY 1"
        )
        return {str(month): int(seconds) for month, seconds in rows}

    def by_skill(self) -> dict[str, tuple[int, int]]:
        """Of each skill how many questions were asked, and on how many days."""
        rows = self._rows(
            f"{_ASKED} SELECT skill, count(*), count(DISTINCT date) FROM asked WHERE {_IN_SPAN} GROUP BY 1"
        )
        return {skill: (questions, days) for skill, questions, days in rows}

    def by_level(self) -> dict[str, tuple[int, str]]:
        """Of each level that was asked in the span how many questions, and the first date of all."""
        rows = self._rows(
            f"{_ASKED} SELECT skill || ':' || level, sum({_IN_SPAN}), min(date) FROM asked "
            f"GROUP BY 1 HAVING sum({_IN_SPAN}) > 0"
        )
        return {level: (questions, first) for level, questions, first in rows}

    def days_with(self, word: str) -> int:
        """On how many days a question wanted a thing with this word in its name."""
        self._given["word"] = f"%{word}%"
        rows = self._rows(
            f"{_ASKED} SELECT count(DISTINCT date) FROM asked WHERE {_IN_SPAN} AND things LIKE :word"
        )
        return int(rows[0][0])


def school_days(
    first: dt.date,
    last: dt.date,
    weekdays: Collection[int],
    off: Collection[dt.date],
    extra: Collection[dt.date],
) -> set[dt.date]:
    """The dates of these weekdays, both ends included, less the days off, and the other mornings held."""
    days = (first + dt.timedelta(later) for later in range((last - first).days + 1))
    return {day for day in days if (day.weekday() in weekdays and day not in off) or day in extra}
