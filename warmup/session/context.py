"""Everything a morning needs, read and laid out: the family, the year, the plan, what the child knows."""

import datetime as dt
from collections.abc import Callable, Collection, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace

from warmup import skills
from warmup.config import family as families
from warmup.config.family import Child, Family
from warmup.config.places import Places
from warmup.config.plan import load_plan, load_shape
from warmup.config.toml_file import FileProblem, Missing
from warmup.engine import review
from warmup.engine.engine import SETTLING_WEEKS, build, choose, open_items, rests, sampled, surest
from warmup.engine.giveaways import to_leave_out
from warmup.engine.memory import RETEACH, Knowledge, Reviews, fold
from warmup.journal.journal import Journal, SessionRow
from warmup.journal.routine_json import routine_from
from warmup.model import Asked, Choice, Item, Morning, Plan, Prompt, Routine, Shape
from warmup.schoolyear import SchoolYear, school_year

Clock = Callable[[], dt.datetime]
CHOSEN_ANEW = (
    "What was chosen for this date can't be read any more, so it was chosen anew. Its marks are kept."
)


@dataclass(slots=True, eq=False, repr=False)
class Context:
    """One child's things on one day.

    ``family`` changes when a level is held back or a preference is chosen, and is saved at once.
    ``journal`` is None where nothing may be written and nothing was; ``saved`` says whether there is a
    family file to save to, and ``unsaved``, in a sentence, why what was chosen last is not in it.
    ``changed`` is the family before and after the last change, as it was asked for.
    """

    places: Places
    family: Family
    child: Child
    today: dt.date
    plan: Plan
    journal: Journal | None
    year: SchoolYear
    saved: bool = True
    unsaved: str = ""
    changed: tuple[Family, Family] | None = field(default=None, init=False)
    _on_disk: Family | None = field(default=None, init=False)
    _known: Knowledge | None = field(default=None, init=False)
    _items: tuple[Item, ...] = field(default=(), init=False)

    def __post_init__(self) -> None:
        self._on_disk = self.family

    def morning(self, day: dt.date | None = None) -> Morning:
        """The morning of a date, today's unless another is given."""
        day = day or self.today
        ahead = families.countdowns(self.family, day)
        eve = families.countdowns(self.family, day - dt.timedelta(1), ahead=1)
        festive = tuple(countdown.name for countdown in eve)
        return self.year.morning(
            day,
            ahead,
            festive,
            reviews=self.plan.reviews,
            pennies=self.family.pennies,
            animal=self.family.animal,
        )

    def knowledge(self) -> Knowledge:
        """What the child knows by the journal; folded once and kept."""
        if self._known is None:
            self._known = self._fold(None)
        return self._known

    def knew_before_today(self) -> Knowledge:
        """What the child knew when today began."""
        return self._fold(self.today)

    def history(self, before: dt.date | None = None) -> tuple[Asked, ...]:
        """Every prompt that was shown, in order of time; up to but not on ``before``.

        Marks of items that are asked no more stay in the journal and count for nothing.
        """
        lines = self.journal.history(self.child.record, before) if self.journal else ()
        return tuple(line for line in lines if skills.known(line.item))

    def stored(self, day: dt.date) -> list[tuple[SessionRow, Routine]]:
        """The sittings of a date whose routine can be read, in order of time.

        A mark belongs to the item of its row, so a routine with other items than the rows is none of them,
        nor is one with an item that this version does not know.
        """
        found = []
        for row in self.journal.sessions_of(self.child.record, day) if self.journal else ():
            with suppress(ValueError):
                found.append((row, routine_from(row.routine)))
        return [(row, routine) for row, routine in found if self._fits(day, row, routine)]

    def _fits(self, day: dt.date, row: SessionRow, routine: Routine) -> bool:
        items = tuple(prompt.item for prompt in routine.prompts)
        kept = self.journal.items_of(self.child.record, day, row.session) if self.journal else ()
        return items == kept and all(map(skills.known, items))

    def chosen_anew(self, day: dt.date) -> bool:
        """Whether what was chosen for a date is kept but can't be read, so that it must be chosen anew."""
        rows = self.journal.sessions_of(self.child.record, day) if self.journal else []
        return bool(rows) and not self.stored(day)

    def opened(self) -> dict[str, int]:
        """The index of the morning each item unlocks at by the plan."""
        return {item.id: (item.week - 1) * self.year.mornings_a_week for item in self.items()}

    def guesses(self) -> dict[str, float]:
        """Each item's chance of a lucky answer."""
        return {item.id: item.guess for item in self.items()}

    def reviews(self) -> Reviews:
        """Which weeks are review weeks, and what is asked with things on the table."""
        hands = frozenset(item.id for item in self.items() if item.hands)
        return Reviews(self.year.mornings_a_week, self.plan.reviews, hands)

    def review(self) -> str:
        """What this week's review says so far, in words; empty in any other week."""
        morning = self.morning()
        titles = {skill.id: skill.title for skill in skills.SKILLS.values()}
        return review.told(self.knowledge(), morning.week, titles) if morning.review else ""

    def _fold(self, before: dt.date | None) -> Knowledge:
        return fold(
            self.history(before), self.year.index_of, self.opened(), self.guesses(), reviews=self.reviews()
        )

    def know(self, known: Knowledge) -> None:
        """Take what is known from elsewhere, in place of the journal's."""
        self._known = known

    def forget(self) -> None:
        """Fold the journal again the next time: marks were made since."""
        self._known = None

    def items(self) -> tuple[Item, ...]:
        """Every item of the plan."""
        if not self._items:
            self._items = skills.items(self.plan)
        return self._items

    def open_items(self, morning: Morning) -> tuple[Item, ...]:
        """The items that may be asked on this morning and make sense on it.

        What the day itself asks for does not wait for what it stands on: there is one hundredth day a year.
        """
        child = self.child
        able = open_items(
            self.items(),
            morning,
            self.knowledge(),
            child.held,
            child.opened,
            dict(child.taught),
            paused=child.paused is not None and morning.date <= child.paused,
        )
        able = sampled(able, self.knowledge(), self.since())
        there = {item.id for item in able}
        today = tuple(
            item
            for item in self.items()
            if skills.timely(item.id, morning)
            and item.id not in there
            and item.week <= morning.week
            and item.level_id not in child.held
        )
        return tuple(item for item in (*able, *today) if skills.askable(item.id, morning))

    def missed(self) -> tuple[str, ...]:
        """Items with three not yet running, of levels not held, the newest first; taught since or not."""
        known = self.knowledge()
        found = [
            (known.of(item.id).marked_on or dt.date.min, item.id)
            for item in self.items()
            if item.level_id not in self.child.held and known.of(item.id).misses >= RETEACH
        ]
        return tuple(item for _, item in sorted(found, key=lambda each: each[0], reverse=True))

    def to_teach(self) -> tuple[str, ...]:
        """Those of them that rest until the adult says they were taught again."""
        known, taught = self.knowledge(), dict(self.child.taught)
        return tuple(item for item in self.missed() if rests(known.of(item), taught.get(item)))

    def settling(self, morning: Morning) -> bool:
        """Whether the family is in its first two weeks with the program."""
        since = self.year.index_of(morning.date) - self.year.index_of(self.family.began)
        return since < SETTLING_WEEKS * self.year.mornings_a_week

    def since(self) -> int:
        """The week of the year in which the family began with the program."""
        return self.year.index_of(self.family.began) // self.year.mornings_a_week + 1

    def shape(self, morning: Morning, name: str = "") -> Shape:
        """The shape of a morning: the one named, else that of the week."""
        return load_shape(self.places, name or ("review" if morning.review else "daily"))

    def routine(self, day: dt.date | None = None, *, shape: str = "", session: int = 1) -> Routine:
        """A routine for a date, chosen now and kept nowhere.

        Where a prompt tells the answer of another in whatever words, one of the two is left out and the
        morning chosen again.
        """
        morning = self.morning(day)
        form = self.shape(morning, shape)
        items = self.open_items(morning)
        while True:
            choices = self.choose(items, morning, form)
            routine = self.build(choices, morning, form.name, session)
            timely = {item.id for item in items if skills.timely(item.id, morning)}
            out = to_leave_out(routine.prompts, timely)
            if not out:
                return routine
            items = tuple(item for item in items if item.id != out)

    def choose(
        self, items: Collection[Item], morning: Morning, shape: Shape, count: int | None = None
    ) -> tuple[Choice, ...]:
        """The engine's choice among ``items``."""
        return choose(
            tuple(items),
            shape,
            self.knowledge(),
            morning,
            child=self.child.record,
            settling=self.settling(morning),
            count=count,
            since=self.since(),
            timely={item.id for item in items if skills.timely(item.id, morning)},
        )

    def surest(self, items: Collection[Item], morning: Morning) -> Choice | None:
        """The one of ``items`` that comes most easily; None when none will do."""
        return surest(tuple(items), self.knowledge(), morning, child=self.child.record)

    def build(
        self,
        choices: Collection[Choice],
        morning: Morning,
        shape: str,
        session: int = 1,
        beside: Sequence[Prompt] = (),
    ) -> Routine:
        """The prompts of a choice, ``beside`` those that stand on the morning already."""
        known, record = self.knowledge(), self.child.record
        return build(
            tuple(choices), morning, known, child=record, shape=shape, session=session, beside=beside
        )

    def turn_to(self, day: dt.date) -> None:
        """It is another day now."""
        self.today = day
        self.forget()

    # -- the days

    def unsettled(self) -> tuple[dt.date, ...]:
        """Planned mornings since the family began of which nobody has said whether they were school."""
        first = self.family.began
        if self.family.settled:
            first = max(first, self.family.settled + dt.timedelta(1))
        known = self.journal.dates_with_record(self.child.record) if self.journal else set()
        return tuple(day for day in self.year.between(first, self.today) if day not in known)

    def settle(self, off: Collection[dt.date]) -> None:
        """Everything before today is known now; the days in ``off`` were no school."""
        until = self.today - dt.timedelta(1)
        free = tuple(sorted({*self.family.off, *self.year.stretches(off)}))
        self.change(self.family._replace(off=free, settled=max(until, self.family.settled or until)))

    def count_today(self) -> None:
        """Today counts as a school morning, though it was not planned."""
        self.change(self.family._replace(extra=tuple(sorted({*self.family.extra, self.today}))))

    def hold(self, level: str, *, back: bool) -> None:
        """Hold a level (``skill:key``) back as not taught yet, or let it come again."""
        held = {*self.child.held, level} if back else {*self.child.held} - {level}
        self._keep(replace(self.child, held=tuple(sorted(held))))

    def taught(self, item: str, *, again: bool = True) -> None:
        """The item (``skill/name``) was taught again today, or it was not after all."""
        others = tuple(each for each in self.child.taught if each[0] != item)
        self._keep(replace(self.child, taught=(*others, (item, self.today)) if again else others))

    def pause(self, mornings: int) -> None:
        """Open no new level on this many planned mornings after today; with 0 they come again."""
        ahead = [day for day in self.year.mornings if day > self.today][:mornings]
        until = ahead[-1] if ahead else self.today
        self._keep(replace(self.child, paused=until if mornings else None))

    def paused_until(self) -> dt.date | None:
        """The last day without new levels, today or later; else None."""
        until = self.child.paused
        return until if until is not None and until >= self.today else None

    def _keep(self, child: Child) -> None:
        children = tuple(child if each.record == child.record else each for each in self.family.children)
        self.child = child
        self.change(self.family._replace(children=children))

    def prefer(self, *, theme: str = "", answers_shown: bool | None = None) -> None:
        """Keep a choice of theme ("dark" or "light"), or whether answers are shown."""
        shown = self.family.answers_shown if answers_shown is None else answers_shown
        self.change(self.family._replace(theme=theme or self.family.theme, answers_shown=shown))

    def begin(self) -> None:
        """Make the family file: there is none yet."""
        self._on_disk = None
        self.change(self.family)

    def change(self, family: Family) -> None:
        """Take the family as it is now, and save what changed where there is a file.

        What else the file says, since it may have been edited meanwhile, is taken from it. Where it can't be
        saved the morning goes on with the family given, and the next change tries again.
        """
        self.changed = self.family, family
        if self.saved:
            try:
                family = families.save(self.places.config / "family.toml", family, self._on_disk)
                self._on_disk, self.unsaved = family, ""
            except FileProblem as problem:
                where = f"{problem.path.name}{f', line {problem.line}' if problem.line else ''}"
                self.unsaved = f"What you choose is not being saved ({where}: {problem.found})."
        self.family = family
        self.child = next((each for each in family.children if each.record == self.child.record), self.child)
        self.year = year_of(family)
        self._known = None


def year_of(family: Family) -> SchoolYear:
    """The family's school year."""
    return school_year(family.first_day, family.weekdays, family.off, family.extra, family.first_week)


def load_family(places: Places, today: dt.date) -> tuple[Family, bool]:
    """The family, and whether it has a file; the defaults stand in where there is none."""
    try:
        return families.load(places.config / "family.toml"), True
    except Missing:
        return families.default(today), False


def records_in(journal: Journal) -> tuple[str, ...]:
    """The records a journal holds marks under, the one with the most mornings first."""
    mornings = journal.mornings()
    return tuple(sorted(mornings, key=lambda record: (-mornings[record], record)))


def open_context(
    places: Places,
    family: Family,
    today: dt.date,
    journal: Journal | None,
    *,
    child: str = "",
    saved: bool = True,
) -> Context:
    """The desk of one child (the first, unless another nickname is given). KeyError for an unknown one."""
    named = [each for each in family.children if not child or each.nickname == child]
    if not named:
        raise KeyError(child)
    return Context(places, family, named[0], today, load_plan(places), journal, year_of(family), saved)
