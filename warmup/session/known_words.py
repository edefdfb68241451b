"""What the pages and the command of what a child knows both say."""

from warmup.english import date_words, plural
from warmup.model import Mark
from warmup.session.known import Known, Slip, Stand
from warmup.session.settling import SETTLED_MEANS
from warmup.session.words import BEADS
from warmup.text import quoted

SLIPS = "slips that are open"
GROUPS = (Stand.REVISIT.value, SLIPS, Stand.GROWING.value, Stand.SETTLED.value, Stand.NOT_MET.value)
"""In the order in which they are looked at."""
MEANS = {
    Stand.REVISIT.value: (
        "A second look is worth it: not yet twice in a row, or a wobble after it had settled. A wobble is "
        "ordinary."
    ),
    SLIPS: "Known slips of this age that came up the last time. Each has a thing to do at the table.",
    Stand.GROWING.value: "Asked, and on its way. What comes easily comes back later, what wobbled sooner.",
    Stand.SETTLED.value: SETTLED_MEANS,
    Stand.NOT_MET.value: "In this year’s plan, and no warm-up has asked it.",
}
BEADS_MEAN = "  ".join(
    f"{BEADS[mark]} {words}"
    for mark, words in (
        (Mark.FLUENT, "came easily"),
        (Mark.HESITATED, "hesitated"),
        (Mark.NOT_YET, "not yet"),
        (None, "no mark"),
    )
)
NOTHING_ASKED = "No warm-up has asked anything yet."


def counts_words(known: Known) -> str:
    """How many there are of each, in a line: "2 worth revisiting · 31 growing"."""
    sizes = {stand.value: len(known.standing(stand)) for stand in Stand} | {SLIPS: len(known.slips)}
    in_a_line = {SLIPS: f"{plural(len(known.slips), 'slip')} open"}
    return " · ".join(f"{sizes[name]} {in_a_line.get(name, name)}" for name in GROUPS if sizes[name])


def slip_words(slip: Slip) -> str:
    """A slip in words: what to watch for, what to do, and when it came up."""
    parts = [slip.watch_for, f"At the table: {slip.to_do}" if slip.to_do else ""]
    asked = f"It came up on {date_words(slip.on, weekday=False)}"
    parts.append(f"{asked}: {quoted(slip.say)}" if slip.say else f"{asked}.")
    return " ".join(part for part in parts if part)
