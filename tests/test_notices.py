"""The third-party notices: every package is there, with its license as it says it, or told as not said."""

from email.message import Message
from typing import NamedTuple

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.notices import (
    NOT_INSTALLED,
    NOT_SAID,
    Installed,
    Notice,
    groups,
    installed,
    license_of,
    lines,
    main,
    notices,
)


class Made(NamedTuple):
    """A made-up package."""

    version: str
    metadata: Message
    requires: list[str] | None = None


def fields(*pairs: tuple[str, str]) -> Message:
    message = Message()
    for name, value in pairs:
        message[name] = value
    return message


@pytest.mark.parametrize(
    ("pairs", "license"),
    [
        ([("License-Expression", "MIT OR Zlib"), ("License", "not this")], "MIT OR Zlib"),
        ([("License", "ISC"), ("Classifier", "License :: OSI Approved :: MIT License")], "ISC"),
        ([("License", "UNKNOWN"), ("Classifier", "License :: OSI Approved :: MIT License")], "MIT License"),
        ([("License", "A whole text\nof many lines"), ("Classifier", "License :: Public Domain")],
         "Public Domain"),
        ([("License", "Permission is granted " * 9)], NOT_SAID),
        ([("Classifier", "License :: One"), ("Classifier", "License :: Two")], "One; Two"),
        ([("Classifier", "License :: OSI Approved"), ("Classifier", "Topic :: License")], NOT_SAID),
        ([("License-Expression", "")], NOT_SAID),
        ([], NOT_SAID),
    ],
)  # fmt: skip
def test_a_license_is_read_from_each_field_in_turn(pairs: list[tuple[str, str]], license: str) -> None:
    assert license_of(fields(*pairs)) == license


def test_what_a_package_needs_is_told_too_and_what_it_does_not_is_not() -> None:
    made: dict[str, Installed] = {
        "top": Made("1", fields(("License", "One")), ["Middle_Name[more]>=2", "idle; extra == 'idle'"]),
        "middle-name": Made("2", fields(("License", "Two")), ["top", "gone; extra == 'more'"]),
        "idle": Made("3", fields(("License", "Three"))),
    }
    assert notices(["top"], made.get) == [
        Notice("gone", "", NOT_INSTALLED),
        Notice("middle-name", "2", "Two"),
        Notice("top", "1", "One"),
    ]
    assert "idle" in {each.name for each in notices(["top[idle]"], made.get)}
    assert notices(["other; python_version < '3'"], made.get) == []


def test_each_requirement_of_the_project_is_told_with_a_version() -> None:
    for title, required in groups().items():
        found = {notice.name: notice for notice in notices(required, installed)}
        for line in required:
            name = canonicalize_name(Requirement(line).name)
            assert found[name].version and found[name].license, (title, name)
    assert "mdurl" in {notice.name for notice in notices(groups()["every install"], installed)}


def test_a_package_is_printed_once_and_what_is_not_told_says_so() -> None:
    first, second = Notice("one", "1", "MIT"), Notice("two", "", NOT_INSTALLED)
    assert list(lines({"every install": [first], "more": [first, second], "none": [first]})) == [
        "Every install:", "  one 1: MIT",
        "More:", f"  two: {NOT_INSTALLED}",
        "None:", "  nothing beyond the above",
    ]  # fmt: skip


def test_the_exit_code_says_whether_all_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    code = main()
    printed = capsys.readouterr().out
    assert bool(code) is (NOT_SAID in printed or NOT_INSTALLED in printed)
    assert "textual" in printed


def test_every_requirement_has_a_floor() -> None:
    bare = [line for required in groups().values() for line in required if ">=" not in line]
    assert bare == []
