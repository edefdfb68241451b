"""The morning screen: what it shows at every size, and what every key does."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY, context_at
from tests.tui.frame import frame, golden
from tests.tui.pressing import morning, press
from warmup.config.family import Child, load, year_of
from warmup.model import Mark
from warmup.session import summary
from warmup.tui import key_screen
from warmup.tui.actions import State, actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.unlocked import UnlockedScreen

Clock = Callable[[], dt.datetime]
SIZES = ((60, 20), (80, 24), (120, 36), (160, 45))


def words(app: WarmupApp) -> str:
    """The script as one line, without the stage beside or above it."""
    strip = app.screen.query_one("#script").region
    lines = frame(app).splitlines()[strip.y :]
    return " ".join(" ".join(line[strip.x :].split()) for line in lines)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_a_prompt_a_cue_and_the_close(
    app: WarmupApp, size: tuple[int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    # What the next morning wants is fixed, so that no change of the engine moves the close.
    monkeypatch.setattr(summary, "_table", lambda _context: ("Thursday", "beans, cup", "real coins"))
    name = f"{size[0]}x{size[1]}"
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        golden(f"prompt-{name}", frame(app))
        await press(pilot, "up", "space", "space")
        golden(f"cue-{name}", frame(app))
        await press(pilot, "down", "n", "right", "right")
        assert morning(app).state is State.CLOSE
        shown = frame(app)
        golden(f"close-{name}", shown)
        assert "It was new, and it came easily." in shown
        assert "those came easily too" in shown


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_help_of_every_size(app: WarmupApp, size: tuple[int, int]) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "question_mark")
        shown = frame(app)
        golden(f"help-{size[0]}x{size[1]}", shown)
        assert "Keys of the morning" in shown


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_never_given_up_whatever_the_size(app: WarmupApp, size: tuple[int, int]) -> None:
    """The words to say, the answer, the current cue and the mark keys stay on every size."""
    async with app.run_test(size=size) as pilot:
        await press(pilot, "space", "space", "space")
        shown = " ".join(frame(app).split())
        for piece in (
            "The ten frame has seven",
            " three",
            "Cue 3:",
            "After this: show it",
            "easily",
            "hesitated",
            "not yet",
        ):
            assert piece in shown or piece.replace(" ", "\n") in shown, piece


async def test_marks_by_either_hand_and_by_mouse(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "w", "s", "x", "up")
        session = morning(app).session
        assert session is not None
        assert [session.mark_at(at) for at in range(4)] == [
            Mark.FLUENT,
            Mark.HESITATED,
            Mark.NOT_YET,
            Mark.FLUENT,
        ]
        await press(pilot, "z", "a", "left")
        assert session.position == 1 and session.mark_at(3) is None
        rows = frame(app).splitlines()
        row = max(at for at, line in enumerate(rows) if "came easily" in line)
        await pilot.click(offset=(rows[row].index("came easily"), row))
        await pilot.pause()
        assert session.mark_at(1) is Mark.FLUENT and session.position == 2


async def test_covering_the_answer_is_kept(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "c")
        shown = frame(app)
        assert "Answer: covered" in shown and "three" not in shown and "7 + 3" not in shown
        assert not load(home / "family.toml").answers_shown
        await press(pilot, "o")
        assert "Answer: three" in frame(app)


async def test_picture_only_shows_no_words(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "p")
        assert not any(letter.isalpha() for letter in frame(app))
        await press(pilot, "f")
        assert "Answer: three" in frame(app)


async def test_the_smallest_terminal_has_the_words_alone_and_a_key_for_the_picture(app: WarmupApp) -> None:
    async with app.run_test(size=(40, 12)) as pilot:
        await pilot.pause()
        rows = frame(app).splitlines()
        assert rows[0].startswith(" Wed Mar 3") and not any(row.endswith("▇") for row in rows)
        assert "p shows it alone" in frame(app)
        assert "came easily" in frame(app) and "Answer: three" in frame(app)
        await press(pilot, "p")
        assert "█" in frame(app) and not any(letter.isalpha() for letter in frame(app))


async def test_the_stage_never_shows_words_marks_or_scores(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up")
        await press(pilot, "left")
        stage = "\n".join(line[:40] for line in frame(app).splitlines())
        assert not any(letter.isalnum() for letter in stage), stage


async def test_a_spoken_prompt_leaves_hills_on_the_stage(app: WarmupApp) -> None:
    """An empty stage would look broken, most of all where the child has the whole screen."""
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "right")
        stage = [line[:40] for line in frame(app).splitlines()]
        assert "█" * 40 in stage and not any(letter.isalnum() for line in stage for letter in line)
        await press(pilot, "p")
        assert "█" * 80 in frame(app).splitlines()


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_all_troubles_at_once_leave_what_is_to_be_said(app: WarmupApp, size: tuple[int, int]) -> None:
    app.notices = (
        "The journal was damaged. It is kept as journal-damaged-20270303.db, and a new one begun.",
    )
    app.context.editor.kept.unsaved = (
        "What you choose is not being saved (family.toml, line 1: an error in it)."
    )
    app.aside = "Demo: an invented family."
    async with app.run_test(size=size) as pilot:
        await press(pilot, "space", "u")
        shown = " ".join(" ".join(line[-80:].split()) for line in frame(app).splitlines())
        for piece in (
            "What you choose is not being saved",
            "The ten frame has seven",
            " three",
            "Cue 1:",
        ):
            assert piece in shown, piece
        assert "easily" in shown and "not yet" in shown


async def test_a_choice_that_cannot_be_saved_is_taken_and_said(app: WarmupApp, home: Path) -> None:
    written = (home / "family.toml").read_bytes()
    async with app.run_test(size=(120, 36)) as pilot:
        (home / "family.toml").write_bytes(b"x = [")
        await press(pilot, "o")
        shown = " ".join(frame(app).split())
        assert "Answer: covered" in shown and "not being saved (family.toml, line 1" in shown
        assert (home / "family.toml").read_bytes() == b"x = ["
        await press(pilot, "up")
        assert "not being saved" in frame(app)
        (home / "family.toml").write_bytes(written)
        await press(pilot, "o")
        assert "not being saved" not in frame(app)


async def test_a_routine_that_cannot_be_read_is_said_and_the_morning_goes_on(
    app: WarmupApp, home: Path
) -> None:
    (home / "short.toml").write_bytes(b"\xff\xfe")
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, "m", "enter")
        assert "short.toml, line 1: expected text in UTF-8" in " ".join(frame(app).split())
        await press(pilot, "up")
        assert "short.toml" not in frame(app) and "2 of 5" in frame(app)


async def test_theme_is_turned_and_kept(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        assert app.theme == "warmup-dark"
        await press(pilot, "comma")
        assert app.theme == "warmup-light" and load(home / "family.toml").theme == "light"
        await press(pilot, "3")
        assert app.theme == "warmup-contrast" and load(home / "family.toml").theme == "contrast"
        await press(pilot, "comma")
        assert app.theme == "warmup-dark"


async def test_what_is_unlocked_lists_holds_and_lets_come(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "l")
        assert isinstance(app.screen, UnlockedScreen) and "Quarter 3" in frame(app)
        await press(pilot, "down", "6")
        (held,) = load(home / "family.toml").children[0].held
        assert "held back" in frame(app)
        await press(pilot, "6", "l")
        assert not load(home / "family.toml").children[0].held and held
        assert morning(app).state is State.PROMPT


async def test_the_day_keys(app: WarmupApp, home: Path) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        session = morning(app).session
        assert session is not None
        await press(pilot, "j")
        assert "Something else" in frame(app) and session.prompts[0].item != "make-ten/seven-three"
        await press(pilot, "m", "h")
        assert session.rough and "rough day" in frame(app)
        await press(pilot, "g", "m")
        assert len(session.prompts) == 4
        await press(pilot, "k", "y")
        assert load(home / "family.toml").children[0].held


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_two_not_yet_running_offer_a_kind_end_in_a_line_with_its_key(
    app: WarmupApp, size: tuple[int, int]
) -> None:
    async with app.run_test(size=size) as pilot:
        await press(pilot, "n", "x")
        offered = "Two not yet in a row: g winds down."
        assert offered in words(app) and "3 of 5" in words(app), "offered, and nothing done"
        await press(pilot, "m", "enter")
        shown = words(app)
        assert "One that comes easily, then done for today." in shown and "winds down" not in shown
        assert "3 of 3" in shown and "easily" in shown
        await press(pilot, "z")
        assert "3 of 5" in words(app) and offered in words(app)
        await press(pilot, "up")
        assert "winds down" not in words(app) and "4 of 5" in words(app)


async def test_a_click_takes_the_offer_to_stop(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "n", "x")
        rows = frame(app).splitlines()
        row = next(at for at, line in enumerate(rows) if "Two not yet" in line)
        await pilot.click(offset=(rows[row].index("Two not yet"), row))
        await pilot.pause()
        assert "Wind down" in frame(app)
        await pilot.click("#list", offset=(2, 0))
        await pilot.pause()
        assert "3 of 3" in words(app)


@pytest.mark.parametrize("keys", [("m", "i"), ("g", "2")])
async def test_winding_down_stops_early_and_does_no_harm_after_that(
    app: WarmupApp, keys: tuple[str, str]
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, *keys)
        shown = " ".join(" ".join(line[40:].split()) for line in frame(app).splitlines())
        assert "One that comes easily, then done for today." in shown and "2 of 2" in shown
        await press(pilot, *keys)
        assert "nothing more to leave out" in " ".join(frame(app).split()) and "2 of 2" in frame(app)
        await press(pilot, "up")
        assert morning(app).state is State.CLOSE
        await press(pilot, *keys)
        assert morning(app).state is State.CLOSE and "1 without a mark" in frame(app)
        await press(pilot, "u", "u")
        assert "1 of 5" in frame(app)


async def test_every_action_is_bound_with_a_tooltip(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)):
        bound = {
            key: binding
            for key, bindings in app.screen._bindings.key_to_bindings.items()
            for binding in bindings
        }
        for action in actions_of((State.PROMPT,)):
            assert all(bound[key].tooltip for key in action.every_key)


def test_an_action_of_the_menu_needs_no_key_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    """The letters are taken: what is rare is picked by name."""
    first, *_ = actions_of((State.PROMPT,))
    keyless = first._replace(id="rare", keys=(), menu=frozenset({State.PROMPT}))
    monkeypatch.setattr(key_screen, "actions_of", lambda _states: (first, keyless))
    assert {binding.id for binding in key_screen.bindings(State.PROMPT)} == {
        first.id,
        f"{first.id}.w",
    }


async def test_closing_marks_the_rest_and_ends(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, *["right"] * 5)
        await press(pilot, "t")
        assert morning(app).state is State.CLOSE and "Marked came easily: five." in " ".join(
            frame(app).split()
        )
        await press(pilot, "enter")
    session = app.journal.sessions_of("Bean", TODAY)[0] if app.journal.saving else None
    assert session is not None and session.closed
    assert {line.mark for line in app.journal.history("Bean")} == {Mark.FLUENT}


@pytest.mark.parametrize(("key", "counts"), [("enter", False), ("up", True)])
async def test_a_saturday_is_welcome_and_asks_whether_it_counts(
    home: Path, clock: Clock, key: str, counts: bool
) -> None:
    saturday = dt.date(2027, 3, 6)
    context = context_at(home, clock, FAMILY._replace(known_until=dt.date(2027, 3, 5)), saturday)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert "Does it count" in frame(app)
        await press(pilot, key)
        assert morning(app).state is State.OPENING
        assert context.morning().is_school is counts


async def test_a_hostile_nickname_is_shown_as_it_is(home: Path, clock: Clock) -> None:
    name = "[red]Pip[/] 🦊"
    family = FAMILY._replace(children=(Child(name, reads=False), Child("Other")))
    context = context_at(home, clock, family)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(120, 36)):
        assert "[red]Pip[/]" in frame(app)


@pytest.mark.parametrize("size", [(40, 12), *SIZES], ids=lambda size: f"{size[0]}x{size[1]}")
async def test_the_last_morning_of_the_year_closes_in_words_of_its_own(
    home: Path, clock: Clock, size: tuple[int, int]
) -> None:
    last = year_of(FAMILY).mornings[-1]
    context = context_at(home, clock, FAMILY._replace(known_until=last - dt.timedelta(1)), last)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=size) as pilot:
        while morning(app).state is not State.CLOSE:
            await press(pilot, "right")
        shown = words(app)
        assert "That was the last school day of the year: one hundred forty-four school days." in shown
        assert "You sat down together and talked math." in shown and "That was today" not in shown
        assert "those came easily too" in shown and "finish" in shown
