"""What a family wrote itself, lived with: one a morning, spaced, and gone without harm from its file."""

import datetime as dt
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from tests.benchmarks import year_aloud
from tests.household import FAMILY, TODAY, StandingClock, begun, context_at, fixed_routine, start_fixed
from tests.session.test_loading import RESUME
from warmup.config.family import warnings
from warmup.config.places import Places
from warmup.engine.memory import Knowledge, fold
from warmup.journal.journal import Journal
from warmup.journal.routine_json import routine_from, routine_text
from warmup.model import Asked, ItemId, Mark, Morning, Prompt, Routine, is_own
from warmup.session.context import Context, open_context
from warmup.session.next_level import NextLevel, next_level
from warmup.session.replacing import Instead
from warmup.session.session import Session, begin, resume
from warmup.session.story import story
from warmup.session.summary import closing, item_label
from warmup.session.unlocked import unlocked_levels
from warmup.session.year_end import year_end
from warmup.tui.doing import AT_A_PROMPT

DOOR = '[[prompt]]\nname = "front-door"\nsay = "What number is on our door?"\nanswer = "forty-two"\n'
DUCK = '[[prompt]]\nname = "duck"\nsay = "Finish: one little duck…"\nanswer = "two little ducks"\n'
DAY = (
    '[[prompt]]\nname = "birthday"\nsay = "When is your birthday?"\nanswer = "May ninth"\n'
    'strand = "calendar"\n'
)
IDS = ("own/front-door", "own/duck", "own/birthday")
Lived = list[tuple[Morning, Routine]]


def wrote(home: Path, text: str) -> None:
    home.mkdir(parents=True, exist_ok=True)
    (home / "own.toml").write_text(text, "utf-8")


def year(home: Path, child: str, text: str | None) -> Lived:
    """The mornings of an invented child's year, as ``year_aloud`` lives it, with this own.toml or none."""
    if text is not None:
        wrote(home, text)
    context = open_context(Places(home, home), year_aloud.family(child), year_aloud.FIRST, None, saved=False)
    known, mornings = Knowledge(), list[tuple[Morning, Routine]]()
    for day in context.year.mornings:
        context.today = day
        context.know(known)
        for item in context.to_teach():
            context.editor.taught(item, day)
        context.know(known)
        routine = context.routine()
        lines = [
            Asked(day, p.item, year_aloud.answer(child, p.item, day, known), wording=p.wording)
            for p in routine.prompts
        ]
        known = fold(context.curriculum(), lines, known)
        mornings.append((routine.morning, routine))
    return mornings


@pytest.mark.slow
@pytest.mark.parametrize("child", year_aloud.CHILDREN)
def test_a_year_lived_with_three_of_their_own(home: Path, child: str) -> None:
    """One a morning at most, the day's talk as ever; each is asked, and rests longer when it came easily."""
    asked: dict[ItemId, list[int]] = {}
    mornings = year(home, child, DOOR + DUCK + DAY.replace("strand", "week = 7\nstrand"))
    for morning, routine in mornings:
        own = [prompt.item for prompt in routine.prompts if is_own(prompt.item)]
        assert len(own) <= 1, morning.date
        for item in own:
            asked.setdefault(item, []).append(morning.index)
        if morning.review:
            assert not any("check" in prompt.why for prompt in routine.prompts if is_own(prompt.item))
        talk = [each for each in routine.prompts if each.skill in ("weekday", "date", "month", "school-day")]
        assert len(talk) == 1, morning.date
    assert set(asked) == set(IDS) and min(asked[ItemId("own/birthday")]) >= 6 * 4
    for indices in asked.values():
        gaps = [after - before for before, after in pairwise(indices)]
        assert len(indices) >= 3 and indices[0] <= 6 * 4 + 14
        assert max(gaps) >= 20 and max(gaps) >= 2 * min(gaps) and indices[-1] >= 90, (indices, gaps)


@pytest.mark.slow
def test_a_year_is_the_same_byte_for_byte_while_none_of_them_is_open(tmp_path: Path) -> None:
    """Without a file, with an empty one, with a bad one, and with a prompt whose week no lesson comes in."""
    late = DOOR + "week = 36\n"
    without, *others = (
        [routine_text(routine) for _, routine in year(tmp_path / str(n), "average", text)]
        for n, text in enumerate((None, "", "[[prompt]", late))
    )
    assert len(without) == 144 and others == [without] * 3
    told = [routine_text(routine) for _, routine, _ in year_aloud.year("average")]
    assert told == without


# -- one morning with one of them


def at_own(session: Session) -> Prompt:
    """Go on without marks to the own prompt of the morning."""
    while session.prompt is not None and not is_own(session.prompt.item):
        session.next()
    assert session.prompt is not None
    return session.prompt


