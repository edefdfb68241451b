"""own.toml: what a family writes itself, read with care. A bad file gets one sentence, and is left alone."""

import tomllib
from pathlib import Path

import pytest
import tomli_w
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.config.routines import own as written
from warmup.config.own import LONGEST, LONGEST_ANSWER, LONGEST_THING, MOST, MOST_ANSWERS, load_own, parse
from warmup.config.places import Places
from warmup.config.toml_file import Document, FileProblem
from warmup.model import Strand
from warmup.randomness import SeededRandom
from warmup.skills.own import LONGEST_NAME, OwnPrompt, is_name
from warmup.text import clean

EXAMPLE = """\
# What we practice besides.
format = 1

[[prompt]]
name = "front-door"
say = "What number stands on our front door?"
answer = "forty-two"
accept = ["four two"]
cues = ["Picture our front door.", "Walk to the door and look."]
watch_for = "Turning the two digits round."
table = "a door"
strand = "number"
week = 3

[[prompt]]
say = "When is your birthday?"
answer = "May ninth"
"""
PROMPTS = (
    OwnPrompt(
        "front-door",
        "What number stands on our front door?",
        "forty-two",
        ("Picture our front door.", "Walk to the door and look."),
        Strand.NUMBER,
        3,
        "Turning the two digits round.",
        "a door",
        ("four two",),
    ),
    OwnPrompt("when-is-your-birthday", "When is your birthday?", "May ninth"),
)


def read(content: str) -> tuple[OwnPrompt, ...]:
    return parse(Document(Path("own.toml"), tomllib.loads(content), content))


def complaint(folder: Path, content: str | bytes) -> str:
    places = written(folder, "own", content)
    with pytest.raises(FileProblem) as caught:
        load_own(places)
    return str(caught.value)


def test_the_example_in_full(tmp_path: Path) -> None:
    assert read(EXAMPLE) == PROMPTS
    found = load_own(written(tmp_path, "own", EXAMPLE))
    assert found is not None
    assert [item.id for item in found.items] == ["own/front-door", "own/when-is-your-birthday"]


def test_no_file_and_a_file_with_nothing_in_it_are_no_prompts(tmp_path: Path) -> None:
    assert load_own(Places(tmp_path / "none", tmp_path)) is None
    assert load_own(written(tmp_path, "own", "# nothing yet\n")) is None


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("format = 1", "format = 2", "line 2, format: expected format = 1"),
        (
            "[[prompt]]\nname",
            "[[prompts]]\nname",
            'line 4, prompts: expected one of format, prompt, found "prompts"; did you mean "prompt"?',
        ),
        ("watch_for", "wach_for", "line 10, prompt 1.wach_for: expected one of name, say, answer, cues, acc"),
        ("watch_for", "wach_for", '"wach_for"; did you mean "watch_for"? Fix that line'),
        ('say = "When is your birthday?"', "", "line 15, prompt 2.say: expected some words in quotation mar"),
        ('answer = "May ninth"', "", "line 15, prompt 2.answer: expected some words in quotation marks, fou"),
        ('answer = "May ninth"', 'answer = " "', "line 17, prompt 2.answer: expected at least one letter"),
        ('answer = "May ninth"', "answer = 9", "line 17, prompt 2.answer: expected some words in quotation "),
        ('answer = "May ninth"', 'answer = ["a"]', "line 17, prompt 2.answer: expected some words in quotat"),
        ('["four two"]', '"four two"', "line 8, prompt 1.accept: expected a list in square brackets, found"),
        ('["four two"]', '["four two", 4]', "line 8, prompt 1.accept 2: expected some words in quotation m"),
        ('["four two"]', '[""]', "line 8, prompt 1.accept 1: expected at least one letter"),
        (
            '"Picture our front door."',
            '"a", "b", "c"',
            "line 9, prompt 1.cues: expected a list of at most 3, fo",
        ),
        ('"Picture our front door."', '""', "line 9, prompt 1.cues 1: expected at least one letter"),
        ('"number"', '"numbers"', 'line 12, prompt 1.strand: expected "calendar" or "counting" or "number"'),
        ("week = 3", "week = 0", "line 13, prompt 1.week: expected a whole number from 1 to 36, found 0"),
        ("week = 3", "week = 37", "line 13, prompt 1.week: expected a whole number from 1 to 36, found 37"),
        ("week = 3", "week = 2026-09-01", "line 13, prompt 1.week: expected a whole number from 1 to 36"),
        ('"front-door"', '"!?"', 'line 5, prompt 1.name: expected at least one letter or digit, found "!?"'),
        ('"front-door"', f'"{"x" * 41}"', "line 5, prompt 1.name: expected at most 40 characters"),
        ('"When is your birthday?"', '"+ ="', "line 16, prompt 2.say: expected at least one letter or di"),
        (
            "[[prompt]]\nsay",
            '[[prompt]]\nname = "Front door"\nsay',
            'line 16, prompt 2.name: expected a name of its own, found "front-door", as prompt 1 has. Fix',
        ),
        (EXAMPLE, "[prompt]\nsay = 'a'", "line 1, prompt: expected [[prompt]] in two pairs of brackets, fou"),
        (EXAMPLE, "prompt = ['a']", "prompt 1: expected a table"),
        (EXAMPLE, "prompt = 'a'", "line 1, prompt: expected a list in square brackets, found"),
        (EXAMPLE, "[[prompt]", "line 1"),
    ],
)
def test_every_slip_has_its_sentence(tmp_path: Path, old: str, new: str, words: str) -> None:
    assert old in EXAMPLE
    said = complaint(tmp_path, EXAMPLE.replace(old, new, 1))
    assert words in said and said.startswith("own.toml, ")
    assert said.endswith("Fix that line; until then none of your own prompts is asked.")
    assert said.count("\n") == 0


