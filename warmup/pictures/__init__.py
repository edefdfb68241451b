"""Pictures for the child: one canvas, a picture a file. Nothing here knows about prompts or screens."""

from dataclasses import fields
from typing import Any

from warmup.pictures.base import Picture
from warmup.pictures.canvas import Cell, Drawing, Ink
from warmup.pictures.hundred_chart import HundredChart
from warmup.pictures.ten_frame import TenFrame

__all__ = ["KINDS", "Cell", "Drawing", "Ink", "Picture", "from_data", "to_data"]

_ALL: tuple[type[Picture], ...] = (HundredChart, TenFrame)

KINDS: dict[str, type[Picture]] = {picture.kind: picture for picture in _ALL}
"""Every picture by its kind."""


def to_data(picture: Picture) -> dict[str, Any]:
    """The picture as plain values for JSON: its kind and its fields."""
    values = {field.name: getattr(picture, field.name) for field in fields(picture)}  # type: ignore[arg-type]
    return {"kind": picture.kind, **values}


def from_data(data: dict[str, Any] | None) -> Picture | None:
    """The picture :func:`to_data` was given; None for none, or for a kind this version does not know."""
    if data is None or data.get("kind") not in KINDS:
        return None
    values = {name: _frozen(value) for name, value in data.items() if name != "kind"}
    return KINDS[data["kind"]](**values)


def _frozen(value: Any) -> Any:
    return tuple(map(_frozen, value)) if isinstance(value, list) else value
