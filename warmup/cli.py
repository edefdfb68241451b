"""The command line. A screen is imported only on the way to opening one.

Exit codes: 0 done; 1 ``check`` found something wrong; 2 the command line was not understood;
3 a file cannot be used as it is (one sentence on standard error says which, and what to do); 4 a mistake
of the program itself (one sentence says where; WARMUP_TRACEBACK=1 shows the way there).
"""

import contextlib
import datetime as dt
import gc
import os
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from types import SimpleNamespace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from warmup.desk import Desk
    from warmup.documents import Places
    from warmup.family import Family
    from warmup.journal import Journal
    from warmup.morning import Prompt

DONE, WRONG, USAGE, UNUSABLE, MISTAKE = 0, 1, 2, 3, 4
Clock = Callable[[], dt.datetime]


class Refused(Exception):
    """The command line asks for something there is not: a sentence for standard error, and exit code 2."""


def main(argv: Sequence[str] | None = None, clock: Clock = dt.datetime.now) -> int:
    """Run one command and give its exit code. ``clock`` is read once, at the start of a command."""
    arguments = _arguments(sys.argv[1:] if argv is None else argv)
    # Hundreds of modules are about to be loaded, all of which stay: looking for garbage among them would
    # cost a quarter of the time to the first frame. The app turns it on again once that is painted, and a
    # command that prints is over before there is any.
    gc.disable()
    try:
        return _run(arguments, clock)
    except Refused as refused:
        print(f"warmup: {refused}", file=sys.stderr)
        return USAGE
    except BrokenPipeError:
        # The reader went away (``| head``): nothing is wrong, and nothing more can be said.
        _print_no_more()
        return DONE
    except KeyboardInterrupt:
        return DONE
    except Exception as error:
        if os.environ.get("WARMUP_TRACEBACK"):
            raise
        sentence = _sentence(error)
        _print_no_more()
        print(f"warmup: {sentence or _mistake(error)}", file=sys.stderr)
        return UNUSABLE if sentence else MISTAKE
    finally:
        gc.enable()


def _arguments(words: Sequence[str]) -> SimpleNamespace:
    """The command line, understood. A bare ``warmup``, what each morning brings, waits for no parser."""
    if not words:
        return SimpleNamespace(command=None, demo=False, child="")
    from warmup.options import parse

    return parse(words)


def _run(arguments: SimpleNamespace, clock: Clock) -> int:
    """Do what was asked for and give the exit code."""
    match arguments.command:
        case "today":
            return _today(arguments, clock)
        case "ask":
            return _ask(arguments, clock)
        case "why":
            return _why(arguments, clock)
        case "catalogue":
            return _catalogue(arguments)
        case "merge":
            return _merge(arguments, clock)
        case "check":
            return _check()
    return _open(arguments, clock)


def _sentence(error: Exception) -> str:
    """What is wrong with a file or a disk, in a sentence; nothing for what is a mistake of the program."""
    from warmup.documents import FileProblem, clean
    from warmup.journal import JournalProblem

    match error:
        case FileProblem() | JournalProblem():
            return str(error)
        case OSError():
            place = clean(str(error.filename)) if error.filename else "what was to be printed"
            return f"{place}: {error.strerror or clean(str(error))}."
    return ""


def _mistake(error: Exception) -> str:
    """A mistake of the program in a sentence: its kind and where, and nothing of what it was working on."""
    import traceback
    from pathlib import Path

    frames = traceback.extract_tb(error.__traceback__)
    own = [frame for frame in frames if Path(frame.filename).is_relative_to(Path(__file__).parent)]
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


# -- opening the morning


def _open(arguments: SimpleNamespace, clock: Clock) -> int:
    if arguments.demo:
        return _demo(arguments, clock)
    if not _on_a_terminal():
        arguments.date, arguments.json, arguments.answers = None, False, True
        return _today(arguments, clock)
    return _morning(_places(), arguments.child, clock)


def _on_a_terminal() -> bool:
    # A stream that was closed before the start is None.
    return all(stream is not None and stream.isatty() for stream in (sys.stdout, sys.stdin))


def _morning(places: "Places", child: str, clock: Clock, aside: str = "") -> int:
    from warmup.app import WarmupApp, draw_in_utf8
    from warmup.desk import load_family

    today = clock().date()
    family, saved = load_family(places, today)
    with _kept(places, clock, "what was marked just now") as journal:
        desk = _sit_down(places, family, today, journal, child, saved)
        welcome = None if saved else lambda family: _welcomed(places, family, today, journal)
        draw_in_utf8()
        app = WarmupApp(desk, journal, clock, (journal.notice,), welcome, aside)
        app.run()
    return app.ended()


