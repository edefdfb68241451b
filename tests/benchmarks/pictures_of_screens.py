"""Draws every screen and every picture to PNG files, to be looked at.

    python -m tests.benchmarks.pictures_of_screens FOLDER [--size 80x24] [--screens]

The program runs without a terminal on an invented family. Every action of the table is done on the second
prompt, where each has something to do or to say, and the screens that need more than one key have a scene
of their own. The pictures are the sheets of ``contact_sheet``; ``--screens`` leaves them out. PNG needs
resvg-py (``pip install -e '.[look]'``); without it the files are SVG.
"""

import asyncio
import datetime as dt
import tempfile
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from tests.benchmarks import _arguments, contact_sheet
from tests.benchmarks import _screens as at
from tests.household import (
    TODAY,
    StandingClock,
)
from tests.pictures.examples import EXAMPLES
from warmup.tui.actions import State, actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.calendar_days import CalendarApp

SIZES = ((80, 24), (60, 20), (120, 36), (160, 45), (40, 12))
"""Columns and rows of the terminals the screens are drawn for."""
FONT = "DejaVu Sans Mono"
"""What stands for the font that the drawings name, where it is not installed."""
_TO_THE_CLOSE = ("next",) * 5


class Scene(NamedTuple):
    """A screen to be drawn: its name, the program as it is opened, and the actions that lead there.

    ``midnight`` turns the clock to the next day before the last of the actions.
    """

    name: str
    app: Callable[[Path, StandingClock], WarmupApp | CalendarApp]
    actions: Sequence[str] = ()
    midnight: bool = False


def scenes() -> Iterator[Scene]:
    """Every screen there is."""
    yield Scene("welcome", at.welcome)
    yield Scene("opening", at.opening)
    yield Scene("opening-light", at.opening_light)
    yield Scene("opening-then-next", at.opening, ("next",))
    yield Scene("prompt", at.morning)
    yield Scene("prompt-light", at.light)
    yield Scene("told-later", at.told_later)
    yield Scene("told-later-light", at.told_later_light)
    yield Scene("told-later-at-the-close", at.told_later, ("fluent", *_TO_THE_CLOSE))
    yield Scene("prompt-contrast", at.contrast, ("cue",))
    yield Scene("prompt-left-hand", at.morning, ("hand",))
    yield Scene("prompt-of-a-reader", at.reader)
    yield Scene("opening-then-nothing-on-the-table", at.opening, ("bare",))
    yield Scene("story", at.morning, ("story",))
    yield Scene("then-and-now", at.then, ("then",))
    yield Scene("then-and-now-too-little", at.morning, ("then",))
    for look, app in (("", at.practice), ("-light", at.practice_light)):
        yield Scene(f"practice{look}", app, ("fluent", "hesitated", "cue"))
        yield Scene(f"practice-end{look}", app, ("fluent", "hesitated", "not_yet", "fluent", "fluent"))
    yield Scene("practice-not-yet", at.practice_too_early)
    yield Scene("report", at.report, ("report",))
    yield Scene("report-light", at.report_light, ("report",))
    yield Scene("report-further-down", at.report, ("report", *["line_down"] * 30))
    yield Scene("report-file", at.report, ("report", "file"))
    yield Scene("sheets", at.report, ("sheets", "line_down"))
    yield Scene("sheets-light", at.report_light, ("sheets", "line_down"))
    yield Scene("own", at.own)
    yield Scene("own-cues", at.own, ("cue", "cue", "cue"))
    yield Scene("own-problem", at.own_problem)
    yield Scene("own-problem-then-next", at.own_problem, ("next",))
    yield Scene("settings", at.morning, ("settings",))
    yield Scene("settings-contrast", at.contrast, ("settings",))
    yield Scene("does-the-child-read", at.unasked)
    yield Scene("cues", at.morning, ("fluent", "cue", "cue"))
    yield Scene("close", at.morning, ("fluent", *_TO_THE_CLOSE))
    yield Scene("close-teach-again", at.resting, ("not_yet", *_TO_THE_CLOSE))
    for look, app in (("", at.morning), ("-light", at.light), ("-contrast", at.contrast)):
        yield Scene(f"game{look}", app, ("not_yet", *_TO_THE_CLOSE, "play"))
    yield Scene("unlocked-teach-again", at.resting, ("not_yet", "unlocked"))
    yield Scene("week", at.morning, ("week",))
    yield Scene("week-light", at.light, ("week",))
    yield Scene("week-taught", at.morning, ("week", "week_after", "lesson", "line_down", "lesson", "lesson"))
    yield Scene("week-review", at.morning, ("week", "week_after", "week_after"))
    yield Scene("days-few", at.away(2))
    yield Scene("days-question", at.away(6))
    yield Scene("days-each", at.away(60), ("by_day", "change"))
    yield Scene("menu-at-the-close", at.morning, (*_TO_THE_CLOSE, "menu"))
    yield Scene("calendar", at.calendar, ("line_down", "tick"))
    yield Scene("calendar-light", at.calendar_light)
    yield Scene("calendar-contrast", at.calendar_contrast, ("tick_all", "line_down"))
    yield Scene("not-planned", at.saturday)
    yield Scene("guest-name", at.nameless)
    yield Scene("guest-opening", at.guest)
    yield Scene("guest-prompt", at.guest, ("next", "cue"))
    yield Scene("guest-menu", at.guest, ("next", "menu"))
    yield Scene("guest-help", at.guest, ("next", "help"))
    yield Scene("guest-close", at.guest, ("next", "fluent", *_TO_THE_CLOSE, "accept"))
    yield Scene("on-paper", at.on_paper, ("paper_fluent", "paper_hesitated", "paper_not_yet", "paper_left"))
    yield Scene("on-paper-on-a-sunday", at.on_paper_on_a_sunday, ("paper_fluent", "undo"))
    for look, app in (
        ("", at.past),
        ("-light", at.past_light),
        ("-contrast", at.past_contrast),
    ):
        yield Scene(f"mornings{look}", app, ("mornings",))
        yield Scene(f"past-morning{look}", app, ("mornings", "choose"))
        yield Scene(f"known{look}", app, ("knows",))
        yield Scene(f"known-level{look}", app, ("knows", "line_down", "choose"))
        yield Scene(f"known-year{look}", app, ("knows", "bars"))
        yield Scene(f"note{look}", app, ("mornings", "choose", "note"))
    yield Scene("midnight", at.morning, ("next",), midnight=True)
    for look, several in (("", at.children), ("-light", at.children_light)):
        yield Scene(f"together-opening{look}", several)
        yield Scene(f"together{look}", several, ("next", "fluent", "cue"))
        yield Scene(f"together-close{look}", several, ("next", *["fluent", "not_yet"] * 5))
    yield Scene("next-child", at.in_turn, ("next", *["fluent"] * 5))
    yield Scene("children", at.in_turn, ("children",))
    yield Scene("child-form", at.in_turn, ("children", "add_child"))
    yield Scene("removal", at.in_turn, ("children", "take_out"))
    for look, app in (("", at.morning), ("-light", at.light), ("-contrast", at.contrast)):
        yield Scene(f"guide{look}", app, ("guide",))
        yield Scene(f"guide-topic{look}", app, ("guide", "choose"))
    yield Scene("guide-keys", at.morning, ("guide", "line_down", "choose"))
    yield Scene("summer", at.summer)
    yield Scene("new-year", at.summer, ("new_year",))
    yield Scene("year", at.year, ("year",))
    yield Scene("year-light", at.year_light, ("year",))
    yield Scene("year-hold", at.year, ("year", "column_right", "hold_week"))
    yield Scene("year-week", at.year, ("year", "zoom", *["line_down"] * 5))
    yield Scene("year-level-moved", at.year, ("year", "zoom", *["line_down"] * 5, "move_level"))
    yield Scene("year-day", at.year, ("year", "zoom", "zoom"))
    yield Scene(
        "year-days-off",
        at.year,
        ("year", "zoom", "zoom", "days_on", "from_day", "days_on", "day_after"),
    )
    yield Scene("year-countdown", at.year, ("year", "zoom", "zoom", *["day_after"] * 12, "countdown"))
    for action in actions_of((State.PROMPT,)):
        if action.id != "quit":
            yield Scene(f"prompt-then-{action.id}", at.morning, ("fluent", action.id))


