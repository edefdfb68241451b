"""The page of a practice round: what it shows, its keys for both hands, and that its marks stay apart."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at, fixed_prompts, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import press
from warmup.config.family import Child, Family
from warmup.journal.journal import Journal
from warmup.model import LevelId, Mark
from warmup.session import practice
from warmup.session.practiced import practiced
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen
from warmup.tui.practice import WAITS, PracticeApp, PracticeScreen

Clock = Callable[[], dt.datetime]
SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))
ALL = LevelId("make-ten:all")


@pytest.fixture
def fixed(monkeypatch: pytest.MonkeyPatch) -> None:
    """The five prompts that no change of a skill moves."""
    monkeypatch.setattr(practice, "draw", lambda *_: fixed_prompts())


def opened(home: Path, clock: Clock, level: LevelId = ALL, family: Family = FAMILY) -> PracticeApp:
    context = context_at(home, clock, family)
    assert context.journal is not None
    return PracticeApp(context, context.journal, clock, level)


def kept(home: Path, clock: Clock) -> list[Mark | None]:
    """The marks as another program finds them on disk."""
    return [row.mark for row in Journal.open(home, clock, read_only=True).practiced("Bean")]


@pytest.mark.slow
@pytest.mark.usefixtures("fixed")
@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_a_prompt_and_the_end(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app, name = opened(home, clock), f"{size[0]}x{size[1]}"
    async with app.run_test(size=size) as pilot:
        await press(pilot, "up", "left", "space")
        golden(f"practice-{name}", frame(app))
        await press(pilot, "up", "down", "n", "up", "up")
        golden(f"practice-end-{name}", frame(app))
        await press(pilot, "enter")
    assert app.return_code == 0


@pytest.mark.usefixtures("fixed")
@pytest.mark.parametrize("keys", [("up", "down", "n"), ("w", "s", "x")])
async def test_each_mark_is_on_disk_before_the_next_prompt_and_undo_takes_it_back(
    home: Path, clock: Clock, keys: tuple[str, ...]
) -> None:
    app, marks = opened(home, clock), [Mark.FLUENT, Mark.HESITATED, Mark.NOT_YET]
    async with app.run_test(size=(80, 24)) as pilot:
        for at, key in enumerate(keys):
            await press(pilot, key)
            assert kept(home, clock) == marks[: at + 1] and f"{at + 2} of 5" in frame(app)
        await press(pilot, "u" if keys[0] == "up" else "z")
        assert kept(home, clock) == [*marks[:2], None] and "3 of 5" in frame(app)
        assert "Undone" in frame(app)
        await press(pilot, "d", "a", "left", "right", "c")
        assert "covered" in frame(app)
        await press(pilot, "o", "p", "escape", "backspace")
    assert app.return_code == 0 and kept(home, clock) == [*marks[:2], None]


async def test_it_opens_on_top_of_a_morning_that_stays_as_it_was(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up")
        before = frame(app)
        assert isinstance(app.screen, MorningScreen)
        app.push_screen(PracticeScreen(app.screen.work, ALL))
        await press(pilot, "down", "n")
        assert "practice" in frame(app) and "3 of 5" in frame(app)
        await press(pilot, "escape")
        assert [line.mark for line in app.journal.history("Bean")] == [Mark.FLUENT, None]
        assert [each.words() for each in practiced(app.context, ALL)] == ["practice: ◐ ○"]
        assert frame(app).replace("● came easily", "") == before.replace("● came easily", "")
        await press(pilot, "u")
        assert app.journal.history("Bean")[0].mark is None, "undo is the morning's again"
        assert len(app.journal.sessions_of("Bean", TODAY)) == 1


async def test_a_level_not_yet_taught_says_so_kindly(home: Path, clock: Clock) -> None:
    app = opened(home, clock, LevelId("make-ten:take-from-ten"))
    async with app.run_test(size=(80, 24)) as pilot:
        shown = frame(app)
        assert "It isn’t taught yet. It opens in week 28." in shown and WAITS.split(".")[0] in shown
        await press(pilot, "up", "u", "space")
        await pilot.pause()
    assert app.return_code == 0 and kept(home, clock) == [] and practice.DONE not in shown


@pytest.mark.usefixtures("fixed")
async def test_for_who_reads_each_answer_starts_covered(home: Path, clock: Clock) -> None:
    app = opened(home, clock, family=FAMILY._replace(children=(Child("Bean", reads=True),)))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "covered" in frame(app)
        await press(pilot, "o")
        assert "three" in frame(app) and "covered" not in frame(app)
        await press(pilot, "up")
        assert "covered" in frame(app)


async def test_the_practice_of_a_started_morning_draws_by_date_and_round(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    start_fixed(context)
    says = [[prompt.say for prompt in practice.draw(context, ALL, number)] for number in (1, 2)]
    for number in (0, 1):
        app = opened(home, clock)
        async with app.run_test(size=(160, 45)) as pilot:
            await pilot.pause()
            assert says[number][0][:20] in " ".join(frame(app).split())
            await press(pilot, "up")
