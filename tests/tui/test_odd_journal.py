"""What the screen makes of a routine that is damaged, or out of a journal made up by hand."""

import datetime as dt
import sqlite3
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from tests.household import TODAY, context_at, fixed_prompts, start_fixed
from tests.journal.journals import step
from tests.tui.frame import frame
from warmup.journal.journal import MarkRow
from warmup.journal.routine_json import routine_text
from warmup.model import Mark, Routine
from warmup.pictures import Picture
from warmup.pictures.joined_shapes import JoinedShapes
from warmup.pictures.solid_shape import SolidShape
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]


def spoiled(home: Path, clock: Clock, routine: str) -> None:
    """Today's morning begun and marked, and another text in the place of its routine."""
    context = context_at(home, clock)
    start_fixed(context)
    assert context.journal is not None
    row = MarkRow(Mark.NOT_YET, 0, "", False, "")
    step(context.journal, "Bean", TODAY, 1, 0, shown=1, at=0, mark=row)
    context.journal.shut()
    with closing(sqlite3.connect(home / "journal.db", isolation_level=None)) as db:
        db.execute("UPDATE sittings SET routine = ? WHERE date = ?", (routine, TODAY.isoformat()))


def opened(home: Path, clock: Clock) -> WarmupApp:
    context = context_at(home, clock)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


async def test_a_routine_that_cannot_be_read_is_chosen_anew_once_and_says_so(
    home: Path, clock: Clock
) -> None:
    spoiled(home, clock, "[" * 100_000)
    app = opened(home, clock)
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        # Beside the script stands the stage, with words in its picture on some mornings.
        shown = " ".join(word for line in frame(app).splitlines() for word in line[60:].split())
        assert "can't be read any more, so it was chosen anew" in shown and "1 of 8" in shown
        await pilot.press("up")
        await pilot.pause()
    app.journal.shut()
    again = opened(home, clock)
    async with again.run_test(size=(120, 36)) as pilot:
        await pilot.pause()
        assert "chosen anew" not in frame(again), "the new one is gone on with"
        marks = [line.mark for line in again.journal.history("Bean") if line.mark is not None]
        assert marks == [Mark.NOT_YET, Mark.FLUENT], "the mark made before is kept"
        assert len(again.journal.sessions_of("Bean", TODAY)) == 2
    again.journal.shut()


@pytest.mark.parametrize(
    "picture", [SolidShape("dodo"), JoinedShapes("dodo", "dodo", False)], ids=lambda p: p.kind
)
async def test_a_picture_that_cannot_be_drawn_gives_way_to_words(
    home: Path, clock: Clock, picture: Picture
) -> None:
    first, *rest = fixed_prompts()
    prompts = (first._replace(picture=picture), *rest)
    spoiled(home, clock, routine_text(Routine("Bean", context_at(home, clock).morning(), "daily", prompts)))
    app = opened(home, clock)
    async with app.run_test(size=(120, 36)) as pilot:
        await pilot.press("left")
        await pilot.pause()
        assert "chosen anew" not in frame(app) and app.is_running
    app.journal.shut()
