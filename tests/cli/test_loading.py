"""Textual loaded without what a first frame does not use: none of it is missed where it is wanted later."""

import subprocess
import sys
import uuid
from importlib.metadata import version
from types import ModuleType
from typing import Any

import pytest

from warmup.cli import loading

LEFT_OUT = ("ssl", "textual.types", "textual.widgets._tree", "platformdirs", "uuid", "platform", "rich.table")
WANTED_BY_8_0 = {"platform", "rich.table"}
"""Rich and Textual 8.0 load these elsewhere as well."""


def python(code: str) -> str:
    """What a fresh Python prints once Textual is loaded."""
    begin = "import sys; from warmup.cli import loading; loading.load_textual()"
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", f"{begin}; {code}"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_textual_comes_without_what_a_first_frame_does_not_use() -> None:
    loaded = python("import warmup.tui.app; print(*sys.modules)").split()
    assert "textual.app" in loaded and "textual.command" in loaded
    major, minor = map(int, version("textual").split(".")[:2])
    left_out = {*LEFT_OUT} if (major, minor) >= (8, 2) else {*LEFT_OUT} - WANTED_BY_8_0
    assert not left_out & {*loaded}, "a first frame waits for it again"


@pytest.mark.parametrize("name", LEFT_OUT)
def test_what_was_left_out_can_still_be_had(name: str) -> None:
    assert python(f"import {name}; print({name}.__spec__.name, {name} is sys.modules[{name!r}])") == (
        f"{name} True"
    )


def test_textual_itself_gets_the_real_thing_when_it_calls_for_it() -> None:
    """The names are Textual's own: where it calls them otherwise, it has loaded the module itself."""
    assert python("import textual.app as app; print(app.uuid.uuid4().version, app.uuid.NAMESPACE_DNS)") == (
        f"4 {uuid.NAMESPACE_DNS}"
    )
    assert (
        python(
            "import textual.app as app, platformdirs"
            "; print(app.user_downloads_path() == platformdirs.user_downloads_path())"
        )
        == "True"
    )
    assert (
        python(
            "from textual.design import ColorSystem, show_design; import rich.table"
            "; colors = ColorSystem('#123456'); print(type(show_design(colors, colors)) is rich.table.Table)"
        )
        == "True"
    )


def test_a_stand_in_has_its_names_and_hands_on_the_others(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, "colorsys", raising=False)
    ours: Any = object()
    with loading._stand_in("colorsys", {"rgb_to_hsv": ours}):
        from colorsys import rgb_to_hsv

        stand_in = sys.modules["colorsys"]
        assert rgb_to_hsv is stand_in.rgb_to_hsv is ours and not hasattr(stand_in, "__path__")
        from colorsys import hsv_to_rgb

        assert hsv_to_rgb(0, 0, 1) == (1, 1, 1), "any other name is the module's own"
        assert sys.modules["colorsys"] is not stand_in
        real = sys.modules["colorsys"]
    assert sys.modules["colorsys"] is real, "what was loaded meanwhile stays"


def test_a_stand_in_is_gone_afterward_and_takes_no_loaded_module_s_place(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.delitem(sys.modules, "colorsys", raising=False)
    with pytest.raises(ZeroDivisionError), loading._stand_in("colorsys", {}), loading._absent("nowhere"):
        with pytest.raises(ModuleNotFoundError):
            import nowhere  # type: ignore[import-not-found]  # noqa: F401
        raise ZeroDivisionError
    assert not {"colorsys", "nowhere"} & {*sys.modules}
    loaded = ModuleType("colorsys")
    monkeypatch.setitem(sys.modules, "colorsys", loaded)
    with loading._stand_in("colorsys", {"rgb_to_hsv": "ours"}), loading._absent("colorsys"):
        assert sys.modules["colorsys"] is loaded
    assert sys.modules["colorsys"] is loaded
