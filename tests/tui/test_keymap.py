"""Keys of the family's own: bound, named everywhere, and refused as a whole where one is wrong."""

import datetime as dt
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from textual.keys import _character_to_key

from tests.household import FAMILY, context_at, start_fixed
from tests.tui.frame import frame
from tests.tui.pressing import morning, press
from warmup.cli.main import DONE, WRONG, main
from warmup.config.family import Family
from warmup.model import Mark
from warmup.tui.actions import BY_ID, Hand, key_name, rebind
from warmup.tui.app import WarmupApp
from warmup.tui.keymap import KEYS, SIGNS, own_keys, textual_keymap
from warmup.tui.menu import MenuScreen

Clock = Callable[[], dt.datetime]


@pytest.fixture(autouse=True)
def usual_keys() -> Iterator[None]:
    """The usual keys again after each test."""
    yield
    rebind({})


def opened(home: Path, clock: Clock, *lines: str) -> WarmupApp:
    """The program on the fixed morning, with these lines under [keys] as the family's own file has them."""
    from warmup.config.family import load

    context = context_at(home, clock)
    file = home / "family.toml"
    file.write_text("\n".join([file.read_text("utf-8"), "[keys]", *lines, ""]), "utf-8")
    context.editor.kept.family = load(file)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def marks(app: WarmupApp) -> list[Mark | None]:
    """The marks on disk."""
    return [line.mark for line in app.journal.history("Bean")]


async def test_an_own_key_does_it_the_usual_ones_no_more_and_all_others_as_ever(
    home: Path, clock: Clock
) -> None:
    app = opened(home, clock, 'undo = "f2"', 'hesitated = ["h", ";"]')
    async with app.run_test(size=(120, 36)) as pilot:
        await press(pilot, "h")
        assert marks(app)[0] is Mark.HESITATED
        await press(pilot, "u", "z", "s", "down")
        assert marks(app) == [Mark.HESITATED, None]
        assert "F2 undo" in frame(app) and "h hesitated" in frame(app) and "Not being" not in frame(app)
        await press(pilot, "f2")
        assert marks(app)[0] is None and "Undone: hesitated." in frame(app)
        await press(pilot, "semicolon")
        assert marks(app)[0] is Mark.HESITATED
        # The keys of another action on the very same key go on: k is two things in two states.
        await press(pilot, "w", "question_mark")
        assert "h ;" in frame(app) and "F2 " in frame(app)


async def test_what_shares_a_key_with_a_moved_one_keeps_it(home: Path, clock: Clock) -> None:
    """k is another one at a prompt and the review at a close: Textual would take both from the key."""
    app = opened(home, clock, 'another = "f3"')
    async with app.run_test(size=(80, 24)) as pilot:
        bound = app.screen._modal_binding_chain[0][1].key_to_bindings
        assert {binding.id for binding in bound["k"]} == {"review"}
        assert {binding.id for binding in bound["f3"]} == {"another", "another.v"}
        await press(pilot, "k")
        assert morning(app)
        await press(pilot, "f3")
        assert app.screen is not app.screen_stack[0] and "Bksp back" in frame(app)


