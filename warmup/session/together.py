"""Several children in one morning: their prompts take turns, and each child keeps a session of its own.

The turns go round: the first prompt of each child, then the second of each. Whose turn it is follows from
where the sessions stand, so nothing more is kept: it is that of the session that got least far. Who has no
prompt left has no turns.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple, TypeVar

from warmup.journal.journal import Journal
from warmup.model import Prompt, Routine
from warmup.session import undoing
from warmup.session.context import Clock, Context
from warmup.session.session import Session, begin, resume
from warmup.session.undoing import Undone

Result = TypeVar("Result")


class Turn(NamedTuple):
    """One prompt of the round: whose it is, and its position in that session."""

    session: Session
    position: int

    @property
    def prompt(self) -> Prompt:
        """The prompt."""
        return self.session.prompts[self.position]


class Together:
    """The sessions of several children, in their order of the day; one of them is at hand.

    As long as the first child's opening is on screen the others need not have begun. ``shape`` names one for
    new sessions; without it those of today go on.
    """

    def __init__(
        self, contexts: Sequence[Context], journal: Journal, clock: Clock, *, shape: str = ""
    ) -> None:
        """``contexts`` are those of the children, at least one."""
        self.contexts, self._journal, self._clock, self._shape = tuple(contexts), journal, clock, shape
        self._begun: dict[str, Session] = {}
        first = self.contexts[0]
        if not shape:
            found = ((context, resume(context, journal, clock)) for context in contexts)
            self._begun = {_name(context): session for context, session in found if session}
        if _name(first) not in self._begun:
            self._begin(first)
        self._last: Session | None = None
        self.settle()

    def _begin(self, context: Context) -> None:
        """Begin a child's session, with prompts that those of the others neither ask nor tell."""
        others = [session.routine for session in self.sessions]
        beside: Routine | None = None
        if others:
            beside = others[0]._replace(prompts=tuple(each for one in others for each in one.prompts))
        self._begun[_name(context)] = begin(
            context, self._journal, self._clock, shape=self._shape, beside=beside
        )

    def gather(self) -> None:
        """Begin the sessions that have not begun."""
        for context in self.contexts:
            if _name(context) not in self._begun:
                self._begin(context)

    # -- where it stands

    @property
    def sessions(self) -> tuple[Session, ...]:
        """The sessions that have begun, in the order of the children."""
        return tuple(self._begun[name] for name in map(_name, self.contexts) if name in self._begun)

    @property
    def at_hand(self) -> Session:
        """The session whose turn it is; at the close that of the last turn."""
        going = [session for session in self.sessions if not session.at_close]
        if self.sessions[0].at_opening:
            return self.sessions[0]
        if going:
            # Of those that got equally far the first in order.
            return min(going, key=lambda session: session.position)
        return self.turns[-1].session if self.turns else self.sessions[0]

    @property
    def turns(self) -> tuple[Turn, ...]:
        """Every prompt of the morning in the order in which they are asked."""
        sessions = self.sessions
        longest = max(len(session.prompts) for session in sessions)
        return tuple(
            Turn(session, at) for at in range(longest) for session in sessions if at < len(session.prompts)
        )

    @property
    def at(self) -> int:
        """The place of the turn at hand among all; at the close behind the last."""
        session = self.at_hand
        if session.at_close:
            return len(self.turns)
        return self.turns.index(Turn(session, session.position))

    @property
    def can_undo(self) -> bool:
        """Whether there is an action of any child to take back."""
        return any(session.can_undo for session in self.sessions)

    # -- what is done

    def settle(self) -> None:
        """Bring up the prompt whose turn it now is: call it after whatever was done."""
        if not self.sessions[0].at_opening:
            self.gather()
        for session in self.sessions:
            others = (other for other in self.sessions if other is not session)
            session.beside = tuple(prompt for other in others for prompt in other.prompts)
            session.takes_turns = True
        now = self.at_hand
        opening = now.at_opening and now is self.sessions[0]
        news = now is not self._last or now.furthest < now.position
        if news and not opening and not now.at_close:
            now.come_up()
        self._last = now

    def back(self) -> None:
        """Go back one turn, and from the first to the opening, if there is one."""
        at = self.at
        if at:
            self.go_to_turn(at - 1)
        else:
            self.at_hand.back()

    def go_to(self, position: int) -> bool:
        """Go to a prompt of the child at hand that was shown, or with -1 to the opening; else False."""
        first = self.sessions[0]
        if position < 0:
            return bool(self.turns) and self._stand(Turn(first, 0)) and first.go_to(-1)
        return position < len(self.at_hand.prompts) and self._stand(Turn(self.at_hand, position))

    def go_to_turn(self, at: int) -> bool:
        """Go to a turn that was, or to the one after these; else False."""
        return self._stand(self.turns[at])

    def _stand(self, turn: Turn) -> bool:
        """Let all sessions stand where it is that turn; False where it lies ahead of what was shown."""
        sessions = self.sessions
        own = sessions.index(turn.session)
        places = [
            min(turn.position + (order < own), len(session.prompts)) for order, session in enumerate(sessions)
        ]
        if any(place > session.furthest + 1 for place, session in zip(places, sessions, strict=True)):
            return False
        for place, session in zip(places, sessions, strict=True):
            if session.position != place:
                session.go_to(place) if place < len(session.prompts) else session.to_close()
        return True

    def all_as_one(self, work: Callable[[Session], Result]) -> list[Result]:
        """Do the same for every child; one undo takes all of it back."""
        self.gather()
        one = " ".join(self._journal.newest(_name(each.context), each.morning.date) for each in self.sessions)
        for session in self.sessions:
            session.shares = one or "first"
        try:
            return [work(session) for session in self.sessions]
        finally:
            for session in self.sessions:
                session.shares = ""

    def undo(self) -> Undone | None:
        """Take back the newest action of the day of any child; None when there is none. See ``Session``."""
        found = [(row, session) for session in self.sessions if (row := session.undoable)]
        if not found:
            return self.at_hand.undo()
        newest, session = max(found, key=lambda each: (each[0].at, each[0].id))
        undone = session.undo()
        if shared := undoing.shared(newest):
            for row, other in found:
                if other is not session and undoing.shared(row) == shared:
                    other.undo()
        if not session.at_close and not session.at_opening:
            self._stand(Turn(session, session.position))
        return undone


def _name(context: Context) -> str:
    return context.child.journal_name
