"""300 own years with slips: a plan or one clear sentence, and the file stays as it is."""

import random
from pathlib import Path

from tests.config.routines import YEAR, own
from warmup.config.plan import load_plan
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import FileProblem
from warmup.schoolyear import WEEKS
from warmup.skills import levels

OVERLAY = """format = 1
review_weeks = [5, 9, 14, 18, 23, 27, 32, 36]
nothing_new_from = 34
prompts = [{ to_week = 9, count = 6 }, { to_week = 36, count = 7 }]
[skills.coins]
worth = 24
[skills.make-ten]
see-places = 11
"""
PIECES = (
    b"=",
    b"[",
    b"]",
    b"{",
    b'"',
    b"\n",
    b"-1",
    b"37",
    b"true",
    b"2027-01-01",
    b"nan",
    b"skills",
    b"\x00",
    b"\xff",
)


def mutated(seed: int) -> bytes:
    """A good file, whole or lying over the other, with one to three places changed, cut or doubled."""
    rng = random.Random(seed)
    content = (YEAR if seed % 3 == 0 else OVERLAY).encode()
    for _ in range(rng.randrange(1, 4)):
        at = rng.randrange(len(content))
        match rng.randrange(4):
            case 0:
                content = content[:at] + rng.choice(PIECES) + content[at + rng.randrange(3) :]
            case 1:
                content = content[:at] + content[at + rng.randrange(1, 30) :]
            case 2:
                content = content[:at] + content[at : at + 40] + content[at:]
            case _:
                content = content[:at] if rng.random() < 0.3 else content[:at] + b"9" + content[at:]
    return content


def test_300_years_with_slips_give_a_plan_or_one_clear_sentence(tmp_path: Path) -> None:
    outcomes = {"a plan": 0, "a sentence": 0}
    for seed in range(300):
        content = mutated(seed)
        places = own(tmp_path, "year", content)
        said = [str(problem) for problem in check_plan(places)]
        try:
            plan = load_plan(places)
        except FileProblem as problem:
            outcomes["a sentence"] += 1
            assert str(problem) in said or said, "the check finds what stops a morning"
            said.append(str(problem))
        else:
            outcomes["a plan"] += 1
            assert set(plan.weeks) <= set(levels()) and all(
                1 <= week <= WEEKS for week in plan.weeks.values()
            )
            assert plan.prompts and list(plan.reviews) == sorted(set(plan.reviews))
        for sentence in said:
            assert sentence.startswith("year.toml") and "expected" in sentence and "found" in sentence, (
                sentence
            )
            assert "\n" not in sentence and sentence.isprintable() and len(sentence) < 600, sentence
        assert (tmp_path / "year.toml").read_bytes() == content
    assert min(outcomes.values()) > 10, outcomes
