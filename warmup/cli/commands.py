"""Every command: its words, its options, and what prints it."""

import argparse
from collections.abc import Callable
from typing import NamedTuple

from warmup.cli.values import count, date, name, week_number


class Command(NamedTuple):
    """One command: its words, what it does in a line, and the options it takes.

    An ``everyday`` one stands in ``warmup --help``, the others in ``warmup more``. ``printed`` names the
    function that prints it, as "module.function" of this room; it gets the options, the clock and the places.
    Without it the command writes, opens a window or has an exit code of its own: ``main.py`` has its case.
    """

    name: str
    help: str
    options: Callable[[argparse.ArgumentParser], None] = lambda _parser: None
    everyday: bool = False
    printed: str = ""


def _child(command: argparse.ArgumentParser, whose: str) -> None:
    command.add_argument("--child", default=argparse.SUPPRESS, metavar="NICKNAME", help=whose)


def _at(command: argparse._ActionsContainer, means: str) -> None:
    command.add_argument("--date", type=date, metavar="YYYY-MM-DD", help=means)


def _json(command: argparse._ActionsContainer, holds: str) -> None:
    command.add_argument("--json", action="store_true", help=holds)


def _today(today: argparse.ArgumentParser) -> None:
    _at(today, "another date than today")
    _child(today, "whose routine")
    _form(today).add_argument(
        "--brief",
        action="store_true",
        help="half a page to take to the table, with a box a mark; today's prompts are then kept, so that "
        "warmup and catch-up have the very same (those of another date are not kept)",
    )


def _catch_up(catch_up: argparse.ArgumentParser) -> None:
    catch_up.add_argument("date", type=date, metavar="YYYY-MM-DD", help="the morning, today's or a past one")
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
    catch_up.add_argument("--adult", type=name, default="", metavar="NAME", help="who marked")
    _child(catch_up, "whose morning")
    catch_up.add_argument(
        "--plain", action="store_true", default=argparse.SUPPRESS, help="asked in lines, not on a screen"
    )


def _report(report: argparse.ArgumentParser) -> None:
    report.add_argument(
        "--from", dest="first", type=date, metavar="YYYY-MM-DD", help="its first day (else the year's)"
    )
    report.add_argument(
        "--to", dest="last", type=date, metavar="YYYY-MM-DD", help="its last day (else today)"
    )
    _child(report, "of whom")
    report.add_argument(
        "--form",
        choices=("text", "html", "csv", "json"),
        help="what is printed or written; in a terminal it is shown as text first",
    )
    kind = report.add_mutually_exclusive_group()
    kind.add_argument("--letter", choices=("quarter", "year"), help="a letter to the family instead")
    kind.add_argument("--summer", action="store_true", help="a list for ten weeks of summer instead")
    report.add_argument("--out", metavar="FILE", help="write it to this new file, and show nothing")
    report.add_argument("--notes", action="store_true", help="with the notes that were marked for reports")
    report.add_argument("--adult", type=name, default="", metavar="NAME", help="with this name under it")


def _week(week: argparse.ArgumentParser) -> None:
    which = week.add_mutually_exclusive_group()
    which.add_argument("--week", type=week_number, metavar="N", help="another week than this one (1 to 36)")
    _at(which, "the week that a date lies in")
    _child(week, "whose week")
    _json(week, "JSON, whole")


def _ready(ready: argparse.ArgumentParser) -> None:
    _at(ready, "the morning of a date, or the next after it")
    _child(ready, "whose morning")


def _past(past: argparse.ArgumentParser) -> None:
    past.add_argument("date", nargs="?", type=date, metavar="YYYY-MM-DD", help="the morning (else the list)")
    _child(past, "whose mornings")
    past.add_argument("--all", action="store_true", help="the years before this school year as well")
    _json(past, "JSON")


def _notes(notes: argparse.ArgumentParser) -> None:
    notes.add_argument("words", nargs="*", metavar="WORD", help="words a note must have, all of them")
    _child(notes, "whose notes")
    _json(notes, "JSON")


def _game(game: argparse.ArgumentParser) -> None:
    game.add_argument("--skill", default="", metavar="SKILL", help="for this skill, such as make-ten")
    game.add_argument("--another", action="count", default=0, help="the next one; twice: the one after that")
    _child(game, "for whom")
    _json(game, "JSON, whole")


def _known(known: argparse.ArgumentParser) -> None:
    _child(known, "of whom")
    _json(known, "JSON, with the last marks of every level")


def _then(then: argparse.ArgumentParser) -> None:
    _child(then, "of whom")
    _json(then, "JSON, with what each sentence was worked out of")


def _practice(practice: argparse.ArgumentParser) -> None:
    practice.add_argument(
        "what",
        metavar="SKILL[:LEVEL]",
        help="a level, or a skill: its last open level",
    )
    _child(practice, "whose practice")
    practice.add_argument(
        "--plain", action="store_true", default=argparse.SUPPRESS, help="in lines, not on a screen"
    )


