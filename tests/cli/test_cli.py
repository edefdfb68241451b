"""The command line: what it prints, what it refuses, and what it must not load."""

import datetime as dt
import json
import os
import re
import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest

from tests.bank import recomputed
from tests.household import context_at
from warmup import skills
from warmup.cli.main import DONE, UNUSABLE, USAGE, WRONG, main
from warmup.cli.plain import SMALL_THINGS
from warmup.journal.routine_json import FORMAT, VERSION, prompt_data, routine_from
from warmup.model import Opening
from warmup.session.words import has_small_things

ROOT = Path(__file__).parents[2]
NOW = dt.datetime(2026, 11, 25, 8)


def run(*argv: str) -> int:
    """The exit code of a command, run here; argparse's own exits as codes."""
    try:
        return main(argv, lambda: NOW)
    except SystemExit as ended:
        return int(ended.code or 0)


def python(code: str, **more: str) -> str:
    """What a fresh Python prints."""
    environ = {**os.environ, **more}
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=environ, cwd=ROOT, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.mark.slow
@pytest.mark.parametrize(
    "argv",
    [
        "",
        "--help",
        "today --plain",
        "ask make-ten",
        "check",
        "check --settings",
        "--demo today",
        "--demo week",
        "--demo ready",
    ],
)
def test_nothing_of_textual_is_loaded_to_print(argv: str) -> None:
    code = f"""
import sys, io, contextlib
import warmup.cli.main
out = io.StringIO()
with contextlib.redirect_stdout(out), contextlib.redirect_stderr(out):
    if {argv!r}:
        try:
            warmup.cli.main.main({argv!r}.split())
        except SystemExit:
            pass
print(sorted(name for name in sys.modules if name.split(".")[0] in ("textual", "rich")))
"""
    assert python(code).strip() == "[]"


