"""The real program in a pseudo-terminal, typed at as an adult would."""

import sys
import time
from pathlib import Path

import pytest

if sys.platform == "win32":
    collect_ignore = ["test_a_day.py"]

from tests.journeys.real_morning import history, past_questions
from tests.terminal import WARMUP, Terminal, environment
from warmup.config.family import load
from warmup.model import Mark
from warmup.tui.guards import LANDING

FOOT = "? all keys"
"""The last key at the foot of the opening, a prompt and the close."""


def past_what_is_asked(terminal: Terminal) -> None:
    """From the first form over what is asked on some dates to the first prompt."""
    terminal.wait("Nickname")
    terminal.press("enter")
    past_questions(terminal, "nothing is asked yet")
    # Both keys mean "go on" there, and a second one at once would be taken for a bounce.
    time.sleep(LANDING.total_seconds() + 0.1)
    terminal.press("right")
    terminal.wait("came easily")


def test_a_first_morning_a_kill_and_the_close(home: Path) -> None:
    """Three keys at most to the first prompt; a mark outlives a kill; the close ends the program with 0."""
    with Terminal(WARMUP, environment(home)) as terminal:
        past_what_is_asked(terminal)
        terminal.press("up")
        shown = terminal.wait("2 of ")
        terminal.kill()
    assert history(home)[0] is Mark.FLUENT
    with Terminal(WARMUP, environment(home)) as terminal:
        again = terminal.wait("2 of ")
        said = [line[40:].strip() for line in shown.splitlines()[3:5]]
        assert all(line in again for line in said), "the morning did not come back on the same prompt"
        total = int(again.split("2 of ")[1].split()[0])
        for number in range(3, total + 1):
            terminal.press("right")
            terminal.wait(f"{number} of ")
        terminal.press("right")
        terminal.wait("those came easily too")
        terminal.press("t")
        terminal.wait("Marked came easily")
        terminal.press("enter")
        assert terminal.finish() == 0
    assert history(home) == [Mark.FLUENT] * total


def test_a_nickname_typed_in_one_burst_with_enter_is_taken_whole(home: Path) -> None:
    """As from a paste, or on a machine that is busy: the line has its letters before the form is taken."""
    with Terminal(WARMUP, environment(home)) as terminal:
        terminal.wait("Nickname")
        terminal.press(*"Pumpkin", "enter")
        past_questions(terminal, "nothing is asked yet")
        terminal.press("8")
        assert terminal.finish() == 0
    assert [child.nickname for child in load(home / "family.toml").children] == ["Pumpkin"]


def test_two_windows_lose_nothing(home: Path) -> None:
    with Terminal(WARMUP, environment(home)) as one:
        past_what_is_asked(one)
        one.wait("1 of ")
        with Terminal(WARMUP, environment(home)) as other:
            other.wait("1 of ")
            one.press("up")
            one.wait("2 of ")
            other.press("right")
            other.wait("2 of ")
            other.press("down")
            other.wait("3 of ")
    assert history(home)[:2] == [Mark.FLUENT, Mark.HESITATED]


def test_ctrl_c_and_q_end_it_quietly(home: Path) -> None:
    for key in ("q", "8"):
        with Terminal(WARMUP, environment(home)) as terminal:
            if "Nickname" in terminal.wait(lambda text: "Nickname" in text or FOOT in text):
                terminal.press("enter")
                terminal.wait(lambda text: FOOT in text or "Does it count" in text)
            terminal.press(key)
            assert terminal.finish() == 0


@pytest.mark.parametrize(
    "more", [{}, {"NO_COLOR": "1"}, {"COLORTERM": "", "TERM": "xterm-256color"}], ids=["true", "none", "256"]
)
def test_the_demo_opens_in_any_colors(home: Path, more: dict[str, str]) -> None:
    with Terminal([*WARMUP, "--demo"], environment(home, **more)) as terminal:
        terminal.wait(FOOT)
        terminal.press("q")
        assert terminal.finish() == 0
    assert not home.exists()


def test_a_bad_family_file_ends_with_a_sentence(home: Path) -> None:
    home.mkdir()
    (home / "family.toml").write_text("[school]\nfirst_day = 'soon'\n")
    with Terminal(WARMUP, environment(home)) as terminal:
        shown = []
        while terminal.read():
            shown.append(terminal.text())
        text = " ".join(terminal.text().split())
        assert "family.toml" in text and "line 2" in text and "Traceback" not in text
