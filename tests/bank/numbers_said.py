"""How many numbers the adult says in one prompt: a five-year-old keeps three in mind at most.

Common practice, no source; the limit is the bank's own.
"""

import re

from warmup.english import number_word, ordinal_word
from warmup.model import Prompt

MOST = 3

_WORDS = {number_word(n) for n in range(1000) if " " not in number_word(n)}
_ORDINALS = {ordinal_word(n) for n in range(1, 100)}
# "One" that counts nothing: a pronoun or an article of talk.
_PRONOUN = re.compile(
    r"\b(which|that|this|no|each|every|another|the|any|some|last|next|right|wrong|long|short|big|small|red"
    r"|blue|green|full|empty|bare|first|only) one\b"
    r"|\bone (by one|at a time|another|of (these|them|those|the|my|your|each)|is\b(?! more| less)|hides|has)"
    r"|\bone[’']s\b|\bone after another\b|\bat once\b",
    re.IGNORECASE,
)
# "First" and "second" that put jobs in order, and the second of a clock.
_ORDER = {"first"}
# The adult counts aloud from here to there, and so says every number between.
_COUNTS_ALOUD = re.compile(
    r"\bI (?:count|start|begin|run|hop|walk|step|jump|carry|let|take)\b[^.?!]*", re.IGNORECASE
)
_COUNTING = {"count", "count-on", "count-back", "by-tens", "by-fives", "by-twos"}


def without_pronouns(text: str) -> str:
    """The text without each "one" that counts nothing: "which one", "one at a time"."""
    return _PRONOUN.sub(" ", text)


def numbers_said(text: str) -> list[str]:
    """The numbers in the text as they are said, one a phrase: "one hundred twenty" is one number."""
    bare = without_pronouns(text)
    found: list[str] = []
    joined = False
    for token in re.findall(r"\d+(?:st|nd|rd|th)?|[A-Za-z]+(?:-[A-Za-z]+)*|[.,;:?!“”]", bare):
        word = token.lower()
        if word == "hundred" and joined:
            found[-1] += " hundred"
        elif joined and found[-1].endswith("hundred") and word in _WORDS:
            found[-1] += f" {word}"
        elif word in _WORDS or word[0].isdigit() or (word in _ORDINALS and word not in _ORDER):
            found.append(word)
        else:
            joined = False
            continue
        joined = True
    return found


def too_many_numbers(prompt: Prompt) -> list[str]:
    """Faults: more than three numbers said, or a count aloud from here to there."""
    said = numbers_said(prompt.say)
    wrong = [f"{len(said)} numbers said: {', '.join(said)}"] if len(said) > MOST else []
    aloud = _COUNTS_ALOUD.search(prompt.say)
    if prompt.skill in _COUNTING and aloud and numbers_said(aloud[0]):
        wrong.append(f"the adult counts aloud: {aloud[0]!r}")
    return wrong
