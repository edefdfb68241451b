"""``warmup then``: the first weeks beside the last ones, in sentences."""

from types import SimpleNamespace

from warmup.cli.printing import reading_context, show, show_json
from warmup.config.places import Places
from warmup.session.context import Clock
from warmup.session.settling import year_so_far
from warmup.session.then_and_now import sentences, then_and_now


def then(arguments: SimpleNamespace, clock: Clock, places: Places) -> None:
    """Print what was hard and came easily later; as JSON with what each sentence was worked out of."""
    context, journal = reading_context(places, arguments.child, clock)
    history = year_so_far(context)
    if arguments.json:
        show_json(
            [
                {
                    "level": change.level,
                    "strand": change.strand.value,
                    "then": f"{change.then}",
                    "was": change.was.value,
                    "now": f"{change.now}",
                    "running": change.running,
                    "words": change.words(context.today),
                }
                for change in then_and_now(history)
            ]
        )
    else:
        show(sentences(history, context.today))
    if journal:
        journal.shut()
