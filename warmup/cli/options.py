"""What the command line may say, and its help."""

import argparse
import datetime as dt
import re
from collections.abc import Callable, Iterator, Sequence
from types import SimpleNamespace
from typing import NamedTuple

from warmup import __version__

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
        type=_name,
        metavar="NAME",
        help="today's morning for another adult: words, answers, cues and marks, and no setting is changed",
    )
    _commands(whole)
    return whole


class Command(NamedTuple):
    """One command: its words, what it does in a line, and the options it takes.

    An ``everyday`` one stands in ``warmup --help``, the others in ``warmup more``.
    """

    name: str
    help: str
    options: Callable[[argparse.ArgumentParser], None] = lambda _parser: None
    everyday: bool = False


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


def _today(today: argparse.ArgumentParser) -> None:
    today.add_argument("--date", type=_date, metavar="YYYY-MM-DD", help="another date than today")
    today.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose routine")
    _form(today).add_argument(
        "--brief",
        action="store_true",
        help="half a page to take to the table, with a box a mark; today's prompts are then kept, so that "
        "warmup and catch-up have the very same (those of another date are not kept)",
    )


def _catch_up(catch_up: argparse.ArgumentParser) -> None:
    catch_up.add_argument("date", type=_date, metavar="YYYY-MM-DD", help="the morning, today's or a past one")
    catch_up.add_argument(
        "--marks",
        metavar="LETTERS",
        help="a letter a prompt, such as wwsnw-w: w came easily, s hesitated, n not yet, - left, . no mark",
    )
    catch_up.add_argument("--replace", action="store_true", help="change what has a mark already, too")
    catch_up.add_argument(
        "--counts", action="store_true", help="where no school was planned: it counts as a school day"
    )
    catch_up.add_argument("--undo", action="store_true", help="take back what was last done on that morning")
    catch_up.add_argument("--adult", type=_name, default="", metavar="NAME", help="who marked")
    catch_up.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose morning")
    catch_up.add_argument(
        "--plain", action="store_true", default=argparse.SUPPRESS, help="asked in lines, not on a screen"
    )


def _report(report: argparse.ArgumentParser) -> None:
    report.add_argument(
        "--from", dest="first", type=_date, metavar="YYYY-MM-DD", help="its first day (else the year's)"
    )
    report.add_argument(
        "--to", dest="last", type=_date, metavar="YYYY-MM-DD", help="its last day (else today)"
    )
    report.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="of whom")
    report.add_argument(
        "--form",
        choices=("text", "html", "csv", "json"),
        help="what is printed or written; in a terminal it is shown as text first",
    )
    kind = report.add_mutually_exclusive_group()
    kind.add_argument("--letter", choices=("quarter", "year"), help="a letter to the family instead")
    kind.add_argument("--summer", action="store_true", help="a list for ten weeks of summer instead")
    report.add_argument("--out", metavar="FILE", help="write it to this new file, and show nothing")
    report.add_argument("--notes", action="store_true", help="with the notes that were ticked as shared")
    report.add_argument("--adult", type=_name, default="", metavar="NAME", help="with this name under it")


def _week(week: argparse.ArgumentParser) -> None:
    which = week.add_mutually_exclusive_group()
    which.add_argument("--week", type=_week_number, metavar="N", help="another week than this one (1 to 36)")
    which.add_argument("--date", type=_date, metavar="YYYY-MM-DD", help="the week that a date lies in")
    week.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose week")
    week.add_argument("--json", action="store_true", help="JSON, whole")


def _ready(ready: argparse.ArgumentParser) -> None:
    ready.add_argument(
        "--date", type=_date, metavar="YYYY-MM-DD", help="the morning of a date, or the next after it"
    )
    ready.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose morning")


def _past(past: argparse.ArgumentParser) -> None:
    past.add_argument("date", nargs="?", type=_date, metavar="YYYY-MM-DD", help="the morning (else the list)")
    past.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose mornings")
    past.add_argument("--all", action="store_true", help="the years before this school year as well")
    past.add_argument("--json", action="store_true", help="JSON")


def _notes(notes: argparse.ArgumentParser) -> None:
    notes.add_argument("words", nargs="*", metavar="WORD", help="words a note must have, all of them")
    notes.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose notes")
    notes.add_argument("--json", action="store_true", help="JSON")


def _game(game: argparse.ArgumentParser) -> None:
    game.add_argument("--skill", default="", metavar="SKILL", help="for this skill, such as make-ten")
    game.add_argument("--another", action="count", default=0, help="the next one; twice: the one after that")
    game.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="for whom")
    game.add_argument("--json", action="store_true", help="JSON, whole")


def _known(known: argparse.ArgumentParser) -> None:
    known.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="of whom")
    known.add_argument("--json", action="store_true", help="JSON, with the last marks of every level")


def _then(then: argparse.ArgumentParser) -> None:
    then.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="of whom")
    then.add_argument("--json", action="store_true", help="JSON, with what each sentence was worked out of")


def _practice(practice: argparse.ArgumentParser) -> None:
    practice.add_argument(
        "what",
        metavar="SKILL[:LEVEL]",
        help="a level, or a skill: its last open level",
    )
    practice.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose practice")
    practice.add_argument(
        "--plain", action="store_true", default=argparse.SUPPRESS, help="in lines, not on a screen"
    )


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


def _year(year: argparse.ArgumentParser) -> None:
    year.add_argument("--json", action="store_true", help="JSON, with every morning and day off")
    year.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose year")


