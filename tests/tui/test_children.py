"""Several children on the screen: one after the other, together, and the page on which they are changed."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from textual.widgets import Input, OptionList

from tests.household import FAMILY, OPENING, TODAY, StandingClock, context_at, start_fixed
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from tests.tui.test_mouse import click
from warmup.config.family import Child, Family, load
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.whose_turn import in_order
from warmup.tui.actions import State
from warmup.tui.app import WarmupApp
from warmup.tui.child_form import ChildFormScreen
from warmup.tui.children import ChildrenScreen
from warmup.tui.midnight import MidnightScreen
from warmup.tui.morning import MorningScreen

Clock = Callable[[], dt.datetime]
SIZES = ((40, 12), (60, 20), (80, 24), (120, 36), (160, 45))
KIDS = FAMILY._replace(
    children=(
        Child("Fern", reads=False),
        Child("Moss", reads=True),
        Child("Wren", reads=False, resting=True, prompts=5),
    )
)


def at_size(size: tuple[int, int]) -> str:
    return f"{size[0]}x{size[1]}"


def app_of(home: Path, clock: Clock, *, takes_turns: bool = False, family: Family = KIDS) -> WarmupApp:
    """The program on a fixed morning of each child, whoever is first today at hand."""
    context = context_at(home, clock, family)
    order = in_order(family, TODAY)
    for child in order:
        start_fixed(context.of(child), OPENING)
    assert context.journal is not None
    return WarmupApp(context.of(order[0]), context.journal, clock, takes_turns=takes_turns)


def marks(home: Path, clock: Clock) -> dict[str, list[Mark | None]]:
    """The marks on disk by child; nothing of who has none."""
    journal = Journal.open(home, clock)
    found = {name: [line.mark for line in journal.history(name)] for name in ("Fern", "Moss", "Wren")}
    journal.shut()
    return {name: [mark for mark in each if mark] for name, each in found.items() if any(each)}


def picked(app: WarmupApp, label: str) -> int:
    listed = app.screen.query_one(OptionList)
    names = [str(option.prompt).split("  ")[0] for option in listed.options if not option.disabled]
    return names.index(label)


# -- how it looks


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_a_morning_together(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = app_of(home, clock, takes_turns=True)
    async with app.run_test(size=size) as pilot:
        await press(pilot)
        golden(f"together-opening-{at_size(size)}", frame(app))
        await press(pilot, "right", "up")
        golden(f"together-{at_size(size)}", frame(app))
        await press(pilot, *["down", "up"] * 4, "down")
        golden(f"together-close-{at_size(size)}", frame(app))


@pytest.mark.parametrize("size", SIZES, ids=at_size)
async def test_the_pages_of_several_children(home: Path, clock: Clock, size: tuple[int, int]) -> None:
    app = app_of(home, clock)
    async with app.run_test(size=size) as pilot:
        await press(pilot, "right", *["up"] * 5)
        golden(f"next-child-{at_size(size)}", frame(app))
        app.action_do("who")
        await press(pilot)
        golden(f"who-{at_size(size)}", frame(app))
        await press(pilot, "escape")
        app.action_do("children")
        await press(pilot)
        golden(f"children-{at_size(size)}", frame(app))
        await press(pilot, "n", *"Ivy", "down", *"3/8/2027", "down", *"4")
        golden(f"child-form-{at_size(size)}", frame(app))
        await press(pilot, "escape", "down", "j")
        golden(f"removal-{at_size(size)}", frame(app))


# -- one after the other


async def test_one_key_goes_on_with_the_next_child(home: Path, clock: Clock) -> None:
    app = app_of(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        first, second = in_order(KIDS, TODAY)
        await press(pilot, "right", *["up"] * 5)
        assert f"{second.nickname} is next." in frame(app)
        await press(pilot, "right")
        assert morning(app).state is State.OPENING and second.nickname in frame(app).splitlines()[1]
        await press(pilot, "right", "down", *["right"] * 4)
        assert "is next" not in frame(app), "everybody has been, or rests"
        await press(pilot, "right")
        assert isinstance(app.screen, MorningScreen), "there is nobody to go on with"
        assert marks(home, clock) == {first.nickname: [Mark.FLUENT] * 5, second.nickname: [Mark.HESITATED]}
        assert all(row.closed for row in app.journal.sessions_of(first.journal_name, TODAY))


async def test_another_child_is_picked_from_a_list(home: Path, clock: Clock) -> None:
    family = KIDS._replace(children=(*KIDS.children[:2], Child("quit", reads=False)))
    app = app_of(home, clock, family=family)
    async with app.run_test(size=(80, 24)) as pilot:
        app.action_do("who")
        await press(pilot)
        await press(pilot, *["s"] * picked(app, "quit"), "enter")
        assert isinstance(app.screen, MorningScreen) and "quit" in frame(app).splitlines()[1]


async def test_what_comes_first_is_asked_of_the_family_once_and_of_each_child_whether_it_reads(
    home: Path, clock: Clock
) -> None:
    family = KIDS._replace(children=(Child("Fern"), Child("Moss")), known_until=TODAY - dt.timedelta(2))
    app = app_of(home, clock, family=family, takes_turns=True)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot)
        assert "school, or off?" in frame(app)
        await press(pilot, "s", "g")
        asked = []
        for _ in range(2):
            asked.append(next(name for name in ("Fern", "Moss") if name in frame(app)))
            clock()
            await press(pilot, "up")
        assert sorted(asked) == ["Fern", "Moss"] and morning(app).state is State.OPENING
        assert [child.reads for child in load(home / "family.toml").children] == [True, True]


# -- together


async def test_keys_act_on_the_prompt_on_screen_and_marks_go_to_its_child(home: Path, clock: Clock) -> None:
    app = app_of(home, clock, takes_turns=True)
    first, second = (child.nickname for child in in_order(KIDS, TODAY))
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "up")
        assert second in frame(app).splitlines()[3] and f"{first}: ● came easily" in frame(app)
        await press(pilot, "n")
        assert marks(home, clock) == {first: [Mark.FLUENT], second: [Mark.NOT_YET]}
        await press(pilot, "left", "left")
        assert first in frame(app).splitlines()[3] and "[●]" in frame(app)
        await press(pilot, "u")
        assert "Undone: not yet." in frame(app) and second in frame(app).splitlines()[3]
        await press(pilot, "u")
        assert marks(home, clock) == {} and first in frame(app).splitlines()[3]
        await press(pilot, "i")
        assert f"Another one for {first}." in " ".join(line[40:].strip() for line in frame(app).splitlines())
        await press(pilot, *["up"] * 10)
        assert morning(app).state is State.CLOSE
        await press(pilot, "left")
        assert second in frame(app).splitlines()[3] and "5 of 5" in frame(app)
        await press(pilot, "right", "enter")
    assert marks(home, clock) == {first: [Mark.FLUENT] * 5, second: [Mark.FLUENT] * 5}
    assert all(app.journal.sessions_of(name, TODAY)[0].closed for name in (first, second))


async def test_a_click_on_a_row_of_the_close_goes_to_that_child_s_prompt(home: Path, clock: Clock) -> None:
    app = app_of(home, clock, takes_turns=True)
    _, second = (child.nickname for child in in_order(KIDS, TODAY))
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, *["right"] * 11)
        assert morning(app).state is State.CLOSE
        await click(pilot, f"{second}  ", last=False)
        assert "1 of 5" in frame(app) and second in frame(app)
        await press(pilot, "down")
        assert marks(home, clock) == {second: [Mark.HESITATED]}


async def test_what_has_no_mark_at_the_close_is_marked_and_taken_back_for_all(
    home: Path, clock: Clock
) -> None:
    app = app_of(home, clock, takes_turns=True)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, *["right"] * 11, "0")
        assert "Marked came easily: ten." in frame(app)
        await press(pilot, "u")
        assert marks(home, clock) == {}
        await press(pilot, "h")
        assert [row.rough for name in ("Fern", "Moss") for row in app.journal.sessions_of(name, TODAY)] == [
            True
        ] * 2
        await press(pilot, "u")
        assert [row.rough for name in ("Fern", "Moss") for row in app.journal.sessions_of(name, TODAY)] == [
            False
        ] * 2


async def test_together_is_turned_on_and_off_at_the_opening(home: Path, clock: Clock) -> None:
    app = app_of(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop")
        await press(pilot, *["s"] * picked(app, "together"), "enter")
        assert "take turns" in frame(app) and morning(app).work.together
        await press(pilot, "full_stop")
        await press(pilot, *["s"] * picked(app, "one after the other"), "enter")
        assert "take turns" not in frame(app) and morning(app).work.together is None


async def test_one_child_is_never_asked_about_others(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "full_stop")
        assert not {"together", "another child", "called out"} & {
            str(option.prompt).split("  ")[0] for option in app.screen.query_one(OptionList).options
        }
        await press(pilot, "escape", "i")
        assert {line.mark for line in app.journal.history("Bean")} == {None} and "1 of 5" in frame(app)


async def test_midnight_in_a_morning_together(home: Path, clock: StandingClock) -> None:
    app = app_of(home, clock, takes_turns=True)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right", "up")
        clock.turn_to(TODAY + dt.timedelta(1))
        await press(pilot, "up")
        assert isinstance(app.screen, MidnightScreen)
        await press(pilot, "enter")
        work = morning(app).work
        assert work.together and work.context.today == TODAY + dt.timedelta(1)
        assert work.context.child.nickname == in_order(KIDS, work.context.today)[0].nickname


# -- the page of the children


async def test_the_children_are_changed_by_keys_alone(home: Path, clock: Clock) -> None:
    app = app_of(home, clock)
    path = home / "family.toml"
    async with app.run_test(size=(80, 24)) as pilot:
        app.action_do("children")
        await press(pilot, "n", *"Fern", "enter")
        assert isinstance(app.screen, ChildFormScreen) and "There is another Fern" in frame(app)
        app.screen.query_one("#nickname", Input).value = "Ivy"
        await press(pilot, "enter")
        assert [child.nickname for child in load(path).children] == ["Fern", "Moss", "Wren", "Ivy"]
        assert load(path).children[3].began == TODAY
        await press(pilot, "s", "i", *["end", *["backspace"] * 4], *"Reed", "enter")
        assert (load(path).children[1].nickname, load(path).children[1].journal_name) == ("Reed", "Moss")
        await press(pilot, "s", "d")
        assert load(path).children[2].prompts == 6
        await press(pilot, "y")
        assert not load(path).children[2].resting and "has mornings again" in frame(app)
        await press(pilot, *["z"] * 4)
        assert load(path) == KIDS, "all of it was taken back"


async def test_a_child_is_taken_out_after_two_questions_and_a_copy(home: Path, clock: Clock) -> None:
    app = app_of(home, clock)
    first = in_order(KIDS, TODAY)[0]
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, "right", "up")
        app.action_do("children")
        await press(pilot)
        await press(pilot, *["s"] * picked(app, first.nickname), "j", "enter")
        assert [*home.glob("journal-*.db")] == [], "the cursor stands on no"
        clock()
        await press(pilot, "j", "s", "enter")
        assert "now?" in frame(app) and len([*home.glob("journal-*.db")]) == 1
        assert len(load(home / "family.toml").children) == 3, "not yet"
        await press(pilot, "s", "enter")
        assert first.nickname not in [child.nickname for child in load(home / "family.toml").children]
        assert "marks stay in the journal" in " ".join(frame(app).split())
        await press(pilot, "escape")
        assert isinstance(app.screen, MorningScreen) and morning(app).work.context.child != first
        assert next(line.mark for line in app.journal.history(first.journal_name)) is Mark.FLUENT


async def test_the_children_are_changed_by_mouse_alone(home: Path, clock: Clock) -> None:
    app = app_of(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await click(pilot, ". menu")
        await click(pilot, "the children")
        assert isinstance(app.screen, ChildrenScreen)
        await click(pilot, "Wren")
        clock()
        await click(pilot, "rest, or come back")
        assert not load(home / "family.toml").children[2].resting
        await click(pilot, "more prompts")
        assert load(home / "family.toml").children[2].prompts == 6
        await click(pilot, "add a child")
        app.screen.query_one("#nickname", Input).value = "Ivy"
        await click(pilot, "take it")
        assert len(load(home / "family.toml").children) == 4
        await click(pilot, "Bksp")
        assert isinstance(app.screen, MorningScreen)


async def test_the_last_child_stays_and_the_last_who_is_up_does_not_rest(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        app.action_do("children")
        await press(pilot, "j")
        assert isinstance(app.screen, ChildrenScreen) and "The last child stays." in frame(app)
        await press(pilot, "y")
        assert "One child has to have mornings." in frame(app)
        assert not app.context.family.children[0].resting


async def test_a_hostile_nickname_is_shown_as_it_is(home: Path, clock: Clock) -> None:
    odd = replace(KIDS.children[1], nickname="[red]Moss[/]", journal_name="[b")
    family = KIDS._replace(children=(KIDS.children[0], odd))
    app = app_of(home, clock, takes_turns=True, family=family)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right")
        seen = frame(app)
        await press(pilot, "up")
        seen += frame(app)
        app.action_do("who")
        await press(pilot)
        assert "[red]Moss[/]" in seen and "[red]Moss[/]" in frame(app)
        await press(pilot, "escape")
        app.action_do("children")
        await press(pilot)
        assert "[red]Moss[/]" in frame(app)
