"""How a level stands, worked by hand at each border; slips, when a level comes again, and its history."""

import calendar
import datetime as dt
import sqlite3
from collections.abc import Callable, Sequence
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from tests.household import FAMILY, OWN, TODAY, StandingClock, context_at, lived
from warmup.config.family import Child, Family, year_of
from warmup.journal.journal import Journal
from warmup.model import LevelId, Mark
from warmup.session.context import Context
from warmup.session.known import Known, KnownLevel, Stand, known
from warmup.session.known_bars import plots
from warmup.session.known_level import EARLIER, MOST, LevelStory, level_story

Clock = Callable[[], dt.datetime]
F, H, N, S = Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET, Mark.SKIPPED
MORNINGS = year_of(FAMILY).mornings
NOW = MORNINGS.index(TODAY)
WEEK_5 = 16
"""The index of the first morning of week 5, a review week, four mornings a week."""
PLAIN, SLIP, LEVEL = "count/to-39", "count/across-30", LevelId("count:to-39")
Lived = Sequence[tuple[int, str, Mark]]
EASY_TWICE: Lived = ((WEEK_5, PLAIN, F), (WEEK_5 + 1, PLAIN, F))


def family(home: Path, clock: Clock, days: Lived, who: Family = FAMILY) -> Context:
    """A family with these marks: of each the index of its morning, its item, the mark."""
    context = context_at(home, clock, who)
    for at in sorted({at for at, _, _ in days}):
        lived(context, MORNINGS[at], {item: mark for each, item, mark in days if each == at})
    return context


def level_of(found: Known, name: LevelId = LEVEL) -> KnownLevel:
    return next(level for level in found.levels if level.id == name)


def stands(context: Context) -> tuple[Stand, str]:
    level = level_of(known(context))
    return level.stand, level.why


SETTLED = f"settled {MORNINGS[WEEK_5 + 1]:%b} {MORNINGS[WEEK_5 + 1].day}"


@pytest.mark.parametrize(
    ("days", "stand", "why"),
    [
        pytest.param([], Stand.NOT_MET, "", id="never asked"),
        pytest.param([(9, PLAIN, S)], Stand.NOT_MET, "", id="only left"),
        pytest.param([(9, SLIP, F)], Stand.GROWING, "", id="asked by its misconception"),
        pytest.param([(9, PLAIN, N)], Stand.GROWING, "", id="not yet once"),
        pytest.param([(9, PLAIN, N), (10, PLAIN, H), (11, PLAIN, N)], Stand.GROWING, "", id="not running"),
        pytest.param([(9, PLAIN, N), (10, PLAIN, N)], Stand.REVISIT, "not yet twice in a row", id="shaky"),
        pytest.param([(9, SLIP, N), (10, SLIP, N)], Stand.GROWING, "", id="a shaky misconception"),
        pytest.param(
            [(9, PLAIN, N), (10, PLAIN, N), (11, PLAIN, N)],
            Stand.REVISIT,
            "waits to be taught again",
            id="three",
        ),
        pytest.param([*EASY_TWICE], Stand.SETTLED, "", id="easy twice in a review week"),
        pytest.param(
            [(WEEK_5, PLAIN, F), (WEEK_5 + 1, PLAIN, H)], Stand.GROWING, "", id="easy once in a review week"
        ),
        pytest.param(
            [(WEEK_5 - 2, PLAIN, F), (WEEK_5 - 1, PLAIN, F)], Stand.GROWING, "", id="in another week"
        ),
        pytest.param(
            [*EASY_TWICE, (30, PLAIN, H)], Stand.REVISIT, f"{SETTLED}; hesitated since", id="wobbled since"
        ),
        pytest.param([*EASY_TWICE, (30, PLAIN, N)], Stand.REVISIT, f"{SETTLED}; not yet since", id="not yet"),
        pytest.param([*EASY_TWICE, (30, PLAIN, H), (34, PLAIN, F)], Stand.SETTLED, "", id="easy again"),
        pytest.param([*EASY_TWICE, (30, SLIP, N)], Stand.SETTLED, "", id="a slip of a settled one"),
    ],
)
def test_each_way_a_level_can_stand(home: Path, clock: Clock, days: Lived, stand: Stand, why: str) -> None:
    assert stands(family(home, clock, days)) == (stand, why)


