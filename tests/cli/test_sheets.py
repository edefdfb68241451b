"""``warmup sheets``: the list, a page in a new file, nothing written over."""

import datetime as dt
import json
import re
from html import escape
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY
from warmup.cli.main import DONE, UNUSABLE, USAGE, main
from warmup.config import family as families
from warmup.config.places import Places
from warmup.session.context import open_context
from warmup.session.gaming import told, week_games
from warmup.sheets.kinds import kinds
from warmup.text import quoted


def run(*argv: str) -> int:
    return main(("sheets", *argv), lambda: dt.datetime.combine(TODAY, dt.time(8)))


def test_it_lists_the_kinds(capsys: pytest.CaptureFixture[str]) -> None:
    assert run() == DONE
    said = capsys.readouterr().out
    assert all(name in said and sheet.about in said for name, sheet in kinds().items())
    assert max(map(len, said.splitlines())) <= 100


def test_a_second_page_of_a_day_has_a_name_of_its_own(
    home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    families.save(home / "family.toml", FAMILY)
    monkeypatch.chdir(tmp_path)
    for kind in ("coins", "ten-frames", "games"):
        assert run(kind) == DONE
    first, second, third = (f"warmup-sheets-{TODAY}{more}.html" for more in ("", "-2", "-3"))
    assert sorted(path.name for path in tmp_path.glob("*.html")) == sorted((first, second, third))
    assert "Ten frames" in (tmp_path / second).read_text("utf-8")


def test_a_page_in_a_new_file_and_never_over_another(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    families.save(home / "family.toml", FAMILY)
    target = tmp_path / "month.html"
    assert run("month-page", "ten-frames", "--paper", "a4", "--out", str(target)) == DONE
    page = target.read_text("utf-8")
    # Monday to Thursday from August 31 on, no day off: counted by the standard library.
    days = (FAMILY.first_day + dt.timedelta(n) for n in range((TODAY - FAMILY.first_day).days + 1))
    number = sum(day.weekday() < 4 for day in days)
    assert "size: A4;" in page and f">day {number}</text>" in page and page.count("<svg") == 3
    assert "3 pages" in capsys.readouterr().out
    assert run("coins", "--out", str(target)) == UNUSABLE and target.read_text("utf-8") == page


def test_another_kind_is_refused_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert run("ten-frame") == USAGE
    assert "ten-frames" in capsys.readouterr().err


@pytest.mark.slow
def test_what_this_week_uses_is_ticked_once_and_then_left_out(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    families.save(home / "family.toml", FAMILY._replace(began=TODAY, known_until=TODAY))
    assert main(("today", "--brief"), lambda: dt.datetime.combine(TODAY, dt.time(8))) == DONE
    assert run("week", "--printed", "--out", str(tmp_path / "week.html")) == DONE
    printed = families.load(home / "family.toml").printed
    assert printed and "Checked off as printed" in capsys.readouterr().out
    assert run("week", "--out", str(tmp_path / "again.html")) == DONE
    assert "on paper" in capsys.readouterr().out and not (tmp_path / "again.html").exists()
    # Ticks can be taken back, as all that is done that day.
    assert main(("catch-up", f"{TODAY}", "--undo"), lambda: dt.datetime.combine(TODAY, dt.time(8))) == DONE
    assert families.load(home / "family.toml").printed == ()


@pytest.mark.slow
def test_today_is_one_page_with_the_very_prompts_of_the_brief(
    home: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    families.save(home / "family.toml", FAMILY._replace(began=TODAY, known_until=TODAY))
    target = tmp_path / "today.html"
    assert run("today", "--out", str(target)) == DONE
    page = target.read_text("utf-8")
    capsys.readouterr()
    assert main(("today", "--json"), lambda: dt.datetime.combine(TODAY, dt.time(8))) == DONE
    prompts = json.loads(capsys.readouterr().out)["prompts"]
    assert page.count("<svg") == 1 and len(prompts) > 3
    flat = "".join(re.sub(r"<[^>]*>", " ", page).split())
    for prompt in prompts:
        assert "".join(escape(quoted(prompt["say"])).split()) in flat
    assert page.count("rotate(180") >= len(prompts)
    assert run("today", "coins") == USAGE


@pytest.mark.slow
def test_the_games_of_the_week_are_one_page_with_every_word_of_them(home: Path, tmp_path: Path) -> None:
    families.save(home / "family.toml", FAMILY._replace(began=TODAY, known_until=TODAY))
    target = tmp_path / "games.html"
    assert run("games", "--out", str(target)) == DONE
    page = target.read_text("utf-8")
    flat = "".join(re.sub(r"<[^>]*>", " ", page).split())
    places = Places(home, home)
    found = week_games(open_context(places, families.load(home / "family.toml"), TODAY, None))
    assert page.count("<svg") == 1 and len(found) > 2
    for each in found:
        for words in (each.game.name, *(sentence for _, sentence in told(each))):
            assert "".join(escape(words).split()) in flat
    assert run("games", "coins") == USAGE
