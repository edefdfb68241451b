"""A routine as plain values for JSON, and back: for the journal and for ``--json``.

The form is documented in DEVELOPERS.md ("The JSON of a routine"). ``version`` goes up when a field
changes its meaning or goes; a new field alone does not raise it. Unknown fields are left out on reading.
"""

import datetime as dt
import json
from dataclasses import fields
from enum import Enum
from typing import Any

from warmup import renames
from warmup.morning import Countdown, Cue, DayKind, Morning, Prompt, Routine
from warmup.pictures import Picture, from_data, to_data

FORMAT = "warmup-routine"
VERSION = 2


def routine_data(routine: Routine) -> dict[str, Any]:
    """The whole routine, ``given`` included, as JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": routine.child,
        "shape": routine.shape,
        "morning": _plain(routine.morning),
        "prompts": [prompt_data(prompt) for prompt in routine.prompts],
    }


def prompt_data(prompt: Prompt) -> dict[str, Any]:
    """One whole prompt as JSON values."""
    data = {name: _plain(getattr(prompt, name)) for name in Prompt._fields}
    data["picture"] = _picture(prompt.picture)
    data["cues"] = [{"text": cue.text, "picture": _picture(cue.picture)} for cue in prompt.cues]
    data["given"] = _plain(dict(prompt.given))
    return data


def routine_text(routine: Routine) -> str:
    """The routine as one line of JSON."""
    return json.dumps(routine_data(routine), ensure_ascii=False, separators=(",", ":"))


def routine_from(text: str) -> Routine:
    """The routine :func:`routine_text` wrote. ValueError for anything else."""
    try:
        data = json.loads(text)
        if data["format"] != FORMAT or data["version"] > VERSION:
            raise ValueError(f"not a routine this version reads: {data['format']!r} {data['version']!r}")
        prompts = tuple(_prompt(entry) for entry in data["prompts"])
        return Routine(data["child"], _morning(data["morning"]), data["shape"], prompts)
    except (KeyError, TypeError, AttributeError) as error:
        raise ValueError(f"not a routine: {error}") from error


def _picture(picture: Picture | None) -> Any:
    return None if picture is None else _plain(to_data(picture))


def _plain(value: Any) -> Any:
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Morning):
        return {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
    if isinstance(value, Countdown):
        return {name: _plain(getattr(value, name)) for name in Countdown._fields}
    if isinstance(value, dict):
        return {str(key): _plain(each) for key, each in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return value


def _date(text: str | None) -> dt.date | None:
    return None if text is None else dt.date.fromisoformat(text)


def _morning(data: dict[str, Any]) -> Morning:
    known = {field.name for field in fields(Morning)}
    values = {name: value for name, value in data.items() if name in known}
    values |= {
        "date": dt.date.fromisoformat(data["date"]),
        "kind": DayKind(data["kind"]),
        "previous": _date(data["previous"]),
        "next": _date(data["next"]),
        "festive": tuple(data.get("festive", ())),
        "countdowns": tuple(
            Countdown(entry["name"], dt.date.fromisoformat(entry["day"])) for entry in data["countdowns"]
        ),
    }
    return Morning(**values)


def _prompt(data: dict[str, Any]) -> Prompt:
    values = {name: value for name, value in data.items() if name in Prompt._fields}
    first, second, third = (Cue(cue["text"], from_data(cue["picture"])) for cue in data["cues"])
    item = renames.item(data["item"])
    skill = item.partition("/")[0]
    level = renames.level(f"{data['skill']}:{data['level']}").rpartition(":")[2]
    values |= {
        "item": item,
        "skill": skill,
        "level": level,
        "accept": tuple(data["accept"]),
        "cues": (first, second, third),
        "picture": from_data(data["picture"]),
    }
    return Prompt(**values)
