"""The first form where family.toml is gone and the journal is not: the child's marks are found again."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

from tests.household import TODAY, desk_at, lived
from warmup.app import WarmupApp
from warmup.cli import _welcomed
from warmup.desk import records_in, sit_down
from warmup.documents import Places
from warmup.family import Child, default, load
from warmup.journal import Journal
from warmup.morning import Mark

Clock = Callable[[], dt.datetime]


def family_lost(home: Path, clock: Clock) -> WarmupApp:
    """The program as it opens after somebody has thrown the family file away, a morning of Bean kept."""
    desk = desk_at(home, clock)
    lived(desk, TODAY - dt.timedelta(1), {"weekday/today": Mark.HESITATED})
    assert desk.journal is not None
    desk.journal.shut()
    for path in home.glob("family.toml*"):
        path.unlink()
    places, journal = Places(home, home), Journal.open(home, clock)
    family = default(TODAY, records_in(journal))
    return WarmupApp(
        sit_down(places, family, TODAY, journal, saved=False),
        journal,
        clock,
        (),
        lambda family: _welcomed(places, family, TODAY, journal),
    )


async def test_the_form_has_the_record_of_the_journal_in_it(home: Path, clock: Clock) -> None:
    app = family_lost(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert load(home / "family.toml").children == (Child("Bean"),)
        assert app.desk.history()[0].mark is Mark.HESITATED


async def test_another_nickname_keeps_the_marks(home: Path, clock: Clock) -> None:
    app = family_lost(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*"Lark", "enter")
        await pilot.pause()
        assert load(home / "family.toml").children == (Child("Lark", record="Bean"),)
        assert app.desk.history()[0].mark is Mark.HESITATED
        app.desk.prefer(theme="light")
        assert load(home / "family.toml").theme == "light" and app.desk.unsaved == ""
