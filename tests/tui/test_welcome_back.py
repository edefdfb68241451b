"""The first form where family.toml is gone and the journal is not: the child's marks are found again."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

from tests.household import TODAY, context_at, lived
from warmup.cli.opening import welcomed
from warmup.config.family import Child, default, load
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.model import Mark
from warmup.session.context import open_context
from warmup.tui.app import WarmupApp

Clock = Callable[[], dt.datetime]


def family_lost(home: Path, clock: Clock) -> WarmupApp:
    """The program as it opens after somebody has thrown the family file away, a morning of Bean kept."""
    context = context_at(home, clock)
    lived(context, TODAY - dt.timedelta(1), {"weekday/today": Mark.HESITATED})
    assert context.journal is not None
    context.journal.shut()
    for path in home.glob("family.toml*"):
        path.unlink()
    places, journal = Places(home, home), Journal.open(home, clock)
    family = default(TODAY, journal.names())
    return WarmupApp(
        open_context(places, family, TODAY, journal, saved=False),
        journal,
        clock,
        (),
        lambda family: welcomed(places, family, TODAY, journal),
    )


async def test_the_form_has_the_record_of_the_journal_in_it(home: Path, clock: Clock) -> None:
    app = family_lost(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert load(home / "family.toml").children == (Child("Bean"),)
        assert app.context.history()[0].mark is Mark.HESITATED


async def test_another_nickname_keeps_the_marks(home: Path, clock: Clock) -> None:
    app = family_lost(home, clock)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press(*"Lark", "enter")
        await pilot.pause()
        assert load(home / "family.toml").children == (Child("Lark", journal_name="Bean"),)
        assert app.context.history()[0].mark is Mark.HESITATED
        app.context.editor.prefer(theme="light")
        assert load(home / "family.toml").theme == "light" and app.context.editor.unsaved == ""
