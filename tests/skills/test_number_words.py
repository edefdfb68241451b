"""Number words: words.toml, and two libraries that spell numbers by themselves."""

from collections import Counter

from num2words import num2words

from tests.bank import reference, spelled
from tests.mornings import morning
from tests.oracles.english import ENGLISH
from tests.skills.asking import asked, level_asked
from warmup import skills
from warmup.pictures.word_and_cards import WordAndCards
from warmup.randomness import SeededRandom

LEVELS = ("to-ten", "to-twenty")
WORDS = reference("words")["cardinal"]["words"]


def test_the_word_is_the_one_the_list_and_both_libraries_spell() -> None:
    for key in LEVELS:
        for p in level_asked("number-words", key):
            at = WORDS.index(p.answer)
            assert p.answer == num2words(at) == ENGLISH.number_to_words(at)
            assert str(at) in p.given["cards"]


def test_the_adult_never_says_the_number() -> None:
    for key in LEVELS:
        for p in level_asked("number-words", key):
            assert not set(spelled(p.answer)) & set(spelled(p.say))
            assert p.picture == WordAndCards(p.answer, tuple(p.given["cards"]))


def test_levels_keep_their_range() -> None:
    def asks(item: str) -> set[int]:
        return {WORDS.index(p.answer) for p in asked(f"number-words/{item}", 500)}

    assert asks("to-five") == set(range(6))
    assert asks("to-ten") == {6, 7, 9, 10} and asks("eight") == {8}
    assert asks("to-twenty") == set(range(13, 21)) and asks("eleven-twelve") == {11, 12}
    assert asks("two") == {2}


def test_a_teen_lies_beside_the_digit_its_word_begins_with() -> None:
    for p in asked("number-words/to-twenty"):
        at = WORDS.index(p.answer)
        assert (str(at - 10) if at < 20 else "12") in p.given["cards"]


def test_no_card_is_where_the_answer_mostly_lies() -> None:
    places = Counter(p.accept[0] for key in LEVELS for p in level_asked("number-words", key))
    assert len(places) == 4
    assert max(places.values()) / sum(places.values()) < 0.3


def test_no_cue_tells_the_letter_or_the_sound_the_word_begins_with() -> None:
    """The child reads; what is begun together is the count, or the finger under the word."""
    for key in LEVELS:
        for p in level_asked("number-words", key, 60):
            assert not any("“" in cue.text.replace("“and ten”", "") for cue in p.cues), p.cues


def test_the_animal_has_the_name_the_family_gave_it() -> None:
    day = morning()._replace(animal="Moose")
    said = [skills.prompt("number-words/to-five", day, SeededRandom("animal", n)).say for n in range(200)]
    assert any(say.startswith("Moose wrote") for say in said)
    assert not any("Bear" in say or "bear" in say for say in said)
