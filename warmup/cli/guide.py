"""``warmup guide``: the topics of the guide, or one of them."""

from rich.console import Console
from rich.markdown import Markdown

from warmup.cli.printing import Refused, show
from warmup.guide import NAMES, topic, topics
from warmup.text import shown

_WIDEST = 88
"""No line of a topic is longer in a terminal, in columns."""


def guide(name: str, *, terminal: bool) -> None:
    """Print the topic of this name, laid out in a terminal and else as it is written; or list them all.

    Raises Refused where there is no such topic.
    """
    if not name:
        wide = max(map(len, NAMES))
        lines = (f"  {each.name:<{wide}}  {each.about}" for each in topics())
        show(["warmup guide TOPIC tells of one of these:", "", *lines])
        return
    try:
        found = topic(name.casefold())
    except KeyError:
        raise Refused(f"there is no topic {shown(name)} in the guide: it has {', '.join(NAMES)}") from None
    if not terminal:
        show(found.whole.splitlines())
        return
    console = Console()
    console.print(Markdown(found.whole), width=min(console.width, _WIDEST))
