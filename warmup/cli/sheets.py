"""``warmup sheets``: lists the kinds of sheets, or writes some as a page to print."""

import datetime as dt
from collections.abc import Sequence
from types import SimpleNamespace

from warmup.cli.kept_commands import Opened, for_paper
from warmup.cli.printing import Refused, complain, reading_context, show, whole_path
from warmup.config.places import Places, there
from warmup.english import plural
from warmup.model import Routine
from warmup.report.keeping import keep, unused
from warmup.session.context import Clock, Context
from warmup.sheets.base import Sheet
from warmup.sheets.html import Side, document
from warmup.sheets.kinds import kinds
from warmup.sheets.making import TITLE, day_of, file_name, sides_of
from warmup.sheets.paper import Paper
from warmup.text import clean, did_you_mean, quoted

WEEK, TODAY, GAMES, ALL = "week", "today", "games", "all"
"""What may be said in the place of a kind."""
HAVE_ALL = "You have all the sheets of this week on paper."
NO_GAMES = "There is no game for this week with what the house has."
NONE_USED = "Nothing this week wants a sheet."


def run(arguments: SimpleNamespace, clock: Clock, places: Places, opened: Opened) -> None:
    """List the kinds, or write those that are named into a new file, and tick them where that is wanted."""
    names = arguments.kinds
    if not names:
        if arguments.printed:
            raise Refused("--printed checks sheets off: say which")
        show(_listed())
    elif TODAY in names:
        _today(arguments, clock, places, opened)
    elif GAMES in names:
        _games(arguments, clock, places)
    elif arguments.printed:
        if not there(places.config / "family.toml"):
            raise Refused("there is no family.toml yet to keep that in; run warmup once, and it is made")
        with opened(places, arguments.child, clock) as (context, journal, _welcome):
            wanted = _wanted(arguments, context)
            if _write(arguments, context, wanted):
                _tick(context, journal, wanted)
    else:
        context, journal = reading_context(places, arguments.child, clock)
        _write(arguments, context, _wanted(arguments, context))
        if journal:
            journal.shut()


def _wanted(arguments: SimpleNamespace, context: Context) -> tuple[str, ...]:
    """The ids of the kinds that are named, each once; of ``week`` those not printed yet."""
    wanted: list[str] = []
    for name in arguments.kinds:
        match name:
            case "week":
                from warmup.sheets.needed import not_printed, this_week

                used = this_week(context)
                wanted += not_printed(context, used)
                if len(arguments.kinds) == 1 and not wanted:
                    show([HAVE_ALL if used else NONE_USED])
            case "all":
                wanted += kinds()
            case _ if name in kinds():
                wanted.append(name)
            case _:
                raise Refused(f"no sheet {name!r}{did_you_mean(name, (*kinds(), WEEK, TODAY, GAMES, ALL))}")
    return tuple(dict.fromkeys(wanted))


def _write(arguments: SimpleNamespace, context: Context, names: Sequence[str]) -> bool:
    """Write the page, where there is anything on it; whether there was."""
    day = day_of(context, arguments.date or context.today)
    sides = [*sides_of(names, day)]
    if sides:
        _keep(arguments, context.today, sides, TITLE)
    return bool(sides)


def _keep(arguments: SimpleNamespace, today: dt.date, sides: Sequence[Side], title: str) -> None:
    """Put it into the file, and show it in the browser where that is asked for."""
    target = whole_path(arguments.out or file_name(today), "the sheets")
    if not arguments.out:
        # A second page of the same day, such as the games after the frames.
        target = unused(target)
    keep(target, document(sides, Paper[arguments.paper.upper()], title))
    show([f"{clean(str(target))}: {len(sides)} {plural(len(sides), 'page')}. Print at 100 %."])
    if arguments.open:
        import webbrowser

        if not webbrowser.open(target.as_uri()):
            complain("no browser could be opened: open that file in one.")


def _tick(context: Context, journal: object, names: Sequence[str]) -> None:
    from warmup.journal.journal import Journal
    from warmup.session import undoing
    from warmup.sheets.needed import tick

    assert isinstance(journal, Journal)
    ticks = [tick(name, context.today) for name in names]
    undoing.logged(context, journal, undoing.PRINTED, lambda: context.editor.print_sheets(ticks), {})
    show([f"Checked off as printed: {', '.join(names)}."])


def _today(arguments: SimpleNamespace, clock: Clock, places: Places, opened: Opened) -> None:
    """Today's prompts on one page, kept as the brief is."""
    if len(arguments.kinds) > 1 or arguments.printed:
        raise Refused("today goes alone: its prompts are another page each day")
    for_paper(
        arguments,
        clock,
        places,
        opened,
        lambda routine, context: _keep(arguments, context.today, [_fridge(routine, context)], TITLE),
    )


def _games(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """This week's table games on one page."""
    from warmup.session.gaming import told, week_games
    from warmup.sheets import games

    if len(arguments.kinds) > 1 or arguments.printed:
        raise Refused("games go alone: they are others each week")
    context, journal = reading_context(places, arguments.child, clock)
    found = [games.Told(each.game.name, tuple(told(each))) for each in week_games(context)]
    if journal:
        journal.shut()
    if not found:
        show([NO_GAMES])
        return
    sheet = Sheet("This week’s two-minute games", "", lambda _day: ())
    _keep(arguments, context.today, [Side(sheet, games.page(found))], TITLE)


def _fridge(routine: Routine, context: Context) -> Side:
    from warmup.cli.brief import TICK, foot_lines, head_words
    from warmup.cli.plain import picture_words
    from warmup.sheets import fridge

    entries = []
    for prompt in routine.prompts:
        picture = picture_words(prompt, prompt.picture, answers=False) if prompt.picture else ""
        cues = (f"Cue: {prompt.cues[0].text}", f"Then: {prompt.cues[1].text}")
        shown = (f"Picture: {picture}.",) if picture else ()
        entries.append(
            fridge.Entry(f"{prompt.do} {quoted(prompt.say)}".strip(), (*shown, *cues), prompt.answer)
        )
    opening = [f"To begin with: {routine.opening.say}"] if routine.opening else []
    head = (head_words(routine, context), *opening, TICK.format(routine.morning.date))
    # What goes on in a second line is set in there, and has room here.
    foot = "\n".join(foot_lines(routine, context)).replace("\n ", " ").splitlines()
    page = fridge.page(head, entries, (*foot, fridge.FOLD))
    return Side(Sheet("Today’s warm-up", "", lambda _day: ()), page)


def _listed() -> Sequence[str]:
    wide = max(map(len, kinds()))
    lines = [f"  {name:<{wide}}  {sheet.about}" for name, sheet in kinds().items()]
    return [
        "warmup sheets KIND ... makes a page to print of these, or of all; warmup sheets week of what",
        "this week uses and you do not have yet; warmup sheets today of today’s prompts, warmup sheets games",
        "of the week’s two-minute games.",
        "",
        *lines,
    ]
