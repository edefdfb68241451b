"""``warmup sheets``: lists the kinds of sheets, or writes some as a page to print."""

import datetime as dt
from collections.abc import Iterable, Iterator, Sequence
from types import SimpleNamespace

from warmup.cli.keeping import whole_path
from warmup.cli.printing import Refused, reading_context, show
from warmup.config.places import Places
from warmup.model import DayKind
from warmup.report.keeping import keep
from warmup.session.context import Clock, Context
from warmup.sheets.base import Day, Sheet
from warmup.sheets.html import Side, document
from warmup.sheets.kinds import kinds
from warmup.sheets.paper import Paper
from warmup.text import clean, did_you_mean

TITLE = "Sheets for the table"


def sheets(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """List the kinds, or write those that are named, ``all`` of them perhaps, into a new file."""
    if not arguments.kinds:
        show(_listed())
        return
    wanted = [_kind(name) for name in arguments.kinds if name != "all"]
    if "all" in arguments.kinds:
        wanted = list(kinds().values())
    context, journal = reading_context(places, arguments.child, clock)
    if journal:
        journal.shut()
    paper = Paper[arguments.paper.upper()]
    sides = [*sides_of(wanted, day_of(context, arguments.date or context.today))]
    target = whole_path(arguments.out or f"warmup-sheets-{context.today.isoformat()}.html", "the sheets")
    keep(target, document(sides, paper, TITLE))
    show([f"{clean(str(target))}: {len(sides)} {'page' if len(sides) == 1 else 'pages'}. Print at 100 %."])
    if arguments.open:
        import webbrowser

        webbrowser.open(target.as_uri())


def sides_of(wanted: Iterable[Sheet], day: Day) -> Iterator[Side]:
    """Every page of these kinds."""
    for sheet in wanted:
        for page in sheet.pages(day):
            yield Side(sheet, page)


def day_of(context: Context, date: dt.date) -> Day:
    """A date, with the school days of its month."""
    first = date.replace(day=1)
    dates = [first + dt.timedelta(n) for n in range(31) if (first + dt.timedelta(n)).month == date.month]
    mornings = [morning for morning in map(context.morning, dates) if morning.kind is DayKind.SCHOOL]
    return Day(date, {morning.date: morning.school_day for morning in mornings})


def _kind(name: str) -> Sheet:
    try:
        return kinds()[name]
    except KeyError:
        raise Refused(f"no sheet {name!r}{did_you_mean(name, kinds())}") from None


def _listed() -> Sequence[str]:
    wide = max(map(len, kinds()))
    lines = [f"  {name:<{wide}}  {sheet.about}" for name, sheet in kinds().items()]
    return ["warmup sheets KIND ... makes a page to print of these, or of all:", "", *lines]
