"""Nothing untrue is said about today: what a prompt states of the date is so, or it says "Pretend"."""

import datetime as dt
import re
from collections.abc import Iterator

from tests.bank.kitchen import spoken
from tests.bank.reading import sentences
from warmup.english import MONTHS, WEEKDAYS, ordinal_word
from warmup.model import Countdown, Morning, Prompt

PRETEND = re.compile(r"\bPretend\b")
_DAY = "|".join(WEEKDAYS)
_MONTH = "|".join(MONTHS)
_NAME = rf"(?P<name>{_DAY}|{_MONTH})"
_DATE = rf"(?:(?:{_MONTH}) (?P<nth>[a-z]+(?:-[a-z]+)?|\d+)|the (?P<only>[a-z]+(?:-[a-z]+)?))"
# A statement about now, and how many days from today it speaks of.
_NOW = re.compile(
    rf"\b(?:(?P<today>(?:[Tt]oday|[Nn]ow|[Ii]t) (?:is|was)|(?:[Tt]oday|[Ii]t)[’']s|[Ww]e are in"
    rf"|[Tt]his (?:day|month) is|[Tt]oday, )|(?P<tomorrow>[Tt]omorrow (?:is|will be)|[Tt]omorrow[’']s)"
    rf"|(?P<yesterday>[Yy]esterday was|[Yy]esterday, )) (?:an? |already |still |just )?{_NAME}"
    rf"(?: (?P<nth>[a-z]+(?:-[a-z]+)?))?"
)
_TODAY_DATE = re.compile(
    rf"\b[Tt]oday (?:is|[^.?!]*?\bon) (?:(?:{_DAY}),? )?the (?P<only>[a-z]+(?:-[a-z]+)?)"
)
_TOLD = re.compile(rf"\b(?:{_DAY}|{_MONTH})\b")
# What happened, or happens, on a named day: "the snow fell on Tuesday", "Bear lost his hat on Monday".
_HAPPENED = re.compile(
    r"\b(?:fell|lost|finds?|found|came|comes|was|were|went|bak(?:e|es|ed)|eats?|ate|sleeps?|slept|woke"
    r"|cooked|made|got|played|painted|saw|rained|snowed|plant(?:s|ed)|is made|had)\b"
)
SEASONS = {
    "snow": re.compile(r"\b(?:snow\w*|sled\w*|snowman|ice skat\w*)\b", re.IGNORECASE),
    "winter": re.compile(r"\bwinter\b", re.IGNORECASE),
    "summer": re.compile(r"\b(?:summer|beach|pool)\b", re.IGNORECASE),
}
_MONTHS_OF = {"snow": {12, 1, 2, 3}, "winter": {12, 1, 2, 3}, "summer": {6, 7, 8, 9}}
_NEXT_DAY = re.compile(r"\b(?:the next day|tomorrow)\b", re.IGNORECASE)
_LAST_DAY = re.compile(r"\b(?:the day before|yesterday)\b", re.IGNORECASE)


def untrue(prompt: Prompt, morning: Morning) -> list[str]:
    """Faults: statements about today that this morning's date does not bear out.

    A prompt that begins with "Pretend" may go on from there, its cues as well.
    """
    pretends = PRETEND.match(prompt.say) is not None
    texts = [*spoken(prompt), ("do", prompt.do)]
    wrong = []
    for where, text in texts:
        if not (pretends or PRETEND.search(text)):
            wrong += [f"{where}: {fault}" for fault in _wrong_today(text, morning.date)]
        if not pretends:
            wrong += [f"{where}: {fault}" for fault in _out_of_season(text, morning.date)]
    if not pretends and prompt.skill in {"weekday", "month", "date"}:
        wrong += _made_up(prompt.say, morning.date, morning.countdowns)
    if prompt.skill == "school-day":
        wrong += [fault for where, text in texts for fault in _before_days_off(where, text, morning)]
    return wrong


def _wrong_today(text: str, today: dt.date) -> Iterator[str]:
    for found in _NOW.finditer(text):
        if re.search(r"\bIn [a-z]+ (?:sleeps?|days?),? $", text[: found.start()]):
            continue
        away = 1 if found["tomorrow"] else -1 if found["yesterday"] else 0
        if re.search(r"\b[Ii]t was\b", found[0]):
            yield f"{found[0]!r} tells of a day that is not said"
            continue
        day = today + dt.timedelta(away)
        wrong_name = found["name"] not in (WEEKDAYS[day.weekday()], MONTHS[day.month - 1])
        if wrong_name or (found["name"] in MONTHS and found["nth"] in _NTHS - {ordinal_word(day.day)}):
            yield f"{found[0]!r} on {day:%A, %B %d}"
    for found in _TODAY_DATE.finditer(text):
        if found["only"] in _NTHS and found["only"] != ordinal_word(today.day):
            yield f"{found[0]!r} on {today:%A, %B %d}"


_NTHS = {ordinal_word(n) for n in range(1, 32)}


def _made_up(say: str, today: dt.date, known: tuple[Countdown, ...]) -> Iterator[str]:
    """Sentences that tell of something on a named day which nobody can check."""
    so = {f"Yesterday was {WEEKDAYS[today.weekday() - 1]}.", f"Last month was {MONTHS[today.month - 2]}."}
    for sentence in sentences(say):
        if sentence in so:
            continue
        names = set(_TOLD.findall(sentence)) - {WEEKDAYS[today.weekday()], MONTHS[today.month - 1]}
        told = re.search(r"\beach\b|\bevery\b|\bsleeps? (?:off|it)\b", sentence) or any(
            day.name.lower() in sentence.lower() for day in known
        )
        if names and not told and not sentence.rstrip('”"').endswith("?") and _HAPPENED.search(sentence):
            yield f"say: made up, and no “Pretend”: {sentence!r}"


def _out_of_season(text: str, today: dt.date) -> Iterator[str]:
    for season, form in SEASONS.items():
        if today.month not in _MONTHS_OF[season] and (found := form.search(text)):
            yield f"{found[0]!r} in {MONTHS[today.month - 1]}"


def _before_days_off(where: str, text: str, morning: Morning) -> Iterator[str]:
    """ "Tomorrow" of a school day that comes after days off, "yesterday" of one before them."""
    found = _NEXT_DAY.search(text)
    if found and morning.next is not None and (morning.next - morning.date).days > 1:
        yield f"{where}: “{found[0]}” before days off"
    found = _LAST_DAY.search(text)
    if found and morning.previous is not None and (morning.date - morning.previous).days > 1:
        yield f"{where}: “{found[0]}” after days off"
