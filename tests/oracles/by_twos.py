"""Recomputes skip counts from ``given`` by adding on, with num2words for the words."""

from num2words import num2words


def check(item: str, given: dict, answer: str, accept: tuple[str, ...]) -> str | None:
    """None when the answer goes by twos from start to end, whole or with bits left out where it says so."""
    return skipped(given, answer, accept, 2)


def skipped(given: dict, answer: str, accept: tuple[str, ...], by: int) -> str | None:
    """The same for any step. A gap may stand only after two numbers and never beside the last."""
    if given["by"] != by or given["start"] % by:
        return f"{given} is not by {by}"
    said = {given["start"]: num2words(given["start"])}
    while max(said) < given["end"]:
        said[max(said) + by] = num2words(max(said) + by)
    if max(said) != given["end"]:
        return f"{given} never arrives"
    words = list(said.values())
    wanted = ((answer, words), *((form, words[1:]) for form in accept))
    if len(accept) != 1:
        return f"accepts {accept}"
    return next((fault for form, full in wanted if (fault := _faulty(form, full))), None)


def _faulty(form: str, words: list[str]) -> str | None:
    runs = [run.split(", ") for run in form.split(" … ")]
    joined = ", ".join(words)
    if len(words) <= 12 and form != joined:
        return f"{form!r} should be {joined!r}"
    if any(", ".join(run) not in joined for run in runs):
        return f"{form!r} has a run that is not in {joined!r}"
    places = [words.index(word) for run in runs for word in run]
    if places != sorted(set(places)) or runs[0][:2] != words[:2] or runs[-1][-1] != words[-1]:
        return f"{form!r} is out of order"
    return None
