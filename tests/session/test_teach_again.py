"""An item that had three not yet running rests until the adult says it was taught again, and is told so."""

import datetime as dt
import itertools
import json
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.household import TODAY, context_at, lived, start_fixed
from warmup.cli.main import DONE, main
from warmup.cli.plain import morning_lines
from warmup.config.family import load
from warmup.engine.curriculum import Curriculum, curriculum
from warmup.engine.eligibility import Adjustments, open_items, rests
from warmup.engine.memory import RETEACH, Knowledge, fold
from warmup.model import Asked, DayKind, Item, ItemId, LevelId, Mark, Morning
from warmup.schoolyear import SchoolYear
from warmup.session.context import Context
from warmup.session.session import Session, begin, resume
from warmup.session.story import story
from warmup.session.summary import closing

Clock = Callable[[], dt.datetime]
SEVEN = ItemId("make-ten/seven-three")
THIRTY = ItemId("count-on/across-30")
JUDGING = ("fail", "behind", "weak", "wrong", "bad", "poor", "struggl")
FIRST = dt.date(2027, 1, 4)
MORNING = Morning(dt.date(2027, 2, 1), DayKind.SCHOOL, 20, 25, 3, False, 20)
ITEM = Item(ItemId("knots/one"), "knots", 1, LevelId("knots:one"), "counting", 1)

days = st.integers(0, 30).map(lambda n: FIRST + dt.timedelta(n))
marks = st.lists(st.tuples(days, st.sampled_from([*Mark, None])), max_size=12).map(
    lambda rows: sorted(rows, key=lambda row: row[0])
)


def known(rows: list[tuple[dt.date, Mark | None]]) -> Knowledge:
    lines = [Asked(day, ITEM.id, mark) for day, mark in rows]
    return fold(plan_of(ITEM), lines)


def plan_of(*items: Item) -> Curriculum:
    """The curriculum of these items, every day a morning."""
    every_day = tuple(FIRST + dt.timedelta(n) for n in range(40))
    return curriculum(items, SchoolYear(tuple(range(7)), every_day), FIRST)


def is_open(rows: list[tuple[dt.date, Mark | None]], taught: dt.date | None) -> bool:
    said = {} if taught is None else {ITEM.id: taught}
    return open_items(plan_of(ITEM), MORNING, known(rows), Adjustments(taught=said)) == (ITEM,)


@pytest.mark.slow
@given(marks, st.none() | days)
def test_what_rests_is_told_by_the_marks_that_count(
    rows: list[tuple[dt.date, Mark | None]], taught: dt.date | None
) -> None:
    """By code of its own: the run of not yet at the end, leaving out what counts for nothing."""
    counted = [(day, mark) for day, mark in rows if mark not in (None, Mark.SKIPPED)]
    run = list(itertools.takewhile(lambda row: row[1] is Mark.NOT_YET, reversed(counted)))
    waits = len(run) >= 3 and not (taught and taught >= run[0][0])
    assert is_open(rows, taught) is not waits


@pytest.mark.slow
@given(marks, days, st.integers(1, 30))
def test_a_later_word_that_it_was_taught_never_closes_an_item(
    rows: list[tuple[dt.date, Mark | None]], taught: dt.date, more: int
) -> None:
    if is_open(rows, taught):
        assert is_open(rows, taught + dt.timedelta(more))
    assert is_open(rows, FIRST + dt.timedelta(31)), "after all its marks"


@pytest.mark.slow
@given(marks, days)
def test_a_further_not_yet_on_a_later_day_puts_it_to_rest_again(
    rows: list[tuple[dt.date, Mark | None]], taught: dt.date
) -> None:
    later = max([taught, *(day for day, _ in rows)]) + dt.timedelta(1)
    if known(rows).of(ITEM.id).misses >= RETEACH:
        assert not is_open([*rows, (later, Mark.NOT_YET)], taught)
    assert is_open([*rows, (later, Mark.FLUENT)], None)


def test_one_item_at_rest_closes_no_other_of_its_level() -> None:
    other = ITEM._replace(id=ItemId("knots/two"), misconception=True)
    rows = known([(FIRST + dt.timedelta(n), Mark.NOT_YET) for n in range(3)])
    assert open_items(plan_of(ITEM, other), MORNING, rows) == (other,)
    assert rests(rows.of(ITEM.id), None) and not rests(rows.of(other.id), None)


# -- the context, the close, and what is printed


@pytest.fixture
def context(home: Path, clock: Clock) -> Context:
    """A family that had two not yet running on two items before today's fixed morning."""
    context = context_at(home, clock)
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {SEVEN: Mark.NOT_YET, THIRTY: Mark.NOT_YET})
    start_fixed(context)
    return context


@pytest.fixture
def session(context: Context, clock: Clock) -> Session:
    """Today's morning, at its first prompt: the first two are those items."""
    assert context.journal is not None
    found = resume(context, context.journal, clock)
    assert found is not None and [p.item for p in found.prompts[:2]] == [SEVEN, THIRTY]
    return found


def open_now(context: Context) -> set[str]:
    return {item.id for item in context.eligible(context.morning()).items}


def test_the_close_tells_of_a_third_not_yet_and_what_to_do(session: Session) -> None:
    assert not closing(session, Knowledge()).again
    session.mark(Mark.NOT_YET)
    words = closing(session, Knowledge())
    assert words.again == (
        "make ten, all pairs (seven-three). Three times not yet: it rests until you say it was taught."
    )
    assert words.models == ("Look at the fingers still folded. Have ready: ten frame.",)
    assert words.rows[0].note == "teach again", "it does not come back by itself"
    assert not [word for word in JUDGING if word in f"{words}".casefold()]
    assert session.undo() and not closing(session, Knowledge()).again


