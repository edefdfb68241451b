"""What the command line may say, and its help."""

import argparse
import datetime as dt
from collections.abc import Sequence
from types import SimpleNamespace

from warmup import __version__

_DEMO = "an invented family in a temporary place, nothing of yours touched"


def parse(words: Sequence[str]) -> SimpleNamespace:
    """The words after ``warmup``, understood: ``command`` is None for the morning itself.

    Ends the program where they can't be, or when help or the version was asked for.
    """
    return parser().parse_args(words, SimpleNamespace())


def parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    whole = argparse.ArgumentParser(
        prog="warmup",
        description="A short spoken math warm-up for a five-year-old: opens today's morning.",
        epilog="Exit codes: 0 done, 1 check found something wrong, 2 not understood, 3 a file is unusable, "
        "4 a mistake of the program.",
    )
    whole.add_argument("--version", action="version", version=f"warmup {__version__}")
    whole.add_argument("--demo", action="store_true", help=_DEMO)
    whole.add_argument(
        "--plain",
        action="store_true",
        help="the whole morning in lines: for a braille line, or a terminal that draws nothing",
    )
    whole.add_argument(
        "--child", default="", metavar="NICKNAME", help="whose morning, where there are several children"
    )
    _commands(whole)
    return whole


def _commands(whole: argparse.ArgumentParser) -> None:
    # With `prog` given, argparse need not lay out a usage line to find it.
    commands = whole.add_subparsers(title="commands", metavar="COMMAND", prog="warmup", dest="command")
    _today(commands.add_parser("today", help="print the routine of a date"))
    _ask(commands.add_parser("ask", help="print prompts of any kind"))
    _why(
        commands.add_parser(
            "why", help="tell an item's whole story: its marks, how long it rests, when it is due"
        )
    )
    _stage(
        commands.add_parser(
            "stage", help="a window for the child: the picture of the prompt at hand and nothing else"
        )
    )
    catalogue = commands.add_parser(
        "catalogue", help="list everything that can be asked, and when it unlocks"
    )
    catalogue.add_argument("--json", action="store_true", help="JSON, with every item in one list")
    _days(
        commands.add_parser(
            "days", help="list the days off ahead, or take days off out of a calendar file (.ics)"
        )
    )
    merge = commands.add_parser("merge", help="take in the journal of another machine")
    merge.add_argument("file", metavar="FILE", help="the other journal.db, or the folder it lies in")
    check = commands.add_parser("check", help="read every file and say what is wrong and where")
    check.add_argument(
        "--settings", action="store_true", help="list every setting of family.toml, with an example"
    )
    for command in commands.choices.values():
        # Behind a command as well as before it: whoever asks for the demo never gets the family's own.
        command.add_argument("--demo", action="store_true", default=argparse.SUPPRESS, help=_DEMO)


def _today(today: argparse.ArgumentParser) -> None:
    today.add_argument("--date", type=_date, metavar="YYYY-MM-DD", help="another date than today")
    today.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose routine")
    _form(today)


def _why(why: argparse.ArgumentParser) -> None:
    why.add_argument("item", metavar="ITEM", help="an item, such as make-ten/seven-three")
    why.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose story")


def _stage(stage: argparse.ArgumentParser) -> None:
    stage.add_argument(
        "--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose morning (else the one at hand)"
    )


def _days(days: argparse.ArgumentParser) -> None:
    days.add_argument(
        "--import", dest="file", metavar="FILE", help="an iCalendar file: tick the days off to take out of it"
    )
    days.add_argument(
        "--take",
        default="",
        metavar="WHICH",
        help='take them at once: "ticked" for what says there is no school, numbers like 1,3-5, or "all"',
    )
    days.add_argument(
        "--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose undo takes it back"
    )
    form = days.add_mutually_exclusive_group()
    form.add_argument(
        "--plain",
        action="store_true",
        default=False,
        help="in lines: no page to tick them, also in a terminal",
    )
    form.add_argument("--json", action="store_true", help="JSON, and nothing changed")


def _ask(ask: argparse.ArgumentParser) -> None:
    ask.add_argument("skill", metavar="SKILL", help="a skill, such as make-ten")
    ask.add_argument("--level", metavar="LEVEL", help="one of its levels, by name or number from 1")
    ask.add_argument("--item", metavar="ITEM", help="one of its items")
    ask.add_argument("--count", type=_count, default=1, metavar="N", help="how many (1 to 10000)")
    ask.add_argument("--date", type=_date, metavar="YYYY-MM-DD", help="as on another date")
    ask.add_argument("--seed", default="", metavar="TEXT", help="the same seed gives the same prompts")
    _form(ask)


def _form(parser: argparse.ArgumentParser) -> None:
    form = parser.add_mutually_exclusive_group()
    form.add_argument(
        "--plain", dest="json", action="store_false", default=False, help="plain text (as it is without this)"
    )
    form.add_argument(
        "--json", action="store_true", help="JSON, whole, with what each answer was computed from"
    )
    parser.add_argument(
        "--answers", action=argparse.BooleanOptionalAction, default=True, help="with or without the answers"
    )


def _date(text: str) -> dt.date:
    try:
        day = dt.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"expected a date like 2026-09-01, found {text!r}") from None
    if not 1900 <= day.year <= 2200:
        raise argparse.ArgumentTypeError(f"expected a year from 1900 to 2200, found {day.year}")
    return day


def _count(text: str) -> int:
    if not text.isascii() or not text.isdigit() or not 1 <= int(text[:6]) <= 10_000:
        raise argparse.ArgumentTypeError(f"expected a number from 1 to 10000, found {text[:20]!r}")
    return int(text)
