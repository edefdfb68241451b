"""What ``warmup check`` looks at: every file, what is wrong in it and where."""

from collections.abc import Iterator, Mapping
from pathlib import Path

from warmup import skills
from warmup.config import family as families
from warmup.config.own import NAME, load_own
from warmup.config.places import Places, routines_folder, there
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import FileProblem, Missing
from warmup.english import plural
from warmup.journal.journal import Journal, JournalProblem
from warmup.session.context import Clock
from warmup.text import clean, shown


def paths(places: Places) -> Iterator[str]:
    """The files the program uses, and which of them there are."""
    family, journal = places.config / "family.toml", places.data / "journal.db"
    yield f"Family: {clean(str(family))}{'' if there(family) else ' (not there yet)'}"
    yield f"Journal: {clean(str(journal))}{'' if there(journal) else ' (not there yet)'}"
    yield f"Routines that came with the program: {clean(str(routines_folder()))}"
    if there(places.config / NAME):
        yield f"Your own prompts: {clean(str(places.config / NAME))}"
    for path in _routines(places):
        yield f"Your own routine: {clean(str(path))}"


def _routines(places: Places) -> list[Path]:
    others = ("family.toml", NAME)
    try:
        return sorted(path for path in places.config.glob("*.toml") if path.name not in others)
    except OSError:
        # A folder that can't be read: the family file in it says so.
        return []


def findings(places: Places, clock: Clock) -> Iterator[str]:
    """Every finding, a sentence each; none when all is well."""
    family: families.Family | None = None
    readable = True
    try:
        family = families.load(places.config / "family.toml")
        yield from families.warnings(family)
        if family.keys:
            from warmup.tui import keymap

            yield from map(str, keymap.problems(family.keys, places.config / "family.toml"))
    except Missing:
        pass
    except FileProblem as problem:
        readable = False
        yield str(problem)
    yield from map(str, check_plan(places))
    try:
        load_own(places)
    except FileProblem as problem:
        yield str(problem)
    if there(places.data / "journal.db"):
        wrong = Journal.examine(places.data, frozenset(skills.item_names()))
        yield from wrong
        if readable and not wrong:
            yield from _orphans(_mornings(places, clock), places, family)


def _orphans(journal: Mapping[str, int], places: Places, family: families.Family | None) -> Iterator[str]:
    """What the journal knows and the family does not: marks that nobody would see."""
    known = {child.journal_name for child in family.children} if family else set()
    for name, mornings in journal.items():
        if name in known:
            continue
        kept = f"The journal holds {mornings} {plural(mornings, 'morning')} of {shown(name)}"
        if family:
            yield (
                f"{kept}, and no child in family.toml has that record. "
                f"A [[child]] with a nickname and record = {shown(name)} brings them back."
            )
        else:
            backup = "family.toml.bak"
            copy = f"copy {backup} to family.toml, or " if there(places.config / backup) else ""
            yield f"{kept}, and there is no family.toml: {copy}run warmup, whose form takes them up."


def _mornings(places: Places, clock: Clock) -> Mapping[str, int]:
    try:
        journal = Journal.open(places.data, clock, read_only=True)
    except JournalProblem:
        return {}  # Said already.
    mornings = journal.mornings()
    journal.shut()
    return mornings
