"""What is asked instead: a short morning's prompts, one in another's place, a sure one before the close."""

from collections.abc import Collection, Sequence

from warmup import skills
from warmup.engine.engine import SURE
from warmup.model import Choice, Item, Prompt, Routine, Shape, Slot, SlotKind
from warmup.session.context import Context

SHORT = 4
"""How many prompts a short morning has in all."""
ONE_MORE = Shape("one more", (Slot(SlotKind.OLDER, 1),), ((36, 1),))
"""What takes another prompt's place: something known, neither new nor called the one to finish."""


class Instead:
    """Chooses among what may be asked on a sitting's morning, without the things that are ``missing``."""

    def __init__(self, context: Context, routine: Routine, number: int, missing: Collection[str]) -> None:
        self._desk, self._routine, self._number, self._missing = context, routine, number, missing

    def shortened(self, done: int) -> tuple[Prompt, ...]:
        """The best prompts from ``done`` on for a short morning, none of the skill just asked first."""
        prompts, morning = self._routine.prompts, self._routine.morning
        left, count = {prompt.item: prompt for prompt in prompts[done:]}, max(0, SHORT - done)
        if not count:
            return ()
        form = self._desk.shape(morning, "short")._replace(prompts=((36, count),))
        able = [item for item in self._desk.items() if item.id in left]
        chosen = [choice.item.id for choice in self._desk.choose(able, morning, form, count=count)]
        if done and chosen and left[chosen[0]].skill == prompts[done - 1].skill:
            chosen.append(chosen.pop(0))
        return tuple(left[item] for item in chosen)

    def sure(self, start: int, at: int) -> tuple[Prompt, ...]:
        """One sure prompt to follow ``start`` prompts when the child was just asked ``at``; or none."""
        before = self._routine.prompts[:start]
        beside = {self._routine.prompts[at].skill, before[-1].skill}
        able = self._usable([prompt.item for prompt in before], beside)
        sure = self._desk.surest(able, self._routine.morning)
        return self._built((sure,) if sure else ())

    def others(self, out: Collection[str], at: int, asked: int) -> tuple[Prompt, ...]:
        """The morning with others for the prompt ``at`` and those after ``asked`` that can't be asked.

        Those are the items in ``out`` and what wants a missing thing. Where nothing else can be asked
        a prompt stays.
        """
        prompts = list(self._routine.prompts)
        for place in (at, *range(max(at, asked) + 1, len(prompts))):
            if prompts[place].item not in out and prompts[place].table not in self._missing:
                continue
            beside = {each.skill for each in (*prompts[max(0, place - 1) : place], *prompts[place + 1 :][:1])}
            other = self._one_more([each.item for each in prompts], beside)
            prompts[place] = other or prompts[place]
        return tuple(prompts)

    def _one_more(self, used: Sequence[str], beside: Collection[str]) -> Prompt | None:
        """One prompt not in the morning yet, of no skill ``beside``, that wants nothing missing."""
        morning, items = self._routine.morning, self._usable(used, beside)
        built = self._built(self._desk.choose(items, morning, ONE_MORE))
        return built[0] if built else None

    def _usable(self, used: Sequence[str], beside: Collection[str]) -> list[Item]:
        """The open items not ``used``, of no skill ``beside`` or used twice, that want nothing missing."""
        names = [item.partition("/")[0] for item in used]
        return [
            item
            for item in self._desk.open_items(self._routine.morning)
            if item.id not in used
            and item.skill not in beside
            and names.count(item.skill) < 2
            and skills.place(item.id).level.table not in self._missing
        ]

    def _built(self, choices: Collection[Choice]) -> tuple[Prompt, ...]:
        morning, shape, beside = self._routine.morning, self._routine.shape, self._routine.prompts
        return self._desk.build(choices, morning, shape, self._number, beside).prompts


def ends_surely(routine: Routine) -> bool:
    """Whether the last prompt is the sure one that a morning closes with."""
    return bool(routine.prompts) and routine.prompts[-1].why == SURE
