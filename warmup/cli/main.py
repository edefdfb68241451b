"""The command line. A screen is imported only on the way to opening one.

Exit codes: 0 done; 1 ``check`` found something wrong; 2 the command line was not understood;
3 a file cannot be used as it is (one sentence on standard error says which, and what to do); 4 a mistake
of the program itself (one sentence says where; WARMUP_TRACEBACK=1 shows the way there).
"""

import atexit
import contextlib
import datetime as dt
import gc
import os
import sys
from collections.abc import Callable, Iterator, Sequence
from types import SimpleNamespace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from warmup.config.family import Family
    from warmup.config.places import Places
    from warmup.journal.journal import Journal
    from warmup.session.context import Context

DONE, WRONG, USAGE, UNUSABLE, MISTAKE = 0, 1, 2, 3, 4
Clock = Callable[[], dt.datetime]
_KEEPING = (
    "days", "report", "sheets", "catch-up", "merge", "copy", "restore", "export", "import", "forget",
)  # fmt: skip
"""The commands that may write."""


def main(argv: Sequence[str] | None = None, clock: Clock = dt.datetime.now) -> int:
    """Run one command and give its exit code. ``clock`` is read once, at the start of a command."""
    if "_ARGCOMPLETE" in os.environ:
        from warmup.cli.completion import complete

        complete()
    arguments = _arguments(sys.argv[1:] if argv is None else argv)
    # Hundreds of modules are about to be loaded, all of which stay: looking for garbage among them would
    # cost a quarter of the time to the first frame. The app turns it on again once that is painted, and a
    # command that prints is over before there is any. Nor is it looked for at the very end, when all goes.
    gc.disable()
    atexit.register(gc.freeze)
    try:
        return _run(arguments, clock)
    except BrokenPipeError:
        # The reader went away (``| head``): nothing is wrong, and nothing more can be said.
        _print_no_more()
        return DONE
    except KeyboardInterrupt:
        return DONE
    except Exception as error:
        if os.environ.get("WARMUP_TRACEBACK"):
            raise
        from warmup.text import clean

        code, sentence = _sentence(error)
        if code != USAGE:
            _print_no_more()
        print(f"warmup: {clean(sentence)}", file=sys.stderr)
        return code
    finally:
        gc.enable()


def _arguments(words: Sequence[str]) -> SimpleNamespace:
    """The command line, understood. A bare ``warmup``, what each morning brings, waits for no parser."""
    if not words:
        return SimpleNamespace(command=None, demo=False, child="", together=False, plain=False, guest=None)
    from warmup.cli.options import parse

    return parse(words)


def _run(arguments: SimpleNamespace, clock: Clock) -> int:
    """Do what was asked for, of the family or of the invented one, and give the exit code."""
    if not arguments.demo:
        return _do(arguments, clock, _places())
    with _demo(clock) as places:
        return _do(arguments, clock, places, "Demo: an invented family.")


def _do(arguments: SimpleNamespace, clock: Clock, places: "Places", aside: str = "") -> int:
    if arguments.guest is not None and arguments.command is None:
        return _guest(places, arguments, clock, aside)
    if arguments.command is None and arguments.plain:
        return _morning_in_lines(places, arguments, clock, aside)
    if arguments.command is None and _on_a_terminal():
        return _morning(places, arguments, clock, aside)
    if arguments.command == "stage":
        return _stage(places, arguments.child, clock)
    match arguments.command:
        case (
            "days"
            | "report"
            | "practice"
            | "sheets"
            | "catch-up"
            | "merge"
            | "copy"
            | "restore"
            | "export"
            | "import"
            | "forget"
        ):
            return _keep(arguments, clock, places)
        case "today" if arguments.brief:
            return _keep(arguments, clock, places)
        case _:
            return _print(arguments, clock, places)


