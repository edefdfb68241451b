"""The table of rooms in DEVELOPERS.md, made from the layers contract and each room's docstring.

    python -m tests.rooms

writes it between its two marks; a test fails while it is out of date.
"""

import argparse
import ast
import tomllib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent
DEVELOPERS = ROOT / "DEVELOPERS.md"
START, END = "<!-- rooms -->\n", "\n<!-- /rooms -->"


def layers() -> list[list[str]]:
    """The rooms of the layers contract in pyproject.toml, the highest first, those of one layer together."""
    project: dict[str, Any] = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
    contracts = project["tool"]["importlinter"]["contracts"]
    (contract,) = [each for each in contracts if each.get("containers") == ["warmup"]]
    return [layer.replace("|", " ").replace(":", " ").split() for layer in contract["layers"]]


def path_of(room: str) -> Path:
    """The file with the room's docstring: a package's ``__init__`` or a module."""
    package = ROOT / "warmup" / room / "__init__.py"
    return package if package.exists() else ROOT / "warmup" / f"{room}.py"


def purpose(room: str) -> str:
    """The first paragraph of the room's docstring, on one line."""
    docstring = ast.get_docstring(ast.parse(path_of(room).read_text("utf-8"))) or ""
    return " ".join(docstring.partition("\n\n")[0].split())


def _rows() -> Iterator[str]:
    yield "| layer | room | what lives there |"
    yield "|---|---|---|"
    for number, rooms in enumerate(reversed(layers()), start=1):
        for room in sorted(rooms):
            name = f"{room}/" if path_of(room).name == "__init__.py" else f"{room}.py"
            yield f"| {number} | `{name}` | {purpose(room)} |"


def table() -> str:
    """The table as it should stand in DEVELOPERS.md, the highest layer first."""
    head, line, *rows = _rows()
    return "\n".join([head, line, *sorted(rows, key=lambda row: -int(row.split("|")[1]))])


def kept() -> str:
    """The table as it stands in DEVELOPERS.md."""
    return DEVELOPERS.read_text("utf-8").partition(START)[2].partition(END)[0]


def write() -> None:
    """Put the table into DEVELOPERS.md, between its two marks."""
    before, start, rest = DEVELOPERS.read_text("utf-8").partition(START)
    _, end, after = rest.partition(END)
    if not start or not end:
        raise SystemExit(f"{DEVELOPERS.name} has no {START.strip()} and {END.strip()}")
    DEVELOPERS.write_text(f"{before}{start}{table()}{end}{after}", "utf-8")


if __name__ == "__main__":
    argparse.ArgumentParser(
        prog="python -m tests.rooms",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    ).parse_args()
    write()
