"""Completion in a shell: the real program, asked as argcomplete's own script for bash asks it."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from warmup.cli.commands import COMMANDS
from warmup.guide import NAMES


def completed(line: str, home: Path, program: str = "from warmup.cli.main import main; main()") -> list[str]:
    """The words that may come next; the program writes them to its descriptor 8."""
    asked = {"_ARGCOMPLETE": "1", "COMP_LINE": line, "COMP_POINT": str(len(line)), "COMP_TYPE": "9"}
    read, write = os.pipe()
    code = f"import os, sys; os.dup2({write}, 8); sys.argv = ['warmup']; {program}"
    found = subprocess.run(
        [sys.executable, "-c", code],
        env={**os.environ, **asked, "_ARGCOMPLETE_IFS": "\n", "WARMUP_HOME": str(home)},
        pass_fds=(write,),
        cwd=home,
        capture_output=True,
        check=False,
    )
    os.close(write)
    with os.fdopen(read) as answer:
        words = [word.strip() for word in answer.read().split("\n") if word]
    assert found.stdout == b"" and b"Traceback" not in found.stderr
    return words


@pytest.mark.slow
def test_commands_topics_skills_items_and_files(tmp_path: Path) -> None:
    (tmp_path / "theirs.db").write_bytes(b"")
    assert {*completed("warmup ", tmp_path)} >= {command.name for command in COMMANDS}
    assert {*completed("warmup guide ", tmp_path)} >= {*NAMES}
    assert completed("warmup ask make", tmp_path) == ["make-ten"]
    assert "make-ten/seven-three" in completed("warmup why make-ten/se", tmp_path)
    assert completed("warmup merge the", tmp_path) == ["theirs.db"]
    assert completed("warmup --child ", tmp_path) == []
    assert [each.name for each in tmp_path.iterdir()] == ["theirs.db"]


@pytest.mark.slow
def test_without_argcomplete_nothing_is_answered(tmp_path: Path) -> None:
    program = "sys.modules['argcomplete'] = None; from warmup.cli.main import main; main()"
    assert completed("warmup ", tmp_path, program) == []
