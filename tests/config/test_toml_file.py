"""Files people edit: whatever is in them, the answer is values or one clear sentence with the line."""

import datetime as dt
import os
import stat
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from warmup.config.places import places, routines_folder
from warmup.config.toml_file import Document, FileProblem, Missing, read
from warmup.config.toml_lines import lines
from warmup.config.writing import write_toml
from warmup.text import clean, shown

quiet = settings(database=None, derandomize=True, deadline=None, max_examples=150)

TEXT = '''format = 1
[school]            # a comment with [brackets] and = signs
first_day = "soon"
"quoted key" = 1
days_off = [
  2026-11-26,  # one day

  {from = 2026-12-21, to = 2027-01-01},
]
words = """
[child]
nickname = "no"
"""
dotted.inner = 3

[[child]]
nickname = "Bean"

[[child]]
nickname = "Pip"
[child.extra]
a = 1
'''


def written(folder: Path, content: bytes | str) -> Path:
    path = folder / "family.toml"
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return path


def problem(folder: Path, content: bytes | str) -> FileProblem:
    with pytest.raises(FileProblem) as caught:
        read(written(folder, content))
    return caught.value


@pytest.mark.parametrize(
    ("keys", "line"),
    [
        (("format",), 1),
        (("school",), 2),
        (("school", "first_day"), 3),
        (("school", "quoted key"), 4),
        (("school", "days_off"), 5),
        (("school", "days_off", 0), 6),
        (("school", "days_off", 1), 8),
        (("school", "days_off", 1, "to"), 8),
        (("school", "words"), 10),
        (("school", "dotted", "inner"), 14),
        (("child",), 16),
        (("child", 0, "nickname"), 17),
        (("child", 1), 19),
        (("child", 1, "nickname"), 20),
        (("child", 1, "extra", "a"), 22),
        (("child", 2), None),
    ],
)
def test_every_key_has_its_line(keys: tuple[str | int, ...], line: int | None) -> None:
    assert Document(Path("x"), tomllib.loads(TEXT), TEXT).line_of(*keys) == line
    windows = TEXT.replace("\n", "\r\n")
    assert Document(Path("x"), tomllib.loads(windows), windows).line_of(*keys) == line


def test_a_problem_is_one_plain_sentence_with_file_line_key_and_a_way_out(tmp_path: Path) -> None:
    with pytest.raises(FileProblem) as caught:
        read(written(tmp_path, TEXT)).date("school", "first_day")
    assert str(caught.value) == (
        'family.toml, line 3, school.first_day: expected a date like 2026-08-31, found "soon". Fix that line.'
    )
    assert (caught.value.path, caught.value.line) == (tmp_path / "family.toml", 3)


def test_a_value_in_a_list_is_named_by_its_place_counted_from_one(tmp_path: Path) -> None:
    file = read(written(tmp_path, TEXT))
    with pytest.raises(FileProblem, match=r"family.toml, line 20, child 2.nickname: expected a whole number"):
        file.whole("child", 1, "nickname", least=1, most=2)


@pytest.mark.parametrize(
    ("content", "line", "word"),
    [
        ("format = 1\nname = \n", 2, "column 8"),
        ("a = 2026-02-30\n", 1, "TOML"),
        ("a = 1\na = 2\n", 2, "TOML"),
        ("a = 1\n[b", 2, "at its end"),
        (b"a = 1\nb = '\xff'\n", 2, "UTF-8"),
        (b"a = 1\n\n\x00", 3, "NUL"),
        ("a" + ".a" * 300_000 + " = 1", 1, "20000 characters in a line"),
        ("a = " + "[" * 19_000, None, "too deep or too long"),
        ("a = " + "9" * 19_000, None, "too deep or too long"),
    ],
)
def test_text_that_is_not_toml(tmp_path: Path, content: bytes | str, line: int | None, word: str) -> None:
    found = problem(tmp_path, content)
    assert found.line == line and word in str(found)