@pytest.mark.slow
def test_what_edits_toml_is_loaded_by_a_save_alone(home: Path) -> None:
    """Neither on the way to the first frame nor by printing; the first key that saves loads it."""
    code = """
import datetime as dt, sys
def loaded():
    return sorted({"tomlkit", "tomli_w", "warmup.config.saving"} & set(sys.modules))
from pathlib import Path
import warmup.cli.main, warmup.tui.app, warmup.cli.printing, warmup.tui.morning
from warmup.session.context import load_family, open_context
from warmup.config.places import Places
from warmup.journal.journal import Journal
places = Places(Path(sys.argv[1]), Path(sys.argv[1]))
family, saved = load_family(places, dt.date(2026, 11, 25))
context = open_context(places, family, dt.date(2026, 11, 25), Journal.open(places.data, dt.datetime.now))
context.routine()
print(loaded())
context.editor.prefer(theme="light")
print(loaded())
"""
    home.mkdir()
    (home / "family.toml").write_text('school.first_day = 2026-08-31\n[[child]]\nnickname = "Bean"\n')
    done = subprocess.run(
        [sys.executable, "-c", code, str(home)], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout.split("\n")[:2] == ["[]", "['tomlkit', 'warmup.config.saving']"]


@pytest.mark.slow
def test_everything_imports_where_there_is_no_posix() -> None:
    code = """
import sys, pkgutil, importlib
for name in ("fcntl", "termios", "pwd", "grp", "resource"):
    sys.modules[name] = None
import warmup
for module in pkgutil.walk_packages(warmup.__path__, "warmup."):
    # Textual's own driver for this system is chosen only when an app runs.
    if not module.name.endswith("__main__"):
        importlib.import_module(module.name)
print("imported")
"""
    assert python(code).strip() == "imported"


@pytest.mark.slow
def test_importing_writes_nothing(home: Path) -> None:
    python("import warmup.tui.app, warmup.cli.main, warmup.journal.journal, warmup.cli.demo")
    assert not home.exists()


def test_plain_says_the_day_and_everything_of_a_prompt(
    capsys: pytest.CaptureFixture[str], home: Path
) -> None:
    assert run("today") == DONE
    out, err = capsys.readouterr()
    assert "Wednesday, November 25, 2026" in out
    assert "School day 51, week 13, quarter 2." in out
    assert "Unlocked this quarter:" in out and "under three" in out
    opening, first = out.index("\nOpening, said and not asked: "), out.index("\nPrompt 1 of 7")
    assert 0 < opening < first and "November twenty-fifth." in out[opening:first]
    for label in ("Say:", "Answer:", "Working:", "Cue 1:", "Cue 2:", "Cue 3:", "Watch for:", "Why today:"):
        assert out.count(f"\n{label}") == 7, label
    assert err.count("\n") == 1 and "no family.toml yet" in err
    assert not home.exists(), "printing wrote something"
    assert not any(ord(letter) < 32 and letter != "\n" for letter in out)


def test_json_carries_what_the_answers_were_computed_from(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("today", "--json", "--date", "2027-03-03") == DONE
    data = json.loads(capsys.readouterr().out)
    assert (data["format"], data["version"]) == (FORMAT, VERSION)
    assert data["morning"]["date"] == "2027-03-03"
    routine = routine_from(json.dumps(data))
    assert data["opening"]["say"].endswith(".") and routine.opening == Opening(**data["opening"])
    assert [prompt_data(prompt) for prompt in routine.prompts] == data["prompts"]
    for prompt in routine.prompts:
        assert prompt.given and recomputed(prompt) is None


def test_without_answers_none_is_printed(capsys: pytest.CaptureFixture[str]) -> None:
    run("today", "--no-answers")
    assert "\nAnswer:" not in capsys.readouterr().out
    run("today", "--no-answers", "--json")
    assert all("answer" not in prompt for prompt in json.loads(capsys.readouterr().out)["prompts"])


@pytest.mark.parametrize("skill", skills.SKILLS)
def test_ask_makes_prompts_of_every_kind(skill: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert run("ask", skill, "--count", "3", "--json", "--seed", "s", "--date", "2026-10-19") == DONE
    first = capsys.readouterr().out
    assert len(json.loads(first)["prompts"]) == 3
    run("ask", skill, "--count", "3", "--json", "--seed", "s", "--date", "2026-10-19")
    assert capsys.readouterr().out == first, "the same seed, the same prompts"
    run("ask", skill, "--level", "1", "--plain", "--date", "2026-10-19")
    assert "Say: " in capsys.readouterr().out


def test_prompts_by_themselves_warn_of_what_is_small(capsys: pytest.CaptureFixture[str]) -> None:
    for skill, small in (("coins", True), ("weekday", False)):
        run("ask", skill, "--date", "2026-10-19")
        said = capsys.readouterr().out
        assert has_small_things(*re.findall("Wants: (.*)", said)) == small == (SMALL_THINGS in said)


@pytest.mark.parametrize(
    ("argv", "says"),
    [
        ("ask make-tne", "did you mean"),
        ("check --setings", "--setings"),
        ("ask make-ten --level 9", "there is see-places"),
        ("ask make-ten --item nine-nine", "there is"),
        ("ask make-ten --count 0", "1 to 10000"),
        ("today --date soon", "a date like 2026-09-01"),
        ("today --date 9999-12-31", "1900 to 2200"),
        ("today --child Nobody", "Nobody"),
        ("nonsense", "nonsense"),
    ],
)
def test_what_is_not_understood_says_so_in_a_sentence(
    argv: str, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(*argv.split()) == USAGE
    err = capsys.readouterr().err
    assert says.casefold() in err.casefold() and "Traceback" not in err


def test_check_names_the_paths_and_finds_nothing_wrong(
    capsys: pytest.CaptureFixture[str], home: Path
) -> None:
    assert run("check") == DONE
    out = capsys.readouterr().out
    assert str(home / "family.toml") in out and "Everything can be read." in out


BAD = {
    "empty": b"",
    "binary": bytes(range(256)) * 4,
    "wrong type": b"[school]\nfirst_day = 7\n[[child]]\nnickname = 'Pip'\n",
    "torn": b"[school\nfirst_day",
    "newer": b"format = 99\n",
}


@pytest.mark.parametrize("content", BAD.values(), ids=BAD.keys())
@pytest.mark.parametrize("name", ["family.toml", "year.toml", "daily.toml"])
def test_a_bad_file_gets_a_sentence_and_is_left_alone(
    name: str, content: bytes, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home.mkdir()
    (home / name).write_bytes(content)
    assert run("today") == UNUSABLE
    err = capsys.readouterr().err
    assert name in err and "Traceback" not in err
    assert run("check") == WRONG
    assert name in capsys.readouterr().out
    assert (home / name).read_bytes() == content


def test_a_file_of_100_megabytes_is_not_read(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home.mkdir()
    with (home / "family.toml").open("wb") as file:
        file.truncate(100 * 1024 * 1024)
    assert run("today") == UNUSABLE
    assert "family.toml" in capsys.readouterr().err


@pytest.mark.slow
def test_a_reader_that_goes_away_is_no_trouble() -> None:
    command = f"{sys.executable} -m warmup ask count --count 10000 | head -1"
    done = subprocess.run(command, shell=True, capture_output=True, text=True, cwd=ROOT, check=False)
    assert done.stdout.startswith("Prompt 1") and done.stderr.count("\n") <= 1 and "Error" not in done.stderr


@pytest.mark.slow
def test_the_demo_through_a_pipe_holds_five_kinds_on_any_date(
    capsys: pytest.CaptureFixture[str], home: Path
) -> None:
    for day in (dt.date(2026, 11, 25), dt.date(2026, 11, 28), dt.date(2027, 1, 1), dt.date(2028, 2, 29)):
        assert main(["--demo"], partial(dt.datetime.combine, day, dt.time(8))) == DONE
        out = capsys.readouterr().out
        assert "week 31" in out and "School day" in out
        for kind in ("Days of the week, the day before or after", "Count on,", "Coin totals,", "Make ten,"):
            assert kind in out, (day, kind)
    assert not home.exists(), "the demo touched the family's own place"


@pytest.mark.slow
@pytest.mark.parametrize(
    "command", ["today --json --date 2027-03-03", "ask make-ten --json --date 2027-03-03"]
)
def test_without_a_family_a_date_gives_one_routine_whatever_the_clock_says(
    command: str, home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Twenty dates over two years, a leap day and both ends of a year among them."""
    days = [dt.date(2026, 1, 1) + dt.timedelta(38 * n) for n in range(17)]
    days += [dt.date(2026, 12, 31), dt.date(2027, 7, 1), dt.date(2028, 2, 29)]
    printed = set()
    for day in days:
        assert main(command.split(), partial(dt.datetime.combine, day, dt.time(8))) == DONE
        printed.add(capsys.readouterr().out)
    assert len(printed) == 1 and json.loads(printed.pop())["prompts"]


@pytest.mark.slow
def test_the_routine_is_the_same_in_another_process_hash_seed_and_time_zone() -> None:
    code = "import warmup.cli.main; warmup.cli.main.main(['today', '--json', '--date', '2027-03-03'])"
    one = python(code, PYTHONHASHSEED="1", TZ="Pacific/Auckland")
    other = python(code, PYTHONHASHSEED="2", TZ="America/Los_Angeles")
    assert one == other and json.loads(one)["prompts"]


def test_the_last_morning_of_the_year_has_a_close_of_its_own(
    capsys: pytest.CaptureFixture[str], home: Path
) -> None:
    home.mkdir()
    (home / "family.toml").write_text('school.first_day = 2026-08-31\n[[child]]\nnickname = "Bean"\n')
    run("today", "--date", "2027-05-06")
    last = capsys.readouterr().out.splitlines()[-1]
    assert last.startswith(
        "To close with: That was the last school day of the year: one hundred forty-four school"
    )
    run("today", "--json", "--date", "2027-05-06")
    assert json.loads(capsys.readouterr().out)["closing"] == last.removeprefix("To close with: ")
    run("today", "--date", "2027-05-05")
    assert "To close with" not in capsys.readouterr().out
    run("today", "--json", "--date", "2027-05-05")
    assert json.loads(capsys.readouterr().out)["closing"] == ""


def test_a_clock_that_was_set_wrong_is_said_in_a_sentence(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    context_at(home, lambda: NOW)
    for year in (1, 1899, 2201, 9999):
        assert main(["today"], partial(dt.datetime, year, 12, 31)) == UNUSABLE
        said = capsys.readouterr()
        assert not said.out and said.err == (
            f"warmup: clock: expected a year from 1900 to 2200, found {year}. Set this machine’s date.\n"
        )
        assert main(["guide"], partial(dt.datetime, year, 12, 31)) == DONE
        capsys.readouterr()
