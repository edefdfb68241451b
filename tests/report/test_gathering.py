"""Each number of a report is that of independent code over the journal, and each such count stands in it."""

import csv
import datetime as dt
import io
from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.oracles.report import Counts, school_days
from tests.report.conftest import CHILD, FAMILY, FIRST, KNOWN_UNTIL, OFF, SATURDAY, TODAY, Home
from warmup import skills
from warmup.engine.review import Check, Outcome
from warmup.model import ItemId, LevelId, skill_and_key
from warmup.report.asking import Form, Made, Wanted, make
from warmup.report.facts import Note, Report
from warmup.report.gathering import fit_to_leave, gather
from warmup.session.settling import Review, settled_on

SPANS = [
    (FIRST, TODAY),
    (dt.date(2026, 9, 21), dt.date(2026, 10, 15)),
    (SATURDAY, SATURDAY),
    (dt.date(2026, 8, 1), dt.date(2026, 8, 30)),
]


def records(made: Made) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(made.text(Form.CSV), newline="")))


def confirmed_on(first: dt.date, last: dt.date, held: set[str]) -> set[dt.date]:
    """The planned school days of the span that had a warm-up, or lie before what the adult has answered."""
    planned = school_days(max(first, FIRST), min(last, TODAY), range(4), OFF, (SATURDAY,))
    return {day for day in planned if f"{day}" in held or day <= KNOWN_UNTIL}


def expected(counts: Counts, first: dt.date, last: dt.date) -> set[tuple[str, ...]]:
    """Every record with a number that there should be: its part, whose it is, the number and its unit."""
    held = counts.held()
    confirmed = confirmed_on(first, last, held)
    found = set[tuple[str, ...]]()
    seconds = counts.seconds_by_month()
    for month in {f"{day}"[:7] for day in (*held, *confirmed)} | {*seconds}:
        numbers = (
            sum(f"{day}"[:7] == month for day in confirmed),
            sum(day[:7] == month for day in held),
            int(seconds.get(month, 0) / 60 + 0.5),
        )
        units = ("school days confirmed", "days with a warm-up", "minutes, estimated")
        found |= {("month", f"{month}-01", str(n), unit) for n, unit in zip(numbers, units, strict=True)}
    for skill, (questions, days) in counts.by_skill().items():
        title = skills.SKILLS[skill].title
        found |= {("topic", title, str(questions), "questions"), ("topic", title, str(days), "days")}
    for level, (questions, met) in counts.by_level().items():
        found.add(("step", words(level), str(questions), met))
    return found


def words(level: str) -> str:
    skill, key = skill_and_key(LevelId(level))
    found = skills.SKILLS[skill]
    return f"{found.title.lower()}, {next(each.label for each in found.levels if each.key == key)}"


def told(made: Made) -> Iterator[tuple[str, ...]]:
    """The same of the report's records."""
    for row in records(made):
        match row["part"]:
            case "month":
                yield "month", row["date"], row["number"], row["unit"]
            case "topic":
                yield "topic", row["name"], row["number"], row["unit"]
            case "step":
                yield "step", row["name"], row["number"], row["date"]


@pytest.mark.parametrize(("first", "last"), SPANS)
def test_each_number_is_that_of_plain_sql_and_the_other_way_round(
    lived_in: Home, first: dt.date, last: dt.date
) -> None:
    made = make(lived_in.context(), Wanted(first, last))
    counts = Counts(lived_in.journal, CHILD, first, last)
    assert {*told(made)} == expected(counts, first, last)
    days = {row["date"]: row for row in records(made) if row["part"] in ("day", "school day")}
    held, confirmed = counts.held(), {f"{day}" for day in confirmed_on(first, last, counts.held())}
    assert {*days} == held | confirmed
    assert {day for day, row in days.items() if row["part"] == "day"} == held
    assert {day for day, row in days.items() if row["relation"] == "confirmed school day"} == confirmed
    for row in records(made):
        if row["part"] == "thing":
            assert 1 <= int(row["number"]) <= counts.days_with(row["name"]), row


