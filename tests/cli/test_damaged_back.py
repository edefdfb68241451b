"""Damaged journals given to merge, restore and import: a few of the campaign's, of every kind."""

from pathlib import Path

import pytest

from tests.benchmarks.damaged_back import outcome


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(9))
def test_it_is_taken_or_refused_in_a_sentence_and_everything_before_is_kept(
    tmp_path: Path, seed: int, capsys: pytest.CaptureFixture[str]
) -> None:
    found = outcome(tmp_path, seed)
    assert found.wrong == () and {each.split()[0] for each in found.did} == {"merge", "restore", "import"}
    assert not capsys.readouterr().err
