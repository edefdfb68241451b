"""number-words: match a written number word with its numeral.

Common practice in kindergarten rooms, no source. The word stands on the screen and is never said by the
adult: reading it is the question.
"""

from collections.abc import Sequence

from warmup import pictures
from warmup.english import number_word
from warmup.model import Cue, Morning, Strand
from warmup.randomness import SeededRandom
from warmup.skills._number import card_place, dealt
from warmup.skills.base import Draft, Level, Skill

# The numbers whose words are asked, and the numbers the other cards are drawn from.
_WORDS: dict[str, tuple[Sequence[int], Sequence[int]]] = {
    "to-five": (range(6), range(6)),
    "two": ((2,), (3, 1, 10, 0, 12)),
    "to-ten": ((6, 7, 9, 10), range(11)),
    "eight": ((8,), range(11)),
    "to-twenty": ((13, 14, 15, 16, 17, 18, 19, 20), range(11, 21)),
    "eleven-twelve": ((11, 12), range(10, 21)),
}
_WATCH = {
    "to-five": "Guessing from the first letter: some of these words start alike.",
    "two": "Sounding out the w: this word does not sound as it is spelled.",
    "to-ten": "Guessing from the first letter. Look at the end of the word too.",
    "eight": "Sounding it out letter by letter. This word does not sound as it is spelled.",
    "to-twenty": "The -teen is not read, so the card with the bare digit is chosen.",
    "eleven-twelve": "Looking for a -teen. This word has none.",
}


# Words that cannot be sounded out.
_ODD = (1, 2, 8)


def ask(item: str, morning: Morning, rng: SeededRandom) -> Draft:
    """A word to read and four numerals to choose among."""
    numbers, others = _WORDS[item]
    number = rng.pick(numbers)
    word = number_word(number)
    cards = dealt(rng, number, _like(item, number), others)
    return Draft(
        say=rng.phrasing(
            "Read this word. Which card is its number?",
            "Can you read this word? Point to its number.",
            "What does the word say? Show me that number.",
            f"{morning.animal} wrote this word. Which number is it?",
            "This word is a number. Which card is it?",
            "Match the word with its card. Touch the card.",
        ),
        answer=word,
        accept=(card_place(cards, number),),
        working=f"{', '.join(word.replace('-', ''))}: {word}",
        cues=_cues(number, word),
        watch_for=_WATCH[item],
        given={"read": word, "cards": list(cards)},
        picture=pictures.WordAndCards(word, cards),
    )


def _like(item: str, number: int) -> Sequence[int]:
    """The numbers whose words look or whose numerals read alike."""
    match item:
        case "two":
            return (10,)
        case "eleven-twelve":
            return (12, 1) if number == 11 else (11, 20)
        case "to-twenty":
            return (12, 10) if number == 20 else (number - 10,)
        case _:
            return {0: (), 2: (3,), 3: (2,), 4: (5,), 5: (4,), 6: (7,), 7: (6,), 9: (5,)}.get(number, ())


def _cues(number: int, word: str) -> tuple[Cue, Cue, Cue]:
    start = "Look at the first letter. What sound does it make?"
    odd = "This word does not sound as it looks. Where have you seen it?"
    return (Cue(odd if number in _ODD else start), _model(number, word), _begin(number, word))


def _model(number: int, word: str) -> Cue:
    """What to look at: the end of a long word, or numbers in order for a short one."""
    if word.endswith("teen"):
        return Cue("Look at the end, -teen. It means “and ten”. Which part of a card says that?")
    if word.endswith("ty"):
        return Cue("Look at the end, -ty. It means tens. How does a card look that says so?")
    low = 0 if number < 6 else 6 if number <= 10 else 10
    row = tuple(str(n) for n in range(low, min(low + 6, 13) if low != 6 else 10))
    alike = [name for name in row if number_word(int(name))[0] == word[0]]
    ask_for = "name looks like this word" if number in _ODD else "name starts like this word"
    if len(alike) > 1 and number not in _ODD:
        ask_for = f"{number_word(len(alike))} names start like this word"
    return Cue(f"Say each number in order with a finger. Which {ask_for}?", pictures.NumberRow(row))


def _begin(number: int, word: str) -> Cue:
    """What is begun together: the count for a word that cannot be sounded out, else the reading of it."""
    if word.endswith(("teen", "ty")):
        return Cue("Cover the ending together. The child reads the front, then uncovers it and reads it all.")
    if number in _ODD or number in (11, 12):
        low = "ten" if number > 10 else "zero"
        return Cue(f"Count up together from {low}, slowly. The child stops at the name that fits this word.")
    return Cue("Run a finger under the word together, letter by letter. The child says what it makes.")


SKILL = Skill(
    id="number-words",
    title="Number words",
    asks="match a written number word with its numeral",
    strand=Strand.NUMBER,
    levels=(
        Level(
            "to-ten",
            "zero to ten",
            ("to-five", "to-ten", "two", "eight"),
            stands_on=("numerals:to-10",),
            guess=0.25,
            table="labels",
            ends=("to-five", "to-ten", "two", "eight"),
        ),
        Level(
            "to-twenty",
            "to twenty",
            ("to-twenty", "eleven-twelve"),
            stands_on=("number-words:to-ten", "numerals:to-20"),
            guess=0.25,
            table="labels",
            ends=("to-twenty", "eleven-twelve"),
        ),
    ),
    ask=ask,
)
