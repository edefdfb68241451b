"""What is asked instead: a short morning's prompts, one in another's place, a sure one before the close."""

import copy
from collections.abc import Callable, Collection, Sequence

from warmup import skills
from warmup.engine.eligibility import Eligible, timely_among
from warmup.engine.engine import SURE, build, choose, surest
from warmup.model import Choice, Item, ItemId, Prompt, Routine, Shape, Slot, SlotKind, skill_and_name
from warmup.session.context import Context
from warmup.session.opening import tells

KNOWN = "you said they know what comes before it"
"""Why a prompt of the next level comes, in words for the adult."""
ONE_MORE = Shape("one more", (Slot(SlotKind.OLDER, 1),))
"""What takes another prompt's place: something known, neither new nor called the one to finish."""


class Instead:
    """Chooses among what may be asked on a session's morning, without the things that are ``missing``.

    With ``bare`` there is nothing on the table at all. ``declined`` are the items that something else was
    asked for today: none of them comes again.
    """

    def __init__(
        self,
        context: Context,
        routine: Routine,
        number: int,
        missing: Collection[str],
        declined: Collection[str] = (),
        *,
        bare: bool = False,
        beside: Sequence[Prompt] = (),
    ) -> None:
        self._context, self._routine, self._number = context, routine, number
        self._missing, self._declined, self._bare = missing, declined, bare
        self._house = context.household
        self._beside = beside

    def short(self) -> int:
        """How many prompts a short morning has in all."""
        morning = self._routine.morning
        return self._context.count(morning, self._context.shape(morning, "short"))

    def shortened(self, done: int) -> tuple[Prompt, ...]:
        """The best prompts from ``done`` on for a short morning, none of the skill just asked first."""
        prompts, morning = self._routine.prompts, self._routine.morning
        left, count = {prompt.item: prompt for prompt in prompts[done:]}, max(0, self.short() - done)
        if not count:
            return ()
        form = self._context.shape(morning, "short")
        able = [item for item in self._context.curriculum().items if item.id in left]
        chosen = [choice.item.id for choice in self._chosen(able, form, count)]
        if done and chosen and left[chosen[0]].skill == prompts[done - 1].skill:
            chosen.append(chosen.pop(0))
        return tuple(left[item] for item in chosen)

    def sure(self, start: int, at: int) -> tuple[Prompt, ...]:
        """One sure prompt to follow ``start`` prompts when the child was just asked ``at``; or none."""
        before = self._routine.prompts[:start]
        beside = {self._routine.prompts[at].skill, before[-1].skill}
        able = self._usable([prompt.item for prompt in before], beside)
        return self._untold(able, self._surest)

    def others(self, out: Collection[ItemId], at: int, asked: int) -> tuple[Prompt, ...]:
        """The morning with others for the prompt ``at`` and those after ``asked`` that can't be asked.

        Those are the items in ``out`` and what wants a missing thing. Where nothing else can be asked
        a prompt stays.
        """
        prompts = list(self._routine.prompts)
        for place in (at, *range(max(at, asked) + 1, len(prompts))):
            if prompts[place].item not in out and not self._lacks(prompts[place].table):
                continue
            beside = {each.skill for each in (*prompts[max(0, place - 1) : place], *prompts[place + 1 :][:1])}
            other = self._one_more([each.item for each in prompts], beside)
            prompts[place] = other or prompts[place]
        return tuple(prompts)

    def fitting(self, at: int, asked: int) -> tuple[Prompt, ...]:
        """The morning with others for the prompt ``at`` and those after ``asked`` that this house can't have.

        What it can have with another thing in the place of one stays, with that; where nothing else can be
        asked a prompt goes.
        """
        house, prompts = self._house, self._routine.prompts
        if house is None:
            return prompts
        open_places = {at, *range(max(at, asked) + 1, len(prompts))}
        fitted = tuple(
            (house.furnished(each) or each) if place in open_places else each
            for place, each in enumerate(prompts)
        )
        out = {each.item for place, each in enumerate(fitted) if place in open_places and not house.can(each)}
        found = self._with(fitted).others(out, at, asked) if out else fitted
        return tuple(each for place, each in enumerate(found) if place not in open_places or house.can(each))

    def after_known(
        self, items: Sequence[Item], at: int, out: Collection[ItemId], asked: int
    ) -> tuple[Prompt, ...]:
        """The morning with the first of ``items`` that can be asked in the place ``at``, else another.

        The prompts of ``out`` after ``asked`` give way as well.
        """
        used = {each.item for each in self._routine.prompts}
        able = [item for item in items if item.id not in used and self._at_hand(item)]
        built = self._untold(
            able, lambda left: tuple(Choice(item, KNOWN, SlotKind.NEWEST, True) for item in left[:1])
        )
        if not built:
            return self.others(out, at, asked)
        was = self._routine.prompts
        return self._with((*was[:at], built[0], *was[at + 1 :])).others(out, at, asked)

    def _with(self, prompts: tuple[Prompt, ...]) -> "Instead":
        """The same for a morning with these prompts."""
        other = copy.copy(self)
        other._routine = self._routine._replace(prompts=prompts)
        return other

    def _lacks(self, table: str) -> bool:
        """Whether what stands there to be laid on the table is not to be had today."""
        return bool(table) and (self._bare or table in self._missing)

    def _at_hand(self, item: Item) -> bool:
        house = self._house
        if house is not None and not house.can_ask(item.id, self._routine.morning):
            return False
        return not self._lacks(skills.locate(item.id).level.table)

    def _one_more(self, used: Sequence[ItemId], beside: Collection[str]) -> Prompt | None:
        """One prompt not in the morning yet, of no skill ``beside``, that wants nothing missing."""
        built = self._untold(self._usable(used, beside), lambda able: self._chosen(able, ONE_MORE, 1))
        return built[0] if built else None

    def _untold(
        self, able: Sequence[Item], choose: Callable[[Sequence[Item]], tuple[Choice, ...]]
    ) -> tuple[Prompt, ...]:
        """The prompts of the choice among these items, without those whose answer the opening has said.

        Those that lack a thing are left out as well: an item may want what its level as a whole does not.
        """
        house = self._house
        while True:
            built = self._built(choose(able))
            out = {
                prompt.item
                for prompt in built
                if tells(self._routine.opening, (prompt,))
                or self._lacks(prompt.table)
                or (house is not None and not house.can(prompt))
            }
            if not out:
                return built
            able = [item for item in able if item.id not in out]

    def _usable(self, used: Sequence[ItemId], beside: Collection[str]) -> list[Item]:
        """The open items not ``used``, of no skill ``beside`` or used twice, that want nothing missing."""
        names = [skill_and_name(item)[0] for item in used]
        heard = {prompt.item for prompt in self._beside}
        return [
            item
            for item in self._context.eligible(self._routine.morning).items
            if item.id not in used
            and item.id not in heard
            and item.skill not in beside
            and item.id not in self._declined
            and names.count(item.skill) < (1 if item.own else 2)
            and self._at_hand(item)
        ]

    def _surest(self, items: Sequence[Item]) -> tuple[Choice, ...]:
        """The sure one to end with among these items, or none."""
        context, child = self._context, self._context.child.journal_name
        sure = surest(items, context.knowledge(), self._routine.morning, context.curriculum(), child=child)
        return (sure,) if sure else ()

    def _chosen(self, items: Sequence[Item], shape: Shape, count: int) -> tuple[Choice, ...]:
        """The engine's choice of so many among these items."""
        context, morning = self._context, self._routine.morning
        eligible = Eligible(tuple(items), timely_among(items, morning))
        known, child = context.knowledge(), context.child.journal_name
        return choose(eligible, shape, known, morning, context.curriculum(), child=child, count=count)

    def _built(self, choices: Sequence[Choice]) -> tuple[Prompt, ...]:
        """The prompts of these choices, beside those of the morning."""
        context, routine = self._context, self._routine
        return build(
            choices,
            routine.morning,
            context.knowledge(),
            child=context.child.journal_name,
            shape=routine.shape,
            session=self._number,
            beside=(*routine.prompts, *self._beside),
            said=routine.opening,
            own=context.own_skill,
            fit=self._house.furnished if self._house else None,
        ).prompts


def ends_surely(routine: Routine) -> bool:
    """Whether the last prompt is the sure one that a morning closes with."""
    return bool(routine.prompts) and routine.prompts[-1].why == SURE
