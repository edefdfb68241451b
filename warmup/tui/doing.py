"""What a key does to the morning, and the line that the screen says of it."""

import datetime as dt
from collections.abc import Sequence

from warmup.english import date_words, number_word
from warmup.model import Mark
from warmup.session import undoing
from warmup.session.session import Session
from warmup.session.summary import named

MANY = 5
"""From so many days off on, their number is said and not each date."""
STOPPED = "One that comes easily, then done for today."
STOPPED_ITSELF = "Two in a row not yet: one that comes easily, then done for today."
STOPPED_AT_ONCE = "Done for today. The rest is no debt."


def said_of_marking(session: Session, mark: Mark) -> str:
    """Mark the prompt on screen, and what the screen says of it."""
    if session.mark(mark):
        return STOPPED_AT_ONCE if session.at_close else STOPPED_ITSELF
    return "Left for today." if mark is Mark.SKIPPED else f"Marked {undoing.MARK_WORDS[mark]}."


def said_of_the_day(session: Session, action: str) -> str:
    """Do what changes the day or what is still to come, and what the screen says of it."""
    match action:
        case "rough":
            session.toggle_rough()
            return "Rough day: marks lower nothing." if session.rough else "No rough day: marks count again."
        case "short":
            if session.shorten():
                return f"A short morning: {number_word(len(session.prompts))} in all."
            return "It is as short as it gets."
        case "stop":
            if not session.stop_early():
                return "There is nothing more to leave out."
            return STOPPED_AT_ONCE if session.at_close else STOPPED
        case "swap":
            return "Something else, then." if session.swap() else "There is nothing else to ask just now."
        case "hold" if session.prompt:
            at = session.prompt
            session.hold_back()
            return f"Held back: {named(at)}. Key l lists what is held, to let it come again."
    return ""


def said_of_days(off: Sequence[dt.date]) -> str:
    """What the screen says of missed mornings, by those that were off."""
    if not off:
        return "All were school days."
    return f"Days off: {', '.join(map(date_words, off)) if len(off) < MANY else number_word(len(off))}."
