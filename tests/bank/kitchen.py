"""The words of an American kitchen, and nothing hot or breakable on the list.

Common practice, no source: which of two words a United States family says at the table.
"""

import re
from collections.abc import Iterable, Iterator

from warmup.model import Prompt

# What is not said, and what is said in its place.
INSTEAD = {
    r"ten-(?:hole )?trays?|trays? of ten": "ten frame",
    r"holes?(?= (?:in|of) (?:the|a) (?:tray|frame))|empty holes?": "empty places",
    r"number bonds?|\bbonds?": "parts",
    r"number friends?|friends? of \w+|ten[’']s friend|its friend": "partner",
    r"mates?": "partner",
    r"clothes-?pegs?|pegs?|clips? from the line": "clothespins",
    r"(?<!muffin )tins?": "can",
    r"jugs?": "pitcher",
    r"buns?": "rolls",
    r"half-way": "halfway",
    r"on the spot": "in place",
    r"carry on|carries on": "keep going",
    r"lay(?:s|ing)? the table|table is laid": "set the table",
    r"on the (?:left|right) of": "to the left of, to the right of",
    r"this morning|good morning": "today",
    r"maths": "math",
    r"colou?red?-in": "colored in",
    r"\w*colour\w*": "color",
    r"grey\w*": "gray",
    r"favourite": "favorite",
    r"neighbour\w*": "neighbor",
    r"(?:centi|milli)?metres?|centre\w*": "meter, center",
    r"practise\w*": "practice",
    r"towards|afterwards|backwards|forwards|upwards|downwards": "toward, afterward, backward ...",
    r"whilst|amongst": "while, among",
    r"queue\w*": "line",
    r"tid(?:y|ies|ied) up|tidy": "clean up",
    r"fetch\w*": "get",
    r"shall": "will, should",
    r"have(?:n[’']t)? (?:we|you|I|they) got|(?:has|have|[’']ve) got|got (?:no|a|some)\b": "have",
    r"cupboards?": "shelf, cabinet",
    r"trousers|jumpers?|biscuits?|sweets|autumn|holidays?|rubbish|mum\b|rubbers?|torch": "the American word",
    r"plaits?": "braid",
    r"squared paper": "graph paper",
    r"brim(?:ful)?": "top",
    r"rouse\w*": "wake",
}  # fmt: skip

# "Round" stays as an adjective ("a round plate", "is it round?") and goes as "around".
_AROUND = re.compile(
    r"\bround (?:the|a|an|it|and|your|my|them|in|to|here|this|its|one)\b"
    r"|\b(?:turn|turns|turned|go|goes|walk|walks|run|look|all|way|sit|stand|hop|pass|come|comes) round\b"
    r"|\b(?:turn|go|walk|pass|turns) \w+ round\b",
    re.IGNORECASE,
)
# "The day after" that goes nowhere: "the day after Monday" is a fair question, "eat it the day after" none.
_DAY_AFTER = re.compile(r"\bthe day (?:after|before)(?=[.?,!])|\bthe following day\b", re.IGNORECASE)

HOT_OR_BREAKABLE = re.compile(
    r"\b(?:pots?|pans?|irons?|glass(?:es)?|knife|knives|stoves?|kettles?|candles?|ovens?|vases?|lamps?|mirrors?"
    r"|toasters?|light bulbs?|scissors|china|boiling|steam|hot (?:tea|soup|water|cocoa|chocolate|drink)|hot"
    r"|teapots?|griddles?|eggshells?)\b",
    re.IGNORECASE,
)

# What lies on a table with a danger that its name does not tell, and the word beside it that does.
CARED_FOR = {
    r"can|soup can": "unopened",  # the rim of an open one is sharp
    r"toast|pizza|pancake|tortilla": "cooled",
    r"grapes?": "in quarters",
}
NO_PLASTIC_BAG = re.compile(r"\b(?:in|into|from|out of) a bag\b", re.IGNORECASE)
"""A bag to reach into, of no said kind: plastic ones suffocate."""

_FORMS = {better: re.compile(rf"\b(?:{form})\b", re.IGNORECASE) for form, better in INSTEAD.items()}
# Few texts have any of them: one look says so.
_ANY_FORM = re.compile(rf"\b(?:{'|'.join(INSTEAD)})\b", re.IGNORECASE)


def spoken(prompt: Prompt) -> Iterator[tuple[str, str]]:
    """What the adult says aloud, with where it stands."""
    yield "say", prompt.say
    for number, cue in enumerate(prompt.cues, 1):
        yield f"cue {number}", cue.text


def read(prompt: Prompt) -> Iterator[tuple[str, str]]:
    """Every text of a prompt that the adult says or reads, with where it stands."""
    yield from spoken(prompt)
    yield "do", prompt.do
    yield "answer", "; ".join((prompt.answer, *prompt.accept))
    yield "working", prompt.working
    yield "watch for", prompt.watch_for
    yield "table", prompt.table
    if prompt.picture:
        yield "picture", prompt.picture.words()
    for number, cue in enumerate(prompt.cues, 1):
        if cue.picture:
            yield f"cue {number}'s picture", cue.picture.words()


_FRAMED = {"make-ten", "parts", "teens", "subitize", "add-subtract"}
_TRAY = re.compile(r"(?<!egg )\btrays?\b", re.IGNORECASE)


def unkitchenly(prompt: Prompt) -> list[str]:
    """Faults: words nobody says at an American breakfast table."""
    wrong = []
    for where, text in read(prompt):
        if prompt.skill in _FRAMED:
            wrong += [f"{where}: {found!r}, say ten frame" for found in _TRAY.findall(text)]
        for better, form in _FORMS.items() if _ANY_FORM.search(text) else ():
            wrong += [f"{where}: {found!r}, say {better}" for found in form.findall(text)]
        wrong += [f"{where}: {found!r}, say around" for found in _AROUND.findall(text)]
        wrong += [f"{where}: {found!r}, say tomorrow, yesterday" for found in _DAY_AFTER.findall(text)]
    return wrong


def unsafe(prompt: Prompt) -> list[str]:
    """Faults: things that are hot or break, named to a child who may get them."""
    texts = [*spoken(prompt), ("do", prompt.do), ("table", prompt.table)]
    return [f"{where}: {found!r}" for where, text in texts for found in HOT_OR_BREAKABLE.findall(text)]


def unguarded(texts: Iterable[str], things: Iterable[str]) -> list[str]:
    """Faults: a thing whose danger is not said beside it, and a bag that may be a plastic one."""
    wrong = [f"{found!r}, say of what" for text in texts for found in NO_PLASTIC_BAG.findall(text)]
    for thing in things:
        for names, word in CARED_FOR.items():
            if re.match(rf"(?:{names})\b(?! \({word}\))", thing):
                wrong.append(f"{thing!r}, say {word}")
    return wrong


def times_sign(prompt: Prompt) -> list[str]:
    """Faults: the letter x for the sign ×."""
    return [
        f"{where}: {found!r}, write ×"
        for where, text in read(prompt)
        for found in re.findall(r"\d ?x ?\d|\d ?x\b", text)
    ]


def names_animal(prompt: Prompt, animal: str) -> bool:
    """Whether the stuffed animal takes part, by the family's name for it or as a bear."""
    form = re.compile(rf"\b(?:{re.escape(animal)}|bears?)(?:[’']s)?\b", re.IGNORECASE)
    return any(form.search(text) for _, text in (*spoken(prompt), ("do", prompt.do)))