@pytest.fixture
def session(home: Path, clock: StandingClock) -> Session:
    """A morning that asks one of the three, at that prompt."""
    wrote(home, DOOR + DUCK + DAY)
    started = begun(context_at(home, clock), clock)
    at_own(started)
    return started


def again(home: Path, clock: StandingClock) -> Context:
    """The program opened again on what lies in the folder."""
    return open_context(Places(home, home), FAMILY, TODAY, Journal.open(home, clock))


def test_it_is_marked_and_remembered_like_any_other(
    home: Path, clock: StandingClock, session: Session
) -> None:
    prompt = at_own(session)
    session.mark(Mark.HESITATED)
    session.context.forget()
    record = session.context.knowledge().of(prompt.item)
    assert record.mark is Mark.HESITATED and record.marks == 1 and record.wording == "a"
    assert session.context.knowledge().of_level(prompt.level_id).marks == 1
    told = list(story(session.context, prompt.item))
    assert told[0].endswith(f"{prompt.item}. Its level opens in week 1.") and "hesitated" in told[1]
    assert item_label(prompt).startswith("your own, ")


def test_a_morning_goes_on_after_its_file_lost_the_prompt(
    home: Path, clock: StandingClock, session: Session
) -> None:
    """The prompt stands, is marked, undone and told of; no other one comes; its mark stays in the journal."""
    prompt, was = at_own(session), session.items
    (home / "own.toml").unlink()
    context = again(home, clock)
    assert context.journal is not None and context.own is None
    resumed = resume(context, context.journal, clock)
    assert resumed is not None and resumed.items == was and resumed.prompt == prompt
    assert AT_A_PROMPT["hold"](resumed).startswith("Held back: your own, ") and not any(
        map(is_own, resumed.items)
    )
    assert resumed.undo() and resumed.prompt == prompt
    resumed.mark(Mark.NOT_YET)
    assert resumed.undo() and resumed.prompt == prompt
    resumed.mark(Mark.NOT_YET)
    assert list(story(context, prompt.item)) == [
        f"Your own, {prompt.level.replace('-', ' ')}: {prompt.item}. It is none of your own prompts now."
    ]
    while not resumed.at_close:
        resumed.next()
    ending = closing(resumed, context.knew_before_today())
    assert prompt.say in [row.say for row in ending.rows]
    lines = context.journal.history(context.child.journal_name)
    assert [line.mark for line in lines if line.item == prompt.item] == [Mark.NOT_YET]
    assert not any(is_own(line.item) for line in context.history())
    assert not any(is_own(each.item) for each in context.routine().prompts)
    known = frozenset(item for item in was if not is_own(item))
    assert Journal.examine(home, known) == [] and Journal.examine(home, known - {was[0]}) != []


def test_what_is_put_back_into_the_file_goes_on_where_it_was(home: Path, clock: StandingClock) -> None:
    """A renamed one is a new one."""
    wrote(home, DUCK)
    earlier = begun(context_at(home, clock, today=TODAY - dt.timedelta(7)), clock)
    at_own(earlier)
    earlier.mark(Mark.FLUENT)
    duck = ItemId("own/duck")
    wrote(home, DOOR)
    assert duck not in again(home, clock).knowledge().items
    wrote(home, DUCK)
    assert again(home, clock).knowledge().of(duck).mark is Mark.FLUENT
    wrote(home, DUCK.replace('"duck"', '"ducks"'))
    renamed = again(home, clock)
    assert [item.id for item in renamed.curriculum().items if item.own] == ["own/ducks"]
    assert not renamed.knowledge().of(ItemId("own/ducks")).marks


def test_a_bad_file_stops_no_morning(home: Path, clock: StandingClock) -> None:
    wrote(home, "[[prompt]]\nsay = 5\n")
    context = context_at(home, clock)
    assert str(context.own_problem).startswith("own.toml, line 2, prompt 1.say: expected some words")
    assert context.own is None and begun(context, clock).prompts
    assert (home / "own.toml").read_text("utf-8") == "[[prompt]]\nsay = 5\n"


def test_something_else_takes_its_place(session: Session) -> None:
    at = session.position
    assert session.another() and not is_own(session.items[at])
    assert not any(map(is_own, session.items)) and session.undo() and is_own(session.items[at])


def test_in_no_others_place_a_second_one_comes(session: Session) -> None:
    """Everything else declined in turn: the morning still has the one."""
    for at in range(len(session.prompts)):
        session.go_to(at)
        if session.prompt is not None and not is_own(session.prompt.item):
            session.another()
        assert sum(map(is_own, session.items)) == 1


