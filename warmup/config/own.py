"""A family's own prompts: ``own.toml`` beside family.toml, ``[[prompt]]`` after ``[[prompt]]``.

Each has ``say`` and ``answer``, and may have ``name`` (what it is remembered by; else made from the words to
say), ``cues`` (three at most), ``accept`` (other right answers), ``watch_for``, ``table``, ``strand`` and
``week`` (the first it may come in). All are plain text: nothing in them is ever obeyed.
"""

from warmup.config.places import Places
from warmup.config.toml_file import Document, Missing, read
from warmup.model import OWN_SKILL, Strand
from warmup.schoolyear import WEEKS
from warmup.skills.own import CUES, LONGEST_NAME, Own, OwnPrompt, name_from, own
from warmup.text import shown

NAME = f"{OWN_SKILL}.toml"
FORMAT = 1
MOST = 100
"""The most prompts that a file may have."""
LONGEST, LONGEST_ANSWER, LONGEST_THING = 160, 120, 60
"""The longest of what is said, of an answer or a cue, and of what is to lie on the table, in characters."""
MOST_ANSWERS = 10
_ADVICE = "Fix that line; until then none of your own prompts is asked."
_KEYS = ("name", "say", "answer", "cues", "accept", "watch_for", "table", "strand", "week")


def load_own(places: Places) -> Own | None:
    """The family's own prompts; None where there is no file, or none in it.

    Raises ``FileProblem`` where the file can't be used; then none of it is.
    """
    try:
        found = parse(read(places.config / NAME, _ADVICE))
    except Missing:
        return None
    return own(found) if found else None


def parse(file: Document) -> tuple[OwnPrompt, ...]:
    """The prompts a document describes, in its order, or a ``FileProblem`` that names the line."""
    file.check_format(FORMAT)
    file.only(("format", "prompt"))
    if isinstance(file.data.get("prompt"), dict):
        raise file.problem(("prompt",), "[[prompt]] in two pairs of brackets", "one pair")
    found: list[OwnPrompt] = []
    for n in range(file.length("prompt", most=MOST)):
        found.append(_prompt(file, n, [each.name for each in found]))
    return tuple(found)


def _prompt(file: Document, n: int, taken: list[str]) -> OwnPrompt:
    at = ("prompt", n)
    file.only(_KEYS, *at)
    say = file.name(*at, "say", most=LONGEST)
    strands = [strand.value for strand in Strand]
    return OwnPrompt(
        _name(file, n, say, taken),
        say,
        file.name(*at, "answer", most=LONGEST_ANSWER),
        _texts(file, *at, "cues", most=len(CUES)),
        Strand(file.choice(*at, "strand", among=strands, default=Strand.COUNTING.value)),
        file.whole(*at, "week", least=1, most=WEEKS, default=1),
        file.name(*at, "watch_for", most=LONGEST, default=""),
        file.name(*at, "table", most=LONGEST_THING, default=""),
        _texts(file, *at, "accept", most=MOST_ANSWERS),
    )


def _texts(file: Document, *keys: str | int, most: int) -> tuple[str, ...]:
    return tuple(file.name(*keys, n, most=LONGEST_ANSWER) for n in range(file.length(*keys, most=most)))


def _name(file: Document, n: int, say: str, taken: list[str]) -> str:
    """The name that is written, else one made from the words to say; no other prompt's."""
    keys = ("prompt", n, "name")
    source = "name" if file.has(*keys) else "say"
    written = file.name(*keys, most=LONGEST_NAME) if source == "name" else say
    name = name_from(written)
    if not name:
        raise file.problem(("prompt", n, source), "at least one letter or digit", shown(written))
    if name in taken:
        raise file.problem(keys, "a name of its own", f"{shown(name)}, as prompt {taken.index(name) + 1} has")
    return name
