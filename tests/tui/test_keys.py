"""What stands between a key and what it does: bounces, midnight, another window; and every page's keys."""

import datetime as dt
from pathlib import Path

import pytest
from textual.pilot import Pilot

from tests.household import FAMILY, TODAY, StandingClock, context_at
from tests.tui.frame import frame
from tests.tui.hands import BOTH, LEFT, RIGHT
from tests.tui.pressing import morning
from warmup.config.family import load
from warmup.model import Mark
from warmup.session.words import ELSEWHERE
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.counts import CountsScreen
from warmup.tui.days import DaysScreen
from warmup.tui.help import HelpScreen
from warmup.tui.menu import MenuScreen
from warmup.tui.midnight import MidnightScreen
from warmup.tui.morning import MorningScreen
from warmup.tui.unlocked import UnlockedScreen

MIDNIGHT = dt.timedelta(days=1)


class Stopped(StandingClock):
    """A clock that a test sets."""

    def __call__(self) -> dt.datetime:
        return self.moment

    def go(self, **how_far: float) -> None:
        """So much later."""
        self.moment += dt.timedelta(**how_far)


@pytest.fixture
def clock() -> Stopped:
    """Eight in the morning."""
    return Stopped(dt.datetime.combine(TODAY, dt.time(8)))


@pytest.fixture
def watch(clock: Stopped) -> Stopped:
    """The clock of the program, to be set."""
    return clock


def marks(app: WarmupApp, day: dt.date = TODAY) -> list[Mark | None]:
    """The marks of a day on disk, in order."""
    return [line.mark for line in app.journal.history("Bean") if line.date == day]


def words(app: WarmupApp) -> str:
    """The screen as one line."""
    return " ".join(" ".join(line[-80:].split()) for line in frame(app).splitlines())


async def press(pilot: Pilot[int], watch: Stopped, *keys: str, gap: float = 1.0) -> None:
    """Press keys, so many seconds apart, and let the screen settle."""
    for key in keys:
        watch.go(seconds=gap)
        await pilot.press(key)
    await pilot.pause()


async def test_a_bounce_marks_one_prompt(app: WarmupApp, watch: Stopped) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        for gap in (0.0, 0.02, 0.099):
            await press(pilot, watch, "up")
            await press(pilot, watch, "up", gap=gap)
        assert marks(app) == [Mark.FLUENT] * 3 + [None]
        await press(pilot, watch, "up")
        await press(pilot, watch, *["up"] * 40, gap=0.03)
        assert len([mark for mark in marks(app) if mark]) == 4, "a key held down is one press"


@pytest.mark.parametrize("key", ["up", "w", "down", "n", "k", "right", "enter", "t", "i"])
@pytest.mark.parametrize("gap", [0.0, 0.05, 0.3, 0.49])
async def test_a_key_that_led_to_the_close_does_nothing_on_it(
    app: WarmupApp, watch: Stopped, key: str, gap: float
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, *["right"] * 4, key)
        was = marks(app)
        await press(pilot, watch, key, gap=gap)
        assert marks(app) == was and app.return_code is None
        row = app.journal.sessions_of("Bean", TODAY)[0]
        assert not row.closed


async def test_the_close_takes_t_stays_and_one_undo_takes_all_back(app: WarmupApp, watch: Stopped) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "down", *["right"] * 4, "up")
        assert marks(app) == [Mark.HESITATED, None, None, None, None] and "0 those came easily too" in words(
            app
        )
        await press(pilot, watch, "t")
        assert marks(app)[1:] == [Mark.FLUENT] * 4 and morning(app).state is State.CLOSE
        assert "Marked came easily: four." in words(app) and app.return_code is None
        await press(pilot, watch, "u")
        assert marks(app) == [Mark.HESITATED, None, None, None, None]
        assert "Undone: the others came easily." in words(app) and morning(app).state is State.CLOSE