def test_two_items_share_the_line_and_each_has_its_model(session: Session) -> None:
    session.mark(Mark.NOT_YET)
    session.mark(Mark.NOT_YET)
    words = closing(session, Knowledge())
    assert (
        "(seven-three); count on" in words.again and "they rest until you say they were taught" in words.again
    )
    assert [model.partition(":")[0] for model in words.models] == ["Make ten", "Count on"]
    assert session.prompts[1].cues[1].text in words.models[1]


def test_a_hesitated_or_an_easy_mark_ends_the_run(session: Session) -> None:
    session.mark(Mark.HESITATED)
    session.mark(Mark.FLUENT)
    assert not closing(session, Knowledge()).again and not session.context.to_teach()


def test_it_rests_until_the_adult_says_so_and_that_is_kept(
    session: Session, home: Path, clock: Clock
) -> None:
    context = session.context
    assert {SEVEN, THIRTY} <= open_now(context)
    session.mark(Mark.NOT_YET)
    context.forget()
    assert context.to_teach() == (SEVEN,) and SEVEN not in open_now(context) and THIRTY in open_now(context)
    context.editor.taught(SEVEN, context.today)
    assert not context.to_teach() and context.missed() == (SEVEN,) and SEVEN in open_now(context)
    assert load(home / "family.toml").children[0].taught == ((SEVEN, TODAY),)
    context.editor.taught(SEVEN, context.today, again=False)
    assert context.to_teach() == (SEVEN,) and not load(home / "family.toml").children[0].taught


def test_taught_again_and_not_yet_once_more_rests_again(session: Session, home: Path, clock: Clock) -> None:
    session.mark(Mark.NOT_YET)
    session.context.editor.taught(SEVEN, session.context.today)
    tomorrow = context_at(home, clock, session.context.family, TODAY + dt.timedelta(1))
    assert SEVEN in open_now(tomorrow)
    lived(tomorrow, tomorrow.today, {SEVEN: Mark.NOT_YET})
    assert tomorrow.to_teach() == (SEVEN,) and SEVEN not in open_now(tomorrow)
    assert list(story(tomorrow, SEVEN))[-2:] == [
        "It was taught again on Wednesday, March 3, 2027.",
        "Four times not yet in a row: it rests until you say it was taught again (key l).",
    ]


def test_the_newest_comes_first_and_nothing_that_is_held(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    for back, item in itertools.product((9, 8, 7), (SEVEN, "weekday/today")):
        lived(context, TODAY - dt.timedelta(back), {item: Mark.NOT_YET})
    for back in (6, 2, 1):
        lived(context, TODAY - dt.timedelta(back), {THIRTY: Mark.NOT_YET})
    assert context.to_teach()[0] == THIRTY and set(context.to_teach()) == {THIRTY, SEVEN, "weekday/today"}
    context.editor.hold(LevelId("count-on:to-50"), back=True)
    assert set(context.to_teach()) == {SEVEN, "weekday/today"}


def test_a_story_tells_that_it_rests_and_when_it_was_taught(context: Context) -> None:
    lived(context, TODAY, {SEVEN: Mark.NOT_YET})
    assert list(story(context, SEVEN))[-1].startswith("Three times not yet in a row: it rests until")
    context.editor.taught(SEVEN, context.today)
    *_, taught, due = story(context, SEVEN)
    assert taught == "It was taught again on Wednesday, March 3, 2027." and "due" in due
    assert not [line for line in story(context, THIRTY) if "taught" in line]


def test_plain_and_json_name_what_to_teach_again(
    context: Context, clock: Clock, capsys: pytest.CaptureFixture[str]
) -> None:
    assert not [line for line in morning_lines(context.morning(), context) if "teach" in line]
    lived(context, TODAY, {SEVEN: Mark.NOT_YET, THIRTY: Mark.FLUENT})
    (line,) = [line for line in morning_lines(context.morning(), context) if "teach" in line]
    assert line == "To teach again: make ten, all pairs (seven-three)."
    noon = dt.datetime.combine(TODAY, dt.time(12))
    assert main(["today", "--plain"], lambda: noon) == DONE
    assert f"\n{line}\n" in capsys.readouterr().out
    assert main(["today", "--json"], lambda: noon) == DONE
    assert json.loads(capsys.readouterr().out)["teach_again"] == [SEVEN]
    context.editor.taught(SEVEN, context.today)
    assert main(["today", "--json"], lambda: noon) == DONE
    assert json.loads(capsys.readouterr().out)["teach_again"] == []


def test_a_morning_with_everything_at_rest_is_still_a_morning(home: Path, clock: Clock) -> None:
    """Nothing at all may be open, for a family that never says it taught anything again."""
    context = context_at(home, clock)
    lines = [
        Asked(TODAY - dt.timedelta(back), item.id, Mark.NOT_YET)
        for back, item in itertools.product((3, 2, 1), context.curriculum().items)
    ]
    context.know(fold(context.curriculum(), lines))
    assert not open_now(context) and context.routine().prompts == ()
    assert context.journal is not None
    session = begin(context, context.journal, clock)
    assert session.at_close and closing(session, Knowledge()).well == "You sat down together."
