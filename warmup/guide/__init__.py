"""The guide for the adult: a topic a file, in Markdown, for ``warmup guide`` and the page of the same name.

A file begins with its title (``# A morning``) and one sentence about it (``*Said of it in a list.*``), each
with an empty line below; the rest is what there is to read.
"""

from functools import cache
from importlib.resources import files
from typing import NamedTuple

NAMES = (
    "morning", "keys", "hard-days", "new-things", "days", "looking-back", "children", "another-adult",
    "own-prompts", "settings", "stage", "lines", "paper", "records", "safe-keeping", "files", "safety",
    "science",
)  # fmt: skip
"""The topics in the order in which they are listed."""


class Topic(NamedTuple):
    """One of them: its file's name, its title, a sentence about it, and its text in Markdown."""

    name: str
    title: str
    about: str
    text: str

    @property
    def whole(self) -> str:
        """The text under its title."""
        return f"# {self.title}\n\n{self.text}"


@cache
def topic(name: str) -> Topic:
    """The topic of this name. Raises KeyError where there is none."""
    if name not in NAMES:
        raise KeyError(name)
    title, about, text = files(__name__).joinpath(f"{name}.md").read_text("utf-8").split("\n\n", 2)
    return Topic(name, title.removeprefix("# "), about.strip("*"), text)


def topics() -> tuple[Topic, ...]:
    """All of them, in order."""
    return tuple(map(topic, NAMES))
