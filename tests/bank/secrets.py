"""No cue and no picture gives the answer away."""

import re
from collections.abc import Iterable, Iterator, Mapping

from tests.bank.numbers_said import without_pronouns
from warmup.english import MONTHS, WEEKDAYS, number_word, ordinal_word
from warmup.model import Prompt


def told(prompt: Prompt) -> set[str]:
    """Every form in which the answer could be told, as it would be read: words and numerals."""
    forms = {prompt.answer.lower(), *(a.lower() for a in prompt.accept)}
    return forms | {_NUMERALS[form] for form in forms if form in _NUMERALS}


def leaks(prompt: Prompt) -> list[str]:
    """Cues that say the answer and pictures that show it where the question has not said it already."""
    forms = {form for form in told(prompt) if not says(prompt.say, form)}
    wrong = [
        f"cue {n} says {form!r}"
        for n, cue in enumerate(prompt.cues, 1)
        for form in forms
        if says(cue.text, form)
    ]
    if prompt.picture:
        meant = _meant(prompt)
        wrong += [
            f"the picture shows {label!r}"
            for label in prompt.picture.shows()
            if label.lower() in forms and label not in meant
        ]
        wrong += [f"the picture's words say {form!r}" for form in forms if says(prompt.picture.words(), form)]
    for n, cue in enumerate(prompt.cues, 1):
        if cue.picture:
            wrong += [f"cue {n}'s picture marks {x!r}" for x in cue.picture.marked() if x.lower() in forms]
    return wrong


def _meant(prompt: Prompt) -> set[str]:
    """What the picture must show to be asked about: the text to ``read``, the ``cards`` to choose among."""
    cards = {str(card) for card in prompt.given.get("cards", ())}
    return {str(prompt.given.get("read", ""))} | (cards if len(cards) > 1 else set())


def says(text: str, form: str) -> bool:
    """Whether the words of ``form`` stand in the text, not as a part of a longer number word."""
    low = text.lower()
    return form in low and re.search(rf"(?<![\w-]){re.escape(form)}(?![\w-])", low) is not None


# ---- what more can give it away -----------------------------------------------------------------


_BEGUN = re.compile(r"“[^“”]*?([A-Za-z]+(?:-[a-z]+)?)-?…”")


def more_leaks(prompt: Prompt) -> list[str]:
    """The answer in what the adult does, or its first sound in a cue."""
    forms = {form for form in told(prompt) if not says(prompt.say, form)}
    # How long something is seen is no answer: the adult counts under the breath.
    do = prompt.do.replace("count to two", "")
    wrong = [f"do says {form!r}" for form in forms if says(do, form)]
    for number, cue in enumerate(prompt.cues, 1):
        if re.search(r"first sound|(?:starts|begins) with the sound|sounds like", cue.text):
            wrong.append(f"cue {number} asks for the first sound")
        for begun in _BEGUN.findall(cue.text):
            piece = begun.lower()
            if len(piece) <= 4 and any(_begins(form, piece) for form in forms):
                wrong.append(f"cue {number} begins the answer: “{begun}…”")
    return wrong


def _begins(form: str, piece: str) -> bool:
    """Whether the piece is the start of a word of the form, and no whole word of it."""
    words = re.findall(r"[a-z-]+", form)
    if piece in words or (piece in _NUMBERS and len(words) > 1):
        return False
    return any(word.startswith(piece) for word in words)


def watch_for_tells(prompt: Prompt) -> list[str]:
    """The answer in the watch-for, which lies open on the table where the child may hear it read.

    A mix-up may be named by both its names: "six and nine turned over".
    """
    forms = {form for form in told(prompt) if form not in _NONE and not says(prompt.say, form)}
    read = without_pronouns(prompt.watch_for)
    if not (said := [form for form in forms if says(read, form)]):
        return []
    kinds = [kind for kind in _KINDS if any(form.rpartition(" ")[2] in kind for form in forms)]
    if any(sum(says(read, word) for word in kind) > 1 for kind in kinds):
        return []
    return [f"watch for says {form!r}" for form in said]


def question_tells(prompt: Prompt) -> list[str]:
    """The answer in the question, where it is no number and none of the things to choose among."""
    offered = {_bare(str(each)) for each in _flat(prompt.given.values())}
    answer = _bare(prompt.answer)
    number = answer.partition(" ")[0] in _NUMBERS
    if prompt.skill == "patterns" or answer in offered or number or _CHOICE.search(prompt.say):
        return []
    return [f"say holds the answer {answer!r}"] if says(prompt.say, answer) else []


_NUMERALS = {number_word(n): str(n) for n in range(121)}
_NUMBERS = {*_NUMERALS}
_KINDS = (
    _NUMBERS | {str(n) for n in range(121)},
    {ordinal_word(n) for n in range(1, 32)},
    {month.lower() for month in MONTHS},
    {day.lower() for day in WEEKDAYS},
    {"penny", "nickel", "dime", "quarter"},
)
_CHOICE = re.compile(r"\b[Ww]hich|\bor\b|\b[Ww]ho\b|[Hh]ow full|\b[Ii]f the same|flat bin")


def _bare(text: str) -> str:
    """The text without its article."""
    return re.sub(r"^(?:the|an?) ", "", text.lower())


def _flat(values: Iterable[object]) -> Iterator[object]:
    for value in values:
        if isinstance(value, Mapping):
            yield from _flat(value.values())
        elif isinstance(value, tuple | list):
            yield from _flat(value)
        else:
            yield value


_UNITS = re.compile(
    r"[Hh]ow many (?:whole |full |loose )?(tens|ones|bundles|cents|hundreds|loose ones|sticks|straws)\b"
)
_NONE = {"none", "nothing", "no more", "not any", "not one"}


def narrow(prompt: Prompt) -> list[str]:
    """Right answers that ``accept`` does not hold: with the unit, without it, other words for zero."""
    right = {prompt.answer.lower(), *(a.lower() for a in prompt.accept)}
    wrong = []
    if (unit := _UNITS.search(prompt.say)) and prompt.answer in _NUMBERS:
        one = unit[1].removesuffix("s") if prompt.answer == "one" else unit[1]
        if f"{prompt.answer} {one}" not in right:
            wrong.append(f"accept lacks “{prompt.answer} {one}”")
    head, _, noun = prompt.answer.partition(" ")
    counted = re.search(r"[Hh]ow (?:many|much)", prompt.say)
    unit_said = head in _NUMBERS and re.fullmatch(r"[a-z]+", noun) and noun not in {"half", "hundred"}
    if counted and unit_said and head not in right:
        wrong.append(f"accept lacks “{head}”")
    if prompt.answer == "zero" and counted and not right & _NONE:
        wrong.append("accept lacks “none”")
    if prompt.skill in {"numerals", "number-words"} and prompt.answer == "zero" and right & _NONE:
        wrong.append("“none” is no name of the numeral 0")
    return wrong
