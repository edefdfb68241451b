"""A report in a file: whole or not at all, and never over what is there unless that is wanted."""

from pathlib import Path

import pytest

from tests.syncing import note_syncs, number
from warmup.report import keeping
from warmup.report.keeping import NotKept, keep


def test_it_is_kept_byte_for_byte_and_for_its_owner_alone(tmp_path: Path) -> None:
    keep(tmp_path / "a.csv", "one\r\ntwo’\r\n")
    assert (tmp_path / "a.csv").read_bytes() == "one\r\ntwo’\r\n".encode()
    assert (tmp_path / "a.csv").stat().st_mode & 0o777 == 0o600
    assert [path.name for path in tmp_path.iterdir()] == ["a.csv"]


def test_its_name_is_on_the_disk_as_well(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    synced = note_syncs(monkeypatch)
    keep(tmp_path / "a.txt", "new")
    assert synced[-1] == number(tmp_path)


def test_what_is_there_stays_unless_it_is_to_go(tmp_path: Path) -> None:
    path = tmp_path / "a.txt"
    path.write_text("mine")
    with pytest.raises(NotKept, match="a file of that name already"):
        keep(path, "new")
    assert path.read_text() == "mine"
    keep(path, "new", over=True)
    assert path.read_text() == "new"


def test_a_folder_that_is_not_there_is_not_made(tmp_path: Path) -> None:
    with pytest.raises(NotKept, match="no such folder"):
        keep(tmp_path / "no" / "a.txt", "new")
    with pytest.raises(NotKept, match="is a folder"):
        keep(tmp_path, "new")
    with pytest.raises(NotKept, match="can’t be the name"):
        keep(Path(f"{tmp_path}/a\0b"), "new")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("over", [False, True])
def test_where_it_fails_halfway_all_is_as_before(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, over: bool
) -> None:
    path = tmp_path / "a.txt"
    if over:
        path.write_text("mine")

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(NotKept, match="No space left on device"):
        keep(path, "new", over=over)
    assert [(each.name, each.read_text()) for each in tmp_path.iterdir()] == [("a.txt", "mine")] * over


def test_a_link_to_nothing_counts_as_there(tmp_path: Path) -> None:
    (tmp_path / "a.txt").symlink_to(tmp_path / "elsewhere")
    assert keeping.is_there(tmp_path / "a.txt")
    with pytest.raises(NotKept):
        keep(tmp_path / "a.txt", "new")
    assert not (tmp_path / "elsewhere").exists()