async def drawn(scene: Scene, size: tuple[int, int]) -> str:
    """The scene as SVG, as Textual exports it."""
    with tempfile.TemporaryDirectory() as folder:
        clock = StandingClock(dt.datetime.combine(TODAY, dt.time(8)))
        app = scene.app(Path(folder), clock)
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            if scene.midnight:
                clock.turn_to(TODAY + dt.timedelta(1))
            for action in scene.actions:
                app.action_do(action)
                await pilot.pause()
            return app.export_screenshot(title=scene.name)


def write(path: Path, svg: str) -> None:
    """Write the drawing at ``path`` with the suffix .png, or .svg where no renderer is installed."""
    try:
        import resvg_py
    except ImportError:
        path.with_suffix(".svg").write_text(svg, "utf-8")
    else:
        path.with_suffix(".png").write_bytes(
            bytes(resvg_py.svg_to_bytes(svg_string=svg, monospace_family=FONT))
        )


def main(folder: Path, sizes: Sequence[tuple[int, int]], *, pictures: bool) -> None:
    """Draw all of it into ``folder``."""
    _arguments.all_colors()
    folder.mkdir(parents=True, exist_ok=True)
    for scene in scenes():
        for size in sizes:
            name = f"screen-{scene.name}-{size[0]}x{size[1]}"
            write(folder / name, asyncio.run(drawn(scene, size)))
    if pictures:
        for name, svg in contact_sheet.sheets([], EXAMPLES):
            write(folder / f"picture-{name}", svg)
    print(f"{len(list(folder.iterdir()))} files in {folder}")


def _size(text: str) -> tuple[int, int]:
    columns, _, rows = text.partition("x")
    return _arguments.positive(columns), _arguments.positive(rows)


if __name__ == "__main__":
    asked = _arguments.parser("pictures_of_screens", __doc__)
    asked.add_argument("folder", type=Path, metavar="FOLDER", help="where the files go")
    asked.add_argument("--size", type=_size, metavar="COLUMNSxROWS", help="one size instead of five")
    asked.add_argument("--screens", action="store_true", help="the screens alone, without the pictures")
    given = asked.parse_args()
    main(given.folder, [given.size] if given.size else SIZES, pictures=not given.screens)
