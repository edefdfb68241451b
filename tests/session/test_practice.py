"""Practice rounds: what is asked, what may be practiced, and that nothing else takes notice of them."""

import datetime as dt
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, lived
from warmup import skills
from warmup.model import LevelId, Mark, is_own
from warmup.report.asking import Form, Wanted, make
from warmup.session.context import Context
from warmup.session.pausing import turn_new
from warmup.session.practice import (
    HELD,
    NO_SUCH_LEVEL,
    NOT_HERE,
    NOT_TODAY,
    NOTHING_NEW,
    RESTS,
    STANDS_ON,
    PracticeRound,
    draw,
    levels_of,
    title,
    why_not,
)
from warmup.session.practiced import FIVE, practiced
from warmup.session.story import story
from warmup.session.words import has_small_things

Clock = Callable[[], dt.datetime]
ALL = LevelId("make-ten:all")


def begun(context: Context, level: LevelId = ALL) -> PracticeRound:
    assert context.journal is not None
    return PracticeRound(context, context.journal, level)


# -- what is asked


def test_the_items_come_in_turn_each_round_from_the_next_on(context: Context) -> None:
    names = ["make-ten/all", "make-ten/seven-three", "make-ten/six-four"]
    assert [prompt.item for prompt in draw(context, ALL, 1)] == [*names, *names[:2]]
    assert [prompt.item for prompt in draw(context, ALL, 2)] == [*names[1:], *names[:1], *names[1:]]
    assert any(each in skills.locate(names[0]).level.misconceptions for each in ("seven-three", "six-four"))
    assert draw(context, ALL, 1) == draw(context, ALL, 1) != draw(context, ALL, 3)
    assert all("make ten, all pairs" in prompt.why for prompt in draw(context, ALL, 1))


def test_no_words_twice_and_no_answer_running_where_the_level_has_others(context: Context) -> None:
    """Of the levels open in week 25 five ask for one fact of the day or for the whole count."""
    one_answer = {"count:one-to-100", "month:this", "school-day:count"}
    one_answer |= {f"weekday:{day}" for day in ("today", "tomorrow", "yesterday")}
    for level in skills.levels():
        if level in one_answer or why_not(context, level):
            continue
        for number in (1, 2):
            prompts = draw(context, level, number)
            assert len(prompts) == FIVE and all(prompt.level_id == level for prompt in prompts)
            assert all(
                one.answer != other.answer and one.say != other.say for one, other in pairwise(prompts)
            ), level
            if level != "subitize:two-groups":  # It has four ways to say it.
                assert len({prompt.say for prompt in prompts}) == FIVE, level
    (same,) = {prompt.answer for prompt in draw(context, LevelId("weekday:today"), 1)}
    assert same == "Wednesday"
    assert all(one.say != other.say for one, other in pairwise(draw(context, LevelId("weekday:today"), 1)))


def test_what_the_family_wrote_itself_can_be_practiced(home: Path, clock: Clock) -> None:
    (home / "own.toml").parent.mkdir(parents=True, exist_ok=True)
    (home / "own.toml").write_text('[[prompt]]\nname = "door"\nsay = "What number?"\nanswer = "forty-two"\n')
    context = context_at(home, clock)
    prompts = draw(context, LevelId("own:door"), 1)
    assert [prompt.say for prompt in prompts] == ["What number?"] * FIVE and is_own(prompts[0].item)


# -- what may be practiced


@pytest.mark.parametrize(
    ("level", "said"),
    [
        (ALL, ""),
        (LevelId("make-ten:take-from-ten"), "It isn’t taught yet. It opens in week 28."),
        (LevelId("make-ten:no-such"), NO_SUCH_LEVEL),
        (LevelId("school-day:to-the-hundredth"), NOT_TODAY),
    ],
)
def test_what_was_not_taught_yet_says_so(context: Context, level: LevelId, said: str) -> None:
    assert why_not(context, level) == said
    if said:
        with pytest.raises(ValueError, match=said.split(".")[0]):
            begun(context, level)


def test_a_held_level_and_one_that_rests_say_so(context: Context) -> None:
    context.editor.hold(ALL, back=True)
    assert why_not(context, ALL) == HELD
    context.editor.hold(ALL, back=False)
    for back in (3, 2, 1):
        lived(context, TODAY - dt.timedelta(back), {"make-ten/all": Mark.NOT_YET})
    assert {prompt.item for prompt in draw(context, ALL, 1)} == {"make-ten/seven-three", "make-ten/six-four"}
    for item in ("make-ten/seven-three", "make-ten/six-four"):
        for back in (3, 2, 1):
            lived(context, TODAY - dt.timedelta(back), {item: Mark.NOT_YET})
    assert why_not(context, ALL) == RESTS