def all_else_held(context: Context) -> None:
    """Only what the family wrote itself may be asked."""
    others = {item.level_id: None for item in context.curriculum().items if not item.own}
    child = replace(context.child, held=tuple(others))
    context.editor.change(context.family._replace(children=(child,)))
    context.forget()


def test_where_nothing_else_may_be_asked_the_one_takes_a_place_and_no_second_one(
    home: Path, clock: StandingClock
) -> None:
    wrote(home, DOOR + DUCK + DAY)
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    all_else_held(context)
    session = resume(context, context.journal, clock)
    assert session is not None and session.go_to(1) and session.another()
    (own,) = filter(is_own, session.items)
    assert session.items[1] == own and session.prompts[1].cues[0].text.startswith("Say it again")
    assert session.position == 1 and session.go_to(0) and not session.another()
    later = fixed_routine()._replace(prompts=(*fixed_routine().prompts, session.prompts[1]))
    context.know(Knowledge())
    unshown = Instead(context, later, 1, ())
    assert unshown.others({later.prompts[0].item}, 0, 0) == later.prompts, "nor before the one was shown"


def test_a_second_warm_up_has_none_where_the_first_asked_one(session: Session, clock: StandingClock) -> None:
    session.mark(Mark.FLUENT)
    session.close()
    context = session.context
    context.forget()
    assert context.journal is not None
    second = begin(context, context.journal, clock, shape="short")
    assert second.number == 2 and not any(map(is_own, second.items))


def test_it_is_held_back_listed_and_let_come_again(
    home: Path, clock: StandingClock, session: Session
) -> None:
    level = at_own(session).level_id
    said = AT_A_PROMPT["hold"](session)
    assert said.startswith("Held back: your own, ")
    assert session.context.child.held == (level,)
    (row,) = [row for row in unlocked_levels(session.context, session.morning) if row.level == level]
    assert row.held and row.title == "Your own" and row.week == 1
    assert level not in {item.level_id for item in session.context.eligible(session.morning).items}
    assert warnings(session.context.family) == (), "also where the file has it no more"
    session.context.editor.hold(level, back=False)
    assert level in {item.level_id for item in session.context.eligible(session.morning).items}


def test_it_has_no_next_step(session: Session) -> None:
    assert next_level(session.context, session.morning, at_own(session).level_id) == NextLevel()
    said = AT_A_PROMPT["known"](session)
    assert said == "What you wrote yourselves has no next step. Something else, then."
    assert not any(map(is_own, session.items)) and session.context.child.opened == ()


def test_with_nothing_on_the_table_none_is_asked_that_wants_a_thing(home: Path, clock: StandingClock) -> None:
    for table, asked in (("table = 'a duck'\n", False), ("", True)):
        wrote(home, DUCK + table)
        context = context_at(home, clock)
        routine = context.routine(bare=True)
        assert any(is_own(each.item) for each in routine.prompts) is asked


def test_it_rests_until_it_is_taught_again(home: Path, clock: StandingClock, session: Session) -> None:
    prompt = at_own(session)
    context = session.context
    lines = [Asked(TODAY - dt.timedelta(n), prompt.item, Mark.NOT_YET) for n in (3, 2, 1)]
    context.know(fold(context.curriculum(), lines))
    assert context.to_teach() == (prompt.item,)
    assert prompt.item not in {item.id for item in context.eligible(session.morning).items}
    context.editor.taught(prompt.item, TODAY)
    assert warnings(context.family) == ()


def test_the_year_s_last_words_are_not_of_it(home: Path, clock: StandingClock) -> None:
    wrote(home, DUCK)
    context = context_at(home, clock)
    last = context.year.mornings[-1]
    context.know(fold(context.curriculum(), [Asked(last, ItemId("own/duck"), Mark.FLUENT)]))
    assert year_end(context, context.morning(last)).endswith("You sat down together and talked math.")


def test_its_words_go_through_the_journal_as_they_are(session: Session) -> None:
    assert routine_from(routine_text(session.routine)) == session.routine


def test_nothing_is_loaded_for_a_family_without_a_file(home: Path, clock: StandingClock) -> None:
    context = context_at(home, clock)
    assert context.own is None and context.own_problem is None
    begun(context, clock)
    for text, loads in (("", set()), (DUCK, {"warmup.config.own", "warmup.skills.own"})):
        if text:
            wrote(home, text)
        run = subprocess.run(
            [sys.executable, "-c", RESUME, str(home)], capture_output=True, text=True, check=True
        )
        loaded = Counter(run.stdout.split())
        assert {name for name in loaded if name.endswith(".own")} == loads
