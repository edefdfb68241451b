"""Two laptops: the journal of another machine is taken in."""

import datetime as dt
import os
from collections.abc import Callable
from contextlib import AbstractContextManager
from pathlib import Path
from types import SimpleNamespace

from warmup.cli.printing import Refused, complain, show
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.journal.store import NAME
from warmup.session.context import load_family
from warmup.text import clean

Clock = Callable[[], dt.datetime]
Kept = Callable[[Places, Clock, str], AbstractContextManager[Journal]]


def merge(arguments: SimpleNamespace, clock: Clock, places: Places, kept: Kept) -> None:
    """Take in the journal of another machine, and say how many mornings of each child are new here.

    ``kept`` opens the family's own journal, to write in.
    """
    family, _ = load_family(places, clock().date())
    try:
        other = Path(arguments.file).absolute()
    except FileNotFoundError:
        raise Refused("the folder you are in is gone; name a whole path to the other journal") from None
    if other.is_dir():
        other /= NAME
    with kept(places, clock, "what was taken in") as journal:
        if journal.notice:
            complain(journal.notice)
        if os.path.realpath(other) == os.path.realpath(journal.path):
            raise Refused(f"{clean(str(other))} is your own journal; name the other one")
        before = journal.mornings()
        left = journal.merge(other)
        after = journal.mornings()
    known = {child.journal_name: child.nickname for child in family.children}
    for name, mornings in after.items():
        new = mornings - before.get(name, 0)
        who = clean(known.get(name, name))
        unknown = "" if name in known else "; family.toml has no child of that name"
        show([f"{who}: {mornings} morning{'s' * (mornings != 1)} in all, {new} new here{unknown}."])
    show(f"Left out, since it makes no sense: {each}." for each in left)
    show(["Of two marks on one prompt the later counts. The other journal is as it was."])
