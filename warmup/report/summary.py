"""The record of some days laid out: days, minutes, topics, things, steps by standard code, reviews, notes."""

import datetime as dt
from collections.abc import Iterator

from warmup.engine.review import Outcome
from warmup.english import MONTHS, date_words, plural
from warmup.report import standards
from warmup.report.document import Bullets, Document, Part, Plot, Section, Table
from warmup.report.facts import LevelMet, Month, Report
from warmup.session.settling import SETTLED_MEANS

OUTCOMES = {
    Outcome.SETTLED: "came easily on two mornings: settled",
    Outcome.PARTLY: "came easily on one morning of two",
    Outcome.AGAIN: "came easily on neither of two mornings",
    Outcome.OPEN: "asked on one morning so far",
}
"""What a review found, for people."""
NO_TEST = "This is no test, no assessment and no grade. It tells what was asked, and what came easily."
RULES = (
    "What records a family must keep differs from state to state and changes. "
    "Your state’s education department knows."
)
NOT_A_SCHOOL_DAY = (
    "A day is confirmed when it had a warm-up, or when the adult at home said that it was school. A warm-up "
    "need not make a school day, and a school day needs no warm-up: that is for the adult at home to say."
)
ESTIMATE = "Minutes are an estimate: the seconds that each question takes at most, added up."
OWN_LEFT_OUT = "Questions that a family wrote itself are not counted here."


def minutes(seconds: int) -> int:
    """Seconds as whole minutes, to the nearest."""
    return (seconds + 30) // 60


def days(count: int) -> str:
    """So many days: "1 day", "12 days"."""
    return f"{count} {plural(count, 'day')}"


def dated(day: dt.date) -> str:
    """A date with its year: "August 31, 2026"."""
    return date_words(day, weekday=False, year=True)


def summary(report: Report, signed: str = "") -> Document:
    """The whole record; ``signed`` is the name of the adult, where it is asked for."""
    span = f"{dated(report.first)} to {dated(report.last)}"
    made = f"Written on {dated(report.made)}{f' by {signed}' if signed else ''}."
    found = (
        Section("Days", tuple(_days(report))),
        Section("Topics", tuple(_topics(report))),
        Section("On the table", tuple(_materials(report))),
        Section("Steps by standard", tuple(_levels(report))),
        Section("Review weeks", tuple(_reviews(report))),
        Section("Notes", tuple(_notes(report))),
        Section("About this record", (Bullets((NO_TEST, ESTIMATE, OWN_LEFT_OUT, RULES)),)),
    )
    return Document(
        f"Math warm-ups: {report.child}", f"{span}. {made}", tuple(part for part in found if part.parts)
    )


def _days(report: Report) -> Iterator[Part]:
    kept = report.attendance
    school = len(kept.confirmed)
    yield (
        f"There was a warm-up on {days(len(kept.held))}, about {minutes(kept.seconds)} "
        f"{plural(minutes(kept.seconds), 'minute')} in all, with {report.questions} "
        f"{plural(report.questions, 'question')}."
    )
    yield (
        f"{school} planned school {plural(school, 'day')} {plural(school, 'is', 'are')} confirmed; "
        f"{kept.both} of them had a warm-up. {NOT_A_SCHOOL_DAY}"
    )
    if kept.open:
        were = plural(len(kept.open), "was", "were")
        yield f"Nobody has said yet whether {days(len(kept.open))} planned as school {were} school."
    if kept.months:
        yield Table(
            "By month",
            ("Month", "School days", "Days with a warm-up", "Minutes, about"),
            tuple((month_words(m), str(m.school), str(m.held), str(minutes(m.seconds))) for m in kept.months),
            frozenset({1, 2, 3}),
        )
        yield Plot("Days with a warm-up", tuple((month_words(m), m.held) for m in kept.months))


def month_words(month: Month) -> str:
    """A month with its year, the name cut short: "Sep 2026"."""
    return f"{MONTHS[month.first.month - 1][:3]} {month.first.year}"


def _topics(report: Report) -> Iterator[Part]:
    if not report.topics:
        return
    yield Table(
        "What the questions were about",
        ("Part of math", "Topic", "Questions", "Days"),
        tuple((t.strand, t.title, str(t.questions), str(t.days)) for t in report.topics),
        frozenset({2, 3}),
    )
    yield Plot("Questions", tuple(report.strands.items()))


def _materials(report: Report) -> Iterator[Part]:
    if report.materials:
        things = ", ".join(f"{thing.name} {thing.days}" for thing in report.materials)
        yield f"What the questions wanted at hand, each with the number of days: {things}."


def _levels(report: Report) -> Iterator[Part]:
    if not report.levels:
        return
    yield f"A code with “toward” before it is one that the step only leads to. {SETTLED_MEANS}"
    rows = sorted(coded(report), key=lambda row: (standards.place(row[0]) if row[0] else (99, ""), row[1]))
    yield Table(
        "Steps that were asked",
        ("Standard", "Step", "First asked", "Settled"),
        tuple(
            (
                f"{'toward ' * leads}{code}" or "no code",
                level.words,
                _short(level.first),
                _short(level.settled),
            )
            for code, leads, level in rows
        ),
    )
    if codes := {code for code, _, _ in rows if code}:
        told = tuple((code, standards.WORDS[code]) for code in sorted(codes, key=standards.place))
        yield Table("The standards", ("Standard", "In our words"), told)
        yield standards.SOURCE


def coded(report: Report) -> Iterator[tuple[str, bool, LevelMet]]:
    """Each step with each of its codes, and whether it only leads toward that; without any, with none."""
    for level in report.levels:
        for leads, codes in ((False, level.codes), (True, level.toward)):
            for code in codes:
                yield code, leads, level
        if not level.codes and not level.toward:
            yield "", False, level


def _short(day: dt.date | None) -> str:
    """A date in few letters, nothing for none: "Sep 3, 2026"."""
    return f"{date_words(day, weekday=False, short=True)}, {day.year}" if day else ""


def _reviews(report: Report) -> Iterator[Part]:
    found = dict[tuple[int, Outcome], list[str]]()
    for week in dict.fromkeys(each.week for each in report.reviews):
        for result in Outcome:
            titles = [e.title for e in report.reviews if (e.week, e.outcome) == (week, result)]
            if titles:
                found[week, result] = titles
    if found:
        yield "In a review week a topic is asked on two mornings, as far as there is room."
        yield Bullets(
            tuple(
                f"Week {week}, {OUTCOMES[result]}: {'; '.join(titles)}."
                for (week, result), titles in found.items()
            )
        )


def _notes(report: Report) -> Iterator[Part]:
    if report.notes:
        rows = tuple((dated(note.date), note.text) for note in report.notes)
        yield Table("Notes that may be shared", ("Date", "Note"), rows)
    if report.left_out:
        count = report.left_out
        notes, name = plural(count, "note is", "notes are"), plural(count, "it names", "they name")
        yield f"{count} {notes} not told here: {name} another child or a file."
