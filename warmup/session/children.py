"""The children of a family as the adult changes them: a nickname, weeks of their own, a copy before one goes.

No widgets here. What is typed is text; what can't be taken is said in a sentence.
"""

import datetime as dt
from dataclasses import replace
from pathlib import Path
from typing import NamedTuple

from warmup.config.family import MOST_CHILDREN, Child, Family, year_of
from warmup.config.toml_file import LONGEST_NAME, FileProblem
from warmup.english import date_words, plural
from warmup.journal.journal import Journal
from warmup.model import FEWEST_PROMPTS, MOST_PROMPTS
from warmup.session.context import Context
from warmup.session.first_form import Unclear, date_of, nickname_of, week_number
from warmup.text import clean

THE_LAST = "The last child stays."
ONE_IS_UP = "One child has to have mornings."
STAYS_IN_THE_JOURNAL = "The marks stay in the journal until “warmup forget” takes them out."


class ChildForm(NamedTuple):
    """A child as it is typed in. With neither a first day nor a week it is in the family's weeks."""

    nickname: str
    first_day: str = ""
    week: str = ""


def child_of(form: ChildForm, family: Family, today: dt.date) -> Child:
    """The child a form describes, whose first warm-up is today's. Raises Unclear."""
    if len(family.children) >= MOST_CHILDREN:
        raise Unclear(f"A family has at most {MOST_CHILDREN} children here.")
    nickname = nickname_of(form.nickname, family.children)
    child = Child(nickname, journal_name=_journal_name(nickname, family), began=today)
    week = week_number(form.week)
    if not form.first_day.strip() and week is None:
        return child
    first_day = date_of(form.first_day) if form.first_day.strip() else today
    return replace(child, first_day=first_day, first_week=week or 1)


def _journal_name(nickname: str, family: Family) -> str:
    """The nickname, or where another child's marks are kept under it, one like it."""
    taken, name, number = {child.journal_name for child in family.children}, nickname, 1
    while name in taken:
        number += 1
        name = f"{nickname[: LONGEST_NAME - 3]} {number}"
    return name


def outcome(form: ChildForm, family: Family, today: dt.date, journal: Journal) -> str:
    """What comes of the form as it stands: which week the child is in. Raises Unclear."""
    child = child_of(form, family, today)
    week = year_of(family, child).morning(today).week
    if child.first_day is None:
        said = f"The same weeks as the family: week {week}."
    else:
        said = f"Weeks of its own: week {child.first_week} from {date_words(child.first_day)} on."
    kept = len(journal.dates_of(child.journal_name))
    if kept:
        said += (
            f" The journal has {kept} {plural(kept, 'morning')} of {child.journal_name}: they count again."
        )
    return said


def about(child: Child, family: Family, today: dt.date) -> str:
    """What a list says of a child beside its nickname: "rests · week 12 · 6 prompts".

    That a child rests comes first, since a narrow list cuts the end.
    """
    own = "its own week" if child.first_day is not None else "week"
    parts = ["rests"] if child.resting else []
    parts.append(f"{own} {year_of(family, child).morning(today).week}")
    if child.prompts is not None:
        parts.append(f"{child.prompts} prompts")
    return " · ".join(parts)


def other_count(child: Child, by: int) -> int | None:
    """One prompt more a morning, or one fewer; below the fewest stands the family's own number, None."""
    if child.prompts is None:
        return FEWEST_PROMPTS if by > 0 else None
    count = child.prompts + by
    return None if count < FEWEST_PROMPTS else min(count, MOST_PROMPTS)


def is_the_last_up(child: Child, family: Family) -> bool:
    """Whether no other child of the family has mornings."""
    return all(each.resting or each.journal_name == child.journal_name for each in family.children)


class Copies(NamedTuple):
    """Copies that were made beside family.toml, and how many mornings of the child the journal's has."""

    journal: Path
    family: Path
    mornings: int

    def words(self) -> str:
        """Where they are."""
        many = f"{self.mornings} {plural(self.mornings, 'morning')}"
        folder = clean(str(self.family.parent))
        return f"Copies, with {many} of this child: {self.journal.name} and {self.family.name} in {folder}."


def keep_copies(context: Context, journal: Journal, child: Child, now: dt.datetime) -> Copies:
    """Copy the journal and family.toml beside the family's own, and look whether the copies are whole.

    JournalProblem or FileProblem, and no copy, where that can't be done.
    """
    from warmup.config.writing import copy_beside

    moment = f"{now:%Y%m%d-%H%M%S}"
    folder = context.places.config
    copy = folder / f"journal-{moment}.db"
    mornings = journal.copy_to(copy, child.journal_name)
    try:
        family = copy_beside(folder / "family.toml", f"family-{moment}.toml")
    except FileProblem:
        copy.unlink(missing_ok=True)
        raise
    return Copies(copy, family, mornings)
