"""What the tests of routines/*.toml share: the files that came along, and a family's own copies."""

import re
from pathlib import Path

from warmup.config.places import Places, routines_folder
from warmup.skills import SKILLS

YEAR = (routines_folder() / "year.toml").read_text(encoding="utf-8")
DAILY = (routines_folder() / "daily.toml").read_text(encoding="utf-8")


def own(folder: Path, name: str, content: str | bytes) -> Places:
    (folder / f"{name}.toml").write_bytes(content.encode() if isinstance(content, str) else content)
    return Places(folder, folder)


def known_year() -> str:
    """The year that came along, less the skills that are not there."""
    head, *tables = re.split(r"^(?=\[skills\.)", YEAR, flags=re.MULTILINE)
    return head + "".join(t for t in tables if t[len("[skills.") :].partition("]")[0] in SKILLS)
