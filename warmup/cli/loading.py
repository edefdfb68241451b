"""Textual loaded for a first frame, without what that does not use.

Textual loads each of these modules for one name, and calls none of them on the way to a first frame. A
stand-in has that name and hands on every other to the module itself, so that another version of Textual,
which wants more of it, only starts slower.
"""

import contextlib
import sys
from collections.abc import Callable, Iterator
from importlib import import_module
from types import ModuleType
from typing import Any

CALLED_LATER = (("platformdirs", "user_downloads_path"), ("uuid", "uuid4"), ("rich.table", "Table"))
"""Modules, and what Textual calls of each: for a file that is handed on, a notification, a list of colors."""


def load_textual() -> None:
    """Load Textual, a twentieth of the first frame sooner than by ``import textual.app``.

    asyncio goes without TLS where there is none, and nothing here is sent anywhere. Textual has a type from
    the module of all types, which loads the widgets they are of: no screen of ours has a tree of folders.
    """
    with _absent("ssl"):
        import asyncio  # noqa: F401
    from textual._types import IgnoreReturnCallbackType

    with contextlib.ExitStack() as meanwhile:
        type_of_ours = {"IgnoreReturnCallbackType": IgnoreReturnCallbackType}
        meanwhile.enter_context(_stand_in("textual.types", type_of_ours))
        for module, name in CALLED_LATER:
            meanwhile.enter_context(_stand_in(module, {name: _later(module, name)}))
        import textual.app  # noqa: F401


@contextlib.contextmanager
def _absent(name: str) -> Iterator[None]:
    """Meanwhile the module can't be imported, unless it was before."""
    if name in sys.modules:
        yield
        return
    sys.modules[name] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        del sys.modules[name]


@contextlib.contextmanager
def _stand_in(name: str, there: dict[str, Any]) -> Iterator[None]:
    """Meanwhile the module is one of these names alone, unless it was loaded or another name is wanted."""
    if name in sys.modules:
        yield
        return

    def other(wanted: str) -> Any:
        if wanted.startswith("__"):
            raise AttributeError(wanted)  # The import asks every module for some of these.
        leave()
        return getattr(import_module(name), wanted)

    def leave() -> None:
        if sys.modules.get(name) is module:
            del sys.modules[name]

    module = ModuleType(name)
    vars(module).update(there, __getattr__=other)
    sys.modules[name] = module
    try:
        yield
    finally:
        leave()


def _later(module: str, name: str) -> Callable[..., Any]:
    """A function that loads the module when it is called, and calls what it stands in for."""

    def call(*given: Any, **named: Any) -> Any:
        return getattr(import_module(module), name)(*given, **named)

    return call
