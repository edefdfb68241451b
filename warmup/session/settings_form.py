"""The settings page: what it is filled in with, what is wrong with it, and the family it describes.

No widgets here. What is typed is text; what can't be taken is said in a sentence, by the name of its field.
Nothing changes but what is not as it was filled in.
"""

import datetime as dt
from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple

from warmup.config.family import Child, Family, year_of
from warmup.config.toml_file import LONGEST_NAME
from warmup.engine.things import OFTEN_MISSING
from warmup.english import date_words, listed
from warmup.session.first_form import Unclear, date_of, short_weekdays, today_words, weekdays_of
from warmup.text import clean, visible


class SettingsForm(NamedTuple):
    """The page as it is filled in: of the family, and of the child whose morning it is.

    ``nicknames`` are those of all children in their order. ``prompts`` is None where the year plan says how
    many, ``reads`` where nobody said. The first day and the prompts are the child's own where it has its own.
    ``without`` has what the house does not have.
    """

    nicknames: tuple[str, ...]
    first_day: str
    weekdays: str
    prompts: int | None
    covered: bool
    reads: bool | None
    pennies: bool
    theme: str
    animal: str
    adult: str
    toddler: bool
    without: tuple[str, ...]


def as_it_is(family: Family, child: Child) -> SettingsForm:
    """The page of a family and one of its children as they are."""
    return SettingsForm(
        nicknames=tuple(each.nickname for each in family.children),
        first_day=(child.first_day or family.first_day).isoformat(),
        weekdays=short_weekdays(family.weekdays),
        prompts=child.prompts or family.prompts,
        covered=not family.answers_shown,
        reads=child.reads,
        pennies=family.pennies,
        theme=family.theme,
        animal=family.animal,
        adult=family.adult,
        toddler=family.toddler,
        without=family.without,
    )


def things_asked(family: Family) -> tuple[str, ...]:
    """The things the page asks of: those a house may well not have, and those this one says it has not."""
    return tuple(dict.fromkeys((*OFTEN_MISSING, *family.without)))


def nickname_field(number: int) -> str:
    """The name of the field of a child's nickname, by the child's place from 0."""
    return f"nickname-{number}"


def wrong(form: SettingsForm, family: Family) -> dict[str, str]:
    """What can't be taken, a sentence each by the name of its field; nothing when all is well."""
    return dict(_wrong(form, family.last_day))


def _wrong(form: SettingsForm, last_day: dt.date | None) -> Iterator[tuple[str, str]]:
    taken = set[str]()
    for number, nickname in enumerate(map(clean, form.nicknames)):
        field = nickname_field(number)
        if not visible(nickname):
            yield field, "A nickname, please: any word the child likes."
        elif len(nickname) > LONGEST_NAME:
            yield field, f"At most {LONGEST_NAME} letters, please."
        elif nickname.casefold() in taken:
            yield field, f"There is another {nickname}; a nickname of its own, please."
        taken.add(nickname.casefold())
    try:
        first_day = date_of(form.first_day)
        if last_day and first_day > last_day:
            ends = date_words(last_day, weekday=False, year=True)
            yield "first_day", f"A first day before the year’s last, {ends}, please."
    except Unclear as unclear:
        yield "first_day", str(unclear)
    try:
        weekdays_of(form.weekdays)
    except Unclear as unclear:
        yield "weekdays", str(unclear)
    if not visible(clean(form.animal)):
        yield "animal", "A name for the stuffed animal, please."
    elif len(clean(form.animal)) > LONGEST_NAME:
        yield "animal", f"At most {LONGEST_NAME} letters, please."
    if len(clean(form.adult)) > LONGEST_NAME:
        yield "adult", f"At most {LONGEST_NAME} letters, please."
    elif clean(form.adult) and not visible(clean(form.adult)):
        yield "adult", "A name, or nothing at all."


def family_of(form: SettingsForm, family: Family, child: Child) -> Family:
    """The family as the page has it. Unclear where something can't be taken.

    Children keep the names they have in the journal; a nickname's marks go on under it.
    """
    for sentence in wrong(form, family).values():
        raise Unclear(sentence)
    was = as_it_is(family, child)
    children = [
        replace(each, nickname=clean(nickname)) if nickname != each.nickname else each
        for each, nickname in zip(family.children, form.nicknames, strict=True)
    ]
    at = next(n for n, each in enumerate(family.children) if each.journal_name == child.journal_name)
    children[at] = replace(children[at], reads=form.reads)
    if form.prompts != was.prompts:
        if child.prompts:
            children[at] = replace(children[at], prompts=form.prompts)
        else:
            family = family._replace(prompts=form.prompts)
    if form.first_day != was.first_day:
        day = date_of(form.first_day)
        if child.first_day:
            children[at] = replace(children[at], first_day=day)
        else:
            family = family._replace(first_day=day)
    if form.weekdays != was.weekdays:
        family = family._replace(weekdays=weekdays_of(form.weekdays))
    return family._replace(
        children=tuple(children),
        answers_shown=not form.covered,
        pennies=form.pennies,
        theme=form.theme,
        animal=clean(form.animal) if form.animal != was.animal else family.animal,
        adult=clean(form.adult) if form.adult != was.adult else family.adult,
        toddler=form.toddler,
        without=form.without,
    )


def outcome(form: SettingsForm, family: Family, child: Child, today: dt.date) -> str:
    """Which school day today is and when the year ends, or would be and would end; empty where unclear."""
    try:
        after = family_of(form, family, child)
    except Unclear:
        return ""
    mine = next(each for each in after.children if each.journal_name == child.journal_name)
    year, was = year_of(after, mine), year_of(family, child)
    if not year.mornings:
        return "No school day is left in such a year."
    changed = year != was
    last = date_words(year.mornings[-1], weekday=False, year=True)
    verb = "would be" if changed else "was" if year.mornings[-1] < today else "is"
    said = today_words(year.morning(today), year, "would be" if changed else "is")
    return f"{said}; the last school day {verb} {last}."


_SAID = {
    "first_day": "first school day",
    "weekdays": "school weekdays",
    "prompts": "prompts a morning",
    "answers_shown": "answers",
    "pennies": "pennies",
    "theme": "look",
    "animal": "stuffed animal",
    "adult": "who marks",
    "toddler": "toddler",
    "without": "what the house has",
}
"""What each field of the family is called in the line about what was saved."""
_OF_THE_CHILD = {"nickname": "nickname", "reads": "reading", "first_day": "first school day",
                 "prompts": "prompts a morning"}  # fmt: skip
_CHOSEN_BY = ("first_day", "weekdays", "prompts", "pennies", "animal", "toddler", "without")
"""The fields a morning is chosen by."""


def changed(before: Family, after: Family) -> str:
    """What differs, in a line: "Saved: nickname and pennies."."""
    names = dict.fromkeys(
        words for field, words in _SAID.items() if getattr(before, field) != getattr(after, field)
    )
    for was, now in zip(before.children, after.children, strict=True):
        names |= dict.fromkeys(
            words for field, words in _OF_THE_CHILD.items() if getattr(was, field) != getattr(now, field)
        )
    return f"Saved: {listed(tuple(names))}." if names else ""


def chosen_anew(before: Family, after: Family) -> bool:
    """Whether the difference may change what a morning asks."""
    return any(getattr(before, field) != getattr(after, field) for field in _CHOSEN_BY) or any(
        (was.first_day, was.prompts) != (now.first_day, now.prompts)
        for was, now in zip(before.children, after.children, strict=True)
    )
