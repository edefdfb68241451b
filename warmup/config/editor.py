"""What the adult decides on the way, in family.toml at once: days off, levels held back, a pause, a theme."""

import datetime as dt
from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace
from pathlib import Path

from warmup.config import family as families
from warmup.config.family import Child, CountdownRule, Family, year_of
from warmup.config.toml_file import FileProblem
from warmup.model import ItemId, LevelId
from warmup.schoolyear import SchoolYear

_DAY = dt.timedelta(1)


class KeptFamily:
    """The family as it is now, in its file and here; the editors of all its children share it.

    ``unsaved`` says in a sentence why what was decided last is not in the file; ``changed`` is the family
    before and after the last change, as it was asked for.
    """

    __slots__ = ("_in_file", "_path", "changed", "family", "saves", "unsaved")

    def __init__(self, path: Path, family: Family, *, saves: bool = True) -> None:
        """``saves`` says whether there is a file at ``path`` to keep changes in."""
        self._path, self.saves = path, saves
        self._in_file: Family | None = family
        self.family, self.unsaved = family, ""
        self.changed: tuple[Family, Family] | None = None

    def begin(self) -> None:
        """Make the family file: there is none yet."""
        self._in_file = None
        self.change(self.family)

    def change(self, family: Family) -> None:
        """Take the family as it is now, and save what changed where there is a file.

        What else the file says, since it may have been edited meanwhile, is taken from it. Where it can't be
        saved the morning goes on with the family given, and the next change tries again.
        """
        self.changed = self.family, family
        if self.saves:
            try:
                family = families.save(self._path, family, self._in_file)
                self._in_file, self.unsaved = family, ""
            except FileProblem as problem:
                where = f"{problem.path.name}{f', line {problem.line}' if problem.line else ''}"
                self.unsaved = f"What you choose is not being saved ({where}: {problem.found})."
        self.family = family


