"""What ``warmup check`` looks at: every file, what is wrong in it and where."""

from collections.abc import Iterator
from pathlib import Path

from warmup import family as families
from warmup import skills
from warmup.documents import FileProblem, Missing, Places, clean, routines_folder, there
from warmup.journal import Journal
from warmup.plan import check_plan


def paths(places: Places) -> Iterator[str]:
    """The files the program uses, and which of them there are."""
    family, journal = places.config / "family.toml", places.data / "journal.db"
    yield f"Family: {clean(str(family))}{'' if there(family) else ' (not there yet)'}"
    yield f"Journal: {clean(str(journal))}{'' if there(journal) else ' (not there yet)'}"
    yield f"Routines that came with the program: {clean(str(routines_folder()))}"
    for path in _own(places):
        yield f"Your own routine: {clean(str(path))}"


def _own(places: Places) -> list[Path]:
    try:
        return sorted(path for path in places.config.glob("*.toml") if path.name != "family.toml")
    except OSError:
        # A folder that can't be read: the family file in it says so.
        return []


def findings(places: Places) -> Iterator[str]:
    """Every finding, a sentence each; none when all is well."""
    try:
        yield from families.warnings(families.load(places.config / "family.toml"))
    except Missing:
        pass
    except FileProblem as problem:
        yield str(problem)
    yield from map(str, check_plan(places))
    if there(places.data / "journal.db"):
        yield from Journal.examine(places.data, frozenset(skills.item_names()))
