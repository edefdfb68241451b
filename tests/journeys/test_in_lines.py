"""``warmup --plain`` as it is used: through a pipe, and at a terminal that draws nothing."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.journeys.real_morning import QUESTIONS, history, past_questions
from tests.terminal import WARMUP, Terminal, environment
from warmup.model import Mark

PLAIN = (*WARMUP, "--plain")
MARKS = {"w": Mark.FLUENT, "s": Mark.HESITATED, "n": Mark.NOT_YET, "-": Mark.SKIPPED}


def test_a_whole_first_morning_through_a_pipe(home: Path) -> None:
    """The form, what is asked on some dates, the opening, five prompts, the close."""
    code = """
import sys
from warmup.cli.main import main
code = main(["--plain"])
print(sorted(name for name in sys.modules if name.split(".")[0] in ("textual", "rich", "readline")), code)
"""
    form, letters = [""] * 6, ["w", "s", "n", "-", "e", "w"]
    # An Enter for each question that comes first on some dates: it does not count, no reader yet.
    for extra in ([], [""], ["", ""]):
        lines = [*form, *extra, "", *letters, "m", "m", "l", "", "?", *["w"] * 8, "t", ""]
        done = subprocess.run(
            [sys.executable, "-c", code],
            input="\n".join(lines),
            env=environment(home / str(len(extra))),
            capture_output=True,
            text=True,
            check=True,
        )
        if sum(question in done.stdout for question in QUESTIONS) == len(extra):
            break
    assert done.stderr == "" and done.stdout.splitlines()[-1] == "[] 0", "it loaded what only a screen needs"
    assert "That was today’s warm-up." in done.stdout and done.stdout.isprintable() is False
    assert "\x1b" not in done.stdout and "\r" not in done.stdout
    made = [MARKS[letter] for letter in letters if letter in MARKS]
    assert history(home / str(len(extra)))[: len(made)] == made


@pytest.mark.slow
def test_a_morning_at_a_dumb_terminal_a_kill_and_the_close(home: Path) -> None:
    environ = environment(home, TERM="dumb")
    with Terminal(PLAIN, environ, rows=200) as terminal:
        for label in (
            "Nickname",
            "First school day",
            "School weekdays",
            "Enter all of them",
            "Today is in",
            "Enter begin",
        ):
            terminal.wait(label)
            terminal.press("enter")
        past_questions(terminal, "Enter next")
        terminal.press("enter")
        terminal.wait("Prompt 1 of")
        terminal.press("s", "enter")
        terminal.wait("Prompt 2 of")
        terminal.kill()
        assert b"\x1b" not in terminal.written
    assert history(home)[0] is Mark.HESITATED
    with Terminal(PLAIN, environ, rows=200) as terminal:
        shown = terminal.wait("Prompt 2 of")
        total = int(shown.split("Prompt 2 of ")[1].split(".")[0])
        for number in range(3, total + 1):
            terminal.press("enter")
            terminal.wait(f"Prompt {number} of")
        terminal.press("w", "enter")
        terminal.wait("That was today’s warm-up.")
        terminal.press("t", "enter")
        terminal.wait("Marked came easily")
        terminal.press("enter")
        assert terminal.finish() == 0
        assert b"\x1b" not in terminal.written
    assert history(home) == [Mark.HESITATED, *[Mark.FLUENT] * (total - 1)]


def test_bytes_that_are_no_text_get_a_sentence(home: Path) -> None:
    odd = (b"\xff\xfe\x00\x1b[2J", b"\x1b]0;title\x07x", b"\xed\xa0\x80 z", b"x" * 100_000)
    done = subprocess.run(
        [*PLAIN, "--demo"], input=b"\n".join(odd), env=environment(home), capture_output=True, check=True
    )
    assert done.stdout.count(b" is none of these: ") == len(odd)
    assert b"\x1b" not in done.stdout and done.stderr == b"" and len(done.stdout) < 10_000


def test_a_reader_that_goes_away_is_no_trouble(home: Path) -> None:
    with subprocess.Popen(
        [*PLAIN, "--demo"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=environment(home),
    ) as running:
        assert running.stdin and running.stdout and running.stderr
        running.stdout.readline()
        running.stdout.close()
        running.stdin.write(b"\n" * 50)
        running.stdin.close()
        assert running.stderr.read() == b"" and running.wait() == 0


@pytest.mark.parametrize("how", ["\x04", "\x03"], ids=["end of input", "Ctrl-C"])
def test_the_end_of_the_input_and_ctrl_c_end_it_quietly(how: str, home: Path) -> None:
    with Terminal([*PLAIN, "--demo"], environment(home, TERM="dumb"), rows=80) as terminal:
        terminal.wait("Enter next")
        terminal.press("enter")
        terminal.wait("Prompt 1 of")
        terminal.press(how)
        assert terminal.finish() == 0
        assert "Traceback" not in terminal.text() and "warmup:" not in terminal.text()
    assert not home.exists()
