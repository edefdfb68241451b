"""Everything a morning needs, read and laid out: the family, the year, the plan, what the child knows."""

import datetime as dt
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

from warmup import skills
from warmup.config import family as families
from warmup.config.editor import FamilyEditor, KeptFamily
from warmup.config.family import Child, Family, year_of
from warmup.config.places import Places, there
from warmup.config.plan import load_plan, load_shape
from warmup.config.toml_file import FileProblem, Missing
from warmup.engine import eligibility
from warmup.engine.absence import Absence, absence
from warmup.engine.curriculum import Curriculum, curriculum
from warmup.engine.eligibility import Adjustments, Eligible
from warmup.engine.memory import Knowledge, fold
from warmup.journal.journal import Journal
from warmup.model import (
    OWN_SKILL,
    Asked,
    DayKind,
    Item,
    ItemId,
    LevelId,
    Morning,
    Plan,
    Routine,
    Shape,
    is_own,
)
from warmup.schoolyear import SchoolYear
from warmup.session import remembered

if TYPE_CHECKING:
    from warmup.engine.things import Household
    from warmup.skills import Skill
    from warmup.skills.own import Own

SUMMER = 3
"""How many prompts a warm-up has after the year's last school day; one a week is enough."""
Clock = Callable[[], dt.datetime]


