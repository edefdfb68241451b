"""The page of a week in lines: a number turns a level's tick."""

from warmup.cli.letters import chosen, of_action, question
from warmup.cli.lines import part, say
from warmup.cli.spoken_first import read
from warmup.cli.week import week_lines
from warmup.schoolyear import WEEKS
from warmup.session.lessons import ticked, turn_tick
from warmup.session.week import Weeks
from warmup.text import shown
from warmup.tui.workspace import Workspace

_TO = (of_action("week_before"), of_action("week_after"))


def a_week(work: Workspace) -> None:
    """Say this week, go to others, and turn the ticks whose numbers are typed, until a line says nothing."""
    week = Weeks(work.context).this_week
    while week := _one_week(work, week):
        pass


def _one_week(work: Workspace, week: int) -> int:
    """Say a week and turn its ticks; the week that is wanted next, 0 for none."""
    work.context.forget()
    page = Weeks(work.context).page(week)
    part(week_lines(page, work.context, numbered=True))
    rows = [row for group in page.groups() for row in group.new]
    while line := read(work, f"Enter back; {question(_TO)}; a number says it was taught, or not yet"):
        match chosen(line, _TO):
            case "week_before":
                return max(1, week - 1)
            case "week_after":
                return min(WEEKS, week + 1)
        if not (line.isascii() and line.isdigit() and 1 <= int(line[:6]) <= len(rows)):
            say(f"{shown(line)} is no number from 1 to {len(rows)}." if rows else "Nothing is new this week.")
            continue
        at = int(line[:6]) - 1
        turned = turn_tick(rows[at], work.context)
        work.keep(turned.what, turned.work, **turned.about)
        rows[at] = ticked(rows[at])
        say(turned.said)
    return 0
