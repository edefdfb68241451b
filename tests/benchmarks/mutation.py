"""Whether the tests catch faults: ``python -m tests.benchmarks.mutation`` plants them one by one.

Each *mutant* is the program with one small fault that mutmut's operators make: a sign turned, a bound moved
by one, a condition taken away, an argument dropped. In a copy of the tree it is run through the test files
that protect its module, two mutants at a time; a test has to fail. Printed are, by module, how many were
caught, ran for too long, which is caught as well, and survived, and of each survivor what was changed and,
where no test can tell it from the original, why (``_equivalent_mutants``).

The same seed picks the same mutants. Exit code 1 where fewer than nine in ten are caught of a group that
is held to it, or a survivor there is not explained. It needs ``pip install mutmut``; 400 take under an hour
on two cores.
"""

import argparse
import os
import queue
import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any, NamedTuple

from rich.console import Console
from rich.progress import track

from tests.benchmarks import _arguments
from tests.benchmarks._equivalent_mutants import EQUIVALENT

ROOT = Path(__file__).parents[2]
AT_ONCE = 2
HELD_TO = {"schoolyear": 0.9, "merge": 0.9}
"""What share of a group's mutants has to be caught."""
GROUPS: dict[str, dict[str, tuple[str, ...]]] = {
    "schoolyear": {"warmup/schoolyear.py": ("tests/test_schoolyear.py",)},
    "merge": {
        "warmup/journal/merging.py": (
            "tests/journal/test_merged.py",
            "tests/journal/test_journal_together.py",
            "tests/journal/test_merging.py",
            "tests/journal/test_journal_odd.py",
        ),
        "warmup/journal/rows.py": (
            "tests/journal/test_merged.py",
            "tests/journal/test_journal_odd.py",
            "tests/journal/test_journal.py",
            "tests/journal/test_journal_together.py",
        ),
        "warmup/journal/log.py": (
            "tests/journal/test_log.py",
            "tests/journal/test_actions.py",
            "tests/journal/test_journal_odd.py",
            "tests/journal/test_journal_together.py",
        ),
    },
    "engine": {
        f"warmup/engine/{path.name}": ("tests/engine",)
        for path in sorted((ROOT / "warmup" / "engine").glob("[a-z]*.py"))
    },
}
"""The modules of each group, and the test files that protect each, the likeliest to fail first."""


class Fault(NamedTuple):
    """A place in a module and what may stand there instead."""

    path: str
    module: Any
    node: Any
    other: Any


class Mutant(NamedTuple):
    """A module with one fault in it, and the lines it took out and put in."""

    path: str
    text: str
    out: str
    put: str


class Verdict(NamedTuple):
    """What became of a mutant: caught, timed out or survived."""

    mutant: Mutant
    word: str


def faults_of(path: str) -> list[Fault]:
    """Every fault of a module, in the order of its text: what each operator makes of each node."""
    # Neither is needed to show what the script takes.
    import libcst
    from mutmut.mutation.mutators import mutation_operators

    module = libcst.parse_module((ROOT / path).read_text())
    found = [
        Fault(path, module, node, other)
        for node in _nodes(module)
        for kind, operator in mutation_operators
        if isinstance(node, kind)
        for other in operator(node)
    ]
    return [fault for fault in found if not _only_case_in_sql(fault)]


def _nodes(node: Any) -> Iterator[Any]:
    """The node and all below it, but for types, remarks, and calls that a fault would only stop."""
    import libcst as cst

    match node:
        case cst.Annotation() | cst.Expr(value=cst.SimpleString()):
            return
        case cst.Call(func=cst.Name(value="TypeVar" | "len" | "isinstance")):
            return
    yield node
    for child in node.children:
        yield from _nodes(child)


def _only_case_in_sql(fault: Fault) -> bool:
    """Capitals or not, to SQL it is the same."""
    was, now = (getattr(node, "value", None) for node in (fault.node, fault.other))
    if not isinstance(was, str) or not isinstance(now, str):
        return False
    words = ("SELECT", "INSERT", "DELETE", "UPDATE", "WHERE", "CREATE")
    return was.lower() == now.lower() and any(f"{word} " in was for word in words)


def mutant_of(fault: Fault) -> Mutant:
    """The module with the fault in it."""
    code, text = fault.module.code, fault.module.deep_replace(fault.node, fault.other).code
    was, now = code.splitlines(), text.splitlines()
    while was and now and was[0] == now[0]:
        was, now = was[1:], now[1:]
    while was and now and was[-1] == now[-1]:
        was, now = was[:-1], now[:-1]
    return Mutant(fault.path, text, *(" ".join(line.strip() for line in lines) for lines in (was, now)))


def run(copy: Path, tests: Sequence[str], limit: float | None) -> str:
    """What becomes of the tests in a copy of the tree: survived where all pass."""
    command = [sys.executable, "-m", "pytest", "-x", "-n", "0", "-p", "no:cacheprovider"]
    command += ["--hypothesis-profile", "unshrunk", "--tb", "no", *tests]
    # In a group of its own, so that what a test started ends with it.
    process = subprocess.Popen(
        command, cwd=copy, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, start_new_session=True
    )
    try:
        return "caught" if process.wait(limit) else "survived"
    except subprocess.TimeoutExpired:
        return "timed out"
    finally:
        if process.returncode is None:
            os.killpg(process.pid, 9)
            process.wait()


