"""What the tests of a session ask of one: where it stands, and whether the disk says the same."""

from tests.household import context_at
from warmup.journal.journal import Journal
from warmup.model import ItemId
from warmup.session.session import Session, resume


def again(session: Session) -> Session:
    """The session as another start of the program finds it on disk."""
    journal = Journal.open(session.journal.folder, session.clock)
    context = context_at(session.journal.folder, session.clock, session.context.family)
    found = resume(context, journal, session.clock)
    assert found is not None
    return found


def state(session: Session) -> tuple[object, ...]:
    """What a resumed session must have in common with the one that was left."""
    marks = {at: session.mark_at(at) for at in range(len(session.prompts))}
    items = [(prompt.item, prompt.say, prompt.picture) for prompt in session.prompts]
    return session.position, session.furthest, session.rough, marks, items


def items_of(session: Session) -> list[ItemId]:
    """The items of the morning, in order."""
    return [prompt.item for prompt in session.prompts]