async def test_after_midnight_the_first_key_only_asks(app: WarmupApp, watch: Stopped, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "down")
        watch.go(days=1)
        await press(pilot, watch, "up")
        assert isinstance(app.screen, MidnightScreen) and marks(app) == [Mark.HESITATED, None]
        shown = words(app)
        assert (
            "It is Thursday now." in shown
            and "finish that one" in shown
            and "Yesterday’s warm-up is still open" in shown
            and "today’s warm-up" in shown
        )
        await press(pilot, watch, "up", "n", "t", "u", "m")
        assert isinstance(app.screen, MidnightScreen) and marks(app) == [Mark.HESITATED, None]
        await press(pilot, watch, "enter", "right", "up")
        tomorrow = TODAY + MIDNIGHT
        assert marks(app) == [Mark.HESITATED, None] and marks(app, tomorrow) == [Mark.FLUENT, None]
        assert (
            morning(app).work.context.today == tomorrow and "Thursday, March 4" in frame(app)
        ) or "Thu Mar 4" in frame(app)


async def test_yesterday_s_may_be_finished_and_the_next_midnight_asks_again(
    app: WarmupApp, watch: Stopped
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        watch.go(days=1)
        await press(pilot, watch, "f1")
        assert isinstance(app.screen, MidnightScreen)
        await press(pilot, watch, "f1", "escape")
        assert isinstance(app.screen, MidnightScreen), "help leads back to the question"
        await press(pilot, watch, "left", "up", "up")
        assert marks(app) == [Mark.FLUENT, Mark.FLUENT, None] and not marks(app, TODAY + MIDNIGHT)
        watch.go(days=1)
        await press(pilot, watch, "up")
        assert isinstance(app.screen, MidnightScreen) and len(marks(app)) == 3
        assert "It is Friday, March 5, 2027 now." in words(app) and "Wednesday, March 3" in words(app)


async def test_a_clock_set_right_again_takes_the_question_away(app: WarmupApp, watch: Stopped) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        watch.go(days=-400)
        await press(pilot, watch, "up")
        assert isinstance(app.screen, MidnightScreen) and "now." in words(app)
        watch.go(days=400)
        await press(pilot, watch, "enter")
        assert morning(app).state is State.PROMPT and marks(app) == [None]
        await press(pilot, watch, "up")
        assert marks(app) == [Mark.FLUENT, None]


async def test_quit_leaves_without_a_question(app: WarmupApp, watch: Stopped) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        watch.go(days=1)
        await press(pilot, watch, "q")
        assert app.return_code == 0


async def test_another_window_s_change_is_said_and_shown(app: WarmupApp, watch: Stopped, home: Path) -> None:
    async with app.run_test(size=(120, 36)) as pilot:
        from warmup.session.session import resume

        context = context_at(home, watch, load(home / "family.toml"))
        assert context.journal is not None
        other = resume(context, context.journal, watch)
        assert other is not None and other.swap()
        await press(pilot, watch, "up")
        session = morning(app).session
        assert ELSEWHERE in words(app) and session is not None and session.items == other.items
        assert marks(app) == [None]
        await press(pilot, watch, "up")
        assert marks(app) == [Mark.FLUENT, None] and ELSEWHERE not in words(app)


LINES = {
    "down": "◐ hesitated", "up": "● came easily", "x": "○ not yet", "j": "Something else, then.",
    "k enter": "Something else, then.", "k j": "Something else, then.", "v y": "Held back: make ten,",
    "k i": "It is open already:", "m enter": "A short morning: four in all.",
    "g i": "One that comes easily, then done for today.", "m h": "Rough day: marks lower nothing.",
    "u": "Nothing to undo.",
}  # fmt: skip


@pytest.mark.parametrize("keys", LINES)
async def test_each_action_says_in_a_line_what_it_did_and_what_was_undone(
    app: WarmupApp, watch: Stopped, keys: str
) -> None:
    async with app.run_test(size=(160, 45)) as pilot:
        await press(pilot, watch, *keys.split())
        assert LINES[keys] in words(app)
        await press(pilot, watch, "u")
        nothing = "Nothing to undo." in words(app)
        assert nothing is (keys in ("u", "k i")) or "Undone: " in words(app)


async def test_f1_is_help_and_escape_goes_back_and_marks_nothing_on_every_page(
    app: WarmupApp, watch: Stopped
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        screen = morning(app)
        pages = {"right": MorningScreen, "l": UnlockedScreen, "full_stop": MenuScreen}
        for key, opened in pages.items():
            await press(pilot, watch, key)
            assert isinstance(app.screen, opened)
            await press(pilot, watch, "f1")
            assert isinstance(app.screen, HelpScreen)
            await press(pilot, watch, "escape")
            assert isinstance(app.screen, opened), "help leads back to where it was opened"
            if opened is not MorningScreen:
                await press(pilot, watch, "escape")
                assert morning(app).state is State.PROMPT
        await press(pilot, watch, "p", "escape")
        assert not screen.has_class("picture") and screen.session and screen.session.position == 1
        await press(pilot, watch, "escape", "escape")
        assert screen.session.position == 0
        await press(pilot, watch, *["right"] * 5)
        assert screen.state is State.CLOSE
        await press(pilot, watch, "f1", "escape", "escape")
        assert screen.session.position == 4 and marks(app) == [None] * 5 and app.return_code is None


async def test_days_off_are_undone_from_the_first_prompt_and_its_prompts_are_chosen_again(
    home: Path, watch: Stopped
) -> None:
    family = FAMILY._replace(began=dt.date(2027, 3, 1), known_until=None)
    context = context_at(home, watch, family)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, watch)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "space", "right", "space", "space", "enter")
        screen = morning(app)
        assert screen.session is not None and "Days off: Tuesday" in words(app)
        first = screen.session.morning.school_day
        await press(pilot, watch, "u")
        assert isinstance(app.screen, DaysScreen) and not load(home / "family.toml").off
        await press(pilot, watch, "s", "enter")
        screen = morning(app)
        assert screen.session is not None and screen.session.morning.school_day == (first or 0) + 1
        assert len(app.journal.sessions_of("Bean", TODAY)) == 1 and screen.session.at_opening
        await press(pilot, watch, "right", "up")
        assert marks(app) == [Mark.FLUENT, None]


