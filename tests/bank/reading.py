"""The reading bar: how long and how hard a prompt is to hear (pedagogy.toml, readability.bar)."""

import re
from collections.abc import Iterable
from functools import cache

import pysyllables

from tests.bank.drawn import reference
from warmup.english import number_word
from warmup.model import Prompt


def spelled(text: str) -> list[str]:
    """The words a voice says: numerals spelled out, hyphens and apostrophes as the bar wants them."""
    text = re.sub(r"\d+", lambda m: number_word(int(m[0])), text.replace("’", "'"))
    return re.findall(r"[A-Za-z]+(?:'[a-z]+)?", text.replace("-", " "))


def sentences(text: str) -> list[str]:
    """The sentences of a prompt."""
    return [s for s in re.split(r"(?<=[.?!])[”\"]?\s+", text) if s.strip()]


@cache
def syllables(word: str) -> int:
    """Syllables by CMUdict (pysyllables), by the reference table, or by vowel groups where both lack it."""
    word = word.lower()
    table = reference("pedagogy")["readability"]["vocabulary"]
    if word in table:
        return int(table[word][1])
    counted = pysyllables.get_syllable_count(word) or pysyllables.get_syllable_count(word.removesuffix("'s"))
    return counted or max(1, len(re.findall(r"[aeiouy]+", word)) - word.endswith("e"))


def unreadable(text: str) -> list[str]:
    """What of the reading bar a prompt's words miss."""
    bar = reference("pedagogy")["readability"]["bar"]
    words, parts = spelled(text), sentences(text)
    wrong = []
    if len(words) > bar["max_words_per_prompt"]:
        wrong.append(f"{len(words)} words")
    if len(parts) > bar["max_sentences_per_prompt"]:
        wrong.append(f"{len(parts)} sentences")
    longest = max(len(spelled(part)) for part in parts)
    if longest > bar["max_words_per_sentence"]:
        wrong.append(f"a sentence of {longest} words")
    for word in words:
        if syllables(word) > bar["max_syllables_per_word"] and word not in bar["allow_four_syllables"]:
            wrong.append(f"{word}: {syllables(word)} syllables")
        if word.lower() in bar["deny"]:
            wrong.append(f"{word}: not a word for a child")
    if text.count("?") > 1:
        wrong.append("more than one question")
    return wrong


def grade(texts: Iterable[str]) -> tuple[float, float]:
    """Pooled Flesch-Kincaid grade and syllables a word.

    Formula: Kincaid, Fishburne, Rogers and Chissom (1975), Research Branch Report 8-75, as in pedagogy.toml.
    """
    words = parts = beats = 0
    for text in texts:
        said = spelled(text)
        words, parts, beats = (
            words + len(said),
            parts + len(sentences(text)),
            beats + sum(map(syllables, said)),
        )
    return 0.39 * words / parts + 11.8 * beats / words - 15.59, beats / words


_CARELESS = {
    "code in the words": r"[a-z]\.[A-Za-z]|[{}_]",
    "a word twice": r"\b(?!one one)([A-Za-z]+) \1\b",
    "a for an": r"\b[Aa] (?!one\b|u\b|unit)[aeiou]\w*",
    "an for a": r"\b[Aa]n (?!hour\b|f\b)[^aeiou\W]\w*",
    "a space astray": r"  | [.,?!;:]",
}


def careless(prompt: Prompt) -> list[str]:
    """Slips of the pen in what the adult says or reads."""
    said = {
        "do": prompt.do,
        "say": prompt.say,
        "answer": prompt.answer,
        "watch for": prompt.watch_for,
        "table": prompt.table,
    }
    said |= {f"cue {n}": cue.text for n, cue in enumerate(prompt.cues, 1)}
    return [
        f"{where}: {slip}: {found[0]!r}"
        for where, text in said.items()
        for slip, form in _CARELESS.items()
        if (found := re.search(form, text))
    ]
