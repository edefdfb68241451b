"""True pixels over the stage: the picture whole and in place, one at most, and none where it is covered."""

import fcntl
import os
import pty
import struct
import subprocess
import sys
import termios
from pathlib import Path
from random import Random
from types import SimpleNamespace
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from textual.driver import Driver

from tests.household import FAMILY, StandingClock, context_at, start_fixed
from tests.pictures.raster import decoded, rendered
from tests.tui.kitty import Graphics, Placement
from tests.tui.showing import Shown, told
from tests.tui.test_child_stage import adult, window
from warmup.pictures import TenFrame
from warmup.pictures.hundred_chart import HundredChart
from warmup.tui import pixels, raster, rasterizer, terminal
from warmup.tui.app import WarmupApp
from warmup.tui.paint import Look
from warmup.tui.panes import placed
from warmup.tui.pixels import Place, shown
from warmup.tui.quiet_app import QuietApp
from warmup.tui.rasterizer import Job, Rasterizer
from warmup.tui.terminal import begun, cell_pixels, speaks

KITTY = {"TERM": "xterm-kitty", "KITTY_WINDOW_ID": "1"}
JOB = Job(placed(TenFrame(7), 40, 24, Look.DARK), (9, 18))


def held(written: str) -> Placement:
    graphics = Graphics()
    graphics.feed(written)
    return graphics.only


# -- what is written


@settings(max_examples=30)
@given(st.binary(min_size=1, max_size=9000), st.tuples(*[st.integers(0, 200)] * 4))
def test_a_picture_arrives_whole_and_in_its_place(png: bytes, place: tuple[int, int, int, int]) -> None:
    assert held(shown(png, Place(*place))) == (png, *place)


def test_the_second_picture_takes_the_place_of_the_first_at_once() -> None:
    graphics = Graphics()
    for png in (b"one", b"two"):
        written = shown(png, Place(0, 0, 2, 1))
        graphics.feed(written)
        # Synchronized output, and the cursor put back (DECSC, DECRC).
        assert written.startswith("\x1b[?2026h") and written.endswith("\x1b8\x1b[?2026l")
        assert written.index("\x1b7") < written.index("\x1b[1;1H")
    assert (graphics.only.png, graphics.most) == (b"two", 1)
    graphics.feed(pixels.GONE)
    assert not graphics.placements


def test_what_the_terminal_gets_is_the_raster_of_the_cells_picture() -> None:
    """Decoded, it has a pixel for each pixel of the cells, and the stage's ground in its corners."""
    for look, ground in ((Look.DARK, (0x14, 0x18, 0x1F)), (Look.LIGHT, (0xFA, 0xF6, 0xEC))):
        job = Job(placed(TenFrame(7), 24, 10, look), (5, 11))
        svg = job.svg()
        rows = decoded(held(shown(raster.png(svg), Place(1, 0, 22, 10))).png)
        assert rows == rendered(svg, 96) and (len(rows[0]), len(rows)) == (22 * 5, 10 * 11)
        assert {rows[y][x] for y in (0, -1) for x in (0, -1)} == {ground}


def test_a_large_place_gets_no_larger_a_raster_than_there_is_time_for() -> None:
    svg = Job(placed(TenFrame(7), 160, 45, Look.DARK), (20, 40)).svg()
    wide, high = (int(ElementTree.fromstring(svg).attrib[name]) for name in ("width", "height"))
    assert wide * high <= 1_500_000 and wide / high == pytest.approx(158 / 86, 0.01)


# -- where


@pytest.mark.parametrize(
    ("environ", "does"),
    [
        (KITTY, True),
        ({"TERM": "xterm-256color", "KITTY_WINDOW_ID": "1"}, True),
        ({"TERM": "xterm-ghostty"}, True),
        ({"TERM": "xterm-256color", "TERM_PROGRAM": "WezTerm"}, True),
        ({"TERM": "xterm-256color"}, False),
        ({"TERM": "linux", "KITTY_WINDOW_ID": "1"}, False),
        ({"TERM": "xterm-256color", "TERM_PROGRAM": "vscode", "KITTY_WINDOW_ID": "1"}, False),
        (KITTY | {"TMUX": "/tmp/tmux-1000/default,1,0"}, False),
        (KITTY | {"STY": "1234.pts-0"}, False),
        ({"TERM": "screen-256color", "KITTY_WINDOW_ID": "1"}, False),
        ({"TERM": "tmux-256color", "KITTY_WINDOW_ID": "1"}, False),
        ({}, False),
    ],
)
def test_only_terminals_that_speak_it_get_it(environ: dict[str, str], does: bool) -> None:
    assert speaks(environ) is does


class InATerminal(QuietApp):
    """An app that is not without one; it does not run."""

    is_headless = False