async def test_a_saturday_that_counts_is_undone(home: Path, watch: Stopped) -> None:
    saturday = dt.date(2027, 3, 6)
    context = context_at(home, watch, FAMILY._replace(known_until=dt.date(2027, 3, 5)), saturday)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, watch)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, watch, "up", "u")
        assert isinstance(app.screen, CountsScreen) and load(home / "family.toml").extra == ()
        assert "Undone: today counts as a school day." in words(app)


@pytest.mark.parametrize(
    "keys",
    [
        "w s x z e d a d d escape w w e",
        "up down n u space right left enter enter backspace up up enter",
    ],
    ids=["left", "right"],
)
async def test_one_hand_works_a_whole_morning_and_ends_it(app: WarmupApp, watch: Stopped, keys: str) -> None:
    pressed, hand = keys.split(), RIGHT if "enter" in keys else LEFT
    async with app.run_test(size=(80, 24)) as pilot:
        assert {*pressed} <= hand | BOTH
        await press(pilot, watch, *pressed[:-1])
        assert marks(app) == [Mark.FLUENT, Mark.HESITATED, None, Mark.FLUENT, Mark.FLUENT]
        assert morning(app).state is State.CLOSE and app.return_code is None
        await press(pilot, watch, pressed[-1])
        assert app.return_code == 0
    assert app.journal.sessions_of("Bean", TODAY)[0].closed


async def test_the_right_hand_leaves_and_goes_back_from_pages(app: WarmupApp, watch: Stopped) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        for page in ("l", "full_stop", "slash"):
            await press(pilot, watch, page, "backspace")
            assert morning(app).state is State.PROMPT and marks(app) == [None]
        await press(pilot, watch, "8")
        assert app.return_code == 0