def _print(arguments: SimpleNamespace, clock: Clock, places: "Places") -> int:
    """The commands that print and write nothing."""
    from warmup.cli import printing

    match arguments.command:
        case "check":
            return DONE if printing.check(arguments, clock, places) else WRONG
        case "week" | "ready" as command:
            from warmup.cli import week

            (week.week if command == "week" else week.ready)(arguments, clock, places)
        case "past" | "notes" as command:
            from warmup.cli import past

            (past.past if command == "past" else past.notes)(arguments, clock, places)
        case "game":
            from warmup.cli import game

            game.game(arguments, clock, places)
        case "known":
            from warmup.cli import known

            known.run(arguments, clock, places)
        case "then":
            from warmup.cli import then

            then.then(arguments, clock, places)
        case "ask":
            printing.ask(arguments, clock, places)
        case "why":
            printing.why(arguments, clock, places)
        case "catalogue":
            printing.catalogue(arguments, places)
        case "year":
            printing.year(arguments, clock, places)
        case "more":
            printing.more()
        case "guide":
            from warmup.cli.guide import guide

            guide(arguments.topic, terminal=_on_a_terminal())
        case "today":
            printing.today(arguments, clock, places)
        case _:
            # A bare `warmup` with no terminal.
            arguments.date, arguments.json, arguments.answers = None, False, True
            printing.today(arguments, clock, places)
    return DONE


def _keep(arguments: SimpleNamespace, clock: Clock, places: "Places") -> int:
    """The commands that may write: into the family's files, a copy, a report."""
    from warmup.cli import kept_commands

    match arguments.command:
        case "days":
            kept_commands.days(arguments, clock, places, _opened, terminal=_on_a_terminal())
        case "report":
            kept_commands.report(arguments, clock, places, terminal=_on_a_terminal())
        case "catch-up":
            return kept_commands.catch_up(arguments, clock, places, _opened, terminal=_on_a_terminal())
        case "practice":
            return kept_commands.practice(arguments, clock, places, _opened, terminal=_on_a_terminal())
        case "sheets":
            kept_commands.sheets(arguments, clock, places, _opened)
        case "today":
            kept_commands.brief(arguments, clock, places, _opened)
        case "merge":
            from warmup.cli.merging import merge

            merge(arguments, clock, places, _kept)
        case _:
            kept_commands.keep(arguments, clock, places, _kept)
    return DONE


def _sentence(error: Exception) -> tuple[int, str]:
    """The exit code, and what is wrong in a sentence."""
    from warmup.cli.printing import Refused
    from warmup.config.toml_file import FileProblem
    from warmup.journal.journal import JournalProblem
    from warmup.report.keeping import NotKept
    from warmup.text import clean

    match error:
        case Refused():
            return USAGE, str(error)
        case FileProblem() | JournalProblem() | NotKept():
            return UNUSABLE, str(error)
        case OSError():
            place = clean(str(error.filename)) if error.filename else "what was to be printed"
            return UNUSABLE, f"{place}: {error.strerror or clean(str(error))}."
    return MISTAKE, _mistake(error)


def _mistake(error: Exception) -> str:
    """A mistake of the program in a sentence: its kind and where, and nothing of what it was working on."""
    import traceback
    from pathlib import Path

    frames = traceback.extract_tb(error.__traceback__)
    own = [frame for frame in frames if Path(frame.filename).is_relative_to(Path(__file__).parents[1])]
    where = (own or frames)[-1]
    return (
        f"a mistake in the program ended it ({type(error).__name__} in {Path(where.filename).name}, line "
        f"{where.lineno}). What you marked is kept; please report this line."
    )


def _print_no_more() -> None:
    """Let nothing that is still waiting to be printed fail once more at the very end."""
    if sys.stdout is not None:
        with contextlib.suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _places() -> "Places":
    from warmup.config.places import places

    return places(os.environ)


@contextlib.contextmanager
def _demo(clock: Clock) -> Iterator["Places"]:
    """The place of an invented family, which is gone when it ends."""
    import tempfile
    from pathlib import Path

    from warmup.cli.demo import set_up, temporary

    with tempfile.TemporaryDirectory(prefix="warmup-demo-", ignore_cleanup_errors=True) as folder:
        places = temporary(Path(folder))
        set_up(places, clock().date())
        yield places


# -- opening the morning


