"""A routine as plain values for JSON, and back: for the journal and for ``--json``.

``warmup today --json`` and the journal hold the same form:

* ``format`` ("warmup-routine"), ``version`` (2), ``child`` (its name in the journal), ``shape``;
* ``morning``: ``date``, ``kind`` (what the date is in the school year), ``school_day``, ``week``,
  ``quarter``, ``review`` (whether this is a review week), ``index``, ``mornings_a_week``, ``previous`` and
  ``next`` (the school mornings either side), ``countdowns``, ``festive`` (days that matter and fall on it),
  ``pennies``, ``animal``;
* ``opening``: ``say`` (the fact of the date that the morning begins with), ``table`` and, where there is one,
  ``job`` (what a toddler may do), or null; missing in what was written before there were openings, and then
  there is none;
* ``prompts``, each with ``skill``, ``level``, ``item``, ``do`` (what the adult does before speaking, or
  nothing), ``say``, ``wording`` (which of its phrasings), ``answer``, ``accept`` (other right answers),
  ``working``, ``cues`` (three, each with ``text`` and ``picture``), ``watch_for``, ``table``, ``seconds``,
  ``guess`` (the chance of a lucky answer), ``given`` (all it was built from), ``picture`` (its ``kind`` and
  fields, or null) and ``why``; of what a family wrote itself ``skill`` is "own" and ``working`` empty.

``warmup today --json`` alone adds ``not_asked_yet``, the levels that are open and of which nothing was ever
asked, ``teach_again``, the items that rest until they are taught again, newest first, both ids, and
``closing``, what the last morning of the year says of it, empty on any other; all as things stand today.
``warmup ask --json`` holds ``format``, ``version`` and
``prompts`` only.

``version`` goes up when a field goes or changes its meaning; a new field alone does not raise it, and
unknown fields are left out on reading. In version 1 a picture's ``number`` was called ``count``; it is still
read.
"""

import datetime as dt
import json
from collections.abc import Callable, Mapping
from enum import Enum
from typing import Any, NamedTuple

from warmup import renames, skills
from warmup.model import Countdown, Cue, DayKind, ItemId, Morning, Opening, Prompt, Routine, skill_and_name
from warmup.pictures import Picture, from_data, to_data
from warmup.text import FIRST_YEAR, LAST_YEAR, clean

FORMAT = "warmup-routine"
VERSION = 2
_LONGEST = 200
"""The longest list that is read: of prompts, of right answers, of days that matter."""
_LARGEST = 10**9


