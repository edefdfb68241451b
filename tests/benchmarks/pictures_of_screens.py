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
from tests.config import calendars
from tests.household import (
    FAMILY,
    OPENING,
    TODAY,
    StandingClock,
    context_at,
    grown_easier,
    lived,
    start_fixed,
    start_own,
)
from tests.pictures.examples import EXAMPLES
from warmup.cli import days
from warmup.config.family import Child, CountdownRule, Family, default, year_of
from warmup.journal.rows import MORNING
from warmup.model import LevelId, Mark
from warmup.session.past import PastMorning
from warmup.session.whose_turn import in_order
from warmup.tui.actions import State, actions_of
from warmup.tui.app import WarmupApp
from warmup.tui.calendar_days import CalendarApp
from warmup.tui.on_paper import PaperApp
from warmup.tui.practice import PracticeApp

SIZES = ((80, 24), (60, 20), (120, 36), (160, 45), (40, 12))
"""Columns and rows of the terminals the screens are drawn for."""
FONT = "DejaVu Sans Mono"
"""What stands for the font that the drawings name, where it is not installed."""
PAST = [day for day in year_of(FAMILY).mornings if day < TODAY]
_JULY = dt.date(2027, 7, 5)
_SATURDAY = TODAY + dt.timedelta(3)
_TO_THE_CLOSE = ("next",) * 5


class Scene(NamedTuple):
    """A screen to be drawn: its name, the program as it is opened, and the actions that lead there.

    ``midnight`` turns the clock to the next day before the last of the actions.
    """

    name: str
    app: Callable[[Path, StandingClock], WarmupApp | CalendarApp]
    actions: Sequence[str] = ()
    midnight: bool = False


