"""Pictures for the child: one canvas, a picture a file. Nothing here knows about prompts or screens."""

import pkgutil
from collections.abc import Mapping
from dataclasses import fields
from functools import cache
from importlib import import_module
from typing import Any

from warmup.pictures.base import Picture
from warmup.pictures.canvas import Cell, Drawing, Ink

__all__ = ["Cell", "Drawing", "Ink", "Picture", "from_data", "kinds", "to_data"]


@cache
def kinds() -> Mapping[str, type[Picture]]:
    """Every picture by its kind, found in the modules of this folder that have a ``PICTURE``."""
    names = sorted(name for _, name, _ in pkgutil.iter_modules(__path__))
    modules = (import_module(f"{__name__}.{name}") for name in names)
    found: list[type[Picture]] = [module.PICTURE for module in modules if hasattr(module, "PICTURE")]
    return {picture.kind: picture for picture in found}


def to_data(picture: Picture) -> dict[str, Any]:
    """The picture as plain values for JSON: its kind and its fields."""
    values = {field.name: getattr(picture, field.name) for field in fields(picture)}  # type: ignore[arg-type]
    return {"kind": picture.kind, **values}


def from_data(data: dict[str, Any] | None) -> Picture | None:
    """The picture :func:`to_data` was given; None for none, or for a kind this version does not know."""
    if data is None or data.get("kind") not in kinds():
        return None
    values = {name: _frozen(value) for name, value in data.items() if name != "kind"}
    return kinds()[data["kind"]](**values)


def _frozen(value: Any) -> Any:
    return tuple(map(_frozen, value)) if isinstance(value, list) else value
