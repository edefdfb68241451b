"""``warmup known``: what a child knows, in lines or as JSON.

``warmup known --json`` holds ``format`` ("warmup-known"), ``version`` (1), ``child``, ``today``, ``levels``,
``slips``, ``weeks``, ``months`` and ``strands``. A level has ``level``, ``strand``, ``title``, ``label``,
``stand`` ("worth revisiting", "growing", "settled" or "not met yet") and, of this school year, ``first`` (the
date it was first asked), ``settled`` (that of the review which first found it settled), ``times`` (a count),
``marks`` (the last six as they count, the latest last, null for none) and ``why`` (what makes it worth
revisiting). A slip has ``item``, ``level``, ``mark``, ``on``, ``say``, ``watch_for`` and ``to_do``; a week
``week`` and ``held``; a month ``first`` (its first day), ``met`` and ``settled`` (how many levels by its
end); a strand ``strand``, ``asked`` and ``hesitated`` (this school year). A date is ISO 8601, null where
there is none.
"""

from collections.abc import Iterator
from itertools import groupby
from types import SimpleNamespace
from typing import Any

from warmup.cli.printing import reading_context, show, show_json
from warmup.config.places import Places
from warmup.english import date_words
from warmup.session.context import Clock
from warmup.session.known import Known, KnownLevel, Stand, known
from warmup.session.known_bars import plots
from warmup.session.known_words import BEADS_MEAN, GROUPS, MEANS, SLIPS, slip_words
from warmup.session.words import BEADS

FORMAT = "warmup-known"
VERSION = 1
WIDTH = 72


def run(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print what the child knows."""
    context, journal = reading_context(places, arguments.child, clock)
    found = known(context)
    if arguments.json:
        show_json(known_data(found))
    else:
        show(known_lines(found))
    if journal:
        journal.shut()


def known_lines(found: Known) -> Iterator[str]:
    """What to look at first, then the rest by strand, then the year in bars."""
    yield f"What {found.child} knows on {date_words(found.today, year=True)}."
    yield f"{BEADS_MEAN}; the latest stands last."
    for name in GROUPS:
        rows = found.slips if name == SLIPS else found.standing(Stand(name))
        if name == SLIPS and not rows:
            continue
        yield ""
        yield f"{name.capitalize()}: {len(rows)}. {MEANS[name]}"
        if name == SLIPS:
            yield from (f"  {BEADS[slip.mark]} {slip.named}: {slip_words(slip)}" for slip in found.slips)
            continue
        for strand, group in groupby(found.standing(Stand(name)), key=lambda level: level.strand):
            yield f"  {strand.value}"
            yield from (f"    {_level_line(level)}" for level in group)
    for plot in plots(found, WIDTH):
        yield ""
        yield plot.heading
        yield from (f"  {line}" for line in plot.lines)


def _level_line(level: KnownLevel) -> str:
    beads = "".join(BEADS[mark] for mark in level.marks)
    note = f": {level.note()}" if level.note() else ""
    return f"{level.words()}{note}{f' {beads}' if beads else ''}"


def known_data(found: Known) -> dict[str, Any]:
    """The same as JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": found.child,
        "today": f"{found.today}",
        "levels": [_level_data(level) for level in found.levels],
        "slips": [
            {
                "item": slip.item,
                "level": slip.level,
                "mark": slip.mark.value,
                "on": f"{slip.on}",
                "say": slip.say,
                "watch_for": slip.watch_for,
                "to_do": slip.to_do,
            }
            for slip in found.slips
        ],
        "weeks": [week._asdict() for week in found.weeks],
        "months": [month._asdict() | {"first": f"{month.first}"} for month in found.months],
        "strands": [each._asdict() | {"strand": each.strand.value} for each in found.strands],
    }


def _level_data(level: KnownLevel) -> dict[str, Any]:
    return {
        "level": level.id,
        "strand": level.strand.value,
        "title": level.title,
        "label": level.label,
        "stand": level.stand.value,
        "first": level.first and f"{level.first}",
        "settled": level.settled and f"{level.settled}",
        "times": level.times,
        "marks": [mark and mark.value for mark in level.marks],
        "why": level.why,
    }