def try_out(mutant: Mutant, copies: "queue.Queue[Path]", tests: Sequence[str], limit: float) -> Verdict:
    """Run the tests of a mutant's module in a free copy of the tree, and put the module back."""
    copy = copies.get()
    target = copy / mutant.path
    kept = target.read_bytes()
    try:
        target.write_text(mutant.text)
        _forget_compiled(target)
        return Verdict(mutant, run(copy, tests, limit))
    finally:
        target.write_bytes(kept)
        _forget_compiled(target)
        copies.put(copy)


def _forget_compiled(target: Path) -> None:
    """A compiled file is known by time and size: two mutants of one second may have both alike."""
    for compiled in (target.parent / "__pycache__").glob(f"{target.stem}.*"):
        compiled.unlink()


def copy_of_tree(folder: Path) -> Path:
    """The tree as it stands, without what is not part of it."""
    left = shutil.ignore_patterns(".venv", ".git", "__pycache__", ".*_cache", ".hypothesis", "dist")
    return Path(shutil.copytree(ROOT, folder, ignore=left))


def try_all(chosen: Sequence[Mutant], tests: dict[str, tuple[str, ...]], console: Console) -> list[Verdict]:
    """The verdict on each mutant."""
    with tempfile.TemporaryDirectory() as scratch:
        copies: queue.Queue[Path] = queue.Queue()
        limits = {}
        for number in range(AT_ONCE):
            copies.put(copy_of_tree(Path(scratch, str(number))))
        for files in sorted({tests[mutant.path] for mutant in chosen}):
            began = time.monotonic()
            if run(Path(scratch, "0"), files, None) != "survived":
                raise SystemExit(f"without any fault these tests fail already: {' '.join(files)}")
            limits[files] = 20 + 5 * (time.monotonic() - began)
        with ThreadPoolExecutor(AT_ONCE) as pool:
            waiting = [
                pool.submit(try_out, mutant, copies, tests[mutant.path], limits[tests[mutant.path]])
                for mutant in chosen
            ]
            return [each.result() for each in track(waiting, "mutants", console=console)]


def report(verdicts: Sequence[Verdict], groups: Sequence[str], console: Console) -> bool:
    """Print what became of the mutants; whether each group is as it is held to be."""
    good = True
    for group in groups:
        of_group = [verdict for verdict in verdicts if verdict.mutant.path in GROUPS[group]]
        for path in GROUPS[group]:
            _print_counts(path, [verdict for verdict in of_group if verdict.mutant.path == path], console)
        living = [verdict.mutant for verdict in of_group if verdict.word == "survived"]
        known = [mutant for mutant in living if _why(mutant)]
        for mutant in living:
            console.print(f"\n  {mutant.path}\n  - {mutant.out}\n  + {mutant.put}", markup=False)
            console.print(f"  = {_why(mutant) or 'NOT EXPLAINED'}", markup=False)
        if group in HELD_TO and of_group:
            caught = 1 - len(living) / len(of_group)
            good = good and caught >= HELD_TO[group] and len(known) == len(living)
            console.print(
                f"\n{group}: {caught:.1%} caught, {len(living) - len(known)} survivors not explained"
            )
    return good


def _print_counts(path: str, verdicts: Sequence[Verdict], console: Console) -> None:
    words = [verdict.word for verdict in verdicts]
    counts = ", ".join(f"{words.count(word)} {word}" for word in ("caught", "timed out", "survived"))
    if words:
        share = 1 - words.count("survived") / len(words)
        console.print(f"{path}: {len(words)} mutants, {counts}: {share:.1%}", markup=False)


def _why(mutant: Mutant) -> str:
    return EQUIVALENT.get((mutant.path, mutant.out, mutant.put), "")


def main() -> int:
    """Pick the mutants, try them, report."""
    asked = _arguments.parser("mutation", __doc__)
    asked.add_argument("--modules", nargs="+", choices=list(GROUPS), default=list(GROUPS), help="all of them")
    asked.add_argument("--count", type=_arguments.positive, default=400, help="how many mutants (400)")
    asked.add_argument("--seed", type=_arguments.positive, default=1, help="another seed, other mutants (1)")
    asked.add_argument("--only", default="", help="only mutants of modules whose path has this in it")
    given: argparse.Namespace = asked.parse_args()
    console = Console(soft_wrap=True, highlight=False)
    tests = {path: files for group in given.modules for path, files in GROUPS[group].items()}
    try:
        found = [fault for path in tests if given.only in path for fault in faults_of(path)]
    except ModuleNotFoundError as missing:
        raise SystemExit(f"{missing.name} is not installed: pip install mutmut") from missing
    picked = random.Random(given.seed).sample(range(len(found)), min(len(found), given.count))
    chosen = [mutant_of(found[at]) for at in sorted(picked)]
    console.print(f"{len(chosen)} of {len(found)} mutants, seed {given.seed}")
    return 0 if report(try_all(chosen, tests, console), given.modules, console) else 1


if __name__ == "__main__":
    sys.exit(main())