async def test_a_moved_key_names_no_hand_and_the_hand_stays(home: Path, clock: Clock) -> None:
    app = opened(home, clock, 'theme = "f5"')
    async with app.run_test(size=(80, 36)) as pilot:
        await press(pilot, "d")
        assert morning(app).work.hand is Hand.LEFT
        await press(pilot, "f5")
        assert morning(app).work.hand is Hand.LEFT and app.theme == "warmup-light"
        await press(pilot, "full_stop")
        assert isinstance(app.screen, MenuScreen) and "F5" in frame(app)
        await press(pilot, "f5")
        assert app.theme == "warmup-contrast"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        (
            'undo = "w"',
            'line 16, keys.undo: expected a key that does nothing else there, found "w", which is',
        ),
        ('ando = "f2"', 'keys.ando: expected an action that has a key, found "ando"; did you mean "undo"?'),
        ('undo = "f22"', 'keys.undo: expected one key like "f2", "b" or ",", found "f22"'),
        ('undo = "ctrl+c"', 'found "ctrl+c"'),
        ("undo = 3", 'keys.undo: expected a key like "f2", or a list of keys'),
        ("undo = []", 'keys.undo: expected a key like "f2", or a list of keys'),
        ('undo = ["f2", 3]', 'keys.undo: expected a key like "f2", or a list of keys'),
        ('skip = "f2"', 'keys.skip: expected an action that has a key, found "skip"'),
        ('begin = "b"', 'keys.begin: expected a key that types nothing, found "b"'),
        ('save = " "', 'expected one key like "f2"'),
        ('rough = "s"', 'found "s", which is '),
        ('undo = "f2"\nmenu = "f2"', 'found "F2", which is '),
        ('"[red]x" = "f2"', "an action that has a key"),
    ],
)
async def test_a_wrong_one_is_refused_by_name_and_line_and_the_usual_keys_hold(
    home: Path, clock: Clock, line: str, told: str
) -> None:
    app = opened(home, clock, *line.split("\n"))
    file = home / "family.toml"
    at = file.read_text("utf-8").split("\n").index("[keys]") + 2
    was = file.read_bytes()
    async with app.run_test(size=(160, 45)) as pilot:
        await press(pilot)
        said = app.notices[-1]
        assert said.endswith("Until then the usual keys hold.") and "family.toml, line " in said
        assert (told.replace("line 16", f"line {at}") in said and f"line {at}" in said) or "\n" in line
        assert "Until then the usual keys hold." in " ".join(frame(app).split())
        await press(pilot, "up", "u")
        assert "Undone: came easily." in frame(app)
    assert file.read_bytes() == was


async def test_keys_that_are_no_table_cost_no_morning_either(home: Path, clock: Clock) -> None:
    context = context_at(home, clock, FAMILY._replace(keys=(("", ()),)))
    start_fixed(context)
    assert context.journal is not None
    app = WarmupApp(context, context.journal, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "up")
        assert marks(app)[0] is Mark.FLUENT and "a table with lines like" in app.notices[-1]


def test_a_family_without_such_keys_has_the_keymap_of_textual_alone(home: Path, clock: Clock) -> None:
    context = context_at(home, clock)
    assert context.journal is not None and Family._field_defaults["keys"] == ()
    app = WarmupApp(context, context.journal, clock)
    assert app._keymap == {} and app.notices == ()


def test_the_signs_are_called_what_textual_calls_them() -> None:
    assert all(_character_to_key(sign) == name for name, sign in SIGNS.items())
    assert len({*KEYS}) == len(KEYS) and {*SIGNS} <= {*KEYS}
    assert (key_name("f2"), key_name("semicolon"), key_name("up"), key_name("pageup")) == (
        "F2", ";", "↑", "Pageup",
    )  # fmt: skip


def test_every_usual_key_may_be_one_s_own_and_the_keymap_is_whole(tmp_path: Path) -> None:
    for action in BY_ID.values():
        if action.keys:
            own, wrong = own_keys(((action.id, action.every_key),), tmp_path / "family.toml")
            assert (own, wrong) == ({action.id: action.every_key}, ""), action.id
    whole = textual_keymap({})
    assert whole["undo"] == "u" and whole["undo.z"] == "z"


def test_check_names_what_is_wrong_and_lists_what_may_be_moved(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home.mkdir()
    (home / "family.toml").write_text(
        'school.first_day = 2026-08-31\n[[child]]\nnickname = "Bean"\n[keys]\nando = "f2"\nundo = "f99"\n'
    )
    assert main(["check"]) == WRONG
    out = capsys.readouterr().out
    assert "line 5, keys.ando" in out and "line 6, keys.undo" in out
    assert main(["check", "--keys"]) == DONE
    listed = capsys.readouterr().out
    assert 'undo = ["u", "z"]  # undo' in listed and "\nskip" not in listed