def routine_data(routine: Routine) -> dict[str, Any]:
    """The whole routine, ``given`` included, as JSON values."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "child": routine.child,
        "shape": routine.shape,
        "morning": _plain(routine.morning),
        "opening": routine.opening and _opening_data(routine.opening),
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
    """The routine :func:`routine_text` wrote, its texts on one line and harmless in a terminal.

    ValueError for anything else: a routine may come from a journal of another machine, or a damaged one.
    """
    try:
        data = _harmless(json.loads(text, parse_constant=_refused))
        if data["format"] != FORMAT or not 1 <= _whole(data["version"]) <= VERSION:
            raise ValueError(f"not a routine this version reads: {data['format']!r} {data['version']!r}")
        prompts = tuple(_prompt(entry) for entry in _many(data["prompts"]))
        return Routine(
            _text(data["child"]),
            _morning(data["morning"]),
            _text(data["shape"]),
            prompts,
            _opening(data.get("opening")),
        )
    except (KeyError, TypeError, AttributeError, OverflowError) as error:
        raise ValueError(f"not a routine: {error}") from error
    except RecursionError as error:
        raise ValueError("not a routine: nested too deep") from error


def _opening_data(opening: Opening) -> dict[str, str]:
    return {name: value for name, value in opening._asdict().items() if value or name != "job"}


class Words(NamedTuple):
    """What a prompt of a routine was: its item, the words to say, the answer, and its cues."""

    item: str
    say: str
    answer: str
    cues: tuple[str, ...]


def words_in(text: str) -> tuple[Words | None, ...]:
    """The words of a routine's prompts as far as they can be read, None for a prompt that can't be.

    They can also where :func:`routine_from` refuses the whole, for a picture that is no more, say.
    """
    try:
        return tuple(_words(each) for each in _many(_harmless(json.loads(text))["prompts"]))
    except (ValueError, KeyError, TypeError, RecursionError):
        return ()


def _words(data: Any) -> Words | None:
    try:
        cues = tuple(_text(cue["text"]) for cue in _many(data["cues"]))
        return Words(renames.item(_text(data["item"])), _text(data["say"]), _text(data["answer"]), cues)
    except (KeyError, TypeError):
        return None


def _picture(picture: Picture | None) -> Any:
    return None if picture is None else _plain(to_data(picture))


def _plain(value: Any) -> Any:
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, Morning | Countdown):
        return {name: _plain(each) for name, each in value._asdict().items()}
    if isinstance(value, dict):
        return {str(key): _plain(each) for key, each in value.items()}
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return value


# -- values read


def _refused(name: str) -> None:
    raise ValueError(f"not a routine: {name}")


def _harmless(value: Any) -> Any:
    """The value with every text in it cleaned of what a terminal would obey."""
    if isinstance(value, str):
        return value if value.isprintable() else clean(value)
    if isinstance(value, list):
        return [_harmless(each) for each in value]
    if isinstance(value, dict):
        return {_harmless(key): _harmless(each) for key, each in value.items()}
    return value


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError(f"expected text, found {type(value).__name__}")
    return value


def _whole(value: Any) -> int:
    if type(value) is not int or abs(value) > _LARGEST:
        raise TypeError("expected a whole number that is not too large")
    return value


def _flag(value: Any) -> bool:
    if not isinstance(value, bool):
        raise TypeError("expected true or false")
    return value


def _chance(value: Any) -> float:
    if type(value) not in (int, float) or not 0 <= value <= 1:
        raise TypeError("expected a number from 0 to 1")
    return float(value)


def _many(value: Any) -> list[Any]:
    if not isinstance(value, list) or len(value) > _LONGEST:
        raise TypeError(f"expected a list of at most {_LONGEST}")
    return value


def _table(value: Any) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise TypeError("expected a table")
    return value


def _texts(value: Any) -> tuple[str, ...]:
    return tuple(_text(each) for each in _many(value))


def _day(value: Any) -> dt.date:
    day = dt.date.fromisoformat(_text(value))
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise ValueError(f"not a routine: the year {day.year}")
    return day


def _date(value: Any) -> dt.date | None:
    return None if value is None else _day(value)


def _countdowns(value: Any) -> tuple[Countdown, ...]:
    return tuple(Countdown(_text(entry["name"]), _day(entry["day"])) for entry in _many(value))


def _cues(value: Any) -> tuple[Cue, Cue, Cue]:
    first, second, third = (Cue(_text(cue["text"]), from_data(cue["picture"])) for cue in _many(value))
    return first, second, third


def _opening(value: Any) -> Opening | None:
    if value is None:
        return None
    return Opening(_text(value["say"]), _text(value["table"]), _text(value.get("job", "")))


_Reader = Callable[[Any], Any]
# How each field is read. Those of the second tables may be missing: older versions did not write them.
_MORNING: Mapping[str, _Reader] = {
    "date": _day, "kind": DayKind, "school_day": _whole, "week": _whole, "quarter": _whole, "review": _flag,
    "index": _whole, "previous": _date, "next": _date, "countdowns": _countdowns,
}  # fmt: skip
_MORNING_SINCE: Mapping[str, _Reader] = {
    "mornings_a_week": _whole, "festive": _texts, "pennies": _flag, "animal": _text,
}  # fmt: skip
_PROMPT: Mapping[str, _Reader] = {
    "skill": _text, "level": _text, "item": _text, "say": _text, "wording": _text, "answer": _text,
    "accept": _texts, "working": _text, "cues": _cues, "watch_for": _text, "table": _text, "seconds": _whole,
    "guess": _chance, "given": _table, "picture": from_data,
}  # fmt: skip
_PROMPT_SINCE: Mapping[str, _Reader] = {"why": _text, "do": _text}


def _read(data: Any, always: Mapping[str, _Reader], since: Mapping[str, _Reader]) -> dict[str, Any]:
    values = {name: read(data[name]) for name, read in always.items()}
    return values | {name: read(data[name]) for name, read in since.items() if name in data}


def _morning(data: Any) -> Morning:
    return Morning(**_read(data, _MORNING, _MORNING_SINCE))


def _prompt(data: Any) -> Prompt:
    values = _read(data, _PROMPT, _PROMPT_SINCE)
    item = ItemId(renames.item(values["item"]))
    # An item may have moved to another level since.
    level = skills.locate(item).level.key if skills.known(item) else values["level"]
    return Prompt(**values | {"item": item, "skill": skill_and_name(item)[0], "level": level})
