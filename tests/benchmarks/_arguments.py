"""The command line of a script: what it takes, and help that does nothing else."""

import argparse
import os


def parser(script: str, about: str | None) -> argparse.ArgumentParser:
    """A parser for ``python -m tests.benchmarks.SCRIPT``, whose help is the script's docstring."""
    return argparse.ArgumentParser(
        prog=f"python -m tests.benchmarks.{script}",
        description=about,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )


def all_colors() -> None:
    """Have the program show all its colors, whatever terminal the script itself runs in."""
    os.environ["COLORTERM"] = "truecolor"
    os.environ.pop("NO_COLOR", None)


def number(script: str, about: str | None, name: str, otherwise: int) -> int:
    """The one number the script takes, from 1."""
    asked = parser(script, about)
    asked.add_argument(name, type=positive, nargs="?", default=otherwise, help=f"how many ({otherwise})")
    return int(getattr(asked.parse_args(), name))


def positive(text: str) -> int:
    """A whole number from 1."""
    if not text.isascii() or not text.isdigit() or int(text) < 1:
        raise argparse.ArgumentTypeError(f"expected a number from 1, found {text!r}")
    return int(text)


def count_and_seed(script: str, about: str | None, name: str, default: int) -> tuple[int, int]:
    """A number called ``name`` and a seed (1), both of which may be left out."""
    asked = parser(script, about)
    asked.add_argument(name, type=positive, nargs="?", default=default, help=f"how many ({default})")
    asked.add_argument("seed", type=positive, nargs="?", default=1, help="another seed, other draws (1)")
    given = asked.parse_args()
    return int(getattr(given, name)), int(given.seed)
