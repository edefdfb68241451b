"""A morning opened: the family and the journal together, on the screen, in lines, or for a guest."""

import contextlib
import datetime as dt
from collections.abc import Callable, Iterator
from types import SimpleNamespace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from warmup.config.family import Family
    from warmup.config.places import Places
    from warmup.journal.journal import Journal
    from warmup.session.context import Context

Clock = Callable[[], dt.datetime]


@contextlib.contextmanager
def opened(
    places: "Places", child: str, clock: Clock, guest: str | None = None
) -> Iterator[tuple["Context", "Journal", "Callable[[Family], Context] | None"]]:
    """The context and the journal of today's morning, and how to welcome a family where there is none yet.

    What a ``guest`` changes is in no family file; it is the guest's name, empty while there is none.
    """
    from warmup.config.family import default
    from warmup.config.writing import sweep
    from warmup.session.context import load_family

    now = clock()
    sweep(places.config / "family.toml", now.timestamp())
    today = now.date()
    family, saved = load_family(places, today)
    with kept(places, clock, "what was marked just now") as journal:
        if not saved:
            family = default(today, journal.names())
        context = _open_context(places, family, today, journal, child, saved and guest is None)
        context.marks_by = guest or ""
        yield context, journal, None if saved else lambda family: welcomed(places, family, today, journal)
        from warmup.session import remembered

        remembered.keep(context)


def _open_context(
    places: "Places", family: "Family", today: dt.date, journal: "Journal", child: str, saved: bool
) -> "Context":
    from warmup.session.context import open_context

    if not child and len(family.children) > 1:
        from warmup.session.whose_turn import first_to_come

        child = first_to_come(family, journal, today).nickname
    try:
        return open_context(places, family, today, journal, child=child, saved=saved)
    except KeyError:
        from warmup.cli.printing import no_such_child  # not on the way to a morning otherwise

        raise no_such_child(child, family) from None


@contextlib.contextmanager
def kept(places: "Places", clock: Clock, what: str) -> Iterator["Journal"]:
    """The journal, to write ``what`` in; JournalProblem where in the end not all of it is on disk."""
    from warmup.journal.journal import Journal, JournalProblem
    from warmup.text import clean

    journal = Journal.open(places.data, clock)
    try:
        yield journal
    finally:
        kept = journal.shut()
    if not kept:
        raise JournalProblem(
            f"{clean(str(journal.path))}: could not be written, so {what} is not kept. "
            "Make room for it or let it be written; until then it stays as it was before."
        )


def welcomed(places: "Places", family: "Family", today: dt.date, journal: "Journal") -> "Context":
    """Keep the family the form gave; the context to go on with, even where it can't be kept."""
    from warmup.session.context import open_context

    context = open_context(places, family, today, journal)
    context.editor.kept.begin()
    return context


# -- the morning itself


def guest(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str, *, terminal: bool) -> int:
    """Today's morning for another adult: family.toml stays as it is. Without one it is kept nowhere."""
    from warmup.cli.printing import Refused
    from warmup.session.context import load_family

    if not arguments.plain and not terminal:
        raise Refused("a guest's morning needs a terminal, or --plain")
    if load_family(places, clock().date())[1]:
        return _guest_morning(places, arguments, clock, aside)
    with _nowhere() as place:
        return _guest_morning(
            place, arguments, clock, "No family yet: an ordinary year’s morning, kept nowhere."
        )


def _guest_morning(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str) -> int:
    with opened(places, arguments.child, clock, guest=arguments.guest) as (context, journal, _):
        if arguments.plain:
            from warmup.cli.spoken import run

            run(context, journal, clock, None, aside, guest=True)
            return 0
        from warmup.cli.loading import load_textual

        load_textual()
        from warmup.tui.app import WarmupApp
        from warmup.tui.quiet_app import draw_in_utf8

        draw_in_utf8()
        app = WarmupApp(context, journal, clock, (journal.notice,), None, aside, guest=True)
        app.run()
    return app.ended()


@contextlib.contextmanager
def _nowhere() -> Iterator["Places"]:
    """A place that is gone when it ends."""
    import tempfile
    from pathlib import Path

    from warmup.config.places import Places

    with tempfile.TemporaryDirectory(prefix="warmup-guest-", ignore_cleanup_errors=True) as folder:
        yield Places(Path(folder), Path(folder))


def _takes_turns(arguments: SimpleNamespace, context: "Context") -> bool:
    """Whether the children's prompts are to take turns: who names one child means that one."""
    return arguments.together or (context.family.together and not arguments.child)


def on_screen(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str = "") -> int:
    """Today's morning in the app; the exit code."""
    from warmup.cli.loading import load_textual

    load_textual()
    from warmup.tui.app import WarmupApp
    from warmup.tui.quiet_app import draw_in_utf8

    with opened(places, arguments.child, clock) as (context, journal, welcome):
        draw_in_utf8()
        turns = _takes_turns(arguments, context)
        app = WarmupApp(context, journal, clock, (journal.notice,), welcome, aside, takes_turns=turns)
        if not aside and welcome is None:
            app.told_later = lambda: _standing_lines(places, context)
        app.run()
        _after_the_close(places, app.context, journal, aside)
    return app.ended()


def _standing_lines(places: "Places", context: "Context") -> tuple[str, ...]:
    """What is said of the copies once the first frame is out."""
    from warmup.cli.keeping import standing_lines

    return standing_lines(places, context.family, context.today)


def _after_the_close(places: "Places", context: "Context", journal: "Journal", aside: str) -> None:
    """The weekly copy, where a folder is named for it; none of what is invented."""
    if context.family.copies and not aside:
        from warmup.cli.keeping import after_the_close

        after_the_close(places, context, journal)


def in_lines(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str = "") -> None:
    """Today's morning in lines."""
    from warmup.cli.spoken import run

    with opened(places, arguments.child, clock) as (context, journal, welcome):
        turns = _takes_turns(arguments, context)
        lines = () if aside or welcome else _standing_lines(places, context)
        run(context, journal, clock, welcome, " ".join(lines) or aside, takes_turns=turns)
        _after_the_close(places, context, journal, aside)


def stage(places: "Places", child: str, clock: Clock, *, terminal: bool) -> int:
    """The child's own window; neither a journal nor a family need be there yet, where no child is named."""
    from warmup.cli.loading import load_textual
    from warmup.cli.printing import Refused, no_such_child

    load_textual()
    from warmup.config.family import default
    from warmup.config.toml_file import FileProblem
    from warmup.journal.watching import Watch
    from warmup.session.context import load_family
    from warmup.tui.child_stage import ChildStage
    from warmup.tui.paint import Look
    from warmup.tui.quiet_app import draw_in_utf8

    if not terminal:
        raise Refused("the stage needs a terminal of its own, with nothing between")
    now = clock()
    try:
        family, _ = load_family(places, now.date())
    except FileProblem:
        if child:
            raise
        family = default(now.date())
    names = [each.journal_name for each in family.children if each.nickname == child]
    if child and not names:
        raise no_such_child(child, family)
    draw_in_utf8()
    watch = Watch(places.data, now, *names)
    app = ChildStage(watch, clock, Look(family.theme), true_pixels=family.pixels)
    app.run()
    return app.ended()
