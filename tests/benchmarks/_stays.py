"""The program for campaigns of keys: it notes that it was told to leave, and stays."""

import sqlite3
from pathlib import Path
from typing import Any, ClassVar

from textual.pilot import Pilot

import warmup
from warmup.tui.app import WarmupApp
from warmup.tui.morning import MorningScreen


class Stays(WarmupApp):
    """The program, which does not leave: ``left`` says how often it was told to."""

    CSS_PATH: ClassVar = [Path(warmup.__file__).parent / "tui" / "morning.tcss"]
    left = 0

    def exit(self, *_what: Any, **_how: Any) -> None:
        """Note it."""
        self.left += 1


def morning_of(app: WarmupApp) -> MorningScreen:
    """The morning on screen."""
    assert isinstance(app.screen, MorningScreen)
    return app.screen


async def shown_anew(app: WarmupApp, pilot: Pilot[int]) -> MorningScreen:
    """Start the program once more on the app's context and journal, instead of the morning on screen."""
    while len(app.screen_stack) > 1:
        await app.pop_screen()
    app.theme = f"warmup-{app.context.family.theme}"
    await app.push_screen(app.new_morning())
    await pilot.pause()
    return morning_of(app)


def marks_on_disk(path: Path) -> dict[tuple[str, str], str]:
    """The standing marks by date and item, read by plain SQL."""
    db = sqlite3.connect(path)
    rows = db.execute(
        "SELECT p.date, p.item, m.mark FROM prompts p JOIN marks m USING (child, date, sitting, position) "
        "WHERE m.mark <> ''"
    ).fetchall()
    db.close()
    return {(date, item): mark for date, item, mark in rows}
