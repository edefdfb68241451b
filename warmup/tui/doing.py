"""What a key does to the session, and the line that the screen says of it."""

import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from functools import partial

from warmup import skills
from warmup.english import date_words, listed, number_word
from warmup.model import Mark, is_own
from warmup.session import undoing
from warmup.session.pausing import paused, turn_week, until_words
from warmup.session.session import Session
from warmup.session.words import BEADS
from warmup.tui.workspace import Workspace

MANY = 5
"""From so many days off on, their number is said and not each date."""
STOPPED = "One that comes easily, then done for today."
NOTHING_ON_THE_TABLE = "Nothing on the table today: no prompt asks for a thing."
STOPPED_AT_ONCE = "Done for today. The rest is no debt."


def said_of_marking(session: Session, mark: Mark) -> str:
    """Mark the prompt on screen; its bead with what it means, which is how a bead is explained."""
    session.mark(mark)
    return f"{BEADS[mark]} {undoing.MARK_WORDS[mark]}"


def _marks(mark: Mark) -> Callable[[Session], str]:
    return lambda session: said_of_marking(session, mark)


def _moves(move: Callable[[Session], None]) -> Callable[[Session], str]:
    def silently(session: Session) -> str:
        move(session)
        return ""

    return silently


def _rough(session: Session) -> str:
    session.toggle_rough()
    return "Rough day: marks lower nothing." if session.rough else "No rough day: marks count again."


def _short(session: Session) -> str:
    if session.shorten():
        return f"A short morning: {number_word(len(session.prompts))} in all."
    return "It is as short as it gets."


def _stop(session: Session) -> str:
    if not session.stop_early():
        return "There is nothing more to leave out."
    return STOPPED_AT_ONCE if session.at_close else STOPPED


def _asks_another(turn: Callable[[Session], bool]) -> Callable[[Session], str]:
    return lambda session: (
        "Something else, then." if turn(session) else "There is nothing else to ask just now."
    )


def _blurted(session: Session) -> str:
    child = session.context.child.nickname
    if not session.blurted():
        return "There is nothing else to ask just now."
    return f"That one does not count. {'Done' if session.at_close else 'Another one'} for {child}."


def _bare(session: Session) -> str:
    if not session.bare():
        return "Nothing today asks for a thing."
    return NOTHING_ON_THE_TABLE


def _hold(session: Session) -> str:
    from warmup.session.summary import item_label

    held = session.prompt
    session.hold_back()
    return f"Held back: {item_label(held)}. ‹unlocked› lists what is held, to let it come." if held else ""


def _known(session: Session) -> str:
    from warmup.session.summary import level_label

    asked, found = session.prompt, session.know_already()
    if asked is None or found is None:
        return ""
    other = "" if session.prompt == asked else " Something else, then."
    if is_own(asked.item):
        return f"What you wrote yourselves has no next step.{other}"
    if found.level is None:
        return f"That is the last step of {skills.locate(asked.item).skill.title.lower()}.{other}"
    step = level_label(found.level)
    if found.items:
        return f"Opened: {step}." if found.opens else f"It is open already: {step}."
    if found.lacking:
        return f"It waits for {listed(tuple(map(level_label, found.lacking)))}: {step}.{other}"
    until = paused(session.context)
    return f"{until_words(until) if until else 'Not today.'} It waits: {step}.{other}"


def _turn_new(session: Session) -> str:
    if session.turn_new():
        return "Nothing new until you say: the menu has “new things again”."
    return "New things may come again."


def _nothing_before(_session: Session) -> str:
    return "This is where the morning begins. ‹quit› leaves."


AT_A_PROMPT: Mapping[str, Callable[[Session], str]] = {
    "fluent": _marks(Mark.FLUENT),
    "hesitated": _marks(Mark.HESITATED),
    "not_yet": _marks(Mark.NOT_YET),
    "skip": _marks(Mark.SKIPPED),
    "next": _moves(Session.next),
    "back": _moves(Session.back),
    "leave": _moves(Session.back),
    "cue": _moves(Session.next_cue),
    "rough": _rough,
    "short": _short,
    "stop": _stop,
    "swap": _asks_another(Session.swap),
    "just": _asks_another(Session.another),
    "blurted": _blurted,
    "bare": _bare,
    "known": _known,
    "new": _turn_new,
    "hold": _hold,
}
"""What an action does while a prompt is on screen, and what is said of it."""


def at_the_opening(action: str, work: Workspace) -> str:
    """Do what an action does while the opening is on screen, for all children of it; what is said of it."""
    session = work.session
    match action:
        case "rough":
            return _all_rough(work)
        case "short":
            said = work.for_all(_short)
            return "A short morning for each." if work.together else said[0]
        case "bare":
            barer = any(work.for_all(Session.bare))
            return NOTHING_ON_THE_TABLE if barer else "Nothing today asks for a thing."
        case _ if session is not None:
            return _ALONE_AT_THE_OPENING[action](session)
    return ""


_ALONE_AT_THE_OPENING: Mapping[str, Callable[[Session], str]] = {
    "next": _moves(Session.next),
    "leave": _nothing_before,
    "new": _turn_new,
}


def at_the_close(action: str, work: Workspace) -> str:
    """Do what an action does at the close, for all children of it; what is said of it."""
    session = work.session
    match action:
        case "easy":
            count = sum(work.for_all(Session.others_easy))
            return f"Marked came easily: {number_word(count)}." if count else "Nothing is without a mark."
        case "rough":
            return _all_rough(work)
        case "new" if session is not None:
            return _turn_new(session)
        case "back" | "leave":
            work.back()
    return ""


def turn_pauses(sessions: Sequence[Session]) -> str:
    """Take or give back a week with nothing new, for the children to whom the close offers it."""
    for session in sessions:
        context = session.context
        session.family_action(undoing.PAUSE, partial(turn_week, context))
    return "" if any(each.context.child.paused for each in sessions) else "New things may come again."


def _all_rough(work: Workspace) -> str:
    """Flag the day as a rough one for all children, or for none."""
    session = work.session
    if session is None:
        return ""
    on = not session.rough
    said = work.for_all(lambda each: _rough(each) if each.rough is not on else "")
    return next(filter(None, said), "")


def said_of_days(off: Sequence[dt.date]) -> str:
    """What the screen says of missed mornings, by those that were off."""
    if not off:
        return "All were school days."
    return f"Days off: {', '.join(map(date_words, off)) if len(off) < MANY else number_word(len(off))}."
