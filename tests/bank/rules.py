"""The rules of the bank's words, each by its name: what a prompt misses of it, in a line each."""

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType

from tests.bank import fitting
from tests.bank.kitchen import times_sign, unguarded, unkitchenly, unsafe
from tests.bank.numbers_said import too_many_numbers
from tests.bank.reading import spelled
from tests.bank.secrets import more_leaks, narrow, question_tells, watch_for_tells
from tests.bank.today import untrue
from warmup.english import in_words, number_word
from warmup.model import Morning, Prompt, Strand
from warmup.skills import SKILLS, locate

_NUMBERS = {number_word(n) for n in range(121)}
LONG = 12
"""Over so many words a prompt has something to do or to see."""

Rule = Callable[[Prompt, Morning], list[str]]


_MOVES = re.compile(r"(?:Hold up|Jump|Clap|Tap) ")


def long_and_idle(prompt: Prompt) -> list[str]:
    """Faults: more than twelve words, and nothing to do, to lay out or to look at."""
    words = len(spelled(prompt.say))
    if words <= LONG or prompt.do or prompt.table or prompt.picture or _MOVES.match(prompt.say):
        return []
    return [f"{words} words and nothing to do or see"]


def waits(prompt: Prompt) -> list[str]:
    """Faults: a cue that begins with waiting, which the screen says once a morning."""
    return [
        f"cue {n}: {cue.text[:24]!r}"
        for n, cue in enumerate(prompt.cues, 1)
        if re.match(r"Wait\b|Give the eyes time", cue.text) or re.search(r"\. Then: ", cue.text)
    ]


_HURRY = re.compile(r"\b(?:quick|quickly|hurry|fast|faster|race|beat me|ready, set)\b", re.IGNORECASE)


def hurries(prompt: Prompt) -> list[str]:
    """Faults: words to the child, or a cue, that hurry: there is no clock at the table."""
    said = {"say": prompt.say} | {f"cue {n}": cue.text for n, cue in enumerate(prompt.cues, 1)}
    # A hand of a clock is quick, and no child.
    return [
        f"{where}: {found[0]!r}"
        for where, text in said.items()
        if (found := _HURRY.search(text)) and "hand is slow" not in text
    ]


_TO_DO = re.compile(
    r"^(?:Show|Cover|Hide|Put|Lay|Set|Place|Hand|Give|Have|Fill|Draw|Use|Pour|Stand|Sit)\b[^.]*"
    r"\b(?:before|first|count to|then|ready|beforehand|cover)\b|\bcount to two\b"
    r"|\bbefore you ask\b|\bbefore asking\b|\b[Ii]f it is on the table\b|\bbeforehand\b|\bahead of time\b"
)


def instructs(prompt: Prompt) -> list[str]:
    """Faults: what the adult is to do before asking, hidden in the watch-for."""
    return [
        f"watch for: {sentence!r} belongs in do"
        for sentence in re.split(r"(?<=[.?!])\s+", prompt.watch_for)
        if _TO_DO.search(sentence)
    ]


def uncapped(prompt: Prompt) -> list[str]:
    """Faults: a line that begins with a small letter."""
    said = {"say": prompt.say, "do": prompt.do, "watch for": prompt.watch_for}
    said |= {f"cue {n}": cue.text for n, cue in enumerate(prompt.cues, 1)}
    return [f"{where}: {text[:20]!r}" for where, text in said.items() if text.lstrip("“")[:1].islower()]


_NO_WORDS = re.compile(r"[\d=+−×÷<>¢½¼]")


def digits_in_working(prompt: Prompt) -> list[str]:
    """Faults: a working a reading child could read off: digits and signs as the screen shows it."""
    found = _NO_WORDS.findall(in_words(prompt.working))
    return [f"working: {in_words(prompt.working)!r}"] if found else []


_SAID = re.compile(r"^(?:I say )?(?:[a-z-]+, )?([a-z -]+)\. (?:You|Keep)\b", re.IGNORECASE)
_START = re.compile(
    r"\b(?:Count|Start|Count (?:by \w+|back|down)) (?:from|at) ([a-z -]+?)(?: to\b| and\b|\.)"
)


