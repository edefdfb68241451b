"""Where the files lie: the family's folder, the journal's, and the routine files that came along."""

import contextlib
import stat
from collections.abc import Mapping
from pathlib import Path
from typing import NamedTuple

from warmup.config.toml_file import FileProblem, reason


class Places(NamedTuple):
    """A family's two folders: ``config`` holds family.toml and its own routines, ``data`` the journal."""

    config: Path
    data: Path


def places(environ: Mapping[str, str]) -> Places:
    """Both in the folder ``WARMUP_HOME`` names, else where this system keeps such things.

    ``FileProblem`` where no home folder is known: without one the path would begin with a literal ``~``.
    """
    if home := environ.get("WARMUP_HOME"):
        folder = Path(home)
        with contextlib.suppress(RuntimeError):  # "~somebody" whom this system does not know
            folder = folder.expanduser()
        folder = _folder(folder)
        return Places(folder, folder)
    import platformdirs

    with contextlib.suppress(RuntimeError):  # no home folder is known
        found = Places(
            Path(platformdirs.user_config_dir("warmup", appauthor=False)),
            Path(platformdirs.user_data_dir("warmup", appauthor=False)),
        )
        if all(folder.is_absolute() for folder in found):
            return found
    advice = "Set it, or name a folder in WARMUP_HOME."
    raise FileProblem(Path("HOME"), None, "", "your home folder", "none", advice)


def _folder(folder: Path) -> Path:
    """The folder that was named, as a whole path; it need not be there yet."""
    found = ""
    try:
        folder = folder.absolute()
        if not stat.S_ISDIR(folder.stat().st_mode):
            found = "a file"
    except FileNotFoundError:
        if not folder.is_absolute():
            found = "a way from a folder that is gone"
    except OSError as error:
        found = reason(error)
    if found:
        advice = "Name another folder in WARMUP_HOME."
        raise FileProblem(Path("WARMUP_HOME"), None, "", "a folder", found, advice)
    return folder


def there(path: Path) -> bool:
    """Whether something is at this path; what can't be looked at counts, and opening it will say why."""
    try:
        path.stat()
    except (FileNotFoundError, NotADirectoryError):
        return False
    except OSError:
        return True
    return True


def routines_folder() -> Path:
    """Where the routines that came with the program lie: in the installed package, or in the repository."""
    package = Path(__file__).parents[1]
    inside = package / "routines"
    return inside if inside.is_dir() else package.with_name("routines")
