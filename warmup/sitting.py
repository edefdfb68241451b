"""One routine being worked through: where it stands, its marks, and what each key does to it.

Nothing here knows a screen. Every change is in the journal before the method that makes it returns.
"""

from collections.abc import Collection
from dataclasses import dataclass, field
from typing import NamedTuple

from warmup import skills
from warmup.desk import Clock, Desk
from warmup.engine import SURE
from warmup.journal import Journal, MarkRow
from warmup.morning import Choice, Item, Mark, Morning, Prompt, Routine, Shape, Slot, SlotKind
from warmup.wire import routine_from, routine_text

SHORT = 4
"""How many prompts a short morning has in all."""
ONE_MORE = Shape("one more", (Slot(SlotKind.OLDER, 1),), ((36, 1),))
"""What takes another prompt's place: something known, neither new nor called the one to finish."""


class _Step(NamedTuple):
    """What undo takes back: a mark on the prompt ``at`` (``before`` it the one there was), a stop, or both.

    ``gone`` holds the prompts from position ``start`` on that an early stop took away; None without one.
    """

    at: int
    before: MarkRow | None
    marked: bool = True
    start: int = 0
    gone: tuple[Prompt, ...] | None = None


@dataclass(slots=True, eq=False, repr=False)
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
    _undo: list[_Step] = field(default_factory=list)
    _missing: set[str] = field(default_factory=set)
    _stopped: bool = False
    _stopped_itself: bool = False

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
        shown = range(self._reached)
        return tuple(at for at in shown if self.mark_at(at) is None)

    @property
    def _reached(self) -> int:
        """How many prompts were shown."""
        return min(self.furthest + 1, len(self.prompts))

    @property
    def stopping(self) -> bool:
        """Whether the morning is down to its sure prompt: stopped early, or come to it by itself."""
        last = self.prompts[-1:]
        return self._stopped or (
            bool(last) and last[0].why == SURE and self.furthest >= len(self.prompts) - 1
        )

    # -- moving and marking

    def mark(self, mark: Mark) -> bool:
        """Mark the prompt on screen and go on; True when the morning stops early of it.

        It does so at the second not yet running while more than one prompt is still to come, once a
        sitting: who takes that back has decided, and is not stopped again.
        """
        if self.at_close:
            return False
        at, reached = self.position, self._reached
        step = _Step(at, self.marks.get(at))
        self._write(at, self._row(mark, self.cue), at + 1)
        enough = self._two_not_yet(at) and not (self._stopped_itself or self.stopping)
        if enough and len(self.prompts) - reached > 1:
            self._stopped_itself = True
            step = step._replace(start=reached, gone=self._stop(reached, at))
        self._undo.append(step)
        return step.gone is not None

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
        """Take back the last mark, or early stop, and stand on its prompt; False when there is none.

        After a restart the newest mark on disk is the last one.
        """
        if self._undo:
            step = self._undo.pop()
        else:
            newest = self.journal.last_mark(self.desk.child.record, self.morning.date, self.number)
            if newest is None:
                return False
            step = _Step(newest, None)
        if step.marked:
            before = step.before
            row = self._row(before.mark, before.cue) if before else self._row(None, 0)
            self._write(step.at, row, step.at)
        else:
            self._go(step.at)
        if step.gone is not None:
            self._bring_back(step.start, step.gone)
        return True

    def others_easy(self) -> int:
        """What was shown and has no mark came easily; gives how many that were."""
        left = self.unmarked
        for at in left:
            self._write(at, self._row(Mark.FLUENT, self.cues.get(at, 0)), self.position)
            self._undo.append(_Step(at, None))
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

    def stop_early(self) -> bool:
        """Go to one sure prompt and then the close; False when there is nothing to cut short.

        What was on screen stays, marked or not. What was not reached is not asked and is no debt.
        """
        if self.at_close or self.closed or self.stopping:
            return False
        at, reached = self.position, self._reached
        gone = self._stop(reached, at)
        self._undo.append(_Step(at, None, marked=False, start=reached, gone=gone))
        return True

    def _stop(self, start: int, at: int) -> tuple[Prompt, ...]:
        """Put a sure prompt in the place of all from ``start`` on, and go to it; gives what it took away.

        ``at`` is the prompt the child was just asked. Where nothing is sure the close comes at once.
        """
        gone = self.prompts[start:]
        used = [prompt.item for prompt in self.prompts[:start]]
        able = self._usable(used, {self.prompts[at].skill, self.prompts[start - 1].skill})
        sure = self.desk.surest(able, self.morning)
        self._replace(start, self._built(sure and (sure,)))
        self.cues.pop(start, None)
        self._stopped = True
        if self.position != start:
            self._go(start)
        return gone

    def _bring_back(self, start: int, gone: tuple[Prompt, ...]) -> None:
        """Bring back what an early stop took away, without what was held back or used since."""
        start = min(start, len(self.prompts))
        used = {prompt.item for prompt in self.prompts[:start]}
        out = used, self.desk.child.held, self._missing
        self._replace(start, tuple(p for p in gone if not _out(p, *out)))
        self.cues.pop(start, None)
        self._stopped = False

    def _two_not_yet(self, at: int) -> bool:
        """Whether this prompt and the one marked next to it, with no other mark between, are not yet."""
        marked = [each for each in sorted(self.marks) if self.mark_at(each)]
        here = marked.index(at)
        return self.mark_at(at) is Mark.NOT_YET and any(
            self.mark_at(each) is Mark.NOT_YET
            for each in (*marked[max(0, here - 1) : here], *marked[here + 1 : here + 2])
        )

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
        morning, items = self.morning, self._usable(used, beside)
        built = self._built(self.desk.choose(items, morning, ONE_MORE))
        return built[0] if built else None

    def _usable(self, used: list[str], beside: set[str]) -> list[Item]:
        """The open items not ``used``, of no skill ``beside`` or used twice, that want nothing missing."""
        full = {name for name in (item.partition("/")[0] for item in used) if _count(used, name) >= 2}
        return [
            item
            for item in self.desk.open_items(self.morning)
            if item.id not in used
            and item.skill not in beside | full
            and skills.place(item.id).level.table not in self._missing
        ]

    def _built(self, choices: Collection[Choice] | None) -> tuple[Prompt, ...]:
        shape, beside = self.routine.shape, self.prompts
        return self.desk.build(choices or (), self.morning, shape, self.number, beside).prompts

    def _choice(self, items: set[str], count: int, after: str) -> tuple[Prompt, ...]:
        """The best ``count`` of the prompts still to come, none of the skill just asked first."""
        if not count:
            return ()
        morning, by_item = self.morning, {prompt.item: prompt for prompt in self.prompts}
        form = self.desk.shape(morning, "short")._replace(prompts=((36, count),))
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
        self._undo = [step for step in self._undo if step.at < start]
        self.position = min(self.position, len(self.prompts))


def _out(prompt: Prompt, used: set[str], held: Collection[str], missing: set[str]) -> bool:
    """Whether a prompt can't be asked any more: asked already, held back, or wanting what is not here."""
    return prompt.item in used or f"{prompt.skill}:{prompt.level}" in held or prompt.table in missing


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