class Context:
    """One child's things on one day.

    ``editor`` has the family as it is now, and is how it changes. ``journal`` is None where nothing may be
    written and nothing was. ``own`` is what the family wrote itself, None where it did not; ``own_problem``
    says what is wrong with its file, where it can't be used. The ``plan`` has the weeks of those levels too.
    ``marks_by`` names the adult who marks, empty for the family's own.
    """

    def __init__(
        self,
        places: Places,
        editor: FamilyEditor,
        today: dt.date,
        plan: Plan,
        journal: Journal | None,
        own: "Own | None" = None,
        own_problem: FileProblem | None = None,
    ) -> None:
        self.places, self.editor, self.today, self.journal = places, editor, today, journal
        self.own, self.own_problem, self.marks_by = own, own_problem, ""
        self.plan = self._with_own(plan)
        # What is worked out stays until the family changes: the one it was worked out for is beside it.
        self._known: tuple[Family, Knowledge] | None = None
        self._before: tuple[tuple[Family, dt.date, object] | None, Knowledge] | None = None
        self.folded_anew = False
        """Whether nothing that was kept of the child's past held, so that all of it was folded."""
        self._curriculum: tuple[Family, Curriculum] | None = None
        self._items: tuple[Item, ...] = ()
        self._reviews: tuple[Family, dt.date, tuple[int, ...]] | None = None

    # -- the family and its year

    @property
    def own_skill(self) -> "Skill | None":
        """The skill of what the family wrote itself, where it wrote something."""
        return self.own.skill if self.own else None

    @property
    def family(self) -> Family:
        """The family as it is now."""
        return self.editor.family

    @property
    def child(self) -> Child:
        """The child whose morning it is."""
        return self.editor.child

    @property
    def adult(self) -> str:
        """Who marks; empty where that does not matter."""
        return self.marks_by or self.family.adult

    @property
    def year(self) -> SchoolYear:
        """The family's school year."""
        return self.editor.year

    @property
    def began(self) -> dt.date:
        """The day of the child's first warm-up."""
        return self.child.began or self.family.began

    @property
    def adjustments(self) -> Adjustments:
        """What the adult said of the child's levels and items."""
        child = self.child
        return Adjustments(child.held, child.opened, dict(child.taught), child.paused, self.household)

    @property
    def household(self) -> "Household | None":
        """What the house lacks, None where it lacks nothing: only then is the registry of things loaded."""
        family = self.family
        if not family.toddler and not family.without:
            return None
        from warmup.engine.things import Household

        return Household(family.toddler, frozenset(family.without))

    def morning(self, date: dt.date | None = None) -> Morning:
        """The morning of a date, today's unless another is given."""
        date = date or self.today
        ahead = families.countdowns(self.family, date)
        eve = families.countdowns(self.family, date - dt.timedelta(1), ahead=1)
        festive = tuple(countdown.name for countdown in eve)
        return self.year.morning(
            date,
            ahead,
            festive,
            reviews=self.reviews,
            pennies=self.family.pennies,
            animal=self.family.animal,
        )

    @property
    def reviews(self) -> tuple[int, ...]:
        """The review weeks as they are for this child today: one that was missed comes a week later."""
        kept = self._reviews
        if kept is None or kept[:2] != (self.family, self.today):
            kept = self.family, self.today, self._reviews_today()
            self._reviews = kept
        return kept[2]

    def _reviews_today(self) -> tuple[int, ...]:
        year, index = self.year, self.year.index_of(self.today)
        if (
            self.journal is None
            or not year.mornings
            or not any(year.ends(week) <= index for week in self.plan.reviews)
        ):
            return self.plan.reviews
        # The engine is loaded anyway where a morning is chosen, and of one that goes on little is asked.
        from warmup.engine.review import moved

        held = self.journal.dates_of(self.child.journal_name, year.mornings[0])
        return moved(self.plan.reviews, year, held, max(year.before, year.index_of(self.began)), index)

    def curriculum(self) -> Curriculum:
        """The plan's items over the family's year; laid out once and kept."""
        family = self.family
        if self._curriculum is None or self._curriculum[0] is not family:
            self._items = self._items or (*skills.items(self.plan), *(self.own.items if self.own else ()))
            plan = curriculum(self._items, self.year, self.began, self.reviews)
            self._curriculum = family, plan
        return self._curriculum[1]

    def unconfirmed_days(self) -> tuple[dt.date, ...]:
        """Planned mornings since the first child began on which no child had a warm-up, and of which nobody
        has said whether they were school.
        """
        family, known_until = self.family, self.family.known_until
        asked_from = known_until + dt.timedelta(1) if known_until else dt.date.min
        if asked_from >= self.today:
            return ()
        # The days are the family's: they are asked about once, whichever child's morning it is.
        open_still = {
            day for year, began in self._years() for day in year.between(max(asked_from, began), self.today)
        }
        for child in (self.child, *family.children):
            if open_still and self.journal is not None:
                open_still -= self.journal.dates_of(child.journal_name, min(open_still))
        return tuple(sorted(open_still))

    def _years(self) -> Iterator[tuple[SchoolYear, dt.date]]:
        """The school years of all children, each with the day from which on it matters."""
        family, mine = self.family, self.child
        in_common = [child for child in family.children if child.first_day is None]
        if in_common:
            year = self.year if mine.first_day is None else year_of(family)
            yield year, min(child.began or family.began for child in in_common)
        for child in family.children:
            if child.first_day is not None:
                year = self.year if child == mine else year_of(family, child)
                yield year, child.began or family.began

    def of(self, child: Child) -> "Context":
        """The things of another child of the family, on the same day."""
        other = self.with_editor(self.editor.of(child), self.today)
        other._items = self._items
        return other

    def as_of(self, date: dt.date) -> "Context":
        """The same on the morning of a date, with what the child knew when that began."""
        then = self.with_editor(self.editor, date)
        then.know(then.knew_before_today())
        return then

    def with_editor(self, editor: FamilyEditor, today: dt.date) -> "Context":
        """Another one of the same family, plan and journal, for the same adult."""
        other = Context(self.places, editor, today, self.plan, self.journal, self.own, self.own_problem)
        other.marks_by = self.marks_by
        return other

    def _with_own(self, plan: Plan) -> Plan:
        return plan._replace(weeks={**plan.weeks, **self.own.weeks}) if self.own else plan

    def move_level(self, level: LevelId, week: int) -> None:
        """Let a level open in another week from now on: written into the family's own year.toml at once.

        FileProblem, and nothing has changed, where that can't be.
        """
        from warmup.config.plan_saving import move_level  # few mornings change the year

        if self.editor.kept.saves:
            move_level(self.places, level, week)
            self.plan = self._with_own(load_plan(self.places))
        else:
            self.plan = self.plan._replace(weeks={**self.plan.weeks, level: week})
        self._items, self._curriculum, self._reviews = (), None, None
        self.forget()

    def turn_to(self, today: dt.date) -> None:
        """It is another day now, on which a review week may have moved."""
        self.today, self._curriculum = today, None
        self.forget()

    # -- what the child knows

    def history(
        self, before: dt.date | None = None, since: dt.date | None = None, item: ItemId | None = None
    ) -> tuple[Asked, ...]:
        """Every prompt that was shown, in order of time; from ``since`` on, up to but not on ``before``; of
        one ``item`` alone, where one is named.

        Years lie in a journal: who needs some days of it, or one item, asks for these. Marks of items that
        are asked no more stay in the journal and count for nothing.
        """
        lines = self.journal.history(self.child.journal_name, before, since, item) if self.journal else ()
        # The plan's items are known without a look at the skills, of which a morning that goes on loads few.
        planned = self.curriculum().by_id
        unknown = {line.item for line in lines} - planned.keys()
        gone = {item for item in unknown if is_own(item) or not skills.known(item)}
        return tuple(line for line in lines if line.item not in gone) if gone else lines

    def knowledge(self) -> Knowledge:
        """What the child knows by the journal; folded once and kept."""
        if self._known is None or self._known[0] is not self.family:
            before = self.knew_before_today()
            self.know(fold(self.curriculum(), self.history(since=self.today), before))
        assert self._known is not None
        return self._known[1]

    def knew_before_today(self) -> Knowledge:
        """What the child knew when today began; folded once, as long as nothing of it changes."""
        if (known := self.known_before_today) is not None:
            return known
        kept = remembered.recall(self)
        if kept is None:
            known, self.folded_anew = fold(self.curriculum(), self.history(self.today)), True
        else:
            known, since = kept
            if since < self.today:
                known = fold(self.curriculum(), self.history(self.today, since), known)
        self._before = self._past(), known
        return known

    @property
    def known_before_today(self) -> Knowledge | None:
        """The same as it was folded last; None where it was not, or some of it may have changed since."""
        past = self._past()
        return self._before[1] if self._before and past and self._before[0] == past else None

    def _past(self) -> tuple[Family, dt.date, object] | None:
        """What stays the same as long as the past does; None where that can't be told."""
        past = self.journal.past_of(self.child.journal_name, self.today) if self.journal else 0
        return None if past is None else (self.family, self.today, past)

    def know(self, known: Knowledge) -> None:
        """Take what is known from elsewhere, in place of the journal's."""
        self._known = self.family, known

    def forget(self) -> None:
        """Fold the journal again the next time: marks were made since."""
        self._known = None

    def absence(self, morning: Morning) -> Absence:
        """What the child comes back from on this morning, if from anything."""
        return absence(self.curriculum(), self.knowledge(), morning)

    # -- what may be asked

    def eligible(self, morning: Morning) -> Eligible:
        """The items that may be asked on a morning and make sense on it."""
        return eligibility.eligible(self.curriculum(), morning, self.knowledge(), self.adjustments)

    def missed(self) -> tuple[ItemId, ...]:
        """Items with three not yet running, of levels not held, the newest first; taught since or not."""
        return eligibility.missed(self.curriculum().items, self.knowledge(), self.child.held)

    def to_teach(self) -> tuple[ItemId, ...]:
        """Those of them that rest until the adult says they were taught again."""
        return eligibility.to_teach(self.curriculum().items, self.knowledge(), self.adjustments)

    def shape(self, morning: Morning, name: str = "") -> Shape:
        """The shape of a morning: the one named, else that of the week."""
        return load_shape(self.places, name or ("review" if morning.review else "daily"))

    def count(self, morning: Morning, shape: Shape) -> int:
        """How many prompts a morning of this shape aims at; never more than the most of the shape.

        The child's number counts before the family's, this before that of the shape, and that before that of
        the year plan. After the last school day a warm-up only keeps warm what is known.
        """
        if morning.kind is DayKind.AFTER:
            return SUMMER
        said = self.child.prompts or self.family.prompts
        wanted = said or shape.prompts_in(morning.week) or self.plan.prompts_in(morning.week)
        return min(wanted, shape.at_most or wanted)

    def routine(
        self,
        morning: Morning | None = None,
        *,
        shape: str = "",
        session: int = 1,
        bare: bool = False,
        beside: Routine | None = None,
    ) -> Routine:
        """A routine for a morning, today's unless another is given: chosen now and kept nowhere.

        Where a prompt tells the answer of another in whatever words, one of the two is left out and the
        morning chosen again. With ``bare`` neither the opening nor a prompt wants a thing on the table. Of
        ``beside``, the routine of another child at the same table, nothing is told or asked again, as far as
        there are other prompts to be had.
        """
        # A morning that goes on has its prompts already.
        from warmup.session.choosing import Choosing

        return Choosing(self, morning or self.morning(), shape, session, bare=bare, beside=beside).routine()


def load_family(places: Places, today: dt.date) -> tuple[Family, bool]:
    """The family, and whether it has a file; the defaults stand in where there is none."""
    try:
        return families.load(places.config / "family.toml"), True
    except Missing:
        return families.default(today), False


def open_context(
    places: Places,
    family: Family,
    today: dt.date,
    journal: Journal | None,
    *,
    child: str = "",
    saved: bool = True,
) -> Context:
    """The context of one child (the first, unless another nickname is given). KeyError for an unknown one.

    ``saved`` says whether there is a family file, to save to what changes.
    """
    named = [each for each in family.children if not child or each.nickname == child]
    if not named:
        raise KeyError(child)
    editor = FamilyEditor(KeptFamily(places.config / "family.toml", family, saves=saved), named[0])
    return Context(places, editor, today, load_plan(places), journal, *_own(places))


def _own(places: Places) -> "tuple[Own | None, FileProblem | None]":
    """What the family wrote itself, and what is wrong with its file: a morning opens without it as well."""
    if not there(places.config / f"{OWN_SKILL}.toml"):
        return None, None
    from warmup.config.own import load_own  # few families have any

    try:
        return load_own(places), None
    except FileProblem as problem:
        return None, problem
