"""One routine being worked through: where it stands, its marks, and what each key does to it.

Nothing here knows a screen. Every change is in the journal before the method that makes it returns.
"""

from dataclasses import dataclass, field, replace

from warmup import skills
from warmup.desk import Clock, Desk
from warmup.journal import Journal, MarkRow
from warmup.morning import Mark, Morning, Prompt, Routine
from warmup.wire import routine_from, routine_text

SHORT = 4
"""How many prompts a short morning has in all."""


@dataclass(slots=True)
class Sitting:
    """A routine under way.

    ``position`` is the prompt on screen, from 0; at ``len(prompts)`` the close is. ``cues`` holds how many
    cues of each prompt were shown, ``marks`` the marks by position, and ``furthest`` the last prompt shown.
    """

    desk: Desk
    journal: Journal
    clock: Clock
    number: int
    routine: Routine
    position: int = 0
    furthest: int = 0
    rough: bool = False
    closed: bool = False
    marks: dict[int, MarkRow] = field(default_factory=dict)
    cues: dict[int, int] = field(default_factory=dict)
    _undo: list[tuple[int, MarkRow | None]] = field(default_factory=list)
    _missing: set[str] = field(default_factory=set)

    # -- where it stands

    @property
    def prompts(self) -> tuple[Prompt, ...]:
        """The prompts, in order."""
        return self.routine.prompts

    @property
    def morning(self) -> Morning:
        """The morning it belongs to, as it was when it started."""
        return self.routine.morning

    @property
    def at_close(self) -> bool:
        """Whether all prompts are behind."""
        return self.position >= len(self.prompts)

    @property
    def prompt(self) -> Prompt | None:
        """The prompt on screen; None at the close."""
        return None if self.at_close else self.prompts[self.position]

    @property
    def cue(self) -> int:
        """How many cues of this prompt are shown, 0 to 3."""
        return self.cues.get(self.position, 0)

    def mark_at(self, position: int) -> Mark | None:
        """The mark of a prompt, None while it has none."""
        row = self.marks.get(position)
        return row.mark if row else None

    @property
    def unmarked(self) -> tuple[int, ...]:
        """Prompts that were shown and have no mark."""
        shown = range(min(self.furthest + 1, len(self.prompts)))
        return tuple(at for at in shown if self.mark_at(at) is None)

    # -- moving and marking

    def mark(self, mark: Mark) -> None:
        """Mark the prompt on screen and go on."""
        if self.at_close:
            return
        self._undo.append((self.position, self.marks.get(self.position)))
        self._write(self.position, self._row(mark, self.cue), self.position + 1)

    def next(self) -> None:
        """Go on without a mark."""
        if not self.at_close:
            self._go(self.position + 1)

    def back(self) -> None:
        """Go back one prompt."""
        if self.position:
            self._go(self.position - 1)

    def next_cue(self) -> None:
        """Show one more cue."""
        if not self.at_close:
            self.cues[self.position] = min(3, self.cue + 1)

    def undo(self) -> bool:
        """Take back the last mark and stand on its prompt; False when there is none.

        After a restart the newest mark on disk is the last one.
        """
        if self._undo:
            position, before = self._undo.pop()
        else:
            newest = self.journal.last_mark(self.desk.child.record, self.morning.date, self.number)
            if newest is None:
                return False
            position, before = newest, None
        row = self._row(before.mark, before.cue) if before else self._row(None, 0)
        self._write(position, row, position)
        return True

    def others_easy(self) -> int:
        """What was shown and has no mark came easily; gives how many that were."""
        left = self.unmarked
        for at in left:
            self._write(at, self._row(Mark.FLUENT, self.cues.get(at, 0)), self.position)
            self._undo.append((at, None))
        return len(left)

    def toggle_rough(self) -> None:
        """Flag the day as a rough one, or not."""
        self.rough = not self.rough
        self.journal.set_rough(self.desk.child.record, self.morning.date, self.number, self.rough)

    def close(self) -> None:
        """The morning is over."""
        self.closed = True
        self.journal.close_sitting(self.desk.child.record, self.morning.date, self.number)

    # -- changing what is still to come

    def shorten(self) -> bool:
        """Make it a short morning: four prompts in all, those shown included. False when nothing changed."""
        done = self.position + (0 if self.at_close else 1)
        left = self.prompts[done:]
        if len(self.prompts) <= SHORT or not left:
            return False
        items = {prompt.item for prompt in left}
        kept = self._choice(items, max(0, SHORT - done), self.prompts[done - 1].skill if done else "")
        self._replace(done, kept)
        return True

    def swap(self) -> bool:
        """Ask something else: what this prompt wants is not here. False when there is nothing else."""
        prompt = self.prompt
        if prompt is None:
            return False
        if prompt.table:
            self._missing.add(prompt.table)
        return self._instead({prompt.item})

    def hold_back(self) -> bool:
        """Hold this prompt's level back as not taught yet, and ask something else."""
        prompt = self.prompt
        if prompt is None:
            return False
        level = f"{prompt.skill}:{prompt.level}"
        self.desk.hold(level, back=True)
        return self._instead(
            {each.item for each in self.prompts if each.skill == prompt.skill and each.level == prompt.level}
        )

    def _instead(self, out: set[str]) -> bool:
        """Replace the prompts still to come that are in ``out`` or want a missing thing."""
        prompts, changed = list(self.prompts), False
        for at in range(self.position, len(prompts)):
            gone = prompts[at].item in out or (prompts[at].table and prompts[at].table in self._missing)
            if not gone:
                continue
            beside = {each.skill for each in (*prompts[max(0, at - 1) : at], *prompts[at + 1 : at + 2])}
            other = self._one_more([each.item for each in prompts], beside)
            changed = changed or other is not None
            if other is not None:
                prompts[at] = other
        if changed:
            self._replace(self.position, tuple(prompts[self.position :]))
            self.cues.pop(self.position, None)
        return changed

    def _one_more(self, used: list[str], beside: set[str]) -> Prompt | None:
        """One prompt not in the morning yet, of no skill ``beside``, that wants nothing missing."""
        morning = self.morning
        full = {name for name in (item.partition("/")[0] for item in used) if _count(used, name) >= 2}
        items = [
            item
            for item in self.desk.open_items(morning)
            if item.id not in used
            and item.skill not in beside | full
            and skills.place(item.id).level.table not in self._missing
        ]
        choices = self.desk.choose(items, morning, self.desk.shape(morning), count=1)
        built = self.desk.build(choices, morning, self.routine.shape, self.number).prompts
        return built[0] if built else None

    def _choice(self, items: set[str], count: int, after: str) -> tuple[Prompt, ...]:
        """The best ``count`` of the prompts still to come, none of the skill just asked first."""
        if not count:
            return ()
        morning, by_item = self.morning, {prompt.item: prompt for prompt in self.prompts}
        form = replace(self.desk.shape(morning, "short"), prompts=((36, count),))
        able = [item for item in self.desk.items() if item.id in items]
        chosen = [c.item.id for c in self.desk.choose(able, morning, form, count=count)]
        if chosen and by_item[chosen[0]].skill == after:
            chosen.append(chosen.pop(0))
        return tuple(by_item[item] for item in chosen)

    # -- the journal

    def _row(self, mark: Mark | None, cue: int) -> MarkRow:
        return MarkRow(
            mark=mark, cue=cue, adult=self.desk.family.adult, from_memory=False, at=self.clock().isoformat()
        )

    def _write(self, at: int, row: MarkRow, position: int) -> None:
        self.marks[at] = row
        self._step(position, at, row)

    def _go(self, position: int) -> None:
        self._step(position, None, None)

    def _step(self, position: int, at: int | None, row: MarkRow | None) -> None:
        position = min(position, len(self.prompts))
        shown = max(self.furthest, min(position, len(self.prompts) - 1))
        self.journal.step(
            self.desk.child.record, self.morning.date, self.number, position, shown=shown, at=at, mark=row
        )
        self.position, self.furthest = position, shown

    def _replace(self, start: int, rest: tuple[Prompt, ...]) -> None:
        self.routine = self.routine._replace(prompts=self.prompts[:start] + rest)
        self.journal.replace(
            self.desk.child.record,
            self.morning.date,
            self.number,
            start,
            routine_text(self.routine),
            [(prompt.item, prompt.wording) for prompt in rest],
        )
        self.marks = {at: row for at, row in self.marks.items() if at < start}
        self.furthest = min(self.furthest, max(self.position, start - 1))
        self._undo = [(at, before) for at, before in self._undo if at < start]
        self.position = min(self.position, len(self.prompts))


