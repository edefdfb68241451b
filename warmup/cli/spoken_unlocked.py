"""The list of what may be asked, in lines: a number turns a row."""

from warmup.cli.lines import part, say
from warmup.cli.spoken_first import read
from warmup.session.pausing import paused, until_words
from warmup.session.turning import heading, rows_of, turn
from warmup.text import shown
from warmup.tui.workspace import Workspace


def what_may_be_asked(work: Workspace) -> None:
    """Say the rows and turn those whose numbers are typed, until a line says nothing."""
    work.context.forget()
    rows = rows_of(work.context)
    until = paused(work.context)
    part([heading(work.context), *([until_words(until)] if until else [])])
    say(*(f"{n}. {row.words(wide=True)}" for n, row in enumerate(rows, start=1)))
    while line := read(work, "Enter back; a number holds back, lets come or says it was taught again"):
        if not (line.isascii() and line.isdigit() and 1 <= int(line[:6]) <= len(rows)):
            say(f"{shown(line)} is no number from 1 to {len(rows)}.")
            continue
        at = int(line[:6]) - 1
        turned = turn(rows[at], work.context)
        work.keep(turned.what, turned.work, **turned.about)
        rows[at] = rows[at].after()
        say(turned.said)
