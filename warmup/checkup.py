"""What ``warmup check`` looks at: every file, what is wrong in it and where."""

from collections.abc import Iterator

from warmup import family as families
from warmup.documents import FileProblem, Missing, Places, routines_folder
from warmup.journal import Journal
from warmup.plan import check_plan


def paths(places: Places) -> Iterator[str]:
    """The files the program uses, and which of them there are."""
    family, journal = places.config / "family.toml", places.data / "journal.db"
    yield f"Family: {family}{'' if family.exists() else ' (not there yet)'}"
    yield f"Journal: {journal}{'' if journal.exists() else ' (not there yet)'}"
    yield f"Routines that came with the program: {routines_folder()}"
    own = (
        sorted(p for p in places.config.glob("*.toml") if p.name != "family.toml")
        if places.config.is_dir()
        else []
    )
    for path in own:
        yield f"Your own routine: {path}"


def findings(places: Places) -> Iterator[str]:
    """Every finding, a sentence each; none when all is well."""
    try:
        yield from families.warnings(families.load(places.config / "family.toml"))
    except Missing:
        pass
    except FileProblem as problem:
        yield str(problem)
    yield from map(str, check_plan(places))
    if (places.data / "journal.db").exists():
        yield from Journal.examine(places.data)
