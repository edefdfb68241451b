"""Damaged files of every kind given to the commands: a few of the campaign's."""

from pathlib import Path

import pytest

from tests.benchmarks import _everything
from tests.benchmarks._file_kinds import KINDS
from tests.benchmarks.mutated_files import outcome


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A family that has a file of every kind."""
    folder = tmp_path_factory.mktemp("whole")
    _everything.set_up(folder)
    return folder


@pytest.mark.slow
@pytest.mark.parametrize("kind", KINDS)
def test_it_is_taken_or_refused_in_a_sentence_and_everything_before_is_kept(
    whole: Path, tmp_path: Path, kind: str
) -> None:
    for seed in range(1, 9):
        found = outcome(whole, tmp_path / str(seed), kind, seed)
        assert found.did and found.wrong == ()


@pytest.mark.slow
def test_a_search_in_a_damaged_journal_that_ends_at_another_session_is_not_believed(
    whole: Path, tmp_path: Path
) -> None:
    """A flipped byte in a date: rows of other days stood in the place of those of a whole page."""
    found = outcome(whole, tmp_path / "one", "the journal", 1_000_823)
    assert found.did and found.wrong == ()


@pytest.mark.slow
def test_a_journal_whose_index_is_damaged_is_not_merged(whole: Path, tmp_path: Path) -> None:
    """It was found in the middle of the merge, and taken for damage of the family's own journal."""
    found = outcome(whole, tmp_path / "one", "merge", 1_001_352)
    assert found == (("merge 3",), ())
