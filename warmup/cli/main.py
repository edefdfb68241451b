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
    from warmup.config.places import Places

DONE, WRONG, USAGE, UNUSABLE, MISTAKE = 0, 1, 2, 3, 4
Clock = Callable[[], dt.datetime]
KEEPING = frozenset({
    "days", "report", "practice", "sheets", "catch-up", "merge", "copy", "restore", "export", "import",
    "forget",
})  # fmt: skip
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
    if arguments.command not in ("guide", "more"):
        _see_the_clock(clock().date())
    if not arguments.demo:
        return _do(arguments, clock, _places())
    with _demo(clock) as places:
        return _do(arguments, clock, places, "Demo: an invented family.")


def _see_the_clock(today: dt.date) -> None:
    """FileProblem where the clock says a year that makes no sense: no school year lies there."""
    from warmup.text import CLOCK_YEARS

    if today.year not in CLOCK_YEARS:
        from pathlib import Path

        from warmup.config.toml_file import FileProblem

        expected = f"a year from {CLOCK_YEARS[0]} to {CLOCK_YEARS[-1]}"
        raise FileProblem(Path("clock"), None, "", expected, str(today.year), "Set this machine’s date.")


def _do(arguments: SimpleNamespace, clock: Clock, places: "Places", aside: str = "") -> int:
    from warmup.cli import opening

    if arguments.guest is not None and arguments.command is None:
        return opening.guest(places, arguments, clock, aside, terminal=_on_a_terminal())
    if arguments.command is None and arguments.plain:
        opening.in_lines(places, arguments, clock, aside)
        return DONE
    if arguments.command is None and _on_a_terminal():
        return opening.on_screen(places, arguments, clock, aside)
    if arguments.command == "stage":
        return opening.stage(places, arguments.child, clock, terminal=_on_a_terminal())
    match arguments.command:
        case command if command in KEEPING:
            return _keep(arguments, clock, places)
        case "today" if arguments.brief:
            return _keep(arguments, clock, places)
        case _:
            return _print(arguments, clock, places)


def _print(arguments: SimpleNamespace, clock: Clock, places: "Places") -> int:
    """The commands that print and write nothing."""
    match arguments.command:
        case None:
            # A bare `warmup` with no terminal.
            from warmup.cli.printing import today

            arguments.date, arguments.json, arguments.answers = None, False, True
            today(arguments, clock, places)
        case "check":
            from warmup.cli.printing import check

            return DONE if check(arguments, clock, places) else WRONG
        case "guide":
            from warmup.cli.guide import guide

            guide(arguments.topic, terminal=_on_a_terminal())
        case command:
            from importlib import import_module

            from warmup.cli.commands import printed_by

            module, function = printed_by(command)
            getattr(import_module(f"warmup.cli.{module}"), function)(arguments, clock, places)
    return DONE


def _keep(arguments: SimpleNamespace, clock: Clock, places: "Places") -> int:
    """The commands that may write: into the family's files, a copy, a report."""
    from warmup.cli import kept_commands
    from warmup.cli.opening import kept, opened

    match arguments.command:
        case "days":
            kept_commands.days(arguments, clock, places, opened, terminal=_on_a_terminal())
        case "report":
            kept_commands.report(arguments, clock, places, terminal=_on_a_terminal())
        case "catch-up":
            return kept_commands.catch_up(arguments, clock, places, opened, terminal=_on_a_terminal())
        case "practice":
            return kept_commands.practice(arguments, clock, places, opened, terminal=_on_a_terminal())
        case "sheets":
            kept_commands.sheets(arguments, clock, places, opened)
        case "today":
            kept_commands.brief(arguments, clock, places, opened)
        case "merge":
            from warmup.cli.merging import merge

            merge(arguments, clock, places, kept)
        case _:
            kept_commands.keep(arguments, clock, places, kept)
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


def _on_a_terminal() -> bool:
    # A stream that was closed before the start is None.
    return all(stream is not None and stream.isatty() for stream in (sys.stdout, sys.stdin))
