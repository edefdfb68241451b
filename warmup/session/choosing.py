"""The prompts of a morning chosen: by the engine, and again without what one would tell of another."""

from warmup import skills
from warmup.engine.eligibility import Eligible
from warmup.engine.engine import build, choose
from warmup.engine.giveaways import meet, to_leave_out
from warmup.model import ItemId, Morning, Routine, skill_and_name
from warmup.session.context import Context
from warmup.session.opening import opening, tells

_AGAIN, _BY_ITEM = 8, 2
"""So often a morning beside another child's is chosen again at most; so often by single items."""


class Choosing:
    """One morning of a child to be chosen (see :meth:`Context.routine` for what each argument is)."""

    def __init__(
        self,
        context: Context,
        morning: Morning,
        shape: str,
        session: int,
        *,
        bare: bool,
        beside: Routine | None,
    ) -> None:
        self._context, self._morning, self._session = context, morning, session
        self._bare, self._beside = bare, beside
        self._house = context.household
        self._shape = context.shape(morning, shape)
        self._child, self._known = context.child.journal_name, context.knowledge()

    def routine(self) -> Routine:
        """The morning, with its opening."""
        eligible = self._context.eligible(self._morning)
        if self._bare:
            without = (item for item in eligible.items if not skills.locate(item.id).level.table)
            eligible = eligible._replace(items=tuple(without))
        routine = self._whole(eligible)
        return self._opened(self._unheard(routine, eligible) if self._beside else routine)

    def _whole(self, eligible: Eligible) -> Routine:
        """The best morning of these items in which no prompt tells the answer of another."""
        count, beside = self._context.count(self._morning, self._shape), self._beside
        while True:
            choices = choose(
                eligible,
                self._shape,
                self._known,
                self._morning,
                self._context.curriculum(),
                child=self._child,
                count=count,
            )
            routine = build(
                choices,
                self._morning,
                self._known,
                child=self._child,
                shape=self._shape.name,
                session=self._session,
                beside=beside.prompts if beside else (),
                said=beside.opening if beside else None,
                own=self._context.own_skill,
                fit=self._house.furnished if self._house else None,
            )
            out = to_leave_out(routine.prompts, eligible.timely)
            if self._house:
                out = next((prompt.item for prompt in routine.prompts if not self._house.can(prompt)), out)
            if self._bare:
                # An item may want what its level as a whole does not.
                out = next((prompt.item for prompt in routine.prompts if prompt.table), out)
            if out is None:
                return routine
            eligible = eligible.without(out)

    def _unheard(self, routine: Routine, eligible: Eligible) -> Routine:
        """The morning without what the other child's has asked or told, where as many others can be had."""
        for round_ in range(_AGAIN):
            heard = self._heard(routine)
            if not heard:
                break
            # An item in the place of another is often of its skill, and tells as much: then all of that go.
            skills_out = {skill_and_name(item)[0] for item in heard if round_ >= _BY_ITEM}
            left = (each for each in eligible.items if each.id not in heard and each.skill not in skills_out)
            eligible = eligible._replace(items=tuple(left))
            other = self._whole(eligible)
            if len(other.prompts) < len(routine.prompts):
                break
            routine = other
        return routine

    def _heard(self, routine: Routine) -> set[ItemId]:
        beside = self._beside
        assert beside is not None
        return {
            prompt.item
            for prompt in routine.prompts
            if meet(prompt, beside.prompts)
            or prompt.item in {each.item for each in beside.prompts}
            or tells(beside.opening, (prompt,))
        }

    def _opened(self, routine: Routine) -> Routine:
        # A day has one opening: a second warm-up begins with its prompts.
        if self._session != 1:
            return routine._replace(opening=None)
        fact = opening(
            self._morning, routine.prompts, child=self._child, bare=self._bare, household=self._house
        )
        return routine._replace(opening=fact)