OFF = {
    "nothing": {},
    "no color": {"NO_COLOR": "1"},
    "256 colors": {"COLORTERM": ""},
    "between": {"TMUX": "/tmp/tmux-1000/default,1,0"},
    "no pixels": {},
    "no library": {},
}


@pytest.mark.parametrize("off", OFF)
def test_it_is_off_without_colors_pixels_or_the_library(off: str, monkeypatch: pytest.MonkeyPatch) -> None:
    for name, value in (KITTY | OFF[off]).items():
        monkeypatch.setenv(name, value)
    for name in ({"TMUX", "STY", "TERM_PROGRAM", "ZELLIJ"}) - OFF[off].keys():
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(terminal, "cell_pixels", lambda: None if off == "no pixels" else (9, 18))
    found = None if off == "no library" else SimpleNamespace()
    monkeypatch.setattr("importlib.util.find_spec", {"resvg_py": found}.get)
    assert (begun(InATerminal(Look.DARK)) is not None) is (off == "nothing")


def test_a_cell_s_pixels_are_those_the_terminal_s_driver_knows(monkeypatch: pytest.MonkeyPatch) -> None:
    """TIOCGWINSZ: rows, columns, and the pixels of all of them across and down (tty_ioctl(4))."""
    ours, theirs = pty.openpty()
    for size, cell in (((24, 80, 720, 432), (9, 18)), ((24, 80, 0, 0), None), ((0, 0, 720, 432), None)):
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", *size))
        with monkeypatch.context() as patched:
            patched.setattr(sys, "__stderr__", SimpleNamespace(fileno=lambda: theirs))
            assert cell_pixels() == cell
    os.close(ours)
    os.close(theirs)
    monkeypatch.setattr(sys, "__stderr__", None)
    assert cell_pixels() is None


@pytest.mark.parametrize("wanted", [True, False])
async def test_it_begins_after_the_first_frame_unless_the_family_says_no(
    home: Path, clock: StandingClock, monkeypatch: pytest.MonkeyPatch, wanted: bool
) -> None:
    context = context_at(home, clock, FAMILY._replace(pixels=wanted))
    start_fixed(context)
    assert context.journal is not None
    app, seen = WarmupApp(context, context.journal, clock), list[str]()
    monkeypatch.setattr(app, "post_display_hook", lambda: seen.append("frame"))
    monkeypatch.setattr(app, "take_pixels", lambda: seen.append("pixels"))
    async with app.run_test() as pilot:
        await pilot.pause()
    assert ("pixels" in seen) is wanted and seen[0] == "frame"


# -- over the stage, and not over anything else


@pytest.mark.slow
async def test_whatever_covers_the_stage_takes_it_away(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24), notifications=True) as pilot:
        terminal = Shown(app)
        graphics = terminal.graphics

        async def there(*keys: str) -> bool:
            for key in keys:
                await pilot.press(key)
            await terminal.settles(pilot)
            assert terminal.is_right()
            return bool(graphics.placements)

        assert await there() and graphics.only.png == told(JOB)
        assert not await there("question_mark"), "help"
        assert await there("escape")
        assert not await there("full_stop"), "the menu"
        assert await there("escape")
        app.notify("a word")
        assert not await there(), "a toast over a part of it"
        app.clear_notifications()
        assert await there() and graphics.only.png == told(JOB)
        assert await there("p") and graphics.only.columns == 78, "the picture alone"
        assert not await there("p", "right"), "a prompt without a picture"
        assert await there("space", "space"), "a cue brings one in"
        assert not await there(*["right"] * 4, "right"), "the close"
    assert not graphics.placements and graphics.most == 1


