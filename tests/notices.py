"""Third-party notices: name, version and license of every package that a family's install may bring along.

    python -m tests.notices

reads the installed metadata, from the dependencies of ``warmup`` on: what each needs in turn, then what each
extra adds. A package that is not installed, or does not say its license, is told as such and never guessed.
Exits with 1 where there is one.
"""

import argparse
import tomllib
from collections.abc import Callable, Iterator, Sequence
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path
from typing import Any, NamedTuple, Protocol

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

PYPROJECT = Path(__file__).parent.parent / "pyproject.toml"
NOT_SAID = "NOT SAID: read the package's own files"
NOT_INSTALLED = "NOT INSTALLED: not to be told here"
_UNSAID = {"", "unknown", "none", "license", "see license", "license.txt", "osi approved"}
_LONGEST = 60
"""A License field may hold the whole text; a name is shorter, and on one line."""


class Metadata(Protocol):
    """What is asked of a package's metadata: its fields, by name."""

    def get_all(self, name: str) -> list[Any] | None:
        """All values of a field; None where there is none."""


class Installed(Protocol):
    """What is asked of a package: :class:`importlib.metadata.Distribution` has it."""

    @property
    def version(self) -> str:
        """The version as the package has it."""

    @property
    def metadata(self) -> Metadata:
        """The fields of its METADATA."""

    @property
    def requires(self) -> list[str] | None:
        """What it needs, a requirement a line."""


Find = Callable[[str], Installed | None]
"""The package of a name, or None where it is not installed."""


class Notice(NamedTuple):
    """What is told of a package."""

    name: str
    version: str
    license: str

    @property
    def told(self) -> bool:
        """Whether its license is known."""
        return self.license not in (NOT_SAID, NOT_INSTALLED)


def license_of(metadata: Metadata) -> str:
    """The license: License-Expression (PEP 639) before License, and that before the classifiers."""
    for field in ("License-Expression", "License"):
        for value in metadata.get_all(field) or ():
            if _names_one(str(value)):
                return str(value).strip()
    named = [str(value) for value in metadata.get_all("Classifier") or ()]
    found = [line.split("::")[-1].strip() for line in named if line.startswith("License ::")]
    return "; ".join(each for each in found if _names_one(each)) or NOT_SAID


def _names_one(value: str) -> bool:
    plain = value.strip()
    return plain.casefold() not in _UNSAID and "\n" not in plain and len(plain) <= _LONGEST


def notices(requirements: Sequence[str], find: Find) -> list[Notice]:
    """A notice a package, by name: those required here and all that they need on this machine in turn."""
    seen: dict[str, Notice] = {}
    asked: set[tuple[str, str]] = set()
    waiting = [(Requirement(line), "") for line in requirements]
    while waiting:
        wanted, extra = waiting.pop()
        name = canonicalize_name(wanted.name)
        if wanted.marker and not wanted.marker.evaluate({"extra": extra}):
            continue
        package = find(name)
        version, license = (package.version, license_of(package.metadata)) if package else ("", NOT_INSTALLED)
        seen[name] = Notice(name, version, license)
        for each in {"", *wanted.extras}:
            if (name, each) not in asked:
                asked.add((name, each))
                needed = package.requires if package else None
                waiting += [(Requirement(line), each) for line in needed or ()]
    return [seen[name] for name in sorted(seen)]


def installed(name: str) -> Installed | None:
    """The installed package of a name."""
    try:
        return distribution(name)
    except PackageNotFoundError:
        return None


def groups() -> dict[str, list[str]]:
    """The requirements of pyproject.toml: what every install has, then each extra."""
    project = tomllib.loads(PYPROJECT.read_text("utf-8"))["project"]
    extras: dict[str, list[str]] = project["optional-dependencies"]
    return {"every install": project["dependencies"]} | {
        f"the extra “{name}”": lines for name, lines in extras.items()
    }


def lines(told: dict[str, list[Notice]]) -> Iterator[str]:
    """The notices as text, a package a line; one that stood in an earlier group is not told again."""
    before: set[str] = set()
    for title, found in told.items():
        yield f"{title[0].upper()}{title[1:]}:"
        fresh = [notice for notice in found if notice.name not in before]
        before.update(notice.name for notice in fresh)
        for notice in fresh:
            named = f"{notice.name} {notice.version}".strip()
            yield f"  {named}: {notice.license}"
        if not fresh:
            yield "  nothing beyond the above"


def main() -> int:
    """Print them all; 1 where a license is not told."""
    told = {title: notices(required, installed) for title, required in groups().items()}
    print("\n".join(lines(told)))
    return int(not all(notice.told for found in told.values() for notice in found))


if __name__ == "__main__":
    argparse.ArgumentParser(
        prog="python -m tests.notices",
        description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    ).parse_args()
    raise SystemExit(main())
