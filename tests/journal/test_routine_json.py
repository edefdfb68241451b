"""A routine read back from anywhere: whole and harmless, or refused with a ValueError and nothing else."""

import datetime as dt
import json
import unicodedata
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.household import OPENING, TODAY, context_at, fixed_prompts
from warmup import skills
from warmup.cli.main import DONE, main
from warmup.cli.plain import routine_lines
from warmup.cli.printing import complain, show
from warmup.journal.journal import Journal
from warmup.journal.routine_json import routine_from, routine_text
from warmup.model import Morning, Prompt, Routine
from warmup.pictures import Picture
from warmup.session.context import Context

ESCAPE = "\x1b]0;hello\x07\x1b[31mred\u202egnola\u2066 \x9b2J\u200fend\nnext"


@pytest.fixture
def routine(home: Path, clock: Callable[[], dt.datetime]) -> Routine:
    return Routine("Bean", context_at(home, clock).morning(), "daily", fixed_prompts())


@pytest.fixture
def opened(routine: Routine) -> Routine:
    return routine._replace(opening=OPENING)


def places(value: Any, way: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """The way to every value in a piece of JSON."""
    yield way
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, part in parts:
        yield from places(part, (*way, key))


def changed(data: Any, way: tuple[str | int, ...], to: Any) -> str:
    """The JSON with another value at a place."""
    if not way:
        return json.dumps(to)
    data = json.loads(json.dumps(data))
    holder = data
    for key in way[:-1]:
        holder = holder[key]
    holder[way[-1]] = to(holder[way[-1]]) if callable(to) else to
    return json.dumps(data)


def texts(value: object) -> Iterator[str]:
    """Every text in a value, however deep."""
    match value:
        case str():
            yield value
        case tuple() | list():
            for part in value:
                yield from texts(part)
        case dict():
            for key, part in value.items():
                yield from texts(key)
                yield from texts(part)


def lines(routine: Routine, context: Context) -> list[str]:
    """The routine as it is printed; one with an item of no skill never is (see ``Context.stored``)."""
    known = all(skills.known(prompt.item) for prompt in routine.prompts)
    return list(routine_lines(routine, context)) if known else []


def test_every_field_has_a_reader(routine: Routine) -> None:
    data = json.loads(routine_text(routine))
    assert set(Morning._fields) == set(data["morning"])
    assert set(Prompt._fields) == set(data["prompts"][0])
    assert routine_text(routine_from(routine_text(routine))) == routine_text(routine)


@pytest.mark.slow
def test_any_value_in_any_place_gives_a_routine_that_can_be_used_or_a_value_error(
    opened: Routine, home: Path, clock: Callable[[], dt.datetime]
) -> None:
    context, data = context_at(home, clock), json.loads(routine_text(opened))
    data["prompts"] = data["prompts"][:2]
    read = refused = 0
    for way in places(data):
        for value in (None, True, "x", "", -1, 10**12, 10**30, 1.5, [], ["a"], {}, {"a": 1}, [[1]]):
            try:
                again = routine_from(changed(data, way, value))
            except ValueError:
                refused += 1
                continue
            read += 1
            assert all(isinstance(line, str) for line in lines(again, context))
            routine_text(again)
            for prompt in again.prompts:
                hash((prompt.say, prompt.accept, prompt.cues, prompt.picture, prompt.seconds, prompt.guess))
    assert read > 100 and refused > 500


def test_what_was_written_before_there_were_openings_is_read_and_has_none(routine: Routine) -> None:
    """A new field does not raise the version, and an older version reads past it."""
    data = json.loads(routine_text(routine._replace(opening=OPENING)))
    assert data["version"] == 2 and data["opening"] == {"say": OPENING.say, "table": OPENING.table}
    assert routine_from(json.dumps(data)) == routine._replace(opening=OPENING)
    del data["opening"]
    assert routine_from(json.dumps(data)) == routine and routine.opening is None


@pytest.mark.parametrize("opening", [7, "Today", [], {"say": "Today"}, {"say": 1, "table": ""}])
def test_an_opening_in_no_form_we_know_is_a_value_error(routine: Routine, opening: object) -> None:
    data = json.loads(routine_text(routine)) | {"opening": opening}
    with pytest.raises(ValueError):
        routine_from(json.dumps(data))


@pytest.mark.parametrize("missing", ["format", "version", "child", "shape", "morning", "prompts"])
def test_a_field_that_is_missing_is_a_value_error(routine: Routine, missing: str) -> None:
    data = json.loads(routine_text(routine))
    del data[missing]
    with pytest.raises(ValueError):
        routine_from(json.dumps(data))


@pytest.mark.parametrize("deep", ["[", '{"a":', '{"format": "warmup-routine", "given": ['])
def test_nesting_by_the_hundred_thousand_is_a_value_error(deep: str) -> None:
    close = "".join("]" if c == "[" else "}" for c in reversed(deep) if c in "[{")
    with pytest.raises(ValueError):
        routine_from(deep * 100_000 + "1" + close * 100_000)


@pytest.mark.slow
def test_no_text_of_a_routine_reaches_a_terminal_with_what_it_obeys(
    opened: Routine, home: Path, clock: Callable[[], dt.datetime]
) -> None:
    data, context = json.loads(routine_text(opened)), context_at(home, clock)
    data["prompts"][0]["given"] = {"who": ["Ann", {"what": "cup"}]}
    kept = {"format", "kind", "date", "previous", "next", "day"}
    fouled = 0
    for way in places(data):
        holder = data
        for key in way:
            holder = holder[key]
        if not isinstance(holder, str) or way[-1] in kept:
            continue
        again = routine_from(changed(data, way, lambda text: text + ESCAPE))
        fouled += 1
        everything = [*texts(json.loads(routine_text(again))), *lines(again, context)]
        for prompt in again.prompts:
            pictures = [picture for picture in (prompt.picture, *(c.picture for c in prompt.cues)) if picture]
            everything += [text for picture in pictures for text in said(picture)]
        for text in everything:
            bad = [c for c in text if unicodedata.category(c) in ("Cc", "Cf")]
            assert not bad, (way, text)
    assert fouled > 60


def said(picture: Picture) -> tuple[str, ...]:
    return (picture.words(), *picture.shows(), *picture.marked())


def test_a_merged_routine_of_escapes_prints_none(
    home: Path, clock: Callable[[], dt.datetime], capsys: pytest.CaptureFixture[str]
) -> None:
    context = context_at(home, clock)
    assert context.journal is not None
    foul = [
        prompt._replace(say=prompt.say + ESCAPE, watch_for=ESCAPE, why=ESCAPE, do=ESCAPE, table=ESCAPE)
        for prompt in fixed_prompts()
    ]
    rows = [(prompt.item, prompt.wording) for prompt in foul]
    other = Journal.open(home / "other", clock)
    text = routine_text(Routine("Bean" + ESCAPE, context.morning(), "daily" + ESCAPE, tuple(foul)))
    assert "\\u001b" in text and "\u202e" in text
    other.start("Bean", TODAY, "daily" + ESCAPE, text, rows)
    other.start("Pip" + ESCAPE, TODAY, "daily", text, rows)
    other.shut()
    context.journal.shut()
    noon = dt.datetime.combine(TODAY, dt.time(12))
    for command in (["merge", str(home / "other")], ["today"], ["today", "--json"], ["check"]):
        code = main(command, lambda: noon)
        out, err = capsys.readouterr()
        assert code == DONE or command == ["check"]
        for line in (out + err).splitlines():
            assert not [c for c in line if unicodedata.category(c) in ("Cc", "Cf")], (command, line)


def test_a_path_of_escapes_is_printed_without_them(
    home: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    foul = home / "a\x1b[31m\u202eb"
    foul.mkdir(parents=True)
    (foul / "own.toml").write_text("x")
    (foul / "family.toml").write_text("x = [")
    (foul / "journal.db").write_bytes(b"no journal" * 99)
    monkeypatch.setenv("WARMUP_HOME", str(foul))
    newer = foul / "newer.db"
    newer.write_bytes(b"SQLite format 3\0" + bytes(44) + (9).to_bytes(4, "big") + bytes(200))
    noon = dt.datetime.combine(TODAY, dt.time(12))
    for command in (["check"], ["today"], ["merge", str(foul / "none.db")], ["merge", str(newer)]):
        main(command, lambda: noon)
        out, err = capsys.readouterr()
        assert out + err
        for line in (out + err).splitlines():
            assert not [c for c in line if unicodedata.category(c) in ("Cc", "Cf")], (command, line)


def test_whatever_is_printed_is_cleaned_on_its_way_out(capsys: pytest.CaptureFixture[str]) -> None:
    show([f"  a line{ESCAPE}", "two  spaces stay"])
    complain(ESCAPE)
    out, err = capsys.readouterr()
    assert out.endswith("\ntwo  spaces stay\n") and err.startswith("warmup: ")
    assert not [c for c in (out + err).replace("\n", "") if unicodedata.category(c) in ("Cc", "Cf")]
