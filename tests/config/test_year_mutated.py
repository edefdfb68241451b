"""300 own years with slips: a plan or one clear sentence, and the file stays as it is."""

import random
from pathlib import Path

from tests.benchmarks._everything import OVERLAY
from tests.benchmarks._faults import text
from tests.config.routines import YEAR, own
from warmup.config.plan import load_plan
from warmup.config.plan_check import check_plan
from warmup.config.toml_file import FileProblem
from warmup.schoolyear import WEEKS
from warmup.skills import levels


def mutated(seed: int) -> bytes:
    """A good file, whole or lying over the other, with one to three faults."""
    rng = random.Random(seed)
    return text((YEAR if seed % 3 == 0 else OVERLAY).encode(), rng)


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
