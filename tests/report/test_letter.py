"""The letters: their days, and that each sentence is so by the facts."""

import datetime as dt
import re
from dataclasses import replace
from pathlib import Path

import pytest

from tests.household import StandingClock, context_at, grown_easier
from tests.report.conftest import CHILD, FIRST, TODAY, Home
from warmup.engine.review import Outcome
from warmup.report.asking import Form, Wanted, make
from warmup.report.letter import MOST, Span, letter, span_of, told_of
from warmup.session.then_and_now import sentences


def paragraphs(home: Home, span: Span, last: dt.date | None = None) -> list[str]:
    document = make(home.context(), Wanted(last=last, span=span)).document
    (section,) = document.sections
    return [part for part in section.parts if isinstance(part, str)]


def test_a_quarter_is_nine_weeks_of_mornings(lived_in: Home) -> None:
    """Nine weeks of four mornings, from the first on; two days off and a Saturday move them by one."""
    year = lived_in.context().year
    first, last = span_of(year, Span.QUARTER, dt.date(2026, 9, 20))
    assert first == FIRST and len(year.between(first, last + dt.timedelta(1))) == 36
    second = span_of(year, Span.QUARTER, TODAY)
    assert second[0] > last and len(year.between(second[0], second[1] + dt.timedelta(1))) == 36
    assert len(year.between(*span_of(year, Span.YEAR, TODAY))) == 143


def test_an_open_quarter_says_until_when_it_goes_on(lived_in: Home) -> None:
    opening = paragraphs(lived_in, Span.QUARTER)[1]
    assert f"about {CHILD}’s math warm-ups in the second quarter" in opening
    assert "to November 12, 2026. The quarter goes on until January" in opening
    over = paragraphs(lived_in, Span.QUARTER, dt.date(2026, 9, 20))[1]
    assert "in the first quarter, from August 31, 2026 to " in over and "goes on" not in over


def test_in_its_first_week_a_quarter_tells_of_the_one_before(lived_in: Home) -> None:
    """A letter of one morning tells nothing: what is over is told, until four mornings are past."""
    year = lived_in.context().year
    first, last = span_of(year, Span.QUARTER, dt.date(2026, 9, 20))
    second = [day for day in year.mornings if day > last][:5]
    assert [told_of(year, day) for day in second] == [last] * 4 + [second[4]]
    assert told_of(year, last) == last and told_of(year, first) == first


def test_each_sentence_is_as_the_facts_are(lived_in: Home) -> None:
    made = make(lived_in.context(), Wanted(span=Span.YEAR))
    report, said = made.report, " ".join(made.text(Form.TEXT).split())
    by_words = {level.words: level for level in report.levels}
    for start, ok in (
        ("Asked for the first time this year: ", lambda level: level.first >= report.first),
        ("This came easily when it was last marked: ", lambda level: level.easy is True),
        ("when it was last marked, and that is ordinary: ", lambda level: level.easy is False),
    ):
        sentence = said.partition(start)[2].partition(". ")[0]
        named = [name for name in sentence.split("; ") if not re.fullmatch(r"and \d+ more", name)]
        assert named and all(ok(by_words[name]) for name in named), start
        more = re.search(r"and (\d+) more", sentence)
        assert len(named) + int(more[1] if more else 0) == sum(map(ok, report.levels))
        assert len(named) <= MOST
    titles = {each.title.lower() for each in report.reviews if each.outcome is Outcome.SETTLED}
    settled = said.partition("this came easily on two mornings: ")[2].partition(". ")[0]
    assert {name for name in settled.split("; ") if not name.startswith("and ")} <= titles


@pytest.mark.parametrize("span", Span)
def test_of_nothing_nothing_is_said(lived_in: Home, span: Span) -> None:
    report = make(lived_in.context(), Wanted(span=span)).report
    bare = replace(
        report,
        attendance=replace(report.attendance, held=(), months=()),
        topics=(),
        levels=(),
        reviews=(),
    )
    (section,) = letter(bare, span, lived_in.context().year).sections
    assert section.parts[2] == "No warm-up is written down for these days." and len(section.parts) == 6


def test_a_name_stands_below_it_when_it_is_asked_for(lived_in: Home) -> None:
    signed = make(lived_in.context(), Wanted(span=Span.YEAR, signed="Grandma")).document
    assert signed.sections[0].parts[-1] == "Warm wishes, Grandma"
    assert paragraphs(lived_in, Span.YEAR)[-1] == "Warm wishes"


def test_the_year_s_letter_sets_then_and_now_side_by_side(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    grown_easier(context)
    told = " ".join(sentences(context.history(), context.today))
    assert told.startswith("In October, “Days of the week: today’s name” needed help.")
    said, quarter = (make(context, Wanted(span=span)).document.sections[0].parts for span in reversed(Span))
    assert told in said and told not in quarter