class FamilyEditor:
    """The family as it is now, one of its children, and the only way to change either."""

    __slots__ = ("_child", "_year", "kept")

    def __init__(self, kept: KeptFamily, child: Child) -> None:
        self.kept, self._child = kept, child
        self._year: tuple[Family, SchoolYear] | None = None

    def of(self, child: Child) -> "FamilyEditor":
        """The editor of the same family for another of its children."""
        return FamilyEditor(self.kept, child)

    @property
    def family(self) -> Family:
        """The family as it is now."""
        return self.kept.family

    @property
    def unsaved(self) -> str:
        """Why what was decided last is not in the file, in a sentence; empty where it is."""
        return self.kept.unsaved

    @property
    def child(self) -> Child:
        """The child as it is now; as it was last where the family has it no more."""
        name = self._child.journal_name
        found = (each for each in self.family.children if each.journal_name == name)
        self._child = next(found, self._child)
        return self._child

    @property
    def year(self) -> SchoolYear:
        """The school year of the child; laid out once and kept."""
        if self._year is None or self._year[0] is not self.family:
            self._year = self.family, year_of(self.family, self.child)
        return self._year[1]

    # -- the days

    def confirm_days(self, off: Collection[dt.date], today: dt.date) -> None:
        """Everything before today is known now; the mornings in ``off`` were no school."""
        until = today - dt.timedelta(1)
        # The days may lie before the weeks of this child begin: they are those of all children.
        mornings = {day for child in self.family.children for day in year_of(self.family, child).mornings}
        stretches = self.year._replace(mornings=tuple(sorted(mornings))).stretches(off)
        free = tuple(sorted({*self.family.off, *stretches}))
        self.change(self.family._replace(off=free, known_until=max(until, self.family.known_until or until)))

    def lesson_weeks(self, held: Collection[int], skipped: Collection[int]) -> None:
        """The weeks of lessons that take longer, and those that take none: of a child with weeks of its own,
        or of the family.
        """
        longer, none = tuple(sorted(held)), tuple(sorted(set(skipped)))
        if self.child.first_day is not None:
            self._keep(replace(self.child, held_weeks=longer, skipped_weeks=none))
        else:
            self.change(self.family._replace(held_weeks=longer, skipped_weeks=none))

    def count(self, date: dt.date) -> None:
        """A date counts as a school morning, though it was not planned."""
        self.change(self.family._replace(extra=tuple(sorted({*self.family.extra, date}))))

    def no_school(self, first: dt.date, last: dt.date) -> None:
        """No school from ``first`` to ``last``, both included; a morning held besides is none any more."""
        extra = tuple(day for day in self.family.extra if not first <= day <= last)
        off = self.family.off
        if any(day.weekday() in self.family.weekdays for day in _days(first, last)):
            off = tuple(sorted({*off, (first, last)}))
        self.change(self.family._replace(off=off, extra=extra))

    def have_school(self, first: dt.date, last: dt.date) -> None:
        """School after all on the school weekdays from ``first`` to ``last``, and on a single other day too.

        What was off before them and after them stays so.
        """
        if first == last and first.weekday() not in self.family.weekdays:
            self.count(first)
            return
        off: list[tuple[dt.date, dt.date]] = []
        for begins, ends in self.family.off:
            # What neither reaches before nor behind is off no more.
            if begins < first:
                off.append((begins, min(ends, first - _DAY)))
            if ends > last:
                off.append((max(begins, last + _DAY), ends))
        self.change(self.family._replace(off=tuple(sorted(dict.fromkeys(off)))))

    def count_down(self, rule: CountdownRule | None, before: CountdownRule | None = None) -> None:
        """Look forward to a day; ``before`` is what stood there, which goes or is called otherwise now."""
        rules = [each for each in self.family.countdowns if each != before]
        at = self.family.countdowns.index(before) if before in self.family.countdowns else len(rules)
        if rule is not None and rule not in rules:
            rules.insert(at, rule)
        self.change(self.family._replace(countdowns=tuple(rules)))

    def take_off(self, stretches: Collection[tuple[dt.date, dt.date]]) -> None:
        """These stretches are off as well, both ends included."""
        self.change(self.family._replace(off=tuple(sorted({*self.family.off, *stretches}))))

    # -- the child

    def hold(self, level: LevelId, *, back: bool) -> None:
        """Hold a level back as not taught yet, or let it come again."""
        held = {*self.child.held, level} if back else {*self.child.held} - {level}
        self._keep(replace(self.child, held=tuple(sorted(held))))

    def open_early(self, level: LevelId, *, early: bool = True) -> None:
        """Let a level come before its week, held back or not, or no longer before it."""
        child = self.child
        if early:
            held = tuple(each for each in child.held if each != level)
            self._keep(replace(child, held=held, opened=tuple(sorted({*child.opened, level}))))
        else:
            self._keep(replace(child, opened=tuple(each for each in child.opened if each != level)))

    def lesson(self, level: LevelId, *, taught: bool | None) -> None:
        """Say of a level's own lesson whether it was: the level then comes early, or is held back.

        With None nothing is said of it, and it opens in its week.
        """
        held, opened = ({*levels} - {level} for levels in (self.child.held, self.child.opened))
        if taught is not None:
            (opened if taught else held).add(level)
        self._keep(replace(self.child, held=tuple(sorted(held)), opened=tuple(sorted(opened))))

    def taught(self, item: ItemId, today: dt.date, *, again: bool = True) -> None:
        """The item was taught again today, or it was not after all."""
        others = tuple(each for each in self.child.taught if each[0] != item)
        self._keep(replace(self.child, taught=(*others, (item, today)) if again else others))

    def pause(self, until: dt.date | None) -> None:
        """Open no new level up to and on this date; with None they come again."""
        self._keep(replace(self.child, paused=until))

    def reads(self, reads: bool) -> None:
        """Whether the child reads number words."""
        self._keep(replace(self.child, reads=reads))

    def _keep(self, child: Child) -> None:
        children = tuple(
            child if each.journal_name == child.journal_name else each for each in self.family.children
        )
        self.change(self.family._replace(children=children))

    # -- the children

    def add(self, child: Child) -> None:
        """One child more."""
        self.change(self.family._replace(children=(*self.family.children, child)))

    def rename(self, child: Child, nickname: str) -> None:
        """Another nickname; the name its marks are kept under stays."""
        self._keep(replace(child, nickname=nickname))

    def rest(self, child: Child, *, resting: bool) -> None:
        """Let a child have no mornings for now, or have them again."""
        self._keep(replace(child, resting=resting))

    def prompts(self, child: Child, count: int | None) -> None:
        """How many prompts a morning of this child has; with None as many as the family's."""
        self._keep(replace(child, prompts=count))

    def take_out(self, child: Child) -> None:
        """Leave a child out of the family. ValueError for the last one: there is no family without."""
        stay = tuple(each for each in self.family.children if each.journal_name != child.journal_name)
        if not stay:
            raise ValueError("a family has at least one child")
        self.change(self.family._replace(children=stay))

    # -- the household

    def prefer(self, *, theme: str = "", answers_shown: bool | None = None) -> None:
        """Keep a choice of theme ("dark", "light" or "contrast"), or whether answers are shown."""
        shown = self.family.answers_shown if answers_shown is None else answers_shown
        self.change(self.family._replace(theme=theme or self.family.theme, answers_shown=shown))

    def print_sheets(self, names: Iterable[str], *, printed: bool = True) -> None:
        """The house has these sheets on paper, or has them no longer."""
        had, named = self.family.printed, tuple(names)
        now = dict.fromkeys((*had, *named)) if printed else (name for name in had if name not in named)
        self.change(self.family._replace(printed=tuple(now)))

    def change(self, family: Family) -> None:
        """Take the family as it is now; see :meth:`KeptFamily.change`."""
        self.kept.change(family)


def _days(first: dt.date, last: dt.date) -> Iterator[dt.date]:
    for later in range((last - first).days + 1):
        yield first + later * _DAY