def test_a_level_settled_since_the_second_check(home: Path, clock: Clock) -> None:
    level = level_of(known(family(home, clock, [*EASY_TWICE, (WEEK_5 + 2, PLAIN, F), (40, PLAIN, F)])))
    assert (level.settled, level.first, level.times) == (MORNINGS[WEEK_5 + 1], MORNINGS[WEEK_5], 4)


def written(context: Context, change: str) -> Context:
    """The family as another start finds it, once the journal was changed."""
    assert context.journal is not None
    context.journal.shut()
    with closing(sqlite3.connect(context.places.data / "journal.db")) as db, db:
        db.execute(change)
    return context_at(context.places.data, StandingClock(dt.datetime(2027, 3, 3, 8)))


def test_a_rough_day_lowers_nothing_and_a_cue_is_hesitation(home: Path, clock: Clock) -> None:
    context = family(home, clock, [*EASY_TWICE, (30, PLAIN, N)])
    context = written(context, f"UPDATE sittings SET rough = 1 WHERE date = '{MORNINGS[30]}'")
    assert stands(context) == (Stand.SETTLED, "")
    context = written(context, f"UPDATE marks SET cue = 1 WHERE date = '{MORNINGS[WEEK_5 + 1]}'")
    assert level_of(known(context)).marks == (F, H, N) and stands(context)[0] is Stand.GROWING


def test_a_slip_is_open_until_it_comes_easily_and_says_what_to_do(home: Path, clock: Clock) -> None:
    context = family(home, clock, [(30, SLIP, F), (31, SLIP, H)])
    (slip,) = known(context).slips
    assert (slip.item, slip.level, slip.mark, slip.on) == (SLIP, LEVEL, H, MORNINGS[31])
    assert context.journal is not None
    assert slip.say in context.journal.sessions_of("Bean", MORNINGS[31])[0].routine and slip.say
    assert slip.watch_for and slip.to_do
    lived(context, MORNINGS[33], {SLIP: F})
    assert known(context).slips == ()


def test_the_journal_is_read_once(home: Path, clock: Clock, monkeypatch: pytest.MonkeyPatch) -> None:
    """Besides what memory has folded: ten years are as many questions to the file as one."""
    context = family(home, clock, [*EASY_TWICE, (30, SLIP, H), (31, PLAIN, F)])
    context.knowledge()
    questions, ask = list[str](), Journal.history

    def history(journal: Journal, child: str, *when: Any) -> object:
        questions.append(child)
        return ask(journal, child, *when)

    monkeypatch.setattr(Journal, "history", history)
    known(context)
    assert questions == ["Bean"]


def test_what_was_marked_by_a_clock_that_was_ahead_is_not_known_yet(home: Path, clock: Clock) -> None:
    context = family(home, clock, [(NOW + 5, PLAIN, N), (NOW + 6, PLAIN, N)])
    assert stands(context) == (Stand.NOT_MET, "")
    lived(context, MORNINGS[NOW - 1], {PLAIN: N})
    assert stands(context) == (Stand.GROWING, ""), "not yet once so far"


def test_what_the_year_before_had_is_met_and_this_year_alone_is_counted(home: Path, clock: Clock) -> None:
    context = family(home, clock, [])
    lived(context, dt.date(2026, 5, 5), {PLAIN: H})
    before = level_of(known(context))
    assert (before.stand, before.first, before.times, before.marks) == (Stand.GROWING, None, 0, ())
    assert story(context).stands == EARLIER and len(story(context).history) == 1
    lived(context, MORNINGS[40], {PLAIN: F})
    found = known(context)
    assert (level_of(found).first, level_of(found).marks) == (MORNINGS[40], (F,))
    assert [(each.asked, each.hesitated) for each in found.strands] == [(1, 0)]
    assert sum(week.held for week in found.weeks) == 1


# -- one level


def story(context: Context, name: LevelId = LEVEL) -> LevelStory:
    return level_story(context, known(context), name)


def test_it_comes_again_by_the_day_its_first_item_has_rested(home: Path, clock: Clock) -> None:
    """What was asked for the first time and hesitated rests 4 mornings (README: a mark)."""
    context = family(home, clock, [(NOW - 2, PLAIN, H)])
    due = MORNINGS[NOW + 2]
    assert story(context).next == f"It comes again about {calendar.day_name[due.weekday()]}."
    lived(context, MORNINGS[NOW - 1], {SLIP: N})
    assert story(context).next.endswith(f"about {calendar.day_name[MORNINGS[NOW + 1].weekday()]}."), (
        "2 mornings"
    )
    assert story(family(home / "2", clock, [(NOW - 30, PLAIN, H)])).next == (
        "It may come again any morning, when there is room."
    )


