"""What the command line may say, and its help."""

import argparse
import re
from collections.abc import Iterator, Sequence
from types import SimpleNamespace

from warmup import __version__
from warmup.cli.commands import COMMANDS
from warmup.cli.values import name

_OTHER = re.compile("--.*[^-.nsw]|[0-9]{4}-", re.IGNORECASE)
"""What ends a line of letters: the next option, which has another letter, or a date."""
_DEMO = "an invented family in a temporary place, nothing of yours touched"


def parse(words: Sequence[str]) -> SimpleNamespace:
    """The words after ``warmup``, understood: ``command`` is None for the morning itself.

    Ends the program where they can't be, or when help or the version was asked for.
    """
    known = parser()
    found = known.parse_args(_marks_joined(words), SimpleNamespace())
    if found.guest is not None and (found.command or found.guest in _names(known)):
        known.error("--guest opens today's morning, and goes with no command")
    return found


def _names(whole: argparse.ArgumentParser) -> set[str]:
    """The names of the commands."""
    return {name for action in whole._actions for name in (getattr(action, "choices", None) or ())}


def _marks_joined(words: Sequence[str]) -> list[str]:
    """The words with all letters after ``--marks`` in one: a mark may be a hyphen, or stand alone."""
    joined: list[str] = []
    for word in words:
        if joined and joined[-1].startswith("--marks=") and not _OTHER.match(word):
            joined[-1] += word
        else:
            # Two hyphens alone would be taken for the end of the options.
            joined.append("--marks= " if word == "--marks" else word)
    return joined


def parser() -> argparse.ArgumentParser:
    """The commands and their options."""
    whole = argparse.ArgumentParser(
        prog="warmup",
        description="A short spoken math warm-up for a five-year-old: opens today's morning. "
        "How things are done is told by warmup guide.",
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
    whose = whole.add_mutually_exclusive_group()
    whose.add_argument(
        "--child", default="", metavar="NICKNAME", help="whose morning, where there are several children"
    )
    whose.add_argument(
        "--together", action="store_true", help="one morning for several children: their prompts take turns"
    )
    whole.add_argument(
        "--guest",
        nargs="?",
        const="",
        type=name,
        metavar="NAME",
        help="today's morning for another adult: words, answers, cues and marks, and no setting is changed",
    )
    _commands(whole)
    return whole


def _commands(whole: argparse.ArgumentParser) -> None:
    # With `prog` given, argparse need not lay out a usage line to find it.
    commands = whole.add_subparsers(title="commands", metavar="COMMAND", prog="warmup", dest="command")
    for command in COMMANDS:
        told = f"{command.help[0].upper()}{command.help[1:]}."
        # A command without a help is understood, and not listed.
        if command.everyday:
            parser = commands.add_parser(command.name, description=told, help=command.help)
        else:
            parser = commands.add_parser(command.name, description=told)
        command.options(parser)
        # Behind a command as well as before it: whoever asks for the demo never gets the family's own.
        parser.add_argument("--demo", action="store_true", default=argparse.SUPPRESS, help=_DEMO)


def more_lines() -> Iterator[str]:
    """The commands that no morning needs, each with what it does."""
    yield "Besides the everyday commands of warmup --help there are:"
    yield ""
    for command in COMMANDS:
        if not command.everyday:
            yield f"  {command.name:<10} {command.help}"
    yield ""
    yield "warmup COMMAND --help has the options of each."
