"""The commands that print: routines, prompts, a story, the year, the catalogue, findings. None writes."""

import datetime as dt
import json
import sys
from collections.abc import Callable, Iterable
from contextlib import suppress
from itertools import cycle
from pathlib import Path
from types import SimpleNamespace
from typing import TYPE_CHECKING

from warmup.config.family import Family, default
from warmup.config.places import Places, there
from warmup.journal.journal import Journal
from warmup.session.context import Clock, Context, load_family, open_context
from warmup.session.stored import CHOSEN_ANEW, chosen_anew, stored
from warmup.text import clean, did_you_mean

if TYPE_CHECKING:
    from warmup.model import ItemId, Prompt, Routine
    from warmup.skills import Skill


class Refused(Exception):
    """The command line asks for something there is not: a sentence for standard error, and exit code 2."""


def whole_path(file: str, what: str) -> Path:
    """The whole path to a file or folder of the command line."""
    try:
        return Path(file).absolute()
    except FileNotFoundError:
        raise Refused(f"the folder you are in is gone; name a whole path to {what}") from None


def today(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the routine of a date: the one that was begun, else the one that would be."""
    from warmup.cli.plain import routine_lines
    from warmup.journal.routine_json import routine_data
    from warmup.session.unlocked import unlocked_levels
    from warmup.session.year_end import year_end

    context, journal = reading_context(places, arguments.child, clock, arguments.date)
    morning = context.morning(arguments.date)
    kept = journal, context.child.journal_name, morning.date
    begun = stored(*kept)
    if not begun and chosen_anew(*kept):
        complain(CHOSEN_ANEW)
    routine = begun[-1][1] if begun else context.routine(morning)
    if arguments.json:
        fresh = [level.level for level in unlocked_levels(context, morning) if level.fresh]
        data = routine_data(routine) | {
            "not_asked_yet": fresh,
            "teach_again": list(context.to_teach()),
            "closing": year_end(context, routine.morning),
        }
        show_json(data if arguments.answers else _without_answers(data))
    else:
        show(routine_lines(routine, context, answers=arguments.answers))
    if journal:
        journal.shut()


def on_paper(
    arguments: SimpleNamespace, clock: Clock, places: Places, use: "Callable[[Routine, Context], None]"
) -> None:
    """Hand over a date's routine, as the date would have it; it is kept nowhere."""
    from warmup.session.on_paper import at, routine_on

    context, journal = reading_context(places, arguments.child, clock, arguments.date)
    date = arguments.date or context.today
    routine = routine_on(context, date)
    use(routine, at(context, date))
    if journal:
        journal.shut()


def reading_context(
    places: Places, child: str, clock: Clock, date: dt.date | None = None, *, marks: bool = True
) -> tuple[Context, Journal | None]:
    """A context for printing: it writes nothing, and takes the defaults where there is no family yet.

    The defaults are those of ``date``, the one that is asked for: its routine must not hang on the clock.
    The journal comes with it where there is one and ``marks`` are wanted.
    """
    today = clock().date()
    family, saved = load_family(places, date or today)
    if not saved:
        complain(
            "no family.toml yet: a year from the last Monday of August, Monday to Thursday, is taken. "
            "Run warmup in a terminal to set it up."
        )
    journal: Journal | None = None
    if marks and there(places.data / "journal.db"):
        journal = Journal.open(places.data, clock, read_only=True)
        if journal.notice:
            complain(journal.notice)
        if not saved:
            family = default(date or today, journal.names())
    try:
        context = open_context(places, family, today, journal, child=child, saved=False)
    except KeyError:
        raise no_such_child(child, family) from None
    if context.own_problem:
        complain(str(context.own_problem))
    return context, journal


def no_such_child(nickname: str, family: Family) -> Refused:
    """There is no child of this nickname; the sentence names those there are."""
    names = ", ".join(each.nickname for each in family.children)
    return Refused(f"no child called {nickname!r} in family.toml; there is {names}")


def ask(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print prompts of a skill, a level or an item."""
    from warmup import skills
    from warmup.cli.plain import prompts_lines
    from warmup.english import date_words
    from warmup.journal.routine_json import FORMAT, VERSION, prompt_data
    from warmup.randomness import SeededRandom

    names = _items(arguments, places)
    context, _ = reading_context(places, "", clock, arguments.date, marks=False)
    morning = context.morning(arguments.date)
    able = [name for name in names if skills.askable(name, morning)]
    if not able:
        day = date_words(morning.date, year=True)
        raise Refused(f"{names[0]} is not asked on {day}: it belongs to certain school days only")
    seed = arguments.seed or f"{morning.date}"
    prompts: list[Prompt] = [
        skills.prompt(item, morning, SeededRandom("ask", seed, item, n), own=context.own_skill)
        for n, item in zip(range(arguments.count), cycle(able), strict=False)
    ]
    if arguments.json:
        data = {"format": FORMAT, "version": VERSION, "prompts": [prompt_data(prompt) for prompt in prompts]}
        show_json(data if arguments.answers else _without_answers(data))
    else:
        show(prompts_lines(prompts, answers=arguments.answers))


def _items(arguments: SimpleNamespace, places: Places) -> "list[ItemId]":
    """The items ``ask`` is to ask, or Refused with what there is. FileProblem for own.toml."""
    from warmup.model import OWN_SKILL, item_id
    from warmup.skills import SKILLS

    skill = _own_skill(places) if arguments.skill == OWN_SKILL else SKILLS.get(arguments.skill)
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
        wanted = arguments.item.removeprefix(item_id(skill.id, ""))
        if wanted not in names:
            raise Refused(f"no item {arguments.item!r} there; there is {', '.join(names)}")
        names = [wanted]
    return [item_id(skill.id, name) for name in names]


def _own_skill(places: Places) -> "Skill":
    """The skill of what the family wrote itself, or Refused where it wrote nothing."""
    from warmup.config.own import NAME, load_own

    own = load_own(places)
    if own is None:
        raise Refused(f"there are no prompts of your own yet; they would stand in {places.config / NAME}")
    return own.skill


def why(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the story of an item."""
    from warmup.model import is_own
    from warmup.session.story import story
    from warmup.skills import item_names

    item, own = arguments.item, is_own(arguments.item)
    if not own and item not in item_names():
        raise Refused(f"no item {item!r}{did_you_mean(item, item_names())}")
    context, journal = reading_context(places, arguments.child, clock)
    if own and item not in context.curriculum().by_id:
        raise Refused(f"no item {item!r}{did_you_mean(item, context.curriculum().by_id)}")
    show(story(context, item))
    if journal:
        journal.shut()


def catalogue(arguments: SimpleNamespace, _clock: Clock, places: Places) -> None:
    """Print everything there is to ask."""
    from warmup.cli.catalogue import catalogue_data, catalogue_lines
    from warmup.config.own import load_own
    from warmup.config.plan import load_plan
    from warmup.config.toml_file import FileProblem

    plan, own = load_plan(places), None
    try:
        own = load_own(places)
    except FileProblem as problem:
        complain(str(problem))
    if arguments.json:
        show_json(catalogue_data(plan, own))
    else:
        show(catalogue_lines(plan, own))


def more(_arguments: SimpleNamespace, _clock: Clock, _places: Places) -> None:
    """Print the commands that no morning needs."""
    from warmup.cli.options import more_lines

    show(more_lines())


def year(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print the year as it lies before a child."""
    from warmup.cli.year import year_data, year_lines

    context, journal = reading_context(places, arguments.child, clock)
    if arguments.json:
        show_json(year_data(context))
    else:
        show(year_lines(context))
    if journal:
        journal.shut()


def check(arguments: SimpleNamespace, clock: Clock, places: Places) -> bool:
    """Print what is wrong with any file, or the settings there are; whether all is well."""
    from warmup.cli.checkup import findings, paths
    from warmup.cli.keeping import check_line
    from warmup.config.settings import lines
    from warmup.config.toml_file import FileProblem

    if arguments.settings:
        show(lines())
        return True
    if arguments.keys:
        from warmup.tui import keymap

        show(keymap.lines())
        return True
    show(paths(places))
    with suppress(FileProblem):  # Said below.
        show([check_line(places, clock().date())])
    found = list(findings(places, clock))
    show(found or ["Everything can be read."])
    return not found


def _without_answers(data: dict[str, object]) -> dict[str, object]:
    prompts = data["prompts"]
    assert isinstance(prompts, list)
    for prompt in prompts:
        for key in ("answer", "accept", "working"):
            del prompt[key]
    return data


def show(lines: Iterable[str]) -> None:
    """Print lines, where there is anything to print to."""
    if sys.stdout is None:
        return
    # A terminal that lacks a letter gets a question mark rather than a traceback.
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="replace")
    for line in lines:
        print(_harmless(line))
    sys.stdout.flush()


def complain(sentence: str) -> None:
    """Say what is wrong, apart from what was asked for."""
    print(f"warmup: {_harmless(sentence)}", file=sys.stderr)


def _harmless(line: str) -> str:
    """The line without anything a terminal would obey, wherever it came from."""
    return line if line.isprintable() else clean(line)


def show_json(data: object) -> None:
    """Print a value as JSON."""
    show(json.dumps(data, indent=2).splitlines())
