"""Completion of a line in the shell, by argcomplete where that is installed (``warmup[completion]``).

The shell starts the program with ``_ARGCOMPLETE`` in its environment and reads the words that may come next.
Nothing of the family is read for it.
"""

import argparse
from collections.abc import Callable, Iterable, Iterator


def complete() -> None:
    """Answer the shell and end; where argcomplete is not there, nothing is answered."""
    try:
        import argcomplete
        from argcomplete.completers import FilesCompleter, SuppressCompleter
    except ImportError:
        raise SystemExit(1) from None
    from warmup.cli.options import parser

    whole = parser()
    files, nothing = FilesCompleter(), SuppressCompleter()
    for action in _arguments(whole):
        words = _WORDS.get(str(action.metavar))
        named = (lambda found: lambda **_: found())(words) if words else nothing
        # argcomplete looks for the attribute, of which argparse knows nothing.
        setattr(action, "completer", files if action.metavar in _PATHS else named)  # noqa: B010
    argcomplete.autocomplete(whole)


def _arguments(parser: argparse.ArgumentParser) -> Iterator[argparse.Action]:
    """What takes a word of its own, of the program and of each command."""
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            for command in action.choices.values():
                yield from _arguments(command)
        elif action.choices is None and action.nargs != 0:
            yield action


def _topics() -> Iterable[str]:
    from warmup.guide import NAMES

    return NAMES


def _skills() -> Iterable[str]:
    from warmup.skills import SKILLS

    return SKILLS


def _items() -> Iterable[str]:
    from warmup.skills import item_names

    return item_names()


_WORDS: dict[str, Callable[[], Iterable[str]]] = {"TOPIC": _topics, "SKILL": _skills, "ITEM": _items}
"""The words that may stand for an argument, by its name in the help."""
_PATHS = frozenset({"FILE", "DIR"})
