"""Commands that may keep something: days off out of a calendar, the brief of today, marks from paper."""

import datetime as dt
from collections.abc import Callable
from contextlib import AbstractContextManager
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from warmup.config.places import Places
    from warmup.model import Routine
    from warmup.session.context import Context

Clock = Callable[[], dt.datetime]
Opened = Callable[["Places", str, Clock], AbstractContextManager[Any]]
"""Opens the context and the journal of today's morning (see ``warmup.cli.opening``)."""
Kept = Callable[["Places", Clock, str], AbstractContextManager[Any]]
"""Opens the journal to write something in, and says at the end where that is not kept."""


def days(
    arguments: SimpleNamespace, clock: Clock, places: "Places", opened: Opened, *, terminal: bool
) -> None:
    """Print the days ahead, or what a calendar file has for them, or take that."""
    from warmup.cli import days as calendar
    from warmup.cli.printing import Refused, show, whole_path
    from warmup.config.places import there

    if arguments.file is None:
        if arguments.take:
            raise Refused("--take needs a calendar file: warmup days --import FILE --take ...")
        calendar.print_days(arguments, clock, places)
        return
    if arguments.take and arguments.json:
        raise Refused("--json lists and --take takes: say one of them")
    path = whole_path(arguments.file, "the calendar file")
    by_page = terminal and not arguments.plain and not arguments.json
    if not arguments.take and not by_page:
        calendar.print_offers(arguments, clock, places, path)
        return
    if not there(places.config / "family.toml"):
        raise Refused("there is no family.toml yet to keep days off in; run warmup once, and it is made")
    with opened(places, arguments.child, clock) as (context, _journal, _welcome):
        show(calendar.take(arguments, context, clock, path))


def report(arguments: SimpleNamespace, clock: Clock, places: "Places", *, terminal: bool) -> None:
    """Show a report in this terminal first; write it or print it where a file or no terminal is named."""
    from warmup.cli.printing import whole_path
    from warmup.cli.report import run

    out = whole_path(arguments.out, "the report") if arguments.out else None
    run(arguments, clock, places, out, by_page=terminal and not arguments.plain)


def brief(arguments: SimpleNamespace, clock: Clock, places: "Places", opened: Opened) -> None:
    """Half a page of the routine."""
    from warmup.cli.brief import brief_lines
    from warmup.cli.printing import show

    def use(routine: "Routine", context: "Context") -> None:
        show(brief_lines(routine, context, answers=arguments.answers))

    for_paper(arguments, clock, places, opened, use)


def sheets(arguments: SimpleNamespace, clock: Clock, places: "Places", opened: Opened) -> None:
    """Sheets to print: the list, some kinds, this week's, or today's prompts."""
    from warmup.cli import sheets

    sheets.run(arguments, clock, places, opened)


def for_paper(
    arguments: SimpleNamespace,
    clock: Clock,
    places: "Places",
    opened: Opened,
    use: "Callable[[Routine, Context], None]",
) -> None:
    """Hand over a routine; today's is kept as today's session, to be the same when marks are typed in."""
    from warmup.cli import printing
    from warmup.session.context import load_family
    from warmup.session.on_paper import kept_today, not_kept
    from warmup.session.stored import CHOSEN_ANEW, chosen_anew

    today = clock().date()
    if arguments.date not in (None, today) or not load_family(places, today)[1]:
        printing.on_paper(arguments, clock, places, use)
        return
    with opened(places, arguments.child, clock) as (context, journal, _):
        if journal.notice:
            printing.complain(journal.notice)
        if why := not_kept(context):
            printing.complain(f"{why} Until then this page is kept nowhere, and warmup may ask other things.")
            printing.on_paper(arguments, clock, places, use)
            return
        if chosen_anew(journal, context.child.journal_name, today):
            printing.complain(CHOSEN_ANEW)
        use(kept_today(context, journal), context)


def catch_up(
    arguments: SimpleNamespace, clock: Clock, places: "Places", opened: Opened, *, terminal: bool
) -> int:
    """Take in the marks of a morning on paper; gives the exit code."""
    from warmup.cli import catch_up as paper
    from warmup.cli import printing

    on_screen = terminal and not (arguments.plain or arguments.undo or arguments.marks is not None)
    with opened(places, arguments.child, clock) as (context, journal, welcome):
        if journal.notice:
            printing.complain(journal.notice)
        context.marks_by = arguments.adult
        paper.check(arguments, context, saved=welcome is None)
        if not on_screen:
            paper.run(arguments, context, journal, clock)
            return 0
        from warmup.cli.loading import load_textual
        from warmup.session.on_paper import can_count, count

        load_textual()
        from warmup.tui.on_paper import PaperApp
        from warmup.tui.quiet_app import draw_in_utf8

        draw_in_utf8()
        if arguments.counts and can_count(context, arguments.date):
            count(context, journal, arguments.date)
        app = PaperApp(context, journal, clock, arguments.date)
        app.run()
    return app.ended()


def practice(
    arguments: SimpleNamespace, clock: Clock, places: "Places", opened: Opened, *, terminal: bool
) -> int:
    """Open a practice round; gives the exit code. Refused, with why, where the level can't be practiced."""
    from warmup.cli.practicing import in_lines, level_named
    from warmup.cli.printing import Refused, complain

    if not terminal and not arguments.plain:
        raise Refused("a practice round needs a terminal, or --plain")
    with opened(places, arguments.child, clock) as (context, journal, welcome):
        if welcome is not None:
            raise Refused("there is no family.toml yet; run warmup once, and it is made")
        if journal.notice:
            complain(journal.notice)
        level = level_named(context, arguments.what)
        if arguments.plain:
            in_lines(context, level)
            return 0
        from warmup.cli.loading import load_textual

        load_textual()
        from warmup.tui.practice import PracticeApp
        from warmup.tui.quiet_app import draw_in_utf8

        draw_in_utf8()
        app = PracticeApp(context, journal, clock, level)
        app.run()
    return app.ended()


def keep(arguments: SimpleNamespace, clock: Clock, places: "Places", kept: Kept) -> None:
    """A copy, or one put back; everything out and in; a child taken out."""
    from warmup.cli import exporting, keeping
    from warmup.cli.forget import forget

    match arguments.command:
        case "copy":
            keeping.copy(arguments, clock, places)
        case "restore":
            keeping.restore(arguments, clock, places)
        case "export":
            exporting.export(arguments, clock, places)
        case "import":
            exporting.take_back(arguments, clock, places, kept)
        case _:
            forget(arguments, clock, places)
