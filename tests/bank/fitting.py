"""What a prompt says and wants must fit its own numbers, its own doing and its own table."""

import re
from collections.abc import Iterator

from tests.bank.reading import sentences
from warmup.engine.things import THINGS
from warmup.english import in_words, number_word
from warmup.model import Prompt
from warmup.pictures.number_row import NumberRow

_TO_HAVE = frozenset({"solid-shapes/find-at-home", "capacity/cups-to-fill"})
"""Items that want a thing in the house to be found or tried, which the words leave open."""
_ON_PAPER = re.compile(r"\b(?:trac|draw|paint|print|fold)")
_LARGER = re.compile(r"\b(?:larger|fuller) (?:number|side|pile|group|one)\b")
_EMPTY = re.compile(r"^(.+?) (?:is|=) \1$")
_COLORS = ("red", "blue", "green", "white", "black", "yellow")
_SOME = re.compile(r"\b[Yy]ou (?:saw|have|see) some\b")


def texts(prompt: Prompt) -> dict[str, str]:
    """All that is said or read around the question."""
    cues = {f"cue {n}": cue.text for n, cue in enumerate(prompt.cues, 1)}
    return {"do": prompt.do, "say": prompt.say, "watch for": prompt.watch_for, **cues}


def unused(prompt: Prompt) -> list[str]:
    """Faults: a thing to have ready that no word takes up, where nothing on the stage stands for it."""
    if prompt.picture is not None or prompt.item in _TO_HAVE:
        return []
    words = " ".join([*texts(prompt).values(), prompt.answer]).lower()
    shown = {cue.picture.kind for cue in prompt.cues if cue.picture}
    return [f"table: {part}, and no word of it" for part in _parts(prompt) if not _used(part, words, shown)]


def _parts(prompt: Prompt) -> list[str]:
    return [part for part in prompt.table.split(", ") if part]


def _used(part: str, words: str, shown: set[str]) -> bool:
    plain = re.sub(r"\(.*?\)|\b(?:an?|the|of|ten|real|loose|or the like|to|and|in|on)\b|\d+", " ", part)
    forms = {form for word in plain.split() for form in (word.removesuffix("s"), re.sub("ves$", "f", word))}
    if any(form in words for form in forms) or (part == "paper" and _ON_PAPER.search(words)):
        return True
    things = [thing for thing in THINGS if thing.pattern.search(part)]
    return any(shown & set(thing.shown) for thing in things)


def larger_of_equals(prompt: Prompt) -> list[str]:
    """Faults: a larger one of two that are alike."""
    given = prompt.given
    pairs = [(given.get(a), given.get(b)) for a, b in (("first", "second"), ("start", "came"))]
    groups = given.get("groups")
    if isinstance(groups, list) and len(groups) == 2:
        pairs.append((groups[0], groups[1]))
    alike = any(one is not None and one == other for one, other in pairs)
    return [f"{where}: {found[0]!r} of two alike" for where, text in texts(prompt).items()
            if alike and (found := _LARGER.search(text))]  # fmt: skip


def facing_both_ways(prompt: Prompt) -> list[str]:
    """Faults: side by side in what the adult does, and from across in what is read."""
    if "same way" not in prompt.do:
        return []
    read = {**texts(prompt), "answer": prompt.answer, "working": prompt.working}
    return [f"{where}: from across" for where, text in read.items()
            if re.search(r"face each other|facing you|[Ff]rom across", text)]  # fmt: skip


def says_nothing(prompt: Prompt) -> list[str]:
    """Faults: a working that says a thing is itself."""
    read = in_words(prompt.working)
    return [f"working: {read!r}"] if _EMPTY.match(read) else []


def color_from_nowhere(prompt: Prompt) -> list[str]:
    """Faults: a color in what counts as right that nobody said or showed."""
    if prompt.picture is not None:
        return []
    asked = f"{prompt.do} {prompt.say}".lower()
    right = f"{prompt.answer} {' '.join(prompt.accept)}"
    return [f"right: {color}, never said" for color in _COLORS
            if re.search(rf"\b{color}\b", right) and not re.search(rf"\b{color}\b", asked)]  # fmt: skip


def some_of_one(prompt: Prompt) -> list[str]:
    """Faults: "some" where there is one."""
    return ["say: some, and it is one"] if prompt.answer == "one" and _SOME.search(prompt.say) else []


def hidden_in_the_open(prompt: Prompt) -> list[str]:
    """Faults: a hidden part in the watch-for or the cues of a question that hides nothing."""
    asked = f"{prompt.do} {prompt.say}".lower()
    hides = (
        re.search(r"\bhid|\bsee\b|\bbag\b|\bcover|\bunder\b|\bclosed?\b", asked) or prompt.skill != "parts"
    )
    return [] if hides else list(_uncovered(prompt))


def _uncovered(prompt: Prompt) -> Iterator[str]:
    for where, text in texts(prompt).items():
        for sentence in sentences(text):
            if re.search(r"\bhidden\b|\b[Uu]ncover\b|\bdo we see\b", sentence):
                yield f"{where}: {sentence!r}, and nothing is hidden"


def one_first(prompt: Prompt) -> list[str]:
    """Faults: advice to begin with those who were there, where fewer were there than came."""
    start, came = prompt.given.get("start"), prompt.given.get("came")
    few = isinstance(start, int) and isinstance(came, int) and start < came
    return ["watch for: counting on from the smaller"] if few and "there first" in prompt.watch_for else []


_AGAIN = re.compile(r"\bagain: “(.+?)(?:…|”)")


def said_again(prompt: Prompt) -> list[str]:
    """Faults: words to be said again that were not said."""
    asked = f"{prompt.do} {prompt.say}".lower()
    return [
        f"cue {n}: {words!r} was not said"
        for n, cue in enumerate(prompt.cues, 1)
        for found in _AGAIN.findall(cue.text)
        for words in found.lower().split(", ")
        if words not in asked
    ]


def one_name(prompt: Prompt) -> list[str]:
    """Faults: one name asked for by how it starts, where two in the row start so."""
    word = prompt.given.get("read")
    rows = [cue.picture.texts for cue in prompt.cues if isinstance(cue.picture, NumberRow)
            and "Which name starts" in cue.text]  # fmt: skip
    alike = [number_word(int(card)) for row in rows for card in row if card.isdigit()]
    same = [name for name in alike if isinstance(word, str) and name[0] == word[0]]
    return [f"cue: {' and '.join(same)} start alike"] if len(same) > 1 else []


def two_of_one_digit(prompt: Prompt) -> list[str]:
    """Faults: both digits of a number that has one."""
    shown = prompt.picture.shows() if prompt.picture else ()
    both = "both digits" in prompt.watch_for and shown and max(map(len, shown)) < 2
    return ["watch for: both digits of one"] if both else []


def sticks_out(prompt: Prompt) -> list[str]:
    """Faults: a warning of one that sticks out, where both begin at one line."""
    lined_up = prompt.picture is not None and getattr(prompt.picture, "starts", None) == ()
    warns = lined_up and "sticks out" in prompt.watch_for
    return ["watch for: it sticks out, and is the longer"] if warns else []


def nothing_between(prompt: Prompt) -> list[str]:
    """Faults: what happened in between, of a story in which nothing happens."""
    still = "part" in prompt.given and "in between" in prompt.watch_for
    return ["watch for: nothing happened in between"] if still else []
