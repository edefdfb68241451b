"""Each rule of the bank's words can fail: a prompt that breaks it, and one beside it that keeps it."""

import datetime as dt
from typing import Any

import pytest

from tests.bank import RULES
from tests.bank.numbers_said import numbers_said
from tests.mornings import morning
from warmup.model import Cue, ItemId, Prompt
from warmup.pictures import Lengths, NumberRow, Numeral
from warmup.pictures.ten_frame import TenFrame

# A Thursday in November, its next school morning the day after.
THURSDAY = morning(dt.date(2026, 11, 26), 47)
GOOD = Prompt(
    skill="make-ten",
    level="all",
    item=ItemId("make-ten/all"),
    say="Seven and what make ten?",
    wording="a",
    answer="three",
    accept=("three more",),
    working="7 + 3 = 10",
    cues=(Cue("Show me seven fingers."), Cue("Look at the empty places."), Cue("Count on together.")),
    watch_for="Counting all ten again.",
    table="ten frame",
    seconds=20,
    guess=0.0,
    given={"have": 7},
)


FEW = NumberRow(("0", "3", "4", "5"))


def cues(text: str) -> tuple[Cue, Cue, Cue]:
    """Three cues, this one first."""
    return (Cue(text), *GOOD.cues[1:])


# The rule, what breaks it, and what is next to that and keeps it.
CASES: tuple[tuple[str, dict[str, Any], dict[str, Any]], ...] = (
    (
        "at most three numbers",
        {"say": "Three and one make four. One and what make four?"},
        {"say": "Three and one make four. Which one is red?"},
    ),
    (
        "at most three numbers",
        {"skill": "count", "say": "I start at one and stop at thirty-five. You go on."},
        {"skill": "count", "say": "Thirty-four, thirty-five. Keep going to forty-five."},
    ),
    (
        "over 12 words: something to do",
        {"say": "Ten bears want tea today. I have four cups. How many are missing?", "table": ""},
        {"say": "Ten bears want tea today. I have four cups. How many are missing?", "table": "cups"},
    ),
    ("nobody is hurried", {"say": "Quick! What makes ten?"}, {"say": "How many more make ten?"}),
    ("nobody is hurried", {"cues": cues("Say it faster.")}, {"cues": cues("Say it again.")}),
    ("no danger unsaid", {"table": "toast, cups"}, {"table": "toast (cooled), cups"}),
    ("kitchen words", {"say": "Six pegs hang on the line."}, {"say": "Six clothespins hang on the line."}),
    ("kitchen words", {"watch_for": "The tray is full."}, {"watch_for": "The egg tray is full."}),
    ("kitchen words", {"say": "Turn round. How many?"}, {"say": "It is round. How many?"}),
    (
        "kitchen words",
        {"say": "We eat it the day after. When?"},
        {"say": "What is the day after Monday?"},
    ),
    ("kitchen words", {"table": "a jug"}, {"table": "a pitcher"}),
    ("nothing hot or breakable", {"table": "a glass, rice"}, {"table": "a plastic cup, rice"}),
    ("nothing hot or breakable", {"do": "Put out an iron."}, {"do": "Put out a shoe."}),
    (
        "nothing untrue about today",
        {"skill": "weekday", "say": "It is Friday. What day is tomorrow?"},
        {"skill": "weekday", "say": "Pretend it’s Friday. What day is tomorrow?"},
    ),
    (
        "nothing untrue about today",
        {"skill": "weekday", "say": "Today is Friday. What day is tomorrow?"},
        {"skill": "weekday", "say": "Today is Thursday. What day is tomorrow?"},
    ),
    (
        "nothing untrue about today",
        {"skill": "month", "say": "It is May. What comes next?"},
        {"skill": "month", "say": "It is November. What comes next?"},
    ),
    (
        "nothing untrue about today",
        {"skill": "date", "say": "Today is the fifth. What comes next?"},
        {"skill": "date", "say": "Today is the twenty-sixth. What comes next?"},
    ),
    (
        "nothing untrue about today",
        {"say": "The snow fell on the step. How many flakes?"},
        {"say": "Pretend the snow fell on the step. How many flakes?"},
    ),
    (
        "nothing untrue about today",
        {"cues": cues("Tomorrow is Saturday. Go on.")},
        {"cues": cues("Tomorrow is Friday. Go on.")},
    ),
    ("no answer in do, no first sound", {"do": "Cover three of them."}, {"do": "Cover seven of them."}),
    (
        "no answer in do, no first sound",
        {"answer": "a dime", "accept": ("dime",), "cues": cues("Say it together: “It’s a d…”")},
        {"answer": "a dime", "accept": ("dime",), "cues": cues("Say it together: “It’s a…”")},
    ),
    (
        "no answer in the watch-for",
        {"answer": "zero", "watch_for": "Silence. Zero is an answer."},
        {"answer": "zero", "watch_for": "Silence. There is a number for nothing."},
    ),
    (
        "no answer in the question",
        {"answer": "cone", "say": "Think of a road cone. What shape is it?"},
        {"answer": "cone", "say": "Think of a party hat. What shape is it?"},
    ),
    (
        "accept holds the others",
        {"say": "How many bundles can you tie?", "answer": "four", "accept": ()},
        {"say": "How many bundles can you tie?", "answer": "four", "accept": ("four bundles",)},
    ),
    (
        "accept holds the others",
        {"say": "How many are left?", "answer": "zero", "accept": ()},
        {"say": "How many are left?", "answer": "zero", "accept": ("none",)},
    ),
    (
        "accept holds the others",
        {"skill": "numerals", "say": "What number is this?", "answer": "zero", "accept": ("none",)},
        {"skill": "numerals", "say": "What number is this?", "answer": "zero", "accept": ("oh",)},
    ),
    ("no cue begins with waiting", {"cues": cues("Wait. Then: count.")}, {"cues": cues("Count.")}),
    (
        "what to do is in do",
        {"watch_for": "Show it, count to two, cover it. Counting all."},
        {"watch_for": "Counting all. Cover it sooner."},
    ),
    ("working in words", {"working": "half ½"}, {"working": "7 + 3 = 10"}),
    ("×, not x", {"working": "4 x 10 = 40"}, {"working": "4 × 10 = 40"}),
    (
        "a count begins where the words say",
        {"skill": "count-on", "say": "I say three. You keep going to five.", "answer": "three, four, five"},
        {"skill": "count-on", "say": "I say three. You keep going to five.", "answer": "four, five"},
    ),
    (
        "a count begins where the words say",
        {"skill": "count", "say": "Count from ninety to ninety-two.", "answer": "ninety-one, ninety-two"},
        {"skill": "count", "say": "Count from ten to twelve.", "answer": "ten, eleven, twelve"},
    ),
    (
        "a count begins where the words say",
        {"skill": "by-tens", "say": "Ten, twenty. Keep going by tens to forty.", "answer": "twenty, forty"},
        {"skill": "by-tens", "say": "Ten, twenty. Keep going by tens to forty.", "answer": "thirty, forty"},
    ),
    (
        "a close is a name or a movement",
        {"item": "ordinals/which-end", "say": "Say the days, starting at Monday. Which is fourth?"},
        {"item": "ordinals/to-tenth", "say": "Say the days, starting at Monday. Which is fourth?"},
    ),
    (
        "a close is a name or a movement",
        {"item": "subitize/dice", "skill": "subitize", "say": "Sixteen is ten and what?", "answer": "six"},
        {"item": "neighbors/one-more", "skill": "neighbors", "say": "One more than five?", "answer": "six"},
    ),
    (
        "a whole number has two digits",
        {"say": "Look at the whole number. What does it say?", "picture": Numeral("4")},
        {"say": "Look at the whole number. What does it say?", "picture": Numeral("14")},
    ),
    (
        "nothing to have ready unused",
        {"table": "toast, toys", "do": "Set out some toys."},
        {"table": "toys", "do": "Set out some toys."},
    ),
    (
        "nothing to have ready unused",
        {"table": "ten frame"},
        {"table": "ten frame", "cues": (Cue("Look here.", TenFrame(7)), *GOOD.cues[1:])},
    ),
    (
        "nothing to have ready unused",
        {"say": "Five birds sat.", "table": "paper"},
        {"say": "Draw five birds.", "table": "paper"},
    ),
    (
        "no larger of two alike",
        {"given": {"first": 2, "second": 2}, "watch_for": "Put the larger number in a fist."},
        {"given": {"first": 3, "second": 2}, "watch_for": "Put the larger number in a fist."},
    ),
    (
        "no larger of two alike",
        {"given": {"groups": [5, 5]}, "cues": cues("Say it for the fuller side.")},
        {"given": {"groups": [5, 4]}, "cues": cues("Say it for the fuller side.")},
    ),
    (
        "side by side, or from across",
        {
            "do": "Stand beside your child, facing the same way.",
            "answer": "on your left when you face each other",
        },
        {"do": "Stand beside your child, facing the same way.", "answer": "your left as well"},
    ),
    ("a working works something out", {"working": "two = two"}, {"working": "one and one is two"}),
    (
        "no color from nowhere",
        {"say": "Turn the parts around.", "accept": ("one red and two blue",)},
        {"say": "Two red and one blue. Swap the colors.", "accept": ("one red and two blue",)},
    ),
    (
        "some is more than one",
        {"say": "You saw some dots. How many?", "answer": "one"},
        {"say": "You saw some dots. How many?", "answer": "two"},
    ),
    (
        "hidden is what was hidden",
        {"skill": "parts", "say": "Seven is three and what?", "watch_for": "All for the hidden part."},
        {
            "skill": "parts",
            "say": "You see three of seven. How many hide?",
            "watch_for": "All for the hidden part.",
        },
    ),
    (
        "counting on from the larger",
        {"given": {"start": 1, "came": 6}, "watch_for": "Begin with those who were there first."},
        {"given": {"start": 6, "came": 1}, "watch_for": "Begin with those who were there first."},
    ),
    (
        "again is what was said",
        {"say": "I say forty-four.", "cues": cues("Say your last ones again: “forty-three, forty-four…”")},
        {"say": "I say forty-four.", "cues": cues("Say it again: “forty-four…”")},
    ),
    (
        "one name starts so",
        {"given": {"read": "five"}, "cues": (Cue("Which name starts like it?", FEW), *GOOD.cues[1:])},
        {"given": {"read": "zero"}, "cues": (Cue("Which name starts like it?", FEW), *GOOD.cues[1:])},
    ),
    (
        "in between something happened",
        {"given": {"total": 9, "part": 7}, "watch_for": "Ask what happened in between."},
        {"given": {"total": 9, "start": 7}, "watch_for": "Ask what happened in between."},
    ),
    (
        "both digits of two",
        {"picture": Numeral("6"), "watch_for": "Reading both digits of a number by themselves."},
        {"picture": Numeral("10"), "watch_for": "Reading both digits of a number by themselves."},
    ),
    (
        "what sticks out may be the longer",
        {"picture": Lengths((10, 6), ("striped", "plain")), "watch_for": "A ribbon that sticks out."},
        {"picture": Lengths((10, 6), ("striped", "plain"), (0, 5)), "watch_for": "A ribbon that sticks out."},
    ),
    ("lines begin with a capital", {"cues": cues("forty has tens.")}, {"cues": cues("Forty has tens.")}),
)