@pytest.mark.slow
async def test_size_and_look_go_with_the_cells(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        for size in ((120, 36), (60, 20), (40, 12), (80, 24)):
            await pilot.resize_terminal(*size)
            await terminal.settles(pilot)
            assert terminal.is_right() and bool(terminal.graphics.placements) is (size != (40, 12))
        await pilot.press("comma")
        await terminal.settles(pilot)
        assert terminal.graphics.only.png == told(JOB._replace(painted=JOB.painted._replace(look=Look.LIGHT)))
        terminal.cell = 12, 24
        app.screen.refresh()
        await terminal.settles(pilot)
        assert terminal.is_right() and terminal.graphics.most == 1


@pytest.mark.slow
async def test_the_next_pictures_are_made_ahead(app: WarmupApp) -> None:
    """What waits for the next key is there before it: a cue's chart, the picture of the next prompt."""
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        await terminal.settles(pilot)
        await pilot.press("right", "space")
        await terminal.settles(pilot)
        assert not terminal.graphics.placements
        terminal.pixels._raster = lambda _: None
        await pilot.press("space")
        await pilot.pause()
        assert terminal.is_right() and terminal.graphics.only.png.startswith(b"(Painted(picture=HundredChart")


async def test_one_that_cannot_be_made_leaves_the_cells_alone(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        asked = list[Job]()
        terminal.pixels._raster = asked.append
        for _ in range(5):
            app.post_display_hook()
            await pilot.pause(0.01)
        assert not terminal.graphics.came and asked == [JOB], "asked again and again"


async def test_the_child_s_window_has_it_too(home: Path, clock: StandingClock) -> None:
    session, app = adult(home, clock), window(home)
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        app.look()
        await terminal.settles(pilot)
        assert {job.painted.picture for job in terminal.pixels._made} == {TenFrame(7)}, "made at the opening"
        session.next()
        for keys, there in ((), True), (("space",), False), (("space",), True):
            await pilot.press(*keys)
            app.look()
            await terminal.settles(pilot)
            assert terminal.is_right() and bool(terminal.graphics.placements) is there
        assert terminal.graphics.only.columns == 78
    assert not terminal.graphics.placements


# -- leaving


@pytest.mark.slow
async def test_nothing_is_left_when_the_terminal_is_given_back(app: WarmupApp) -> None:
    """Suspended, it comes again afterward, and a picture that was being made then is made again."""
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        await terminal.settles(pilot)
        assert terminal.graphics.placements and app._driver is not None
        app._driver.suspend_application_mode()
        assert not terminal.graphics.placements
        app.post_display_hook()
        assert not terminal.graphics.placements, "drawn while another program has the terminal"
        app._driver.resume_application_mode()
        terminal.pixels._take(JOB, 0, None)
        await terminal.settles(pilot)
        assert terminal.is_right() and terminal.graphics.placements
    assert not terminal.graphics.placements


async def test_back_from_the_shell_all_is_drawn_again(
    app: WarmupApp, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        frames = list[str]()
        monkeypatch.setattr(app, "post_display_hook", lambda: frames.append("frame"))
        app.post_message(Driver.SignalResume())
        await pilot.pause(0.05)
        assert frames


async def test_an_error_leaves_nothing(app: WarmupApp, monkeypatch: pytest.MonkeyPatch) -> None:
    with pytest.raises(RuntimeError):
        async with app.run_test(size=(80, 24)) as pilot:
            terminal = Shown(app)
            await terminal.settles(pilot)
            assert terminal.graphics.placements

            def breaks(*_: object) -> None:
                raise RuntimeError("Hazelnut")

            monkeypatch.setattr("warmup.tui.morning.MorningScreen.act", breaks)
            await pilot.press("right")
            await pilot.pause()
    assert not terminal.graphics.placements


@pytest.mark.slow
async def test_random_keys_never_leave_a_wrong_one(app: WarmupApp) -> None:
    """A few; ``python -m tests.benchmarks.pixels --keys`` presses thousands."""
    chance = Random(7)
    keys = [
        "right",
        "left",
        "space",
        "p",
        "comma",
        "question_mark",
        "full_stop",
        "escape",
        "k",
        "enter",
        "up",
    ]
    async with app.run_test(size=(80, 24)) as pilot:
        terminal = Shown(app)
        for _ in range(30):
            await pilot.press(chance.choice(keys))
            await terminal.settles(pilot)
            assert terminal.is_right()
    assert terminal.graphics.most == 1 and terminal.graphics.came > 5 and not terminal.graphics.placements


# -- the process that rasterizes


def test_the_process_gives_what_the_library_gives_and_may_end_at_any_time() -> None:
    rasters = Rasterizer()
    expected = raster.png(JOB.svg())
    assert rasters(JOB) == rasters(JOB) == expected
    rasters.end()
    assert rasters(JOB) == expected, "started again"
    process = rasters._process
    assert process is not None
    process.kill()
    process.wait()
    assert rasters(JOB) is None and rasters(JOB) == expected
    rasters.end()
    assert rasters._process is None


def test_a_process_that_never_starts_is_not_tried_for_ever(monkeypatch: pytest.MonkeyPatch) -> None:
    tried = list[object]()

    def never(*command: object, **_: object) -> None:
        tried.append(command)
        raise OSError("no such program")

    monkeypatch.setattr(subprocess, "Popen", never)
    rasters = Rasterizer()
    assert [rasters(JOB) for _ in range(6)] == [None] * 6 and len(tried) == rasterizer._FAILURES


def test_letters_without_a_font_are_left_to_the_cells(monkeypatch: pytest.MonkeyPatch) -> None:
    chart = Job(placed(HundredChart(1, 20), 40, 24, Look.DARK), (9, 18)).svg()
    raster._letters_come_out.cache_clear()
    monkeypatch.setattr(raster, "_rasterized", lambda document, written: b"blank")
    assert raster.png(chart) == b"" and raster.png(JOB.svg()) == b"blank"
    raster._letters_come_out.cache_clear()
