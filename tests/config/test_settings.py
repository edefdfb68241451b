"""Every setting of family.toml is listed with an example, and the list is what the parser reads."""

import tomllib
from contextlib import suppress
from pathlib import Path
from typing import Any

import pytest

from warmup.cli.main import DONE, main
from warmup.config.family import Family, parse, save
from warmup.config.settings import SETTINGS, Setting, lines
from warmup.config.toml_file import Document, FileProblem

ALL = [setting for _, settings in SETTINGS for setting in settings]
KeyPath = tuple[str, ...]


def family_of(text: str) -> Family:
    return parse(Document(Path("family.toml"), tomllib.loads(text), text))


def leaves(value: Any, way: KeyPath = ()) -> set[KeyPath]:
    """The ways to all plain values; places in lists are all one."""
    match value:
        case dict():
            return {found for key, inner in value.items() for found in leaves(inner, (*way, key))}
        case list():
            return {found for inner in value for found in leaves(inner, (*way, "*"))}
    return {way}


def furthest(ways: set[KeyPath]) -> set[KeyPath]:
    """The ways that lead no further: what is read of a list or table as a whole goes."""
    return {way for way in ways if not any(other[: len(way)] == way != other for other in ways)}


def test_the_list_holds_what_the_parser_reads_and_nothing_else(monkeypatch: pytest.MonkeyPatch) -> None:
    real, read = Document._look, set[KeyPath]()

    def look(self: Document, keys: tuple[str | int, ...]) -> Any:
        read.add(tuple("*" if isinstance(key, int) else key for key in keys))
        return real(self, keys)

    monkeypatch.setattr(Document, "_look", look)
    text = "\n".join(lines())
    family_of(text)
    wanted = furthest(read)
    assert furthest(leaves(tomllib.loads(text))) == wanted
    assert ("preferences", "adult") in wanted and ("child", "*", "opened", "*") in wanted


@pytest.mark.parametrize("setting", ALL, ids=lambda setting: setting.example)
def test_each_example_says_something_and_may_be_left_out_as_it_says(setting: Setting) -> None:
    """A line that may go leaves a family that reads, and another one: the example is not the default."""
    whole = list(lines())
    less = "\n".join(line for line in whole if line != setting.example)
    assert whole.count(setting.example) == 1
    if setting.otherwise in ("must be there", "yearly says it", "date says it", "the family's weeks"):
        with pytest.raises(FileProblem):
            family_of(less)
    else:
        same = family_of(less) == family_of("\n".join(whole))
        assert same is (setting.example == "format = 1")


def test_check_prints_them(capsys: pytest.CaptureFixture[str], home: Path) -> None:
    assert main(["check", "--settings"]) == DONE
    out = capsys.readouterr().out
    assert out.splitlines() == list(lines()) and family_of(out).animal == "Moose"
    assert not home.exists()
    for setting in ALL:
        assert f"# {setting.means} (" in out and len(setting.means) < 90


@pytest.mark.parametrize("field", Family._fields)
def test_each_field_that_is_read_has_an_example_and_is_written(field: str, tmp_path: Path) -> None:
    plain = family_of('[school]\nfirst_day = 2026-09-01\n[[child]]\nnickname = "Pip"')
    wanted = plain._replace(**{field: getattr(family_of("\n".join(lines())), field)})
    assert wanted != plain, f"no example of {field} in warmup/config/settings.py"
    kept = None
    with suppress(FileProblem):
        kept = save(tmp_path / "family.toml", wanted)
    assert kept == wanted, f"warmup/config/saving.py does not write {field}"