def count_begins_elsewhere(prompt: Prompt) -> list[str]:
    """Faults: a count whose key says the adult's number again, or leaves out where the child is to start."""
    first, *more = re.split(r", | … ", prompt.answer)
    if SKILLS[prompt.skill].strand is not Strand.COUNTING or not more:
        return []
    said, start = _SAID.search(prompt.say), _START.search(prompt.say)
    wrong = [f"the adult said {first}"] if said and said[1].lower() == first else []
    return wrong + ([f"starts at {start[1]}, key at {first}"] if start and start[1] != first else [])


_RECKONS = re.compile(
    r"\bsay the \w+, starting|\bcount \w+ more\b|\bhow many (?!more)\w+ (?:make|are worth)\b|\btrade\b"
    r"|\bhow many more than\b",
    re.IGNORECASE,
)


def close_reckons(prompt: Prompt) -> list[str]:
    """Faults: what may end a morning and wants a row of words, or a sum with nothing to look at."""
    at = locate(prompt.item)
    if at.name not in at.level.ends:
        return []
    found = [f"a close says {found[0]!r}"] if (found := _RECKONS.search(prompt.say)) else []
    a_step = prompt.skill == "neighbors"
    reckoned = prompt.answer in _NUMBERS and not prompt.picture and not a_step
    return found + (["a close asks a sum with no picture"] if reckoned else [])


def one_digit_looked_over(prompt: Prompt) -> list[str]:
    """Faults: the whole of a number that has but one digit."""
    shown = prompt.picture.shows() if prompt.picture else ()
    return ["the whole of one digit"] if "whole number" in prompt.say and max(map(len, shown)) < 2 else []


RULES: Mapping[str, Rule] = MappingProxyType(
    {
        "at most three numbers": lambda p, _: too_many_numbers(p),
        "over 12 words: something to do": lambda p, _: long_and_idle(p),
        "kitchen words": lambda p, _: unkitchenly(p),
        "nothing hot or breakable": lambda p, _: unsafe(p),
        "no danger unsaid": lambda p, _: unguarded((p.say, p.do), p.table.split(", ")),
        "nothing untrue about today": untrue,
        "no answer in do, no first sound": lambda p, _: more_leaks(p),
        "no answer in the watch-for": lambda p, _: watch_for_tells(p),
        "no answer in the question": lambda p, _: question_tells(p),
        "accept holds the others": lambda p, _: narrow(p),
        "no cue begins with waiting": lambda p, _: waits(p),
        "nobody is hurried": lambda p, _: hurries(p),
        "what to do is in do": lambda p, _: instructs(p),
        "working in words": lambda p, _: digits_in_working(p),
        "×, not x": lambda p, _: times_sign(p),
        "a count begins where the words say": lambda p, _: count_begins_elsewhere(p),
        "a close is a name or a movement": lambda p, _: close_reckons(p),
        "a whole number has two digits": lambda p, _: one_digit_looked_over(p),
        "lines begin with a capital": lambda p, _: uncapped(p),
        "nothing to have ready unused": lambda p, _: fitting.unused(p),
        "no larger of two alike": lambda p, _: fitting.larger_of_equals(p),
        "side by side, or from across": lambda p, _: fitting.facing_both_ways(p),
        "a working works something out": lambda p, _: fitting.says_nothing(p),
        "no color from nowhere": lambda p, _: fitting.color_from_nowhere(p),
        "some is more than one": lambda p, _: fitting.some_of_one(p),
        "hidden is what was hidden": lambda p, _: fitting.hidden_in_the_open(p),
        "counting on from the larger": lambda p, _: fitting.one_first(p),
        "again is what was said": lambda p, _: fitting.said_again(p),
        "one name starts so": lambda p, _: fitting.one_name(p),
        "in between something happened": lambda p, _: fitting.nothing_between(p),
        "both digits of two": lambda p, _: fitting.two_of_one_digit(p),
        "what sticks out may be the longer": lambda p, _: fitting.sticks_out(p),
    }
)
"""Every rule by its name."""


def faults_by_rule(prompt: Prompt, morning: Morning) -> dict[str, list[str]]:
    """What a prompt misses, by rule; nothing where it misses nothing."""
    return {name: found for name, rule in RULES.items() if (found := rule(prompt, morning))}