def _guide(guide: argparse.ArgumentParser) -> None:
    guide.add_argument("topic", nargs="?", default="", metavar="TOPIC", help="one of them (else the list)")


def _sheets(sheets: argparse.ArgumentParser) -> None:
    sheets.add_argument(
        "kinds",
        nargs="*",
        metavar="KIND",
        help="what to print (else the list): any of them, all, week for what this week uses and you do not "
        "have yet, or today for today’s prompts on one page",
    )
    sheets.add_argument("--paper", choices=("letter", "a4"), default="letter", help="the paper (letter)")
    sheets.add_argument("--out", metavar="FILE", help="write it to this new file")
    sheets.add_argument("--open", action="store_true", help="show it in the browser, to print from there")
    sheets.add_argument("--printed", action="store_true", help="tick them: week leaves them out from now on")
    sheets.add_argument("--date", type=_date, metavar="YYYY-MM-DD", help="as on another date")
    sheets.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help="whose year")


def _catalogue(catalogue: argparse.ArgumentParser) -> None:
    catalogue.add_argument("--json", action="store_true", help="JSON, with every item in one list")


def _merge(merge: argparse.ArgumentParser) -> None:
    merge.add_argument("file", metavar="FILE", help="the other journal.db, or the folder it lies in")
    _with_forgotten(merge)


def _copy(copy: argparse.ArgumentParser) -> None:
    copy.add_argument("file", metavar="FILE", help="the file to make, or a folder that is there")


def _restore(restore: argparse.ArgumentParser) -> None:
    restore.add_argument("file", metavar="FILE", help="the copy")


def _export(export: argparse.ArgumentParser) -> None:
    export.add_argument("--all", action="store_true", required=True, help="journal and settings alike")
    export.add_argument("folder", metavar="DIR", help="a folder that is not there yet, or is empty")


def _import(take: argparse.ArgumentParser) -> None:
    take.add_argument("folder", metavar="DIR", help="the folder that export made")
    _with_forgotten(take)


def _forget(forget: argparse.ArgumentParser) -> None:
    forget.add_argument("name", metavar="CHILD", help="the nickname")


def _with_forgotten(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--with-forgotten", action="store_true", help="children that were taken out with forget, too"
    )


def _check(check: argparse.ArgumentParser) -> None:
    what = check.add_mutually_exclusive_group()
    what.add_argument(
        "--settings", action="store_true", help="list every setting of family.toml, with an example"
    )
    what.add_argument("--keys", action="store_true", help="list every action that may have keys of your own")


def _form(parser: argparse.ArgumentParser) -> argparse._MutuallyExclusiveGroup:
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
    return form


def _name(text: str) -> str:
    # The help needs neither, and loads neither.
    from warmup.config.toml_file import LONGEST_NAME
    from warmup.text import clean, shown, visible

    name = clean(text)
    # Nothing at all is no name, as where none is given.
    if len(name) > LONGEST_NAME or (text and not visible(name)):
        raise argparse.ArgumentTypeError(
            f"expected a name of at most {LONGEST_NAME} letters, found {shown(text)}"
        )
    return name


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


def _week_number(text: str) -> int:
    from warmup.schoolyear import WEEKS

    if not text.isascii() or not text.isdigit() or not 1 <= int(text[:6]) <= WEEKS:
        raise argparse.ArgumentTypeError(f"expected a week from 1 to {WEEKS}, found {text[:20]!r}")
    return int(text)


COMMANDS = (
    Command("today", "print the routine of a date", _today, everyday=True),
    Command("week", "print a week: its mornings, what opens, and what to gather", _week, everyday=True),
    Command("ready", "print what to have on the table on the next school morning", _ready, everyday=True),
    Command("stage", "a window for the child: the picture of the prompt at hand and nothing else", _stage,
            everyday=True),
    Command("check", "read every file and say what is wrong and where", _check, everyday=True),
    Command("more", "list the other commands", everyday=True),
    Command("guide", "tell how things are done here, a topic at a time", _guide),
    Command("ask", "print prompts of any kind", _ask),
    Command("game", "print a two-minute game with kitchen things, for what wobbled", _game),
    Command("why", "tell an item's whole story: its marks, how long it rests, when it is due", _why),
    Command("year", "print the year: its weeks, days off and what opens when", _year),
    Command("days", "list the days off ahead, or take days off out of a calendar file (.ics)", _days),
    Command("catch-up", "type in the marks of a morning that was done on paper", _catch_up),
    Command("report", "what was done, to read, print or keep: a record, a letter, a summer list", _report),
    Command("sheets", "paper to cut and to lay on the table, true to size, as a page to print", _sheets),
    Command("past", "list past mornings, or tell one: what was asked and how it went", _past),
    Command("known", "what the child knows: settled, growing, worth revisiting, not met yet", _known),
    Command("practice", "five prompts of one level, kept apart from mornings", _practice),
    Command("then", "then and now: what was hard at first, and comes easily by now", _then),
    Command("notes", "search the notes of what the child said", _notes),
    Command("catalogue", "list everything that can be asked, and when it unlocks", _catalogue),
    Command("merge", "take in the journal of another machine", _merge),
    Command("copy", "copy the journal to a file, and read the copy back", _copy),
    Command("restore", "put a copy in the journal's place; asks first", _restore),
    Command("export", "write everything as TOML and CSV, for other programs", _export),
    Command("import", "take back what export wrote", _import),
    Command("forget", "take a child out of every file, for good; asks first", _forget),
)  # fmt: skip
"""Every command in the order in which it is listed; the bare ``warmup`` opens the morning."""