@settings(max_examples=12)
@given(st.dates(FIRST, TODAY), st.dates(FIRST, TODAY))
def test_of_any_days_the_counts_are_those_of_plain_sql(lived_in: Home, one: dt.date, other: dt.date) -> None:
    first, last = sorted((one, other))
    made = make(lived_in.context(), Wanted(first, last))
    assert {*told(made)} == expected(Counts(lived_in.journal, CHILD, first, last), first, last)


def test_the_sentences_have_the_numbers_of_the_records(lived_in: Home) -> None:
    report = gather(lived_in.context(), FIRST, TODAY)
    counts = Counts(lived_in.journal, CHILD, FIRST, TODAY)
    held, questions = counts.held(), sum(number for number, _ in counts.by_skill().values())
    confirmed = confirmed_on(FIRST, TODAY, held)
    minutes = int(sum(counts.seconds_by_month().values()) / 60 + 0.5)
    text = " ".join(make(lived_in.context(), Wanted()).text(Form.TEXT).split())
    assert f"on {len(held)} days, about {minutes} minutes in all, with {questions} questions." in text
    both = sum(f"{day}" in held for day in confirmed)
    assert f"{len(confirmed)} planned school days are confirmed; {both} of them had a warm-up." in text
    # The mornings of the ninth and the tenth were held; of the eleventh nobody has said anything.
    assert report.attendance.open == (dt.date(2026, 11, 11),)
    assert "Nobody has said yet whether 1 day planned as school was school." in text


def test_a_step_s_codes_are_the_catalogue_s_and_toward_is_said_of_the_others(lived_in: Home) -> None:
    made = make(lived_in.context(), Wanted())
    rows = [row for row in records(made) if row["part"] == "step"]
    found = {(row["name"], row["relation"], row["code"]) for row in rows}
    for level in Counts(lived_in.journal, CHILD, FIRST, TODAY).by_level():
        skill, key = skill_and_key(LevelId(level))
        at = next(each for each in skills.SKILLS[skill].levels if each.key == key)
        mine = {(relation, code) for name, relation, code in found if name == words(level)}
        both = {("exercises", code) for code in at.codes} | {("toward", code) for code in at.toward}
        assert mine == (both or {("", "")}), level


def _reviewed(report: Report, outcome: Outcome) -> list[str]:
    return [each.title for each in report.reviews if each.outcome is outcome]


def test_a_review_tells_what_two_marks_on_two_mornings_say(lived_in: Home) -> None:
    """Counted again here from the history: the first mark a skill got on each morning of weeks 5 and 9."""
    context = lived_in.context()
    report = gather(context, FIRST, TODAY)
    for week in {each.week for each in report.reviews}:
        days = [day for day in context.year.mornings if context.morning(day).week == week]
        firsts = dict[str, dict[dt.date, bool]]()
        for line in context.history():
            skill = line.item.partition("/")[0]
            if line.date in days and line.mark and line.mark.value != "skipped" and skill != "own":
                easy = line.mark.value == "fluent" and not line.cue
                firsts.setdefault(skill, {}).setdefault(line.date, easy)
        for skill, marks in firsts.items():
            two = [*marks.values()][:2]
            number = sum(two)
            wanted = (
                Outcome.OPEN if len(two) < 2 else (Outcome.AGAIN, Outcome.PARTLY, Outcome.SETTLED)[number]
            )
            (found,) = [e for e in report.reviews if (e.week, e.title) == (week, skills.SKILLS[skill].title)]
            assert found.outcome is wanted and found.dates == tuple([*marks][:2])
    assert {each.week for each in report.reviews} == {5, 9}
    assert _reviewed(report, Outcome.SETTLED) and _reviewed(report, Outcome.PARTLY)


