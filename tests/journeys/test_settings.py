"""The settings in a pseudo-terminal: left, nothing is changed on disk; saved, just what was changed."""

import sys
import time
import tomllib
from pathlib import Path

if sys.platform == "win32":
    collect_ignore = ["test_settings.py"]

from tests.journeys.real_morning import past_questions
from tests.terminal import WARMUP, Terminal, environment
from warmup.tui.guards import LANDING

FILE = """# The family, by hand.
format = 1
[school] # at home
first_day = 2026-08-31
began = 2999-01-01 # so that no morning is missed
[[child]]
nickname = "Bean" # as ever
reads = false
[preferences]
adult = "Mom" # or Dad
"""


def open_settings(terminal: Terminal) -> None:
    """From the opening to the page, through the menu."""
    time.sleep(LANDING.total_seconds() + 0.1)
    terminal.press(".")
    terminal.wait("Menu")
    time.sleep(LANDING.total_seconds() + 0.1)
    # To the end of the list by its key; settings is the fifth from there.
    for key in ("\x1b[F", *["up"] * 4):
        terminal.press(key)
        time.sleep(0.12)
    terminal.press("enter")
    terminal.wait("Settings: Space changes a line")
    time.sleep(LANDING.total_seconds() + 0.1)


def test_left_nothing_is_changed_and_saved_just_what_was_changed(home: Path) -> None:
    home.mkdir(exist_ok=True)
    file = home / "family.toml"
    file.write_text(FILE, "utf-8")
    with Terminal(WARMUP, environment(home), rows=40, columns=120) as terminal:
        past_questions(terminal, "nothing is asked yet")
        open_settings(terminal)
        terminal.press(*"Pip")
        terminal.wait("Pip")
        terminal.press("\x1b")
        terminal.wait("Nothing was changed.")
        assert file.read_text("utf-8") == FILE and not (home / "family.toml.bak").exists()
        open_settings(terminal)
        terminal.press(*"Pip")
        terminal.wait("Pip")
        for _ in range(9):
            terminal.press("\t")
            time.sleep(0.05)
        terminal.press(*"Dad")
        terminal.wait("Dad")
        terminal.press("enter")
        terminal.wait("Saved: who marks and nickname.")
        terminal.press("8")
        assert terminal.finish() == 0
    text = file.read_text("utf-8")
    for remark in ("# The family, by hand.", "# at home", "# so that no morning", "# as ever", "# or Dad"):
        assert remark in text
    was, now = tomllib.loads(FILE), tomllib.loads(text)
    assert now["preferences"] == {"adult": "Dad"} and now["school"] == was["school"]
    assert now["child"] == [{"nickname": "Pip", "reads": False, "record": "Bean"}]
    assert now.keys() == was.keys()
    assert (home / "family.toml.bak").read_text("utf-8") == FILE
