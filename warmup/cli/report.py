"""``warmup report``: shown in a terminal before it leaves, else printed, or written to a file that is new."""

import datetime as dt
import sys
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.printing import Refused, complain, reading_context, show
from warmup.config.places import Places
from warmup.report.asking import Form, Wanted, ending, make
from warmup.report.keeping import keep
from warmup.report.letter import Span
from warmup.report.notes import shared_notes
from warmup.session.context import Context

Clock = Callable[[], dt.datetime]


def run(arguments: SimpleNamespace, clock: Clock, places: Places, out: Path | None, *, by_page: bool) -> None:
    """Make the report and show, print or write it; ``out`` is the new file that it is for, if any.

    Refused for days that make no span, NotKept where the file can't be written.
    """
    context, journal = reading_context(places, arguments.child, clock)
    wanted = _wanted(arguments, context)
    form = Form[arguments.form.upper()] if arguments.form else None
    made = make(context, wanted)
    if out is not None:
        keep(out, made.text(form or ending(out) or Form.TEXT))
        show([f"Written: {out}"])
    elif by_page and journal is not None:
        from warmup.tui.report import preview

        preview(context, clock, wanted, form)
    else:
        _print(made.text(form or Form.TEXT))
    if journal:
        journal.shut()


def _wanted(arguments: SimpleNamespace, context: Context) -> Wanted:
    span = Span(arguments.letter) if arguments.letter else None
    if span and arguments.first:
        raise Refused("a letter is about a whole quarter or year: say one of its days with --to, not --from")
    if arguments.notes and (span or arguments.summer):
        raise Refused("--notes goes with a record: a letter and a summer list have none")
    last = min(arguments.last or context.today, context.today)
    if arguments.first and arguments.first > last:
        raise Refused(f"the days end on {last}, before --from {arguments.first}")
    notes = shared_notes(context) if arguments.notes else ()
    if arguments.notes and not notes:
        complain("there are no notes that were marked for reports.")
    return Wanted(arguments.first, arguments.last, span, arguments.summer, arguments.adult, notes)


def _print(text: str) -> None:
    """Print as it is, line ends included, where that can be done."""
    raw = getattr(sys.stdout, "buffer", None)
    if raw is None:
        show(text.splitlines())
        return
    sys.stdout.flush()
    raw.write(text.encode("utf-8"))
    raw.flush()
