"""What is said of each code is what the reference file has; every code of the catalogue has its sentence."""

import tomllib
from pathlib import Path

from warmup import skills
from warmup.report.standards import WORDS, place

REFERENCE = Path(__file__).parent.parent / "references" / "standards.toml"


def test_each_code_of_the_catalogue_is_told_as_in_the_reference() -> None:
    reference = tomllib.loads(REFERENCE.read_text("utf-8"))["std"]
    used = {
        code
        for skill in skills.SKILLS.values()
        for level in skill.levels
        for code in (*level.codes, *level.toward)
    }
    assert {code: reference[code]["paraphrase"] for code in sorted(used, key=place)} == WORDS


def test_kindergarten_comes_first() -> None:
    assert sorted(["2.G.A.1", "K.MD.A.1", "1.OA.A.1", "K.CC.A.1"], key=place) == [
        "K.CC.A.1", "K.MD.A.1", "1.OA.A.1", "2.G.A.1",
    ]  # fmt: skip
