"""``warmup sheets``: the list, a page in a new file, nothing written over."""

import datetime as dt
from pathlib import Path

import pytest

from tests.household import FAMILY, TODAY
from warmup.cli.main import DONE, UNUSABLE, USAGE, main
from warmup.config import family as families
from warmup.sheets.kinds import kinds


def run(*argv: str) -> int:
    return main(("sheets", *argv), lambda: dt.datetime.combine(TODAY, dt.time(8)))


def test_it_lists_the_kinds(capsys: pytest.CaptureFixture[str]) -> None:
    assert run() == DONE
    said = capsys.readouterr().out
    assert all(name in said and sheet.about in said for name, sheet in kinds().items())
    assert max(map(len, said.splitlines())) <= 100


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
