"""How the scripts that print with a browser are started, and how they end."""

import argparse
import shutil
import sys
from collections.abc import Callable, Iterable
from pathlib import Path


def run(script: str, about: str | None, faults: Callable[[Path], Iterable[str]]) -> int:
    """Find the ``faults`` of what is printed into the folder on the command line; the exit code."""
    parser = argparse.ArgumentParser(
        prog=f"python -m tests.browser.{script}",
        description=about,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="where the prints go")
    folder = parser.parse_args().folder.absolute()
    if not (shutil.which("chromium") or shutil.which("chromium-browser")):
        print("no chromium here: nothing was checked", file=sys.stderr)
        return 2
    folder.mkdir(parents=True, exist_ok=True)
    found = list(faults(folder))
    print("\n".join(found) or f"{len(list(folder.glob('*.pdf')))} prints, nothing wrong")
    return 1 if found else 0
