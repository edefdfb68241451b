"""What every prompt of every skill must keep to: one place to draw the bank and to judge it.

Run ``python -m tests.bank make-ten`` to read a skill's prompts and what is wrong with them.
"""

import argparse
import re
import tomllib
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from importlib import import_module
from pathlib import Path
from typing import Any

import pysyllables

from tests.mornings import many
from warmup import skills
from warmup.draw import Draw
from warmup.morning import Prompt
from warmup.words import number_word

REFERENCES = Path(__file__).parent / "references"


@cache
def reference(name: str) -> dict[str, Any]:
    """A table of published check values from tests/references."""
    return tomllib.loads((REFERENCES / f"{name}.toml").read_text("utf-8"))


def prompts(skill: str, count: int) -> Iterator[Prompt]:
    """``count`` prompts of each item of a skill, over two years of dates and every school day number."""
    names = [f"{skill}/{name}" for level in skills.SKILLS[skill].levels for name in level.items]
    for name in names:
        able = [m for m in many(max(288, count)) if skills.askable(name, m)]
        for n in range(count):
            yield skills.prompt(name, able[n % len(able)], Draw("bank", name, n))


# ---- reading aloud: pedagogy.toml, readability.bar -------------------------------------------------


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


# ---- cues and pictures: none gives the answer away -------------------------------------------------


def told(prompt: Prompt) -> set[str]:
    """Every form in which the answer could be told, as it would be read: words and numerals."""
    forms = {prompt.answer.lower(), *(a.lower() for a in prompt.accept)}
    for number in range(121):
        if number_word(number) in forms:
            forms.add(str(number))
    return forms


def leaks(prompt: Prompt) -> list[str]:
    """Cues that say the answer and pictures that show it where the question has not said it already."""
    forms = {form for form in told(prompt) if not _says(prompt.say, form)}
    wrong = [
        f"cue {n} says {form!r}"
        for n, cue in enumerate(prompt.cues, 1)
        for form in forms
        if _says(cue.text, form)
    ]
    if prompt.picture:
        meant = _meant(prompt)
        wrong += [
            f"the picture shows {label!r}"
            for label in prompt.picture.shows()
            if label.lower() in forms and label not in meant
        ]
        wrong += [
            f"the picture's words say {form!r}" for form in forms if _says(prompt.picture.words(), form)
        ]
    for n, cue in enumerate(prompt.cues, 1):
        if cue.picture:
            wrong += [f"cue {n}'s picture marks {x!r}" for x in cue.picture.marked() if x.lower() in forms]
    return wrong


def _meant(prompt: Prompt) -> set[str]:
    """What the picture must show to be asked about: the text to ``read``, the ``cards`` to choose among."""
    cards = {str(card) for card in prompt.given.get("cards", ())}
    return {str(prompt.given.get("read", ""))} | (cards if len(cards) > 1 else set())


def _says(text: str, form: str) -> bool:
    """Whether the words of ``form`` stand in the text, not as a part of a longer number word."""
    return re.search(rf"(?<![\w-]){re.escape(form)}(?![\w-])", text.lower()) is not None


# ---- answers, recomputed away from the skills ------------------------------------------------------


def recomputed(prompt: Prompt) -> str | None:
    """What code that does not import the skills says against the answer; None when it agrees."""
    oracle = import_module(f"tests.oracles.{prompt.skill.replace('-', '_')}")
    return oracle.check(prompt.item.partition("/")[2], dict(prompt.given), prompt.answer, prompt.accept)


# ---- a report to read ------------------------------------------------------------------------------


@dataclass
class Report:
    """What was found in one skill."""

    made: int = 0
    wrong: Counter[str] = field(default_factory=Counter)
    says: list[str] = field(default_factory=list)
    distinct: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))
    answers: dict[str, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    wordings: dict[str, set[str]] = field(default_factory=lambda: defaultdict(set))


def judge(skill: str, count: int) -> Report:
    """Draw ``count`` prompts an item and judge each."""
    report = Report()
    for p in prompts(skill, count):
        report.made += 1
        report.says.append(p.say)
        report.distinct[p.level].add(f"{p.say}|{sorted(p.given.items(), key=str)}")
        report.answers[p.item][p.answer] += 1
        report.wordings[p.level].add(p.wording)
        faults = [*unreadable(p.say), *careless(p), *leaks(p)]
        complaint = recomputed(p)
        if complaint:
            faults.append(f"answer: {complaint}")
        if p.seconds not in (20, 40, 60):
            faults.append(f"{p.seconds} seconds")
        if not all((p.say, p.answer, p.working, p.watch_for, all(c.text for c in p.cues), len(p.cues) == 3)):
            faults.append("an empty field")
        for fault in faults:
            report.wrong[f"{p.item} [{p.wording}]: {fault} — {p.say} → {p.answer}"] += 1
    return report


def main(names: list[str]) -> None:
    """Print prompts, faults, and how the answers spread."""
    for name in names or list(skills.SKILLS):
        report = judge(name, 200)
        for item in report.answers:
            for n in range(2):
                able = [m for m in many(288) if skills.askable(item, m)]
                p = skills.prompt(item, able[n * 41 % len(able)], Draw("read", item, n))
                print(f"\n{p.item} [{p.wording}] {p.seconds}s guess {p.guess}\n  say    {p.say}")
                print(f"  answer {p.answer}  {p.accept}\n  work   {p.working}\n  watch  {p.watch_for}")
                print(f"  table  {p.table}\n  given  {dict(p.given)}")
                for cue in p.cues:
                    print(f"  cue    {cue.text}" + (f"  [{cue.picture.words()}]" if cue.picture else ""))
                print(f"  see    {p.picture.words() if p.picture else '-'}")
        level, beat = grade(report.says)
        print(f"\n== {name}: {report.made} prompts; grade {level:.2f}, {beat:.2f} syllables a word")
        print(
            "   distinct:",
            {k: len(v) for k, v in report.distinct.items()},
            "ways:",
            {k: len(v) for k, v in report.wordings.items()},
        )
        print("   answers:", {k: v.most_common(4) for k, v in report.answers.items()})
        for fault, times in report.wrong.most_common(20):
            print(f"   WRONG x{times} {fault}")


if __name__ == "__main__":
    asked = argparse.ArgumentParser(prog="python -m tests.bank", description=__doc__)
    asked.add_argument("skills", nargs="*", choices=[[], *skills.SKILLS], metavar="SKILL", help="(all)")
    main(asked.parse_args().skills)