def _why(why: argparse.ArgumentParser) -> None:
    why.add_argument("item", metavar="ITEM", help="an item, such as make-ten/seven-three")
    _child(why, "whose story")


def _stage(stage: argparse.ArgumentParser) -> None:
    _child(stage, "whose morning (else the one at hand)")


def _days(days: argparse.ArgumentParser) -> None:
    days.add_argument(
        "--import",
        dest="file",
        metavar="FILE",
        help="an iCalendar file: check the days off to take out of it",
    )
    days.add_argument(
        "--take",
        default="",
        metavar="WHICH",
        help='take them at once: "checked" for what says there is no school, numbers like 1,3-5, or "all"',
    )
    _child(days, "whose undo takes it back")
    form = days.add_mutually_exclusive_group()
    form.add_argument(
        "--plain",
        action="store_true",
        default=False,
        help="in lines: no page to check them, also in a terminal",
    )
    _json(form, "JSON, and nothing changed")


def _ask(ask: argparse.ArgumentParser) -> None:
    ask.add_argument("skill", metavar="SKILL", help="a skill, such as make-ten")
    ask.add_argument("--level", metavar="LEVEL", help="one of its levels, by name or number from 1")
    ask.add_argument("--item", metavar="ITEM", help="one of its items")
    ask.add_argument("--count", type=count, default=1, metavar="N", help="how many (1 to 10000)")
    _at(ask, "as on another date")
    ask.add_argument("--seed", default="", metavar="TEXT", help="the same seed gives the same prompts")
    _form(ask)


def _year(year: argparse.ArgumentParser) -> None:
    _json(year, "JSON, with every morning and day off")
    _child(year, "whose year")


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
    sheets.add_argument(
        "--printed", action="store_true", help="check them off: week leaves them out from now on"
    )
    _at(sheets, "as on another date")
    _child(sheets, "whose year")


def _catalogue(catalogue: argparse.ArgumentParser) -> None:
    _json(catalogue, "JSON, with every item in one list")


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
    _json(form, "JSON, whole, with what each answer was computed from")
    parser.add_argument(
        "--answers", action=argparse.BooleanOptionalAction, default=True, help="with or without the answers"
    )
    return form


COMMANDS = (
    Command("today", "print the routine of a date", _today, everyday=True, printed="printing.today"),
    Command("week", "print a week: its mornings, what opens, and what to gather", _week, everyday=True,
            printed="week.week"),
    Command("ready", "print what to have on the table on the next school morning", _ready, everyday=True,
            printed="week.ready"),
    Command("stage", "a window for the child: the picture of the prompt at hand and nothing else", _stage,
            everyday=True),
    Command("check", "read every file and say what is wrong and where", _check, everyday=True),
    Command("more", "list the other commands", everyday=True, printed="printing.more"),
    Command("guide", "tell how things are done here, a topic at a time", _guide),
    Command("ask", "print prompts of any kind", _ask, printed="printing.ask"),
    Command("game", "print a two-minute game with kitchen things, for what wobbled", _game,
            printed="game.game"),
    Command("why", "tell an item's whole story: its marks, how long it rests, when it is due", _why,
            printed="printing.why"),
    Command("year", "print the year: its weeks, days off and what opens when", _year,
            printed="printing.year"),
    Command("days", "list the days off ahead, or take days off out of a calendar file (.ics)", _days),
    Command("catch-up", "type in the marks of a morning that was done on paper", _catch_up),
    Command("report", "what was done, to read, print or keep: a record, a letter, a summer list", _report),
    Command("sheets", "paper to cut and to lay on the table, true to size, as a page to print", _sheets),
    Command("past", "list past mornings, or tell one: what was asked and how it went", _past,
            printed="past.past"),
    Command("known", "what the child knows: settled, growing, worth revisiting, not met yet", _known,
            printed="known.run"),
    Command("practice", "five prompts of one level, kept apart from mornings", _practice),
    Command("then", "then and now: what was hard at first, and comes easily by now", _then,
            printed="then.then"),
    Command("notes", "search the notes of what the child said", _notes, printed="past.notes"),
    Command("catalogue", "list everything that can be asked, and when it unlocks", _catalogue,
            printed="printing.catalogue"),
    Command("merge", "take in the journal of another machine", _merge),
    Command("copy", "copy the journal to a file, and read the copy back", _copy),
    Command("restore", "put a copy in the journal's place; asks first", _restore),
    Command("export", "write everything as TOML and CSV, for other programs", _export),
    Command("import", "take back what export wrote", _import),
    Command("forget", "take a child out of every file, for good; asks first", _forget),
)  # fmt: skip
"""Every command in the order in which it is listed; the bare ``warmup`` opens the morning."""


def printed_by(name: str) -> tuple[str, str]:
    """The module and the function that print a command."""
    module, function = next(each for each in COMMANDS if each.name == name).printed.split(".")
    return module, function
