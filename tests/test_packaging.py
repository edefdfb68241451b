"""What a family installs holds the routines and the style sheets, and finds them."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from warmup.config.places import routines_folder

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel, built by hatchling as pip would."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    (built,) = folder.glob("*.whl")
    return built


def test_the_wheel_holds_the_routines_and_style_sheets_and_no_tests(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    for name in ("year", "daily", "short", "review"):
        assert f"warmup/routines/{name}.toml" in names
    assert {f"warmup/tui/{path.name}" for path in (ROOT / "warmup" / "tui").glob("*.tcss")} <= names
    assert not [name for name in names if name.startswith("tests/")]


@pytest.mark.slow
def test_an_installed_copy_finds_its_own_routines(wheel: Path, tmp_path: Path) -> None:
    site = tmp_path / "site"
    zipfile.ZipFile(wheel).extractall(site)
    environ = {**os.environ, "PYTHONPATH": str(site)}
    code = "import warmup.config.places as d; print(d.routines_folder())"
    where = subprocess.run(
        [sys.executable, "-c", code], cwd=tmp_path, env=environ, capture_output=True, text=True, check=True
    )
    assert Path(where.stdout.strip()) == site / "warmup" / "routines"
    command = [sys.executable, "-m", "warmup", "today"]
    printed = subprocess.run(command, cwd=tmp_path, env=environ, capture_output=True, text=True, check=True)
    assert "Prompt 1 of" in printed.stdout


def test_an_editable_install_finds_those_of_the_repository() -> None:
    assert routines_folder() == ROOT / "routines"