def test_of_two_prompts_with_the_same_words_one_wants_a_name(tmp_path: Path) -> None:
    twice = '[[prompt]]\nsay = "Who is it?"\nanswer = "me"\n'
    said = complaint(tmp_path, twice * 2)
    assert 'line 4, prompt 2.name: expected a name of its own, found "who-is-it", as prompt 1 has.' in said
    assert [each.name for each in read(f'{twice}{twice}name = "us"')] == ["who-is-it", "us"]


@pytest.mark.parametrize(
    ("key", "most"),
    [("say", LONGEST), ("answer", LONGEST_ANSWER), ("watch_for", LONGEST), ("table", LONGEST_THING)],
)
def test_how_long_each_text_may_be(tmp_path: Path, key: str, most: int) -> None:
    for length, fits in ((most, True), (most + 1, False)):
        prompt = {"say": "Who is it?", "answer": "me", key: "x" * length}
        content = tomli_w.dumps({"prompt": [prompt]})
        if fits:
            assert getattr(read(content)[0], key) == "x" * most
        else:
            assert f"prompt 1.{key}: expected at most {most} characters" in complaint(tmp_path, content)


def test_how_many_there_may_be(tmp_path: Path) -> None:
    def many(count: int) -> str:
        return "".join(f'[[prompt]]\nsay = "Say {n}."\nanswer = "{n}"\n' for n in range(count))

    assert len(read(many(MOST))) == MOST == 100
    assert "prompt: expected a list of at most 100, found 101" in complaint(tmp_path, many(MOST + 1))
    answers = [f"answer {n}" for n in range(MOST_ANSWERS + 1)]
    for count, fits in ((MOST_ANSWERS, True), (MOST_ANSWERS + 1, False)):
        content = tomli_w.dumps({"prompt": [{"say": "Who?", "answer": "me", "accept": answers[:count]}]})
        assert fits or "prompt 1.accept: expected a list of at most 10" in complaint(tmp_path, content)
        assert not fits or read(content)[0].accept == tuple(answers[:count])


hostile = st.text(max_size=60) | st.text(
    st.sampled_from("[red]{}\\[/]\x1b\x07\u202e\u2066\u200b\ufeff\n\t\x00 aé数"), max_size=60
)