def _morning(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    context = context_at(home, clock, family)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _opening(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    context = context_at(home, clock, family)
    start_fixed(context, OPENING)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _opening_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _opening(home, clock, FAMILY._replace(theme="light"))


def _light(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, FAMILY._replace(theme="light"))


def _contrast(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, FAMILY._replace(theme="contrast"))


def _reader(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, FAMILY._replace(children=(Child("Bean", reads=True),)))


def _unasked(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, FAMILY._replace(children=(Child("Bean"),)))


def _away(mornings: int) -> Callable[[Path, StandingClock], WarmupApp]:
    """The program after this many mornings without a warm-up."""
    return lambda home, clock: _morning(home, clock, FAMILY._replace(known_until=PAST[-mornings - 1]))


def _saturday(home: Path, clock: StandingClock) -> WarmupApp:
    context = context_at(home, clock, FAMILY._replace(known_until=_SATURDAY), _SATURDAY)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _welcome(home: Path, clock: StandingClock) -> WarmupApp:
    context = context_at(home, clock, default(TODAY))
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock, welcome=lambda _family: context)


def _resting(home: Path, clock: StandingClock) -> WarmupApp:
    """The program with an item that waits to be taught again after this morning's mark."""
    context = context_at(home, clock)
    for back in (2, 1):
        lived(context, TODAY - dt.timedelta(back), {"make-ten/seven-three": Mark.NOT_YET})
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _own(home: Path, clock: StandingClock) -> WarmupApp:
    """The program at a prompt that the family wrote itself."""
    context = context_at(home, clock)
    start_own(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _own_problem(home: Path, clock: StandingClock) -> WarmupApp:
    """The program with a file of own prompts that can't be used."""
    (home / "own.toml").write_text('[[prompt]]\nsay = "Where do we live?"\nanser = "here"\n', "utf-8")
    return _opening(home, clock)


def _calendar(home: Path, clock: StandingClock, family: Family = FAMILY) -> CalendarApp:
    context = context_at(home, clock, family, calendars.TODAY)
    return CalendarApp(context, clock, days.offered(calendars.DISTRICT, family, calendars.TODAY, done=False))


def _calendar_light(home: Path, clock: StandingClock) -> CalendarApp:
    return _calendar(home, clock, FAMILY._replace(theme="light"))


def _calendar_contrast(home: Path, clock: StandingClock) -> CalendarApp:
    return _calendar(home, clock, FAMILY._replace(theme="contrast"))


def _guest(home: Path, clock: StandingClock, name: str = "Grandma") -> WarmupApp:
    """The program as a guest opens it, on an opening."""
    context = context_at(home, clock)
    start_fixed(context, OPENING)
    context.marks_by = name
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock, guest=True)


def _nameless(home: Path, clock: StandingClock) -> WarmupApp:
    return _guest(home, clock, "")


def _on_paper(home: Path, clock: StandingClock, date: dt.date = PAST[-1]) -> WarmupApp:
    context = context_at(home, clock)
    assert context.journal is not None
    return PaperApp(context, context.journal, clock, date)


def _on_paper_on_a_sunday(home: Path, clock: StandingClock) -> WarmupApp:
    return _on_paper(home, clock, dt.date(2027, 2, 28))


_LIVED = FAMILY._replace(
    off=((dt.date(2026, 12, 21), dt.date(2027, 1, 1)), (dt.date(2026, 9, 7), dt.date(2026, 9, 7))),
    held_weeks=(12,),
    skipped_weeks=(20,),
    extra=(dt.date(2027, 3, 6),),
    countdowns=(CountdownRule("the lake", dt.date(2027, 3, 13)),),
)
"""A year with a break, a holiday, a held and a skipped week, a Saturday and a day to look forward to."""


def _year(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, _LIVED)


def _year_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _morning(home, clock, _LIVED._replace(theme="light"))


def _report(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    """The program on the fixed morning, a few mornings after its first ones."""
    context = context_at(home, clock, family)
    for back in (2, 1):
        lived(
            context,
            TODAY - dt.timedelta(back),
            {"make-ten/seven-three": Mark.FLUENT, "count/to-20": Mark.NOT_YET},
        )
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _then(home: Path, clock: StandingClock) -> WarmupApp:
    """The program after some things that were hard in the fall came easily in the winter."""
    context = context_at(home, clock)
    grown_easier(context)
    start_fixed(context)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _practice(
    home: Path, clock: StandingClock, family: Family = FAMILY, level: str = "make-ten:all"
) -> WarmupApp:
    context = context_at(home, clock, family)
    assert context.journal is not None
    return PracticeApp(context, context.journal, clock, LevelId(level))


def _practice_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _practice(home, clock, FAMILY._replace(theme="light"))


def _practice_too_early(home: Path, clock: StandingClock) -> WarmupApp:
    return _practice(home, clock, level="make-ten:take-from-ten")


def _report_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _report(home, clock, FAMILY._replace(theme="light"))


def _children(home: Path, clock: StandingClock, theme: str = "dark", *, together: bool = True) -> WarmupApp:
    """The program of three children, one of whom rests."""
    kids = (Child("Fern", reads=False), Child("Moss", reads=True), Child("Wren", resting=True, prompts=5))
    context = context_at(home, clock, FAMILY._replace(children=kids, theme=theme))
    order = in_order(context.family, TODAY)
    for child in order:
        start_fixed(context.of(child), OPENING)
    assert context.journal is not None
    return WarmupApp(context.of(order[0]), context.journal, clock, takes_turns=together)


def _children_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _children(home, clock, "light")


def _in_turn(home: Path, clock: StandingClock) -> WarmupApp:
    return _children(home, clock, together=False)


def _summer(home: Path, clock: StandingClock) -> WarmupApp:
    """The program on a day in July."""
    context = context_at(home, clock, FAMILY._replace(known_until=_JULY), _JULY)
    assert context.journal is not None
    return WarmupApp(context, context.journal, clock)


def _told_later(home: Path, clock: StandingClock, family: Family = FAMILY) -> WarmupApp:
    app = _morning(home, clock, family)
    app.told_later = lambda: (
        "A second journal lies beside yours: “warmup merge 'journal (2).db'” takes it in.",
        "No weekly copy since November 11. Is the stick in?",
    )
    return app


def _told_later_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _told_later(home, clock, FAMILY._replace(theme="light"))


def _past(home: Path, clock: StandingClock, theme: str = "dark") -> WarmupApp:
    """The program with past mornings, one of them corrected, a note here and there."""
    context = context_at(home, clock, FAMILY._replace(theme=theme))
    asked = ("make-ten/seven-three", "weekday/today", "count-on/across-30", "month/this", "by-tens/to-50")
    for number, day in enumerate(PAST[-14:]):
        lived(context, day, {item: list(Mark)[(number + at) // 3 % 3] for at, item in enumerate(asked)})
    start_fixed(context)
    assert context.journal is not None
    last = PastMorning(context, context.journal, PAST[-1], 1)
    last.correct(0, Mark.NOT_YET)
    last.correct(1, Mark.FLUENT)
    last.write(0, "“Seven and three are ten, like the eggs we had on Sunday!”")
    last.share(0)
    last.write(MORNING, "Slept badly, and wanted the bear to answer first.")
    return WarmupApp(context, context.journal, clock)


def _past_light(home: Path, clock: StandingClock) -> WarmupApp:
    return _past(home, clock, "light")


def _past_contrast(home: Path, clock: StandingClock) -> WarmupApp:
    return _past(home, clock, "contrast")


def scenes() -> Iterator[Scene]:
    """Every screen there is."""
    yield Scene("welcome", _welcome)
    yield Scene("opening", _opening)
    yield Scene("opening-light", _opening_light)
    yield Scene("opening-then-next", _opening, ("next",))
    yield Scene("prompt", _morning)
    yield Scene("prompt-light", _light)
    yield Scene("told-later", _told_later)
    yield Scene("told-later-light", _told_later_light)
    yield Scene("told-later-at-the-close", _told_later, ("fluent", *_TO_THE_CLOSE))
    yield Scene("prompt-contrast", _contrast, ("cue",))
    yield Scene("prompt-left-hand", _morning, ("hand",))
    yield Scene("prompt-of-a-reader", _reader)
    yield Scene("opening-then-nothing-on-the-table", _opening, ("bare",))
    yield Scene("story", _morning, ("story",))
    yield Scene("then-and-now", _then, ("then",))
    yield Scene("then-and-now-too-little", _morning, ("then",))
    for look, app in (("", _practice), ("-light", _practice_light)):
        yield Scene(f"practice{look}", app, ("fluent", "hesitated", "cue"))
        yield Scene(f"practice-end{look}", app, ("fluent", "hesitated", "not_yet", "fluent", "fluent"))
    yield Scene("practice-not-yet", _practice_too_early)
    yield Scene("report", _report, ("report",))
    yield Scene("report-light", _report_light, ("report",))
    yield Scene("report-further-down", _report, ("report", *["line_down"] * 30))
    yield Scene("report-file", _report, ("report", "file"))
    yield Scene("sheets", _report, ("sheets", "line_down"))
    yield Scene("sheets-light", _report_light, ("sheets", "line_down"))
    yield Scene("own", _own)
    yield Scene("own-cues", _own, ("cue", "cue", "cue"))
    yield Scene("own-problem", _own_problem)
    yield Scene("own-problem-then-next", _own_problem, ("next",))
    yield Scene("settings", _morning, ("settings",))
    yield Scene("settings-contrast", _contrast, ("settings",))
    yield Scene("does-the-child-read", _unasked)
    yield Scene("cues", _morning, ("fluent", "cue", "cue"))
    yield Scene("close", _morning, ("fluent", *_TO_THE_CLOSE))
    yield Scene("close-teach-again", _resting, ("not_yet", *_TO_THE_CLOSE))
    for look, app in (("", _morning), ("-light", _light), ("-contrast", _contrast)):
        yield Scene(f"game{look}", app, ("not_yet", *_TO_THE_CLOSE, "play"))
    yield Scene("unlocked-teach-again", _resting, ("not_yet", "unlocked"))
    yield Scene("week", _morning, ("week",))
    yield Scene("week-light", _light, ("week",))
    yield Scene("week-taught", _morning, ("week", "week_after", "lesson", "line_down", "lesson", "lesson"))
    yield Scene("week-review", _morning, ("week", "week_after", "week_after"))
    yield Scene("days-few", _away(2))
    yield Scene("days-question", _away(6))
    yield Scene("days-each", _away(60), ("by_day", "change"))
    yield Scene("menu-at-the-close", _morning, (*_TO_THE_CLOSE, "menu"))
    yield Scene("calendar", _calendar, ("line_down", "tick"))
    yield Scene("calendar-light", _calendar_light)
    yield Scene("calendar-contrast", _calendar_contrast, ("tick_all", "line_down"))
    yield Scene("not-planned", _saturday)
    yield Scene("guest-name", _nameless)
    yield Scene("guest-opening", _guest)
    yield Scene("guest-prompt", _guest, ("next", "cue"))
    yield Scene("guest-menu", _guest, ("next", "menu"))
    yield Scene("guest-help", _guest, ("next", "help"))
    yield Scene("guest-close", _guest, ("next", "fluent", *_TO_THE_CLOSE, "accept"))
    yield Scene("on-paper", _on_paper, ("paper_fluent", "paper_hesitated", "paper_not_yet", "paper_left"))
    yield Scene("on-paper-on-a-sunday", _on_paper_on_a_sunday, ("paper_fluent", "undo"))
    for look, app in (("", _past), ("-light", _past_light), ("-contrast", _past_contrast)):
        yield Scene(f"mornings{look}", app, ("mornings",))
        yield Scene(f"past-morning{look}", app, ("mornings", "choose"))
        yield Scene(f"known{look}", app, ("knows",))
        yield Scene(f"known-level{look}", app, ("knows", "line_down", "choose"))
        yield Scene(f"known-year{look}", app, ("knows", "bars"))
        yield Scene(f"note{look}", app, ("mornings", "choose", "note"))
    yield Scene("midnight", _morning, ("next",), midnight=True)
    for look, several in (("", _children), ("-light", _children_light)):
        yield Scene(f"together-opening{look}", several)
        yield Scene(f"together{look}", several, ("next", "fluent", "cue"))
        yield Scene(f"together-close{look}", several, ("next", *["fluent", "not_yet"] * 5))
    yield Scene("next-child", _in_turn, ("next", *["fluent"] * 5))
    yield Scene("children", _in_turn, ("children",))
    yield Scene("child-form", _in_turn, ("children", "add_child"))
    yield Scene("removal", _in_turn, ("children", "take_out"))
    for look, app in (("", _morning), ("-light", _light), ("-contrast", _contrast)):
        yield Scene(f"guide{look}", app, ("guide",))
        yield Scene(f"guide-topic{look}", app, ("guide", "choose"))
    yield Scene("guide-keys", _morning, ("guide", "line_down", "choose"))
    yield Scene("summer", _summer)
    yield Scene("new-year", _summer, ("new_year",))
    yield Scene("year", _year, ("year",))
    yield Scene("year-light", _year_light, ("year",))
    yield Scene("year-hold", _year, ("year", "column_right", "hold_week"))
    yield Scene("year-week", _year, ("year", "zoom", *["line_down"] * 5))
    yield Scene("year-level-moved", _year, ("year", "zoom", *["line_down"] * 5, "move_level"))
    yield Scene("year-day", _year, ("year", "zoom", "zoom"))
    yield Scene(
        "year-days-off", _year, ("year", "zoom", "zoom", "days_on", "from_day", "days_on", "day_after")
    )
    yield Scene("year-countdown", _year, ("year", "zoom", "zoom", *["day_after"] * 12, "countdown"))
    for action in actions_of((State.PROMPT,)):
        if action.id != "quit":
            yield Scene(f"prompt-then-{action.id}", _morning, ("fluent", action.id))


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