def test_what_it_stands_on_and_a_pause_keep_a_level_that_has_not_begun(context: Context) -> None:
    words = LevelId("number-words:to-ten")
    assert why_not(context, words) == ""
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {"numerals/to-10": Mark.NOT_YET})
    assert why_not(context, words) == STANDS_ON
    turn_new(context)
    assert why_not(context, words) == NOTHING_NEW and why_not(context, LevelId("numerals:to-10")) == ""


def test_a_house_practices_with_what_it_has(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, FAMILY._replace(without=("water", "rice", "beans")))
    assert why_not(context, LevelId("capacity:pour-and-compare")) == NOT_HERE
    toddler = context_at(home, clock, FAMILY._replace(toddler=True))
    for level in ("how-many:count-out-to-10", "coins:names", "sort:one-rule", "parts:split-to-5"):
        for prompt in draw(toddler, LevelId(level), 1):
            assert not has_small_things(prompt.table), prompt.table


# -- marks


def test_every_mark_is_kept_before_the_next_prompt_and_undo_takes_it_back(context: Context) -> None:
    round_ = begun(context)
    for at, mark in enumerate((Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET)):
        round_.mark(mark)
        assert round_.position == at + 1
        assert [each.marks[-1] for each in practiced(context, ALL)] == [mark]
    round_.go_to(4)
    assert round_.position == 3, "a bead leads to what was shown"
    round_.go_to(0)
    round_.go_to(3)
    assert round_.position == 3
    round_.back()
    round_.mark(Mark.FLUENT)
    assert round_.undo() and round_.position == 2 and round_.mark_at(2) is Mark.NOT_YET
    assert [round_.undo(), round_.undo(), round_.undo(), round_.undo()] == [True, True, True, False]
    assert practiced(context, ALL) == (), "a round of which all was taken back is none"


def test_a_level_s_history_has_each_round_as_a_line(context: Context) -> None:
    round_ = begun(context)
    round_.next_cue()
    round_.mark(Mark.FLUENT)
    round_.next()
    round_.mark(Mark.HESITATED)
    begun(context, LevelId("month:this")).mark(Mark.NOT_YET)
    again = begun(context)
    assert again.prompts != round_.prompts
    for _ in range(FIVE):
        again.mark(Mark.FLUENT)
    assert again.prompt is None and [each.words() for each in practiced(context, ALL)] == [
        "practice: ● · ◐",
        "practice: ● ● ● ● ●",
    ]
    assert context.journal is not None
    first = context.journal.practiced("Bean")[0]
    assert (first.cue, first.item, first.date) == (1, "make-ten/all", "2027-03-03")
    told = list(story(context, "make-ten/seven-three"))
    assert told[1:] == [
        "It was not asked yet.",
        "Wednesday, March 3, 2027, practice: ● · ◐.",
        "Wednesday, March 3, 2027, practice: ● ● ● ● ●.",
    ]


def test_memory_mornings_and_the_next_routine_take_no_notice(context: Context) -> None:
    lived(context, TODAY - dt.timedelta(1), {"make-ten/all": Mark.FLUENT})
    before = context.knowledge(), context.history(), context.routine(), context.unconfirmed_days()
    for _ in range(3):
        round_ = begun(context)
        for _ in range(FIVE):
            round_.mark(Mark.NOT_YET)
    context.forget()
    assert before == (context.knowledge(), context.history(), context.routine(), context.unconfirmed_days())


def test_no_report_counts_it(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    lived(context, TODAY - dt.timedelta(1), {"make-ten/all": Mark.FLUENT})
    before = [make(context, wanted).text(Form.TEXT) for wanted in (Wanted(), Wanted(summer=True))]
    begun(context).mark(Mark.NOT_YET)
    context.forget()
    assert before == [make(context, wanted).text(Form.TEXT) for wanted in (Wanted(), Wanted(summer=True))]


def test_levels_are_named_lowest_first_and_in_words(context: Context) -> None:
    assert levels_of(context, "make-ten")[2] == ALL and levels_of(context, "nothing") == []
    assert title(ALL) == "Make ten, all pairs"