@given(hostile, hostile, st.lists(hostile, max_size=4), hostile | st.none(), hostile)
def test_any_words_are_plain_text_on_one_line_or_one_sentence(
    say: str, answer: str, cues: list[str], name: str | None, table: str
) -> None:
    row = {"say": say, "answer": answer, "cues": cues, "table": table} | (
        {} if name is None else {"name": name}
    )
    file = Document(Path("own.toml"), {"prompt": [row]}, "")
    try:
        (prompt,) = parse(file)
    except FileProblem as problem:
        assert "\n" not in str(problem) and "\x1b" not in str(problem) and str(problem).startswith("own.toml")
    else:
        assert is_name(prompt.name)
        assert (prompt.say, prompt.answer, prompt.cues) == (
            clean(say),
            clean(answer),
            tuple(map(clean, cues)),
        )
        for text in (prompt.say, prompt.answer, prompt.table, *prompt.cues):
            assert text == clean(text) and not set(text) & set("\x1b\x07\u202e\u2066\n\t\x00")


values = st.recursive(
    st.booleans() | st.integers() | st.dates() | st.floats() | st.text(max_size=5) | st.none(),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(st.sampled_from(["say", "answer"]), inner),
    max_leaves=4,
)


@given(st.sampled_from(["say", "answer", "cues", "accept", "name", "strand", "week", "table"]), values)
def test_any_value_in_any_place_gives_prompts_or_a_problem(key: str, value: object) -> None:
    for data in ({"prompt": [{"say": "Who?", "answer": "me", key: value}]}, {"prompt": value}, {key: value}):
        try:
            assert all(isinstance(each, OwnPrompt) for each in parse(Document(Path("own.toml"), data, "")))
        except FileProblem as problem:
            assert str(problem)


def mutated(seed: int) -> bytes:
    """The example with one slip or two: bytes left out, doubled, turned or put in from anywhere."""
    rng, content = SeededRandom("own.toml", seed), bytearray(EXAMPLE.encode())
    for _ in range(rng.between(1, 2)):
        at, end = sorted((rng.below(len(content)), rng.below(len(content))))
        end = min(end, at + 12)
        match rng.below(5):
            case 0:
                del content[at:end]
            case 1:
                content[at:at] = content[at:end]
            case 2:
                content[at:end] = bytes(reversed(content[at:end]))
            case 3:
                content[at : at + 1] = bytes([rng.below(256)])
            case _:
                content[at:at] = rng.pick(
                    (b'"', b"[", b"]", b"\n", b"=", b"[[prompt]]\n", b"\x1b[2J", b"9" * 30)
                )
    return bytes(content)


def test_300_files_with_slips_give_prompts_or_one_clear_sentence_and_stay_as_they_are(tmp_path: Path) -> None:
    outcomes = {"prompts": 0, "a sentence": 0}
    for seed in range(300):
        content = mutated(seed)
        places = written(tmp_path, "own", content)
        try:
            found = load_own(places)
        except FileProblem as problem:
            said = str(problem)
            outcomes["a sentence"] += 1
            assert said.startswith("own.toml, ") and "expected" in said and "found" in said, said
            assert "\n" not in said and said.isprintable() and len(said) < 500, said
        else:
            outcomes["prompts"] += 1
            for item in found.items if found else ():
                assert is_name(item.id.removeprefix("own/")) and len(item.id) <= LONGEST_NAME + 4
        assert (tmp_path / "own.toml").read_bytes() == content
        assert [path.name for path in tmp_path.iterdir()] == ["own.toml"]
    assert min(outcomes.values()) > 30, outcomes


@pytest.mark.slow
@settings(max_examples=300)
@given(
    st.binary(max_size=200)
    | st.text(st.sampled_from('=[]{}"\n.#1 prompt say answer week'), max_size=200).map(str.encode)
)
def test_any_bytes_give_prompts_or_a_problem(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    places = written(tmp_path_factory.getbasetemp(), "own", content)
    try:
        load_own(places)
    except FileProblem as problem:
        assert str(problem)