@contextlib.contextmanager
def _kept(places: "Places", clock: Clock, what: str) -> Iterator["Journal"]:
    """The journal, to write ``what`` in; JournalProblem where in the end not all of it is on disk."""
    from warmup.documents import clean
    from warmup.journal import Journal, JournalProblem

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


def _welcomed(places: "Places", family: "Family", today: dt.date, journal: "Journal") -> "Desk":
    """Keep the family the form gave; the desk to go on with, even where it can't be kept."""
    from warmup.desk import sit_down

    desk = sit_down(places, family, today, journal)
    desk.change(family)
    return desk


def _demo(arguments: SimpleNamespace, clock: Clock) -> int:
    import tempfile
    from pathlib import Path

    from warmup.demo import set_up, temporary

    with tempfile.TemporaryDirectory(prefix="warmup-demo-", ignore_cleanup_errors=True) as folder:
        places = temporary(Path(folder))
        set_up(places, clock().date())
        if _on_a_terminal():
            return _morning(places, arguments.child, clock, "Demo: an invented family.")
        arguments.date, arguments.json, arguments.answers = None, False, True
        return _today(arguments, clock, places)


def _places() -> "Places":
    from warmup.documents import places

    return places(os.environ)


def _sit_down(
    places: "Places", family: "Family", today: dt.date, journal: "Journal | None", child: str, saved: bool
) -> "Desk":
    from warmup.desk import sit_down

    try:
        return sit_down(places, family, today, journal, child=child, saved=saved)
    except KeyError:
        names = ", ".join(each.nickname for each in family.children)
        raise Refused(f"no child called {child!r} in family.toml; there is {names}") from None


# -- printing


def _today(arguments: SimpleNamespace, clock: Clock, places: "Places | None" = None) -> int:
    from warmup.plain import routine_lines
    from warmup.wire import routine_data, routine_from

    desk, journal = _reading_desk(places or _places(), arguments.child, clock, arguments.date)
    day = arguments.date or desk.today
    stored = journal.sittings_of(desk.child.record, day) if journal else []
    routine = routine_from(stored[-1].routine) if stored else desk.routine(day)
    if arguments.json:
        data = routine_data(routine) | {"teach_again": list(desk.to_teach())}
        _print_json(data if arguments.answers else _without_answers(data))
    else:
        _print(routine_lines(routine, desk, answers=arguments.answers))
    if journal:
        journal.shut()
    return DONE


def _reading_desk(
    places: "Places", child: str, clock: Clock, day: dt.date | None = None, *, marks: bool = True
) -> tuple["Desk", "Journal | None"]:
    """A desk for printing: it writes nothing, and takes the defaults where there is no family yet.

    The defaults are those of ``day``, the date that is asked for: its routine must not hang on the clock.
    The journal comes with it where there is one and ``marks`` are wanted.
    """
    from warmup.desk import load_family
    from warmup.documents import there

    today = clock().date()
    family, saved = load_family(places, day or today)
    if not saved:
        print(
            "warmup: no family.toml yet: a year from the last Monday of August, Monday to Thursday, is "
            "taken. Run warmup in a terminal to set it up.",
            file=sys.stderr,
        )
    journal: Journal | None = None
    if marks and there(places.data / "journal.db"):
        from warmup.journal import Journal as Disk

        journal = Disk.open(places.data, clock, read_only=True)
        if journal.notice:
            print(f"warmup: {journal.notice} No mark in it is counted here.", file=sys.stderr)
    return _sit_down(places, family, today, journal, child, saved=False), journal


def _ask(arguments: SimpleNamespace, clock: Clock) -> int:
    from warmup import skills
    from warmup.draw import Draw
    from warmup.plain import prompts_lines
    from warmup.wire import FORMAT, VERSION, prompt_data
    from warmup.words import date_words

    names = _items(arguments)
    desk, _ = _reading_desk(_places(), "", clock, arguments.date, marks=False)
    morning = desk.morning(arguments.date or desk.today)
    able = [name for name in names if skills.askable(name, morning)]
    if not able:
        day = date_words(morning.date, year=True)
        raise Refused(f"{names[0]} is not asked on {day}: it belongs to certain school days only")
    seed = arguments.seed or f"{morning.date}"
    prompts: list[Prompt] = [
        skills.prompt(able[n % len(able)], morning, Draw("ask", seed, able[n % len(able)], n))
        for n in range(arguments.count)
    ]
    if arguments.json:
        data = {"format": FORMAT, "version": VERSION, "prompts": [prompt_data(prompt) for prompt in prompts]}
        _print_json(data if arguments.answers else _without_answers(data))
    else:
        _print(prompts_lines(prompts, answers=arguments.answers))
    return DONE