def _count(used: list[str], skill: str) -> int:
    return sum(item.partition("/")[0] == skill for item in used)


def begin(desk: Desk, journal: Journal, clock: Clock, *, shape: str = "") -> Sitting:
    """Start a new sitting for today and keep it."""
    number = len(journal.sittings_of(desk.child.record, desk.today)) + 1
    routine = desk.routine(shape=shape, sitting=number)
    rows = [(prompt.item, prompt.wording) for prompt in routine.prompts]
    number = journal.start(desk.child.record, desk.today, routine.shape, routine_text(routine), rows)
    return Sitting(desk, journal, clock, number, routine)


def resume(desk: Desk, journal: Journal, clock: Clock) -> Sitting | None:
    """Today's sitting as it was left: the open one, else the last closed one; None when there is none."""
    stored = journal.open_sitting(desk.child.record, desk.today)
    if stored is None:
        stored = next(reversed(journal.sittings_of(desk.child.record, desk.today)), None)
    if stored is None:
        return None
    try:
        routine = routine_from(stored.routine)
    except ValueError:
        return None
    marks = journal.marks_of(desk.child.record, desk.today, stored.sitting)
    return Sitting(
        desk,
        journal,
        clock,
        stored.sitting,
        routine,
        position=min(stored.position, len(routine.prompts)),
        furthest=stored.furthest,
        rough=stored.rough,
        closed=stored.closed,
        marks=marks,
    )