def test_what_is_no_file(tmp_path: Path) -> None:
    with pytest.raises(Missing):
        read(tmp_path / "family.toml")
    with pytest.raises(FileProblem, match="a folder"):
        read(tmp_path)
    with pytest.raises(FileProblem):
        read(tmp_path / "name\0with nul")
    with pytest.raises(FileProblem):
        read(tmp_path / ("long" * 100))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_pipe_is_refused_and_never_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "family.toml")
    with pytest.raises(FileProblem, match="something else"):
        read(tmp_path / "family.toml")


def test_a_hundred_megabytes_are_refused_unread(tmp_path: Path) -> None:
    path = written(tmp_path, "")
    with path.open("r+b") as file:
        file.truncate(100_000_000)
    with pytest.raises(FileProblem, match="100000000 bytes"):
        read(path)


def test_a_file_that_may_not_be_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # The tests may run as a user who may read everything, so the refusal is put in by hand.
    def refuse(*_args: object, **_kwargs: object) -> None:
        raise PermissionError(13, "Permission denied")

    path = written(tmp_path, "a = 1")
    monkeypatch.setattr(Path, "open", refuse)
    with pytest.raises(FileProblem, match="Permission denied"):
        read(path)


@pytest.mark.slow
@quiet
@given(st.binary(max_size=200))
def test_any_bytes_give_a_document_or_a_problem(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    path = written(tmp_path_factory.getbasetemp(), content)
    try:
        assert isinstance(read(path), Document)
    except FileProblem as found:
        assert "\n" not in str(found) and str(found).startswith("family.toml")


plain = st.one_of(
    st.booleans(), st.integers(-(2**60), 2**60), st.floats(allow_nan=False), st.dates(), st.text(max_size=30)
).filter(lambda v: not isinstance(v, str) or v.encode("utf-8", "ignore").decode() == v)
keys = st.text(st.characters(codec="utf-8"), max_size=12)
tables = st.recursive(
    st.dictionaries(keys, plain, max_size=4),
    lambda inner: st.dictionaries(
        keys, st.one_of(plain, inner, st.lists(st.one_of(plain, inner), max_size=3)), max_size=4
    ),
    max_leaves=12,
)


def ways(value: object, way: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    match value:
        case dict():
            inner = [w for key, v in value.items() for w in ways(v, (*way, key))]
        case list():
            inner = [w for n, v in enumerate(value) for w in ways(v, (*way, n))]
        case _:
            inner = []
    return [way, *inner] if way else inner


@pytest.mark.slow
@settings(quiet, max_examples=60)
@given(tables)
def test_what_is_written_is_read_again_and_every_key_is_found_on_a_line(
    tmp_path_factory: pytest.TempPathFactory, data: dict[str, object]
) -> None:
    path = tmp_path_factory.getbasetemp() / "round.toml"
    write_toml(path, data)
    file = read(path)
    assert file.data == data
    lost = [way for way in ways(data) if len(way) <= 8 and file.line_of(*way) is None]
    assert not lost


def test_writing_keeps_the_version_before_and_lets_nobody_else_read(tmp_path: Path) -> None:
    path = tmp_path / "new" / "family.toml"
    write_toml(path, {"a": 1})
    write_toml(path, {"a": 2})
    assert read(path).data == {"a": 2}
    assert read(path.with_name("family.toml.bak")).data == {"a": 1}
    assert sorted(p.name for p in path.parent.iterdir()) == ["family.toml", "family.toml.bak"]
    if os.name == "posix":
        assert [stat.S_IMODE(p.stat().st_mode) for p in (path, path.parent)] == [0o600, 0o700]


def test_a_link_to_the_file_stays_a_link(tmp_path: Path) -> None:
    real = tmp_path / "real.toml"
    real.write_text("a = 1\n")
    link = tmp_path / "family.toml"
    try:
        link.symlink_to(real)
    except OSError:
        pytest.skip("this system makes no links")
    write_toml(link, {"a": 2})
    assert link.is_symlink() and read(real).data == {"a": 2}


@pytest.mark.parametrize("broken", ["fsync", "replace"])
def test_a_disk_that_refuses_leaves_the_old_file_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, broken: str
) -> None:
    # A full or read-only disk, put in by hand: the tests may run as a user whom no mode stops.
    def refuse(*_args: object) -> None:
        raise OSError(28, "No space left on device")

    path = tmp_path / "family.toml"
    write_toml(path, {"a": 1})
    monkeypatch.setattr("os.fsync" if broken == "fsync" else "pathlib.Path.replace", refuse)
    with pytest.raises(FileProblem, match=r"No space left on device\. Nothing was changed"):
        write_toml(path, {"a": 2})
    assert [(p.name, read(p).data) for p in tmp_path.iterdir()] == [("family.toml", {"a": 1})]


@pytest.mark.parametrize("data", [{"a": object()}, {"a": None}, {"a": "\ud800"}, {1: 2}])
def test_values_toml_has_no_form_for(tmp_path: Path, data: dict[str, object]) -> None:
    with pytest.raises(FileProblem):
        write_toml(tmp_path / "x.toml", data)
    assert not list(tmp_path.iterdir())


def test_a_file_in_place_of_the_folder(tmp_path: Path) -> None:
    (tmp_path / "config").write_text("")
    with pytest.raises(FileProblem):
        write_toml(tmp_path / "config" / "family.toml", {"a": 1})


@pytest.mark.parametrize(
    ("raw", "cleaned"),
    [
        ("  Bean\t\n of \r\n ours ", "Bean of ours"),
        ("\x1b[31mred\x1b[0m", "[31mred[0m"),
        ("[bold]Pip[/bold]", "[bold]Pip[/bold]"),
        ("a\u202eb\u2066c", "abc"),
        ("👩‍👧 é", "👩‍👧 é"),
        ("\x07\x00\x9b", ""),
        ("a \x07 b", "a b"),
    ],
)
def test_nothing_a_terminal_obeys_is_left(raw: str, cleaned: str) -> None:
    assert clean(raw) == cleaned


@quiet
@given(st.text())
def test_cleaning_twice_is_cleaning_once(text: str) -> None:
    assert clean(clean(text)) == clean(text)
    assert clean(text).isprintable() or all(c.isprintable() or ord(c) > 0x9F for c in clean(text))


def test_values_in_sentences_are_short_and_on_one_line() -> None:
    assert shown("soon\n\x1b") == '"soon"'
    assert shown(10**5000) == "a very long number"
    assert (shown([]), shown([1]), shown({}), shown(True)) == ("an empty list", "a list", "a table", "true")
    assert len(shown("x" * 10_000)) < 90


def test_the_getters(tmp_path: Path) -> None:
    file = read(
        written(
            tmp_path, 'd = 2026-08-31\nq = "2026-08-31"\nt = 2026-08-31 09:00:00\ny = 0001-01-01\nn = true\n'
        )
    )
    assert file.date("d") == file.date("q") == dt.date(2026, 8, 31)
    assert file.date("none", default=dt.date(2026, 1, 1)) == dt.date(2026, 1, 1)
    for key in ("t", "y", "n", "none"):
        with pytest.raises(FileProblem):
            file.date(key)
    with pytest.raises(FileProblem, match="from 1 to 3, found true"):
        file.whole("n", least=1, most=3)
    with pytest.raises(FileProblem, match='line 1, d: expected a table with "x" in it, found 2026-08-31'):
        file.has("d", "x")
    with pytest.raises(FileProblem, match='"dark" or "light", found nothing'):
        file.choice("theme", among=("dark", "light"))


def test_where_things_lie(tmp_path: Path) -> None:
    home = places({"WARMUP_HOME": str(tmp_path)})
    assert home.config == home.data == tmp_path
    assert places({}) == places({"WARMUP_HOME": ""})
    assert places({}).data.name == places({}).config.name == "warmup"
    assert places({"WARMUP_HOME": "~no such user~/x"}).data.is_absolute()
    assert (routines_folder() / "year.toml").is_file()


def test_lines_never_hang_on_text_that_is_no_toml() -> None:
    for text in ("a = [", "a = {b", "[[", "= = =", "a = [[1, {x = ", '"', "]", "a.b"):
        assert lines(text) is not None
