"""A child taken out of everything the family's files hold, for good."""

import os
import re
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.keeping import made_in
from warmup.cli.lines import Ended, ask
from warmup.cli.printing import Refused, show, whole_path
from warmup.config import family as families
from warmup.config.family import PLACEHOLDER, Child, Family
from warmup.config.keeping import copies_folder
from warmup.config.places import Places, there
from warmup.config.writing import outdate_backup, sync_folder
from warmup.journal import at_hand, copies, forgetting, remembered
from warmup.journal.journal import Journal
from warmup.journal.schema import Damaged
from warmup.journal.store import NAME, JournalProblem, refuse_newer
from warmup.session.context import Clock, load_family
from warmup.text import clean

_FAMILY_BEFORE = re.compile(r"family-[0-9-]*\.toml")
"""The names of copies of family.toml that were made before a child was taken out of it."""
_OTHER_PLACEHOLDER = "Pebble"
_LARGEST = 100_000_000
"""The largest file that is looked through for the name, in bytes."""


def forget(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Take a child out of journal, family.toml, its backup, the note at hand and the copies, once confirmed.

    Raises JournalProblem where a journal still holds the child; what could be done is done by then.
    """
    family, saved = load_family(places, clock().date())
    nickname, name = _whom(arguments.name, family, places, clock)
    if there(places.data / NAME):
        # One whose version makes no sense is damaged, and set aside when it is opened.
        with suppress(Damaged):
            refuse_newer(places.data / NAME)
    show(
        [
            f"{clean(nickname)}: every morning and every mark goes, for good, out of the journal, "
            "family.toml, the weekly copies and the journals set aside.",
            "A damaged journal that was set aside and has the name in it is deleted.",
            "Close every other window of warmup first.",
        ]
    )
    try:
        file = ask("To keep a copy of the journal first, type a file for it; Enter for none: ")
        again = ask(f"To forget {clean(nickname)}, type the nickname again; Enter leaves all as it is: ")
    except Ended:
        again = file = ""
    if again != nickname:
        show(["Nothing was changed."])
        return
    if file:
        _copy(places, whole_path(file, "the copy"))
    if saved:
        _out_of_family(places, family, name)
    wrong = [*_out_of_journals(places, family, name, clock)]
    _out_of_notes(places, {nickname, name})
    _settle(places, family)
    show([f"{clean(nickname)} is forgotten."] * (not wrong))
    _tell_what_is_left(places, {nickname, name})
    if wrong:
        again = f"Run “warmup forget {clean(name)}” once more when that can be done."
        raise JournalProblem(" ".join((*wrong, again)))


def _whom(typed: str, family: Family, places: Places, clock: Clock) -> tuple[str, str]:
    """The nickname and the name in the journal of the child that is meant. Refused where there is none."""
    for child in family.children:
        if child.nickname == typed:
            return child.nickname, child.journal_name
    journal = Journal.open(places.data, clock, read_only=True)
    known = journal.mornings()
    journal.shut()
    others = {child.journal_name for child in family.children}
    if typed not in others and (typed in known or forgetting.of_name(family.forgotten, typed)):
        return typed, typed
    raise Refused(f"there is no child {clean(typed)!r} in family.toml or in the journal")


def _copy(places: Places, target: Path) -> None:
    """A copy of everything first, out of reach of what comes after."""
    inside = [places.config, places.data]
    if any(Path(os.path.realpath(target)).is_relative_to(os.path.realpath(each)) for each in inside):
        raise Refused("that copy would be among the files the child is taken out of; name another folder")
    copies.keep_copy(places.data / NAME, target)


def _out_of_family(places: Places, family: Family, name: str) -> None:
    """family.toml without the child, and the digest of its name in its place; the backup says the same."""
    path = places.config / "family.toml"
    children = tuple(child for child in family.children if child.journal_name != name)
    if not children:
        stand_in = _OTHER_PLACEHOLDER if name == PLACEHOLDER else PLACEHOLDER
        children = (Child(stand_in),)
        show([f"Nobody is left in family.toml: “{stand_in}” stands there until you put in a nickname."])
    known = forgetting.of_name(family.forgotten, name)
    digests = family.forgotten if known else tuple(sorted((*family.forgotten, forgetting.digest(name))))
    families.save(path, family._replace(children=children, forgotten=digests), family)
    outdate_backup(path)


def _out_of_journals(places: Places, family: Family, name: str, clock: Clock) -> Iterator[str]:
    """Take the child out of the journal, those beside it, and the weekly copies; sentences on what fails."""
    paths = [places.data / NAME] if there(places.data / NAME) else []
    if paths:
        # A damaged one is set aside, and the child goes out of what can be read of it as out of any other.
        Journal.open(places.data, clock).shut()
    paths += dict.fromkeys((*copies.beside(places.data), *copies.beside(places.config)))
    folder = copies_folder(family.copies) if family.copies else None
    paths += [path for path in made_in(folder) if path not in paths] if folder else []
    for path in paths:
        try:
            forgetting.forget_in(path, name)
        except forgetting.Unreadable as problem:
            if not (copies.ASIDE.fullmatch(path.name) and _holds(path, name) and _gone(path)):
                yield str(problem)
        except JournalProblem as problem:
            yield str(problem)
    for path in _files(places):
        # Of a journal set aside that nobody can open there may be more files than one.
        if path.name.startswith("journal-damaged-") and _holds(path, name):
            _gone(path)
    if family.copies and folder is None:
        yield "The folder of the weekly copies is not there, so the copies in it are as they were."


def _out_of_notes(places: Places, names: set[str]) -> None:
    """Take away the note at hand, and copies of family.toml and leftovers of writing that hold the name."""
    (places.data / at_hand.NAME).unlink(missing_ok=True)
    remembered.forget(places.data)
    for path in _files(places):
        begun = path.name.startswith((".family.toml", ".journal-copy-", ".keeping.json", "keeping.json"))
        ours = begun or _FAMILY_BEFORE.fullmatch(path.name)
        if ours and any(_holds(path, name) for name in names):
            _gone(path)


def _settle(places: Places, family: Family) -> None:
    """Have it on the disk which files are gone: none comes back if the power goes."""
    copied = [folder] if family.copies and (folder := copies_folder(family.copies)) else []
    for folder in (places.config, places.data, places.data / remembered.FOLDER, *copied):
        with suppress(OSError):
            sync_folder(folder)


def _tell_what_is_left(places: Places, names: set[str]) -> None:
    """Name the files that have the name in words somebody wrote there: they are left alone."""
    for path in _files(places):
        if any(_holds(path, name) for name in names):
            show([f"{clean(path.name)} still has the name somewhere in other words: that is left to you."])


def _files(places: Places) -> list[Path]:
    """The files in the family's two folders, in order."""
    found: dict[Path, None] = {}
    for folder in (places.config, places.data):
        with suppress(OSError):
            found |= dict.fromkeys(path for path in sorted(folder.iterdir()) if path.is_file())
    return list(found)


def _holds(path: Path, name: str) -> bool:
    with suppress(OSError):
        if path.stat().st_size <= _LARGEST:
            return name.encode("utf-8", "surrogatepass") in path.read_bytes()
    return False


def _gone(path: Path) -> bool:
    with suppress(OSError):
        path.unlink()
        return True
    return False