def _guest(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str) -> int:
    """Today's morning for another adult: family.toml stays as it is. Without one it is kept nowhere."""
    from warmup.cli.printing import Refused
    from warmup.session.context import load_family

    if not arguments.plain and not _on_a_terminal():
        raise Refused("a guest's morning needs a terminal, or --plain")
    if load_family(places, clock().date())[1]:
        return _guest_morning(places, arguments, clock, aside)
    with _nowhere() as kept:
        return _guest_morning(
            kept, arguments, clock, "No family yet: an ordinary year’s morning, kept nowhere."
        )


def _guest_morning(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str) -> int:
    with _opened(places, arguments.child, clock, guest=arguments.guest) as (context, journal, _):
        if arguments.plain:
            from warmup.cli.spoken import run

            run(context, journal, clock, None, aside, guest=True)
            return DONE
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


def _on_a_terminal() -> bool:
    # A stream that was closed before the start is None.
    return all(stream is not None and stream.isatty() for stream in (sys.stdout, sys.stdin))


def _takes_turns(arguments: SimpleNamespace, context: "Context") -> bool:
    """Whether the children's prompts are to take turns: who names one child means that one."""
    return arguments.together or (context.family.together and not arguments.child)


def _load_asyncio() -> None:
    """Load asyncio, which Textual runs on, without TLS: 6 ms of the first frame, and nothing here is sent.

    asyncio takes TLS where it can be imported, and goes without where it can't.
    """
    absent = {"ssl": None} if "ssl" not in sys.modules else {}
    sys.modules.update(absent)  # type: ignore[arg-type]
    try:
        import asyncio  # noqa: F401
    finally:
        for name in absent:
            del sys.modules[name]


def _morning(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str = "") -> int:
    _load_asyncio()
    from warmup.tui.app import WarmupApp
    from warmup.tui.quiet_app import draw_in_utf8

    with _opened(places, arguments.child, clock) as (context, journal, welcome):
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


def _morning_in_lines(places: "Places", arguments: SimpleNamespace, clock: Clock, aside: str = "") -> int:
    from warmup.cli.spoken import run

    with _opened(places, arguments.child, clock) as (context, journal, welcome):
        turns = _takes_turns(arguments, context)
        lines = () if aside or welcome else _standing_lines(places, context)
        run(context, journal, clock, welcome, " ".join(lines) or aside, takes_turns=turns)
        _after_the_close(places, context, journal, aside)
    return DONE


def _stage(places: "Places", child: str, clock: Clock) -> int:
    """The child's own window; neither a journal nor a family need be there yet, where no child is named."""
    from warmup.cli.printing import Refused, no_such_child
    from warmup.config.family import default
    from warmup.config.toml_file import FileProblem
    from warmup.journal.watching import Watch
    from warmup.session.context import load_family
    from warmup.tui.child_stage import ChildStage
    from warmup.tui.paint import Look
    from warmup.tui.quiet_app import draw_in_utf8

    if not _on_a_terminal():
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


@contextlib.contextmanager
def _opened(
    places: "Places", child: str, clock: Clock, guest: str | None = None
) -> Iterator[tuple["Context", "Journal", "Callable[[Family], Context] | None"]]:
    """The context and the journal of today's morning, and how to welcome a family where there is none yet.

    What a ``guest`` changes is in no family file; it is the guest's name, empty while there is none.
    """
    from warmup.config.family import default
    from warmup.config.writing import sweep
    from warmup.session.context import journal_names, load_family

    now = clock()
    sweep(places.config / "family.toml", now.timestamp())
    today = now.date()
    family, saved = load_family(places, today)
    with _kept(places, clock, "what was marked just now") as journal:
        if not saved:
            family = default(today, journal_names(journal))
        context = _open_context(places, family, today, journal, child, saved and guest is None)
        context.marks_by = guest or ""
        yield context, journal, None if saved else lambda family: _welcomed(places, family, today, journal)
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
def _kept(places: "Places", clock: Clock, what: str) -> Iterator["Journal"]:
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


def _welcomed(places: "Places", family: "Family", today: dt.date, journal: "Journal") -> "Context":
    """Keep the family the form gave; the context to go on with, even where it can't be kept."""
    from warmup.session.context import open_context

    context = open_context(places, family, today, journal)
    context.editor.begin()
    return context
