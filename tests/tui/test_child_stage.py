"""The child's own window: the picture and nothing else."""

import datetime as dt
import re
from pathlib import Path

import pytest

from tests.household import OPENING, TODAY, StandingClock, context_at, start_fixed
from tests.pictures.examples import EXAMPLES
from tests.tui.frame import frame
from warmup.journal.journal import Journal
from warmup.journal.watching import Watch
from warmup.pictures import Drawing, Picture, TenFrame
from warmup.session.session import Session, resume
from warmup.tui.child_stage import ChildStage
from warmup.tui.paint import Look
from warmup.tui.panes import Stage

SIZES = [(80, 24), (120, 36), (40, 12)]
WORDS = re.compile(r"[^\W\d_]{2,}")


def adult(home: Path, clock: StandingClock) -> Session:
    """The fixed morning as the adult's window has it, at its opening."""
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    assert context.journal is not None
    session = resume(context, context.journal, clock)
    assert session is not None
    return session


def window(home: Path) -> ChildStage:
    """The child's window; it looks only when it is told to, since nothing here waits for a clock."""
    moment = dt.datetime.combine(TODAY, dt.time(7))
    return ChildStage(Watch(home, moment), lambda: moment)


async def test_it_follows_hides_and_ends_with_the_morning(home: Path, clock: StandingClock) -> None:
    app = window(home)
    async with app.run_test(size=(80, 24)) as pilot:

        async def looks() -> str:
            app.look()
            await pilot.pause()
            return frame(app)

        quiet = await looks()
        session = adult(home, clock)
        assert await looks() == quiet and "█" in quiet
        session.next()
        first = await looks()
        assert first != quiet
        await pilot.press("space")
        assert await looks() == quiet
        await pilot.press("h")
        assert await looks() == first
        await pilot.press("space")
        session.next()
        assert await looks() == quiet
        session.next_cue()
        session.next_cue()
        chart = await looks()
        assert "28" in chart and chart not in (first, quiet)
        while not session.at_close:
            session.next()
        assert await looks() not in (first, chart) and app.is_running
        session.close()
        app.look()
        assert app.return_code == 0 and app._exit
    assert app.ended() == 0


async def test_what_is_flashed_starts_hidden(
    home: Path, clock: StandingClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("warmup.model.Prompt.flashed", True)
    session, app = adult(home, clock), window(home)
    async with app.run_test(size=(80, 24)) as pilot:
        quiet = frame(app)
        session.next()
        app.look()
        await pilot.pause()
        assert app.shown.picture == TenFrame(7) and frame(app) == quiet
        await pilot.press("space")
        await pilot.pause()
        assert frame(app) != quiet


@pytest.mark.parametrize("key", ["f1", "ctrl+p", "ctrl+c", "ctrl+q", "q", "question_mark", "enter"])
async def test_no_key_says_a_word(key: str, home: Path, clock: StandingClock) -> None:
    session, app = adult(home, clock), window(home)
    session.next()
    async with app.run_test(size=(80, 24)) as pilot:
        before = frame(app)
        await pilot.press(key)
        await pilot.pause()
        assert app._exit is (key in ("ctrl+c", "ctrl+q", "q")) and (app._exit or frame(app) == before)


def drawn(picture: Picture | None, width: int, height: int) -> str:
    """What a window of this size paints of a picture."""
    stage = Stage()
    stage._picture = picture
    strips = stage._draw(width, height, Look.DARK)
    assert all(strip.cell_length == width for strip in strips) and len(strips) <= height
    return "\n".join(strip.text.rstrip() for strip in strips)


@pytest.mark.slow
@pytest.mark.parametrize("size", SIZES)
def test_no_word_stands_there_but_what_belongs_to_the_picture(size: tuple[int, int]) -> None:
    """A picture that is too large for the window gives way to the hills, never to words."""
    shown = 0
    pictures = [picture for kind in EXAMPLES.values() for picture in kind]
    for picture in pictures:
        told = " ".join(picture.shows())
        text = drawn(picture, *size)
        shown += text != drawn(None, *size)
        assert [word for word in WORDS.findall(text) if word not in told] == [], picture
    assert shown > len(pictures) // 2


def test_a_picture_that_cannot_be_drawn_is_a_quiet_one() -> None:
    class Broken(TenFrame):
        def draw(self, columns: int, rows: int, *, smooth: bool = False) -> Drawing:
            raise RuntimeError("Hazelnut")

    assert drawn(Broken(7), 80, 24) == drawn(None, 80, 24)
    assert drawn(TenFrame(7), 3, 1) == drawn(None, 3, 1) and drawn(None, 0, 0) == ""


async def test_an_error_ends_it_without_a_word(home: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def breaks(*_: object) -> bool:
        raise RuntimeError("Hazelnut")

    monkeypatch.setattr(Watch, "look", breaks)
    app = window(home)
    with pytest.raises(RuntimeError):
        async with app.run_test():
            pass
    assert not app._exit_renderables
    with pytest.raises(RuntimeError):
        app.ended()


def test_it_leaves_the_journal_alone(home: Path, clock: StandingClock) -> None:
    session = adult(home, clock)
    session.journal.shut()
    before = (home / "journal.db").read_bytes()
    watch = Watch(home, dt.datetime.combine(TODAY, dt.time(7)))
    assert watch.look(TODAY) and watch.found
    assert (home / "journal.db").read_bytes() == before and Journal.examine(home) == []
