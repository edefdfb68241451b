"""A guest's morning: the name in one line, then words, answers, cues and marks, and nothing else."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.widgets import OptionList

from tests.household import FAMILY, OPENING, TODAY, StandingClock, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import Child, Family, load, year_of
from warmup.config.toml_file import LONGEST_NAME
from warmup.model import Mark
from warmup.session.context import open_context
from warmup.session.session import resume
from warmup.tui.actions import BY_ID, FOR_GUESTS, State, actions_of, menu_of
from warmup.tui.app import WarmupApp
from warmup.tui.guest import GuestScreen
from warmup.tui.help import HelpScreen
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]
SIZES = [(40, 12), (60, 20), (80, 24), (120, 36), (160, 45)]
DAYS = [day for day in year_of(FAMILY).mornings if day < TODAY]
NOT_THEIRS = sorted(
    {each.id for state in MorningScreen.STATES for each in (*actions_of((state,)), *menu_of(state))}
    - FOR_GUESTS
)


def program(home: Path, clock: Clock, name: str = "Grandma", family: Family = FAMILY) -> WarmupApp:
    """The program as a guest opens it."""
    home.mkdir(exist_ok=True)
    context_at(home, clock, family)
    saved = (home / "family.toml").read_bytes()
    context = open_context(context_at(home, clock, family).places, family, TODAY, None, saved=False)
    context.journal = context_at(home, clock, family).journal
    context.marks_by = name
    assert (home / "family.toml").read_bytes() == saved and context.journal is not None
    return WarmupApp(context, context.journal, clock, guest=True)


def fixed(home: Path, clock: Clock, name: str = "Grandma") -> WarmupApp:
    app = program(home, clock, name)
    start_fixed(app.context, OPENING)
    return app


def adults(app: WarmupApp) -> list[tuple[Mark | None, str, bool]]:
    rows = app.journal.marks_of("Bean", TODAY, 1)
    return [(rows[at].mark, rows[at].adult, rows[at].from_memory) for at in sorted(rows)]


# -- the name


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_name_is_asked_in_one_line(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = fixed(home, clock, "")
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"guest-name-{size[0]}x{size[1]}", frame(app))


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Grandpa", "Grandpa"),
        ("", "guest"),
        ("  ", "guest"),
        ("[red]x", "[red]x"),
        ("w" * 60, "w" * LONGEST_NAME),
    ],
)
async def test_it_is_kept_with_each_mark(home: Path, clock: Clock, typed: str, name: str) -> None:
    app = fixed(home, clock, "")
    async with app.run_test(size=(80, 24)) as pilot:
        await press(
            pilot, *({"[": "left_square_bracket", "]": "right_square_bracket"}.get(c, c) for c in typed)
        )
        await press(pilot, "enter")
        assert morning(app).state is State.OPENING
        await press(pilot, "right", "up")
        assert adults(app) == [(Mark.FLUENT, name, False)]


async def test_help_tells_of_the_line_s_keys_and_letters_are_typed(home: Path, clock: Clock) -> None:
    app = fixed(home, clock, "")
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "q", "8", "comma", "f1")
        assert isinstance(app.screen, HelpScreen) and "Keys of a guest’s name" in frame(app)
        assert "Enter     begin" in frame(app)
        assert "came easily" not in frame(app) and "either hand" not in frame(app)
        await press(pilot, "escape")
        assert isinstance(app.screen, GuestScreen) and "q8," in frame(app)


async def test_a_name_that_was_given_is_not_asked(home: Path, clock: Clock) -> None:
    app = fixed(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert morning(app).state is State.OPENING and "Guest: Grandma" in frame(app)


# -- the morning


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_what_a_guest_sees(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = fixed(home, clock)
    name = f"{size[0]}x{size[1]}"
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"guest-opening-{name}", frame(app))
        await press(pilot, "right", "space")
        golden(f"guest-prompt-{name}", frame(app))
        await press(pilot, "full_stop")
        golden(f"guest-menu-{name}", frame(app))
        await press(pilot, "escape", "n", "n", *["right"] * 3, "enter")


async def test_nothing_is_asked_of_missed_mornings_of_the_day_or_of_reading(home: Path, clock: Clock) -> None:
    family = FAMILY._replace(children=(Child("Bean"),), known_until=DAYS[-9], weekdays=(0, 1, 3, 4))
    app = program(home, clock, family=family)
    assert app.context.unconfirmed_days() and not app.context.morning().is_school
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "up")
        assert morning(app).session is not None and adults(app)[0][:2] == (Mark.FLUENT, "Grandma")
    own = context_at(home, clock, load(home / "family.toml"))
    assert own.unconfirmed_days() == app.context.unconfirmed_days(), (
        "it is still asked of the family's own adult"
    )
    assert own.child.reads is None


async def test_no_key_and_no_entry_does_more(home: Path, clock: Clock) -> None:
    """At the opening, a prompt and the close, by every key, by name, and from the palette."""
    app = fixed(home, clock)
    saved = (home / "family.toml").read_bytes()
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        for _ in range(7):
            session = morning(app).session
            assert session is not None
            before = session.items, session.rough, frame(app)
            for action in NOT_THEIRS:
                app.action_do(action)
                await press(pilot)
                assert isinstance(app.screen, MorningScreen), action
                assert (session.items, session.rough, frame(app)) == before, action
            assert not {each.id for each in morning(app).offered()}.intersection(NOT_THEIRS)
            await press(pilot, "right")
    assert len(NOT_THEIRS) > 20 and (home / "family.toml").read_bytes() == saved


async def test_two_not_yet_offer_no_early_stop_and_the_close_tells_of_no_record(
    home: Path, clock: Clock
) -> None:
    app = fixed(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "n", "n")
        session = morning(app).session
        assert session is not None and session.offers_stop and "winds down" not in frame(app)
        await press(pilot, "right", "right", "right", "t", "enter")
        shown = frame(app)
        assert "short" not in shown and app.return_code == 0
    assert [row[0] for row in adults(app)] == [Mark.NOT_YET, Mark.NOT_YET, *[Mark.FLUENT] * 3]


async def test_the_theme_and_the_cover_hold_for_the_run_only(home: Path, clock: Clock) -> None:
    app = fixed(home, clock)
    saved = (home / "family.toml").read_bytes()
    async with app.run_test(size=(80, 24)) as pilot:
        was = app.theme
        await press(pilot, "right", "comma", "o")
        assert app.theme != was and "covered" in frame(app)
    assert (home / "family.toml").read_bytes() == saved


async def test_undo_takes_back_marks_but_not_what_the_family_decided(home: Path, clock: Clock) -> None:
    own = context_at(home, clock)
    start_fixed(own)
    assert own.journal is not None
    session = resume(own, own.journal, clock)
    assert session is not None
    session.hold_back()
    held = load(home / "family.toml")
    app = program(home, clock, family=held)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up", "u")
        assert "Undone: came easily." in frame(app)
        await press(pilot, "u")
        assert "Nothing to undo." in frame(app)
    assert load(home / "family.toml") == held and held.children[0].held
    again = resume(own, own.journal, clock)
    assert again is not None and again.can_undo, "the family's own adult can"


async def test_help_tells_only_what_a_guest_can_do(home: Path, clock: Clock) -> None:
    app = fixed(home, clock)
    async with app.run_test(size=(120, 60)) as pilot:
        await press(pilot, "right", "question_mark")
        shown = frame(app)
        assert all(BY_ID[each].help in shown for each in ("cue", "fluent", "undo"))
        assert "wind down" not in shown and "another one" not in shown and "The choice is kept" not in shown
        await press(pilot, "escape", "full_stop")
        assert "The choice is kept" not in frame(app) and "The next of three looks." in frame(app)


async def test_midnight_asks_a_guest_as_well(home: Path, clock: StandingClock) -> None:
    app = fixed(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right")
        clock.moment += dt.timedelta(days=1)
        await press(pilot, "up", "question_mark")
        assert "today’s warm-up" in frame(app), "the keys of that page"
        await press(pilot, "escape", "enter")
        assert morning(app).state is State.OPENING and app.context.today == TODAY + dt.timedelta(1)
        assert "Guest: Grandma" in frame(app)


async def test_the_menu_of_a_guest(home: Path, clock: Clock) -> None:
    app = fixed(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "full_stop")
        listed = app.screen.query_one(OptionList)
        picked = {option.id for option in listed.options if option.id}
        assert picked == {"cover", "stage", "skip", "theme", "hand", "help", "quit"}