def test_a_level_settles_only_on_a_day_a_review_of_its_skill_settled(lived_in: Home) -> None:
    report = gather(lived_in.context(), FIRST, TODAY)
    settled = {
        (each.title.lower(), each.dates[-1]) for each in report.reviews if each.outcome is Outcome.SETTLED
    }
    dates = [(level.words.partition(",")[0], level.settled) for level in report.levels if level.settled]
    assert dates and {*dates} <= settled
    assert {title for title, _ in dates} == {title for title, _ in settled}


def test_a_step_settles_the_first_time_and_not_again() -> None:
    item, later = ItemId("count-on/within-10"), dt.date(2026, 10, 1)
    checks = [(Check(day, item, True), Check(day + dt.timedelta(1), item, True)) for day in (FIRST, later)]
    reviews = [Review(week, later, "count-on", pair) for week, pair in zip((5, 9), checks, strict=True)]
    assert settled_on(reviews) == {LevelId("count-on:within-10"): FIRST + dt.timedelta(1)}
    once = [reviews[0]._replace(checks=(checks[0][0], checks[0][1]._replace(easy=False)))]
    assert settled_on(once) == {}


def test_what_needed_a_cue_did_not_come_easily(lived_in: Home) -> None:
    levels = {level.id: level for level in gather(lived_in.context(), FIRST, TODAY).levels}
    assert levels[LevelId("coins:names")].easy is False


def test_a_review_before_the_first_day_is_not_told(lived_in: Home) -> None:
    context = lived_in.context()
    (before,) = {each.week for each in gather(context, FIRST, dt.date(2026, 10, 10)).reviews}
    (after,) = {each.week for each in gather(context, dt.date(2026, 10, 14), TODAY).reviews}
    assert (before, after) == (5, 9)


def test_school_days_before_the_family_began_are_nobody_s_to_confirm(lived_in: Home) -> None:
    began = dt.date(2026, 10, 19)
    report = gather(lived_in.context(family=FAMILY._replace(began=began)), FIRST, TODAY)
    assert report.attendance.confirmed[0] == began and report.attendance.held[0] < began


def test_a_note_is_told_within_the_days_alone_and_in_their_order(lived_in: Home) -> None:
    days = [FIRST + dt.timedelta(later) for later in (9, 0, 4, 10)]
    notes = [Note(day, f"on\x1b {day}\n") for day in days] + [Note(FIRST, " \t")]
    report = gather(lived_in.context(), FIRST, FIRST + dt.timedelta(9), notes)
    assert [note.text for note in report.notes] == [f"on {day}" for day in sorted(days[:3])]


def test_a_report_ends_today_and_an_empty_one_is_one_like_any_other(lived_in: Home) -> None:
    report = gather(lived_in.context(), FIRST, dt.date(2030, 1, 1))
    assert report.last == TODAY
    empty = make(lived_in.context(), Wanted(dt.date(2026, 8, 1), dt.date(2026, 8, 2)))
    assert "There was a warm-up on 0 days, about 0 minutes in all, with 0 questions." in empty.text(Form.TEXT)
    assert empty.report.levels == () and empty.report.topics == ()


@pytest.mark.parametrize(
    ("text", "leaves"),
    [
        ("Half is 1/2, and/or two quarters.", True),
        ("Said [b]ten[/b].", True),
        ("It is in /home/us/notes.", False),
        ("See ~/notes or ../x", False),
        (r"C:\Users\us", False),
        ("file:///x", False),
        ("It stands in family.toml.", False),
        ("wren counted along", False),
        ("Where is WREN’s cup?", False),
        ("Bean counted.", True),
        ("The wrench is long.", True),
    ],
)
def test_a_text_with_a_path_or_another_child_stays_here(lived_in: Home, text: str, leaves: bool) -> None:
    assert fit_to_leave(text, lived_in.context()) is leaves


def test_a_thing_is_named_without_how_many_of_it(lived_in: Home) -> None:
    things = [thing.name for thing in gather(lived_in.context(), FIRST, TODAY).materials]
    assert things and len({*things}) == len(things)
    assert [name for name in things if name[0].isdigit() or name.startswith("a ") or "the like" in name] == []