def _items(arguments: SimpleNamespace) -> list[str]:
    """The items ``ask`` is to ask, or Refused with what there is."""
    from warmup.documents import did_you_mean
    from warmup.skills import SKILLS

    skill = SKILLS.get(arguments.skill)
    if skill is None:
        raise Refused(f"no skill {arguments.skill!r}{did_you_mean(arguments.skill, SKILLS)}")
    levels = list(skill.levels)
    if arguments.level:
        levels = [level for n, level in enumerate(levels, 1) if arguments.level in (level.key, str(n))]
        if not levels:
            known = ", ".join(level.key for level in skill.levels)
            raise Refused(f"no level {arguments.level!r} in {skill.id}; there is {known}")
    names = [name for level in levels for name in level.items]
    if arguments.item:
        wanted = arguments.item.removeprefix(f"{skill.id}/")
        if wanted not in names:
            raise Refused(f"no item {arguments.item!r} there; there is {', '.join(names)}")
        names = [wanted]
    return [f"{skill.id}/{name}" for name in names]


def _why(arguments: SimpleNamespace, clock: Clock) -> int:
    from warmup.documents import did_you_mean
    from warmup.skills import item_names
    from warmup.story import story

    if arguments.item not in item_names():
        raise Refused(f"no item {arguments.item!r}{did_you_mean(arguments.item, item_names())}")
    desk, journal = _reading_desk(_places(), arguments.child, clock)
    _print(story(desk, arguments.item))
    if journal:
        journal.shut()
    return DONE


def _catalogue(arguments: SimpleNamespace) -> int:
    from warmup.catalogue import catalogue_data, catalogue_lines
    from warmup.plan import load_plan

    plan = load_plan(_places())
    if arguments.json:
        _print_json(catalogue_data(plan))
    else:
        _print(catalogue_lines(plan))
    return DONE


def _without_answers(data: dict[str, object]) -> dict[str, object]:
    prompts = data["prompts"]
    assert isinstance(prompts, list)
    for prompt in prompts:
        for key in ("answer", "accept", "working"):
            del prompt[key]
    return data


def _print(lines: Iterable[str]) -> None:
    if sys.stdout is None:
        return
    # A terminal that lacks a letter gets a question mark rather than a traceback.
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")
    for line in lines:
        print(line)
    sys.stdout.flush()


def _print_json(data: object) -> None:
    import json

    _print([json.dumps(data, indent=2)])


# -- two laptops


def _merge(arguments: SimpleNamespace, clock: Clock) -> int:
    """Take in the journal of another machine, and say how many mornings of each child are new here."""
    from pathlib import Path

    from warmup.desk import load_family
    from warmup.documents import clean
    from warmup.store import NAME

    places = _places()
    family, _ = load_family(places, clock().date())
    other = Path(arguments.file).absolute()
    if other.is_dir():
        other /= NAME
    with _kept(places, clock, "what was taken in") as journal:
        if journal.notice:
            print(f"warmup: {journal.notice}", file=sys.stderr)
        if other.resolve() == journal.path.resolve():
            raise Refused(f"{clean(str(other))} is your own journal; name the other one")
        before = journal.mornings()
        journal.merge(other)
        after = journal.mornings()
    known = {child.record: child.nickname for child in family.children}
    for record, mornings in after.items():
        new = mornings - before.get(record, 0)
        who = clean(known.get(record, record))
        unknown = "" if record in known else "; family.toml has no child of that name"
        _print([f"{who}: {mornings} morning{'s' * (mornings != 1)} in all, {new} new here{unknown}."])
    _print(["Of two marks on one prompt the later counts. The other journal is as it was."])
    return DONE


# -- checking


def _check() -> int:
    from warmup.checkup import findings, paths

    places = _places()
    _print(paths(places))
    found = list(findings(places))
    _print(found or ["Everything can be read."])
    return WRONG if found else DONE
