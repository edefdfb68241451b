"""The scripts of tests/benchmarks: asked for help they help, and what they don't know they refuse."""

import runpy
import sys
from pathlib import Path

import pytest

FOLDER = Path(__file__).parent / "benchmarks"
SCRIPTS = [
    *(
        f"tests.benchmarks.{path.stem}"
        for path in sorted(FOLDER.glob("[a-z]*.py"))
        if '__name__ == "__main__"' in path.read_text("utf-8")
    ),
    "tests.bank",
]


def run(script: str, *words: str) -> int:
    """The exit code of a script that ends by itself before it does anything."""
    argv, sys.argv = sys.argv, [script, *words]
    try:
        with pytest.raises(SystemExit) as ended:
            runpy.run_module(script, run_name="__main__")
    finally:
        sys.argv = argv
    return int(ended.value.code or 0)


@pytest.fixture
def nothing_is_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An empty folder to stand in, and no way to make a folder or write a file by a path."""
    monkeypatch.chdir(tmp_path)

    def refuse(path: Path, *_args: object, **_more: object) -> None:
        raise AssertionError(f"{path} was to be made")

    for name in ("mkdir", "write_text", "write_bytes"):
        monkeypatch.setattr(Path, name, refuse)


def test_the_scripts_are_found() -> None:
    assert "tests.benchmarks.contact_sheet" in SCRIPTS and len(SCRIPTS) > 10


@pytest.mark.slow
@pytest.mark.usefixtures("nothing_is_made")
@pytest.mark.filterwarnings("ignore:.*found in sys.modules.*:RuntimeWarning")
@pytest.mark.parametrize("script", SCRIPTS)
def test_help_is_help_and_does_nothing_else(script: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(script, "--help") == 0
    assert capsys.readouterr().out.startswith("usage: ")
    assert not list(Path.cwd().iterdir())


@pytest.mark.usefixtures("nothing_is_made")
@pytest.mark.filterwarnings("ignore:.*found in sys.modules.*:RuntimeWarning")
@pytest.mark.parametrize("script", SCRIPTS)
def test_what_is_not_known_is_refused(script: str, capsys: pytest.CaptureFixture[str]) -> None:
    for words in (("--no-such-option",), ("folder", "no such kind")):
        assert run(script, *words) == 2
    assert capsys.readouterr().err.count("usage: ") == 2
    assert not list(Path.cwd().iterdir())