def test_what_was_not_met_opens_in_its_week_or_is_held(home: Path, clock: Clock) -> None:
    take, held = LevelId("make-ten:take-from-ten"), Child("Bean", reads=False, held=(LEVEL,))
    context = family(home, clock, [], FAMILY._replace(children=(held,)))
    # routines/year.toml: make-ten:take-from-ten = 28; the first of the four mornings of week 28.
    opens = MORNINGS[4 * 27]
    assert story(context, take).next == f"It opens about {calendar.day_name[opens.weekday()]}, in week 28."
    assert story(context, take).stands == "Not met yet: no warm-up has asked it."
    assert story(context).next == "It is held back as not taught yet."


def test_a_level_that_rests_waits_to_be_taught(home: Path, clock: Clock) -> None:
    context = family(home, clock, [(at, PLAIN, N) for at in (NOW - 5, NOW - 4, NOW - 3)])
    assert story(context).next == "It rests until you say that it was taught again."


@pytest.mark.slow
def test_its_history_has_the_words_as_they_were_said_the_latest_first(home: Path, clock: Clock) -> None:
    context = family(home, clock, [(at, PLAIN, H if at == 50 else F) for at in range(51 - MOST - 2, 51)])
    found = story(context)
    assert (len(found.history), found.before) == (MOST, 2) and found.level.times == MOST + 2
    assert [told.on for told in found.history] == [MORNINGS[at] for at in range(50, 50 - MOST, -1)]
    assert [told.mark for told in found.history][:2] == [H, F]
    assert context.journal is not None
    for told in found.history[:3]:
        assert told.say and told.say in context.journal.sessions_of("Bean", told.on)[0].routine
    assert found.codes == ("K.CC.A.1",)


def test_what_a_family_wrote_itself_is_there_and_its_words_are_harmless(home: Path, clock: Clock) -> None:
    home.mkdir(parents=True)
    (home / "own.toml").write_text(
        f'[[prompt]]\nname = "{OWN.name}"\nsay = "[b]Where\\u001b[31m?"\nanswer = "x"\nstrand = "number"\n',
        "utf-8",
    )
    context = family(
        home, clock, [(40, "count/to-20", F)], FAMILY._replace(children=(Child("[b]Be\x1ban", reads=False),))
    )
    own = LevelId(f"own:{OWN.name}")
    level = level_of(known(context), own)
    assert (level.stand, level.strand.value) == (Stand.NOT_MET, "number")
    assert story(context, own).codes == () and known(context).child.isprintable()


def test_bars_say_each_count_and_fit(home: Path, clock: Clock) -> None:
    context = family(home, clock, [*EASY_TWICE, (30, PLAIN, H), (31, "weekday/today", H)])
    for width in (36, 56, 76):
        found = plots(known(context), width)
        assert len(found) == 3 and all(len(line) <= width for plot in found for line in plot.lines)
        weeks, months, strands = (plot.lines for plot in found)
        assert "▇2" in weeks[0] and months[-1].endswith("2 met, 1 settled")
        assert months[-1].count("█") > 0 and abs(months[-1].count("█") - months[-1].count("░")) <= 1
        assert [line.split()[-4:] for line in strands] == [
            ["1", "of", "1", "asked"], ["1", "of", "3", "asked"]
        ]  # fmt: skip
        # The whole bar is every time a strand was asked: one of one, and one of three.
        assert [line.count("█") > line.count("░") for line in strands] == [True, False]
        assert strands[0].count("░") == 0 and abs(2 * strands[1].count("█") - strands[1].count("░")) <= 2
    assert plots(known(context_at(home / "none", clock)), 76) == ()


def test_the_bars_by_month_begin_with_the_first_month_that_has_any(home: Path, clock: Clock) -> None:
    late = next(at for at, day in enumerate(MORNINGS) if day.month == 1)
    context = family(home, clock, [(late, PLAIN, H)])
    months = plots(known(context), 76)[1].lines
    assert known(context).months[0].first.month in (8, 9) and months[0].startswith("Jan ")