def test_every_rule_has_a_case() -> None:
    assert {rule for rule, _, _ in CASES} == set(RULES)


@pytest.mark.parametrize(("rule", "bad", "good"), CASES)
def test_a_rule_finds_what_breaks_it_and_nothing_else(
    rule: str, bad: dict[str, Any], good: dict[str, Any]
) -> None:
    assert RULES[rule](GOOD._replace(**bad), THURSDAY)
    assert not RULES[rule](GOOD._replace(**good), THURSDAY)


def test_tomorrow_is_not_said_before_days_off() -> None:
    friday = morning(dt.date(2026, 11, 20), 46)
    prompt = GOOD._replace(skill="school-day", say="What number comes tomorrow?")
    rule = RULES["nothing untrue about today"]
    off = dt.date(2026, 11, 30)
    assert rule(prompt, friday._replace(next=off)) and not rule(prompt, friday)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Which one is it?", []),
        ("One more than nine", ["one", "nine"]),
        ("one hundred twenty, then 5", ["one hundred twenty", "5"]),
        ("the third of six", ["third", "six"]),
        ("first lay one at a time", []),
        ("twenty-one and two", ["twenty-one", "two"]),
    ],
)
def test_numbers_are_counted_as_they_are_said(text: str, said: list[str]) -> None:
    assert numbers_said(text) == said
