"""What the child's window shows at each place a morning can stand."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest

from tests.household import OPENING, TODAY, context_at, fixed_prompts, fixed_routine, start_fixed
from tests.mornings import many
from warmup import skills
from warmup.journal.routine_json import routine_text
from warmup.journal.watching import Watch
from warmup.model import Mark
from warmup.pictures import HundredChart, TenFrame
from warmup.randomness import SeededRandom
from warmup.session.context import Context
from warmup.session.on_stage import NOTHING, OnStage, Reader, soon
from warmup.session.session import Session, resume

Clock = Callable[[], dt.datetime]
OPENED = dt.datetime(2027, 3, 3, 7)


class Window:
    """The child's window, without a screen."""

    def __init__(self, home: Path) -> None:
        self._watch, self._reader = Watch(home, OPENED), Reader()

    def shows(self) -> OnStage:
        """What it shows after a look."""
        self._watch.look(TODAY)
        return self._reader.on_stage(self._watch.found)


def test_the_pictures_that_may_follow_are_told_with_the_likeliest_first() -> None:
    ten, on, *_ = fixed_prompts()
    chart = on.picture_after(2)
    assert chart is not None and [*soon((ten, on), -1, 0)] == [TenFrame(7)]
    assert [*soon((on, ten), 0, 0)] == [TenFrame(7), chart, chart]
    assert [*soon((ten, on), 1, 2)] == [chart, chart, TenFrame(7)]
    assert [*soon((ten, on), 2, 0)] == []


def test_it_follows_a_whole_morning(home: Path, clock: Clock) -> None:
    window, context = Window(home), context_at(home, clock)
    assert window.shows() == NOTHING
    start_fixed(context, OPENING)
    session = resume(context, context.journal, clock) if context.journal else None
    assert session is not None and window.shows().picture is None, "a picture at the opening"
    session.next()
    first = window.shows()
    assert (first.picture, first.hidden) == (TenFrame(7), False)
    session.back()
    assert session.at_opening and window.shows().picture is None
    session.next()
    assert window.shows() == first
    session.mark(Mark.FLUENT)
    assert window.shows().picture is None and window.shows().prompt != first.prompt
    while not session.at_close:
        assert not window.shows().over
        session.next()
    assert window.shows().over and not window.shows().closed
    session.close()
    assert window.shows().closed and window.shows().prompt == first.prompt[:2]
    session.undo()
    session.back()
    assert not window.shows().closed


def test_a_model_that_a_cue_brings_in_comes_and_goes_with_it(session: Session, home: Path) -> None:
    window = Window(home)
    session.next()
    assert window.shows().picture is None
    session.next_cue()
    assert window.shows().picture is None
    session.next_cue()
    assert window.shows().picture == HundredChart(21, 40, (), (28,))
    session.mark(Mark.HESITATED)
    session.next_cue()
    other = window.shows().picture
    session.undo()
    assert window.shows().picture == HundredChart(21, 40, (), (28,)) != other
    assert session.journal.folder == home and resume(session.context, session.journal, session.clock)
    assert window.shows().picture is None, "another start of the program has no cue on screen"


def test_what_is_flashed_starts_hidden_and_a_model_does_not(
    context: Context, clock: Clock, home: Path
) -> None:
    routine, journal = fixed_routine(), context.journal
    ten = routine.prompts[0]._replace(do="Show it, count to two, cover it.")
    shown = ten.cues[1]._replace(picture=TenFrame(9))
    ten = ten._replace(cues=(ten.cues[0], shown, ten.cues[2]))
    assert journal is not None
    prompts = (ten, *routine.prompts[1:])
    rows = [(prompt.item, prompt.wording) for prompt in prompts]
    journal.start("Bean", TODAY, "daily", routine_text(routine._replace(prompts=prompts)), rows)
    session = resume(context, journal, clock)
    assert session is not None and Window(home).shows().hidden
    session.next_cue()
    session.next_cue()
    assert Window(home).shows()[:2] == (TenFrame(9), False)


@pytest.mark.parametrize("routine", ["", "{}", "[]", "[" * 5000])
def test_a_routine_that_cannot_be_read_shows_nothing(routine: str, context: Context, home: Path) -> None:
    assert context.journal is not None
    context.journal.start("Bean", TODAY, "daily", routine, [("make-ten/seven-three", "")])
    assert Window(home).shows() == NOTHING


def test_of_all_skills_only_what_is_seen_at_a_glance_is_flashed() -> None:
    mornings, flashed = many(3), set[str]()
    for item in skills.item_names():
        for morning in mornings:
            if skills.askable(item, morning) and skills.prompt(item, morning, SeededRandom(item)).flashed:
                flashed.add(item.partition("/")[0])
    assert flashed == {"subitize"}


ACTIONS: dict[str, Callable[[Session], object]] = {
    "mark": lambda session: session.mark(Mark.NOT_YET),
    "next": Session.next,
    "back": Session.back,
    "cue": Session.next_cue,
    "undo": Session.undo,
    "swap": Session.swap,
    "another": Session.another,
    "short": Session.shorten,
    "stop": Session.stop_early,
}


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(3))
def test_whatever_the_adult_does_both_windows_have_the_same_picture(
    seed: int, home: Path, clock: Clock
) -> None:
    """After each of many actions, those that only a note tells of among them, and after other starts."""
    rng, context, pictures = Random(seed), context_at(home, clock), 0
    start_fixed(context, OPENING)
    assert context.journal is not None
    window, session = Window(home), resume(context, context.journal, clock)
    for _ in range(120):
        name = rng.choice([*ACTIONS, "cue", "cue", "next", "back", "start again"])
        if name == "start again" or session is None:
            session = resume(context, context.journal, clock)
        else:
            ACTIONS[name](session)
        assert session is not None
        expected = session.prompt.picture_after(session.cue) if session.prompt else None
        assert window.shows().picture == expected, name
        pictures += expected is not None
    assert pictures > 20
