"""[household] and [keys] in family.toml: what is wrong gets one sentence, and nothing is written over."""

import random
import tomllib
from pathlib import Path

import pytest

from tests.config.families import EXAMPLE, complaint, written
from warmup.config.editor import FamilyEditor, KeptFamily
from warmup.config.family import Family, load, save
from warmup.config.toml_file import FileProblem

HOUSE = """
[household] # ours
toddler = true
without = [ # what we lack
    "straws", # lost
    "Clock with hands to turn",
]
[keys]
undo = "f2"
cue = ["b", ","]
"""
FAMILY = EXAMPLE + HOUSE


def test_they_are_read_by_the_names_of_the_registry(tmp_path: Path) -> None:
    family = load(written(tmp_path, FAMILY))
    assert (family.toddler, family.without) == (True, ("straws", "clock with hands"))
    assert family.keys == (("undo", ("f2",)), ("cue", ("b", ",")))
    less = load(written(tmp_path, EXAMPLE))
    assert (less.toddler, less.without, less.keys) == (False, (), ())


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ('without = ["strawes"]', 'household.without 1: expected a thing that prompts ask for, '
         'found "strawes"; did you mean "straws"?'),
        ('without = ["straws", "straw"]', 'household.without 2: expected each thing once, found "straw"'),
        ('without = "straws"', "household.without: expected a list in square brackets"),
        ('toddler = "yes"', "household.toddler: expected true or false"),
        ("toddler = 1", "household.toddler: expected true or false"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_named_with_its_line(tmp_path: Path, lines: str, told: str) -> None:
    said = complaint(tmp_path, "[preferences]\n", f"[household]\n{lines}\n[preferences]\n")
    line = (EXAMPLE.replace("[preferences]", "[household]", 1)).split("\n").index("[household]") + 2
    assert f"family.toml, line {line}, {told}" in said


def test_a_household_that_is_no_table_is_refused(tmp_path: Path) -> None:
    assert "household" in complaint(tmp_path, "format = 1", "format = 1\nhousehold = 3")


@pytest.mark.parametrize("keys", ["keys = 3", 'keys = ["f2"]', "[keys]\nundo = 3", '[keys]\n"" = []'])
def test_keys_of_whatever_kind_stop_no_morning(tmp_path: Path, keys: str) -> None:
    at = keys if keys.startswith("keys") else ""
    text = EXAMPLE.replace("format = 1", f"format = 1\n{at}") + ("" if at else keys)
    assert all(found == () for _, found in load(written(tmp_path, text)).keys)


def test_a_change_keeps_the_remarks_and_what_else_stands_there(tmp_path: Path) -> None:
    path = written(tmp_path, FAMILY)
    family = load(path)
    save(path, family._replace(toddler=False, without=("clock with hands", "beans")), family)
    text = path.read_text("utf-8")
    assert "[household] # ours" in text and "# what we lack" in text and 'undo = "f2"' in text
    assert "straws" not in tomllib.loads(text)["household"]["without"]
    again = load(path)
    assert (again.toddler, again.without, again.keys) == (False, ("clock with hands", "beans"), family.keys)


def test_the_sheets_on_paper_are_kept_beside_the_rest(tmp_path: Path) -> None:
    path = written(tmp_path, FAMILY)
    editor = FamilyEditor(KeptFamily(path, load(path)), load(path).children[0])
    editor.print_sheets(["ten-frames", "coins"])
    editor.print_sheets(["coins", "clock-face"])
    assert load(path).printed == ("ten-frames", "coins", "clock-face")
    editor.print_sheets(["coins"], printed=False)
    assert load(path).printed == ("ten-frames", "clock-face")
    assert "# what we lack" in path.read_text("utf-8") and load(path).without == (
        "straws",
        "clock with hands",
    )


def test_three_hundred_damaged_files_give_a_family_or_one_sentence_and_stay_as_they_are(
    tmp_path: Path,
) -> None:
    """Seeded: bytes and lines of a whole file dropped, doubled, swapped and made up."""
    kinds = {"family": 0, "sentence": 0}
    for seed in range(300):
        text = _damaged(FAMILY, random.Random(seed))
        path = written(tmp_path, text.encode("utf-8", "surrogatepass"))
        was = path.read_bytes()
        try:
            family = load(path)
            kinds["family"] += isinstance(family, Family)
        except FileProblem as problem:
            said = str(problem)
            assert said.startswith("family.toml") and "\n" not in said and said.isprintable(), said
            assert "expected" in said and "found" in said
            kinds["sentence"] += 1
            # A change over a file that can't be read is refused, and leaves it.
            with pytest.raises(FileProblem):
                save(path, of_example(), of_example()._replace(adult="Dad"))
        assert path.read_bytes() == was
    assert min(kinds.values()) > 30, kinds


def of_example() -> Family:
    from tests.config.families import FAMILY as family

    return family


_MADE_UP = ("= 3", "[", "]]", '"', "[[household]]", "toddler = []", "\x00", "\x1b[31m", "é", "[keys]",
            "undo", "'", "\u202e", "9" * 400)  # fmt: skip


def _damaged(text: str, rng: random.Random) -> str:
    for _ in range(rng.randrange(1, 4)):
        at = rng.randrange(len(text))
        match rng.randrange(4):
            case 0:
                text = text[:at] + text[at + rng.randrange(1, 12) :]
            case 1:
                text = text[:at] + rng.choice(_MADE_UP) + text[at:]
            case 2:
                lines = text.split("\n")
                rng.shuffle(lines)
                text = "\n".join(lines)
            case _:
                lines = text.split("\n")
                lines.insert(rng.randrange(len(lines)), rng.choice(lines))
                text = "\n".join(lines)
    return text
